package org.brewchem.plan;

import static org.brewchem.figure.Constraint.around;
import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.plan.SmallProblems.CA;
import static org.brewchem.plan.SmallProblems.CALCIUM_CHLORIDE;
import static org.brewchem.plan.SmallProblems.EPSOM;
import static org.brewchem.plan.SmallProblems.GYPSUM;
import static org.brewchem.plan.SmallProblems.MG;
import static org.brewchem.plan.SmallProblems.calciumChloride;
import static org.brewchem.plan.SmallProblems.epsom;
import static org.brewchem.plan.SmallProblems.gypsum;
import static org.brewchem.plan.SmallProblems.item;
import static org.brewchem.plan.SmallProblems.made;
import static org.brewchem.plan.SmallProblems.millimoles;
import static org.brewchem.plan.SmallProblems.millimolesOfMagnesium;
import static org.brewchem.plan.SmallProblems.target;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.MAGNESIUM;
import static org.brewchem.solution.Figures.POTASSIUM;
import static org.brewchem.solution.Figures.SODIUM;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.plan.Search.Point;
import org.brewchem.substance.Salt;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;

/** Doses rounded to steps, in small problems of pure water whose best neighbour is known. */
class RoundingTest {

  /** An item with a step of so many mmol/L, in a portion of one litre. */
  private static ShelfItem stepped(ShelfItem item, double molarMass, double step) {
    return item.resolvedTo(g(step * molarMass / 1000));
  }

  private static ShelfItem calcium(double step) {
    return stepped(calciumChloride(), CALCIUM_CHLORIDE, step);
  }

  private static ShelfItem magnesium(double step) {
    return stepped(epsom(), EPSOM, step);
  }

  private static Plan.Request with(Shelf shelf, Constraint... constraints) {
    return Plan.from(Water.pure())
        .using(shelf)
        .forPortions(portion("a", litres(1)))
        .meeting(target(constraints));
  }

  private static Constraint calciumNear(double millimoles) {
    return around(CALCIUM, mgPerL(millimoles * CA), CA).withWeight(1);
  }

  private static Constraint magnesiumNear(double millimoles) {
    return around(MAGNESIUM, mgPerL(millimoles * MG), MG).withWeight(1);
  }

  private static Optional<Point> round(Problem problem, double... x) {
    return new Rounding(problem).round(new Point(x, problem.worth(x)));
  }

  private static void assertRounded(double[] expected, Problem problem, double... x) {
    Point point = round(problem, x).orElseThrow();
    assertArrayEquals(expected, point.x(), 1e-6);
    assertEquals(problem.worth(expected).weighted(), point.worth().weighted(), 1e-5);
  }

  @Test
  void roundingIsNeededWhereAnyDoseHasAStep() {
    assertTrue(new Rounding(with(Shelf.of(calcium(1))).problem()).isNeeded());
    assertTrue(new Rounding(with(Shelf.of(gypsum(), calcium(1))).problem()).isNeeded());
    assertFalse(new Rounding(with(Shelf.of(gypsum(), epsom())).problem()).isNeeded());
  }

  @Test
  void ofTheStepsBesideADoseTheOneThatIsLessOffIsTaken() {
    Problem problem = with(Shelf.of(calcium(0.5)), calciumNear(1.3)).problem();
    assertRounded(new double[] {1, 1.5}, problem, 1, 1.3);
    // Not the nearest to the dose, but to what is wanted.
    assertRounded(new double[] {1, 1.5}, problem, 1, 1.1);
    assertRounded(
        new double[] {1, 1}, with(Shelf.of(calcium(0.5)), calciumNear(1.2)).problem(), 1, 1.4);
    // Without a step a dose stays as it is.
    assertRounded(
        new double[] {1, 1, 0.777},
        with(Shelf.of(calcium(0.5), epsom()), calciumNear(1.2)).problem(),
        1,
        1.2,
        0.777);
  }

