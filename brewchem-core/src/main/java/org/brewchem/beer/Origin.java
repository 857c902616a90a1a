package org.brewchem.beer;

import java.util.Locale;

/** Where a key figure comes from. */
public enum Origin {
  /** Measured in the beer itself. */
  MEASURED_IN_BEER,
  /**
   * Taken from the analysis of the brewing water. Malt and hops add to it and the brewhouse takes
   * from it, so that the beer's own may be another.
   */
  TAKEN_FROM_WATER,
  /** Predicted, for a beer that has not been dosed or blended yet. */
  PREDICTED;

  /** Returns the words, such as "measured in beer". */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
