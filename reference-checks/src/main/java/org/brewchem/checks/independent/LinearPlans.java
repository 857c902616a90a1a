package org.brewchem.checks.independent;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Target;
import org.brewchem.plan.Plan;
import org.brewchem.plan.Plan.Outcome;
import org.brewchem.plan.Shelf;
import org.brewchem.plan.ShelfItem;
import org.brewchem.plan.WaterPortion;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/**
 * Plans whose constraints are all on ions, against another library's linear programs: the same
 * least weighted sum, the same least cost, and the same word on whether there is a plan.
 */
public final class LinearPlans {

  private static final int PROBLEMS = 200;
  private static final double LITRES = 100;
  private static final double GOOD = 0.9e-6;

  private static final List<Ion> IONS =
      List.of(Ion.CALCIUM, Ion.MAGNESIUM, Ion.SODIUM, Ion.SULFATE, Ion.CHLORIDE);
  private static final List<Salt> SALTS =
      List.of(
          Salt.GYPSUM,
          Salt.CALCIUM_CHLORIDE_DIHYDRATE,
          Salt.EPSOM_SALT,
          Salt.SODIUM_CHLORIDE,
          Salt.MAGNESIUM_CHLORIDE_HEXAHYDRATE);

  private LinearPlans() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    Source source = new Source("ojalgo", "ojAlgo 56.1.0, its linear solver");
    List<Case> cases = cases();
    long impossible = cases.stream().filter(one -> !one.exists).count();
    return List.of(
        new ReferenceCheck(
            "plans-weighted-sum",
            Suite.INDEPENDENT,
            "Least weighted sum of plans by another linear solver",
            source,
            "random waters, salts and constraints on ions, hard and weighted; before rounding",
            Tolerance.absolute(
                1.1e-6,
                "",
                "plans within 1e-6 of the least sum count as equally good, and the cheapest of them"
                    + " is taken"),
            "",
            (int) (PROBLEMS - impossible),
            () -> rows(cases, one -> Row.of(one.name, one.sum, one.ownSum, HowKnown.COMPUTED))),
        new ReferenceCheck(
            "plans-cost",
            Suite.INDEPENDENT,
            "Least cost of plans by another linear solver",
            source,
            "the cost with the weighted sum held within 0.9e-6 of its least",
            Tolerance.absolute(
                1e-6,
                "",
                "costs are some tenths, and sometimes 0; the sum is held to 1e-6 in both"),
            "",
            (int) (PROBLEMS - impossible),
            () -> rows(cases, one -> Row.of(one.name, one.cost, one.ownCost, HowKnown.COMPUTED))),
        new ReferenceCheck(
            "plans-possible",
            Suite.INDEPENDENT,
            "Whether there is a plan, by another linear solver",
            source,
            "1 where there is one and 0 where there is none, which the library proves",
            Tolerance.absolute(0.5, "", "a word is right or wrong"),
            impossible + " of them have none",
            PROBLEMS,
            () ->
                cases.stream()
                    .map(
                        one ->
                            Row.of(
                                one.name,
                                one.exists ? 1 : 0,
                                one.ownExists ? 1 : 0,
                                HowKnown.COMPUTED))
                    .toList()));
  }

  private interface Show {
    Row of(Case one);
  }

  private static List<Row> rows(List<Case> cases, Show show) {
    return cases.stream().filter(one -> one.exists).map(show::of).toList();
  }

  /** A problem solved by both. */
  private record Case(
      String name,
      boolean exists,
      boolean ownExists,
      double sum,
      double ownSum,
      double cost,
      double ownCost) {}

  private record Bound(Ion ion, double lower, double upper, double aim, double weight) {}

  private static List<Case> cases() {
    List<Case> cases = new ArrayList<>();
    for (int n = 0; n < PROBLEMS; n++) {
      cases.add(solved(n, new Random(561_000L + n)));
    }
    return cases;
  }

  private static double between(Random random, double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  private static Case solved(int n, Random random) {
    int sources = 1 + random.nextInt(2);
    double[][] ions = new double[sources][IONS.size()];
    Water[] waters = new Water[sources];
    for (int k = 0; k < sources; k++) {
      for (int i = 0; i < IONS.size(); i++) {
        ions[k][i] = between(random, 3, 90);
      }
      waters[k] = water(ions[k]);
    }
    List<Salt> salts = new ArrayList<>(SALTS);
    Collections.shuffle(salts, random);
    salts = salts.subList(0, 2 + random.nextInt(4));
    double[] most = new double[salts.size()];
    double[] price = new double[salts.size()];
    Shelf shelf = Shelf.of();
    for (int j = 0; j < most.length; j++) {
      most[j] = between(random, 5, 60);
      price[j] = between(random, 1, 10);
      shelf =
          shelf.with(
              ShelfItem.of(Reagent.of(salts.get(j), MassFraction.ofMassPercent(100)))
                  .pricedPerKilogram(price[j])
                  .atMost(Mass.ofGrams(most[j])));
    }
    List<Bound> bounds = bounds(random);
    Target target = Target.named("invented");
    for (Bound bound : bounds) {
      target = target.with(constraint(bound));
    }
    Plan plan =
        Plan.from(waters)
            .using(shelf)
            .meeting(target)
            .forPortions(WaterPortion.portion("all", Volume.ofLitres(LITRES)))
            .solve();
    boolean own = plan.outcome() == Outcome.FOUND;
    if (!own && plan.outcome() != Outcome.IMPOSSIBLE) {
      throw new IllegalStateException("plan " + n + ": " + plan.outcome());
    }
    Other other = new Other(ions, salts, most, price, bounds);
    double sum = other.least(Double.NaN);
    boolean exists = !Double.isNaN(sum);
    return new Case(
        "problem " + n,
        exists,
        own,
        sum,
        own ? plan.weightedSumBeforeRounding() : Double.NaN,
        exists ? other.least(sum + GOOD) : Double.NaN,
        own ? plan.cost().orElseThrow() : Double.NaN);
  }

  private static Water water(double[] ions) {
    return WaterReport.reported()
        .calcium(MassConcentration.ofMilligramsPerLitre(ions[0]))
        .magnesium(MassConcentration.ofMilligramsPerLitre(ions[1]))
        .sodium(MassConcentration.ofMilligramsPerLitre(ions[2]))
        .sulfate(MassConcentration.ofMilligramsPerLitre(ions[3]))
        .chloride(MassConcentration.ofMilligramsPerLitre(ions[4]))
        .alkalinityAsCaCO3(MassConcentration.ofMilligramsPerLitre(80))
        .pH(PH.of(7.4))
        .build()
        .water();
  }

  private static List<Bound> bounds(Random random) {
    List<Ion> ions = new ArrayList<>(IONS);
    Collections.shuffle(ions, random);
    List<Bound> bounds = new ArrayList<>();
    for (Ion ion : ions.subList(0, 3 + random.nextInt(3))) {
      double middle = between(random, 20, 120);
      double half = between(random, 2, 25);
      boolean aimed = random.nextInt(3) == 0;
      bounds.add(
          new Bound(
              ion,
              Math.max(0, middle - half),
              middle + half,
              aimed && middle > half ? middle : Double.NaN,
              random.nextInt(5) < 3 ? between(random, 0.5, 4) : Double.NaN));
    }
    return bounds;
  }

  private static Constraint constraint(Bound bound) {
    var figure = Figures.concentration(bound.ion);
    Constraint constraint =
        Double.isNaN(bound.aim)
            ? Constraint.between(
                figure,
                MassConcentration.ofMilligramsPerLitre(bound.lower),
                MassConcentration.ofMilligramsPerLitre(bound.upper))
            : Constraint.around(
                figure,
                MassConcentration.ofMilligramsPerLitre(bound.aim),
                (bound.upper - bound.lower) / 2);
    return Double.isNaN(bound.weight) ? constraint : constraint.withWeight(bound.weight);
  }

  /** The same problem for the other library, from the stoichiometry of the salts. */
  private record Other(
      double[][] ions, List<Salt> salts, double[] most, double[] price, List<Bound> bounds) {

    /**
     * Finds the least weighted sum or, where that is capped, the least cost.
     *
     * @return NaN where there is no plan
     */
    double least(double cap) {
      boolean costs = !Double.isNaN(cap);
      ExpressionsBasedModel model = new ExpressionsBasedModel();
      Variable[] shares = new Variable[ions.length];
      Expression whole = model.newExpression("shares").level(1);
      for (int k = 0; k < shares.length; k++) {
        shares[k] = model.newVariable("share " + k).lower(0);
        whole.set(shares[k], 1);
      }
      Variable[] doses = new Variable[salts.size()];
      for (int j = 0; j < doses.length; j++) {
        doses[j] = model.newVariable("dose " + j).lower(0).upper(most[j]);
        if (costs) {
          doses[j].weight(price[j] / 1000);
        }
      }
      Expression sum = model.newExpression("sum");
      for (Bound bound : bounds) {
        boolean hard = Double.isNaN(bound.weight);
        Variable off = model.newVariable("off " + bound.ion).lower(0);
        if (hard) {
          off.upper(0);
        } else if (costs) {
          sum.set(off, bound.weight);
        } else {
          off.weight(bound.weight);
        }
        boolean aimed = !hard && !Double.isNaN(bound.aim);
        double half = (bound.upper - bound.lower) / 2;
        Expression least =
            model.newExpression("least " + bound.ion).lower(aimed ? bound.aim : bound.lower);
        Expression top =
            model.newExpression("most " + bound.ion).upper(aimed ? bound.aim : bound.upper);
        for (Expression row : List.of(least, top)) {
          for (int k = 0; k < shares.length; k++) {
            row.set(shares[k], ions[k][IONS.indexOf(bound.ion)]);
          }
          for (int j = 0; j < doses.length; j++) {
            row.set(doses[j], milligramsPerLitre(salts.get(j), bound.ion));
          }
        }
        least.set(off, half);
        top.set(off, -half);
      }
      if (costs) {
        sum.upper(cap);
      }
      Optimisation.Result result = model.minimise();
      return result.getState().isFeasible() ? result.getValue() : Double.NaN;
    }

    /** What a gram of a salt in the portion brings of an ion. */
    private static double milligramsPerLitre(Salt salt, Ion ion) {
      Component component = ion.components().keySet().iterator().next();
      double moles = Map.copyOf(salt.components()).getOrDefault(component, 0.0);
      return 1000
          * moles
          * ion.molarMass().inGramsPerMole()
          / salt.molarMass().inGramsPerMole()
          / LITRES;
    }
  }
}