  /** A dose that stands on a step is not moved; what is a millionth of a step off stands on it. */
  @Test
  void aDoseOnAStepStays() {
    Problem problem = with(Shelf.of(calcium(0.5)), calciumNear(3)).problem();
    assertRounded(new double[] {1, 1}, problem, 1, 1);
    assertRounded(new double[] {1, 1}, problem, 1, 1 + 0.5 * 0.9e-6);
    assertRounded(new double[] {1, 1}, problem, 1, 1 - 0.5 * 0.9e-6);
    assertRounded(new double[] {1, 1.5}, problem, 1, 1 + 0.5 * 1e-5);
    assertRounded(new double[] {1, 0}, problem, 1, 0.5 * 0.9e-6);
    // Of many steps a millionth of all.
    Problem fine = with(Shelf.of(calcium(0.001)), calciumNear(3)).problem();
    assertRounded(new double[] {1, 2}, fine, 1, 2.0000015);
    assertRounded(new double[] {1, 2.001}, fine, 1, 2.00001);
  }

  /** By hand: a least of 1.0000005 steps lies on the first step and asks for the second. */
  @Test
  void aLimitATraceBeyondAStepAsksForTheNext() {
    double one = CALCIUM_CHLORIDE / 1000;
    Problem least =
        with(Shelf.of(calcium(1).atLeast(g(1.0000005 * one))), calciumNear(1)).problem();
    assertRounded(new double[] {1, 2}, least, 1, least.variables().lower(1));
    Problem most = with(Shelf.of(calcium(1).atMost(g(0.9999995 * one))), calciumNear(1)).problem();
    assertRounded(new double[] {1, 0}, most, 1, most.variables().upper(1));
    Problem half =
        with(Shelf.of(calcium(0.5).atLeast(g(0.50000025 * one)).atMost(g(one))), calciumNear(1))
            .problem();
    assertRounded(new double[] {1, 1}, half, 1, half.variables().lower(1));
    Problem nothing = with(Shelf.of(calcium(1).atMost(g(0))), calciumNear(1)).problem();
    assertRounded(new double[] {1, 0}, nothing, 1, 0);
    Problem none =
        with(Shelf.of(calcium(1).atLeast(g(1.2 * one)).atMost(g(1.8 * one))), calciumNear(1.5))
            .problem();
    assertEquals(Optional.empty(), round(none, 1, 1.5));
  }

  @Test
  void limitsOnASteppedDoseAreNotOverstepped() {
    double one = CALCIUM_CHLORIDE / 1000;
    Problem most = with(Shelf.of(calcium(1).atMost(g(1.4 * one))), calciumNear(1.4)).problem();
    assertRounded(new double[] {1, 1}, most, 1, 1.4);
    Problem least = with(Shelf.of(calcium(1).atLeast(g(1.4 * one))), calciumNear(1.4)).problem();
    assertRounded(new double[] {1, 2}, least, 1, 1.4);
    Problem both =
        with(Shelf.of(calcium(1).atLeast(g(2 * one)).atMost(g(2 * one))), calciumNear(1.4))
            .problem();
    assertRounded(new double[] {1, 2}, both, 1, 2);
  }

  /** Of both neighbours nothing is less off: the cheaper one, and within 1e-6 of the sum too. */
  @Test
  void amongEquallyGoodNeighboursTheCheapestIsTaken() {
    Problem equal =
        with(Shelf.of(calcium(1)), between(CALCIUM, mgPerL(0.5 * CA), mgPerL(3 * CA)).withWeight(1))
            .problem();
    assertRounded(new double[] {1, 1}, equal, 1, 1.9);
    // 1.5 + 2e-7 is 4e-7 nearer to 2 than to 1, which is no reason to dose more.
    Problem nearly = with(Shelf.of(calcium(1)), calciumNear(1.5 + 2e-7)).problem();
    assertRounded(new double[] {1, 1}, nearly, 1, 1.6);
    Problem nearer = with(Shelf.of(calcium(1)), calciumNear(1.5 + 2e-6)).problem();
    assertRounded(new double[] {1, 2}, nearer, 1, 1.4);
    // Two salts of calcium, of which one or the other goes up.
    Problem priced =
        with(
                Shelf.of(
                    stepped(gypsum(), GYPSUM, 1).pricedPerKilogram(10),
                    calcium(1).pricedPerKilogram(8)),
                calciumNear(1))
            .problem();
    assertRounded(new double[] {1, 0, 1}, priced, 1, 0.5, 0.5);
  }

