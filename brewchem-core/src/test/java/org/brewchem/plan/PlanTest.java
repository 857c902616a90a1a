package org.brewchem.plan;

import static org.brewchem.figure.Constraint.around;
import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.figure.Constraint.exactly;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CARBONATE_ALKALINITY;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.IONIC_STRENGTH;
import static org.brewchem.solution.Figures.MAGNESIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.POTASSIUM;
import static org.brewchem.solution.Figures.SODIUM;
import static org.brewchem.solution.Figures.SULFATE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.brewchem.water.WaterFigures.RESIDUAL_ALKALINITY;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Target;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.plan.Plan.Outcome;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

class PlanTest {

  private static final Target PALE =
      Target.named("invented pale lager")
          .with(between(CALCIUM, mgPerL(50), mgPerL(90)))
          .with(atMost(MAGNESIUM, mgPerL(12)))
          .with(atMost(SODIUM, mgPerL(30)))
          .with(around(SULFATE, mgPerL(90), 20).withWeight(1))
          .with(atMost(CHLORIDE, mgPerL(100)))
          .with(around(SULFATE_TO_CHLORIDE, 1.5, 0.3).withWeight(2))
          .with(
              between(
                  RESIDUAL_ALKALINITY,
                  ResidualAlkalinity.ofGermanDegrees(-1),
                  ResidualAlkalinity.ofGermanDegrees(1)))
          .with(atMost(IONIC_STRENGTH, Molality.ofMillimolesPerKilogram(12)))
          .with(atMost(PH_VALUE, pH(7.5)));

  static Plan.Request pale() {
    return Plan.from(Invented.hard(), Invented.soft())
        .called("well", "town")
        .using(Invented.full().meteringWaterTo(litres(5)))
        .meeting(PALE)
        .forPortions(portion("mash", hL(12)), portion("sparge", hL(14)));
  }

  @Test
  void aPlanEqualsItsStepsDoneOneByOne() {
    Plan plan = pale().solve();
    assertEquals(Outcome.FOUND, plan.outcome());
    assertEqualsItsSteps(plan);
  }

  @Test
  void randomPlansEqualTheirStepsDoneOneByOne() {
    Random random = new Random(20_261_126);
    int found = 0;
    for (int i = 0; i < 30; i++) {
      double calcium = 30 + 80 * random.nextDouble();
      Target target =
          Target.named("random")
              .with(between(CALCIUM, mgPerL(calcium), mgPerL(calcium + 40)))
              .with(around(SULFATE_TO_CHLORIDE, 0.5 + 2 * random.nextDouble(), 0.2).withWeight(1))
              .with(
                  atMost(
                      RESIDUAL_ALKALINITY,
                      ResidualAlkalinity.ofGermanDegrees(-2 + 8 * random.nextDouble())));
      Plan plan =
          Plan.from(Invented.hard(), Invented.soft())
              .called("well", "town")
              .using(Invented.full().meteringWaterTo(litres(5)))
              .meeting(target)
              .forPortions(
                  portion("mash", hL(1 + 20 * random.nextDouble())), portion("sparge", hL(14)))
              .solve();
      if (plan.outcome() == Outcome.FOUND) {
        found++;
        assertEqualsItsSteps(plan);
      }
    }
    assertTrue(found > 20, found + " plans of 30");
  }

  private static void assertEqualsItsSteps(Plan plan) {
    for (String name : List.of("mash", "sparge")) {
      Water water = plan.start(name);
      for (Treatment step : plan.steps(name)) {
        water = water.after(step);
      }
      for (Figure<?> figure :
          Figure.list(CALCIUM, SODIUM, SULFATE, CHLORIDE, PH_VALUE, RESIDUAL_ALKALINITY)) {
        assertEquals(
            plan.water(name).answer(figure).traced().value(),
            water.answer(figure).traced().value(),
            figure.title());
        assertEquals(
            plan.water(name).answer(figure).standardUncertainty(),
            water.answer(figure).standardUncertainty(),
            figure.title());
      }
    }
  }

