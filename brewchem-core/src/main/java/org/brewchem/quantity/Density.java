package org.brewchem.quantity;

import org.brewchem.internal.Checks;

/**
 * A density: mass of a liquid or solid per volume of itself, held in kg/m3; above 0. What is
 * dissolved in a liquid is a {@link MassConcentration}.
 */
public final class Density extends ScalarValue<Density> {

  private static final String NAME = "density";

  private Density(double kilogramsPerCubicMetre, double stated, String statedUnit) {
    super(positive(NAME, stated, statedUnit, kilogramsPerCubicMetre));
  }

  /**
   * Returns a density stated in kilograms per cubic metre.
   *
   * @param kilogramsPerCubicMetre the density in kg/m3, above 0
   * @return the density
   * @throws IllegalArgumentException if the number is 0, negative, infinite or NaN
   */
  public static Density ofKilogramsPerCubicMetre(double kilogramsPerCubicMetre) {
    return new Density(kilogramsPerCubicMetre, kilogramsPerCubicMetre, "kg/m3");
  }

  /**
   * Returns a density stated in kilograms per litre.
   *
   * @param kilogramsPerLitre the density in kg/L, above 0
   * @return the density
   * @throws IllegalArgumentException if the number is 0, negative, infinite or NaN
   */
  public static Density ofKilogramsPerLitre(double kilogramsPerLitre) {
    return new Density(kilogramsPerLitre * 1000, kilogramsPerLitre, "kg/L");
  }

  /**
   * Returns a density stated in grams per millilitre.
   *
   * @param gramsPerMillilitre the density in g/mL, above 0
   * @return the density
   * @throws IllegalArgumentException if the number is 0, negative, infinite or NaN
   */
  public static Density ofGramsPerMillilitre(double gramsPerMillilitre) {
    return new Density(gramsPerMillilitre * 1000, gramsPerMillilitre, "g/mL");
  }

  /**
   * Returns the density of a weighed volume.
   *
   * @param mass the mass, above 0
   * @param volume the volume, above 0
   * @return mass / volume
   * @throws IllegalArgumentException if the mass or the volume is 0
   */
  public static Density from(Mass mass, Volume volume) {
    double litres = Checks.positive("volume", volume.inLitres(), "L");
    return ofKilogramsPerCubicMetre(mass.inGrams() / litres);
  }

  /**
   * Returns the density in kilograms per cubic metre.
   *
   * @return the density in kg/m3
   */
  public double inKilogramsPerCubicMetre() {
    return value;
  }

  /**
   * Returns the density in kilograms per litre.
   *
   * @return the density in kg/L
   */
  public double inKilogramsPerLitre() {
    return value / 1000;
  }

  /**
   * Returns the density in grams per millilitre.
   *
   * @return the density in g/mL
   */
  public double inGramsPerMillilitre() {
    return value / 1000;
  }

  /**
   * Returns the volume that a mass of this liquid takes up.
   *
   * @param mass the mass
   * @return mass / density
   * @throws IllegalArgumentException if the volume is too large to be held
   */
  public Volume volumeOf(Mass mass) {
    return Volume.ofLitres(mass.inKilograms() / inKilogramsPerLitre());
  }

  /**
   * Returns the mass of a volume of this density.
   *
   * @param volume the volume
   * @return density x volume
   * @throws IllegalArgumentException if the mass is too large to be held
   */
  public Mass times(Volume volume) {
    return Mass.ofGrams(value * volume.inLitres());
  }

  @Override
  public String toString() {
    return text(inGramsPerMillilitre(), "g/mL");
  }
}
