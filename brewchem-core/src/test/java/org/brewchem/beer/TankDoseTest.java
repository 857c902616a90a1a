package org.brewchem.beer;

import static org.brewchem.beer.Beers.asLactic;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quality.Difference;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.solution.SolutionCode;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.treatment.Chances;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Tank;
import org.brewchem.treatment.TankDose;
import org.brewchem.treatment.TreatmentCode;
import org.brewchem.treatment.UnreachableException;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Doses into tanks of which the volume is uncertain. The beers are invented. */
class TankDoseTest {

  private static final double Z_95 = 1.6448536269514722;

  private static final Reagent LACTIC =
      Reagent.of(Acid.LACTIC, massPercent(88))
          .withDensity(Density.ofGramsPerMillilitre(1.2), 0.002)
          .withAssayUncertainty(0.01);

  private static final Tank TANK = Tank.holding(hL(20), litres(40));

  private static final Figure<TitratableAcidity> ACIDITY = Figures.titratableAcidity(pH(8.2));

  private static double u(Answer<?> answer) {
    return answer.standardUncertainty().orElseThrow();
  }

  @Test
  void aDoseToAnAimIsTheDoseWithoutTheTank() {
    TankDose<Beer> tank = TankDose.of(Beers.lager(), LACTIC, TANK).to(pH(4.2));
    Dose<Beer> dose = Dose.of(Beers.lager(), LACTIC).to(pH(4.2));
    double expected = dose.into(hL(20)).volume().orElseThrow().inMillilitres();
    assertEquals(expected, tank.portion().volume().orElseThrow().inMillilitres(), 1e-6 * expected);
    assertEquals(4.2, tank.after().pH().number(), 1e-8);
    assertTrue(tank.explain().holds());
    assertEquals(2000 + expected / 1000, tank.volumeAfter().inLitres(), 1e-6);
  }

  /**
   * By hand: an acidity rises by equivalents over the volume, so that u of the volume adds the rise
   * times its relative u, the label the rise times its own; the acidity as titrated counts once.
   */
  @Test
  void theVolumeAddsItsRelativeUncertaintyOfTheRise() {
    Beer beer = Beers.lager().under(Chemistry.of(Level.IDEAL));
    TankDose<Beer> dose = TankDose.of(beer, LACTIC, TANK).to(asLactic(2.30));
    double rise = 0.5;
    double label = Math.hypot(0.01, 0.002);
    double expected = Math.sqrt(0.01 * 0.01 + Math.pow(rise * label, 2) + Math.pow(rise * 0.02, 2));
    double got = u(dose.after().titratableAcidity());
    assertEquals(expected, got, 0.01 * expected);
  }

  /** The part of the volume against the same moles in a tank that holds 1 % more. */
  @Test
  void theVolumesPartIsTheChangeThatAnotherVolumeMakes() {
    Beer beer = Beers.lager();
    TankDose<Beer> dose = TankDose.of(beer, LACTIC, TANK).to(pH(4.0));
    double part =
        dose.after().pH().traced().parts().entrySet().stream()
            .filter(entry -> entry.getKey().name().equals("volume in the tank"))
            .findFirst()
            .orElseThrow()
            .getValue();
    double step = 0.02;
    TankDose<Beer> other =
        TankDose.of(beer, LACTIC, Tank.holding(litres(2000 + step), litres(0)))
            .giving(dose.portion().volume().orElseThrow());
    double slope = (other.after().pH().number() - 4.0) / step;
    assertEquals(slope * 40, part, 0.001 * Math.abs(part));
    assertTrue(part > 0, "more beer stays less acid");
  }

  @Test
  void theRangeOfTheDoseIsTheUncertaintyOverTheSlope() {
    Beer beer = Beers.lager();
    TankDose<Beer> dose = TankDose.of(beer, LACTIC, TANK).to(pH(4.1));
    double millilitres = dose.neededVolume().number();
    double more =
        TankDose.of(beer, LACTIC, TANK).giving(mL(1.001 * millilitres)).after().pH().number();
    double slope = (more - 4.1) / (0.001 * millilitres);
    double expected = u(dose.after().pH()) / Math.abs(slope);
    assertEquals(expected, u(dose.neededVolume()), 0.005 * expected);
    assertEquals(1.2 * millilitres, dose.neededMass().number(), 1e-9 * millilitres);
    assertTrue(dose.neededMass().explain().holds());
  }

