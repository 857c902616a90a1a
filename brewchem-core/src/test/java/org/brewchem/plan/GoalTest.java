package org.brewchem.plan;

import static org.brewchem.figure.Constraint.around;
import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.figure.Constraint.exactly;
import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Constraint;
import org.brewchem.plan.Problem.Worth;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Permission;
import org.brewchem.substance.Use;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;

/** How constraints count, and which of them a question spreads over its portions. */
class GoalTest {

  private static final double INFINITE = Double.POSITIVE_INFINITY;

  private static Goal goal(Constraint constraint) {
    return new Goal(constraint, 3);
  }

  @Test
  void aGoalTellsWhatItsConstraintStates() {
    Constraint constraint = between(CALCIUM, mgPerL(50), mgPerL(70)).withWeight(2);
    Goal goal = goal(constraint);
    assertEquals(constraint, goal.constraint());
    assertEquals(CALCIUM, goal.figure());
    assertEquals(3, goal.site());
    assertEquals(2, goal.weight());
    assertFalse(goal.isHard());
    assertFalse(goal.isRatio());
    assertFalse(goal.hasAim());
    assertEquals(Double.NaN, goal.aim());
    assertEquals(50, goal.lower());
    assertEquals(70, goal.upper());
    assertEquals(50, goal.plainLower());
    assertEquals(70, goal.plainUpper());
    assertEquals(10, goal.scale());
    assertEquals(10, goal.plainScale());
    assertEquals(constraint.toString(), goal.toString());
    assertTrue(goal(atMost(CALCIUM, mgPerL(70))).isHard());
    Goal most = goal(atMost(CALCIUM, mgPerL(70)));
    assertEquals(-INFINITE, most.lower());
    assertEquals(-INFINITE, most.plainLower());
    Goal least = goal(atLeast(CALCIUM, mgPerL(70)));
    assertEquals(INFINITE, least.upper());
    assertEquals(INFINITE, least.plainUpper());
  }

  /** By hand: 15 below a band whose half is 10 is one and a half, of weight 2 it is 3. */
  @Test
  void aWeightedBandCountsOutsideAndAnAimOnBothSides() {
    Goal band = goal(between(CALCIUM, mgPerL(50), mgPerL(70)).withWeight(2));
    assertEquals(3, band.penalty(35), 1e-12);
    assertEquals(1, band.penalty(75), 1e-12);
    assertEquals(0, band.penalty(50));
    assertEquals(0, band.penalty(60));
    Goal aim = goal(around(CALCIUM, mgPerL(60), 5).withWeight(3));
    assertTrue(aim.hasAim());
    assertEquals(60, aim.aim());
    assertEquals(1.2, aim.penalty(62), 1e-12);
    assertEquals(6, aim.penalty(50), 1e-12);
    assertEquals(0, aim.penalty(60));
    assertEquals(INFINITE, aim.penalty(Double.NaN));
    assertEquals(INFINITE, band.penalty(Double.NaN));
    Goal least = goal(atLeast(CALCIUM, mgPerL(50)).withWeight(1).scaledBy(4));
    assertEquals(2.5, least.penalty(40), 1e-12);
    assertEquals(0, least.penalty(500));
    Goal most = goal(atMost(CALCIUM, mgPerL(50)).withWeight(1).scaledBy(4));
    assertEquals(2.5, most.penalty(60), 1e-12);
    assertEquals(0, most.penalty(0));
  }

