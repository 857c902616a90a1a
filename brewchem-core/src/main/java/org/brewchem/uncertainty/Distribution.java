package org.brewchem.uncertainty;

import java.util.Locale;

/** The shape of what is known about an input quantity, from which Monte Carlo draws. */
public enum Distribution {
  /** A bell curve with the standard uncertainty as its standard deviation. */
  NORMAL,
  /** All values within a half width are equally likely; u is the half width divided by sqrt(3). */
  UNIFORM,
  /** Values near the middle are more likely; u is the half width divided by sqrt(6). */
  TRIANGULAR,
  /**
   * Student's t around the estimate, scaled by u, for a u that comes from few replicates. Its tails
   * are wider than u says: its standard deviation is u sqrt(dof/(dof-2)) and does not exist for 2
   * degrees of freedom or fewer.
   */
  STUDENT;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
