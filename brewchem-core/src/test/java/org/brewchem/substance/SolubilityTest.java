package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.quantity.Temperature;
import org.junit.jupiter.api.Test;

class SolubilityTest {

  /** The temperature of the row that is used. */
  private static double row(Compound compound, double celsius) {
    return Solubility.of(compound, Temperature.ofCelsius(celsius))
        .orElseThrow()
        .temperature()
        .inCelsius();
  }

  private static boolean isKnown(Compound compound, double celsius) {
    return Solubility.of(compound, Temperature.ofCelsius(celsius)).isPresent();
  }

  @Test
  void theNearestRowWithinFifteenKelvinIsUsed() {
    assertEquals(20, row(Base.CALCIUM_HYDROXIDE, 29), 1e-9);
    assertEquals(40, row(Base.CALCIUM_HYDROXIDE, 31), 1e-9);
    assertEquals(80, row(Base.CALCIUM_HYDROXIDE, 89), 1e-9);
    assertEquals(20, row(Salt.GYPSUM, 35), 1e-9);
    assertEquals(20, row(Salt.GYPSUM, 5), 1e-9);
    assertTrue(!isKnown(Salt.GYPSUM, 35.01));
    assertTrue(!isKnown(Salt.GYPSUM, 4.99));
    assertTrue(!isKnown(Base.POTASSIUM_HYDROXIDE, 20));
  }
}
