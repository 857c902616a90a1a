package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class MaltTitrationTest {

  /** Three jars of 50 g in 200 mL: 5 mL and 10 mL of 0.1 N make -10 and 20 mEq/kg. */
  static Malt threeJars(double base, double none, double acid, double noise) {
    return MaltTitration.of("own malt", "invented", noise)
        .base(mL(5), mEqPerL(100), pH(base))
        .none(pH(none))
        .acid(mL(10), mEqPerL(100), pH(acid))
        .malt();
  }

  @Test
  void aStraightMaltComesBackAsItIs() {
    Malt malt = threeJars(6.05, 5.80, 5.30, 0.01);
    assertEquals(5.80, malt.pH().number(), 1e-9);
    assertEquals(40, malt.bufferCapacity().number(), 1e-6);
    assertFalse(malt.isAssumed());
    for (double acid : new double[] {-10, -3, 0, 8, 20, 28}) {
      assertEquals(
          5.80 - acid / 40, Mashes.mash(malt, Mashes.acid(acid / 4), 4).pH().number(), 2e-3);
    }
  }

  /** The difference is the whole of what a jar shows: the mixture comes back. */
  @Test
  void whatWasSubtractedGivesTheMixtureAgain() {
    Malt known = Mashes.exact(5.8, 45);
    Malt dark =
        MaltTitration.of("dark malt", "invented", 0.01)
            .mashedWith(known, massPercent(60))
            .base(mL(5), mEqPerL(100), pH(5.75))
            .none(pH(5.52))
            .acid(mL(10), mEqPerL(100), pH(5.06))
            .malt();
    Grist grist = Grist.of(kg(0.6), known).and(kg(0.4), dark);
    Mash mash = Mash.of(grist, Mashes.acid(0), litres(4));
    assertEquals(5.52, mash.pH().number(), 1e-3);
  }

  @Test
  void beyondTheJarsIsNoticed() {
    Malt malt = threeJars(6.05, 5.80, 5.30, 0.01);
    assertTrue(noticed(Mashes.mash(malt, Mashes.acid(23 / 4.0), 4)));
    assertTrue(noticed(Mashes.mash(malt, Mashes.acid(-12 / 4.0), 4)));
    assertFalse(noticed(Mashes.mash(malt, Mashes.acid(18 / 4.0), 4)));
  }

  private static boolean noticed(Mash mash) {
    return mash.notices().stream().anyMatch(n -> n.code() == MashCode.BEYOND_MALT_DATA);
  }

  @Test
  void anErrorOfTheElectrodesZeroGoesThroughWhole() {
    Malt malt =
        MaltTitration.of("own malt", "invented", 0.001)
            .withZeroUncertainty(0.05)
            .base(mL(5), mEqPerL(100), pH(6.05))
            .none(pH(5.80))
            .acid(mL(10), mEqPerL(100), pH(5.30))
            .malt();
    assertEquals(0.05, malt.pH().standardUncertainty().orElseThrow(), 1e-4);
  }

  @Test
  void moreJarsAreMoreSure() {
    MaltTitration three =
        MaltTitration.of("own malt", "invented", 0.03)
            .base(mL(5), mEqPerL(100), pH(6.05))
            .none(pH(5.80))
            .acid(mL(10), mEqPerL(100), pH(5.30));
    Malt more =
        three
            .none(pH(5.80))
            .acid(mL(5), mEqPerL(100), pH(5.55))
            .acid(mL(10), mEqPerL(100), pH(5.30))
            .malt();
    double before = three.malt().pH().standardUncertainty().orElseThrow();
    assertTrue(more.pH().standardUncertainty().orElseThrow() < 0.8 * before);
  }

  @Test
  void readingsThatAreNoMaltAreRefused() {
    refused("pH has to fall", () -> threeJars(5.30, 5.80, 6.05, 0.01));
    refused(
        "jars: 2 are not possible",
        () ->
            MaltTitration.of("own malt", "invented", 0.01)
                .none(pH(5.8))
                .acid(mL(10), mEqPerL(100), pH(5.3))
                .malt());
    refused(
        "jars: 3 are not possible",
        () ->
            MaltTitration.of("own malt", "invented", 0.01)
                .none(pH(5.8))
                .none(pH(5.81))
                .acid(mL(10), mEqPerL(100), pH(5.3))
                .malt());
    refused("uncertainty of a reading: 0 pH", () -> MaltTitration.of("own", "lab", 0));
    refused("name of the malt", () -> MaltTitration.of("", "lab", 0.01));
    MaltTitration empty = MaltTitration.of("own malt", "invented", 0.01);
    refused("mass of the malt: 0 kg", () -> empty.weighing(g(0), mL(200)));
    refused("volume of the water: 0 L", () -> empty.weighing(g(50), mL(0)));
    refused("volume of the acid: 0 L", () -> empty.acid(mL(0), mEqPerL(100), pH(5)));
    refused("strength of the base: 0 mEq/L", () -> empty.base(mL(5), mEqPerL(0), pH(6)));
    refused("temperature of the reading: 65", () -> empty.readAt(celsius(65)));
    refused(
        "share of own malt: 1",
        () -> empty.mashedWith(threeJars(6.05, 5.8, 5.3, 0.01), massPercent(100)));
    refused("jars: what a jar holds", () -> empty.none(pH(5.8)).weighing(g(40), mL(200)));
  }

  private static void refused(String part, org.junit.jupiter.api.function.Executable input) {
    IllegalArgumentException exception = assertThrows(IllegalArgumentException.class, input);
    assertTrue(exception.getMessage().contains(part), exception.getMessage());
  }

  @Test
  void otherWeightsAndAnotherTemperatureAreStatedBeforeTheJars() {
    Malt malt =
        MaltTitration.of("own malt", "invented", 0.01)
            .weighing(g(40), mL(120))
            .readAt(celsius(25))
            .base(mL(4), mEqPerL(100), pH(6.05))
            .none(pH(5.80))
            .acid(mL(8), mEqPerL(100), pH(5.30))
            .malt();
    assertEquals(40, malt.bufferCapacity().number(), 1e-6);
    assertThrows(
        IllegalArgumentException.class,
        () -> Grist.of(kg(1), malt).and(kg(1), Malt.assumed(MaltKind.WHEAT)));
  }
}
