package org.brewchem.water;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.substance.Ion;
import org.brewchem.water.Suspicions.Alternative;
import org.brewchem.water.Suspicions.Cause;
import org.junit.jupiter.api.Test;

/** The shares by hand, with the weights and spreads of suspicions.csv and usual-waters.csv. */
class SuspicionsTest {

  private static final Ion FLUORIDE = Constituent.FLUORIDE.ion().orElseThrow();

  private static ReportedBalance balance(Map<Ion, Double> equivalents, Ion... missing) {
    return new ReportedBalance(new LinkedHashMap<>(equivalents), List.of(missing));
  }

  private static double normal(double deviation, double spread) {
    return Math.exp(-Math.pow(deviation / spread, 2) / 2) / spread / Math.sqrt(2 * Math.PI);
  }

  private static double usual(double milligrams, double median, double spread) {
    return 0.97 * normal(Math.log10(milligrams / median), spread) + 0.03 / 8;
  }

  private static double right(double percent) {
    return 0.8 * normal(percent, 1.5) + 0.2 * normal(percent, 4);
  }

  /** What a report that is bad in no special way weighs: Student with 3 degrees of freedom. */
  private static double general(double percent) {
    double student = 2 / (Math.PI * Math.sqrt(3)) / Math.pow(1 + percent * percent / 75, 2);
    return 0.5 * student / 5;
  }

  private static void assertShare(double weight, double general, Optional<Cause> cause) {
    assertEquals(weight / (weight + general), cause.orElseThrow().share(), 1e-9);
  }

  /** 5 mEq/L against 52: a tenth of the chloride leaves 5.2, which is 2 % off. */
  @Test
  void aSlipOfTenWeighsByTheBalanceAndByHowUsualTheWaterIsThen() {
    double milligrams = 52 / Ion.CHLORIDE.milliequivalentsPerMilligram();
    double before = -100 * 47 / 57.0;
    double after = -100 * 0.2 / 10.2;
    double fit = usual(milligrams / 10, 25, 0.6) / usual(milligrams, 25, 0.6);
    assertShare(
        0.3 / 16 * right(after) * fit,
        general(before),
        Suspicions.alone(
            balance(Map.of(Ion.SODIUM, 5.0, Ion.CHLORIDE, 52.0)),
            List.of(new Alternative(WaterCode.TENFOLD_SLIP, Ion.CHLORIDE, 0.1, "it were less"))));
  }

  /** Nothing is known of how much fluoride waters hold: every decade is as usual as any. */
  @Test
  void anotherBasisOfAnIonThatNoTableKnowsWeighsTheSameEverywhere() {
    double milligrams = 2 / FLUORIDE.milliequivalentsPerMilligram();
    double fit = usual(milligrams * 5, 1, 8) / usual(milligrams, 1, 8);
    Optional<Cause> cause =
        Suspicions.alone(
            balance(Map.of(Ion.SODIUM, 10.0, FLUORIDE, 2.0)),
            List.of(
                new Alternative(WaterCode.SULFATE_PERHAPS_SULFUR, FLUORIDE, 5, "it were another")));
    assertShare(0.08 * right(0) * fit, general(100 * 8 / 12.0), cause);
    assertEquals(
        new Cause(
            WaterCode.SULFATE_PERHAPS_SULFUR,
            FLUORIDE,
            "if it were another: ion balance +0.0 % at an anion sum of 10.0 mEq/L: acceptable"
                + " (limit 2 %)",
            cause.orElseThrow().share()),
        cause.orElseThrow());
  }

  @Test
  void aMissingIonWeighsByHowUsualWhatClosesTheBalanceIs() {
    double chloride = 1.5 / Ion.CHLORIDE.milliequivalentsPerMilligram();
    double percent = 100 * 1.5 / 8.5;
    assertShare(
        10 * usual(chloride, 25, 0.6) / (Math.log(10) * percent * (1 - percent / 100) + 1),
        general(percent),
        Suspicions.alone(
            balance(Map.of(Ion.SODIUM, 5.0, Ion.SULFATE, 3.5), Ion.CHLORIDE), List.of()));
    double nitrate = 1.5 / Ion.NITRATE.milliequivalentsPerMilligram();
    assertShare(
        2 * usual(nitrate, 5, 0.8) / (Math.log(10) * percent * (1 - percent / 100) + 1),
        general(percent),
        Suspicions.alone(
            balance(Map.of(Ion.SODIUM, 5.0, Ion.CHLORIDE, 3.5), Ion.NITRATE), List.of()));
  }

  @Test
  void aMissingIonOfTheSignThatIsInExcessIsNoCause() {
    assertEquals(
        Optional.empty(),
        Suspicions.alone(
            balance(Map.of(Ion.SODIUM, 5.0, Ion.SULFATE, 3.5), Ion.POTASSIUM), List.of()));
    assertEquals(
        Optional.empty(),
        Suspicions.alone(balance(Map.of(Ion.SODIUM, 5.0, Ion.SULFATE, 3.5), FLUORIDE), List.of()));
  }

  /** 10.5 against 9.5 is 5 % exactly; both are beyond what Standard Methods allow. */
  @Test
  void nothingIsSuspectedUpToFivePerCentOrWithinTheLimitOfTheBalance() {
    assertEquals(
        Optional.empty(),
        Suspicions.alone(
            balance(Map.of(Ion.SODIUM, 10.5, Ion.SULFATE, 9.5), Ion.CHLORIDE), List.of()));
    assertTrue(
        Suspicions.alone(
                balance(Map.of(Ion.SODIUM, 10.6, Ion.SULFATE, 9.5), Ion.CHLORIDE), List.of())
            .isPresent());
    assertEquals(
        Optional.empty(),
        Suspicions.alone(
            balance(Map.of(Ion.SODIUM, 0.3, Ion.SULFATE, 0.15), Ion.CHLORIDE), List.of()));
  }

  @Test
  void anIonThatIsNotThereCannotStandOnAnotherBasis() {
    List<Alternative> sulfur =
        List.of(new Alternative(WaterCode.SULFATE_PERHAPS_SULFUR, Ion.SULFATE, 3, "it were"));
    assertEquals(
        Optional.empty(),
        Suspicions.alone(balance(Map.of(Ion.SODIUM, 5.0, Ion.CHLORIDE, 3.0)), sulfur));
    assertEquals(
        Optional.empty(),
        Suspicions.alone(
            balance(Map.of(Ion.SODIUM, 5.0, Ion.CHLORIDE, 3.0, Ion.SULFATE, 0.0)), sulfur));
  }

  @Test
  void aRuleThatNoRowStatesIsRefused() {
    assertEquals(
        "suspicions.csv: no rule none",
        assertThrows(IllegalStateException.class, () -> Suspicions.rule("none")).getMessage());
  }
}
