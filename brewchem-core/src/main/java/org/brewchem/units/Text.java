package org.brewchem.units;

import java.util.Collection;
import java.util.List;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Carbonation;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Conductivity;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.ElectricPotential;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.MolarMass;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.SpecificGravity;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TemperatureDifference;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.quantity.VolumeRatio;

/**
 * Strict readers of numbers and values, the same in every locale. The rules are on the page of this
 * package, and {@link LabUnits} lists the units.
 *
 * <p>Each reader throws a {@link UnitTextException} when the text is not a number with one of the
 * allowed units, and the {@link IllegalArgumentException} of the value when it does not allow the
 * number, such as a negative one; the single methods do not repeat this.
 *
 * <p>The {@code exact} forms print what the readers turn into an equal value; {@code toString()}
 * rounds for a reader.
 */
public final class Text {

  private Text() {}

  /**
   * Reads a number without a unit, such as the cell of a table whose heading names the unit.
   *
   * @param text the text, such as {@code 5.3}
   * @return the number, finite
   * @throws UnitTextException if the text is not a number
   */
  public static double parseNumber(String text) {
    return NumberReader.whole(text);
  }

  /**
   * Reads a pH, with its name or as the number alone.
   *
   * @param text the text, such as {@code pH 8.2} or {@code 8.2}
   * @return the pH
   * @throws UnitTextException if the text is not a pH
   * @throws IllegalArgumentException if the number is not from -3 to 17
   */
  public static PH parsePH(String text) {
    boolean named = text.startsWith("p");
    return named ? LabUnits.PH.read(text) : PH.of(NumberReader.whole(text));
  }

