package org.brewchem.solution;

import java.util.LinkedHashSet;
import java.util.OptionalDouble;
import java.util.Set;
import org.brewchem.internal.Roots;
import org.brewchem.substance.Component;

/**
 * The carbonate system of a mixture in a work space: alkalinity, pH and total carbon dioxide, each
 * from the other two, on plain numbers per kg of water. {@link CarbonateSystem} is the same for a
 * single solution.
 *
 * <p>Alkalinity here is carbonate alkalinity, [HCO3-] + 2 [CO3--] with what is paired included. The
 * other totals of the work space count for ionic strength and pairs, and at a pH that is not its
 * own an inert univalent ion makes the mixture neutral. Mutable as its work space, for one thread.
 */
public final class CarbonateBalance {

  static final double MOST_MOLES_PER_KILOGRAM = 10;

  private static final double LOWEST_PH = 2;
  private static final double HIGHEST_PH = 13.5;

  private final Equilibria equilibria;
  private final int carbonate;

  private CarbonateBalance(Equilibria equilibria) {
    this.equilibria = equilibria;
    this.carbonate = equilibria.indexOf(Component.CARBONATE);
  }

  /**
   * Works on a work space.
   *
   * @param equilibria a work space whose components include the carbonate
   * @return the balance
   * @throws IllegalArgumentException if there is no carbonate
   */
  public static CarbonateBalance of(Equilibria equilibria) {
    return new CarbonateBalance(equilibria);
  }

  /** Works on a solution. */
  static CarbonateBalance of(Solution solution) {
    Set<Component> components = new LinkedHashSet<>(solution.molesPerKilogram().keySet());
    components.add(Component.CARBONATE);
    Equilibria equilibria = Equilibria.of(components, solution.temperature(), solution.chemistry());
    solution
        .molesPerKilogram()
        .forEach((component, total) -> equilibria.setTotal(equilibria.indexOf(component), total));
    equilibria.setInertCharge(solution.inertPerKilogram());
    return new CarbonateBalance(equilibria);
  }

  /** Returns the alkalinity at the pH that the mixture has of its own. */
  double ownAlkalinity() {
    equilibria.pH();
    return alkalinity();
  }

  /**
   * Returns the alkalinity at the last solution of the work space.
   *
   * @return eq per kg of water
   */
  public double alkalinity() {
    return -equilibria.chargeOf(carbonate) + 0.0;
  }

  /**
   * Returns the alkalinity at a pH.
   *
   * @param pH the pH
   * @return eq per kg of water
   */
  public double alkalinityAt(double pH) {
    equilibria.chargeAt(pH);
    return alkalinity();
  }

  /**
   * Finds the pH at which the total carbon dioxide of the work space has an alkalinity.
   *
   * @param alkalinity eq per kg of water
   * @return the pH; empty if there is none between 2 and 13.5, as when the alkalinity is 0, or
   *     twice the total carbon dioxide or more
   */
  public OptionalDouble pHOf(double alkalinity) {
    double lowest = alkalinityAt(LOWEST_PH);
    double highest = alkalinityAt(HIGHEST_PH);
    if (alkalinity < lowest || alkalinity > highest || highest == 0) {
      return OptionalDouble.empty();
    }
    return Roots.between(pH -> alkalinityAt(pH) - alkalinity, LOWEST_PH, HIGHEST_PH).asOptional();
  }

  /**
   * Finds the total carbon dioxide that has an alkalinity at a pH, and leaves it in the work space.
   *
   * @param alkalinity eq per kg of water, 0 or more
   * @param pH the pH
   * @return mol per kg of water; empty if more than 10 would be needed
   */
  public OptionalDouble totalOf(double alkalinity, double pH) {
    OptionalDouble total =
        alkalinity == 0
            ? OptionalDouble.of(0)
            : Roots.rising(
                    moles -> alkalinityOf(moles, pH) / alkalinity - 1,
                    0,
                    alkalinity,
                    MOST_MOLES_PER_KILOGRAM)
                .asOptional();
    total.ifPresent(moles -> equilibria.setTotal(carbonate, moles));
    return total;
  }

  private double alkalinityOf(double moles, double pH) {
    equilibria.setTotal(carbonate, moles);
    return alkalinityAt(pH);
  }
}
