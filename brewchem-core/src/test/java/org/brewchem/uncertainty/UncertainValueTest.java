package org.brewchem.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.brewchem.OutOfRangeException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UncertainValueTest {

  private static final double INFINITE = Double.POSITIVE_INFINITY;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.100224 | 0.000112 | mol/L | 0.10022 mol/L, u 0.00011",
        "2.6363   | 0.0996   | g/L   | 2.64 g/L, u 0.10",
        "2.6363   | 0.1      | g/L   | 2.64 g/L, u 0.10",
        "53217    | 1234     | mg    | 53200 mg, u 1200",
        "-0.0004  | 0.1      | mV    | 0.00 mV, u 0.10",
        "204.2212 | 0        | g/mol | 204.2212 g/mol, u 0",
        "7        | 2        | ''    | 7.0, u 2.0",
        "1e-10    | 1.1e-11  | mol/L | 0.000000000100 mol/L, u 0.000000000011",
        "1e-20    | 1e-22    | mol/L | 1.000E-20 mol/L, u 1.0E-22"
      })
  void digitsFollowTheUncertainty(double value, double u, String unit, String text) {
    assertEquals(text, UncertainValue.of(value, u, unit).toString());
  }

  @Test
  void anExpandedUncertaintySaysWhereItsFactorComesFrom() {
    UncertainValue value = UncertainValue.of(0.100224, 0.000105, "mol/L");
    assertEquals("0.10022 mol/L, U 0.00021 (k = 2)", value.expanded().toString());
    assertEquals("0.10022 mol/L, U 0.00021 (k = 1.96, 95 %)", value.expandedAt(0.95).toString());
    UncertainValue fromTwo = value.withDegreesOfFreedom(1);
    assertEquals("0.1002 mol/L, U 0.0013 (k = 12.7, 95 %)", fromTwo.expandedAt(0.95).toString());
    assertEquals("0.10022 mol/L, u 0.00011 (degrees of freedom 1)", fromTwo.toString());
  }

  // Table of Student's t in any textbook of statistics, two-sided 95 %, from memory.
  @ParameterizedTest
  @CsvSource({
    "1, 12.706",
    "2, 4.303",
    "3, 3.182",
    "4, 2.776",
    "5, 2.571",
    "10, 2.228",
    "30, 2.042",
    "Infinity, 1.960"
  })
  void theCoverageFactorIsStudentsT(double degreesOfFreedom, double printed) {
    ExpandedUncertainty expanded =
        UncertainValue.of(5, 1, "").withDegreesOfFreedom(degreesOfFreedom).expandedAt(0.95);
    assertEquals(printed, expanded.coverageFactor(), 0.0005);
    assertEquals(expanded.coverageFactor(), expanded.halfWidth());
    assertEquals(5 - expanded.halfWidth(), expanded.lower());
    assertEquals(5 + expanded.halfWidth(), expanded.upper());
    assertEquals(0.95, expanded.coverageProbability().orElseThrow());
  }

  // Definition: t with 1 and 2 degrees of freedom have closed forms.
  @Property
  void fewDegreesOfFreedomAgreeWithTheClosedForm(
      @ForAll @DoubleRange(min = 0.01, max = 0.999) @Scale(6) double probability) {
    assertEquals(
        Math.tan(0.5 * Math.PI * probability),
        Quantiles.coverageFactor(probability, 1),
        1e-9 * Math.tan(0.5 * Math.PI * probability));
    double two = probability * Math.sqrt(2.0 / (1.0 - probability * probability));
    assertEquals(two, Quantiles.coverageFactor(probability, 2), 1e-9 * two);
  }

  @Test
  void manyDegreesOfFreedomJoinSmoothly() {
    double below = Quantiles.coverageFactor(0.95, 10_000);
    double above = Quantiles.coverageFactor(0.95, Math.nextUp(10_000.0));
    assertEquals(below, above, 1e-10);
    assertTrue(above > Quantiles.coverageFactor(0.95, INFINITE));
    assertEquals(Quantiles.coverageFactor(0.95, INFINITE), Quantiles.coverageFactor(0.95, 1e300));
  }

  // Tables of the normal distribution and of Student's t, from memory: 1.960 leaves 2.5 % on
  // either side, and so does 3.182 with 3 degrees of freedom.
  @Test
  void theChanceBelowANumberIsThatOfTheTables() {
    UncertainValue given = UncertainValue.of(5, 2, "g");
    assertEquals(0.5, given.chanceBelow(5), 1e-15);
    assertEquals(0.975, given.chanceBelow(5 + 2 * 1.960), 1e-5);
    assertEquals(0.025, given.chanceBelow(5 - 2 * 1.960), 1e-5);
    UncertainValue fromFour = given.withDegreesOfFreedom(3);
    assertEquals(0.975, fromFour.chanceBelow(5 + 2 * 3.182), 1e-5);
    assertEquals(5 + 2 * 1.960, given.quantile(0.975), 1e-3);
    assertEquals(5 - 2 * 3.182, fromFour.quantile(0.025), 1e-3);
  }

  /**
   * At 0.001 degrees of freedom the factor of 95 % is near 20^1000, more than a double holds;
   * 1.3e154 was where the search for it ended.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.001, 0.5, 0.999})
  void fewerDegreesOfFreedomThanThoseOfTwoObservationsAreRefused(double degrees) {
    UncertainValue value = UncertainValue.of(5, 2, "g");
    assertThrows(OutOfRangeException.class, () -> value.withDegreesOfFreedom(degrees));
    assertThrows(OutOfRangeException.class, () -> Source.of("x", 5, 2, degrees, "g"));
    assertThrows(OutOfRangeException.class, () -> Source.ofOneScatter("x", 2, degrees));
    assertThrows(OutOfRangeException.class, () -> Input.student("x", 5, 2, degrees, "g"));
  }

  /** One source of 1 degree of freedom gives 1, whatever its share of the sum rounds to. */
  @Test
  void effectiveDegreesOfFreedomAreNeverBelowThoseOfTwoObservations() {
    for (int i = 1; i < 200; i++) {
      Traced one = Traced.of(Source.of("x", 5, 0.1 * i, 1, "g"));
      Traced sum = one.plus(Traced.of(Source.of("y", 1, 1e-9 * i, "g")));
      assertTrue(sum.times(0.7).uncertain("g").orElseThrow().degreesOfFreedom() >= 1);
    }
  }

  @Test
  void withoutUncertaintyAValueIsBelowOrItIsNot() {
    UncertainValue exact = UncertainValue.of(5, 0, "g");
    assertEquals(1, exact.chanceBelow(Math.nextUp(5.0)));
    assertEquals(0, exact.chanceBelow(5));
    assertEquals(0, exact.chanceBelow(4));
    assertThrows(IllegalArgumentException.class, () -> exact.chanceBelow(Double.NaN));
  }

  @ParameterizedTest
  @CsvSource({"1e-9, 6", "0.3, 6", "0.999999999, Infinity", "0.001, 1.5", "0.5, 1"})
  void theQuantileIsTheInverseOfTheChance(double probability, double degreesOfFreedom) {
    UncertainValue value = UncertainValue.of(5, 2, "g").withDegreesOfFreedom(degreesOfFreedom);
    assertEquals(probability, value.chanceBelow(value.quantile(probability)), 1e-6 * probability);
    assertThrows(IllegalArgumentException.class, () -> value.quantile(1e-10));
    assertThrows(IllegalArgumentException.class, () -> value.quantile(1));
  }

  @Test
  void valuesAreEqualInAllOrNotAtAll() {
    UncertainValue value = UncertainValue.of(2, 0.1, "g");
    assertEquals(value, UncertainValue.of(2, 0.1, "g"));
    assertEquals(value.hashCode(), UncertainValue.of(2, 0.1, "g").hashCode());
    Set<Integer> codes = new HashSet<>(Set.of(value.hashCode()));
    for (UncertainValue other :
        List.of(
            UncertainValue.of(3, 0.1, "g"),
            UncertainValue.of(2, 0.2, "g"),
            UncertainValue.of(2, 0.1, "mg"),
            value.withDegreesOfFreedom(4))) {
      assertNotEquals(value, other);
      assertTrue(codes.add(other.hashCode()), other::toString);
    }
    assertNotEquals(value, "2.00 g, u 0.10");
  }

  @Test
  void anExactFactorScalesValueAndUncertainty() {
    UncertainValue value = UncertainValue.of(2.0, 0.1, "g/L").withDegreesOfFreedom(4);
    assertEquals(
        UncertainValue.of(-1.0, 0.05, "g/100 mL").withDegreesOfFreedom(4),
        value.times(-0.5, "g/100 mL"));
  }

  @Test
  void aRelativeUncertaintyOfZeroIsMissing() {
    assertTrue(UncertainValue.of(0, 0.1, "mV").relativeStandardUncertainty().isEmpty());
    assertEquals(
        0.05, UncertainValue.of(-2, 0.1, "mV").relativeStandardUncertainty().orElseThrow());
  }

  @Test
  void whatIsNotPossibleIsNamed() {
    assertMessage(
        "standard uncertainty: -0.1 g is not possible; 0 or more is allowed",
        () -> UncertainValue.of(1, -0.1, "g"));
    assertMessage(
        "value: NaN g is not possible; a finite number is allowed",
        () -> UncertainValue.of(Double.NaN, 0.1, "g"));
    UncertainValue value = UncertainValue.of(1, 0.1, "g");
    assertMessage(
        "degrees of freedom: 0 is not possible; 1, which two observations have, or more, infinite"
            + " included, is allowed",
        () -> value.withDegreesOfFreedom(0));
    assertMessage(
        "coverage probability: 1 is not possible; more than 0 and less than 1 is allowed",
        () -> value.expandedAt(1.0));
    assertMessage(
        "coverage probability: 0 is not possible; more than 0 and less than 1 is allowed",
        () -> value.expandedAt(0.0));
  }

  private static void assertMessage(String message, Runnable action) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, action::run).getMessage());
  }

  /** By the normal table 2.275 % lie below -2; of 10,000 degrees of freedom it is 2.2764 %. */
  @Test
  void manyDegreesOfFreedomAreNearlyNormal() {
    UncertainValue value = UncertainValue.of(0, 1, "");
    assertEquals(0.0227501319, value.chanceBelow(-2), 1e-10);
    for (double degrees : new double[] {1e15, 1e300, Double.MAX_VALUE}) {
      UncertainValue many = value.withDegreesOfFreedom(degrees);
      assertEquals(0.0227501319, many.chanceBelow(-2), 1e-10);
      assertEquals(0.975, many.chanceBelow(many.quantile(0.975)), 1e-12);
      assertEquals(0.5, many.chanceBelow(0));
      assertEquals(1, many.chanceBelow(1e100));
      assertEquals(0, many.chanceBelow(-1e100));
    }
    double before = value.withDegreesOfFreedom(10_000).chanceBelow(-2);
    assertEquals(before, value.withDegreesOfFreedom(10_001).chanceBelow(-2), 1e-8);
    assertEquals(
        0.975,
        value
            .withDegreesOfFreedom(20_000)
            .chanceBelow(value.withDegreesOfFreedom(20_000).quantile(0.975)),
        1e-11);
  }
}
