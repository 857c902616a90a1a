package org.brewchem.buffer;

import java.util.Optional;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Contents;
import org.brewchem.uncertainty.Traced;

/**
 * What resists a change of pH in a liquid, besides what is known of it: an assumed composition, or
 * a buffer found from the liquid's own titration. Implementations are immutable.
 */
public interface Buffer {

  /**
   * Returns what stands for a liquid: what is known of it, the buffer added, and the balance closed
   * to its pH. A total that is known replaces what the buffer assumes of it.
   *
   * @param known the totals that are known, at the temperature and under the chemistry of the
   *     answer
   * @param pH the pH of the liquid, with its sources of uncertainty
   * @return closed contents that have the pH, with a notice of what they rest on
   * @throws IllegalArgumentException if nothing of the kind has the pH
   */
  Contents contents(Contents known, Traced pH);

  /**
   * Tells whether the buffer was measured at a pH.
   *
   * @param pH the pH of a result
   * @return a notice that the result is extrapolated; empty when it is not, or when nothing was
   *     measured, which the contents say themselves
   */
  Optional<Notice> extrapolatedAt(PH pH);
}
