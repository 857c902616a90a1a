package org.brewchem.internal;

import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * What a search for a root ended with: the root, or where it was last looked for and what was left
 * over there. Immutable.
 */
public final class Root {

  private final boolean found;
  private final double value;
  private final double low;
  private final double high;
  private final double residual;
  private final int evaluations;

  private Root(
      boolean found, double value, double low, double high, double residual, int evaluations) {
    this.found = found;
    this.value = value;
    this.low = low;
    this.high = high;
    this.residual = residual;
    this.evaluations = evaluations;
  }

  static Root found(double value, double low, double high, double residual, int evaluations) {
    return new Root(true, value, low, high, residual, evaluations);
  }

  static Root notFound(double low, double high, double residual, int evaluations) {
    return new Root(false, Double.NaN, low, high, residual, evaluations);
  }

  /**
   * Returns the root.
   *
   * @param failure makes the exception of a search without a root from this
   * @return the root
   */
  public double orElseThrow(Function<? super Root, ? extends RuntimeException> failure) {
    if (!found) {
      throw failure.apply(this);
    }
    return value;
  }

  /** Returns the root; empty if there was none in the range. */
  public OptionalDouble asOptional() {
    return found ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /** Returns the lower end of the range in which the root was looked for. */
  public double low() {
    return low;
  }

  /** Returns the upper end of the range in which the root was looked for. */
  public double high() {
    return high;
  }

  /**
   * Returns the value of the function that was nearest to zero; where the function has one sign in
   * all of the range, that at the end of the range.
   */
  public double residual() {
    return residual;
  }

  /** Returns how often the function was evaluated. */
  public int evaluations() {
    return evaluations;
  }
}
