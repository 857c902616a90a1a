package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.brewchem.figure.Step;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Base;
import org.brewchem.substance.Salt;
import org.brewchem.uncertainty.Source;
import org.junit.jupiter.api.Test;

class AlkalinityCurveTest {

  private static final Titrant ACID =
      Titrant.hydrochloricAcid().of(molPerL(0.02), molPerL(0.00002));

  private static final SampleTitration HUNDRED = ACID.titrate(mL(100));

  /** The pH past the equivalence volume: 0.02 (V - Ve) / (100 + V) mol/L of acid. */
  private static double past(double volume, double equivalence) {
    return -Math.log10(0.02 * (volume - equivalence) / (100 + volume));
  }

  private static TitrationLog gran(SampleTitration titration, double equivalence, double... at) {
    return titration.log(at, Arrays.stream(at).map(v -> past(v, equivalence)).toArray());
  }

  private static Step titre(AlkalinityResult found) {
    return found.explain().steps().stream()
        .filter(step -> step.quantity().equals("titre"))
        .findFirst()
        .orElseThrow();
  }

  private static double u(AlkalinityResult found, String source) {
    return titre(found).found().orElseThrow().sources().stream()
        .filter(s -> s.name().equals(source))
        .mapToDouble(s -> s.standardUncertainty().orElseThrow())
        .findFirst()
        .orElseThrow();
  }

  /** By hand: acid in excess of 10 mL is a straight line that meets the axis there. */
  @Test
  void gransLineMeetsTheAxisAtTheEquivalenceVolume() {
    TitrationLog log = gran(HUNDRED, 10, 12, 14, 16, 20);
    AlkalinityResult found = log.alkalinityCurve().byGran();
    assertEquals(10, found.titres().get(0).inMillilitres(), 1e-9);
    assertEquals(0, u(found, "scatter around Gran's line"), 1e-6);
    Step titre = titre(found);
    assertEquals("where Gran's line of 4 readings meets the axis", titre.text());
    Step.Detail detail = titre.detail().orElseThrow();
    assertTrue(detail.holds());
    assertEquals(4, detail.lines().size());
    // (100 + 12) x 10^-pH is 0.02 x 2.
    assertTrue(detail.lines().get(0).startsWith("12"), detail.lines().get(0));
    assertTrue(detail.lines().get(0).endsWith(" mL: 0.040000 mL mol/L"), detail.lines().get(0));
  }

  /** The standard error of where a regression line meets the axis. */
  @Test
  void theScatterAroundGransLineIsTheUncertaintyOfItsPlace() {
    double[] volumes = {12, 14, 16, 18, 21};
    double[] acid = {0.041, 0.0795, 0.1195, 0.1612, 0.2196};
    double[] read = new double[5];
    double meanX = 0;
    double meanY = 0;
    for (int i = 0; i < 5; i++) {
      read[i] = -Math.log10(acid[i] / (100 + volumes[i]));
      meanX += volumes[i] / 5;
      meanY += acid[i] / 5;
    }
    double xx = 0;
    double xy = 0;
    for (int i = 0; i < 5; i++) {
      xx += (volumes[i] - meanX) * (volumes[i] - meanX);
      xy += (volumes[i] - meanX) * (acid[i] - meanY);
    }
    double slope = xy / xx;
    double squares = 0;
    for (int i = 0; i < 5; i++) {
      double off = acid[i] - meanY - slope * (volumes[i] - meanX);
      squares += off * off;
    }
    double place = meanX - meanY / slope;
    double u = Math.sqrt(squares / 3 * (1 / 5.0 + (place - meanX) * (place - meanX) / xx)) / slope;
    AlkalinityResult found = HUNDRED.log(volumes, read).alkalinityCurve().byGran(pH(4), pH(2));
    assertEquals(place, found.titres().get(0).inMillilitres(), 1e-9);
    assertEquals(u, u(found, "scatter around Gran's line"), 1e-9);
    assertEquals(
        greatestMiss(
            place,
            titration -> {
              double[] pH = titration.pHAfter(volumes);
              double[] excess = new double[5];
              for (int i = 0; i < 5; i++) {
                excess[i] = (100 + volumes[i]) * Math.pow(10, -pH[i]);
              }
              return axis(volumes, excess);
            }),
        Math.sqrt(3) * u(found, "bias of Gran's line in model waters"),
        1e-6);
  }

