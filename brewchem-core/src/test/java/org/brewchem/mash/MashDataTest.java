package org.brewchem.mash;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.brewchem.internal.DataTable;
import org.junit.jupiter.api.Test;

/** The rows of the room: sources that resolve, ranges in order. */
class MashDataTest {

  private static final Path SOURCES =
      Path.of("").toAbsolutePath().resolveSibling("docs/sources.md");
  private static final List<String> TABLES =
      List.of("malts.csv", "mash-values.csv", "wort-ranges.csv");

  @Test
  void everySourceKeyResolvesAndSaysHowItIsKnown() throws IOException {
    String sources = Files.readString(SOURCES);
    int rows = 0;
    for (String table : TABLES) {
      for (DataTable.Row row : DataTable.read(Mash.class, table)) {
        rows++;
        String heading = "### `" + row.text("source_key") + "`";
        assertTrue(sources.contains(heading), row.place() + ": " + heading);
        assertTrue(
            Set.of("seen", "from memory", "mixed", "computed").contains(row.text("how_known")),
            row.place());
      }
    }
    assertEquals(ROWS, rows);
  }

  private static final int ROWS = 31;

  @Test
  void rangesEncloseTheirValue() {
    for (DataTable.Row row : DataTable.read(Mash.class, "mash-values.csv")) {
      if (row.optionalNumber("lower").isPresent()) {
        assertTrue(
            row.number("lower") <= row.number("value")
                && row.number("value") <= row.number("upper"),
            row.place());
      }
    }
    for (DataTable.Row row : DataTable.read(Mash.class, "wort-ranges.csv")) {
      assertTrue(row.number("lower") < row.number("upper"), row.place());
    }
    for (DataTable.Row row : DataTable.read(Mash.class, "malts.csv")) {
      assertTrue(row.number("capacity_low") < row.number("capacity_high"), row.place());
      assertTrue(row.number("u_pH") > 0, row.place());
    }
  }

  @Test
  void everyKindHasItsRowAndEveryRowItsKind() {
    List<String> kinds = new ArrayList<>();
    for (MaltKind kind : MaltKind.values()) {
      kinds.add(kind.toString());
    }
    assertEquals(
        kinds,
        DataTable.read(Mash.class, "malts.csv").stream().map(row -> row.text("kind")).toList());
  }
}
