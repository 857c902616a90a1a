package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class IonPairTest {

  private static final EquilibriumConstant K = EquilibriumConstant.ofLog10(2);

  private static IonPair pair(Component ligand, int count, int protons) {
    return IonPair.of("pair", Component.CALCIUM, ligand, count, protons, K);
  }

  private static String refused(Runnable making) {
    return String.valueOf(assertThrows(IllegalArgumentException.class, making::run).getMessage());
  }

  @Test
  void whatAPairIsMadeOfCanBeRead() {
    IonPair pair = pair(Component.PHOSPHATE, 2, 3);
    assertEquals("pair", pair.product());
    assertEquals("pair", pair.toString());
    assertEquals(Optional.of(Component.CALCIUM), pair.metal());
    assertEquals(Optional.of(Component.PHOSPHATE), pair.ligand());
    assertEquals(2, pair.ligandCount());
    assertEquals(3, pair.protons());
    assertEquals(2 - 2 * 3 + 3, pair.charge());
    assertEquals(K, pair.constant());
    IonPair hydroxide = IonPair.hydroxide("CaOH+", Component.CALCIUM, 1, K);
    assertEquals(Optional.empty(), hydroxide.ligand());
    assertEquals(0, hydroxide.ligandCount());
    assertEquals(-1, hydroxide.protons());
    assertEquals(1, hydroxide.charge());
  }

  @Test
  void oneToFourLigandsArePossible() {
    assertEquals(4, pair(Component.SULFATE, 4, 0).ligandCount());
    assertEquals(
        "ligands of pair: 5 is not possible; 1 to 4 is allowed",
        refused(() -> pair(Component.SULFATE, 5, 0)));
    assertThrows(IllegalArgumentException.class, () -> pair(Component.SULFATE, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> pair(Component.SULFATE, -1, 0));
  }

  @Test
  void asManyProtonsArePossibleAsTheLigandsTakeUp() {
    assertEquals(6, pair(Component.PHOSPHATE, 2, 6).protons());
    assertEquals(-4, pair(Component.PHOSPHATE, 2, -4).protons());
    assertEquals(
        "protons of pair: 7 is not possible; -4 to 6 is allowed",
        refused(() -> pair(Component.PHOSPHATE, 2, 7)));
    assertThrows(IllegalArgumentException.class, () -> pair(Component.PHOSPHATE, 2, -5));
  }

  @Test
  void aStrongIonAsLigandMayTakeUpOneProton() {
    assertEquals(1, pair(Component.CHLORIDE, 1, 1).protons());
    assertThrows(IllegalArgumentException.class, () -> pair(Component.CHLORIDE, 1, 2));
  }

  @Test
  void oneToFourHydroxidesArePossible() {
    assertEquals(-4, IonPair.hydroxide("x", Component.CALCIUM, 4, K).protons());
    for (int count : new int[] {0, 5}) {
      assertThrows(
          IllegalArgumentException.class,
          () -> IonPair.hydroxide("x", Component.CALCIUM, count, K));
    }
  }

  @Test
  void aMetalTakesUpNoProtonsAndSomethingIsNeeded() {
    assertEquals(
        "pair: PO43- is not possible as a metal; it takes up protons",
        refused(() -> IonPair.of("pair", Component.PHOSPHATE, Component.SULFATE, 1, 0, K)));
    assertEquals(
        "pair: a metal or a ligand is needed",
        refused(() -> IonPair.of("pair", Optional.empty(), Optional.empty(), 0, -1, K)));
    IonPair acid = IonPair.of("HCl", Optional.empty(), Optional.of(Component.CHLORIDE), 1, 1, K);
    assertEquals(Optional.empty(), acid.metal());
    assertEquals(0, acid.charge());
  }
}
