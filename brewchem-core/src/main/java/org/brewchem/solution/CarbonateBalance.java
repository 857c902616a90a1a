package org.brewchem.solution;

import java.util.LinkedHashSet;
import java.util.OptionalDouble;
import java.util.Set;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Roots;
import org.brewchem.substance.Component;

/**
 * The carbonate system of a mixture in a work space: alkalinity, pH and total carbon dioxide, each
 * from the other two, on plain numbers per kg of water, and the closure of a water to two of them.
 * {@link CarbonateSystem} is the same for a single solution, {@link CarbonateClosure} for a single
 * water with its uncertainties; the rows of a table are closed here.
 *
 * <p>Alkalinity here is carbonate alkalinity, [HCO3-] + 2 [CO3--] with what is paired included. The
 * other totals of the work space count for ionic strength and pairs, and at a pH that is not its
 * own an inert univalent ion makes the mixture neutral. Mutable as its work space, for one thread.
 */
public final class CarbonateBalance {

  /** Leaves a pH known to its last bits. */
  private static final int HALVINGS = 50;

  /** How far an alkalinity may be off, as a share. */
  private static final double SAME = 1e-9;

  static final double MOST_MOLES_PER_KILOGRAM = 10;

  private static final double LOWEST_PH = 2;

  /** An assumption: no water is near it. */
  private static final double HIGHEST_PH = 13.5;

  private final Equilibria equilibria;
  private final int carbonate;
  private double total;
  private double pH;

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
   * @throws IllegalArgumentException if the pH is not finite
   */
  public double alkalinityAt(double pH) {
    Checks.finite("pH", pH, "");
    equilibria.chargeAt(pH);
    return alkalinity();
  }