  private static Problem three(double calcium, double magnesium, double sulfate) {
    return with(
            Shelf.of(stepped(gypsum(), GYPSUM, 0.4), calcium(0.3), magnesium(0.7)),
            calciumNear(calcium),
            around(MAGNESIUM, mgPerL(magnesium * MG), MG / 2).withWeight(2),
            around(
                    org.brewchem.solution.Figures.SULFATE,
                    mgPerL(sulfate * SmallProblems.SO4),
                    SmallProblems.SO4)
                .withWeight(1.5))
        .problem();
  }

  /** The eight neighbours of three doses, tried one by one. */
  @Test
  void noNeighbourOfThreeDosesIsBetter() {
    Random random = new Random(20_261_128);
    for (int n = 0; n < 60; n++) {
      double calcium = 1 + 2 * random.nextDouble();
      double magnesium = 0.5 + random.nextDouble();
      double sulfate = 1 + 2 * random.nextDouble();
      Problem problem = three(calcium, magnesium, sulfate);
      double[] x = {1, 0, 0, 0};
      for (int i = 1; i < 4; i++) {
        x[i] = 2 * random.nextDouble();
      }
      double least = Double.POSITIVE_INFINITY;
      double[] steps = {0, 0.4, 0.3, 0.7};
      for (int mask = 0; mask < 8; mask++) {
        double[] y = x.clone();
        for (int i = 1; i < 4; i++) {
          y[i] = steps[i] * (Math.floor(x[i] / steps[i]) + (mask >> (i - 1) & 1));
        }
        double sum =
            Math.abs(y[1] + y[2] - calcium)
                + 4 * Math.abs(y[3] - magnesium)
                + 1.5 * Math.abs(y[1] + y[3] - sulfate);
        least = Math.min(least, sum);
      }
      Point point = round(problem, x).orElseThrow();
      assertEquals(least, point.worth().weighted(), 2e-5, "problem " + n);
      for (int i = 1; i < 4; i++) {
        assertTrue(Math.abs(point.x()[i] - x[i]) < steps[i], "dose " + i);
      }
    }
  }

  /**
   * The figure of what is made is curved: the tangent of the exact doses puts them out of order.
   */
  @Test
  void neighboursAreJudgedByTheFiguresThemselvesNotByTheirSlopes() {
    Random random = new Random(4);
    for (int n = 0; n < 40; n++) {
      double a = 0.5 + 2 * random.nextDouble();
      double b = 0.5 + 2 * random.nextDouble();
      double aim = 20 + 40 * random.nextDouble();
      ToDoubleFunction<double[]> curved =
          y -> 10 + Math.pow(y[0] + 0.3 * y[1], 2) + 5 * Math.sin(y[1]) + 3 * y[0] * y[1];
      Problem problem =
          with(Shelf.of(calcium(1), magnesium(1)))
              .and(
                  made(
                      water ->
                          curved.applyAsDouble(
                              new double[] {millimoles(water), millimolesOfMagnesium(water)})),
                  around(CALCIUM, mgPerL(aim), 1).withWeight(1))
              .problem();
      double least = Double.POSITIVE_INFINITY;
      for (int mask = 0; mask < 4; mask++) {
        double[] y = {Math.floor(a) + (mask & 1), Math.floor(b) + (mask >> 1)};
        least = Math.min(least, Math.abs(curved.applyAsDouble(y) - aim));
      }
      Point point = round(problem, 1, a, b).orElseThrow();
      assertEquals(least, point.worth().weighted(), 2e-4, "problem " + n);
    }
  }

