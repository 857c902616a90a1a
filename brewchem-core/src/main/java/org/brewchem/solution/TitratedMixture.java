package org.brewchem.solution;

import org.brewchem.internal.Checks;
import org.brewchem.substance.Component;

/**
 * A work space that holds a sample with titrant in it, for many solves: the titrant, and what the
 * sample holds, change from one to the next.
 *
 * <p>Amounts are mol per kg of water, charges eq per kg; kilograms of water add up. Mutable and for
 * one thread at a time.
 */
public final class TitratedMixture {

  private final DoseSearch search;

  TitratedMixture(DoseSearch search) {
    this.search = search;
  }

  /**
   * Changes what the sample holds of a component.
   *
   * @param component a component that the sample or the titrant held from the start
   * @param molesPerKilogram its total in the sample, mol per kg of water, 0 or more
   * @throws IllegalArgumentException if neither held it, or the total is negative or not finite
   */
  public void setSample(Component component, double molesPerKilogram) {
    int index = search.equilibria().indexOf(component);
    search.setOwn(index, Checks.nonNegative(component.name(), molesPerKilogram, "mol/kg"));
  }

  /**
   * Changes the charge of the inert univalent ions of the sample.
   *
   * @param equivalentsPerKilogram their net charge, eq per kg of water, of either sign
   * @throws IllegalArgumentException if it is not finite
   */
  public void setSampleInertCharge(double equivalentsPerKilogram) {
    search.setOwnInert(Checks.finite("inert charge", equivalentsPerKilogram, "Eq/kg"));
  }

  /**
   * Mixes the sample with titrant, ready to be solved.
   *
   * @param titrantPerSample kg of the titrant's water per kg of the sample's, 0 or more
   * @return the mixture; a work space that the next call changes
   * @throws IllegalArgumentException if the titrant is negative or not finite
   */
  public Equilibria with(double titrantPerSample) {
    search.set(Checks.nonNegative("titrant per sample", titrantPerSample, ""));
    return search.equilibria();
  }

  /**
   * Returns what a mole in a kilogram of the sample is in a kilogram of the mixture.
   *
   * @param titrantPerSample kg of the titrant's water per kg of the sample's, 0 or more
   * @return the share of the sample in the mixture, above 0 to 1
   * @throws IllegalArgumentException if the titrant is negative or not finite
   */
  public double share(double titrantPerSample) {
    return search.share(Checks.nonNegative("titrant per sample", titrantPerSample, ""));
  }
}
