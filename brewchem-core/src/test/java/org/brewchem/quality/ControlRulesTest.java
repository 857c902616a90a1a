package org.brewchem.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.junit.jupiter.api.Test;

class ControlRulesTest {

  private static final double[] SHIFTS = {0, 0.5, 1, 2};

  /** A sum that the mean runs away from hardly ever signals: its matrix is next to singular. */
  private static final double NEVER = 1e-30;

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  private static void assertRunLengths(
      ControlRule rule, double relative, DoubleUnaryOperator expected) {
    for (double shift : SHIFTS) {
      double length = expected.applyAsDouble(shift);
      assertEquals(
          length, rule.averageRunLength(shift).orElseThrow(), relative * length, rule.name());
      assertEquals(
          length, rule.averageRunLength(-shift).orElseThrow(), relative * length, rule.name());
    }
  }

  /** Nodes between two limits, and their weights: forty settle what follows to nine digits. */
  private static double[][] legendre(double lower, double upper) {
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(40, lower, upper);
    double[][] nodes = new double[2][40];
    for (int i = 0; i < 40; i++) {
      nodes[0][i] = rule.getPoint(i);
      nodes[1][i] = rule.getWeight(i);
    }
    return nodes;
  }

  /** Run lengths L = 1 + K L at the nodes. */
  private static double[] solved(double[][] kernel) {
    double[] ones = new double[kernel.length];
    for (int i = 0; i < kernel.length; i++) {
      ones[i] = 1;
      for (int j = 0; j < kernel.length; j++) {
        kernel[i][j] = (i == j ? 1 : 0) - kernel[i][j];
      }
    }
    return new LUDecomposition(new Array2DRowRealMatrix(kernel), NEVER)
        .getSolver()
        .solve(new ArrayRealVector(ones))
        .toArray();
  }

