package org.brewchem.plan;

import static org.brewchem.figure.Constraint.around;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.figure.Constraint.exactly;
import static org.brewchem.plan.SmallProblems.target;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.SULFATE;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.brewchem.figure.Constraint;
import org.brewchem.treatment.Blends;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Blends of hard water, 92 mg/L of calcium, with pure water, worked out by hand. */
class BlendOfWatersTest {

  private static Blends<Water> both() {
    return Blends.of(Invented.hard(), Water.pure()).called("well", "osmosis");
  }

  private static BlendPlan.Request<Water> request(Blends<Water> blends, Constraint... constraints) {
    return BlendPlan.of(blends, hL(10)).meeting(target(constraints));
  }

  @Test
  void aQuarterOfTheHardWaterBringsAQuarterOfItsCalcium() {
    BlendPlan<Water> plan = request(both(), exactly(CALCIUM, mgPerL(23))).solve();
    assertEquals(Plan.Outcome.FOUND, plan.outcome());
    assertEquals(2, plan.parts().size());
    assertEquals("blend: 250.0 L of well", plan.parts().get(0).toString());
    assertEquals("blend: 750.0 L of osmosis", plan.parts().get(1).toString());
    assertEquals(List.of(0.25, 0.75), rounded(plan.blend().shares()));
    assertEquals(23, plan.blend().after().calcium().number(), 1e-6);
    assertEquals(0, plan.weightedSum());
    assertEquals(0, plan.weightedSumBeforeRounding());
    assertEquals(List.of(), plan.conflicts());
    assertEquals(Optional.empty(), plan.nearest());
    assertEquals("blend", plan.reached().get(0).liquid());
  }

  private static List<Double> rounded(List<Double> shares) {
    return shares.stream().map(share -> Math.rint(share * 1e6) / 1e6).toList();
  }

  /** In steps of 300 L: 300 and 700 L are 27.6 mg/L, 4.6 off the aim in tenths of 2.3. */
  @Test
  void volumesAreMeteredInSteps() {
    BlendPlan<Water> plan =
        request(both(), around(CALCIUM, mgPerL(23), 2.3).withWeight(1))
            .meteringTo(litres(300))
            .solve();
    assertEquals("blend: 300.0 L of well", plan.parts().get(0).toString());
    assertEquals("blend: 700.0 L of osmosis", plan.parts().get(1).toString());
    assertEquals(2, plan.weightedSum(), 1e-6);
    assertEquals(0, plan.weightedSumBeforeRounding(), 1e-6);
    List<String> lines = new ArrayList<>();
    plan.parts().forEach(part -> lines.add(part.toString()));
    plan.reached().forEach(reached -> lines.add(reached.toString()));
    lines.add("weighted sum 2.0000");
    lines.add(Plan.PROPOSAL.toString());
    assertEquals(String.join("\n", lines), plan.toString());
    assertTrue(plan.explain().holds());
    assertTrue(plan.explain().toString().contains("blend: 300.0 L of well"));
    assertEquals(Plan.PROPOSAL, plan.cautions().get(0));
  }

  /** At least 0.4 of the well are 36.8 mg/L; 20 are wished for, and 30 are the most. */
  @Test
  void limitsOfSharesAreNamedAndTheNearestBlendIsAtThem() {
    BlendPlan<Water> plan =
        request(
                both().atLeast("well", 0.4),
                atMost(CALCIUM, mgPerL(30)),
                around(SULFATE, mgPerL(9), 4.5).withWeight(1))
            .solve();
    assertEquals(Plan.Outcome.IMPOSSIBLE, plan.outcome());
    Conflict conflict = plan.conflicts().get(0);
    assertEquals(
        List.of(
            "calcium of blend: at most 30.0 mg/L",
            "well: at least 40.0 % of the blend",
            "the parts make up the blend"),
        conflict.members());
    assertTrue(conflict.isProved());
    BlendPlan<Water> nearest = plan.nearest().orElseThrow();
    assertEquals(List.of(0.4, 0.6), rounded(nearest.blend().shares()));
    // Calcium 6.8 too much of 30, sulfate 45 x 0.4 - 9 of 4.5.
    assertEquals(6.8 / 30 + 2, nearest.weightedSum(), 1e-6);
    assertEquals("no blend exists\n" + conflict + "\nnearest:\n" + nearest, plan.toString());
    assertTrue(plan.cautions().containsAll(nearest.cautions()));
    List<Executable> all =
        List.of(
            plan::parts,
            plan::blend,
            plan::reached,
            plan::weightedSum,
            plan::weightedSumBeforeRounding,
            plan::explain);
    for (Executable one : all) {
      assertThrows(IllegalStateException.class, one);
    }
  }

  @Test
  void aShareOfAtMostSoMuchIsNamed() {
    BlendPlan<Water> plan =
        request(both().atMost("osmosis", 0.5), atMost(CALCIUM, mgPerL(30))).solve();
    assertEquals(
        List.of(
            "calcium of blend: at most 30.0 mg/L",
            "osmosis: at most 50.0 % of the blend",
            "the parts make up the blend"),
        plan.conflicts().get(0).members());
    assertEquals(List.of(0.5, 0.5), rounded(plan.nearest().orElseThrow().blend().shares()));
  }

  /** Any share between a third and a little more than a half will do. */
  @Test
  void aBandThatIsMetCostsNothing() {
    BlendPlan<Water> plan = request(both(), between(CALCIUM, mgPerL(92 / 3.0), mgPerL(50))).solve();
    double calcium = plan.blend().after().calcium().number();
    assertTrue(calcium >= 92 / 3.0 && calcium <= 50, "calcium " + calcium);
    assertArrayEquals(new double[] {0}, new double[] {plan.weightedSum()});
  }
}
