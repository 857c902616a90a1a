package org.brewchem.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ColumnStatisticsTest {

  private static ColumnStatistics of(double... numbers) {
    return Table.of(Column.of("x", numbers)).statistics("x");
  }

  /** The sum of two numbers of 1e308 is beyond all doubles, their mean is not. */
  @Test
  void sumsAndSquaresOfLargeNumbersDoNotOverflow() {
    ColumnStatistics equal = of(1e308, 1e308);
    assertEquals(1e308, equal.mean().lower());
    assertEquals(1e308, equal.quantile(0.5).upper());
    assertEquals(0, equal.standardDeviation().orElseThrow());
    assertTrue(equal.toString().startsWith("x: 2 numbers, 0 below a limit, 0 missing; mean 1"));
    // of 1, 2 and 3: mean 2, standard deviation 1, upper quartile 2.5
    ColumnStatistics three = of(1e200, 3e200, 2e200);
    assertEquals(2e200, three.mean().lower(), 1e186);
    assertEquals(1e200, three.standardDeviation().orElseThrow(), 1e186);
    assertEquals(2.5e200, three.quantile(0.75).lower(), 1e186);
    // of 1 and -1: mean 0, standard deviation the root of 2, which times MAX_VALUE is no double
    ColumnStatistics opposite = of(Double.MAX_VALUE, -Double.MAX_VALUE);
    assertEquals(0, opposite.mean().lower());
    assertEquals(0, opposite.quantile(0.5).lower());
    assertEquals(OptionalDouble.empty(), opposite.standardDeviation());
    assertTrue(opposite.toString().contains("mean 0"), opposite.toString());
    assertEquals("x, 1 row: 1.79769E308", Column.of("x", Double.MAX_VALUE).toString());
  }

  @Test
  void boundsAreInOrderAndFinite() {
    assertThrows(IllegalArgumentException.class, () -> new ColumnStatistics.Bounds(Double.NaN, 1));
    assertThrows(IllegalArgumentException.class, () -> new ColumnStatistics.Bounds(2, 1));
    assertThrows(IllegalArgumentException.class, () -> new ColumnStatistics.Bounds(0, Double.NaN));
    assertThrows(
        IllegalArgumentException.class,
        () -> new ColumnStatistics.Bounds(0, Double.POSITIVE_INFINITY));
  }

  /** What follows the sign is a number as everywhere else: digits, a point, a power of ten. */
  @Test
  void aLimitIsANumberByTheStrictRulesAndOtherTextsAreOfNoUse() {
    Table.Builder rows = Table.withHeadings("iron [mg/L]");
    for (String text :
        new String[] {
          "<1e-2", "< 0.5", "< 0,02", "<.5", "<= 0.5", "< 0", "<-1", "< 5 mg/L", "n.b."
        }) {
      rows.row().unreadable(0, text, "is no number");
    }
    rows.row();
    rows.row().set(0, 0.1);
    Table table = rows.build();
    ColumnStatistics iron = table.statistics("iron");
    assertEquals(1, iron.count());
    assertEquals(2, iron.belowLimit());
    assertEquals(1, iron.missing());
    assertEquals(7, iron.failed());
    assertEquals(0.1 / 3, iron.mean().lower(), 1e-15);
    assertEquals((0.1 + 0.01 + 0.5) / 3, iron.mean().upper(), 1e-15);
    assertTrue(
        iron.toString()
            .startsWith("iron [mg/L]: 1 number, 2 below a limit, 1 missing, 7 of no use; mean"));
    // each of them is named where the rows are judged as reports, except where they are limits
    long named =
        Waters.from(table).reportNotices().stream()
            .filter(notice -> notice.code() == TableCode.CELL_NOT_USED)
            .count();
    assertEquals(7, named);
  }
}
