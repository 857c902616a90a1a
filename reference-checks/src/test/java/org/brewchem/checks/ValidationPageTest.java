package org.brewchem.checks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
    List<Row> rows =
        List.of(
            Row.ofPrinted("a", "2.497", 2.4973, HowKnown.SEEN),
            Row.ofPrinted("b", "12.50", 12.10, HowKnown.SEEN).asNotReproduced(),
            Row.ofPrinted("c", "8.2", 8.2, HowKnown.COMMON_PRACTICE));
    ReferenceCheck check =
        new ReferenceCheck(
            "x",
            Suite.PUBLISHED,
            "An invented check",
            new Source("invented", "invented"),
            "nothing",
            Tolerance.halfOfLastDigit("", "as printed"),
            "",
            3,
            () -> rows);
    CheckResult result = check.evaluate();
    assertEquals(List.of(), result.failures());
    assertEquals(1, result.publishedValues());
    assertEquals(1, result.notReproducedRows());
    assertEquals(0.0003, result.largestDeviation(), 1e-9);
    assertTrue(
        ValidationPage.of(List.of(result), List.of())
            .render()
            .contains("Asserted not to come out: b"));
  }

  @Test
  void aMisprintThatComesOutFails() {
    assertFalse(Row.ofPrinted("b", "12.10", 12.10, HowKnown.SEEN).asNotReproduced().passes(false));
  }

  @Test
  void aValueThatRoundsHalfWayPasses() {
    assertTrue(Row.ofPrinted("malic acid", "67.043", 134.087 / 2, HowKnown.COMPUTED).passes(false));
    assertFalse(Row.ofPrinted("malic acid", "67.043", 67.04351, HowKnown.SEEN).passes(false));
  }
}
