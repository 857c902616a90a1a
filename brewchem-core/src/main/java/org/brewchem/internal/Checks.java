package org.brewchem.internal;

import java.util.Objects;
import org.brewchem.OutOfRangeException;

/**
 * Argument checks that return the checked value, so that a constructor reads as one assignment per
 * field. A failed check names the argument, the value with its unit, and what is allowed. A value
 * of -0.0 is returned as 0.0.
 */
public final class Checks {

  /** So that no conversion to another unit overflows, nor the square of an uncertainty. */
  private static final double LARGEST = 1e100;

  private static final int LONGEST_ARGUMENT = 120;
  private static final int LONGEST_UNIT = 80;
  private static final int LONGEST_ALLOWED = 220;
  private static final double LARGEST_PLAIN_WHOLE = 1e15;

  private Checks() {}

  /**
   * Returns a value that is neither infinite nor NaN, nor so large that its conversion would be.
   *
   * @param argument the name of the argument, for the message
   * @param value the value, in {@code unit}
   * @param unit the unit, for the message; empty when there is none
   * @return the value
   * @throws OutOfRangeException if the value is infinite or NaN
   */
  public static double finite(String argument, double value, String unit) {
    if (!Double.isFinite(value)) {
      throw outOfRange(argument, value, unit, "a finite number");
    }
    if (Math.abs(value) > LARGEST) {
      throw outOfRange(argument, value, unit, "at most 1e100");
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
   * @throws OutOfRangeException if the value is negative, infinite or NaN
   */
  public static double nonNegative(String argument, double value, String unit) {
    finite(argument, value, unit);
    if (value < 0.0) {
      throw outOfRange(argument, value, unit, "0 or more");
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
   * @throws OutOfRangeException if the value is 0, negative, infinite or NaN
   */
  public static double positive(String argument, double value, String unit) {
    finite(argument, value, unit);
    if (value <= 0.0) {
      throw outOfRange(argument, value, unit, "more than 0");
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
   * @throws OutOfRangeException if the value is out of range, infinite or NaN
   */
  public static double inRange(
      String argument, double value, String unit, double minimum, double maximum) {
    finite(argument, value, unit);
    if (value < minimum || value > maximum) {
      throw outOfRange(
          argument, value, unit, withUnit(number(minimum) + " to " + number(maximum), unit));
    }
    return value + 0.0;
  }

  /**
   * Returns an index of a list or an array.
   *
   * @param argument the name of the argument, for the message
   * @param index the index, from 0
   * @param size how many elements there are
   * @return the index
   * @throws OutOfRangeException if there is no element of that index
   */
  public static int index(String argument, int index, int size) {
    if (index < 0 || index >= size) {
      throw outOfRange(argument, index, "", size == 0 ? "none" : "0 to " + (size - 1));
    }
    return index;
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
    if (Objects.requireNonNull(text, argument).isBlank()) {
      throw new IllegalArgumentException(
          Excerpt.of(argument, LONGEST_ARGUMENT) + ": an empty text is not possible");
    }
    return text;
  }

  /**
   * Returns the refusal of a number.
   *
   * @param argument the name of the argument
   * @param value the value, in {@code unit}
   * @param unit the unit; empty when there is none
   * @param allowed what is allowed, without a verb: "0 or more"
   * @return the exception, to be thrown
   */
  public static OutOfRangeException outOfRange(
      String argument, double value, String unit, String allowed) {
    return new OutOfRangeException(
        Excerpt.of(argument, LONGEST_ARGUMENT)
            + ": "
            + Excerpt.of(withUnit(number(value), unit), LONGEST_UNIT)
            + " is not possible; "
            + Excerpt.of(allowed, LONGEST_ALLOWED)
            + " is allowed",
        argument,
        value,
        unit,
        allowed);
  }

  private static String withUnit(String number, String unit) {
    return unit.isEmpty() ? number : number + " " + unit;
  }

  /** A whole number is written as one: a count of 0.0 threads reads oddly. */
  private static String number(double value) {
    return value == Math.rint(value) && Math.abs(value) < LARGEST_PLAIN_WHOLE
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}
