package org.brewchem.quality;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.brewchem.internal.NormalProbability;

/**
 * Average run lengths of weighted averages and cumulative sums as Markov chains: what the rule
 * follows is cut into cells, and the chain of cells is solved (Brook and Evans, Biometrika 59
 * (1972) 539, from memory). A run comes out short by at most 5e-4 of itself where an average has
 * the weight 0.1, and falls with the square of the cells.
 */
final class RunLengths {

  private static final int CELLS = 301;

  private RunLengths() {}

  /** Both limits, started at the centre. */
  static double ofWeightedAverage(double weight, double limit, double shift) {
    double width = 2 * limit / CELLS;
    double[][] stay = new double[CELLS][CELLS];
    for (int from = 0; from < CELLS; from++) {
      double held = (1 - weight) * (-limit + (from + 0.5) * width);
      for (int to = 0; to < CELLS; to++) {
        double lower = (-limit + to * width - held) / weight - shift;
        stay[from][to] = NormalProbability.between(lower, lower + width / weight);
      }
    }
    return solved(stay, (CELLS - 1) / 2);
  }

  /** The side that looks for a rise, started at zero. */
  static double ofCumulativeSum(double allowance, double interval, double shift) {
    // The first cell is the sum at rest, half a cell wide, so that its middle lies at zero.
    double width = 2 * interval / (2 * CELLS - 1);
    double[][] stay = new double[CELLS][CELLS];
    for (int from = 0; from < CELLS; from++) {
      double held = from * width - allowance + shift;
      for (int to = 0; to < CELLS; to++) {
        double upper = (to + 0.5) * width - held;
        stay[from][to] =
            to == 0
                ? NormalProbability.below(upper)
                : NormalProbability.between(upper - width, upper);
      }
    }
    return solved(stay, 0);
  }

  /** Infinite where the chain leaves its cells less often than the arithmetic can tell. */
  private static double solved(double[][] stay, int start) {
    RealMatrix matrix = new Array2DRowRealMatrix(stay, false).scalarMultiply(-1);
    for (int i = 0; i < CELLS; i++) {
      matrix.addToEntry(i, i, 1);
    }
    DecompositionSolver solver = new LUDecomposition(matrix).getSolver();
    return solver.isNonSingular()
        ? solver.solve(new ArrayRealVector(CELLS, 1.0)).getEntry(start)
        : Double.POSITIVE_INFINITY;
  }
}
