package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.apache.commons.math3.fraction.BigFraction;
import org.junit.jupiter.api.Test;

class ContradictionTest {

  private static BigFraction[] row(double... numbers) {
    return Arrays.stream(numbers).mapToObj(BigFraction::new).toArray(BigFraction[]::new);
  }

  @Test
  void aSumAndItsPartsContradictEachOther() {
    // x + y <= 1, x >= 0.75, y >= 0.5 add up to 0 >= 0.25.
    Contradiction found =
        Contradiction.of(
                new BigFraction[][] {row(-1, -1), row(1, 0), row(0, 1)},
                row(-1, 0.75, 0.5),
                new boolean[3])
            .orElseThrow();
    assertTrue(found.holds());
    assertEquals(BigFraction.getReducedFraction(4, 1), found.exactMultiplier(0));
    assertEquals(4.0, found.multiplier(1));
  }

  @Test
  void whatIsLessThanRoundingIsNoContradiction() {
    // x >= 0.1 + 0.2 and x <= 0.3: in decimals they meet, in doubles they do not.
    assertTrue(
        Contradiction.of(
                new BigFraction[][] {row(1), row(-1)}, row(0.1 + 0.2, -0.3), new boolean[2])
            .isPresent());
    assertTrue(
        Contradiction.of(new BigFraction[][] {row(1), row(-1)}, row(0.3, -0.3), new boolean[2])
            .isEmpty());
  }

  @Test
  void anEquationMayCountWithEitherSign() {
    BigFraction[][] rows = {row(1), row(1)};
    assertTrue(Contradiction.of(rows, row(2, 1), new boolean[] {false, true}).isPresent());
    assertTrue(Contradiction.of(rows, row(2, 1), new boolean[] {false, false}).isEmpty());
  }

  @Test
  void moreRowsThanAreNeededAreRefused() {
    assertTrue(
        Contradiction.of(
                new BigFraction[][] {row(1), row(-1), row(1)}, row(1, 0, 1), new boolean[3])
            .isEmpty());
  }

  /** By hand: x at least 1 and at most 0; what is said of y, or nothing, takes no part. */
  @Test
  void rowsThatTakeNoPartHaveNoMultiplier() {
    Contradiction found =
        Contradiction.of(
                new BigFraction[][] {row(0, 0, 1), row(0, 1, 0), row(0, -1, 0)},
                row(5, 1, 0),
                new boolean[3])
            .orElseThrow();
    assertEquals(0.0, found.multiplier(0));
    assertEquals(1.0, found.multiplier(1));
    assertEquals(1.0, found.multiplier(2));
    assertTrue(
        Contradiction.of(new BigFraction[0][], new BigFraction[0], new boolean[0]).isEmpty());
    assertTrue(
        Contradiction.of(new BigFraction[][] {row(1, 0), row(0, 1)}, row(1, 1), new boolean[2])
            .isEmpty());
  }

  /** What becomes of the arrays afterwards is none of the proof's business. */
  @Test
  void aProofStandsWhateverBecomesOfTheArrays() {
    BigFraction[][] rows = {row(-1, -1), row(1, 0), row(0, 1)};
    BigFraction[] limits = row(-1, 0.75, 0.5);
    Contradiction found = Contradiction.of(rows, limits, new boolean[3]).orElseThrow();
    rows[0][0] = BigFraction.ONE;
    assertTrue(found.holds());
    rows[1] = row(0, 0);
    assertTrue(found.holds());
    limits[1] = BigFraction.ZERO;
    assertTrue(found.holds());
  }
}
