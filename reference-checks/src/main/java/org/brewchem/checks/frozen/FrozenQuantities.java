package org.brewchem.checks.frozen;

import org.brewchem.checks.CsvTable;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.ElectricPotential;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.SpecificGravity;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TemperatureDifference;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;

/** Conversions of quantities between their units. */
final class FrozenQuantities {

  private FrozenQuantities() {}

  static void compute(FrozenFigures figures) {
    for (CsvTable.Line line : CsvTable.read("frozen/quantities.csv", 48).lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      double number = line.number("number");
      switch (line.text("quantity")) {
        case "volume" -> volume(of, Volume.ofLitres(number));
        case "mass" -> mass(of, Mass.ofGrams(number));
        case "temperature" -> temperature(of, Temperature.ofCelsius(number));
        case "temperature difference" ->
            of.number("in °F", "°F", TemperatureDifference.ofKelvin(number).inFahrenheitDegrees());
        case "hardness" -> hardness(of, Hardness.ofMilliequivalentsPerLitre(number));
        case "carbonate alkalinity" ->
            carbonateAlkalinity(of, CarbonateAlkalinity.ofMilliequivalentsPerLitre(number));
        case "titration alkalinity" ->
            titrationAlkalinity(
                of, TitrationAlkalinity.ofMilliequivalentsPerLitre(number, PH.of(4.5)));
        case "residual alkalinity" ->
            residualAlkalinity(of, ResidualAlkalinity.ofMilliequivalentsPerLitre(number));
        case "titratable acidity" ->
            acidity(of, TitratableAcidity.ofMilliequivalentsPerLitre(number, PH.of(8.2)));
        case "mass concentration" ->
            massConcentration(of, MassConcentration.ofMilligramsPerLitre(number));
        case "amount concentration" ->
            amountConcentration(of, AmountConcentration.ofMillimolesPerLitre(number));
        case "density" -> density(of, Density.ofGramsPerMillilitre(number));
        case "pressure" -> pressure(of, Pressure.ofKilopascals(number));
        case "amount of substance" -> amount(of, AmountOfSubstance.ofMillimoles(number));
        case "mass fraction" -> massFraction(of, MassFraction.ofMassPercent(number));
        case "electric potential" ->
            of.number("in V", "V", ElectricPotential.ofMillivolts(number).inVolts());
        default -> throw new IllegalStateException(line.text("quantity"));
      }
    }
  }

  private static void volume(FrozenFigures.Of of, Volume volume) {
    of.number("in mL", "mL", volume.inMillilitres());
    of.number("in hL", "hL", volume.inHectolitres());
    of.number("in US gallons", "US gal", volume.inUsGallons());
    of.number("in US barrels", "US bbl", volume.inUsBarrels());
    of.number("back from US gallons", "L", Volume.ofUsGallons(volume.inUsGallons()).inLitres());
    of.number("back from US barrels", "L", Volume.ofUsBarrels(volume.inUsBarrels()).inLitres());
  }

  private static void mass(FrozenFigures.Of of, Mass mass) {
    of.number("in mg", "mg", mass.inMilligrams());
    of.number("in kg", "kg", mass.inKilograms());
    of.number("in pounds", "lb", mass.inPounds());
    of.number("in ounces", "oz", mass.inOunces());
    of.number("back from pounds", "g", Mass.ofPounds(mass.inPounds()).inGrams());
    of.number("back from ounces", "g", Mass.ofOunces(mass.inOunces()).inGrams());
    of.number(
        "volume at 1.21 g/mL",
        "mL",
        Density.ofGramsPerMillilitre(1.21).volumeOf(mass).inMillilitres());
    of.number(
        "amount of lactic acid",
        "mol",
        AmountOfSubstance.from(mass, Acid.LACTIC.molarMass()).inMoles());
  }

