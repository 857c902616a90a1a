package org.brewchem.quantity;

/** An amount of substance, held in moles; 0 or more. */
public final class AmountOfSubstance extends ScalarValue<AmountOfSubstance> {

  private static final String NAME = "amount of substance";

  private AmountOfSubstance(double moles, double stated, String statedUnit) {
    super(nonNegative(NAME, stated, statedUnit, moles));
  }

  /**
   * Returns an amount of substance stated in moles.
   *
   * @param moles the amount of substance in mol, 0 or more
   * @return the amount of substance
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static AmountOfSubstance ofMoles(double moles) {
    return new AmountOfSubstance(moles, moles, "mol");
  }

  /**
   * Returns an amount of substance stated in millimoles.
   *
   * @param millimoles the amount of substance in mmol, 0 or more
   * @return the amount of substance
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static AmountOfSubstance ofMillimoles(double millimoles) {
    return new AmountOfSubstance(millimoles / 1000, millimoles, "mmol");
  }

  /**
   * Returns the amount in a mass of a pure substance.
   *
   * @param mass the mass
   * @param molarMass the molar mass of the substance
   * @return mass / molar mass
   * @throws IllegalArgumentException if the amount is too large to be held
   */
  public static AmountOfSubstance from(Mass mass, MolarMass molarMass) {
    return fromBase(mass.inGrams() / molarMass.inGramsPerMole());
  }

  /**
   * Returns the amount of substance in moles.
   *
   * @return the amount of substance in mol
   */
  public double inMoles() {
    return value;
  }

  /**
   * Returns the amount of substance in millimoles.
   *
   * @return the amount of substance in mmol
   */
  public double inMillimoles() {
    return value * 1000;
  }

  /**
   * Adds an amount of substance.
   *
   * @param other the amount of substance to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public AmountOfSubstance plus(AmountOfSubstance other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts an amount of substance.
   *
   * @param other the amount of substance to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is below 0
   */
  public AmountOfSubstance minus(AmountOfSubstance other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, 0 or more
   * @return the product
   * @throws IllegalArgumentException if the product is negative, infinite or NaN
   */
  public AmountOfSubstance times(double factor) {
    return fromBase(value * factor);
  }

  /**
   * Returns the mass of this amount of a substance.
   *
   * @param molarMass the molar mass of the substance
   * @return amount x molar mass
   * @throws IllegalArgumentException if the mass is too large to be held
   */
  public Mass times(MolarMass molarMass) {
    return Mass.ofGrams(value * molarMass.inGramsPerMole());
  }

  @Override
  public String toString() {
    return value < 0.1 ? text(inMillimoles(), "mmol") : text(value, "mol");
  }

  private static AmountOfSubstance fromBase(double moles) {
    return new AmountOfSubstance(moles, moles, "mol");
  }
}
