package org.brewchem.quantity;

/**
 * Short names for the values of this package, to be imported statically, so that code reads like a
 * laboratory note: {@code acidity(gPerL(2.80), LACTIC, pH(8.2))}. Each is the factory of the class
 * it returns and fails as that does, with an {@link IllegalArgumentException} that names the value
 * and what is allowed.
 */
public final class Quantities {

  private Quantities() {}

  /**
   * Returns a pH.
   *
   * @param pH the pH, -3 to 17
   * @return the value
   */
  public static PH pH(double pH) {
    return PH.of(pH);
  }

  /**
   * Returns a temperature.
   *
   * @param celsius the temperature in °C
   * @return the value
   */
  public static Temperature celsius(double celsius) {
    return Temperature.ofCelsius(celsius);
  }

  /**
   * Returns a temperature.
   *
   * @param kelvin the temperature in K
   * @return the value
   */
  public static Temperature kelvin(double kelvin) {
    return Temperature.ofKelvin(kelvin);
  }

  /**
   * Returns a temperature.
   *
   * @param fahrenheit the temperature in °F
   * @return the value
   */
  public static Temperature fahrenheit(double fahrenheit) {
    return Temperature.ofFahrenheit(fahrenheit);
  }

  /**
   * Returns a volume.
   *
   * @param litres the volume in L
   * @return the value
   */
  public static Volume litres(double litres) {
    return Volume.ofLitres(litres);
  }

  /**
   * Returns a volume.
   *
   * @param millilitres the volume in mL
   * @return the value
   */
  public static Volume mL(double millilitres) {
    return Volume.ofMillilitres(millilitres);
  }

  /**
   * Returns a volume.
   *
   * @param hectolitres the volume in hL
   * @return the value
   */
  public static Volume hL(double hectolitres) {
    return Volume.ofHectolitres(hectolitres);
  }

  /**
   * Returns a volume ratio in mL/hL.
   *
   * @param millilitresPerHectolitre the number
   * @return the volume ratio
   */
  public static VolumeRatio mLPerHL(double millilitresPerHectolitre) {
    return VolumeRatio.ofMillilitresPerHectolitre(millilitresPerHectolitre);
  }

  /**
   * Returns a volume.
   *
   * @param gallons the volume in US gallons
   * @return the value
   */
  public static Volume usGallons(double gallons) {
    return Volume.ofUsGallons(gallons);
  }

  /**
   * Returns a volume.
   *
   * @param barrels the volume in US beer barrels of 31 US gallons
   * @return the value
   */
  public static Volume usBarrels(double barrels) {
    return Volume.ofUsBarrels(barrels);
  }

  /**
   * Returns a mass.
   *
   * @param grams the mass in g
   * @return the value
   */
  public static Mass g(double grams) {
    return Mass.ofGrams(grams);
  }

  /**
   * Returns a mass.
   *
   * @param milligrams the mass in mg
   * @return the value
   */
  public static Mass mg(double milligrams) {
    return Mass.ofMilligrams(milligrams);
  }

  /**
   * Returns a mass.
   *
   * @param kilograms the mass in kg
   * @return the value
   */
  public static Mass kg(double kilograms) {
    return Mass.ofKilograms(kilograms);
  }

  /**
   * Returns a mass.
   *
   * @param pounds the mass in avoirdupois pounds
   * @return the value
   */
  public static Mass pounds(double pounds) {
    return Mass.ofPounds(pounds);
  }

  /**
   * Returns a mass.
   *
   * @param ounces the mass in avoirdupois ounces
   * @return the value
   */
  public static Mass ounces(double ounces) {
    return Mass.ofOunces(ounces);
  }

  /**
   * Returns an amount of substance.
   *
   * @param moles the amount in mol
   * @return the value
   */
  public static AmountOfSubstance mol(double moles) {
    return AmountOfSubstance.ofMoles(moles);
  }

  /**
   * Returns an amount of substance.
   *
   * @param millimoles the amount in mmol
   * @return the value
   */
  public static AmountOfSubstance mmol(double millimoles) {
    return AmountOfSubstance.ofMillimoles(millimoles);
  }

