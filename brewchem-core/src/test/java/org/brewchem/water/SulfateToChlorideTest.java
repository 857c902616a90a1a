package org.brewchem.water;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class SulfateToChlorideTest {

  @Test
  void byMassAndByEquivalents() {
    SulfateToChloride ratio =
        SulfateToChloride.of(Optional.of(mgPerL(96.056)), Optional.of(mgPerL(35.45)));
    assertEquals(96.056 / 35.45, ratio.byMass().orElseThrow(), 1e-12);
    assertEquals(2, ratio.byEquivalents().orElseThrow(), 1e-4);
  }

  @Test
  void withoutChlorideThereIsNoRatio() {
    SulfateToChloride ratio = SulfateToChloride.of(Optional.of(mgPerL(40)), Optional.of(mgPerL(0)));
    assertInstanceOf(SulfateToChloride.ChlorideNil.class, ratio);
    assertTrue(ratio.byMass().isEmpty() && ratio.byEquivalents().isEmpty());
    assertEquals("no ratio: chloride is zero (sulfate 40 mg/L)", ratio.toString());
    assertThrows(
        IllegalArgumentException.class, () -> new SulfateToChloride.Value(mgPerL(40), mgPerL(0)));
  }

  @Test
  void missingSaysWhatIsMissing() {
    assertEquals(
        "no ratio: chloride is missing",
        SulfateToChloride.of(Optional.of(mgPerL(40)), Optional.empty()).toString());
    assertEquals(
        "no ratio: sulfate and chloride are missing",
        SulfateToChloride.of(Optional.empty(), Optional.empty()).toString());
    assertThrows(IllegalArgumentException.class, () -> new SulfateToChloride.Missing(false, false));
  }
}
