package org.brewchem.substance;

import org.brewchem.quantity.MolarMass;

/** A solute that can be weighed: its molar mass is known from its formula. */
public interface Compound extends Solute {

  /**
   * Returns the molar mass, water of hydration included.
   *
   * @return the molar mass
   */
  MolarMass molarMass();
}
