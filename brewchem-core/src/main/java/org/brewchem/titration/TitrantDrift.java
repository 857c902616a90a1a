package org.brewchem.titration;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.brewchem.figure.Notice;
import org.brewchem.uncertainty.Traced;
import org.brewchem.uncertainty.UncertainValue;

/**
 * How far a titrant has moved since it was last standardised, and whether that is more than the two
 * standardisations can explain: more than the expanded uncertainty of the change. Immutable.
 */
public final class TitrantDrift {

  private final TitrantSubstance substance;
  private final Traced change;
  private final OptionalLong days;

  TitrantDrift(TitrantSubstance substance, Traced earlier, Traced later, OptionalLong days) {
    this.substance = substance;
    this.change = later.dividedBy(earlier).minus(Traced.exact(1));
    this.days = days;
  }

  /**
   * Returns the change.
   *
   * @return later over earlier concentration, minus 1
   */
  public double relativeChange() {
    return change.value();
  }

  /**
   * Returns the time between the two.
   *
   * @return days; empty when one of the dates is not known
   */
  public OptionalLong days() {
    return days;
  }

  /**
   * Returns the change that the uncertainties of the two explain.
   *
   * @return the expanded uncertainty of the change, a fraction; empty when one of the two states no
   *     uncertainty
   */
  public OptionalDouble explained() {
    Optional<UncertainValue> uncertain = change.uncertain("");
    return uncertain.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(uncertain.get().expanded().halfWidth());
  }

  /**
   * Tells whether the change is more than the uncertainties explain.
   *
   * @return true if it is; false also when an uncertainty is missing, which {@link #explained} says
   */
  public boolean isSignificant() {
    return explained().isPresent() && Math.abs(relativeChange()) > explained().getAsDouble();
  }

  /**
   * Returns what is notable.
   *
   * @return a notice when the change is significant, or cannot be judged because an uncertainty is
   *     missing
   */
  public List<Notice> notices() {
    if (explained().isEmpty()) {
      return List.of(Notice.of(TitrationCode.TITRANT_WITHOUT_UNCERTAINTY, "titrant", toString()));
    }
    return isSignificant()
        ? List.of(Notice.of(TitrationCode.TITRANT_DRIFT, "titrant", toString()))
        : List.of();
  }

  /** Prints the change, the time and what the uncertainties explain. */
  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%s moved by %+.2f %%%s; %s",
        substance,
        100 * relativeChange(),
        days.isPresent() ? " in " + days.getAsLong() + " days" : "",
        explained().isPresent()
            ? String.format(
                Locale.ROOT,
                "%.2f %% is within the uncertainty of the two concentrations",
                100 * explained().getAsDouble())
            : "not judged, because one of the two concentrations states no uncertainty");
  }
}
