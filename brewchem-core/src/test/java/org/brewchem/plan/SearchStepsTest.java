package org.brewchem.plan;

import static org.brewchem.figure.Constraint.around;
import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.plan.SmallProblems.calciumChloride;
import static org.brewchem.plan.SmallProblems.epsom;
import static org.brewchem.plan.SmallProblems.gypsum;
import static org.brewchem.plan.SmallProblems.made;
import static org.brewchem.plan.SmallProblems.millimoles;
import static org.brewchem.plan.SmallProblems.target;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Constraint;
import org.brewchem.plan.Search.Point;
import org.brewchem.substance.Acid;
import org.brewchem.treatment.Blends;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;

/** The starts and the steps of the search, followed by hand in problems of one and two doses. */
class SearchStepsTest {

  /** One dose x in mmol/L; what is constrained is the calcium, f(x) mg/L, of what is made. */
  private static Problem curved(DoubleUnaryOperator f, Constraint... constraints) {
    return Plan.from(Water.pure())
        .using(Shelf.of(gypsum()))
        .forPortions(portion("a", litres(1)))
        .and(made(water -> f.applyAsDouble(millimoles(water))), constraints)
        .problem();
  }

  private static Constraint aim(double aim) {
    return around(CALCIUM, mgPerL(aim), 1).withWeight(1);
  }

  private static Plan.Request salts(Constraint... constraints) {
    return Plan.from(Water.pure())
        .using(Shelf.of(calciumChloride(), epsom().atMost(g(0.2 * SmallProblems.EPSOM / 1000))))
        .forPortions(portion("a", litres(1)))
        .meeting(target(constraints));
  }

  private static double[] reached(Problem problem, double... start) {
    Point point = new Search(problem).reach(start);
    assertNotNull(point);
    return point.x();
  }

  /** A quarter of 4 mmol/L, squared: 0.25; and at most what the shelf has. */
  @Test
  void aStraightProblemStartsWithALittleOfEverythingAndWithNothing() {
    List<double[]> starts = new Search(salts(atLeast(CALCIUM, mgPerL(40))).problem()).starts();
    assertEquals(2, starts.size());
    assertArrayEquals(new double[] {1, 0.25, 0.0125}, starts.get(0), 1e-6);
    assertArrayEquals(new double[] {1, 0, 0}, starts.get(1));
  }

  /**
   * The third and fourth of the sequence of base 2 are 0.75 and 0.125, of base 3 they are 1/9 and
   * 4/9; their squares, of 4 and of 0.2 mmol/L.
   */
  @Test
  void whereFiguresAreCurvedTwoScatteredStartsAreAdded() {
    List<double[]> starts = new Search(salts(atMost(PH_VALUE, pH(7))).problem()).starts();
    assertEquals(4, starts.size());
    assertArrayEquals(new double[] {1, 0.25, 0.0125}, starts.get(0), 1e-6);
    assertArrayEquals(new double[] {1, 0, 0}, starts.get(1));
    assertArrayEquals(new double[] {1, 2.25, 0.2 / 81}, starts.get(2), 1e-6);
    assertArrayEquals(new double[] {1, 0.0625, 0.2 * 16 / 81}, starts.get(3), 1e-6);
  }

  @Test
  void aWeightedRatioHasSixScatteredStartsAndAHardOneIsStraight() {
    Constraint ratio = around(SULFATE_TO_CHLORIDE, 1.0, 0.1);
    assertEquals(8, new Search(salts(ratio.withWeight(1)).problem()).starts().size());
    assertEquals(2, new Search(salts(ratio).problem()).starts().size());
    assertEquals(4, new Search(salts(ratio, atMost(PH_VALUE, pH(7))).problem()).starts().size());
  }

  @Test
  void theLeastOfAnItemIsPartOfEveryStart() {
    ShelfItem item = gypsum().atLeast(g(SmallProblems.GYPSUM / 1000));
    Problem problem =
        Plan.from(Water.pure())
            .using(Shelf.of(item))
            .forPortions(portion("a", litres(1)))
            .meeting(target(atMost(PH_VALUE, pH(7))))
            .problem();
    List<double[]> starts = new Search(problem).starts();
    double[] expected = {1, 1, 2.25, 1};
    for (int k = 0; k < 4; k++) {
      assertEquals(expected[k], starts.get(k)[1], 1e-6);
    }
  }

