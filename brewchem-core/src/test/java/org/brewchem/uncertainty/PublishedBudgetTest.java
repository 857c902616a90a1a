package org.brewchem.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;

/** Worked examples of published guides. All inputs and printed results are from memory. */
class PublishedBudgetTest {

  private static final int DRAWS = 1_000_000;

  private static final Input GROSS = Input.uniform("balance, gross", 0, 0.00015, "g");
  private static final Input TARE = Input.uniform("balance, tare", 0, 0.00015, "g");
  private static final Input PURITY = Input.uniform("purity of KHP", 1.0, 0.0005, "");
  private static final Input MOLAR_MASS =
      Input.normal("molar mass of KHP", 204.2212, 0.0038, "g/mol");

  // EURACHEM/CITAC Guide CG 4, 3rd ed. (2012), example A2: 0.10214 mol/L, u 0.00010.
  @Test
  void theStandardisationOfSodiumHydroxide() {
    MeasurementModel model =
        MeasurementModel.of("c(NaOH)", "mol/L")
            .with(GROSS, TARE, PURITY, MOLAR_MASS)
            .with(
                Input.triangular("volume, calibration", 18.64, 0.03, "mL"),
                Input.normal("volume, temperature", 0, 0.006, "mL"),
                Input.normal("repeatability", 1, 0.0005, ""))
            .calculatedBy(
                x -> 1000 * (0.3888 + x[0] - x[1]) * x[2] * x[6] / (x[3] * (x[4] + x[5])));
    Budget budget = model.linear();
    UncertainValue result = budget.result();
    assertEquals(0.10214, result.value(), 0.000005);
    assertEquals(0.00010, result.standardUncertainty(), 0.000005);
    assertEquals("0.10214 mol/L, u 0.00010", result.toString());
    // The relative contributions, put together by hand from the same inputs.
    assertEquals(
        Math.sqrt(
            2 * Math.pow(0.00015 / 0.3888, 2) / 3
                + Math.pow(0.0005, 2) / 3
                + Math.pow(0.0038 / 204.2212, 2)
                + (0.03 * 0.03 / 6 + 0.006 * 0.006) / (18.64 * 18.64)
                + Math.pow(0.0005, 2)),
        result.relativeStandardUncertainty().orElseThrow(),
        1e-9);
    LinearityCheck check = model.monteCarlo(DRAWS, 2012).comparedWith(budget, 0.02);
    assertEquals(LinearityCheck.Verdict.AGREES, check.verdict(), check::toString);
  }

  // EURACHEM/CITAC Guide CG 4, 3rd ed. (2012), example A3: 0.10139 mol/L, u 0.00018 as printed;
  // the inputs as remembered give 0.000185. The summary table of the 2000 edition printed 0.00016,
  // which its own components contradict.
  @Test
  void theTitrationOfHydrochloricAcid() {
    Budget budget =
        MeasurementModel.of("c(HCl)", "mol/L")
            .with(GROSS, TARE, PURITY, MOLAR_MASS)
            .with(
                Input.triangular("volume of NaOH for KHP, calibration", 18.64, 0.03, "mL"),
                Input.uniform("volume of NaOH for KHP, temperature", 0, 0.016, "mL"),
                Input.triangular("volume of NaOH for HCl, calibration", 14.89, 0.03, "mL"),
                Input.uniform("volume of NaOH for HCl, temperature", 0, 0.013, "mL"),
                Input.triangular("volume of HCl, calibration", 15, 0.02, "mL"),
                Input.uniform("volume of HCl, temperature", 0, 0.013, "mL"),
                Input.normal("repeatability", 1, 0.001, ""))
            .calculatedBy(
                x -> {
                  double lye = 1000 * (0.3888 + x[0] - x[1]) * x[2] / (x[3] * (x[4] + x[5]));
                  return lye * (x[6] + x[7]) / (x[8] + x[9]) * x[10];
                })
            .linear();
    double u = budget.result().standardUncertainty();
    assertEquals(0.10139, budget.result().value(), 0.000005);
    assertEquals(0.000185, u, 0.0000005);
    assertEquals(0.00018, u, 0.00001, "the tolerance is one unit of the printed digit");
    assertFalse(Math.abs(u - 0.00016) < 0.00001, "the misprint must not be reproduced");
    assertEquals(1, budget.rows().stream().mapToDouble(Budget.Row::shareOfVariance).sum(), 1e-12);
  }

  // JCGM 100:2008 (GUM), H.1: length of a gauge block 50 000 838 nm, u 32 nm, effective degrees of
  // freedom 16 after cutting 16.7.
  @Test
  void theGaugeBlockHasItsDegreesOfFreedom() {
    Budget budget =
        MeasurementModel.of("length", "nm")
            .with(
                Input.student("length of the standard", 50_000_623, 25, 18, "nm"),
                Input.student("difference", 215, 9.7, 25.6, "nm"),
                Input.uniform("expansion coefficient", 11.5e-6, 2e-6, "1/°C"),
                Input.normal("temperature deviation", -0.1, 0.41, "°C"),
                Input.student("difference in expansion", 0, 0.58e-6, 50, "1/°C"),
                Input.student("difference in temperature", 0, 0.029, 2, "°C"))
            .calculatedBy(x -> x[0] + x[1] - x[0] * (x[4] * x[3] + x[2] * x[5]))
            .linear();
    UncertainValue result = budget.result();
    assertEquals(50_000_838, result.value(), 0.5);
    assertEquals(32, result.standardUncertainty(), 0.5);
    assertEquals(16, Math.floor(result.degreesOfFreedom()));
    assertEquals(
        93,
        result.withDegreesOfFreedom(16).expandedAt(0.99).coverageFactor() * 32,
        0.5,
        "U at 99 % as the guide computes it, from the rounded u");
    assertEquals(2.9, budget.row("difference in expansion").contribution(), 0.05);
    assertEquals(0, budget.row("temperature deviation").contribution(), 1e-6);
  }

