package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;

/** Against an elimination with pivots; what is not to be read is no number. */
class LinearSolverTest {

  @Property(tries = 300)
  void aBorderedSystemIsSolvedFromItsUpperHalfAndItsBorder(
      @ForAll long seed,
      @ForAll @IntRange(min = 1, max = 6) int size,
      @ForAll @IntRange(max = 1) int first) {
    Random random = new Random(seed);
    double[][] full = new double[size][size];
    for (int part = 0; part < 2 * size; part++) {
      double[] column = random.doubles(size, -1, 1).toArray();
      for (int r = 0; r < size; r++) {
        for (int c = 0; c < size; c++) {
          full[r][c] += column[r] * column[c];
        }
      }
    }
    for (int k = 0; k < size; k++) {
      full[k][k] += 0.1;
      full[size - 1][k] += random.nextGaussian();
      full[k][size - 1] += random.nextGaussian();
    }
    full[size - 1][size - 1] -= 20;
    double[] right = random.doubles(size, -1, 1).toArray();
    int n = first + size;
    double[] matrix = new double[n * n];
    double[] solved = new double[n];
    for (int r = 0; r < n; r++) {
      solved[r] = r < first ? Double.NaN : right[r - first];
      for (int c = 0; c < n; c++) {
        boolean read = r >= first && c >= first && (c >= r || r == n - 1);
        matrix[r * n + c] = read ? full[r - first][c - first] : Double.NaN;
      }
    }
    LinearSolver.solveBordered(first, matrix, solved, n);
    double[] expected =
        new LUDecomposition(new Array2DRowRealMatrix(full))
            .getSolver()
            .solve(new ArrayRealVector(right))
            .toArray();
    for (int k = 0; k < size; k++) {
      assertEquals(expected[k], solved[first + k], 1e-9 * (1 + Math.abs(expected[k])));
    }
  }
}
