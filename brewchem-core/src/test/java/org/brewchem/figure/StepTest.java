package org.brewchem.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

class StepTest {

  private static Step.Builder mass() {
    return Step.of("mass", Scale.number("g", 2), Step.Kind.STATED);
  }

  @Test
  void aStepReadsAsItsValueOrAsWhyThereIsNone() {
    Step found = mass().found(Traced.of(Source.of("mass", 5, 0.03, "g")));
    assertEquals("mass: 5.00 g, U 0.06 (k = 2)", found.toString());
    assertEquals(OptionalDouble.of(0.03), found.standardUncertainty());
    Step unknown = mass().unknown(List.of("no balance", "no scoop"));
    assertEquals("mass: unknown: no balance; no scoop", unknown.toString());
    assertEquals(OptionalDouble.empty(), unknown.standardUncertainty());
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> mass().unknown(List.of()));
    assertEquals(
        "mass: no reason is not possible; an unknown value says why", refused.getMessage());
  }

  @Test
  void aLineHoldsUpToItsTolerance() {
    assertTrue(new Step.Detail(List.of(), -0.5, 0.5).holds());
    assertFalse(new Step.Detail(List.of(), -0.5001, 0.5).holds());
    assertThrows(IllegalArgumentException.class, () -> new Step.Detail(List.of(), 0, -1e-9));
  }
}
