package org.brewchem.checks;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/**
 * The outcome of one reference check.
 *
 * @param check the check
 * @param rows its evaluated rows
 */
public record CheckResult(ReferenceCheck check, List<Row> rows) {

  /** Copies the rows. */
  public CheckResult {
    rows = List.copyOf(rows);
  }

  /** Returns the largest deviation among the rows whose source is right. */
  public double largestDeviation() {
    return deviations().max().orElse(0);
  }

  /** Returns the root mean square of the deviations of the rows whose source is right. */
  public double rmsDeviation() {
    return Math.sqrt(deviations().map(deviation -> deviation * deviation).average().orElse(0));
  }

  /** Returns the rows that are not as they should be. */
  public List<Row> failures() {
    return rows.stream().filter(row -> !row.passes(check.tolerance().relative())).toList();
  }

  /** Returns the number of rows that assert that a wrong value is not reproduced. */
  public long notReproducedRows() {
    return rows.stream().filter(row -> !row.reproduced()).count();
  }

  /** Returns the number of published values of this check that the library computes. */
  public long publishedValues() {
    return check.suite() == Suite.PUBLISHED
        ? rows.stream().filter(row -> row.reproduced() && row.howKnown().isPublished()).count()
        : 0;
  }

  /** Returns how many rows are known in which way. */
  public Map<HowKnown, Long> rowsByHowKnown() {
    return rows.stream().collect(Collectors.groupingBy(Row::howKnown, Collectors.counting()));
  }

  private DoubleStream deviations() {
    return rows.stream()
        .filter(Row::reproduced)
        .mapToDouble(row -> row.deviation(check.tolerance().relative()));
  }
}