  @Test
  void theChanceBeyondEachLimitIsThatOfTheNormalDistribution() {
    TankDose<Beer> dose =
        TankDose.of(Beers.lager(), LACTIC, TANK).to(Constraint.around(PH_VALUE, pH(4.2), 0.05));
    Chances chances = dose.chances();
    double half = 0.05 / u(dose.after().pH());
    // Abramowitz and Stegun 26.2.17, from memory, good to 7.5e-8.
    double beyond = 1 - normal(half);
    assertEquals(beyond, chances.below().orElseThrow(), 2e-7);
    assertEquals(beyond, chances.above().orElseThrow(), 2e-7);
    assertEquals(1 - 2 * beyond, chances.within().orElseThrow(), 4e-7);
    Chances atMost = dose.chances(Constraint.atMost(PH_VALUE, pH(4.25)));
    assertEquals(chances.above(), atMost.above());
    assertTrue(atMost.below().isEmpty());
  }

  private static double normal(double z) {
    double t = 1 / (1 + 0.2316419 * z);
    double series =
        t
            * (0.319381530
                + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
    return 1 - Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI) * series;
  }

  @ParameterizedTest
  @CsvSource({"0.05, 1.6448536", "0.01, 2.3263479", "0.5, 0"})
  void aDoseForAChanceStopsSoManyUncertaintiesBeforeTheLimit(double chance, double z) {
    TankDose<Beer> acid =
        TankDose.of(Beers.lager(), LACTIC, TANK).overshooting(PH_VALUE, pH(4.1), chance);
    double reached = acid.after().pH().number();
    assertEquals(4.1 + z * u(acid.after().pH()), reached, 1e-6);
    assertEquals(chance, acid.chances().below().orElseThrow(), 1e-6);
    assertTrue(acid.explain().holds());
    TankDose<Beer> base =
        TankDose.of(Beers.lager(), Base.POTASSIUM_BICARBONATE, TANK)
            .overshooting(PH_VALUE, pH(4.6), chance);
    assertEquals(4.6 - z * u(base.after().pH()), base.after().pH().number(), 1e-6);
    assertEquals(chance, base.chances().above().orElseThrow(), 1e-6);
  }

  @Test
  void aBandIsOvershotAtItsFarLimit() {
    Constraint band = Constraint.between(PH_VALUE, pH(4.0), pH(4.2));
    TankDose<Beer> toNearLimit = TankDose.of(Beers.lager(), LACTIC, TANK).to(band);
    assertEquals(4.2, toNearLimit.after().pH().number(), 1e-8);
    assertTrue(
        toNearLimit.notices().stream()
            .anyMatch(notice -> notice.code() == TreatmentCode.AT_THE_LIMIT));
    TankDose<Beer> careful = toNearLimit.overshooting(0.05);
    assertEquals(0.05, careful.chances().below().orElseThrow(), 1e-6);
    assertEquals(band, careful.constraint().orElseThrow());
    assertThrows(
        IllegalStateException.class,
        () ->
            TankDose.of(Beers.lager(), LACTIC, TANK)
                .to(Constraint.atMost(PH_VALUE, pH(4.2)))
                .overshooting(0.05));
    TankDose<Beer> stated = TankDose.of(Beers.lager(), LACTIC, TANK).giving(g(500));
    assertThrows(IllegalStateException.class, stated::chances);
    assertThrows(IllegalStateException.class, () -> stated.overshooting(0.05));
    assertFalse(stated.neededMass().isStated());
  }

  @Test
  void aLiquidThatMayLieBeyondTheLimitAlreadyIsNotDosed() {
    UnreachableException thrown =
        assertThrows(
            UnreachableException.class,
            () -> TankDose.of(Beers.lager(), LACTIC, TANK).overshooting(PH_VALUE, pH(4.34), 0.05));
    assertSame(UnreachableException.Reason.TOO_UNCERTAIN, thrown.reason());
    assertEquals(4.35 - Z_95 * 0.01, thrown.reach(), 1e-6);
  }

  @Test
  void aMissingUncertaintyIsMissing() {
    TankDose<Beer> dose =
        TankDose.of(Beers.lager(), LACTIC, Tank.holding(hL(20)))
            .to(Constraint.around(PH_VALUE, pH(4.2), 0.05));
    assertTrue(dose.chances().below().isEmpty());
    assertTrue(dose.chances().toString().contains("chances unknown"));
    UnknownFigureException thrown =
        assertThrows(UnknownFigureException.class, () -> dose.overshooting(0.05));
    assertTrue(thrown.getMessage().contains("volume in the tank"), thrown.getMessage());
  }

