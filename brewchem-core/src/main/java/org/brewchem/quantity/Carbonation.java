package org.brewchem.quantity;

import org.brewchem.internal.PhysicalConstants;
import org.brewchem.internal.ReferenceMolarMasses;

/**
 * A carbonation: how much carbon dioxide is dissolved in a beverage, held in g/L; 0 or more.
 *
 * <p>One volume is the carbon dioxide that as an ideal gas fills the volume of the liquid at 0 °C
 * and 1 atm: 22.414 L/mol, by definition and the gas constant, so that one volume is 1.9635 g/L.
 * Real carbon dioxide takes about 22.26 L/mol there (from memory); counted with that, the volumes
 * are 0.7 % smaller for the same grams per litre.
 */
public final class Carbonation extends ScalarValue<Carbonation> {

  private static final String NAME = "carbonation";

  private static final double GRAMS_PER_LITRE_IN_A_VOLUME =
      ReferenceMolarMasses.CARBON_DIOXIDE
          * PhysicalConstants.idealGasMolesPerLitre(
              Pressure.ofAtmospheres(1).inKilopascals(), Temperature.ofCelsius(0).inKelvin());

  private Carbonation(double gramsPerLitre, double stated, String statedUnit) {
    super(nonNegative(NAME, stated, statedUnit, gramsPerLitre));
  }

  /**
   * Returns a carbonation stated in grams per litre.
   *
   * @param gramsPerLitre the dissolved CO2 in g/L, 0 or more
   * @return the carbonation
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Carbonation ofGramsPerLitre(double gramsPerLitre) {
    return new Carbonation(gramsPerLitre, gramsPerLitre, "g/L");
  }

  /**
   * Returns a carbonation stated in volumes.
   *
   * @param volumes litres of CO2 at 0 °C and 1 atm per litre, 0 or more
   * @return the carbonation
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Carbonation ofVolumes(double volumes) {
    return new Carbonation(volumes * GRAMS_PER_LITRE_IN_A_VOLUME, volumes, "volumes");
  }

  /**
   * Returns a carbonation stated as a mass concentration.
   *
   * @param carbonDioxide the dissolved CO2
   * @return the carbonation
   */
  public static Carbonation from(MassConcentration carbonDioxide) {
    return ofGramsPerLitre(carbonDioxide.inGramsPerLitre());
  }

  /**
   * Returns a carbonation stated as an amount concentration.
   *
   * @param carbonDioxide the dissolved CO2
   * @return the carbonation
   * @throws IllegalArgumentException if the result is too large to be held
   */
  public static Carbonation from(AmountConcentration carbonDioxide) {
    return ofGramsPerLitre(carbonDioxide.inMolesPerLitre() * ReferenceMolarMasses.CARBON_DIOXIDE);
  }

  /**
   * Returns the carbonation in grams per litre.
   *
   * @return the dissolved CO2 in g/L
   */
  public double inGramsPerLitre() {
    return value;
  }

  /**
   * Returns the carbonation in volumes.
   *
   * @return litres of CO2 at 0 °C and 1 atm per litre
   */
  public double inVolumes() {
    return value / GRAMS_PER_LITRE_IN_A_VOLUME;
  }

  /**
   * Returns the dissolved carbon dioxide as mass.
   *
   * @return the concentration of CO2
   */
  public MassConcentration asMassConcentration() {
    return MassConcentration.ofGramsPerLitre(value);
  }

  /**
   * Returns the dissolved carbon dioxide as an amount.
   *
   * @return the concentration of CO2
   */
  public AmountConcentration asAmountConcentration() {
    return AmountConcentration.ofMolesPerLitre(value / ReferenceMolarMasses.CARBON_DIOXIDE);
  }

  @Override
  public String toString() {
    return text(value, "g/L of CO2");
  }
}
