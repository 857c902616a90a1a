package org.brewchem.beer;

import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.substance.Component;
import org.jspecify.annotations.Nullable;

/** What the anion of a dosed acid does to the beer besides its acidity. Immutable. */
public final class AnionEffect {

  private final Component anion;
  private final MassConcentration added;
  private final @Nullable Double ratioBefore;
  private final @Nullable Double ratioAfter;
  private final @Nullable MassConcentration freeCalciumBefore;
  private final @Nullable MassConcentration freeCalciumAfter;
  private final boolean mayBeTasted;

  AnionEffect(
      Component anion,
      MassConcentration added,
      @Nullable Double ratioBefore,
      @Nullable Double ratioAfter,
      @Nullable MassConcentration freeCalciumBefore,
      @Nullable MassConcentration freeCalciumAfter,
      boolean mayBeTasted) {
    this.anion = anion;
    this.added = added;
    this.ratioBefore = ratioBefore;
    this.ratioAfter = ratioAfter;
    this.freeCalciumBefore = freeCalciumBefore;
    this.freeCalciumAfter = freeCalciumAfter;
    this.mayBeTasted = mayBeTasted;
  }

  /**
   * Returns the anion that the acid brings.
   *
   * @return the component, all its forms together
   */
  public Component anion() {
    return anion;
  }

  /**
   * Returns how much of it the dosed beer has more.
   *
   * @return the concentration in the dosed beer that comes from the dose, counted as the form
   *     without protons
   */
  public MassConcentration added() {
    return added;
  }

  /**
   * Returns sulfate to chloride by mass before the dose.
   *
   * @return the ratio; empty when it is not known
   */
  public OptionalDouble sulfateToChlorideBefore() {
    return ratioBefore == null ? OptionalDouble.empty() : OptionalDouble.of(ratioBefore);
  }

  /**
   * Returns sulfate to chloride by mass after the dose.
   *
   * @return the ratio; empty when it is not known
   */
  public OptionalDouble sulfateToChlorideAfter() {
    return ratioAfter == null ? OptionalDouble.empty() : OptionalDouble.of(ratioAfter);
  }

  /**
   * Returns the calcium that is not bound in ion pairs before the dose.
   *
   * @return the concentration; empty when calcium was not measured in the beer
   */
  public Optional<MassConcentration> freeCalciumBefore() {
    return Optional.ofNullable(freeCalciumBefore);
  }

  /**
   * Returns the calcium that is not bound in ion pairs after the dose.
   *
   * @return the concentration; empty when calcium was not measured in the beer
   */
  public Optional<MassConcentration> freeCalciumAfter() {
    return Optional.ofNullable(freeCalciumAfter);
  }

  /** Returns the effect in words. */
  @Override
  public String toString() {
    StringBuilder text =
        new StringBuilder(anion.name())
            .append(" rises by ")
            .append(NumberText.significant(added.inMilligramsPerLitre(), 3))
            .append(" mg/L");
    if (anion.equals(Component.SULFATE) || anion.equals(Component.CHLORIDE)) {
      text.append(
          anion.equals(Component.SULFATE)
              ? ", and sulfate to chloride rises"
              : ", and sulfate to chloride falls");
      if (ratioBefore != null && ratioAfter != null) {
        text.append(Texts.format(", %.2f to %.2f", ratioBefore, ratioAfter));
      }
    } else if (anion.equals(Component.PHOSPHATE)) {
      text.append("; phosphate binds calcium, little at the pH of beer and more as it rises");
    } else if (mayBeTasted) {
      text.append("; it has a taste of its own, so let a panel taste the trial");
    }
    if (freeCalciumBefore != null && freeCalciumAfter != null) {
      text.append(
          Texts.format(
              "; free calcium %.1f to %.1f mg/L",
              freeCalciumBefore.inMilligramsPerLitre(), freeCalciumAfter.inMilligramsPerLitre()));
    }
    return text.toString();
  }
}
