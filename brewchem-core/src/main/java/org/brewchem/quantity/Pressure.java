package org.brewchem.quantity;

/**
 * An absolute pressure, held in kPa; 0 or more. A gauge that shows the overpressure needs the
 * pressure of the air added.
 *
 * <p>1 atm is 101.325 kPa and 1 bar 100 kPa, both by definition.
 */
public final class Pressure extends ScalarValue<Pressure> {

  private static final String NAME = "pressure";

  private static final double KILOPASCALS_PER_ATMOSPHERE = 101.325;

  private Pressure(double kilopascals, double stated, String statedUnit) {
    super(nonNegative(NAME, stated, statedUnit, kilopascals));
  }

  /**
   * Returns a pressure stated in kilopascals.
   *
   * @param kilopascals the pressure in kPa, 0 or more
   * @return the pressure
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Pressure ofKilopascals(double kilopascals) {
    return new Pressure(kilopascals, kilopascals, "kPa");
  }

  /**
   * Returns a pressure stated in bars.
   *
   * @param bars the pressure in bar, 0 or more
   * @return the pressure
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Pressure ofBars(double bars) {
    return new Pressure(bars * 100, bars, "bar");
  }

  /**
   * Returns a pressure stated in standard atmospheres.
   *
   * @param atmospheres the pressure in atm, 0 or more
   * @return the pressure
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Pressure ofAtmospheres(double atmospheres) {
    return new Pressure(atmospheres * KILOPASCALS_PER_ATMOSPHERE, atmospheres, "atm");
  }

  /**
   * Returns the pressure in kilopascals.
   *
   * @return the pressure in kPa
   */
  public double inKilopascals() {
    return value;
  }

  /**
   * Returns the pressure in bars.
   *
   * @return the pressure in bar
   */
  public double inBars() {
    return value / 100;
  }

  /**
   * Returns the pressure in standard atmospheres.
   *
   * @return the pressure in atm
   */
  public double inAtmospheres() {
    return value / KILOPASCALS_PER_ATMOSPHERE;
  }

  /**
   * Adds a pressure.
   *
   * @param other the pressure to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public Pressure plus(Pressure other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a pressure.
   *
   * @param other the pressure to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is below 0
   */
  public Pressure minus(Pressure other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, 0 or more
   * @return the product
   * @throws IllegalArgumentException if the product is negative, infinite or NaN
   */
  public Pressure times(double factor) {
    return fromBase(value * factor);
  }

  @Override
  public String toString() {
    return text(value, "kPa");
  }

  private static Pressure fromBase(double kilopascals) {
    return new Pressure(kilopascals, kilopascals, "kPa");
  }
}
