package org.brewchem.solution;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.internal.PhysicalConstants;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Component;
import org.brewchem.substance.Gas;

/**
 * A solution in a sealed vessel, in equilibrium with the carbon dioxide of the headspace above it.
 *
 * <p>The carbon dioxide of the vessel is conserved. In the headspace it is an ideal gas; air and
 * water vapour, which add to the pressure that a gauge shows, are left out, and the volumes stay as
 * they are. Immutable.
 */
public final class Headspace {

  private final Solution solution;
  private final Pressure partialPressure;
  private final AmountOfSubstance inGas;

  private Headspace(Solution solution, Pressure partialPressure, AmountOfSubstance inGas) {
    this.solution = solution;
    this.partialPressure = partialPressure;
    this.inGas = inGas;
  }

  /**
   * Seals a solution in a vessel with a headspace that holds no carbon dioxide yet, and lets its
   * carbon dioxide spread over both.
   *
   * @param solution the solution
   * @param own its volume, above 0
   * @param headspace the volume of the headspace, 0 or more
   * @return the equilibrium
   * @throws IllegalArgumentException if there is no solution
   */
  public static Headspace over(Solution solution, Volume own, Volume headspace) {
    Objects.requireNonNull(headspace, "headspace");
    double kilograms =
        Checks.positive("volume of the solution", own.inLitres(), "L")
            * solution.kilogramsPerLitre();
    double all = solution.molesPerKilogram().getOrDefault(Component.CARBONATE, 0.0);
    if (all == 0) {
      return new Headspace(solution, Pressure.ofKilopascals(0), AmountOfSubstance.ofMoles(0));
    }
    Equilibria equilibria = solution.equilibria();
    int index = equilibria.indexOf(Component.CARBONATE);
    double kelvin = solution.temperature().inKelvin();
    DoubleUnaryOperator excess =
        dissolved -> {
          equilibria.setTotal(index, dissolved);
          Pressure over = equilibria.equilibrium().partialPressure(Gas.CARBON_DIOXIDE);
          return (dissolved - all) / all + molesIn(headspace, over, kelvin) / (all * kilograms);
        };
    double dissolved =
        headspace.inLitres() == 0
            ? all
            : Roots.between(excess, 0, all)
                .orElseThrow(
                    end -> new NoSolutionException("carbon dioxide left in solution", end));
    Solution left = solution.withTotal(Component.CARBONATE, Molality.ofMolesPerKilogram(dissolved));
    Pressure over = left.equilibrium().partialPressure(Gas.CARBON_DIOXIDE);
    return new Headspace(left, over, AmountOfSubstance.ofMoles(molesIn(headspace, over, kelvin)));
  }

  private static double molesIn(Volume headspace, Pressure pressure, double kelvin) {
    return PhysicalConstants.idealGasMolesPerLitre(pressure.inKilopascals(), kelvin)
        * headspace.inLitres();
  }

  /**
   * Returns the solution at equilibrium.
   *
   * @return a solution that holds what has stayed in it
   */
  public Solution solution() {
    return solution;
  }

  /**
   * Finds the pH of the solution at equilibrium.
   *
   * @return the pH
   */
  public PH pH() {
    return solution.pH();
  }

  /**
   * Returns the partial pressure of carbon dioxide.
   *
   * @return the pressure, without that of air and water vapour
   */
  public Pressure partialPressure() {
    return partialPressure;
  }

  /**
   * Returns the carbon dioxide in the headspace.
   *
   * @return the amount
   */
  public AmountOfSubstance inGas() {
    return inGas;
  }

  /**
   * Returns what is notable about the solubility at this temperature.
   *
   * @return a notice if its source does not cover the temperature or states no range; else empty
   */
  public List<Notice> notices() {
    return BalanceNotices.solubility(
        Gas.CARBON_DIOXIDE.name(), Gas.CARBON_DIOXIDE.solubility(), solution.temperature());
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%s absolute of CO2, %s in the headspace, over %s",
        partialPressure,
        inGas,
        solution);
  }
}
