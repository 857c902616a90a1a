package org.brewchem.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.brewchem.readers.CsvFile;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.table.Table;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The program at a fiftieth of its size. */
class MillionWatersTest {

  private static final int ROWS = 20_000;
  private static final int BAD = 20;

  private static final Chemistry ACTIVITY = Chemistry.of(Level.ACTIVITY);

  @TempDir private Path directory;

  @Test
  void everyBadRowFailsAndTheOthersAreRight() throws IOException {
    Path waters = directory.resolve("waters.csv");
    Path results = directory.resolve("results.csv");
    MillionWaters.write(waters, ROWS, BAD);
    MillionWaters.Summary summary =
        MillionWaters.calculate(waters, results, 1, ACTIVITY, (rows, share) -> {});
    assertEquals(ROWS, summary.rows());
    assertEquals(BAD, summary.failed());
    assertEquals(
        Map.of("Unreadable", 8, "Missing", 4, "NotPossible", 4, "NoSolution", 4),
        summary.failures());
    assertTrue(summary.checked() >= 20);
    assertEquals(0, summary.largestDifferenceOfPH(), 1e-11);
    assertEquals(0, summary.largestDifferenceOfAlkalinity(), 1e-9);
    assertEquals(0, summary.largestDifferenceOfResidualAlkalinity(), 1e-9);

    Table found = CsvFile.of(results).withTexts("sample", "failure").read();
    assertEquals(ROWS, found.size());
    assertEquals(BAD, found.column("residual alkalinity").failures().size());
    assertEquals(BAD, found.texts("failure").stream().filter(text -> !text.isEmpty()).count());
    assertEquals("W" + ROWS, found.texts("sample").get(ROWS - 1));
    assertTrue(found.column("pH").value(0) > 6 && found.column("pH").value(0) < 10);
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void twoThreadsWriteTheSameFile(Level level) throws IOException {
    Chemistry chemistry = Chemistry.of(level);
    Path waters = directory.resolve("waters.csv");
    MillionWaters.write(waters, 5000, 5);
    Path one = directory.resolve("one.csv");
    Path two = directory.resolve("two.csv");
    MillionWaters.calculate(waters, one, 1, chemistry, (rows, share) -> {});
    MillionWaters.calculate(waters, two, 2, chemistry, (rows, share) -> {});
    assertEquals(-1, Files.mismatch(one, two));
  }
}
