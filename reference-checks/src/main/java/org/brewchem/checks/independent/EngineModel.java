package org.brewchem.checks.independent;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.Mixture;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.ActivityRule;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Species;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.IonSizeParameters;

/**
 * The two models behind the engine tables, built from the statements in {@code
 * data/engine-constants.md} and from nothing else.
 *
 * <p>The activity of water, 1 - 0.017 sum(m), enters the ion product and the first dissociation of
 * carbonic acid. It follows from the species, so each mixture is solved twice.
 */
final class EngineModel {

  static final EngineModel ACTIVITY =
      new EngineModel(
          Chemistry.of(Level.ACTIVITY).withActivityRule(ActivityRule.davies()),
          organicAcids(ConstantSet.named("goldberg-2002")));

  static final EngineModel PAIRS =
      new EngineModel(
          Chemistry.of(Level.PAIRS)
              .withActivityRule(ActivityRule.ionSize(ionSizes(), 0.1))
              .withPairs(EnginePairs.all()),
          inorganicAcids(organicAcids(ConstantSet.named("goldberg-2002"))));

  private static final EquilibriumConstant ION_PRODUCT =
      EquilibriumConstant.analytic(293.29227, 0.1360833, -10576.913, -123.73158, 0);
  private static final double ION_PRODUCT_SQUARE_OF_KELVIN = -6.996455e-5;

  private static final EquilibriumConstant CALCITE =
      EquilibriumConstant.analytic(17.118, -0.046528, -3496, 0, 0);

  private static final double ZERO_CELSIUS = 273.15;
  private static final double MOLES_OF_WATER_PER_MOLE = 0.017;

  private final Chemistry chemistry;
  private final ConstantSet constants;

  private EngineModel(Chemistry chemistry, ConstantSet constants) {
    this.chemistry = chemistry;
    this.constants = constants;
  }

  /** Returns the model that a table names. */
  static EngineModel named(String name) {
    return switch (name) {
      case "activity" -> ACTIVITY;
      case "pairs" -> PAIRS;
      default -> throw new IllegalArgumentException("no model \"" + name + "\"");
    };
  }

  /** Solves a closed mixture of stated totals in mol per kg of water. */
  State solve(Map<Component, Double> totals, double celsius) {
    return solve(totals, celsius, equilibria -> {});
  }

  /** Solves a mixture in equilibrium with carbon dioxide of a partial pressure. */
  State solveOpen(Map<Component, Double> totals, double celsius, double log10Atmospheres) {
    double log10Activity = log10Atmospheres + EngineTables.HENRY.log10(celsius + ZERO_CELSIUS);
    return solve(
        totals, celsius, equilibria -> equilibria.hold(Component.CARBONATE, 2, log10Activity));
  }

  /** What a search found, and the mixture that it ended at. */
  record Found<T>(T value, Solution end) {}

  /**
   * Searches with a closed solution of stated totals, under the water activity at the end of it.
   */
  <T> T searched(
      Map<Component, Double> totals, double celsius, Function<Solution, Found<T>> search) {
    Solution solution = Solution.at(Temperature.ofCelsius(celsius));
    for (Map.Entry<Component, Double> total : totals.entrySet()) {
      solution = solution.with(total.getKey(), Molality.ofMolesPerKilogram(total.getValue()));
    }
    Solution end = search.apply(solution.under(with(0))).end();
    double log10WaterActivity = log10WaterActivity(end.equilibrium().species());
    return search.apply(solution.under(with(log10WaterActivity))).value();
  }

  private interface Preparation {
    void prepare(Equilibria equilibria);
  }

  private State solve(Map<Component, Double> totals, double celsius, Preparation preparation) {
    State first = solve(totals, celsius, preparation, 0);
    return solve(totals, celsius, preparation, log10WaterActivity(first.equilibria().species()));
  }

  private State solve(
      Map<Component, Double> totals,
      double celsius,
      Preparation preparation,
      double log10WaterActivity) {
    Equilibria equilibria = Mixture.of(totals, celsius, with(log10WaterActivity));
    preparation.prepare(equilibria);
    return new State(equilibria.pH(), equilibria, celsius);
  }

  private static double log10WaterActivity(List<Species> species) {
    double solutes =
        species.stream().mapToDouble(each -> each.molality().inMolesPerKilogram()).sum();
    return Math.log10(1 - MOLES_OF_WATER_PER_MOLE * solutes);
  }

  /** Returns the chemistry with the activity of water taken as 1. */
  Chemistry chemistry() {
    return with(0);
  }

  private Chemistry with(double log10WaterActivity) {
    EquilibriumConstant water = EquilibriumConstant.ofLog10(log10WaterActivity);
    ConstantSet set =
        constants.with(
            Component.CARBONATE,
            constants.of(Component.CARBONATE).get(0).plus(water),
            constants.of(Component.CARBONATE).get(1));
    return chemistry
        .withConstants(set)
        .withIonProduct(
            "as the engine",
            kelvin ->
                ION_PRODUCT.log10(kelvin)
                    + ION_PRODUCT_SQUARE_OF_KELVIN * kelvin * kelvin
                    + log10WaterActivity);
  }

  private static ConstantSet organicAcids(ConstantSet base) {
    return base.with(Component.LACTATE, EquilibriumConstant.ofLog10(-3.862, -0.33, -87))
        .with(
            Component.MALATE,
            EquilibriumConstant.ofLog10(-3.459, 2.97, 0),
            EquilibriumConstant.ofLog10(-5.097, -1.17, 0))
        .with(
            Component.SULFATE,
            EquilibriumConstant.analytic(-56.889, 0.006473, 2307.9, 19.8858, 0).negate());
  }

  private static ConstantSet inorganicAcids(ConstantSet base) {
    EquilibriumConstant one = EquilibriumConstant.ofLog10(12.346, -14.77, 0);
    EquilibriumConstant two = EquilibriumConstant.ofLog10(19.553, -18.91, 0);
    EquilibriumConstant three = EquilibriumConstant.ofLog10(21.721, -10.1, 0);
    EquilibriumConstant bicarbonate =
        EquilibriumConstant.analytic(107.8871, 0.03252849, -5151.79, -38.92561, 563713.9);
    EquilibriumConstant carbonDioxide =
        EquilibriumConstant.analytic(464.1965, 0.09344813, -26986.16, -165.75951, 2248628.9);
    return base.with(
            Component.PHOSPHATE, two.plus(three.negate()), one.plus(two.negate()), one.negate())
        .with(Component.CARBONATE, bicarbonate.plus(carbonDioxide.negate()), bicarbonate.negate())
        .with(Component.BORATE, EquilibriumConstant.ofLog10(-9.24, 13.49, 0));
  }

  private static IonSizeParameters ionSizes() {
    IonSizeParameters parameters = IonSizeParameters.standard();
    for (CsvTable.Line row : CsvTable.read("activity-parameters.csv", 33).lines()) {
      parameters =
          parameters.with(
              row.text("species"), row.number("a_angstrom"), row.number("b_kg_per_mol"));
    }
    return parameters;
  }

  /** A mixture at equilibrium. */
  record State(double pH, Equilibria equilibria, double celsius) {

    double ionicStrength() {
      return equilibria.ionicStrength();
    }

    /** Saturation index of calcite. */
    double calciteIndex() {
      return Math.log10(activity("Ca+2") * activity("CO3-2"))
          - CALCITE.log10(celsius + ZERO_CELSIUS);
    }

    double activity(String name) {
      return equilibria.species().stream()
          .filter(species -> species.name().equals(name))
          .mapToDouble(Species::activity)
          .sum();
    }
  }
}
