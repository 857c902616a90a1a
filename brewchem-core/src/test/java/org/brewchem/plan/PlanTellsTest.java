package org.brewchem.plan;

import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.figure.Constraint.exactly;
import static org.brewchem.plan.SmallProblems.CA;
import static org.brewchem.plan.SmallProblems.CALCIUM_CHLORIDE;
import static org.brewchem.plan.SmallProblems.calciumChloride;
import static org.brewchem.plan.SmallProblems.target;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.MAGNESIUM;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Notice;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.plan.Plan.Outcome;
import org.brewchem.substance.Acid;
import org.brewchem.treatment.Blends;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;

/** What small plans print, what they lose by rounding, and what they say of chances and dangers. */
class PlanTellsTest {

  private static Plan.Request pure(ShelfItem... items) {
    return Plan.from(Water.pure())
        .using(Shelf.of(items).weighingTo(g(1)))
        .forPortions(portion("all", hL(1)));
  }

  @Test
  void aPlanPrintsAllThatIsMeasuredOutAndReached() {
    Plan plan = pure(calciumChloride()).meeting(target(atLeast(CALCIUM, mgPerL(CA)))).solve();
    // A millimole in 100 L are 14.7 g, and 15 are weighed.
    List<String> lines = new ArrayList<>();
    lines.add("all: 100.0 L of source");
    lines.add("all: 15.0 g of " + calciumChloride().name());
    lines.add(plan.reached().get(0).toString());
    lines.add("weighted sum 0.0000");
    lines.add(Plan.PROPOSAL.toString());
    assertEquals(String.join("\n", lines), plan.toString());
    assertEquals(Plan.PROPOSAL, plan.cautions().get(0));
    assertTrue(plan.cautions().containsAll(plan.water().cautions()));
    assertTrue(plan.cautions().size() > 1, "a dose has cautions");
    assertTrue(plan.notices().containsAll(plan.water().notices()));
    assertTrue(plan.notices().containsAll(plan.reached().get(0).answer().notices()));
  }

  @Test
  void whereThereIsNoneTheConflictsAndTheNearestArePrinted() {
    Plan plan =
        pure(calciumChloride().atLeast(g(15))).meeting(target(atMost(CALCIUM, mgPerL(5)))).solve();
    assertEquals(
        "no plan exists\n"
            + plan.conflicts().get(0)
            + "\nnearest:\n"
            + plan.nearest().orElseThrow(),
        plan.toString());
    assertTrue(plan.cautions().containsAll(plan.nearest().orElseThrow().cautions()));
    assertTrue(plan.cautions().size() > 1, "the nearest plan has cautions");
    // What curves proves nothing, and by its slope at 0 no dose that can be thought of is enough.
    Plan none =
        pure(calciumChloride())
            .and(Downstream.of("same", water -> water), atMost(CALCIUM, mgPerL(0)).scaledBy(1))
            .and(
                SmallProblems.made(water -> Math.pow(SmallProblems.millimoles(water), 2)),
                atLeast(CALCIUM, mgPerL(4)))
            .solve();
    assertEquals(Outcome.NONE_FOUND, none.outcome());
    assertTrue(
        none.toString().startsWith("no plan found\nno plan was found that keeps together: "));
  }

  /** Calcium of 3 to 3.1 mmol/L by steps of 1 mmol/L: only without a scale. */
  @Test
  void whatCannotBeWeighedIsSaid() {
    ShelfItem coarse = calciumChloride().resolvedTo(g(CALCIUM_CHLORIDE / 10));
    Plan plan =
        pure(coarse).meeting(target(between(CALCIUM, mgPerL(3.05 * CA), mgPerL(3.1 * CA)))).solve();
    assertEquals(Outcome.NOT_TO_BE_WEIGHED, plan.outcome());
    Notice notice = plan.notices().get(0);
    assertEquals(PlanCode.NOT_TO_BE_WEIGHED, notice.code());
    assertEquals(
        "no doses were found that can be measured out and keep every limit; those given are not"
            + " rounded. Widen a limit, or measure more finely",
        notice.text());
    assertEquals(3.05 * CA, plan.water().calcium().number(), 1e-4);
  }

  /** A mmol/L of salt is wished for, and no chloride: 1 off before rounding. Steps of 0.4 lose. */
  @Test
  void whatRoundingLosesIsTheDifferenceOfTheSums() {
    Plan plan =
        pure(calciumChloride().resolvedTo(g(0.4 * CALCIUM_CHLORIDE / 10)))
            .meeting(
                target(
                    exactly(CALCIUM, mgPerL(CA)).withWeight(3).scaledBy(CA),
                    atMost(CHLORIDE, mgPerL(0)).withWeight(1).scaledBy(2 * SmallProblems.CL)))
            .solve();
    assertEquals(1, plan.weightedSumBeforeRounding(), 1e-5);
    // 1.2 mmol/L: 0.6 and 1.2; 0.8 mmol/L: 0.6 and 0.8.
    assertEquals(1.4, plan.weightedSum(), 1e-5);
    assertEquals(0.4, plan.lostByRounding(), 1e-5);
    Blends<Water> both = Blends.of(Invented.hard(), Water.pure()).called("well", "osmosis");
    BlendPlan<Water> blend =
        BlendPlan.of(both, hL(10))
            .meeting(target(exactly(CALCIUM, mgPerL(102)).withWeight(1).scaledBy(10)))
            .solve();
    assertEquals(1, blend.weightedSumBeforeRounding(), 1e-6);
    assertEquals(blend.reached().get(0).answer().notices(), blend.notices());
  }

