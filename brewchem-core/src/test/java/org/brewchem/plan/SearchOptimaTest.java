package org.brewchem.plan;

import static org.brewchem.figure.Constraint.around;
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
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.MAGNESIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SULFATE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.brewchem.figure.Constraint;
import org.brewchem.plan.Search.Point;
import org.brewchem.substance.Salt;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;

/** Small problems whose best doses are worked out by hand, mmol/L in pure water. */
class SearchOptimaTest {

  private static Plan.Request with(Shelf shelf, Constraint... constraints) {
    Plan.Request request =
        Plan.from(Water.pure()).using(shelf).forPortions(portion("a", litres(1)));
    for (Constraint constraint : constraints) {
      request = request.meeting(target(constraint));
    }
    return request;
  }

  private static Problem problem(Shelf shelf, Constraint... constraints) {
    return with(shelf, constraints).problem();
  }

  private static Point best(Problem problem) {
    return new Search(problem).best().orElseThrow();
  }

  private static Point best(Shelf shelf, Constraint... constraints) {
    return best(problem(shelf, constraints));
  }

  @Test
  void noMoreIsDosedThanALimitAsksFor() {
    Point point = best(Shelf.of(gypsum(), epsom()), atLeast(CALCIUM, mgPerL(CA)));
    assertArrayEquals(new double[] {1, 1, 0}, point.x(), 1e-8);
    assertTrue(point.isKept());
    assertEquals(0, point.worth().violation());
    assertEquals(0, point.worth().weighted());
    assertTrue(point.worth().numbers()[0] >= CA, "kept in spite of rounding");
    Point most =
        best(
            Shelf.of(gypsum().atLeast(g(2 * GYPSUM / 1000))),
            atMost(CALCIUM, mgPerL(2 * CA + 1e-6)));
    assertEquals(2, most.x()[1], 1e-6);
  }

  @Test
  void withoutAnyConstraintNothingIsDosed() {
    assertArrayEquals(new double[] {1, 0, 0}, best(Shelf.of(gypsum(), epsom())).x());
  }

  /** One side counts its size as a scale: a tenth more than 1 mmol/L. */
  @Test
  void aSearchKeepsAsManyScalesAwayFromLimitsAsItIsTold() {
    Problem least = problem(Shelf.of(gypsum()), atLeast(CALCIUM, mgPerL(CA)));
    Point point = new Search(least, new double[] {0.1}).best().orElseThrow();
    assertEquals(1.1, point.x()[1], 1e-8);
    // Half the band is a scale: 2 + 0.2 x 0.5.
    Problem band = problem(Shelf.of(gypsum()), between(CALCIUM, mgPerL(2 * CA), mgPerL(3 * CA)));
    assertEquals(2.1, new Search(band, new double[] {0.2}).best().orElseThrow().x()[1], 1e-8);
    // More than half the band is not possible: 0.49 of it count.
    assertEquals(2.49, new Search(band, new double[] {3}).best().orElseThrow().x()[1], 1e-8);
    // An exact number has no room.
    Problem exact = problem(Shelf.of(gypsum()), exactly(CALCIUM, mgPerL(2 * CA)));
    assertEquals(2, new Search(exact, new double[] {3}).best().orElseThrow().x()[1], 1e-9);
    // Each goal has its own.
    Problem two =
        problem(
            Shelf.of(calciumChloride(), epsom()),
            atLeast(CALCIUM, mgPerL(CA)),
            atLeast(MAGNESIUM, mgPerL(MG)));
    assertArrayEquals(
        new double[] {1, 1.5, 1.25},
        new Search(two, new double[] {0.5, 0.25}).best().orElseThrow().x(),
        1e-8);
  }

  /**
   * Calcium is to be 1 mmol/L, sulfate 2, and gypsum brings both. Off by one is a tenth of a
   * millimole of calcium of weight 1, of sulfate of weight 3: the sulfate wins, and 10 is the sum.
   */
  @Test
  void ofTwoWishesTheWeightierIsMet() {
    Point point =
        best(
            Shelf.of(gypsum()),
            around(CALCIUM, mgPerL(CA), CA / 10).withWeight(1),
            around(SULFATE, mgPerL(2 * SO4), SO4 / 10).withWeight(3));
    assertEquals(2, point.x()[1], 1e-6);
    assertEquals(10, point.worth().weighted(), 1e-6);
    Point other =
        best(
            Shelf.of(gypsum()),
            around(CALCIUM, mgPerL(CA), CA / 10).withWeight(3),
            around(SULFATE, mgPerL(2 * SO4), SO4 / 10).withWeight(1));
    assertEquals(1, other.x()[1], 1e-6);
    assertEquals(10, other.worth().weighted(), 1e-6);
  }

