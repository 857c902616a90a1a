package org.brewchem.solution;

/** How much chemistry a calculation takes into account. */
public enum Level {
  /** Activities are concentrations: textbook arithmetic, with the constants as they stand. */
  IDEAL,
  /** Activity coefficients of the ions by ionic strength. */
  ACTIVITY,
  /** Activity coefficients, and ion pairs of calcium, magnesium, sodium and potassium. */
  PAIRS
}
