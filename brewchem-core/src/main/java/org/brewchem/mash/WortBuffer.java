package org.brewchem.mash;

import java.util.List;
import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.MassFraction;

/**
 * The buffer capacity of a wort per degree of extract, as a range: measured on the brewery's own
 * wort, or assumed. Immutable.
 */
public final class WortBuffer {

  private static final double HIGHEST_EXTRACT = 35;

  private final SourcedRange perDegree;

  private WortBuffer(SourcedRange perDegree) {
    this.perDegree = perDegree;
  }

  /**
   * Returns the assumed capacity of a wort from about pH 5.8 down to 5.0, by trade figures.
   *
   * @return the buffer
   */
  public static WortBuffer assumedAtKnockOut() {
    return new WortBuffer(WortRanges.named("wort buffer near 5.5"));
  }

  /**
   * Returns the assumed mean capacity of unhopped all-malt wort from pH 5.0 down to 3.4, where it
   * is soured.
   *
   * @return the buffer
   */
  public static WortBuffer assumedForSouring() {
    return new WortBuffer(WortRanges.named("wort buffer for souring"));
  }

  /**
   * Returns a capacity that was measured on a wort.
   *
   * @param least the least it may be
   * @param most the most it may be
   * @param extract of that wort, by mass (°P), above 0 and at most 35 %
   * @param source who measured which wort
   * @return the buffer, taken as proportional to the extract
   * @throws IllegalArgumentException if the extract is out of range, the capacities are out of
   *     order or the source is blank
   */
  public static WortBuffer measured(
      BufferCapacity least, BufferCapacity most, MassFraction extract, String source) {
    double degrees = degrees(extract);
    return new WortBuffer(
        new SourcedRange(
            "capacity of the wort",
            least.inMilliequivalentsPerLitrePerPH() / degrees,
            most.inMilliequivalentsPerLitrePerPH() / degrees,
            "mEq/(L pH) per °P",
            List.of("capacity of the wort, measured: " + Checks.notBlank("source", source))));
  }

  static double degrees(MassFraction extract) {
    Objects.requireNonNull(extract, "extract");
    double degrees = extract.inMassPercent();
    if (degrees <= 0 || degrees > HIGHEST_EXTRACT) {
      throw Checks.outOfRange("extract", degrees, "°P", "more than 0 and at most 35");
    }
    return degrees;
  }

  /**
   * Returns the capacity per degree of extract.
   *
   * @return mEq/(L pH) per °P, with its basis
   */
  public SourcedRange perDegree() {
    return perDegree;
  }

  @Override
  public String toString() {
    return perDegree.toString();
  }
}