  @Test
  void aNeighbourWhoseFigureHasNoValueIsNotTaken() {
    Problem problem =
        with(Shelf.of(calcium(1)))
            .and(
                made(
                    water -> {
                      if (millimoles(water) > 1.7) {
                        throw new IllegalArgumentException("no value");
                      }
                      return millimoles(water);
                    }),
                around(CALCIUM, mgPerL(2), 1).withWeight(1))
            .problem();
    Point point = round(problem, 1, 1.6).orElseThrow();
    assertEquals(1, point.x()[1], 1e-12);
    assertEquals(1, point.worth().weighted(), 1e-9);
  }

  /** 3 x + y, by hand, of calcium x and magnesium y in mmol/L. */
  private static Figure<Double> weighed(double perCalcium, double perMagnesium) {
    return ClosedForm.figure(
        "sum " + perCalcium,
        Scale.number("", 6),
        "by hand",
        "ours",
        Figure.list(CALCIUM, MAGNESIUM),
        x -> perCalcium * x[0] / CA + perMagnesium * x[1] / MG);
  }

  /**
   * x + y at least 2.95, and 3 x + y at most 6.9, in whole steps. Of the neighbours of 1.975 and
   * 0.975 none will do: 1 and 1 are too little, 2 and 1 too much. Half a step away from both limits
   * the rows are x + y = 3.95 and 3 x + y = 4.9, so 0.475 and 3.475, with 0 and 3 beside them.
   */
  @Test
  void whereNoNeighbourKeepsTheLimitsTheSearchKeepsAwayFromThem() {
    Problem problem =
        with(
                Shelf.of(calcium(1).pricedPerKilogram(1), magnesium(1).pricedPerKilogram(1)),
                atLeast(weighed(1, 1), 2.95).scaledBy(1),
                atMost(weighed(3, 1), 6.9).scaledBy(1))
            .problem();
    Point exact = new Search(problem).best().orElseThrow();
    assertArrayEquals(new double[] {1, 1.975, 0.975}, exact.x(), 1e-6);
    Point point = new Rounding(problem).round(exact).orElseThrow();
    assertArrayEquals(new double[] {1, 0, 3}, point.x(), 1e-6);
    assertTrue(point.isKept());
  }

  /**
   * x + y between 1.3 and 1.7, of 1 and 0.5: 1.3 and 0 have nothing beside them, 1 and 0.5 lie on.
   */
  @Test
  void whereThatDoesNotHelpOneStepFurtherIsTried() {
    Problem problem =
        with(
                Shelf.of(calcium(1).pricedPerKilogram(1), magnesium(0.5).pricedPerKilogram(9)),
                between(weighed(1, 1), 1.3, 1.7))
            .problem();
    Point exact = new Search(problem).best().orElseThrow();
    assertArrayEquals(new double[] {1, 1.3, 0}, exact.x(), 1e-6);
    Point point = new Rounding(problem).round(exact).orElseThrow();
    assertArrayEquals(new double[] {1, 1, 0.5}, point.x(), 1e-6);
    Problem narrow =
        with(
                Shelf.of(calcium(1).pricedPerKilogram(1), magnesium(1).pricedPerKilogram(9)),
                between(weighed(1, 1), 1.3, 1.7))
            .problem();
    assertEquals(Optional.empty(), new Rounding(narrow).round(exact));
  }

