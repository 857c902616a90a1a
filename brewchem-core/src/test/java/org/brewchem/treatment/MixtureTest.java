package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.brewchem.solution.Contents;
import org.brewchem.solution.Held;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.junit.jupiter.api.Test;

class MixtureTest {

  private static final Contents WATER = Held.water().contents();

  /** By hand: litres of reagent to the litre of water thin all, and what is added is in both. */
  @Test
  void totalsAreThoseOfBothOverTheGrownVolume() {
    Reagent acid = Reagent.of(Acid.HYDROCHLORIC, massPercent(20)).withDensity(gPerML(1.1), 0.001);
    Mixture mixture = new Mixture(WATER, Supply.weighed(acid));
    double litresPerMole = 36.46 / 0.2 / 1.1 / 1000;
    double moles = 0.01;
    mixture.set(moles);
    double share = 1 / (1 + moles * litresPerMole);
    assertEquals(share, mixture.share(), 1e-6);
    assertEquals(2.3e-3 * share, mixture.total(Component.CALCIUM, moles), 1e-9);
    assertEquals(
        (0.87e-3 + moles / WATER.kilogramsPerLitre()) * share,
        mixture.total(Component.CHLORIDE, moles),
        1e-8);
    assertEquals(0, mixture.total(Component.CITRATE, moles));
    assertEquals(
        mixture.total(Component.CHLORIDE, moles),
        mixture.equilibria().total(mixture.equilibria().indexOf(Component.CHLORIDE)),
        1e-15);
    mixture.set(0);
    assertEquals(1, mixture.share());
    assertEquals(WATER.pH().value(), mixture.equilibria().pH(), 1e-9);
  }

  /** Whoever has every component of the reagent already needs no other system. */
  @Test
  void preparedContentsHoldWhatTheReagentBrings() {
    Supply lactic = Supply.pure(Acid.LACTIC);
    assertSame(WATER, Mixture.prepared(WATER, Supply.pure(Salt.GYPSUM)));
    Contents prepared = Mixture.prepared(WATER, lactic);
    assertEquals(0, prepared.totals().get(Component.LACTATE).value());
    assertEquals(
        prepared.equilibria().components(),
        new Mixture(prepared, lactic).equilibria().components());
    assertEquals(WATER.pH().value(), prepared.pH().value(), 1e-12);
  }

  /** 10 % of it bound in esters, of which nothing acts at once. */
  @Test
  void whatActsAtOnceIsThePartThatIsFree() {
    Reagent strong = Reagent.of(Acid.LACTIC, massPercent(80)).withBoundInEsters(massPercent(10));
    Supply whole = Supply.weighed(strong);
    double moles = 0.01;
    double all = moles / WATER.kilogramsPerLitre();
    Mixture later = new Mixture(WATER, whole);
    Mixture atOnce = new Mixture(WATER, whole.atOnce());
    later.set(moles);
    atOnce.set(moles);
    assertEquals(all * later.share(), later.total(Component.LACTATE, moles), 1e-12);
    assertEquals(0.9 * all * atOnce.share(), atOnce.total(Component.LACTATE, moles), 1e-12);
  }

  @Test
  void beforeAnyDoseItIsTheLiquid() {
    Mixture mixture = new Mixture(WATER, Supply.pure(Acid.LACTIC));
    assertEquals(WATER.pH().value(), mixture.equilibria().pH(), 1e-9);
  }

  /** Of an ion that nobody stated what was added counts; where nothing was, it is not there. */
  @Test
  void whatWasAddedToAnUnknownIonIsInTheMixture() {
    Supply lactic = Supply.pure(Acid.LACTIC);
    Contents silent = WATER.withUnknown(Component.CHLORIDE).withUnknown(Component.SULFATE);
    Contents salted =
        new Held(silent).after(Treatments.solute(Salt.SODIUM_CHLORIDE, mmolPerL(5))).contents();
    Mixture mixture = new Mixture(salted, lactic);
    assertEquals(
        salted.least(Component.CHLORIDE).value(), mixture.total(Component.CHLORIDE, 0), 1e-15);
    assertFalse(mixture.equilibria().components().contains(Component.SULFATE));
  }
}
