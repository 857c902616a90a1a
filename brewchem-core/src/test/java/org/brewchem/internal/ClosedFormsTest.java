package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Each formula by hand. */
class ClosedFormsTest {

  @Test
  void residualAlkalinityTakesHardnessAwayInKolbachsShares() {
    assertEquals(2, ClosedForms.residualAlkalinity(4, 3.5, 7), 1e-15);
    assertEquals(-3, ClosedForms.residualAlkalinity(0, 7, 7), 1e-15);
  }

  @Test
  void temporaryHardnessIsTheLesserOfBoth() {
    assertEquals(2, ClosedForms.temporaryHardness(5, 2));
    assertEquals(2, ClosedForms.temporaryHardness(2, 5));
  }

  @Test
  void theIonBalanceIsRelativeToAllIons() {
    assertEquals(20, ClosedForms.ionBalancePercentage(6, 4), 1e-14);
    assertEquals(-20, ClosedForms.ionBalancePercentage(4, 6), 1e-14);
    assertEquals(100, ClosedForms.ionBalancePercentage(4, 0), 1e-14);
    assertEquals(0, ClosedForms.ionBalancePercentage(0, 0));
  }

  /** At 0.1 mol/kg the Davies equation gives 0.78 (from memory, textbooks). */
  @Test
  void aUnivalentIonIsLessActiveInSalt() {
    assertEquals(1, ClosedForms.univalentActivityCoefficient(0));
    assertEquals(0.78, ClosedForms.univalentActivityCoefficient(0.1), 0.003);
  }

  /** 15 mL of 0.1 Eq/L for 50 mL of a sample that was diluted to twice its volume. */
  @Test
  void aTitreCountsEquivalentsPerLitreOfUndilutedSample() {
    assertEquals(60, ClosedForms.titratedMilliequivalentsPerLitre(0.1, 15, 2, 50), 1e-13);
  }
}