  /** Only of the dearest by the sum the price decides; a millionth is nothing. */
  @Test
  void whatCostsNoSumIsNotTheCostliestForItsPrice() {
    Plan plan =
        pure(calciumChloride().pricedPerKilogram(10), SmallProblems.epsom().pricedPerKilogram(90))
            .meeting(
                target(
                    atMost(CHLORIDE, mgPerL(0)).withWeight(1).scaledBy(1),
                    atLeast(CALCIUM, mgPerL(CA)),
                    atLeast(MAGNESIUM, mgPerL(50))))
            .solve();
    assertEquals(CALCIUM, plan.costliest().orElseThrow().constraint().figure());
    assertTrue(plan.costs().get(2).economy() > plan.costs().get(1).economy());
  }

  /**
   * Calcium 92 with u 3: at most 95 is one of it above, at most 200 surely, at least 89 as well.
   */
  @Test
  void theChanceOfOneLimitIsThatOfItsSide() {
    assertEquals(0.841345, chance(atMost(CALCIUM, mgPerL(95))), 1e-5);
    assertEquals(0.841345, chance(atLeast(CALCIUM, mgPerL(89))), 1e-5);
    assertEquals(1, chance(atMost(CALCIUM, mgPerL(200))), 1e-9);
    assertTrue(doubtful(atMost(CALCIUM, mgPerL(95))));
    assertTrue(doubtful(atLeast(CALCIUM, mgPerL(89))));
    // Twice the standard uncertainty is the interval.
    assertTrue(doubtful(atMost(CALCIUM, mgPerL(97.9))));
    assertFalse(doubtful(atMost(CALCIUM, mgPerL(98.1))));
    assertTrue(doubtful(atLeast(CALCIUM, mgPerL(86.1))));
    assertFalse(doubtful(atLeast(CALCIUM, mgPerL(85.9))));
  }

  private static Plan hard(Constraint constraint) {
    return Plan.from(Invented.hard()).meeting(target(constraint)).solve();
  }

  private static double chance(Constraint constraint) {
    return hard(constraint).reached().get(0).chance().orElseThrow();
  }

  private static boolean doubtful(Constraint constraint) {
    return hard(constraint).notices().stream().anyMatch(n -> n.code() == PlanCode.AT_THE_LIMIT);
  }

  @Test
  void aCostPrintsItsConstraintAndBothNumbers() {
    ConstraintCost cost = new ConstraintCost(atMost(CALCIUM, mgPerL(5)), "all", 0.5, -2);
    assertEquals(
        "all, " + cost.constraint() + ": weighted sum 0.500, cost or mass -2.00", cost.toString());
  }

  @Test
  void aLiquidDownstreamTellsItsNameItsPortionAndItsKind() {
    Grist grist = Grist.of(kg(100), Malt.stated("invented malt", "ours", pH(5.7), 0.02, 43, 2));
    Downstream mash = Downstream.mash("mash", grist, hL(3));
    assertEquals("mash", mash.name());
    assertEquals(Optional.empty(), mash.portion());
    assertEquals(Optional.of("strike"), mash.madeOf("strike").portion());
    assertEquals("mash of strike", mash.madeOf("strike").toString());
    assertEquals("mash", mash.toString());
    assertTrue(mash.isMash());
    assertTrue(mash.madeOf("strike").isMash());
    assertTrue(Downstream.mashKeepingCarbonDioxide("mash", grist, hL(3)).isMash());
    assertFalse(mash.isBeer());
    Beer beer = Beer.of(pH(4.4), acidity(gPerL(2), Acid.LACTIC, pH(8.2)));
    assertTrue(Downstream.beer("tank", beer, hL(1)).isBeer());
    assertFalse(Downstream.beer("tank", beer, hL(1)).isMash());
    Downstream same = Downstream.of("same", water -> water);
    assertFalse(same.isMash());
    assertFalse(same.isBeer());
    assertThrows(IllegalArgumentException.class, () -> Downstream.mash("m", grist, hL(0)));
    assertThrows(
        IllegalArgumentException.class,
        () -> Downstream.mashKeepingCarbonDioxide("m", grist, hL(0)));
    assertThrows(IllegalArgumentException.class, () -> Downstream.beer("tank", beer, litres(0)));
    assertThrows(IllegalArgumentException.class, () -> mash.madeOf(" "));
  }
}
