package org.brewchem.checks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ValidationPageTest {

  @Test
  void writesTwoSignificantDigits() {
    assertEquals("0.0011", ValidationPage.deviationText(0.00112));
    assertEquals("1.0", ValidationPage.deviationText(1));
    assertEquals("0.50", ValidationPage.deviationText(0.5));
    assertEquals("12", ValidationPage.deviationText(12.3));
    assertEquals("2.3e-7", ValidationPage.deviationText(2.34e-7));
    assertEquals("1.0e-8", ValidationPage.deviationText(9.99e-9));
    assertEquals("< 1e-9", ValidationPage.deviationText(9.9e-10));
    assertEquals("< 1e-9", ValidationPage.deviationText(0));
  }

  @Test
  void countsOnlyPublishedValuesThatComeOut() {
    CheckResult result =
        check(
            Tolerance.halfOfLastDigit("", "as printed"),
            Row.ofPrinted("a", "2.497", 2.4973, HowKnown.SEEN),
            Row.ofPrinted("b", "12.50", 12.10, HowKnown.SEEN).asNotReproduced(),
            Row.ofPrinted("c", "8.2", 8.2, HowKnown.COMMON_PRACTICE));
    assertEquals(List.of(), result.failures());
    assertEquals(1, result.publishedRows().size());
    assertEquals(1, result.notReproducedRows());
    assertEquals(0.0003, result.judged().get(0).largestDeviation().orElseThrow(), 1e-9);
    assertTrue(page(result).contains("Asserted not to come out: b"));
  }

  @Test
  void theToleranceThatIsPrintedIsTheOneThatJudges() {
    Row row = Row.of("a", 7.00, 7.03, HowKnown.SEEN);
    CheckResult narrow = check(Tolerance.absolute(0.02, "pH", "invented"), row);
    CheckResult wide = check(Tolerance.absolute(0.04, "pH", "invented"), row);
    assertEquals(1, narrow.failures().size());
    assertTrue(narrow.failures().get(0).contains("allowed 0.02"), narrow.failures().get(0));
    assertEquals(List.of(), wide.failures());
    assertTrue(
        page(narrow).contains("| An invented check | 1 | 0.030 pH | 0.030 pH | 0.02 pH | 1.5 |"));
    assertTrue(
        page(wide).contains("| An invented check | 1 | 0.030 pH | 0.030 pH | 0.04 pH | 0.75 |"));
    assertTrue(page(narrow).contains("- Tolerance: 0.02 pH; invented\n"));
    assertTrue(page(wide).contains("- Tolerance: 0.04 pH; invented\n"));
  }

  @Test
  void eachToleranceOfACheckHasItsOwnLine() {
    CheckResult result =
        check(
            Tolerance.absolute(0.02, "pH", "usual"),
            Row.of("a", 7.00, 7.01, HowKnown.SEEN),
            Row.of("b", 7.00, 7.03, HowKnown.SEEN)
                .within(Tolerance.absolute(0.03, "pH", "in the cold")),
            Row.of("c", 200, 202, HowKnown.SEEN).within(Tolerance.relative(0.02, "diluted")));
    assertEquals(List.of(), result.failures());
    String page = page(result);
    assertTrue(page.contains("| An invented check | 1 | 0.010 pH | 0.010 pH | 0.02 pH | 0.50 |"));
    assertTrue(page.contains("| An invented check | 1 | 0.030 pH | 0.030 pH | 0.03 pH | 1.0 |"));
    assertTrue(page.contains("| An invented check | 1 | 0.010 | 0.010 | 0.02 relative | 0.50 |"));
    assertTrue(page.contains("- Tolerance: 0.02 pH; usual (1 row)\n"));
    assertTrue(page.contains("- Tolerance: 0.03 pH; in the cold (1 row)\n"));
    assertTrue(page.contains("- Tolerance: 0.02 relative; diluted (1 row)\n"));
  }

  @Test
  void aMisprintThatComesOutFails() {
    Row misprint = Row.ofPrinted("b", "12.10", 12.10, HowKnown.SEEN).asNotReproduced();
    CheckResult result = check(Tolerance.halfOfLastDigit("", "as printed"), misprint);
    assertEquals(1, result.failures().size());
    assertTrue(result.failures().get(0).contains("not to come out"));
  }

  @Test
  void aValueThatRoundsHalfWayPasses() {
    Tolerance half = Tolerance.halfOfLastDigit("", "as printed");
    assertTrue(half.holds(Row.ofPrinted("acid", "67.043", 134.087 / 2, HowKnown.COMPUTED)));
    assertFalse(half.holds(Row.ofPrinted("acid", "67.043", 67.04351, HowKnown.SEEN)));
  }

  @Test
  void aRowThatDoesNotStateWhatItsToleranceCountsIsRefused() {
    Row row = Row.of("a", 7.00, 7.00, HowKnown.SEEN);
    assertRefused(Tolerance.halfOfLastDigit("", ""), row);
    assertRefused(Tolerance.times(2, "its standard uncertainty", "", ""), row);
    assertRefused(Tolerance.range(6, 9, "", ""), row);
  }

  @Test
  void aToleranceThatLetsEverythingPassIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> Tolerance.absolute(0, "", ""));
    assertThrows(
        IllegalArgumentException.class, () -> Tolerance.absolute(Double.POSITIVE_INFINITY, "", ""));
    assertThrows(IllegalArgumentException.class, () -> Tolerance.relative(Double.NaN, ""));
  }

  @Test
  void tolerancesSayTheirNumbers() {
    assertEquals("0.5 of the last printed digit", Tolerance.halfOfLastDigit("", "").text());
    assertEquals("0.9 to 0.99", Tolerance.range(0.9, 0.99, "", "").text());
    assertEquals("1e-10 mol/L", Tolerance.absolute(1e-10, "mol/L", "").text());
    assertEquals(
        "4 x eps, at least 1e-10 pH", Tolerance.times(4, "eps", "pH", "").atLeast(1e-10).text());
  }

  private static void assertRefused(Tolerance tolerance, Row row) {
    assertThrows(IllegalStateException.class, () -> tolerance.allowed(row));
  }

  private static String page(CheckResult result) {
    return ValidationPage.of(List.of(result), List.of()).render();
  }

  private static CheckResult check(Tolerance tolerance, Row... rows) {
    return new ReferenceCheck(
            "x",
            Suite.PUBLISHED,
            "An invented check",
            new Source("invented", "invented"),
            "nothing",
            tolerance,
            "",
            rows.length,
            () -> List.of(rows))
        .evaluate();
  }
}