  /** By definition: a mole of carbonate sets a mole of carbon dioxide free, 44.01 g. */
  @Test
  void carbonatesSetFreeTheirCarbonDioxideAndBringTheirMetal() {
    for (Compound carbonate :
        List.of(Base.POTASSIUM_BICARBONATE, Base.SODIUM_BICARBONATE, Salt.CHALK)) {
      TankDose<Beer> dose = TankDose.of(Beers.lager(), carbonate, TANK).to(pH(4.6));
      double moles = dose.portion().amount().inMoles() / 2000;
      assertEquals(moles * 44.01 * 1000, dose.carbonDioxide().number(), 1e-4 * moles * 44010);
      assertEquals(4.6, dose.after().pH().number(), 1e-8);
      assertTrue(
          dose.notices().stream().anyMatch(notice -> notice.code() == TreatmentCode.SETS_GAS_FREE));
      assertTrue(dose.cautions().stream().anyMatch(caution -> caution.hazard() == Hazard.FOAMING));
      // Equivalents: what the metal brings is missing in the acidity, the carbon dioxide gone.
      double equivalents = carbonate == Salt.CHALK ? 2000 * moles : 1000 * moles;
      double fallen =
          (1.8 - dose.after().titratableAcidity().number())
              / Acid.LACTIC.gramsPerEquivalent()
              * 1000;
      assertEquals(equivalents, fallen, 0.06 * equivalents);
    }
    assertEquals(0, TankDose.of(Beers.lager(), LACTIC, TANK).to(pH(4.2)).carbonDioxide().number());
  }

  @Test
  void aCarbonDioxideThatStaysIsTitrated() {
    double dose =
        TankDose.of(Beers.lager(), Base.POTASSIUM_BICARBONATE, TANK)
            .giving(g(1000))
            .after()
            .titratableAcidity()
            .number();
    double kept =
        TankDose.of(Beers.lager(), Base.POTASSIUM_BICARBONATE, TANK)
            .keepingCarbonDioxide()
            .giving(g(1000))
            .after()
            .titratableAcidity()
            .number();
    assertEquals(1.35, dose, 0.03);
    assertEquals(1.80, kept, 0.03);
  }

  @Test
  void theChangeOfEveryFigureCountsTheBeerOnce() {
    TankDose<Beer> dose = TankDose.of(Beers.lager(), LACTIC, TANK).to(pH(4.2));
    Difference change = Difference.of(dose.answer(ACIDITY), dose.before().answer(ACIDITY));
    assertTrue(change.value() > 0);
    assertTrue(change.standardUncertainty().orElseThrow() < 0.5 * change.value());
    Difference ofCalcium =
        Difference.of(dose.answer(Figures.CALCIUM), dose.before().answer(Figures.CALCIUM));
    assertTrue(ofCalcium.value() < 0, "diluted by the acid's volume");
    assertTrue(ofCalcium.standardUncertainty().orElseThrow() < 0.01);
  }

  /** A beer's typical organic acids are lumped; what of them holds a proton is not known. */
  @Test
  void theSournessOfABeerSaysThatLumpedAcidsDoNotCount() {
    assertTrue(
        Beers.lager().answer(Figures.SOURNESS_INDEX).notices().stream()
            .anyMatch(notice -> notice.code() == SolutionCode.LUMPED_ACIDS_NOT_COUNTED));
  }

  /**
   * By arithmetic: a difference of 0.30 g/L with both results good to 0.05, 0.10, 0.20 is 4.2, 2.1,
   * 1.1 standard uncertainties, 0.30 over the root of two times u.
   */
  @ParameterizedTest
  @CsvSource({"0.05, 4.2", "0.10, 2.1", "0.20, 1.1"})
  void aBatchBelowAnEarlierOneIsClosedByADoseWithChances(double u, double z) {
    Beer earlier =
        Beer.of(pH(4.30), asLactic(2.10))
            .withStandardUncertaintyOfPH(0.02)
            .withStandardUncertaintyOfAcidity(asLactic(u));
    Beer later =
        Beer.of(pH(4.36), asLactic(1.80))
            .withStandardUncertaintyOfPH(0.02)
            .withStandardUncertaintyOfAcidity(asLactic(u));
    Figure<TitratableAcidity> figure = ACIDITY;
    Difference difference = Difference.of(later.answer(figure), earlier.answer(figure));
    assertEquals(-z, difference.z().orElseThrow(), 0.1);
    TankDose<Beer> dose =
        TankDose.of(later, LACTIC, TANK)
            .to(Constraint.around(figure, earlier.answer(figure).value(), 0.1));
    // 0.30 g/L in 20 hL are 600 g of acid, 682 g of 88 %, less than 1 % for its volume and pairs.
    assertEquals(682, dose.portion().mass().inGrams(), 7);
    Chances chances = dose.chances();
    double grams = u(dose.answer(figure));
    assertTrue(grams > u && grams < u + 0.02, () -> "u after the dose " + grams);
    assertEquals(2 * (1 - normal(0.1 / grams)), 1 - chances.within().orElseThrow(), 0.02);
  }

