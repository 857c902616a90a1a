package org.brewchem.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.brewchem.OutOfRangeException;
import org.brewchem.quantity.PH;
import org.junit.jupiter.api.Test;

class TableTest {

  @Test
  void columnsAreFoundByTheirNameWithoutTheUnit() {
    Table table = Table.of(Column.of("calcium [mg/L]", 40, 80), Column.of("pH", 7.2, 7.9));
    assertEquals(2, table.size());
    assertEquals(80, table.column("calcium").value(1));
    assertTrue(table.find("pH").isPresent());
    assertFalse(table.find("magnesium").isPresent());
    IllegalArgumentException missing =
        assertThrows(IllegalArgumentException.class, () -> table.column("magnesium"));
    assertEquals(
        "column \"magnesium\" is not in the table; it has [calcium, pH]", missing.getMessage());
  }

  @Test
  void columnsAreOverTheSameRowsAndHaveDifferentNames() {
    Column calcium = Column.of("calcium [mg/L]", 40, 80);
    assertThrows(IllegalArgumentException.class, () -> Table.of());
    assertThrows(IllegalArgumentException.class, () -> Table.of(calcium, Column.of("pH", 7, 7, 7)));
    assertThrows(
        IllegalArgumentException.class,
        () -> Table.of(calcium, Column.of("calcium [mmol/L]", 1, 2)));
    assertThrows(
        IllegalArgumentException.class,
        () -> Table.of(calcium).withTexts("sample", List.of("one")));
    assertThrows(
        IllegalArgumentException.class,
        () -> Table.of(calcium).withTexts("calcium", List.of("one", "two")));
  }

  @Test
  void rowsAreBuiltUnderTheNumbersOfTheirFile() {
    Table.Builder builder = Table.withHeadings(List.of("calcium [mg/L]", "pH"), List.of("sample"));
    builder.row(2).set(0, 40).set(1, 7.2).text(0, "well");
    builder.row(5).unreadable(0, "14,62", "\"14,62\" is not a number (use a point)");
    builder.row().set(0, 12);
    Table table = builder.build();
    assertEquals(List.of(2L, 5L, 6L), List.of(table.row(0), table.row(1), table.row(2)));
    assertEquals(List.of("well", "", ""), table.texts("sample"));
    assertEquals(OptionalDouble.empty(), table.column("pH").get(2));
    assertEquals(
        List.of(
            new Failure.Unreadable(
                5, "calcium [mg/L]", "14,62", "\"14,62\" is not a number (use a point)")),
        table.faults());
    assertEquals(
        List.of(new Failure.Missing(5, "pH"), new Failure.Missing(6, "pH")),
        table.column("pH").failures());
    assertEquals(
        "row  sample  calcium [mg/L]    pH\n"
            + "  2    well              40   7.2\n"
            + "  5                    none  none\n"
            + "  6                      12  none",
        table.toString());
  }

  @Test
  void aTableStaysWhatItWasWhenItsBuilderGoesOn() {
    Table.Builder builder = Table.withHeadings("pH");
    builder.row().set(0, 7);
    Table first = builder.build();
    for (int i = 0; i < 1000; i++) {
      builder.row().set(0, 8);
    }
    builder.row().unreadable(0, "x", "\"x\" is not a number").set(0, 9);
    Table all = builder.build();
    assertEquals(1, first.size());
    assertEquals(1002, all.size());
    assertEquals(9, all.column("pH").value(1001));
    assertEquals(1002, all.row(1001));
  }

  @Test
  void theBuilderRefusesWhatIsNoRowOrNoNumber() {
    Table.Builder builder = Table.withHeadings("pH");
    assertThrows(IllegalStateException.class, () -> builder.set(0, 7));
    builder.row(4);
    assertThrows(IllegalArgumentException.class, () -> builder.row(4));
    assertThrows(IllegalArgumentException.class, () -> builder.set(0, Double.POSITIVE_INFINITY));
    OutOfRangeException refused = assertThrows(OutOfRangeException.class, () -> builder.set(9, 7));
    assertEquals("column: 9 is not possible; 0 to 0 is allowed", refused.getMessage());
    assertThrows(OutOfRangeException.class, () -> builder.unreadable(-1, "x", "no number"));
    assertThrows(OutOfRangeException.class, () -> builder.text(0, "well"));
    assertThrows(OutOfRangeException.class, () -> builder.build().row(-1));
    assertThrows(
        IllegalArgumentException.class, () -> Table.withHeadings("pH", "calcium [mg/L]", "pH"));
    for (List<String> texts : List.of(List.of("pH"), List.of("well", "well"))) {
      assertThrows(IllegalArgumentException.class, () -> Table.withHeadings(List.of("pH"), texts));
    }
  }

