package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Against the formulations of IAPWS for the same properties: density R6-95(2018), relative
 * permittivity R8-97, pKw R11-07(2019), and A from the first two. The values are rows of {@code
 * water-properties.csv} of the reference checks (seen); the tolerances are what Kell's density,
 * Bradley and Pitzer's permittivity and a rounded pKw may differ by.
 */
class WaterPropertiesTest {

  @ParameterizedTest
  @CsvSource({
    "0, 999.8431, 87.9035, 0.49043, 14.9463",
    "10, 999.7025, 83.9745, 0.49763, 14.5336",
    "25, 997.0476, 78.4085, 0.50978, 13.9945",
    "40, 992.2164, 73.2006, 0.52375, 13.5343",
    "60, 983.1958, 66.7745, 0.54533, 13.0201"
  })
  void otherFormulationsAgree(
      double celsius, double density, double permittivity, double a, double pKw) {
    double kelvin = celsius + 273.15;
    assertEquals(density, WaterProperties.densityKgPerCubicMetre(kelvin), 0.01);
    assertEquals(permittivity, WaterProperties.relativePermittivity(kelvin), 0.06);
    assertEquals(a, WaterProperties.debyeHueckelA(kelvin), 1e-3);
    assertEquals(pKw, WaterProperties.ionProductExponent(kelvin, density), 2e-4);
  }

  /**
   * ln gamma of a univalent ion tends to minus half the Bjerrum length over the Debye length; e²/(4
   * pi eps0 k) is 1.671008e-5 m K by the CODATA constants.
   */
  @ParameterizedTest
  @ValueSource(doubles = {273.15, 298.15, 350})
  void bothLimitingLawsShareOneDebyeLength(double kelvin) {
    double bjerrumAngstrom = 1.671008e5 / (WaterProperties.relativePermittivity(kelvin) * kelvin);
    assertEquals(
        Math.log(10) * WaterProperties.debyeHueckelA(kelvin),
        bjerrumAngstrom * WaterProperties.debyeHueckelB(kelvin) / 2,
        1e-5);
  }

  /**
   * IAPWS R11-07(2019) prints 13.906565 for 300 K and 1 g/cm3 to verify programs by (seen). The
   * release counts in mol/kg.
   */
  @Test
  void theIonProductIsThatOfTheRelease() {
    assertEquals(13.906565, WaterProperties.ionProductExponent(300, 1000), 5e-7);
  }

  /**
   * The equation of the release for the boiling point and a density of 958 kg/m3, written as the
   * sum over its terms; what of q the formula has is 1 - 1/(1 + q).
   */
  @Test
  void theIonProductOfHotWaterIsThatOfTheEquation() {
    double kelvin = 373.15;
    double rho = 0.958;
    double logQ =
        Math.log(rho)
            - 0.864671
            + 8659.19 / kelvin
            - 22786.2 * Math.pow(rho, 2.0 / 3) / Math.pow(kelvin, 2);
    double share = 1 - 1 / (1 + Math.exp(logQ));
    double polynomial = rho * (0.642044 - 56.8534 / kelvin - 0.375754 * rho);
    double gas =
        0.61415
            + 48251.33 / kelvin
            - 67707.93 / Math.pow(kelvin, 2)
            + 10102100 / Math.pow(kelvin, 3);
    double expected =
        gas
            - 12 * Math.log1p(Math.exp(logQ)) / Math.log(10)
            + 12 * share * polynomial
            + 2 * Math.log10(0.018015268);
    assertEquals(expected, WaterProperties.ionProductExponent(kelvin, 958), 1e-12);
  }
}
