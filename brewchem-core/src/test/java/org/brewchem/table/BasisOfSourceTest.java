package org.brewchem.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.brewchem.substance.Ion;
import org.brewchem.water.BasisReading;
import org.brewchem.water.WaterCode;
import org.junit.jupiter.api.Test;

/** The rules of {@code basis-of-a-source.csv}, each on its limit and beyond. */
class BasisOfSourceTest {

  /** Rows of different balances about 10 %, of which each is left with what is given. */
  private static List<BasisReading> rows(int count, double factor, IntToDoubleFunction ifSo) {
    return rows(count, factor, i -> 10 + 1e-3 * i, ifSo);
  }

  private static List<BasisReading> rows(
      int count, double factor, IntToDoubleFunction asStated, IntToDoubleFunction ifSo) {
    return IntStream.range(0, count)
        .mapToObj(
            i ->
                new BasisReading(
                    WaterCode.SULFATE_PERHAPS_SULFUR,
                    Ion.SULFATE,
                    "sulfate is meant as sulfur",
                    factor,
                    asStated.applyAsDouble(i),
                    ifSo.applyAsDouble(i)))
        .toList();
  }

  private static SourceBasis judged(List<BasisReading> rows) {
    List<SourceBasis> judged = BasisOfSource.judge("well", List.of(rows));
    assertEquals(1, judged.size());
    return judged.get(0);
  }

  private static boolean isSuspected(List<BasisReading> rows) {
    return judged(rows).suspected();
  }

  /** By hand: of n rows n/2 come nearer by chance, with a standard deviation of sqrt(n)/2. */
  @Test
  void threeStandardDeviationsOfTheRowsMustComeNearer() {
    assertTrue(isSuspected(rows(9, 3, i -> 1)), "4.5 more than 4.5, of 1.5");
    assertFalse(isSuspected(rows(8, 3, i -> 1)), "4 more than 4, of 1.41");
    assertTrue(isSuspected(rows(16, 3, i -> i < 14 ? 1 : -12)), "6 more than 8, of 2");
    assertFalse(isSuspected(rows(16, 3, i -> i < 13 ? 1 : -12)));
    assertFalse(isSuspected(rows(9, 3, i -> i < 8 ? 1 : 10 + 1e-3 * i)), "as far is not nearer");
  }

  @Test
  void sixTenthsOfManyRowsMustComeNearer() {
    assertTrue(isSuspected(rows(400, 3, i -> i < 240 ? 1 : -12)));
    assertFalse(isSuspected(rows(400, 3, i -> i < 239 ? 1 : -12)));
  }

  @Test
  void whatIsLeftMustBeSmall() {
    for (int sign : new int[] {1, -1}) {
      assertTrue(isSuspected(rows(9, 3, i -> sign * 3.0)));
      assertFalse(isSuspected(rows(9, 3, i -> sign * 3.01)));
    }
  }

  /** Seven tenths of 4 % are 2.8, four tenths 1.6. */
  @Test
  void whatIsLeftMustBeLessThanAsStatedAndMuchLessForASmallFactor() {
    for (double factor : new double[] {1.5, 3, 1 / 1.6}) {
      assertTrue(isSuspected(rows(9, factor, i -> 4, i -> 2.8)), "factor " + factor);
      assertFalse(isSuspected(rows(9, factor, i -> 4, i -> 2.81)), "factor " + factor);
    }
    for (double factor : new double[] {1.49, 1 / 1.4}) {
      assertTrue(isSuspected(rows(9, factor, i -> 4, i -> 1.6)), "factor " + factor);
      assertFalse(isSuspected(rows(9, factor, i -> 4, i -> 1.61)), "factor " + factor);
    }
  }

  /** By hand: -1, 2, -3 ... 10 have the median 0.5 and the typical size 5.5. */
  @Test
  void mediansAndTypicalSizes() {
    SourceBasis ten =
        judged(rows(10, 3, i -> i % 2 == 0 ? -(i + 1) : i + 1, i -> i % 2 == 0 ? i + 1 : -1));
    assertEquals(0.5, ten.medianAsStated(), 1e-12);
    assertEquals(5.5, ten.typicalAsStated(), 1e-12);
    assertEquals(0, ten.medianIfSo(), 1e-12);
    assertEquals(1, ten.typicalIfSo(), 1e-12);
    assertEquals(0.5, ten.shareNearer(), 1e-12);
    assertEquals(10, ten.rows());
    SourceBasis nine = judged(rows(9, 3, i -> i, i -> -2));
    assertEquals(4, nine.medianAsStated());
    assertEquals(-2, nine.medianIfSo());
    assertEquals(
        "well: if sulfate is meant as sulfur: median ion balance -2.0 % instead of +4.0 %,"
            + " 67 % of 9 rows nearer to 0",
        nine.toString());
    assertTrue(judged(rows(9, 3, i -> 1)).toString().endsWith("rows nearer to 0: suspected"));
    assertTrue(
        BasisOfSource.judge("", List.of(rows(9, 3, i -> 1))).get(0).toString().startsWith("if "));
  }

  /** Whether a reading stands beside one that leaves 0.5 % in each of sixteen rows. */
  private static boolean standsBeside(IntToDoubleFunction rival) {
    return standsBeside(rows(16, 3, rival));
  }

  private static boolean standsBeside(List<BasisReading> rival) {
    List<SourceBasis> judged = BasisOfSource.judge("well", List.of(rival, rows(16, 3, i -> 0.5)));
    assertTrue(judged.get(1).suspected(), "the best");
    return judged.get(0).suspected();
  }

  /** By hand: by chance a reading is better as often as worse, in n rows within sqrt(n). */
  @Test
  void aReadingThatAnotherBeatsByMoreThanChanceIsNotSuspected() {
    assertFalse(standsBeside(i -> 1), "16 of 16");
    assertFalse(standsBeside(i -> i < 12 ? 1 : 0.25), "12 less 4 of 16");
    assertTrue(standsBeside(i -> i < 11 ? 1 : 0.25), "11 less 5 of 16");
    assertFalse(standsBeside(i -> i < 11 ? 1 : i < 13 ? -0.5 : 0.25), "11 less 3 of 14");
    assertTrue(standsBeside(i -> i < 10 ? 1 : i < 12 ? -0.5 : 0.25), "10 less 4 of 14");
    assertTrue(standsBeside(rows(16, 3, i -> 20 + i, i -> 1)), "no row in common");
  }
}
