package org.brewchem.buffer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.brewchem.internal.DataTable;
import org.brewchem.substance.HowKnown;
import org.junit.jupiter.api.Test;

class TypicalBeerTest {

  private static final List<DataTable.Row> ROWS =
      DataTable.read(TypicalBeer.class, "typical-beer.csv");

  @Test
  void everyRowHasASourceThatIsListed() throws IOException {
    String sources =
        Files.readString(Path.of("").toAbsolutePath().getParent().resolve("docs/sources.md"));
    assertEquals(13, ROWS.size());
    for (DataTable.Row row : ROWS) {
      assertTrue(sources.contains("### `" + row.text("source_key") + "`"), row.place());
      assertTrue(HowKnown.of(row.text("how_known")) != HowKnown.MIXED, row.place());
      assertTrue(row.number("millimoles_per_litre") > 0, row.place());
    }
  }

  @Test
  void thereIsOneSpreadToEachPart() {
    for (List<TypicalBeer.Part> parts :
        List.of(TypicalBeer.acids(), TypicalBeer.groups(), TypicalBeer.metals())) {
      assertEquals(
          1, parts.stream().mapToDouble(TypicalBeer.Part::relativeSpread).distinct().count());
    }
  }

  @Test
  void theMetalsAreCalciumAndMagnesium() {
    assertEquals(
        List.of("calcium", "magnesium"),
        TypicalBeer.metals().stream().map(part -> part.component().name()).toList());
  }
}
