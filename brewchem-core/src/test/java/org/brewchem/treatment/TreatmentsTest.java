package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.gPerHL;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mLPerHL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CARBONATE_ALKALINITY;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SULFATE;
import static org.brewchem.solution.Figures.saturationIndex;
import static org.brewchem.solution.Figures.titrationAlkalinity;
import static org.brewchem.treatment.Treatments.acid;
import static org.brewchem.treatment.Treatments.base;
import static org.brewchem.treatment.Treatments.blend;
import static org.brewchem.treatment.Treatments.degassing;
import static org.brewchem.treatment.Treatments.dilution;
import static org.brewchem.treatment.Treatments.precipitation;
import static org.brewchem.treatment.Treatments.salt;
import static org.brewchem.treatment.Treatments.solute;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Held;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.substance.Use;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

class TreatmentsTest {

  private static final Held WATER = Held.water();
  private static final Held BEER = Held.beer();

  private static double number(Held liquid, Figure<?> figure) {
    return liquid.answer(figure).number();
  }

  private static double u(Held liquid, Figure<?> figure) {
    return liquid.answer(figure).standardUncertainty().orElseThrow();
  }

  @Test
  void aSaltBringsItsIonsByItsFormula() {
    Held salted = WATER.after(salt(Salt.CALCIUM_CHLORIDE_DIHYDRATE, gPerHL(10)));
    // CaCl2.2H2O has 147.01 g/mol by the atomic weights of 2021, calcium 40.078, chlorine 35.45.
    assertEquals(100 * 40.078 / 147.01, number(salted, CALCIUM) - number(WATER, CALCIUM), 1e-3);
    assertEquals(
        100 * 2 * 35.45 / 147.01, number(salted, CHLORIDE) - number(WATER, CHLORIDE), 5e-3);
    assertEquals(u(WATER, CALCIUM), u(salted, CALCIUM), 1e-12);
  }

  @Test
  void anImpureSaltBringsLessAndItsAssayIsASource() {
    Reagent impure =
        Reagent.of(Salt.CALCIUM_CHLORIDE_DIHYDRATE, massPercent(95)).withAssayUncertainty(0.02);
    Held salted = WATER.after(salt(impure, gPerHL(10)));
    double brought = number(salted, CALCIUM) - number(WATER, CALCIUM);
    assertEquals(0.95 * 100 * 40.078 / 147.01, brought, 1e-3);
    assertEquals(Math.hypot(u(WATER, CALCIUM), 0.02 * brought), u(salted, CALCIUM), 1e-9);
  }

  @Test
  void oneTreatmentUsedTwiceIsOneReagentAndTwoTreatmentsAreTwo() {
    Reagent reagent =
        Reagent.of(Salt.CALCIUM_CHLORIDE_DIHYDRATE, massPercent(95)).withAssayUncertainty(0.02);
    Treatment half = salt(reagent, gPerHL(50));
    Held whole = WATER.after(salt(reagent, gPerHL(100)));
    Held twice = WATER.after(half, half);
    assertEquals(number(whole, PH_VALUE), number(twice, PH_VALUE), 1e-10);
    assertEquals(u(whole, CALCIUM), u(twice, CALCIUM), 1e-9);
    assertTrue(u(WATER.after(half, salt(reagent, gPerHL(50))), CALCIUM) < u(twice, CALCIUM));
  }

  @Test
  void byMassAndByVolumeAreTheSameReagent() {
    Reagent lactic =
        Reagent.of(Acid.LACTIC, massPercent(80))
            .withDensity(gPerML(1.2), 0.01)
            .withAssayUncertainty(0.005);
    Held weighed = WATER.after(acid(lactic, gPerHL(36)));
    Held poured = WATER.after(acid(lactic, mLPerHL(30)));
    assertEquals(number(weighed, PH_VALUE), number(poured, PH_VALUE), 1e-10);
    // What is poured errs with the density too.
    assertTrue(u(weighed, PH_VALUE) < u(poured, PH_VALUE));
    assertThrows(
        IllegalArgumentException.class,
        () -> acid(Reagent.of(Acid.CITRIC, massPercent(100)), mLPerHL(10)));
    assertThrows(IllegalArgumentException.class, () -> base(lactic, gPerHL(10)));
    assertThrows(
        IllegalArgumentException.class,
        () -> acid(Reagent.of(Base.SODIUM_CARBONATE, massPercent(99)), gPerHL(1)));
  }

