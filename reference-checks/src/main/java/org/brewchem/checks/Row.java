package org.brewchem.checks;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * One expected value of a reference check beside what the library computes for it.
 *
 * @param label what the row is about; unique within its check
 * @param expected the value of the source
 * @param computed the value that the library gives
 * @param lastDigit one unit of the last printed digit of the expected value; 0 if it is not printed
 * @param scale the number that a tolerance stated by the row is counted in; 0 if there is none
 * @param ownTolerance the tolerance of this row; empty if that of its check applies
 * @param reproduced whether the source is right: if not, the row asserts that the library does
 *     <em>not</em> give its value
 * @param howKnown how the expected value is known
 */
public record Row(
    String label,
    double expected,
    double computed,
    double lastDigit,
    double scale,
    Optional<Tolerance> ownTolerance,
    boolean reproduced,
    HowKnown howKnown) {

  /** Returns a row whose source is right, with the tolerance of its check. */
  public static Row of(String label, double expected, double computed, HowKnown howKnown) {
    return new Row(label, expected, computed, 0, 0, Optional.empty(), true, howKnown);
  }

  /** Returns a row of a printed value, of which the last digit counts. */
  public static Row ofPrinted(String label, String expected, double computed, HowKnown howKnown) {
    BigDecimal printed = new BigDecimal(expected);
    return new Row(
        label,
        printed.doubleValue(),
        computed,
        printed.ulp().doubleValue(),
        0,
        Optional.empty(),
        true,
        howKnown);
  }

  /** Returns this row with a tolerance of its own. */
  public Row within(Tolerance tolerance) {
    return new Row(
        label, expected, computed, lastDigit, scale, Optional.of(tolerance), reproduced, howKnown);
  }

  /** Returns this row with the number that its tolerance is counted in. */
  public Row scaledBy(double number) {
    return new Row(
        label, expected, computed, lastDigit, number, ownTolerance, reproduced, howKnown);
  }

  /** Returns this row as one whose source is wrong, so that its value must not come out. */
  public Row asNotReproduced() {
    return new Row(label, expected, computed, lastDigit, scale, ownTolerance, false, howKnown);
  }

  /** Returns whether this row is as it should be under a tolerance. */
  boolean passes(Tolerance tolerance) {
    return reproduced == tolerance.holds(this);
  }
}