  /** 0.75 and 1/9 make shares of 27/31 and 4/31; 0.125 and 4/9 make 9/41 and 32/41. */
  @Test
  void startsOfABlendAreSharesThatMakeItUp() {
    Blends<Beer> blends =
        Blends.of(
                Beer.of(pH(4.4), acidity(gPerL(2), Acid.LACTIC, pH(8.2))),
                Beer.of(pH(4.1), acidity(gPerL(3), Acid.LACTIC, pH(8.2))))
            .called("one", "other");
    Query query =
        new Query(
            blends.liquids(),
            blends.names(),
            Shelf.of(),
            List.of(portion("blend", litres(10))),
            List.of(
                new Wanted(
                    atMost(PH_VALUE, pH(4.3)), Optional.of("blend"), false, Optional.empty())),
            Query.Economy.MASS,
            Optional.of(blends));
    List<double[]> starts = new Search(new Problem(query)).starts();
    assertEquals(4, starts.size());
    assertArrayEquals(new double[] {0.5, 0.5}, starts.get(0), 1e-15);
    assertArrayEquals(new double[] {0.5, 0.5}, starts.get(1), 1e-15);
    assertArrayEquals(new double[] {27.0 / 31, 4.0 / 31}, starts.get(2), 1e-12);
    assertArrayEquals(new double[] {9.0 / 41, 32.0 / 41}, starts.get(3), 1e-12);
  }

  /** The points that a search tries, without those a hair off the last one, which tell slopes. */
  private static List<Double> tried(DoubleUnaryOperator f, double start, Constraint constraint) {
    List<Double> all = new ArrayList<>();
    Problem problem =
        curved(
            x -> {
              if (all.isEmpty() || Math.abs(x - all.get(all.size() - 1)) > 10 * SiteFigure.STEP) {
                all.add(x);
              }
              return f.applyAsDouble(x);
            },
            constraint);
    all.clear();
    new Search(problem).reach(new double[] {1, start});
    return all;
  }

  private static void assertBegins(List<Double> tried, double... expected) {
    assertTrue(tried.size() >= expected.length, tried.toString());
    for (int k = 0; k < expected.length; k++) {
      assertEquals(expected[k], tried.get(k), 2e-3, k + " of " + tried);
    }
  }

  /**
   * 10 (1 - exp(-x)) is to be 5, from 3. There it is 9.502 with a slope of 0.498: 5 is promised far
   * below 0. Nothing makes it worse, so three tenths of that way are tried: 2.1 gives 8.775, which
   * is more than the slope promised, so the next step may be 1.8 long. To 0.3 it is, which promised
   * 1.8 times 1.2246, or 2.204, and brings 1.367, 0.62 of it: the radius stays. Then 2.408 / 7.408
   * leads to 0.625, and so on to the natural logarithm of 2.
   */
  @Test
  void theRadiusFollowsWhatStepsBringOfWhatTheyPromise() {
    List<Double> tried = tried(x -> 10 * (1 - Math.exp(-x)), 3, aim(5));
    assertBegins(tried, 3, 0, 2.1, 0.3, 0.625);
    assertEquals(Math.log(2), tried.get(tried.size() - 1), 1e-3);
    assertTrue(tried.size() < 9, tried.toString());
  }

  /**
   * A cup of slope 1, 1 at its bottom at 3, is to be 0, from 0. The slope leads to 4, where half of
   * what it promised is gained: the radius stays without end. From 4 it leads to 2, which is no
   * better: three tenths of 2, to 3.4, gain all; twice that, to 2.2, nothing; three tenths of 1.2,
   * to 3.04, all; 2.32 nothing, 2.824 nothing, and 2.9752 gains 0.0152 of 0.0648, which will do.
   */
  @Test
  void aStepThatBringsNothingIsCutToThreeTenths() {
    DoubleUnaryOperator cup = x -> 1 + Math.abs(x - 3);
    List<Double> tried = tried(cup, 0, aim(0));
    assertBegins(tried, 0, 4, 2, 3.4, 2.2, 3.04, 2.32, 2.824, 2.9752);
    assertEquals(3, reached(curved(cup, aim(0)), 1, 0)[1], SiteFigure.STEP);
  }

