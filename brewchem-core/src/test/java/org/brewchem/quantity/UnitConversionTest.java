package org.brewchem.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every unit of every value: what goes in comes out, and nothing else gets in. */
class UnitConversionTest {

  private static final PH END_POINT = PH.of(8.2);
  private static final Density DENSITY = Density.ofGramsPerMillilitre(1.012);
  private static final AcidBasis INVENTED_ACID =
      new AcidBasis() {
        @Override
        public String name() {
          return "invented acid";
        }

        @Override
        public double gramsPerEquivalent() {
          return 83.7;
        }
      };

  private enum Sign {
    ANY,
    NOT_NEGATIVE,
    POSITIVE
  }

  private record Unit<Q>(String unit, Sign sign, DoubleFunction<Q> of, ToDoubleFunction<Q> in) {

    double thereAndBack(double value) {
      return in.applyAsDouble(of.apply(value));
    }

    @Override
    public String toString() {
      return unit;
    }
  }

  private static <Q> Unit<Q> any(String unit, DoubleFunction<Q> of, ToDoubleFunction<Q> in) {
    return new Unit<>(unit, Sign.ANY, of, in);
  }

  private static <Q> Unit<Q> notNegative(
      String unit, DoubleFunction<Q> of, ToDoubleFunction<Q> in) {
    return new Unit<>(unit, Sign.NOT_NEGATIVE, of, in);
  }

  private static <Q> Unit<Q> positive(String unit, DoubleFunction<Q> of, ToDoubleFunction<Q> in) {
    return new Unit<>(unit, Sign.POSITIVE, of, in);
  }

