package org.brewchem.internal;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;

/**
 * Minimises a strictly convex quadratic form in unknowns of which some may not fall below zero.
 *
 * <p>Source: the active-set method of Lawson and Hanson, Solving Least Squares Problems (1974),
 * chapter 23 (from memory), on the normal equations.
 */
final class BoundedLeastSquares {

  private static final int CAP_PER_UNKNOWN = 10;

  /** Rounding makes a product of weights and rows symmetric only so far. */
  static final double SYMMETRY_TOLERANCE = 1e-9;

  static final double POSITIVITY = 1e-300;

  private BoundedLeastSquares() {}

  /**
   * Finds the x that minimises {@code x'Hx/2 - g'x}.
   *
   * @param h the positive definite matrix by rows, n by n, left as it is
   * @param g the right-hand side, n
   * @param free for each unknown whether it may be negative
   * @param start a feasible point; what is 0 there and not free starts at its bound
   * @return the minimiser, n
   */
  static double[] solve(double[][] h, double[] g, boolean[] free, double[] start) {
    int n = g.length;
    double[] x = start.clone();
    boolean[] passive = new boolean[n];
    double scale = 0;
    for (int i = 0; i < n; i++) {
      passive[i] = free[i] || x[i] > 0;
      scale = Math.max(scale, Math.abs(g[i]));
    }
    x = solvePassiveWithin(h, g, passive, free, x);
    for (int round = 0; round < CAP_PER_UNKNOWN * n; round++) {
      int entering = -1;
      double steepest = 1e-12 * scale;
      for (int i = 0; i < n; i++) {
        if (!passive[i]) {
          double slope = g[i];
          for (int j = 0; j < n; j++) {
            slope -= h[i][j] * x[j];
          }
          if (slope > steepest) {
            steepest = slope;
            entering = i;
          }
        }
      }
      if (entering < 0) {
        return x;
      }
      passive[entering] = true;
      x = solvePassiveWithin(h, g, passive, free, x);
    }
    throw new ArithmeticException("least squares with bounds: no minimum found");
  }

  /** The bounded unknown that first reaches zero on the way from x to next; -1 if none does. */
  private static int blocking(double[] x, double[] next, boolean[] passive, boolean[] free) {
    int leaving = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < x.length; i++) {
      if (passive[i] && !free[i] && next[i] < 0) {
        double step = x[i] / (x[i] - next[i]);
        if (step < least) {
          least = step;
          leaving = i;
        }
      }
    }
    return leaving;
  }

  /** Goes from x towards the minimum of the passive unknowns, dropping each that reaches zero. */
  private static double[] solvePassiveWithin(
      double[][] h, double[] g, boolean[] passive, boolean[] free, double[] x) {
    double[] next = solvePassive(h, g, passive);
    int leaving = blocking(x, next, passive, free);
    while (leaving >= 0) {
      double step = x[leaving] / (x[leaving] - next[leaving]);
      for (int i = 0; i < x.length; i++) {
        x[i] += step * (next[i] - x[i]);
      }
      x[leaving] = 0;
      passive[leaving] = false;
      next = solvePassive(h, g, passive);
      leaving = blocking(x, next, passive, free);
    }
    return next;
  }

  private static double[] solvePassive(double[][] h, double[] g, boolean[] passive) {
    int[] index = new int[g.length];
    int m = 0;
    for (int i = 0; i < g.length; i++) {
      if (passive[i]) {
        index[m++] = i;
      }
    }
    if (m == 0) {
      return new double[g.length];
    }
    double[][] reduced = new double[m][m];
    double[] right = new double[m];
    for (int i = 0; i < m; i++) {
      right[i] = g[index[i]];
      for (int j = 0; j < m; j++) {
        reduced[i][j] = h[index[i]][index[j]];
      }
    }
    double[] solved =
        new CholeskyDecomposition(
                new Array2DRowRealMatrix(reduced, false), SYMMETRY_TOLERANCE, POSITIVITY)
            .getSolver()
            .solve(new ArrayRealVector(right, false))
            .toArray();
    double[] x = new double[g.length];
    for (int i = 0; i < m; i++) {
      x[index[i]] = solved[i];
    }
    return x;
  }
}
