package org.brewchem.plan;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.brewchem.beer.Beer;
import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Target;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Ion;
import org.brewchem.treatment.Blends;
import org.brewchem.treatment.ReachableBlends;
import org.brewchem.water.WaterFigures;
import org.junit.jupiter.api.Test;

/** Blends of invented beers that meet constraints, and the nearest where none does. */
class BlendPlanTest {

  private static final Figure<TitratableAcidity> ACIDITY = Figures.titratableAcidity(pH(8.2));
  private static final int STEPS = 40;

  private static TitratableAcidity asLactic(double gramsPerLitre) {
    return acidity(gPerL(gramsPerLitre), LACTIC, pH(8.2));
  }

  private static Beer beer(
      double pH, double acidity, double calcium, double sulfate, double chloride) {
    return Beer.of(pH(pH), asLactic(acidity))
        .withStandardUncertaintyOfPH(0.02)
        .withStandardUncertaintyOfAcidity(asLactic(0.05))
        .with(Ion.CALCIUM, mgPerL(calcium), mgPerL(2))
        .with(Ion.SULFATE, mgPerL(sulfate), mgPerL(3))
        .with(Ion.CHLORIDE, mgPerL(chloride), mgPerL(3));
  }

  private static Blends<Beer> three() {
    return Blends.of(
            beer(4.4, 1.7, 60, 150, 120), beer(3.45, 6.5, 90, 60, 200), beer(4.05, 2.9, 20, 90, 50))
        .called("ale", "sour", "old");
  }

  private static BlendPlan<Beer> plan(Blends<Beer> blends, Constraint... constraints) {
    Target target = Target.named("invented");
    for (Constraint constraint : constraints) {
      target = target.with(constraint);
    }
    return BlendPlan.of(blends, hL(20)).meeting(target).solve();
  }

  @Test
  void constraintsThatABlendMeetsGiveItsParts() {
    Blends<Beer> blends = three().living("sour").atMost("sour", hL(8), hL(20));
    BlendPlan<Beer> plan =
        BlendPlan.of(blends, hL(20))
            .meteringTo(litres(10))
            .meeting(
                Target.named("invented")
                    .with(Constraint.between(ACIDITY, asLactic(2.8), asLactic(3.2)))
                    .with(Constraint.between(Figures.SULFATE_TO_CHLORIDE, 0.9, 1.1))
                    .with(Constraint.atMost(Figures.PH_VALUE, pH(4.1)))
                    .with(Constraint.around(Figures.CALCIUM, mgPerL(55), 0.5).withWeight(1)))
            .solve();
    assertEquals(Plan.Outcome.FOUND, plan.outcome());
    double all = 0;
    for (PlannedAmount part : plan.parts()) {
      double litres = part.volume().orElseThrow().inLitres();
      assertEquals(0, Math.IEEEremainder(litres, 10), 1e-6, part.toString());
      all += litres;
    }
    assertEquals(2000, all, 1e-6);
    Beer blend = plan.blend().after();
    for (Reached reached : plan.reached()) {
      assertEquals(
          blend.answer(reached.constraint().figure()).number(), reached.answer().number(), 1e-9);
      if (reached.constraint().weight().isEmpty()) {
        assertEquals(0, reached.constraint().excess(reached.answer().number()), 1e-9);
      }
    }
    assertTrue(plan.explain().holds());
    assertTrue(plan.weightedSumBeforeRounding() <= plan.weightedSum() + 1e-6);
    assertTrue(plan.toString().startsWith("blend: "), plan.toString());
    assertTrue(
        plan.cautions().stream()
            .anyMatch(
                caution ->
                    caution.hazard() == Hazard.REFERMENTATION
                        && caution.text().startsWith("sour is living")));
    assertFalse(plan.notices().isEmpty());
    assertTrue(plan.nearest().isEmpty());
  }

