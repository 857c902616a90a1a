package org.brewchem.buffer;

import org.brewchem.figure.Scales;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.substance.Acid;

/**
 * Thrown when a liquid has less titratable acidity than what is known of it alone would give it, so
 * that no composition of a {@link StandIn} fits: an acid, the pH or the acidity is in error.
 */
public final class AcidityBelowStandInException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  /** The smallest acidity. */
  private final transient TitratableAcidity smallest;

  AcidityBelowStandInException(TitratableAcidity acidity, PH measured, TitratableAcidity smallest) {
    super(
        "titratable acidity: "
            + text(acidity)
            + " at "
            + measured
            + " is not possible for the stand-in buffer; "
            + text(smallest)
            + " or more is allowed. Check pH, titration and the acids that were stated");
    this.smallest = smallest;
  }

  private static String text(TitratableAcidity acidity) {
    return Scales.acidityAs(Acid.LACTIC, acidity.endPoint())
        .text(acidity.inGramsPerLitreAs(Acid.LACTIC));
  }

  /**
   * Returns the smallest titratable acidity that the stand-in can represent at the pH.
   *
   * @return the acidity
   */
  public TitratableAcidity smallest() {
    return smallest;
  }
}
