package org.brewchem.uncertainty;

import java.util.OptionalDouble;

/**
 * A value with its expanded uncertainty U = k u, the half width of an interval around the value,
 * and the coverage factor k that made it (JCGM 100:2008, 6.2, from memory).
 */
public final class ExpandedUncertainty {

  private final UncertainValue of;
  private final double coverageFactor;
  private final OptionalDouble coverageProbability;

  ExpandedUncertainty(
      UncertainValue of, double coverageFactor, OptionalDouble coverageProbability) {
    this.of = of;
    this.coverageFactor = coverageFactor;
    this.coverageProbability = coverageProbability;
  }

  /**
   * Returns the value in the middle of the interval.
   *
   * @return the value, in {@link #unit()}
   */
  public double value() {
    return of.value();
  }

  /**
   * Returns the expanded uncertainty U, the half width of the interval.
   *
   * @return U, 0 or more, in {@link #unit()}
   */
  public double halfWidth() {
    return coverageFactor * of.standardUncertainty();
  }

  /**
   * Returns the coverage factor k.
   *
   * @return k, more than 0
   */
  public double coverageFactor() {
    return coverageFactor;
  }

  /**
   * Returns the coverage probability from which k was found with Student's t.
   *
   * @return the probability, above 0 and below 1; empty when k was chosen and not found
   */
  public OptionalDouble coverageProbability() {
    return coverageProbability;
  }

  /**
   * Returns the unit.
   *
   * @return the unit, empty when there is none
   */
  public String unit() {
    return of.unit();
  }

  /**
   * Returns the lower end of the interval.
   *
   * @return value minus U, in {@link #unit()}
   */
  public double lower() {
    return value() - halfWidth();
  }

  /**
   * Returns the upper end of the interval.
   *
   * @return value plus U, in {@link #unit()}
   */
  public double upper() {
    return value() + halfWidth();
  }

  /**
   * Prints value, U with two significant digits, and k, with the probability if k comes from one:
   * {@code 0.10022 mol/L, U 0.00022 (k = 2)} or {@code 0.1002 mol/L, U 0.0014 (k = 12.7, 95 %)}.
   */
  @Override
  public String toString() {
    String text =
        Digits.withUnit(Digits.ofValue(value(), halfWidth()), unit())
            + ", U "
            + Digits.ofUncertainty(halfWidth())
            + " (k = "
            + Digits.significant(coverageFactor, 3);
    if (coverageProbability.isPresent()) {
      text += ", " + Digits.significant(100.0 * coverageProbability.getAsDouble(), 4) + " %";
    }
    return text + ")";
  }
}
