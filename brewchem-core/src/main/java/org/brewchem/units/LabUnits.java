package org.brewchem.units;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.brewchem.internal.Excerpt;
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
 * The units of the laboratory and the trade, by what they measure. Every symbol has one spelling.
 * The basis "as CaCO3", "as HCO3-" or "as" an acid is part of the symbol where the value has one.
 */
public final class LabUnits {

  /** pH, whose name stands before the number: {@code pH 8.2}. */
  public static final UnitSet<PH> PH =
      UnitSet.of(
          "pH",
          "pH",
          List.of(
              LabUnit.beforeTheNumber(
                  "pH", org.brewchem.quantity.PH::of, org.brewchem.quantity.PH::value)));

  /** Units of a temperature: {@code °C}, {@code K}, {@code °F}. */
  public static final UnitSet<Temperature> TEMPERATURE =
      UnitSet.of(
          "temperature",
          "°C",
          List.of(
              LabUnit.of("°C", Temperature::ofCelsius, Temperature::inCelsius),
              LabUnit.of("K", Temperature::ofKelvin, Temperature::inKelvin),
              LabUnit.of("°F", Temperature::ofFahrenheit, Temperature::inFahrenheit)));

  /** Units of a difference of temperatures: {@code K}. */
  public static final UnitSet<TemperatureDifference> TEMPERATURE_DIFFERENCE =
      UnitSet.of(
          "temperature difference",
          "K",
          List.of(
              LabUnit.of("K", TemperatureDifference::ofKelvin, TemperatureDifference::inKelvin)));

  /** Units of a volume: {@code mL}, {@code L}, {@code hL}, {@code US gal}, {@code US bbl}. */
  public static final UnitSet<Volume> VOLUME =
      UnitSet.of(
          "volume",
          "L",
          List.of(
              LabUnit.of("mL", Volume::ofMillilitres, Volume::inMillilitres),
              LabUnit.of("L", Volume::ofLitres, Volume::inLitres),
              LabUnit.of("hL", Volume::ofHectolitres, Volume::inHectolitres),
              LabUnit.of("US gal", Volume::ofUsGallons, Volume::inUsGallons),
              LabUnit.of("US bbl", Volume::ofUsBarrels, Volume::inUsBarrels)));

  /** Units of a volume ratio: {@code mL/hL}, {@code mL/L}, {@code L/L}. */
  public static final UnitSet<VolumeRatio> VOLUME_RATIO =
      UnitSet.of(
          "volume ratio",
          "L/L",
          List.of(
              LabUnit.of(
                  "mL/hL",
                  VolumeRatio::ofMillilitresPerHectolitre,
                  VolumeRatio::inMillilitresPerHectolitre),
              LabUnit.of(
                  "mL/L", VolumeRatio::ofMillilitresPerLitre, VolumeRatio::inMillilitresPerLitre),
              LabUnit.of("L/L", VolumeRatio::of, VolumeRatio::ratio)));

  /** Units of a mass: {@code mg}, {@code g}, {@code kg}, {@code lb}, {@code oz}. */
  public static final UnitSet<Mass> MASS =
      UnitSet.of(
          "mass",
          "g",
          List.of(
              LabUnit.of("mg", Mass::ofMilligrams, Mass::inMilligrams),
              LabUnit.of("g", Mass::ofGrams, Mass::inGrams),
              LabUnit.of("kg", Mass::ofKilograms, Mass::inKilograms),
              LabUnit.of("lb", Mass::ofPounds, Mass::inPounds),
              LabUnit.of("oz", Mass::ofOunces, Mass::inOunces)));

  /** Units of an amount of substance: {@code mmol}, {@code mol}. */
  public static final UnitSet<AmountOfSubstance> AMOUNT_OF_SUBSTANCE =
      UnitSet.of(
          "amount of substance",
          "mol",
          List.of(
              LabUnit.of("mmol", AmountOfSubstance::ofMillimoles, AmountOfSubstance::inMillimoles),
              LabUnit.of("mol", AmountOfSubstance::ofMoles, AmountOfSubstance::inMoles)));

  /** Units of a molar mass: {@code g/mol}. */
  public static final UnitSet<MolarMass> MOLAR_MASS =
      UnitSet.of(
          "molar mass",
          "g/mol",
          List.of(LabUnit.of("g/mol", MolarMass::ofGramsPerMole, MolarMass::inGramsPerMole)));

