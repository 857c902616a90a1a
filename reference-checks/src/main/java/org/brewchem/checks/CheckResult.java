package org.brewchem.checks;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

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

  /** Returns the rows by the tolerance that judges them, in the order of the rows. */
  public List<JudgedRows> judged() {
    Map<Tolerance, List<Row>> byTolerance = new LinkedHashMap<>();
    for (Row row : rows) {
      Tolerance tolerance = row.ownTolerance().orElse(check.tolerance());
      byTolerance.computeIfAbsent(tolerance, unseen -> new ArrayList<>()).add(row);
    }
    return byTolerance.entrySet().stream()
        .map(entry -> new JudgedRows(entry.getKey(), entry.getValue()))
        .toList();
  }

  /** Returns in words each row that is not as it should be. */
  public List<String> failures() {
    return judged().stream()
        .flatMap(judged -> judged.failures().stream().map(row -> failure(judged, row)))
        .toList();
  }

  private String failure(JudgedRows judged, Row row) {
    return check.id()
        + ", "
        + row.label()
        + ": expected "
        + row.expected()
        + (row.reproduced() ? "" : " not to come out")
        + ", computed "
        + row.computed()
        + ", deviation "
        + judged.tolerance().deviation(row)
        + ", allowed "
        + judged.tolerance().allowed(row)
        + ": "
        + judged.tolerance().text();
  }

  /** Returns the number of rows that assert that a wrong value is not reproduced. */
  public long notReproducedRows() {
    return rows.stream().filter(row -> !row.reproduced()).count();
  }

  /** Returns the rows whose published values the library computes. */
  public List<Row> publishedRows() {
    return check.suite() == Suite.PUBLISHED
        ? rows.stream().filter(row -> row.reproduced() && row.howKnown().isPublished()).toList()
        : List.of();
  }

  /** Returns how many rows are known in which way. */
  public Map<HowKnown, Long> rowsByHowKnown() {
    return rows.stream().collect(Collectors.groupingBy(Row::howKnown, Collectors.counting()));
  }
}
