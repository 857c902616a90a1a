package org.brewchem.plan;

import static org.brewchem.figure.Constraint.around;
import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.plan.SmallProblems.CA;
import static org.brewchem.plan.SmallProblems.CL;
import static org.brewchem.plan.SmallProblems.SO4;
import static org.brewchem.plan.SmallProblems.calciumChloride;
import static org.brewchem.plan.SmallProblems.epsom;
import static org.brewchem.plan.SmallProblems.made;
import static org.brewchem.plan.SmallProblems.millimoles;
import static org.brewchem.plan.SmallProblems.millimolesOfMagnesium;
import static org.brewchem.plan.SmallProblems.target;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.figure.Constraint;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;

/** Problems as straight ones at a point: slopes by hand, of 1 + the doses x and y in mmol/L. */
class TangentTest {

  private static Plan.Request salts(Constraint... constraints) {
    Plan.Request request =
        Plan.from(Water.pure())
            .using(Shelf.of(calciumChloride(), epsom()))
            .forPortions(portion("a", litres(1)));
    for (Constraint constraint : constraints) {
      request = request.meeting(target(constraint));
    }
    return request;
  }

  private static Tangent at(Problem problem, double... x) {
    return new Tangent(problem, x, problem.worth(x));
  }

  /** Calcium less its limit times the water, in scales of 10 mg/L. */
  @Test
  void limitsOfTotalsAreMultipliedOut() {
    Problem problem = salts(between(CALCIUM, mgPerL(50), mgPerL(70))).problem();
    double[] x = {1, 0.3, 0.4};
    Tangent tangent = at(problem, x);
    assertSame(x, tangent.at());
    assertEquals(2, tangent.rows().size());
    assertEquals(0, tangent.softs().size());
    Tangent.Row least = tangent.rows().get(0);
    assertTrue(least.isLower());
    assertTrue(least.isExact());
    assertEquals(0, least.goal());
    assertEquals(0, least.limit());
    assertArrayEquals(new double[] {-5, CA / 10, 0}, least.slopes(), 1e-4);
    Tangent.Row most = tangent.rows().get(1);
    assertFalse(most.isLower());
    assertTrue(most.isExact());
    assertEquals(0, most.limit(), 0);
    assertArrayEquals(new double[] {7, -CA / 10, 0}, most.slopes(), 1e-4);
    // At 0.5 mmol/L calcium is 50 - 20.039 too little, at 2 it is 80.156 - 70 too much.
    assertEquals(5 - CA / 20, tangent.violation(new double[] {1, 0.5, 0}), 1e-4);
    assertEquals(CA / 5 - 7, tangent.violation(new double[] {1, 2, 0}), 1e-4);
    assertEquals(0, tangent.violation(new double[] {1, 1.5, 0}));
    assertEquals(0, tangent.weighted(x));
    assertEquals(1, at(salts(atMost(CALCIUM, mgPerL(70))).problem(), x).rows().size());
    assertEquals(1, at(salts(atLeast(CALCIUM, mgPerL(70))).problem(), x).rows().size());
  }

  /** SO4 y - 2 x 2 CL x, by the chloride at the point times the scale of half the band. */
  @Test
  void limitsOfARatioAreMultipliedOutWithItsDenominator() {
    Problem problem = salts(between(SULFATE_TO_CHLORIDE, 1.0, 2.0)).problem();
    Tangent tangent = at(problem, 1, 0.5, 0.4);
    Tangent.Row least = tangent.rows().get(0);
    double size = 2 * CL * 0.5 * 0.5;
    assertTrue(least.isExact());
    assertArrayEquals(new double[] {0, -2 * CL / size, SO4 / size}, least.slopes(), 1e-4);
    assertArrayEquals(
        new double[] {0, 4 * CL / size, -SO4 / size}, tangent.rows().get(1).slopes(), 1e-4);
    assertEquals(0, least.limit());
    // Without any chloride the denominator counts as a thousandth.
    Tangent bare = at(problem, 1, 0, 0.4);
    assertEquals(SO4 / (1e-3 * 0.5), bare.rows().get(0).slopes()[2], 1);
  }

