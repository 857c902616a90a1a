package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Against the usual tables of the normal distribution (from memory). */
class NormalProbabilityTest {

  @Test
  void quantilesOfTheTables() {
    assertEquals(0.5, NormalProbability.below(0), 1e-15);
    assertEquals(0.975, NormalProbability.below(1.959963984540054), 1e-14);
    assertEquals(0.025, NormalProbability.below(-1.959963984540054), 1e-14);
    assertEquals(0, NormalProbability.below(Double.NEGATIVE_INFINITY));
    assertEquals(1, NormalProbability.below(Double.POSITIVE_INFINITY));
  }

  @Test
  void oneTwoAndThreeStandardDeviations() {
    assertEquals(0.682689492137086, NormalProbability.between(-1, 1), 1e-14);
    assertEquals(0.954499736103642, NormalProbability.between(-2, 2), 1e-14);
    assertEquals(0.997300203936740, NormalProbability.between(-3, 3), 1e-14);
    assertEquals(
        NormalProbability.below(2.5) - NormalProbability.below(0.7),
        NormalProbability.between(0.7, 2.5),
        1e-14);
  }

  @Test
  void theLowerTailKeepsItsDigits() {
    assertEquals(7.61985302416052e-24, NormalProbability.below(-10), 1e-35);
  }
}
