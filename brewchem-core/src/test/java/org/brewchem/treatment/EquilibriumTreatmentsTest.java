package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerHL;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CARBONATE_ALKALINITY;
import static org.brewchem.solution.Figures.CARBON_DIOXIDE_PRESSURE;
import static org.brewchem.solution.Figures.MAGNESIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SULFATE;
import static org.brewchem.solution.Figures.TOTAL_CARBON_DIOXIDE;
import static org.brewchem.solution.Figures.saturationIndex;
import static org.brewchem.treatment.Treatments.aeration;
import static org.brewchem.treatment.Treatments.base;
import static org.brewchem.treatment.Treatments.blend;
import static org.brewchem.treatment.Treatments.boiling;
import static org.brewchem.treatment.Treatments.chalkClosed;
import static org.brewchem.treatment.Treatments.chalkOpen;
import static org.brewchem.treatment.Treatments.dilution;
import static org.brewchem.treatment.Treatments.precipitation;
import static org.brewchem.treatment.Treatments.reverseOsmosis;
import static org.brewchem.treatment.Treatments.salt;
import static org.brewchem.treatment.Treatments.solute;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Pressure;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Held;
import org.brewchem.solution.MineralAssemblage;
import org.brewchem.solution.MineralEquilibrium;
import org.brewchem.solution.OpenSolution;
import org.brewchem.solution.Solution;
import org.brewchem.solution.SolutionCode;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

class EquilibriumTreatmentsTest {

  private static final Held WATER = Held.water();
  private static final Pressure AIR = Pressure.ofAtmospheres(4.2e-4);

  private static double number(Held liquid, Figure<?> figure) {
    return liquid.answer(figure).number();
  }

  /** The slopes of an answer to its sources against the same treatment of a moved water. */
  private static void slopesHold(Figure<?> figure, Treatment... treatment) {
    Traced found = WATER.after(treatment).answer(figure).traced();
    for (Source source : found.sources()) {
      double part = found.parts().get(source);
      double step = 0.01;
      double above = number(moved(source, step).after(treatment), figure);
      double below = number(moved(source, -step).after(treatment), figure);
      double expected = (above - below) / (2 * step);
      assertEquals(
          expected, part, 0.01 * Math.abs(expected) + 1e-7, treatment[0] + ": " + source.name());
    }
  }

  /** The water with each of its totals moved as a source has it, by a share of its u. */
  private static Held moved(Source source, double share) {
    Contents contents = WATER.contents();
    Contents changed = contents;
    for (Component component : contents.totals().keySet()) {
      Traced total = contents.least(component);
      double by = total.parts().getOrDefault(source, 0.0) * share;
      changed = changed.withTotal(component, total.withValue(total.value() + by));
    }
    Traced inert = contents.inertCharge().orElseThrow();
    return new Held(
        changed.withInertCharge(
            inert.withValue(inert.value() + inert.parts().getOrDefault(source, 0.0) * share)));
  }

  @Test
  void theSourcesOfWhatIsLeftAreThoseOfDifferences() {
    Treatment lime = solute(Base.CALCIUM_HYDROXIDE, mmolPerL(3));
    Treatment both = precipitation(Mineral.CALCITE, Mineral.BRUCITE);
    assertTrue(number(WATER.after(lime, both), MAGNESIUM) < 0.5 * number(WATER, MAGNESIUM));
    slopesHold(PH_VALUE, aeration());
    slopesHold(TOTAL_CARBON_DIOXIDE, aeration());
    slopesHold(CALCIUM, precipitation(Mineral.CALCITE));
    slopesHold(CALCIUM, boiling(celsius(80), AIR));
    slopesHold(CARBONATE_ALKALINITY, boiling(celsius(80), AIR));
    slopesHold(MAGNESIUM, lime, both);
    slopesHold(CALCIUM, lime, both);
    slopesHold(PH_VALUE, reverseOsmosis(0.9));
  }