  /** Units of a density: {@code g/mL}, {@code kg/L}, {@code kg/m3}. */
  public static final UnitSet<Density> DENSITY =
      UnitSet.of(
          "density",
          "kg/m3",
          List.of(
              LabUnit.of("g/mL", Density::ofGramsPerMillilitre, Density::inGramsPerMillilitre),
              LabUnit.of("kg/L", Density::ofKilogramsPerLitre, Density::inKilogramsPerLitre),
              LabUnit.of(
                  "kg/m3", Density::ofKilogramsPerCubicMetre, Density::inKilogramsPerCubicMetre)));

  /** Units of a specific gravity: {@code SG 20/20}. */
  public static final UnitSet<SpecificGravity> SPECIFIC_GRAVITY =
      UnitSet.of(
          "specific gravity",
          "SG 20/20",
          List.of(LabUnit.of("SG 20/20", SpecificGravity::of, SpecificGravity::value)));

  /** Units of a mass fraction: {@code % by mass}, {@code g/g}. */
  public static final UnitSet<MassFraction> MASS_FRACTION =
      UnitSet.of(
          "mass fraction",
          "g/g",
          List.of(
              LabUnit.of("% by mass", MassFraction::ofMassPercent, MassFraction::inMassPercent),
              LabUnit.of("g/g", MassFraction::of, MassFraction::fraction)));

  /**
   * Units of a mass concentration: {@code mg/L}, {@code g/L}, {@code g/hL}, {@code µg/L}, {@code
   * ppm of dilute water}.
   */
  public static final UnitSet<MassConcentration> MASS_CONCENTRATION =
      UnitSet.of(
          "mass concentration",
          "mg/L",
          List.of(
              LabUnit.of(
                  "mg/L",
                  MassConcentration::ofMilligramsPerLitre,
                  MassConcentration::inMilligramsPerLitre),
              LabUnit.of(
                  "g/L", MassConcentration::ofGramsPerLitre, MassConcentration::inGramsPerLitre),
              LabUnit.of(
                  "g/hL",
                  MassConcentration::ofGramsPerHectolitre,
                  MassConcentration::inGramsPerHectolitre),
              LabUnit.of(
                  "µg/L",
                  number -> MassConcentration.ofMilligramsPerLitre(number / 1000),
                  held -> held.inMilligramsPerLitre() * 1000),
              LabUnit.of(
                  "ppm of dilute water",
                  MassConcentration::ofPpmOfDiluteWater,
                  MassConcentration::inMilligramsPerLitre)));

  /** Units of an amount concentration: {@code mmol/L}, {@code mol/L}. */
  public static final UnitSet<AmountConcentration> AMOUNT_CONCENTRATION =
      UnitSet.of(
          "amount concentration",
          "mol/L",
          List.of(
              LabUnit.of(
                  "mmol/L",
                  AmountConcentration::ofMillimolesPerLitre,
                  AmountConcentration::inMillimolesPerLitre),
              LabUnit.of(
                  "mol/L",
                  AmountConcentration::ofMolesPerLitre,
                  AmountConcentration::inMolesPerLitre)));

  /** Units of a molality, per kg of water: {@code mmol/kg}, {@code mol/kg}. */
  public static final UnitSet<Molality> MOLALITY =
      UnitSet.of(
          "molality",
          "mol/kg",
          List.of(
              LabUnit.of(
                  "mmol/kg", Molality::ofMillimolesPerKilogram, Molality::inMillimolesPerKilogram),
              LabUnit.of("mol/kg", Molality::ofMolesPerKilogram, Molality::inMolesPerKilogram)));

  /** Units of a charge concentration: {@code mEq/L}, {@code Eq/L}. */
  public static final UnitSet<ChargeConcentration> CHARGE_CONCENTRATION =
      UnitSet.of(
          "charge concentration",
          "mEq/L",
          List.of(
              LabUnit.of(
                  "mEq/L",
                  ChargeConcentration::ofMilliequivalentsPerLitre,
                  ChargeConcentration::inMilliequivalentsPerLitre),
              LabUnit.of(
                  "Eq/L",
                  ChargeConcentration::ofEquivalentsPerLitre,
                  ChargeConcentration::inEquivalentsPerLitre)));

  /** Units of a buffer capacity: {@code mEq/L per pH}. */
  public static final UnitSet<BufferCapacity> BUFFER_CAPACITY =
      UnitSet.of(
          "buffer capacity",
          "mEq/L per pH",
          List.of(
              LabUnit.of(
                  "mEq/L per pH",
                  BufferCapacity::ofMilliequivalentsPerLitrePerPH,
                  BufferCapacity::inMilliequivalentsPerLitrePerPH)));

