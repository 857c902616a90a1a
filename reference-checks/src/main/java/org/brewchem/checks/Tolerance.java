package org.brewchem.checks;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * How far the computed values of a check may lie from the expected ones, and why just so far.
 *
 * @param relative whether deviations are taken relative to the expected value
 * @param unit unit of an absolute deviation; empty for a relative one
 * @param size the size in words or figures, for the validation page
 * @param reason why the size is what it is
 */
public record Tolerance(boolean relative, String unit, String size, String reason) {

  /** Returns a tolerance of one absolute size. */
  public static Tolerance absolute(double size, String unit, String reason) {
    return new Tolerance(false, unit, figure(size), reason);
  }

  /** Returns a tolerance of one size relative to the expected value. */
  public static Tolerance relative(double size, String reason) {
    return new Tolerance(true, "", figure(size) + " relative", reason);
  }

  /** Returns the tolerance of printed values: half a unit of the last digit of each. */
  public static Tolerance halfOfLastDigit(String unit, String reason) {
    return new Tolerance(false, unit, "half the last printed digit", reason);
  }

  /** Returns an absolute tolerance that the rows state one by one. */
  public static Tolerance perRow(String unit, String size, String reason) {
    return new Tolerance(false, unit, size, reason);
  }

  /** Returns half a unit of the last digit of a printed number: 0.0005 for {@code "2.497"}. */
  public static double halfOfLastDigit(String printed) {
    return Math.scalb(new BigDecimal(printed).ulp().doubleValue(), -1);
  }

  private static String figure(double size) {
    BigDecimal rounded = new BigDecimal(size).round(new MathContext(6)).stripTrailingZeros();
    return size < 1e-4 ? rounded.toString().replace("E", "e") : rounded.toPlainString();
  }
}
