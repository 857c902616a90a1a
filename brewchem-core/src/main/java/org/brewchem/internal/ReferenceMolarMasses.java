package org.brewchem.internal;

/**
 * The molar masses that define the bases "as CaCO3", "as HCO3-", the German degree and the volume
 * of carbon dioxide, in g/mol. They follow from the abridged standard atomic weights of CIAAW 2021
 * (Ca 40.078, C 12.011, O 15.999, H 1.008); the mass of the electron is neglected.
 */
public final class ReferenceMolarMasses {

  /** Calcium carbonate, CaCO3, in g/mol. */
  public static final double CALCIUM_CARBONATE = 100.086;

  /** Calcium oxide, CaO, in g/mol. */
  public static final double CALCIUM_OXIDE = 56.077;

  /** Bicarbonate (hydrogen carbonate), HCO3-, in g/mol. */
  public static final double BICARBONATE = 61.016;

  /** Carbon dioxide, CO2, in g/mol. */
  public static final double CARBON_DIOXIDE = 44.009;

  private ReferenceMolarMasses() {}
}
