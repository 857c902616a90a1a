package org.brewchem.readers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
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
}
