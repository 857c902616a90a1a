package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EquilibriumConstantTest {

  private static final double R = 8.314462618;

  @Test
  void aConstantWithoutEnthalpyKeepsItsValue() {
    EquilibriumConstant constant = EquilibriumConstant.ofLog10(-4.756);
    assertEquals(-4.756, constant.log10(273.15));
    assertEquals(-4.756, constant.log10(373.15));
  }

  /** Plummer and Busenberg, Geochim. Cosmochim. Acta 46 (1982) 1011: their printed values. */
  @ParameterizedTest
  @CsvSource({
    "0, -8.3814, -6.5786, -10.6286, -1.1084",
    "10, -8.4105, -6.4633, -10.4879, -1.2694",
    "20, -8.4533, -6.3819, -10.3756, -1.4069",
    "25, -8.4798, -6.3519, -10.3289, -1.4679",
    "40, -8.5797, -6.2974, -10.2217, -1.6249",
    "60, -8.7588, -6.2903, -10.1438, -1.7840",
    "65, -8.8116, -6.2978, -10.1342, -1.8164",
    "90, -9.1217, -6.3781, -10.1350, -1.9427"
  })
  void plummerAndBusenbergTabulateTheirExpressions(
      double celsius, double calcite, double first, double second, double henry) {
    double kelvin = celsius + 273.15;
    var steps = ConstantSet.named("plummer-busenberg-1982").of(Component.CARBONATE);
    assertEquals(calcite, Mineral.CALCITE.constant().log10(kelvin), 6e-5);
    assertEquals(first, steps.get(0).log10(kelvin), 6e-5);
    assertEquals(second, steps.get(1).log10(kelvin), 6e-5);
    assertEquals(henry, Gas.CARBON_DIOXIDE.solubility().log10(kelvin), 6e-5);
  }

  @Property(tries = 200)
  void theTemperatureDependenceIsTheIntegralOfVantHoff(
      @ForAll @DoubleRange(min = 274.0, max = 373.0) double kelvin,
      @ForAll @DoubleRange(min = -60.0, max = 60.0) double enthalpy,
      @ForAll @DoubleRange(min = -400.0, max = 200.0) double heatCapacity) {
    EquilibriumConstant constant = EquilibriumConstant.ofLog10(-5.0, enthalpy, heatCapacity);
    double step = 1e-2;
    double slope = (constant.log10(kelvin + step) - constant.log10(kelvin - step)) / (2.0 * step);
    double enthalpyThere = enthalpy * 1000.0 + heatCapacity * (kelvin - 298.15);
    assertEquals(enthalpyThere / (R * kelvin * kelvin * Math.log(10.0)), slope, 1e-9);
    assertEquals(-5.0, constant.log10(298.15));
  }

  @Property(tries = 200)
  void sumsAndReversalsHoldAtEveryTemperature(
      @ForAll @DoubleRange(min = 274.0, max = 373.0) double kelvin) {
    EquilibriumConstant one = EquilibriumConstant.ofLog10(-6.351, 9.15, -371.0);
    EquilibriumConstant other =
        EquilibriumConstant.analytic(-107.8871, -0.03252849, 5151.79, 38.92561, -563713.9);
    assertEquals(one.log10(kelvin) + other.log10(kelvin), one.plus(other).log10(kelvin), 1e-12);
    assertEquals(-other.log10(kelvin), other.negate().log10(kelvin), 0.0);
    assertEquals(0.0, one.plus(one.negate()).log10(kelvin), 0.0);
  }

  @Test
  void aSumCoversWhatBothCover() {
    EquilibriumConstant wide = EquilibriumConstant.ofLog10(1.0).withRangeCelsius(0.0, 90.0);
    EquilibriumConstant narrow = EquilibriumConstant.ofLog10(1.0).withRangeCelsius(10.0, 100.0);
    EquilibriumConstant sum = wide.plus(narrow);
    assertTrue(sum.covers(283.15) && sum.covers(363.15));
    assertFalse(sum.covers(282.0) || sum.covers(364.0));
    assertTrue(sum.isBeyondRange(282.0) && sum.isBeyondRange(364.0));
    assertFalse(sum.isBeyondRange(283.15) || sum.isBeyondRange(363.15));
  }

  @Test
  void anUnstatedRangeCoversNothingAndIsNeverLeft() {
    EquilibriumConstant unstated = EquilibriumConstant.ofLog10(1.0);
    assertFalse(unstated.covers(298.15) || unstated.isBeyondRange(500.0));
    EquilibriumConstant sum = unstated.plus(unstated.withRangeCelsius(0.0, 90.0));
    assertFalse(sum.covers(298.15) || sum.isBeyondRange(298.15));
    assertTrue(sum.isBeyondRange(364.0));
    assertFalse(sum.negate().covers(298.15) || sum.withUncertainty(0.1).covers(298.15));
    assertEquals(OptionalDouble.empty(), EquilibriumConstant.ofLog10(1.0).minimumKelvin());
  }

  @Test
  void equalityIsThatOfTheCoefficients() {
    EquilibriumConstant constant = EquilibriumConstant.ofLog10(-4.756, -0.41, -142.0);
    assertEquals(
        constant, EquilibriumConstant.ofLog10(-4.756, -0.41, -142.0).withUncertainty(0.01));
    assertNotEquals(constant, EquilibriumConstant.ofLog10(-4.756));
  }

  @Test
  void whatIsNotPossibleIsNamed() {
    EquilibriumConstant constant = EquilibriumConstant.ofLog10(1.0);
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> constant.log10(0.0));
    assertEquals("temperature: 0 K is not possible; 1 to 10000 K is allowed", error.getMessage());
    assertThrows(IllegalArgumentException.class, () -> EquilibriumConstant.ofLog10(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> constant.withRangeCelsius(50.0, 20.0));
    assertThrows(IllegalArgumentException.class, () -> constant.withUncertainty(0.0));
  }
}
