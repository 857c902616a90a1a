package org.brewchem.examples;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.brewchem.figure.Figure;
import org.brewchem.readers.ConsoleProgress;
import org.brewchem.readers.CsvFile;
import org.brewchem.readers.CsvWriter;
import org.brewchem.readers.Progress;
import org.brewchem.readers.TableConsumer;
import org.brewchem.readers.TablesBehind;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.table.Column;
import org.brewchem.table.Failure;
import org.brewchem.table.Table;
import org.brewchem.water.WaterFigures;

/**
 * Makes a CSV file of a million random waters with a thousand bad rows among them, and another one
 * of their pH, alkalinity and residual alkalinity, in little memory. The waters are invented.
 *
 * <p>Some rows are calculated once more one by one, without a table, and compared.
 */
public final class MillionWaters {

  private static final int ROWS_OF_A_TABLE = 20_000;
  private static final int CHECK_EVERY = 997;

  /**
   * What came of a file.
   *
   * @param rows the rows read
   * @param failures how many rows failed, by the kind of the failure
   * @param checked how many rows were calculated one by one too
   * @param largestDifferenceOfPH the largest difference between table and single calculation
   * @param largestDifferenceOfAlkalinity the same of the alkalinity, mg/L as CaCO3
   * @param largestDifferenceOfResidualAlkalinity the same of the residual alkalinity, mg/L as CaCO3
   */
  public record Summary(
      long rows,
      Map<String, Integer> failures,
      int checked,
      double largestDifferenceOfPH,
      double largestDifferenceOfAlkalinity,
      double largestDifferenceOfResidualAlkalinity) {

    /**
     * Returns how many rows failed.
     *
     * @return the count
     */
    public int failed() {
      return failures.values().stream().mapToInt(Integer::intValue).sum();
    }
  }

  private MillionWaters() {}

  /**
   * Writes both files into a temporary directory, prints what came of it, and deletes them.
   *
   * @param arguments the number of rows, a million if it is left out, the number of threads, 1 if
   *     it is left out, and the level of the chemistry, {@code ACTIVITY} if it is left out
   * @throws IOException if a file cannot be written or read
   */
  public static void main(String[] arguments) throws IOException {
    int rows = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1_000_000;
    int threads = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 1;
    Level level = arguments.length > 2 ? Level.valueOf(arguments[2]) : Level.ACTIVITY;
    Path directory = Files.createTempDirectory("waters");
    Path waters = directory.resolve("waters.csv");
    Path results = directory.resolve("results.csv");
    try {
      write(waters, rows, rows / 1000);
      long start = System.nanoTime();
      Summary summary;
      try (ConsoleProgress progress = ConsoleProgress.of("waters")) {
        summary = calculate(waters, results, threads, Chemistry.of(level), progress);
      }
      System.out.printf(
          Locale.ROOT,
          "%,d rows in %.1f s, %,d failures %s%n%,d rows checked one by one: pH within %.1g,"
              + " alkalinity %.1g, residual alkalinity %.1g mg/L as CaCO3%n",
          summary.rows(),
          (System.nanoTime() - start) / 1e9,
          summary.failed(),
          summary.failures(),
          summary.checked(),
          summary.largestDifferenceOfPH(),
          summary.largestDifferenceOfAlkalinity(),
          summary.largestDifferenceOfResidualAlkalinity());
    } finally {
      Files.deleteIfExists(waters);
      Files.deleteIfExists(results);
      Files.deleteIfExists(directory);
    }
  }

