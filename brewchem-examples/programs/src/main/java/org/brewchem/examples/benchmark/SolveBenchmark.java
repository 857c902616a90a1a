package org.brewchem.examples.benchmark;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.EquilibriumRows;
import org.brewchem.solution.Level;
import org.brewchem.substance.Component;
import org.brewchem.substance.IonPair;
import org.brewchem.substance.PairSet;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The time of one solve of the random liquids that the yardstick solves too. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(1)
public class SolveBenchmark {

  static final int LIQUIDS = 2000;
  private static final String ACTIVITY = "activity";
  private static final int CURVES = 20;
  private static final int POINTS = 100;

  /** Base added from one point of a curve to the next, Eq/kg. */
  private static final double STEP = 3e-4;

  private static final Set<Component> ALKALI = Set.of(Component.SODIUM, Component.POTASSIUM);

  private static final Map<String, Component> COMPONENTS =
      Map.ofEntries(
          Map.entry("sodium", Component.SODIUM),
          Map.entry("potassium", Component.POTASSIUM),
          Map.entry("calcium", Component.CALCIUM),
          Map.entry("magnesium", Component.MAGNESIUM),
          Map.entry("chloride", Component.CHLORIDE),
          Map.entry("sulfate", Component.SULFATE),
          Map.entry("phosphate", Component.PHOSPHATE),
          Map.entry("citrate", Component.CITRATE),
          Map.entry("carbonate", Component.CARBONATE),
          Map.entry("lactate", Component.LACTATE),
          Map.entry("acetate", Component.ACETATE),
          Map.entry("succinate", Component.SUCCINATE));

  /** Which file of liquids. */
  @Param({"waters", "beers"})
  public String liquid = "waters";

  /** How much chemistry: no pairs, those of calcium and magnesium alone, or the default set. */
  @Param({ACTIVITY, "pairs of Ca and Mg", "pairs"})
  public String chemistry = ACTIVITY;

  private double[][] totals = new double[0][];
  private Equilibria equilibria =
      Equilibria.of(List.of(), Temperature.ofCelsius(25), Chemistry.standard());

  private EquilibriumRows blocks = EquilibriumRows.like(equilibria);

  /**
   * Reads the liquids.
   *
   * @throws IOException if the file cannot be read
   */
  @Setup
  public void read() throws IOException {
    List<double[]> rows = new ArrayList<>();
    try (InputStream in =
            Objects.requireNonNull(SolveBenchmark.class.getResourceAsStream(liquid + ".csv"));
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      String[] headings = reader.readLine().split(",", -1);
      List<Component> components = new ArrayList<>();
      for (int c = 1; c < headings.length; c++) {
        components.add(Objects.requireNonNull(COMPONENTS.get(headings[c])));
      }
      equilibria = Equilibria.of(components, Temperature.ofCelsius(25), chemistry());
      blocks = EquilibriumRows.like(equilibria);
      String line;
      while ((line = reader.readLine()) != null) {
        String[] cells = line.split(",", -1);
        double[] row = new double[components.size()];
        for (int c = 0; c < row.length; c++) {
          row[c] = Double.parseDouble(cells[c + 1]);
        }
        rows.add(row);
      }
    }
    totals = rows.toArray(new double[0][]);
  }

  /**
   * Solves every liquid from a cold start.
   *
   * @return the sum of their pH, for the harness to consume
   */
  @Benchmark
  @OperationsPerInvocation(LIQUIDS)
  public double cold() {
    double sum = 0;
    for (double[] row : totals) {
      fill(row);
      equilibria.forget();
      sum += equilibria.pH();
    }
    return sum;
  }

  /**
   * Follows titration curves of a hundred points, each solve started from the last.
   *
   * @return the sum of their pH, for the harness to consume
   */
  @Benchmark
  @OperationsPerInvocation(CURVES * POINTS)
  public double curve() {
    double sum = 0;
    for (int i = 0; i < CURVES; i++) {
      fill(totals[i]);
      for (int point = 0; point < POINTS; point++) {
        equilibria.setInertCharge(STEP * point);
        sum += equilibria.pH();
      }
      equilibria.setInertCharge(0);
    }
    return sum;
  }

  /**
   * Solves every liquid from a cold start, a block of rows at a time.
   *
   * @return the sum of their pH, for the harness to consume
   */
  @Benchmark
  @OperationsPerInvocation(LIQUIDS)
  public double rows() {
    double sum = 0;
    for (int from = 0; from < totals.length; from += EquilibriumRows.SIZE) {
      int count = Math.min(EquilibriumRows.SIZE, totals.length - from);
      for (int row = 0; row < count; row++) {
        double[] liquidTotals = totals[from + row];
        for (int c = 0; c < liquidTotals.length; c++) {
          blocks.setTotal(c, row, liquidTotals[c]);
        }
      }
      blocks.solve(count);
      for (int row = 0; row < count; row++) {
        sum += blocks.pH(row);
      }
    }
    return sum;
  }

  private Chemistry chemistry() {
    return switch (chemistry) {
      case ACTIVITY -> Chemistry.of(Level.ACTIVITY);
      case "pairs" -> Chemistry.of(Level.PAIRS);
      default -> Chemistry.of(Level.PAIRS).withPairs(ofCalciumAndMagnesium());
    };
  }

  private static PairSet ofCalciumAndMagnesium() {
    PairSet set = PairSet.standard();
    for (IonPair pair : set.pairs()) {
      if (pair.metal().map(ALKALI::contains).orElse(false)) {
        set = set.without(pair.product());
      }
    }
    return set.renamed("calcium and magnesium");
  }

  private void fill(double[] row) {
    for (int c = 0; c < row.length; c++) {
      equilibria.setTotal(c, row[c]);
    }
  }
}