  private static double axis(double[] x, double[] y) {
    double meanX = Arrays.stream(x).average().orElseThrow();
    double meanY = Arrays.stream(y).average().orElseThrow();
    double xx = 0;
    double xy = 0;
    for (int i = 0; i < x.length; i++) {
      xx += (x[i] - meanX) * (x[i] - meanX);
      xy += (x[i] - meanX) * (y[i] - meanY);
    }
    return meanX - meanY * xx / xy;
  }

  /** Bicarbonate, bicarbonate with 10 mmol/L of salt, and lye, all of one equivalence volume. */
  private static double greatestMiss(
      double equivalence, ToDoubleFunction<SimulatedTitration> place) {
    double alkalinity = 0.02 * equivalence / 100;
    Solution bicarbonate =
        Solution.at(celsius(20)).with(Base.SODIUM_BICARBONATE, molPerL(alkalinity));
    double greatest = 0;
    for (Solution water :
        List.of(
            bicarbonate,
            bicarbonate.with(Salt.SODIUM_CHLORIDE, mmolPerL(10)),
            Solution.at(celsius(20)).with(Base.SODIUM_HYDROXIDE, molPerL(alkalinity)))) {
      SimulatedTitration titration =
          SimulatedTitration.of(water, ACID.solution(celsius(20)), mL(100));
      greatest = Math.max(greatest, Math.abs(place.applyAsDouble(titration) - equivalence));
    }
    return greatest;
  }

  @Test
  void readingsAtEitherLimitCountForGransLine() {
    TitrationLog log = gran(HUNDRED, 10, 12, 14, 16, 18, 20);
    List<Reading> readings = log.readings();
    AlkalinityCurve curve = log.alkalinityCurve();
    assertEquals(
        "where Gran's line of 3 readings meets the axis",
        titre(curve.byGran(readings.get(1).pH(), readings.get(3).pH())).text());
    String message =
        assertThrows(
                IllegalStateException.class,
                () -> curve.byGran(readings.get(1).pH(), readings.get(2).pH()))
            .getMessage();
    assertTrue(
        message.matches(
            "readings: 2 between pH 2\\.\\d+ and pH 3\\.\\d+ are not enough; Gran's function needs"
                + " three"),
        message);
  }

  @Test
  void aLineThatMeetsTheAxisBelowNothingIsRefused() {
    AlkalinityCurve curve = gran(HUNDRED, -5, 1, 2, 3, 4).alkalinityCurve();
    assertEquals(
        "readings: Gran's line meets the axis at -5.00 mL, so that there is no alkalinity, or they"
            + " do not lie on a line",
        assertThrows(IllegalStateException.class, curve::byGran).getMessage());
  }

  /** By hand: 5.0 at 9 mL and 4.0 at 10.5 mL are 4.33 at 10 mL. */
  @Test
  void theEndPointOfGransLineIsThePHReadThere() {
    double[] volumes = {0, 9, 10.5, 12, 14, 16, 20};
    double[] read = {8, 5, 4, past(12, 10), past(14, 10), past(16, 10), past(20, 10)};
    AlkalinityResult found = HUNDRED.log(volumes, read).alkalinityCurve().byGran();
    assertEquals(4.33, found.endPoint().value(), 1e-12);
  }

  /**
   * By hand: 2 mEq/L are 100.09 mg/L as CaCO3, ln(100.09 / 30) / ln 5 = 0.7486 of the way from 4.9
   * to 4.6; half of it 0.3179 of the way.
   */
  @Test
  void aLogThatStartsBehindItTakesTheEndPointThatFits() {
    assertEquals(
        4.68,
        gran(HUNDRED, 10, 12, 14, 16, 20).alkalinityCurve().byGran().endPoint().value(),
        1e-12);
    assertEquals(
        4.80,
        gran(HUNDRED.blank(mL(5)), 10, 12, 14, 16, 20)
            .alkalinityCurve()
            .byGran()
            .endPoint()
            .value(),
        1e-12);
  }

