package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CARBONATE_ALKALINITY;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.brewchem.solution.Figures.titratableAcidity;
import static org.brewchem.solution.Figures.titrationAlkalinity;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Code;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.EffectiveEquivalents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Held;
import org.brewchem.solution.Level;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

class DoseTest {

  private static final Reagent LACTIC =
      Reagent.of(Acid.LACTIC, massPercent(80)).withAssayUncertainty(0.01);

  private static final Held BEER = Held.beer();
  private static final Held WATER = Held.water();

  private static double number(Dose<?> dose, Figure<?> figure) {
    return dose.answer(figure).number();
  }

  @Property(tries = 60)
  void aPHIsReached(@ForAll @DoubleRange(min = 3, max = 4.37) double target) {
    Dose<Held> dose = Dose.of(BEER, LACTIC).to(pH(target));
    assertEquals(target, dose.after().answer(PH_VALUE).number(), 1e-9);
    assertTrue(dose.explain().holds());
  }

  @Property(tries = 60)
  void aBaseRaisesAPHWithoutBeingToldTheSign(@ForAll @DoubleRange(min = 4.4, max = 9) double pH) {
    Dose<Held> dose = Dose.of(BEER, Base.SODIUM_BICARBONATE).to(pH(Math.min(pH, 6)));
    assertEquals(Math.min(pH, 6), number(dose, PH_VALUE), 1e-9);
    assertEquals(pH, number(Dose.of(BEER, Base.SODIUM_HYDROXIDE).to(pH(pH)), PH_VALUE), 1e-9);
  }

  @Property(tries = 40)
  void anAcidityIsReachedWithWhatTheBalanceDoesNotExplain(
      @ForAll @DoubleRange(min = 0.5, max = 30) double rise,
      @ForAll @DoubleRange(min = -2, max = 2) double beyond) {
    Held beer =
        new Held(
            BEER.contents().withAcidityBeyond(pH(8.2), Held.read("beyond", beyond / 1000, 1e-4)));
    TitratableAcidity target =
        beer.answer(titratableAcidity(pH(8.2)))
            .value()
            .plus(TitratableAcidity.ofMilliequivalentsPerLitre(rise, pH(8.2)));
    Dose<Held> dose = Dose.of(beer, LACTIC).to(target);
    assertEquals(
        target.inMilliequivalentsPerLitre(),
        dose.after().answer(titratableAcidity(pH(8.2))).value().inMilliequivalentsPerLitre(),
        1e-8);
  }

  @Property(tries = 40)
  void aDoseInTwoStepsIsTheWhole(@ForAll @DoubleRange(min = 3.9, max = 4.3) double between) {
    Dose<Held> whole = Dose.of(BEER, LACTIC).to(pH(3.8));
    Dose<Held> first = Dose.of(BEER, LACTIC).to(pH(between));
    Dose<Held> second = Dose.of(first.after(), LACTIC).to(pH(3.8));
    double grown = 1 + first.answer(Dose.VOLUME).number() / 1e5;
    assertEquals(
        whole.perLitre().inMolesPerLitre(),
        first.perLitre().inMolesPerLitre() + second.perLitre().inMolesPerLitre() * grown,
        1e-9);
  }

  @Test
  void everyFigureOfAWaterIsReachedByTheSameSearch() {
    Dose<Held> toAlkalinity =
        Dose.of(WATER, Acid.PHOSPHORIC).to(CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(50));
    assertEquals(50, number(toAlkalinity, CARBONATE_ALKALINITY), 1e-6);

    TitrationAlkalinity target = TitrationAlkalinity.ofMilliequivalentsPerLitre(1, pH(4.3));
    Dose<Held> toTitration = Dose.of(WATER, LACTIC).to(target);
    assertEquals(1, number(toTitration, titrationAlkalinity(pH(4.3))), 1e-8);

    assertEquals(150, number(Dose.of(WATER, Salt.GYPSUM).to(CALCIUM, mgPerL(150)), CALCIUM), 1e-9);
    Dose<Held> ratio = Dose.of(WATER, Salt.GYPSUM).to(SULFATE_TO_CHLORIDE, 3.0);
    assertEquals(3, number(ratio, SULFATE_TO_CHLORIDE), 1e-9);

    Figure<Double> doubled =
        ClosedForm.figure(
            "twice the alkalinity less a tenth of calcium",
            Scale.number("", 3),
            "2 alkalinity - calcium / 10",
            "",
            Figure.list(CARBONATE_ALKALINITY, CALCIUM),
            x -> 2 * x[0] - x[1] / 10);
    assertEquals(90, number(Dose.of(WATER, LACTIC).to(doubled, 90.0), doubled), 1e-6);
  }

