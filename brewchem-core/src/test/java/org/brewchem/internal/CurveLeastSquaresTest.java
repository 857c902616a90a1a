package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.function.UnaryOperator;
import org.brewchem.internal.CurveLeastSquares.Parameter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CurveLeastSquaresTest {

  /**
   * NIST, Statistical Reference Datasets, Nonlinear Regression, Misra1a (from memory): 14
   * observations of y = b1 (1 - exp(-b2 x)), two starts, certified to eleven digits.
   */
  private static final double[] MISRA_X = {
    77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0
  };

  private static final double[] MISRA_Y = {
    10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78
  };

  private static UnaryOperator<double[]> misra() {
    return b -> Arrays.stream(MISRA_X).map(x -> b[0] * (1 - Math.exp(-b[1] * x))).toArray();
  }

  @ParameterizedTest
  @CsvSource({"500, 0.0001", "250, 0.0005"})
  void aCertifiedFitOfAnExponential(double first, double second) throws NoFitException {
    CurveLeastSquares fit =
        CurveLeastSquares.fit(
            new Parameter[] {new Parameter(first, 1, true), new Parameter(second, 1e-5, true)},
            misra(),
            MISRA_Y);
    assertEquals(1, fit.parameters()[0] / 2.3894212918e2, 1e-8);
    assertEquals(1, fit.parameters()[1] / 5.5015643181e-4, 1e-8);
    assertEquals(1, fit.standardUncertainty(0) / 2.7070075241, 1e-7);
    assertEquals(1, fit.standardUncertainty(1) / 7.2668688436e-6, 1e-7);
    assertEquals(1, fit.squares() / 1.2455138894e-1, 1e-9);
    assertEquals(1, fit.standardDeviation() / 1.0187876330e-1, 1e-9);
  }

  private static final double[] ROWS = {0, 1, 2, 3, 4};

  /** Intercept and slope. */
  private static UnaryOperator<double[]> line() {
    return p -> Arrays.stream(ROWS).map(x -> p[0] + p[1] * x).toArray();
  }

  private static Parameter[] nonNegative(double... starts) {
    return Arrays.stream(starts).mapToObj(s -> new Parameter(s, 1, true)).toArray(Parameter[]::new);
  }

  /** By hand: 2, 1, 1, 0, 1 falls by 0.3 a step; not allowed to, it is level at its mean of 1. */
  @Test
  void whatWouldFallBelowZeroIsZeroAndTheOthersAreFittedWithoutIt() throws NoFitException {
    double[] falling = {2, 1, 1, 0, 1};
    CurveLeastSquares fit = CurveLeastSquares.fit(nonNegative(3, 2), line(), falling);
    assertArrayEquals(new double[] {1, 0}, fit.parameters(), 1e-9);
    fit =
        CurveLeastSquares.fit(
            new Parameter[] {new Parameter(3, 1, false), new Parameter(2, 1, false)},
            line(),
            falling);
    assertArrayEquals(new double[] {1.6, -0.3}, fit.parameters(), 1e-9);
  }

  /** By hand: 0, 1, 2, 3, 4 is x; from zero, both are first held there. */
  @Test
  void whatStartsAtZeroIsLetGo() throws NoFitException {
    CurveLeastSquares fit = CurveLeastSquares.fit(nonNegative(0, 0), line(), ROWS);
    assertArrayEquals(new double[] {0, 1}, fit.parameters(), 1e-9);
    assertEquals(0, fit.squares(), 1e-15);
  }

  /** By hand: leverages of a line at x are 1/n + (x - mean)^2 / sum of squares. */
  @Test
  void leverages() throws NoFitException {
    CurveLeastSquares fit =
        CurveLeastSquares.fit(nonNegative(1, 1), line(), new double[] {1, 2, 4, 4, 6});
    assertArrayEquals(new double[] {0.6, 0.3, 0.2, 0.3, 0.6}, fit.leverages(), 1e-9);
  }

  @Test
  void whatIsNotDeterminedIsSaid() {
    UnaryOperator<double[]> same = p -> Arrays.stream(ROWS).map(x -> (p[0] + p[1]) * x).toArray();
    NoFitException thrown =
        assertThrows(
            NoFitException.class, () -> CurveLeastSquares.fit(nonNegative(1, 1), same, ROWS));
    assertEquals(NoFitException.Reason.NOT_DETERMINED, thrown.reason());
    thrown =
        assertThrows(
            NoFitException.class,
            () ->
                CurveLeastSquares.solveLinear(
                    new double[][] {{1, 2}, {2, 4}, {3, 6}}, new double[] {1, 2, 3}));
    assertEquals(NoFitException.Reason.NOT_DETERMINED, thrown.reason());
  }

  @Test
  void whatDoesNotSettleIsSaid() {
    // The sum of squares falls for ever.
    UnaryOperator<double[]> endless =
        p -> Arrays.stream(ROWS).map(x -> 1 / (1 + Math.abs(p[0]) + x)).toArray();
    NoFitException thrown =
        assertThrows(
            NoFitException.class,
            () -> CurveLeastSquares.fit(nonNegative(1), endless, new double[5]));
    assertEquals(NoFitException.Reason.NOT_SETTLED, thrown.reason());
  }
}