  /**
   * Reads a temperature.
   *
   * @param text the text, such as {@code 20 °C}; units: {@link LabUnits#TEMPERATURE}
   * @return the temperature
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static Temperature parseTemperature(String text) {
    return LabUnits.TEMPERATURE.read(text);
  }

  /**
   * Reads a difference of temperatures.
   *
   * @param text the text, such as {@code 5 K}; units: {@link LabUnits#TEMPERATURE_DIFFERENCE}
   * @return the temperature difference
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static TemperatureDifference parseTemperatureDifference(String text) {
    return LabUnits.TEMPERATURE_DIFFERENCE.read(text);
  }

  /**
   * Reads a volume.
   *
   * @param text the text, such as {@code 14.62 mL}; units: {@link LabUnits#VOLUME}
   * @return the volume
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static Volume parseVolume(String text) {
    return LabUnits.VOLUME.read(text);
  }

  /**
   * Reads a volume ratio.
   *
   * @param text the text, such as {@code 30 mL/hL}; units: {@link LabUnits#VOLUME_RATIO}
   * @return the volume ratio
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static VolumeRatio parseVolumeRatio(String text) {
    return LabUnits.VOLUME_RATIO.read(text);
  }

  /**
   * Reads a mass.
   *
   * @param text the text, such as {@code 0.4082 g}; units: {@link LabUnits#MASS}
   * @return the mass
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static Mass parseMass(String text) {
    return LabUnits.MASS.read(text);
  }

  /**
   * Reads an amount of substance.
   *
   * @param text the text, such as {@code 1.462 mmol}; units: {@link LabUnits#AMOUNT_OF_SUBSTANCE}
   * @return the amount of substance
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static AmountOfSubstance parseAmountOfSubstance(String text) {
    return LabUnits.AMOUNT_OF_SUBSTANCE.read(text);
  }

  /**
   * Reads a molar mass.
   *
   * @param text the text, such as {@code 90.078 g/mol}; units: {@link LabUnits#MOLAR_MASS}
   * @return the molar mass
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static MolarMass parseMolarMass(String text) {
    return LabUnits.MOLAR_MASS.read(text);
  }

  /**
   * Reads a density.
   *
   * @param text the text, such as {@code 1.206 g/mL}; units: {@link LabUnits#DENSITY}
   * @return the density
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static Density parseDensity(String text) {
    return LabUnits.DENSITY.read(text);
  }

  /**
   * Reads a specific gravity.
   *
   * @param text the text, such as {@code 1.048 SG 20/20}; units: {@link LabUnits#SPECIFIC_GRAVITY}
   * @return the specific gravity
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static SpecificGravity parseSpecificGravity(String text) {
    return LabUnits.SPECIFIC_GRAVITY.read(text);
  }

  /**
   * Reads a mass fraction.
   *
   * @param text the text, such as {@code 88 % by mass}; units: {@link LabUnits#MASS_FRACTION}
   * @return the mass fraction
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static MassFraction parseMassFraction(String text) {
    return LabUnits.MASS_FRACTION.read(text);
  }

  /**
   * Reads a mass concentration.
   *
   * @param text the text, such as {@code 5.3 mg/L}; units: {@link LabUnits#MASS_CONCENTRATION}
   * @return the mass concentration
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static MassConcentration parseMassConcentration(String text) {
    return LabUnits.MASS_CONCENTRATION.read(text);
  }

  /**
   * Reads an amount concentration.
   *
   * @param text the text, such as {@code 0.1 mol/L}; units: {@link LabUnits#AMOUNT_CONCENTRATION}
   * @return the amount concentration
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static AmountConcentration parseAmountConcentration(String text) {
    return LabUnits.AMOUNT_CONCENTRATION.read(text);
  }

  /**
   * Reads a molality.
   *
   * @param text the text, such as {@code 6 mmol/kg}; units: {@link LabUnits#MOLALITY}
   * @return the molality
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static Molality parseMolality(String text) {
    return LabUnits.MOLALITY.read(text);
  }

  /**
   * Reads a charge concentration.
   *
   * @param text the text, such as {@code -1.4 mEq/L}; units: {@link LabUnits#CHARGE_CONCENTRATION}
   * @return the charge concentration
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static ChargeConcentration parseChargeConcentration(String text) {
    return LabUnits.CHARGE_CONCENTRATION.read(text);
  }

  /**
   * Reads a buffer capacity.
   *
   * @param text the text, such as {@code 12 mEq/L per pH}; units: {@link LabUnits#BUFFER_CAPACITY}
   * @return the buffer capacity
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static BufferCapacity parseBufferCapacity(String text) {
    return LabUnits.BUFFER_CAPACITY.read(text);
  }

  /**
   * Reads a conductivity.
   *
   * @param text the text, such as {@code 580 µS/cm at 25 °C}; units: {@link LabUnits#CONDUCTIVITY}
   * @return the conductivity
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static Conductivity parseConductivity(String text) {
    return LabUnits.CONDUCTIVITY.read(text);
  }

  /**
   * Reads an absolute pressure.
   *
   * @param text the text, such as {@code 101.325 kPa}; units: {@link LabUnits#PRESSURE}
   * @return the pressure
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static Pressure parsePressure(String text) {
    return LabUnits.PRESSURE.read(text);
  }

  /**
   * Reads an electric potential.
   *
   * @param text the text, such as {@code -177.5 mV}; units: {@link LabUnits#ELECTRIC_POTENTIAL}
   * @return the electric potential
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static ElectricPotential parseElectricPotential(String text) {
    return LabUnits.ELECTRIC_POTENTIAL.read(text);
  }

  /**
   * Reads a hardness.
   *
   * @param text the text, such as {@code 8.0 °dH}; units: {@link LabUnits#HARDNESS}
   * @return the hardness
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static Hardness parseHardness(String text) {
    return LabUnits.HARDNESS.read(text);
  }

  /**
   * Reads a carbonate alkalinity.
   *
   * @param text the text, such as {@code 215 mg/L as CaCO3}; units: {@link
   *     LabUnits#CARBONATE_ALKALINITY}
   * @return the carbonate alkalinity
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static CarbonateAlkalinity parseCarbonateAlkalinity(String text) {
    return LabUnits.CARBONATE_ALKALINITY.read(text);
  }

  /**
   * Reads a residual alkalinity.
   *
   * @param text the text, such as {@code -20 mg/L as CaCO3}; units: {@link
   *     LabUnits#RESIDUAL_ALKALINITY}
   * @return the residual alkalinity
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static ResidualAlkalinity parseResidualAlkalinity(String text) {
    return LabUnits.RESIDUAL_ALKALINITY.read(text);
  }

  /**
   * Reads a titration alkalinity.
   *
   * @param text the text with the end point, such as {@code 215 mg/L as CaCO3, to pH 4.5}; units:
   *     {@link LabUnits#TITRATION_ALKALINITY}
   * @return the titration alkalinity
   * @throws UnitTextException if the text is not a number with one of these units and an end point
   */
  public static TitrationAlkalinity parseTitrationAlkalinity(String text) {
    return LabUnits.TITRATION_ALKALINITY.read(text);
  }

  /**
   * Reads a titratable acidity.
   *
   * @param text the text with the end point, such as {@code 2.80 g/L as lactic acid, to pH 8.2};
   *     units: {@link LabUnits#acidity(Collection)}
   * @param bases the acids that the acidity may be stated as
   * @return the titratable acidity
   * @throws UnitTextException if the text is not a number with one of these units and an end point
   */
  public static TitratableAcidity parseTitratableAcidity(
      String text, Collection<? extends AcidBasis> bases) {
    return LabUnits.acidity(bases).read(text);
  }