  /** Units of an absolute pressure: {@code kPa}, {@code bar}, {@code atm}. */
  public static final UnitSet<Pressure> PRESSURE =
      UnitSet.of(
          "pressure",
          "kPa",
          List.of(
              LabUnit.of("kPa", Pressure::ofKilopascals, Pressure::inKilopascals),
              LabUnit.of("bar", Pressure::ofBars, Pressure::inBars),
              LabUnit.of("atm", Pressure::ofAtmospheres, Pressure::inAtmospheres)));

  /** Units of a conductivity: {@code µS/cm at 25 °C}, {@code µS/cm at 20 °C}. */
  public static final UnitSet<Conductivity> CONDUCTIVITY =
      UnitSet.of(
          "conductivity",
          "µS/cm at 25 °C",
          List.of(
              LabUnit.of(
                  "µS/cm at 25 °C",
                  Conductivity::ofMicrosiemensPerCentimetreAt25,
                  Conductivity::inMicrosiemensPerCentimetreAt25),
              LabUnit.of(
                  "µS/cm at 20 °C",
                  Conductivity::ofMicrosiemensPerCentimetreAt20,
                  Conductivity::inMicrosiemensPerCentimetreAt20)));

  /** Units of a carbonation: {@code g/L of CO2}, {@code volumes of CO2}. */
  public static final UnitSet<Carbonation> CARBONATION =
      UnitSet.of(
          "carbonation",
          "g/L of CO2",
          List.of(
              LabUnit.of("g/L of CO2", Carbonation::ofGramsPerLitre, Carbonation::inGramsPerLitre),
              LabUnit.of("volumes of CO2", Carbonation::ofVolumes, Carbonation::inVolumes)));

  /** Units of an electric potential: {@code mV}, {@code V}. */
  public static final UnitSet<ElectricPotential> ELECTRIC_POTENTIAL =
      UnitSet.of(
          "electric potential",
          "mV",
          List.of(
              LabUnit.of("mV", ElectricPotential::ofMillivolts, ElectricPotential::inMillivolts),
              LabUnit.of("V", ElectricPotential::ofVolts, ElectricPotential::inVolts)));

  /**
   * Units of a hardness: {@code mg/L as CaCO3}, {@code mEq/L}, {@code mmol/L}, {@code °dH}, {@code
   * °fH}, {@code °e}, {@code gr/US gal}.
   */
  public static final UnitSet<Hardness> HARDNESS =
      UnitSet.of(
          "hardness",
          "mEq/L",
          List.of(
              LabUnit.of(
                  "mg/L as CaCO3",
                  Hardness::ofMilligramsPerLitreAsCaCO3,
                  Hardness::inMilligramsPerLitreAsCaCO3),
              LabUnit.of(
                  "mEq/L",
                  Hardness::ofMilliequivalentsPerLitre,
                  Hardness::inMilliequivalentsPerLitre),
              LabUnit.of("mmol/L", Hardness::ofMillimolesPerLitre, Hardness::inMillimolesPerLitre),
              LabUnit.of("°dH", Hardness::ofGermanDegrees, Hardness::inGermanDegrees),
              LabUnit.of("°fH", Hardness::ofFrenchDegrees, Hardness::inFrenchDegrees),
              LabUnit.of("°e", Hardness::ofEnglishDegrees, Hardness::inEnglishDegrees),
              LabUnit.of(
                  "gr/US gal", Hardness::ofUsGrainsPerGallon, Hardness::inUsGrainsPerGallon)));

  /**
   * Units of a carbonate alkalinity: {@code mg/L as CaCO3}, {@code mg/L as HCO3-}, {@code mEq/L},
   * {@code mmol/L of acid}, {@code °dH}, {@code °fH}, {@code °e}, {@code gr/US gal}.
   */
  public static final UnitSet<CarbonateAlkalinity> CARBONATE_ALKALINITY =
      UnitSet.of(
          "carbonate alkalinity",
          "mEq/L",
          List.of(
              LabUnit.of(
                  "mg/L as CaCO3",
                  CarbonateAlkalinity::ofMilligramsPerLitreAsCaCO3,
                  CarbonateAlkalinity::inMilligramsPerLitreAsCaCO3),
              LabUnit.of(
                  "mg/L as HCO3-",
                  CarbonateAlkalinity::ofMilligramsPerLitreAsBicarbonate,
                  CarbonateAlkalinity::inMilligramsPerLitreAsBicarbonate),
              LabUnit.of(
                  "mEq/L",
                  CarbonateAlkalinity::ofMilliequivalentsPerLitre,
                  CarbonateAlkalinity::inMilliequivalentsPerLitre),
              LabUnit.of(
                  "mmol/L of acid",
                  CarbonateAlkalinity::ofMillimolesOfAcidPerLitre,
                  CarbonateAlkalinity::inMillimolesOfAcidPerLitre),
              LabUnit.of(
                  "°dH",
                  CarbonateAlkalinity::ofGermanDegrees,
                  CarbonateAlkalinity::inGermanDegrees),
              LabUnit.of(
                  "°fH",
                  CarbonateAlkalinity::ofFrenchDegrees,
                  CarbonateAlkalinity::inFrenchDegrees),
              LabUnit.of(
                  "°e",
                  CarbonateAlkalinity::ofEnglishDegrees,
                  CarbonateAlkalinity::inEnglishDegrees),
              LabUnit.of(
                  "gr/US gal",
                  CarbonateAlkalinity::ofUsGrainsPerGallon,
                  CarbonateAlkalinity::inUsGrainsPerGallon)));

