package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.brewchem.internal.CurveLeastSquares.Curve;
import org.brewchem.internal.CurveLeastSquares.Parameter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

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
            curve(misra()),
            MISRA_Y);
    assertEquals(1, fit.parameters()[0] / 2.3894212918e2, 1e-8);
    assertEquals(1, fit.parameters()[1] / 5.5015643181e-4, 1e-8);
    assertEquals(1, fit.standardUncertainty(0) / 2.7070075241, 1e-7);
    assertEquals(1, fit.standardUncertainty(1) / 7.2668688436e-6, 1e-7);
    assertEquals(1, fit.squares() / 1.2455138894e-1, 1e-9);
    assertEquals(1, fit.standardDeviation() / 1.0187876330e-1, 1e-9);
    assertTrue(fit.nextStep() > 0 && fit.nextStep() < 1e-6, "next " + fit.nextStep());
  }

  /** A curve whose slopes are central differences. */
  private static Curve curve(UnaryOperator<double[]> values) {
    return (parameters, slopes) -> {
      for (int j = 0; j < parameters.length; j++) {
        double step = 1e-6 * Math.max(Math.abs(parameters[j]), 1e-3);
        double[] moved = parameters.clone();
        moved[j] += step;
        double[] above = values.apply(moved);
        moved[j] -= 2 * step;
        double[] below = values.apply(moved);
        for (int i = 0; i < above.length; i++) {
          slopes[i][j] = (above[i] - below[i]) / (2 * step);
        }
      }
      return values.apply(parameters);
    };
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
    CurveLeastSquares fit = CurveLeastSquares.fit(nonNegative(3, 2), curve(line()), falling);
    assertArrayEquals(new double[] {1, 0}, fit.parameters(), 1e-9);
    assertTrue(fit.nextStep() < 1e-6, "the mean stays: " + fit.nextStep());
    fit =
        CurveLeastSquares.fit(
            new Parameter[] {new Parameter(3, 1, false), new Parameter(2, 1, false)},
            curve(line()),
            falling);
    assertArrayEquals(new double[] {1.6, -0.3}, fit.parameters(), 1e-9);
  }

  /** By hand: 0, 1, 2, 3, 4 is x; from zero, both are first held there. */
  @Test
  void whatStartsAtZeroIsLetGo() throws NoFitException {
    CurveLeastSquares fit = CurveLeastSquares.fit(nonNegative(0, 0), curve(line()), ROWS);
    assertArrayEquals(new double[] {0, 1}, fit.parameters(), 1e-9);
    assertEquals(0, fit.squares(), 1e-15);
  }

  /** By hand: leverages of a line at x are 1/n + (x - mean)^2 / sum of squares. */
  @Test
  void leverages() throws NoFitException {
    CurveLeastSquares fit =
        CurveLeastSquares.fit(nonNegative(1, 1), curve(line()), new double[] {1, 2, 4, 4, 6});
    assertArrayEquals(new double[] {0.6, 0.3, 0.2, 0.3, 0.6}, fit.leverages(), 1e-9);
  }

  @Test
  void whatIsNotDeterminedIsSaid() {
    UnaryOperator<double[]> same = p -> Arrays.stream(ROWS).map(x -> (p[0] + p[1]) * x).toArray();
    NoFitException thrown =
        assertThrows(
            NoFitException.class,
            () -> CurveLeastSquares.fit(nonNegative(1, 1), curve(same), ROWS));
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
            () -> CurveLeastSquares.fit(nonNegative(1), curve(endless), new double[5]));
    assertEquals(NoFitException.Reason.NOT_SETTLED, thrown.reason());
  }

  /**
   * By hand: 1, 2, 4, 4, 6 is 1 + 1.2 x with residuals 0, -0.2, 0.6, -0.6, 0.2 of variance 0.8/3;
   * over the sum of squares of x, 10, that is the variance of the slope, and -2 times it the
   * covariance.
   */
  @Test
  void covariancesOfALine() throws NoFitException {
    CurveLeastSquares fit =
        CurveLeastSquares.fit(nonNegative(1, 1), curve(line()), new double[] {1, 2, 4, 4, 6});
    assertArrayEquals(new double[] {1, 1.2}, fit.parameters(), 1e-9);
    assertArrayEquals(new double[] {0, -0.2, 0.6, -0.6, 0.2}, fit.residuals(), 1e-9);
    assertEquals(0.08 / 3, fit.covariance(1, 1), 1e-9);
    assertEquals(-0.16 / 3, fit.covariance(0, 1), 1e-9);
    assertEquals(-0.16 / 3, fit.covariance(1, 0), 1e-9);
    assertEquals(0.48 / 3, fit.covariance(0, 0), 1e-9);
    assertEquals(Math.sqrt(0.16), fit.standardUncertainty(0), 1e-9);
  }

  @Test
  void aCurveThroughEveryPointHasNoStepLeft() throws NoFitException {
    double[] twos = {2, 2, 2};
    UnaryOperator<double[]> level = p -> new double[] {p[0], p[0], p[0]};
    CurveLeastSquares fit = CurveLeastSquares.fit(nonNegative(2), curve(level), twos);
    assertEquals(0, fit.squares());
    assertEquals(0, fit.nextStep());
  }

  /**
   * By hand: -1, -0.1, 0.5 is -1.225 times (1, 0, 0) and -0.25 times (-0.9, 0.4, 0) besides what
   * neither reaches. With neither below zero the first is 0 and the second 0.86 / 0.97, though the
   * search comes by where both are 0.
   */
  @Test
  void whatIsHeldAtZeroIsLetGoWhereItLowersTheSquares() throws NoFitException {
    double[] first = {1, 0, 0};
    double[] second = {-0.9, 0.4, 0};
    double[] observed = {-1, -0.1, 0.5};
    double expected = (0.9 - 0.04) / 0.97;
    for (boolean swapped : new boolean[] {false, true}) {
      double[] one = swapped ? second : first;
      double[] other = swapped ? first : second;
      Curve plane =
          (p, slopes) -> {
            assertTrue(p[0] >= 0 && p[1] >= 0, "asked below zero");
            double[] sum = new double[3];
            Arrays.setAll(sum, i -> p[0] * one[i] + p[1] * other[i]);
            Arrays.setAll(slopes, i -> new double[] {one[i], other[i]});
            return sum;
          };
      CurveLeastSquares fit = CurveLeastSquares.fit(nonNegative(1, 1), plane, observed);
      assertArrayEquals(
          swapped ? new double[] {expected, 0} : new double[] {0, expected},
          fit.parameters(),
          1e-9);
      assertTrue(fit.nextStep() < 1e-6, "next " + fit.nextStep());
    }
  }

  /** By hand: what only falls below zero is nothing, and nothing is left that could move. */
  @Test
  void allMayBeHeldAtZero() throws NoFitException {
    CurveLeastSquares fit =
        CurveLeastSquares.fit(nonNegative(3, 2), curve(line()), new double[] {-1, -1, -2, -1, -1});
    assertArrayEquals(new double[2], fit.parameters());
    assertEquals(8, fit.squares());
    assertEquals(0, fit.nextStep());
  }

  /** Non-negative least squares of random planes against the conditions of the minimum. */
  @Property(tries = 300)
  void theLeastWithinTheBoundsSatisfiesItsConditions(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 4) int n) throws NoFitException {
    assertConditionsOfTheLeast(seed, n);
  }

  /**
   * Planes on which a search that is cut at a bound is left next to it, a little before the least.
   */
  @ParameterizedTest
  @ValueSource(longs = {2840, 3222, 3515, 9805, 10347, 12449, 15358, 17580, 19064})
  void whatIsCutAtABoundLeavesItAgain(long seed) throws NoFitException {
    assertConditionsOfTheLeast(seed, 2);
  }

  private static void assertConditionsOfTheLeast(long seed, int n) throws NoFitException {
    Random random = new Random(seed);
    double[][] columns = new double[n][8];
    double[] observed = new double[8];
    double[] shared = new double[8];
    Parameter[] parameters = new Parameter[n];
    Arrays.setAll(shared, i -> random.nextGaussian());
    Arrays.setAll(observed, i -> random.nextGaussian());
    for (int j = 0; j < n; j++) {
      double sign = random.nextGaussian();
      Arrays.setAll(columns[j], i -> sign * shared[i] + 0.5 * random.nextGaussian());
      parameters[j] =
          new Parameter(random.nextDouble(), Math.pow(10, random.nextGaussian()), j != 2);
    }
    UnaryOperator<double[]> plane =
        p -> {
          double[] sum = new double[8];
          Arrays.setAll(
              sum, i -> IntStream.range(0, n).mapToDouble(j -> p[j] * columns[j][i]).sum());
          return sum;
        };
    CurveLeastSquares fit = CurveLeastSquares.fit(parameters, curve(plane), observed);
    double[] found = fit.parameters();
    for (int j = 0; j < n; j++) {
      double falling = 0;
      for (int i = 0; i < 8; i++) {
        falling += columns[j][i] * fit.residuals()[i];
      }
      if (j == 2 || found[j] != 0) {
        assertEquals(0, falling, 1e-6);
        assertTrue(j == 2 || found[j] > 0);
      } else {
        assertTrue(falling < 1e-6, "could rise");
      }
    }
  }

  /** Parameters of a thousand millions are no less settled than others. */
  @Test
  void theNextStepIsCountedInUncertainties() throws NoFitException {
    Parameter[] parameters = {new Parameter(1e9, 1e9, true), new Parameter(1e9, 1e9, true)};
    CurveLeastSquares fit =
        CurveLeastSquares.fit(parameters, curve(line()), new double[] {1e9, 2e9, 4e9, 4e9, 6e9});
    assertEquals(0.4e9, fit.standardUncertainty(0), 1);
    assertTrue(fit.nextStep() > 0 && fit.nextStep() < 1e-6, "next " + fit.nextStep());
  }

  /** A line with its slopes, and the count of how often it is followed. */
  private static Curve counted(AtomicInteger count) {
    return (p, slopes) -> {
      count.incrementAndGet();
      Arrays.setAll(slopes, i -> new double[] {1, ROWS[i]});
      return line().apply(p);
    };
  }

  /**
   * By hand: level at 2, without a residual and so without anything that could let the slope go.
   */
  @Test
  void aCurveThroughEveryPointMayHaveAParameterAtZero() throws NoFitException {
    double[] level = {2, 2, 2, 2, 2};
    CurveLeastSquares fit =
        CurveLeastSquares.fit(nonNegative(2, 0), counted(new AtomicInteger()), level);
    assertArrayEquals(new double[] {2, 0}, fit.parameters());
    assertEquals(0, fit.squares());
  }

  @Test
  void aParameterAtZeroThatMovesNothingIsNotDetermined() {
    Curve level =
        (p, slopes) -> {
          Arrays.setAll(slopes, i -> new double[] {1, 0});
          return new double[] {p[0], p[0], p[0]};
        };
    NoFitException thrown =
        assertThrows(
            NoFitException.class,
            () -> CurveLeastSquares.fit(nonNegative(2, 0), level, new double[] {1, 2, 4}));
    assertEquals(NoFitException.Reason.NOT_DETERMINED, thrown.reason());
  }

  /** A straight line takes a step or two to zero, one to see that it stays, and one without it. */
  @Test
  void aParameterThatStaysAtZeroIsHeldThereSoon() throws NoFitException {
    for (double[] observed : new double[][] {{2, 1, 1, 0, 1}, {1, 1.1, 1, 0.6, 0.5}}) {
      AtomicInteger count = new AtomicInteger();
      CurveLeastSquares fit = CurveLeastSquares.fit(nonNegative(3, 2), counted(count), observed);
      assertEquals(Arrays.stream(observed).average().orElseThrow(), fit.parameters()[0], 1e-9);
      assertEquals(0, fit.parameters()[1]);
      assertTrue(count.get() <= 6, count + " times");
    }
  }

  /** Of an exponential the last steps would change nothing within the first six digits. */
  @Test
  void aSearchEndsWhereItsStepsAreFarBelowAnyUncertainty() throws NoFitException {
    AtomicInteger count = new AtomicInteger();
    Curve exponential =
        (p, slopes) -> {
          count.incrementAndGet();
          Arrays.setAll(
              slopes,
              i -> {
                double falling = Math.exp(-p[1] * ROWS[i]);
                return new double[] {falling, -p[0] * ROWS[i] * falling};
              });
          return Arrays.stream(ROWS).map(x -> p[0] * Math.exp(-p[1] * x)).toArray();
        };
    double[] observed = {2.04, 1.15, 0.69, 0.54, 0.31};
    CurveLeastSquares fit = CurveLeastSquares.fit(nonNegative(1, 1), exponential, observed);
    assertTrue(fit.nextStep() < 1e-5, "next " + fit.nextStep());
    assertTrue(count.get() <= 11, count + " times");
  }
}
