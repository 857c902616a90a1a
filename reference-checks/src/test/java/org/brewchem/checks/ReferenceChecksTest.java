package org.brewchem.checks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Asserts every row of every reference check, and that the validation page shows just these. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReferenceChecksTest {

  private static final Path DOCS = Path.of("..", "docs");

  /** A printed value that rounds half-way lies on its tolerance only up to the last bits. */
  private static final double ROUNDING = 1 + 1e-6;

  private final List<CheckResult> results =
      ReferenceChecks.all().stream().map(ReferenceCheck::evaluate).toList();

  List<CheckResult> results() {
    return results;
  }

  @ParameterizedTest
  @MethodSource("results")
  void everyRowIsAsItShouldBe(CheckResult result) {
    assertEquals("", String.join("\n", result.failures()));
  }

  @ParameterizedTest
  @MethodSource("results")
  void noRowIsLost(CheckResult result) {
    assertEquals(result.check().expectedRows(), result.rows().size(), result.check().id());
    Set<String> labels = new HashSet<>();
    result.rows().forEach(row -> assertTrue(labels.add(row.label()), row.label() + " is twice"));
  }

  @ParameterizedTest
  @MethodSource("results")
  void everyNumberIsFinite(CheckResult result) {
    for (Row row : result.rows()) {
      assertTrue(Double.isFinite(row.expected()), row::toString);
      assertTrue(Double.isFinite(row.computed()), row::toString);
    }
  }

  @ParameterizedTest
  @MethodSource("results")
  void theLargestDeviationIsWithinWhatIsPrintedBesideIt(CheckResult result) {
    for (JudgedRows judged : result.judged()) {
      double largestAllowed =
          judged.rows().stream().mapToDouble(judged.tolerance()::allowed).max().orElseThrow();
      judged
          .largestDeviation()
          .ifPresent(
              largest -> assertTrue(largest <= largestAllowed * ROUNDING, result.check().id()));
      judged.tightest().ifPresent(row -> assertTrue(judged.share(row) <= ROUNDING, row::toString));
    }
  }

  @ParameterizedTest
  @MethodSource("results")
  void aValueBeyondItsToleranceFails(CheckResult result) {
    for (JudgedRows judged : result.judged()) {
      for (Row row : judged.rows()) {
        double unit =
            judged.tolerance().scale() == Tolerance.Scale.EXPECTED ? Math.abs(row.expected()) : 1;
        double allowed = judged.tolerance().allowed(row) * unit;
        for (double share : new double[] {-1.01, -0.99, 0.99, 1.01}) {
          double computed = row.expected() + share * allowed;
          Row moved =
              new Row(
                  row.label(),
                  row.expected(),
                  computed,
                  row.lastDigit(),
                  row.scale(),
                  row.ownTolerance(),
                  row.reproduced(),
                  row.howKnown());
          boolean near = Math.abs(share) < 1;
          assertEquals(row.reproduced() == near, moved.passes(judged.tolerance()), moved::toString);
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("results")
  void anotherToleranceIsAnotherPage(CheckResult result) {
    String page = ValidationPage.of(List.of(result), List.of()).render();
    for (JudgedRows judged : result.judged()) {
      Tolerance wider = wider(judged.tolerance());
      List<Row> rows =
          result.rows().stream()
              .map(row -> judged.rows().contains(row) ? row.within(wider) : row)
              .toList();
      CheckResult widened = new CheckResult(result.check(), rows);
      assertNotEquals(page, ValidationPage.of(List.of(widened), List.of()).render());
    }
  }

  private static Tolerance wider(Tolerance tolerance) {
    return new Tolerance(
        tolerance.scale(),
        tolerance.size() * 1.001,
        tolerance.floor(),
        tolerance.middle(),
        tolerance.scaleName(),
        tolerance.unit(),
        tolerance.reason());
  }

  @Test
  void identifiersAndTitlesAreUnique() {
    Set<String> seen = new HashSet<>();
    for (CheckResult result : results) {
      assertTrue(seen.add(result.check().id()), result.check().id());
      assertTrue(seen.add(result.check().title()), result.check().title());
    }
  }

  @Test
  void everySourceIsListed() throws IOException {
    String sources = Files.readString(DOCS.resolve("sources.md"));
    for (CheckResult result : results) {
      String key = result.check().source().key();
      assertTrue(sources.contains("### `" + key + "`"), key + " is not in docs/sources.md");
    }
  }

  @Test
  void validationPageIsUpToDate() throws IOException {
    assertEquals(
        ValidationPage.of(results, ReferenceChecks.comparisons()).render(),
        Files.readString(DOCS.resolve("validation.md")),
        "docs/validation.md is stale: regenerate it as DEVELOPERS.md says, and read what changed");
  }
}