  /**
   * Writes invented waters.
   *
   * @param path the file
   * @param rows how many
   * @param bad how many of them are spoilt, spread evenly
   * @throws IOException if the file cannot be written
   */
  public static void write(Path path, int rows, int bad) throws IOException {
    InventedWaters waters = new InventedWaters();
    int every = bad == 0 ? Integer.MAX_VALUE : rows / bad;
    try (BufferedWriter out = Files.newBufferedWriter(path)) {
      out.write("sample," + String.join(",", InventedWaters.HEADINGS) + "\n");
      for (int row = 0; row < rows; row++) {
        String[] cells = cells(waters.next());
        int spoilt = row / every;
        if (row % every == every / 2 && spoilt < bad) {
          spoil(cells, spoilt);
        }
        out.write("W" + (row + 1) + "," + String.join(",", cells) + "\n");
      }
    }
  }

  private static String[] cells(double[] water) {
    String[] cells = new String[water.length];
    for (int i = 0; i < cells.length; i++) {
      cells[i] = String.format(Locale.ROOT, i < cells.length - 1 ? "%.3f" : "%.4f", water[i]);
    }
    return cells;
  }

  private static void spoil(String[] cells, int how) {
    switch (how % 5) {
      case 0 -> cells[0] = "\"14,62\"";
      case 1 -> cells[1] = "";
      case 2 -> cells[2] = "-3.0";
      case 3 -> cells[6] = "n.d.";
      default -> cells[4] = "900000";
    }
  }

  /**
   * Reads a file of waters and writes another with their pH, alkalinity and residual alkalinity.
   *
   * @param waters the file to read
   * @param results the file to write
   * @param threads how many threads solve the rows
   * @param chemistry under which they are solved
   * @param progress is told how far it is
   * @return what came of it
   * @throws IOException if a file cannot be written or read
   */
  public static Summary calculate(
      Path waters, Path results, int threads, Chemistry chemistry, Progress progress)
      throws IOException {
    Tally tally = new Tally(chemistry);
    CsvFile file = CsvFile.of(waters).withTexts("sample");
    try (CsvWriter out = CsvWriter.to(results)) {
      TableConsumer use = table -> out.write(tally.results(table, threads));
      if (threads == 1) {
        file.forEachTable(ROWS_OF_A_TABLE, use, progress);
      } else {
        try (TablesBehind behind = TablesBehind.of(use)) {
          file.forEachTable(ROWS_OF_A_TABLE, behind, progress);
        }
      }
    }
    return tally.summary();
  }

  /** Counts failures and compares with calculations one by one. */
  private static final class Tally {

    private final Chemistry chemistry;
    private final Map<String, Integer> failures = new TreeMap<>();
    private long rows;
    private int checked;
    private double ofPH;
    private double ofAlkalinity;
    private double ofResidualAlkalinity;

    Tally(Chemistry chemistry) {
      this.chemistry = chemistry;
    }

    Table results(Table table, int threads) {
      Table results = WaterResults.of(table, chemistry, threads);
      Column residualAlkalinity = results.column("residual alkalinity");
      for (Failure failure : residualAlkalinity.failures()) {
        failures.merge(failure.getClass().getSimpleName(), 1, Integer::sum);
      }
      for (int i = 0; i < table.size(); i++) {
        if ((rows + i) % CHECK_EVERY == 0 && residualAlkalinity.isPresent(i)) {
          check(InventedWaters.solution(table, i, chemistry), results, i);
        }
      }
      rows += table.size();
      return results;
    }

    private void check(Solution water, Table results, int i) {
      checked++;
      ofPH = Math.max(ofPH, difference(water, Figures.PH_VALUE, results, i));
      ofAlkalinity =
          Math.max(ofAlkalinity, difference(water, Figures.CARBONATE_ALKALINITY, results, i));
      ofResidualAlkalinity =
          Math.max(
              ofResidualAlkalinity,
              difference(water, WaterFigures.RESIDUAL_ALKALINITY, results, i));
    }

    private static double difference(Solution water, Figure<?> figure, Table results, int i) {
      return Math.abs(water.answer(figure).number() - results.column(figure.name()).value(i));
    }

    Summary summary() {
      return new Summary(
          rows, Map.copyOf(failures), checked, ofPH, ofAlkalinity, ofResidualAlkalinity);
    }
  }
}