  /**
   * The figure is the dose below 2 mmol/L and has no value above; it is to be 5, from 0.25. The
   * steps are cut to three tenths until one has a value: 1.675, then by twice that length no
   * further than there is one.
   */
  @Test
  void whereAFigureHasNoValueTheStepIsCut() {
    DoubleUnaryOperator broken =
        x -> {
          if (x > 2) {
            throw new IllegalArgumentException("no value");
          }
          return x;
        };
    List<Double> tried = tried(broken, 0.25, aim(5));
    // 4.75 x 0.3 = 1.425; 2.85 from 1.675; 0.3 x 2.85 = 0.855; 0.2565.
    assertBegins(tried, 0.25, 5, 1.675, 4.525, 2.53, 1.9315);
    double[] x = reached(curved(broken, aim(5)), 1, 0.25);
    assertEquals(2, x[1], 1e-6);
    assertTrue(x[1] <= 2);
    assertNull(new Search(curved(broken, aim(5))).reach(new double[] {1, 2.5}));
  }

  @Test
  void aStartIsSoughtWhereEveryFigureHasAValue() {
    DoubleUnaryOperator late =
        x -> {
          if (x < 0.4) {
            throw new IllegalArgumentException("no value");
          }
          return x;
        };
    Problem problem = curved(late, atMost(CALCIUM, mgPerL(0.1)));
    Point point = new Search(problem).anywhere().orElseThrow();
    assertEquals(2.25, point.x()[1], 1e-12);
    assertEquals(2.25, point.worth().numbers()[0], 1e-9);
    Problem tried =
        curved(
            x -> late.applyAsDouble(Math.abs(x - 0.5) < 1e-9 ? 0.5 : 0),
            atMost(CALCIUM, mgPerL(1)));
    assertEquals(Optional.empty(), new Search(tried).anywhere());
    assertEquals(Optional.empty(), new Search(tried).best());
  }

  /**
   * From 0.25 the way leads down to 3, from 0 nowhere: both are 1 off, and 0 takes no salt. A
   * search for less cost from 3 does not find its way to 0.
   */
  @Test
  void ofTwoPlacesThatAreEquallyGoodTheCheaperIsTaken() {
    DoubleUnaryOperator two = x -> x < 0.1 ? 1 + 10 * x : x < 3 ? 2 - (x - 0.1) / 2.9 : 1 + (x - 3);
    Problem problem = curved(two, aim(0));
    assertEquals(3, reached(problem, 1, 0.25)[1], 1e-5);
    assertEquals(0, reached(problem, 1, 0)[1]);
    Point best = new Search(problem).best().orElseThrow();
    assertEquals(0, best.x()[1]);
    assertEquals(1, best.worth().weighted(), 1e-9);
  }

  /** From 0.25 and 0 the way leads to 0, where 1 is off; from 2.25 to 3, where it is 0.5. */
  @Test
  void theBestOfWhatTheStartsLeadToIsTaken() {
    DoubleUnaryOperator two = x -> x < 2 ? 1 + x : x < 3 ? 3 - 2.5 * (x - 2) : 0.5 + (x - 3);
    Point best = new Search(curved(two, aim(0))).best().orElseThrow();
    assertEquals(3, best.x()[1], SiteFigure.STEP);
    assertEquals(0.5, best.worth().weighted(), 2.5 * SiteFigure.STEP);
    // The same where the figure may not be more than 0.75, and where it may not be more than 0.
    Point kept = new Search(curved(two, atMost(CALCIUM, mgPerL(0.75)))).best().orElseThrow();
    assertTrue(kept.isKept());
    assertEquals(2.9, kept.x()[1], 1e-6);
    Point broken =
        new Search(curved(two, atMost(CALCIUM, mgPerL(0)).scaledBy(2))).best().orElseThrow();
    assertFalse(broken.isKept());
    assertEquals(3, broken.x()[1], SiteFigure.STEP);
    assertEquals(0.25, broken.worth().violation(), 2 * SiteFigure.STEP);
  }

