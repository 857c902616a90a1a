package org.brewchem.quantity;

import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;

/** A pH: minus the decimal logarithm of the activity of hydrogen ions; from -3 to 17. */
public final class PH extends ScalarValue<PH> {

  private static final String NAME = "pH";

  /** A tenth of what the best electrodes tell apart. */
  private static final int PRINTED_DECIMALS = 4;

  private PH(double pH) {
    super(Checks.inRange(NAME, pH, "", -3, 17));
  }

  /**
   * Returns a pH.
   *
   * @param pH the pH, -3 to 17
   * @return the pH
   * @throws IllegalArgumentException if the number is not from -3 to 17
   */
  public static PH of(double pH) {
    return new PH(pH);
  }

  /**
   * Returns the pH as a plain number.
   *
   * @return the number
   */
  public double value() {
    return value;
  }

  /**
   * Returns how far this pH lies above another.
   *
   * @param other the pH to subtract
   * @return this - other, as a plain number
   */
  public double minus(PH other) {
    return value - other.value;
  }

  /**
   * Returns the pH rounded to four decimals, in a form that the readers of {@code
   * org.brewchem.units} read back.
   *
   * @return such as {@code pH 8.0778}, the same in every locale
   */
  @Override
  public String toString() {
    return NAME + " " + NumberText.plain(value, PRINTED_DECIMALS);
  }
}
