package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.Handling;
import org.brewchem.substance.Ion;
import org.brewchem.substance.IonPair;
import org.brewchem.substance.PairSet;
import org.brewchem.substance.Salt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class SolutionTest {

  private static Solution sample() {
    return Solution.at(celsius(25))
        .with(Acid.PHOSPHORIC, mmolPerL(6))
        .with(Acid.CITRIC, mmolPerL(0.6))
        .with(Ion.POTASSIUM, mmolPerL(9))
        .with(Ion.CALCIUM, mmolPerL(1.5));
  }

  @Test
  void pureWaterIsNeutralAtHalfItsIonProduct() {
    Solution water = Solution.at(celsius(25));
    double half = -Chemistry.standard().log10IonProduct(298.15) / 2;
    assertEquals(half, water.under(Level.IDEAL).pH().value(), 1e-12);
  }

  @Test
  void strongAcidInATextbookHasThePhOfItsConcentration() {
    assertEquals(3, Solution.textbook().with(Acid.HYDROCHLORIC, molPerL(1e-3)).pH().value(), 1e-8);
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void chargeVanishesAtTheOwnPhAndTheEquivalentsStartThere(Level level) {
    Solution solution = sample().under(level);
    PH own = solution.pH();
    assertEquals(0, solution.charge(own).inMilliequivalentsPerLitre(), 1e-10);
    assertEquals(
        solution.equivalents(own, pH(8.2)).inMilliequivalentsPerLitre(),
        solution.titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre(),
        1e-9);
  }

  @ParameterizedTest
  @ValueSource(doubles = {2.0, 4.0, 5.0, 6.0, 8.0, 10.0})
  void bufferCapacityIsTheSlopeOfTheCharge(double at) {
    Solution solution = sample();
    double step = 1e-4;
    double slope =
        solution.equivalents(pH(at - step), pH(at + step)).inMilliequivalentsPerLitre()
            / (2 * step);
    assertEquals(
        slope, solution.bufferCapacity(pH(at)).inMilliequivalentsPerLitrePerPH(), 1e-6 * slope);
  }

  /** Sites of one pKa cannot be told apart: a thousand kinds are one kind of the same total. */
  @ParameterizedTest
  @EnumSource(Level.class)
  void aThousandKindsOfSitesActAsOneKindOfTheirTotal(Level level) {
    Solution base = Solution.at(celsius(25)).with(Base.SODIUM_HYDROXIDE, mmolPerL(4)).under(level);
    Solution one =
        base.withTotal(Component.group("site", -1, 5), Molality.ofMillimolesPerKilogram(10));
    Solution many = base;
    for (int i = 0; i < 1000; i++) {
      Component site = Component.group("site " + i, -1, 5);
      many = many.withTotal(site, Molality.ofMillimolesPerKilogram(0.01));
    }
    assertEquals(one.pH().value(), many.pH().value(), 1e-10);
    assertEquals(
        one.bufferCapacity(pH(5)).inMilliequivalentsPerLitrePerPH(),
        many.bufferCapacity(pH(5)).inMilliequivalentsPerLitrePerPH(),
        1e-9);
  }

  @Test
  void closingTheStrongIonDifferenceGivesTheMeasuredPh() {
    assertEquals(4.41, sample().closedTo(pH(4.41)).pH().value(), 1e-11);
  }

  @Test
  void aDoseGivesItsTarget() {
    Solution solution = sample();
    assertEquals(
        4.2, solution.with(Acid.LACTIC, solution.doseOf(Acid.LACTIC, pH(4.2))).pH().value(), 1e-10);
    assertEquals(
        9.1,
        solution
            .with(Base.CALCIUM_HYDROXIDE, solution.doseOf(Base.CALCIUM_HYDROXIDE, pH(9.1)))
            .pH()
            .value(),
        1e-10);
  }

  @Test
  void aDoseThatCannotReachItsTargetSaysSo() {
    NoSolutionException thrown =
        assertThrows(NoSolutionException.class, () -> sample().doseOf(Acid.LACTIC, pH(12)));
    assertTrue(thrown.getMessage().startsWith("lactic acid to pH 12"), thrown.getMessage());
    assertTrue(thrown.residual() < 0 && thrown.iterations() > 1);
  }

  @Test
  void aSimulatedTitrationReturnsToItsEndPoint() {
    Solution lye = Solution.at(celsius(25)).with(Base.SODIUM_HYDROXIDE, molPerL(0.1));
    SimulatedTitration titration = SimulatedTitration.of(sample().closedTo(pH(4.3)), lye, mL(50));
    assertEquals(8.2, titration.pHAfter(titration.volumeTo(pH(8.2))).value(), 1e-10);
  }

  @Test
  void dilutionByTheTitrantChangesTheAcidityOfABeerLikeMixtureLittle() {
    Solution beer = sample().closedTo(pH(4.3));
    Solution lye = Solution.at(celsius(25)).with(Base.SODIUM_HYDROXIDE, molPerL(0.1));
    double diluted =
        SimulatedTitration.of(beer, lye, mL(50)).volumeTo(pH(8.2)).inMillilitres() * 0.1 / 50;
    double undiluted = beer.titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre() / 1000;
    assertEquals(undiluted, diluted, 0.03 * undiluted);
    assertFalse(Math.abs(undiluted - diluted) < 1e-9);
  }

  @Test
  void sharesOfAComponentSumToOne() {
    for (Component component :
        new Component[] {Component.CALCIUM, Component.PHOSPHATE, Component.CITRATE}) {
      assertEquals(
          1,
          sample().equilibriumAt(pH(5.6)).fractions(component).values().stream()
              .mapToDouble(Double::doubleValue)
              .sum(),
          1e-10);
    }
  }

  @Test
  void freeAndBoundCalciumAddUpToTheTotal() {
    Solution solution = sample();
    Equilibrium state = solution.equilibrium();
    assertEquals(
        solution.totals().get(Component.CALCIUM).inMolesPerKilogram(),
        state.free(Component.CALCIUM).plus(state.bound(Component.CALCIUM)).inMolesPerKilogram(),
        1e-14);
    assertTrue(state.bound(Component.CALCIUM).inMolesPerKilogram() > 0);
    assertEquals(solution.pH(), state.pH());
  }

  @Test
  void totalsPerKilogramGoInAndOut() {
    Solution solution = sample().closedTo(pH(5.1));
    Solution again =
        Solution.fromTotals(
            solution.temperature(),
            solution.chemistry(),
            solution.totals(),
            solution.inertCharge());
    assertEquals(solution.totals(), again.totals());
    assertEquals(5.1, again.pH().value(), 1e-12);
    Equilibrium state = again.equilibrium();
    again
        .totals()
        .forEach(
            (component, total) ->
                assertEquals(
                    total.inMolesPerKilogram(),
                    state.total(component).inMolesPerKilogram(),
                    1e-12 * total.inMolesPerKilogram(),
                    component.name()));
    assertThrows(IllegalArgumentException.class, () -> state.fractions(Component.OXALATE));
  }

  @Test
  void mixingAddsTotalsByVolume() {
    Solution hard = Solution.at(celsius(20)).with(Salt.GYPSUM, mmolPerL(4));
    Solution mixed = hard.mixed(litres(1), Solution.at(celsius(20)), litres(3));
    assertEquals(1, mixed.total(Component.CALCIUM).inMillimolesPerLitre(), 1e-14);
    assertEquals(hard.diluted(4).totals(), mixed.totals());
  }

  @Test
  void solutionsOfDifferentTemperaturesDoNotMix() {
    IllegalArgumentException thrown =
        assertThrows(
            IllegalArgumentException.class,
            () -> Solution.at(celsius(20)).plus(Solution.at(celsius(25))));
    assertTrue(thrown.getMessage().contains("20 °C is needed"), thrown.getMessage());
  }

  @Test
  void solutionsAreEqualByWhatTheyHoldAndByTheirChemistry() {
    Solution one = Solution.textbook().with(Acid.CITRIC, mmolPerL(2));
    assertEquals(one, Solution.textbook().with(Acid.CITRIC, mmolPerL(2)));
    assertEquals(one.hashCode(), Solution.textbook().with(Acid.CITRIC, mmolPerL(2)).hashCode());
    assertNotEquals(one, Solution.textbook().with(Acid.CITRIC, mmolPerL(2.1)));
    assertNotEquals(one, one.heldAt(celsius(24)));
    assertNotEquals(one, one.under(Level.ACTIVITY));
    assertNotEquals(one, one.withInertCharge(mEqPerL(1)));
    assertNotEquals(one, one.under(Chemistry.textbook(13.9)));
    assertEquals(Chemistry.standard(), Chemistry.of(Level.IDEAL).at(Level.PAIRS));
    assertNotEquals(
        Chemistry.standard(), Chemistry.standard().withPairs(PairSet.withAlkaliPairs()));
  }

  @Test
  void degassingLeavesTheResidueAndCannotAdd() {
    Solution water =
        Solution.at(celsius(20)).with(Acid.CARBONIC, mmolPerL(50)).withInertCharge(mEqPerL(2));
    Solution degassed = water.degassedTo(gPerL(0.1));
    assertTrue(degassed.pH().value() > water.pH().value());
    assertEquals(
        0.1 / 44.009 * 1000, degassed.total(Component.CARBONATE).inMillimolesPerLitre(), 1e-9);
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> water.degassedTo(gPerL(5)));
    assertTrue(thrown.getMessage().startsWith("residue of CO2: 5 g/L"), thrown.getMessage());
  }

  @Test
  void aSpeciesIsFoundByItsComponentOrItsPair() {
    Solution solution =
        Solution.at(celsius(25))
            .with(Salt.GYPSUM, mmolPerKg(2))
            .with(Acid.CARBONIC, mmolPerKg(1))
            .under(Level.PAIRS);
    Equilibrium state = solution.equilibrium();
    IonPair pair =
        PairSet.standard().pairs().stream()
            .filter(p -> p.metal().equals(Optional.of(Component.CALCIUM)))
            .filter(p -> p.ligand().equals(Optional.of(Component.SULFATE)) && p.protons() == 0)
            .findFirst()
            .orElseThrow();
    double free = state.species(Component.CALCIUM, 0).orElseThrow().molality().inMolesPerKilogram();
    assertEquals(state.free(Component.CALCIUM).inMolesPerKilogram(), free, 1e-15);
    assertEquals(0, state.species(pair).orElseThrow().charge());
    assertTrue(state.species(pair).orElseThrow().molality().inMolesPerKilogram() > 1e-4);
    assertEquals(-1, state.species(Component.CARBONATE, 1).orElseThrow().charge());
    assertEquals(Optional.empty(), state.species(Component.PHOSPHATE, 1));
    assertThrows(IllegalArgumentException.class, () -> state.species(Component.CALCIUM, 1));
    assertEquals(Optional.empty(), solution.under(Level.ACTIVITY).equilibrium().species(pair));
  }

  @Test
  void anIonicStrengthBeyondTheActivityRuleIsFlagged() {
    Solution brine = Solution.at(celsius(25)).with(Salt.SODIUM_CHLORIDE, molPerL(2));
    assertTrue(brine.equilibrium().beyondActivityRange());
    assertFalse(brine.under(Level.IDEAL).equilibrium().beyondActivityRange());
    assertFalse(sample().equilibrium().beyondActivityRange());
  }

  @Test
  void withoutMetalsPairsIsActivity() {
    Solution solution =
        Solution.at(celsius(20)).with(Acid.LACTIC, mmolPerKg(3)).withInertCharge(mEqPerL(1));
    assertEquals(solution.under(Level.ACTIVITY).pH().value(), solution.pH().value(), 1e-12);
  }

  @Test
  void anUnlikelyTemperatureIsRefused() {
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> Solution.at(celsius(120)));
    assertTrue(thrown.getMessage().contains("120 °C"), thrown.getMessage());
  }

  @Test
  void effectiveEquivalentsAreNotWholeNumbers() {
    assertEquals(1.91, EffectiveEquivalents.of(Acid.PHOSPHORIC).at(pH(8.2)), 0.005);
    assertEquals(
        EffectiveEquivalents.of(Acid.CITRIC).at(pH(8.2))
            - EffectiveEquivalents.of(Acid.CITRIC).at(pH(4.2)),
        EffectiveEquivalents.of(Acid.CITRIC).between(pH(4.2), pH(8.2)),
        1e-12);
    assertEquals(1, EffectiveEquivalents.of(Acid.HYDROCHLORIC).at(pH(4)), 1e-12);
  }

  /** Definition: equal amounts of an acid and its salt have pH = pKa, less what dissociates. */
  @Test
  void anAcidWithOwnConstantsSharesThemWithTheLibrarysSalt() {
    ConstantSet own = ConstantSet.standard().withPKa(Acid.ACETIC, 4.745);
    Solution buffer =
        Solution.textbook()
            .under(Chemistry.textbook(14).withConstants(own))
            .with(Acid.ACETIC, molPerL(0.1))
            .with(Salt.SODIUM_ACETATE_TRIHYDRATE, molPerL(0.1));
    assertEquals(0.2, buffer.total(Component.ACETATE).inMolesPerLitre(), 1e-15);
    double hydrogen = Math.pow(10, -buffer.pH().value());
    assertEquals(
        Math.pow(10, -4.745), hydrogen * (0.1 + hydrogen) / (0.1 - hydrogen), 1e-5 * 1.8e-5);
  }

  /** A litre of the textbook's weighs 1 kg, of another 0.998: what stands per litre is added. */
  @Test
  void addingASolutionAddsWhatALitreHolds() {
    Solution weighed = Solution.at(celsius(25)).under(Chemistry.textbook(14));
    for (Solution[] pair :
        new Solution[][] {{Solution.textbook(), weighed}, {weighed, Solution.textbook()}}) {
      Solution sum =
          pair[0]
              .with(Ion.SODIUM, mmolPerL(1))
              .withInertCharge(mEqPerL(4))
              .plus(
                  pair[1]
                      .with(Ion.SODIUM, mmolPerL(2))
                      .with(Ion.CHLORIDE, mmolPerL(5))
                      .withInertCharge(mEqPerL(-1)));
      assertEquals(3, sum.total(Component.SODIUM).inMillimolesPerLitre(), 1e-12);
      assertEquals(5, sum.total(Component.CHLORIDE).inMillimolesPerLitre(), 1e-12);
      assertEquals(3, sum.inertCharge().inMilliequivalentsPerLitre(), 1e-12);
    }
  }

  @Test
  void mixingAndDilutingTakeTheInertChargeAlong() {
    Solution one = Solution.textbook().withInertCharge(mEqPerL(4));
    Solution other = Solution.textbook().with(Ion.SODIUM, mmolPerL(8)).withInertCharge(mEqPerL(-8));
    Solution mixed = one.mixed(litres(3), other, litres(1));
    assertEquals(1, mixed.inertCharge().inMilliequivalentsPerLitre(), 1e-12);
    assertEquals(2, mixed.total(Component.SODIUM).inMillimolesPerLitre(), 1e-12);
    assertEquals(1, one.diluted(4).inertCharge().inMilliequivalentsPerLitre(), 1e-12);
  }

  @Test
  void degassingMayLeaveAllThatIsThere() {
    Solution water = Solution.textbook().with(Acid.CARBONIC, mmolPerL(2));
    Solution same = water.degassedTo(gPerL(2e-3 * Acid.CARBONIC.molarMass().inGramsPerMole()));
    assertEquals(water.total(Component.CARBONATE), same.total(Component.CARBONATE));
  }

  @Test
  void aSolutionPrintsWhatItHolds() {
    assertEquals(
        "25 °C, sodium 1.50000 mmol/kg, inert charge -2.00000 mEq/kg",
        Solution.textbook()
            .with(Ion.SODIUM, mmolPerL(1.5))
            .withInertCharge(mEqPerL(-2))
            .toString());
    assertEquals("25 °C", Solution.textbook().toString());
    assertEquals("solution", Solution.textbook().kind());
    assertNotEquals(
        Solution.textbook().hashCode(), Solution.textbook().withInertCharge(mEqPerL(1)).hashCode());
  }

  private record Stirring() implements Treatment {

    static final List<Caution> CAUTIONS = Caution.of(List.of(Hazard.FOAMING));

    @Override
    public Contents on(Contents before) {
      return before.withNotices(List.of(Notice.of(SolutionCode.SUPERSATURATED, "all", "stirred")));
    }

    @Override
    public String text() {
      return "stirring";
    }

    @Override
    public List<Caution> cautions() {
      return CAUTIONS;
    }
  }

  @Test
  void aSolutionKeepsTheCautionsOfWhatWasDissolvedAndDone() {
    Solution lye =
        Solution.textbook()
            .with(Base.SODIUM_HYDROXIDE, mmolPerL(1))
            .with(Base.SODIUM_HYDROXIDE, mmolPerL(1))
            .with(Ion.CALCIUM, mmolPerL(1));
    List<Caution> dissolved = Handling.cautionsOf(Base.SODIUM_HYDROXIDE);
    assertEquals(dissolved, lye.cautions());
    List<Caution> all = new ArrayList<>(dissolved);
    all.addAll(Stirring.CAUTIONS);
    Solution stirred = lye.after(new Stirring());
    assertEquals(all, stirred.cautions());
    assertEquals(all, stirred.after(new Stirring()).cautions());
    assertEquals(List.of("stirred"), stirred.notices().stream().map(Notice::text).toList());
    assertEquals(List.of(), Solution.textbook().cautions());
  }

  /** The acid as it is added: ammonium has a charge, an acid of one's own no formula. */
  @Test
  void effectiveEquivalentsCountFromTheAcidAsItIsAdded() {
    assertEquals(1, EffectiveEquivalents.of(Acid.AMMONIUM).at(pH(12)), 0.01);
    assertEquals(0, EffectiveEquivalents.of(Acid.AMMONIUM).at(pH(5)), 0.001);
    Acid own = Acid.ofPKa("acid of our own", 4.76, 6);
    assertEquals(2, EffectiveEquivalents.of(own).at(pH(12)), 0.001);
    assertEquals(0, EffectiveEquivalents.of(own).at(pH(1)), 0.001);
  }

  @Test
  void aDoseThatIsNotFoundTellsWhereItWasLookedFor() {
    NoSolutionException thrown =
        assertThrows(NoSolutionException.class, () -> sample().doseOf(Acid.LACTIC, pH(12)));
    assertEquals(0, thrown.low(), 0);
    assertEquals(50, thrown.high(), 0);
    Solution impossible = Solution.textbook().withInertCharge(mEqPerL(1e7));
    NoSolutionException noPH = assertThrows(NoSolutionException.class, impossible::pH);
    assertEquals(17, noPH.low(), 1e-9);
    assertEquals(17, noPH.high(), 1e-9);
  }

  @Test
  void anEquilibriumPrintsItsSpecies() {
    String[] lines =
        Solution.textbook()
            .with(Ion.SODIUM, mmolPerL(1.5))
            .with(Ion.CHLORIDE, mmolPerL(1.5))
            .equilibrium()
            .toString()
            .split("\\R");
    assertArrayEquals(
        new String[] {
          "pH 7.0000, ionic strength 0.0015001 mol/kg",
          "  H+               1.00000e-07 mol/kg",
          "  OH-              1.00000e-07 mol/kg",
          "  Na+              0.00150000 mol/kg",
          "  Cl-              0.00150000 mol/kg"
        },
        lines);
    Solution brine = Solution.at(celsius(25)).with(Salt.SODIUM_CHLORIDE, mmolPerKg(600));
    assertTrue(
        brine.equilibrium().toString().contains("mol/kg (beyond the range of the activity rule)"));
    Solution within =
        Solution.at(celsius(25)).under(Level.ACTIVITY).with(Salt.SODIUM_CHLORIDE, mmolPerKg(499));
    assertFalse(within.equilibrium().beyondActivityRange());
  }

  /** Of a univalent ion by Davies; the water's own product of both activities. */
  @Test
  void activitiesAreThoseOfTheRuleAndOfTheIonProduct() {
    Solution salt =
        Solution.at(celsius(25))
            .under(Level.ACTIVITY)
            .with(Ion.SODIUM, mmolPerKg(100))
            .with(Ion.CHLORIDE, mmolPerKg(100));
    Equilibrium state = salt.equilibrium();
    double root = Math.sqrt(0.1);
    double gamma = Math.pow(10, -0.5092 * (root / (1 + root) - 0.03));
    double[] activities = new double[3];
    for (Species species : state.species()) {
      switch (species.name()) {
        case "H+" -> activities[0] = species.activity();
        case "OH-" -> activities[1] = species.activity();
        case "Cl-" -> activities[2] = species.activity();
        default -> {}
      }
    }
    assertEquals(Math.pow(10, -state.pH().value()), activities[0], 1e-16);
    double product = Math.pow(10, Chemistry.standard().log10IonProduct(298.15));
    assertEquals(product, activities[0] * activities[1], 1e-9 * product);
    assertEquals(0.1 * gamma, activities[2], 3e-4 * gamma);
  }

  /** What was put into either, and what to mind of it, belongs to the mixture. */
  @Test
  void aMixtureSaysWhatCameIntoEither() {
    Solution pure = Solution.at(celsius(25));
    Solution lime = pure.with(Base.CALCIUM_HYDROXIDE, molPerL(0.5));
    List<Notice> alone = lime.answer(Figures.PH_VALUE).notices();
    assertFalse(alone.isEmpty());
    assertEquals(alone, pure.plus(lime).answer(Figures.PH_VALUE).notices());
    assertEquals(lime.plus(pure).cautions(), pure.plus(lime).cautions());
    assertFalse(pure.plus(lime).cautions().isEmpty());
    assertEquals(
        lime.mixed(litres(1), pure, litres(2)).cautions(),
        pure.mixed(litres(2), lime, litres(1)).cautions());
  }

  /**
   * A litre of one tenth molar acid takes a litre of one tenth molar lye, whatever either weighs.
   */
  @Test
  void aTitrationOfUnlikeLitresEndsWhereItsMolesAreEqual() {
    Solution acid = Solution.textbook().with(Acid.HYDROCHLORIC, molPerL(0.1));
    Solution lye = Solution.at(celsius(25)).with(Base.SODIUM_HYDROXIDE, molPerL(0.1));
    assertEquals(
        100, SimulatedTitration.of(acid, lye, mL(100)).volumeTo(pH(7)).inMillilitres(), 1e-3);
  }
}
