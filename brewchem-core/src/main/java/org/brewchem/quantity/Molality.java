package org.brewchem.quantity;

import org.brewchem.internal.Checks;

/** A molality: moles of solute per kilogram of water, held in mol/kg; 0 or more. */
public final class Molality extends ScalarValue<Molality> {

  private static final String NAME = "molality";

  private Molality(double molesPerKilogram, double stated, String statedUnit) {
    super(nonNegative(NAME, stated, statedUnit, molesPerKilogram));
  }

  /**
   * Returns a molality stated in moles per kilogram of water.
   *
   * @param molesPerKilogram the molality in mol/kg, 0 or more
   * @return the molality
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Molality ofMolesPerKilogram(double molesPerKilogram) {
    return new Molality(molesPerKilogram, molesPerKilogram, "mol/kg");
  }

  /**
   * Returns a molality stated in millimoles per kilogram of water.
   *
   * @param millimolesPerKilogram the molality in mmol/kg, 0 or more
   * @return the molality
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Molality ofMillimolesPerKilogram(double millimolesPerKilogram) {
    return new Molality(millimolesPerKilogram / 1000, millimolesPerKilogram, "mmol/kg");
  }

  /**
   * Returns the molality of an amount of solute in a mass of water.
   *
   * @param solute the amount of solute
   * @param water the mass of water, above 0
   * @return solute / water
   * @throws IllegalArgumentException if the mass is 0
   */
  public static Molality from(AmountOfSubstance solute, Mass water) {
    return fromBase(solute.inMoles() / Checks.positive("water", water.inKilograms(), "kg"));
  }

  /**
   * Returns the molality of a dilute solution of known amount per litre. A litre is taken to hold a
   * litre of water: the room that the solute takes up is neglected.
   *
   * @param concentration the amount per litre
   * @param water the density of water at the temperature of the litre
   * @return concentration / density of water
   * @throws IllegalArgumentException if the result is too large to be held
   */
  public static Molality from(AmountConcentration concentration, Density water) {
    return fromBase(concentration.inMolesPerLitre() / water.inKilogramsPerLitre());
  }

  /**
   * Returns the molality in moles per kilogram of water.
   *
   * @return the molality in mol/kg
   */
  public double inMolesPerKilogram() {
    return value;
  }

  /**
   * Returns the molality in millimoles per kilogram of water.
   *
   * @return the molality in mmol/kg
   */
  public double inMillimolesPerKilogram() {
    return value * 1000;
  }

  /**
   * Adds a molality.
   *
   * @param other the molality to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public Molality plus(Molality other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a molality.
   *
   * @param other the molality to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is below 0
   */
  public Molality minus(Molality other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, 0 or more
   * @return the product
   * @throws IllegalArgumentException if the product is negative, infinite or NaN
   */
  public Molality times(double factor) {
    return fromBase(value * factor);
  }

  /**
   * Returns the amount of solute that goes with a mass of water.
   *
   * @param water the mass of water
   * @return molality x mass of water
   * @throws IllegalArgumentException if the amount is too large to be held
   */
  public AmountOfSubstance times(Mass water) {
    return AmountOfSubstance.ofMoles(value * water.inKilograms());
  }

  @Override
  public String toString() {
    return value < 0.1 ? text(inMillimolesPerKilogram(), "mmol/kg") : text(value, "mol/kg");
  }

  private static Molality fromBase(double molesPerKilogram) {
    return new Molality(molesPerKilogram, molesPerKilogram, "mol/kg");
  }
}
