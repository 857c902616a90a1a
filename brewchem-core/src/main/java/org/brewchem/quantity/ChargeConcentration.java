package org.brewchem.quantity;

/**
 * A charge concentration: equivalents of charge per volume of solution with their sign, held in
 * mEq/L. Calcium and sodium count positive, chloride and sulfate negative. From an amount of an ion
 * it follows by {@link AmountConcentration#timesCharge(int)}.
 */
public final class ChargeConcentration extends ScalarValue<ChargeConcentration> {

  private static final String NAME = "charge concentration";

  private ChargeConcentration(double milliequivalentsPerLitre, double stated, String statedUnit) {
    super(finite(NAME, stated, statedUnit, milliequivalentsPerLitre));
  }

  /**
   * Returns a charge concentration stated in milliequivalents per litre.
   *
   * @param milliequivalentsPerLitre the charge concentration in mEq/L, finite
   * @return the charge concentration
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ChargeConcentration ofMilliequivalentsPerLitre(double milliequivalentsPerLitre) {
    return new ChargeConcentration(milliequivalentsPerLitre, milliequivalentsPerLitre, "mEq/L");
  }

  /**
   * Returns a charge concentration stated in equivalents per litre.
   *
   * @param equivalentsPerLitre the charge concentration in Eq/L, finite
   * @return the charge concentration
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ChargeConcentration ofEquivalentsPerLitre(double equivalentsPerLitre) {
    return new ChargeConcentration(equivalentsPerLitre * 1000, equivalentsPerLitre, "Eq/L");
  }

  /**
   * Returns the charge concentration in milliequivalents per litre.
   *
   * @return the charge concentration in mEq/L
   */
  public double inMilliequivalentsPerLitre() {
    return value;
  }

  /**
   * Returns the charge concentration in equivalents per litre.
   *
   * @return the charge concentration in Eq/L
   */
  public double inEquivalentsPerLitre() {
    return value / 1000;
  }

  /**
   * Adds a charge concentration.
   *
   * @param other the charge concentration to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public ChargeConcentration plus(ChargeConcentration other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a charge concentration.
   *
   * @param other the charge concentration to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is too large to be held
   */
  public ChargeConcentration minus(ChargeConcentration other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, finite
   * @return the product
   * @throws IllegalArgumentException if the product is infinite or NaN
   */
  public ChargeConcentration times(double factor) {
    return fromBase(value * factor);
  }

  @Override
  public String toString() {
    return text(value, "mEq/L");
  }

  private static ChargeConcentration fromBase(double milliequivalentsPerLitre) {
    return new ChargeConcentration(milliequivalentsPerLitre, milliequivalentsPerLitre, "mEq/L");
  }
}