  @Test
  void aWaterOpenToAGasHasItsPressureAndItsOldAlkalinity() {
    for (double atmospheres : new double[] {4.2e-4, 0.01, 1}) {
      Pressure pressure = Pressure.ofAtmospheres(atmospheres);
      Held open = WATER.after(aeration(pressure));
      assertEquals(
          pressure.inKilopascals(),
          number(open, CARBON_DIOXIDE_PRESSURE),
          1e-8 * pressure.inKilopascals());
      assertEquals(
          OpenSolution.of(Solution.of(WATER.contents()), pressure).pH().value(),
          number(open, PH_VALUE),
          1e-8);
      assertTrue(open.answer(PH_VALUE).explain().holds());
    }
    // Carbon dioxide leaves as a neutral molecule.
    double before = WATER.contents().chargeAt(Traced.exact(4.3)).value();
    assertTrue(before > 0);
    assertEquals(
        WATER.contents().inertCharge().orElseThrow().value(),
        WATER.after(aeration()).contents().inertCharge().orElseThrow().value(),
        0);
    assertTrue(number(WATER.after(aeration()), PH_VALUE) > number(WATER, PH_VALUE) + 0.5);
    assertTrue(number(WATER.after(aeration(Pressure.ofAtmospheres(1))), PH_VALUE) < 6.5);
    assertThrows(IllegalArgumentException.class, () -> aeration(Pressure.ofAtmospheres(0)));
    Held unknown = new Held(WATER.contents().withUnknown(Component.CARBONATE));
    assertThrows(UnknownFigureException.class, () -> unknown.after(aeration()));
  }

  @Test
  void boilingIsTheOpenEquilibriumWithCalciteAndSaysThatPracticeStopsEarlier() {
    Held boiled = WATER.after(boiling(celsius(65), AIR));
    MineralEquilibrium kernel =
        MineralEquilibrium.precipitating(
            OpenSolution.of(Solution.of(WATER.contents().at(celsius(65))), AIR), Mineral.CALCITE);
    double left = kernel.solution().totals().get(Component.CALCIUM).inMolesPerKilogram();
    assertEquals(left, boiled.contents().least(Component.CALCIUM).value(), 1e-9);
    assertEquals(Held.AT, boiled.contents().temperature());
    Held hot = new Held(boiled.contents().at(celsius(65)));
    assertEquals(0, number(hot, saturationIndex(Mineral.CALCITE)), 1e-7);
    assertEquals(AIR.inKilopascals(), number(hot, CARBON_DIOXIDE_PRESSURE), 1e-7);
    assertTrue(boiled.answer(CALCIUM).explain().holds());
    assertTrue(says(boiled));
    assertTrue(WATER.after(boiling()).notices().toString().contains("beyond the range"));
    assertTrue(number(boiled, MAGNESIUM) == number(WATER, MAGNESIUM));
  }

  private static boolean says(Held liquid) {
    return liquid.notices().stream()
        .anyMatch(
            notice ->
                notice.code() == TreatmentCode.STOPS_EARLIER
                    && notice.text().contains("practice stops earlier"));
  }

  @Test
  void chalkDissolvesLittleClosedMoreOpenAndWhollyInAMash() {
    Held pure = new Held(Contents.pure(Held.AT, Chemistry.standard()));
    double gramsPerMole = 100.087;
    Held closed = pure.after(chalkClosed(gPerL(0.1)));
    // CRC Handbook, from memory: 0.013 g/L in water free of carbon dioxide.
    assertEquals(0.013, mol(closed) * gramsPerMole, 0.002);
    Held open = pure.after(chalkOpen(gPerL(0.1), AIR));
    assertTrue(mol(open) > 3 * mol(closed));
    MineralEquilibrium kernel =
        MineralEquilibrium.of(OpenSolution.of(Solution.at(Held.AT), AIR), Mineral.CALCITE);
    assertEquals(
        kernel.solution().totals().get(Component.CALCIUM).inMolesPerKilogram(), mol(open), 1e-9);
    assertTrue(says(closed) && says(open));
    // A liquid as acid as a mash, and buffered: all of it.
    Held mash =
        new Held(
            pure.contents()
                .withTotal(Component.PHOSPHATE, Traced.exact(20e-3))
                .withTotal(Component.LACTATE, Traced.exact(10e-3))
                .closedTo(Traced.exact(5.5)));
    Held treated = mash.after(chalkClosed(gPerL(0.1)));
    assertEquals(0.1 / gramsPerMole, mol(treated) * treated.contents().kilogramsPerLitre(), 1e-7);
    assertTrue(treated.notices().toString().contains("100 % of the chalk"));
    // A water that is supersaturated already takes none, and loses none by it.
    Held hard = WATER.after(aeration());
    Held same = hard.after(chalkClosed(gPerL(0.1)));
    assertEquals(mol(hard), mol(same), 0);
    assertTrue(same.notices().toString().contains("0 % of the chalk"));
    assertThrows(IllegalArgumentException.class, () -> chalkClosed(gPerL(0)));
  }