  /**
   * Units of a residual alkalinity: {@code mg/L as CaCO3}, {@code mg/L as HCO3-}, {@code mEq/L},
   * {@code mmol/L of acid}, {@code °dH}, {@code °fH}, {@code °e}, {@code gr/US gal}.
   */
  public static final UnitSet<ResidualAlkalinity> RESIDUAL_ALKALINITY =
      UnitSet.of(
          "residual alkalinity",
          "mEq/L",
          List.of(
              LabUnit.of(
                  "mg/L as CaCO3",
                  ResidualAlkalinity::ofMilligramsPerLitreAsCaCO3,
                  ResidualAlkalinity::inMilligramsPerLitreAsCaCO3),
              LabUnit.of(
                  "mg/L as HCO3-",
                  ResidualAlkalinity::ofMilligramsPerLitreAsBicarbonate,
                  ResidualAlkalinity::inMilligramsPerLitreAsBicarbonate),
              LabUnit.of(
                  "mEq/L",
                  ResidualAlkalinity::ofMilliequivalentsPerLitre,
                  ResidualAlkalinity::inMilliequivalentsPerLitre),
              LabUnit.of(
                  "mmol/L of acid",
                  ResidualAlkalinity::ofMillimolesOfAcidPerLitre,
                  ResidualAlkalinity::inMillimolesOfAcidPerLitre),
              LabUnit.of(
                  "°dH", ResidualAlkalinity::ofGermanDegrees, ResidualAlkalinity::inGermanDegrees),
              LabUnit.of(
                  "°fH", ResidualAlkalinity::ofFrenchDegrees, ResidualAlkalinity::inFrenchDegrees),
              LabUnit.of(
                  "°e", ResidualAlkalinity::ofEnglishDegrees, ResidualAlkalinity::inEnglishDegrees),
              LabUnit.of(
                  "gr/US gal",
                  ResidualAlkalinity::ofUsGrainsPerGallon,
                  ResidualAlkalinity::inUsGrainsPerGallon)));

  /**
   * Units of a titration alkalinity, each with its end point: {@code mg/L as CaCO3}, {@code mg/L as
   * HCO3-}, {@code mEq/L}, {@code mmol/L of acid}, {@code °dH}, {@code °fH}, {@code °e}, {@code
   * gr/US gal}, followed by such as {@code , to pH 4.5}.
   */
  public static final EndPointUnits<TitrationAlkalinity> TITRATION_ALKALINITY =
      new EndPointUnits<>(LabUnits::titrationAlkalinity, TitrationAlkalinity::endPoint);

  private LabUnits() {}

  /**
   * Returns the units of a titratable acidity, each with its end point: {@code mEq/L}, {@code mL of
   * 0.1 mol/L alkali per 100 mL}, and for each acid such as {@code g/L as lactic acid} and {@code
   * g/100 mL as lactic acid}, followed by such as {@code , to pH 8.2}. An acidity in g/100 g needs
   * a density and is not read from text.
   *
   * @param bases the acids that an acidity may be stated as, with names that differ
   * @return the units
   * @throws IllegalArgumentException if two of the acids have the same name
   */
  public static EndPointUnits<TitratableAcidity> acidity(Collection<? extends AcidBasis> bases) {
    Objects.requireNonNull(bases, "bases");
    List<AcidBasis> allowed = List.copyOf(bases);
    Set<String> names = new HashSet<>();
    for (AcidBasis basis : allowed) {
      if (!names.add(basis.name())) {
        throw new IllegalArgumentException(
            "acids: two are called \"" + Excerpt.of(basis.name()) + "\"; each needs its own name");
      }
    }
    return new EndPointUnits<>(endPoint -> acidity(allowed, endPoint), TitratableAcidity::endPoint);
  }

