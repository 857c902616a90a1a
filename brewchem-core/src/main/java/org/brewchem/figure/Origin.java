package org.brewchem.figure;

import java.util.Locale;

/** Where a value comes from. */
public enum Origin {
  /** Measured on the liquid itself. */
  MEASURED,
  /** Stated in a report. */
  REPORTED,
  /** Known of another liquid from which this one was made. */
  CARRIED_OVER,
  /** A default of the library, with a source of its own. */
  ASSUMED,
  /** Computed from values of this liquid, or of those from which it was made. */
  COMPUTED;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
