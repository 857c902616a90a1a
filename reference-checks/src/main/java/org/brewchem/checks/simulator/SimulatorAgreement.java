package org.brewchem.checks.simulator;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.IonPair;
import org.brewchem.substance.PairSet;

/**
 * Simulator and library on the same beers with the same constants, where they must agree: the one
 * place at which the two meet.
 */
public final class SimulatorAgreement {

  private static final int BEERS_OF_A_KIND = 20;
  private static final long SEED = 20261126;
  private static final double END_POINT = 8.2;
  private static final Map<String, Component> COMPONENTS =
      Map.of(
          "phosphate", Component.PHOSPHATE,
          "carbonate", Component.CARBONATE,
          "lactate", Component.LACTATE,
          "acetate", Component.ACETATE,
          "citrate", Component.CITRATE,
          "malate", Component.MALATE,
          "succinate", Component.SUCCINATE,
          "pyruvate", Component.PYRUVATE,
          "sulfate", Component.SULFATE);

  private static final Source SOURCE =
      new Source(
          "beer-simulator",
          "own simulator of unlike beers, another algorithm with constants of its own");

  private static final Tolerance ACIDITY =
      Tolerance.relative(
          0.0005, "the same acidity but for the slope of Debye and Hückel and the ion product");

  private SimulatorAgreement() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(check(Level.ACTIVITY), check(Level.PAIRS));
  }

  private static ReferenceCheck check(Level level) {
    String name = level.toString().toLowerCase(Locale.ROOT);
    return new ReferenceCheck(
        "simulator-" + name,
        Suite.INDEPENDENT,
        "Simulator of unlike beers with the same constants, level " + name,
        SOURCE,
        "pH at 15 and 28 °C and acidity to pH 8.2 at 20 °C of 20 beers of each of six kinds, the"
            + " library with the simulator's constants"
            + (level == Level.PAIRS ? " and pairs" : ", calcium and magnesium free"),
        Tolerance.absolute(
            0.0005,
            "pH",
            "the two take the slope of Debye and Hückel and the ion product from different formulas;"
                + " nothing else may differ"),
        "",
        3 * BEERS_OF_A_KIND * BeerKind.notSoured().size(),
        () -> rows(level));
  }

  private static List<Row> rows(Level level) {
    Random random = new Random(SEED);
    List<Row> rows = new ArrayList<>();
    for (BeerKind kind : BeerKind.notSoured()) {
      for (int i = 1; i <= BEERS_OF_A_KIND; i++) {
        SimulatedBeer drawn = kind.draw(random).with(Ligand.named("carbonate"), 0.003);
        SimulatedBeer beer = level == Level.PAIRS ? drawn : drawn.withoutPairs();
        Solution same = solution(beer, level);
        String label = kind.title() + " " + i;
        for (int celsius : new int[] {15, 28}) {
          rows.add(
              Row.of(
                  label + ", pH at " + celsius + " °C",
                  beer.at(celsius).pH(),
                  same.heldAt(Temperature.ofCelsius(celsius)).pH().value(),
                  HowKnown.COMPUTED));
        }
        double perLitre = 1000 * same.kilogramsPerLitre();
        rows.add(
            Row.of(
                    label + ", acidity",
                    beer.baseTo(END_POINT) * perLitre,
                    same.titratableAcidity(PH.of(END_POINT)).inMilliequivalentsPerLitre(),
                    HowKnown.COMPUTED)
                .within(ACIDITY));
      }
    }
    return rows;
  }

  private static Solution solution(SimulatedBeer beer, Level level) {
    Map<Component, Molality> totals = new HashMap<>();
    ConstantSet constants = ConstantSet.empty("simulator");
    PairSet pairs = PairSet.none();
    for (int j = 0; j < beer.ligands().size(); j++) {
      Ligand ligand = beer.ligands().get(j);
      Component component = COMPONENTS.get(ligand.name());
      if (component == null) {
        component = Component.group(ligand.name(), ligand.charge(), ligand.pKa());
      } else {
        constants = constants.with(component, dissociation(ligand));
        pairs = pairs(pairs, component, Component.CALCIUM, ligand, ligand.calcium());
        pairs = pairs(pairs, component, Component.MAGNESIUM, ligand, ligand.magnesium());
      }
      totals.put(component, Molality.ofMolesPerKilogram(beer.total(j)));
    }
    totals.put(Component.CALCIUM, Molality.ofMolesPerKilogram(beer.calcium()));
    totals.put(Component.MAGNESIUM, Molality.ofMolesPerKilogram(beer.magnesium()));
    totals.put(Component.SODIUM, Molality.ofMolesPerKilogram(beer.salt()));
    totals.put(Component.CHLORIDE, Molality.ofMolesPerKilogram(beer.salt()));
    Solution solution = Solution.at(Temperature.ofCelsius(20));
    for (Map.Entry<Component, Molality> total : totals.entrySet()) {
      solution = solution.withTotal(total.getKey(), total.getValue());
    }
    return solution
        .withInertCharge(
            ChargeConcentration.ofMilliequivalentsPerLitre(
                beer.strong() * 1000 * solution.kilogramsPerLitre()))
        .under(Chemistry.of(level).withConstants(constants).withPairs(pairs));
  }

  private static EquilibriumConstant[] dissociation(Ligand ligand) {
    return IntStream.range(0, ligand.pKa().length)
        .mapToObj(i -> EquilibriumConstant.ofLog10(-ligand.pKa()[i], ligand.enthalpy()[i], 0))
        .toArray(EquilibriumConstant[]::new);
  }

  private static PairSet pairs(
      PairSet before, Component component, Component metal, Ligand ligand, double[] logarithms) {
    PairSet after = before;
    EquilibriumConstant protonation = EquilibriumConstant.ofLog10(0);
    for (int n = 0; n < logarithms.length; n++) {
      if (n > 0) {
        int step = ligand.pKa().length - n;
        protonation =
            protonation.plus(
                EquilibriumConstant.ofLog10(ligand.pKa()[step], -ligand.enthalpy()[step], 0));
      }
      if (!Double.isNaN(logarithms[n])) {
        after =
            after.with(
                IonPair.of(
                    metal.name() + " with " + ligand.name() + " and H" + n,
                    metal,
                    component,
                    1,
                    n,
                    protonation.plus(EquilibriumConstant.ofLog10(logarithms[n]))));
      }
    }
    return after;
  }
}
