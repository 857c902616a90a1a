package org.brewchem.examples.benchmark;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.brewchem.examples.InventedWaters;
import org.brewchem.pictures.Ground;
import org.brewchem.pictures.Picture;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;

/**
 * Measures what a row costs from a table of invented waters to their pH at level activity, for
 * tables of a thousand to ten million rows, and draws it. Needs a heap of 3 GB.
 *
 * <p>Time is that of the process on its processors, the collector of garbage included, so that
 * other programs count only as far as they disturb caches.
 */
public final class RowCost {

  private static final Path PICTURES = Path.of("docs", "pictures");
  private static final int LEAST_POWER = 3;
  private static final int MOST_POWER = 7;
  private static final int ROUNDS = 3;

  private RowCost() {}

  /**
   * Prints a table and writes the picture on light and on dark ground.
   *
   * @param arguments none are used
   * @throws IOException if a picture cannot be written
   */
  public static void main(String[] arguments) throws IOException {
    System.setProperty("java.awt.headless", "true");
    int most = rows(MOST_POWER);
    double[][] numbers = new double[InventedWaters.HEADINGS.size()][most];
    InventedWaters waters = new InventedWaters();
    for (int row = 0; row < most; row++) {
      double[] water = waters.next();
      for (int c = 0; c < numbers.length; c++) {
        numbers[c][row] = water[c];
      }
    }
    int sizes = MOST_POWER - LEAST_POWER + 1;
    double[] powers = new double[sizes];
    double[] shortest = new double[sizes];
    double[] powersOfAll = new double[sizes * ROUNDS];
    double[] all = new double[sizes * ROUNDS];
    System.out.printf("| rows | ns a row |%n|---|---|%n");
    for (int i = 0; i < sizes; i++) {
      powers[i] = LEAST_POWER + i;
      int rows = rows(LEAST_POWER + i);
      Waters table = table(numbers, rows);
      nanosecondsPerRow(table, rows, most); // to warm up
      for (int at = i * ROUNDS; at < (i + 1) * ROUNDS; at++) {
        powersOfAll[at] = powers[i];
        all[at] = nanosecondsPerRow(table, rows, most);
      }
      double[] rounds = Arrays.copyOfRange(all, i * ROUNDS, (i + 1) * ROUNDS);
      shortest[i] = Arrays.stream(rounds).min().orElseThrow();
      System.out.printf(
          Locale.ROOT,
          "| 1e%.0f | %.0f (%s) |%n",
          powers[i],
          shortest[i],
          Arrays.stream(rounds)
              .mapToObj(ns -> String.format(Locale.ROOT, "%.0f", ns))
              .collect(Collectors.joining(", ")));
    }
    Picture picture =
        Picture.of(
                "A row to its pH, by the rows of the table",
                "rows, as a power of ten",
                "time on a processor [ns a row]")
            .across(LEAST_POWER - 1, MOST_POWER + 1)
            .upFromZero()
            .line("shortest", powers, shortest)
            .points("three runs", powersOfAll, all);
    System.out.println(picture.save(PICTURES.resolve("row-cost-light.svg")));
    System.out.println(picture.on(Ground.DARK).save(PICTURES.resolve("row-cost-dark.svg")));
  }

  private static int rows(int power) {
    return (int) Math.pow(10, power);
  }

  private static Waters table(double[][] numbers, int rows) {
    Column[] columns = new Column[numbers.length];
    for (int c = 0; c < columns.length; c++) {
      columns[c] = Column.of(InventedWaters.HEADINGS.get(c), Arrays.copyOf(numbers[c], rows));
    }
    return Waters.from(Table.of(columns)).under(Chemistry.of(Level.ACTIVITY));
  }

  /** Solves a table again and again until as many rows are solved as the longest one has. */
  private static double nanosecondsPerRow(Waters waters, int rows, int most) {
    OperatingSystemMXBean process =
        ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
    double sum = 0;
    long start = process.getProcessCpuTime();
    for (int done = 0; done < most; done += rows) {
      sum += waters.pH().value(rows - 1);
    }
    long took = process.getProcessCpuTime() - start;
    if (!(sum > 0)) {
      throw new IllegalStateException("no pH was found");
    }
    return (double) took / most;
  }
}
