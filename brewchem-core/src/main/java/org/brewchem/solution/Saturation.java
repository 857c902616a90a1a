package org.brewchem.solution;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.substance.Component;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.Solubility;
import org.brewchem.substance.Solute;

/**
 * What is notable about a salt that a liquid cannot hold: the kernel's saturation index where there
 * is a mineral for it, else the printed solubility.
 */
public final class Saturation {

  /** What can form of what was added; the activity rule holds where they do. */
  private static final List<Mineral> SPARING =
      List.of(Mineral.GYPSUM, Mineral.CALCITE, Mineral.PORTLANDITE, Mineral.BRUCITE);

  /** An index above this is no rounding and no uncertainty of a constant (our choice). */
  private static final double CLEARLY_ABOVE = 0.05;

  /** Less than this of a mineral's parts never saturates gypsum, the most soluble, (mol/kg)^2. */
  private static final double LEAST_PRODUCT = 1e-5;

  private Saturation() {}

  /**
   * Looks at a liquid to which a substance was added, as if all of it had dissolved.
   *
   * @param after what the liquid then holds
   * @param added the substance
   * @param molesPerKilogram how much of it, mol per kg of water, 0 or more
   * @return one notice for each mineral that what was added supersaturates, with its index; one by
   *     the printed solubility where the amount alone exceeds it; else empty
   * @throws IllegalArgumentException if the amount is negative or not finite
   */
  public static List<Notice> notices(Contents after, Solute added, double molesPerKilogram) {
    Checks.nonNegative("amount added", molesPerKilogram, "mol/kg");
    List<Notice> notices = new ArrayList<>();
    boolean judged = false;
    if (after.inertCharge().isPresent()) {
      for (Mineral mineral : SPARING) {
        if (canForm(mineral, added, after)) {
          judged |= added.components().keySet().containsAll(mineral.components().keySet());
          index(after, mineral, added).ifPresent(notices::add);
        }
      }
    }
    if (!judged && added instanceof Compound compound) {
      Solubility.of(compound, after.temperature())
          .filter(most -> molesPerKilogram > most.molesPerKilogram())
          .ifPresent(most -> notices.add(beyond(compound, molesPerKilogram, most)));
    }
    return notices;
  }

  /**
   * What brings all of a mineral, or makes the liquid so alkaline that carbonate or hydroxide forms
   * it.
   */
  private static boolean canForm(Mineral mineral, Solute added, Contents after) {
    Map<Component, Double> brings = added.components();
    Set<Component> parts = mineral.components().keySet();
    if (!parts.stream().allMatch(part -> after.least(part).value() > 0)) {
      return false;
    }
    boolean hydroxide = brings.keySet().stream().allMatch(c -> c.chargeWithoutProtons() > 0);
    if (mineral.equals(Mineral.GYPSUM)) {
      return parts.stream().anyMatch(brings::containsKey)
          && after.least(Component.CALCIUM).value() * after.least(Component.SULFATE).value()
              > LEAST_PRODUCT;
    }
    return added instanceof Compound && (hydroxide || brings.keySet().containsAll(parts));
  }

  private static Optional<Notice> index(Contents after, Mineral mineral, Solute added) {
    Equilibria equilibria = after.equilibria();
    double index = equilibria.equilibrium().saturationIndex(mineral).orElse(0);
    return index <= CLEARLY_ABOVE
        ? Optional.empty()
        : Optional.of(
            Notice.of(
                SolutionCode.SUPERSATURATED,
                mineral.name(),
                String.format(
                    Locale.ROOT,
                    "after %s the liquid is supersaturated with %s, saturation index %.2f: not all"
                        + " of it stays dissolved, and the figures count all of it",
                    added.name(),
                    mineral.name(),
                    index)));
  }

  private static Notice beyond(Compound compound, double molesPerKilogram, Solubility most) {
    double gramsPerMole = compound.molarMass().inGramsPerMole();
    return Notice.of(
        SolutionCode.SUPERSATURATED,
        compound.name(),
        NumberText.significant(molesPerKilogram * gramsPerMole, 3)
            + " g of "
            + compound.name()
            + " in a kg of water do not dissolve: at "
            + most.temperature()
            + " it takes "
            + NumberText.significant(most.molesPerKilogram() * gramsPerMole, 3)
            + " g ("
            + most.provenance().sourceKey()
            + ")");
  }
}
