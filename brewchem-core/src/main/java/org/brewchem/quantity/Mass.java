package org.brewchem.quantity;

/**
 * A mass, held in grams; 0 or more.
 *
 * <p>The avoirdupois pound is 453.59237 g, the ounce a sixteenth of it, both by definition.
 */
public final class Mass extends ScalarValue<Mass> {

  private static final String NAME = "mass";

  static final double MILLIGRAMS_PER_GRAIN = 64.79891;
  private static final double GRAMS_PER_POUND = 453.59237;
  private static final double GRAMS_PER_OUNCE = GRAMS_PER_POUND / 16;

  private Mass(double grams, double stated, String statedUnit) {
    super(nonNegative(NAME, stated, statedUnit, grams));
  }

  /**
   * Returns a mass stated in grams.
   *
   * @param grams the mass in g, 0 or more
   * @return the mass
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Mass ofGrams(double grams) {
    return new Mass(grams, grams, "g");
  }

  /**
   * Returns a mass stated in milligrams.
   *
   * @param milligrams the mass in mg, 0 or more
   * @return the mass
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Mass ofMilligrams(double milligrams) {
    return new Mass(milligrams / 1000, milligrams, "mg");
  }

  /**
   * Returns a mass stated in kilograms.
   *
   * @param kilograms the mass in kg, 0 or more
   * @return the mass
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Mass ofKilograms(double kilograms) {
    return new Mass(kilograms * 1000, kilograms, "kg");
  }

  /**
   * Returns a mass stated in avoirdupois pounds.
   *
   * @param pounds the mass in lb, 0 or more
   * @return the mass
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Mass ofPounds(double pounds) {
    return new Mass(pounds * GRAMS_PER_POUND, pounds, "lb");
  }

  /**
   * Returns a mass stated in avoirdupois ounces.
   *
   * @param ounces the mass in oz, 0 or more
   * @return the mass
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Mass ofOunces(double ounces) {
    return new Mass(ounces * GRAMS_PER_OUNCE, ounces, "oz");
  }

  /**
   * Returns the mass in grams.
   *
   * @return the mass in g
   */
  public double inGrams() {
    return value;
  }

  /**
   * Returns the mass in milligrams.
   *
   * @return the mass in mg
   */
  public double inMilligrams() {
    return value * 1000;
  }

  /**
   * Returns the mass in kilograms.
   *
   * @return the mass in kg
   */
  public double inKilograms() {
    return value / 1000;
  }

  /**
   * Returns the mass in avoirdupois pounds.
   *
   * @return the mass in lb
   */
  public double inPounds() {
    return value / GRAMS_PER_POUND;
  }

  /**
   * Returns the mass in avoirdupois ounces.
   *
   * @return the mass in oz
   */
  public double inOunces() {
    return value / GRAMS_PER_OUNCE;
  }

  /**
   * Adds a mass.
   *
   * @param other the mass to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public Mass plus(Mass other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a mass.
   *
   * @param other the mass to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is below 0
   */
  public Mass minus(Mass other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, 0 or more
   * @return the product
   * @throws IllegalArgumentException if the product is negative, infinite or NaN
   */
  public Mass times(double factor) {
    return fromBase(value * factor);
  }

  @Override
  public String toString() {
    if (value < 0.1) {
      return text(inMilligrams(), "mg");
    }
    return value < 1000 ? text(value, "g") : text(inKilograms(), "kg");
  }

  private static Mass fromBase(double grams) {
    return new Mass(grams, grams, "g");
  }
}
