package org.brewchem.quantity;

import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.jspecify.annotations.Nullable;

/**
 * What every value held as one number in one fixed unit has in common: order, equality and text. It
 * is not visible outside the package, so no method can ask for "any value" and let an alkalinity
 * pass for a hardness.
 *
 * @param <T> the value itself
 */
abstract class ScalarValue<T extends ScalarValue<T>> implements Comparable<T> {

  /** The number, finite and never -0.0, in the unit that the class states. */
  final double value;

  ScalarValue(double checked) {
    value = checked + 0.0;
  }

  /** Checks a value in the unit as stated by the caller, and its conversion. */
  static double nonNegative(String name, double stated, String statedUnit, double converted) {
    Checks.nonNegative(name, stated, statedUnit);
    return held(name, converted);
  }

  /** Checks a value in the unit as stated by the caller, and its conversion. */
  static double positive(String name, double stated, String statedUnit, double converted) {
    Checks.positive(name, stated, statedUnit);
    return held(name, converted);
  }

  /** Checks a value in the unit as stated by the caller, and its conversion. */
  static double finite(String name, double stated, String statedUnit, double converted) {
    Checks.finite(name, stated, statedUnit);
    return held(name, converted);
  }

  /** A number just possible in the unit that it is stated in may be too large for another. */
  private static double held(String name, double converted) {
    return Checks.finite(name, converted, "in the unit that it is held in");
  }

  static String text(double value, String unit) {
    return NumberText.plain(value) + " " + unit;
  }

  /**
   * Compares by size.
   *
   * @param other the value to compare with
   * @return a negative number, zero or a positive number as this value is smaller than, equal to or
   *     larger than the other
   */
  @Override
  public final int compareTo(T other) {
    return Double.compare(value, other.value);
  }

  /**
   * Tells whether the other object is a value of the same class and exactly the same size.
   *
   * @param other the object to compare with
   * @return true if both hold the same number in the same meaning
   */
  @Override
  @SuppressWarnings(
      "EqualsGetClass") // the class is the meaning: equal numbers of two classes differ
  public final boolean equals(@Nullable Object other) {
    return other != null
        && getClass() == other.getClass()
        && Double.compare(value, ((ScalarValue<?>) other).value) == 0;
  }

  @Override
  public final int hashCode() {
    return Double.hashCode(value);
  }

  /**
   * Returns the value with its unit and up to six significant digits, in a form that the readers of
   * {@code org.brewchem.units} read back; {@code Text.exact} there writes all digits.
   *
   * @return the value as text, the same in every locale
   */
  @Override
  public abstract String toString();
}
