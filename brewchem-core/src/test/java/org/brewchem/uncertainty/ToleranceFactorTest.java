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

  @ParameterizedTest
  @CsvSource({"1, 0.9, 0.9", "10001, 0.9, 0.9", "5, 0, 0.9", "5, 1, 0.9", "5, 0.9, 0", "5, 0.9, 1"})
  void whatIsOutOfRangeIsRefused(int count, double content, double confidence) {
    assertThrows(
        IllegalArgumentException.class, () -> ToleranceFactor.twoSided(count, content, confidence));
  }
}
