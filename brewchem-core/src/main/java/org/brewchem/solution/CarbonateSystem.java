package org.brewchem.solution;

import java.util.Objects;
import java.util.OptionalDouble;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.substance.Component;

/**
 * The carbonate system of a water: total carbon dioxide, pH and the two alkalinities, each found
 * from the others by the proton balance.
 *
 * <p>Carbonate alkalinity is a composition: [HCO3-] + 2 [CO3--], what is paired with calcium and
 * other cations included. Titration alkalinity is an operation: the strong acid that takes the
 * water to a stated pH, whichever species take up the protons. In a water with nothing but
 * carbonate they differ by the bicarbonate that is left at the end point and by the hydrogen ions
 * that it takes to get there, about 1 % at pH 4.5.
 *
 * <p>The other ions of the solution count for ionic strength and pairs. At a pH that is not its own
 * an inert univalent ion makes the solution neutral, as everywhere in {@link Solution}.
 */
public final class CarbonateSystem {

  private CarbonateSystem() {}

  /**
   * Returns the carbonate alkalinity of a solution at its own pH.
   *
   * @param solution the solution
   * @return bicarbonate plus twice carbonate, pairs included
   * @throws org.brewchem.solution.NoSolutionException if the solution has no pH
   */
  public static CarbonateAlkalinity carbonateAlkalinity(Solution solution) {
    return ofKilograms(solution, CarbonateBalance.of(solution).ownAlkalinity());
  }

  /**
   * Returns the carbonate alkalinity that a solution's total carbon dioxide has at a pH.
   *
   * @param solution the solution
   * @param pH the pH
   * @return bicarbonate plus twice carbonate, pairs included
   */
  public static CarbonateAlkalinity carbonateAlkalinity(Solution solution, PH pH) {
    return ofKilograms(solution, CarbonateBalance.of(solution).alkalinityAt(pH.value()));
  }

  private static CarbonateAlkalinity ofKilograms(Solution solution, double equivalentsPerKilogram) {
    return CarbonateAlkalinity.ofMilliequivalentsPerLitre(
        equivalentsPerKilogram * solution.kilogramsPerLitre() * 1000);
  }

  /**
   * Returns the titration alkalinity of a solution: the strong acid per litre from its own pH to
   * the end point, without dilution by the titrant.
   *
   * @param solution the solution
   * @param endPoint the pH that the titration ends at
   * @return the alkalinity; negative when the solution lies below the end point
   */
  public static TitrationAlkalinity titrationAlkalinity(Solution solution, PH endPoint) {
    Objects.requireNonNull(endPoint, "end point");
    return TitrationAlkalinity.ofMilliequivalentsPerLitre(
        solution.charge(endPoint).inMilliequivalentsPerLitre(), endPoint);
  }

  /**
   * Returns the total carbon dioxide that gives a water a carbonate alkalinity at a pH.
   *
   * @param others the other ions, with the temperature of the pH; carbonate that it holds does not
   *     count
   * @param alkalinity the carbonate alkalinity
   * @param pH the pH of the water
   * @return CO2, bicarbonate and carbonate together
   * @throws IllegalArgumentException if more than 10 mol of carbon dioxide per kg would be needed
   */
  public static AmountConcentration totalCarbonDioxide(
      Solution others, CarbonateAlkalinity alkalinity, PH pH) {
    double wanted = alkalinity.inMilliequivalentsPerLitre() / 1000 / others.kilogramsPerLitre();
    OptionalDouble total = CarbonateBalance.of(others).totalOf(wanted, pH.value());
    return perLitre(others, total, pH, alkalinity);
  }

  /**
   * Returns the total carbon dioxide that gives a water a titration alkalinity from a pH.
   *
   * @param others the other ions and buffers, with the temperature of the pH; carbonate that it
   *     holds does not count
   * @param alkalinity the titration alkalinity with its end point
   * @param pH the pH of the water, above the end point
   * @return CO2, bicarbonate and carbonate together
   * @throws IllegalArgumentException if the pH is not above the end point, if the water takes up
   *     more acid than that without any carbon dioxide, or if more than 10 mol of carbon dioxide
   *     per kg would be needed
   */
  public static AmountConcentration totalCarbonDioxide(
      Solution others, TitrationAlkalinity alkalinity, PH pH) {
    if (pH.compareTo(alkalinity.endPoint()) <= 0) {
      throw new IllegalArgumentException(
          "pH: "
              + pH
              + " is not possible; a water with an alkalinity of "
              + alkalinity
              + " lies above its end point");
    }
    CarbonateBalance balance = CarbonateBalance.of(others);
    double end = alkalinity.endPoint().value();
    double wanted = alkalinity.inMilliequivalentsPerLitre() / 1000 / others.kilogramsPerLitre();
    double without = balance.titrated(0, end, pH.value());
    if (wanted < without) {
      throw new IllegalArgumentException(
          "alkalinity: "
              + alkalinity
              + " is not possible at "
              + pH
              + "; without any carbon dioxide the water takes up "
              + TitrationAlkalinity.ofMilliequivalentsPerLitre(
                  without * others.kilogramsPerLitre() * 1000, alkalinity.endPoint()));
    }
    OptionalDouble total =
        balance.closeByTitration(wanted, end, pH.value())
            ? OptionalDouble.of(balance.total())
            : OptionalDouble.empty();
    return perLitre(others, total, pH, alkalinity);
  }

  private static AmountConcentration perLitre(
      Solution others, OptionalDouble molesPerKilogram, PH pH, Object alkalinity) {
    if (molesPerKilogram.isEmpty()) {
      throw new IllegalArgumentException(
          "pH: "
              + pH
              + " is not possible with an alkalinity of "
              + alkalinity
              + "; more than 10 mol/kg of carbon dioxide would be needed");
    }
    return AmountConcentration.ofMolesPerLitre(
        molesPerKilogram.getAsDouble() * others.kilogramsPerLitre());
  }

  /**
   * Returns the pH at which a total carbon dioxide has a carbonate alkalinity.
   *
   * @param solution a solution with its total carbon dioxide
   * @param alkalinity the carbonate alkalinity, above 0 and below twice the total carbon dioxide
   * @return the pH, between 2 and 13.5
   * @throws IllegalArgumentException if no pH between 2 and 13.5 gives that alkalinity
   */
  public static PH pH(Solution solution, CarbonateAlkalinity alkalinity) {
    double wanted = alkalinity.inMilliequivalentsPerLitre() / 1000 / solution.kilogramsPerLitre();
    OptionalDouble found = CarbonateBalance.of(solution).pHOf(wanted);
    if (found.isEmpty()) {
      throw new IllegalArgumentException(
          "alkalinity: "
              + alkalinity
              + " is not possible with "
              + solution.total(Component.CARBONATE)
              + " of carbon dioxide; more than 0 and less than twice as many mEq/L are");
    }
    return PH.of(found.getAsDouble());
  }
}
