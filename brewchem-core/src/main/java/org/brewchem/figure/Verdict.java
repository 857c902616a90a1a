package org.brewchem.figure;

import java.util.Locale;

/** How an answer compares with a constraint. */
public enum Verdict {
  /** The whole interval of the value lies within the limits. */
  WITHIN,
  /** The whole interval lies below the lower limit. */
  BELOW,
  /** The whole interval lies above the upper limit. */
  ABOVE,
  /** A limit lies within the interval: the measurement cannot tell. */
  UNDECIDED,
  /** The value is unknown. */
  UNKNOWN;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
