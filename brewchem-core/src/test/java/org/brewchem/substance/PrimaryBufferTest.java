package org.brewchem.substance;

import static org.brewchem.quantity.Quantities.celsius;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class PrimaryBufferTest {

  @Test
  void theTableIsComplete() {
    assertEquals(50, ResourceTable.read("primary-buffers.csv").size());
    assertEquals("nbs-ph-standards", PrimaryBuffer.PHTHALATE.provenance().sourceKey());
    assertEquals("phosphate", PrimaryBuffer.PHOSPHATE.name());
  }

  /**
   * Hetzer, Durst, Robinson and Bates, J. Res. NBS 81A (1977) 21 (seen): an equation for the
   * phthalate buffer, which its abstract says differs by 0.003 on average from the values of the
   * table. It has no corners, so a value between two rows is checked by it.
   */
  @Test
  void betweenTheRowsThePhthalateBufferFollowsItsEquation() {
    for (double t : new double[] {12.5, 17.5, 22.5, 27.5, 37.5}) {
      double kelvin = t + 273.15;
      double equation =
          2073.44 / kelvin - 13.3270 + 0.045199 * kelvin - 3.4846e-5 * kelvin * kelvin;
      assertEquals(equation, PrimaryBuffer.PHTHALATE.pH(celsius(t)).value(), 0.005);
    }
  }

  @Test
  void outsideItsTableABufferHasNoPH() {
    assertThrows(IllegalArgumentException.class, () -> PrimaryBuffer.PHTHALATE.pH(celsius(60)));
    assertThrows(IllegalArgumentException.class, () -> PrimaryBuffer.TARTRATE.pH(celsius(20)));
  }
}
