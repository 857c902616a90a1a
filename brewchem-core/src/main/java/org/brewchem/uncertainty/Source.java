package org.brewchem.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.jspecify.annotations.Nullable;

/**
 * A source of uncertainty: one quantity that was measured, stated or assumed. Its error moves every
 * number computed from it.
 *
 * <p>Two sources are the same only if they are the same object. What is read once and used twice is
 * therefore one source, so that its error correlates, and cancels, wherever it enters. Immutable.
 */
public final class Source {

  private static final int MOST_OF_ONE_SCATTER = 10_000;

  private final String name;
  private final double estimate;
  private final OptionalDouble standardUncertainty;
  private final double degreesOfFreedom;
  private final String unit;
  private final Object scatter;

  private Source(
      String name,
      double estimate,
      OptionalDouble standardUncertainty,
      double degreesOfFreedom,
      String unit,
      @Nullable Object scatter) {
    this.scatter = scatter == null ? this : scatter;
    this.name = Checks.notBlank("name", name);
    this.unit = Objects.requireNonNull(unit, "unit");
    this.estimate = Checks.finite(name, estimate, unit);
    this.standardUncertainty = standardUncertainty;
    this.degreesOfFreedom = Quantiles.degreesOfFreedom(degreesOfFreedom);
  }

  /**
   * Returns a source with a standard uncertainty taken as given.
   *
   * @param name what was measured, as a budget prints it
   * @param estimate its value, in {@code unit}
   * @param standardUncertainty u of the estimate, 0 or more, in {@code unit}
   * @param unit the unit; empty when there is none
   * @return the source, with infinite degrees of freedom
   * @throws IllegalArgumentException if the name is blank, a number is not finite or u is negative
   */
  public static Source of(String name, double estimate, double standardUncertainty, String unit) {
    return of(name, estimate, standardUncertainty, Double.POSITIVE_INFINITY, unit);
  }

  /**
   * Returns a source whose standard uncertainty comes from few observations.
   *
   * @param name what was measured, as a budget prints it
   * @param estimate its value, in {@code unit}
   * @param standardUncertainty u of the estimate, 0 or more, in {@code unit}
   * @param degreesOfFreedom the degrees of freedom of u, 1 or more; infinite for a u taken as given
   * @param unit the unit; empty when there is none
   * @return the source
   * @throws IllegalArgumentException if the name is blank, a number is not finite, u is negative or
   *     the degrees of freedom are below 1
   */
  public static Source of(
      String name,
      double estimate,
      double standardUncertainty,
      double degreesOfFreedom,
      String unit) {
    return new Source(
        name,
        estimate,
        OptionalDouble.of(
            Checks.nonNegative(name + ", standard uncertainty", standardUncertainty, unit)),
        degreesOfFreedom,
        unit,
        null);
  }

  /**
   * Returns independent sources whose standard uncertainties, 1 each, all come from the one scatter
   * of the same readings, as those of the parameters of a fit do. In a number that moves with
   * several of them they have the degrees of freedom of that scatter together, not each.
   *
   * @param name what scattered, as a budget prints it; each gets a number
   * @param count how many, 1 to 10,000
   * @param degreesOfFreedom the degrees of freedom of the scatter, 1 or more
   * @return the sources
   * @throws IllegalArgumentException if the name is blank, the count below 1 or the degrees of
   *     freedom below 1
   */
  public static List<Source> ofOneScatter(String name, int count, double degreesOfFreedom) {
    Checks.inRange("count", count, "", 1, MOST_OF_ONE_SCATTER);
    Object scatter = new Object();
    List<Source> sources = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      String each = count == 1 ? name : name + ", part " + i;
      sources.add(new Source(each, 0, OptionalDouble.of(1), degreesOfFreedom, "", scatter));
    }
    return List.copyOf(sources);
  }

  /**
   * Returns a source of which no uncertainty is stated. It never counts as exact: whatever moves
   * with it has no uncertainty either until it gets one.
   *
   * @param name what was measured, as a budget prints it
   * @param estimate its value, in {@code unit}
   * @param unit the unit; empty when there is none
   * @return the source
   * @throws IllegalArgumentException if the name is blank or the estimate is not finite
   */
  public static Source withoutUncertainty(String name, double estimate, String unit) {
    return new Source(name, estimate, OptionalDouble.empty(), Double.POSITIVE_INFINITY, unit, null);
  }

  /**
   * Returns the name.
   *
   * @return what was measured
   */
  public String name() {
    return name;
  }

  /**
   * Returns the estimate.
   *
   * @return the value, in {@link #unit()}
   */
  public double estimate() {
    return estimate;
  }

  /**
   * Returns the standard uncertainty of the estimate.
   *
   * @return u, 0 or more, in {@link #unit()}; empty when it is not stated
   */
  public OptionalDouble standardUncertainty() {
    return standardUncertainty;
  }

  /**
   * Returns the degrees of freedom of the standard uncertainty.
   *
   * @return more than 0, infinite for a u taken as given
   */
  public double degreesOfFreedom() {
    return degreesOfFreedom;
  }

  /** What its standard uncertainty was found from: the same object where sources share it. */
  Object scatter() {
    return scatter;
  }

  /**
   * Returns the unit.
   *
   * @return the unit; empty when there is none
   */
  public String unit() {
    return unit;
  }

  @Override
  public String toString() {
    return standardUncertainty.isPresent()
        ? name + " " + UncertainValue.of(estimate, standardUncertainty.getAsDouble(), unit)
        : name + " " + Digits.withUnit(Digits.significant(estimate, 6), unit) + ", u not stated";
  }
}
