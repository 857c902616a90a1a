package org.brewchem.quantity;

import org.brewchem.internal.Checks;

/**
 * A mass concentration: mass of solute per volume of solution, held in mg/L; 0 or more. It says
 * nothing about a basis: "as CaCO3" or "as lactic acid" belongs to the value that is built from it.
 */
public final class MassConcentration extends ScalarValue<MassConcentration> {

  private static final String NAME = "mass concentration";

  private MassConcentration(double milligramsPerLitre, double stated, String statedUnit) {
    super(nonNegative(NAME, stated, statedUnit, milligramsPerLitre));
  }

  /**
   * Returns a mass concentration stated in milligrams per litre.
   *
   * @param milligramsPerLitre the mass concentration in mg/L, 0 or more
   * @return the mass concentration
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static MassConcentration ofMilligramsPerLitre(double milligramsPerLitre) {
    return new MassConcentration(milligramsPerLitre, milligramsPerLitre, "mg/L");
  }

  /**
   * Returns a mass concentration stated in grams per litre.
   *
   * @param gramsPerLitre the mass concentration in g/L, 0 or more
   * @return the mass concentration
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static MassConcentration ofGramsPerLitre(double gramsPerLitre) {
    return new MassConcentration(gramsPerLitre * 1000, gramsPerLitre, "g/L");
  }

  /**
   * Returns a mass concentration stated in grams per hectolitre.
   *
   * @param gramsPerHectolitre the mass concentration in g/hL, 0 or more
   * @return the mass concentration
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static MassConcentration ofGramsPerHectolitre(double gramsPerHectolitre) {
    return new MassConcentration(gramsPerHectolitre * 10, gramsPerHectolitre, "g/hL");
  }

  /**
   * Returns a mass concentration that a report states in ppm, taken as mg/L. The two agree only in
   * a dilute water of density close to 1 kg/L; in a wort or a reagent, ppm is a mass fraction.
   *
   * @param ppm the number of ppm, 0 or more
   * @return as many mg/L
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static MassConcentration ofPpmOfDiluteWater(double ppm) {
    return new MassConcentration(ppm, ppm, "ppm");
  }

  /**
   * Returns the concentration of a mass of solute in a volume of solution.
   *
   * @param solute the mass of solute
   * @param solution the volume of solution, above 0
   * @return solute / solution
   * @throws IllegalArgumentException if the volume is 0
   */
  public static MassConcentration from(Mass solute, Volume solution) {
    return ofGramsPerLitre(solute.inGrams() / Checks.positive("volume", solution.inLitres(), "L"));
  }

  /**
   * Returns the mass concentration in milligrams per litre.
   *
   * @return the mass concentration in mg/L
   */
  public double inMilligramsPerLitre() {
    return value;
  }

  /**
   * Returns the mass concentration in grams per litre.
   *
   * @return the mass concentration in g/L
   */
  public double inGramsPerLitre() {
    return value / 1000;
  }

  /**
   * Returns the mass concentration in grams per hectolitre.
   *
   * @return the mass concentration in g/hL
   */
  public double inGramsPerHectolitre() {
    return value / 10;
  }

  /**
   * Adds a mass concentration.
   *
   * @param other the mass concentration to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public MassConcentration plus(MassConcentration other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a mass concentration.
   *
   * @param other the mass concentration to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is below 0
   */
  public MassConcentration minus(MassConcentration other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, 0 or more
   * @return the product
   * @throws IllegalArgumentException if the product is negative, infinite or NaN
   */
  public MassConcentration times(double factor) {
    return fromBase(value * factor);
  }

  /**
   * Returns the volume of this solution that holds a mass of its solute.
   *
   * @param solute the mass of solute
   * @return solute / concentration
   * @throws IllegalArgumentException if this concentration is 0, or the volume too large to be held
   */
  public Volume volumeOf(Mass solute) {
    return Volume.ofLitres(
        solute.inGrams() / Checks.positive("mass concentration", inGramsPerLitre(), "g/L"));
  }

  /**
   * Returns the mass of solute in a volume of solution.
   *
   * @param solution the volume of solution
   * @return concentration x volume
   * @throws IllegalArgumentException if the mass is too large to be held
   */
  public Mass times(Volume solution) {
    return Mass.ofGrams(inGramsPerLitre() * solution.inLitres());
  }

  @Override
  public String toString() {
    return value < 1000 ? text(value, "mg/L") : text(inGramsPerLitre(), "g/L");
  }

  private static MassConcentration fromBase(double milligramsPerLitre) {
    return new MassConcentration(milligramsPerLitre, milligramsPerLitre, "mg/L");
  }
}
