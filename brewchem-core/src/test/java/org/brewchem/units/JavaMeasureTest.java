package org.brewchem.units;

import static org.brewchem.quantity.Quantities.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Locale;
import javax.measure.MetricPrefix;
import javax.measure.Quantity;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.brewchem.quantity.TemperatureDifference;
import org.junit.jupiter.api.Test;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

class JavaMeasureTest {

  @Test
  void quantitiesAreTakenInAnyUnitOfTheirDimension() {
    assertEquals(
        50,
        JavaMeasure.volume(Quantities.getQuantity(50.0, MetricPrefix.MILLI(Units.LITRE)))
            .inMillilitres(),
        1e-12);
    assertEquals(litres(1000), JavaMeasure.volume(Quantities.getQuantity(1, Units.CUBIC_METRE)));
    assertEquals(kg(2), JavaMeasure.mass(Quantities.getQuantity(2, Units.KILOGRAM)));
    assertEquals(mol(0.5), JavaMeasure.amountOfSubstance(Quantities.getQuantity(0.5, Units.MOLE)));
    assertEquals(
        2.8,
        JavaMeasure.massConcentration(Quantities.getQuantity(2.8, Units.GRAM.divide(Units.LITRE)))
            .inGramsPerLitre(),
        1e-15);
    assertEquals(
        998.2,
        JavaMeasure.density(Quantities.getQuantity(998.2, Units.KILOGRAM.divide(Units.CUBIC_METRE)))
            .inKilogramsPerCubicMetre(),
        1e-12);
    assertEquals(
        6,
        JavaMeasure.amountConcentration(
                Quantities.getQuantity(6, Units.MOLE.divide(Units.CUBIC_METRE)))
            .inMillimolesPerLitre(),
        1e-14);
    assertEquals(
        90.078,
        JavaMeasure.molarMass(Quantities.getQuantity(0.090078, Units.KILOGRAM.divide(Units.MOLE)))
            .inGramsPerMole(),
        1e-13);
    assertEquals(atm(1), JavaMeasure.pressure(Quantities.getQuantity(101325, Units.PASCAL)));
    assertEquals(
        -177.5,
        JavaMeasure.electricPotential(
                Quantities.getQuantity(-177.5, MetricPrefix.MILLI(Units.VOLT)))
            .inMillivolts(),
        1e-13);
  }

  @Test
  void theNumberMayBeOfAnyClass() {
    assertEquals(litres(50), JavaMeasure.volume(Quantities.getQuantity(50, Units.LITRE)));
    assertEquals(
        litres(0.1),
        JavaMeasure.volume(Quantities.getQuantity(new BigDecimal("0.1"), Units.LITRE)));
    assertEquals(
        1.0 / 3,
        JavaMeasure.volume(Quantities.getQuantity(1, Units.LITRE).divide(3)).inLitres(),
        1e-15);
  }