  /** 16 doses of four portions, each with a wish of its own: the best is known one by one. */
  @Test
  void manyDosesAreRoundedInBlocks() {
    Shelf shelf =
        Shelf.of(
                calciumChloride(),
                item(Salt.MAGNESIUM_CHLORIDE_HEXAHYDRATE),
                item(Salt.SODIUM_CHLORIDE),
                item(Salt.POTASSIUM_CHLORIDE))
            .weighingTo(g(0.1));
    WaterPortion[] portions = new WaterPortion[4];
    for (int p = 0; p < 4; p++) {
      portions[p] = portion("p" + p, litres(1));
    }
    Plan.Request request = Plan.from(Water.pure()).using(shelf).forPortions(portions);
    Problem bare = request.problem();
    List<Figure<?>> figures = Figure.list(CALCIUM, MAGNESIUM, SODIUM, POTASSIUM);
    double[] molar = {CA, MG, SmallProblems.NA, 39.098};
    Random random = new Random(16);
    double[] x = bare.variables().plainStart();
    double[] expected = x.clone();
    for (int p = 0; p < 4; p++) {
      List<Constraint> wishes = new ArrayList<>();
      for (int k = 0; k < 4; k++) {
        int i = bare.variables().index(p, 1 + k);
        double step = bare.variables().step(i);
        double count = random.nextInt(5);
        x[i] = (count + 0.1 + 0.8 * random.nextDouble()) * step;
        boolean up = random.nextBoolean();
        expected[i] = (up ? count + 1 : count) * step;
        wishes.add(wish(figures.get(k), (count + (up ? 0.8 : 0.2)) * step * molar[k], molar[k]));
      }
      request = request.meeting("p" + p, target(wishes.toArray(Constraint[]::new)));
    }
    assertRounded(expected, request.problem(), x);
  }

  private static <Q> Constraint wish(Figure<Q> figure, double aim, double tolerance) {
    return around(figure, figure.shown().of(aim), tolerance).withWeight(1);
  }

  /** Of three waters the one there is most of takes the rest of the volume. */
  @Test
  void theWaterThereIsMostOfTakesTheRest() {
    Problem problem =
        Plan.from(Invented.hard(), Invented.soft(), Water.pure())
            .using(Shelf.of().meteringWaterTo(litres(0.25)))
            .forPortions(portion("a", litres(1)))
            .meeting(target(around(CALCIUM, mgPerL(30), 1).withWeight(1)))
            .problem();
    // Quarters of hard water bring 23 mg/L: with a quarter of the soft one 25.25, else 23.
    assertRounded(new double[] {0.25, 0.25, 0.5}, problem, 0.3, 0.1, 0.6);
    Problem soft =
        Plan.from(Invented.hard(), Invented.soft(), Water.pure())
            .using(Shelf.of().meteringWaterTo(litres(0.25)))
            .forPortions(portion("a", litres(1)))
            .meeting(target(around(CALCIUM, mgPerL(9), 1).withWeight(1)))
            .problem();
    assertRounded(new double[] {0, 1, 0}, soft, 0.1, 0.8, 0.1);
    assertRounded(new double[] {0.5, 0.5, 0}, with3(50.5), 0.6, 0.4, 0);
    // Where nothing moves the shares stay as they are, whatever they add up to.
    assertRounded(new double[] {0.25, 0.5, 0.25}, with3(1), 0.25, 0.5, 0.25);
  }

  private static Problem with3(double calcium) {
    return Plan.from(Invented.hard(), Invented.soft(), Water.pure())
        .using(Shelf.of().meteringWaterTo(litres(0.25)))
        .forPortions(portion("a", litres(1)))
        .meeting(target(around(CALCIUM, mgPerL(calcium), 1).withWeight(1)))
        .problem();
  }

  /** Each portion has a rest of its own: 92 and 0 mg/L, in steps of a fifth. */
  @Test
  void everyPortionIsFilledByItself() {
    Problem problem =
        Plan.from(Invented.hard(), Water.pure())
            .using(Shelf.of().meteringWaterTo(litres(2)))
            .forPortions(portion("a", litres(10)), portion("b", litres(10)))
            .meeting("a", target(around(CALCIUM, mgPerL(0.5 * 92), 1).withWeight(1)))
            .meeting("b", target(around(CALCIUM, mgPerL(0.33 * 92), 1).withWeight(1)))
            .problem();
    assertRounded(new double[] {0.4, 0.6, 0.4, 0.6}, problem, 0.45, 0.55, 0.33, 0.67);
  }

