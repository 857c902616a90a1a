package org.brewchem.examples.benchmark;

import static org.brewchem.figure.Constraint.around;
import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.mash.MashFigures.MASH_PH;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.IONIC_STRENGTH;
import static org.brewchem.solution.Figures.MAGNESIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SODIUM;
import static org.brewchem.solution.Figures.SULFATE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.brewchem.water.WaterFigures.RESIDUAL_ALKALINITY;

import java.util.concurrent.TimeUnit;
import org.brewchem.figure.Target;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.plan.Downstream;
import org.brewchem.plan.Plan;
import org.brewchem.plan.Shelf;
import org.brewchem.plan.ShelfItem;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The time from a request to a plan: two sources, six salts, two acids, nine constraints; the mash
 * pH is one of them or not. The waters, the malt and the target are invented; one reading differs
 * from call to call, so that no call repeats another.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 6, time = 2)
@Measurement(iterations = 10, time = 2)
@Fork(1)
public class PlanBenchmark {

  private static final int DIFFERENT = 500;

  private final Water soft =
      report(9, 1.5, 6, 7, 8, 2).alkalinityAsCaCO3(mgPerL(22)).pH(pH(7.2)).build().water();
  private final Water[] hard = new Water[DIFFERENT];
  private final Shelf shelf =
      Shelf.of(
              ShelfItem.of(pure(Salt.GYPSUM)),
              ShelfItem.of(pure(Salt.CALCIUM_CHLORIDE_DIHYDRATE)),
              ShelfItem.of(pure(Salt.EPSOM_SALT)),
              ShelfItem.of(pure(Salt.SODIUM_CHLORIDE)),
              ShelfItem.of(pure(Salt.MAGNESIUM_CHLORIDE_HEXAHYDRATE)),
              ShelfItem.of(pure(Salt.POTASSIUM_CHLORIDE)),
              ShelfItem.of(Reagent.of(Acid.LACTIC, massPercent(80))),
              ShelfItem.of(Reagent.of(Acid.PHOSPHORIC, massPercent(75))))
          .weighingTo(g(1))
          .pipettingTo(mL(1));
  private final Target eight =
      Target.named("invented")
          .with(between(CALCIUM, mgPerL(50), mgPerL(90)))
          .with(atLeast(MAGNESIUM, mgPerL(5)))
          .with(atMost(SODIUM, mgPerL(20)))
          .with(around(SULFATE, mgPerL(90), 20).withWeight(1))
          .with(atMost(CHLORIDE, mgPerL(100)))
          .with(around(SULFATE_TO_CHLORIDE, 1.5, 0.3).withWeight(2))
          .with(atMost(RESIDUAL_ALKALINITY, ResidualAlkalinity.ofGermanDegrees(1)))
          .with(atMost(IONIC_STRENGTH, Molality.ofMillimolesPerKilogram(12)));
  private final Target nine = eight.with(atMost(PH_VALUE, pH(7.5)));
  private final Downstream mash =
      Downstream.mash(
          "mash",
          Grist.of(kg(300), Malt.stated("invented malt", "ours", pH(5.72), 0.03, 45, 4))
              .and(kg(20), Malt.assumed(MaltKind.CARAMEL)),
          hL(12));
  private int count;

  /** Lays out the waters. */
  public PlanBenchmark() {
    for (int k = 0; k < DIFFERENT; k++) {
      hard[k] =
          report(82 + 0.04 * k, 11, 19, 45, 31, 8)
              .alkalinityAsCaCO3(mgPerL(190 + 0.1 * k))
              .pH(pH(7.6))
              .build()
              .water();
    }
  }

  private static WaterReport.Builder report(
      double calcium,
      double magnesium,
      double sodium,
      double sulfate,
      double chloride,
      double nitrate) {
    return WaterReport.reported()
        .calcium(mgPerL(calcium))
        .magnesium(mgPerL(magnesium))
        .sodium(mgPerL(sodium))
        .potassium(mgPerL(2))
        .sulfate(mgPerL(sulfate))
        .chloride(mgPerL(chloride))
        .nitrate(mgPerL(nitrate));
  }

  private static Reagent pure(Compound compound) {
    return Reagent.of(compound, massPercent(99));
  }

  private Plan.Request request() {
    count = (count + 1) % DIFFERENT;
    return Plan.from(hard[count], soft).using(shelf).forPortions(portion("all", hL(12)));
  }

  /**
   * Plans for nine constraints on the water.
   *
   * @return the plan
   */
  @Benchmark
  public Plan water() {
    return request().meeting(nine).solve();
  }

  /**
   * Plans for eight constraints on the water and one on the mash pH.
   *
   * @return the plan
   */
  @Benchmark
  public Plan mash() {
    return request().meeting(eight).and(mash, between(MASH_PH, pH(5.4), pH(5.5))).solve();
  }

  /**
   * Plans for a mash pH that contradicts a lower limit of the residual alkalinity: no plan is
   * found, a conflict is named and the nearest water planned.
   *
   * @return the plan
   */
  @Benchmark
  public Plan conflict() {
    return request()
        .meeting(eight)
        .meeting(
            Target.named("lower limit")
                .with(atLeast(RESIDUAL_ALKALINITY, ResidualAlkalinity.ofGermanDegrees(-1))))
        .and(mash, between(MASH_PH, pH(5.4), pH(5.5)))
        .solve();
  }
}