  @Test
  void anotherDimensionIsRefused() {
    Quantity<?> gramsPerLitre = Quantities.getQuantity(2.8, Units.GRAM.divide(Units.LITRE));
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class, () -> JavaMeasure.amountConcentration(gramsPerLitre));
    assertEquals(
        "amount concentration: 2.8 g/l is not possible; a quantity that converts to mol/l is allowed",
        error.getMessage());
    assertThrows(IllegalArgumentException.class, () -> JavaMeasure.volume(gramsPerLitre));
    assertThrows(
        IllegalArgumentException.class,
        () -> JavaMeasure.mass(Quantities.getQuantity(1, Units.MOLE)));
    assertThrows(
        IllegalArgumentException.class,
        () -> JavaMeasure.temperatureDifference(Quantities.getQuantity(1, Units.LITRE)));
  }

  /** The units library lets this pass and fails later in another place. */
  @Test
  void aTypeThatDoesNotFitItsUnitIsStillRefused() {
    Quantity<JavaMeasure.AmountPerVolume> mislabelled =
        Quantities.getQuantity(2.8, Units.GRAM.divide(Units.LITRE))
            .asType(JavaMeasure.AmountPerVolume.class);
    assertThrows(
        IllegalArgumentException.class, () -> JavaMeasure.amountConcentration(mislabelled));
  }

  @Test
  void aNumberThatTheValueDoesNotAllowIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> JavaMeasure.volume(Quantities.getQuantity(-1, Units.LITRE)));
    assertThrows(
        IllegalArgumentException.class,
        () -> JavaMeasure.temperature(Quantities.getQuantity(-1, Units.KELVIN)));
  }

  @Test
  void aTemperatureIsNoDifferenceAndADifferenceNoTemperature() {
    assertEquals(celsius(20), JavaMeasure.temperature(Quantities.getQuantity(20, Units.CELSIUS)));
    assertEquals(
        293.15, JavaMeasure.temperature(Quantities.getQuantity(293.15, Units.KELVIN)).inKelvin());
    assertEquals(
        TemperatureDifference.ofKelvin(5),
        JavaMeasure.temperatureDifference(Quantities.getQuantity(5, Units.KELVIN)));
    Quantity<?> inThousandths = Quantities.getQuantity(5000, MetricPrefix.MILLI(Units.KELVIN));
    assertEquals(5, JavaMeasure.temperatureDifference(inThousandths).inKelvin(), 1e-13);
    Quantity<?> fiveDegrees = Quantities.getQuantity(5, Units.CELSIUS, Quantity.Scale.RELATIVE);
    assertEquals(5, JavaMeasure.temperatureDifference(fiveDegrees).inKelvin(), 1e-13);
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> JavaMeasure.temperature(fiveDegrees));
    assertTrue(error.getMessage().contains("is a difference"), error.getMessage());
    error =
        assertThrows(
            IllegalArgumentException.class,
            () -> JavaMeasure.temperatureDifference(Quantities.getQuantity(20, Units.CELSIUS)));
    assertTrue(error.getMessage().contains("is a temperature"), error.getMessage());
  }

  @Test
  void messagesDoNotFollowTheDefaultLocale() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      IllegalArgumentException error =
          assertThrows(
              IllegalArgumentException.class,
              () -> JavaMeasure.volume(Quantities.getQuantity(1234.5, Units.GRAM)));
      assertTrue(error.getMessage().contains("1234.5 g"), error.getMessage());
    } finally {
      Locale.setDefault(before);
    }
  }

  @Property(tries = 200)
  void whatGoesOutComesIn(@ForAll @DoubleRange(min = 1e-3, max = 1e6) @Scale(9) double number) {
    assertSame(number, JavaMeasure.volume(JavaMeasure.toQuantity(litres(number))).inLitres());
    assertSame(number, JavaMeasure.mass(JavaMeasure.toQuantity(g(number))).inGrams());
    assertSame(
        number, JavaMeasure.amountOfSubstance(JavaMeasure.toQuantity(mol(number))).inMoles());
    assertSame(
        number, JavaMeasure.molarMass(JavaMeasure.toQuantity(gPerMol(number))).inGramsPerMole());
    assertSame(
        number,
        JavaMeasure.density(JavaMeasure.toQuantity(kgPerM3(number))).inKilogramsPerCubicMetre());
    assertSame(
        number,
        JavaMeasure.massConcentration(JavaMeasure.toQuantity(mgPerL(number)))
            .inMilligramsPerLitre());
    assertSame(
        number,
        JavaMeasure.amountConcentration(JavaMeasure.toQuantity(molPerL(number))).inMolesPerLitre());
    assertSame(number, JavaMeasure.pressure(JavaMeasure.toQuantity(kPa(number))).inKilopascals());
    assertSame(
        -number, JavaMeasure.electricPotential(JavaMeasure.toQuantity(mV(-number))).inMillivolts());
    assertSame(number, JavaMeasure.temperature(JavaMeasure.toQuantity(kelvin(number))).inKelvin());
    assertSame(
        -number,
        JavaMeasure.temperatureDifference(
                JavaMeasure.toQuantity(TemperatureDifference.ofKelvin(-number)))
            .inKelvin());
  }

  private static void assertSame(double expected, double actual) {
    assertEquals(expected, actual, 1e-13 * (Math.abs(expected) + 1));
  }

  /** Another unit of the library's own reads the same through both. */
  @Property(tries = 100)
  void theUnitsLibraryAgreesOnMetricUnits(
      @ForAll @DoubleRange(min = 1e-3, max = 1e6) @Scale(9) double number) {
    assertSame(
        mL(number).inLitres(),
        JavaMeasure.volume(Quantities.getQuantity(number, MetricPrefix.MILLI(Units.LITRE)))
            .inLitres());
    assertSame(
        celsius(number).inKelvin(),
        JavaMeasure.temperature(Quantities.getQuantity(number, Units.CELSIUS)).inKelvin());
  }
}
