package org.brewchem.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.exception.MaxCountExceededException;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.PointValuePair;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NoFeasibleSolutionException;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.PivotSelectionRule;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.linear.UnboundedSolutionException;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;

/**
 * A small linear program: the least value of a linear function of bounded variables under linear
 * rows, by the simplex of commons-math3.
 *
 * <p>That simplex compares with absolute numbers, and by its own pivot rule it can go round in
 * circles. So variables are shifted to their lower bound and counted in a scale of the caller's,
 * rows and objective are divided by their largest coefficient, Bland's rule is set, and the point
 * found is held against every row once more. Mutable, for one thread.
 */
public final class LinearProgram {

  /** How a search ended. */
  public enum End {
    /** A point was found and holds. */
    OPTIMAL,
    /** No point holds. */
    INFEASIBLE,
    /** The objective falls without end. */
    UNBOUNDED,
    /** The search gave up, or its point does not hold. */
    FAILED
  }

  /**
   * What was found.
   *
   * @param end how the search ended
   * @param point the variables; empty unless the end is optimal
   * @param value the objective there
   */
  public record Found(End end, double[] point, double value) {}

  /** Below what the simplex takes a reduced cost, and the sum of all violations, for 0. */
  private static final double EPSILON = 1e-10;

  private static final int MOST_ULPS = 10;

  /** Below what an entry of the tableau counts as 0. */
  private static final double CUT_OFF = 1e-12;

  /** How far a scaled row may be from holding at the point found. */
  private static final double TOLERANCE = 1e-8;

  private static final int MOST_PIVOTS = 20_000;

  private final double[] lower;
  private final double[] upper;
  private final double[] scale;
  private final List<Row> rows = new ArrayList<>();

  private record Row(double[] coefficients, Relationship relation, double limit) {}

  /**
   * Starts a program.
   *
   * @param lower the least of each variable; negative infinity where there is none
   * @param upper the most of each; positive infinity where there is none
   * @param scale in what steps each is counted, above 0: about the size that it has in the end
   */
  public LinearProgram(double[] lower, double[] upper, double[] scale) {
    this.lower = lower.clone();
    this.upper = upper.clone();
    this.scale = scale.clone();
  }

  /**
   * Adds a row that is at least a limit.
   *
   * @param coefficients one to each variable
   * @param limit the limit
   */
  public void atLeast(double[] coefficients, double limit) {
    rows.add(new Row(coefficients, Relationship.GEQ, limit));
  }

  /**
   * Adds a row that is at most a limit.
   *
   * @param coefficients one to each variable
   * @param limit the limit
   */
  public void atMost(double[] coefficients, double limit) {
    rows.add(new Row(coefficients, Relationship.LEQ, limit));
  }

  /**
   * Adds a row that is equal to a number.
   *
   * @param coefficients one to each variable
   * @param number the number
   */
  public void equal(double[] coefficients, double number) {
    rows.add(new Row(coefficients, Relationship.EQ, number));
  }

  /**
   * Finds the least value.
   *
   * @param objective one coefficient to each variable
   * @return what was found; the same every time
   */
  public Found minimise(double[] objective) {
    int n = lower.length;
    // A variable that cannot move has no column; one without a lower bound has two.
    int[] column = new int[n];
    int columns = 0;
    for (int j = 0; j < n; j++) {
      if (lower[j] > upper[j]) {
        return failed(End.INFEASIBLE);
      }
      column[j] = lower[j] == upper[j] ? -1 : columns;
      columns += lower[j] == upper[j] ? 0 : Double.isInfinite(lower[j]) ? 2 : 1;
    }
    List<LinearConstraint> scaled = new ArrayList<>(rows.size() + n);
    for (Row row : rows) {
      double[] entries = columns(row.coefficients, column, columns);
      double limit = row.limit - fixed(row.coefficients);
      double size = largest(entries);
      if (size <= CUT_OFF * Math.max(1e-300, largest(row.coefficients))) {
        if (!holds(0, row.relation, limit / Math.max(largest(row.coefficients), 1e-300))) {
          return failed(End.INFEASIBLE);
        }
      } else {
        divide(entries, size);
        scaled.add(new LinearConstraint(entries, row.relation, limit / size));
      }
    }
    if (columns == 0) {
      return new Found(End.OPTIMAL, lower.clone(), dot(objective, lower));
    }
    double[] costs = columns(objective, column, columns);
    double size = largest(costs);
    if (size > 0) {
      divide(costs, size);
    }
    return bounded(objective, column, columns, scaled, costs);
  }

