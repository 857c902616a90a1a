package org.brewchem.scale;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.brewchem.table.Table;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The job of ten million rows at a five-hundredth of its size. */
class ParquetWatersTest {

  private static final int ROWS = 20_000;
  private static final int BAD = 20;

  @TempDir private Path folder;

  private Path waters() throws IOException {
    Path waters = folder.resolve("waters, rock's");
    ParquetWaters.write(waters, ROWS, BAD);
    return waters;
  }

  @Test
  void theResultsAreThoseOfAPlainLoopToTheBitAndOfSingleSolutions() throws IOException {
    Path waters = waters();
    Path results = folder.resolve("results");
    ParquetWaters.calculate(waters, results);
    ParquetWaters.Comparison found = ParquetWaters.compare(waters, results);
    assertEquals(ROWS, found.rows());
    assertEquals(BAD, found.failures());
    assertEquals(0, found.different());
    assertTrue(found.single() >= 20);
    assertEquals(0, found.largestDifference(), 1e-12);
  }

  @Test
  void aBadRowIsKeptWithItsReason() throws IOException {
    Path waters = waters();
    Path results = folder.resolve("results");
    ParquetWaters.calculate(waters, results);
    List<Table> tables = new ArrayList<>();
    ParquetFolder.read(
        "select * from " + ParquetFolder.filesOf(results) + " where failure <> '' limit 4",
        10,
        tables::add);
    Table bad = tables.get(0);
    assertEquals(List.of("W501", "W1501", "W2501", "W3501"), bad.texts("sample"));
    assertEquals(4, bad.column("pH").failures().size());
    List<String> reasons = bad.texts("failure");
    assertEquals("calcium [mg/L]: NaN is not a finite number", reasons.get(0));
    assertEquals("magnesium [mg/L]: is missing", reasons.get(1));
    assertTrue(reasons.get(2).contains("-3 mg/L is not possible"), reasons.get(2));
    assertTrue(reasons.get(3).contains("pH"), reasons.get(3));
  }

  @Test
  void aComparisonCountsWhatDiffers() throws IOException {
    Path waters = waters();
    Path others = folder.resolve("others");
    ParquetWaters.write(others, ROWS, 0);
    Path results = folder.resolve("results");
    ParquetWaters.calculate(others, results);
    assertEquals(BAD, ParquetWaters.compare(waters, results).different());
  }

  @Test
  void aNameMayHoldAQuotationMark() throws IOException {
    Table named =
        Table.withHeadings(List.of("calcium [mg/L]"), List.of("the \"old\" well")).build();
    Path written = folder.resolve("named");
    try (ParquetFolder out = ParquetFolder.at(written, named)) {
      out.add(List.of("deep"), new Double[] {92.0});
    }
    List<Table> tables = new ArrayList<>();
    ParquetFolder.read("select * from " + ParquetFolder.filesOf(written), 10, tables::add);
    assertEquals(List.of("deep"), tables.get(0).texts("the \"old\" well"));
    assertEquals(92, tables.get(0).column("calcium").value(0));
  }

  @Test
  void aFolderThatIsThereIsNotWrittenInto() throws IOException {
    Path waters = waters();
    assertThrows(FileAlreadyExistsException.class, () -> ParquetWaters.write(waters, 10, 0));
  }
}
