package org.brewchem.checks;

/**
 * One expected value of a reference check beside what the library computes for it.
 *
 * @param label what the row is about; unique within its check
 * @param expected the value of the source
 * @param computed the value that the library gives
 * @param tolerance the largest deviation allowed, absolute or relative as the check states
 * @param reproduced whether the source is right: if not, the row asserts that the library does
 *     <em>not</em> give its value
 * @param howKnown how the expected value is known
 */
public record Row(
    String label,
    double expected,
    double computed,
    double tolerance,
    boolean reproduced,
    HowKnown howKnown) {

  /**
   * Printed decimal fractions are not binary ones: a value that rounds half-way lies on its
   * tolerance only up to the last bits.
   */
  private static final double HALF_WAY = 1 + 1e-6;

  /** Returns a row whose source is right. */
  public static Row of(
      String label, double expected, double computed, double tolerance, HowKnown howKnown) {
    return new Row(label, expected, computed, tolerance, true, howKnown);
  }

  /** Returns a row that reproduces a printed value to half a unit of its last digit. */
  public static Row ofPrinted(String label, String expected, double computed, HowKnown howKnown) {
    return of(
        label,
        Double.parseDouble(expected),
        computed,
        Tolerance.halfOfLastDigit(expected),
        howKnown);
  }

  /** Returns this row as one whose source is wrong, so that its value must not come out. */
  public Row asNotReproduced() {
    return new Row(label, expected, computed, tolerance, false, howKnown);
  }

  /** Returns the deviation of the computed value, relative to the expected one if asked. */
  public double deviation(boolean relative) {
    double difference = Math.abs(computed - expected);
    return relative ? difference / Math.abs(expected) : difference;
  }

  /** Returns whether this row is as it should be. */
  public boolean passes(boolean relative) {
    double deviation = deviation(relative);
    return reproduced ? deviation <= tolerance * HALF_WAY : deviation > tolerance * HALF_WAY;
  }
}