  /** A rule that no work space can walk: the liquid itself is asked while the dose varies. */
  private record OwnRule() implements Figure.Rule {
    @Override
    public Step find(Figure<?> figure, org.brewchem.figure.Answering from) {
      Traced found = ((Liquid) from).contents().least(Component.CHLORIDE).times(35.453);
      return Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
          .origin(Origin.COMPUTED)
          .found(found);
    }

    @Override
    public String text() {
      return "a user's own";
    }
  }

  @Test
  void aFigureOfTheUsersOwnIsReachedToo() {
    Figure<Double> own = Figure.of("own", Map.of(), Scale.number("g/kg", 3), new OwnRule());
    Dose<Held> dose = Dose.of(WATER, Salt.SODIUM_CHLORIDE).to(own, 0.1);
    assertEquals(0.1, number(dose, own), 1e-9);
    assertTrue(dose.explain().holds());
  }

  @Test
  void aFigureShownInAnotherUnitIsReachedInThatUnit() {
    Dose<Held> dose =
        Dose.of(BEER, LACTIC)
            .to(Constraint.around(titratableAcidity(pH(8.2), Acid.TARTARIC), acidity(2.5), 0.1));
    assertEquals(2.5, dose.reached().number(), 1e-8);
  }

  private static TitratableAcidity acidity(double gramsOfTartaricPerLitre) {
    return Scales.acidityAs(Acid.TARTARIC, pH(8.2)).of(gramsOfTartaricPerLitre);
  }

  @Test
  void massVolumeAndAmountAgree() {
    Reagent reagent = Reagent.of(Acid.LACTIC, massPercent(80)).withDensity(gPerML(1.19), 0.01);
    Dose<Held> dose = Dose.of(BEER, reagent).to(pH(4.1));
    Portion portion = dose.into(hL(12));
    double moles = dose.perLitre().inMolesPerLitre() * 1200;
    // Molar mass of C3H6O3 by the atomic weights of 2021, 90.078 g/mol.
    assertEquals(moles, portion.amount().inMoles(), 1e-12);
    assertEquals(moles * 90.078 / 0.8, portion.mass().inGrams(), 1e-9 * moles * 112);
    assertEquals(
        portion.mass().inGrams() / 1.19, portion.volume().orElseThrow().inMillilitres(), 1e-6);
    assertEquals(portion.mass().inGrams() / 12, dose.answer(Dose.MASS).number(), 1e-9);
    assertEquals(
        portion.volume().orElseThrow().inMillilitres() / 12,
        dose.answer(Dose.VOLUME).number(),
        1e-9);
    assertFalse(Dose.of(BEER, Acid.CITRIC).to(pH(4.1)).answer(Dose.VOLUME).isStated());
    assertThrows(IllegalArgumentException.class, () -> dose.into(hL(0)));
  }

