package org.brewchem.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers as text, the same in every locale and on every JDK: a point as decimal mark, no grouping,
 * halves rounded away from zero as they are read in decimal.
 */
public final class NumberText {

  private static final int EXACT_DECIMAL_DIGITS = 15;
  private static final int DISPLAYED_DIGITS = 6;
  private static final int SMALLEST_PLAIN_EXPONENT = -6;
  private static final int LARGEST_PLAIN_EXPONENT = 9;

  private static final MathContext WITHOUT_LAST_BITS = new MathContext(12);

  private NumberText() {}

  /**
   * Writes a number with up to six significant digits and without trailing zeros: more digits than
   * a measurement has, and few enough to be read.
   *
   * @param value a finite number
   * @return the number, such as {@code 0.25}, {@code 215} or {@code 1.5E-9}
   */
  public static String plain(double value) {
    return withoutTrailingZeros(
        asTyped(value).round(new MathContext(DISPLAYED_DIGITS, RoundingMode.HALF_UP)));
  }

  /**
   * Counts in words that fit one as well as several.
   *
   * @param count how many
   * @param one what follows the number 1, such as {@code row is}
   * @param several what follows every other number, such as {@code rows are}
   * @return such as {@code 1 row is} or {@code 0 rows are}
   */
  public static String count(long count, String one, String several) {
    return count + " " + (count == 1 ? one : several);
  }

  /**
   * Writes a number rounded to a number of decimal places, without trailing zeros.
   *
   * @param value a finite number
   * @param decimals the most decimal places to keep, 0 to 15
   * @return the number, such as {@code 4.2} for 4.2 to four decimals
   * @throws org.brewchem.OutOfRangeException if {@code decimals} is not 0 to 15
   */
  public static String plain(double value, int decimals) {
    return withoutTrailingZeros(new BigDecimal(decimals(value, decimals)));
  }

  /**
   * Writes a number with as many digits as it takes to read back the same number, 17 at most.
   *
   * @param value a finite number
   * @return the number, such as {@code 0.1} or {@code 8.077751769230001}
   */
  public static String exact(double value) {
    return withoutTrailingZeros(new BigDecimal(Double.toString(value)));
  }

  private static String withoutTrailingZeros(BigDecimal number) {
    if (number.signum() == 0) {
      return "0";
    }
    BigDecimal stripped = number.stripTrailingZeros();
    int exponent = stripped.precision() - stripped.scale() - 1;
    if (exponent >= SMALLEST_PLAIN_EXPONENT && exponent <= LARGEST_PLAIN_EXPONENT) {
      return stripped.toPlainString();
    }
    BigDecimal mantissa = stripped.movePointLeft(exponent);
    return mantissa.toPlainString() + "E" + exponent;
  }

  /**
   * Writes a number rounded to a number of significant digits, trailing zeros kept.
   *
   * @param value a finite number
   * @param significantDigits the digits to keep, 1 to 15
   * @return the number, such as {@code 2.80} for 2.8 to three digits
   * @throws IllegalArgumentException if {@code significantDigits} is not 1 to 15
   */
  public static String significant(double value, int significantDigits) {
    Checks.inRange("significant digits", significantDigits, "", 1, EXACT_DECIMAL_DIGITS);
    BigDecimal decimal = asTyped(value);
    if (decimal.signum() == 0) {
      return BigDecimal.ZERO.setScale(significantDigits - 1).toPlainString();
    }
    BigDecimal rounded = decimal.round(new MathContext(significantDigits, RoundingMode.HALF_UP));
    int scale = significantDigits - (rounded.precision() - rounded.scale());
    return rounded.setScale(Math.max(scale, 0), RoundingMode.UNNECESSARY).toPlainString();
  }

  /**
   * Writes a chance in per cent with two significant digits, near certainty with two decimals; what
   * lies within 0.01 % of never or always is said to do so.
   *
   * @param chance 0 to 1
   * @return the chance, such as {@code 2.3 %}, {@code 99.72 %} or {@code less than 0.01 %}
   */
  public static String chance(double chance) {
    double percent = 100 * Checks.inRange("chance", chance, "", 0, 1);
    if (percent < 0.01) {
      return "less than 0.01 %";
    }
    if (percent > 99.99) {
      return "more than 99.99 %";
    }
    return (percent < 99.5 ? significant(percent, 2) : decimals(percent, 2)) + " %";
  }

  /**
   * Writes a number rounded to a number of decimal places, trailing zeros kept.
   *
   * @param value a finite number
   * @param decimals the decimal places to keep, 0 to 15
   * @return the number, such as {@code 4.20} for 4.2 to two decimals
   * @throws IllegalArgumentException if {@code decimals} is not 0 to 15
   */
  public static String decimals(double value, int decimals) {
    Checks.inRange("decimals", decimals, "", 0, EXACT_DECIMAL_DIGITS);
    return asTyped(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }

  /**
   * Returns the decimal that a computed number stands for: twelve digits, before which the rounding
   * of last bits does not show.
   *
   * @param value the number, finite
   * @return the decimal, without trailing zeros
   */
  public static BigDecimal withoutLastBits(double value) {
    return BigDecimal.valueOf(value).round(WITHOUT_LAST_BITS).stripTrailingZeros();
  }

  /**
   * Fifteen digits give back the decimal that was typed: 2.675 is a half, not 2.67499999999999982.
   */
  private static BigDecimal asTyped(double value) {
    return new BigDecimal(value).round(new MathContext(EXACT_DECIMAL_DIGITS, RoundingMode.HALF_UP));
  }
}
