package org.brewchem.internal;

/** Elimination for the small dense systems of the solver, in place. */
final class LinearSolver {
  private LinearSolver() {}

  /**
   * Solves an n by n system stored by rows; the solution replaces the right-hand side. But for its
   * last row and column the matrix is symmetric and positive definite, so that there are no pivots
   * to choose; of that block only the upper half is read.
   *
   * @param first unknowns and equations before this one are left out
   */
  static void solveBordered(int first, double[] matrix, double[] right, int n) {
    if (first == 0 && n == 2) {
      solvePair(matrix, right);
      return;
    }
    int last = n - 1;
    int border = last * n;
    for (int k = first; k < last; k++) {
      int pivot = k * n;
      double inverse = 1 / matrix[pivot + k];
      matrix[pivot + k] = inverse;
      double of = right[k];
      for (int r = k + 1; r < last; r++) {
        int row = r * n;
        double factor = matrix[pivot + r] * inverse;
        for (int c = r; c < n; c++) {
          matrix[row + c] -= factor * matrix[pivot + c];
        }
        right[r] -= factor * of;
      }
      double factor = matrix[border + k] * inverse;
      for (int c = k + 1; c < n; c++) {
        matrix[border + c] -= factor * matrix[pivot + c];
      }
      right[last] -= factor * of;
    }
    right[last] /= matrix[border + last];
    for (int k = last - 1; k >= first; k--) {
      double x = right[k];
      for (int c = k + 1; c < n; c++) {
        x -= matrix[k * n + c] * right[c];
      }
      right[k] = x * matrix[k * n + k];
    }
  }

  private static void solvePair(double[] matrix, double[] right) {
    double determinant = matrix[0] * matrix[3] - matrix[1] * matrix[2];
    double x = (right[0] * matrix[3] - right[1] * matrix[1]) / determinant;
    right[1] = (right[1] * matrix[0] - right[0] * matrix[2]) / determinant;
    right[0] = x;
  }
}
