package org.brewchem.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToleranceFactorTest {

  // Another implementation: an independent quadrature, of which reference-checks shows more. Howe's
  // approximation would give 9.993, 5.094, 3.382 and 2.752.
  @ParameterizedTest
  @CsvSource({"3, 9.789", "5, 5.077", "10, 3.393", "20, 2.760"})
  void theFactorIsTheExactOne(int count, double printed) {
    assertEquals(printed, ToleranceFactor.twoSided(count, 0.95, 0.95), 0.0005);
  }

  /** Mean and s of a very large sample are those of the population: 1.960 of the normal table. */
  @Test
  void aVeryLargeSampleIsThePopulation() {
    assertEquals(1.960, ToleranceFactor.twoSided(10_000, 0.95, 0.5), 0.0005);
    assertEquals(0.6745, ToleranceFactor.twoSided(10_000, 0.5, 0.5), 0.0005);
  }

  @Test
  void moreContentMoreConfidenceAndFewerValuesWidenIt() {
    double factor = ToleranceFactor.twoSided(5, 0.9, 0.9);
    assertTrue(ToleranceFactor.twoSided(5, 0.95, 0.9) > factor);
    assertTrue(ToleranceFactor.twoSided(5, 0.9, 0.95) > factor);
    assertTrue(ToleranceFactor.twoSided(4, 0.9, 0.9) > factor);
    assertTrue(ToleranceFactor.twoSided(2, 0.9, 0.9) > factor);
  }

  /**
   * Of two values s falls below a small share x of sigma with the chance x sqrt(2 / pi), so that
   * the factor is as 1 over what the confidence leaves; and a small content is as the half width.
   */
  @Test
  void extremeProbabilitiesHaveTheirFactor() {
    assertEquals(
        1000,
        ToleranceFactor.twoSided(2, 0.99, 1 - 1e-6) / ToleranceFactor.twoSided(2, 0.99, 1 - 1e-3),
        0.05);
    assertEquals(
        1000,
        ToleranceFactor.twoSided(2, 0.99, 1 - 1e-9) / ToleranceFactor.twoSided(2, 0.99, 1 - 1e-6),
        1);
    assertEquals(
        1000,
        ToleranceFactor.twoSided(5, 1e-6, 0.5) / ToleranceFactor.twoSided(5, 1e-9, 0.5),
        1e-4);
    assertTrue(ToleranceFactor.twoSided(2, 1e-9, 1e-9) > 0);
  }

  @Test
  void whatIsRefusedIsNamed() {
    assertEquals(
        "content: 1 is not possible; 1.0E-9 to 0.999999999 is allowed",
        assertThrows(IllegalArgumentException.class, () -> ToleranceFactor.twoSided(5, 1, 0.95))
            .getMessage());
    assertTrue(
        assertThrows(
                IllegalArgumentException.class, () -> ToleranceFactor.twoSided(3, 0.95, 1 - 1e-12))
            .getMessage()
            .startsWith("confidence: 0.999999999999 is not possible"));
  }

  @ParameterizedTest
  @CsvSource({"1, 0.9, 0.9", "10001, 0.9, 0.9", "5, 0, 0.9", "5, 1, 0.9", "5, 0.9, 0", "5, 0.9, 1"})
  void whatIsOutOfRangeIsRefused(int count, double content, double confidence) {
    assertThrows(
        IllegalArgumentException.class, () -> ToleranceFactor.twoSided(count, content, confidence));
  }
}
