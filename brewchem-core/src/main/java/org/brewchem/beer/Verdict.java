package org.brewchem.beer;

import java.util.Locale;

/** What the comparison of a figure with its band says. */
public enum Verdict {
  /** Below the band. */
  BELOW,
  /** Within the band, limits included. */
  WITHIN,
  /** Above the band. */
  ABOVE,
  /** A limit lies within the figure's expanded uncertainty, so that it cannot be said. */
  UNDECIDED,
  /** The figure is not known. */
  MISSING;

  /** Returns the word, such as "below". */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
