package org.brewchem.mash;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;

/**
 * A range, never a point: what is published about a quantity that no balance tells, or what follows
 * from several such ranges. It is no uncertainty: nothing says how likely either end is.
 *
 * @param quantity what it is
 * @param lower the lower end, in {@code unit}
 * @param upper the upper end, in {@code unit}, not below the lower one
 * @param unit the unit; empty when there is none
 * @param basis what it rests on, each with its source and how it is known; at least one
 */
public record SourcedRange(
    String quantity, double lower, double upper, String unit, List<String> basis) {

  private static final int DIGITS = 3;

  /**
   * Makes a range, such as one of your own brewery with its own basis.
   *
   * @param quantity what it is
   * @param lower the lower end, in {@code unit}
   * @param upper the upper end, in {@code unit}, not below the lower one
   * @param unit the unit; empty when there is none
   * @param basis what it rests on, each with its source and how it is known; at least one
   * @throws IllegalArgumentException if an end is not finite, the ends are out of order, the
   *     quantity is blank or there is no basis
   */
  public SourcedRange {
    Checks.notBlank("quantity", quantity);
    Objects.requireNonNull(unit, "unit");
    Checks.finite(quantity + ", lower end", lower, unit);
    Checks.finite(quantity + ", upper end", upper, unit);
    if (lower > upper) {
      throw Checks.outOfRange(
          quantity + ", lower end", lower, unit, "at most the upper end, " + upper + ",");
    }
    basis = List.copyOf(basis);
    if (basis.isEmpty()) {
      throw new IllegalArgumentException(
          Excerpt.of(quantity) + ": a range without a basis is not possible; say what it rests on");
    }
  }

  /**
   * Tells whether a number lies in the range; its ends belong to it.
   *
   * @param number in {@link #unit()}
   * @return true if it does
   * @throws IllegalArgumentException if the number is not finite
   */
  public boolean contains(double number) {
    Checks.finite("number", number, unit);
    return lower <= number && number <= upper;
  }

  /** The sum, end by end. */
  SourcedRange plus(SourcedRange other, String named) {
    return new SourcedRange(
        named, lower + other.lower, upper + other.upper, unit, both(basis, other.basis));
  }

  /** The difference: the least less the most, and the most less the least. */
  SourcedRange minus(SourcedRange other, String named) {
    return new SourcedRange(
        named, lower - other.upper, upper - other.lower, unit, both(basis, other.basis));
  }

  /** The same range times a number of 0 or more. */
  SourcedRange times(double factor, String named, String in) {
    return new SourcedRange(named, lower * factor, upper * factor, in, basis);
  }

  static List<String> both(List<String> one, List<String> other) {
    return Stream.concat(one.stream(), other.stream()).distinct().toList();
  }

  /** Returns quantity, range and unit. */
  @Override
  public String toString() {
    return quantity
        + " "
        + NumberText.significant(lower, DIGITS)
        + " to "
        + NumberText.significant(upper, DIGITS)
        + (unit.isEmpty() ? "" : " " + unit);
  }
}