  @Test
  void dosesCountOnTheLiquidAtThatStep() {
    Held diluted = WATER.after(dilution(VolumeRatio.of(1)), salt(Salt.SODIUM_CHLORIDE, gPerHL(10)));
    Held salted = WATER.after(salt(Salt.SODIUM_CHLORIDE, gPerHL(20)), dilution(VolumeRatio.of(1)));
    assertEquals(number(diluted, CHLORIDE), number(salted, CHLORIDE), 1e-9);
    assertEquals(number(diluted, PH_VALUE), number(salted, PH_VALUE), 1e-10);
  }

  @Test
  void treatingAndBlendingCommute() {
    Held other = new Held(Contents.pure(Held.AT, Chemistry.standard()));
    Treatment acid = solute(Acid.LACTIC, mmolPerL(1));
    Held treatedFirst = WATER.after(acid, blend(other.after(acid), MassFraction.of(0.3)));
    Held blendedFirst = WATER.after(blend(other, MassFraction.of(0.3)), acid);
    assertEquals(number(blendedFirst, PH_VALUE), number(treatedFirst, PH_VALUE), 1e-10);
    assertEquals(u(blendedFirst, PH_VALUE), u(treatedFirst, PH_VALUE), 1e-9);
  }

  @Test
  void aBlendWithItselfIsItselfWithTheSameUncertainty() {
    for (Figure<?> figure : List.of(PH_VALUE, CALCIUM, CARBONATE_ALKALINITY)) {
      Held blended = WATER.after(blend(WATER, MassFraction.of(0.4)));
      assertEquals(number(WATER, figure), number(blended, figure), 1e-9);
      assertEquals(u(WATER, figure), u(blended, figure), 1e-6 * u(WATER, figure));
    }
  }

  @Test
  void anUncertainShareCountsWhereTheLiquidsDiffer() {
    Held pure = new Held(Contents.pure(Held.AT, Chemistry.standard()));
    Held exact = WATER.after(blend(pure, massPercent(30)));
    Held uncertain = WATER.after(blend(pure, massPercent(30), 2));
    assertEquals(
        Math.hypot(u(exact, CALCIUM), 0.02 * number(WATER, CALCIUM)), u(uncertain, CALCIUM), 1e-9);
    assertEquals(
        number(exact, CALCIUM),
        number(WATER.after(blend(litres(70), pure, litres(30))), CALCIUM),
        1e-9);
    assertEquals(
        number(exact, CALCIUM), number(WATER.after(dilution(massPercent(30))), CALCIUM), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> blend(litres(0), WATER, litres(0)));
    Held warm = new Held(Contents.pure(Temperature.ofCelsius(65), Chemistry.standard()));
    assertThrows(IllegalArgumentException.class, () -> WATER.after(blend(warm, massPercent(30))));
  }

  @Test
  void volumesOfLiquidsOfOtherMassesPerLitreMixByVolume() {
    Solution textbook = Solution.textbook().with(Salt.SODIUM_CHLORIDE, mmolPerL(10));
    Solution other =
        Solution.at(Temperature.ofCelsius(25)).with(Salt.SODIUM_CHLORIDE, mmolPerL(30));
    double mixed =
        other.after(blend(hL(3), textbook, hL(1))).total(Component.CHLORIDE).inMillimolesPerLitre();
    assertEquals(25, mixed, 0.02);
  }

  @Test
  void whatIsUnknownInOneLiquidIsUnknownInTheBlend() {
    Held unknown = new Held(WATER.contents().withUnknown(Component.CHLORIDE));
    assertFalse(WATER.after(blend(unknown, massPercent(10))).answer(CHLORIDE).isStated());
  }

