package org.brewchem.units;

import static org.brewchem.quantity.Quantities.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.Chars;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.Quantities;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.TemperatureDifference;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TextTest {

  private record Basis(String name, double gramsPerEquivalent) implements AcidBasis {}

  private static final AcidBasis LACTIC = new Basis("lactic acid", 90.078);
  private static final AcidBasis TARTARIC = new Basis("tartaric acid", 75.0435);
  private static final List<AcidBasis> BASES = List.of(LACTIC, TARTARIC);

  @Test
  void everyValueIsReadInTheUnitsOfTheLaboratory() {
    assertEquals(pH(8.2), Text.parsePH("pH 8.2"));
    assertEquals(pH(8.2), Text.parsePH("8.2"));
    assertEquals(celsius(20), Text.parseTemperature("20 °C"));
    assertEquals(fahrenheit(68), Text.parseTemperature("68 °F"));
    assertEquals(kelvin(293.15), Text.parseTemperature("293.15 K"));
    assertEquals(TemperatureDifference.ofKelvin(-5), Text.parseTemperatureDifference("-5 K"));
    assertEquals(mL(14.62), Text.parseVolume("14.62 mL"));
    assertEquals(hL(20), Text.parseVolume("20 hL"));
    assertEquals(usBarrels(7), Text.parseVolume("7 US bbl"));
    assertEquals(g(0.4082), Text.parseMass("0.4082 g"));
    assertEquals(pounds(2), Text.parseMass("2 lb"));
    assertEquals(mmol(1.462), Text.parseAmountOfSubstance("1.462 mmol"));
    assertEquals(gPerMol(90.078), Text.parseMolarMass("90.078 g/mol"));
    assertEquals(gPerML(1.206), Text.parseDensity("1.206 g/mL"));
    assertEquals(kgPerM3(998.2), Text.parseDensity("998.2 kg/m3"));
    assertEquals(specificGravity(1.048), Text.parseSpecificGravity("1.048 SG 20/20"));
    assertEquals(massPercent(88), Text.parseMassFraction("88 % by mass"));
    assertEquals(massPercent(88), Text.parseMassFraction("0.88 g/g"));
    assertEquals(mgPerL(5.3), Text.parseMassConcentration("5.3 mg/L"));
    assertEquals(gPerHL(12), Text.parseMassConcentration("12 g/hL"));
    assertEquals(ppmOfDiluteWater(40), Text.parseMassConcentration("40 ppm of dilute water"));
    assertEquals(molPerL(0.1), Text.parseAmountConcentration("0.1 mol/L"));
    assertEquals(mmolPerKg(6), Text.parseMolality("6 mmol/kg"));
    assertEquals(mEqPerL(-1.4), Text.parseChargeConcentration("-1.4 mEq/L"));
    assertEquals(mEqPerLPerPH(12), Text.parseBufferCapacity("12 mEq/L per pH"));
    assertEquals(atm(1), Text.parsePressure("1 atm"));
    assertEquals(mV(-177.5), Text.parseElectricPotential("-177.5 mV"));
    assertEquals(germanDegrees(8), Text.parseHardness("8.0 °dH"));
    assertEquals(Hardness.ofMillimolesPerLitre(2), Text.parseHardness("2 mmol/L"));
    assertEquals(
        carbonateAlkalinityAsCaCO3(mgPerL(215)),
        Text.parseCarbonateAlkalinity("215 mg/L as CaCO3"));
    assertEquals(
        CarbonateAlkalinity.ofMillimolesOfAcidPerLitre(4.3),
        Text.parseCarbonateAlkalinity("4.3 mmol/L of acid"));
    assertEquals(ResidualAlkalinity.ofGermanDegrees(-2), Text.parseResidualAlkalinity("-2 °dH"));
    assertEquals(
        alkalinityAsCaCO3(mgPerL(215), pH(4.5)),
        Text.parseTitrationAlkalinity("215 mg/L as CaCO3, to pH 4.5"));
    assertEquals(
        acidity(gPerL(2.80), LACTIC, pH(8.2)),
        Text.parseTitratableAcidity("2.80 g/L as lactic acid, to pH 8.20", BASES));
    assertEquals(
        TitratableAcidity.ofGramsPer100MillilitresAs(0.27, TARTARIC, pH(7)),
        Text.parseTitratableAcidity("0.27 g/100 mL as tartaric acid, to pH 7", BASES));
    assertEquals(
        TitratableAcidity.ofMilliequivalentsPerLitre(31.1, pH(8.2)),
        Text.parseTitratableAcidity("31.1 mEq/L, to pH 8.2", BASES));
    assertEquals(
        TitratableAcidity.ofMillilitresOfDecimolarAlkaliPer100Millilitres(30, pH(8.2)),
        Text.parseTitratableAcidity("30 mL of 0.1 mol/L alkali per 100 mL, to pH 8.2", BASES));
  }

  @ParameterizedTest
  @CsvSource({"5, 5", "-0.25, -0.25", "0.0, 0", "007, 7", "1.5E-7, 1.5e-7", "2e+3, 2000", "-0, 0"})
  void numbersArePlainDecimals(String text, double value) {
    assertEquals(value, Text.parseNumber(text) + 0.0);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "-",
        ".5",
        "5.",
        "+5",
        "5,3",
        "1,000",
        "1.000,5",
        "1_000",
        "1 000",
        " 5",
        "5 ",
        "0x10",
        "0x1p3",
        "NaN",
        "Infinity",
        "-Infinity",
        "5d",
        "5f",
        "5e",
        "5e+",
        "1e2.5",
        "--5",
        "1.2.3",
        "٥",
        "５",
        "−5",
        "5\u00a0",
        "five",
        "1e400",
        "-1e400",
        "1e-400",
        "9e-400",
        "-0.9e-400",
        "5\n"
      })
  void anythingElseIsNoNumber(String text) {
    UnitTextException error = assertThrows(UnitTextException.class, () -> Text.parseNumber(text));
    assertEquals(text, error.text());
    assertTrue(error.position() >= 0 && error.position() <= text.length());
    assertFalse(error.allowed().isEmpty());
    assertTrue(error.getMessage().startsWith("\"" + text + "\", character "));
  }

  @Test
  void aCommaIsAnErrorThatSaysUseAPoint() {
    UnitTextException error =
        assertThrows(UnitTextException.class, () -> Text.parseMassConcentration("5,3 mg/L"));
    assertEquals(1, error.position());
    assertEquals(
        "\"5,3 mg/L\", character 2: a comma is not read; use a point, and no thousands separator",
        error.getMessage());
  }

  @Test
  void anUnknownUnitIsAnErrorThatListsTheKnownOnes() {
    UnitTextException error =
        assertThrows(UnitTextException.class, () -> Text.parseMassConcentration("5.3 mg/l"));
    assertEquals(4, error.position());
    assertEquals("allowed: mg/L, g/L, g/hL, µg/L, ppm of dilute water", error.allowed());
    assertEquals(
        "\"5.3 mg/l\", character 5: \"mg/l\" is not a unit of mass concentration; "
            + "allowed: mg/L, g/L, g/hL, µg/L, ppm of dilute water",
        error.getMessage());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      ignoreLeadingAndTrailingWhitespace = false,
      value = {
        "5.3|3", "5.3 |4", "5.3mg/L|3", "5.3  mg/L|4", " 5.3 mg/L|0", "5.3 mg/L |4",
        "5.3 ppm|4", "5.3 mmol/L|4", "5.3 mg/L as CaCO3|4", "5.3\tmg/L|3", "mg/L|0", "1 000 mg/L|2",
        "NaN mg/L|0", "5.3 MG/L|4", "5.3 mg / L|4"
      })
  void aConcentrationIsANumberOneSpaceAndItsUnit(String text, int position) {
    UnitTextException error =
        assertThrows(UnitTextException.class, () -> Text.parseMassConcentration(text));
    assertEquals(position, error.position(), error.getMessage());
  }

  @ParameterizedTest
  @ValueSource(strings = {"PH 8.2", "pH8.2", "pH  8.2", "pH 8.2 ", "pH", "pH ", "8.2 pH"})
  void aPHIsItsNameAndANumber(String text) {
    assertThrows(UnitTextException.class, () -> Text.parsePH(text));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      ignoreLeadingAndTrailingWhitespace = false,
      value = {
        "2.8 g/L as lactic acid|22",
        "2.8 g/L, to pH 8.2|4",
        "2.8 g/L as citric acid, to pH 8.2|4",
        "2.8 g/L as lactic acid, to 8.2|27",
        "2.8 g/L as lactic acid, to pH 8,2|31",
        "2.8 g/L as lactic acid, to pH 8.2 |33",
        "2.8 g/L as lactic acid to pH 8.2|32",
        "2.8 g/100 g as lactic acid, to pH 8.2|4",
        "2.8, to pH 8.2|3",
        "2.8|3"
      })
  void anAcidityNeedsItsBasisAndItsEndPoint(String text, int position) {
    UnitTextException error =
        assertThrows(UnitTextException.class, () -> Text.parseTitratableAcidity(text, BASES));
    assertEquals(position, error.position(), error.getMessage());
  }

  @Test
  void anEndPointWithoutAUnitIsNoUnit() {
    UnitTextException error =
        assertThrows(
            UnitTextException.class, () -> Text.parseTitratableAcidity("2.8 , to pH 8.2", BASES));
    assertEquals(4, error.position());
    assertTrue(
        error.getMessage().contains("\", to pH 8.2\" is not a unit of titratable acidity"),
        error.getMessage());
  }

  @Test
  void aNumberThatTheValueDoesNotAllowIsRefusedByTheValue() {
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> Text.parseVolume("-3 mL"));
    assertEquals("volume: -3 mL is not possible; 0 or more is allowed", error.getMessage());
    assertThrows(IllegalArgumentException.class, () -> Text.parsePH("pH 18"));
  }

  @Test
  void theDefaultLocaleChangesNothing() {
    Locale before = Locale.getDefault();
    try {
      for (String tag : List.of("de-DE", "tr-TR", "ar-SA-u-nu-arab", "th-TH-u-nu-thai")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertEquals(mgPerL(1234.5), Text.parseMassConcentration("1234.5 mg/L"));
        assertEquals("1.2345 g/L", mgPerL(1234.5).toString());
        assertEquals(
            "1234.50 mg/L",
            LabUnits.MASS_CONCENTRATION.named("mg/L").textWithDecimals(mgPerL(1234.5), 2));
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  private record Printed(Function<Double, Object> make, Function<String, Object> read) {}

  private static final List<Printed> UNSIGNED =
      List.of(
          new Printed(Quantities::litres, Text::parseVolume),
          new Printed(Quantities::g, Text::parseMass),
          new Printed(Quantities::mol, Text::parseAmountOfSubstance),
          new Printed(Quantities::gPerMol, Text::parseMolarMass),
          new Printed(Quantities::kgPerM3, Text::parseDensity),
          new Printed(Quantities::specificGravity, Text::parseSpecificGravity),
          new Printed(Quantities::mgPerL, Text::parseMassConcentration),
          new Printed(Quantities::mmolPerL, Text::parseAmountConcentration),
          new Printed(Quantities::mmolPerKg, Text::parseMolality),
          new Printed(BufferCapacity::ofMilliequivalentsPerLitrePerPH, Text::parseBufferCapacity),
          new Printed(Quantities::kPa, Text::parsePressure),
          new Printed(Quantities::kelvin, Text::parseTemperature),
          new Printed(number -> massPercent(number / 1e7), Text::parseMassFraction),
          new Printed(number -> pH(number / 1e8), Text::parsePH),
          new Printed(Quantities::germanDegrees, Text::parseHardness),
          new Printed(CarbonateAlkalinity::ofGermanDegrees, Text::parseCarbonateAlkalinity));

  private static final List<Printed> SIGNED =
      List.of(
          new Printed(Quantities::mEqPerL, Text::parseChargeConcentration),
          new Printed(Quantities::mV, Text::parseElectricPotential),
          new Printed(TemperatureDifference::ofKelvin, Text::parseTemperatureDifference),
          new Printed(ResidualAlkalinity::ofGermanDegrees, Text::parseResidualAlkalinity),
          new Printed(
              number -> TitrationAlkalinity.ofGermanDegrees(number, pH(4.35)),
              Text::parseTitrationAlkalinity),
          new Printed(
              number -> TitratableAcidity.ofMilliequivalentsPerLitre(number, pH(8.2)),
              text -> Text.parseTitratableAcidity(text, BASES)));

  @Provide
  Arbitrary<Printed> unsigned() {
    return Arbitraries.of(UNSIGNED);
  }

  @Provide
  Arbitrary<Printed> signed() {
    return Arbitraries.of(SIGNED);
  }

  @Provide
  Arbitrary<Double> size() {
    return Arbitraries.doubles().between(1e-9, 1e9).ofScale(12);
  }

  @Property
  void whatIsPrintedReadsBack(@ForAll("unsigned") Printed printed, @ForAll("size") double number) {
    assertReadsBack(printed, number);
  }

  @Property
  void whatIsPrintedReadsBackWithItsSign(
      @ForAll("signed") Printed printed, @ForAll("size") double number) {
    assertReadsBack(printed, number);
    assertReadsBack(printed, -number);
  }

  private static void assertReadsBack(Printed printed, double number) {
    String text = printed.make().apply(number).toString();
    assertEquals(text, printed.read().apply(text).toString());
  }

  @Property
  void textThatIsNoValueFailsWithItsPlace(
      @ForAll @Chars({'0', '5', '.', ',', '-', 'e', ' ', 'm', 'g', '/', 'L'}) String text) {
    try {
      assertTrue(Text.parseMassConcentration(text).inMilligramsPerLitre() >= 0);
    } catch (UnitTextException error) {
      assertEquals(text, error.text());
      assertTrue(error.position() >= 0 && error.position() <= text.length());
    } catch (IllegalArgumentException error) {
      assertTrue(text.startsWith("-"), text);
    }
  }

  /** The micro sign and the Greek letter look alike. */
  @Test
  void theMicroSignMayBeTheGreekLetter() {
    assertEquals(
        Text.parseMassConcentration("12 \u00B5g/L"), Text.parseMassConcentration("12 \u03BCg/L"));
    assertEquals(
        580,
        Text.parseConductivity("580 \u03BCS/cm at 25 °C").inMicrosiemensPerCentimetreAt25(),
        1e-9);
  }

  /** 5e98 hL are 5e100 L, which no text of a volume could be read back from. */
  @Test
  void aNumberTooLargeInTheUnitItIsHeldInIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> Text.parseVolume("5e98 hL"));
    assertEquals(5e99, Text.parseVolume("5e97 hL").inLitres(), 1e90);
  }
}
