package org.brewchem.substance;

import java.util.Map;

/**
 * Something that can be dissolved: it brings so many moles of each component. Protons, hydroxide
 * and water are not counted, since they follow from the charge balance of the whole solution: one
 * mole of phosphoric acid and one mole of potassium dihydrogen phosphate both bring one mole of
 * phosphate, the latter one mole of potassium besides.
 */
public interface Solute {

  /**
   * Returns the name.
   *
   * @return the name, such as "phosphoric acid"
   */
  String name();

  /**
   * Returns what one mole brings.
   *
   * @return an unmodifiable map from component to moles per mole of solute, each more than 0, in a
   *     fixed order
   */
  Map<Component, Double> components();

  /**
   * Returns the liquids that the caller says the solute may be dosed into, each with the authority
   * for it. {@link Permissions} has what the library itself knows.
   *
   * @return an unmodifiable map from use to its basis; empty when nothing was stated
   */
  default Map<Use, String> statedUses() {
    return Map.of();
  }
}