  private static double mol(Held liquid) {
    return liquid.contents().least(Component.CALCIUM).value();
  }

  @Test
  void severalMineralsAreAllInEquilibriumOrAbsent() {
    Solution limed = Solution.of(WATER.after(base(Base.CALCIUM_HYDROXIDE, gPerHL(30))).contents());
    MineralAssemblage both =
        MineralAssemblage.precipitating(limed, Mineral.CALCITE, Mineral.BRUCITE);
    for (Mineral mineral : List.of(Mineral.CALCITE, Mineral.BRUCITE)) {
      assertTrue(both.precipitatedMillimolesPerLitre(mineral) > 0.1);
      assertEquals(0, both.solution().equilibrium().saturationIndex(mineral).orElseThrow(), 1e-9);
    }
    assertEquals(
        both.pH().value(),
        MineralAssemblage.precipitating(limed, Mineral.BRUCITE, Mineral.CALCITE).pH().value(),
        1e-9);
    // Gypsum is far from forming, and brucite gives back what calcite makes it dissolve.
    MineralAssemblage three =
        MineralAssemblage.precipitating(limed, Mineral.GYPSUM, Mineral.BRUCITE, Mineral.CALCITE);
    assertEquals(0, three.precipitatedMillimolesPerLitre(Mineral.GYPSUM), 0);
    assertEquals(both.pH().value(), three.pH().value(), 1e-9);
    assertThrows(
        IllegalArgumentException.class,
        () -> MineralAssemblage.precipitating(limed, Mineral.CALCITE, Mineral.CALCITE));
    assertThrows(IllegalArgumentException.class, () -> MineralAssemblage.precipitating(limed));
    assertThrows(
        IllegalArgumentException.class, () -> both.precipitatedMillimolesPerLitre(Mineral.GYPSUM));
  }

  @Test
  void aMembraneHoldsIonsBackAndLetsCarbonDioxideThrough() {
    Held permeate = WATER.after(reverseOsmosis(0.97));
    assertEquals(0.03 * number(WATER, CALCIUM), number(permeate, CALCIUM), 1e-9);
    assertEquals(
        0.03 * number(WATER, CARBONATE_ALKALINITY),
        number(permeate, CARBONATE_ALKALINITY),
        0.02 * number(permeate, CARBONATE_ALKALINITY));
    assertEquals(
        number(WATER, CARBON_DIOXIDE_PRESSURE),
        number(permeate, CARBON_DIOXIDE_PRESSURE),
        0.02 * number(WATER, CARBON_DIOXIDE_PRESSURE));
    assertTrue(number(permeate, PH_VALUE) < number(WATER, PH_VALUE) - 1);
    double stated =
        WATER.after(reverseOsmosis(0.97, 0.01)).answer(CALCIUM).standardUncertainty().orElseThrow();
    assertEquals(0.01 * number(WATER, CALCIUM), stated, 0.02 * stated);
    assertThrows(IllegalArgumentException.class, () -> reverseOsmosis(1.1));
  }

  /** Salt in a water whose chloride nobody stated: the membrane holds back both its ions. */
  @Test
  void aMembraneHoldsBackWhatWasAddedToAnUnknownIon() {
    Held silent = new Held(WATER.contents().withUnknown(Component.CHLORIDE));
    Held salted = silent.after(solute(Salt.SODIUM_CHLORIDE, mmolPerL(5)));
    Held permeate = salted.after(reverseOsmosis(0.9));
    assertEquals(
        0.1 * salted.contents().least(Component.CHLORIDE).value(),
        permeate.contents().least(Component.CHLORIDE).value(),
        1e-15);
    assertEquals(
        number(silent.after(reverseOsmosis(0.9)), PH_VALUE), number(permeate, PH_VALUE), 0.02);
  }