  /**
   * Returns a molar mass.
   *
   * @param gramsPerMole the molar mass in g/mol
   * @return the value
   */
  public static MolarMass gPerMol(double gramsPerMole) {
    return MolarMass.ofGramsPerMole(gramsPerMole);
  }

  /**
   * Returns a density.
   *
   * @param gramsPerMillilitre the density in g/mL
   * @return the value
   */
  public static Density gPerML(double gramsPerMillilitre) {
    return Density.ofGramsPerMillilitre(gramsPerMillilitre);
  }

  /**
   * Returns a density.
   *
   * @param kilogramsPerCubicMetre the density in kg/m3
   * @return the value
   */
  public static Density kgPerM3(double kilogramsPerCubicMetre) {
    return Density.ofKilogramsPerCubicMetre(kilogramsPerCubicMetre);
  }

  /**
   * Returns a specific gravity 20/20.
   *
   * @param specificGravity the specific gravity, a ratio of densities near 1
   * @return the value
   */
  public static SpecificGravity specificGravity(double specificGravity) {
    return SpecificGravity.of(specificGravity);
  }

  /**
   * Returns a mass concentration.
   *
   * @param milligramsPerLitre the concentration in mg/L
   * @return the value
   */
  public static MassConcentration mgPerL(double milligramsPerLitre) {
    return MassConcentration.ofMilligramsPerLitre(milligramsPerLitre);
  }

  /**
   * Returns a mass concentration.
   *
   * @param gramsPerLitre the concentration in g/L
   * @return the value
   */
  public static MassConcentration gPerL(double gramsPerLitre) {
    return MassConcentration.ofGramsPerLitre(gramsPerLitre);
  }

  /**
   * Returns a mass concentration.
   *
   * @param gramsPerHectolitre the concentration in g/hL
   * @return the value
   */
  public static MassConcentration gPerHL(double gramsPerHectolitre) {
    return MassConcentration.ofGramsPerHectolitre(gramsPerHectolitre);
  }

  /**
   * Returns a mass concentration that a water report states in ppm.
   *
   * @param ppm the number of ppm, taken as mg/L
   * @return the value
   */
  public static MassConcentration ppmOfDiluteWater(double ppm) {
    return MassConcentration.ofPpmOfDiluteWater(ppm);
  }

  /**
   * Returns an amount concentration.
   *
   * @param molesPerLitre the concentration in mol/L
   * @return the value
   */
  public static AmountConcentration molPerL(double molesPerLitre) {
    return AmountConcentration.ofMolesPerLitre(molesPerLitre);
  }

  /**
   * Returns an amount concentration.
   *
   * @param millimolesPerLitre the concentration in mmol/L
   * @return the value
   */
  public static AmountConcentration mmolPerL(double millimolesPerLitre) {
    return AmountConcentration.ofMillimolesPerLitre(millimolesPerLitre);
  }

  /**
   * Returns a molality.
   *
   * @param molesPerKilogram the molality in mol per kg of water
   * @return the value
   */
  public static Molality molPerKg(double molesPerKilogram) {
    return Molality.ofMolesPerKilogram(molesPerKilogram);
  }

  /**
   * Returns a molality.
   *
   * @param millimolesPerKilogram the molality in mmol per kg of water
   * @return the value
   */
  public static Molality mmolPerKg(double millimolesPerKilogram) {
    return Molality.ofMillimolesPerKilogram(millimolesPerKilogram);
  }

  /**
   * Returns a charge concentration.
   *
   * @param milliequivalentsPerLitre the charge in mEq/L, with its sign
   * @return the value
   */
  public static ChargeConcentration mEqPerL(double milliequivalentsPerLitre) {
    return ChargeConcentration.ofMilliequivalentsPerLitre(milliequivalentsPerLitre);
  }

  /**
   * Returns a buffer capacity.
   *
   * @param milliequivalentsPerLitrePerPH the slope in mEq/L per pH
   * @return the value
   */
  public static BufferCapacity mEqPerLPerPH(double milliequivalentsPerLitrePerPH) {
    return BufferCapacity.ofMilliequivalentsPerLitrePerPH(milliequivalentsPerLitrePerPH);
  }

