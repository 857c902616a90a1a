package org.brewchem.uncertainty;

import java.util.Objects;
import org.brewchem.internal.Checks;

/**
 * A named input quantity of a {@link MeasurementModel}: estimate, standard uncertainty, unit, and
 * the distribution that describes what is known about it (JCGM 100:2008, 4.2 and 4.3, from memory).
 */
public final class Input {

  private static final double SQRT_3 = Math.sqrt(3.0);
  private static final double SQRT_6 = Math.sqrt(6.0);

  private final String name;
  private final Traced traced;
  private final Distribution distribution;
  private final String unit;

  private Input(String name, Traced traced, Distribution distribution, String unit) {
    this.name = Checks.notBlank("name", name);
    this.traced = traced;
    this.distribution = distribution;
    this.unit = Objects.requireNonNull(unit, "unit");
  }

  private static Input ofItsOwn(
      String name,
      double estimate,
      double standardUncertainty,
      Distribution distribution,
      double degreesOfFreedom,
      String unit) {
    Source source = Source.of(name, estimate, standardUncertainty, degreesOfFreedom, unit);
    return new Input(name, Traced.of(source), distribution, unit);
  }

  /**
   * Returns an input with a normal distribution.
   *
   * @param name the name, as the budget prints it
   * @param estimate the estimate, in {@code unit}
   * @param standardUncertainty the standard uncertainty, 0 or more, in {@code unit}
   * @param unit the unit, empty when there is none
   * @return the input, with infinite degrees of freedom
   * @throws IllegalArgumentException if the name is blank, a number is not finite, or the
   *     uncertainty is negative
   */
  public static Input normal(
      String name, double estimate, double standardUncertainty, String unit) {
    return ofItsOwn(
        name, estimate, standardUncertainty, Distribution.NORMAL, Double.POSITIVE_INFINITY, unit);
  }

  /**
   * Returns an input of which only bounds are known, as a tolerance of glassware without a stated
   * confidence: u is the half width divided by sqrt(3).
   *
   * @param name the name, as the budget prints it
   * @param estimate the estimate, in {@code unit}
   * @param halfWidth the distance from the estimate to either bound, 0 or more, in {@code unit}
   * @param unit the unit, empty when there is none
   * @return the input, with infinite degrees of freedom
   * @throws IllegalArgumentException if the name is blank, a number is not finite, or the half
   *     width is negative
   */
  public static Input uniform(String name, double estimate, double halfWidth, String unit) {
    return ofItsOwn(
        name,
        estimate,
        Checks.nonNegative(name + ", half width", halfWidth, unit) / SQRT_3,
        Distribution.UNIFORM,
        Double.POSITIVE_INFINITY,
        unit);
  }

  /**
   * Returns an input of which bounds are known and values near the middle are more likely: u is the
   * half width divided by sqrt(6).
   *
   * @param name the name, as the budget prints it
   * @param estimate the estimate, in {@code unit}
   * @param halfWidth the distance from the estimate to either bound, 0 or more, in {@code unit}
   * @param unit the unit, empty when there is none
   * @return the input, with infinite degrees of freedom
   * @throws IllegalArgumentException if the name is blank, a number is not finite, or the half
   *     width is negative
   */
  public static Input triangular(String name, double estimate, double halfWidth, String unit) {
    return ofItsOwn(
        name,
        estimate,
        Checks.nonNegative(name + ", half width", halfWidth, unit) / SQRT_6,
        Distribution.TRIANGULAR,
        Double.POSITIVE_INFINITY,
        unit);
  }

  /**
   * Returns an input whose standard uncertainty comes from few observations.
   *
   * @param name the name, as the budget prints it
   * @param estimate the estimate, in {@code unit}
   * @param standardUncertainty the standard uncertainty, for a mean s / sqrt(n), in {@code unit}
   * @param degreesOfFreedom the degrees of freedom, 1 or more and finite, for a mean n - 1
   * @param unit the unit, empty when there is none
   * @return the input
   * @throws IllegalArgumentException if the name is blank, a number is not finite, the uncertainty
   *     is negative, or the degrees of freedom are below 1
   */
  public static Input student(
      String name,
      double estimate,
      double standardUncertainty,
      double degreesOfFreedom,
      String unit) {
    return ofItsOwn(
        name,
        estimate,
        standardUncertainty,
        Distribution.STUDENT,
        Checks.inRange(
            name + ", degrees of freedom",
            degreesOfFreedom,
            "",
            Quantiles.LEAST_DEGREES_OF_FREEDOM,
            1e100),
        unit);
  }

  /**
   * Returns an input from an earlier result: normal if its degrees of freedom are infinite, Student
   * otherwise.
   *
   * @param name the name, as the budget prints it
   * @param value the earlier result
   * @return the input
   * @throws IllegalArgumentException if the name is blank
   */
  public static Input from(String name, UncertainValue value) {
    return ofItsOwn(
        name,
        value.value(),
        value.standardUncertainty(),
        distributionAt(value.degreesOfFreedom()),
        value.degreesOfFreedom(),
        value.unit());
  }

  /**
   * Returns an input from an earlier result, with the sources of that result: two models that use
   * one result share its sources of uncertainty. Normal if its degrees of freedom are infinite,
   * Student otherwise.
   *
   * @param name the name, as the budget prints it
   * @param value the earlier result, in {@code unit}
   * @param unit the unit, empty when there is none
   * @return the input
   * @throws IllegalArgumentException if the name is blank
   */
  public static Input from(String name, Traced value, String unit) {
    Objects.requireNonNull(value, "value");
    return new Input(name, value, distributionAt(value.degreesOfFreedom()), unit);
  }

  private static Distribution distributionAt(double degreesOfFreedom) {
    return Double.isInfinite(degreesOfFreedom) ? Distribution.NORMAL : Distribution.STUDENT;
  }

  /**
   * Returns the name.
   *
   * @return the name, as the budget prints it
   */
  public String name() {
    return name;
  }

  /**
   * Returns the estimate.
   *
   * @return the estimate, in {@link #unit()}
   */
  public double estimate() {
    return traced.value();
  }

  /**
   * Returns the estimate with its sources.
   *
   * @return the traced number, in {@link #unit()}: of one source of its own, or those of an earlier
   *     result
   */
  public Traced traced() {
    return traced;
  }

  /**
   * Tells whether the uncertainty of the estimate is known.
   *
   * @return false if the earlier result that it comes from has none
   */
  public boolean isUncertaintyStated() {
    return traced.missing().isEmpty();
  }

  /**
   * Returns the standard uncertainty u of the estimate, as far as it is known.
   *
   * @return u, 0 or more, in {@link #unit()}; the least that it can be when {@link
   *     #isUncertaintyStated()} is false
   */
  public double standardUncertainty() {
    return traced.knownPart();
  }

  /**
   * Returns the shape of what is known.
   *
   * @return the distribution
   */
  public Distribution distribution() {
    return distribution;
  }

  /**
   * Returns the degrees of freedom of the standard uncertainty.
   *
   * @return more than 0, infinite for all but {@link Distribution#STUDENT}
   */
  public double degreesOfFreedom() {
    return traced.degreesOfFreedom();
  }

  /**
   * Returns the unit.
   *
   * @return the unit, empty when there is none
   */
  public String unit() {
    return unit;
  }

  /** Prints name, estimate, u and distribution. */
  @Override
  public String toString() {
    return name
        + " "
        + traced
            .uncertain(unit)
            .map(UncertainValue::toString)
            .orElseGet(
                () -> Digits.withUnit(Digits.significant(estimate(), 6), unit) + ", u not stated")
        + ", "
        + distribution;
  }
}