  @Test
  void baseAfterAcidOfTheSameEquivalentsReturnsThePHOnPaper() {
    Chemistry ideal = Chemistry.standard().at(Level.IDEAL);
    Held water = new Held(WATER.contents().under(ideal));
    Held back =
        water.after(
            solute(Acid.HYDROCHLORIC, mmolPerL(2)), solute(Base.SODIUM_HYDROXIDE, mmolPerL(2)));
    assertEquals(number(water, PH_VALUE), number(back, PH_VALUE), 1e-10);
  }

  @Test
  void carbonDioxideLeavesAsANeutralMolecule() {
    Held acidified = WATER.after(solute(Acid.HYDROCHLORIC, mmolPerL(3)));
    Held degassed = acidified.after(degassing(mgPerL(5)));
    assertTrue(number(degassed, PH_VALUE) > number(acidified, PH_VALUE) + 0.5);
    // Alkalinity does not change with CO2 (Stumm and Morgan, Aquatic Chemistry, from memory), but
    // for the bicarbonate that the 3.4 mmol/L that left would be at the end point: 1 in 25,000 at
    // pH 2, with pK1 6.4.
    Figure<?> alkalinity = titrationAlkalinity(pH(2));
    assertEquals(number(acidified, alkalinity), number(degassed, alkalinity), 2e-4);
    double left =
        Solution.of(degassed.contents())
            .equilibrium()
            .species("CO2(aq)")
            .orElseThrow()
            .molality()
            .inMolesPerKilogram();
    // CO2 44.009 g/mol, water 0.9982 kg/L at 20 °C.
    assertEquals(5, left * 44.009 * 1000 * 0.9982, 1e-3);
    assertTrue(
        degassed.answer(PH_VALUE).explain().toString().contains("leaves as a neutral molecule"));
  }

  @Test
  void theResidueIsExactOrASource() {
    Held acidified = WATER.after(solute(Acid.HYDROCHLORIC, mmolPerL(3)));
    Held exact = acidified.after(degassing(mgPerL(5)));
    Held uncertain = acidified.after(degassing(mgPerL(5), mgPerL(1)));
    double moved =
        number(acidified.after(degassing(mgPerL(5.01))), PH_VALUE)
            - number(acidified.after(degassing(mgPerL(4.99))), PH_VALUE);
    assertEquals(
        Math.hypot(u(exact, PH_VALUE), moved / 0.02),
        u(uncertain, PH_VALUE),
        1e-3 * u(uncertain, PH_VALUE));
  }

  @Test
  void degassingAddsNothing() {
    UnreachableException more =
        assertThrows(UnreachableException.class, () -> WATER.after(degassing(gPerL(1))));
    assertEquals(UnreachableException.Reason.WRONG_DIRECTION, more.reason());
    assertTrue(more.reach() < 100);
    assertThrows(IllegalArgumentException.class, () -> degassing(mgPerL(0)));
    Held open = new Held(WATER.contents().open(List.of("alkalinity is not reported")));
    assertThrows(UnknownFigureException.class, () -> open.after(degassing(mgPerL(1))));
  }

  @Test
  void aMineralPrecipitatesToEquilibrium() {
    Mineral calcite = Mineral.CALCITE;
    Held hard = WATER.after(base(Base.CALCIUM_HYDROXIDE, gPerHL(10)));
    Held left = hard.after(precipitation(calcite));
    assertTrue(number(hard, saturationIndex(calcite)) > 1);
    assertEquals(0, number(left, saturationIndex(calcite)), 1e-9);
    assertTrue(u(left, saturationIndex(calcite)) < 1e-3 * u(hard, saturationIndex(calcite)));
    // As much carbonate as calcium has gone.
    assertEquals(
        total(hard, Component.CALCIUM) - total(left, Component.CALCIUM),
        total(hard, Component.CARBONATE) - total(left, Component.CARBONATE),
        1e-12);
    assertTrue(left.answer(CALCIUM).explain().holds());
    Held undersaturated = WATER.after(solute(Acid.HYDROCHLORIC, mmolPerL(3)));
    assertEquals(
        number(undersaturated, CALCIUM),
        number(undersaturated.after(precipitation(calcite)), CALCIUM),
        0);
    Held unknown = new Held(WATER.contents().withUnknown(Component.CALCIUM));
    assertThrows(UnknownFigureException.class, () -> unknown.after(precipitation(calcite)));
  }

