package org.brewchem.beer;

import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;

/**
 * Thrown when a beer has less titratable acidity than the acids of the {@link StandInBuffer} alone
 * would give it: its buffering has to be measured, or the acidity is in error.
 */
public final class AcidityBelowStandInException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  /** The smallest acidity. */
  private final transient TitratableAcidity smallest;

  AcidityBelowStandInException(TitratableAcidity acidity, PH measured, TitratableAcidity smallest) {
    super(
        "titratable acidity: "
            + Texts.acidity(acidity)
            + " at "
            + measured
            + " is not possible for the stand-in buffer; "
            + Texts.acidity(smallest)
            + " or more is allowed. Check pH and titration, or give a measured buffer");
    this.smallest = smallest;
  }

  /**
   * Returns the smallest titratable acidity that the stand-in can represent at the pH of the beer.
   *
   * @return the acidity
   */
  public TitratableAcidity smallest() {
    return smallest;
  }
}