  /**
   * Returns a mass fraction.
   *
   * @param massPercent the per cent by mass, 0 to 100
   * @return the value
   */
  public static MassFraction massPercent(double massPercent) {
    return MassFraction.ofMassPercent(massPercent);
  }

  /**
   * Returns an absolute pressure.
   *
   * @param kilopascals the pressure in kPa
   * @return the value
   */
  public static Pressure kPa(double kilopascals) {
    return Pressure.ofKilopascals(kilopascals);
  }

  /**
   * Returns an absolute pressure.
   *
   * @param bars the pressure in bar
   * @return the value
   */
  public static Pressure bar(double bars) {
    return Pressure.ofBars(bars);
  }

  /**
   * Returns an absolute pressure.
   *
   * @param atmospheres the pressure in atm
   * @return the value
   */
  public static Pressure atm(double atmospheres) {
    return Pressure.ofAtmospheres(atmospheres);
  }

  /**
   * Returns an electric potential.
   *
   * @param millivolts the potential in mV, with its sign
   * @return the value
   */
  public static ElectricPotential mV(double millivolts) {
    return ElectricPotential.ofMillivolts(millivolts);
  }

  /**
   * Returns a hardness.
   *
   * @param degrees the hardness in °dH
   * @return the value
   */
  public static Hardness germanDegrees(double degrees) {
    return Hardness.ofGermanDegrees(degrees);
  }

  /**
   * Returns a hardness.
   *
   * @param degrees the hardness in °fH
   * @return the value
   */
  public static Hardness frenchDegrees(double degrees) {
    return Hardness.ofFrenchDegrees(degrees);
  }

  /**
   * Returns a hardness.
   *
   * @param degrees the hardness in °e
   * @return the value
   */
  public static Hardness englishDegrees(double degrees) {
    return Hardness.ofEnglishDegrees(degrees);
  }

  /**
   * Returns a hardness.
   *
   * @param grainsPerGallon the hardness in grains of CaCO3 per US gallon
   * @return the value
   */
  public static Hardness usGrainsPerGallon(double grainsPerGallon) {
    return Hardness.ofUsGrainsPerGallon(grainsPerGallon);
  }

  /**
   * Returns a hardness that a report states as calcium carbonate.
   *
   * @param reported the reported mass concentration
   * @return the hardness
   */
  public static Hardness hardnessAsCaCO3(MassConcentration reported) {
    return Hardness.fromCaCO3(reported);
  }

  /**
   * Returns an alkalinity that a report states as calcium carbonate, titrated to the usual pH 4.5.
   *
   * @param reported the reported mass concentration
   * @return the titration alkalinity to {@link TitrationAlkalinity#USUAL_END_POINT}
   */
  public static TitrationAlkalinity alkalinityAsCaCO3(MassConcentration reported) {
    return alkalinityAsCaCO3(reported, TitrationAlkalinity.USUAL_END_POINT);
  }

  /**
   * Returns an alkalinity that a report states as calcium carbonate, with its end point.
   *
   * @param reported the reported mass concentration
   * @param endPoint the pH that the titration ended at
   * @return the titration alkalinity
   */
  public static TitrationAlkalinity alkalinityAsCaCO3(MassConcentration reported, PH endPoint) {
    return TitrationAlkalinity.fromCaCO3(reported, endPoint);
  }

  /**
   * Returns a carbonate alkalinity that is stated as calcium carbonate.
   *
   * @param reported the stated mass concentration
   * @return the carbonate alkalinity, which has no end point
   */
  public static CarbonateAlkalinity carbonateAlkalinityAsCaCO3(MassConcentration reported) {
    return CarbonateAlkalinity.fromCaCO3(reported);
  }

  /**
   * Returns a titratable acidity stated as a mass concentration of an acid.
   *
   * @param concentration the concentration of the acid
   * @param basis the acid that it is stated as
   * @param endPoint the pH that the titration ends at
   * @return the titratable acidity
   */
  public static TitratableAcidity acidity(
      MassConcentration concentration, AcidBasis basis, PH endPoint) {
    return TitratableAcidity.from(concentration, basis, endPoint);
  }
}