  @Test
  void columnsCanBeAddedAndLeftOut() {
    Table table =
        Table.of(Column.of("calcium [mg/L]", 40), Column.of("pH", 7.2))
            .withTexts("sample", List.of("well"));
    assertEquals(
        "row  sample  calcium [mg/L]\n  1    well              40", table.without("pH").toString());
    assertEquals(
        "row  calcium [mg/L]   pH\n  1              40  7.2", table.without("sample").toString());
    assertThrows(IllegalArgumentException.class, () -> table.without("sodium"));
    assertThrows(IllegalArgumentException.class, () -> table.texts("pH"));
    assertEquals(List.of("sample"), table.textNames());
    assertEquals(2, table.columns().size());
  }

  @Test
  void oneRowIsCountedInTheSingular() {
    Table one = Table.of(Column.of("calcium [mg/L]", 40));
    assertEquals("1 water at 25 °C, from calcium", Waters.from(one).toString());
    assertEquals(
        "1 titration to pH 8.2, from volume",
        Acidities.from(Table.of(Column.of("volume [mL]", 14.6)), PH.of(8.2)).toString());
    Table.Builder empty = Table.withHeadings("calcium [mg/L]");
    empty.row();
    assertTrue(
        assertThrows(IllegalStateException.class, () -> empty.build().column("calcium").values())
            .getMessage()
            .contains("1 of 1 row has no number"));
  }

  @Test
  void messagesNameTheColumnsThatThereAre() {
    Table table =
        Table.of(Column.of("calcium [mg/L]", 40, 41), Column.of("pH", 7.2, 7.3))
            .withTexts("sample", List.of("well", "tap"));
    assertEquals(
        "column of text \"place\" is not in the table; it has [sample]",
        assertThrows(IllegalArgumentException.class, () -> table.texts("place")).getMessage());
    assertEquals(
        "column of text \"place\": 1 row is not possible; the table has 2",
        assertThrows(IllegalArgumentException.class, () -> table.withTexts("place", List.of("tap")))
            .getMessage());
    assertEquals(
        "column \"magnesium\" is needed and is not in the table: 2 rows of [sample, calcium, pH]",
        assertThrows(IllegalStateException.class, () -> Waters.from(table).totalHardness())
            .getMessage());
    assertEquals(
        "column \"sodium\" is over other rows than the table",
        assertThrows(
                IllegalArgumentException.class,
                () -> table.with(Column.of("sodium [mg/L]", 1, 2, 3)))
            .getMessage());
  }

  @Test
  void aBuilderCountsItsRows() {
    Table.Builder builder = Table.withHeadings(List.of("pH"), List.of("sample"));
    assertEquals("0 rows so far", builder.toString());
    assertEquals("1 row so far", builder.row().toString());
    assertEquals("2 rows so far", builder.row(4).toString());
    assertEquals(2, builder.size());
    assertEquals(
        "row: 4 is not possible; more than the last row, 4, is allowed",
        assertThrows(IllegalArgumentException.class, () -> builder.row(4)).getMessage());
  }

  /** Room is made for 64 rows at first, then for twice as many. */
  @Test
  void cellsThatCannotBeReadStayInTheirRowsHoweverManyThereAre() {
    Table.Builder builder = Table.withHeadings("pH", "iron [mg/L]");
    for (int i = 0; i < 200; i++) {
      builder.row();
      if (i % 10 == 0) {
        builder.unreadable(0, "x" + i, "is not a number");
      } else {
        builder.set(0, i);
      }
    }
    Table table = builder.build();
    assertEquals(20, table.faults().size());
    assertEquals(
        new Failure.Unreadable(191, "pH", "x190", "is not a number"), table.faults().get(19));
    assertEquals(199, table.column("pH").value(199));
    assertEquals(200, table.column("iron").failures().size());
  }

  @Test
  void aTableOfNoMoreThanSixRowsIsPrintedInFull() {
    Table six = Table.of(Column.of("pH", 1, 2, 3, 4, 5, 6));
    assertTrue(six.toString().endsWith("\n  6   6"), six.toString());
    assertEquals("row  pH", Table.withHeadings("pH").build().toString());
  }
}
