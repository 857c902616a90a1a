package org.brewchem.internal;

import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.exception.NoBracketingException;
import org.apache.commons.math3.exception.TooManyEvaluationsException;

/**
 * The one search for a root of a function of one unknown. The caller brackets the root by chemistry
 * (two ends that enclose it, doses that double, steps of its own); Brent's method closes in on it.
 *
 * <p>Functions are scaled by the caller such that 1e-17 is nothing: equivalents per kilogram,
 * indices, shares.
 */
public final class Roots {

  /** Evaluations after which a bracket is given up, and after which a root within it is. */
  static final int CAP = 300;

  private static final double RELATIVE_ACCURACY = 1e-14;

  /** None: an unknown near zero, such as a trace of acid, is found as exactly as any other. */
  private static final double ABSOLUTE_ACCURACY = 1e-300;

  private static final double SMALLEST_RESIDUAL = 1e-17;

  private Roots() {}

  /** Finds the root of a function of opposite signs at both ends. */
  public static Root between(DoubleUnaryOperator function, double low, double high) {
    return new Counted(function).between(low, high);
  }

  /**
   * Finds the root of a rising function that is negative at {@code low}, doubling {@code first}
   * until the function is no longer negative there.
   *
   * @param first where to look first, more than 0
   * @param limit where to stop; no root is found if the function is still negative there
   */
  public static Root rising(DoubleUnaryOperator function, double low, double first, double limit) {
    Counted counted = new Counted(function);
    double from = low;
    double to = Math.min(first, limit);
    double atTo = counted.applyAsDouble(to);
    while (atTo < 0) {
      if (to >= limit || counted.evaluations >= CAP) {
        return Root.notFound(low, to, atTo, counted.evaluations);
      }
      from = to;
      to = Math.min(2 * to, limit);
      atTo = counted.applyAsDouble(to);
    }
    return counted.between(from, to);
  }

  /**
   * Finds the root towards which the caller steps, until the sign of the function changes.
   *
   * @param next the next place to look, from the last one and the function there; the last one
   *     again if there is none left
   * @param settled a value so near to zero that its sign may be that of rounding; a place where the
   *     function is so small is a root
   */
  public static Root walking(
      DoubleUnaryOperator function, double start, DoubleBinaryOperator next, double settled) {
    Counted counted = new Counted(function);
    double near = start;
    double far = start;
    double atFar = counted.applyAsDouble(start);
    double sign = Math.signum(atFar);
    while (Math.abs(atFar) > settled && Math.signum(atFar) == sign) {
      double on = next.applyAsDouble(far, atFar);
      if (on == far || counted.evaluations >= CAP) {
        return Root.notFound(Math.min(near, far), Math.max(near, far), atFar, counted.evaluations);
      }
      near = far;
      far = on;
      atFar = counted.applyAsDouble(far);
    }
    return Math.abs(atFar) <= settled
        ? Root.found(far, Math.min(near, far), Math.max(near, far), atFar, counted.evaluations)
        : counted.between(Math.min(near, far), Math.max(near, far));
  }

  /** A function that counts how often it is asked, and keeps what came nearest to zero. */
  private static final class Counted implements DoubleUnaryOperator {

    private final DoubleUnaryOperator function;
    private int evaluations;
    private double nearest = Double.POSITIVE_INFINITY;

    Counted(DoubleUnaryOperator function) {
      this.function = function;
    }

    @Override
    public double applyAsDouble(double x) {
      evaluations++;
      double value = function.applyAsDouble(x);
      if (Double.isNaN(value)) {
        throw new ArithmeticException("search for a root: the function has no value at " + x);
      }
      if (Math.abs(value) < Math.abs(nearest)) {
        nearest = value;
      }
      return value;
    }

    Root between(double low, double high) {
      try {
        double root =
            new BrentSolver(RELATIVE_ACCURACY, ABSOLUTE_ACCURACY, SMALLEST_RESIDUAL)
                .solve(CAP, this::applyAsDouble, low, high);
        return Root.found(root, low, high, nearest, evaluations);
      } catch (NoBracketingException | TooManyEvaluationsException e) {
        return Root.notFound(low, high, nearest, evaluations);
      }
    }
  }
}