  /** Outside a band what is missing counts, inside nothing: then the least salt is taken. */
  @Test
  void aWeightedBandIsEnteredAtItsCheaperEnd() {
    Point point =
        best(Shelf.of(gypsum()), between(CALCIUM, mgPerL(CA), mgPerL(2 * CA)).withWeight(1));
    assertEquals(1, point.x()[1], 1e-5);
    assertTrue(point.worth().weighted() <= Search.EQUALLY_GOOD);
    Point little =
        best(
            Shelf.of(gypsum().atMost(g(GYPSUM / 2000))),
            between(CALCIUM, mgPerL(CA), mgPerL(2 * CA)).withWeight(1));
    assertEquals(0.5, little.x()[1], 1e-6);
    assertEquals(1, little.worth().weighted(), 1e-5);
    Point much =
        best(
            Shelf.of(gypsum().atLeast(g(3 * GYPSUM / 1000))),
            between(CALCIUM, mgPerL(CA), mgPerL(2 * CA)).withWeight(1));
    assertEquals(3, much.x()[1], 1e-6);
    assertEquals(2, much.worth().weighted(), 1e-5);
  }

  /** Plans within 1e-6 of the least sum are equally good; nine tenths of it are used. */
  @Test
  void saltIsSavedWhereTheSumHardlyGrows() {
    Point point = best(Shelf.of(gypsum()), around(CALCIUM, mgPerL(CA), CA).withWeight(1));
    assertEquals(9e-7, point.worth().weighted(), 1e-9);
    assertEquals(1 - 9e-7, point.x()[1], 1e-9);
  }

  @Test
  void theCheaperOfTwoSaltsIsTaken() {
    ShelfItem dear = gypsum().pricedPerKilogram(10);
    // A mole of gypsum costs 1.72164, of calcium chloride 147.008 g a third more or less.
    ShelfItem cheap = calciumChloride().pricedPerKilogram(8);
    Point point = best(Shelf.of(dear, cheap), atLeast(CALCIUM, mgPerL(CA)));
    assertArrayEquals(new double[] {1, 0, 1}, point.x(), 1e-8);
    Point other =
        best(Shelf.of(dear, calciumChloride().pricedPerKilogram(13)), atLeast(CALCIUM, mgPerL(CA)));
    assertArrayEquals(new double[] {1, 1, 0}, other.x(), 1e-8);
  }

  /**
   * Gypsum brings calcium, of which 1 mmol/L is allowed, and sulfate, of which 2 are wanted; each
   * counts in its own size, so a millimole too much of calcium is 1 and of sulfate too little a
   * half. Magnesium is only wished for, and had.
   */
  @Test
  void whatCannotBeKeptIsBrokenLeast() {
    Point point =
        best(Shelf.of(gypsum()), atMost(CALCIUM, mgPerL(CA)), atLeast(SULFATE, mgPerL(2 * SO4)));
    assertFalse(point.isKept());
    assertEquals(1, point.x()[1], 1e-6);
    assertEquals(0.5, point.worth().violation(), 1e-6);
    Point wished =
        best(
            Shelf.of(gypsum(), SmallProblems.item(Salt.MAGNESIUM_CHLORIDE_HEXAHYDRATE)),
            atMost(CALCIUM, mgPerL(CA)),
            atLeast(SULFATE, mgPerL(2 * SO4)),
            around(MAGNESIUM, mgPerL(3 * MG), MG).withWeight(1));
    assertArrayEquals(new double[] {1, 1, 3}, wished.x(), 1e-6);
    assertEquals(0.5, wished.worth().violation(), 1e-6);
    assertEquals(0, wished.worth().weighted(), 1e-6);
  }