  @Test
  void everyHardLimitIsKeptByTheLiquidsThemselves() {
    Plan plan = pale().solve();
    assertEquals(18, plan.reached().size());
    for (Reached reached : plan.reached()) {
      if (reached.constraint().weight().isEmpty()) {
        assertEquals(0, reached.constraint().excess(reached.answer().number()), reached.toString());
      }
    }
  }

  @Test
  void dosesAreWholeStepsOfTheScaleThePipetteAndTheMeter() {
    Plan plan = pale().solve();
    assertTrue(plan.doses().size() >= 4, plan.doses().toString());
    for (PlannedAmount dose : plan.doses()) {
      double steps =
          dose.mass().isPresent()
              ? dose.mass().get().inGrams()
              : dose.volume().orElseThrow().inMillilitres();
      assertEquals(Math.rint(steps), steps, 1e-9, dose.toString());
    }
    double all = 0;
    for (PlannedAmount water : plan.waters()) {
      double steps = water.volume().orElseThrow().inLitres() / 5;
      assertEquals(Math.rint(steps), steps, 1e-9, water.toString());
      all += 5 * steps;
    }
    assertEquals(2600, all, 1e-9);
  }

  @Test
  void anItemMayBeMeasuredMoreFinelyThanTheShelf() {
    Target target =
        Target.named("t")
            .with(around(CALCIUM, mgPerL(57), 1).withWeight(1))
            .with(around(PH_VALUE, pH(5.4), 0.01).withWeight(1));
    ShelfItem gypsum = Invented.gypsum().resolvedTo(g(0.5));
    ShelfItem lactic = Invented.lactic().resolvedTo(mL(0.2));
    Plan plan =
        Plan.from(Invented.soft())
            .using(Shelf.of(gypsum, lactic).weighingTo(g(25)).pipettingTo(mL(50)))
            .meeting(target)
            .forPortions(portion("mash", hL(1)))
            .solve();
    double grams = plan.doses().get(0).mass().orElseThrow().inGrams();
    double millilitres = plan.doses().get(1).volume().orElseThrow().inMillilitres();
    assertEquals(Math.rint(grams / 0.5), grams / 0.5, 1e-9);
    assertEquals(Math.rint(millilitres / 0.2), millilitres / 0.2, 1e-9);
    assertTrue(grams % 25 != 0 && millilitres % 50 != 0, plan.toString());
    // The mass of a liquid is its volume times its density.
    double acid = Reagent.of(Acid.LACTIC, massPercent(80)).massOf(mL(millilitres)).inGrams();
    assertEquals(grams + acid, plan.massOfDoses().inGrams(), 1e-6);
    assertThrows(IllegalArgumentException.class, () -> Invented.gypsum().resolvedTo(mL(1)));
    assertThrows(IllegalArgumentException.class, () -> Invented.lactic().resolvedTo(g(1)));
    assertThrows(IllegalArgumentException.class, () -> Invented.lactic().resolvedTo(mL(0)));
  }

  @Test
  void theWeightedSumIsWhatTheConstraintsSay() {
    Plan plan = pale().solve();
    double sum = 0;
    for (String name : List.of("mash", "sparge")) {
      Water water = plan.water(name);
      sum += Math.abs(water.sulfate().number() - 90) / 20;
      double half = (Math.log(1.8) - Math.log(1.2)) / 2;
      sum += 2 * Math.abs(Math.log(water.sulfateToChloride().number()) - Math.log(1.5)) / half;
    }
    assertEquals(sum, plan.weightedSum(), 1e-9);
    assertTrue(plan.weightedSum() < 0.2, "weighted sum " + plan.weightedSum());
    assertTrue(plan.weightedSumBeforeRounding() <= plan.weightedSum() + 1e-6);
    assertTrue(plan.explain().holds(), plan.explain().toString());
  }