  /** The integral equation of a weighted average between its limits, started at the centre. */
  private static double ofWeightedAverage(double weight, double limit, double shift) {
    double[][] nodes = legendre(-limit, limit);
    int n = nodes[0].length;
    double[][] kernel = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double z = (nodes[0][j] - (1 - weight) * nodes[0][i]) / weight - shift;
        kernel[i][j] = NORMAL.density(z) / weight * nodes[1][j];
      }
    }
    double[] lengths = solved(kernel);
    double sum = 1;
    for (int j = 0; j < n; j++) {
      sum += NORMAL.density(nodes[0][j] / weight - shift) / weight * nodes[1][j] * lengths[j];
    }
    return sum;
  }

  /** The integral equation of a sum that rests at zero (the first node), started there. */
  private static double ofOneSum(double allowance, double interval, double shift) {
    double[][] nodes = legendre(0, interval);
    int n = nodes[0].length;
    double[][] kernel = new double[n + 1][n + 1];
    for (int i = 0; i <= n; i++) {
      double held = (i == 0 ? 0 : nodes[0][i - 1]) - allowance + shift;
      kernel[i][0] = NORMAL.cumulativeProbability(-held);
      for (int j = 0; j < n; j++) {
        kernel[i][j + 1] = NORMAL.density(nodes[0][j] - held) * nodes[1][j];
      }
    }
    return solved(kernel)[0];
  }

  private static double ofBothSums(double allowance, double interval, double shift) {
    return 1
        / (1 / ofOneSum(allowance, interval, shift) + 1 / ofOneSum(allowance, interval, -shift));
  }

  /**
   * A second algorithm: the integral equations by Gauss and Legendre, where the library cuts a
   * chain into 301 cells. Its error falls with the square of their number: an average of 0.1 and
   * 2.814 runs 497.86 points with 101 cells, 499.14 with 201, 499.39 with 301 and 499.58 by the
   * equation, so that 5e-4 of a run is asked.
   */
  @Test
  void aShiftThatIsNoNumberIsRefused() {
    for (ControlRule rule : List.of(ControlRules.beyond(3), ControlRules.cumulativeSum(0.5, 5))) {
      for (double shift : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
        String said =
            String.valueOf(
                assertThrows(IllegalArgumentException.class, () -> rule.averageRunLength(shift))
                    .getMessage());
        assertTrue(said.startsWith("shift: "), said);
      }
    }
  }

  @Test
  void averageRunLengthsAreThoseOfTheIntegralEquations() {
    assertRunLengths(
        ControlRules.beyond(3),
        1e-9,
        shift ->
            1
                / (NORMAL.cumulativeProbability(-3 + shift)
                    + NORMAL.cumulativeProbability(-3 - shift)));
    double limit = 2.814 * Math.sqrt(0.1 / 1.9);
    assertRunLengths(
        ControlRules.weightedAverage(0.1, 2.814),
        5e-4,
        shift -> ofWeightedAverage(0.1, limit, shift));
    for (double interval : new double[] {4, 5}) {
      assertRunLengths(
          ControlRules.cumulativeSum(0.5, interval),
          5e-4,
          shift -> ofBothSums(0.5, interval, shift));
    }
    assertEquals(499.58, ofWeightedAverage(0.1, limit, 0), 0.005);
    assertEquals(OptionalDouble.empty(), ControlRules.movingRange().averageRunLength(0));
    assertEquals(OptionalDouble.empty(), ControlRules.run(8, 8, 0).averageRunLength(0));
  }

  /** 465 and 168 points at rest: Montgomery, Statistical Quality Control (from memory). */
  @Test
  void cumulativeSumsRunAsLongAsInPrint() {
    assertEquals(465, ControlRules.cumulativeSum(0.5, 5).averageRunLength(0).orElseThrow(), 0.5);
    assertEquals(168, ControlRules.cumulativeSum(0.5, 4).averageRunLength(0).orElseThrow(), 0.5);
  }

  /** By hand: with all the weight on the newest point an average is that point. */
  @Test
  void aWeightedAverageOfTheNewestPointAloneIsASinglePoint() {
    for (double shift : SHIFTS) {
      assertEquals(
          ControlRules.beyond(2).averageRunLength(shift).orElseThrow(),
          ControlRules.weightedAverage(1, 2).averageRunLength(shift).orElseThrow(),
          1e-9);
    }
  }

  @Test
  void whatHardlyEverSignalsRunsOn() {
    assertTrue(ControlRules.weightedAverage(0.2, 20).averageRunLength(0).orElseThrow() > 1e12);
  }

  @Test
  void rulesHaveNames() {
    assertEquals("beyond 3 standard deviations", ControlRules.beyond(3).name());
    assertEquals("beyond 2.5 standard deviations", ControlRules.beyond(2.5).name());
    assertEquals("beyond 1E10 standard deviations", ControlRules.beyond(1e10).name());
    assertEquals("moving range", ControlRules.movingRange().name());
    assertEquals("8 in a row on one side of the mean", ControlRules.run(8, 8, 0).name());
    assertEquals("2 of 3 beyond 2 on one side", ControlRules.run(2, 3, 2).name());
    assertEquals("3 in a row beyond 1.5 on one side", ControlRules.run(3, 3, 1.5).name());
    assertEquals("weighted average, lambda 0.2, L 3", ControlRules.weightedAverage(0.2, 3).name());
    assertEquals("cumulative sums, k 0.5, h 4", ControlRules.cumulativeSum(0.5, 4).name());
  }

  @Test
  void whatIsFollowedLiesAboutTheMeanOrAboutZero() {
    assertTrue(ControlRules.beyond(3).isAboutTheMean());
    assertFalse(ControlRules.movingRange().isAboutTheMean());
    assertTrue(ControlRules.run(2, 3, 2).isAboutTheMean());
    assertTrue(ControlRules.weightedAverage(0.2, 3).isAboutTheMean());
    assertFalse(ControlRules.cumulativeSum(0.5, 4).isAboutTheMean());
    assertEquals(3, ControlRules.beyond(3).limit().orElseThrow());
    assertEquals(1, ControlRules.weightedAverage(0.2, 3).limit().orElseThrow(), 1e-12);
    assertEquals(4, ControlRules.cumulativeSum(0.5, 4).limit().orElseThrow());
    assertEquals(OptionalDouble.empty(), ControlRules.run(2, 3, 2).limit());
  }

  private static void assertFollowed(double above, double below, ControlRule.Watch watch) {
    assertEquals(above, watch.followed().above(), 1e-12);
    assertEquals(below, watch.followed().below(), 1e-12);
  }

  /** By hand, in steps that binary numbers hold exactly. */
  @Test
  void onALimitNothingSignals() {
    ControlRule.Watch average = ControlRules.weightedAverage(1, 2).start();
    assertFalse(average.signals(2));
    assertFalse(average.signals(-2));
    assertTrue(average.signals(Math.nextUp(2.0)));
    average = ControlRules.weightedAverage(0.25, 30).start();
    assertFalse(average.signals(4));
    assertFollowed(1, 1, average);
    assertFalse(average.signals(-8));
    assertFollowed(-1.25, -1.25, average);

    ControlRule.Watch sums = ControlRules.cumulativeSum(0.5, 2).start();
    assertFalse(sums.signals(2.5));
    assertFollowed(2, 0, sums);
    assertTrue(sums.signals(0.75));
    assertFollowed(2.25, 0, sums);
    sums = ControlRules.cumulativeSum(0.5, 2).start();
    assertFalse(sums.signals(-2.5));
    assertFollowed(0, -2, sums);
    assertTrue(sums.signals(-0.75));
    assertFollowed(0, -2.25, sums);

    ControlRule.Watch run = ControlRules.run(2, 2, 1).start();
    assertFalse(run.signals(1.5));
    assertFalse(run.signals(1));
    assertFalse(run.signals(1.5));
    assertTrue(run.signals(1.25));
    assertFollowed(1.25, 1.25, run);
    run = ControlRules.run(2, 2, 1).start();
    assertFalse(run.signals(-1.5));
    assertFalse(run.signals(-1));
    assertFalse(run.signals(-1.5));
    assertTrue(run.signals(-1.25));

    ControlRule ranges = ControlRules.movingRange();
    ControlRule.Watch range = ranges.start();
    double limit = ranges.limit().orElseThrow();
    assertFalse(range.signals(0));
    assertFalse(range.signals(limit));
    assertFollowed(limit, limit, range);
    assertTrue(range.signals(2.0001 * limit));
  }

  /** By hand: of what is drawn about a mean of 4 with 0.5, and about zero. */
  @Test
  void aChartDrawsInTheUnitOfTheFigure() {
    InControl state = InControl.stated(4, 0.5, "");
    ControlChart.Drawn average =
        ControlChart.Drawn.of(
            "a", ControlRules.beyond(3), new ControlRule.Followed(1.5, 1.25), state);
    assertEquals(4.75, average.above());
    assertEquals(4.625, average.below());
    assertEquals(2.5, average.lowerLimit().orElseThrow());
    assertEquals(5.5, average.upperLimit().orElseThrow());
    ControlChart.Drawn sums =
        ControlChart.Drawn.of(
            "a", ControlRules.cumulativeSum(0.5, 4), new ControlRule.Followed(3, -1), state);
    assertEquals(1.5, sums.above());
    assertEquals(-0.5, sums.below());
    assertEquals(-2, sums.lowerLimit().orElseThrow());
    assertEquals(2, sums.upperLimit().orElseThrow());
  }

  @Test
  void statesAndFalseAlarmsPrint() {
    assertEquals(
        "mean 4.350, standard deviation 0.020, stated",
        InControl.stated(4.35, 0.02, "").toString());
    assertEquals(
        "mean 2.100, standard deviation 0.15 g/L, stated",
        InControl.stated(2.1, 0.15, "g/L").toString());
    double[] eight = {1, 2, 1, 2, 1, 2, 1, 2};
    assertTrue(
        InControl.from(eight, "g/L").toString().endsWith(" g/L, from 8 batches"),
        InControl.from(eight, "g/L").toString());
  }

  /**
   * Of a thousand standard normal points beyond two, 45.5 lie there: the share within five of its
   * standard errors, which are those of 20,000 series of ten, and the chance of one in ten
   * likewise.
   */
  @Test
  void falseAlarmsOfKnownLimitsAreThoseOfTheNormalDistribution() {
    FalseAlarms alarms = FalseAlarms.of(List.of(ControlRules.beyond(2)), OptionalInt.empty(), 10);
    double share = 0.045500264;
    double error = Math.sqrt(share * (1 - share) / 200_000);
    assertEquals(share, alarms.perPoint(), 5 * error);
    assertEquals(error, alarms.perPointError(), 0.05 * error);
    double one = 1 - Math.pow(1 - share, 10);
    assertEquals(one, alarms.atLeastOne(), 5 * Math.sqrt(one * (1 - one) / 20_000));
    assertEquals(
        String.format(
            Locale.ROOT,
            "false alarms: %.2g %% of batches, at least one among 10 in %.2g %% of cases"
                + " (limits known; simulated, independent batches of a normal process)",
            100 * alarms.perPoint(),
            100 * alarms.atLeastOne()),
        alarms.toString());
    assertEquals(
        "batches behind the limits: 7 is not possible; 8 to 100000 is allowed",
        assertThrows(
                IllegalArgumentException.class,
                () -> FalseAlarms.of(List.of(ControlRules.beyond(2)), OptionalInt.of(7), 10))
            .getMessage());
    assertEquals(
        ControlRules.beyond(2).averageRunLength(1).orElseThrow(),
        FalseAlarms.averageRunLength(List.of(ControlRules.beyond(2)), 1),
        5 * 6.3 / Math.sqrt(20_000));
  }

  private static ControlRule.Side sideAfter(ControlRule rule, double... standardised) {
    ControlRule.Watch watch = rule.start();
    for (double z : standardised) {
      watch.signals(z);
    }
    return watch.side();
  }

  /**
   * By hand, in numbers that binary holds exactly. With all the weight on the newest point an
   * average is that point, and its limit 2 sqrt(1 / 1). A sum with allowance 0.5 after 2.5 is 2.
   * Without allowance the sums after 5 and -4.5 are 0.5, on the limit, and -4.5, beyond it.
   */
  @Test
  void onALimitNoSideSignals() {
    for (double z : new double[] {3, -3, 0}) {
      assertEquals(ControlRule.Side.NONE, sideAfter(ControlRules.beyond(3), z), "" + z);
    }
    for (double z : new double[] {2, -2, 0}) {
      assertEquals(ControlRule.Side.NONE, sideAfter(ControlRules.weightedAverage(1, 2), z), "" + z);
    }
    ControlRule run = ControlRules.run(2, 3, 1);
    assertEquals(ControlRule.Side.NONE, sideAfter(run, 1.5, 1.5, 1));
    assertEquals(ControlRule.Side.NONE, sideAfter(run, -1.5, -1.5, -1));
    assertEquals(ControlRule.Side.NONE, sideAfter(run, -1.5, -1.5, 0));
    assertEquals(ControlRule.Side.NONE, sideAfter(ControlRules.cumulativeSum(0.5, 2), 2.5));
    assertEquals(ControlRule.Side.NONE, sideAfter(ControlRules.cumulativeSum(0.5, 2), -2.5));
    ControlRule sums = ControlRules.cumulativeSum(0, 0.5);
    assertEquals(ControlRule.Side.BELOW, sideAfter(sums, 5, -4.5));
    assertEquals(ControlRule.Side.ABOVE, sideAfter(sums, -5, 4.5));
  }

  /** A rule of one side, which no rule of the library is. */
  private static final ControlRule ABOVE_ZERO =
      new ControlRule() {
        @Override
        public String name() {
          return "above the mean";
        }

        @Override
        public boolean isAboutTheMean() {
          return true;
        }

        @Override
        public OptionalDouble limit() {
          return OptionalDouble.of(0);
        }

        @Override
        public OptionalDouble averageRunLength(double shift) {
          return OptionalDouble.empty();
        }

        @Override
        public Watch start() {
          return new Watch() {
            private double last;

            @Override
            public boolean signals(double z) {
              last = z;
              return z > 0;
            }

            @Override
            public Followed followed() {
              return new Followed(last, last);
            }
          };
        }
      };

  /**
   * By hand: where every point signals the share is 1, in every series and in all of them; where
   * the mean lies forty deviations above, the first point signals.
   */
  @Test
  void whatAlwaysSignalsDoesSoInEverySeries() {
    FalseAlarms always =
        FalseAlarms.of(List.of(ControlRules.beyond(1e-12)), OptionalInt.empty(), 10);
    assertEquals(1, always.perPoint());
    assertEquals(1, always.atLeastOne());
    assertEquals(0, always.perPointError());
    assertEquals(1, FalseAlarms.averageRunLength(List.of(ABOVE_ZERO), 40));
  }
}