  /**
   * 300 random pairs of pH and acidity at level pairs: a blend is found where the reachable set has
   * them, and none where it has not.
   */
  @Test
  void theSearchReachesWhatIsReachableAndNothingElse() {
    Blends<Beer> blends = three().atMost("sour", 0.7).atLeast("ale", 0.1);
    ReachableBlends<Beer, TitratableAcidity, PH> reachable =
        blends.reachable(ACIDITY, Figures.PH_VALUE);
    Random random = new Random(20261127);
    List<String> faults = new ArrayList<>();
    int inside = 0;
    for (int n = 0; n < 300; n++) {
      double wanted = 1.7 + 4 * random.nextDouble();
      ReachableBlends.Range range = reachable.ofSecondAt(asLactic(wanted)).orElse(null);
      double pH =
          range == null
              ? 4
              : range.least()
                  + (range.greatest() - range.least()) * (1.6 * random.nextDouble() - 0.3);
      boolean has = reachable.contains(asLactic(wanted), pH(pH));
      inside += has ? 1 : 0;
      BlendPlan<Beer> plan =
          plan(
              blends,
              Constraint.around(ACIDITY, asLactic(wanted), 1e-5),
              Constraint.around(Figures.PH_VALUE, pH(pH), 1e-5));
      if (has != (plan.outcome() == Plan.Outcome.FOUND)) {
        faults.add(wanted + " " + pH + " " + has + " " + plan.outcome() + " " + range);
      }
    }
    assertEquals(List.of(), faults);
    assertTrue(inside > 100 && inside < 250, inside + " of 300 inside");
  }

  @Test
  void whatTotalsCannotReachIsProvedAndTheNearestIsNoWorseThanAGrid() {
    Blends<Beer> blends = three().atMost("old", 0.3);
    Constraint low = Constraint.atMost(Figures.CALCIUM, mgPerL(40));
    Constraint little = Constraint.between(Figures.SULFATE, mgPerL(60), mgPerL(90));
    BlendPlan<Beer> plan = plan(blends, low, little);
    assertEquals(Plan.Outcome.IMPOSSIBLE, plan.outcome());
    Conflict conflict = plan.conflicts().get(0);
    assertTrue(conflict.isProved());
    assertTrue(
        conflict.members().contains("old: at most 30.0 % of the blend"),
        conflict.members().toString());
    assertTrue(conflict.members().contains("the parts make up the blend"));
    assertTrue(plan.toString().startsWith("no blend exists"), plan.toString());
    assertThrows(IllegalStateException.class, plan::blend);
    BlendPlan<Beer> nearest = plan.nearest().orElseThrow();
    assertTrue(nearest.weightedSum() > 0);
    assertTrue(nearest.weightedSum() <= grid(blends, nearest) + 1e-6);
    assertTrue(plan.cautions().containsAll(nearest.cautions()));
    assertTrue(
        nearest.cautions().stream().anyMatch(caution -> caution.hazard() == Hazard.REFERMENTATION));
  }

  /** Acidity and pH that no blend has together: no proof, and the nearest beats a fine grid. */
  @Test
  void whatNoBlendReachesHasItsNearest() {
    Random random = new Random(11);
    for (int n = 0; n < 12; n++) {
      Blends<Beer> blends = three();
      BlendPlan<Beer> plan =
          plan(
              blends,
              Constraint.around(ACIDITY, asLactic(2 + 4 * random.nextDouble()), 0.05),
              Constraint.around(Figures.PH_VALUE, PH.of(4.45 + 0.3 * random.nextDouble()), 0.03));
      assertEquals(Plan.Outcome.NONE_FOUND, plan.outcome());
      assertFalse(plan.conflicts().isEmpty());
      BlendPlan<Beer> nearest = plan.nearest().orElseThrow();
      assertTrue(nearest.weightedSum() > 0.1);
      double grid = grid(blends, nearest);
      assertTrue(
          nearest.weightedSum() <= grid + 1e-6, n + ": " + nearest.weightedSum() + " " + grid);
    }
  }

  /** The least of the same sum over shares in steps of 1/40, asked of the blends themselves. */
  private static double grid(Blends<Beer> blends, BlendPlan<Beer> nearest) {
    double best = Double.POSITIVE_INFINITY;
    for (int a = 0; a <= STEPS; a++) {
      for (int b = 0; a + b <= STEPS; b++) {
        double[] shares = {
          (double) a / STEPS, (double) b / STEPS, (double) (STEPS - a - b) / STEPS
        };
        if (shares[2] > blends.mostShareOf("old")) {
          continue;
        }
        Beer blend = blends.shares(shares).after();
        double sum = 0;
        boolean kept = true;
        for (Reached reached : nearest.reached()) {
          Constraint constraint = reached.constraint();
          double number = blend.answer(constraint.figure()).number();
          if (constraint.weight().isPresent()) {
            sum += new Goal(constraint, 0).penalty(number);
          } else {
            kept &= constraint.excess(number) == 0;
          }
        }
        best = kept ? Math.min(best, sum) : best;
      }
    }
    return best;
  }

