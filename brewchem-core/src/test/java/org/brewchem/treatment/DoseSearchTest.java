package org.brewchem.treatment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.brewchem.figure.Scales;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.treatment.UnreachableException.Reason;
import org.junit.jupiter.api.Test;

/** The search on functions of which the answer is known. */
class DoseSearchTest {

  private static double find(DoubleUnaryOperator figure, double target) {
    return new DoseSearch(figure, target)
        .find(
            (reason, nearest) ->
                new UnreachableException(
                    "figure", target, nearest, Scales.MILLIGRAMS_PER_LITRE, reason, "a reagent"));
  }

  private static UnreachableException failing(DoubleUnaryOperator figure, double target) {
    return assertThrows(UnreachableException.class, () -> find(figure, target));
  }

  private static void assertFails(
      Reason reason, double nearest, DoubleUnaryOperator figure, double target) {
    UnreachableException failed = failing(figure, target);
    assertSame(reason, failed.reason());
    assertEquals(nearest, failed.reach());
  }

  @Test
  void aFigureWithinABillionthOfItsTargetIsThere() {
    assertFails(Reason.ALREADY_THERE, 1e-9, moles -> 1e-9 - moles, 0);
    assertEquals(1.1e-9, find(moles -> 1.1e-9 - moles, 0), 1e-20);
    assertFails(Reason.ALREADY_THERE, 100 + 0.5e-7, moles -> 100 + 0.5e-7 - moles, 100);
    assertEquals(2e-7, find(moles -> 100 + 2e-7 - moles, 100), 1e-13);
  }

  @Test
  void aChangeThatMayBeThatOfRoundingIsNone() {
    assertFails(Reason.NO_EFFECT, 0, moles -> moles > 0 ? 1e-12 : 0, 1);
    assertFails(Reason.NO_EFFECT, 100, moles -> 100 + 1e-5 * moles, 200);
    assertFails(Reason.TOO_WEAK, 2e-6, moles -> 2e-6 * moles, 1);
    assertFails(Reason.TOO_WEAK, 100 + 2e-3, moles -> 100 + 2e-3 * moles, 200);
  }

  @Test
  void aDoseThatLeadsAwayIsTheWrongDirection() {
    assertFails(Reason.WRONG_DIRECTION, 5, moles -> 5 - moles, 6);
    assertFails(Reason.WRONG_DIRECTION, 5, moles -> 5 + moles, 4);
  }

  /** It falls from 5 to 3 and rises again: 3 was the nearest. */
  @Test
  void whatCameNearestIsSaidWhereNothingReachesTheTarget() {
    assertFails(Reason.TOO_WEAK, 3, moles -> moles <= 4e-6 ? 5 - moles * 5e5 : 3.5, 1);
    assertFails(Reason.TOO_WEAK, -3, moles -> moles <= 4e-6 ? -5 + moles * 5e5 : -3.5, -1);
  }

  @Test
  void noDoseIsTriedThatIsMoreThanFourTimesWhatIsNeeded() {
    double[] most = {0};
    double found =
        find(
            moles -> {
              most[0] = Math.max(most[0], moles);
              return 4 - 1e5 * moles;
            },
            3);
    assertEquals(1e-5, found, 1e-15);
    assertEquals(1.6e-5, most[0], 1e-15);
  }

  /** Of two values that are as near, the first counts: that of the liquid as it is. */
  @Test
  void whereTheKernelGivesUpNoMoreIsReachedAndItSaysWhy() {
    NoSolutionException why = new NoSolutionException("pH", 0, 14, 1, 300);
    UnreachableException failed =
        failing(
            moles -> {
              if (moles == 0) {
                return 0;
              }
              if (moles == 1e-6) {
                return 2;
              }
              throw why;
            },
            1);
    assertSame(Reason.TOO_WEAK, failed.reason());
    assertEquals(0, failed.reach());
    assertSame(why, failed.getSuppressed()[0]);
    assertTrue(failed.getMessage().contains("a reagent"), failed.getMessage());
  }
}
