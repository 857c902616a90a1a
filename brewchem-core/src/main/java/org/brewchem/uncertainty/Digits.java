package org.brewchem.uncertainty;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as text, with as many digits as their uncertainty allows. */
final class Digits {

  private static final int MOST_DECIMALS_IN_PLAIN_NOTATION = 12;

  private Digits() {}

  /** The uncertainty with two significant digits. */
  static String ofUncertainty(double uncertainty) {
    return uncertainty == 0.0 ? "0" : text(rounded(uncertainty, 2));
  }

  /** The value to the last decimal of its uncertainty; all its digits if the uncertainty is 0. */
  static String ofValue(double value, double uncertainty) {
    if (uncertainty == 0.0) {
      return text(BigDecimal.valueOf(value).stripTrailingZeros());
    }
    int scale = rounded(uncertainty, 2).scale();
    return text(BigDecimal.valueOf(value).setScale(scale, RoundingMode.HALF_UP));
  }

  /** The value with at most that many significant digits and no trailing zeros. */
  static String significant(double value, int digits) {
    if (Double.isInfinite(value)) {
      return "infinite";
    }
    return value == 0.0 ? "0" : text(rounded(value, digits).stripTrailingZeros());
  }

  static String withUnit(String number, String unit) {
    return unit.isEmpty() ? number : number + " " + unit;
  }

  private static BigDecimal rounded(double value, int digits) {
    BigDecimal once =
        BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_UP));
    return once.setScale(once.scale() + digits - once.precision());
  }

  private static String text(BigDecimal number) {
    return Math.abs(number.scale()) <= MOST_DECIMALS_IN_PLAIN_NOTATION
        ? number.toPlainString()
        : number.toString();
  }
}
