package org.brewchem.uncertainty;

import java.util.Objects;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;

/**
 * A value with its standard uncertainty u, the degrees of freedom of that u, and a unit that is
 * carried along as text. Degrees of freedom say how well u itself is known: infinite for a u taken
 * as given, 1 for one found from two replicates.
 */
public final class UncertainValue {

  /** The tails beyond tell more of the distribution that is assumed than of the quantity. */
  private static final double LEAST = 1e-9;

  private final double value;
  private final double standardUncertainty;
  private final double degreesOfFreedom;
  private final String unit;

  private UncertainValue(
      double value, double standardUncertainty, double degreesOfFreedom, String unit) {
    this.unit = Objects.requireNonNull(unit, "unit");
    this.value = Checks.finite("value", value, unit);
    this.standardUncertainty =
        Checks.nonNegative("standard uncertainty", standardUncertainty, unit);
    this.degreesOfFreedom = Quantiles.degreesOfFreedom(degreesOfFreedom);
  }

  /**
   * Returns a value whose standard uncertainty is taken as given, with infinite degrees of freedom.
   *
   * @param value the value, in {@code unit}
   * @param standardUncertainty the standard uncertainty u, 0 or more, in {@code unit}
   * @param unit the unit, empty when there is none
   * @return the value with its uncertainty
   * @throws IllegalArgumentException if a number is not finite or u is negative
   */
  public static UncertainValue of(double value, double standardUncertainty, String unit) {
    return new UncertainValue(value, standardUncertainty, Double.POSITIVE_INFINITY, unit);
  }

  /**
   * Returns the same value with other degrees of freedom.
   *
   * @param degreesOfFreedom 1, which two observations have, or more; a fraction or {@link
   *     Double#POSITIVE_INFINITY} is allowed
   * @return the value with those degrees of freedom
   * @throws IllegalArgumentException if they are below 1 or NaN: no interval could be made of them
   */
  public UncertainValue withDegreesOfFreedom(double degreesOfFreedom) {
    return new UncertainValue(value, standardUncertainty, degreesOfFreedom, unit);
  }

  /**
   * Returns the value.
   *
   * @return the value, in {@link #unit()}
   */
  public double value() {
    return value;
  }

  /**
   * Returns the standard uncertainty u.
   *
   * @return u, 0 or more, in {@link #unit()}
   */
  public double standardUncertainty() {
    return standardUncertainty;
  }

  /**
   * Returns the standard uncertainty as a fraction of the value.
   *
   * @return u divided by the absolute value, 0 or more; empty when the value is 0
   */
  public OptionalDouble relativeStandardUncertainty() {
    return value == 0.0
        ? OptionalDouble.empty()
        : OptionalDouble.of(standardUncertainty / Math.abs(value));
  }

  /**
   * Returns the degrees of freedom of the standard uncertainty.
   *
   * @return more than 0, possibly a fraction or infinite
   */
  public double degreesOfFreedom() {
    return degreesOfFreedom;
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
   * Returns the value multiplied by an exact factor, its uncertainty with it, as when a result is
   * stated in another unit or as another acid.
   *
   * @param exactFactor the factor, finite; its own uncertainty is taken to be nothing
   * @param newUnit the unit of the product, empty when there is none
   * @return the product
   * @throws IllegalArgumentException if the factor is not finite
   */
  public UncertainValue times(double exactFactor, String newUnit) {
    Objects.requireNonNull(newUnit, "newUnit");
    Checks.finite("exact factor", exactFactor, "");
    return new UncertainValue(
        exactFactor * value,
        Math.abs(exactFactor) * standardUncertainty,
        degreesOfFreedom,
        newUnit);
  }

  /**
   * Returns the expanded uncertainty by the library's one rule: k from Student's t for 95 % at the
   * degrees of freedom, but never below 2. So U of few observations is as wide as it must be, and U
   * of a standard uncertainty taken as given has the customary k = 2.
   *
   * @return the value with U
   */
  public ExpandedUncertainty expanded() {
    return new ExpandedUncertainty(this, coverageFactor(), OptionalDouble.empty());
  }

  /**
   * Returns the coverage factor by the library's one rule.
   *
   * @return k = t(0.975, degrees of freedom), at least 2
   */
  public double coverageFactor() {
    return Double.isInfinite(degreesOfFreedom)
        ? 2
        : Math.max(2, Quantiles.coverageFactor(0.95, degreesOfFreedom));
  }

  /**
   * Returns the expanded uncertainty for a coverage probability, with k from Student's t at the
   * degrees of freedom (JCGM 100:2008, annex G, from memory). Degrees of freedom that are a
   * fraction are used as they are and not cut to a whole number.
   *
   * @param coverageProbability the probability, above 0 and below 1, by custom 0.95
   * @return the value with U
   * @throws IllegalArgumentException if the probability is out of range
   */
  public ExpandedUncertainty expandedAt(double coverageProbability) {
    return new ExpandedUncertainty(
        this,
        Quantiles.coverageFactor(coverageProbability, degreesOfFreedom),
        OptionalDouble.of(coverageProbability));
  }

  /**
   * Returns the probability that the quantity lies below a number: Student's t at the degrees of
   * freedom, normal where they are infinite (JCGM 106:2012, 7, from memory: no knowledge of the
   * quantity but the measurement).
   *
   * @param number the number, in {@link #unit()}
   * @return 0 to 1; where u is 0, 1 if the value lies below and else 0
   * @throws IllegalArgumentException if the number is not finite
   */
  public double chanceBelow(double number) {
    double apart = Checks.finite("number", number, unit) - value;
    if (standardUncertainty == 0) {
      return apart > 0 ? 1 : 0;
    }
    return Quantiles.below(apart / standardUncertainty, degreesOfFreedom);
  }

  /**
   * Returns the number below which the quantity lies with a probability, the inverse of {@link
   * #chanceBelow}.
   *
   * @param probability 1e-9 to 1 - 1e-9
   * @return the number, in {@link #unit()}
   * @throws IllegalArgumentException if the probability is out of range
   */
  public double quantile(double probability) {
    double share = Checks.inRange("probability", probability, "", LEAST, 1 - LEAST);
    return value + standardUncertainty * Quantiles.studentT(share, degreesOfFreedom);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof UncertainValue that
        && Double.compare(value, that.value) == 0
        && Double.compare(standardUncertainty, that.standardUncertainty) == 0
        && Double.compare(degreesOfFreedom, that.degreesOfFreedom) == 0
        && unit.equals(that.unit);
  }

  @Override
  public int hashCode() {
    return Objects.hash(value, standardUncertainty, degreesOfFreedom, unit);
  }

  /**
   * Prints the value and u with two significant digits: {@code 0.10022 mol/L, u 0.00011}. Degrees
   * of freedom are added when they are finite.
   */
  @Override
  public String toString() {
    String text =
        Digits.withUnit(Digits.ofValue(value, standardUncertainty), unit)
            + ", u "
            + Digits.ofUncertainty(standardUncertainty);
    return Double.isInfinite(degreesOfFreedom)
        ? text
        : text + " (degrees of freedom " + Digits.significant(degreesOfFreedom, 3) + ")";
  }
}
