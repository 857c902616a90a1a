package org.brewchem.checks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Asserts every row of every reference check, and that the validation page shows just these. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReferenceChecksTest {

  private static final Path DOCS = Path.of("..", "docs");

  private final List<CheckResult> results =
      ReferenceChecks.all().stream().map(ReferenceCheck::evaluate).toList();

  List<CheckResult> results() {
    return results;
  }

  @ParameterizedTest
  @MethodSource("results")
  void everyRowIsAsItShouldBe(CheckResult result) {
    String failures =
        result.failures().stream()
            .map(row -> row + ", deviation " + row.deviation(result.check().tolerance().relative()))
            .collect(Collectors.joining("\n"));
    assertEquals("", failures, result.check().id());
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
      assertTrue(row.tolerance() > 0, row::toString);
    }
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
        "docs/validation.md is stale: run ValidationPage with its path, and read what changed");
  }
}
