package org.brewchem.checks.frozen;

import java.util.Locale;
import org.brewchem.checks.CsvTable;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Carbonation;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.CarbonDioxidePressure;
import org.brewchem.solution.Equilibrium;
import org.brewchem.solution.Headspace;
import org.brewchem.solution.Level;
import org.brewchem.solution.MineralEquilibrium;
import org.brewchem.solution.OpenSolution;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Species;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Gas;
import org.brewchem.substance.Mineral;

/** Equilibria of solutions: closed, open to carbon dioxide, with a headspace, with minerals. */
final class FrozenSolutions {

  private static final PH START = PH.of(4.4);
  private static final double[] END_POINTS = {5.4, 7, 8.2};

  private FrozenSolutions() {}

  static void compute(FrozenFigures figures) {
    for (CsvTable.Line line : CsvTable.read("frozen/solutions.csv", 70).lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      Solution solution = solution(line);
      levels(of, solution);
      atItsOwnPH(of, solution);
      atOtherPH(of, solution);
      minerals(of, solution);
      if (!line.isEmpty("carbon_dioxide")) {
        open(of, OpenSolution.of(solution, Pressure.ofKilopascals(line.number("carbon_dioxide"))));
      }
      if (!line.isEmpty("headspace")) {
        headspace(of, solution, Volume.ofLitres(line.number("headspace")));
      }
    }
    for (CsvTable.Line line : CsvTable.read("frozen/carbonations.csv", 8).lines()) {
      carbonation(figures.of(line.text("id")), line);
    }
  }

  private static Solution solution(CsvTable.Line line) {
    Solution solution = contents(line.text("contents"), line.number("temperature"));
    return line.isEmpty("closed_to_pH")
        ? solution
        : solution.closedTo(PH.of(line.number("closed_to_pH")));
  }

  /** Reads contents such as "lactic acid 12; potassium 8", in mmol/L. */
  static Solution contents(String contents, double celsius) {
    Solution solution = Solution.at(Temperature.ofCelsius(celsius));
    for (String content : contents.isEmpty() ? new String[0] : contents.split("; ")) {
      int space = content.lastIndexOf(' ');
      solution =
          solution.with(
              Named.solute(content.substring(0, space)),
              AmountConcentration.ofMillimolesPerLitre(
                  Double.parseDouble(content.substring(space + 1))));
    }
    return solution;
  }

  private static void levels(FrozenFigures.Of of, Solution solution) {
    for (Level level : Level.values()) {
      String name = level.name().toLowerCase(Locale.ROOT);
      of.attempt(
          "pH at level " + name,
          () -> solution.under(level).pH(),
          pH -> of.number("pH at level " + name, "", pH.value()));
    }
    of.number(
        "net charge of inert ions",
        "mEq/kg",
        solution.inertCharge().inMilliequivalentsPerLitre() / solution.kilogramsPerLitre());
  }

  private static void atItsOwnPH(FrozenFigures.Of of, Solution solution) {
    Equilibrium equilibrium = solution.equilibrium();
    of.number("ionic strength", "mmol/kg", equilibrium.ionicStrength().inMillimolesPerKilogram());
    of.text("beyond the range of activities", equilibrium.beyondActivityRange());
    of.number(
        "buffer capacity at own pH",
        "mEq/L per pH",
        solution.bufferCapacity(equilibrium.pH()).inMilliequivalentsPerLitrePerPH());
    for (Species species : equilibrium.species()) {
      double molality = species.molality().inMolesPerKilogram();
      if (molality > 0) {
        of.number("log10 of molality of " + species.name(), "", Math.log10(molality));
      }
    }
    if (solution.totals().containsKey(Component.CARBONATE)) {
      of.number(
          "partial pressure of carbon dioxide",
          "kPa",
          equilibrium.partialPressure(Gas.CARBON_DIOXIDE).inKilopascals());
    }
  }