  /**
   * Definition: alkalinity 5.00 mEq/L with permeate of 0.10 to 1.50 takes 0.2857 of the raw water.
   */
  @Test
  void aBlendByTheShareOfTheHandbookHasTheAlkalinityWanted() {
    Held raw = bicarbonate(5.00);
    Held permeate = bicarbonate(0.10);
    double share = (1.50 - 0.10) / (5.00 - 0.10);
    assertEquals(0.2857, share, 5e-5);
    Held blend = raw.after(blend(hL(share), List.of(permeate), List.of(hL(1 - share))));
    assertEquals(
        1.50,
        CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(number(blend, CARBONATE_ALKALINITY))
            .inMilliequivalentsPerLitre(),
        0.002);
  }

  private static Held bicarbonate(double milliequivalents) {
    return new Held(
        Solution.at(Held.AT)
            .with(Ion.SODIUM, mmolPerL(milliequivalents))
            .with(Ion.BICARBONATE, mmolPerL(milliequivalents))
            .contents());
  }

  @Test
  void aBlendOfManyIsTheSameAsOneAfterTheOther() {
    Held soft = WATER.after(dilution(massPercent(80)));
    Held salted = WATER.after(salt(Salt.GYPSUM, gPerHL(20)));
    Held all = WATER.after(blend(hL(2), List.of(soft, salted), List.of(hL(3), hL(5))));
    Held steps = WATER.after(blend(hL(2), soft, hL(3)), blend(hL(5), salted, hL(5)));
    for (Figure<?> figure : Figure.list(CALCIUM, SULFATE, CARBONATE_ALKALINITY, PH_VALUE)) {
      assertEquals(number(steps, figure), number(all, figure), 1e-9);
      assertEquals(
          steps.answer(figure).standardUncertainty().orElseThrow(),
          all.answer(figure).standardUncertainty().orElseThrow(),
          1e-9);
    }
    assertThrows(
        IllegalArgumentException.class, () -> blend(hL(1), List.of(soft), List.of(hL(1), hL(2))));
    assertThrows(IllegalArgumentException.class, () -> blend(hL(0), List.of(), List.of()));
  }

  @Property(tries = 60, seed = "20261126")
  void dilutionMovesEveryIonTowardsTheDiluent(
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double share,
      @ForAll @DoubleRange(min = 0.8, max = 1) double rejection) {
    Held permeate = WATER.after(reverseOsmosis(rejection));
    Held diluted = WATER.after(blend(permeate, massPercent(100 * share)));
    for (Component ion : WATER.contents().totals().keySet()) {
      double before = WATER.contents().least(ion).value();
      double after = diluted.contents().least(ion).value();
      double toward = permeate.contents().least(ion).value();
      assertEquals(before + share * (toward - before), after, 1e-12);
    }
  }

  @Property(tries = 40, seed = "20261126")
  void aSaltChangesExactlyItsIons(@ForAll @DoubleRange(min = 0.1, max = 60) double grams) {
    for (Salt salt : List.of(Salt.GYPSUM, Salt.CALCIUM_CHLORIDE_DIHYDRATE, Salt.EPSOM_SALT)) {
      Held after = WATER.after(salt(salt, gPerHL(grams)));
      Set<Component> changed = new LinkedHashSet<>();
      for (Component ion : after.contents().totals().keySet()) {
        if (after.contents().least(ion).value() != WATER.contents().least(ion).value()) {
          changed.add(ion);
        }
      }
      assertEquals(salt.components().keySet(), changed);
      assertEquals(
          number(WATER, CARBONATE_ALKALINITY),
          number(after, CARBONATE_ALKALINITY),
          0.01 * number(WATER, CARBONATE_ALKALINITY));
    }
  }

  @Property(tries = 40, seed = "20261126")
  void limeThenItsEquivalentsOfHydrochloricAcidReturnTheAlkalinity(
      @ForAll @DoubleRange(min = 0.01, max = 2) double millimoles) {
    Held back =
        WATER.after(
            solute(Base.CALCIUM_HYDROXIDE, mmolPerL(millimoles)),
            solute(Acid.HYDROCHLORIC, mmolPerL(2 * millimoles)));
    double before = WATER.contents().chargeAt(Traced.exact(4.3)).value();
    assertEquals(before, back.contents().chargeAt(Traced.exact(4.3)).value(), 2e-6);
  }