  /** Few upper bounds are reached: one becomes a row only when a point without it goes beyond. */
  private Found bounded(
      double[] objective,
      int[] column,
      int columns,
      List<LinearConstraint> scaled,
      double[] costs) {
    boolean[] bound = new boolean[lower.length];
    while (true) {
      Found found = solved(objective, column, scaled, costs);
      boolean more = false;
      for (int j = 0; j < bound.length; j++) {
        boolean beyond =
            found.end == End.UNBOUNDED
                || found.end == End.FAILED
                || (found.end == End.OPTIMAL && found.point[j] > upper[j]);
        if (column[j] >= 0 && !bound[j] && !Double.isInfinite(upper[j]) && beyond) {
          double[] entries = new double[columns];
          entries[column[j]] = 1;
          double base = lower[j];
          if (Double.isInfinite(lower[j])) {
            entries[column[j] + 1] = -1;
            base = 0;
          }
          scaled.add(new LinearConstraint(entries, Relationship.LEQ, (upper[j] - base) / scale[j]));
          bound[j] = true;
          more = true;
        }
      }
      if (!more) {
        return found.end == End.OPTIMAL ? clipped(found) : found;
      }
    }
  }

  /** A bound that is a row holds but for rounding; no zero is negative. */
  private Found clipped(Found found) {
    double[] point = found.point.clone();
    for (int j = 0; j < point.length; j++) {
      point[j] = Math.min(point[j], upper[j]) + 0.0;
    }
    return new Found(End.OPTIMAL, point, found.value);
  }

  private Found solved(
      double[] objective, int[] column, List<LinearConstraint> scaled, double[] costs) {
    PointValuePair pair;
    try {
      pair =
          new SimplexSolver(EPSILON, MOST_ULPS, CUT_OFF)
              .optimize(
                  new MaxIter(MOST_PIVOTS),
                  new LinearObjectiveFunction(costs, 0),
                  new LinearConstraintSet(scaled),
                  GoalType.MINIMIZE,
                  new NonNegativeConstraint(true),
                  PivotSelectionRule.BLAND);
    } catch (NoFeasibleSolutionException none) {
      return failed(End.INFEASIBLE);
    } catch (UnboundedSolutionException endless) {
      return failed(End.UNBOUNDED);
    } catch (MaxCountExceededException tired) {
      return failed(End.FAILED);
    }
    double[] y = pair.getPointRef();
    RealVector found = new ArrayRealVector(y, false);
    for (LinearConstraint row : scaled) {
      double value = row.getCoefficients().dotProduct(found);
      if (!holds(value, row.getRelationship(), row.getValue())) {
        return failed(End.FAILED);
      }
    }
    double[] point = new double[lower.length];
    for (int j = 0; j < point.length; j++) {
      if (column[j] < 0) {
        point[j] = lower[j];
      } else if (Double.isInfinite(lower[j])) {
        point[j] = scale[j] * (y[column[j]] - y[column[j] + 1]);
      } else {
        point[j] = lower[j] + scale[j] * Math.max(0, y[column[j]]);
      }
    }
    return new Found(End.OPTIMAL, point, dot(objective, point));
  }

  private static boolean holds(double value, Relationship relation, double limit) {
    double tolerance = TOLERANCE * Math.max(1, Math.abs(limit));
    return switch (relation) {
      case GEQ -> value >= limit - tolerance;
      case LEQ -> value <= limit + tolerance;
      case EQ -> Math.abs(value - limit) <= tolerance;
    };
  }

  private double[] columns(double[] coefficients, int[] column, int columns) {
    double[] entries = new double[columns];
    for (int j = 0; j < coefficients.length; j++) {
      if (column[j] >= 0) {
        entries[column[j]] = coefficients[j] * scale[j];
        if (Double.isInfinite(lower[j])) {
          entries[column[j] + 1] = -coefficients[j] * scale[j];
        }
      }
    }
    return entries;
  }

  /** What a row already has where every variable is at its lower bound. */
  private double fixed(double[] coefficients) {
    double sum = 0;
    for (int j = 0; j < coefficients.length; j++) {
      sum += Double.isInfinite(lower[j]) ? 0 : coefficients[j] * lower[j];
    }
    return sum;
  }

  private static double largest(double[] numbers) {
    return Arrays.stream(numbers).map(Math::abs).max().orElse(0);
  }

  private static void divide(double[] numbers, double by) {
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] /= by;
    }
  }

  private static double dot(double[] one, double[] other) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += one[i] * other[i];
    }
    return sum;
  }

  private static Found failed(End end) {
    return new Found(end, new double[0], Double.NaN);
  }
}
