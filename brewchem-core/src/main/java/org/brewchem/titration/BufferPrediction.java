package org.brewchem.titration;

import org.brewchem.uncertainty.UncertainValue;

/**
 * What a measured buffer predicts, and whether it had readings there.
 *
 * @param value the value with its standard uncertainty
 * @param extrapolated whether the pH concerned lies outside the readings, so that the uncertainty
 *     rests on what beers usually hold
 */
public record BufferPrediction(UncertainValue value, boolean extrapolated) {

  @Override
  public String toString() {
    return value.expanded(2) + (extrapolated ? ", extrapolated" : "");
  }
}
