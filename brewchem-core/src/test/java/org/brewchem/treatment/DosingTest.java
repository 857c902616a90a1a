package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.figure.Constraint;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Held;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** Doses of the same kernel into tanks and in stages, in liquids that are nothing but contents. */
class DosingTest {

  private static final Held WATER = Held.water();
  private static final Held BEER = Held.beer();
  private static final Tank TANK = Tank.holding(hL(20), litres(100));
  private static final Reagent LACTIC =
      Reagent.of(Acid.LACTIC, massPercent(80)).withAssayUncertainty(0.02);
  private static final Reagent BOTTLE = LACTIC.withDensity(gPerML(1.19), 0.002);

  @Test
  void aRootMayBeOffByAHundredMillionthOfWhatIsWantedOrOfOne() {
    TankDose<Held> salt = TankDose.of(WATER, Salt.GYPSUM, TANK).to(CALCIUM, mgPerL(150));
    double wanted = Shown.inOwnScale(CALCIUM, 150);
    assertEquals(
        1e-8 * Math.max(1, wanted),
        salt.explain().root().detail().orElseThrow().tolerance(),
        1e-15);
    assertEquals(1e-6, Dosing.tolerance(-100), 1e-18);
    assertEquals(1e-8, Dosing.tolerance(0.5), 1e-20);
  }

  /** A stronger reagent lowers the figure more, and so less of it is needed. */
  @Test
  void theNeededAmountIsLessWhereTheReagentIsStronger() {
    TankDose<Held> dose = TankDose.of(BEER, LACTIC, TANK).to(pH(4.1));
    Traced needed = dose.neededMass().traced();
    Source assay =
        needed.sources().stream()
            .filter(source -> source.name().startsWith("assay"))
            .findFirst()
            .orElseThrow();
    assertEquals(-0.02 * needed.value(), needed.parts().get(assay), 1e-3 * needed.value());
    // More beer in the tank takes more.
    Source volume =
        needed.sources().stream()
            .filter(source -> source.name().equals("volume in the tank"))
            .findFirst()
            .orElseThrow();
    assertEquals(0.05 * needed.value(), needed.parts().get(volume), 2e-3 * needed.value());
  }

  /** Carbonic acid is no carbonate: what it brings is not set free. */
  @Test
  void carbonicAcidSetsNoGasFree() {
    TankDose<Held> dose = TankDose.of(WATER, Acid.CARBONIC, TANK).to(pH(7));
    assertEquals(0, dose.carbonDioxide().number());
    assertTrue(
        dose.notices().stream().noneMatch(notice -> notice.code() == TreatmentCode.SETS_GAS_FREE));
    assertEquals("of a dose into a tank", dose.carbonDioxide().figure().rule().text());
  }

  /** Calcium that bicarbonate does not move, and far below the limit: nothing is too uncertain. */
  @Test
  void whatADoseDoesNotMoveIsNoFallingFigure() {
    UnreachableException still =
        assertThrows(
            UnreachableException.class,
            () ->
                TankDose.of(WATER, Base.SODIUM_BICARBONATE, TANK)
                    .overshooting(CALCIUM, mgPerL(150), 0.05));
    assertSame(UnreachableException.Reason.NO_EFFECT, still.reason());
  }

  /** A liquid that lies on the limit lies beyond it as often as not. */
  @Test
  void aLiquidOnTheLimitIsTooUncertainForAnEvenChance() {
    Held exact = new Held(Held.beer().contents().closedTo(Traced.exact(4.38)));
    PH on = exact.answer(PH_VALUE).value();
    for (TankDose.Request<Held> request :
        java.util.List.of(
            TankDose.of(exact, Acid.LACTIC, TANK),
            TankDose.of(exact, Base.SODIUM_BICARBONATE, TANK))) {
      assertSame(
          UnreachableException.Reason.TOO_UNCERTAIN,
          assertThrows(UnreachableException.class, () -> request.overshooting(PH_VALUE, on, 0.5))
              .reason());
    }
  }

