package org.brewchem.checks.independent;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.Mixture;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.solution.ActivityRule;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.Level;
import org.brewchem.solution.Species;
import org.brewchem.substance.Component;

/** Random mixtures, ordinary and hostile ones, solved by the kernel and with fifty digits. */
public final class OracleMixtures {

  private static final long SEED = 20261125;
  private static final int MIXTURES = 200;

  private static final Tolerance TOLERANCE =
      Tolerance.times(
              4, "eps x sum of abs(z) c / buffer capacity", "pH", "what doubles can resolve")
          .atLeast(1e-10);

  private static final List<Component> STRONG =
      List.of(
          Component.SODIUM,
          Component.POTASSIUM,
          Component.CALCIUM,
          Component.MAGNESIUM,
          Component.CHLORIDE,
          Component.NITRATE);

  private static final List<Component> WEAK =
      List.of(
          Component.CARBONATE,
          Component.PHOSPHATE,
          Component.SULFATE,
          Component.LACTATE,
          Component.ACETATE,
          Component.CITRATE,
          Component.MALATE,
          Component.TARTRATE,
          Component.SUCCINATE,
          Component.BORATE,
          Component.AMMONIA);

  private OracleMixtures() {}

  /** Returns the checks, one for each level. */
  public static List<ReferenceCheck> all() {
    List<ReferenceCheck> checks = new ArrayList<>();
    for (Level level : Level.values()) {
      String name = level.toString().toLowerCase(Locale.ROOT);
      checks.add(
          new ReferenceCheck(
              "oracle-" + name,
              Suite.INDEPENDENT,
              "Random mixtures with fifty digits, level " + name,
              new Source(
                  "precision-oracle",
                  "the balances set up a second time, every free component an unknown, with big-math 2.3.2"),
              "pH of random mixtures of 1e-9 to 5 mol/kg at 0 to 100 °C, among them strong ions"
                  + " alone, a single acid, hardly anything in water, and pure water",
              TOLERANCE,
              "activity coefficients by ion size",
              MIXTURES,
              () -> rows(level)));
    }
    return checks;
  }

  private static List<Row> rows(Level level) {
    Random random = new Random(SEED);
    Chemistry chemistry = Chemistry.of(level).withActivityRule(ActivityRule.davies());
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < MIXTURES; i++) {
      Map<Component, Double> totals = mixture(random, i);
      double celsius = random.nextInt(101);
      Equilibria equilibria = Mixture.of(totals, celsius, chemistry);
      double pH = equilibria.pH();
      double oracle = PrecisionOracle.pH(totals, celsius, chemistry, equilibria).doubleValue();
      rows.add(
          Row.of("mixture " + i, oracle, pH, HowKnown.COMPUTED).scaledBy(resolution(equilibria)));
    }
    return rows;
  }

  private static double resolution(Equilibria equilibria) {
    double charges = 0;
    for (Species species : equilibria.species()) {
      charges += Math.abs(species.charge()) * species.molality().inMolesPerKilogram();
    }
    return Math.ulp(1.0) * charges / equilibria.bufferCapacity();
  }

  private static Map<Component, Double> mixture(Random random, int number) {
    Map<Component, Double> totals = new LinkedHashMap<>();
    switch (number % 10) {
      case 0 -> add(totals, STRONG, 1 + random.nextInt(4), -6, 0.7, random);
      case 1 -> add(totals, WEAK, 1, -9, 0.7, random);
      case 2 -> {
        add(totals, STRONG, 2, -9, -7, random);
        add(totals, WEAK, 2, -9, -7, random);
      }
      case 3 -> {
        add(totals, STRONG, 4, -3, 0.7, random);
        add(totals, WEAK, 4, -3, 0, random);
      }
      default -> {
        add(totals, STRONG, 5, -4.5, -1.5, random);
        add(totals, WEAK, 5, -4.5, -1.5, random);
      }
    }
    if (number == 0) {
      totals.clear();
    }
    return totals;
  }

  private static void add(
      Map<Component, Double> totals,
      List<Component> from,
      int count,
      double lowest,
      double highest,
      Random random) {
    for (int i = 0; i < count; i++) {
      double log10 = lowest + (highest - lowest) * random.nextDouble();
      totals.put(from.get(random.nextInt(from.size())), Math.pow(10, log10));
    }
  }
}