  private static double total(Held liquid, Component component) {
    return liquid.contents().least(component).value();
  }

  @Test
  void everyStepIsALineOfTheExplanation() {
    Reagent lactic = Reagent.of(Acid.LACTIC, massPercent(80));
    Treatment[] steps = {
      salt(Salt.GYPSUM, gPerHL(20)),
      acid(lactic, mLPerHL(30)),
      solute(Ion.SODIUM, mmolPerL(0.1)),
      dilution(massPercent(10)),
      blend(BEER, massPercent(1))
    };
    Answer<?> answer = WATER.after(steps).answer(PH_VALUE);
    assertTrue(answer.explain().holds());
    String text = answer.explain().toString();
    for (String line :
        List.of(
            "addition of calcium sulfate dihydrate (gypsum)",
            "addition of lactic acid, 80 % by mass",
            "addition of sodium",
            "pure water in the mixture",
            "another liquid in the mixture")) {
      assertTrue(text.contains(line), line);
    }
    assertEquals("20 g/hL of calcium sulfate dihydrate (gypsum)", steps[0].text());
    assertEquals("30 mL/hL of lactic acid, 80 % by mass", steps[1].text());
  }

  private static Set<Hazard> hazards(Treatment treatment) {
    return treatment.cautions().stream().map(Caution::hazard).collect(Collectors.toSet());
  }

  @Test
  void cautionsFollowTheSubstance() {
    Set<Hazard> food = Set.of(Hazard.DOSING_FOOD);
    assertEquals(
        Set.of(Hazard.ACID, Hazard.CARBON_DIOXIDE, Hazard.DOSING_FOOD),
        hazards(acid(Reagent.of(Acid.LACTIC, massPercent(80)), mLPerHL(1))));
    assertTrue(hazards(acid(Acid.HYDROCHLORIC, gPerHL(1))).contains(Hazard.ACID_FUMES));
    assertTrue(hazards(acid(Acid.HYDROCHLORIC, gPerHL(1))).contains(Hazard.ACID));
    assertTrue(hazards(acid(Acid.SULFURIC, gPerHL(1))).contains(Hazard.ACID_HEAT));
    assertTrue(
        hazards(acid(Reagent.of(Acid.CITRIC, massPercent(99)), gPerHL(1))).contains(Hazard.DUST));
    assertEquals(
        Set.of(Hazard.LYE, Hazard.DOSING_FOOD), hazards(base(Base.SODIUM_HYDROXIDE, gPerHL(1))));
    assertTrue(hazards(base(Base.POTASSIUM_HYDROXIDE, gPerHL(1))).contains(Hazard.LYE));
    assertEquals(
        Set.of(Hazard.LIME, Hazard.DOSING_FOOD), hazards(base(Base.CALCIUM_HYDROXIDE, gPerHL(1))));
    assertEquals(
        Set.of(Hazard.DUST, Hazard.CARBON_DIOXIDE, Hazard.FOAMING, Hazard.DOSING_FOOD),
        hazards(base(Base.SODIUM_BICARBONATE, gPerHL(1))));
    assertEquals(Set.of(Hazard.DUST, Hazard.DOSING_FOOD), hazards(salt(Salt.GYPSUM, gPerHL(1))));
    assertTrue(hazards(salt(Salt.CHALK, gPerHL(1))).contains(Hazard.CARBON_DIOXIDE));
    assertEquals(Set.of(Hazard.CARBON_DIOXIDE), hazards(degassing(mgPerL(1))));
    assertEquals(food, hazards(solute(Ion.SODIUM, mmolPerL(1))));
  }