  @Test
  void aDoseBeforeDegassingIsGreaterThanAClosedOneAndReachesItsTarget() {
    Reagent lactic = Reagent.of(Acid.LACTIC, massPercent(80)).withAssayUncertainty(0.01);
    Dose<Held> closed = Dose.of(WATER, lactic).to(pH(5.8));
    DoseBefore<Held> open = DoseBefore.of(WATER, lactic, aeration()).to(pH(5.8));
    assertEquals(5.8, open.after().answer(PH_VALUE).number(), 1e-6);
    assertTrue(open.amount().number() > 1.1 * closed.answer(Dose.AMOUNT).number());
    assertTrue(open.dosed().answer(PH_VALUE).number() < 5.8);
    assertTrue(closed.after().after(aeration()).answer(PH_VALUE).number() > 6.5);
    assertTrue(open.amount().explain().holds());
    assertTrue(open.amount().standardUncertainty().orElseThrow() > 0);
    assertEquals(
        open.amount().number() * 100,
        open.into(hL(1)).amount().inMillimoles(),
        1e-9 * open.amount().number() * 100);
    assertFalse(open.toString().isEmpty());
    assertThrows(IllegalArgumentException.class, () -> DoseBefore.of(WATER, lactic));
    assertThrows(
        UnreachableException.class, () -> DoseBefore.of(WATER, lactic, aeration()).to(pH(9)));
  }

  @Test
  void aDoseOfLimeIsFoundWithTheMineralThatForms() {
    DoseBefore<Held> lime =
        DoseBefore.of(WATER, Base.CALCIUM_HYDROXIDE, precipitation(Mineral.CALCITE))
            .to(CARBONATE_ALKALINITY, CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(80));
    assertEquals(80, number(lime.after(), CARBONATE_ALKALINITY), 1e-5);
    assertEquals(0, number(lime.after(), saturationIndex(Mineral.CALCITE)), 1e-8);
    assertTrue(number(lime.after(), CALCIUM) < number(WATER, CALCIUM));
  }

  /** By hand: what the pH after all is uncertain by, over what a mole more lowers it by. */
  @Test
  void theAmountBeforeATreatmentIsAsUncertainAsTheFigureAfterIt() {
    Reagent bottle = Reagent.of(Acid.LACTIC, massPercent(80)).withDensity(gPerML(1.19), 0.001);
    DoseBefore<Held> dose = DoseBefore.of(WATER, bottle, aeration()).to(pH(5.8));
    double millimoles = dose.amount().number();
    double step = millimoles * 1e-5;
    Held further =
        WATER.after(Treatments.solute(Acid.LACTIC, mmolPerL(millimoles + step)), aeration());
    Held less =
        WATER.after(Treatments.solute(Acid.LACTIC, mmolPerL(millimoles - step)), aeration());
    double slope = (number(further, PH_VALUE) - number(less, PH_VALUE)) / (2 * step);
    double u = dose.after().answer(PH_VALUE).standardUncertainty().orElseThrow();
    // A fifth of a per cent for the volume of the bottle, which the pure acid does not bring.
    assertEquals(
        u / -slope,
        dose.amount().standardUncertainty().orElseThrow(),
        0.01 * dose.amount().standardUncertainty().orElseThrow());
    Portion portion = dose.into(hL(2));
    assertEquals(
        0.2 * millimoles * 90.078 / 0.8, portion.mass().inGrams(), 2e-4 * portion.mass().inGrams());
    assertEquals(
        portion.mass().inGrams() / 1.19, portion.volume().orElseThrow().inMillilitres(), 1e-6);
    assertEquals(dose.after().notices(), dose.notices());
    assertFalse(dose.notices().isEmpty());
    assertTrue(dose.cautions().containsAll(aeration().cautions()));
    assertTrue(dose.cautions().containsAll(dose.treatment().cautions()));
    String said =
        assertThrows(
                UnreachableException.class,
                () -> DoseBefore.of(WATER, bottle, aeration()).to(pH(9)))
            .getMessage();
    assertTrue(said.contains("lactic acid") && said.contains("then"), said);
  }

