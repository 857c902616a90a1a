package org.brewchem.solution;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Mineral;

/**
 * A solution in equilibrium with a mineral: what has precipitated or dissolved, and the solution
 * that is left. Immutable.
 *
 * <p>Equilibrium is the final state, which a liquid may never reach: many minerals, calcium
 * phosphates above all, form slowly or not at all from a liquid that is supersaturated.
 */
public final class MineralEquilibrium {
  private final Mineral mineral;
  private final Solution solution;
  private final double precipitated;

  private MineralEquilibrium(Mineral mineral, MineralSearch.Found found) {
    this.mineral = mineral;
    this.solution = found.solution();
    this.precipitated = found.precipitated() * solution.kilogramsPerLitre() * 1000;
  }

  /**
   * Brings a solution to equilibrium with an excess of a mineral, which dissolves or precipitates
   * until its saturation index is zero.
   *
   * @param solution the solution
   * @param mineral the mineral
   * @return the equilibrium
   * @throws NoSolutionException if more than 50 mol/kg would dissolve
   */
  public static MineralEquilibrium of(Solution solution, Mineral mineral) {
    Objects.requireNonNull(solution, "solution");
    return new MineralEquilibrium(mineral, new MineralSearch(solution, mineral).withExcess());
  }

  /**
   * Brings an open solution to equilibrium with an excess of a mineral, while the gas follows.
   *
   * @param solution the open solution
   * @param mineral the mineral
   * @return the equilibrium
   * @throws NoSolutionException if more than 50 mol/kg would dissolve
   */
  public static MineralEquilibrium of(OpenSolution solution, Mineral mineral) {
    Objects.requireNonNull(solution, "solution");
    return new MineralEquilibrium(mineral, new MineralSearch(solution, mineral).withExcess());
  }

  /**
   * Lets a mineral precipitate from a solution until its saturation index is zero, as in boiling
   * and lime softening. A solution that is not supersaturated stays as it is.
   *
   * @param solution the solution
   * @param mineral the mineral
   * @return the equilibrium
   */
  public static MineralEquilibrium precipitating(Solution solution, Mineral mineral) {
    Objects.requireNonNull(solution, "solution");
    return new MineralEquilibrium(mineral, new MineralSearch(solution, mineral).precipitating());
  }

  /**
   * Lets a mineral precipitate from an open solution until its saturation index is zero, while the
   * gas follows. A solution that is not supersaturated only takes up or gives off gas.
   *
   * @param solution the open solution
   * @param mineral the mineral
   * @return the equilibrium
   */
  public static MineralEquilibrium precipitating(OpenSolution solution, Mineral mineral) {
    Objects.requireNonNull(solution, "solution");
    return new MineralEquilibrium(mineral, new MineralSearch(solution, mineral).precipitating());
  }

  /**
   * Returns the mineral.
   *
   * @return the mineral
   */
  public Mineral mineral() {
    return mineral;
  }

  /**
   * Returns the solution that is left, closed: of an open one, with the gas that it then holds.
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
   * Returns how much of the mineral has precipitated.
   *
   * @return formula units per litre, mmol/L; negative where the mineral has dissolved
   */
  public double precipitatedMillimolesPerLitre() {
    return precipitated;
  }

  /**
   * Returns what is notable about the solubility at this temperature.
   *
   * @return a notice if its source does not cover the temperature or states no range; else empty
   */
  public List<Notice> notices() {
    return BalanceNotices.solubility(mineral.name(), mineral.constant(), solution.temperature());
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%.6g mmol/L of %s %s; left: %s",
        Math.abs(precipitated),
        mineral,
        precipitated < 0 ? "dissolved" : "precipitated",
        solution);
  }
}
