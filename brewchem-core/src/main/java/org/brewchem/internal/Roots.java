package org.brewchem.internal;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Roots of rising functions whose sign at the lower end is known. */
public final class Roots {

  private static final int EVALUATIONS = 300;

  private Roots() {}

  /**
   * Finds the root of a rising function that is negative at {@code low}, doubling {@code high}
   * until the function is no longer negative there.
   *
   * @return the root, or NaN if the function is still negative at {@code limit}
   */
  public static double rising(DoubleUnaryOperator function, double low, double high, double limit) {
    double from = low;
    double to = Math.min(high, limit);
    double atTo = function.applyAsDouble(to);
    while (atTo < 0 && to < limit) {
      from = to;
      to = Math.min(2 * to, limit);
      atTo = function.applyAsDouble(to);
    }
    return atTo < 0 ? Double.NaN : between(function, from, to);
  }

  /** Finds the root of a function of opposite signs at both ends. */
  public static double between(DoubleUnaryOperator function, double low, double high) {
    return new BrentSolver(1e-14, 1e-300, 1e-17)
        .solve(EVALUATIONS, function::applyAsDouble, low, high);
  }
}
