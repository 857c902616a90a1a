package org.brewchem.internal;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.math3.exception.ConvergenceException;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.exception.TooManyIterationsException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresProblem;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresProblem.Evaluation;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.util.Pair;
import org.jspecify.annotations.Nullable;

/**
 * The parameters of a curve that passes observations as closely as possible, some of them not below
 * zero: the method of Levenberg and Marquardt, with an active set around it.
 *
 * <p>The optimiser knows no bounds. A parameter that it drives to zero is held there, the others
 * are fitted again, and it is let go if the sum of squares then falls with it; so what is found is
 * the least sum of squares within the bounds.
 */
public final class CurveLeastSquares {

  /** Below it, in its scale, a parameter is at its bound: a search that was cut there stays. */
  private static final double NEXT_TO_ZERO = 1e-9;

  private static final int CAP = 200;

  /** Relative change of the sum of squares, and of the parameters, that is none. */
  private static final double TOLERANCE = 1e-13;

  /** Relative step after which what is left to go is far below any uncertainty. */
  private static final double SETTLED = 1e-6;

  /** Cosine between residuals and slope below which a parameter held at zero stays there. */
  private static final double NO_SLOPE = 1e-9;

  /**
   * A parameter to be found.
   *
   * @param start where the search starts
   * @param scale size of a change that matters
   * @param nonNegative whether it may not fall below zero
   */
  public record Parameter(double start, double scale, boolean nonNegative) {}

  /** A curve where it was observed. */
  public interface Curve {

    /**
     * Follows the curve.
     *
     * @param parameters the parameters
     * @param slopes receives for each value its slopes by the parameters
     * @return its values
     */
    double[] at(double[] parameters, double[][] slopes);
  }

  private record Followed(double[] at, double[] values, RealMatrix slopes) {}

  private final Parameter[] parameters;
  private final Curve curve;
  private final double[] observed;
  private @Nullable Followed last;
  private final double[] point;
  private final double[] residuals;
  private final RealMatrix slopes;
  private final RealMatrix covariance;

  private CurveLeastSquares(Parameter[] parameters, Curve curve, double[] observed)
      throws NoFitException {
    this.parameters = parameters;
    this.curve = curve;
    this.observed = observed;
    this.point = withinBounds();
    Followed found = follow(point);
    this.residuals = residuals(found);
    this.slopes = found.slopes;
    this.covariance = inverse(slopes.transpose().multiply(slopes));
  }

  /**
   * Fits a curve.
   *
   * @param parameters what is to be found
   * @param curve the curve
   * @param observed the observations, more than parameters
   * @return the fit
   * @throws NoFitException if the observations do not determine the parameters, or the search does
   *     not settle
   */
  public static CurveLeastSquares fit(Parameter[] parameters, Curve curve, double[] observed)
      throws NoFitException {
    return new CurveLeastSquares(parameters.clone(), curve, observed.clone());
  }

  /**
   * Solves a linear system of more rows than columns by least squares.
   *
   * @param rows the coefficients by rows
   * @param right the right-hand side
   * @return the solution
   * @throws NoFitException if the columns depend on each other
   */
  public static double[] solveLinear(double[][] rows, double[] right) throws NoFitException {
    try {
      return new QRDecomposition(new Array2DRowRealMatrix(rows, false))
          .getSolver()
          .solve(new ArrayRealVector(right, false))
          .toArray();
    } catch (SingularMatrixException e) {
      throw new NoFitException(NoFitException.Reason.NOT_DETERMINED, e);
    }
  }

  private double[] withinBounds() throws NoFitException {
    double[] current = Arrays.stream(parameters).mapToDouble(Parameter::start).toArray();
    boolean[] held = new boolean[parameters.length];
    for (int round = 0; round < CAP; round++) {
      current = optimum(current, held);
      boolean changed = false;
      for (int j = 0; j < held.length; j++) {
        if (!held[j]
            && parameters[j].nonNegative
            && current[j] <= NEXT_TO_ZERO * parameters[j].scale) {
          current[j] = 0;
          held[j] = true;
          changed = true;
        }
      }
      if (!changed && !letGo(current, held)) {
        return current;
      }
    }
    throw new NoFitException(NoFitException.Reason.NOT_SETTLED, null);
  }

  /** Lets go the parameter held at zero with which the sum of squares falls most, if any. */
  private boolean letGo(double[] at, boolean[] held) {
    if (free(held).length == held.length) {
      return false;
    }
    Followed found = follow(at);
    RealVector offsets = new ArrayRealVector(residuals(found), false);
    int best = -1;
    double most = NO_SLOPE;
    double step = 0;
    for (int j = 0; j < held.length; j++) {
      RealVector slope = found.slopes.getColumnVector(j);
      if (held[j] && slope.getNorm() > 0 && offsets.getNorm() > 0) {
        double cosine = offsets.cosine(slope);
        if (cosine > most) {
          most = cosine;
          best = j;
          step = offsets.dotProduct(slope) / slope.dotProduct(slope);
        }
      }
    }
    if (best >= 0) {
      held[best] = false;
      // From next to zero the search takes steps next to zero, and may end there.
      at[best] = Math.min(step, parameters[best].scale);
    }
    return best >= 0;
  }

