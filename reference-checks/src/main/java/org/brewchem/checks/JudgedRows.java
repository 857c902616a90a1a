package org.brewchem.checks;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * The rows of a check that one tolerance judges: a line of the validation page.
 *
 * @param tolerance the tolerance, judge of the rows and text of the page at once
 * @param rows the rows, at least one
 */
public record JudgedRows(Tolerance tolerance, List<Row> rows) {

  /** Copies the rows. */
  public JudgedRows {
    rows = List.copyOf(rows);
  }

  /** Returns the rows that are not as they should be. */
  public List<Row> failures() {
    return rows.stream().filter(row -> !row.passes(tolerance)).toList();
  }

  /** Returns the rows whose source is right. */
  public List<Row> reproduced() {
    return rows.stream().filter(Row::reproduced).toList();
  }

  /** Returns the largest deviation among the rows whose source is right; empty without such. */
  public Optional<Double> largestDeviation() {
    return deviations().boxed().max(Comparator.naturalOrder());
  }

  /** Returns the root mean square of these deviations; empty without such rows. */
  public Optional<Double> rmsDeviation() {
    return deviations().map(deviation -> deviation * deviation).average().stream()
        .mapToObj(Math::sqrt)
        .findFirst();
  }

  /**
   * Returns the row whose source is right and whose deviation comes closest to what it is allowed,
   * or exceeds it most; empty without such rows.
   */
  public Optional<Row> tightest() {
    return reproduced().stream().max(Comparator.comparingDouble(this::share));
  }

  /** Returns the deviation of a row as a share of what it is allowed; above 1 it fails. */
  public double share(Row row) {
    return tolerance.deviation(row) / tolerance.allowed(row);
  }

  private DoubleStream deviations() {
    return reproduced().stream().mapToDouble(tolerance::deviation);
  }
}