  private static Problem hardAndPure(double step, double share) {
    return Plan.from(Invented.hard(), Water.pure())
        .using(Shelf.of().meteringWaterTo(litres(step)))
        .forPortions(portion("a", litres(1)))
        .meeting(target(around(CALCIUM, mgPerL(share * 92), 1).withWeight(1)))
        .problem();
  }

  /** In steps of 0.3 L: the smaller share becomes 0.3 or 0.6, and the other is the rest. */
  @Test
  void theRestNeedNotBeAWholeStep() {
    assertRounded(new double[] {0.7, 0.3}, hardAndPure(0.3, 0.65), 0.65, 0.35);
    assertRounded(new double[] {0.3, 0.7}, hardAndPure(0.3, 0.35), 0.35, 0.65);
    // Of equal shares the first is the rest: the second may be 0.4 or 0.8, and not the first.
    assertRounded(new double[] {0.6, 0.4}, hardAndPure(0.4, 0.5), 0.5, 0.5);
  }

  /**
   * 4 x + y at least 4.95 and 6 x + y at most 6.9, in whole steps: 0.975 and 1.05 have no neighbour
   * that keeps both, and none one step further: 1 and 1 make 7, and with no x at all 5 are needed.
   * Half a step is 2.5 and 3.5. By all, three quarters or half of that the limits meet nowhere; by
   * a quarter at 0.225 and 4.675, with 0 and 5 beside them.
   */
  @Test
  void theSearchKeepsAwayByPartsOfHalfAStep() {
    Problem problem =
        with(
                Shelf.of(calcium(1).pricedPerKilogram(1), magnesium(1).pricedPerKilogram(9)),
                atLeast(weighed(4, 1), 4.95).scaledBy(1),
                atMost(weighed(6, 1), 6.9).scaledBy(1))
            .problem();
    Point exact = new Search(problem).best().orElseThrow();
    assertArrayEquals(new double[] {1, 0.975, 1.05}, exact.x(), 1e-6);
    Point point = new Rounding(problem).round(exact).orElseThrow();
    assertArrayEquals(new double[] {1, 0, 5}, point.x(), 1e-6);
  }

  /** The tangent holds on one side of the dose only; on the other the aim is met against it. */
  @Test
  void bothEndsOfTheNeighboursAreLookedAt() {
    Problem below = oneDose(x -> x > 1.5 ? x : 2.1, 2.1);
    assertRounded(new double[] {1, 1}, below, 1, 1.6);
    Problem above = oneDose(x -> x < 1.5 ? x : 0.9, 0.9);
    assertRounded(new double[] {1, 2}, above, 1, 1.4);
    // 4e-7 worse and cheaper, whatever the tangent shows: that is equally good.
    Problem cheaper = oneDose(x -> x > 1.5 ? x : 2.2 + 4e-7, 2.1);
    assertRounded(new double[] {1, 1}, cheaper, 1, 1.6);
  }

  private static Problem oneDose(DoubleUnaryOperator f, double aim) {
    return with(Shelf.of(calcium(1)))
        .and(
            made(water -> f.applyAsDouble(millimoles(water))),
            around(CALCIUM, mgPerL(aim), 1).withWeight(1))
        .problem();
  }

  /**
   * At 1.3 and 1.3 a limit is just kept, and the tangent shows it broken by 3 at 2 and 1, which is
   * what is wished for. As it is wrong by 3.5 at 2 and 2, that does not count.
   */
  @Test
  void aLimitThatOnlyTheTangentShowsBrokenIsNoHindrance() {
    Problem problem =
        with(Shelf.of(calcium(1), magnesium(1)), calciumNear(2), magnesiumNear(1))
            .and(
                made(
                    water -> {
                      double x = millimoles(water) - 1.3;
                      double y = millimolesOfMagnesium(water) - 1.3;
                      return Math.abs(x) + Math.abs(y) < 0.01 ? 10 + 4.5 * x + 0.5 * y : 9;
                    }),
                atMost(CALCIUM, mgPerL(10)).scaledBy(1))
            .problem();
    assertRounded(new double[] {1, 2, 1}, problem, 1, 1.3, 1.3);
  }