  // JCGM 101:2008, 9.2: a sum of four quantities. Normal, each u 1: u 2, 95 % interval -3.92 to
  // 3.92. Rectangular: -3.88 to 3.88. One rectangular with u 10: u 10.1, -17.0 to 17.0, whereas the
  // linear interval is -19.8 to 19.8.
  @Test
  void aSumOfFourQuantities() {
    MonteCarlo normal = sum(i -> Input.normal("x" + i, 0, 1, "")).monteCarlo(DRAWS, 1);
    assertEquals(2.00, normal.standardDeviation(), 0.005);
    assertInterval(-3.92, 3.92, 0.005, normal);

    double sqrt3 = Math.sqrt(3);
    MeasurementModel uniform = sum(i -> Input.uniform("x" + i, 0, sqrt3, ""));
    assertInterval(-3.88, 3.88, 0.005, uniform.monteCarlo(DRAWS, 1));

    MeasurementModel oneLarge =
        sum(i -> Input.uniform("x" + i, 0, i == 3 ? 10 * sqrt3 : sqrt3, ""));
    MonteCarlo draws = oneLarge.monteCarlo(DRAWS, 1);
    assertEquals(10.1, draws.standardDeviation(), 0.05);
    assertInterval(-17.0, 17.0, 0.05, draws);
    assertEquals(19.8, oneLarge.linear().result().expandedAt(0.95).halfWidth(), 0.1);
    LinearityCheck check = draws.comparedWith(oneLarge.linear(), 0.05);
    assertEquals(LinearityCheck.Verdict.DIFFERS, check.verdict());
    assertEquals(0, check.standardUncertaintyDifference().orElseThrow(), 0.005);
  }

  // JCGM 101:2008, 9.4: mass calibration, difference from nominal. First-order: u 0.0539 mg,
  // interval 1.1285 to 1.3395 mg. Monte Carlo: u 0.0754 mg, shortest interval 1.0834 to 1.3825 mg.
  @Test
  void theCalibrationOfAMassIsNotLinear() {
    MeasurementModel model =
        MeasurementModel.of("difference", "mg")
            .with(
                Input.normal("reference mass", 100_000.000, 0.050, "mg"),
                Input.normal("added mass", 1.234, 0.020, "mg"),
                Input.uniform("density of air", 1.20, 0.10, "kg/m3"),
                Input.uniform("density of the weight", 8000, 1000, "kg/m3"),
                Input.uniform("density of the reference", 8000, 50, "kg/m3"))
            .calculatedBy(x -> (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 1e5);
    Budget budget = model.linear();
    assertEquals(1.2340, budget.result().value(), 0.00005);
    assertEquals(0.0539, budget.result().standardUncertainty(), 0.00005);
    assertEquals(1.1285, budget.result().expandedAt(0.95).lower(), 0.0001);
    assertEquals(1.3395, budget.result().expandedAt(0.95).upper(), 0.0001);
    MonteCarlo draws = model.monteCarlo(DRAWS, 1);
    assertEquals(0.0754, draws.standardDeviation(), 0.00005 + samplingError(draws));
    // The guide prints a shortest interval. For a symmetric distribution its length is well
    // determined and its place is not: from seed to seed it moves by 0.002 mg.
    assertEquals(
        1.3825 - 1.0834,
        draws.shortestInterval(0.95).length(),
        0.0001 + 3 * Math.sqrt(2) * draws.standardErrorOfQuantile(0.025));
    LinearityCheck check = draws.comparedWith(budget, 0.05);
    assertEquals(LinearityCheck.Verdict.DIFFERS, check.verdict());
    assertTrue(check.standardUncertaintyDifference().orElseThrow() < -0.25);
  }

  private static MeasurementModel sum(IntFunction<Input> input) {
    return MeasurementModel.of("sum", "")
        .with(input.apply(0), input.apply(1), input.apply(2), input.apply(3))
        .calculatedBy(x -> x[0] + x[1] + x[2] + x[3]);
  }

  /** Half a unit of the last printed digit plus what three standard errors of the draws explain. */
  private static void assertInterval(
      double lower, double upper, double halfDigit, MonteCarlo draws) {
    double margin = halfDigit + 3 * draws.standardErrorOfQuantile(0.025);
    assertEquals(lower, draws.interval(0.95).lower(), margin);
    assertEquals(upper, draws.interval(0.95).upper(), margin);
  }

  private static double samplingError(MonteCarlo draws) {
    return 3 * draws.standardErrorOfStandardDeviation();
  }
}
