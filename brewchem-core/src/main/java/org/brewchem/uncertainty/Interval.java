package org.brewchem.uncertainty;

import java.util.Objects;
import org.brewchem.internal.Checks;

/** A coverage interval: two end points and the probability that the quantity lies between them. */
public final class Interval {

  private final double lower;
  private final double upper;
  private final double coverageProbability;
  private final String unit;

  private Interval(double lower, double upper, double coverageProbability, String unit) {
    this.unit = Objects.requireNonNull(unit, "unit");
    this.lower = Checks.finite("lower end point", lower, unit);
    this.upper = Checks.finite("upper end point", upper, unit);
    if (lower > upper) {
      throw Checks.outOfRange(
          "lower end point",
          lower,
          unit,
          "at most the upper end point " + Digits.withUnit(Double.toString(upper), unit));
    }
    this.coverageProbability = Quantiles.probability(coverageProbability);
  }

  /**
   * Returns an interval between two end points.
   *
   * @param lower the lower end point, in {@code unit}
   * @param upper the upper end point, in {@code unit}, not below the lower one
   * @param coverageProbability the probability that the quantity lies inside, above 0 and below 1
   * @param unit the unit, empty when there is none
   * @return the interval
   * @throws IllegalArgumentException if an end point is not finite, if they are out of order, or if
   *     the probability is out of range
   */
  public static Interval of(double lower, double upper, double coverageProbability, String unit) {
    return new Interval(lower, upper, coverageProbability, unit);
  }

  /**
   * Returns the lower end point.
   *
   * @return the lower end point, in {@link #unit()}
   */
  public double lower() {
    return lower;
  }

  /**
   * Returns the upper end point.
   *
   * @return the upper end point, in {@link #unit()}
   */
  public double upper() {
    return upper;
  }

  /**
   * Returns the probability that the quantity lies inside.
   *
   * @return the coverage probability, above 0 and below 1
   */
  public double coverageProbability() {
    return coverageProbability;
  }

  /**
   * Returns the unit of the end points.
   *
   * @return the unit, empty when there is none
   */
  public String unit() {
    return unit;
  }

  /**
   * Returns the distance between the end points.
   *
   * @return the length, 0 or more, in {@link #unit()}
   */
  public double length() {
    return upper - lower;
  }

  /**
   * Says whether a value lies inside; the end points belong to the interval.
   *
   * @param value the value, in {@link #unit()}
   * @return whether it lies inside
   * @throws IllegalArgumentException if the value is not finite
   */
  public boolean contains(double value) {
    Checks.finite("value", value, unit);
    return lower <= value && value <= upper;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Interval that
        && Double.compare(lower, that.lower) == 0
        && Double.compare(upper, that.upper) == 0
        && Double.compare(coverageProbability, that.coverageProbability) == 0
        && unit.equals(that.unit);
  }

  @Override
  public int hashCode() {
    return Objects.hash(lower, upper, coverageProbability, unit);
  }

  /**
   * Prints the end points with as many digits as half the length allows, and the probability:
   * {@code 0.10194 to 0.10234 mol/L (95 %)}.
   */
  @Override
  public String toString() {
    double half = 0.5 * length();
    return Digits.withUnit(Digits.ofValue(lower, half) + " to " + Digits.ofValue(upper, half), unit)
        + " ("
        + Digits.significant(100.0 * coverageProbability, 4)
        + " %)";
  }
}