  private static void atOtherPH(FrozenFigures.Of of, Solution solution) {
    for (double endPoint : END_POINTS) {
      PH pH = PH.of(endPoint);
      of.number(
          "net charge at pH " + pH.value(),
          "mEq/L",
          solution.charge(pH).inMilliequivalentsPerLitre());
      of.number(
          "equivalents from pH 4.4 to " + pH.value(),
          "mEq/L",
          solution.equivalents(START, pH).inMilliequivalentsPerLitre());
      of.number(
          "titratable acidity to pH " + pH.value(),
          "mEq/L",
          solution.titratableAcidity(pH).inMilliequivalentsPerLitre());
      of.number(
          "buffer capacity at pH " + pH.value(),
          "mEq/L per pH",
          solution.bufferCapacity(pH).inMilliequivalentsPerLitrePerPH());
    }
    of.attempt(
        "lactic acid to pH 4",
        () -> solution.doseOf(Acid.LACTIC, PH.of(4)),
        dose ->
            of.number("dose of lactic acid to pH 4", "mmol/kg", dose.inMillimolesPerKilogram()));
    of.attempt(
        "sodium hydroxide to pH 9",
        () -> solution.doseOf(Base.SODIUM_HYDROXIDE, PH.of(9)),
        dose ->
            of.number(
                "dose of sodium hydroxide to pH 9", "mmol/kg", dose.inMillimolesPerKilogram()));
    of.attempt(
        "titrated with sodium hydroxide",
        () ->
            SimulatedTitration.of(
                    solution,
                    Solution.at(solution.temperature())
                        .with(Base.SODIUM_HYDROXIDE, AmountConcentration.ofMolesPerLitre(0.1)),
                    Volume.ofMillilitres(50))
                .volumeTo(PH.of(8.6)),
        volume -> of.number("titre to pH 8.6", "mL", volume.inMillilitres()));
    of.number(
        "acidity of 50 mg/L of carbon dioxide",
        "mEq/L",
        solution
            .acidityOfCarbonDioxide(MassConcentration.ofMilligramsPerLitre(50), PH.of(8.2))
            .inMilliequivalentsPerLitre());
  }

  private static void minerals(FrozenFigures.Of of, Solution solution) {
    Equilibrium equilibrium = solution.equilibrium();
    Named.MINERALS.forEach(
        (name, mineral) ->
            of.number("saturation index of " + name, "", equilibrium.saturationIndex(mineral)));
    if (equilibrium.saturationIndex(Mineral.CALCITE).isPresent()) {
      of.attempt(
          "calcite precipitating",
          () -> MineralEquilibrium.precipitating(solution, Mineral.CALCITE),
          after -> {
            of.number("pH after calcite precipitated", "", after.pH().value());
            of.number("calcite precipitated", "mmol/L", after.precipitatedMillimolesPerLitre());
          });
      of.attempt(
          "excess of calcite",
          () -> MineralEquilibrium.of(solution, Mineral.CALCITE),
          after -> {
            of.number("pH with an excess of calcite", "", after.pH().value());
            of.number(
                "calcite dissolved",
                "mmol/L",
                Math.max(-after.precipitatedMillimolesPerLitre(), 0));
          });
    }
  }

  private static void open(FrozenFigures.Of of, OpenSolution open) {
    of.number("pH open to carbon dioxide", "", open.pH().value());
    of.number(
        "total carbon dioxide when open",
        "mmol/L",
        open.solution().total(Component.CARBONATE).inMillimolesPerLitre());
    of.number(
        "equivalents from pH 4.4 to 6 when open",
        "mEq/L",
        open.equivalents(START, PH.of(6)).inMilliequivalentsPerLitre());
    of.attempt(
        "hydrochloric acid to pH 4.2 when open",
        () -> open.doseOf(Acid.HYDROCHLORIC, PH.of(4.2)),
        dose ->
            of.number(
                "dose of hydrochloric acid to pH 4.2 when open",
                "mmol/kg",
                dose.inMillimolesPerKilogram()));
    of.attempt(
        "calcite when open",
        () -> MineralEquilibrium.of(open, Mineral.CALCITE),
        after -> of.number("pH with calcite when open", "", after.pH().value()));
  }

  private static void headspace(FrozenFigures.Of of, Solution solution, Volume headspace) {
    of.attempt(
        "headspace",
        () -> Headspace.over(solution, Volume.ofLitres(1), headspace),
        vessel -> {
          of.number("pH with headspace", "", vessel.pH().value());
          of.number("pressure in headspace", "kPa", vessel.partialPressure().inKilopascals());
          of.number("carbon dioxide in headspace", "mmol", vessel.inGas().inMillimoles());
        });
  }

  private static void carbonation(FrozenFigures.Of of, CsvTable.Line line) {
    Temperature temperature = Temperature.ofCelsius(line.number("temperature"));
    Carbonation carbonation = Carbonation.ofGramsPerLitre(line.number("carbon_dioxide"));
    of.number("volumes", "", carbonation.inVolumes());
    of.number("amount", "mmol/L", carbonation.asAmountConcentration().inMillimolesPerLitre());
    of.number(
        "pressure in equilibrium",
        "kPa",
        CarbonDioxidePressure.over(carbonation, temperature).inKilopascals());
    of.number(
        "carbon dioxide under the pressure",
        "g/L",
        CarbonDioxidePressure.carbonationUnder(
                Pressure.ofKilopascals(line.number("pressure")), temperature)
            .inGramsPerLitre());
  }
}
