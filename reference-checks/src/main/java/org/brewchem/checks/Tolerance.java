package org.brewchem.checks;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * How far computed values may lie from the expected ones, and why just so far: the object that
 * judges a row is the one that the validation page prints, so that numbers and words cannot part.
 *
 * @param scale what the size is counted in
 * @param size the largest deviation allowed, in the scale
 * @param floor an absolute deviation that is allowed in any case; 0 for none
 * @param middle of a range, the value that deviations are counted from; 0 otherwise
 * @param scaleName name of a scale that the rows state; empty for the others
 * @param unit unit of a deviation; empty for a relative one and for plain numbers
 * @param reason why the size is what it is
 */
public record Tolerance(
    Scale scale,
    double size,
    double floor,
    double middle,
    String scaleName,
    String unit,
    String reason) {

  /** What the size of a tolerance is counted in. */
  public enum Scale {
    /** The unit of the value. */
    UNIT,
    /** The expected value; deviations are relative. */
    EXPECTED,
    /** A unit of the last digit that is printed. */
    LAST_DIGIT,
    /** A number that each row states, such as a standard uncertainty. */
    STATED_BY_ROW,
    /** The unit of the value, for a computed value that has to lie in a range. */
    RANGE
  }

  /**
   * Printed decimal fractions are not binary ones: a value that rounds half-way lies on its
   * tolerance only up to the last bits.
   */
  private static final double HALF_WAY = 1 + 1e-6;

  private static final MathContext DIGITS = new MathContext(12);

  /** Refuses a tolerance that would let everything pass, or nothing. */
  public Tolerance {
    if (!(size > 0 && Double.isFinite(size) && floor >= 0 && Double.isFinite(floor))) {
      throw new IllegalArgumentException(
          "a tolerance must be above 0 and finite; it is " + size + ", at least " + floor);
    }
  }

  /** Returns a tolerance of one absolute size. */
  public static Tolerance absolute(double size, String unit, String reason) {
    return new Tolerance(Scale.UNIT, size, 0, 0, "", unit, reason);
  }

  /** Returns a tolerance of one size relative to the expected value. */
  public static Tolerance relative(double size, String reason) {
    return new Tolerance(Scale.EXPECTED, size, 0, 0, "", "", reason);
  }

  /** Returns the tolerance of printed values: half a unit of the last digit of each. */
  public static Tolerance halfOfLastDigit(String unit, String reason) {
    return ofLastDigit(0.5, unit, reason);
  }

  /** Returns a tolerance of so many units of the last digit of each printed value. */
  public static Tolerance ofLastDigit(double size, String unit, String reason) {
    return new Tolerance(Scale.LAST_DIGIT, size, 0, 0, "", unit, reason);
  }

  /** Returns a tolerance of so many times a number that each row states. */
  public static Tolerance times(double size, String scaleName, String unit, String reason) {
    return new Tolerance(Scale.STATED_BY_ROW, size, 0, 0, scaleName, unit, reason);
  }

  /**
   * Returns the tolerance of a computed value that has to lie in a range; the rows expect its
   * middle.
   */
  public static Tolerance range(double lowest, double highest, String unit, String reason) {
    return new Tolerance(
        Scale.RANGE, (highest - lowest) / 2, 0, (highest + lowest) / 2, "", unit, reason);
  }

  /** Returns this tolerance where it is more than an absolute size, and that size elsewhere. */
  public Tolerance atLeast(double absolute) {
    return new Tolerance(scale, size, absolute, middle, scaleName, unit, reason);
  }

  /** Returns the deviation of a row, relative to its expected value if the tolerance is. */
  public double deviation(Row row) {
    double difference = Math.abs(row.computed() - row.expected());
    return scale == Scale.EXPECTED ? difference / Math.abs(row.expected()) : difference;
  }

  /**
   * Returns the largest deviation that a row may have.
   *
   * @throws IllegalStateException if the row does not state what this tolerance is counted in
   */
  public double allowed(Row row) {
    double allowed =
        switch (scale) {
          case UNIT, EXPECTED -> size;
          case LAST_DIGIT -> size * stated(row.lastDigit(), row, "a printed value");
          case STATED_BY_ROW -> size * stated(row.scale(), row, scaleName);
          case RANGE -> {
            stated(row.expected() == middle ? size : Double.NaN, row, "the middle of the range");
            yield size;
          }
        };
    return Math.max(floor, allowed);
  }

  private static double stated(double number, Row row, String name) {
    if (number > 0 && Double.isFinite(number)) {
      return number;
    }
    throw new IllegalStateException("row \"" + row.label() + "\" does not state " + name);
  }

  /** Returns whether a row lies within this tolerance. */
  public boolean holds(Row row) {
    return deviation(row) <= allowed(row) * HALF_WAY;
  }

  /** Returns the size in figures, for the validation page. */
  public String text() {
    String text =
        switch (scale) {
          case UNIT -> withUnit(figure(size));
          case EXPECTED -> figure(size) + " relative";
          case LAST_DIGIT -> figure(size) + " of the last printed digit";
          case STATED_BY_ROW -> figure(size) + " x " + scaleName;
          case RANGE -> withUnit(figure(middle - size) + " to " + figure(middle + size));
        };
    return floor == 0 ? text : text + ", at least " + withUnit(figure(floor));
  }

  private String withUnit(String figure) {
    return (figure + " " + unit).strip();
  }

  private static String figure(double size) {
    BigDecimal figure = new BigDecimal(size).round(DIGITS).stripTrailingZeros();
    return size < 1e-4 ? figure.toString().replace("E", "e") : figure.toPlainString();
  }
}