  private static double shown(Held after, String step) {
    String line =
        after
            .answer(CALCIUM)
            .explain()
            .toString()
            .lines()
            .filter(one -> one.startsWith(step))
            .findFirst()
            .orElseThrow();
    return Double.parseDouble(line.replaceAll(".* = (-?[0-9.]+) mmol/L.*", "$1"));
  }

  /**
   * What left is what is missing: as the mineral by calcium, as gas by all carbon dioxide. Within
   * half the last digit that is printed.
   */
  @Test
  void whatLeavesIsWhatIsMissingAfterwards() {
    Held boiled = WATER.after(Treatments.boiling());
    double solid = (number(WATER, CALCIUM) - number(boiled, CALCIUM)) / 40.078;
    assertEquals(solid, shown(boiled, "calcite precipitated"), 0.005);
    double carbon =
        number(WATER, Figures.TOTAL_CARBON_DIOXIDE) - number(boiled, Figures.TOTAL_CARBON_DIOXIDE);
    assertEquals(carbon - solid, shown(boiled, "carbon dioxide given off"), 0.005);
    Held formed = WATER.after(precipitation(Mineral.CALCITE));
    assertEquals(
        (number(WATER, CALCIUM) - number(formed, CALCIUM)) / 40.078,
        shown(formed, "calcite precipitated"),
        0.005);
    Held acid =
        WATER.after(Treatments.solute(Acid.LACTIC, mmolPerL(3)), precipitation(Mineral.CALCITE));
    assertEquals(0, shown(acid, "calcite precipitated"));
  }

  private static Traced found(Held after, String step) {
    return after.contents().basis().stream()
        .filter(one -> one.quantity().startsWith(step))
        .findFirst()
        .orElseThrow()
        .found()
        .orElseThrow();
  }

  /**
   * By the totals, in mol per kg of water: what is missing after it, times the water of a litre.
   */
  @Test
  void whatIsGivenOffIsCountedToTheLitre() {
    Held beer = Held.beer();
    Held open = beer.after(aeration());
    double missing =
        beer.contents().least(Component.CARBONATE).value()
            - open.contents().least(Component.CARBONATE).value();
    assertEquals(
        1000 * missing * beer.contents().kilogramsPerLitre(),
        found(open, "carbon dioxide given off").value(),
        1e-9);
    assertEquals("open to the gas, 0.043 kPa absolute of CO2", aeration().toString());
  }

  /** The part of an uncertain pressure is the change that another pressure makes. */
  @Test
  void anUncertainPressureCountsAsTheDifferenceThatItMakes() {
    Source pressure = Source.of("pressure", 0.04, 0.002, "kPa");
    double step = 1e-4;
    double expected =
        (gas(Traced.exact(0.04 + step)).value() - gas(Traced.exact(0.04 - step)).value())
            / (2 * step)
            * 0.002;
    assertEquals(
        expected, gas(Traced.of(pressure)).parts().get(pressure), 1e-4 * Math.abs(expected));
  }

  private static Traced gas(Traced kilopascals) {
    Contents after =
        new Opening("open", kilopascals, Optional.empty(), Optional.empty(), List.of())
            .on(WATER.contents());
    return after.least(Component.CARBONATE);
  }

  /**
   * What the water's own figures are in error by is in what is left of it too, with its sign. What
   * carbonate and alkalinity do to the pH nearly cancels, so that slopes must be good to five
   * digits.
   */
  @Test
  void theSourcesOfADegassedWaterAreThoseOfDifferences() {
    Treatment degassing = Treatments.degassing(mgPerL(3));
    for (Figure<?> figure : List.of(PH_VALUE, TOTAL_CARBON_DIOXIDE)) {
      Traced found = WATER.after(degassing).answer(figure).traced();
      for (Source source : found.sources()) {
        double above = number(moved(source, 0.01).after(degassing), figure);
        double below = number(moved(source, -0.01).after(degassing), figure);
        double expected = (above - below) / 0.02;
        assertEquals(
            expected,
            found.parts().get(source),
            1e-4 * Math.abs(expected) + 1e-9,
            figure.title() + ": " + source.name());
      }
    }
  }