  private static void temperature(FrozenFigures.Of of, Temperature temperature) {
    of.number("in K", "K", temperature.inKelvin());
    of.number("in °F", "°F", temperature.inFahrenheit());
    of.number(
        "back from °F", "°C", Temperature.ofFahrenheit(temperature.inFahrenheit()).inCelsius());
  }

  private static void hardness(FrozenFigures.Of of, Hardness hardness) {
    of.number("as CaCO3", "mg/L", hardness.inMilligramsPerLitreAsCaCO3());
    of.number("in mmol/L", "mmol/L", hardness.inMillimolesPerLitre());
    of.number("in German degrees", "°dH", hardness.inGermanDegrees());
    of.number("in French degrees", "°fH", hardness.inFrenchDegrees());
    of.number("in English degrees", "°e", hardness.inEnglishDegrees());
    of.number("in US grains per gallon", "gpg", hardness.inUsGrainsPerGallon());
    of.number(
        "back from German degrees",
        "mEq/L",
        Hardness.ofGermanDegrees(hardness.inGermanDegrees()).inMilliequivalentsPerLitre());
    of.number(
        "back from English degrees",
        "mEq/L",
        Hardness.ofEnglishDegrees(hardness.inEnglishDegrees()).inMilliequivalentsPerLitre());
  }

  private static void carbonateAlkalinity(FrozenFigures.Of of, CarbonateAlkalinity alkalinity) {
    of.number("as CaCO3", "mg/L", alkalinity.inMilligramsPerLitreAsCaCO3());
    of.number("as bicarbonate", "mg/L", alkalinity.inMilligramsPerLitreAsBicarbonate());
    of.number("as acid", "mmol/L", alkalinity.inMillimolesOfAcidPerLitre());
    of.number("in German degrees", "°dH", alkalinity.inGermanDegrees());
    of.number("in French degrees", "°fH", alkalinity.inFrenchDegrees());
    of.number("in English degrees", "°e", alkalinity.inEnglishDegrees());
    of.number("in US grains per gallon", "gpg", alkalinity.inUsGrainsPerGallon());
  }

  private static void titrationAlkalinity(FrozenFigures.Of of, TitrationAlkalinity alkalinity) {
    of.number("as CaCO3", "mg/L", alkalinity.inMilligramsPerLitreAsCaCO3());
    of.number("as bicarbonate", "mg/L", alkalinity.inMilligramsPerLitreAsBicarbonate());
    of.number("as acid", "mmol/L", alkalinity.inMillimolesOfAcidPerLitre());
    of.number("in German degrees", "°dH", alkalinity.inGermanDegrees());
    of.number("in French degrees", "°fH", alkalinity.inFrenchDegrees());
    of.number("in English degrees", "°e", alkalinity.inEnglishDegrees());
    of.number("in US grains per gallon", "gpg", alkalinity.inUsGrainsPerGallon());
  }

  private static void residualAlkalinity(FrozenFigures.Of of, ResidualAlkalinity alkalinity) {
    of.number("as CaCO3", "mg/L", alkalinity.inMilligramsPerLitreAsCaCO3());
    of.number("as bicarbonate", "mg/L", alkalinity.inMilligramsPerLitreAsBicarbonate());
    of.number("as acid", "mmol/L", alkalinity.inMillimolesOfAcidPerLitre());
    of.number("in German degrees", "°dH", alkalinity.inGermanDegrees());
    of.number("in French degrees", "°fH", alkalinity.inFrenchDegrees());
    of.number("in English degrees", "°e", alkalinity.inEnglishDegrees());
    of.number("in US grains per gallon", "gpg", alkalinity.inUsGrainsPerGallon());
  }