  /**
   * Reads a carbonation.
   *
   * @param text the text, such as {@code 5.2 g/L of CO2}; units: {@link LabUnits#CARBONATION}
   * @return the carbonation
   * @throws UnitTextException if the text is not a number with one of these units
   */
  public static Carbonation parseCarbonation(String text) {
    return LabUnits.CARBONATION.read(text);
  }

  /**
   * Prints all digits.
   *
   * @param value the pH
   * @return a text that reads back to an equal value
   */
  public static String exact(PH value) {
    return LabUnits.PH.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the temperature
   * @return a text that reads back to an equal value
   */
  public static String exact(Temperature value) {
    return LabUnits.TEMPERATURE.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the temperature difference
   * @return a text that reads back to an equal value
   */
  public static String exact(TemperatureDifference value) {
    return LabUnits.TEMPERATURE_DIFFERENCE.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the volume
   * @return a text that reads back to an equal value
   */
  public static String exact(Volume value) {
    return LabUnits.VOLUME.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the volume ratio
   * @return a text that reads back to an equal value
   */
  public static String exact(VolumeRatio value) {
    return LabUnits.VOLUME_RATIO.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the mass
   * @return a text that reads back to an equal value
   */
  public static String exact(Mass value) {
    return LabUnits.MASS.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the amount of substance
   * @return a text that reads back to an equal value
   */
  public static String exact(AmountOfSubstance value) {
    return LabUnits.AMOUNT_OF_SUBSTANCE.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the molar mass
   * @return a text that reads back to an equal value
   */
  public static String exact(MolarMass value) {
    return LabUnits.MOLAR_MASS.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the density
   * @return a text that reads back to an equal value
   */
  public static String exact(Density value) {
    return LabUnits.DENSITY.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the specific gravity
   * @return a text that reads back to an equal value
   */
  public static String exact(SpecificGravity value) {
    return LabUnits.SPECIFIC_GRAVITY.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the mass fraction
   * @return a text that reads back to an equal value
   */
  public static String exact(MassFraction value) {
    return LabUnits.MASS_FRACTION.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the mass concentration
   * @return a text that reads back to an equal value
   */
  public static String exact(MassConcentration value) {
    return LabUnits.MASS_CONCENTRATION.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the amount concentration
   * @return a text that reads back to an equal value
   */
  public static String exact(AmountConcentration value) {
    return LabUnits.AMOUNT_CONCENTRATION.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the molality
   * @return a text that reads back to an equal value
   */
  public static String exact(Molality value) {
    return LabUnits.MOLALITY.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the charge concentration
   * @return a text that reads back to an equal value
   */
  public static String exact(ChargeConcentration value) {
    return LabUnits.CHARGE_CONCENTRATION.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the buffer capacity
   * @return a text that reads back to an equal value
   */
  public static String exact(BufferCapacity value) {
    return LabUnits.BUFFER_CAPACITY.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the conductivity
   * @return a text that reads back to an equal value
   */
  public static String exact(Conductivity value) {
    return LabUnits.CONDUCTIVITY.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the absolute pressure
   * @return a text that reads back to an equal value
   */
  public static String exact(Pressure value) {
    return LabUnits.PRESSURE.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the carbonation
   * @return a text that reads back to an equal value
   */
  public static String exact(Carbonation value) {
    return LabUnits.CARBONATION.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the electric potential
   * @return a text that reads back to an equal value
   */
  public static String exact(ElectricPotential value) {
    return LabUnits.ELECTRIC_POTENTIAL.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the hardness
   * @return a text that reads back to an equal value
   */
  public static String exact(Hardness value) {
    return LabUnits.HARDNESS.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the carbonate alkalinity
   * @return a text that reads back to an equal value
   */
  public static String exact(CarbonateAlkalinity value) {
    return LabUnits.CARBONATE_ALKALINITY.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the residual alkalinity
   * @return a text that reads back to an equal value
   */
  public static String exact(ResidualAlkalinity value) {
    return LabUnits.RESIDUAL_ALKALINITY.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the titration alkalinity
   * @return a text that reads back to an equal value
   */
  public static String exact(TitrationAlkalinity value) {
    return LabUnits.TITRATION_ALKALINITY.exact(value);
  }

  /**
   * Prints all digits.
   *
   * @param value the titratable acidity
   * @return a text that reads back to an equal value
   */
  public static String exact(TitratableAcidity value) {
    return LabUnits.acidity(List.of()).exact(value);
  }
}