  /**
   * Finds the pH at which the total carbon dioxide of the work space has an alkalinity.
   *
   * @param alkalinity eq per kg of water
   * @return the pH; empty if there is none between 2 and 13.5, as when the alkalinity is 0, or
   *     twice the total carbon dioxide or more
   * @throws IllegalArgumentException if the alkalinity is not finite
   */
  public OptionalDouble pHOf(double alkalinity) {
    Checks.finite("alkalinity", alkalinity, "Eq/kg");
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
   * @throws IllegalArgumentException if a number is not finite
   */
  public OptionalDouble totalOf(double alkalinity, double pH) {
    Checks.finite("alkalinity", alkalinity, "Eq/kg");
    Checks.finite("pH", pH, "");
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

  /**
   * Closes the mixture to an alkalinity and a measured pH: the total carbon dioxide that has the
   * alkalinity there, and the inert charge that makes the mixture neutral there. Both are left in
   * the work space, from whose other totals alone they come.
   *
   * @param alkalinity eq per kg of water, 0 or more
   * @param measured the pH
   * @return false if more than 10 mol/kg of carbon dioxide would be needed; the work space is then
   *     not closed
   * @throws IllegalArgumentException if a number is not finite
   */
  public boolean closeByPH(double alkalinity, double measured) {
    Checks.finite("alkalinity", alkalinity, "Eq/kg");
    Checks.finite("measured pH", measured, "");
    equilibria.setInertCharge(0);
    OptionalDouble found = totalOf(alkalinity, measured);
    if (found.isEmpty()) {
      return false;
    }
    close(found.getAsDouble(), measured);
    return true;
  }

  /**
   * Closes the mixture to an alkalinity and a total carbon dioxide, at the pH at which the two are
   * consistent; otherwise like {@link #closeByPH}. Without either, only the ions are made neutral.
   *
   * @param alkalinity eq per kg of water
   * @param carbonDioxide mol per kg of water, 0 or more
   * @return false if no pH between 2 and 13.5 has them together; the work space is then not closed
   * @throws IllegalArgumentException if a number is not finite
   */
  public boolean closeByTotal(double alkalinity, double carbonDioxide) {
    Checks.finite("alkalinity", alkalinity, "Eq/kg");
    Checks.finite("carbon dioxide", carbonDioxide, "mol/kg");
    equilibria.setInertCharge(0);
    equilibria.setTotal(carbonate, carbonDioxide);
    if (alkalinity == 0 && carbonDioxide == 0) {
      total = 0;
      equilibria.setInertCharge(-equilibria.chargeWithoutProtons());
      pH = equilibria.pH();
      return true;
    }
    OptionalDouble found = pHOf(alkalinity);
    if (found.isEmpty()) {
      return false;
    }
    close(carbonDioxide, found.getAsDouble());
    return true;
  }

  /**
   * Closes the mixture to an alkalinity that was titrated to an end point and a measured pH;
   * otherwise like {@link #closeByPH}.
   *
   * @param alkalinity eq per kg of water, at least {@link #titrated} without carbon dioxide
   * @param endPoint the pH that the titration ended at
   * @param measured the pH, above the end point
   * @return false if more than 10 mol/kg of carbon dioxide would be needed; the work space is then
   *     not closed
   * @throws IllegalArgumentException if a number is not finite
   */
  public boolean closeByTitration(double alkalinity, double endPoint, double measured) {
    Checks.finite("alkalinity", alkalinity, "Eq/kg");
    Checks.finite("end point", endPoint, "");
    Checks.finite("measured pH", measured, "");
    OptionalDouble found =
        Roots.rising(
                moles -> titrated(moles, endPoint, measured) - alkalinity,
                0,
                Math.max(alkalinity, 1e-9),
                MOST_MOLES_PER_KILOGRAM)
            .asOptional();
    if (found.isEmpty()) {
      return false;
    }
    close(found.getAsDouble(), measured);
    return true;
  }

  /**
   * Closes to two titrations of one water: the total and the pH at which both come out.
   *
   * @param alkalinity acid to an end point below the pH of the water, eq per kg of water
   * @param endPoint that end point
   * @param other acid to another end point, eq per kg of water; below 0 where a base was needed
   * @param otherEndPoint the other end point, above the first
   * @return false if no pH below 13.5 has both; the work space is then not closed
   */
  boolean closeByTitrations(
      double alkalinity, double endPoint, double other, double otherEndPoint) {
    double low = endPoint;
    double high = HIGHEST_PH;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      boolean isTooHigh =
          titrated(0, endPoint, middle) > alkalinity
              || (closeByTitration(alkalinity, endPoint, middle)
                  && titrated(total, otherEndPoint, middle) > other);
      low = isTooHigh ? low : middle;
      high = isTooHigh ? middle : high;
    }
    if (titrated(0, endPoint, low) > alkalinity || !closeByTitration(alkalinity, endPoint, low)) {
      return false;
    }
    double moles = total;
    boolean isFound =
        Math.abs(titrated(moles, otherEndPoint, low) - other)
            <= SAME * Math.max(Math.abs(other), Math.abs(alkalinity));
    close(moles, low);
    return isFound;
  }

  /**
   * Finds the acid that a mixture of a total carbon dioxide takes up from its pH to an end point,
   * and leaves the total in the work space, not closed.
   *
   * @param carbonDioxide mol per kg of water, 0 or more
   * @param endPoint the pH that the titration ends at
   * @param measured the pH at which it is neutral
   * @return eq per kg of water
   * @throws IllegalArgumentException if a number is not finite
   */
  public double titrated(double carbonDioxide, double endPoint, double measured) {
    Checks.finite("carbon dioxide", carbonDioxide, "mol/kg");
    Checks.finite("end point", endPoint, "");
    Checks.finite("measured pH", measured, "");
    close(carbonDioxide, measured);
    double charge = equilibria.chargeAt(endPoint);
    equilibria.setInertCharge(0);
    return charge;
  }

  private void close(double carbonDioxide, double neutralAt) {
    total = carbonDioxide;
    pH = neutralAt;
    equilibria.setTotal(carbonate, carbonDioxide);
    equilibria.setInertCharge(0);
    equilibria.setInertCharge(-equilibria.chargeAt(neutralAt));
  }

  /**
   * Returns the total carbon dioxide of the last closure.
   *
   * @return mol per kg of water
   */
  public double total() {
    return total;
  }

  /**
   * Returns the pH of the last closure.
   *
   * @return the pH at which the mixture was made neutral
   */
  public double pH() {
    return pH;
  }

  private double alkalinityOf(double moles, double pH) {
    equilibria.setTotal(carbonate, moles);
    return alkalinityAt(pH);
  }
}
