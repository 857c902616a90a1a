package org.brewchem.quantity;

import java.util.Objects;
import org.brewchem.internal.Checks;

/** An amount concentration: moles of solute per volume of solution, held in mol/L; 0 or more. */
public final class AmountConcentration extends ScalarValue<AmountConcentration> {

  private static final String NAME = "amount concentration";

  private AmountConcentration(double molesPerLitre, double stated, String statedUnit) {
    super(nonNegative(NAME, stated, statedUnit, molesPerLitre));
  }

  /**
   * Returns an amount concentration stated in moles per litre.
   *
   * @param molesPerLitre the amount concentration in mol/L, 0 or more
   * @return the amount concentration
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static AmountConcentration ofMolesPerLitre(double molesPerLitre) {
    return new AmountConcentration(molesPerLitre, molesPerLitre, "mol/L");
  }

  /**
   * Returns an amount concentration stated in millimoles per litre.
   *
   * @param millimolesPerLitre the amount concentration in mmol/L, 0 or more
   * @return the amount concentration
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static AmountConcentration ofMillimolesPerLitre(double millimolesPerLitre) {
    return new AmountConcentration(millimolesPerLitre / 1000, millimolesPerLitre, "mmol/L");
  }

  /**
   * Returns the concentration of an amount of solute in a volume of solution.
   *
   * @param solute the amount of solute
   * @param solution the volume of solution, above 0
   * @return solute / solution
   * @throws IllegalArgumentException if the volume is 0
   */
  public static AmountConcentration from(AmountOfSubstance solute, Volume solution) {
    return fromBase(solute.inMoles() / Checks.positive("volume", solution.inLitres(), "L"));
  }

  /**
   * Returns the amount concentration of a solute given by mass.
   *
   * @param concentration the mass concentration
   * @param molarMass the molar mass of the solute
   * @return mass concentration / molar mass
   * @throws IllegalArgumentException if the result is too large to be held
   */
  public static AmountConcentration from(MassConcentration concentration, MolarMass molarMass) {
    Objects.requireNonNull(concentration, "mass concentration");
    return fromBase(concentration.inGramsPerLitre() / molarMass.inGramsPerMole());
  }

  /**
   * Returns the concentration of an ion that carries a charge per litre.
   *
   * @param charge the charge per litre, 0 or of the sign of the ion
   * @param chargeNumber the charge number of the ion, such as -2 for sulfate; not 0
   * @return charge / charge number
   * @throws IllegalArgumentException if the charge number is 0 or of the other sign
   */
  public static AmountConcentration from(ChargeConcentration charge, int chargeNumber) {
    if (chargeNumber == 0) {
      throw Checks.outOfRange("charge number", chargeNumber, "", "a whole number other than 0");
    }
    return fromBase(charge.inEquivalentsPerLitre() / chargeNumber);
  }

  /**
   * Returns the amount per litre of a dilute solution of known molality. A litre is taken to hold a
   * litre of water: the room that the solute takes up is neglected.
   *
   * @param molality the amount per kg of water
   * @param water the density of water at the temperature of the litre
   * @return molality x density of water
   * @throws IllegalArgumentException if the result is too large to be held
   */
  public static AmountConcentration from(Molality molality, Density water) {
    return fromBase(molality.inMolesPerKilogram() * water.inKilogramsPerLitre());
  }

  /**
   * Returns the amount concentration in moles per litre.
   *
   * @return the amount concentration in mol/L
   */
  public double inMolesPerLitre() {
    return value;
  }

  /**
   * Returns the amount concentration in millimoles per litre.
   *
   * @return the amount concentration in mmol/L
   */
  public double inMillimolesPerLitre() {
    return value * 1000;
  }

  /**
   * Adds an amount concentration.
   *
   * @param other the amount concentration to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public AmountConcentration plus(AmountConcentration other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts an amount concentration.
   *
   * @param other the amount concentration to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is below 0
   */
  public AmountConcentration minus(AmountConcentration other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, 0 or more
   * @return the product
   * @throws IllegalArgumentException if the product is negative, infinite or NaN
   */
  public AmountConcentration times(double factor) {
    return fromBase(value * factor);
  }

  /**
   * Returns the volume of this solution that holds an amount of its solute.
   *
   * @param solute the amount of solute
   * @return solute / concentration
   * @throws IllegalArgumentException if this concentration is 0, or the volume too large to be held
   */
  public Volume volumeOf(AmountOfSubstance solute) {
    return Volume.ofLitres(
        solute.inMoles() / Checks.positive("amount concentration", inMolesPerLitre(), "mol/L"));
  }

  /**
   * Returns the amount of solute in a volume of solution.
   *
   * @param solution the volume of solution
   * @return concentration x volume
   * @throws IllegalArgumentException if the amount is too large to be held
   */
  public AmountOfSubstance times(Volume solution) {
    return AmountOfSubstance.ofMoles(value * solution.inLitres());
  }

  /**
   * Returns the concentration by mass.
   *
   * @param molarMass the molar mass of the solute
   * @return concentration x molar mass
   * @throws IllegalArgumentException if the result is too large to be held
   */
  public MassConcentration times(MolarMass molarMass) {
    return MassConcentration.ofGramsPerLitre(value * molarMass.inGramsPerMole());
  }

  /**
   * Returns the charge that this concentration of an ion carries. It is not called {@code times},
   * because {@code times(2)} must not mean something else than {@code times(2.0)}.
   *
   * @param chargeNumber the charge number of the ion, such as -2 for sulfate
   * @return concentration x charge number, with its sign
   * @throws IllegalArgumentException if the result is too large to be held
   */
  public ChargeConcentration timesCharge(int chargeNumber) {
    return ChargeConcentration.ofEquivalentsPerLitre(value * chargeNumber);
  }

  @Override
  public String toString() {
    return value < 0.1 ? text(inMillimolesPerLitre(), "mmol/L") : text(value, "mol/L");
  }

  private static AmountConcentration fromBase(double molesPerLitre) {
    return new AmountConcentration(molesPerLitre, molesPerLitre, "mol/L");
  }
}
