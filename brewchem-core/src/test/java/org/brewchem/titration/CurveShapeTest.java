package org.brewchem.titration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.polynomials.PolynomialFunctionLagrangeForm;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.brewchem.titration.CurveShape.Stray;
import org.junit.jupiter.api.Test;

class CurveShapeTest {

  private static final double[] UNEVEN = {0, 1, 2.5, 3, 4.2, 5, 6.1, 7.5};

  private static double[] along(double[] volumes, DoubleUnaryOperator curve) {
    return Arrays.stream(volumes).map(curve).toArray();
  }

  private static double through(double[] x, double[] y, double at) {
    return new PolynomialFunctionLagrangeForm(x, y).value(at);
  }

  private static double[] pick(double[] all, int... indices) {
    return Arrays.stream(indices).mapToDouble(i -> all[i]).toArray();
  }

  private static double quantile(int readings) {
    return new NormalDistribution(null, 0, 1)
        .inverseCumulativeProbability(1 - 0.05 / (2 * readings));
  }

  private static void assertStray(
      Stray stray, double[] volumes, double[] pH, double u, int index, int... near) {
    double at = volumes[index];
    double cubic = through(pick(volumes, near), pick(pH, near), at);
    double squares = 1;
    for (int k = 0; k < 4; k++) {
      double[] one = new double[4];
      one[k] = 1;
      double weight = through(pick(volumes, near), one, at);
      squares += weight * weight;
    }
    int[] first = Arrays.copyOfRange(near, 0, 3);
    int[] last = Arrays.copyOfRange(near, 1, 4);
    double bend =
        through(pick(volumes, first), pick(pH, first), at)
            - through(pick(volumes, last), pick(pH, last), at);
    int before = 0;
    while (before < 2 && near[before + 1] < index) {
      before++;
    }
    int[] next = {near[before], near[before + 1]};
    double straight = through(pick(volumes, next), pick(pH, next), at);
    int beside = Math.min(index, volumes.length - 1 - index);
    double allowed =
        quantile(volumes.length) * u * Math.sqrt(squares)
            + Math.max(1, 3 - beside) * (2 * Math.abs(bend) + Math.abs(cubic - straight));
    assertEquals(index, stray.index());
    assertEquals(pH[index] - cubic, stray.distance(), 1e-12);
    assertEquals(allowed, stray.allowed(), 1e-12);
    assertEquals(Math.abs(pH[index] - cubic) / allowed, stray.excess(), 1e-12);
  }

  /** Of two neighbours on either side, or of the four nearest at the ends. */
  @Test
  void aReadingIsJudgedByTheCubicThroughItsFourNeighbours() {
    int[][] near = {
      {1, 2, 3, 4},
      {0, 2, 3, 4},
      {0, 1, 3, 4},
      {1, 2, 4, 5},
      {2, 3, 5, 6},
      {3, 4, 6, 7},
      {3, 4, 5, 7},
      {3, 4, 5, 6}
    };
    for (int index = 0; index < UNEVEN.length; index++) {
      for (double spoilt : new double[] {-3, 3}) {
        double[] pH =
            along(UNEVEN, v -> 4 + 0.4 * v + 0.01 * (v - 3) * (v - 3) + 0.002 * Math.pow(v - 3, 3));
        pH[index] += spoilt;
        List<Stray> strays = CurveShape.of(UNEVEN, pH).strays(0.02);
        assertTrue(strays.size() >= 1, "reading " + index);
        assertStray(strays.get(0), UNEVEN, pH, 0.02, index, near[index]);
        assertEquals(spoilt, strays.get(0).distance(), 1e-9);
        assertEquals(1, strays.size(), "without it the others lie on the curve");
      }
    }
  }

  /** Noise-free readings of a simulated liquid, of which the last lies behind a steep jump. */
  @Test
  void theLastReadingBehindAJumpIsNoStray() {
    double[] volumes = {0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5};
    double[] jump = {4.5, 4.72, 4.92, 5.12, 5.34, 5.62, 6.28, 10.75};
    assertEquals(List.of(), CurveShape.of(volumes, jump).strays(0.02));
  }

  /** By hand: on a straight line nothing is allowed but the noise of reading and cubic. */
  @Test
  void onAStraightLineOnlyNoiseIsAllowed() {
    double[] volumes = {0, 1, 2, 3, 4, 5, 6};
    // Weights of -1, 4, 4 and -1 sixths, their squares 34/36.
    double allowed = quantile(7) * 0.02 * Math.sqrt(70.0 / 36);
    for (double sign : new double[] {-1, 1}) {
      double[] pH = along(volumes, v -> 4 + v);
      pH[3] += sign * 0.999 * allowed;
      assertEquals(List.of(), CurveShape.of(volumes, pH).strays(0.02));
      pH[3] = 7 + sign * 1.001 * allowed;
      List<Stray> strays = CurveShape.of(volumes, pH).strays(0.02);
      assertEquals(1, strays.size());
      assertEquals(3, strays.get(0).index());
      assertEquals(sign * 1.001 * allowed, strays.get(0).distance(), 1e-12);
      assertEquals(allowed, strays.get(0).allowed(), 1e-12);
    }
  }

  @Test
  void theWorstGoesFirstAndServesTheOthersNoLonger() {
    double[] volumes = new double[16];
    for (int i = 0; i < volumes.length; i++) {
      volumes[i] = i;
    }
    double[] pH = along(volumes, v -> 4 + 0.3 * v);
    pH[4] += 0.5;
    pH[11] -= 0.9;
    List<Stray> strays = CurveShape.of(volumes, pH).strays(0.02);
    assertEquals(List.of(11, 4), strays.stream().map(Stray::index).toList());
    assertEquals(-0.9, strays.get(0).distance(), 1e-9);
    assertEquals(0.5, strays.get(1).distance(), 1e-9);
  }

  @Test
  void fiveReadingsAreTooFewToJudgeOne() {
    double[] volumes = {0, 1, 2, 3, 4};
    assertEquals(List.of(), CurveShape.of(volumes, new double[] {4, 5, 11, 7, 8}).strays(0.02));
    double[] six = {0, 1, 2, 3, 4, 5};
    List<Stray> strays = CurveShape.of(six, new double[] {4, 5, 11, 7, 8, 9}).strays(0.02);
    assertEquals(List.of(2), strays.stream().map(Stray::index).toList());
  }

  /** No cubic goes through two readings of one volume. */
  @Test
  void readingsWhoseNeighboursShareAVolumeAreNotJudged() {
    double[] volumes = {0, 1, 2, 2, 3, 3, 4, 4};
    double[] pH = {4, 5, 6, 6, 7, 7, 11, 8};
    assertEquals(List.of(), CurveShape.of(volumes, pH).strays(0.02));
  }
}
