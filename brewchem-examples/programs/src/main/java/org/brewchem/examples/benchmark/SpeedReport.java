package org.brewchem.examples.benchmark;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Times the library and the yardstick, a C++ program that solves the same liquids at level activity
 * as fast as the hardware allows, in turns in one run, and prints multiples. Needs {@code g++}.
 *
 * <p>Both are judged by the shortest of many short measurements, since a busy machine can only make
 * a measurement longer.
 */
public final class SpeedReport {

  private static final Path YARDSTICK =
      Path.of("brewchem-examples", "programs", "src", "main", "cpp");
  private static final String SCALAR_NEWTON = "yardstick_B_newton ";
  private static final String BYTES = "gc.alloc.rate.norm";
  private static final String[] LIQUIDS = {"waters", "beers"};
  private static final int ROUNDS = 3;
  private static final int RUNS_A_ROUND = 3;

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
    for (String liquid : LIQUIDS) {
      try (InputStream in =
          Objects.requireNonNull(SpeedReport.class.getResourceAsStream(liquid + ".csv"))) {
        Files.copy(in, folder.resolve(liquid + ".csv"));
      }
    }

    Map<String, Double> yardstick = new TreeMap<>();
    Map<String, Double> shortest = new LinkedHashMap<>();
    Map<String, RunResult> results = new LinkedHashMap<>();
    for (int round = 0; round < ROUNDS; round++) {
      for (int i = 0; i < RUNS_A_ROUND; i++) {
        for (String liquid : LIQUIDS) {
          String csv = folder.resolve(liquid + ".csv").toString();
          double ns = 1000 * scalarNewton(run(program, "bench", csv, "12"));
          yardstick.merge(liquid, ns, Math::min);
        }
      }
      for (RunResult result : benchmarks()) {
        String name = name(result.getParams());
        shortest.merge(name, result.getPrimaryResult().getStatistics().getMin(), Math::min);
        results.put(name, result);
      }
    }

    StringBuilder table =
        new StringBuilder("| what is solved | ns | multiple of the yardstick | bytes |\n")
            .append("|---|---|---|---|\n");
    yardstick.forEach(
        (liquid, ns) ->
            table.append(
                String.format(Locale.ROOT, "| yardstick, %s | %.0f | 1 | |%n", liquid, ns)));
    shortest.forEach(
        (name, ns) -> {
          RunResult result = Objects.requireNonNull(results.get(name));
          String liquid = result.getParams().getParam("liquid");
          double unit = Objects.requireNonNull(yardstick.get(liquid == null ? "waters" : liquid));
          table.append(
              String.format(
                  Locale.ROOT,
                  "| %s | %.0f | %.2f | %.0f |%n",
                  name,
                  ns,
                  ns / unit,
                  bytes(result)));
        });
    System.out.print(table);
  }

  private static Collection<RunResult> benchmarks() throws RunnerException {
    return new Runner(
            new OptionsBuilder()
                .include(SolveBenchmark.class.getSimpleName())
                .include(TableRowsBenchmark.class.getSimpleName())
                .warmupIterations(6)
                .warmupTime(TimeValue.milliseconds(500))
                .measurementIterations(20)
                .measurementTime(TimeValue.milliseconds(100))
                .forks(1)
                .addProfiler(GCProfiler.class)
                .verbosity(VerboseMode.SILENT)
                .build())
        .run();
  }

  private static String name(BenchmarkParams parameters) {
    String benchmark = parameters.getBenchmark();
    StringBuilder name = new StringBuilder(benchmark.substring(benchmark.lastIndexOf('.') + 1));
    for (String key : parameters.getParamsKeys()) {
      String value = parameters.getParam(key);
      name.append(", ").append(key.equals("threads") ? "threads " + value : value);
    }
    return name.toString();
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
