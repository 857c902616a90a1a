package org.brewchem.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class MethodPrecisionTest {

  /** Harrison 1998: r95 0.025, s_r 0.009, R95 0.129, s_R 0.046, as printed. */
  @Test
  void thePrintedStandardDeviationsFollowFromThePrintedLimits() {
    MethodPrecision precision = MethodPrecision.published("pH of beer", 4.4).orElseThrow();
    assertEquals(0.009, precision.repeatability(), 0.0005);
    assertEquals(0.046, precision.reproducibility().orElseThrow(), 0.0005);
    assertEquals(0.025, precision.repeatabilityLimit().value(), 1e-12);
    assertEquals(0.129, precision.reproducibilityLimit().orElseThrow(), 1e-12);
  }

  @Test
  void theLevelNearestToTheValueCounts() {
    assertEquals(
        44.8 / 2.8,
        MethodPrecision.published("sulfate of beer", 90)
            .orElseThrow()
            .reproducibility()
            .orElseThrow(),
        1e-12);
    assertEquals(
        54.0 / 2.8,
        MethodPrecision.published("sulfate of beer", 400)
            .orElseThrow()
            .reproducibility()
            .orElseThrow(),
        1e-12);
  }

  @Test
  void aPublishedPrecisionNamesMethodUnitAndSource() {
    MethodPrecision sulfate = MethodPrecision.published("sulfate of beer", 90).orElseThrow();
    assertEquals("sulfate of beer", sulfate.method());
    assertEquals("mg/L", sulfate.unit());
    assertEquals("mg/L", sulfate.repeatabilityLimit().unit());
    assertEquals("buckee-1995", sulfate.source());
    assertEquals(
        "sulfate of beer at a level of 101.4 mg/L, outside the levels of the trial, 101.4 to 205.1"
            + " mg/L: s_r 2.7, s_R 16 mg/L (buckee-1995)",
        sulfate.toString());
  }

  /** Chloride was measured at 68.7, 218.6 and 322.5 mg/L; 10 x 322.5 = 3225. */
  @Test
  void thePrecisionSaysItsLevelAndWhetherTheValueLiesWithinThoseOfTheTrial() {
    MethodPrecision chloride = MethodPrecision.published("chloride of beer", 200).orElseThrow();
    assertEquals(218.6, chloride.level().orElseThrow());
    assertTrue(chloride.isWithinLevels());
    assertEquals(
        "chloride of beer at a level of 218.6 mg/L: s_r 4.5, s_R 14 mg/L (buckee-1995)",
        chloride.toString());
    MethodPrecision high = MethodPrecision.published("chloride of beer", 3225).orElseThrow();
    assertEquals(322.5, high.level().orElseThrow());
    assertFalse(high.isWithinLevels());
    assertTrue(MethodPrecision.published("chloride of beer", 68.7).orElseThrow().isWithinLevels());
    assertTrue(MethodPrecision.published("chloride of beer", 322.5).orElseThrow().isWithinLevels());
    for (double value : new double[] {-5, 3226, 1e99, Double.NaN}) {
      assertThrows(
          IllegalArgumentException.class,
          () -> MethodPrecision.published("chloride of beer", value));
    }
    assertTrue(MethodPrecision.published("pH of beer", 3.94).orElseThrow().isWithinLevels());
    assertFalse(MethodPrecision.published("pH of beer", 3.5).orElseThrow().isWithinLevels());
    MethodPrecision own = MethodPrecision.stated("acidity", 0.02, "g/L");
    assertEquals(OptionalDouble.empty(), own.level());
    assertTrue(own.isWithinLevels());
    assertEquals(218.6, chloride.withReproducibility(20).level().orElseThrow());
  }

  @Test
  void everyPublishedMethodIsFoundByItsName() {
    assertEquals(5, MethodPrecision.publishedMethods().size());
    for (String method : MethodPrecision.publishedMethods()) {
      assertTrue(MethodPrecision.published(method, 10).isPresent(), method);
    }
    assertTrue(MethodPrecision.published("calcium of beer", 50).isEmpty());
  }

  @Test
  void oneStatesOnesOwn() {
    MethodPrecision own = MethodPrecision.stated("acidity to 8.2, own bench", 0.02, "g/L");
    assertEquals(OptionalDouble.empty(), own.reproducibilityLimit());
    assertEquals(
        "acidity to 8.2, own bench: s_r 0.020, s_R unknown g/L (stated by the user)",
        own.toString());
    assertEquals(0.14, own.withReproducibility(0.05).reproducibilityLimit().orElseThrow(), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> own.withReproducibility(0.01));
    assertThrows(IllegalArgumentException.class, () -> MethodPrecision.stated("acidity", 0, "g/L"));
  }
}
