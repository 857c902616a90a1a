package org.brewchem.solution;

import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.internal.PhysicalConstants;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Gas;
import org.jspecify.annotations.Nullable;

/**
 * How much carbon dioxide is dissolved in a beverage: grams per litre, or volumes of gas per volume
 * of liquid.
 *
 * <p>One volume is the carbon dioxide that as an ideal gas fills the volume of the liquid at 0 °C
 * and 1 atm: 22.414 L/mol, by definition and the gas constant, so that one volume is 1.9635 g/L.
 * Real carbon dioxide takes about 22.26 L/mol there (from memory); counted with that, the volumes
 * are 0.7 % smaller for the same grams per litre.
 *
 * <p>Pressure and carbonation are connected by the solubility in water (Henry's constant) of
 * Plummer and Busenberg 1982, with all of the carbon dioxide as CO2 and none as bicarbonate, as in
 * beer. Extract and alcohol are neglected, as is the deviation of fugacity from pressure; what a
 * table measured on beer says is another thing. Immutable.
 *
 * <p>Carbon dioxide suffocates, and vessels burst: keep to the pressure rating of the vessel, the
 * local rules for pressure and gas, and the supplier's safety data sheet.
 */
public final class Carbonation implements Comparable<Carbonation> {

  private static final double MOLES_PER_LITRE_IN_A_VOLUME =
      PhysicalConstants.idealGasMolesPerLitre(
          Pressure.ofAtmospheres(1).inKilopascals(), Temperature.ofCelsius(0).inKelvin());

  private final double molesPerLitre;

  private Carbonation(double molesPerLitre) {
    this.molesPerLitre = molesPerLitre;
  }

  /**
   * Returns a carbonation stated as mass.
   *
   * @param carbonDioxide the dissolved CO2
   * @return the carbonation
   */
  public static Carbonation of(MassConcentration carbonDioxide) {
    return new Carbonation(
        AmountConcentration.from(carbonDioxide, Acid.CARBONIC.molarMass()).inMolesPerLitre());
  }

  /**
   * Returns a carbonation stated in grams per litre.
   *
   * @param gramsPerLitre the dissolved CO2 in g/L, 0 or more
   * @return the carbonation
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Carbonation ofGramsPerLitre(double gramsPerLitre) {
    return of(MassConcentration.ofGramsPerLitre(gramsPerLitre));
  }

  /**
   * Returns a carbonation stated in volumes.
   *
   * @param volumes litres of CO2 at 0 °C and 1 atm per litre, 0 or more
   * @return the carbonation
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Carbonation ofVolumes(double volumes) {
    return new Carbonation(
        Checks.nonNegative("carbonation", volumes, "volumes") * MOLES_PER_LITRE_IN_A_VOLUME);
  }

  /**
   * Returns the carbonation that water reaches under a pressure of carbon dioxide.
   *
   * @param carbonDioxide the partial pressure of CO2, absolute: a gauge pressure needs that of the
   *     air added, less what air and water vapour take of the total
   * @param temperature 0 to 90 °C
   * @return the carbonation at equilibrium
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public static Carbonation under(Pressure carbonDioxide, Temperature temperature) {
    return new Carbonation(carbonDioxide.inAtmospheres() * molesPerLitreAtmosphere(temperature));
  }

  /**
   * Returns the partial pressure of carbon dioxide that keeps this carbonation in water.
   *
   * @param temperature 0 to 90 °C
   * @return the partial pressure at equilibrium, absolute
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public Pressure equilibriumPressure(Temperature temperature) {
    return Pressure.ofAtmospheres(molesPerLitre / molesPerLitreAtmosphere(temperature));
  }

  private static double molesPerLitreAtmosphere(Temperature temperature) {
    Checks.inRange("temperature", temperature.inCelsius(), "°C", 0, 90);
    return Math.pow(10, Gas.CARBON_DIOXIDE.solubility().log10(temperature.inKelvin()))
        * Solution.at(temperature).kilogramsPerLitre();
  }

  /**
   * Returns the dissolved carbon dioxide as mass.
   *
   * @return the concentration of CO2
   */
  public MassConcentration asMassConcentration() {
    return asAmountConcentration().times(Acid.CARBONIC.molarMass());
  }

  /**
   * Returns the dissolved carbon dioxide as an amount, such as {@link Solution#with} takes it.
   *
   * @return the concentration of CO2
   */
  public AmountConcentration asAmountConcentration() {
    return AmountConcentration.ofMolesPerLitre(molesPerLitre);
  }

  /**
   * Returns the carbonation in grams per litre.
   *
   * @return the dissolved CO2 in g/L
   */
  public double inGramsPerLitre() {
    return asMassConcentration().inGramsPerLitre();
  }

  /**
   * Returns the carbonation in volumes.
   *
   * @return litres of CO2 at 0 °C and 1 atm per litre
   */
  public double inVolumes() {
    return molesPerLitre / MOLES_PER_LITRE_IN_A_VOLUME;
  }

  @Override
  public int compareTo(Carbonation other) {
    return Double.compare(molesPerLitre, other.molesPerLitre);
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Carbonation other && molesPerLitre == other.molesPerLitre;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(molesPerLitre);
  }

  @Override
  public String toString() {
    return NumberText.significant(inGramsPerLitre(), 4)
        + " g/L of CO2 ("
        + NumberText.significant(inVolumes(), 4)
        + " volumes)";
  }
}
