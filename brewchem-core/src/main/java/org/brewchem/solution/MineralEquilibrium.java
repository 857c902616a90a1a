package org.brewchem.solution;

import java.util.Locale;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Mineral;

/**
 * A solution in equilibrium with a mineral: what has precipitated or dissolved, and the solution
 * that is left. Immutable.
 *
 * <p>Equilibrium is the end of the way, not how far a liquid gets: many minerals, calcium
 * phosphates above all, form slowly or not at all from a liquid that is supersaturated.
 */
public final class MineralEquilibrium {
  private final Mineral mineral;
  private final Solution solution;
  private final double precipitatedMolesPerLitre;

  MineralEquilibrium(Mineral mineral, Solution solution, double precipitatedMolesPerLitre) {
    this.mineral = mineral;
    this.solution = solution;
    this.precipitatedMolesPerLitre = precipitatedMolesPerLitre;
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
   * @return the amount of formula units per litre; 0 when it dissolves or the solution is not
   *     supersaturated
   */
  public AmountConcentration precipitated() {
    return AmountConcentration.ofMolesPerLitre(Math.max(precipitatedMolesPerLitre, 0));
  }

  /**
   * Returns how much of the mineral has dissolved.
   *
   * @return the amount of formula units per litre; 0 when it precipitates
   */
  public AmountConcentration dissolved() {
    return AmountConcentration.ofMolesPerLitre(Math.max(-precipitatedMolesPerLitre, 0));
  }

  /**
   * Tells whether the temperature lies outside the range that the source of the mineral's
   * solubility states.
   *
   * @return true if the solubility is extrapolated; false too when its source states no range
   */
  public boolean beyondConstantRange() {
    return mineral.constant().isBeyondRange(solution.temperature().inKelvin());
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%.6g mmol/L of %s %s; left: %s",
        Math.abs(precipitatedMolesPerLitre) * 1000,
        mineral,
        precipitatedMolesPerLitre < 0 ? "dissolved" : "precipitated",
        solution);
  }
}
