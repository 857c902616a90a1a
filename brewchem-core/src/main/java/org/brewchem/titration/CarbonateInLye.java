package org.brewchem.titration;

import java.util.Locale;
import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.EffectiveEquivalents;
import org.brewchem.substance.Acid;

/**
 * What carbonate in an old lye does to an acidity. Lye takes carbon dioxide from the air; the
 * carbonate takes up two protons at a low end point but only one at about pH 8.3, where bicarbonate
 * is left. So the lye is weaker to a high end point than to a low one. A lye standardised and used
 * to the same end point has no bias. Computed from the dissociation of carbonic acid at zero ionic
 * strength, the gas staying in. Immutable.
 */
public final class CarbonateInLye {

  private final double fraction;
  private final PH standardisedTo;
  private final PH usedTo;
  private final double worthAtStandardisation;
  private final double worthInUse;

  private CarbonateInLye(double fraction, PH standardisedTo, PH usedTo, Temperature temperature) {
    this.fraction = Checks.inRange("fraction of carbonate", fraction, "", 0, 1);
    this.standardisedTo = standardisedTo;
    this.usedTo = usedTo;
    EffectiveEquivalents carbonic =
        EffectiveEquivalents.of(Acid.CARBONIC, temperature, Chemistry.standard());
    this.worthAtStandardisation = worth(carbonic, standardisedTo);
    this.worthInUse = worth(carbonic, usedTo);
  }

  /** Equivalents delivered down to a pH, per equivalent of all the alkali counted to the last. */
  private double worth(EffectiveEquivalents carbonic, PH endPoint) {
    double takenUp = Acid.CARBONIC.protonsByDefinition() - carbonic.at(endPoint);
    return 1 - fraction + fraction * takenUp / Acid.CARBONIC.protonsByDefinition();
  }

  /**
   * Computes the bias.
   *
   * @param fraction the part of all the lye's equivalents, counted down to carbon dioxide, that is
   *     carbonate, 0 to 1
   * @param standardisedTo the pH at the end of the standardisation
   * @param usedTo the end point of the sample
   * @param temperature the temperature, 0 to 100 °C
   * @return the bias
   * @throws IllegalArgumentException if the fraction is out of range
   */
  public static CarbonateInLye of(
      double fraction, PH standardisedTo, PH usedTo, Temperature temperature) {
    Objects.requireNonNull(standardisedTo, "standardised to");
    Objects.requireNonNull(usedTo, "used to");
    return new CarbonateInLye(fraction, standardisedTo, usedTo, temperature);
  }

  /**
   * Returns the relative bias of the acidity: found over true, minus 1. It is negative when the
   * lye, standardised to a high end point, is used to a lower one, where it is worth more.
   *
   * @return the bias as a fraction
   */
  public double relativeBias() {
    return worthAtStandardisation / worthInUse - 1;
  }

  /** Prints the bias and where it comes from. */
  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%.2f %% of the lye as carbonate, standardised to %s, used to %s: acidity found %+.2f %%"
            + " off",
        100 * fraction,
        standardisedTo,
        usedTo,
        100 * relativeBias());
  }
}