  /** 3 x x + y, at least 10 with a scale of 2: slopes 6 x and 1, halved. */
  @Test
  void limitsOfWhatIsCurvedAreThoseOfItsSlopes() {
    Problem problem =
        salts()
            .and(
                made(w -> 3 * Math.pow(millimoles(w), 2) + millimolesOfMagnesium(w)),
                between(CALCIUM, mgPerL(10), mgPerL(14)))
            .problem();
    Tangent tangent = at(problem, 1, 2, 1);
    Tangent.Row least = tangent.rows().get(0);
    assertFalse(least.isExact());
    assertEquals(6, least.slopes()[1], 1e-3);
    assertEquals(0.5, least.slopes()[2], 1e-3);
    // The value is 13: at the point 1.5 scales of slack below, 0.5 above.
    double[] x = {1, 2, 1};
    assertEquals(1.5, Tangent.dot(least.slopes(), x) - least.limit(), 1e-6);
    Tangent.Row most = tangent.rows().get(1);
    assertEquals(-6, most.slopes()[1], 1e-3);
    assertEquals(0.5, Tangent.dot(most.slopes(), x) - most.limit(), 1e-6);
    assertFalse(most.isLower());
    // To 2.2: 13 + 12 x 0.2 is 1.4 more than 14, or 0.7.
    assertEquals(0.7, tangent.violation(new double[] {1, 2.2, 1}), 1e-3);
    assertEquals(0.9, tangent.violation(new double[] {1, 1.6, 1}), 1e-3);
  }

  /** A limit of the pH is the charge at that pH over the capacity there: 0 where it is reached. */
  @Test
  void aLimitOfThePHIsTheChargeThere() {
    Problem problem =
        Plan.from(Invented.hard())
            .using(Shelf.of(Invented.lactic()))
            .forPortions(portion("a", litres(1)))
            .meeting(target(between(PH_VALUE, pH(5.5), pH(6.5))))
            .problem();
    double[] reached = new Search(problem).best().orElseThrow().x();
    Tangent there = at(problem, reached);
    Tangent.Row most = there.rows().get(1);
    assertFalse(most.isExact());
    assertFalse(most.isLower());
    assertEquals(0, Tangent.dot(most.slopes(), reached) - most.limit(), 1e-6);
    assertTrue(most.slopes()[1] > 0, "acid lowers the pH");
    assertTrue(there.rows().get(0).slopes()[1] < 0);
    assertTrue(there.rows().get(0).isLower());
    double[] none = {1, 0};
    Tangent bare = at(problem, none);
    Site site = problem.site(0);
    site.set(none);
    double scales = site.chargeAt(6.5) / (site.capacityAt(6.5) * 0.5);
    assertTrue(scales > 0, "the water has more");
    assertEquals(scales, bare.violation(none), 1e-6);
    // From far off, the step that the row asks for is the charge that is missing: right but for
    // activities, where that of the slope of the pH itself would not be.
    double acid =
        (bare.rows().get(1).limit() - bare.rows().get(1).slopes()[0])
            / bare.rows().get(1).slopes()[1];
    assertEquals(reached[1], acid, 0.03 * reached[1]);
  }