  private static void acidity(FrozenFigures.Of of, TitratableAcidity acidity) {
    Density density = Density.ofGramsPerMillilitre(1.012);
    of.number(
        "in mL of 0.1 mol/L alkali for 100 mL",
        "mL",
        acidity.inMillilitresOfDecimolarAlkaliPer100Millilitres());
    Named.ACIDS.forEach(
        (name, acid) -> of.number("in g/L as " + name, "g/L", acidity.inGramsPerLitreAs(acid)));
    of.number("for 100 mL as lactic acid", "g", acidity.inGramsPer100MillilitresAs(Acid.LACTIC));
    of.number("for 100 g as lactic acid", "g", acidity.inGramsPer100GramsAs(Acid.LACTIC, density));
    of.number(
        "back from 100 g as lactic acid",
        "mEq/L",
        TitratableAcidity.ofGramsPer100GramsAs(
                acidity.inGramsPer100GramsAs(Acid.LACTIC, density),
                Acid.LACTIC,
                density,
                acidity.endPoint())
            .inMilliequivalentsPerLitre());
  }

  private static void massConcentration(FrozenFigures.Of of, MassConcentration concentration) {
    of.number("in g/L", "g/L", concentration.inGramsPerLitre());
    of.number("in g/hL", "g/hL", concentration.inGramsPerHectolitre());
    Named.IONS.forEach(
        (name, ion) ->
            of.number(
                "of " + name,
                "mmol/L",
                AmountConcentration.from(concentration, ion.molarMass()).inMillimolesPerLitre()));
    of.number(
        "alkalinity if as bicarbonate",
        "mEq/L",
        CarbonateAlkalinity.fromBicarbonate(concentration).inMilliequivalentsPerLitre());
    of.number(
        "alkalinity if as CaCO3",
        "mEq/L",
        CarbonateAlkalinity.fromCaCO3(concentration).inMilliequivalentsPerLitre());
    of.number(
        "hardness if as CaCO3",
        "mEq/L",
        Hardness.fromCaCO3(concentration).inMilliequivalentsPerLitre());
  }

  private static void amountConcentration(FrozenFigures.Of of, AmountConcentration concentration) {
    of.number("in mol/L", "mol/L", concentration.inMolesPerLitre());
    of.number("charge if divalent", "mEq/L", charge(concentration));
    of.number(
        "as lactic acid", "g/L", concentration.times(Acid.LACTIC.molarMass()).inGramsPerLitre());
    of.number(
        "molality at 0.998 kg/L",
        "mmol/kg",
        Molality.from(concentration, Density.ofKilogramsPerLitre(0.998)).inMillimolesPerKilogram());
  }

  private static double charge(AmountConcentration concentration) {
    return concentration.timesCharge(2).inMilliequivalentsPerLitre();
  }

  private static void density(FrozenFigures.Of of, Density density) {
    of.number("in kg/m3", "kg/m3", density.inKilogramsPerCubicMetre());
    of.number("specific gravity", "", SpecificGravity.from(density).value());
    of.number("mass of 3.3 L", "g", density.times(Volume.ofLitres(3.3)).inGrams());
  }

  private static void pressure(FrozenFigures.Of of, Pressure pressure) {
    of.number("in bar", "bar", pressure.inBars());
    of.number("in atm", "atm", pressure.inAtmospheres());
    of.number(
        "back from atm", "kPa", Pressure.ofAtmospheres(pressure.inAtmospheres()).inKilopascals());
  }

  private static void amount(FrozenFigures.Of of, AmountOfSubstance amount) {
    of.number("in mol", "mol", amount.inMoles());
    of.number("mass of lactic acid", "g", amount.times(Acid.LACTIC.molarMass()).inGrams());
    of.number(
        "volume at 0.1 mol/L",
        "mL",
        AmountConcentration.ofMolesPerLitre(0.1).volumeOf(amount).inMillilitres());
  }

  private static void massFraction(FrozenFigures.Of of, MassFraction fraction) {
    of.number("fraction", "", fraction.fraction());
    of.number("in 2.5 kg", "g", fraction.times(Mass.ofKilograms(2.5)).inGrams());
    of.number(
        "concentration at 1.15 g/mL",
        "g/L",
        fraction.times(Density.ofGramsPerMillilitre(1.15)).inGramsPerLitre());
  }
}
