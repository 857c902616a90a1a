package org.brewchem.checks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class CsvTableTest {

  @Test
  void readsQuotedFieldsAndSkipsComments() {
    CsvTable table = CsvTable.parse("t.csv", "# c\na,b\n\"1,5\",\"say \"\"x\"\"\"\n,2.5\n");
    assertEquals(2, table.lines().size());
    assertEquals("1,5", table.lines().get(0).text("a"));
    assertEquals("say \"x\"", table.lines().get(0).text("b"));
    assertTrue(table.lines().get(1).isEmpty("a"));
    assertEquals(2.5, table.only("a", "").number("b"));
  }

  @Test
  void refusesARowWithAMissingField() {
    String message =
        assertThrows(IllegalStateException.class, () -> CsvTable.parse("t.csv", "a,b\n1\n"))
            .getMessage();
    assertEquals("t.csv, line 2: 1 fields, but 2 columns", message);
  }

  @Test
  void refusesWhatIsNotANumber() {
    CsvTable table = CsvTable.parse("t.csv", "a\n14,62\n".replace("14,62", "\"14,62\""));
    String message =
        assertThrows(IllegalStateException.class, () -> table.lines().get(0).number("a"))
            .getMessage();
    assertEquals("t.csv, line 2, column \"a\": \"14,62\" is not a number", message);
  }

  @Test
  void refusesAnotherNumberOfRows() {
    assertThrows(IllegalStateException.class, () -> CsvTable.read("dickson1981-table1.csv", 50));
    assertEquals(51, CsvTable.read("dickson1981-table1.csv", 51).lines().size());
  }
}