  static List<Unit<?>> units() {
    return List.of(
        notNegative("L", Volume::ofLitres, Volume::inLitres),
        notNegative("mL", Volume::ofMillilitres, Volume::inMillilitres),
        notNegative("hL", Volume::ofHectolitres, Volume::inHectolitres),
        notNegative("US gal", Volume::ofUsGallons, Volume::inUsGallons),
        notNegative("US bbl", Volume::ofUsBarrels, Volume::inUsBarrels),
        notNegative("g", Mass::ofGrams, Mass::inGrams),
        notNegative("mg", Mass::ofMilligrams, Mass::inMilligrams),
        notNegative("kg", Mass::ofKilograms, Mass::inKilograms),
        notNegative("lb", Mass::ofPounds, Mass::inPounds),
        notNegative("oz", Mass::ofOunces, Mass::inOunces),
        notNegative("mol", AmountOfSubstance::ofMoles, AmountOfSubstance::inMoles),
        notNegative("mmol", AmountOfSubstance::ofMillimoles, AmountOfSubstance::inMillimoles),
        positive("g/mol", MolarMass::ofGramsPerMole, MolarMass::inGramsPerMole),
        positive("kg/m3", Density::ofKilogramsPerCubicMetre, Density::inKilogramsPerCubicMetre),
        positive("kg/L", Density::ofKilogramsPerLitre, Density::inKilogramsPerLitre),
        positive("g/mL", Density::ofGramsPerMillilitre, Density::inGramsPerMillilitre),
        positive("SG 20/20", SpecificGravity::of, SpecificGravity::value),
        notNegative(
            "mg/L",
            MassConcentration::ofMilligramsPerLitre,
            MassConcentration::inMilligramsPerLitre),
        notNegative("g/L", MassConcentration::ofGramsPerLitre, MassConcentration::inGramsPerLitre),
        notNegative(
            "g/hL",
            MassConcentration::ofGramsPerHectolitre,
            MassConcentration::inGramsPerHectolitre),
        notNegative(
            "ppm", MassConcentration::ofPpmOfDiluteWater, MassConcentration::inMilligramsPerLitre),
        notNegative(
            "mol/L", AmountConcentration::ofMolesPerLitre, AmountConcentration::inMolesPerLitre),
        notNegative(
            "mmol/L",
            AmountConcentration::ofMillimolesPerLitre,
            AmountConcentration::inMillimolesPerLitre),
        notNegative("mol/kg", Molality::ofMolesPerKilogram, Molality::inMolesPerKilogram),
        notNegative(
            "mmol/kg", Molality::ofMillimolesPerKilogram, Molality::inMillimolesPerKilogram),
        any(
            "mEq/L",
            ChargeConcentration::ofMilliequivalentsPerLitre,
            ChargeConcentration::inMilliequivalentsPerLitre),
        any(
            "Eq/L",
            ChargeConcentration::ofEquivalentsPerLitre,
            ChargeConcentration::inEquivalentsPerLitre),
        notNegative(
            "mEq/L per pH",
            BufferCapacity::ofMilliequivalentsPerLitrePerPH,
            BufferCapacity::inMilliequivalentsPerLitrePerPH),
        notNegative("kPa", Pressure::ofKilopascals, Pressure::inKilopascals),
        notNegative("bar", Pressure::ofBars, Pressure::inBars),
        notNegative("atm", Pressure::ofAtmospheres, Pressure::inAtmospheres),
        notNegative(
            "µS/cm",
            Conductivity::ofMicrosiemensPerCentimetreAt25,
            Conductivity::inMicrosiemensPerCentimetreAt25),
        notNegative(
            "µS/cm",
            Conductivity::ofMicrosiemensPerCentimetreAt20,
            Conductivity::inMicrosiemensPerCentimetreAt20),
        notNegative("L/L", VolumeRatio::of, VolumeRatio::ratio),
        notNegative("mL/L", VolumeRatio::ofMillilitresPerLitre, VolumeRatio::inMillilitresPerLitre),
        notNegative(
            "mL/hL",
            VolumeRatio::ofMillilitresPerHectolitre,
            VolumeRatio::inMillilitresPerHectolitre),
        notNegative("g/L", Carbonation::ofGramsPerLitre, Carbonation::inGramsPerLitre),
        notNegative("volumes", Carbonation::ofVolumes, Carbonation::inVolumes),
        any("mV", ElectricPotential::ofMillivolts, ElectricPotential::inMillivolts),
        any("V", ElectricPotential::ofVolts, ElectricPotential::inVolts),
        any("K", TemperatureDifference::ofKelvin, TemperatureDifference::inKelvin),
        any("°C", TemperatureDifference::ofCelsiusDegrees, TemperatureDifference::inCelsiusDegrees),
        any(
            "°F",
            TemperatureDifference::ofFahrenheitDegrees,
            TemperatureDifference::inFahrenheitDegrees),
        notNegative(
            "mEq/L", Hardness::ofMilliequivalentsPerLitre, Hardness::inMilliequivalentsPerLitre),
        notNegative(
            "mg/L as CaCO3",
            Hardness::ofMilligramsPerLitreAsCaCO3,
            Hardness::inMilligramsPerLitreAsCaCO3),
        notNegative("mmol/L", Hardness::ofMillimolesPerLitre, Hardness::inMillimolesPerLitre),
        notNegative("°dH", Hardness::ofGermanDegrees, Hardness::inGermanDegrees),
        notNegative("°fH", Hardness::ofFrenchDegrees, Hardness::inFrenchDegrees),
        notNegative("°e", Hardness::ofEnglishDegrees, Hardness::inEnglishDegrees),
        notNegative("gr/US gal", Hardness::ofUsGrainsPerGallon, Hardness::inUsGrainsPerGallon),
        notNegative(
            "mEq/L",
            CarbonateAlkalinity::ofMilliequivalentsPerLitre,
            CarbonateAlkalinity::inMilliequivalentsPerLitre),
        notNegative(
            "mg/L as CaCO3",
            CarbonateAlkalinity::ofMilligramsPerLitreAsCaCO3,
            CarbonateAlkalinity::inMilligramsPerLitreAsCaCO3),
        notNegative(
            "mg/L as HCO3-",
            CarbonateAlkalinity::ofMilligramsPerLitreAsBicarbonate,
            CarbonateAlkalinity::inMilligramsPerLitreAsBicarbonate),
        notNegative(
            "mmol/L of acid",
            CarbonateAlkalinity::ofMillimolesOfAcidPerLitre,
            CarbonateAlkalinity::inMillimolesOfAcidPerLitre),
        notNegative(
            "°dH", CarbonateAlkalinity::ofGermanDegrees, CarbonateAlkalinity::inGermanDegrees),
        notNegative(
            "°fH", CarbonateAlkalinity::ofFrenchDegrees, CarbonateAlkalinity::inFrenchDegrees),
        notNegative(
            "°e", CarbonateAlkalinity::ofEnglishDegrees, CarbonateAlkalinity::inEnglishDegrees),
        notNegative(
            "gr/US gal",
            CarbonateAlkalinity::ofUsGrainsPerGallon,
            CarbonateAlkalinity::inUsGrainsPerGallon),
        any(
            "mEq/L",
            ResidualAlkalinity::ofMilliequivalentsPerLitre,
            ResidualAlkalinity::inMilliequivalentsPerLitre),
        any(
            "mg/L as CaCO3",
            ResidualAlkalinity::ofMilligramsPerLitreAsCaCO3,
            ResidualAlkalinity::inMilligramsPerLitreAsCaCO3),
        any(
            "mg/L as HCO3-",
            ResidualAlkalinity::ofMilligramsPerLitreAsBicarbonate,
            ResidualAlkalinity::inMilligramsPerLitreAsBicarbonate),
        any(
            "mmol/L of acid",
            ResidualAlkalinity::ofMillimolesOfAcidPerLitre,
            ResidualAlkalinity::inMillimolesOfAcidPerLitre),
        any("°dH", ResidualAlkalinity::ofGermanDegrees, ResidualAlkalinity::inGermanDegrees),
        any("°fH", ResidualAlkalinity::ofFrenchDegrees, ResidualAlkalinity::inFrenchDegrees),
        any("°e", ResidualAlkalinity::ofEnglishDegrees, ResidualAlkalinity::inEnglishDegrees),
        any(
            "gr/US gal",
            ResidualAlkalinity::ofUsGrainsPerGallon,
            ResidualAlkalinity::inUsGrainsPerGallon),
        any(
            "mEq/L",
            value -> TitrationAlkalinity.ofMilliequivalentsPerLitre(value, END_POINT),
            TitrationAlkalinity::inMilliequivalentsPerLitre),
        any(
            "mg/L as CaCO3",
            value -> TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(value, END_POINT),
            TitrationAlkalinity::inMilligramsPerLitreAsCaCO3),
        any(
            "mg/L as HCO3-",
            value -> TitrationAlkalinity.ofMilligramsPerLitreAsBicarbonate(value, END_POINT),
            TitrationAlkalinity::inMilligramsPerLitreAsBicarbonate),
        any(
            "mmol/L of acid",
            value -> TitrationAlkalinity.ofMillimolesOfAcidPerLitre(value, END_POINT),
            TitrationAlkalinity::inMillimolesOfAcidPerLitre),
        any(
            "°dH",
            value -> TitrationAlkalinity.ofGermanDegrees(value, END_POINT),
            TitrationAlkalinity::inGermanDegrees),
        any(
            "°fH",
            value -> TitrationAlkalinity.ofFrenchDegrees(value, END_POINT),
            TitrationAlkalinity::inFrenchDegrees),
        any(
            "°e",
            value -> TitrationAlkalinity.ofEnglishDegrees(value, END_POINT),
            TitrationAlkalinity::inEnglishDegrees),
        any(
            "gr/US gal",
            value -> TitrationAlkalinity.ofUsGrainsPerGallon(value, END_POINT),
            TitrationAlkalinity::inUsGrainsPerGallon),
        any(
            "mEq/L",
            value -> TitratableAcidity.ofMilliequivalentsPerLitre(value, END_POINT),
            TitratableAcidity::inMilliequivalentsPerLitre),
        any(
            "mL of 0.1 mol/L alkali per 100 mL",
            value ->
                TitratableAcidity.ofMillilitresOfDecimolarAlkaliPer100Millilitres(value, END_POINT),
            TitratableAcidity::inMillilitresOfDecimolarAlkaliPer100Millilitres),
        any(
            "g/L",
            value -> TitratableAcidity.ofGramsPerLitreAs(value, INVENTED_ACID, END_POINT),
            acidity -> acidity.inGramsPerLitreAs(INVENTED_ACID)),
        any(
            "g/100 mL",
            value -> TitratableAcidity.ofGramsPer100MillilitresAs(value, INVENTED_ACID, END_POINT),
            acidity -> acidity.inGramsPer100MillilitresAs(INVENTED_ACID)),
        any(
            "g/100 g",
            value ->
                TitratableAcidity.ofGramsPer100GramsAs(value, INVENTED_ACID, DENSITY, END_POINT),
            acidity -> acidity.inGramsPer100GramsAs(INVENTED_ACID, DENSITY)));
  }

