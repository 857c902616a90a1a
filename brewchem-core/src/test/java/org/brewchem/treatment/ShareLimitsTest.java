package org.brewchem.treatment;

import static org.brewchem.treatment.ShareLimits.ON;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ShareLimitsTest {

  private static final ShareLimits THREE = ShareLimits.none(List.of("a", "b", "c"));

  private static void assertCorners(ShareLimits limits, double[]... corners) {
    List<double[]> found = limits.corners();
    assertEquals(corners.length, found.size());
    for (int i = 0; i < corners.length; i++) {
      assertArrayEquals(corners[i], found.get(i), 1e-12);
    }
  }

  /** By hand: a triangle, its corners cut off by limits, most of the first part first. */
  @Test
  void cornersOfATriangleAndOfWhatLimitsLeaveOfIt() {
    assertCorners(THREE, new double[] {1, 0, 0}, new double[] {0, 1, 0}, new double[] {0, 0, 1});
    assertCorners(
        THREE.atMost(0, 0.6).atLeast(1, 0.1),
        new double[] {0.6, 0.4, 0},
        new double[] {0.6, 0.1, 0.3},
        new double[] {0, 1, 0},
        new double[] {0, 0.1, 0.9});
    assertCorners(
        THREE.atLeast(0, 0.2).atLeast(1, 0.3).atLeast(2, 0.5), new double[] {0.2, 0.3, 0.5});
  }

  @Test
  void sidesJoinCornersThatDifferInTwoShares() {
    assertEquals(3, ShareLimits.sides(THREE.corners()).size());
    assertEquals(4, ShareLimits.sides(THREE.atMost(0, 0.6).atLeast(1, 0.1).corners()).size());
    // A tetrahedron has six.
    assertEquals(
        6, ShareLimits.sides(ShareLimits.none(List.of("a", "b", "c", "d")).corners()).size());
  }

  @Test
  void limitsThatLeaveNothingAreRefused() {
    ShareLimits half = THREE.atLeast(0, 0.5).atLeast(1, 0.5);
    assertEquals(0.5, half.least(1));
    assertThrows(IllegalArgumentException.class, () -> half.atLeast(2, 0.001));
    ShareLimits few = THREE.atMost(0, 0.3).atMost(1, 0.3).atMost(2, 0.4);
    assertEquals(0.4, few.most(2));
    assertThrows(IllegalArgumentException.class, () -> few.atMost(2, 0.39));
    assertThrows(IllegalArgumentException.class, () -> few.atLeast(0, 0.31));
  }

  @Test
  void sharesAreOneTogetherAndRoundingIsTakenOff() {
    ShareLimits limits = THREE.atLeast(0, 0.2).atMost(1, 0.5);
    assertArrayEquals(
        new double[] {0.2, 0.5, 0.3}, limits.checked(0.2 - 1e-13, 0.5 + 1e-13, 0.3), 1e-15);
    assertEquals(0.2, limits.checked(0.2 - 1e-13, 0.5, 0.3)[0]);
    assertThrows(IllegalArgumentException.class, () -> limits.checked(0.19, 0.5, 0.31));
    assertThrows(IllegalArgumentException.class, () -> limits.checked(0.2, 0.51, 0.29));
    assertThrows(IllegalArgumentException.class, () -> limits.checked(0.2, 0.5, 0.31));
    assertThrows(IllegalArgumentException.class, () -> limits.checked(0.3, 0.7));
    String said =
        assertThrows(IllegalArgumentException.class, () -> limits.checked(0.4, 0.5, 0.5))
            .getMessage();
    assertTrue(said.startsWith("shares together: 1.4 is not possible"), said);
  }

  @Test
  void namesAreOneToEachPart() {
    ShareLimits named = THREE.called(List.of("ale", "sour", "water"));
    assertEquals(List.of("ale", "sour", "water"), named.names());
    assertEquals(1, named.part("sour"));
    assertThrows(IllegalArgumentException.class, () -> named.part("a"));
    assertThrows(IllegalArgumentException.class, () -> THREE.called(List.of("ale", "sour")));
    assertThrows(IllegalArgumentException.class, () -> THREE.called(List.of("x", "y", "x")));
    assertThrows(IllegalArgumentException.class, () -> THREE.called(List.of("x", "y", " ")));
  }

  /** A share and a sum may lie a billionth beyond, which is rounding; not more. */
  @Test
  void aBillionthBeyondALimitIsOnIt() {
    ShareLimits two = ShareLimits.none(List.of("a", "b"));
    assertEquals(1, two.atLeast(0, ON).atLeast(1, 1).least(1));
    assertThrows(IllegalArgumentException.class, () -> two.atLeast(0, 2 * ON).atLeast(1, 1));
    assertEquals(0, two.atMost(0, 1 - ON).atMost(1, 0).most(1));
    assertThrows(IllegalArgumentException.class, () -> two.atMost(0, 1 - 2 * ON).atMost(1, 0));
    ShareLimits least = two.atLeast(0, 0.5);
    assertEquals(0.5, least.checked(0.5 - ON, 0.5 + ON)[0]);
    assertThrows(IllegalArgumentException.class, () -> least.checked(0.5 - 2 * ON, 0.5 + 2 * ON));
    ShareLimits most = two.atMost(0, 0.5);
    assertEquals(0.5, most.checked(0.5 + ON, 0.5 - ON)[0]);
    assertThrows(IllegalArgumentException.class, () -> most.checked(0.5 + 2 * ON, 0.5 - 2 * ON));
  }

  /** What is left for the free share is put on the limit that it lies a billionth beyond. */
  @Test
  void cornersThatDifferByRoundingAreOne() {
    ShareLimits two = ShareLimits.none(List.of("a", "b"));
    assertArrayEquals(new double[] {ON, 1}, two.atLeast(0, ON).corners().get(1));
    assertArrayEquals(new double[] {1 - ON, 0}, two.atMost(0, 1 - ON).corners().get(0));
    assertEquals(1, two.atMost(0, ON).corners().size());
    assertEquals(2, two.atMost(0, 3 * ON).corners().size());
  }
}