  @Test
  void aLiquidReagentDilutesAndAPowderDoesNot() {
    double before = BEER.answer(CHLORIDE).number();
    Dose<Held> dilute =
        Dose.of(BEER, Reagent.of(Acid.LACTIC, massPercent(5)).withDensity(gPerML(1.01), 0.01))
            .to(pH(4.1));
    double growth = dilute.answer(Dose.VOLUME).number() / 1e5;
    assertTrue(growth > 1e-3);
    assertEquals(before / (1 + growth), number(dilute, CHLORIDE), 1e-9);
    Dose<Held> powder =
        Dose.of(BEER, Reagent.of(Acid.CITRIC_MONOHYDRATE, massPercent(99.5))).to(pH(4.1));
    assertEquals(before, number(powder, CHLORIDE), 1e-12);
  }

  @Test
  void theUncertaintyOfTheDoseIsThatOfTheFigureOverItsSlope() {
    Reagent exact =
        Reagent.of(Acid.LACTIC, massPercent(80))
            .withDensity(gPerML(1.19), 0)
            .withAssayUncertainty(0);
    Dose<Held> dose = Dose.of(BEER, exact).to(pH(4.1));
    double u = dose.answer(Dose.AMOUNT).standardUncertainty().orElseThrow();
    // An independent way: the dose again for a beer whose measured pH is one u higher.
    Source measured = source(BEER, "pH");
    Held shifted = new Held(BEER.contents().closedTo(Held.read("pH", 4.38 + 0.02, 0)));
    double more =
        Dose.of(shifted, exact).to(pH(4.1)).answer(Dose.AMOUNT).number()
            - dose.answer(Dose.AMOUNT).number();
    Traced amount = dose.answer(Dose.AMOUNT).traced();
    assertTrue(more > 0);
    assertEquals(more, amount.parts().get(measured), 0.02 * more);
    assertTrue(u >= more * 0.98);
  }

