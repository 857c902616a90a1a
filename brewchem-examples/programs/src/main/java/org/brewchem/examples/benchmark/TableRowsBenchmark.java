package org.brewchem.examples.benchmark;

import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
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

/** The time that a row of a table of random waters takes to its pH, and to its alkalinity too. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class TableRowsBenchmark {

  private static final int ROWS = 100_000;

  /** How many threads solve the rows. */
  @Param({"1", "2"})
  public int threads;

  private Waters waters = Waters.from(Table.of(Column.of("pH", 7)));

  /** Makes the table: seven totals, each evenly on a logarithmic scale. */
  @Setup
  public void makeTable() {
    Random random = new Random(1);
    String[] names = {"sodium", "potassium", "calcium", "magnesium", "chloride", "sulfate"};
    Column[] columns = new Column[names.length + 1];
    double[] carbonDioxide = new double[ROWS];
    for (int c = 0; c < names.length; c++) {
      double[] millimoles = new double[ROWS];
      Arrays.setAll(millimoles, i -> 0.05 * Math.pow(100, random.nextDouble()));
      columns[c] = Column.of(names[c] + " [mmol/L]", millimoles);
    }
    Arrays.setAll(carbonDioxide, i -> 0.3 * Math.pow(30, random.nextDouble()));
    columns[names.length] = Column.of("total carbon dioxide [mmol/L]", carbonDioxide);
    waters = Waters.from(Table.of(columns)).under(Chemistry.of(Level.ACTIVITY)).parallel(threads);
  }

  /**
   * Solves all rows.
   *
   * @return their pH, for the harness to consume
   */
  @Benchmark
  @OperationsPerInvocation(ROWS)
  public Column rowToPH() {
    return waters.pH();
  }

  /**
   * Solves all rows for their alkalinity too.
   *
   * @return their alkalinity, for the harness to consume
   */
  @Benchmark
  @OperationsPerInvocation(ROWS)
  public Column rowToAlkalinity() {
    return waters.alkalinity();
  }
}