  private static UnitSet<TitratableAcidity> acidity(List<AcidBasis> bases, PH endPoint) {
    List<LabUnit<TitratableAcidity>> units = new ArrayList<>();
    units.add(
        acidityUnit(
            "mEq/L",
            endPoint,
            TitratableAcidity::ofMilliequivalentsPerLitre,
            TitratableAcidity::inMilliequivalentsPerLitre));
    units.add(
        acidityUnit(
            "mL of 0.1 mol/L alkali per 100 mL",
            endPoint,
            TitratableAcidity::ofMillilitresOfDecimolarAlkaliPer100Millilitres,
            TitratableAcidity::inMillilitresOfDecimolarAlkaliPer100Millilitres));
    for (AcidBasis basis : bases) {
      units.add(
          acidityUnit(
              "g/L as " + basis.name(),
              endPoint,
              (number, to) -> TitratableAcidity.ofGramsPerLitreAs(number, basis, to),
              acidity -> acidity.inGramsPerLitreAs(basis)));
      units.add(
          acidityUnit(
              "g/100 mL as " + basis.name(),
              endPoint,
              (number, to) -> TitratableAcidity.ofGramsPer100MillilitresAs(number, basis, to),
              acidity -> acidity.inGramsPer100MillilitresAs(basis)));
    }
    return UnitSet.of("titratable acidity", EndPointUnits.symbol("mEq/L", endPoint), units);
  }

  private static LabUnit<TitratableAcidity> acidityUnit(
      String symbol,
      PH endPoint,
      BiFunction<Double, PH, TitratableAcidity> of,
      ToDoubleFunction<TitratableAcidity> in) {
    return toEndPoint(symbol, endPoint, of, in, TitratableAcidity::endPoint);
  }

  private static UnitSet<TitrationAlkalinity> titrationAlkalinity(PH endPoint) {
    return UnitSet.of(
        "titration alkalinity",
        EndPointUnits.symbol("mEq/L", endPoint),
        List.of(
            alkalinityUnit(
                "mg/L as CaCO3",
                endPoint,
                TitrationAlkalinity::ofMilligramsPerLitreAsCaCO3,
                TitrationAlkalinity::inMilligramsPerLitreAsCaCO3),
            alkalinityUnit(
                "mg/L as HCO3-",
                endPoint,
                TitrationAlkalinity::ofMilligramsPerLitreAsBicarbonate,
                TitrationAlkalinity::inMilligramsPerLitreAsBicarbonate),
            alkalinityUnit(
                "mEq/L",
                endPoint,
                TitrationAlkalinity::ofMilliequivalentsPerLitre,
                TitrationAlkalinity::inMilliequivalentsPerLitre),
            alkalinityUnit(
                "mmol/L of acid",
                endPoint,
                TitrationAlkalinity::ofMillimolesOfAcidPerLitre,
                TitrationAlkalinity::inMillimolesOfAcidPerLitre),
            alkalinityUnit(
                "°dH",
                endPoint,
                TitrationAlkalinity::ofGermanDegrees,
                TitrationAlkalinity::inGermanDegrees),
            alkalinityUnit(
                "°fH",
                endPoint,
                TitrationAlkalinity::ofFrenchDegrees,
                TitrationAlkalinity::inFrenchDegrees),
            alkalinityUnit(
                "°e",
                endPoint,
                TitrationAlkalinity::ofEnglishDegrees,
                TitrationAlkalinity::inEnglishDegrees),
            alkalinityUnit(
                "gr/US gal",
                endPoint,
                TitrationAlkalinity::ofUsGrainsPerGallon,
                TitrationAlkalinity::inUsGrainsPerGallon)));
  }

  private static LabUnit<TitrationAlkalinity> alkalinityUnit(
      String symbol,
      PH endPoint,
      BiFunction<Double, PH, TitrationAlkalinity> of,
      ToDoubleFunction<TitrationAlkalinity> in) {
    return toEndPoint(symbol, endPoint, of, in, TitrationAlkalinity::endPoint);
  }

  private static <Q> LabUnit<Q> toEndPoint(
      String symbol,
      PH endPoint,
      BiFunction<Double, PH, Q> of,
      ToDoubleFunction<Q> in,
      Function<Q, PH> endPointOf) {
    String whole = EndPointUnits.symbol(symbol, endPoint);
    return LabUnit.of(
        whole,
        number -> of.apply(number, endPoint),
        value -> {
          PH found = endPointOf.apply(value);
          if (!found.equals(endPoint)) {
            throw new IllegalArgumentException(
                "a value to "
                    + PH.exact(found)
                    + " cannot be stated in \""
                    + whole
                    + "\"; it is stated to its own end point");
          }
          return in.applyAsDouble(value);
        });
  }
}