  /** Sulfate twice the chloride by mass, and 1 mmol/L of sulfate: chloride is half of SO4 / Cl. */
  @Test
  void aRatioIsMetByItsLogarithm() {
    Point point =
        best(
            Shelf.of(epsom(), calciumChloride()),
            around(SULFATE_TO_CHLORIDE, 2.0, 0.02).withWeight(1),
            atLeast(SULFATE, mgPerL(SO4)));
    assertEquals(1, point.x()[1], 1e-6);
    assertEquals(SO4 / 2 / (2 * CL), point.x()[2], 1e-5);
    Point hard =
        best(
            Shelf.of(epsom(), calciumChloride()),
            between(SULFATE_TO_CHLORIDE, 1.0, 4.0),
            atLeast(CHLORIDE, mgPerL(2 * CL)));
    assertEquals(1, hard.x()[2], 1e-8);
    assertEquals(2 * CL / SO4, hard.x()[1], 1e-7);
    // 1 of sulfate and 2 of chloride: a ratio of SO4 / 2 Cl, and so many half bands below 4.
    Point off =
        best(
            Shelf.of(epsom().atMost(g(EPSOM / 1000)), calciumChloride()),
            around(SULFATE_TO_CHLORIDE, 4.0, 0.4).withWeight(1),
            atLeast(CHLORIDE, mgPerL(2 * CL)));
    double half = (Math.log(4.4) - Math.log(3.6)) / 2;
    assertEquals((Math.log(4) - Math.log(SO4 / (2 * CL))) / half, off.worth().weighted(), 1e-5);
  }

  /** The least acid that will do leaves the pH at its limit. */
  @Test
  void aLimitOfThePHIsReachedAndNoMore() {
    Problem problem =
        Plan.from(Invented.hard())
            .using(Shelf.of(Invented.lactic()))
            .forPortions(portion("a", litres(1)))
            .meeting(target(atMost(PH_VALUE, pH(6))))
            .problem();
    Point point = best(problem);
    assertTrue(point.isKept());
    assertEquals(6, point.worth().numbers()[0], 1e-6);
    Problem wished =
        Plan.from(Invented.hard())
            .using(Shelf.of(Invented.lactic()))
            .forPortions(portion("a", litres(1)))
            .meeting(target(around(PH_VALUE, pH(5), 0.01).withWeight(1)))
            .problem();
    assertEquals(5, best(wished).worth().numbers()[0], 2e-8);
    // From every start, near and far, on either side of the steep part.
    for (double start : new double[] {0, 0.1, 1, 3, 4, 4.3, 4.5, 6, 20}) {
      Point reached = new Search(wished).reach(new double[] {1, start});
      assertNotNull(reached);
      assertEquals(5, reached.worth().numbers()[0], 2e-8, "from " + start);
    }
  }

  private static Plan.Request twoPortions(ShelfItem... items) {
    return Plan.from(Water.pure())
        .using(Shelf.of(items))
        .forPortions(portion("a", litres(2)), portion("b", litres(3)));
  }

  @Test
  void theLeastOfAllPortionsIsDosedAndTheMostIsKept() {
    Problem least = twoPortions(gypsum().atLeast(g(1))).problem();
    Point point = best(least);
    assertEquals(1, least.variables().cost(point.x()), 1e-8);
    Problem most =
        twoPortions(gypsum().atMost(g(3 * GYPSUM / 1000)))
            .meeting("a", target(around(CALCIUM, mgPerL(CA), CA).withWeight(1)))
            .meeting("b", target(around(CALCIUM, mgPerL(CA), CA).withWeight(2)))
            .problem();
    // 3 mmol are enough for the weightier 3 L and none of the 2 L.
    Point shared = best(most);
    assertEquals(0, shared.x()[1], 1e-5);
    assertEquals(1, shared.x()[3], 1e-5);
    assertEquals(1, shared.worth().weighted(), 1e-5);
  }

  @Test
  void aStartThatBreaksTheShelfIsMovedTheNearestWay() {
    Problem problem =
        twoPortions(
                gypsum().atMost(g(3 * GYPSUM / 1000)),
                calciumChloride().atLeast(g(CALCIUM_CHLORIDE / 1000)))
            .problem();
    Search search = new Search(problem);
    Point point = search.reach(new double[] {1, 1, 0, 1, 2, 0});
    assertNotNull(point);
    assertTrue(problem.variables().keepsToTheShelf(point.x()));
    // A millimole in 3 L is three off the total, in 2 L two: 5 of 8 are to go, from the 3 L first.
    assertArrayEquals(new double[] {1, 1, 0, 1, 1.0 / 3, 1.0 / 3}, point.x(), 1e-8);
    // What keeps to the shelf stays.
    double[] kept = {1, 0.2, 0.3, 1, 0.4, 0.3};
    Point stayed = search.reach(kept);
    assertNotNull(stayed);
    assertArrayEquals(new double[] {1, 0.2, 0.3, 1, 0.4, 0.3}, stayed.x());
  }

