package org.brewchem.internal;

/**
 * Argument checks that return the checked value, so that a constructor reads as one assignment per
 * field. A failed check names the argument, the value with its unit, and what is allowed. A value
 * of -0.0 is returned as 0.0.
 */
public final class Checks {

  private Checks() {}

  /**
   * Returns a value that is neither infinite nor NaN.
   *
   * @param argument the name of the argument, for the message
   * @param value the value, in {@code unit}
   * @param unit the unit, for the message; empty when there is none
   * @return the value
   * @throws IllegalArgumentException if the value is infinite or NaN
   */
  public static double finite(String argument, double value, String unit) {
    if (!Double.isFinite(value)) {
      throw notPossible(argument, value, unit, "a finite number is needed");
    }
    return value + 0.0;
  }

  /**
   * Returns a finite value of 0 or more.
   *
   * @param argument the name of the argument, for the message
   * @param value the value, in {@code unit}
   * @param unit the unit, for the message; empty when there is none
   * @return the value
   * @throws IllegalArgumentException if the value is negative, infinite or NaN
   */
  public static double nonNegative(String argument, double value, String unit) {
    finite(argument, value, unit);
    if (value < 0.0) {
      throw notPossible(argument, value, unit, "0 or more is allowed");
    }
    return value + 0.0;
  }

  /**
   * Returns a finite value above 0.
   *
   * @param argument the name of the argument, for the message
   * @param value the value, in {@code unit}
   * @param unit the unit, for the message; empty when there is none
   * @return the value
   * @throws IllegalArgumentException if the value is 0, negative, infinite or NaN
   */
  public static double positive(String argument, double value, String unit) {
    finite(argument, value, unit);
    if (value <= 0.0) {
      throw notPossible(argument, value, unit, "more than 0 is allowed");
    }
    return value;
  }

  /**
   * Returns a finite value between two bounds, both included.
   *
   * @param argument the name of the argument, for the message
   * @param value the value, in {@code unit}
   * @param unit the unit, for the message; empty when there is none
   * @param minimum the least value allowed, in {@code unit}
   * @param maximum the greatest value allowed, in {@code unit}
   * @return the value
   * @throws IllegalArgumentException if the value is out of range, infinite or NaN
   */
  public static double inRange(
      String argument, double value, String unit, double minimum, double maximum) {
    finite(argument, value, unit);
    if (value < minimum || value > maximum) {
      throw notPossible(
          argument, value, unit, withUnit(minimum + " to " + maximum, unit) + " is allowed");
    }
    return value + 0.0;
  }

  /**
   * Returns a text that holds more than white space.
   *
   * @param argument the name of the argument, for the message
   * @param text the text
   * @return the text
   * @throws IllegalArgumentException if the text is empty or blank
   */
  public static String notBlank(String argument, String text) {
    if (text.isBlank()) {
      throw new IllegalArgumentException(argument + ": an empty text is not possible");
    }
    return text;
  }

  private static IllegalArgumentException notPossible(
      String argument, double value, String unit, String allowed) {
    return new IllegalArgumentException(
        argument + ": " + withUnit(Double.toString(value), unit) + " is not possible; " + allowed);
  }

  private static String withUnit(String number, String unit) {
    return unit.isEmpty() ? number : number + " " + unit;
  }
}
