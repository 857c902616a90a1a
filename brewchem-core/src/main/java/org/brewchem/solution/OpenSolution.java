package org.brewchem.solution;

import java.util.List;
import java.util.Objects;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.substance.Gas;
import org.brewchem.substance.Solute;

/**
 * A solution open to a gas phase with a constant partial pressure of a gas: the total of the
 * dissolved gas with all its ions is not an input but a result.
 *
 * <p>The activity of the dissolved gas is its solubility (Henry's constant, for carbon dioxide by
 * Plummer and Busenberg 1982) times the partial pressure. Fugacity is taken as pressure, which for
 * carbon dioxide in a cellar is about 0.6 % too much per bar (second virial coefficient, from
 * memory). Salts act through the activity rule of the chemistry; extract and alcohol are neglected.
 * Immutable and thread-safe.
 */
public final class OpenSolution {
  private final Solution rest;
  private final Gas gas;
  private final Pressure pressure;
  private final double log10Activity;

  private OpenSolution(Solution solution, Gas gas, Pressure pressure) {
    Checks.positive("partial pressure of " + gas.name(), pressure.inKilopascals(), "kPa");
    this.rest = solution.withTotal(gas.component(), Molality.ofMolesPerKilogram(0));
    this.gas = gas;
    this.pressure = pressure;
    this.log10Activity =
        gas.solubility().log10(solution.temperature().inKelvin())
            + Math.log10(pressure.inAtmospheres());
  }

  /**
   * Opens a solution to a constant pressure of carbon dioxide, which it takes up or gives off until
   * both are in equilibrium.
   *
   * @param solution the solution
   * @param carbonDioxide the partial pressure of CO2, above 0
   * @return the open solution
   * @throws IllegalArgumentException if the pressure is zero; {@link Solution#degassedTo} removes
   *     all CO2
   */
  public static OpenSolution of(Solution solution, Pressure carbonDioxide) {
    Objects.requireNonNull(carbonDioxide, "carbon dioxide");
    return of(solution, Gas.CARBON_DIOXIDE, carbonDioxide);
  }

  /**
   * Opens a solution to a constant partial pressure of a gas, such as carbon dioxide with a
   * solubility of your own.
   *
   * @param solution the solution
   * @param gas the gas
   * @param partialPressure its partial pressure, above 0
   * @return the open solution
   * @throws IllegalArgumentException if the pressure is zero
   */
  public static OpenSolution of(Solution solution, Gas gas, Pressure partialPressure) {
    Objects.requireNonNull(partialPressure, "partial pressure");
    return new OpenSolution(solution, gas, partialPressure);
  }

  /**
   * Finds the pH at which the solution is neutral and in equilibrium with the gas.
   *
   * @return -log10 of the H+ activity
   * @throws NoSolutionException if there is none between -3 and 17
   */
  public PH pH() {
    return PH.of(equilibria().pH());
  }

  /**
   * Solves for everything at once.
   *
   * @return pH, ionic strength and species
   * @throws NoSolutionException if there is no pH between -3 and 17
   */
  public Equilibrium equilibrium() {
    return equilibria().equilibrium();
  }

  /**
   * Closes the solution as it is at equilibrium.
   *
   * @return a solution of the same pH that holds the gas that it took up
   * @throws NoSolutionException if there is no pH between -3 and 17
   */
  public Solution solution() {
    return rest.withTotal(gas.component(), equilibrium().total(gas.component()));
  }

  /**
   * Returns the strong base that takes the solution from one pH to another while the gas follows,
   * without dilution by it. With carbon dioxide this is much more than in a closed vessel if the pH
   * rises, because the gas that dissolves is an acid.
   *
   * @param from where it starts
   * @param to where it ends
   * @return equivalents of base per litre; negative when acid is needed
   */
  public ChargeConcentration equivalents(PH from, PH to) {
    Equilibria equilibria = equilibria();
    double start = equilibria.chargeAt(from.value());
    return ChargeConcentration.ofEquivalentsPerLitre(
        (start - equilibria.chargeAt(to.value())) * rest.kilogramsPerLitre());
  }

  /**
   * Finds how much of a solute brings the solution to a pH while the gas follows, its volume
   * unchanged.
   *
   * @param solute an acid, a base or a salt
   * @param target the pH to reach
   * @return the dose per kg of water; 0 when the solution is there already
   * @throws NoSolutionException if no dose between 0 and 50 mol/kg reaches the target
   */
  public Molality doseOf(Solute solute, PH target) {
    return Molality.ofMolesPerKilogram(
        rest.adding(solute.components(), 0, 0, this::hold).toReach(target, solute.name()));
  }

  /**
   * Returns the gas.
   *
   * @return the gas
   */
  public Gas gas() {
    return gas;
  }

  /**
   * Returns the partial pressure of the gas.
   *
   * @return the pressure
   */
  public Pressure partialPressure() {
    return pressure;
  }

  /**
   * Returns what is notable about the solubility at this temperature.
   *
   * @return a notice if its source does not cover the temperature or states no range; else empty
   */
  public List<Notice> notices() {
    return BalanceNotices.solubility(gas.name(), gas.solubility(), rest.temperature());
  }

  /** The solution without the gas, which is there as a component with nothing of it. */
  Solution rest() {
    return rest;
  }

  Equilibria equilibria() {
    Equilibria equilibria = rest.equilibria();
    hold(equilibria);
    return equilibria;
  }

  void hold(Equilibria equilibria) {
    equilibria.hold(gas.component(), gas.component().protons(), log10Activity);
  }

  @Override
  public String toString() {
    return rest + ", open to " + pressure + " absolute of " + gas;
  }
}