  @Test
  void anEndPointFitsAnAlkalinityAboveNothingOnly() {
    for (double none : new double[] {0, -1}) {
      TitrationAlkalinity alkalinity =
          TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(none, pH(4.5));
      assertTrue(
          assertThrows(
                  IllegalArgumentException.class, () -> AlkalinityCurve.endPointFor(alkalinity))
              .getMessage()
              .endsWith("mg/L as CaCO3 is not possible; more than 0 is allowed"));
    }
  }

  private static TitrationLog water(double milliequivalents, double step, int count) {
    Solution sample =
        Solution.at(celsius(20)).with(Base.SODIUM_BICARBONATE, mmolPerL(milliequivalents));
    double[] volumes = new double[count];
    for (int i = 0; i < count; i++) {
      volumes[i] = step * i;
    }
    return HUNDRED.log(
        volumes,
        SimulatedTitration.of(sample, ACID.solution(celsius(20)), mL(100)).pHAfter(volumes));
  }

  @Test
  void theFittingEndPointCountsWhatItMissesInModelWaters() {
    AlkalinityResult found = water(1, 0.25, 60).alkalinityCurve().toFittingEndPoint();
    double miss =
        greatestMiss(
            found.titres().get(0).inMillilitres(),
            titration -> titration.volumeTo(found.endPoint()).inMillilitres());
    assertEquals(
        miss / Math.sqrt(2),
        found.budget().row("fitting end point in model waters").input().standardUncertainty(),
        1e-9);
    // A millilitre of 0.02 mol/L on 100 mL.
    assertEquals(0.2, found.budget().row("fitting end point in model waters").sensitivity(), 1e-5);
    assertTrue(miss > 0.01, "miss " + miss);
  }

  @Test
  void theInflectionShowsTheThreeSlopesItRestsOn() {
    AlkalinityResult found = water(2, 0.5, 40).alkalinityCurve().toInflection();
    Step titre = titre(found);
    assertFalse(titre.text().contains("averaged"), titre.text());
    List<String> lines = titre.detail().orElseThrow().lines();
    assertEquals(3, lines.size());
    List<Double> slopes = new ArrayList<>();
    for (String line : lines) {
      assertTrue(line.matches("[0-9.]+ mL: [0-9.]+ pH per mL"), line);
      slopes.add(Double.parseDouble(line.replaceFirst(".*: ([0-9.]+) pH.*", "$1")));
    }
    assertTrue(slopes.get(1) > slopes.get(0) && slopes.get(1) > slopes.get(2), lines.toString());
    assertTrue(titre.detail().orElseThrow().holds());
    assertEquals(0.25 / Math.sqrt(3), u(found, "place of the inflection"), 1e-9);
  }

  @Test
  void aLogThatStartsBelowPHEightHasNoPhenolphthaleinAlkalinity() {
    AlkalinitySplit split =
        HUNDRED
            .log(new double[] {0, 5, 10, 12}, new double[] {7.5, 6.3, 4.5, 3.5})
            .alkalinityCurve()
            .split();
    String explained = split.carbonate().explain().toString();
    assertTrue(explained.contains("the first reading is below pH 8.3 already"), explained);
    assertEquals(0, split.carbonate().value().inMilliequivalentsPerLitre());
    assertEquals(2, split.bicarbonate().value().inMilliequivalentsPerLitre(), 1e-9);
    List<String> sources =
        split.bicarbonate().traced().sources().stream().map(Source::name).toList();
    assertTrue(sources.contains("concentration of HCl"), sources.toString());
  }

  @Test
  void aCurvePrintsHowManyReadingsItHas() {
    assertEquals(
        "3 readings of " + HUNDRED, gran(HUNDRED, 10, 12, 14, 16).alkalinityCurve().toString());
  }
}
