package org.brewchem.internal;

/** Properties of pure liquid water against temperature, 0 to 100 °C at about 1 atm. */
public final class WaterProperties {
  private static final double ELEMENTARY_CHARGE = 1.602176634e-19;
  private static final double AVOGADRO = 6.02214076e23;
  private static final double BOLTZMANN = PhysicalConstants.GAS_CONSTANT / AVOGADRO;
  private static final double VACUUM_PERMITTIVITY = 8.8541878128e-12;
  private static final double LN10 = Math.log(10);

  private WaterProperties() {}

  /**
   * Density of air-free water at 1 atm.
   *
   * <p>Source: G. S. Kell, J. Chem. Eng. Data 20 (1975) 97 (coefficients seen in two copies).
   *
   * @param kelvin temperature
   * @return density in kg/m3
   */
  public static double densityKgPerCubicMetre(double kelvin) {
    double t = kelvin - 273.15;
    double numerator =
        999.83952
            + t
                * (16.945176
                    + t
                        * (-7.9870401e-3
                            + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
    return numerator / (1 + 16.879850e-3 * t);
  }

  /**
   * Relative permittivity of water at 1 bar.
   *
   * <p>Source: D. J. Bradley and K. S. Pitzer, J. Phys. Chem. 83 (1979) 1599 (coefficients seen in
   * two copies).
   *
   * @param kelvin temperature
   * @return relative permittivity
   */
  public static double relativePermittivity(double kelvin) {
    double atKilobar = 342.79 * Math.exp(-5.0866e-3 * kelvin + 9.4690e-7 * kelvin * kelvin);
    double c = -2.0525 + 3115.9 / (-182.89 + kelvin);
    double b = -8032.5 + 4.2142e6 / kelvin + 2.1417 * kelvin;
    return atKilobar + c * Math.log((b + 1) / (b + 1000));
  }

  /**
   * Debye-Hückel limiting slope for log10 on molalities.
   *
   * @param kelvin temperature
   * @return A in kg^0.5 mol^-0.5
   */
  public static double debyeHueckelA(double kelvin) {
    double rho = densityKgPerCubicMetre(kelvin);
    double bjerrum =
        ELEMENTARY_CHARGE
            * ELEMENTARY_CHARGE
            / (4
                * Math.PI
                * VACUUM_PERMITTIVITY
                * relativePermittivity(kelvin)
                * BOLTZMANN
                * kelvin);
    return Math.sqrt(2 * Math.PI * AVOGADRO * rho) * Math.pow(bjerrum, 1.5) / LN10;
  }

  /**
   * Debye-Hückel inverse length per root of ionic strength.
   *
   * @param kelvin temperature
   * @return B in kg^0.5 mol^-0.5 per angstrom
   */
  public static double debyeHueckelB(double kelvin) {
    double rho = densityKgPerCubicMetre(kelvin);
    double inverseSquare =
        2
            * ELEMENTARY_CHARGE
            * ELEMENTARY_CHARGE
            * AVOGADRO
            * rho
            / (VACUUM_PERMITTIVITY * relativePermittivity(kelvin) * BOLTZMANN * kelvin);
    return Math.sqrt(inverseSquare) * 1e-10;
  }

  /**
   * Ion product of water on molal activities, by the equation of IAPWS R11-07.
   *
   * <p>Source: IAPWS R11-07(2019), Release on the Ionization Constant of H2O; Bandura and Lvov, J.
   * Phys. Chem. Ref. Data 35 (2006) 15 (coefficients seen in a copy, checked with the release's
   * verification value).
   *
   * @param kelvin temperature
   * @param densityKgPerCubicMetre density of the water
   * @return pKw
   */
  public static double ionProductExponent(double kelvin, double densityKgPerCubicMetre) {
    double rho = densityKgPerCubicMetre / 1000;
    double inverse = 1 / kelvin;
    double q =
        rho
            * Math.exp(
                -0.864671 + 8659.19 * inverse - 22786.2 * Math.cbrt(rho * rho) * inverse * inverse);
    double gas = 0.61415 + inverse * (48251.33 + inverse * (-67707.93 + inverse * 10102100));
    return -12
            * (Math.log10(1 + q)
                - q / (q + 1) * rho * (0.642044 - 56.8534 * inverse - 0.375754 * rho))
        + gas
        + 2 * Math.log10(18.015268 / 1000);
  }
}
