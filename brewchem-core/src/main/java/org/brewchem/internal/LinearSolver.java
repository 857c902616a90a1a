package org.brewchem.internal;

/** Gaussian elimination for the small dense systems of the solver, in place. */
final class LinearSolver {
  private LinearSolver() {}

  /** Solves the n by n system stored by rows; the solution replaces {@code right}. */
  static void solve(double[] matrix, double[] right, int n) {
    solveFrom(0, matrix, right, n);
  }

  /** As {@link #solve}, leaving out the unknowns and equations before {@code first}. */
  static void solveFrom(int first, double[] matrix, double[] right, int n) {
    for (int r = first; r < n; r++) {
      double largest = 0;
      for (int c = first; c < n; c++) {
        largest = Math.max(largest, Math.abs(matrix[r * n + c]));
      }
      double scale = 1 / largest;
      for (int c = first; c < n; c++) {
        matrix[r * n + c] *= scale;
      }
      right[r] *= scale;
    }
    for (int k = first; k < n; k++) {
      int pivot = k;
      for (int r = k + 1; r < n; r++) {
        if (Math.abs(matrix[r * n + k]) > Math.abs(matrix[pivot * n + k])) {
          pivot = r;
        }
      }
      if (pivot != k) {
        for (int c = k; c < n; c++) {
          double t = matrix[k * n + c];
          matrix[k * n + c] = matrix[pivot * n + c];
          matrix[pivot * n + c] = t;
        }
        double t = right[k];
        right[k] = right[pivot];
        right[pivot] = t;
      }
      double inverse = 1 / matrix[k * n + k];
      for (int r = k + 1; r < n; r++) {
        double factor = matrix[r * n + k] * inverse;
        if (factor == 0) {
          continue;
        }
        for (int c = k + 1; c < n; c++) {
          matrix[r * n + c] -= factor * matrix[k * n + c];
        }
        right[r] -= factor * right[k];
      }
    }
    for (int k = n - 1; k >= first; k--) {
      double x = right[k];
      for (int c = k + 1; c < n; c++) {
        x -= matrix[k * n + c] * right[c];
      }
      right[k] = x / matrix[k * n + k];
    }
  }
}
