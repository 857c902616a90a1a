package org.brewchem.quantity;

import static org.brewchem.quantity.Quantities.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

/** The size of each unit, as its definition states it. */
class UnitDefinitionTest {

  @Test
  void metricVolumesAreDecimal() {
    assertEquals(0.01462, Volume.ofMillilitres(14.62).inLitres());
    assertEquals(2000, Volume.ofHectolitres(20).inLitres());
  }

  /**
   * US gallon of 231 cubic inches; beer barrel of 31 gallons: NIST Handbook 44, appendix C, from
   * memory.
   */
  @Test
  void usVolumesFollowTheCubicInch() {
    assertEquals(231 * Math.pow(0.254, 3), Volume.ofUsGallons(1).inLitres(), 1e-12);
    assertEquals(117.347765304, Volume.ofUsBarrels(1).inLitres(), 1e-12);
    assertEquals(31, Volume.ofUsBarrels(1).inUsGallons(), 1e-13);
  }

  /** Pound of 7000 grains of 64.79891 mg: NIST Handbook 44, appendix C, from memory. */
  @Test
  void poundAndOunceFollowTheGrain() {
    assertEquals(7000 * 0.06479891, Mass.ofPounds(1).inGrams(), 1e-12);
    assertEquals(16, Mass.ofPounds(1).inOunces(), 1e-13);
    assertEquals(28.349523125, Mass.ofOunces(1).inGrams(), 1e-12);
  }

  @Test
  void pressuresFollowTheirDefinitions() {
    assertEquals(101.325, Pressure.ofAtmospheres(1).inKilopascals());
    assertEquals(1.01325, Pressure.ofAtmospheres(1).inBars(), 1e-15);
    assertEquals(100, Pressure.ofBars(1).inKilopascals());
  }

  @Test
  void concentrationsAreDecimal() {
    assertEquals(2800, MassConcentration.ofGramsPerLitre(2.8).inMilligramsPerLitre());
    assertEquals(10, MassConcentration.ofGramsPerHectolitre(1).inMilligramsPerLitre());
    assertEquals(0.1, AmountConcentration.ofMillimolesPerLitre(100).inMolesPerLitre());
    assertEquals(0.001, Molality.ofMillimolesPerKilogram(1).inMolesPerKilogram());
    assertEquals(1000, ChargeConcentration.ofEquivalentsPerLitre(1).inMilliequivalentsPerLitre());
    assertEquals(998.2, Density.ofGramsPerMillilitre(0.9982).inKilogramsPerCubicMetre(), 1e-12);
  }

  /** Fixed points of the scales: BIPM, SI Brochure, 9th edition, section 2.3.1, from memory. */
  @Test
  void temperatureScalesMeetAtTheirFixedPoints() {
    assertEquals(273.15, celsius(0).inKelvin());
    assertEquals(0, Temperature.ofKelvin(0).inKelvin());
    assertEquals(212, celsius(100).inFahrenheit(), 1e-12);
    assertEquals(20, Temperature.ofFahrenheit(68).inCelsius(), 1e-13);
    assertEquals(-40, Temperature.ofFahrenheit(-40).inCelsius(), 1e-13);
    assertEquals(0, Temperature.ofFahrenheit(-459.67).inKelvin(), 1e-12);
    assertEquals(5, TemperatureDifference.ofFahrenheitDegrees(9).inKelvin(), 1e-14);
  }

  @Test
  void belowAbsoluteZeroThereIsNothing() {
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> celsius(-274));
    assertEquals(
        "temperature: -274 °C is not possible; absolute zero, -273.15 °C, or more is allowed",
        error.getMessage());
    assertThrows(IllegalArgumentException.class, () -> Temperature.ofKelvin(-0.001));
    assertThrows(IllegalArgumentException.class, () -> Temperature.ofFahrenheit(-460));
    assertThrows(IllegalArgumentException.class, () -> Temperature.ofFahrenheit(Double.NaN));
    assertThrows(
        IllegalArgumentException.class, () -> Temperature.ofKelvin(Double.POSITIVE_INFINITY));
    assertThrows(
        IllegalArgumentException.class,
        () -> celsius(0).minus(TemperatureDifference.ofKelvin(274)));
  }

  @Test
  void pHHasBounds() {
    assertEquals(8.2, pH(8.2).value());
    assertEquals(-3, pH(-3).value());
    assertEquals(17, pH(17).value());
    assertEquals(4.0, pH(8.2).minus(pH(4.2)), 1e-15);
    assertThrows(IllegalArgumentException.class, () -> pH(17.01));
    assertThrows(IllegalArgumentException.class, () -> pH(-3.01));
    assertThrows(IllegalArgumentException.class, () -> pH(Double.NaN));
  }

  @Test
  void massFractionIsNeverBothPercentAndFraction() {
    assertEquals(0.88, MassFraction.ofMassPercent(88).fraction());
    assertEquals(88, MassFraction.of(0.88).inMassPercent());
    assertThrows(IllegalArgumentException.class, () -> MassFraction.of(88));
    assertThrows(IllegalArgumentException.class, () -> MassFraction.ofMassPercent(100.1));
    assertThrows(IllegalArgumentException.class, () -> MassFraction.ofMassPercent(-1));
    assertThrows(IllegalArgumentException.class, () -> MassFraction.of(Double.NaN));
  }

  /** One volume by the molar volume of an ideal gas, 22.414 L/mol, and 44.0095 g/mol. */
  @Test
  void volumesOfCarbonDioxideAreThoseOfAnIdealGas() {
    Carbonation oneVolume = Carbonation.ofVolumes(1);
    assertEquals(1.9635, oneVolume.inGramsPerLitre(), 1e-4);
    assertEquals(1 / 22.414, oneVolume.asAmountConcentration().inMolesPerLitre(), 1e-6);
    assertEquals(gPerL(5), Carbonation.ofGramsPerLitre(5).asMassConcentration());
    assertEquals(5, Carbonation.from(gPerL(5)).inGramsPerLitre());
    assertEquals(2.5, Carbonation.from(molPerL(2.5 / 22.414)).inVolumes(), 1e-4);
  }

  /** EN 27888, natural waters (from memory). */
  @Test
  void aWaterConductsBetterWhenItIsWarmer() {
    assertEquals(111.6, Conductivity.of(100, celsius(20)).inMicrosiemensPerCentimetreAt25(), 1e-12);
    assertEquals(100, Conductivity.of(100, celsius(25)).inMicrosiemensPerCentimetreAt25());
    assertEquals("558 µS/cm at 25 °C", Conductivity.of(500, celsius(20)).toString());
    assertThrows(IllegalArgumentException.class, () -> Conductivity.of(100, celsius(18)));
  }

  @Test
  void aVolumeRatioIsWhatIsAddedOverTheLiquid() {
    assertEquals(VolumeRatio.of(0.002), VolumeRatio.from(mL(200), hL(1)));
    assertEquals(2, VolumeRatio.of(0.002).inMillilitresPerLitre());
    assertEquals(200, VolumeRatio.of(0.002).inMillilitresPerHectolitre());
    assertEquals(mL(40), VolumeRatio.of(0.002).times(litres(20)));
    assertEquals("200 mL/hL", VolumeRatio.of(0.002).toString());
    assertThrows(IllegalArgumentException.class, () -> VolumeRatio.from(mL(1), litres(0)));
  }
}
