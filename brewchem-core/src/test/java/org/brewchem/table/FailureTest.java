package org.brewchem.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FailureTest {

  private static OptionalDouble limit(String text) {
    return new Failure.Unreadable(1, "iron [mg/L]", text, "is not a number").limit();
  }

  @Test
  void everyFailureSaysItsRowItsColumnAndItsReason() {
    List<Failure> all =
        List.of(
            new Failure.Unreadable(7, "iron [mg/L]", "n.d.", "no number"),
            new Failure.NotPossible(7, "iron [mg/L]", "no number"),
            new Failure.NoSolution(7, "iron [mg/L]", "no number"),
            new Failure.NoUncertainty(7, "iron [mg/L]", "no number"));
    for (Failure failure : all) {
      assertEquals("row 7, column \"iron [mg/L]\": no number", failure.toString());
      assertEquals("no number", failure.reason());
    }
    Failure missing = new Failure.Missing(7, "iron [mg/L]");
    assertEquals("is missing", missing.reason());
    assertEquals("row 7, column \"iron [mg/L]\": is missing", missing.toString());
  }

  @Test
  void aTextBelowALimitNamesTheLimit() {
    assertEquals(OptionalDouble.of(0.5), limit("< 0.5"));
    assertEquals(OptionalDouble.of(12), limit("<12"));
    assertEquals(OptionalDouble.of(3), limit("  <  3  "));
    for (String other : List.of("0.5", "> 0.5", "< 0", "< 0.0", "< -1", "< 0.5 mg/L", "< ,5", "")) {
      assertEquals(OptionalDouble.empty(), limit(other), other);
    }
    assertEquals(OptionalDouble.empty(), limit("< " + "9".repeat(400)));
  }
}