  @Test
  void whereTheShelfContradictsItselfNothingIsFound() {
    Problem problem =
        Plan.from(Invented.hard())
            .using(Shelf.of(ShelfItem.diluent("osmosis", Water.pure()).atLeast(litres(6))))
            .forPortions(portion("a", litres(2)), portion("b", litres(3)))
            .problem();
    assertEquals(Optional.empty(), new Search(problem).best());
    assertTrue(new Search(problem).anywhere().isPresent());
  }

  /** 92 mg/L of calcium and none: 23 are a quarter of the hard water. */
  @Test
  void sharesOfWatersMakeUpThePortion() {
    Problem problem =
        Plan.from(Invented.hard(), Water.pure())
            .forPortions(portion("a", litres(1)))
            .meeting(target(exactly(CALCIUM, mgPerL(23))))
            .problem();
    Point point = best(problem);
    assertArrayEquals(new double[] {0.25, 0.75}, point.x(), 1e-9);
    Problem wished =
        Plan.from(Invented.hard(), Water.pure())
            .forPortions(portion("a", litres(1)), portion("b", litres(2)))
            .meeting("a", target(around(CALCIUM, mgPerL(46), 1).withWeight(1)))
            .meeting("b", target(atMost(CALCIUM, mgPerL(0))))
            .problem();
    assertArrayEquals(new double[] {0.5, 0.5, 0, 1}, best(wished).x(), 1e-7);
  }

  /** Calcium asks for 23 / 92 of the hard water, magnesium for 1 mmol/L beside what that has. */
  @Test
  void sharesAndDosesAreFoundTogether() {
    Problem problem =
        Plan.from(Invented.hard(), Water.pure())
            .using(Shelf.of(epsom()))
            .forPortions(portion("a", litres(1)))
            .meeting(
                target(exactly(CALCIUM, mgPerL(23)), exactly(MAGNESIUM, mgPerL(11.0 / 4 + MG))))
            .problem();
    Point point = best(problem);
    assertTrue(point.isKept());
    assertArrayEquals(new double[] {0.25, 0.75, 1}, point.x(), 1e-7);
  }

  /**
   * No weight makes up for a broken limit, even where limits are broken: 1 mmol/L of gypsum breaks
   * them least, by a half. What is wished beside that is met as far as it may be: chloride of
   * weight 10 stays at none, and so does magnesium chloride.
   */
  @Test
  void wishesComeAfterLimitsThatCannotBeKept() {
    Constraint most = atMost(CALCIUM, mgPerL(CA));
    Constraint least = atLeast(SULFATE, mgPerL(2 * SO4));
    Point point =
        best(
            Shelf.of(gypsum()),
            most,
            least,
            around(CALCIUM, mgPerL(5 * CA), CA / 10).withWeight(1));
    assertEquals(1, point.x()[1], 1e-6);
    assertEquals(0.5, point.worth().violation(), 1e-6);
    assertEquals(40, point.worth().weighted(), 1e-4);
    Point none =
        best(
            Shelf.of(gypsum(), SmallProblems.item(Salt.MAGNESIUM_CHLORIDE_HEXAHYDRATE)),
            most,
            least,
            around(MAGNESIUM, mgPerL(3 * MG), MG).withWeight(1),
            atMost(CHLORIDE, mgPerL(0)).scaledBy(CL).withWeight(10));
    assertArrayEquals(new double[] {1, 1, 0}, none.x(), 1e-6);
    assertEquals(3, none.worth().weighted(), 1e-5);
    Point some =
        best(
            Shelf.of(gypsum(), SmallProblems.item(Salt.MAGNESIUM_CHLORIDE_HEXAHYDRATE)),
            most,
            least,
            around(MAGNESIUM, mgPerL(3 * MG), MG).withWeight(10),
            atMost(CHLORIDE, mgPerL(0)).scaledBy(CL).withWeight(1));
    assertArrayEquals(new double[] {1, 1, 3}, some.x(), 1e-6);
    assertEquals(6, some.worth().weighted(), 1e-5);
  }
}
