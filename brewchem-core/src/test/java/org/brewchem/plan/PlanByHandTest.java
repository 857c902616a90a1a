package org.brewchem.plan;

import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.figure.Constraint.exactly;
import static org.brewchem.plan.SmallProblems.CA;
import static org.brewchem.plan.SmallProblems.CALCIUM_CHLORIDE;
import static org.brewchem.plan.SmallProblems.CL;
import static org.brewchem.plan.SmallProblems.EPSOM;
import static org.brewchem.plan.SmallProblems.GYPSUM;
import static org.brewchem.plan.SmallProblems.MG;
import static org.brewchem.plan.SmallProblems.SO4;
import static org.brewchem.plan.SmallProblems.calciumChloride;
import static org.brewchem.plan.SmallProblems.epsom;
import static org.brewchem.plan.SmallProblems.gypsum;
import static org.brewchem.plan.SmallProblems.target;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.MAGNESIUM;
import static org.brewchem.solution.Figures.SULFATE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Target;
import org.brewchem.plan.Plan.Outcome;
import org.brewchem.solution.Treatment;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Plans for pure water with salts of 100 %, all their numbers worked out by hand. */
class PlanByHandTest {

  private static void assertRefused(String message, Executable made) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, made).getMessage());
  }

  private static Plan.Request pure(ShelfItem... items) {
    return Plan.from(Water.pure()).using(Shelf.of(items)).forPortions(portion("all", hL(1)));
  }

  private static double grams(PlannedAmount amount) {
    return amount.mass().orElseThrow().inGrams();
  }

  /** 0.93 mmol/L of each salt in a hectolitre, weighed to 1 g. */
  private static Plan.Request two() {
    return Plan.from(Invented.soft(), Water.pure())
        .called("town", "osmosis")
        .using(
            Shelf.of(calciumChloride().pricedPerKilogram(2), epsom().pricedPerKilogram(1))
                .weighingTo(g(1)))
        .forPortions(portion("one", litres(100)), portion("two", litres(50)))
        .meeting(
            "one",
            target(
                atLeast(CALCIUM, mgPerL(40)),
                exactly(SULFATE, mgPerL(96.056)).withWeight(1).scaledBy(10)))
        .meeting("two", target(atMost(CALCIUM, mgPerL(0)), atLeast(MAGNESIUM, mgPerL(12))));
  }

  /**
   * Portion two is pure water, its magnesium 12 / 24.305 mmol/L of Epsom salt, or 6.08 g, which is
   * 7 weighed. In portion one a milligram of sulfate less is a tenth, and 10 g of Epsom salt bring
   * 39.
   */
  @Test
  void aPlanGivesDosesAndWatersPortionByPortion() {
    Plan plan = two().solve();
    assertEquals(Outcome.FOUND, plan.outcome());
    List<PlannedAmount> doses = plan.doses();
    List<PlannedAmount> exact = plan.dosesBeforeRounding();
    PlannedAmount last = doses.get(doses.size() - 1);
    assertEquals("two", last.portion());
    assertEquals(epsom().name(), last.item());
    assertEquals(7, grams(last), 1e-9);
    assertEquals("two: 7.0 g of " + epsom().name(), last.toString());
    assertEquals(12 / MG * EPSOM * 50 / 1000, grams(exact.get(exact.size() - 1)), 1e-4);
    assertEquals(doses.size(), exact.size());
    List<PlannedAmount> waters = plan.waters();
    PlannedAmount own = waters.get(waters.size() - 1);
    assertEquals("osmosis", own.item());
    assertEquals(50, own.volume().orElseThrow().inLitres(), 1e-9);
    assertEquals(Optional.empty(), own.mass());
    assertEquals("two: 50.0 L of osmosis", own.toString());
    assertEquals(waters.size(), plan.watersBeforeRounding().size());
    double all = waters.stream().mapToDouble(w -> w.volume().orElseThrow().inLitres()).sum();
    assertEquals(150, all, 1e-9);
    assertEquals(7 * 1000 / EPSOM / 50 * MG, plan.water("two").magnesium().number(), 1e-4);
    assertTrue(plan.water("one").calcium().number() >= 40);
    assertEquals(
        (100 * plan.water("one").sulfate().number() + 50 * plan.water("two").sulfate().number())
            / 150,
        plan.water().sulfate().number(),
        1e-9);
    double mass = doses.stream().mapToDouble(PlanByHandTest::grams).sum();
    assertEquals(mass, plan.massOfDoses().inGrams(), 1e-9);
    double cost =
        doses.stream()
            .mapToDouble(d -> grams(d) * (d.item().equals(epsom().name()) ? 0.001 : 0.002))
            .sum();
    assertEquals(cost, plan.cost().orElseThrow(), 1e-9);
    assertEquals(OptionalDouble.empty(), two().leastMass().solve().cost());
    assertEquals(4, plan.reached().size());
    assertEquals("one", plan.reached().get(0).liquid());
    assertEquals("two", plan.reached().get(3).liquid());
    double off = Math.abs(plan.water("one").sulfate().number() - 96.056) / 10;
    assertEquals(off, plan.weightedSum(), 1e-9);
    assertEquals(off, plan.reached().get(1).penalty(), 1e-9);
    assertEquals(0, plan.reached().get(0).penalty());
    assertEquals(0, plan.weightedSumBeforeRounding(), 1e-6);
    assertEquals(off, plan.lostByRounding(), 1e-6);
    assertTrue(off > 1e-3 && off < 0.5, "half a gram of Epsom salt is 1.9 mg/L");
  }

  @Test
  void thePlanIsReachedByItsSteps() {
    Plan plan = two().solve();
    for (String name : List.of("one", "two")) {
      Water water = plan.start(name);
      for (Treatment step : plan.steps(name)) {
        water = water.after(step);
      }
      assertEquals(plan.water(name).calcium().number(), water.calcium().number(), 1e-9);
      assertEquals(plan.water(name).sulfate().number(), water.sulfate().number(), 1e-9);
    }
    assertEquals(Water.pure(), plan.start("two"));
    assertEquals(1, plan.steps("two").size());
  }

  /** What counts first is the sum, then the price. */
  @Test
  void constraintsCostWhatThePlanWouldBeBetterWithoutThem() {
    Plan plan =
        pure(calciumChloride().pricedPerKilogram(10))
            .meeting(
                target(
                    atLeast(CALCIUM, mgPerL(CA)),
                    atMost(CHLORIDE, mgPerL(CL)).withWeight(1).scaledBy(CL),
                    atMost(MAGNESIUM, mgPerL(5))))
            .solve();
    // 1 mmol/L of salt in 100 L are 14.7008 g or 0.147; it brings a CL too much.
    List<ConstraintCost> costs = plan.costs();
    assertEquals(3, costs.size());
    assertEquals(1, costs.get(0).weightedSum(), 1e-6);
    assertEquals(0.147008, costs.get(0).economy(), 1e-6);
    assertEquals(1, costs.get(1).weightedSum(), 1e-6);
    assertEquals(0, costs.get(1).economy(), 1e-6);
    assertEquals(0, costs.get(2).weightedSum(), 1e-6);
    assertEquals(0, costs.get(2).economy(), 1e-6);
    assertEquals(CALCIUM, plan.costliest().orElseThrow().constraint().figure());
    assertEquals("all", costs.get(0).liquid());
    // Without a weighted one only the price counts.
    Plan hard =
        pure(calciumChloride().pricedPerKilogram(10))
            .meeting(target(atMost(CHLORIDE, mgPerL(CL * 3)), atLeast(CALCIUM, mgPerL(CA))))
            .solve();
    assertEquals(CALCIUM, hard.costliest().orElseThrow().constraint().figure());
    assertEquals(0.147008, hard.costliest().orElseThrow().economy(), 1e-6);
    assertEquals(0, hard.costliest().orElseThrow().weightedSum(), 1e-9);
    // A better sum takes more: without the chloride's limit all the calcium is given. Without the
    // wish for calcium the sum is as good, and no salt is needed.
    Plan dearer =
        pure(calciumChloride().pricedPerKilogram(10))
            .meeting(
                target(
                    atMost(CHLORIDE, mgPerL(CL)),
                    atLeast(CALCIUM, mgPerL(CA)).withWeight(1).scaledBy(CA)))
            .solve();
    ConstraintCost chloride = dearer.costs().get(0);
    assertEquals(CHLORIDE, chloride.constraint().figure());
    assertEquals(0.5, chloride.weightedSum(), 1e-6);
    assertEquals(-0.147008 / 2, chloride.economy(), 1e-6);
    ConstraintCost most = dearer.costliest().orElseThrow();
    assertEquals(CALCIUM, most.constraint().figure());
    assertEquals(0.5, most.weightedSum(), 1e-6);
    assertEquals(0.147008 / 2, most.economy(), 1e-6);
    assertEquals(
        Optional.empty(), pure().meeting(target(atMost(CALCIUM, mgPerL(5)))).solve().costliest());
    assertEquals(Optional.empty(), pure().solve().costliest());
  }

  @Test
  void requestsRefuseWhatCannotBePlanned() {
    assertRefused("sources: none are not possible; a plan starts with a water", Plan::from);
    assertRefused(
        "names: 1 is not possible; one to each of 2 sources is needed",
        () -> Plan.from(Water.pure(), Water.pure()).called("one"));
    assertRefused(
        "portions: [] are not possible; at least one, and each name once, is needed",
        () -> Plan.from(Water.pure()).forPortions());
    assertRefused(
        "portion: kettle is not possible; the portions are [all]",
        () -> pure().meeting("kettle", target(atMost(CALCIUM, mgPerL(5)))).solve());
    Plan plan = pure().solve();
    assertRefused(
        "portion: kettle is not possible; the portions are [all, " + hL(1) + "]",
        () -> plan.water("kettle"));
    assertThrows(IllegalArgumentException.class, () -> plan.steps("kettle"));
    assertThrows(IllegalArgumentException.class, () -> plan.start("kettle"));
  }

  @Test
  void sourcesHaveNamesOfTheirOwn() {
    assertEquals("source", pure().solve().waters().get(0).item());
    Plan plan =
        Plan.from(Invented.hard(), Water.pure())
            .meeting(target(exactly(CALCIUM, mgPerL(46))))
            .solve();
    assertEquals("water: 50.0 L of source 1", plan.waters().get(0).toString());
    assertEquals("water: 50.0 L of source 2", plan.waters().get(1).toString());
    assertEquals("water", plan.waters().get(0).portion());
  }

  /** Calcium at most 20 in hard water of 92, and nothing to dilute it with. */
  @Test
  void whereNoPlanIsFoundEverythingElseIsRefused() {
    Plan plan = Plan.from(Invented.hard()).meeting(target(atMost(CALCIUM, mgPerL(20)))).solve();
    assertEquals(Outcome.IMPOSSIBLE, plan.outcome());
    String message = "plan: none was found; ask for its outcome first";
    List<Executable> all =
        List.of(
            plan::doses,
            plan::waters,
            plan::water,
            () -> plan.water("water"),
            () -> plan.start("water"),
            () -> plan.steps("water"),
            plan::reached,
            plan::weightedSum,
            plan::weightedSumBeforeRounding,
            plan::dosesBeforeRounding,
            plan::watersBeforeRounding,
            plan::lostByRounding,
            plan::massOfDoses,
            plan::costs,
            plan::costliest,
            plan::explain);
    for (Executable one : all) {
      assertEquals(message, assertThrows(IllegalStateException.class, one).getMessage());
    }
    assertEquals(1, plan.conflicts().size());
    assertEquals(
        List.of("calcium of water: at most 20.0 mg/L", "the waters make up the portion water"),
        plan.conflicts().get(0).members());
    assertEquals(List.of(), plan.notices());
    Plan nearest = plan.nearest().orElseThrow();
    assertEquals(72.0 / 20, nearest.weightedSum(), 1e-9);
    assertEquals(List.of(), nearest.conflicts());
    assertEquals(Optional.empty(), nearest.nearest());
  }

  @Test
  void aProofAddsItsBoundsUp() {
    Plan plan =
        Plan.from(Water.pure())
            .using(Shelf.of(gypsum()))
            .forPortions(portion("all", litres(1)))
            .meeting(target(atMost(CALCIUM, mgPerL(CA)), atLeast(SULFATE, mgPerL(2 * SO4))))
            .solve();
    Conflict conflict = plan.conflicts().get(0);
    assertTrue(conflict.isProved());
    assertEquals(
        List.of(
            "calcium of all: at most 40.1 mg/L",
            "sulfate of all: at least 192.1 mg/L",
            "the waters make up the portion all"),
        conflict.members());
    assertEquals(4, conflict.proof().size());
    for (int m = 0; m < 3; m++) {
      assertTrue(conflict.proof().get(m).endsWith(" x " + conflict.members().get(m)));
    }
    assertEquals(2, conflict.constraints().size());
    // Without the calcium's limit 2 mmol/L of gypsum, without the sulfate's none.
    assertEquals(2, conflict.ways().size());
    Conflict.Way more = conflict.ways().get(0);
    assertEquals("calcium of all: at most 40.1 mg/L", more.without());
    assertEquals(2, more.amounts().size());
    assertEquals(2 * GYPSUM / 1000, grams(more.amounts().get(1)), 1e-6);
    assertEquals(1, more.figures().size());
    assertTrue(more.figures().get(0).startsWith("all, sulfate: 192.1 mg/L"), more.toString());
    Conflict.Way none = conflict.ways().get(1);
    assertEquals("sulfate of all: at least 192.1 mg/L", none.without());
    assertEquals(1, none.amounts().size());
    assertEquals(
        "without \"" + none.without() + "\": " + none.amounts() + " " + none.figures(),
        none.toString());
    assertEquals(List.of(), conflict.undecided());
    // The nearest: a half of the sulfate is missing, or a whole of the calcium too much.
    Plan nearest = plan.nearest().orElseThrow();
    assertEquals(0.5, nearest.weightedSum(), 1e-6);
    assertEquals(CA, nearest.water().calcium().number(), 1e-3);
  }

  /** Amounts are printed as finely as they are weighed, or a limit that they keep looks broken. */
  @Test
  void amountsArePrintedToTheStepOfTheScale() {
    Plan plan =
        Plan.from(Invented.soft())
            .using(Shelf.of(Invented.gypsum(), Invented.calciumChloride()).weighingTo(g(0.01)))
            .meeting(
                Target.named("invented")
                    .with(between(CALCIUM, mgPerL(60), mgPerL(64)))
                    .with(between(SULFATE_TO_CHLORIDE, 0.9, 1.1)))
            .forPortions(portion("w", litres(1)))
            .solve();
    for (PlannedAmount dose : plan.doses()) {
      double grams = dose.mass().orElseThrow().inGrams();
      assertEquals(grams, Math.rint(grams * 100) / 100, 1e-12);
      assertTrue(
          dose.text().startsWith(String.format(Locale.ROOT, "w: %.2f g of ", grams)), dose.text());
    }
    assertEquals(2, plan.doses().size());
  }

  @Test
  void limitsOfTheShelfAreNamedInConflicts() {
    double one = CALCIUM_CHLORIDE / 10;
    Plan most =
        pure(calciumChloride().atMost(g(one)))
            .meeting(target(atLeast(CALCIUM, mgPerL(2 * CA))))
            .solve();
    assertEquals(
        List.of(
            "calcium of all: at least 80.2 mg/L",
            calciumChloride().name() + ": at most 14.7 g on the shelf",
            "the waters make up the portion all"),
        most.conflicts().get(0).members());
    assertEquals(0.5, most.nearest().orElseThrow().weightedSum(), 1e-6);
    Plan least =
        pure(calciumChloride().atLeast(g(one)))
            .meeting(target(atMost(CALCIUM, mgPerL(CA / 2))))
            .solve();
    assertEquals(
        List.of(
            "calcium of all: at most 20.0 mg/L",
            calciumChloride().name() + ": at least 14.7 g",
            "the waters make up the portion all"),
        least.conflicts().get(0).members());
    assertEquals(1, least.nearest().orElseThrow().weightedSum(), 1e-6);
    Plan unstated =
        pure(calciumChloride()).meeting(target(atLeast(CALCIUM, mgPerL(60 * CA)))).solve();
    assertEquals(
        calciumChloride().name() + ": at most 50 mmol/L, where the shelf states no limit",
        unstated.conflicts().get(0).members().get(2));
    assertEquals(50 * CA, unstated.nearest().orElseThrow().water().calcium().number(), 0.01);
  }

  @Test
  void dosesOfSeveralPortionsAreNamedByTheirPortion() {
    Plan plan =
        Plan.from(Invented.hard())
            .using(
                Shelf.of(
                    calciumChloride(),
                    ShelfItem.diluent("osmosis", Water.pure()).atMost(litres(10))))
            .forPortions(portion("one", litres(50)), portion("two", litres(50)))
            .meeting("two", target(atMost(CALCIUM, mgPerL(9))))
            .solve();
    List<String> members = plan.conflicts().get(0).members();
    assertTrue(members.contains("calcium of two: at most 9.0 mg/L"), members.toString());
    assertTrue(members.contains("osmosis: at most 10.0 L on the shelf"), members.toString());
    assertTrue(
        members.contains(
            "a dose of " + calciumChloride().name() + " in the portion two is 0 or more"),
        members.toString());
    assertTrue(
        members.contains("a volume of osmosis in the portion one is 0 or more"),
        members.toString());
    // Four fifths of hard water are the least: 73.6 mg/L.
    assertEquals(0.8 * 92, plan.nearest().orElseThrow().water("two").calcium().number(), 1e-6);
  }

  @Test
  void aDoseThatNothingMeasuresAndALimitThatIsNearAreNotable() {
    Plan plan =
        Plan.from(Invented.hard())
            .using(Shelf.of(calciumChloride()))
            .meeting(target(between(CALCIUM, mgPerL(91), mgPerL(93))))
            .solve();
    List<Notice> notices = plan.notices();
    Notice notRounded =
        notices.stream().filter(n -> n.code() == PlanCode.NOT_ROUNDED).findFirst().orElseThrow();
    assertEquals(
        "nothing says how finely "
            + calciumChloride().name()
            + " is measured out: its doses are not"
            + " rounded",
        notRounded.text());
    Notice near =
        notices.stream().filter(n -> n.code() == PlanCode.AT_THE_LIMIT).findFirst().orElseThrow();
    // A third of a standard uncertainty of 3 on either side: 26 %.
    assertEquals(
        "calcium of water: the chance of "
            + plan.reached().get(0).constraint().band()
            + " is only 26 %; a narrower limit makes it surer",
        near.text());
    assertEquals(0.2611, plan.reached().get(0).chance().orElseThrow(), 1e-4);
    assertTrue(plan.reached().get(0).toString().endsWith(", chance 26 %"));
    Plan sure =
        Plan.from(Invented.hard())
            .using(Shelf.of(calciumChloride()).weighingTo(g(1)))
            .meeting(target(atMost(CALCIUM, mgPerL(200))))
            .solve();
    assertFalse(sure.notices().stream().anyMatch(n -> n.code() == PlanCode.AT_THE_LIMIT));
    assertFalse(sure.notices().stream().anyMatch(n -> n.code() == PlanCode.NOT_ROUNDED));
    assertFalse(sure.notices().stream().anyMatch(n -> n.code() == PlanCode.NOT_TO_BE_WEIGHED));
    // A weighted one is no limit to be near.
    Plan wished =
        Plan.from(Invented.hard())
            .meeting(target(between(CALCIUM, mgPerL(91), mgPerL(93)).withWeight(1)))
            .solve();
    assertFalse(wished.notices().stream().anyMatch(n -> n.code() == PlanCode.AT_THE_LIMIT));
    assertEquals(OptionalDouble.of(1), chanceOfLittleCalcium(Water.pure()));
  }

  private static OptionalDouble chanceOfLittleCalcium(Water water) {
    Plan plan = Plan.from(water).meeting(target(atMost(CALCIUM, mgPerL(1)))).solve();
    assertTrue(plan.reached().get(0).toString().endsWith(", chance 100 %"));
    return plan.reached().get(0).chance();
  }

  @Test
  void withoutAnUncertaintyThereIsNoChance() {
    Water bare = WaterReport.reported().calcium(mgPerL(40)).build().water();
    Plan plan = Plan.from(bare).meeting(target(atMost(CALCIUM, mgPerL(41)))).solve();
    assertEquals(OptionalDouble.empty(), plan.reached().get(0).chance());
    assertTrue(plan.reached().get(0).toString().endsWith(", chance unknown"));
    assertSame(Outcome.FOUND, plan.outcome());
  }

  @Test
  void anExplanationListsWhatIsMeasuredOutAndWhatEachConstraintAdds() {
    Plan plan = two().solve();
    String text = plan.explain().toString();
    assertTrue(plan.explain().holds(), text);
    assertTrue(text.contains("two: 7.0 g of " + epsom().name()), text);
    assertTrue(text.contains("two: 50.0 L of osmosis"), text);
    assertTrue(text.contains(": adds "), text);
    assertTrue(text.contains(": hard, kept"), text);
  }
}
