package org.brewchem.solution;

import java.util.Locale;
import org.brewchem.internal.Root;

/** Thrown when no root of a balance was found in the range searched. */
public final class NoSolutionException extends ArithmeticException {
  private static final long serialVersionUID = 1L;

  /** Lower end of the range. */
  private final double low;

  /** Upper end of the range. */
  private final double high;

  /** What was left over. */
  private final double residual;

  /** Evaluations of the balance. */
  private final int iterations;

  NoSolutionException(String what, Root end) {
    this(what, end.low(), end.high(), end.residual(), end.evaluations());
  }

  /**
   * Says that a balance has no root.
   *
   * @param what what was sought
   * @param low lower end of the range in which it was looked for
   * @param high upper end of that range
   * @param residual what was left over, in the unit of the balance
   * @param iterations evaluations of the balance
   */
  public NoSolutionException(
      String what, double low, double high, double residual, int iterations) {
    super(
        String.format(
            Locale.ROOT,
            "%s: no root found between %.6g and %.6g; %.3g is left over after %d iterations",
            what,
            low,
            high,
            residual,
            iterations));
    this.low = low;
    this.high = high;
    this.residual = residual;
    this.iterations = iterations;
  }

  /**
   * Returns the lower end of the range in which the root was last looked for.
   *
   * @return a pH, or the amount that was varied
   */
  public double low() {
    return low;
  }

  /**
   * Returns the upper end of the range in which the root was last looked for.
   *
   * @return a pH, or the amount that was varied
   */
  public double high() {
    return high;
  }

  /**
   * Returns what was left over of what should be zero.
   *
   * @return eq per kg of water; for a mineral its saturation index
   */
  public double residual() {
    return residual;
  }

  /**
   * Returns how often the balance was evaluated.
   *
   * @return a count
   */
  public int iterations() {
    return iterations;
  }
}