  @Test
  void aPartBoundInEstersIsANoticeOfWhateverFollows() {
    Reagent bound = Reagent.of(Acid.LACTIC, massPercent(80)).withBoundInEsters(massPercent(10));
    Held treated = WATER.after(acid(bound, mLPerHL(30)));
    assertEquals(
        1,
        treated.answer(PH_VALUE).notices().stream()
            .filter(notice -> notice.code() == TreatmentCode.BOUND_IN_ESTERS)
            .count());
    Held beyond = WATER.after(acid(Reagent.of(Acid.LACTIC, massPercent(96)), gPerHL(30)));
    assertTrue(beyond.answer(PH_VALUE).notices().toString().contains("an unknown part"));
  }

  @Test
  void whatIsNotForTheLiquidIsRefusedWhereTreatmentsAreApplied() {
    Contents before = WATER.contents();
    Treatment oxalic = acid(Acid.OXALIC, gPerHL(1));
    assertTrue(
        assertThrows(
                IllegalArgumentException.class,
                () -> Treatments.apply(before, Use.BREWING_WATER, oxalic))
            .getMessage()
            .contains("oxalic acid"));
    assertEquals(
        number(WATER.after(salt(Salt.GYPSUM, gPerHL(10))), SULFATE),
        number(
            new Held(Treatments.apply(before, Use.BREWING_WATER, salt(Salt.GYPSUM, gPerHL(10)))),
            SULFATE),
        0);
    Acid own = Acid.ofPKa("an acid of the house", 4.1).withFormula("C5H8O3");
    assertEquals(
        TreatmentCode.PERMISSION,
        Treatments.apply(before, Use.BEER, acid(own, gPerHL(1))).notices().get(0).code());
  }

  @Test
  void tracedNumbersOfAnExactDoseAreExact() {
    Traced exact =
        new Held(Contents.pure(Held.AT, Chemistry.standard()))
            .after(salt(Salt.GYPSUM, gPerHL(10)))
            .answer(CALCIUM)
            .traced();
    assertEquals(0, exact.standardUncertainty().orElseThrow(), 0);
  }

  /** By hand: 1 mmol of lactate, C3H5O3-, weighs 89.07 mg. */
  @Test
  void anAcidSaysWhatItLeaves() {
    Held after = Held.water().after(Treatments.solute(Acid.LACTIC, mmolPerL(1)));
    String text = after.answer(CHLORIDE).explain().toString();
    assertTrue(text.contains("leaves 89.07 mg/L of lactate"), text);
    String salt =
        Held.water()
            .after(Treatments.solute(Salt.GYPSUM, mmolPerL(1)))
            .answer(CHLORIDE)
            .explain()
            .toString();
    assertTrue(!salt.contains("leaves"), salt);
  }

  /** By hand: a tenth more volume, known to a tenth of itself, thins the calcium by 1 / 1.1. */
  @Test
  void theVolumeOfAReagentThinsAndIsUncertain() {
    Reagent liquid = Reagent.of(Acid.LACTIC, massPercent(80)).withDensity(gPerML(1.2), 0.1);
    Held after = WATER.after(Treatments.acid(liquid, gPerL(120)));
    assertEquals(number(WATER, CALCIUM) / 1.1, number(after, CALCIUM), 1e-3);
    double own = WATER.answer(CALCIUM).standardUncertainty().orElseThrow() / 1.1;
    double grown = number(WATER, CALCIUM) * 0.1 * 0.1 / (1.1 * 1.1);
    assertEquals(
        Math.hypot(own, grown), after.answer(CALCIUM).standardUncertainty().orElseThrow(), 1e-3);
    Source density =
        after.answer(CALCIUM).traced().sources().stream()
            .filter(source -> source.name().startsWith("density"))
            .findFirst()
            .orElseThrow();
    assertTrue(after.answer(CALCIUM).traced().sensitivity(density) > 0);
  }
}
