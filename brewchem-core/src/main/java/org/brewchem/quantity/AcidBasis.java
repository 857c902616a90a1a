package org.brewchem.quantity;

/**
 * The acid that an acidity is stated as: a name and the mass of one equivalent. The equivalent
 * follows the definition in force for the basis (for lactic acid the molar mass, for tartaric and
 * malic acid half of it); it does not say how many protons that acid gives up at an end point.
 */
public interface AcidBasis {

  /**
   * Returns the name as it reads in "2.80 g/L as lactic acid".
   *
   * @return the name, such as {@code lactic acid}
   */
  String name();

  /**
   * Returns the mass of one equivalent.
   *
   * @return the mass in g per equivalent, above 0
   */
  double gramsPerEquivalent();
}