  /** The optimum over the parameters not held; it ends early where another one reaches zero. */
  private double[] optimum(double[] start, boolean[] held) throws NoFitException {
    int[] free = free(held);
    if (free.length == 0) {
      return start;
    }
    LeastSquaresProblem problem =
        new LeastSquaresBuilder()
            .start(Arrays.stream(free).mapToDouble(j -> start[j]).toArray())
            .target(observed)
            .parameterValidator(
                values -> new ArrayRealVector(allowed(values.toArray(), free), false))
            .model(
                values -> {
                  Followed found = follow(placed(values.toArray(), free, start));
                  return new Pair<>(
                      new ArrayRealVector(found.values, false),
                      found.slopes.getSubMatrix(all(observed), free));
                })
            .checker((iteration, before, after) -> ended(before, after, free))
            .maxEvaluations(CAP)
            .maxIterations(CAP)
            .build();
    try {
      return placed(
          new LevenbergMarquardtOptimizer()
              .withCostRelativeTolerance(TOLERANCE)
              .withParameterRelativeTolerance(TOLERANCE)
              .optimize(problem)
              .getPoint()
              .toArray(),
          free,
          start);
    } catch (TooManyEvaluationsException | TooManyIterationsException | ConvergenceException e) {
      throw new NoFitException(NoFitException.Reason.NOT_SETTLED, e);
    }
  }

  private static int[] free(boolean[] held) {
    int[] free = new int[held.length];
    int count = 0;
    for (int j = 0; j < held.length; j++) {
      if (!held[j]) {
        free[count++] = j;
      }
    }
    return Arrays.copyOf(free, count);
  }

  private double[] allowed(double[] values, int[] free) {
    for (int k = 0; k < free.length; k++) {
      if (parameters[free[k]].nonNegative) {
        values[k] = Math.max(values[k], 0);
      }
    }
    return values;
  }

  private static double[] placed(double[] values, int[] free, double[] others) {
    double[] all = others.clone();
    for (int k = 0; k < free.length; k++) {
      all[free[k]] = values[k];
    }
    return all;
  }

  /** Whether a parameter stays at zero, or none moves any more. */
  private boolean ended(Evaluation before, Evaluation after, int[] free) {
    boolean settled = true;
    for (int k = 0; k < free.length; k++) {
      if (parameters[free[k]].nonNegative
          && before.getPoint().getEntry(k) == 0
          && after.getPoint().getEntry(k) == 0) {
        return true;
      }
      double moved = after.getPoint().getEntry(k) - before.getPoint().getEntry(k);
      settled &= Math.abs(moved) <= SETTLED * Math.abs(after.getPoint().getEntry(k));
    }
    return settled;
  }

  /** The curve at these parameters, where the search mostly stands already. */
  private Followed follow(double[] at) {
    Followed found = last;
    if (found == null || !Arrays.equals(found.at, at)) {
      double[][] rows = new double[observed.length][at.length];
      double[] values = curve.at(at, rows);
      found = new Followed(at.clone(), values, new Array2DRowRealMatrix(rows, false));
      last = found;
    }
    return found;
  }

  private double[] residuals(Followed found) {
    double[] offsets = new double[observed.length];
    Arrays.setAll(offsets, i -> observed[i] - found.values[i]);
    return offsets;
  }

  private static int[] all(double[] values) {
    return IntStream.range(0, values.length).toArray();
  }

  private static RealMatrix inverse(RealMatrix normal) throws NoFitException {
    try {
      return new LUDecomposition(normal).getSolver().getInverse();
    } catch (SingularMatrixException e) {
      throw new NoFitException(NoFitException.Reason.NOT_DETERMINED, e);
    }
  }

  /** Returns the parameters found. */
  public double[] parameters() {
    return point.clone();
  }

  /** Returns observed minus curve. */
  public double[] residuals() {
    return residuals.clone();
  }

  /** Returns the sum of the squared residuals. */
  public double squares() {
    return Arrays.stream(residuals).map(r -> r * r).sum();
  }

  /** Returns the residual standard deviation. */
  public double standardDeviation() {
    return Math.sqrt(squares() / (residuals.length - point.length));
  }

  /** Returns the standard uncertainty that the scatter of the observations gives a parameter. */
  public double standardUncertainty(int parameter) {
    return standardDeviation() * Math.sqrt(covariance.getEntry(parameter, parameter));
  }

  /** Returns the covariance of two parameters that the scatter of the observations gives them. */
  public double covariance(int one, int other) {
    return standardDeviation() * standardDeviation() * covariance.getEntry(one, other);
  }

  /**
   * Returns how far one more solution of the normal equations moves the parameters, as a share of
   * their standard uncertainties. What is held at zero takes no part.
   *
   * @return the largest share, near 0 where the equations hold
   */
  public double nextStep() {
    int[] unheld =
        IntStream.range(0, point.length)
            .filter(j -> point[j] != 0 || !parameters[j].nonNegative)
            .toArray();
    if (unheld.length == 0) {
      return 0;
    }
    RealMatrix moving = slopes.getSubMatrix(all(residuals), unheld);
    double[] steps =
        new LUDecomposition(moving.transpose().multiply(moving))
            .getSolver()
            .getInverse()
            .multiply(moving.transpose())
            .operate(residuals);
    double largest = 0;
    for (int k = 0; k < steps.length; k++) {
      double u = standardUncertainty(unheld[k]);
      if (u > 0) {
        largest = Math.max(largest, Math.abs(steps[k]) / u);
      }
    }
    return largest;
  }

  /** Returns for each observation the share of it that the curve follows, 0 to 1. */
  public double[] leverages() {
    RealMatrix hat = slopes.multiply(covariance).multiply(slopes.transpose());
    double[] leverages = new double[residuals.length];
    for (int i = 0; i < leverages.length; i++) {
      leverages[i] = hat.getEntry(i, i);
    }
    return leverages;
  }
}