  /**
   * The nearest of each dose, 1 and 2, meets the aim; by the tangent it is no better than others.
   */
  @Test
  void theNearestNeighbourIsLookedAt() {
    Problem problem =
        with(Shelf.of(calcium(1), magnesium(1)))
            .and(
                made(
                    water -> {
                      double x = millimoles(water);
                      double y = millimolesOfMagnesium(water);
                      return Math.abs(x - 1) < 1e-6 && Math.abs(y - 2) < 1e-6
                          ? 9
                          : 5 + 0.1 * x - 0.1 * y;
                    }),
                around(CALCIUM, mgPerL(9), 1).withWeight(1))
            .problem();
    assertRounded(new double[] {1, 1, 2}, problem, 1, 1.3, 1.7);
  }

  private static Problem crowded(int[] asked) {
    Shelf shelf = Shelf.of();
    List<ShelfItem> items =
        List.of(
            calciumChloride(),
            gypsum(),
            epsom(),
            item(Salt.MAGNESIUM_CHLORIDE_HEXAHYDRATE),
            item(Salt.CALCIUM_CHLORIDE_ANHYDROUS),
            item(Salt.SODIUM_CHLORIDE),
            item(Salt.POTASSIUM_CHLORIDE),
            item(Salt.SODIUM_DIHYDROGEN_PHOSPHATE));
    for (ShelfItem item : items) {
      shelf = shelf.with(item.resolvedTo(g(0.05)));
    }
    return Plan.from(Water.pure())
        .using(shelf)
        .forPortions(portion("a", litres(1)))
        .and(
            made(
                water -> {
                  asked[0]++;
                  return water.calcium().number() + 0.5 * water.magnesium().number();
                }),
            around(CALCIUM, mgPerL(120), 3).withWeight(1))
        .and(
            made(
                water -> {
                  asked[0]++;
                  return water.sodium().number() + 0.7 * water.potassium().number();
                }),
            atMost(CALCIUM, mgPerL(75)))
        .and(
            made(water -> water.chloride().number() + 0.3 * water.sulfate().number()),
            around(CALCIUM, mgPerL(260), 7).withWeight(2))
        .problem();
  }

  /** All 256 neighbours of eight doses, tried one by one; few of them are asked of the liquid. */
  @Test
  void noNeighbourOfEightDosesIsBetterAndFewAreAsked() {
    Random random = new Random(8);
    for (int n = 0; n < 6; n++) {
      int[] asked = {0};
      Problem problem = crowded(asked);
      Variables variables = problem.variables();
      double[] x = variables.plainStart();
      for (int i = 1; i < x.length; i++) {
        x[i] = 1.2 * random.nextDouble();
      }
      double least = Double.POSITIVE_INFINITY;
      for (int mask = 0; mask < 256; mask++) {
        double[] y = x.clone();
        for (int i = 1; i < x.length; i++) {
          double step = variables.step(i);
          y[i] = step * (Math.floor(x[i] / step) + (mask >> (i - 1) & 1));
        }
        Problem.Worth worth = problem.worth(y);
        if (worth.violation() <= Search.KEPT) {
          least = Math.min(least, worth.weighted());
        }
      }
      Point exact = new Point(x, problem.worth(x));
      asked[0] = 0;
      Optional<Point> point = new Rounding(problem).round(exact);
      if (least < Double.POSITIVE_INFINITY) {
        assertEquals(least, point.orElseThrow().worth().weighted(), 1e-6, "problem " + n);
        // Two liquids each, and their slopes along nine variables.
        assertTrue(asked[0] < 2 * (10 + 40), asked[0] + " asked of problem " + n);
      }
    }
  }
}
