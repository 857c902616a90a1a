package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.titration.Reading.reading;
import static org.brewchem.titration.Weighing.khp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.brewchem.OutOfRangeException;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.junit.jupiter.api.Test;

/** What a titration says of replicates and logs that do not show what they seem to. */
class LogJudgementTest {

  private static final Titrant LYE = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0001));
  private static final Titrant ACID =
      Titrant.hydrochloricAcid().of(molPerL(0.02), molPerL(0.00002));
  private static final SampleTitration FIFTY = LYE.titrate(mL(50));

  private static boolean has(List<Notice> notices, TitrationCode code) {
    return notices.stream().anyMatch(notice -> notice.code() == code);
  }

  private static double expanded(Determination<?> found) {
    return found.budget().result().expanded().halfWidth();
  }

  private static double value(Determination<?> found) {
    return found.budget().result().value();
  }

  private static double truth() {
    return SimulatedTitration.of(TitrationLogTest.BEER, LYE.solution(celsius(20)), mL(50))
            .volumeTo(pH(8.2))
            .inMillilitres()
        * 2;
  }

  private static double[] read(double... volumes) {
    return SimulatedTitration.of(TitrationLogTest.BEER, LYE.solution(celsius(20)), mL(50))
        .pHAfter(volumes);
  }

  @Test
  void anOutlierAmongTitresAndAPairThatDiffersAreNamed() {
    AcidityResult four = FIFTY.took(mL(9.5), mL(9.52), mL(9.51), mL(19.5)).acidity();
    Notice outlier =
        four.notices().stream()
            .filter(n -> n.code() == TitrationCode.OUTLIER)
            .findFirst()
            .orElseThrow();
    assertEquals(4, outlier.row().orElseThrow());
    assertTrue(
        has(FIFTY.took(mL(9.5), mL(12)).acidity().notices(), TitrationCode.REPLICATES_DIFFER));
    AcidityResult alike = FIFTY.took(mL(9.5), mL(9.54)).acidity();
    assertFalse(has(alike.notices(), TitrationCode.REPLICATES_DIFFER));
    assertTrue(
        FIFTY.took(mL(9.5)).acidity().notices().get(0).text().contains("no published repeatab"));
    List<Notice> weighings =
        Titrant.sodiumHydroxide()
            .standardised(khp(g(0.4082), mL(19.98)), khp(g(0.4082), mL(24)))
            .standardisation()
            .orElseThrow()
            .notices();
    assertTrue(has(weighings, TitrationCode.REPLICATES_DIFFER), weighings.toString());
  }

  /** With a stated repeatability of 0.1 % four weighings of which one is 1 % off are named. */
  @Test
  void aKnownRepeatabilityFindsWhatGrubbsTestMisses() {
    Random random = new Random(20261126);
    int byGrubbs = 0;
    int byRange = 0;
    int falseAlarms = 0;
    for (int i = 0; i < 200; i++) {
      Weighing[] weighings = new Weighing[4];
      Weighing[] sound = new Weighing[4];
      for (int k = 0; k < 4; k++) {
        double titre = 20 * (1 + 0.001 * random.nextGaussian());
        sound[k] = khp(g(0.4084), mL(titre));
        weighings[k] = khp(g(0.4084), mL(k == 2 ? titre * 1.01 : titre));
      }
      Apparatus known = Apparatus.usual().withRepeatability(0.001);
      List<Notice> notices = standardised(known, weighings);
      byGrubbs += has(notices, TitrationCode.OUTLIER) ? 1 : 0;
      byRange += has(notices, TitrationCode.REPLICATES_DIFFER) ? 1 : 0;
      falseAlarms += has(standardised(known, sound), TitrationCode.REPLICATES_DIFFER) ? 1 : 0;
    }
    assertTrue(byGrubbs > 100 && byGrubbs < 150, "by Grubbs' test " + byGrubbs);
    assertTrue(byRange >= 199, "by the range " + byRange);
    assertTrue(falseAlarms <= 16, "false alarms " + falseAlarms);
  }

  /**
   * Of n values of which n - 1 are equal, G is (n-1)/sqrt(n) whatever the distance: 1.1547 of three
   * and 1.5 of four, above the critical 1.1543 and 1.4812. The usual burette is right to 0.03 mL,
   * so that one volume can be read as two that lie 0.06 mL apart.
   */
  @Test
  void aGraduationIsNoOutlier() {
    assertFalse(outlierAmong(Apparatus.usual(), 14.50, 14.50, 14.55));
    assertFalse(outlierAmong(Apparatus.usual(), 14.50, 14.50, 14.50, 14.55));
    assertFalse(outlierAmong(Apparatus.usual(), 14.50, 14.50, 14.56));
    assertFalse(outlierAmong(Apparatus.usual(), 14.50, 14.50, 14.5001));
    assertFalse(outlierAmong(Apparatus.usual(), 14.50, 14.501, 14.56));
    assertTrue(outlierAmong(Apparatus.usual(), 14.50, 14.501, 14.5625));
    // Of equal ones only the range can tell: 3.31 usual repeatabilities of 1 %, here 0.48 mL.
    assertFalse(outlierAmong(Apparatus.usual(), 14.50, 14.50, 14.90));
    assertTrue(outlierAmong(Apparatus.usual(), 14.50, 14.50, 15.10));
    assertTrue(outlierAmong(Apparatus.usual(), 14.50, 14.53, 14.52, 14.80));
    Apparatus coarse = Apparatus.usual().withBuretteTolerance(mL(0.05));
    assertFalse(outlierAmong(coarse, 14.4, 14.5, 14.5));
    assertTrue(outlierAmong(Apparatus.usual(), 14.50, 14.501, 14.59));
    assertFalse(outlierAmong(coarse, 14.50, 14.501, 14.59));
    Apparatus silent = Apparatus.usual().withBuretteTolerance(mL(0));
    assertFalse(outlierAmong(silent, 14.50, 14.50, 14.55));
    assertTrue(outlierAmong(silent, 14.50, 14.51, 14.50, 14.60));
    assertFalse(
        has(
            standardised(
                Apparatus.usual(),
                khp(g(0.4084), mL(20)),
                khp(g(0.4084), mL(20)),
                khp(g(0.4084), mL(20.05))),
            TitrationCode.OUTLIER));
  }

  private static boolean outlierAmong(Apparatus apparatus, double... titres) {
    return has(
        LYE.titrate(mL(50))
            .with(apparatus)
            .took(Arrays.stream(titres).mapToObj(v -> mL(v)).toArray(Volume[]::new))
            .acidity()
            .notices(),
        TitrationCode.OUTLIER);
  }

  /**
   * Good titres, normal and then rounded to the graduation: at most the nominal 5 % are named, and
   * three standard deviations of so few. Before the reading counted it was 10 to 59 %. Where the
   * titres scatter by far more than the burette errs it stays Grubbs' test of 5 %.
   */
  @Test
  void goodReplicatesAreNamedAsOftenAsStated() {
    Random random = new Random(20261128);
    int trials = 300;
    double most = trials * 0.05 + 3 * Math.sqrt(trials * 0.05 * 0.95);
    double[][] cases = {{0.05, 0.02}, {0.02, 0.01}, {0.01, 0.01}, {0.05, 0.05}, {0.001, 1}};
    for (double[] one : cases) {
      for (int count = 3; count <= 5; count++) {
        int named = 0;
        for (int i = 0; i < trials; i++) {
          double[] titres = new double[count];
          for (int k = 0; k < count; k++) {
            titres[k] = one[0] * Math.rint((14.5 + one[1] * random.nextGaussian()) / one[0]);
          }
          named += outlierAmong(Apparatus.usual(), titres) ? 1 : 0;
        }
        String text = count + " read to " + one[0] + " mL, s " + one[1] + ": " + named;
        assertTrue(named <= most, text);
        assertTrue(one[1] < 1 || named >= 2 * trials * 0.05 - most, text);
      }
    }
  }

  private static List<Notice> standardised(Apparatus apparatus, Weighing... weighings) {
    return Titrant.sodiumHydroxide()
        .standardised(apparatus, weighings)
        .standardisation()
        .orElseThrow()
        .notices();
  }

  @Test
  void aLogWithoutTwoVolumesIsRefused() {
    OutOfRangeException refused =
        assertThrows(
            OutOfRangeException.class,
            () -> FIFTY.log(new double[] {5, 5, 5}, new double[] {4, 8, 9}));
    assertTrue(refused.getMessage().contains("two that differ"), refused.getMessage());
    assertThrows(
        OutOfRangeException.class,
        () -> FIFTY.log(new double[] {0, 5, 6}, new double[] {4, 8, -1}));
    assertThrows(
        OutOfRangeException.class,
        () -> FIFTY.log(new double[] {0, 5, 6}, new double[] {4, 8, 15.5}));
  }

  @Test
  void twoReadingsFarApartAndADoubledVolumeWidenTheUncertainty() {
    AcidityResult apart = FIFTY.log(new double[] {0, 9}, read(0, 9)).acidity();
    assertTrue(Math.abs(value(apart) - truth()) < expanded(apart), apart.toString());
    assertTrue(has(apart.notices(), TitrationCode.STEPS_TOO_COARSE));
    AcidityResult doubled =
        FIFTY.log(new double[] {0, 4, 5, 5, 6}, new double[] {4.4, 7.2, 7.9, 8.5, 9}).acidity();
    assertTrue(expanded(doubled) > 0.4, doubled.toString());
    AcidityResult flat =
        FIFTY.log(new double[] {0, 5, 10, 15}, new double[] {8.2, 8.2, 8.2, 8.2}).acidity();
    assertTrue(Double.isFinite(expanded(flat)) && expanded(flat) > 10, flat.toString());
    assertFalse(flat.budget().toString().contains("NaN"));
  }

  /** Readings closer than their noise: the first to pass the end point would come far too early. */
  @Test
  void tenThousandNoisyReadingsGiveTheTruth() {
    double end =
        SimulatedTitration.of(TitrationLogTest.BEER, LYE.solution(celsius(20)), mL(50))
            .volumeTo(pH(10.8))
            .inMillilitres();
    double[] volumes = new double[10_000];
    for (int i = 0; i < volumes.length; i++) {
      volumes[i] = end * i / (volumes.length - 1);
    }
    double[] pH = read(volumes);
    Random random = new Random(20261126);
    for (int i = 0; i < pH.length; i++) {
      pH[i] += 0.02 * random.nextGaussian();
    }
    EndPointSearch.Place place = new EndPointSearch(volumes, pH, true, 0.02).at(8.2);
    assertEquals(truth() / 2, place.millilitres(), 0.01);
    assertTrue(place.isFitted());
  }

  @Test
  void anAcidLogNeedsNoEndPoint() {
    TitrationLog log = ACID.titrate(mL(50)).log(new double[] {0, 1, 2}, new double[] {5.2, 5, 4.8});
    assertFalse(has(log.notices(), TitrationCode.END_POINT_NOT_REACHED));
    assertTrue(has(log.to(pH(4.5)).notices(), TitrationCode.END_POINT_NOT_REACHED));
  }

  /** A reading after a wait shows lag; the way back shows it as a difference of volumes. */
  @Test
  void lagIsFoundByWaitsAndByTheWayBackAndElseSaidToBeUnchecked() {
    double[] volumes = new double[36];
    for (int i = 0; i < volumes.length; i++) {
      volumes[i] = 0.4 * i;
    }
    double[] actual = read(volumes);
    List<Reading> waited = new ArrayList<>();
    List<Reading> sound = new ArrayList<>();
    Random random = new Random(20261126);
    double shown = actual[0];
    for (int i = 0; i < volumes.length; i++) {
      shown = actual[i] - 0.2 * (actual[i] - shown);
      long clock = 60L * i;
      double noise = 0.003;
      waited.add(at(volumes[i], shown + noise * random.nextGaussian(), clock));
      sound.add(at(volumes[i], actual[i] + noise * random.nextGaussian(), clock));
      shown = actual[i] - 0.2 * (actual[i] - shown);
      waited.add(at(volumes[i], shown + noise * random.nextGaussian(), clock + 30));
      sound.add(at(volumes[i], actual[i] + noise * random.nextGaussian(), clock + 30));
    }
    assertTrue(has(FIFTY.log(waited).acidity().notices(), TitrationCode.READINGS_STILL_MOVING));
    AcidityResult still = FIFTY.log(sound).acidity();
    assertFalse(has(still.notices(), TitrationCode.READINGS_STILL_MOVING));
    assertFalse(has(still.notices(), TitrationCode.LAG_AND_DRIFT_UNCHECKED));
    assertTrue(
        has(FIFTY.log(volumes, actual).acidity().notices(), TitrationCode.LAG_AND_DRIFT_UNCHECKED));

    Titrant acid = Titrant.hydrochloricAcid().of(molPerL(0.1), molPerL(0.0001));
    double last = volumes[volumes.length - 1];
    double net = truth() / 2;
    double[] out = {last - net - 0.4, last - net, last - net + 0.4};
    TitrationLog meets = acid.titrate(mL(50)).log(out, new double[] {8.5, 8.2, 7.9});
    TitrationLog misses =
        acid.titrate(mL(50))
            .log(
                new double[] {out[0] + 0.5, out[1] + 0.5, out[2] + 0.5},
                new double[] {8.5, 8.2, 7.9});
    AcidityResult agreeing = FIFTY.log(volumes, actual).andBack(meets).acidity();
    AcidityResult apart = FIFTY.log(volumes, actual).andBack(misses).acidity();
    assertFalse(has(agreeing.notices(), TitrationCode.DIRECTIONS_DISAGREE));
    assertTrue(has(apart.notices(), TitrationCode.DIRECTIONS_DISAGREE));
    assertTrue(expanded(apart) > 2 * expanded(agreeing));
    assertThrows(
        IllegalArgumentException.class,
        () -> FIFTY.log(volumes, actual).andBack(FIFTY.log(volumes, actual)));
  }

  private static Reading at(double volume, double read, long seconds) {
    return reading(mL(volume), pH(read)).at(Duration.ofSeconds(seconds));
  }

  /**
   * Logs of an automatic burette: 300 readings, steps down to 0.0005 mL where the curve is steep,
   * noise of 0.1 mV. Within 3 % or refused.
   */
  @Test
  void theInflectionOfDenseNoisyLogsIsRightOrRefused() {
    Random random = new Random(20261126);
    int refused = 0;
    for (int i = 0; i < 40; i++) {
      double alkalinity = 0.6 + 5 * random.nextDouble();
      double equivalence = alkalinity * 5;
      double[] volumes = new double[300];
      for (int k = 1; k < volumes.length; k++) {
        double off = Math.abs(volumes[k - 1] - equivalence);
        volumes[k] = volumes[k - 1] + Math.max(0.0005, 0.02 * off);
      }
      double[] pH = water(alkalinity, volumes);
      for (int k = 0; k < pH.length; k++) {
        pH[k] += 0.1 / 58.2 * random.nextGaussian();
      }
      try {
        double found =
            value(ACID.titrate(mL(100)).log(volumes, pH).alkalinityCurve().toInflection());
        assertEquals(alkalinity, found, 0.03 * alkalinity);
      } catch (IllegalStateException e) {
        refused++;
      }
    }
    assertTrue(refused <= 8, "refused " + refused);
  }

  private static double[] water(double milliequivalents, double[] volumes) {
    Solution water =
        Solution.at(celsius(20)).with(Base.SODIUM_BICARBONATE, mmolPerL(milliequivalents));
    return SimulatedTitration.of(water, ACID.solution(celsius(20)), mL(100)).pHAfter(volumes);
  }

  /** Noise-free soft waters in steps of 0.1 to 1 mL: within a step and a half, or refused. */
  @Test
  void theInflectionOfSoftWatersIsRightOrRefused() {
    Random random = new Random(20261126);
    int refused = 0;
    for (int i = 0; i < 100; i++) {
      double alkalinity = 0.2 + 1.8 * random.nextDouble();
      double step = 0.1 + 0.9 * random.nextDouble();
      double[] volumes = new double[60];
      for (int k = 0; k < volumes.length; k++) {
        volumes[k] = step * k;
      }
      try {
        double found =
            value(
                ACID.titrate(mL(100))
                    .log(volumes, water(alkalinity, volumes))
                    .alkalinityCurve()
                    .toInflection());
        assertEquals(alkalinity, found, 0.2 * step + 0.01);
      } catch (IllegalStateException e) {
        refused++;
      }
    }
    assertTrue(refused <= 25, "refused " + refused);
  }

  @Test
  void gransLineServesALogThatStartsPastTheEquivalencePoint() {
    double[] volumes = new double[20];
    for (int k = 0; k < volumes.length; k++) {
      volumes[k] = 11 + 0.5 * k;
    }
    AlkalinityResult gran =
        ACID.titrate(mL(100)).log(volumes, water(2, volumes)).alkalinityCurve().byGran();
    assertTrue(Math.abs(value(gran) - 2) < expanded(gran), gran.toString());
    assertEquals(4.66, gran.endPoint().value(), 0.05);
  }

  /** Known biases count: the truth lies within U at alkalinities from 0.3 to 8 mEq/L. */
  @Test
  void gransLineAndTheFittingEndPointKnowTheirBias() {
    for (double alkalinity : new double[] {0.3, 0.6, 1, 1.5, 2, 3, 5, 8}) {
      double[] volumes = new double[700];
      for (int k = 0; k < volumes.length; k++) {
        volumes[k] = 0.1 * k;
      }
      AlkalinityCurve curve =
          ACID.titrate(mL(100)).log(volumes, water(alkalinity, volumes)).alkalinityCurve();
      for (AlkalinityResult result : List.of(curve.byGran(), curve.toFittingEndPoint())) {
        assertTrue(
            Math.abs(value(result) - alkalinity) < expanded(result), alkalinity + ": " + result);
      }
    }
  }

  @Test
  void aFittedCurveNamesAllItsBadReadingsAndWantsAPHThatMoves() {
    double[] volumes = new double[30];
    double[] perSample = new double[30];
    for (int k = 0; k < volumes.length; k++) {
      volumes[k] = 0.6 * k;
      perSample[k] = volumes[k] / 100;
    }
    double[] pH = water(2, volumes);
    Random random = new Random(20261126);
    for (int k = 0; k < pH.length; k++) {
      pH[k] += 0.003 * random.nextGaussian();
    }
    pH[5] += 0.1;
    pH[12] -= 0.08;
    pH[24] += 0.09;
    Solution known = Solution.at(celsius(20)).with(Base.SODIUM_BICARBONATE, mmolPerL(0));
    CurveFit.Problem problem =
        CurveFit.of(known, ACID.solution(celsius(20)))
            .unknownTotal(Component.CARBONATE)
            .unknownInertCharge();
    List<Long> rows =
        problem.to(perSample, pH).notices().stream().map(n -> n.row().orElseThrow()).toList();
    assertEquals(List.of(6L, 13L, 25L), rows);
    OutOfRangeException flat =
        assertThrows(
            OutOfRangeException.class,
            () -> problem.to(new double[] {0, 1, 2, 3}, new double[] {5, 5, 5, 5}));
    assertTrue(flat.getMessage().contains("a pH that moves"));
  }
}
