package org.brewchem.quantity;

import static org.brewchem.quantity.Quantities.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.BinaryOperator;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ArithmeticTest {

  /** A value of one class: its number, and what is done with two of them. */
  private record Arithmetic<Q>(
      DoubleFunction<Q> of,
      ToDoubleFunction<Q> in,
      BinaryOperator<Q> plus,
      BinaryOperator<Q> minus,
      BiFunction<Q, Double, Q> times) {

    void check() {
      Q seven = of.apply(7);
      Q two = of.apply(2);
      assertEquals(9, in.applyAsDouble(plus.apply(seven, two)), 1e-14, seven.toString());
      assertEquals(5, in.applyAsDouble(minus.apply(seven, two)), 1e-14, seven.toString());
      assertEquals(17.5, in.applyAsDouble(times.apply(seven, 2.5)), 1e-14, seven.toString());
    }
  }

  static List<Arithmetic<?>> classes() {
    return List.of(
        new Arithmetic<>(
            Volume::ofLitres, Volume::inLitres, Volume::plus, Volume::minus, Volume::times),
        new Arithmetic<>(Mass::ofGrams, Mass::inGrams, Mass::plus, Mass::minus, Mass::times),
        new Arithmetic<>(
            AmountOfSubstance::ofMoles,
            AmountOfSubstance::inMoles,
            AmountOfSubstance::plus,
            AmountOfSubstance::minus,
            AmountOfSubstance::times),
        new Arithmetic<>(
            MassConcentration::ofMilligramsPerLitre,
            MassConcentration::inMilligramsPerLitre,
            MassConcentration::plus,
            MassConcentration::minus,
            MassConcentration::times),
        new Arithmetic<>(
            AmountConcentration::ofMolesPerLitre,
            AmountConcentration::inMolesPerLitre,
            AmountConcentration::plus,
            AmountConcentration::minus,
            AmountConcentration::times),
        new Arithmetic<>(
            Molality::ofMolesPerKilogram,
            Molality::inMolesPerKilogram,
            Molality::plus,
            Molality::minus,
            Molality::times),
        new Arithmetic<>(
            ChargeConcentration::ofMilliequivalentsPerLitre,
            ChargeConcentration::inMilliequivalentsPerLitre,
            ChargeConcentration::plus,
            ChargeConcentration::minus,
            ChargeConcentration::times),
        new Arithmetic<>(
            BufferCapacity::ofMilliequivalentsPerLitrePerPH,
            BufferCapacity::inMilliequivalentsPerLitrePerPH,
            BufferCapacity::plus,
            BufferCapacity::minus,
            BufferCapacity::times),
        new Arithmetic<>(
            Pressure::ofKilopascals,
            Pressure::inKilopascals,
            Pressure::plus,
            Pressure::minus,
            Pressure::times),
        new Arithmetic<>(
            ElectricPotential::ofMillivolts,
            ElectricPotential::inMillivolts,
            ElectricPotential::plus,
            ElectricPotential::minus,
            ElectricPotential::times),
        new Arithmetic<>(
            TemperatureDifference::ofKelvin,
            TemperatureDifference::inKelvin,
            TemperatureDifference::plus,
            TemperatureDifference::minus,
            TemperatureDifference::times),
        new Arithmetic<>(
            Hardness::ofMilliequivalentsPerLitre,
            Hardness::inMilliequivalentsPerLitre,
            Hardness::plus,
            Hardness::minus,
            Hardness::times),
        new Arithmetic<>(
            CarbonateAlkalinity::ofMilliequivalentsPerLitre,
            CarbonateAlkalinity::inMilliequivalentsPerLitre,
            CarbonateAlkalinity::plus,
            CarbonateAlkalinity::minus,
            CarbonateAlkalinity::times),
        new Arithmetic<>(
            ResidualAlkalinity::ofMilliequivalentsPerLitre,
            ResidualAlkalinity::inMilliequivalentsPerLitre,
            ResidualAlkalinity::plus,
            ResidualAlkalinity::minus,
            ResidualAlkalinity::times));
  }

  @ParameterizedTest
  @MethodSource("classes")
  void everyValueAddsSubtractsAndScales(Arithmetic<?> values) {
    values.check();
  }

  @Test
  void likeValuesAddSubtractAndScale() {
    assertEquals(mL(70), mL(50).plus(mL(20)));
    assertEquals(30, mL(50).minus(mL(20)).inMillilitres(), 1e-13);
    assertEquals(g(1.5), g(0.5).times(3));
    assertEquals(mol(0.75), mol(1).minus(mol(0.25)));
    assertEquals(mgPerL(120), mgPerL(100).plus(mgPerL(20)));
    assertEquals(molPerL(0.5), molPerL(1).times(0.5));
    assertEquals(molPerKg(1.5), molPerKg(1).plus(molPerKg(0.5)));
    assertEquals(mEqPerL(-2), mEqPerL(3).minus(mEqPerL(5)));
    assertEquals(gPerMol(18), gPerMol(16).plus(gPerMol(1).times(2)));
    assertEquals(mEqPerLPerPH(20), mEqPerLPerPH(12).plus(mEqPerLPerPH(8)));
    assertEquals(kPa(50), kPa(100).minus(kPa(50)));
    assertEquals(mV(-59), mV(0).minus(mV(59)));
    assertEquals(celsius(25), celsius(20).plus(TemperatureDifference.ofKelvin(5)));
    assertEquals(celsius(15), celsius(20).minus(TemperatureDifference.ofKelvin(5)));
    assertEquals(TemperatureDifference.ofKelvin(-5), celsius(15).minus(celsius(20)));
  }

  @Test
  void aDifferenceBelowZeroIsRefused() {
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> litres(1).minus(litres(3)));
    assertEquals("volume: -2 L is not possible; 0 or more is allowed", error.getMessage());
    assertThrows(IllegalArgumentException.class, () -> gPerMol(1).minus(gPerMol(1)));
    assertThrows(IllegalArgumentException.class, () -> g(1).times(-1));
  }

  @Test
  void whatIsTooLargeIsRefusedAndNotInfinite() {
    IllegalArgumentException error = assertThrows(IllegalArgumentException.class, () -> hL(1e308));
    assertEquals(
        "volume: 1.0E308 hL is not possible; at most 1e100 is allowed", error.getMessage());
    assertThrows(
        IllegalArgumentException.class, () -> litres(Double.MAX_VALUE).plus(litres(1e308)));
  }

  @Test
  void massAmountAndVolumeFollowFromEachOther() {
    assertEquals(1.206, gPerML(1.206).times(mL(1)).inGrams(), 1e-15);
    assertEquals(1000 / 1.206, gPerML(1.206).volumeOf(kg(1)).inMillilitres(), 1e-10);
    assertEquals(1.206, Density.from(g(12.06), mL(10)).inGramsPerMillilitre(), 1e-15);
    assertEquals(500, mgPerL(250).times(litres(2)).inMilligrams(), 1e-12);
    assertEquals(mgPerL(250), MassConcentration.from(mg(500), litres(2)));
    assertEquals(litres(2), mgPerL(250).volumeOf(mg(500)));
    assertEquals(1.462, molPerL(0.1).times(mL(14.62)).inMillimoles(), 1e-15);
    assertEquals(molPerL(0.1), AmountConcentration.from(mol(1), litres(10)));
    assertEquals(10, molPerL(0.1).volumeOf(mol(1)).inLitres(), 1e-14);
    assertEquals(2, AmountOfSubstance.from(g(36), gPerMol(18)).inMoles(), 1e-15);
    assertEquals(g(36), mol(2).times(gPerMol(18)));
    assertEquals(molPerKg(0.5), Molality.from(mol(1), kg(2)));
    assertEquals(mol(1), molPerKg(0.5).times(kg(2)));
  }

  @Test
  void concentrationsFollowFromEachOther() {
    assertEquals(2.5, AmountConcentration.from(gPerL(100), gPerMol(40)).inMolesPerLitre(), 1e-15);
    assertEquals(gPerL(100), molPerL(2.5).times(gPerMol(40)));
    assertEquals(0.998, AmountConcentration.from(molPerKg(1), kgPerM3(998)).inMolesPerLitre());
    assertEquals(1, Molality.from(molPerL(0.998), kgPerM3(998)).inMolesPerKilogram(), 1e-15);
    assertEquals(mEqPerL(-3), mmolPerL(1.5).timesCharge(-2));
    assertEquals(1.5, AmountConcentration.from(mEqPerL(-3), -2).inMillimolesPerLitre(), 1e-15);
    assertThrows(IllegalArgumentException.class, () -> AmountConcentration.from(mEqPerL(-3), 2));
    assertThrows(IllegalArgumentException.class, () -> AmountConcentration.from(mEqPerL(3), 0));
  }

  @Test
  void fractionsByMassNeedMassOrDensity() {
    assertEquals(g(88), massPercent(88).times(g(100)));
    assertEquals(1061.28, massPercent(88).times(gPerML(1.206)).inGramsPerLitre(), 1e-9);
    assertEquals(MassFraction.of(0.25), MassFraction.from(g(1), g(4)));
    assertThrows(IllegalArgumentException.class, () -> MassFraction.from(g(4), g(1)));
  }

  @Test
  void specificGravityIsRelativeToWaterAt20Celsius() {
    assertEquals(998.2072, specificGravity(1).asDensity().inKilogramsPerCubicMetre());
    assertEquals(1.048, SpecificGravity.from(specificGravity(1.048).asDensity()).value(), 1e-15);
  }

  @Test
  void nothingIsDividedByZero() {
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class, () -> MassConcentration.from(mg(1), litres(0)));
    assertEquals("volume: 0 L is not possible; more than 0 is allowed", error.getMessage());
    assertThrows(IllegalArgumentException.class, () -> Density.from(g(1), mL(0)));
    assertThrows(IllegalArgumentException.class, () -> AmountConcentration.from(mol(1), mL(0)));
    assertThrows(IllegalArgumentException.class, () -> Molality.from(mol(1), kg(0)));
    assertThrows(IllegalArgumentException.class, () -> mgPerL(0).volumeOf(g(1)));
    assertThrows(IllegalArgumentException.class, () -> molPerL(0).volumeOf(mol(1)));
    assertThrows(IllegalArgumentException.class, () -> MassFraction.from(g(0), g(0)));
  }

  @Property
  void dilutingAndConcentratingCancel(
      @ForAll @DoubleRange(min = 0.001, max = 1000) @Scale(9) double concentration,
      @ForAll @DoubleRange(min = 0.001, max = 1000) @Scale(9) double volume) {
    Mass solute = mgPerL(concentration).times(litres(volume));
    assertEquals(
        concentration,
        MassConcentration.from(solute, litres(volume)).inMilligramsPerLitre(),
        1e-14 * concentration);
    assertEquals(volume, mgPerL(concentration).volumeOf(solute).inLitres(), 1e-14 * volume);
  }

  @Property
  void additionCommutesAndSubtractionUndoesIt(
      @ForAll @DoubleRange(min = 0, max = 1000) @Scale(9) double one,
      @ForAll @DoubleRange(min = 0, max = 1000) @Scale(9) double other) {
    Volume sum = litres(one).plus(litres(other));
    assertEquals(sum, litres(other).plus(litres(one)));
    assertTrue(sum.compareTo(litres(one)) >= 0);
    assertEquals(
        one,
        mEqPerL(one).plus(mEqPerL(other)).minus(mEqPerL(other)).inMilliequivalentsPerLitre(),
        1e-12);
  }
}
