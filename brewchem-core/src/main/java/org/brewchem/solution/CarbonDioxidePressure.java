package org.brewchem.solution;

import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Carbonation;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Gas;

/**
 * The equilibrium between a carbonation and the pressure of carbon dioxide above it.
 *
 * <p>It is the solubility in water (Henry's constant) of Plummer and Busenberg 1982, with all of
 * the carbon dioxide as CO2 and none as bicarbonate, as in beer. Extract and alcohol are neglected,
 * and so is the deviation of fugacity from pressure; tables measured on beer differ.
 *
 * <p>Carbon dioxide suffocates, and vessels burst: keep to the pressure rating of the vessel, the
 * local rules for pressure and gas, and the supplier's safety data sheet.
 */
public final class CarbonDioxidePressure {

  private CarbonDioxidePressure() {}

  /**
   * Returns the carbonation that water reaches under a pressure of carbon dioxide.
   *
   * @param carbonDioxide the partial pressure of CO2, absolute: a gauge pressure needs that of the
   *     air added, less what air and water vapour take of the total
   * @param temperature 0 to 90 °C
   * @return the carbonation at equilibrium
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public static Carbonation carbonationUnder(Pressure carbonDioxide, Temperature temperature) {
    return Carbonation.from(
        AmountConcentration.ofMolesPerLitre(
            carbonDioxide.inAtmospheres() * molesPerLitreAtmosphere(temperature)));
  }

  /**
   * Returns the partial pressure of carbon dioxide that keeps a carbonation in water.
   *
   * @param carbonation the dissolved carbon dioxide
   * @param temperature 0 to 90 °C
   * @return the partial pressure at equilibrium, absolute
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public static Pressure over(Carbonation carbonation, Temperature temperature) {
    return Pressure.ofAtmospheres(
        carbonation.asAmountConcentration().inMolesPerLitre()
            / molesPerLitreAtmosphere(temperature));
  }

  private static double molesPerLitreAtmosphere(Temperature temperature) {
    Checks.inRange("temperature", temperature.inCelsius(), "°C", 0, 90);
    return Math.pow(10, Gas.CARBON_DIOXIDE.solubility().log10(temperature.inKelvin()))
        * Solution.at(temperature).kilogramsPerLitre();
  }
}
