package org.brewchem.uncertainty;

import java.util.Objects;
import org.brewchem.internal.Checks;

/**
 * The repeatability limit r = 2.8 s_r: two results of one method, by one operator on one sample in
 * a short time, differ by more than r in only 5 % of cases (ISO 5725-6, from memory; 2.8 is 1.96
 * times the square root of 2, rounded). The repeatability standard deviation s_r belongs to the
 * method and comes from many determinations, not from the two that are compared.
 */
public final class RepeatabilityLimit {

  private static final double FACTOR = 2.8;

  private final double repeatabilityStandardDeviation;
  private final String unit;

  private RepeatabilityLimit(double repeatabilityStandardDeviation, String unit) {
    this.unit = Objects.requireNonNull(unit, "unit");
    this.repeatabilityStandardDeviation =
        Checks.nonNegative(
            "repeatability standard deviation", repeatabilityStandardDeviation, unit);
  }

  /**
   * Returns the limit of a method.
   *
   * @param repeatabilityStandardDeviation s_r of the method, 0 or more, in {@code unit}
   * @param unit the unit, empty when there is none
   * @return the limit
   * @throws IllegalArgumentException if s_r is negative or not finite
   */
  public static RepeatabilityLimit fromStandardDeviation(
      double repeatabilityStandardDeviation, String unit) {
    return new RepeatabilityLimit(repeatabilityStandardDeviation, unit);
  }

  /**
   * Returns the greatest difference of two results that repeatability explains.
   *
   * @return r, 0 or more, in {@link #unit()}
   */
  public double value() {
    return FACTOR * repeatabilityStandardDeviation;
  }

  /**
   * Returns the unit.
   *
   * @return the unit, empty when there is none
   */
  public String unit() {
    return unit;
  }

  /**
   * Says whether two results differ by no more than r.
   *
   * @param first the first result, in {@link #unit()}
   * @param second the second result, in {@link #unit()}
   * @return whether repeatability explains their difference
   * @throws IllegalArgumentException if a result is not finite
   */
  public boolean allows(double first, double second) {
    return Math.abs(
            Checks.finite("first result", first, unit)
                - Checks.finite("second result", second, unit))
        <= value();
  }

  /** Prints r and where it comes from: {@code r 0.028 g/L (2.8 s_r)}. */
  @Override
  public String toString() {
    return "r " + Digits.withUnit(Digits.significant(value(), 2), unit) + " (2.8 s_r)";
  }
}
