package org.brewchem.plan;

import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SULFATE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.brewchem.water.WaterFigures.CALCIUM_HARDNESS;
import static org.brewchem.water.WaterFigures.RESIDUAL_ALKALINITY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Target;
import org.brewchem.plan.Plan.Outcome;
import org.brewchem.plan.RandomProblems.Kind;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ConflictTest {

  private static final int PROBLEMS = Integer.getInteger("plan.problems", 20) * 3;

  private static Target of(Constraint... constraints) {
    Target target = Target.named("invented");
    for (Constraint constraint : constraints) {
      target = target.with(constraint);
    }
    return target;
  }

  private static Plan.Request hard(Constraint... constraints) {
    return Plan.from(Invented.hard())
        .using(
            Shelf.of(Invented.gypsum().atMost(g(20)), Invented.calciumChloride()).weighingTo(g(1)))
        .meeting(of(constraints));
  }

  @Test
  void whatNoSaltTakesOutIsAProvedConflictAndTheNearestWaterIsTheWaterAsItIs() {
    Plan plan = hard(atMost(CALCIUM, mgPerL(50)), atMost(CHLORIDE, mgPerL(90))).solve();
    assertEquals(Outcome.IMPOSSIBLE, plan.outcome());
    Conflict conflict = plan.conflicts().get(0);
    assertEquals(
        List.of(
            "calcium of water: at most 50.0 mg/L",
            "the waters make up the portion water",
            "a dose of calcium sulfate dihydrate (gypsum), 99 % by mass is 0 or more",
            "a dose of calcium chloride dihydrate, 99 % by mass is 0 or more"),
        conflict.members());
    assertTrue(conflict.isProved());
    assertEquals(5, conflict.proof().size());
    assertEquals("add up, in exact fractions, to 0 being at least 1", conflict.proof().get(4));
    assertEquals(1, conflict.ways().size());
    Plan nearest = plan.nearest().orElseThrow();
    assertEquals(Outcome.FOUND, nearest.outcome());
    assertEquals(92, nearest.water().calcium().number(), 1e-9);
    assertEquals((92 - 50) / 50.0, nearest.weightedSum(), 1e-9);
    assertEquals(0, nearest.doses().size());
    assertTrue(plan.cautions().containsAll(nearest.cautions()));
  }

  @Test
  void twoFiguresOfOneIonContradictEachOtherExactly() {
    Plan plan =
        hard(
                atLeast(CALCIUM, mgPerL(100)),
                atMost(CALCIUM_HARDNESS, Hardness.ofMilligramsPerLitreAsCaCO3(245)))
            .solve();
    assertEquals(Outcome.IMPOSSIBLE, plan.outcome());
    assertEquals(
        List.of(
            "calcium of water: at least 100.0 mg/L",
            "calcium hardness of water: at most 245.0 mg/L as CaCO3",
            "the waters make up the portion water"),
        plan.conflicts().get(0).members());
    assertEquals(2, plan.conflicts().get(0).ways().size());
  }

  @Test
  void aShelfLimitThatTakesPartIsNamed() {
    Plan plan = hard(atLeast(SULFATE, mgPerL(400))).solve();
    assertEquals(Outcome.IMPOSSIBLE, plan.outcome());
    assertEquals(
        List.of(
            "sulfate of water: at least 400.0 mg/L",
            "calcium sulfate dihydrate (gypsum), 99 % by mass: at most 20.0 g on the shelf",
            "the waters make up the portion water"),
        plan.conflicts().get(0).members());
    // The way without the shelf's limit takes more gypsum than there is.
    Conflict.Way way = plan.conflicts().get(0).ways().get(1);
    assertTrue(way.amounts().get(1).mass().orElseThrow().inGrams() > 20, way.toString());
    assertEquals("water, sulfate: 400.0 mg/L, U 4.5 (k = 2)", way.figures().get(0));
    Plan nearest = plan.nearest().orElseThrow();
    assertEquals(20, nearest.doses().get(0).mass().orElseThrow().inGrams(), 1e-9);
  }

  @Test
  void aRatioTakesPartMultipliedOut() {
    Plan plan =
        hard(
                between(SULFATE_TO_CHLORIDE, 2.0, 3.0),
                atLeast(CHLORIDE, mgPerL(60)),
                atMost(SULFATE, mgPerL(100)))
            .solve();
    assertEquals(Outcome.IMPOSSIBLE, plan.outcome());
    assertEquals(
        List.of(
            "sulfate to chloride of water: at least 2.00 by mass",
            "chloride of water: at least 60.0 mg/L",
            "sulfate of water: at most 100.0 mg/L",
            "the waters make up the portion water"),
        plan.conflicts().get(0).members());
    assertEquals(3, plan.conflicts().get(0).constraints().size());
    assertEquals(3, plan.conflicts().get(0).ways().size());
  }

  @Test
  void whereABalanceTakesPartNothingIsProved() {
    Plan plan =
        hard(
                atMost(RESIDUAL_ALKALINITY, ResidualAlkalinity.ofGermanDegrees(-30)),
                atMost(CHLORIDE, mgPerL(90)))
            .solve();
    assertEquals(Outcome.NONE_FOUND, plan.outcome());
    assertFalse(plan.conflicts().get(0).isProved());
    assertTrue(
        plan.conflicts().get(0).toString().startsWith("no plan was found that keeps together"),
        plan.toString());
    assertTrue(plan.nearest().isPresent());
  }

  @Test
  void whereALiquidMadeOfTheWaterTakesPartNothingIsProved() {
    Downstream hot = Downstream.of("hot liquor", water -> water.at(celsius(60)));
    Plan plan = hard().and(hot, atLeast(PH_VALUE, pH(10))).solve();
    assertEquals(Outcome.NONE_FOUND, plan.outcome());
    assertFalse(plan.conflicts().get(0).isProved());
    assertEquals(
        "pH of hot liquor of water: at least pH 10.00", plan.conflicts().get(0).members().get(0));
    assertTrue(plan.nearest().isPresent());
  }

  @Test
  void limitsOfTheShelfAloneHaveNoNearestWater() {
    Plan plan =
        Plan.from(Invented.hard())
            .using(Shelf.of(ShelfItem.diluent("osmosis", Water.pure()).atLeast(litres(600))))
            .forPortions(portion("all", hL(5)))
            .solve();
    assertEquals(Outcome.IMPOSSIBLE, plan.outcome());
    assertEquals(
        List.of(
            "osmosis: at least 600.0 L",
            "the waters make up the portion all",
            "a volume of source is 0 or more"),
        plan.conflicts().get(0).members());
    assertTrue(plan.nearest().isEmpty());
  }

  @Test
  void furtherConflictsAreNamedUntilAWaterCanBeReached() {
    Plan plan = hard(atMost(CALCIUM, mgPerL(50)), atMost(CHLORIDE, mgPerL(20))).solve();
    assertEquals(2, plan.conflicts().size());
    assertEquals(
        (92 - 50) / 50.0 + (31 - 20) / 20.0, plan.nearest().orElseThrow().weightedSum(), 1e-9);
  }

  @Test
  void theCostliestConstraintIsTheOneWithoutWhichThePlanIsBest() {
    Plan plan =
        Plan.from(Invented.soft())
            .using(Shelf.of(Invented.gypsum().pricedPerKilogram(4)).weighingTo(g(1)))
            .meeting(
                of(
                    atLeast(CALCIUM, mgPerL(40)),
                    atMost(SULFATE, mgPerL(60)).withWeight(1).scaledBy(10),
                    atLeast(CHLORIDE, mgPerL(5))))
            .solve();
    ConstraintCost most = plan.costliest().orElseThrow();
    // Without either the sum is 0; without the calcium no gypsum is needed, besides.
    assertEquals(CALCIUM, most.constraint().figure());
    assertEquals(plan.weightedSumBeforeRounding(), most.weightedSum(), 1e-9);
    assertTrue(most.economy() > 0);
    assertEquals(3, plan.costs().size());
    assertEquals(plan.weightedSumBeforeRounding(), plan.costs().get(1).weightedSum(), 1e-9);
    assertEquals(0, plan.costs().get(1).economy(), 1e-9);
    assertEquals(0, plan.costs().get(2).weightedSum(), 1e-9);
  }

  private static boolean isOfFigure(String member) {
    return member.contains(" of all: ");
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void everyConflictOfRandomProblemsIsIrreducibleAndLinearOnesAreProved(Kind kind) {
    int conflicts = 0;
    int unproved = 0;
    long undecided = 0;
    for (int n = 0; n < PROBLEMS; n++) {
      Plan plan = new RandomProblems(kind, 20261126L + n).three().solve();
      if (plan.outcome() != Outcome.NONE_FOUND && plan.outcome() != Outcome.IMPOSSIBLE) {
        assertTrue(plan.conflicts().isEmpty());
        continue;
      }
      conflicts++;
      assertFalse(plan.conflicts().isEmpty(), n + ": no conflict");
      for (Conflict conflict : plan.conflicts()) {
        if (kind == Kind.LINEAR || kind == Kind.RATIO) {
          assertTrue(conflict.isProved(), n + ": " + conflict);
        }
        unproved += conflict.isProved() ? 0 : 1;
        undecided += conflict.undecided().stream().filter(m -> isOfFigure(m)).count();
        assertTrue(conflict.ways().size() <= conflict.members().size());
      }
      assertTrue(plan.nearest().isPresent(), n + ": no nearest water");
    }
    if (PROBLEMS >= 600) {
      System.out.printf(
          "plan study: %d problems, %s: %d conflicts, %d not proved, %d limits of figures undecided%n",
          PROBLEMS, kind, conflicts, unproved, undecided);
    }
    assertTrue(conflicts >= 3, conflicts + " conflicts");
    assertTrue((kind == Kind.LINEAR || kind == Kind.RATIO) == (unproved == 0));
    // Of every limit of a figure the kernel shows that the conflict needs it.
    assertEquals(0, undecided, unproved + " conflicts without a proof");
  }
}
