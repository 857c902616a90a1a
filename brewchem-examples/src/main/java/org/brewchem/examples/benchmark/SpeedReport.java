package org.brewchem.examples.benchmark;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Times the library and the yardstick, a C++ program that solves the same liquids at level activity
 * as fast as the hardware allows, one after the other in one run, and prints multiples. Needs
 * {@code g++}.
 */
public final class SpeedReport {

  private static final Path YARDSTICK = Path.of("brewchem-examples", "src", "main", "cpp");
  private static final String SCALAR_NEWTON = "yardstick_B_newton ";
  private static final String BYTES = "gc.alloc.rate.norm";

  private SpeedReport() {}

  /**
   * Runs both and prints a table.
   *
   * @param arguments the folder of {@code yardstick.cpp}; that of this module if there is none
   * @throws IOException if the yardstick cannot be built or run
   * @throws InterruptedException if the run is interrupted
   * @throws RunnerException if a benchmark fails
   */
  public static void main(String[] arguments)
      throws IOException, InterruptedException, RunnerException {
    Path source =
        (arguments.length > 0 ? Path.of(arguments[0]) : YARDSTICK).resolve("yardstick.cpp");
    Path folder = Files.createTempDirectory("yardstick");
    String program = folder.resolve("yardstick").toString();
    run("g++", "-O3", "-march=native", "-o", program, source.toString());
    Map<String, Double> yardstick = new TreeMap<>();
    for (String liquid : new String[] {"waters", "beers"}) {
      Path csv = folder.resolve(liquid + ".csv");
      try (InputStream in =
          Objects.requireNonNull(SpeedReport.class.getResourceAsStream(liquid + ".csv"))) {
        Files.copy(in, csv);
      }
      yardstick.put(liquid, 1000 * scalarNewton(run(program, "bench", csv.toString(), "12")));
    }
    StringBuilder table =
        new StringBuilder("| benchmark | liquid | level | ns | multiple | bytes |\n")
            .append("|---|---|---|---|---|---|\n");
    yardstick.forEach(
        (liquid, ns) ->
            table.append(
                String.format(
                    Locale.ROOT, "| yardstick | %s | activity | %.0f | 1 | |%n", liquid, ns)));
    for (RunResult result :
        new Runner(
                new OptionsBuilder()
                    .include(SolveBenchmark.class.getSimpleName())
                    .addProfiler(GCProfiler.class)
                    .verbosity(VerboseMode.SILENT)
                    .build())
            .run()) {
      String liquid = result.getParams().getParam("liquid");
      String name = result.getParams().getBenchmark();
      double ns = result.getPrimaryResult().getScore();
      table.append(
          String.format(
              Locale.ROOT,
              "| %s | %s | %s | %.0f | %.2f | %.3f |%n",
              name.substring(name.lastIndexOf('.') + 1),
              liquid,
              result.getParams().getParam("level").toLowerCase(Locale.ROOT),
              ns,
              ns / Objects.requireNonNull(yardstick.get(liquid)),
              bytes(result)));
    }
    System.out.print(table);
  }

  private static double bytes(RunResult result) {
    return result.getSecondaryResults().entrySet().stream()
        .filter(entry -> entry.getKey().endsWith(BYTES))
        .mapToDouble(entry -> entry.getValue().getScore())
        .findFirst()
        .orElse(Double.NaN);
  }

  private static double scalarNewton(String output) {
    int from = output.indexOf(SCALAR_NEWTON) + SCALAR_NEWTON.length();
    return Double.parseDouble(output.substring(from, output.indexOf('\n', from)).strip());
  }

  private static String run(String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    StringBuilder output = new StringBuilder();
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      String line;
      while ((line = reader.readLine()) != null) {
        output.append(line).append('\n');
      }
    }
    if (process.waitFor() != 0) {
      throw new IOException(String.join(" ", command) + " failed: " + output);
    }
    return output.toString();
  }
}
