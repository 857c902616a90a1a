package org.brewchem.scale;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.brewchem.examples.InventedWaters;
import org.brewchem.examples.WaterResults;
import org.brewchem.figure.Figure;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.jspecify.annotations.Nullable;

/**
 * Waters and their results in folders of Parquet files: makes invented ones, calculates them
 * through DuckDB, and holds results, whoever calculated them, against a plain loop over tables and
 * against single solutions. All at level activity.
 */
public final class ParquetWaters {

  /** The chemistry under which the waters are solved. */
  public static final Chemistry CHEMISTRY = Chemistry.of(Level.ACTIVITY);

  private static final int ROWS_OF_A_TABLE = 20_000;
  private static final int SINGLE_EVERY = 997;
  private static final String SAMPLE = "sample";
  private static final String FOUND = "found ";

  /**
   * What a comparison found.
   *
   * @param rows the rows compared
   * @param failures how many of them have no number in the loop
   * @param different how many rows differ from the loop in a bit, in their sample or in the reason
   *     of a failure
   * @param single how many rows were solved as a single solution too
   * @param largestDifference the largest difference from a single solution, relative to the number
   *     or to 1, whichever is larger
   * @param secondsOfLoop the time on its processor that the loop took, waters in memory to results
   *     in memory, s
   */
  public record Comparison(
      long rows,
      long failures,
      long different,
      long single,
      double largestDifference,
      double secondsOfLoop) {}

  private ParquetWaters() {}

  /**
   * Writes invented waters, a few of them spoilt: a calcium that is NaN, a magnesium that is
   * missing, a sodium below 0, a chloride beyond any solution.
   *
   * @param folder the folder to make
   * @param rows how many
   * @param bad how many of them are spoilt, spread evenly
   * @throws IOException if the folder cannot be made
   */
  public static void write(Path folder, int rows, int bad) throws IOException {
    InventedWaters waters = new InventedWaters();
    int every = bad == 0 ? Integer.MAX_VALUE : rows / bad;
    try (ParquetFolder out = ParquetFolder.at(folder, noWaters())) {
      for (int row = 0; row < rows; row++) {
        double[] water = waters.next();
        @Nullable Double[] numbers = new @Nullable Double[water.length];
        for (int c = 0; c < water.length; c++) {
          numbers[c] = water[c];
        }
        if (row % every == every / 2 && row / every < bad) {
          spoil(numbers, row / every);
        }
        out.add(List.of("W" + (row + 1)), numbers);
      }
    }
  }

  private static Table noWaters() {
    return Table.withHeadings(InventedWaters.HEADINGS, List.of(SAMPLE)).build();
  }

  private static void spoil(@Nullable Double[] numbers, int how) {
    switch (how % 4) {
      case 0 -> numbers[0] = Double.NaN;
      case 1 -> numbers[1] = null;
      case 2 -> numbers[2] = -3.0;
      default -> numbers[4] = 900_000.0;
    }
  }

  /**
   * Calculates the results of a folder of waters through DuckDB, on one thread.
   *
   * @param waters the folder to read
   * @param results the folder to make
   * @throws IOException if a folder cannot be read or made
   */
  public static void calculate(Path waters, Path results) throws IOException {
    try (ParquetFolder out = ParquetFolder.at(results, WaterResults.of(noWaters(), CHEMISTRY, 1))) {
      ParquetFolder.read(
          "select * from " + ParquetFolder.filesOf(waters),
          ROWS_OF_A_TABLE,
          table -> out.accept(WaterResults.of(table, CHEMISTRY, 1)));
    }
  }

  /**
   * Holds results against a plain loop over tables, and every 997th row against a single solution.
   *
   * @param waters the folder of the waters
   * @param results the folder of the results, in any order
   * @return what was found
   * @throws IOException if a folder cannot be read
   */
  public static Comparison compare(Path waters, Path results) throws IOException {
    StringBuilder found = new StringBuilder();
    Table none = WaterResults.of(noWaters(), CHEMISTRY, 1);
    none.textNames().forEach(name -> found.append(foundAs(name)));
    none.columns().forEach(column -> found.append(foundAs(column.heading())));
    Tally tally = new Tally();
    ParquetFolder.read(
        "select w.*"
            + found
            + " from "
            + ParquetFolder.filesOf(waters)
            + " w full join "
            + ParquetFolder.filesOf(results)
            + " r on w.sample = r.sample",
        ROWS_OF_A_TABLE,
        tally::add);
    return tally.comparison();
  }

  private static String foundAs(String name) {
    return ", r."
        + ParquetFolder.identifier(name)
        + " as "
        + ParquetFolder.identifier(FOUND + name);
  }

  /** Compares table by table. */
  private static final class Tally {

    private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    private long rows;
    private long failures;
    private long different;
    private long single;
    private double largestDifference;
    private long nanoseconds;

    void add(Table table) {
      Table waters = table.select(namesOfWaters());
      long start = threads.getCurrentThreadCpuTime();
      Table loop = WaterResults.of(waters, CHEMISTRY, 1);
      nanoseconds += threads.getCurrentThreadCpuTime() - start;
      List<Column> columns = loop.columns();
      List<Column> found = columns.stream().map(c -> table.column(FOUND + c.name())).toList();
      for (int i = 0; i < table.size(); i++) {
        boolean same = true;
        for (String name : loop.textNames()) {
          same &= loop.texts(name).get(i).equals(table.texts(FOUND + name).get(i));
        }
        for (int c = 0; c < columns.size(); c++) {
          same &= sameBits(columns.get(c), found.get(c), i);
        }
        different += same ? 0 : 1;
        if (!columns.get(0).isPresent(i)) {
          failures++;
        } else if ((rows + i) % SINGLE_EVERY == 0) {
          compareWithSingle(InventedWaters.solution(waters, i, CHEMISTRY), table, i);
        }
      }
      rows += table.size();
    }

    private static String[] namesOfWaters() {
      Table none = noWaters();
      return Stream.concat(none.textNames().stream(), none.columns().stream().map(Column::name))
          .toArray(String[]::new);
    }

    private static boolean sameBits(Column one, Column other, int i) {
      if (one.isPresent(i) && other.isPresent(i)) {
        return Double.doubleToRawLongBits(one.value(i))
            == Double.doubleToRawLongBits(other.value(i));
      }
      return one.isPresent(i) == other.isPresent(i);
    }

    private void compareWithSingle(Solution water, Table table, int i) {
      single++;
      for (Figure<?> figure : WaterResults.FIGURES) {
        double expected = water.answer(figure).number();
        double difference = Math.abs(table.column(FOUND + figure.name()).value(i) - expected);
        largestDifference =
            Math.max(largestDifference, difference / Math.max(1, Math.abs(expected)));
      }
    }

    Comparison comparison() {
      return new Comparison(
          rows, failures, different, single, largestDifference, nanoseconds / 1e9);
    }
  }
}