  @Provide
  Arbitrary<Unit<?>> unit() {
    return Arbitraries.of(units());
  }

  @Provide
  Arbitrary<Double> number() {
    return Arbitraries.doubles().between(1e-9, 1e9).ofScale(12);
  }

  @Property
  void aNumberComesBackFromItsUnit(@ForAll("unit") Unit<?> unit, @ForAll("number") double number) {
    assertEquals(number, unit.thereAndBack(number), 1e-15 * number);
    if (unit.sign() == Sign.ANY) {
      assertEquals(-number, unit.thereAndBack(-number), 1e-15 * number);
    }
  }

  @Property
  void valuesAreEqualAndOrderedByTheirSize(
      @ForAll("unit") Unit<?> unit,
      @ForAll("number") double number,
      @ForAll("number") double other) {
    Object value = unit.of().apply(number);
    Object same = unit.of().apply(number);
    assertEquals(value, same);
    assertEquals(value.hashCode(), same.hashCode());
    assertEquals(value.toString(), same.toString());
    if (Math.abs(number - other) > 1e-12 * number) {
      assertNotEquals(value, unit.of().apply(other));
      assertEquals(Double.compare(number, other), compare(value, unit.of().apply(other)));
    }
    assertEquals(0, compare(value, same));
  }

  @SuppressWarnings("unchecked")
  private static int compare(Object one, Object other) {
    return ((Comparable<Object>) one).compareTo(other);
  }

