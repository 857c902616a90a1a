package org.brewchem.scale;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.brewchem.readers.DatabaseTable;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Groups, quantiles and Parquet are a database's business; the waters are invented. */
class DuckDbTest {

  @TempDir private Path folder;

  private static Table waters() {
    Table.Builder rows =
        Table.withHeadings(
            List.of("calcium [mg/L]", "magnesium [mg/L]", "alkalinity [mg/L as CaCO3]"),
            List.of("well"));
    double[][] numbers = {{92, 11, 215}, {88, 12, 209}, {40, 5, 100}, {44, 6, 110}};
    for (int i = 0; i < numbers.length; i++) {
      rows.row().text(0, i < 2 ? "south" : "north");
      for (int c = 0; c < 3; c++) {
        rows.set(c, numbers[i][c]);
      }
    }
    rows.row().text(0, "north").set(0, 48);
    return rows.build();
  }

  @Test
  void aTableGoesInAndSqlBringsATableOut() throws SQLException {
    try (Connection duck = DriverManager.getConnection("jdbc:duckdb:")) {
      DatabaseTable.write(waters(), duck, "waters");
      Table means =
          DatabaseTable.read(
              duck,
              "select well, count(*) as rows, avg(\"calcium [mg/L]\") as \"calcium [mg/L]\","
                  + " median(\"magnesium [mg/L]\") as \"magnesium [mg/L]\","
                  + " avg(\"alkalinity [mg/L as CaCO3]\") as \"alkalinity [mg/L as CaCO3]\""
                  + " from waters group by well order by well");
      assertEquals(List.of("north", "south"), means.texts("well"));
      assertArrayEquals(new double[] {3, 2}, means.column("rows").values());
      assertArrayEquals(new double[] {44, 90}, means.column("calcium").values(), 1e-12);
      assertArrayEquals(new double[] {5.5, 11.5}, means.column("magnesium").values(), 1e-12);
      assertArrayEquals(new double[] {105, 212}, means.column("alkalinity").values(), 1e-12);
      assertEquals(2, Waters.from(means).residualAlkalinity().values().length);
    }
  }

  @Test
  void aTableIsKeptAsParquetToTheLastBit() throws SQLException {
    Path parquet = folder.resolve("waters.parquet");
    try (Connection duck = DriverManager.getConnection("jdbc:duckdb:");
        Statement statement = duck.createStatement()) {
      DatabaseTable.write(waters(), duck, "waters");
      statement.execute("copy waters to '" + parquet + "' (format parquet)");
      Table back = DatabaseTable.read(duck, "select * from '" + parquet + "'");
      assertEquals(waters().texts("well"), back.texts("well"));
      assertArrayEquals(
          waters().column("magnesium").valuesOr(-1), back.column("magnesium").valuesOr(-1), 0);
      assertEquals(5, back.size());
    }
  }
}
