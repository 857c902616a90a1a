package org.brewchem.substance;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;

/**
 * What to mind in handling a substance, derived from what it is and what it brings: the usual
 * cautions (common practice, no source). Local codes, the supplier's safety data sheet and a
 * trained person outrank them.
 */
public final class Handling {

  private Handling() {}

  /**
   * Returns what to mind in dosing a pure substance into what people drink.
   *
   * @param solute the substance; of a bare ion, which nobody can weigh, only the dosing counts
   * @return the cautions
   */
  public static List<Caution> cautionsOf(Solute solute) {
    return Caution.of(hazardsOf(solute, false));
  }

  /**
   * Returns what to mind in dosing a reagent as bought into what people drink.
   *
   * @param reagent the reagent; without a density it counts as a powder
   * @return the cautions
   */
  public static List<Caution> cautionsOf(Reagent reagent) {
    return Caution.of(hazardsOf(reagent.compound(), reagent.density().isEmpty()));
  }

  private static List<Hazard> hazardsOf(Solute solute, boolean powder) {
    List<Hazard> hazards = new ArrayList<>();
    Set<Component> brings = solute.components().keySet();
    if (solute instanceof Acid acid) {
      if (!acid.component().equals(Component.CARBONATE)) {
        hazards.add(Hazard.ACID);
      }
      if (acid.component().equals(Component.CHLORIDE)) {
        hazards.add(Hazard.ACID_FUMES);
      }
      if (acid.component().equals(Component.SULFATE)) {
        hazards.add(Hazard.ACID_HEAT);
      }
      if (powder) {
        hazards.add(Hazard.DUST);
      }
      // Any acid sets free what the carbonate of the liquid holds.
      hazards.add(Hazard.CARBON_DIOXIDE);
    } else if (isBare(solute)) {
      // Nobody can weigh a bare ion: only that something is dosed counts.
      return List.of(Hazard.DOSING_FOOD);
    } else if (isHydroxide(solute)) {
      hazards.add(brings.contains(Component.CALCIUM) ? Hazard.LIME : Hazard.LYE);
    } else {
      hazards.add(Hazard.DUST);
      if (brings.contains(Component.CARBONATE)) {
        hazards.add(Hazard.CARBON_DIOXIDE);
        hazards.add(Hazard.FOAMING);
      }
      if (brings.equals(Set.of(Component.CALCIUM, Component.CHLORIDE))) {
        hazards.add(Hazard.SALT_HEAT);
      }
    }
    if (brings.contains(Component.SULFITE)) {
      hazards.add(Hazard.SULFITE);
    }
    hazards.add(Hazard.DOSING_FOOD);
    return List.copyOf(new LinkedHashSet<>(hazards));
  }

  /** Neutral, and yet none of its components is an anion: what is missing is hydroxide or oxide. */
  private static boolean isHydroxide(Solute solute) {
    return solute.components().keySet().stream().allMatch(c -> c.chargeWithoutProtons() > 0);
  }

  private static boolean isBare(Solute solute) {
    return solute instanceof Ion || solute instanceof Component;
  }
}