  /**
   * The least of 147.008 x + 246.466 y with x y at least 1: both terms are equal, so x is the
   * square root of 246.466 / 147.008.
   */
  @Test
  void theCheapestIsFoundAlongALimitThatIsCurved() {
    Problem problem =
        Plan.from(Water.pure())
            .using(Shelf.of(calciumChloride(), epsom()))
            .forPortions(portion("a", litres(1)))
            .and(
                made(water -> millimoles(water) * SmallProblems.millimolesOfMagnesium(water)),
                atLeast(CALCIUM, mgPerL(1)))
            .problem();
    Point best = new Search(problem).best().orElseThrow();
    double x = Math.sqrt(SmallProblems.EPSOM / SmallProblems.CALCIUM_CHLORIDE);
    assertTrue(best.isKept());
    assertEquals(
        2 * Math.sqrt(SmallProblems.EPSOM * SmallProblems.CALCIUM_CHLORIDE) / 1000,
        problem.variables().cost(best.x()),
        1e-6);
    assertEquals(x, best.x()[1], 1e-3);
    assertEquals(1, best.x()[1] * best.x()[2], 1e-6);
  }

  /** At 0 and beyond 2.5 the limit is broken by 1: where 0.25 led to is found first and stays. */
  @Test
  void ofTwoPlacesThatBreakALimitEquallyTheFirstStays() {
    DoubleUnaryOperator two = x -> x < 0.1 ? 1 + 10 * x : Math.max(1, 2 - (x - 0.1) / 2.4);
    Problem problem = curved(two, atMost(CALCIUM, mgPerL(0)));
    assertEquals(0, reached(problem, 1, 0)[1]);
    Point best = new Search(problem).best().orElseThrow();
    assertFalse(best.isKept());
    assertTrue(best.x()[1] >= 2.5, "at " + best.x()[1]);
    assertEquals(1, best.worth().violation(), 1e-9);
  }

  /** From 0.25 and 0 the limit is kept and 10 are off; from 2.25 the way leads where it is not. */
  @Test
  void whatKeepsTheLimitsIsNotGivenUpForWhatDoesNot() {
    Problem problem =
        Plan.from(Water.pure())
            .using(Shelf.of(gypsum()))
            .forPortions(portion("a", litres(1)))
            .and(
                made(
                    water -> {
                      double x = millimoles(water);
                      return x < 2 ? x / 4 : 2 + Math.abs(x - 3);
                    }),
                atMost(CALCIUM, mgPerL(0.75)))
            .and(made(water -> 10 + millimoles(water)), aim(0))
            .problem();
    assertFalse(problem.worth(reached(problem, 1, 2.25)).violation() <= Search.KEPT);
    Point best = new Search(problem).best().orElseThrow();
    assertTrue(best.isKept());
    assertEquals(0, best.x()[1], 1e-9);
    assertEquals(10, best.worth().weighted(), 1e-6);
  }

  @Test
  void aHardRatioOfWhatIsCurvedIsCurved() {
    Problem problem =
        Plan.from(Invented.hard())
            .using(Shelf.of(gypsum()))
            .forPortions(portion("a", litres(1)))
            .meeting(target(atLeast(SmallProblems.sulfateToAlkalinity(), 0.5)))
            .problem();
    assertEquals(4, new Search(problem).starts().size());
  }

  /**
   * x x + y y at most 1, and x + 2 y is to be 10: 10 less the root of 5 is the least that it can be
   * off. Sixty short steps along the circle end near it, and keep the limit.
   */
  @Test
  void aSearchThatDoesNotArriveGivesWhatItHas() {
    Problem problem =
        Plan.from(Water.pure())
            .using(Shelf.of(calciumChloride(), epsom()))
            .forPortions(portion("a", litres(1)))
            .and(
                made(
                    water ->
                        Math.pow(millimoles(water), 2)
                            + Math.pow(SmallProblems.millimolesOfMagnesium(water), 2)),
                atMost(CALCIUM, mgPerL(1)))
            .and(
                made(water -> millimoles(water) + 2 * SmallProblems.millimolesOfMagnesium(water)),
                aim(10))
            .problem();
    Point best = new Search(problem).best().orElseThrow();
    assertTrue(best.isKept());
    double least = 10 - Math.sqrt(5);
    assertTrue(best.worth().weighted() > least - 2e-6);
    assertTrue(best.worth().weighted() < least + 0.01, "" + best.worth().weighted());
  }
}
