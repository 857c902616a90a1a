package org.brewchem.internal;

import org.apache.commons.math3.special.Erf;

/** Probabilities of the standard normal distribution. */
public final class NormalProbability {

  private static final double ROOT_OF_TWO = Math.sqrt(2);

  private NormalProbability() {}

  /**
   * Returns the probability below a number.
   *
   * @param z the number, infinite ones included
   * @return 0 to 1, with full relative accuracy in the lower tail
   */
  public static double below(double z) {
    return 0.5 * Erf.erfc(-z / ROOT_OF_TWO);
  }

  /**
   * Returns the probability between two numbers.
   *
   * @param from the lower
   * @param to the upper
   * @return 0 to 1
   */
  public static double between(double from, double to) {
    return 0.5 * Erf.erf(from / ROOT_OF_TWO, to / ROOT_OF_TWO);
  }
}
