package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class DataTableTest {

  private static List<DataTable.Row> rows() {
    return DataTable.read(DataTableTest.class, "invented-table.csv");
  }

  private static void refused(String message, Executable reading) {
    assertEquals(message, assertThrows(IllegalStateException.class, reading).getMessage());
  }

  @Test
  void commentsAndEmptyLinesAreNoRows() {
    assertEquals(2, rows().size());
    assertEquals("invented-table.csv, line 4", rows().get(0).place());
    assertEquals("invented-table.csv, line 6", rows().get(1).place());
  }

  @Test
  void cellsMayBeQuoted() {
    assertEquals("gypsum, dry", rows().get(0).text("name"));
    assertEquals("said \"pure\"", rows().get(0).text("note"));
    assertEquals("", rows().get(1).text("note"));
  }

  @Test
  void cellsAreReadAsNumbers() {
    assertEquals(2.5, rows().get(0).number("grams"));
    assertEquals(OptionalDouble.of(2.5), rows().get(0).optionalNumber("grams"));
    assertEquals(OptionalDouble.empty(), rows().get(1).optionalNumber("grams"));
    assertEquals(4, rows().get(1).integer("count"));
    assertTrue(rows().get(0).has("grams"));
    assertFalse(rows().get(0).has("kilograms"));
  }

  @Test
  void whatIsWrongIsNamedWithItsPlace() {
    refused(
        "invented-table.csv, line 4: there is no column kilograms",
        () -> rows().get(0).text("kilograms"));
    refused(
        "invented-table.csv, line 4, column name: \"gypsum, dry\" is not a number",
        () -> rows().get(0).number("name"));
    refused(
        "no-such-table.csv: the data table is missing",
        () -> DataTable.read(DataTableTest.class, "no-such-table.csv"));
    refused(
        "ragged-table.csv, line 2: 1 cells instead of 2",
        () -> DataTable.read(DataTableTest.class, "ragged-table.csv"));
  }
}