  @Test
  void aDoseForAChanceSaysTheChanceAndNeedsWhatItPortions() {
    TankDose<Held> dose = TankDose.of(BEER, BOTTLE, TANK).overshooting(PH_VALUE, pH(4.1), 0.05);
    assertEquals(
        dose.portion().volume().orElseThrow().inMillilitres(), dose.neededVolume().number(), 1e-6);
    String said = dose.explain().toString();
    assertTrue(said.contains("until pH lies beyond pH 4.10 with a chance of 5.00 % ="), said);
  }

  @Test
  void anAimIsDosedToAlsoFromWithinTheBand() {
    TankDose<Held> dose =
        TankDose.of(BEER, LACTIC, TANK).to(Constraint.around(PH_VALUE, pH(4.3), 0.2));
    assertEquals(4.3, dose.after().answer(PH_VALUE).number(), 1e-8);
  }

  @Test
  void aReagentOfKnownDensityIsPouredAndAnotherWeighed() {
    Reagent powder = Reagent.of(Acid.CITRIC, massPercent(99));
    assertTrue(
        TankDose.of(BEER, BOTTLE, TANK).to(pH(4.1)).treatment().text().contains("mL/hL of lactic"));
    assertTrue(
        TankDose.of(BEER, powder, TANK).to(pH(4.1)).treatment().text().contains("g/hL of citric"));
    assertTrue(
        DoseBefore.of(WATER, BOTTLE, Treatments.aeration())
            .to(pH(6))
            .toString()
            .matches("[0-9.]+ mL/hL of lactic acid, 80 % by mass, then open to the gas, .*"));
    assertTrue(
        DoseBefore.of(WATER, powder, Treatments.aeration(), Treatments.dilution(massPercent(1)))
            .to(pH(6))
            .toString()
            .matches(
                "[0-9.]+ g/hL of citric acid, 99 % by mass, then open to the gas, .* of CO2, then"
                    + " mixing in 1 % by mass of pure water"));
  }

  @Test
  void tankAndPortionArePrinted() {
    assertEquals("20 hL, u 100 L", TANK.toString());
    assertEquals("20 hL, u not stated", Tank.holding(hL(20)).toString());
    TankDose<Held> poured = TankDose.of(BEER, BOTTLE, TANK).giving(litres(1.19));
    assertEquals("1.19 L, 1.4161 kg, 12.5767 mol", poured.portion().toString());
    assertEquals(
        poured.portion().mass() + ", " + poured.portion().amount(),
        TankDose.of(BEER, Acid.LACTIC, TANK)
            .giving(poured.portion().mass())
            .portion()
            .toString()
            .replaceAll(", [0-9.]+ mol", ", " + poured.portion().amount()));
    StagedDose<Held> staged = StagedDose.of(TankDose.of(BEER, BOTTLE, TANK).to(pH(4.1)));
    assertEquals(
        staged.first().portion() + " first of " + staged.whole().portion(), staged.toString());
  }

