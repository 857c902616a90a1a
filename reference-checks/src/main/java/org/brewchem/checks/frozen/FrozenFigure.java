package org.brewchem.checks.frozen;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.OptionalDouble;

/**
 * One result of one input, as it is written into the files.
 *
 * @param input the identifier of the input
 * @param figure what the result means; unique within its input
 * @param unit its unit, empty if it has none
 * @param value its number with 17 significant digits, or words
 * @param standardUncertainty its standard uncertainty likewise, empty if it has none
 */
public record FrozenFigure(
    String input, String figure, String unit, String value, String standardUncertainty) {

  private static final MathContext DIGITS = new MathContext(17);
  private static final int LONGEST_WHOLE_NUMBER = 17;

  /**
   * Checks that every part can stand in a CSV field without quotes.
   *
   * @throws IllegalArgumentException if a part holds a comma, a quotation mark or a line break, or
   *     input, figure or value is empty
   */
  public FrozenFigure {
    for (String part : new String[] {input, figure, unit, value, standardUncertainty}) {
      if (part.matches("(?s).*[,\"\\r\\n].*")) {
        throw new IllegalArgumentException("\"" + part + "\" cannot stand in a field");
      }
    }
    if (input.isEmpty() || figure.isEmpty() || value.isEmpty()) {
      throw new IllegalArgumentException(
          "input \""
              + input
              + "\", figure \""
              + figure
              + "\", value \""
              + value
              + "\": one is empty");
    }
  }

  /** Returns what tells this figure from all others of its room. */
  public String key() {
    return input + ", " + figure;
  }

  /** Returns the value as a number; empty if it is words. */
  public OptionalDouble number() {
    return parsed(value);
  }

  /** Returns the standard uncertainty; empty if there is none. */
  public OptionalDouble uncertainty() {
    return parsed(standardUncertainty);
  }

  private static OptionalDouble parsed(String text) {
    try {
      return OptionalDouble.of(Double.parseDouble(text));
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }

  /**
   * Writes a number with 17 significant digits, which no two doubles share.
   *
   * @throws IllegalArgumentException if the number is not finite
   */
  static String digits(double number) {
    if (!Double.isFinite(number)) {
      throw new IllegalArgumentException(number + " is no result");
    }
    BigDecimal rounded = new BigDecimal(number).round(DIGITS).stripTrailingZeros();
    boolean whole =
        rounded.scale() < 0 && rounded.precision() - rounded.scale() <= LONGEST_WHOLE_NUMBER;
    return whole ? rounded.toPlainString() : rounded.toString();
  }
}
