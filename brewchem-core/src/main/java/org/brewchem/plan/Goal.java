package org.brewchem.plan;

import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;

/**
 * A constraint of a plan on the liquid of one site, with the numbers by which it counts. A ratio
 * counts by its logarithm: half as much is as far off as twice as much.
 */
final class Goal {

  private final Constraint constraint;
  private final int site;
  private final boolean ratio;
  private final double lower;
  private final double upper;
  private final double aim;
  private final double weight;
  private final double scale;
  private final double plainScale;

  /**
   * Makes a goal.
   *
   * @throws IllegalArgumentException if it carries a weight and nothing says how to count it
   */
  Goal(Constraint constraint, int site) {
    this.constraint = constraint;
    this.site = site;
    Figure<?> figure = constraint.figure();
    ratio = figure.rule() instanceof ClosedForm form && form.isRatio();
    lower = counted(constraint.lower().orElse(Double.NEGATIVE_INFINITY));
    upper = counted(constraint.upper().orElse(Double.POSITIVE_INFINITY));
    aim = constraint.aim().isPresent() ? counted(constraint.aim().getAsDouble()) : Double.NaN;
    weight = constraint.weight().orElse(Double.NaN);
    double size = Math.max(limitSize(constraint), Double.MIN_NORMAL);
    plainScale = constraint.scale().orElse(size);
    double half = (upper - lower) / 2;
    if (constraint.statedScale().isPresent()) {
      scale = constraint.statedScale().getAsDouble();
    } else if (half > 0 && !Double.isInfinite(half)) {
      scale = half;
    } else if (isHard()) {
      scale = ratio ? 1 : size;
    } else {
      throw new IllegalArgumentException(
          constraint
              + ": a weight without a scale is not possible here; state by how much off counts as"
              + " one"
              + (ratio ? ", as a difference of natural logarithms" : ""));
    }
  }

  private static double limitSize(Constraint constraint) {
    double limit = constraint.lower().orElseGet(() -> constraint.upper().orElse(1));
    return limit == 0 ? 1 : Math.abs(limit);
  }

  /** A number as it counts: the logarithm of a ratio, any other as it is. */
  double counted(double number) {
    return ratio ? (number > 0 ? Math.log(number) : Double.NEGATIVE_INFINITY) : number;
  }

  /**
   * What a weighted goal adds to the sum; infinite where the figure has no value.
   *
   * @param number the figure in the constraint's unit
   */
  double penalty(double number) {
    return weight * off(counted(number)) / scale;
  }

  double off(double counted) {
    if (Double.isNaN(counted)) {
      return Double.POSITIVE_INFINITY;
    }
    if (!Double.isNaN(aim)) {
      return Math.abs(counted - aim);
    }
    double below = lower == Double.NEGATIVE_INFINITY ? 0 : lower - counted;
    double above = upper == Double.POSITIVE_INFINITY ? 0 : counted - upper;
    return Math.max(0, Math.max(below, above));
  }

  /** By how many scales a hard goal is broken; infinite where the figure has no value. */
  double violation(double number) {
    return Double.isNaN(number)
        ? Double.POSITIVE_INFINITY
        : Math.abs(constraint.excess(number)) / plainScale;
  }

  Constraint constraint() {
    return constraint;
  }

  Figure<?> figure() {
    return constraint.figure();
  }

  int site() {
    return site;
  }

  boolean isRatio() {
    return ratio;
  }

  boolean isHard() {
    return Double.isNaN(weight);
  }

  double weight() {
    return weight;
  }

  /** By how much off counts as one, in the numbers that count. */
  double scale() {
    return scale;
  }

  /** The same in the unit of the figure, for a ratio half the width of its band. */
  double plainScale() {
    return plainScale;
  }

  /** Limits and aim in the numbers that count. */
  double lower() {
    return lower;
  }

  double upper() {
    return upper;
  }

  boolean hasAim() {
    return !Double.isNaN(aim);
  }

  double aim() {
    return aim;
  }

  /** Limits in the unit of the figure. */
  double plainLower() {
    return constraint.lower().orElse(Double.NEGATIVE_INFINITY);
  }

  double plainUpper() {
    return constraint.upper().orElse(Double.POSITIVE_INFINITY);
  }

  @Override
  public String toString() {
    return constraint.toString();
  }
}