  /**
   * By hand: what is added is exact but for the volume in the tank, by whose relative error r all
   * rises are in error together, and a reading between knows more of it. With g the rise of the
   * first stage, before the reading: u2 of the calcium = u2 of the water + (g r)2, of the reading
   * v2 more. What is left times its slope s is then E(s (wanted - there))/E(s2).
   */
  @Test
  void whatIsLeftHasTheLeastExpectedSquareOfWhatIsMissing() {
    Traced before = WATER.answer(CALCIUM).traced();
    TankDose<Held> whole =
        TankDose.of(WATER, Salt.GYPSUM, TANK).to(Constraint.exactly(CALCIUM, mgPerL(200)));
    StagedDose<Held> stages = StagedDose.of(whole, 0.5);
    double first = stages.first().portion().amount().inMoles() / 2000;
    double rise = stages.first().after().answer(CALCIUM).number() - before.value();
    double perMole = rise / first;
    double r = 0.05;
    double v = 3;
    double off = 4;
    double u2 = Math.pow(before.standardUncertainty().orElseThrow(), 2) + Math.pow(rise * r, 2);
    double surprise2 = u2 + v * v;
    double there = before.value() + rise + off * u2 / surprise2;
    double delta = -rise * r * r / surprise2 * off;
    double slope = perMole * (1 - delta);
    double ofDelta = r * r - Math.pow(rise * r * r, 2) / surprise2;
    double both = perMole * rise * r * r * v * v / surprise2;
    double expected =
        (slope * (200 - there) - both) / (slope * slope + perMole * perMole * ofDelta);
    double left =
        stages.read(CALCIUM, mgPerL(before.value() + rise + off), v).portion().amount().inMoles()
            / 2000;
    assertEquals(expected, left, 1e-6 * expected);
  }

  /** Read beyond the target, and so near to it that any dose would do more harm than good. */
  @Test
  void nothingIsLeftBeyondTheTargetNorJustBeforeIt() {
    StagedDose<Held> acid = StagedDose.of(TankDose.of(BEER, LACTIC, TANK).to(pH(4.1)));
    StagedDose<Held> base =
        StagedDose.of(TankDose.of(BEER, Base.SODIUM_BICARBONATE, TANK).to(pH(4.6)));
    StagedDose<Held> salt =
        StagedDose.of(TankDose.of(WATER, Salt.GYPSUM, TANK).to(CALCIUM, mgPerL(200)));
    assertThere(() -> acid.read(pH(4.08), 1e-4));
    assertThere(() -> base.read(pH(4.63), 1e-4));
    assertThere(() -> salt.read(CALCIUM, mgPerL(205), 0.1));
    assertThere(() -> acid.read(pH(4.1 + 1e-5), 1e-4));
    assertThere(() -> salt.read(CALCIUM, mgPerL(200 - 1e-4), 0.1));
    assertFalse(acid.read(pH(4.12), 1e-3).portion().mass().inGrams() <= 0);
  }

  private static void assertThere(org.junit.jupiter.api.function.Executable reading) {
    assertSame(
        UnreachableException.Reason.ALREADY_THERE,
        assertThrows(UnreachableException.class, reading).reason());
  }

  /** What nobody stated of the liquid is not known of what a substance delivers in it. */
  @Test
  void whatIsDeliveredIntoAnOpenBalanceIsUnknown() {
    Contents open = WATER.contents().open(java.util.List.of("alkalinity is not reported"));
    Delivery unknown =
        Delivery.of(new Held(open), Acid.LACTIC, org.brewchem.quantity.Quantities.mmolPerL(1));
    assertEquals(java.util.List.of("alkalinity is not reported"), unknown.at(pH(8.2)).whyUnknown());
    assertEquals(
        "charge of the liquid at the pH before less after, per mole",
        unknown.at(pH(8.2)).figure().rule().text());
    assertTrue(open.totals().containsKey(Component.CALCIUM));
  }

  /** What a mole delivers depends on the label, on the density and on the water hardly at all. */
  @Test
  void theErrorsOfTheDoseCancelInWhatAMoleDelivers() {
    Dose<Held> dose = Dose.of(BEER, BOTTLE).to(pH(4.1));
    Traced delivered = dose.delivered(pH(8.2)).traced();
    assertTrue(dose.delivered(pH(8.2)).explain().holds());
    for (Source source : delivered.sources()) {
      assertEquals(0, delivered.parts().get(source), 2e-4, source.name());
    }
  }

  @Test
  void aTankIsKnownToItsVolumeAtWorst() {
    assertEquals("20 hL, u 20 hL", Tank.holding(hL(20), hL(20)).toString());
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> Tank.holding(hL(20), hL(21)))
            .getMessage()
            .endsWith("2100 L is not possible; 0 to 2000 L is allowed"));
  }
}