  @ParameterizedTest
  @MethodSource("units")
  void hashCodesTellSizesApart(Unit<?> unit) {
    long different =
        IntStream.rangeClosed(1, 100)
            .map(i -> unit.of().apply(0.01 * i).hashCode())
            .distinct()
            .count();
    assertTrue(different > 95, different + " of 100");
  }

  @ParameterizedTest
  @MethodSource("units")
  void zeroIsNeverNegativeZero(Unit<?> unit) {
    if (unit.sign() == Sign.POSITIVE) {
      return;
    }
    assertEquals(0.0, unit.thereAndBack(0.0));
    assertEquals(0.0, unit.thereAndBack(-0.0));
    assertEquals(unit.of().apply(0.0), unit.of().apply(-0.0));
  }

  @ParameterizedTest
  @MethodSource("units")
  void whatIsNotFiniteIsRefused(Unit<?> unit) {
    for (double number :
        new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
      String message = refused(unit, number);
      assertTrue(message.contains(number + " " + unit.unit()), message);
    }
  }

  @ParameterizedTest
  @MethodSource("units")
  void whatIsTooSmallIsRefusedInTheUnitItWasStatedIn(Unit<?> unit) {
    if (unit.sign() != Sign.ANY) {
      String message = refused(unit, -3);
      assertTrue(message.contains("-3 " + unit.unit()), message);
      assertTrue(message.contains("is not possible"), message);
    }
    if (unit.sign() == Sign.POSITIVE) {
      assertTrue(refused(unit, 0).contains("more than 0 is allowed"));
    }
  }

  private static String refused(Unit<?> unit, double number) {
    return assertThrows(IllegalArgumentException.class, () -> unit.of().apply(number)).getMessage();
  }
}