  @Test
  void whatActsAtOnceAndWhatAfterHydrolysisIsToldApart() {
    Reagent strong = LACTIC.withBoundInEsters(massPercent(20));
    TankDose<Beer> dose = TankDose.of(Beers.lager(), strong, TANK).to(pH(4.1));
    assertEquals(4.1, dose.afterHydrolysis().pH().number(), 1e-8);
    assertTrue(dose.atOnce().pH().number() > 4.12);
    TankDose<Beer> more = TankDose.of(Beers.lager(), strong, TANK).atOnce().to(pH(4.1));
    assertEquals(4.1, more.atOnce().pH().number(), 1e-8);
    assertTrue(more.afterHydrolysis().pH().number() < 4.08);
  }

  @Test
  void itRefusesByName() {
    TankDose.Request<Beer> request = TankDose.of(Beers.lager(), Salt.CHALK, TANK);
    assertThrows(IllegalArgumentException.class, () -> request.giving(mL(10)));
    assertThrows(IllegalArgumentException.class, () -> Tank.holding(hL(0)));
    assertThrows(IllegalArgumentException.class, () -> request.overshooting(PH_VALUE, pH(4.6), 0));
    assertThrows(
        IllegalArgumentException.class,
        () -> TankDose.of(Beers.lager(), Base.SODIUM_HYDROXIDE, TANK));
    UnreachableException wrong =
        assertThrows(UnreachableException.class, () -> request.to(pH(4.1)));
    assertSame(UnreachableException.Reason.WRONG_DIRECTION, wrong.reason());
  }

  @Test
  void aDoseSaysWhereItGoesAndWhatItIsLikelyToMiss() {
    TankDose<Beer> dose =
        TankDose.of(Beers.lager(), LACTIC, TANK)
            .to(Constraint.between(Figures.PH_VALUE, pH(4.1), pH(4.2)));
    String printed = dose.toString();
    assertTrue(printed.contains(" of lactic acid, 88 % by mass into " + TANK), printed);
    assertTrue(printed.contains("; pH then: "), printed);
    String explained = dose.explain().toString();
    assertTrue(explained.contains("in the tank: " + TANK), explained);
    assertTrue(explained.contains("before the dose: pH: pH 4.35"), explained);
    assertTrue(explained.contains(" g/hL"), explained);
  }

  /**
   * In a water the carbon dioxide of a bicarbonate stays, and so counts in its alkalinity alone.
   */
  @Test
  void ofAWaterNoGasCountsAsGone() {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(40), mgPerL(1))
            .alkalinityAsCaCO3(mgPerL(60), mgPerL(1))
            .pH(pH(7.0), 0.05)
            .build()
            .water();
    TankDose<Water> dose = TankDose.of(water, Base.SODIUM_BICARBONATE, TANK).to(pH(7.2));
    Dose<Water> closed = Dose.of(water, Base.SODIUM_BICARBONATE).to(pH(7.2));
    assertEquals(
        closed.after().answer(Figures.TOTAL_CARBON_DIOXIDE).number(),
        dose.after().answer(Figures.TOTAL_CARBON_DIOXIDE).number(),
        1e-6);
    assertTrue(
        dose.after().answer(Figures.TOTAL_CARBON_DIOXIDE).number()
            > water.answer(Figures.TOTAL_CARBON_DIOXIDE).number());
    assertTrue(
        dose.notices().stream().noneMatch(notice -> notice.toString().contains("counts as gone")));
  }

  /** Of an acid no gas leaves the beer, and nothing is said of it. */
  @Test
  void anAcidSetsNoGasFree() {
    TankDose<Beer> dose = TankDose.of(Beers.lager(), LACTIC, TANK).to(pH(4.2));
    assertFalse(dose.treatment().text().contains("carbon dioxide"));
    assertTrue(
        dose.notices().stream().noneMatch(notice -> notice.code() == TreatmentCode.SETS_GAS_FREE));
    String printed = dose.toString();
    assertTrue(printed.contains(" into 20 hL, u 40 L; "), printed);
  }
}