  /** Half as much counts as much as twice as much. */
  @Test
  void aRatioCountsByItsLogarithm() {
    Goal goal = goal(around(SULFATE_TO_CHLORIDE, 2.0, 0.5).withWeight(3).scaledBy(0.1));
    assertTrue(goal.isRatio());
    assertEquals(Math.log(2), goal.aim(), 1e-15);
    assertEquals(3 * Math.log(2) / 0.1, goal.penalty(4), 1e-12);
    assertEquals(3 * Math.log(2) / 0.1, goal.penalty(1), 1e-12);
    assertEquals(INFINITE, goal.penalty(0));
    assertEquals(Math.log(1.5), goal.lower(), 1e-15);
    assertEquals(1.5, goal.plainLower());
    assertEquals(-INFINITE, goal.counted(-1));
    assertEquals(-INFINITE, goal.counted(0));
    // Without a stated scale half the band counts, of logarithms.
    Goal band = goal(between(SULFATE_TO_CHLORIDE, 1.0, 4.0).withWeight(1));
    assertEquals(Math.log(2), band.scale(), 1e-15);
    assertEquals(1.5, band.plainScale());
    assertEquals(1, band.penalty(8), 1e-12);
    assertEquals(1, goal(atMost(SULFATE_TO_CHLORIDE, 4.0)).scale());
    assertEquals(4, goal(atMost(SULFATE_TO_CHLORIDE, 4.0)).plainScale());
  }

  @Test
  void aHardLimitIsBrokenBySoManyScales() {
    assertEquals(1.5, goal(between(CALCIUM, mgPerL(50), mgPerL(70))).violation(85), 1e-12);
    assertEquals(1.5, goal(between(CALCIUM, mgPerL(50), mgPerL(70))).violation(35), 1e-12);
    assertEquals(0, goal(between(CALCIUM, mgPerL(50), mgPerL(70))).violation(55));
    // One limit counts its own size, and 0 counts as 1.
    assertEquals(0.25, goal(atMost(CALCIUM, mgPerL(80))).violation(100), 1e-12);
    assertEquals(0.25, goal(atLeast(CALCIUM, mgPerL(80))).violation(60), 1e-12);
    assertEquals(80, goal(atMost(CALCIUM, mgPerL(80))).scale());
    assertEquals(7, goal(atMost(CALCIUM, mgPerL(0))).violation(7), 1e-12);
    assertEquals(0.5, goal(exactly(CALCIUM, mgPerL(40))).violation(20), 1e-12);
    assertEquals(40, goal(exactly(CALCIUM, mgPerL(40))).scale());
    assertEquals(4, goal(atMost(CALCIUM, mgPerL(80)).scaledBy(5)).violation(100), 1e-12);
    assertEquals(INFINITE, goal(atMost(CALCIUM, mgPerL(80))).violation(Double.NaN));
  }

  @Test
  void aWeightWithoutAScaleIsRefused() {
    Constraint most = atMost(CALCIUM, mgPerL(80)).withWeight(1);
    assertEquals(
        most
            + ": a weight without a scale is not possible here; state by how much off counts as one",
        assertThrows(IllegalArgumentException.class, () -> goal(most)).getMessage());
    Constraint ratio = atMost(SULFATE_TO_CHLORIDE, 4.0).withWeight(1);
    assertEquals(
        ratio
            + ": a weight without a scale is not possible here; state by how much off counts as one"
            + ", as a difference of natural logarithms",
        assertThrows(IllegalArgumentException.class, () -> goal(ratio)).getMessage());
    Constraint exact = exactly(CALCIUM, mgPerL(80)).withWeight(1);
    assertThrows(IllegalArgumentException.class, () -> goal(exact));
  }

  @Test
  void theWorthOfAPointAddsUpWeightedGoalsAndBrokenOnes() {
    Problem problem =
        Plan.from(Water.pure())
            .using(Shelf.of(SmallProblems.calciumChloride()))
            .meeting(SmallProblems.target(around(CALCIUM, mgPerL(60), 5).withWeight(3)))
            .meeting(SmallProblems.target(between(CALCIUM, mgPerL(50), mgPerL(70)).withWeight(2)))
            .meeting(SmallProblems.target(atMost(CALCIUM, mgPerL(80))))
            .meeting(SmallProblems.target(atLeast(CALCIUM, mgPerL(400))))
            .problem();
    Worth worth = problem.worthOf(new double[] {65, 35, 100, 300});
    assertEquals(3 + 3, worth.weighted(), 1e-12);
    assertEquals(0.25 + 0.25, worth.violation(), 1e-12);
    assertTrue(worth.isKnown());
    assertFalse(problem.worthOf(new double[] {Double.NaN, 35, 100, 300}).isKnown());
    assertFalse(problem.worthOf(new double[] {65, 35, Double.NaN, 300}).isKnown());
    double[] x = {1, 2};
    Worth own = problem.worth(x);
    assertEquals(2 * SmallProblems.CA, own.numbers()[0], 1e-4);
    assertEquals(4, own.numbers().length);
  }

