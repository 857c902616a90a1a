package org.brewchem.water;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ConductanceTest {

  /**
   * Limiting conductivities as in limiting-conductivities.csv, atomic weights of CIAAW 2021, Davies
   * at A = 0.5092 (handbook, from memory). Phosphate counts as dihydrogen phosphate, with one
   * charge.
   */
  @Test
  void eachIonCountsWithItsOwnConductivityAndCharge() {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(80))
            .magnesium(mgPerL(12))
            .sodium(mgPerL(50))
            .potassium(mgPerL(20))
            .sulfate(mgPerL(60))
            .chloride(mgPerL(90))
            .nitrate(mgPerL(30))
            .alkalinityAsCaCO3(mgPerL(150))
            .concentration(Constituent.AMMONIUM, mgPerL(9))
            .concentration(Constituent.IRON, mgPerL(14))
            .concentration(Constituent.MANGANESE, mgPerL(11))
            .concentration(Constituent.NITRITE, mgPerL(23))
            .concentration(Constituent.FLUORIDE, mgPerL(10))
            .concentration(Constituent.PHOSPHATE, mgPerL(190))
            .pH(pH(6))
            .build()
            .water();
    double calcium = 80 / 20.039;
    double magnesium = 12 / 12.1525;
    double sodium = 50 / 22.990;
    double potassium = 20 / 39.098;
    double sulfate = 60 / 48.028;
    double chloride = 90 / 35.45;
    double nitrate = 30 / 62.004;
    double bicarbonate = 150 / 50.043;
    double ammonium = 9 / 18.039;
    double iron = 14 / 27.9225;
    double manganese = 11 / 27.469;
    double nitrite = 23 / 46.005;
    double fluoride = 10 / 18.998;
    double phosphate = 190 / 94.970;
    double strength =
        (2 * (calcium + magnesium + sulfate + iron + manganese)
                + (sodium + potassium + chloride + nitrate + bicarbonate)
                + (ammonium + nitrite + fluoride + phosphate))
            / 2000;
    double root = Math.sqrt(strength);
    double y = Math.pow(10, -0.5092 * (root / (1 + root) - 0.3 * strength));
    double infinite =
        59.5 * calcium
            + 53 * magnesium
            + 50.1 * sodium
            + 73.5 * potassium
            + 80 * sulfate
            + 76.3 * chloride
            + 71.4 * nitrate
            + 44.5 * bicarbonate
            + 73.5 * ammonium
            + 54 * iron
            + 53.5 * manganese
            + 71.8 * nitrite
            + 55.4 * fluoride
            + 33 * phosphate;
    double expected = (infinite + 349.7 * 1e-3 / y) * y * y;
    assertEquals(expected, water.answer(Conductance.figure()).number(), 5e-4 * expected);
    assertEquals(
        water.answer(WaterFigures.CONDUCTIVITY).number(),
        water.answer(Conductance.figure()).number(),
        0);
  }

  @Test
  void anUnknownPhCountsNoHydrogenIons() {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(0))
            .magnesium(mgPerL(0))
            .sodium(mgPerL(0))
            .potassium(mgPerL(0))
            .sulfate(mgPerL(0))
            .chloride(mgPerL(0))
            .nitrate(mgPerL(0))
            .build()
            .water();
    assertEquals(0, water.answer(Conductance.figure()).number(), 0);
  }
}
