package org.brewchem.checks.frozen;

import java.util.List;
import org.brewchem.checks.CsvTable;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Target;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.mash.MashFigures;
import org.brewchem.plan.Conflict;
import org.brewchem.plan.Downstream;
import org.brewchem.plan.Plan;
import org.brewchem.plan.PlannedAmount;
import org.brewchem.plan.Reached;
import org.brewchem.plan.Shelf;
import org.brewchem.plan.ShelfItem;
import org.brewchem.plan.WaterPortion;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.water.Water;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;

/** Plans with and without a mash: outcomes, doses, what they reach, conflicts. */
final class FrozenPlans {

  private static final double U = 0.03;
  private static final double U_OF_PH = 0.05;

  private FrozenPlans() {}

  static void compute(FrozenFigures figures) {
    for (CsvTable.Line line : CsvTable.read("frozen/plans.csv", 30).lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      of.attempt("plan", () -> request(line).solve(), plan -> plan(of, plan));
    }
  }

  private static Plan.Request request(CsvTable.Line line) {
    Volume volume = Volume.ofHectolitres(line.number("portion"));
    Plan.Request request =
        Plan.from(water(line))
            .using(shelf(line))
            .meeting(target(line))
            .forPortions(WaterPortion.portion("all", volume));
    if (line.isEmpty("own")) {
      return request;
    }
    Grist grist =
        Grist.of(
                Mass.ofKilograms(line.number("own")),
                Malt.stated("own malt", "invented", PH.of(5.74), 0.02, 43, 2))
            .and(Mass.ofKilograms(line.number("caramel")), Malt.assumed(MaltKind.CARAMEL));
    Downstream mash =
        line.text("carbon_dioxide").equals("stays")
            ? Downstream.mashKeepingCarbonDioxide("mash", grist, volume)
            : Downstream.mash("mash", grist, volume);
    Constraint band =
        Constraint.between(
            MashFigures.MASH_PH, PH.of(line.number("mash_from")), PH.of(line.number("mash_to")));
    return request.and(mash, line.text("mash_is").equals("hard") ? band : band.withWeight(2));
  }

  private static Water water(CsvTable.Line line) {
    return WaterReport.reported()
        .calcium(stated(line, "calcium"), stated(line, "calcium").times(U))
        .magnesium(stated(line, "magnesium"), stated(line, "magnesium").times(U))
        .sodium(stated(line, "sodium"), stated(line, "sodium").times(U))
        .sulfate(stated(line, "sulfate"), stated(line, "sulfate").times(U))
        .chloride(stated(line, "chloride"), stated(line, "chloride").times(U))
        .alkalinityAsCaCO3(stated(line, "alkalinity"), stated(line, "alkalinity").times(U))
        .pH(PH.of(line.number("pH")), U_OF_PH)
        .build()
        .water();
  }

  private static MassConcentration stated(CsvTable.Line line, String column) {
    return MassConcentration.ofMilligramsPerLitre(line.number(column));
  }

  private static Shelf shelf(CsvTable.Line line) {
    Shelf shelf = Shelf.of().weighingTo(Mass.ofGrams(1)).pipettingTo(Volume.ofMillilitres(1));
    for (String salt : formulas(line, "salts")) {
      shelf = shelf.with(item(Salt.named(salt), 99));
    }
    for (String formula : formulas(line, "acids")) {
      Acid acid = Acid.named(formula);
      shelf = shelf.with(item(acid, acid.equals(Acid.HYDROCHLORIC) ? 20 : 75));
    }
    return line.isEmpty("diluent")
        ? shelf
        : shelf
            .meteringWaterTo(Volume.ofLitres(5))
            .with(
                ShelfItem.diluent("pure water", Water.pure())
                    .atMost(Volume.ofLitres(line.number("diluent"))));
  }

  private static List<String> formulas(CsvTable.Line line, String column) {
    return line.isEmpty(column) ? List.of() : List.of(line.text(column).split(" "));
  }

  private static ShelfItem item(Compound compound, double percent) {
    return ShelfItem.of(
        Reagent.of(compound, MassFraction.ofMassPercent(percent)).withAssayUncertainty(0.005));
  }

  private static Target target(CsvTable.Line line) {
    Target target =
        Target.named("invented")
            .with(
                Constraint.between(
                    Figures.CALCIUM, stated(line, "calcium_from"), stated(line, "calcium_to")));
    if (!line.isEmpty("sodium_most")) {
      target = target.with(Constraint.atMost(Figures.SODIUM, stated(line, "sodium_most")));
    }
    if (!line.isEmpty("ratio")) {
      double ratio = line.number("ratio");
      target =
          target.with(
              Constraint.around(Figures.SULFATE_TO_CHLORIDE, ratio, ratio / 5).withWeight(1));
    }
    if (!line.isEmpty("residual_most")) {
      target =
          target.with(
              Constraint.atMost(
                  WaterFigures.RESIDUAL_ALKALINITY,
                  ResidualAlkalinity.ofGermanDegrees(line.number("residual_most"))));
    }
    return target;
  }

  private static void plan(FrozenFigures.Of of, Plan plan) {
    of.text("outcome", plan.outcome());
    of.number("conflicts", "", plan.conflicts().size());
    for (Conflict conflict : plan.conflicts()) {
      String own = "conflict " + (plan.conflicts().indexOf(conflict) + 1);
      of.text(own + ": proved", conflict.isProved());
      of.number(own + ": members", "", conflict.members().size());
      of.number(own + ": undecided members", "", conflict.undecided().size());
    }
    if (plan.conflicts().isEmpty()) {
      found(of, "", plan);
    } else {
      of.text("nearest: possible", plan.nearest().isPresent());
      plan.nearest().ifPresent(nearest -> found(of, "nearest: ", nearest));
    }
  }

  private static void found(FrozenFigures.Of of, String when, Plan plan) {
    of.number(when + "weighted sum before rounding", "", plan.weightedSumBeforeRounding());
    of.number(when + "weighted sum", "", plan.weightedSum());
    plan.waters().forEach(amount -> amount(of, when, amount));
    plan.doses().forEach(amount -> amount(of, when, amount));
    for (Reached reached : plan.reached()) {
      String title = when + reached.constraint().figure().title();
      Answer<?> answer = reached.answer();
      if (answer.isStated()) {
        of.uncertain(title, "", answer.number(), answer.standardUncertainty());
      } else {
        of.number(title, "", answer.number());
      }
      of.number(title + ": chance", "", reached.chance());
    }
  }

  private static void amount(FrozenFigures.Of of, String when, PlannedAmount amount) {
    String name = when + amount.item().replace(",", "");
    if (amount.mass().isPresent()) {
      of.number(name, "g", amount.mass().get().inGrams());
    } else {
      of.number(name, "mL", amount.volume().orElseThrow().inMillilitres());
    }
  }
}
