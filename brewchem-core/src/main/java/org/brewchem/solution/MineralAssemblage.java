package org.brewchem.solution;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Component;
import org.brewchem.substance.Mineral;

/**
 * A solution from which several minerals have precipitated at once, until none is supersaturated.
 * Immutable.
 *
 * <p>It is the least of a free energy that is convex in the amounts, searched mineral by mineral:
 * each takes what brings its saturation index to zero, and gives back what a later one makes
 * dissolve again, down to nothing. Equilibrium is the final state, which a liquid may never reach.
 */
public final class MineralAssemblage {

  /** Rounds of the search; two minerals of lime softening need about ten. */
  private static final int MOST_ROUNDS = 500;

  /** A round that moves no amount by more, mol/kg, is the last. */
  private static final double SETTLED = 1e-13;

  private final Map<Mineral, Double> precipitated;
  private final Solution solution;

  private MineralAssemblage(Map<Mineral, Double> precipitated, Solution solution) {
    this.precipitated = precipitated;
    this.solution = solution;
  }

  /**
   * Lets minerals precipitate until none is supersaturated. What is not supersaturated stays.
   *
   * @param solution the solution
   * @param minerals the minerals, at least one, none twice
   * @return the equilibrium
   * @throws IllegalArgumentException if there is no mineral or one is named twice
   * @throws NoSolutionException if the search does not settle
   */
  public static MineralAssemblage precipitating(Solution solution, Mineral... minerals) {
    Objects.requireNonNull(solution, "solution");
    Objects.requireNonNull(minerals, "minerals");
    Set<Mineral> distinct = new LinkedHashSet<>(Arrays.asList(minerals));
    if (distinct.isEmpty() || distinct.size() < minerals.length) {
      throw Checks.outOfRange("minerals", minerals.length, "", "at least one, and none twice,");
    }
    double[] amounts = new double[minerals.length];
    Solution now = solution;
    double moved = Double.POSITIVE_INFINITY;
    for (int round = 0; moved > SETTLED; round++) {
      if (round == MOST_ROUNDS) {
        throw new NoSolutionException("equilibrium with " + distinct, 0, moved, moved, round);
      }
      moved = 0;
      for (int i = 0; i < minerals.length; i++) {
        MineralSearch search = new MineralSearch(now, minerals[i]);
        MineralSearch.Found found = amounts[i] == 0 ? search.precipitating() : search.withExcess();
        double change = found.precipitated();
        if (amounts[i] + change < 0) {
          change = -amounts[i];
          now = giving(now, minerals[i], amounts[i]);
        } else {
          now = found.solution();
        }
        amounts[i] = change == -amounts[i] ? 0 : amounts[i] + change;
        moved = minerals.length == 1 ? 0 : Math.max(moved, Math.abs(change));
      }
    }
    Map<Mineral, Double> precipitated = new LinkedHashMap<>();
    for (int i = 0; i < minerals.length; i++) {
      precipitated.put(minerals[i], amounts[i] * now.kilogramsPerLitre() * 1000);
    }
    return new MineralAssemblage(precipitated, now);
  }

  private static Solution giving(Solution solution, Mineral mineral, double molesPerKilogram) {
    Solution rest = solution;
    for (Map.Entry<Component, Double> part : mineral.components().entrySet()) {
      double total = rest.molesPerKilogram().getOrDefault(part.getKey(), 0.0);
      rest =
          rest.withTotal(
              part.getKey(),
              Molality.ofMolesPerKilogram(total + molesPerKilogram * part.getValue()));
    }
    return rest;
  }

  /**
   * Returns how much of a mineral has precipitated.
   *
   * @param mineral one of the minerals asked for
   * @return formula units per litre, mmol/L; 0 or more
   * @throws IllegalArgumentException if it was not asked for
   */
  public double precipitatedMillimolesPerLitre(Mineral mineral) {
    Objects.requireNonNull(mineral, "mineral");
    Double amount = precipitated.get(mineral);
    if (amount == null) {
      throw new IllegalArgumentException(
          "mineral: "
              + mineral
              + " is not possible; one of "
              + precipitated.keySet()
              + " is needed");
    }
    return amount;
  }

  /**
   * Returns the solution that is left.
   *
   * @return the solution
   */
  public Solution solution() {
    return solution;
  }

  /**
   * Finds the pH of the solution that is left.
   *
   * @return the pH
   */
  public PH pH() {
    return solution.pH();
  }

  /**
   * Returns what is notable about the solubilities at this temperature.
   *
   * @return a notice for each mineral whose source does not cover it or states no range
   */
  public List<Notice> notices() {
    List<Notice> notices = new ArrayList<>();
    for (Mineral mineral : precipitated.keySet()) {
      notices.addAll(
          BalanceNotices.solubility(mineral.name(), mineral.constant(), solution.temperature()));
    }
    return List.copyOf(notices);
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    precipitated.forEach(
        (mineral, amount) ->
            text.append(String.format(Locale.ROOT, "%.6g mmol/L of %s, ", amount, mineral)));
    return text + "precipitated; left: " + solution;
  }
}
