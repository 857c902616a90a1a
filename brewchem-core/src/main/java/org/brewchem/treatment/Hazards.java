package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.brewchem.figure.Hazard;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Solute;

/** What can hurt someone in handling a substance, told from what it is and what it brings. */
final class Hazards {

  private Hazards() {}

  /** Hazards of dosing a substance into something that people drink. */
  static List<Hazard> of(Solute solute, boolean powder) {
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
    } else if (isHydroxide(solute)) {
      hazards.add(brings.contains(Component.CALCIUM) ? Hazard.LIME : Hazard.LYE);
    } else if (!(solute instanceof Ion)) {
      hazards.add(Hazard.DUST);
      if (brings.contains(Component.CARBONATE)) {
        hazards.add(Hazard.CARBON_DIOXIDE);
      }
    }
    hazards.add(Hazard.DOSING_FOOD);
    return List.copyOf(hazards);
  }

  /** Neutral, and yet none of its components is an anion: what is missing is hydroxide or oxide. */
  private static boolean isHydroxide(Solute solute) {
    return !(solute instanceof Ion)
        && solute.components().keySet().stream().allMatch(c -> c.chargeWithoutProtons() > 0);
  }
}