  @Test
  void aWeightedBandCountsWhatLiesOutsideByHalfItsWidth() {
    Plan plan =
        Plan.from(Invented.soft())
            .using(Shelf.of(Invented.gypsum().atMost(g(10))).weighingTo(g(0.1)))
            .meeting(
                Target.named("band").with(between(CALCIUM, mgPerL(60), mgPerL(80)).withWeight(3)))
            .solve();
    double missing = 60 - plan.water().calcium().number();
    assertEquals(10, plan.doses().get(0).mass().orElseThrow().inGrams(), 1e-9);
    assertEquals(3 * missing / 10, plan.weightedSum(), 1e-9);
  }

  @Test
  void theSameQuestionHasTheSameAnswerBitByBit() {
    Plan one = pale().solve();
    Plan other = pale().solve();
    assertEquals(one.doses(), other.doses());
    assertEquals(one.dosesBeforeRounding(), other.dosesBeforeRounding());
    assertEquals(one.watersBeforeRounding(), other.watersBeforeRounding());
    assertEquals(
        Double.doubleToLongBits(one.weightedSumBeforeRounding()),
        Double.doubleToLongBits(other.weightedSumBeforeRounding()));
    assertEquals(one.toString(), other.toString());
  }

  @Test
  void amongEquallyGoodPlansTheCheaperSaltIsTakenOrTheLighter() {
    ShelfItem dihydrate = Invented.calciumChloride().pricedPerKilogram(2);
    ShelfItem dry = ShelfItem.of(Invented.pure(Salt.CALCIUM_CHLORIDE_ANHYDROUS));
    Plan.Request request =
        Plan.from(Invented.soft())
            .meeting(Target.named("calcium").with(between(CALCIUM, mgPerL(50), mgPerL(60))))
            .using(Shelf.of(dihydrate, dry.pricedPerKilogram(3)).weighingTo(g(0.1)));
    assertEquals(dihydrate.name(), request.solve().doses().get(0).item());
    assertTrue(request.solve().cost().orElseThrow() > 0);
    assertEquals(dry.name(), request.leastMass().solve().doses().get(0).item());
    // Without all prices the mass decides.
    Plan.Request unpriced = request.using(Shelf.of(dihydrate, dry).weighingTo(g(0.1)));
    assertEquals(dry.name(), unpriced.solve().doses().get(0).item());
    assertTrue(unpriced.solve().cost().isEmpty());
  }

  @Test
  void leastAndMostCountOverAllPortions() {
    ShelfItem gypsum = Invented.gypsum().atLeast(g(200)).atMost(g(260));
    Plan plan =
        Plan.from(Invented.soft())
            .using(Shelf.of(gypsum, Invented.calciumChloride()).weighingTo(g(1)))
            .meeting("sparge", Target.named("s").with(atLeast(CALCIUM, mgPerL(40))))
            .meeting("mash", Target.named("m").with(atLeast(CALCIUM, mgPerL(60))))
            .meetingTogether(Target.named("both").with(atMost(CALCIUM, mgPerL(55))))
            .forPortions(portion("mash", hL(6)), portion("sparge", hL(10)))
            .solve();
    assertEquals(Outcome.FOUND, plan.outcome());
    double used =
        plan.doses().stream()
            .filter(dose -> dose.item().equals(gypsum.name()))
            .mapToDouble(dose -> dose.mass().orElseThrow().inGrams())
            .sum();
    assertTrue(used >= 200 && used <= 260, used + " g");
    double mixed =
        (6 * plan.water("mash").calcium().number() + 10 * plan.water("sparge").calcium().number())
            / 16;
    assertEquals(mixed, plan.water().calcium().number(), 1e-9);
    assertTrue(plan.water().calcium().number() <= 55);
  }

  @Test
  void aDiluentIsUsedWithinItsLimits() {
    Plan plan =
        Plan.from(Invented.hard())
            .using(
                Shelf.of(
                        ShelfItem.diluent("osmosis", Water.pure())
                            .atMost(hL(6))
                            .pricedPerLitre(0.01))
                    .meteringWaterTo(litres(10)))
            .meeting(
                Target.named("softer")
                    .with(
                        atMost(
                            CARBONATE_ALKALINITY,
                            CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(100))))
            .forPortions(portion("all", hL(10)))
            .solve();
    PlannedAmount osmosis = plan.waters().get(1);
    assertEquals("osmosis", osmosis.item());
    // 215 to 100 takes 53.5 %, and 54 can be metered.
    assertEquals(540, osmosis.volume().orElseThrow().inLitres(), 1e-9);
    assertEquals(5.4, plan.cost().orElseThrow(), 1e-9);
  }

