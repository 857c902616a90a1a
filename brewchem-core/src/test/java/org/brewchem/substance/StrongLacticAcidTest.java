package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.brewchem.OutOfRangeException;
import org.brewchem.quantity.MassFraction;
import org.junit.jupiter.api.Test;

class StrongLacticAcidTest {

  private static StrongLacticAcid of(double massPercent) {
    return StrongLacticAcid.ofTotalAcid(MassFraction.ofMassPercent(massPercent));
  }

  /** Computed from the equations of Vu et al. 2005 by somebody else, to the printed digits. */
  @Test
  void anEightyPercentAcidHasSixtyTwoOfMonomer() {
    StrongLacticAcid acid = of(80);
    assertEquals(70.74, acid.titratableAtOnce().inMassPercent(), 5e-3);
    assertEquals(62.55, acid.chainOf(1).inMassPercent(), 5e-3);
    assertEquals(13.04, acid.chainOf(2).inMassPercent(), 5e-3);
    assertEquals(2.18, acid.chainOf(3).inMassPercent(), 5e-3);
    assertEquals(21.85, acid.freeWater().inMassPercent(), 5e-3);
    assertEquals(0.116, acid.boundInEsters().fraction(), 5e-4);
  }

  @Property(tries = 100, seed = "20261126")
  void theChainsAndTheWaterAreTheWholeBottle(
      @ForAll @DoubleRange(min = 30, max = 92) double massPercent) {
    StrongLacticAcid acid = of(massPercent);
    double sum = acid.freeWater().inMassPercent();
    double groups = 0;
    for (int units = 1; units < 60; units++) {
      double percent = acid.chainOf(units).inMassPercent();
      sum += percent;
      groups += percent / (units * 90.078 - (units - 1) * 18.015);
    }
    assertEquals(100, sum, 2e-3);
    // One acid group to a chain.
    assertEquals(acid.titratableAtOnce().inMassPercent() / 90.078, groups, 1e-6);
  }

  @Property(tries = 100, seed = "20261126")
  void theEquilibriumHoldsForTheFirstStep(
      @ForAll @DoubleRange(min = 30, max = 92) double massPercent) {
    StrongLacticAcid acid = of(massPercent);
    double one = acid.chainOf(1).inMassPercent() / 90.078;
    double two = acid.chainOf(2).inMassPercent() / (2 * 90.078 - 18.015);
    double water = acid.freeWater().inMassPercent() / 18.015;
    // K counts the one acid group of the chain and the alcohol of the other.
    assertEquals(0.2023, two * water / (one * one), 1e-4);
  }

  @Test
  void aStrengthBeyondTheModelIsRefusedByName() {
    OutOfRangeException error = assertThrows(OutOfRangeException.class, () -> of(95));
    assertTrue(error.getMessage().contains("total acid"), error::getMessage);
    assertThrows(OutOfRangeException.class, () -> of(29.9));
    assertThrows(IllegalArgumentException.class, () -> of(80).chainOf(0));
  }
}