  /** By its species: so much carbon dioxide is dissolved, and no more is there to be let out. */
  @Test
  void degassingReachesDownFromWhatIsDissolved() {
    double dissolved =
        Solution.of(WATER.contents())
                .equilibrium()
                .species("CO2(aq)")
                .orElseThrow()
                .molality()
                .inMolesPerKilogram()
            * Acid.CARBONIC.molarMass().inGramsPerMole()
            * 1000
            * WATER.contents().kilogramsPerLitre();
    UnreachableException more =
        assertThrows(
            UnreachableException.class, () -> WATER.after(Treatments.degassing(mgPerL(50))));
    double reach = more.reach();
    assertEquals(1, dissolved / reach, 1e-6);
  }

  /** Calcite forms and brucite does not, in whatever order they are named. */
  @Test
  void aMineralThatDoesNotFormTakesNothingFromOneThatDoes() {
    Held left = WATER.after(precipitation(Mineral.BRUCITE, Mineral.CALCITE));
    double missing =
        WATER.contents().least(Component.CALCIUM).value()
            - left.contents().least(Component.CALCIUM).value();
    assertTrue(missing > 1e-4);
    assertEquals(
        1000 * missing * WATER.contents().kilogramsPerLitre(),
        found(left, "calcite precipitated").value(),
        1e-9);
    assertEquals(0, found(left, "brucite precipitated").value());
    String said = left.answer(CALCIUM).explain().toString();
    assertTrue(said.contains("saturation index afterwards: "), said);
    assertTrue(said.contains("not supersaturated"), said);
    assertEquals(
        "mineral",
        assertThrows(
                NullPointerException.class, () -> precipitation(Mineral.CALCITE, (Mineral) null))
            .getMessage());
  }

  @Test
  void aMembraneWantsToKnowTheCarbonateAndSaysSo() {
    Held unknown = new Held(WATER.contents().withUnknown(Component.CARBONATE));
    String said =
        assertThrows(UnknownFigureException.class, () -> unknown.after(reverseOsmosis(0.9)))
            .getMessage();
    assertTrue(said.startsWith("reverse osmosis"), said);
  }

  @Test
  void softeningWithoutSodaAddsNone() {
    String without = WATER.after(LimeSoftening.withLime()).answer(CALCIUM).explain().toString();
    assertTrue(without.contains("addition of calcium hydroxide"), without);
    assertFalse(without.contains("addition of sodium carbonate"), without);
  }

  @Test
  void aDoseBeforeATreatmentHasTheCautionsOfBothAndItsTolerance() {
    DoseBefore<Held> salt = DoseBefore.of(WATER, Salt.GYPSUM, aeration()).to(CALCIUM, mgPerL(150));
    assertTrue(salt.cautions().containsAll(aeration().cautions()));
    assertTrue(salt.cautions().containsAll(salt.treatment().cautions()));
    double wanted = Shown.inOwnScale(CALCIUM, 150);
    assertEquals(
        1e-7 * wanted, salt.amount().explain().root().detail().orElseThrow().tolerance(), 1e-10);
  }

  /** What was too much and has left is no longer too much; what was not asked to leave is. */
  @Test
  void aSupersaturationThatPrecipitatedIsNoLongerNotable() {
    Held limed =
        WATER.after(
            Treatments.solute(Component.MAGNESIUM, mmolPerL(1)),
            Treatments.solute(Component.CHLORIDE, mmolPerL(2)),
            Treatments.solute(Base.CALCIUM_HYDROXIDE, mmolPerL(6)));
    assertTrue(supersaturated(limed).contains("calcite"), limed.notices().toString());
    Held cleared = limed.after(precipitation(Mineral.CALCITE));
    assertFalse(supersaturated(cleared).contains("calcite"), cleared.notices().toString());
    List<String> others = new ArrayList<>(supersaturated(limed));
    others.remove("calcite");
    assertTrue(others.contains("brucite"), limed.notices().toString());
    assertEquals(others, supersaturated(cleared));
  }

  private static List<String> supersaturated(Held liquid) {
    return liquid.notices().stream()
        .filter(notice -> notice.code() == SolutionCode.SUPERSATURATED)
        .map(Notice::subject)
        .toList();
  }
}
