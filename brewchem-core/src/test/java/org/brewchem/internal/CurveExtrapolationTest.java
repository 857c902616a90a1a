package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class CurveExtrapolationTest {

  /** Where an unknown that is known at all points but the last is expected at the last. */
  private static double expected(DoubleUnaryOperator unknown, double... inertCharges) {
    CurveExtrapolation curve = new CurveExtrapolation(1, 1);
    double[] totals = {0.2};
    double last = 0;
    for (int point = 0; point < inertCharges.length; point++) {
      curve.follow(totals, inertCharges[point]);
      double known = point == 0 ? 1 : unknown.applyAsDouble(inertCharges[point - 1]);
      last = curve.onward(0, known);
    }
    return last;
  }

  @Test
  void onePointShowsNoDirection() {
    assertEquals(Math.exp(0.1), expected(x -> Math.exp(0.1 + 0.1 * x), 0, 1), 0);
  }

  @Test
  void evenPowersAreFollowedExactly() {
    assertEquals(Math.exp(0.2), expected(x -> Math.exp(0.1 * x), 0, 1, 2), 1e-15);
    assertEquals(Math.exp(0.3), expected(x -> Math.exp(0.1 * x), 0, 1, 2, 3), 1e-15);
    assertEquals(Math.exp(0.5), expected(x -> Math.exp(0.1 * x), 0, 1, 2, 3, 4, 5), 1e-15);
  }

  /** The logarithm is a parabola: exact from three points, (0, 1, 4) / 20 on to 9 / 20. */
  @Test
  void aBendIsFollowedFromThreePoints() {
    DoubleUnaryOperator parabola = x -> Math.exp(0.05 * x * x);
    assertEquals(Math.exp(0.45), expected(parabola, 0, 1, 2, 3), Math.exp(0.45) * 0.1);
    assertEquals(Math.exp(0.8), expected(parabola, 0, 1, 2, 3, 4), 1e-14);
  }

  /** Steps of 1.2, 1 and 1.4: a parabola still, within the series for the broken powers. */
  @Test
  void unevenStepsAreFollowedAtTheirPace() {
    DoubleUnaryOperator parabola = x -> Math.exp(0.01 * x * x);
    double to = 5.59;
    assertEquals(parabola.applyAsDouble(to), expected(parabola, 0, 1, 2, 3.2, 4.2, to), 1e-4);
    DoubleUnaryOperator power = x -> Math.exp(0.1 * x);
    assertEquals(Math.exp(0.57), expected(power, 0, 1, 2, 3.2, 4.4, 5.7), 3e-5);
  }

  @Test
  void aTurnOrAJumpStartsWhereThePointBeforeWas() {
    DoubleUnaryOperator power = x -> Math.exp(0.1 * x);
    assertEquals(Math.exp(0.4), expected(power, 0, 1, 2, 3, 4, 3), 0);
    assertEquals(Math.exp(0.4), expected(power, 0, 1, 2, 3, 4, 5.5), 0);
    assertEquals(Math.exp(0.4), expected(power, 0, 1, 2, 3, 4, 4.6), 0);
    assertEquals(Math.exp(0.4), expected(power, 0, 1, 2, 3, 4, 4), 0);
  }

  /** Of one unknown, five times as much; of totals that change in another direction. */
  @Test
  void whatChangesTooMuchIsNotFollowed() {
    DoubleUnaryOperator steep = x -> Math.exp(1.7 * x);
    assertEquals(steep.applyAsDouble(4), expected(steep, 0, 1, 2, 3, 4, 5), 0);
    CurveExtrapolation curve = new CurveExtrapolation(2, 1);
    for (int point = 0; point < 5; point++) {
      curve.follow(new double[] {point, 0}, 0);
      curve.onward(0, Math.pow(1.1, point));
    }
    curve.follow(new double[] {4, 1}, 0);
    assertEquals(Math.pow(1.1, 5), curve.onward(0, Math.pow(1.1, 5)), 0);
  }

  /** Far beyond what the series is for, the straight way is taken. */
  @Test
  void aBendIsLeftWhereItsSeriesEnds() {
    CurveExtrapolation curve = new CurveExtrapolation(0, 1);
    double[] charges = {0, 1, 2, 3, 4.39};
    double[] values = {1, 1, 4, 1.2};
    double start = 0;
    for (int point = 0; point < charges.length; point++) {
      curve.follow(new double[0], charges[point]);
      start = curve.onward(0, point == 0 ? 1 : values[point - 1]);
    }
    double ratio = 0.3;
    double rest = 0.39 * 2 * (ratio - 1) / (ratio + 1);
    assertEquals(1.2 * ratio * (1 + rest + rest * rest / 2), start, 1e-15);
  }

  @Test
  void whatIsAbsentStaysAbsent() {
    assertEquals(0, expected(x -> 0, 0, 1, 2, 3, 4, 5), 0);
  }

  @Test
  void aNewCurveKnowsNothingOfTheLast() {
    CurveExtrapolation curve = new CurveExtrapolation(0, 1);
    for (int point = 0; point < 6; point++) {
      curve.follow(new double[0], point);
      curve.onward(0, Math.pow(1.1, point));
    }
    curve.forget();
    curve.follow(new double[0], 6);
    assertEquals(Math.pow(1.1, 6), curve.onward(0, Math.pow(1.1, 6)), 0);
  }

  /** Where totals that grew in one direction go on with one more of them, at the same pace. */
  @Test
  void aChangeAtAnAngleIsNotFollowed() {
    CurveExtrapolation curve = new CurveExtrapolation(2, 1);
    for (int point = 0; point < 5; point++) {
      curve.follow(new double[] {point, 0}, 0);
      curve.onward(0, Math.pow(1.1, point));
    }
    curve.follow(new double[] {5, 1}, 0);
    assertEquals(Math.pow(1.1, 5), curve.onward(0, Math.pow(1.1, 5)), 0);
  }

  /**
   * By hand: eleven totals grow by 6 each, then two by 7, two by 5 and the others by 6: the
   * products of the changes are 396, 396 and 400, so that the squared cosine is just 0.99.
   */
  @Test
  void aSquaredCosineOfNinetyNineHundredthsIsNoStraightLine() {
    double[] totals = new double[11];
    CurveExtrapolation curve = new CurveExtrapolation(11, 1);
    double start = 0;
    for (int point = 0; point < 5; point++) {
      for (int c = 0; c < 11; c++) {
        totals[c] += point < 4 || c > 3 ? 6 : c < 2 ? 7 : 5;
      }
      curve.follow(totals, 0);
      start = curve.onward(0, Math.pow(1.1, point));
    }
    assertEquals(Math.pow(1.1, 4), start, 0);
  }

  /** After steps of 1, one of just 0.7 or 1.4 is no longer at about the pace. */
  @Test
  void thePaceLiesWithinItsLimits() {
    DoubleUnaryOperator power = x -> Math.exp(0.1 * x);
    for (double pace : new double[] {0.7, 1.4}) {
      assertEquals(1, expected(power, -3, -2, -1, 0, pace), 0, "pace " + pace);
    }
    for (double pace : new double[] {0.71, 1.39}) {
      assertEquals(Math.exp(0.1 * pace), expected(power, -3, -2, -1, 0, pace), 1e-4);
    }
  }

  /** An unknown that grows to just five times as much, or falls to a fifth, is not followed. */
  @Test
  void whatChangesFivefoldIsNotFollowed() {
    for (double[] values : new double[][] {{1, 1, 5}, {5, 5, 1}}) {
      CurveExtrapolation curve = new CurveExtrapolation(0, 1);
      double start = 0;
      for (int point = 0; point < 4; point++) {
        curve.follow(new double[0], point);
        start = curve.onward(0, values[Math.max(point - 1, 0)]);
      }
      assertEquals(values[2], start, 0);
    }
  }
}
