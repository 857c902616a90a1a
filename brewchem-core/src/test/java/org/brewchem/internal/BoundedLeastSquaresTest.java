package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class BoundedLeastSquaresTest {

  @Test
  void anUnboundedMinimumIsTheSolutionOfTheNormalEquations() {
    double[][] h = {{2, 0}, {0, 4}};
    assertArrayEquals(
        new double[] {-1, 0.5},
        BoundedLeastSquares.solve(
            h, new double[] {-2, 2}, new boolean[] {true, false}, new double[] {0, 1}),
        1e-14);
  }

  @Test
  void aBoundedUnknownStopsAtZero() {
    double[][] h = {{2, 1}, {1, 2}};
    double[] x =
        BoundedLeastSquares.solve(
            h, new double[] {3, -1}, new boolean[] {false, false}, new double[] {0, 0});
    assertArrayEquals(new double[] {1.5, 0}, x, 1e-14);
  }

  @Test
  void aSmallRightHandSideIsNotTakenForNone() {
    double[][] h = {{2}};
    double[] x =
        BoundedLeastSquares.solve(h, new double[] {1e-9}, new boolean[1], new double[] {0});
    assertEquals(5e-10, x[0], 1e-24);
  }

  /** The conditions of Karush, Kuhn and Tucker, which only the minimum satisfies. */
  @Property(tries = 300)
  void theMinimumSatisfiesItsConditions(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 12) int n) {
    Random random = new Random(seed);
    double[][] h = new double[n][n];
    double[] g = new double[n];
    boolean[] free = new boolean[n];
    double[] start = new double[n];
    double[][] root = new double[n + 2][n];
    for (double[] row : root) {
      for (int j = 0; j < n; j++) {
        row[j] = random.nextGaussian();
      }
    }
    for (int i = 0; i < n; i++) {
      g[i] = 3 * random.nextGaussian();
      free[i] = random.nextInt(4) == 0;
      start[i] = random.nextBoolean() ? random.nextDouble() : 0;
      for (int j = 0; j < n; j++) {
        h[i][j] = i == j ? 0.01 : 0;
        for (double[] row : root) {
          h[i][j] += row[i] * row[j];
        }
      }
    }
    double[] x = BoundedLeastSquares.solve(h, g, free, start);
    for (int i = 0; i < n; i++) {
      double slope = -g[i];
      for (int j = 0; j < n; j++) {
        slope += h[i][j] * x[j];
      }
      if (free[i] || x[i] > 0) {
        assertEquals(0, slope, 1e-8);
      } else {
        assertEquals(0, x[i]);
        assertTrue(slope > -1e-8);
      }
    }
  }
}
