package org.brewchem.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.brewchem.OutOfRangeException;
import org.junit.jupiter.api.Test;

class IntervalTest {

  private static final Interval INTERVAL = Interval.of(0.101941, 0.102343, 0.95, "mol/L");

  @Test
  void digitsFollowHalfTheLength() {
    assertEquals("0.10194 to 0.10234 mol/L (95 %)", INTERVAL.toString());
    assertEquals("mol/L", INTERVAL.unit());
    assertEquals(0.95, INTERVAL.coverageProbability());
    assertEquals("-1.0 to 3.0 (99.73 %)", Interval.of(-1, 3, 0.9973, "").toString());
  }

  @Test
  void theEndPointsBelongToIt() {
    assertTrue(INTERVAL.contains(0.101941));
    assertTrue(INTERVAL.contains(0.102343));
    assertFalse(INTERVAL.contains(Math.nextDown(0.101941)));
    assertFalse(INTERVAL.contains(Math.nextUp(0.102343)));
    assertThrows(IllegalArgumentException.class, () -> INTERVAL.contains(Double.NaN));
  }

  @Test
  void aSinglePointIsAnInterval() {
    Interval point = Interval.of(2, 2, 0.95, "g");
    assertEquals(0, point.length());
    assertTrue(point.contains(2));
    assertEquals("2 to 2 g (95 %)", point.toString());
  }

  @Test
  void endPointsOutOfOrderAreRefused() {
    OutOfRangeException refused =
        assertThrows(OutOfRangeException.class, () -> Interval.of(3, 2, 0.95, "g"));
    assertEquals(
        "lower end point: 3 g is not possible; at most the upper end point 2.0 g is allowed",
        refused.getMessage());
  }

  @Test
  void intervalsAreEqualInAllOrNotAtAll() {
    Interval same = Interval.of(0.101941, 0.102343, 0.95, "mol/L");
    assertEquals(INTERVAL, same);
    assertEquals(INTERVAL.hashCode(), same.hashCode());
    Set<Integer> codes = new HashSet<>(Set.of(INTERVAL.hashCode()));
    for (Interval other :
        List.of(
            Interval.of(0.1, 0.102343, 0.95, "mol/L"),
            Interval.of(0.101941, 0.2, 0.95, "mol/L"),
            Interval.of(0.101941, 0.102343, 0.9, "mol/L"),
            Interval.of(0.101941, 0.102343, 0.95, "Eq/L"))) {
      assertNotEquals(INTERVAL, other);
      assertTrue(codes.add(other.hashCode()), other::toString);
    }
    assertNotEquals(INTERVAL, "0.10194 to 0.10234 mol/L (95 %)");
  }
}