  @Test
  void aWeightedGoalHasItsNumberAndItsSlopes() {
    Problem problem =
        salts(around(CALCIUM, mgPerL(50), 5).withWeight(3))
            .and(
                made(w -> 3 * Math.pow(millimoles(w), 2) + millimolesOfMagnesium(w)),
                between(CALCIUM, mgPerL(10), mgPerL(14)).withWeight(4))
            .problem();
    Tangent tangent = at(problem, 1, 2, 1);
    assertEquals(0, tangent.rows().size());
    Tangent.Soft calcium = tangent.softs().get(0);
    assertEquals(0, calcium.goal());
    assertEquals(2 * CA, calcium.number(), 1e-4);
    assertEquals(CA, calcium.slopes()[1], 1e-4);
    Tangent.Soft curved = tangent.softs().get(1);
    assertEquals(1, curved.goal());
    assertEquals(13, curved.number(), 1e-6);
    assertEquals(12, curved.slopes()[1], 1e-3);
    assertEquals(1, curved.slopes()[2], 1e-3);
    // Calcium is 80.156 - 50 off by 5, thrice; 13 is within its band. At 2.5 it is 19, 5 beyond.
    assertEquals(3 * (2 * CA - 50) / 5, tangent.weighted(new double[] {1, 2, 1}), 1e-4);
    assertEquals(
        3 * (2.5 * CA - 50) / 5 + 4 * 5 / 2.0, tangent.weighted(new double[] {1, 2.5, 1}), 5e-3);
    assertEquals(0, tangent.violation(new double[] {1, 2, 1}));
  }

  /** ln (SO4 y / 2 CL x) has the slopes -1 / x and 1 / y. */
  @Test
  void aWeightedRatioHasTheSlopesOfItsLogarithm() {
    Constraint ratio = around(SULFATE_TO_CHLORIDE, 2.0, 0.5).withWeight(1).scaledBy(0.1);
    Problem problem = salts(ratio).problem();
    Tangent.Soft soft = at(problem, 1, 0.5, 0.4).softs().get(0);
    assertEquals(Math.log(SO4 * 0.4 / (2 * CL * 0.5)), soft.number(), 1e-6);
    assertArrayEquals(new double[] {0, -2, 2.5}, soft.slopes(), 1e-4);
    // Of a liquid made of the water the ratio itself is asked, and its slopes divided.
    Problem asked = salts().and(Downstream.of("same", water -> water), ratio).problem();
    assertTrue(asked.figure(0).isAsked());
    Tangent.Soft own = at(asked, 1, 0.5, 0.4).softs().get(0);
    assertEquals(soft.number(), own.number(), 1e-6);
    assertEquals(-2, own.slopes()[1], 1e-3);
    assertEquals(2.5, own.slopes()[2], 1e-3);
  }

  /** The tangent is that of its own point, whatever was asked of the problem in between. */
  @Test
  void aTangentIsThatOfItsPoint() {
    Problem problem =
        salts(around(CALCIUM, mgPerL(50), 5).withWeight(1))
            .and(made(w -> 3 * Math.pow(millimoles(w), 2)), atMost(CALCIUM, mgPerL(10)))
            .problem();
    double[] x = {1, 2, 1};
    Problem.Worth worth = problem.worth(x);
    problem.worth(new double[] {1, 5, 0});
    Tangent tangent = new Tangent(problem, x, worth);
    assertEquals(-1.2, tangent.rows().get(0).slopes()[1], 1e-3);
    assertEquals(-2 * CA, tangent.softs().get(0).slopes()[0], 1e-3);
  }

  @Test
  void aHardRatioOfWhatIsCurvedIsNotExact() {
    Problem problem =
        Plan.from(Invented.hard())
            .using(Shelf.of(epsom()))
            .forPortions(portion("a", litres(1)))
            .meeting(target(atLeast(SmallProblems.sulfateToAlkalinity(), 0.5)))
            .problem();
    double[] none = {1, 0};
    Tangent tangent = at(problem, none);
    assertEquals(1, tangent.rows().size());
    assertFalse(tangent.rows().get(0).isExact());
    // 45 of sulfate to 215 of alkalinity; the ratio lacks 0.5 - 0.209, counted by 0.5.
    assertEquals((0.5 - 45.0 / 215) / 0.5, tangent.violation(none), 1e-3);
  }
}
