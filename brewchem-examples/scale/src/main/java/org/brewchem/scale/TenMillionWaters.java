package org.brewchem.scale;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Makes ten million invented waters in Parquet, calculates them through DuckDB, and compares; each
 * in a run of its own, so that time and memory are those of one of them.
 */
public final class TenMillionWaters {

  private static final int ROWS = 10_000_000;
  private static final int ROWS_TO_A_BAD_ONE = 1000;

  private TenMillionWaters() {}

  /**
   * Runs one of the three and prints what came of it.
   *
   * @param arguments {@code write WATERS} and perhaps the number of rows, {@code calculate WATERS
   *     RESULTS} or {@code compare WATERS RESULTS}, where the names are those of folders
   * @throws IOException if a folder cannot be read or made
   * @throws IllegalArgumentException if the arguments are others
   */
  public static void main(String[] arguments) throws IOException {
    String what = arguments.length > 1 ? arguments[0] : "";
    if (what.equals("write")) {
      int rows = arguments.length > 2 ? Integer.parseInt(arguments[2]) : ROWS;
      ParquetWaters.write(Path.of(arguments[1]), rows, rows / ROWS_TO_A_BAD_ONE);
    } else if (what.equals("calculate") && arguments.length == 3) {
      ParquetWaters.calculate(Path.of(arguments[1]), Path.of(arguments[2]));
    } else if (what.equals("compare") && arguments.length == 3) {
      print(ParquetWaters.compare(Path.of(arguments[1]), Path.of(arguments[2])));
    } else {
      throw new IllegalArgumentException(
          "arguments: write WATERS [ROWS], calculate WATERS RESULTS or compare WATERS RESULTS");
    }
    OperatingSystemMXBean process =
        ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
    System.out.printf(
        Locale.ROOT,
        "%s: %.1f s, %.1f s on processors%n",
        what,
        ManagementFactory.getRuntimeMXBean().getUptime() / 1e3,
        process.getProcessCpuTime() / 1e9);
  }

  private static void print(ParquetWaters.Comparison found) {
    System.out.printf(
        Locale.ROOT,
        "%,d rows, %,d failures, %,d rows different; %,d single solutions within %.1g; the loop"
            + " takes %.1f s, %,.0f rows/s%n",
        found.rows(),
        found.failures(),
        found.different(),
        found.single(),
        found.largestDifference(),
        found.secondsOfLoop(),
        found.rows() / found.secondsOfLoop());
  }
}
