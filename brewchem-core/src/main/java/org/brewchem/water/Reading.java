package org.brewchem.water;

import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.uncertainty.Traced;

/**
 * A number as a report states it.
 *
 * @param number the number, on the basis on which the library counts
 * @param standardUncertainty its u; empty when the report states none
 * @param how how it was stated
 */
record Reading(double number, OptionalDouble standardUncertainty, String how) {

  /** A reading that the report states on the library's own basis. */
  static Reading of(double number, Optional<Double> standardUncertainty) {
    return converted(number, standardUncertainty, 1, "reported");
  }

  /** A reading on another basis, and the factor to the library's own. */
  static Reading converted(
      double number, Optional<Double> standardUncertainty, double factor, String how) {
    return new Reading(
        number * factor,
        standardUncertainty
            .map(u -> OptionalDouble.of(u * factor))
            .orElseGet(OptionalDouble::empty),
        how);
  }

  Step step(String quantity, Scale<?> scale) {
    return Step.of(quantity, scale, Step.Kind.STATED)
        .origin(Origin.REPORTED)
        .text(how, "")
        .found(Traced.stated(quantity, number, standardUncertainty, scale.symbol()));
  }
}
