package org.brewchem.internal;

/** Constants of physics that more than one formula needs. */
public final class PhysicalConstants {

  /** Molar gas constant in J/(mol K), exact since the SI of 2019 (CODATA 2018). */
  public static final double GAS_CONSTANT = 8.314462618;

  private PhysicalConstants() {}

  /**
   * Amount of an ideal gas in a volume, n/V = p/(R T).
   *
   * @param kilopascals pressure
   * @param kelvin temperature
   * @return amount in mol/L
   */
  public static double idealGasMolesPerLitre(double kilopascals, double kelvin) {
    return kilopascals / (GAS_CONSTANT * kelvin);
  }
}