  @Test
  void twoWishesThatExcludeEachOtherFindACompromise() {
    Blends<Beer> blends = three();
    BlendPlan<Beer> plan =
        plan(
            blends,
            Constraint.around(ACIDITY, asLactic(4), 0.05).withWeight(1),
            Constraint.around(Figures.PH_VALUE, pH(4.1), 0.03).withWeight(2));
    assertEquals(Plan.Outcome.FOUND, plan.outcome());
    assertTrue(plan.weightedSum() <= grid(blends, plan) + 1e-6);
    BlendPlan<Beer> again =
        plan(
            blends,
            Constraint.around(ACIDITY, asLactic(4), 0.05).withWeight(1),
            Constraint.around(Figures.PH_VALUE, pH(4.1), 0.03).withWeight(2));
    assertEquals(plan.blend().shares(), again.blend().shares());
  }

  /** What is known of the brewing water only is no total of the beer, and mixes all the same. */
  @Test
  void ionsThatAreCarriedOverCanBeConstrained() {
    Beer ale = Beer.of(pH(4.4), asLactic(1.7)).brewedWith(Invented.hard());
    Beer other = Beer.of(pH(3.9), asLactic(3)).brewedWith(Invented.soft());
    double wanted =
        0.3 * ale.answer(Figures.SULFATE).number() + 0.7 * other.answer(Figures.SULFATE).number();
    BlendPlan<Beer> plan =
        plan(Blends.of(ale, other), Constraint.around(Figures.SULFATE, mgPerL(wanted), 0.001));
    assertEquals(Plan.Outcome.FOUND, plan.outcome());
    assertEquals(0.3, plan.blend().shareOfFirst(), 1e-4);
  }

  /** A titrated acidity that its own buffer does not tell counts as it was titrated. */
  @Test
  void anAcidityBesideItsMeasuredBufferCountsAsTitrated() {
    double[] volumes = {0, 2, 4, 6, 8, 10, 12};
    double[] read = {4.38, 4.72, 5.10, 5.62, 6.35, 7.10, 7.95};
    Beer titrated =
        Beer.of(pH(4.38), asLactic(2.6))
            .buffered(
                MeasuredBuffer.from(
                    BufferReadings.withAlkali(mL(50), molPerL(0.1), volumes, read)));
    BlendPlan<Beer> plan =
        plan(
            Blends.of(titrated, beer(3.45, 6.5, 90, 60, 200)),
            Constraint.around(ACIDITY, asLactic(4), 1e-5));
    assertEquals(Plan.Outcome.FOUND, plan.outcome());
    assertEquals(2.5 / 3.9, plan.blend().shareOfFirst(), 0.01);
  }

  @Test
  void whatIsNotKnownOrNotPossibleIsRefused() {
    assertThrows(
        UnknownFigureException.class,
        () -> plan(three(), Constraint.atMost(Figures.MAGNESIUM, mgPerL(20))));
    assertThrows(IllegalArgumentException.class, () -> BlendPlan.of(three(), hL(0)));
    assertThrows(
        IllegalArgumentException.class, () -> BlendPlan.of(three(), hL(1)).meteringTo(litres(0)));
    assertThrows(
        IllegalArgumentException.class,
        () -> plan(three(), Constraint.atMost(Figures.PH_VALUE, pH(4)).withWeight(1)));
    assertEquals(
        Plan.Outcome.FOUND,
        BlendPlan.of(Blends.of(Invented.hard(), Invented.soft()), hL(10))
            .meeting(
                Target.named("water")
                    .with(
                        Constraint.atMost(
                            WaterFigures.RESIDUAL_ALKALINITY,
                            Invented.hard().residualAlkalinity().value())))
            .solve()
            .outcome());
  }
}
