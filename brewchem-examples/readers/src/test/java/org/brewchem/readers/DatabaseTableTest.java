package org.brewchem.readers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.junit.jupiter.api.Test;

/** On SQLite, in memory; the waters are invented. */
class DatabaseTableTest {

  private static Table waters() {
    Table.Builder rows =
        Table.withHeadings(
            List.of("calcium [mg/L]", "magnesium [mg/L]", "alkalinity [mg/L as CaCO3]"),
            List.of("sample"));
    rows.row().text(0, "well \"1\"").set(0, 92).set(1, 11).set(2, 215);
    rows.row().text(0, "spring").set(0, 0.1 + 0.2).set(2, 40);
    return rows.build();
  }

  @Test
  void aTableGoesInAndTheResultOfAQueryComesOut() throws SQLException {
    try (Connection database = DriverManager.getConnection("jdbc:sqlite::memory:")) {
      DatabaseTable.write(waters(), database, "waters");
      assertTrue(database.getAutoCommit());
      Table back = DatabaseTable.read(database, "select * from waters");
      assertEquals(List.of("sample"), back.textNames());
      assertEquals(List.of("well \"1\"", "spring"), back.texts("sample"));
      assertArrayEquals(new double[] {92, 0.1 + 0.2}, back.column("calcium").values());
      assertArrayEquals(new double[] {11, -1}, back.column("magnesium").valuesOr(-1));
      assertEquals(
          Waters.from(waters()).residualAlkalinity().value(0),
          Waters.from(back).residualAlkalinity().value(0));

      Table few =
          DatabaseTable.read(
              database,
              "select sample, \"calcium [mg/L]\" / 2 as \"half of it [mg/L]\" from waters where"
                  + " sample = ?",
              "spring");
      assertEquals(1, few.size());
      assertEquals((0.1 + 0.2) / 2, few.column("half of it").value(0));
    }
  }

  @Test
  void aTableThatIsThereStaysAsItIs() throws SQLException {
    try (Connection database = DriverManager.getConnection("jdbc:sqlite::memory:")) {
      DatabaseTable.write(waters(), database, "waters");
      assertThrows(SQLException.class, () -> DatabaseTable.write(waters(), database, "waters"));
      assertEquals(
          2.0,
          DatabaseTable.read(database, "select count(*) as n from waters").column("n").value(0));
      assertTrue(database.getAutoCommit());
    }
  }

  @Test
  void aLongResultIsReadTableByTable() throws SQLException, IOException {
    try (Connection database = DriverManager.getConnection("jdbc:sqlite::memory:")) {
      DatabaseTable.write(waters(), database, "waters");
      List<Table> tables = new ArrayList<>();
      DatabaseTable.forEachTable(
          database,
          "select * from waters union all select * from waters union all select * from waters"
              + " where sample = 'spring'",
          2,
          tables::add);
      assertEquals(List.of(2, 2, 1), tables.stream().map(Table::size).toList());
      assertEquals(5, tables.get(2).row(0));
      assertEquals(List.of("spring"), tables.get(2).texts("sample"));
      assertEquals(0.1 + 0.2, tables.get(2).column("calcium").value(0));
      assertEquals("missing", tables.get(2).column("magnesium").failure(0).orElseThrow().kind());

      DatabaseTable.forEachTable(
          database, "select * from waters where sample is null", 2, tables::add);
      assertEquals(3, tables.size());
      assertThrows(
          IllegalArgumentException.class,
          () -> DatabaseTable.forEachTable(database, "select 1 as n", 0, tables::add));
    }
  }

  @Test
  void anInfiniteNumberFailsItsRowAlone() throws SQLException, IOException {
    try (Connection database = DriverManager.getConnection("jdbc:sqlite::memory:")) {
      DatabaseTable.write(waters(), database, "waters");
      String query =
          "select case sample when 'spring' then 9e999 else \"calcium [mg/L]\" end as"
              + " \"calcium [mg/L]\" from waters";
      List<Table> tables = new ArrayList<>(List.of(DatabaseTable.read(database, query)));
      DatabaseTable.forEachTable(database, query, 10, tables::add);
      for (Table table : tables) {
        assertEquals(92, table.column("calcium").value(0));
        assertEquals(
            "row 2, column \"calcium [mg/L]\": Infinity is not a finite number",
            table.column("calcium").failures().get(0).toString());
      }
    }
  }
}
