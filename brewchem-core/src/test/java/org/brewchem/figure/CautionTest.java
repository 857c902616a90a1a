package org.brewchem.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class CautionTest {

  @ParameterizedTest
  @EnumSource
  void everyHazardHasACautionThatReadsAsItsText(Hazard hazard) {
    List<Caution> cautions = Caution.of(List.of(hazard));
    assertFalse(cautions.isEmpty());
    for (Caution caution : cautions) {
      assertEquals(hazard, caution.hazard());
      assertEquals(caution.text(), caution.toString());
    }
  }

  @Test
  void cautionsComeHazardByHazardAndNeverTwice() {
    List<Caution> cautions = Caution.of(List.of(Hazard.DUST, Hazard.SALT_HEAT, Hazard.DUST));
    assertEquals(
        List.of(Hazard.DUST, Hazard.SALT_HEAT), cautions.stream().map(Caution::hazard).toList());
    assertEquals(List.of(), Caution.of(List.of()));
    assertThrows(IllegalArgumentException.class, () -> new Caution(Hazard.DUST, " "));
  }
}
