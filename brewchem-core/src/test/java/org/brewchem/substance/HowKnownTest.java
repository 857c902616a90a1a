package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class HowKnownTest {
  @Test
  void everyTextOfTheTablesIsReadAndPrinted() {
    assertSame(HowKnown.SEEN, HowKnown.of("seen"));
    assertSame(HowKnown.MIXED, HowKnown.of("mixed"));
    assertSame(HowKnown.FROM_MEMORY, HowKnown.of("from memory"));
    assertSame(HowKnown.COMPUTED, HowKnown.of("computed"));
    assertEquals("from memory", HowKnown.FROM_MEMORY.toString());
  }

  @Test
  void anotherTextIsRefusedWithTheFour() {
    assertEquals(
        "how known: \"heard\" is not one of seen, mixed, from memory, computed",
        assertThrows(IllegalArgumentException.class, () -> HowKnown.of("heard")).getMessage());
    assertEquals(
        "text", assertThrows(NullPointerException.class, () -> HowKnown.of(null)).getMessage());
  }
}
