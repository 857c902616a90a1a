package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.brewchem.figure.Notice;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TitrationLogTest {

  private static final Titrant LYE = Titrant.sodiumHydroxide().of(molPerL(0.1));

  /** An invented beer: organic acids, phosphate, groups of protein, potassium; pH 4.3. */
  static final Solution BEER =
      Solution.at(celsius(20))
          .with(Acid.LACTIC, mmolPerL(1.4))
          .with(Acid.CITRIC, mmolPerL(0.6))
          .with(Acid.ACETIC, mmolPerL(1.8))
          .with(Acid.SUCCINIC, mmolPerL(0.6))
          .with(Acid.PHOSPHORIC, mmolPerL(6))
          .with(Component.group("carboxyl", -1, 4.3), mmolPerL(8))
          .with(Component.group("imidazole", 0, 6.1), mmolPerL(2))
          .with(Component.group("amino", 0, 9), mmolPerL(4))
          .with(Ion.CALCIUM, mmolPerL(1))
          .closedTo(pH(4.3));

  private static double[] volumes(int count, double step) {
    double[] volumes = new double[count];
    for (int i = 0; i < count; i++) {
      volumes[i] = i * step;
    }
    return volumes;
  }

  private static TitrationLog log(double[] volumes, double[] readings) {
    return LYE.titrate(mL(50)).at(celsius(20)).log(volumes, readings);
  }

  /** Simulate, then recover: the kernel says what the titration takes, the log finds it again. */
  @Test
  void theEndPointOfASimulatedBeerIsFoundAgain() {
    double[] volumes = volumes(120, 0.15);
    var titration = SimulatedTitration.of(BEER, LYE.solution(celsius(20)), mL(50));
    TitrationLog log = log(volumes, titration.pHAfter(volumes));
    double truth = titration.volumeTo(pH(8.2)).inMillilitres();
    assertEquals(truth, log.volumeTo(pH(8.2)).orElseThrow().inMillilitres(), 0.001);
    assertEquals(List.of(), log.notices());
    assertEquals(
        BEER.titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre(),
        log.acidity().value().inMilliequivalentsPerLitre(),
        0.3);
  }

  @Test
  void aBadPointIsNamedWhereverItStands() {
    double[] volumes = volumes(36, 0.25);
    double[] clean =
        SimulatedTitration.of(BEER, LYE.solution(celsius(20)), mL(50)).pHAfter(volumes);
    for (int bad = 2; bad < 34; bad++) {
      double[] readings = clean.clone();
      readings[bad] += bad % 2 == 0 ? 0.25 : -0.25;
      List<Notice> notices =
          log(volumes, readings).notices().stream()
              .filter(f -> f.code() == TitrationCode.BAD_POINT)
              .toList();
      assertEquals(1, notices.size(), "row " + (bad + 1) + ": " + notices);
      assertEquals(bad + 1, notices.get(0).row().orElseThrow());
    }
  }

  /** At 5 % over all readings of a log, about one log of noise in twenty has a false alarm. */
  @Test
  void noiseAloneSeldomRaisesAnAlarm() {
    double[] volumes = volumes(40, 0.4);
    double[] clean =
        SimulatedTitration.of(BEER, LYE.solution(celsius(20)), mL(50)).pHAfter(volumes);
    Random random = new Random(20261125);
    int alarms = 0;
    for (int i = 0; i < 400; i++) {
      double[] readings = clean.clone();
      for (int k = 0; k < readings.length; k++) {
        readings[k] += 0.02 * random.nextGaussian();
      }
      if (log(volumes, readings).notices().stream()
          .anyMatch(f -> f.code() == TitrationCode.BAD_POINT)) {
        alarms++;
      }
    }
    assertTrue(alarms <= 20, "alarms: " + alarms + " of 400");
  }

  /** Printed curves with the steepest jumps there are (Flowers et al. 14.7, Harvey Table 9.2). */
  @ParameterizedTest
  @ValueSource(strings = {"T05", "T06", "T09"})
  void aSteepCurveIsNoBadPoint(String curve) {
    List<double[]> rows = TestTable.curve(curve);
    TitrationLog log =
        LYE.titrate(mL(25))
            .with(Apparatus.usual().withEndPointReading(0.006))
            .log(
                rows.stream().mapToDouble(r -> r[0]).toArray(),
                rows.stream().mapToDouble(r -> r[1]).toArray());
    assertEquals(
        List.of(),
        log.notices().stream().filter(f -> f.code() == TitrationCode.BAD_POINT).toList());
  }

  @Test
  void stepsTooCoarseNextToTheEndPointAreSaid() {
    double[] volumes = {0, 5, 10, 13, 20, 22};
    TitrationLog log =
        log(
            volumes,
            SimulatedTitration.of(BEER, LYE.solution(celsius(20)), mL(50)).pHAfter(volumes));
    Notice coarse =
        log.notices().stream()
            .filter(f -> f.code() == TitrationCode.STEPS_TOO_COARSE)
            .findFirst()
            .orElseThrow();
    assertEquals(3, coarse.row().orElseThrow());
  }

  /**
   * The message names the side on which the readings miss the end point, and the last by volume.
   */
  @Test
  void aLogThatBeginsBeyondItsEndPointSaysSo() {
    TitrationLog beyond = log(new double[] {9.5, 10, 10.5}, new double[] {8.35, 8.7, 8.95});
    assertEquals(
        "readings: they begin at 9.5 mL: pH 8.35, beyond the end point of pH 8.2",
        assertThrows(IllegalStateException.class, beyond::acidity).getMessage());
    assertEquals(
        List.of("row 1: the log begins at pH 8.35, beyond the end point of pH 8.2"),
        beyond.notices().stream()
            .filter(n -> n.code() == TitrationCode.END_POINT_NOT_REACHED)
            .map(Notice::toString)
            .toList());
    TitrationLog before = log(new double[] {7, 8.5, 9, 5}, new double[] {6.6, 7.5, 7.9, 6});
    assertEquals(
        "readings: they end at 9 mL: pH 7.9 and do not reach the end point of pH 8.2",
        assertThrows(IllegalStateException.class, before::acidity).getMessage());
  }

  /**
   * Next to an inflection the nearest readings show no bend. The log is a charge balance of ours:
   * 1.0703 mmol/L of phosphoric acid (pKa 2.0, 6.9, 12), 0.51336 of citric (3.0, 4.5, 5.9), 6.50599
   * of lactic (3.75), 6.06252 of acetic (4.65), 0.89248 of succinic (4.1, 5.4) and 2.63677 of
   * ammonium (9.2), rounded to 0.01; its acidity is 12.095 mEq/L.
   */
  @Test
  void theIntervalHoldsWhereTheNearestReadingsShowNoBend() {
    AcidityResult found =
        Titrant.sodiumHydroxide()
            .of(molPerL(0.1), molPerL(0.0001))
            .titrate(mL(50))
            .log(
                new double[] {0, 0.9, 1.9, 2.9, 3.9, 4.9, 5.9, 6.9},
                new double[] {3.83, 4.1, 4.4, 4.72, 5.11, 5.76, 7.65, 9.57})
            .acidity();
    assertTrue(
        found.budget().result().expanded().halfWidth()
            > Math.abs(found.value().inMilliequivalentsPerLitre() - 12.095));
  }

  /** Another portion, dilution, blank or end point makes another titration, not a replicate. */
  @Test
  void onlyTheSameTitrationIsAReplicate() {
    double[] volumes = volumes(60, 0.3);
    double[] read = SimulatedTitration.of(BEER, LYE.solution(celsius(20)), mL(50)).pHAfter(volumes);
    SampleTitration usual = LYE.titrate(mL(50)).at(celsius(20)).to(pH(8.2));
    TitrationLog log = usual.log(volumes, read);
    assertDoesNotThrow(() -> log.acidity(usual.log(volumes, read)));
    for (SampleTitration other :
        List.of(
            LYE.titrate(mL(25)).at(celsius(20)).to(pH(8.2)),
            Titrant.sodiumHydroxide().of(molPerL(0.2)).titrate(mL(50)).at(celsius(20)).to(pH(8.2)),
            Titrant.potassiumHydroxide()
                .of(molPerL(0.1))
                .titrate(mL(50))
                .at(celsius(20))
                .to(pH(8.2)),
            usual.at(celsius(25)),
            usual.into(mL(100)),
            usual.with(Apparatus.usual().withEndPointReading(0.2)),
            usual.with(Apparatus.usual().withBuretteTolerance(mL(0.1))),
            usual.prediluted(2),
            usual.blank(mL(0.05)),
            usual.to(pH(8.1)))) {
      TitrationLog no = other.log(volumes, read);
      assertEquals(
          "replicates: \""
              + no.titration()
              + "\" is no replicate of \""
              + log.titration()
              + "\"; the same titrant, sample, dilution, blank, temperature and end point are"
              + " needed",
          assertThrows(IllegalArgumentException.class, () -> log.acidity(no)).getMessage());
    }
  }
}