  @Test
  void aLiquidMadeOfTheWaterIsBoundLikeTheWaterItself() {
    Downstream hot = Downstream.of("hot liquor", water -> water.at(celsius(60)));
    Plan plan =
        Plan.from(Invented.hard())
            .using(Invented.full())
            .and(hot, between(PH_VALUE, pH(5.8), pH(6.0)))
            .forPortions(portion("all", hL(10)))
            .solve();
    double found = plan.water().at(celsius(60)).pH().number();
    assertTrue(found >= 5.8 && found <= 6.0, "pH " + found);
    assertEquals(found, plan.reached().get(0).answer().number(), 0);
    assertEquals("hot liquor of all", plan.reached().get(0).liquid());
  }

  @Test
  void everyItemWithoutStrengthIsNamed() {
    Plan.Request request =
        Plan.from(Invented.soft())
            .using(
                Shelf.of(
                    ShelfItem.of(Acid.LACTIC), Invented.gypsum(), ShelfItem.of(Salt.EPSOM_SALT)))
            .meeting(PALE);
    IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, request::solve);
    assertEquals(
        "shelf: lactic acid, magnesium sulfate heptahydrate (Epsom salt) state no strength; state"
            + " the mass fraction that the label gives, 100 % included",
        refused.getMessage());
    ShelfItem stated = ShelfItem.of(Acid.LACTIC).withStrength(massPercent(80));
    assertEquals(ShelfItem.of(Reagent.of(Acid.LACTIC, massPercent(80))), stated);
  }

  @Test
  void whatNobodyMayDrinkIsRefused() {
    Plan.Request request =
        Plan.from(Invented.soft())
            .using(Shelf.of(ShelfItem.of(Reagent.of(Acid.OXALIC, massPercent(99)))))
            .meeting(PALE);
    IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, request::solve);
    assertTrue(refused.getMessage().contains("poisonous"), refused.getMessage());
  }

  @Test
  void aFigureThatTheWatersDoNotTellIsNamed() {
    Water bare = WaterReport.reported().calcium(mgPerL(40)).build().water();
    Plan.Request request =
        Plan.from(bare)
            .using(Invented.salts())
            .meeting(Target.named("t").with(atMost(POTASSIUM, mgPerL(4))));
    UnknownFigureException unknown = assertThrows(UnknownFigureException.class, request::solve);
    assertTrue(unknown.getMessage().contains("potassium is not reported"), unknown.getMessage());
  }

  @Test
  void whatCannotBeWeighedIsSaidAndNotRounded() {
    Plan plan =
        Plan.from(Invented.soft())
            .using(Shelf.of(Invented.gypsum()).weighingTo(g(10)))
            .meeting(Target.named("t").with(exactly(CALCIUM, mgPerL(33.33))))
            .solve();
    assertEquals(Outcome.NOT_TO_BE_WEIGHED, plan.outcome());
    assertEquals(33.33, plan.water().calcium().number(), 1e-6);
    assertTrue(
        plan.notices().stream().map(Notice::code).anyMatch(PlanCode.NOT_TO_BE_WEIGHED::equals));
  }

  @Test
  void withoutAScaleDosesAreNotRoundedAndThatIsSaid() {
    Plan plan =
        Plan.from(Invented.soft())
            .using(Shelf.of(Invented.gypsum()))
            .meeting(Target.named("t").with(exactly(CALCIUM, mgPerL(33.33))))
            .solve();
    assertEquals(Outcome.FOUND, plan.outcome());
    assertTrue(plan.notices().stream().map(Notice::code).anyMatch(PlanCode.NOT_ROUNDED::equals));
  }

  @Test
  void anInfeasibleTargetHasNoPlan() {
    Plan plan =
        Plan.from(Invented.hard())
            .using(Invented.salts())
            .meeting(Target.named("t").with(atMost(CALCIUM, mgPerL(50))))
            .solve();
    assertEquals(Outcome.IMPOSSIBLE, plan.outcome());
    assertThrows(IllegalStateException.class, plan::doses);
  }

  @Test
  void aWeightWithoutAScaleIsRefused() {
    Plan.Request request =
        Plan.from(Invented.hard())
            .using(Invented.salts())
            .meeting(Target.named("t").with(atMost(CALCIUM, mgPerL(50)).withWeight(1)));
    IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, request::solve);
    assertTrue(refused.getMessage().contains("how much off counts as one"), refused.getMessage());
  }

  @Test
  void theChanceOfAConstraintIsThatOfTheNormalDistribution() {
    // Calcium 9 mg/L with u 0.5 and nothing dosed: 8 to 9.5 is -2 to +1 standard uncertainties.
    Plan plan =
        Plan.from(Invented.soft())
            .using(Shelf.of())
            .meeting(Target.named("t").with(between(CALCIUM, mgPerL(8), mgPerL(9.5))))
            .solve();
    assertEquals(0.8413447 - 0.0227501, plan.reached().get(0).chance().orElseThrow(), 1e-6);
    Plan unstated =
        Plan.from(Water.pure(), WaterReport.reported().calcium(mgPerL(9)).build().water())
            .using(Shelf.of())
            .meeting(Target.named("t").with(between(CALCIUM, mgPerL(3), mgPerL(4))))
            .solve();
    assertTrue(unstated.reached().get(0).chance().isEmpty());
  }

  @Test
  void cautionsArePartOfThePlan() {
    Plan plan =
        Plan.from(Invented.hard())
            .using(Shelf.of(Invented.lactic()).pipettingTo(mL(1)))
            .meeting(Target.named("t").with(atMost(PH_VALUE, pH(6.5))))
            .solve();
    assertEquals(
        "This plan is a proposal; local codes and a trained person decide.",
        plan.cautions().get(0).text());
    assertTrue(plan.cautions().stream().anyMatch(caution -> caution.hazard() == Hazard.ACID));
    assertTrue(plan.toString().endsWith("local codes and a trained person decide."));
  }

  @Test
  void aReagentThatIsPouredMakesTheWaterGrowAsItsTreatmentDoes() {
    ShelfItem weighed = ShelfItem.of(Reagent.of(Base.SODIUM_HYDROXIDE, massPercent(30))).weighed();
    for (ShelfItem item : List.of(Invented.lactic(), weighed)) {
      Plan plan =
          Plan.from(Invented.hard())
              .using(Shelf.of(item))
              .meeting(
                  Target.named("t")
                      .with(
                          item == weighed
                              ? exactly(PH_VALUE, pH(8.3))
                              : exactly(PH_VALUE, pH(6.3))))
              .solve();
      assertEquals(item == weighed ? 8.3 : 6.3, plan.water().pH().number(), 1e-8);
    }
  }

  @Test
  void portionsAndLimitsThatContradictThemselvesAreRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> Plan.from(Invented.soft()).meeting("kettle", PALE).solve());
    assertThrows(
        IllegalArgumentException.class,
        () -> Plan.from(Invented.soft()).forPortions(portion("a", hL(1)), portion("a", hL(2))));
    assertThrows(
        IllegalArgumentException.class, () -> Invented.gypsum().atLeast(kg(2)).atMost(kg(1)));
    assertThrows(IllegalArgumentException.class, () -> Invented.gypsum().atMost(litres(1)));
    assertThrows(IllegalArgumentException.class, () -> Invented.lactic().atMost(kg(1)));
    assertThrows(
        IllegalArgumentException.class, () -> Shelf.of(Invented.gypsum(), Invented.gypsum()));
    assertArrayEquals(new Object[0], Plan.from(Invented.soft()).solve().doses().toArray());
  }
}