  @Test
  void aConstraintOnEveryPortionIsSpreadOverThem() {
    WaterPortion one = new WaterPortion("one", Volume.ofLitres(1));
    WaterPortion two = new WaterPortion("two", Volume.ofLitres(2));
    Constraint constraint = atMost(CALCIUM, mgPerL(80));
    Wanted every = new Wanted(constraint, Optional.empty(), false, Optional.empty());
    Wanted together = new Wanted(constraint, Optional.empty(), true, Optional.empty());
    Wanted named = new Wanted(constraint, Optional.of("two"), false, Optional.empty());
    Query query =
        new Query(
            List.of(Water.pure()),
            List.of("water"),
            Shelf.of(),
            List.of(one, two),
            List.of(every, together, named),
            Query.Economy.MASS,
            Optional.empty());
    assertEquals(
        List.of(
            new Wanted(constraint, Optional.of("one"), false, Optional.empty()),
            named,
            together,
            named),
        query.spread().wanted());
    Problem problem = new Problem(query);
    assertEquals(4, problem.goals().size());
    assertEquals("one", problem.site(0).name());
    assertEquals("two", problem.site(1).name());
    assertEquals("all portions mixed", problem.site(2).name());
    // The water of a portion is one site, however often it is bound.
    assertEquals(problem.site(1), problem.site(3));
    assertEquals(0.0, query.least(0));
    assertEquals(1.0, query.most(0));
    assertEquals(List.of(), query.permissionsInBeer());
  }

  @Test
  void whatIsKeptLowIsTheCostWhereEveryItemHasAPrice() {
    ShelfItem salt = SmallProblems.calciumChloride();
    ShelfItem priced = salt.pricedPerKilogram(3);
    Query query = byThe(Shelf.of(priced), Query.Economy.BY_THE_SHELF);
    assertTrue(query.byCost());
    assertFalse(byThe(Shelf.of(), Query.Economy.BY_THE_SHELF).byCost());
    assertFalse(
        byThe(Shelf.of(priced, SmallProblems.gypsum()), Query.Economy.BY_THE_SHELF).byCost());
    assertFalse(query.keepingLow(Query.Economy.MASS).byCost());
    assertTrue(byThe(Shelf.of(salt), Query.Economy.COST).byCost());
  }

  private static Query byThe(Shelf shelf, Query.Economy economy) {
    return new Query(
        List.of(Water.pure()),
        List.of("water"),
        shelf,
        List.of(new WaterPortion("one", Volume.ofLitres(1))),
        List.of(),
        economy,
        Optional.empty());
  }

  private static Query making(Downstream made) {
    Shelf shelf =
        Shelf.of(
            Invented.lactic(), ShelfItem.diluent("osmosis", Water.pure()), Invented.phosphoric());
    Wanted wanted =
        new Wanted(atMost(CALCIUM, mgPerL(80)), Optional.empty(), true, Optional.of(made));
    return byThe(shelf, Query.Economy.MASS).wanting(List.of(wanted));
  }

  @Test
  void whatGoesIntoABeerIsAskedForItsPermission() {
    Beer beer = Beer.of(pH(4.4), acidity(gPerL(2), Acid.LACTIC, pH(8.2)));
    Query query = making(Downstream.beer("tank", beer, hL(1)));
    assertTrue(query.isForBeer());
    assertEquals(
        List.of(Use.BEER, Use.BEER),
        query.permissionsInBeer().stream().map(Permission::use).toList());
    Query water = making(Downstream.of("hot", made -> made.at(celsius(60))));
    assertFalse(water.isForBeer());
    assertEquals(List.of(), water.permissionsInBeer());
    assertFalse(byThe(Shelf.of(Invented.lactic()), Query.Economy.MASS).isForBeer());
  }
}
