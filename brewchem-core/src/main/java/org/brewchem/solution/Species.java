package org.brewchem.solution;

import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.Molality;
import org.brewchem.substance.Component;

/**
 * One species of a solution at equilibrium.
 *
 * @param name its name, such as "HPO42-", "CaHCO3+" or "H+"
 * @param charge its charge number
 * @param component the proton family or ion it belongs to, for a pair the ligand; empty for H+ and
 *     OH-
 * @param metal the cation it holds, for a pair and for a free cation that can form pairs
 * @param count how many of the component it holds: 2 for a pair with two ligands, 0 for H+ and OH-,
 *     otherwise 1
 * @param molality its concentration
 * @param activity its activity on the molal scale, mol/kg
 */
public record Species(
    String name,
    int charge,
    Optional<Component> component,
    Optional<Component> metal,
    int count,
    Molality molality,
    double activity) {

  /**
   * Makes a species.
   *
   * @param name its name, such as "HPO42-"
   * @param charge its charge number
   * @param component the proton family or ion it belongs to; empty for H+ and OH-
   * @param metal the cation it holds; empty when there is none
   * @param count how many of the component it holds
   * @param molality its concentration
   * @param activity its activity on the molal scale, mol/kg, 0 or more
   * @throws IllegalArgumentException if the activity is negative or not finite
   */
  public Species {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(component, "component");
    Objects.requireNonNull(metal, "metal");
    Objects.requireNonNull(molality, "molality");
    Checks.nonNegative("activity", activity, "mol/kg");
  }
}
