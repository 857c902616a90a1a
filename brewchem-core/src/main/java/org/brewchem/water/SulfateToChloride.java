package org.brewchem.water;

import java.util.Locale;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.substance.Ion;

/**
 * The ratio of sulfate to chloride of a water or a beer, or the reason why there is none. By mass
 * unless stated otherwise, as the trade does (common practice, no source).
 */
public sealed interface SulfateToChloride {

  /**
   * Returns the ratio of what was measured.
   *
   * @param sulfate the sulfate as SO4; empty when it is not known
   * @param chloride the chloride; empty when it is not known
   * @return a value, or why there is none
   */
  static SulfateToChloride of(
      Optional<MassConcentration> sulfate, Optional<MassConcentration> chloride) {
    if (sulfate.isEmpty() || chloride.isEmpty()) {
      return new Missing(sulfate.isEmpty(), chloride.isEmpty());
    }
    return chloride.get().inMilligramsPerLitre() == 0
        ? new ChlorideNil(sulfate.get())
        : new Value(sulfate.get(), chloride.get());
  }

  /**
   * Returns the ratio by mass.
   *
   * @return mg of sulfate per mg of chloride; empty when there is no ratio
   */
  default Optional<Double> byMass() {
    return Optional.empty();
  }

  /**
   * Returns the ratio by equivalents.
   *
   * @return mEq of sulfate per mEq of chloride; empty when there is no ratio
   */
  default Optional<Double> byEquivalents() {
    return Optional.empty();
  }

  /**
   * A ratio of two known concentrations.
   *
   * @param sulfate the sulfate as SO4
   * @param chloride the chloride, above 0
   */
  record Value(MassConcentration sulfate, MassConcentration chloride) implements SulfateToChloride {

    /**
     * Checks the chloride.
     *
     * @param sulfate the sulfate as SO4
     * @param chloride the chloride, above 0
     * @throws IllegalArgumentException if there is no chloride
     */
    public Value {
      Checks.positive("chloride", chloride.inMilligramsPerLitre(), "mg/L");
    }

    @Override
    public Optional<Double> byMass() {
      return Optional.of(sulfate.inMilligramsPerLitre() / chloride.inMilligramsPerLitre());
    }

    @Override
    public Optional<Double> byEquivalents() {
      return Optional.of(
          Equivalents.of(Ion.SULFATE, sulfate) / Equivalents.of(Ion.CHLORIDE, chloride));
    }

    /**
     * Returns the ratio by mass to two significant digits.
     *
     * @return such as {@code 1.4 by mass}
     */
    @Override
    public String toString() {
      return Lines.significant(sulfate.inMilligramsPerLitre() / chloride.inMilligramsPerLitre(), 2)
          + " by mass";
    }
  }

  /**
   * No ratio, because there is no chloride.
   *
   * @param sulfate the sulfate as SO4
   */
  record ChlorideNil(MassConcentration sulfate) implements SulfateToChloride {
    @Override
    public String toString() {
      return "no ratio: chloride is zero (sulfate " + sulfate + ")";
    }
  }

  /**
   * No ratio, because a concentration is not known.
   *
   * @param sulfateMissing whether the sulfate is not known
   * @param chlorideMissing whether the chloride is not known
   */
  record Missing(boolean sulfateMissing, boolean chlorideMissing) implements SulfateToChloride {

    /**
     * Checks that something is missing.
     *
     * @param sulfateMissing whether the sulfate is not known
     * @param chlorideMissing whether the chloride is not known
     * @throws IllegalArgumentException if nothing is
     */
    public Missing {
      if (!sulfateMissing && !chlorideMissing) {
        throw new IllegalArgumentException("sulfate and chloride: one must be missing");
      }
    }

    @Override
    public String toString() {
      String what =
          sulfateMissing && chlorideMissing
              ? "sulfate and chloride are"
              : (sulfateMissing ? "sulfate" : "chloride") + " is";
      return String.format(Locale.ROOT, "no ratio: %s missing", what);
    }
  }
}