  private static Source source(Held liquid, String name) {
    return liquid.answer(PH_VALUE).traced().sources().stream()
        .filter(source -> source.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void whatBeforeAndAfterShareIsCountedOnceInTheirDifference() {
    Dose<Held> dose = Dose.of(BEER, LACTIC).to(pH(4.1));
    Traced before = BEER.answer(PH_VALUE).traced();
    Traced after = dose.after().answer(PH_VALUE).traced();
    double difference = after.minus(before).standardUncertainty().orElseThrow();
    assertTrue(difference < after.standardUncertainty().orElseThrow());
    assertTrue(
        difference
            < Math.hypot(
                before.standardUncertainty().orElseThrow(),
                after.standardUncertainty().orElseThrow()));
  }

  @Test
  void theStrengthOfTheReagentCountsInTheLiquidAfterAStatedDose() {
    Dose<Held> dose = Dose.of(BEER, LACTIC).to(pH(4.1));
    Traced after = dose.after().answer(PH_VALUE).traced();
    Source assay =
        after.sources().stream()
            .filter(source -> source.name().startsWith("assay"))
            .findFirst()
            .orElseThrow();
    // One per cent more acid than the label says, the dose as stated.
    Held stronger = BEER.after(Treatments.solute(Acid.LACTIC, dose.perLitre().times(1.01)));
    Held asStated = BEER.after(Treatments.solute(Acid.LACTIC, dose.perLitre()));
    double moved = stronger.answer(PH_VALUE).number() - asStated.answer(PH_VALUE).number();
    assertTrue(moved < 0);
    assertEquals(moved, after.parts().get(assay), 0.02 * Math.abs(moved));
    // A stronger reagent needs less of itself: the sign is turned.
    double needed = dose.answer(Dose.MASS).traced().parts().get(assay);
    assertEquals(-0.01 * dose.answer(Dose.MASS).number(), needed, 1e-3 * -needed);
  }

  @Test
  void aLabelWithoutUncertaintyIsNamedAndNeverCountsAsZero() {
    Dose<Held> dose = Dose.of(BEER, Reagent.of(Acid.PHOSPHORIC, massPercent(75))).to(pH(4.1));
    assertTrue(dose.after().answer(PH_VALUE).standardUncertainty().isEmpty());
    assertTrue(dose.answer(Dose.MASS).standardUncertainty().isEmpty());
    assertTrue(
        dose.after()
            .answer(PH_VALUE)
            .uncertaintiesMissing()
            .get(0)
            .startsWith("assay of phosphoric acid"));
  }

  @Test
  void aDoseOfStrongLacticAcidTellsWhatActsAtOnceAndWhatAfterHydrolysis() {
    Figure<TitratableAcidity> acidity = titratableAcidity(pH(8.2));
    TitratableAcidity target =
        BEER.answer(acidity)
            .value()
            .plus(TitratableAcidity.ofMilliequivalentsPerLitre(10, pH(8.2)));
    Reagent strong = Reagent.of(Acid.LACTIC, massPercent(80));
    Dose<Held> dose = Dose.of(BEER, strong).to(target);
    double wanted = target.inMilliequivalentsPerLitre();
    assertEquals(
        wanted, dose.afterHydrolysis().answer(acidity).value().inMilliequivalentsPerLitre(), 1e-8);
    assertTrue(dose.after() == dose.afterHydrolysis());
    // 11.6 % of the acid at 80 % is bound (Vu et al. 2005): of 10 mEq/L, 1.16 come late.
    double atOnce = dose.atOnce().answer(acidity).value().inMilliequivalentsPerLitre();
    assertEquals(wanted - 1.16, atOnce, 0.005);
    assertTrue(
        dose.atOnce().answer(PH_VALUE).number() > dose.after().answer(PH_VALUE).number() + 0.01);
    assertTrue(dose.toString().contains("; at once: "), dose::toString);
    assertTrue(dose.explain().toString().contains("after hydrolysis: "));

    Dose<Held> eager = Dose.of(BEER, strong).atOnce().to(target);
    assertEquals(wanted, eager.atOnce().answer(acidity).value().inMilliequivalentsPerLitre(), 1e-8);
    assertTrue(eager.after() == eager.atOnce());
    assertEquals(
        wanted + 10 * (1 / 0.8844 - 1),
        eager.afterHydrolysis().answer(acidity).value().inMilliequivalentsPerLitre(),
        0.01);
    // The greater volume of the reagent dilutes a little more.
    assertEquals(1 / 0.8844, number(eager, Dose.MASS) / number(dose, Dose.MASS), 2e-3);
    assertTrue(eager.notices().toString().contains("becomes more acid"));
    assertTrue(dose.notices().toString().contains("11.6 % of the acid is bound"));

    Dose<Held> stated = Dose.of(BEER, strong.withBoundInEsters(massPercent(0))).to(target);
    assertTrue(stated.atOnce() == stated.after());
    assertFalse(codes(stated).contains(TreatmentCode.BOUND_IN_ESTERS));
  }

  @Test
  void theBoundPartCountsInWhatActsAtOnceOnly() {
    Reagent strong = Reagent.of(Acid.LACTIC, massPercent(80)).withAssayUncertainty(0);
    Dose<Held> dose = Dose.of(BEER, strong.withDensity(gPerML(1.19), 0)).to(pH(4.1));
    String bound = "bound in esters";
    assertTrue(
        dose.after().answer(PH_VALUE).traced().sources().stream()
            .noneMatch(source -> source.name().endsWith(bound)));
    Traced atOnce = dose.atOnce().answer(PH_VALUE).traced();
    Source part =
        atOnce.sources().stream().filter(s -> s.name().endsWith(bound)).findFirst().orElseThrow();
    double moles = dose.perLitre().inMolesPerLitre();
    Held less = BEER.after(Treatments.solute(Acid.LACTIC, molPerL(moles * (1 - 1.1 * 0.1158))));
    Held as = BEER.after(Treatments.solute(Acid.LACTIC, molPerL(moles * (1 - 0.1158))));
    double moved = less.answer(PH_VALUE).number() - as.answer(PH_VALUE).number();
    assertEquals(moved, atOnce.parts().get(part), 0.02 * moved);
  }

  @Test
  void aBandIsDosedToItsAimElseToItsNearerLimitWithAWarning() {
    Dose<Held> aimed = Dose.of(BEER, LACTIC).to(Constraint.around(PH_VALUE, pH(4.2), 0.1));
    assertEquals(4.2, number(aimed, PH_VALUE), 1e-9);
    assertFalse(codes(aimed).contains(TreatmentCode.AT_THE_LIMIT));

    Dose<Held> limit = Dose.of(BEER, LACTIC).to(Constraint.between(PH_VALUE, pH(4.0), pH(4.2)));
    assertEquals(4.2, number(limit, PH_VALUE), 1e-9);
    assertTrue(codes(limit).contains(TreatmentCode.AT_THE_LIMIT));
    assertTrue(limit.notices().toString().contains("half of the outcomes"));

    Dose<Held> least = Dose.of(WATER, Salt.GYPSUM).to(Constraint.atLeast(CALCIUM, mgPerL(120)));
    assertEquals(120, number(least, CALCIUM), 1e-9);
  }

  private static List<Code> codes(Dose<?> dose) {
    return dose.notices().stream().map(Notice::code).toList();
  }

  @Test
  void whatCannotBeReachedSaysTargetReachAndReason() {
    UnreachableException there =
        assertThrows(
            UnreachableException.class,
            () -> Dose.of(BEER, LACTIC).to(Constraint.atMost(PH_VALUE, pH(4.6))));
    assertEquals(UnreachableException.Reason.ALREADY_THERE, there.reason());

    for (double rounding : new double[] {-1e-12, 0, 1e-12}) {
      UnreachableException same =
          assertThrows(
              UnreachableException.class, () -> Dose.of(BEER, LACTIC).to(pH(4.38 + rounding)));
      assertEquals(UnreachableException.Reason.ALREADY_THERE, same.reason());
    }

    UnreachableException up =
        assertThrows(UnreachableException.class, () -> Dose.of(BEER, LACTIC).to(pH(4.6)));
    assertEquals(UnreachableException.Reason.WRONG_DIRECTION, up.reason());
    assertEquals("pH", up.figure());
    assertEquals(4.6, up.target(), 1e-12);
    assertEquals(4.38, up.reach(), 1e-9);
    assertTrue(up.getMessage().contains("pH 4.60") && up.getMessage().contains("pH 4.38"));

    UnreachableException weak =
        assertThrows(
            UnreachableException.class, () -> Dose.of(BEER, Base.SODIUM_BICARBONATE).to(pH(9.5)));
    assertEquals(UnreachableException.Reason.TOO_WEAK, weak.reason());
    assertTrue(weak.reach() > 7 && weak.reach() < 9, weak.getMessage());

    UnreachableException none =
        assertThrows(
            UnreachableException.class,
            () -> Dose.of(WATER, Salt.SODIUM_CHLORIDE).to(CALCIUM, mgPerL(200)));
    assertEquals(UnreachableException.Reason.NO_EFFECT, none.reason());
    assertEquals("mg/L", none.unit());
  }

  @Test
  void anUnknownFigureSaysWhatIsMissing() {
    Held unknown = new Held(WATER.contents().withUnknown(Component.CHLORIDE));
    UnknownFigureException missing =
        assertThrows(
            UnknownFigureException.class,
            () -> Dose.of(unknown, Salt.SODIUM_CHLORIDE).to(CHLORIDE, mgPerL(100)));
    assertEquals(List.of("chloride is not reported"), missing.missing());
    Held open = new Held(WATER.contents().open(List.of("alkalinity is not reported")));
    assertThrows(UnknownFigureException.class, () -> Dose.of(open, LACTIC).to(pH(6)));
    // Totals do not need the balance.
    assertEquals(
        150, Dose.of(open, Salt.GYPSUM).to(CALCIUM, mgPerL(150)).answer(CALCIUM).number(), 1e-9);
    assertTrue(Dose.of(open, Salt.GYPSUM).to(CALCIUM, mgPerL(150)).explain().holds());
  }

  @Test
  void aSaltThatBringsAnUnknownIonLeavesItUnknown() {
    Held unknown = new Held(WATER.contents().withUnknown(Component.CHLORIDE));
    Dose<Held> dose = Dose.of(unknown, Acid.HYDROCHLORIC).to(pH(6.5));
    assertEquals(6.5, number(dose, PH_VALUE), 1e-9);
    assertFalse(dose.after().answer(CHLORIDE).isStated());
  }

  @Test
  void theExplanationGoesFromTheLiquidToTheRoot() {
    Dose<Held> dose = Dose.of(BEER, LACTIC).to(pH(4.1));
    Step last = dose.explain().root();
    assertEquals(Step.Kind.ROOT, last.kind());
    assertTrue(last.detail().orElseThrow().holds());
    assertEquals(0, last.detail().orElseThrow().residual(), 1e-9);
    String text = dose.explain().toString();
    assertTrue(text.contains("addition of lactic acid, 80 % by mass"));
    assertTrue(text.contains("g/mol / 0.8 = "));
    assertTrue(dose.answer(Dose.MASS).explain().holds());
    assertTrue(dose.answer(Dose.VOLUME).explain().holds());
    assertTrue(dose.delivered().explain().holds());
    assertTrue(dose.toString().startsWith(dose.treatment().text()));
    assertFalse(dose.toString().contains("pH pH"));
  }

  @Test
  void theTreatmentOfADoseDoesWhatTheDoseFound() {
    Dose<Held> dose = Dose.of(BEER, LACTIC).to(pH(4.1));
    assertEquals(4.1, BEER.after(dose.treatment()).answer(PH_VALUE).number(), 1e-9);
  }

  @Test
  void whatIsDeliveredBalancesTheAcidity() {
    Dose<Held> dose = Dose.of(BEER, LACTIC).to(pH(4.1));
    double before = equivalents(dose.before());
    double after = equivalents(dose.after());
    double growth = 1 + dose.answer(Dose.VOLUME).number() / 1e5;
    double delivered = dose.delivered(pH(8.2)).number() * dose.perLitre().inMillimolesPerLitre();
    assertEquals(after * growth, before + delivered, 1e-9);
    assertTrue(dose.delivered().number() < dose.delivered(pH(8.2)).number());
    // The error of what was measured before is in both charges and cancels, but not in the pH
    // after.
    PH reached = dose.after().answer(PH_VALUE).value();
    double atThatPH = dose.delivered(reached).standardUncertainty().orElseThrow();
    assertTrue(atThatPH < 0.01, "u " + atThatPH);
    // By every source of the pH: what it does at a fixed pH, and by the pH.
    Traced ofPH = dose.after().answer(PH_VALUE).traced();
    double slope =
        (dose.delivered(PH.of(reached.value() + 0.001)).number()
                - dose.delivered(PH.of(reached.value() - 0.001)).number())
            / 0.002;
    assertTrue(Math.abs(slope * ofPH.standardUncertainty().orElseThrow()) > 0.001);
    for (Source source : ofPH.sources()) {
      assertEquals(
          dose.delivered(reached).traced().sensitivity(source) + slope * ofPH.sensitivity(source),
          dose.delivered().traced().sensitivity(source),
          1e-4 * Math.abs(slope * ofPH.sensitivity(source)) + 1e-9);
    }
  }

  private static double equivalents(Liquid liquid) {
    return liquid.answer(titratableAcidity(pH(8.2))).value().inMilliequivalentsPerLitre();
  }

  @Test
  void aTraceAtZeroIonicStrengthDeliversWhatTheFormsOfTheAcidTell() {
    Chemistry ideal = Chemistry.standard().at(Level.IDEAL);
    Solution liquid = Solution.at(Held.AT).under(ideal).with(Base.SODIUM_HYDROXIDE, molPerL(1e-3));
    for (Acid acid : List.of(Acid.LACTIC, Acid.PHOSPHORIC, Acid.CITRIC, Acid.SULFURIC)) {
      EffectiveEquivalents alone = EffectiveEquivalents.of(acid, Held.AT, ideal);
      Delivery delivery = Delivery.of(liquid, acid, mmolPerL(1));
      for (double pH : new double[] {2.5, 4.2, 5.4, 8.2}) {
        assertEquals(alone.at(pH(pH)), delivery.at(pH(pH)).number(), 1e-9);
      }
    }
    assertThrows(
        IllegalArgumentException.class, () -> Delivery.of(liquid, Acid.LACTIC, mmolPerL(0)));
  }

  @Test
  void aBaseDeliversNegativeEquivalents() {
    Dose<Held> dose = Dose.of(BEER, Base.SODIUM_HYDROXIDE).to(pH(4.6));
    assertEquals(-1, dose.delivered(pH(4.6)).number(), 0.01);
  }

  @Test
  void freeCalciumFallsWithAnAnionThatBindsIt() {
    Figure<?> free = Figures.free(Ion.CALCIUM);
    Dose<Held> citric = Dose.of(WATER, Acid.CITRIC).to(pH(6));
    Dose<Held> hydrochloric = Dose.of(WATER, Acid.HYDROCHLORIC).to(pH(6));
    assertTrue(number(citric, free) < number(hydrochloric, free) - 10);
    assertTrue(WATER.answer(free).number() < WATER.answer(CALCIUM).number());
    assertTrue(WATER.answer(free).explain().holds());
    Held unknown = new Held(WATER.contents().withUnknown(Component.CALCIUM));
    assertFalse(unknown.answer(free).isStated());
  }

  /** A liquid of another kind, to see what is refused in it. */
  private record Kind(Held held, String kind) implements Liquid {
    @Override
    public org.brewchem.solution.Contents contents() {
      return held.contents();
    }

    @Override
    public Kind after(org.brewchem.solution.Treatment... steps) {
      return new Kind(held.after(steps), kind);
    }

    @Override
    public Step step(Figure<?> figure) {
      return held.step(figure);
    }

    @Override
    public List<Notice> notices() {
      return held.notices();
    }

    @Override
    public List<org.brewchem.figure.Caution> cautions() {
      return List.of();
    }
  }

  @Test
  void whatIsNoFoodAcidIsRefusedInWhatPeopleDrinkAndNotInASolution() {
    for (String kind : List.of("water", "mash", "wort", "beer")) {
      Kind liquid = new Kind(BEER, kind);
      assertTrue(
          assertThrows(
                  IllegalArgumentException.class, () -> Dose.of(liquid, Acid.OXALIC).to(pH(4.1)))
              .getMessage()
              .contains("oxalic acid"));
    }
    assertEquals(4.1, number(Dose.of(BEER, Acid.OXALIC).to(pH(4.1)), PH_VALUE), 1e-9);
  }

  /** The arithmetic by hand, from the amount and what stands on the bottle. */
  @Test
  void theLinesOfADoseAreItsArithmetic() {
    Reagent bottle = Reagent.of(Acid.LACTIC, massPercent(80)).withDensity(gPerML(1.19), 0.002);
    Dose<Held> dose = Dose.of(BEER, bottle).to(pH(4.1));
    double moles = dose.perLitre().inMolesPerLitre();
    double gramsPerHectolitre = moles * 90.078 / 0.8 * 100;
    double millilitres = gramsPerHectolitre / 1.19;
    String text = dose.explain().toString();
    assertTrue(
        text.contains(
            String.format(
                Locale.ROOT,
                "mass: %.4g mmol/L x 90.078 g/mol / 0.8 = %.4g g/hL",
                1000 * moles,
                gramsPerHectolitre)),
        text);
    assertTrue(
        text.contains(
            String.format(
                Locale.ROOT,
                "volume: %.4g mL/hL; volume increases by %.3g %%",
                millilitres,
                millilitres / 1000)),
        text);
    assertEquals("dose", dose.kind());
    String salt =
        Dose.of(WATER, Salt.GYPSUM)
            .to(Constraint.atLeast(CALCIUM, mgPerL(120)))
            .explain()
            .toString();
    assertTrue(salt.contains("g/hL") && !salt.contains("volume increases"), salt);
  }

  /** A liquid that counts how often it is treated. */
  private record Counted(Held held, int[] times) implements Liquid {
    @Override
    public org.brewchem.solution.Contents contents() {
      return held.contents();
    }

    @Override
    public Counted after(org.brewchem.solution.Treatment... steps) {
      times[0]++;
      return new Counted(held.after(steps), times);
    }

    @Override
    public Step step(Figure<?> figure) {
      return held.step(figure);
    }

    @Override
    public String kind() {
      return held.kind();
    }

    @Override
    public List<Notice> notices() {
      return held.notices();
    }

    @Override
    public List<org.brewchem.figure.Caution> cautions() {
      return List.of();
    }
  }

  /** What the balance answers is searched on one work space; the liquid is treated once. */
  @Test
  void aSearchTreatsTheLiquidOnceWhereItAnswersAsItsBalance() {
    int[] times = {0};
    Dose.of(new Counted(BEER, times), LACTIC).to(pH(4.1));
    assertEquals(1, times[0]);
    Dose.of(new Counted(WATER, times), Salt.GYPSUM).to(CALCIUM, mgPerL(150));
    assertEquals(2, times[0]);
  }

  @Test
  void theLinesOfADoseSayWhatWasWantedAndWhatCame() {
    String limit =
        Dose.of(BEER, LACTIC)
            .to(Constraint.between(PH_VALUE, pH(4.0), pH(4.2)))
            .explain()
            .toString();
    assertTrue(limit.contains("pH 4.20") && limit.contains(", to the limit"), limit);
    Dose<Held> aimed = Dose.of(BEER, LACTIC).to(pH(4.1));
    String said = aimed.explain().toString();
    assertFalse(said.contains("to the limit"), said);
    assertTrue(said.contains("wanted: pH 4.10"), said);
    assertTrue(said.contains("after " + aimed.treatment().text() + ": pH 4.10"), said);
    assertTrue(
        aimed.answer(Dose.MASS).explain().toString().contains("amount x what a mole of the"));
    Dose<Held> salt = Dose.of(WATER, Salt.GYPSUM).to(CALCIUM, mgPerL(150));
    double wanted = Shown.inOwnScale(CALCIUM, 150);
    assertEquals(
        1e-9 * wanted, salt.explain().root().detail().orElseThrow().tolerance(), 1e-12 * wanted);
  }

  @Test
  void aRefusalEndsInItsReason() {
    String said =
        assertThrows(
                UnreachableException.class,
                () -> Dose.of(WATER, Salt.SODIUM_CHLORIDE).to(CALCIUM, mgPerL(200)))
            .getMessage();
    assertTrue(
        said.contains(" is not possible by sodium chloride; it does not move the figure, and the"),
        said);
  }

  /** The source of what is bound says how much that is, in per cent of the acid. */
  @Test
  void thePartBoundInEstersIsASourceInPerCent() {
    Reagent strong = Reagent.of(Acid.LACTIC, massPercent(80)).withBoundInEsters(massPercent(12));
    Dose<Held> dose = Dose.of(BEER, strong).to(pH(4.1));
    Source bound =
        dose.atOnce().answer(PH_VALUE).traced().sources().stream()
            .filter(source -> source.name().endsWith("bound in esters"))
            .findFirst()
            .orElseThrow();
    assertEquals(12, bound.estimate(), 1e-12);
  }

  @Test
  void aDoseBeforeATreatmentIsRefusedWhereItIsNoFood() {
    Kind beer = new Kind(BEER, "beer");
    assertTrue(
        assertThrows(
                IllegalArgumentException.class,
                () -> DoseBefore.of(beer, Acid.OXALIC, Treatments.aeration()))
            .getMessage()
            .contains("oxalic acid"));
  }
}
