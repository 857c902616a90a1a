package org.brewchem.water;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/**
 * What a report states of one figure, on the basis on which the library counts: a number, or that
 * it lies below a limit.
 *
 * @param number the number; empty where it lies below a limit
 * @param standardUncertainty its u; empty when the report states none
 * @param how how it was stated
 * @param extremes what it lies between: the limit, or the lowest and highest of a year
 */
record Reading(
    OptionalDouble number,
    OptionalDouble standardUncertainty,
    String how,
    @Nullable Extremes extremes) {

  /** What a reading lies between. */
  record Extremes(double lowest, double highest) {}

  /** A reading that the report states on the library's own basis. */
  static Reading of(double number, Optional<Double> standardUncertainty) {
    return converted(number, standardUncertainty, 1, "reported");
  }

  /** A reading on another basis, and the factor to the library's own. */
  static Reading converted(
      double number, Optional<Double> standardUncertainty, double factor, String how) {
    return new Reading(
        OptionalDouble.of(number * factor),
        standardUncertainty
            .map(u -> OptionalDouble.of(u * factor))
            .orElseGet(OptionalDouble::empty),
        how,
        null);
  }

  /** A reading that is only known to lie below a limit, on the library's own basis. */
  static Reading below(double limit, String how) {
    return new Reading(OptionalDouble.empty(), OptionalDouble.empty(), how, new Extremes(0, limit));
  }

  /** The same reading as the mean of a year with these extremes. */
  Reading between(double lowest, double highest) {
    return new Reading(number, standardUncertainty, how, new Extremes(lowest, highest));
  }

  /** The same reading, for certain. */
  Reading at(double certain) {
    return new Reading(OptionalDouble.of(certain), OptionalDouble.empty(), how, null);
  }

  /** The same reading with a standard uncertainty. */
  Reading withUncertainty(double u, String source) {
    return new Reading(number, OptionalDouble.of(u), how + "; " + source, extremes);
  }

  /** Whether only a limit is stated. */
  boolean isLimit() {
    return number.isEmpty();
  }

  Step step(String quantity, Scale<?> scale, List<Notice> notices) {
    Step.Builder step =
        Step.of(quantity, scale, Step.Kind.STATED)
            .origin(Origin.REPORTED)
            .text(how, "")
            .notices(notices);
    return number.isPresent()
        ? step.found(
            Traced.stated(quantity, number.getAsDouble(), standardUncertainty, scale.symbol()))
        : step.unknown(List.of(quantity + " is " + how));
  }
}
