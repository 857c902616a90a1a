package org.brewchem.checks;

import java.util.List;
import java.util.function.Supplier;

/**
 * Values of one source, each computed by the library from something else.
 *
 * @param id short name, unique among all checks
 * @param suite the kind of evidence
 * @param title what is checked
 * @param source where the expected values come from
 * @param computation what is computed from what
 * @param tolerance how close the values of the rows that state no tolerance of their own have to
 *     come, and why
 * @param notCovered what of the source is left out and why; empty if nothing is
 * @param expectedRows the number of rows that must be found
 * @param rows evaluates the rows
 */
public record ReferenceCheck(
    String id,
    Suite suite,
    String title,
    Source source,
    String computation,
    Tolerance tolerance,
    String notCovered,
    int expectedRows,
    Supplier<List<Row>> rows) {

  /** Evaluates the rows of this check. */
  public CheckResult evaluate() {
    return new CheckResult(this, rows.get());
  }
}
