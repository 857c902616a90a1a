package org.brewchem.titration;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * How far a titrant has moved since it was last standardised, and whether that is more than the two
 * standardisations together leave open (twice their combined standard uncertainty). Immutable.
 */
public final class TitrantDrift {

  private static final double COVERAGE_FACTOR = 2;

  private final Titrant earlier;
  private final Titrant later;

  TitrantDrift(Titrant earlier, Titrant later) {
    if (!earlier.substance().equals(later.substance())) {
      throw new IllegalArgumentException(
          "earlier titrant: "
              + earlier.substance()
              + " is not possible; "
              + later.substance()
              + " is needed");
    }
    this.earlier = earlier;
    this.later = later;
  }

  /**
   * Returns the change.
   *
   * @return later over earlier concentration, minus 1
   */
  public double relativeChange() {
    return later.concentration().value() / earlier.concentration().value() - 1;
  }

  /**
   * Returns the time between the two.
   *
   * @return days; empty when one of the dates is not known
   */
  public OptionalLong days() {
    Optional<LocalDate> from = earlier.date();
    Optional<LocalDate> to = later.date();
    return from.isPresent() && to.isPresent()
        ? OptionalLong.of(ChronoUnit.DAYS.between(from.get(), to.get()))
        : OptionalLong.empty();
  }

  /**
   * Tells whether the change is more than the uncertainties explain.
   *
   * @return true if it is
   */
  public boolean isSignificant() {
    return Math.abs(relativeChange()) > allowed();
  }

  private double allowed() {
    return COVERAGE_FACTOR
        * Math.hypot(
            earlier.concentration().standardUncertainty() / earlier.concentration().value(),
            later.concentration().standardUncertainty() / later.concentration().value());
  }

  /**
   * Returns what is noteworthy.
   *
   * @return a finding when the change is significant, else none
   */
  public List<Finding> findings() {
    return isSignificant()
        ? List.of(Finding.of(Finding.Kind.TITRANT_DRIFT, toString()))
        : List.of();
  }

  /** Prints the change, the time and what the uncertainties allow. */
  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%s moved by %+.2f %%%s; %.2f %% is within the uncertainty of the two standardisations",
        later.substance(),
        100 * relativeChange(),
        days().isPresent() ? " in " + days().getAsLong() + " days" : "",
        100 * allowed());
  }
}
