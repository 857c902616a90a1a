package org.brewchem.checks.independent;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.brewchem.checks.CsvTable;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.ActivityRule;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibrium;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Species;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.IonSizeParameters;
import org.brewchem.substance.PairSet;

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
          organicAcids(ConstantSet.named("goldberg-2002")),
          true);

  static final EngineModel PAIRS =
      new EngineModel(
          Chemistry.of(Level.PAIRS)
              .withActivityRule(ActivityRule.ionSize(ionSizes(), 0.1))
              .withPairs(EnginePairs.all()),
          inorganicAcids(organicAcids(ConstantSet.named("goldberg-2002"))),
          true);

  private static final EquilibriumConstant ION_PRODUCT =
      EquilibriumConstant.analytic(293.29227, 0.1360833, -10576.913, -123.73158, 0);
  private static final double ION_PRODUCT_SQUARE_OF_KELVIN = -6.996455e-5;

  private static final double MOLES_OF_WATER_PER_MOLE = 0.017;

  private final Chemistry chemistry;
  private final ConstantSet constants;
  private final boolean waterOfTheEngine;

  private EngineModel(Chemistry chemistry, ConstantSet constants, boolean waterOfTheEngine) {
    this.chemistry = chemistry;
    this.constants = constants;
    this.waterOfTheEngine = waterOfTheEngine;
  }

  /** Returns the model that a table names. */
  static EngineModel named(String name) {
    return switch (name) {
      case "activity" -> ACTIVITY;
      case "pairs" -> PAIRS;
      default -> throw new IllegalArgumentException("no model \"" + name + "\"");
    };
  }

  /** Returns this model with the dissociation constants that the library takes by default. */
  EngineModel withDefaultConstants() {
    return new EngineModel(chemistry, Chemistry.standard().constants(), waterOfTheEngine);
  }

  /** Returns this model with the activity coefficients that the library takes by default. */
  EngineModel withDefaultActivity() {
    return new EngineModel(
        chemistry.withActivityRule(Chemistry.standard().activityRule()),
        constants,
        waterOfTheEngine);
  }

  /** Returns this model with other ion pairs. */
  EngineModel withPairs(PairSet pairs) {
    return new EngineModel(chemistry.withPairs(pairs), constants, waterOfTheEngine);
  }

  /** Returns this model with the library's ion product, and the activity of water taken as 1. */
  EngineModel withDefaultWater() {
    return new EngineModel(chemistry, constants, false);
  }

  /** A figure of a solution, and the equilibrium whose species lower the activity of water. */
  record Found<T>(T value, Equilibrium end) {}

  /** Solves a mixture of stated totals in mol per kg of water. */
  Equilibrium solve(
      Map<Component, Double> totals, double celsius, Function<Solution, Equilibrium> equilibrium) {
    return find(
        totals,
        celsius,
        solution -> {
          Equilibrium end = equilibrium.apply(solution);
          return new Found<>(end, end);
        });
  }

  /** Finds a figure of a mixture of stated totals, under the activity of water at its end. */
  <T> T find(Map<Component, Double> totals, double celsius, Function<Solution, Found<T>> search) {
    Solution solution = Solution.at(Temperature.ofCelsius(celsius));
    for (Map.Entry<Component, Double> total : totals.entrySet()) {
      solution = solution.with(total.getKey(), Molality.ofMolesPerKilogram(total.getValue()));
    }
    Equilibrium end = search.apply(solution.under(with(0))).end();
    return search.apply(solution.under(with(log10WaterActivity(end.species())))).value();
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
    if (!waterOfTheEngine) {
      return chemistry.withConstants(constants);
    }
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
              EnginePairs.libraryName(row.text("species")),
              row.number("a_angstrom"),
              row.number("b_kg_per_mol"));
    }
    return parameters;
  }
}
