package org.brewchem.beer;

import org.brewchem.quantity.PH;
import org.brewchem.solution.Solution;

/**
 * What a beer buffers with besides the ions that are known of it: a composition taken for granted,
 * or a buffer found from the beer's own titration. Whoever predicts a pH asks it for the solution
 * that stands for the beer, and for how far the prediction can be trusted.
 */
public interface Buffering {

  /**
   * Returns the solution that stands for the beer: what is known of it, the buffering added, and
   * the strong-ion difference closed to the measured pH.
   *
   * @param known the ions that are known, at the temperature and under the chemistry of the answer
   * @param measured the pH of the beer
   * @return a solution that has the measured pH
   * @throws IllegalArgumentException if no such solution stands for the beer
   */
  Solution closed(Solution known, PH measured);

  /**
   * Returns how uncertain the buffering makes a predicted pH, the uncertainty of the measured pH
   * not included.
   *
   * @param measured the pH of the beer
   * @param predicted the pH that was predicted after an addition
   * @return the standard uncertainty, 0 or more; 0 when both are equal
   */
  double standardUncertaintyOf(PH measured, PH predicted);

  /**
   * Tells whether a predicted pH lies outside what was measured.
   *
   * @param predicted the pH that was predicted
   * @return true if the prediction is an extrapolation
   */
  boolean extrapolatedAt(PH predicted);

  /**
   * Says in a sentence what the buffering rests on.
   *
   * @return a sentence without a full stop
   */
  String basis();
}
