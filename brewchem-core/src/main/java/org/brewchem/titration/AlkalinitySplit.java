package org.brewchem.titration;

import org.brewchem.internal.Checks;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitrationAlkalinity;

/**
 * Hydroxide, carbonate and bicarbonate estimated from two alkalinities of one water: P, to pH 8.3,
 * and M, the total (the classical table, Standard Methods 2320 B). Immutable.
 *
 * <p>The table takes hydroxide and bicarbonate as never present together, and everything else that
 * takes up protons as absent. Its five cases are P = 0, P below, equal to and above half of M, and
 * P = M.
 */
public final class AlkalinitySplit {

  private final PH endPoint;
  private final double hydroxide;
  private final double carbonate;
  private final double bicarbonate;

  private AlkalinitySplit(double p, double m, PH endPoint) {
    this.endPoint = endPoint;
    if (p > m / 2) {
      this.hydroxide = 2 * p - m;
      this.carbonate = 2 * (m - p);
      this.bicarbonate = 0;
    } else {
      this.hydroxide = 0;
      this.carbonate = 2 * p;
      this.bicarbonate = m - 2 * p;
    }
  }

  /**
   * Splits the alkalinity of a water.
   *
   * @param phenolphthalein P, the alkalinity to an end point of 8.2 or 8.3; 0 or more
   * @param total M, the alkalinity to a lower end point; P or more
   * @return the split
   * @throws IllegalArgumentException if P is negative or above M, or its end point is not above
   *     that of M
   */
  public static AlkalinitySplit of(TitrationAlkalinity phenolphthalein, TitrationAlkalinity total) {
    if (phenolphthalein.endPoint().compareTo(total.endPoint()) <= 0) {
      throw new IllegalArgumentException(
          "end point of P: "
              + phenolphthalein.endPoint()
              + " is not possible; above the "
              + total.endPoint()
              + " of M is needed");
    }
    double m = total.inMilliequivalentsPerLitre();
    double p = Checks.inRange("P", phenolphthalein.inMilliequivalentsPerLitre(), "mEq/L", 0, m);
    return new AlkalinitySplit(p, m, total.endPoint());
  }

  /**
   * Returns the part due to hydroxide.
   *
   * @return the alkalinity of hydroxide, 0 or more
   */
  public TitrationAlkalinity hydroxide() {
    return TitrationAlkalinity.ofMilliequivalentsPerLitre(hydroxide, endPoint);
  }

  /**
   * Returns the part due to carbonate, both its protons.
   *
   * @return the alkalinity of carbonate, 0 or more
   */
  public TitrationAlkalinity carbonate() {
    return TitrationAlkalinity.ofMilliequivalentsPerLitre(carbonate, endPoint);
  }

  /**
   * Returns the part due to bicarbonate.
   *
   * @return the alkalinity of bicarbonate, 0 or more
   */
  public TitrationAlkalinity bicarbonate() {
    return TitrationAlkalinity.ofMilliequivalentsPerLitre(bicarbonate, endPoint);
  }

  /** Prints the three parts. */
  @Override
  public String toString() {
    return "hydroxide "
        + hydroxide()
        + "; carbonate "
        + carbonate()
        + "; bicarbonate "
        + bicarbonate();
  }
}
