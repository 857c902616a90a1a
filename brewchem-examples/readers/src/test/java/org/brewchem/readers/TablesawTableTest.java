package org.brewchem.readers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.junit.jupiter.api.Test;
import tech.tablesaw.aggregate.AggregateFunctions;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;

/** A table goes to Tablesaw and comes back. The waters are invented. */
class TablesawTableTest {

  private static final Table WATERS =
      Table.withHeadings(
              List.of("calcium [mg/L]", "magnesium [mg/L]", "alkalinity [mg/L as CaCO3]"),
              List.of("well"))
          .row()
          .text(0, "A")
          .set(0, 92)
          .set(1, 11)
          .set(2, 215)
          .row()
          .text(0, "B")
          .set(0, 48)
          .set(1, 5)
          .row()
          .text(0, "A")
          .set(0, 100)
          .set(1, 9)
          .set(2, 180)
          .build();

  @Test
  void goesThereAndBack() {
    Table back = TablesawTable.from(TablesawTable.of(WATERS));
    assertEquals(List.of("A", "B", "A"), back.texts("well"));
    assertEquals("calcium [mg/L]", back.column("calcium").heading());
    for (Column column : WATERS.columns()) {
      for (int i = 0; i < WATERS.size(); i++) {
        assertEquals(column.get(i), back.column(column.name()).get(i));
      }
    }
  }

  @Test
  void aFigureIsGroupedThere() {
    Table hard = WATERS.with(Waters.from(WATERS).residualAlkalinity());
    var means =
        TablesawTable.of(hard)
            .summarize("residual alkalinity [mg/L as CaCO3]", AggregateFunctions.mean)
            .by("well");
    double[] alkalinity = hard.column("residual alkalinity").valuesOr(Double.NaN);
    assertEquals((alkalinity[0] + alkalinity[2]) / 2, means.doubleColumn(1).get(0), 1e-9);
  }

  @Test
  void whatIsNoHeadingOrNoNumberIsRefused() {
    var table = tech.tablesaw.api.Table.create(IntColumn.create("batches", 1, 2));
    assertEquals(2, TablesawTable.from(table).column("batches").value(1));
    table.addColumns(DoubleColumn.create("pH", 4.2, Double.POSITIVE_INFINITY));
    assertThrows(IllegalArgumentException.class, () -> TablesawTable.from(table));
  }
}
