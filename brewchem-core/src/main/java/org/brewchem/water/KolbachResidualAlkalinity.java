package org.brewchem.water;

import java.util.Locale;
import org.brewchem.internal.ClosedForms;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.TitrationAlkalinity;

/**
 * A residual alkalinity with the arithmetic behind it: alkalinity, less the calcium hardness
 * divided by 3.5, less the magnesium hardness divided by 7, all in equivalents.
 *
 * <p>Calcium and magnesium make phosphate of the malt precipitate, which sets protons free in the
 * mash; the two numbers are Kolbach's measurements on laboratory worts, not a law. They say how
 * waters compare on one grist, not what pH a mash will have. Source: P. Kolbach, Monatsschrift für
 * Brauerei 6 (1953) 49; MEBAK W-030.01.900. Immutable.
 */
public final class KolbachResidualAlkalinity {

  private final double alkalinity;
  private final Hardness calcium;
  private final Hardness magnesium;

  private KolbachResidualAlkalinity(double alkalinity, Hardness calcium, Hardness magnesium) {
    this.alkalinity = alkalinity;
    this.calcium = calcium;
    this.magnesium = magnesium;
  }

  /**
   * Returns the residual alkalinity of a carbonate alkalinity.
   *
   * @param alkalinity the alkalinity
   * @param calcium the calcium hardness
   * @param magnesium the magnesium hardness
   * @return the residual alkalinity
   */
  public static KolbachResidualAlkalinity of(
      CarbonateAlkalinity alkalinity, Hardness calcium, Hardness magnesium) {
    return new KolbachResidualAlkalinity(
        alkalinity.inMilliequivalentsPerLitre(), calcium, magnesium);
  }

  /**
   * Returns the residual alkalinity of a titration alkalinity.
   *
   * @param alkalinity the alkalinity, to whatever end point
   * @param calcium the calcium hardness
   * @param magnesium the magnesium hardness
   * @return the residual alkalinity
   */
  public static KolbachResidualAlkalinity of(
      TitrationAlkalinity alkalinity, Hardness calcium, Hardness magnesium) {
    return new KolbachResidualAlkalinity(
        alkalinity.inMilliequivalentsPerLitre(), calcium, magnesium);
  }

  /**
   * Returns the part of the alkalinity that calcium makes up for.
   *
   * @return calcium hardness / 3.5
   */
  public ResidualAlkalinity calciumPart() {
    return ResidualAlkalinity.ofMilliequivalentsPerLitre(
        calcium.inMilliequivalentsPerLitre() / ClosedForms.KOLBACH_CALCIUM_DIVISOR);
  }

  /**
   * Returns the part of the alkalinity that magnesium makes up for.
   *
   * @return magnesium hardness / 7
   */
  public ResidualAlkalinity magnesiumPart() {
    return ResidualAlkalinity.ofMilliequivalentsPerLitre(
        magnesium.inMilliequivalentsPerLitre() / ClosedForms.KOLBACH_MAGNESIUM_DIVISOR);
  }

  /**
   * Returns the residual alkalinity.
   *
   * @return the value, negative when hardness outweighs alkalinity
   */
  public ResidualAlkalinity value() {
    return ResidualAlkalinity.ofMilliequivalentsPerLitre(
        ClosedForms.residualAlkalinity(
            alkalinity,
            calcium.inMilliequivalentsPerLitre(),
            magnesium.inMilliequivalentsPerLitre()));
  }

  /**
   * Shows the arithmetic.
   *
   * @return one line per step, each ended by a line feed
   */
  public String explain() {
    return Lines.of(
        "residual alkalinity = alkalinity - calcium hardness / 3.5 - magnesium hardness / 7"
            + " (Kolbach 1953)",
        Lines.step("alkalinity", alkalinity),
        Lines.step(
            "calcium hardness / 3.5", calcium, ClosedForms.KOLBACH_CALCIUM_DIVISOR, calciumPart()),
        Lines.step(
            "magnesium hardness / 7",
            magnesium,
            ClosedForms.KOLBACH_MAGNESIUM_DIVISOR,
            magnesiumPart()),
        Lines.step("residual alkalinity", value().inMilliequivalentsPerLitre()) + " = " + this);
  }

  /**
   * Returns the residual alkalinity rounded.
   *
   * @return such as {@code 143 mg/L as CaCO3 (8.0 °dH)}
   */
  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%.0f mg/L as CaCO3 (%.1f °dH)",
        value().inMilligramsPerLitreAsCaCO3() + 0.0,
        value().inGermanDegrees() + 0.0);
  }
}
