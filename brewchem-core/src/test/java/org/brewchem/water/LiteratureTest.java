package org.brewchem.water;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LiteratureTest {

  /**
   * Narziss, Abriss der Bierbrauerei; Kunze, Technology Brewing and Malting: the table of classic
   * waters, in German degrees, from memory. Tolerance: half of its last digit.
   */
  @ParameterizedTest
  @CsvSource({"Munich, 14.2, 10.6, 4.2, 10.6", "Pilsen, 1.3, 1.0, 0.6, 0.9"})
  void classicWatersObeyKolbach(
      String name, double alkalinity, double calcium, double magnesium, double residual) {
    assertEquals(
        residual,
        KolbachResidualAlkalinity.of(
                CarbonateAlkalinity.ofGermanDegrees(alkalinity),
                Hardness.ofGermanDegrees(calcium),
                Hardness.ofGermanDegrees(magnesium))
            .value()
            .inGermanDegrees(),
        0.05,
        name);
  }

  /**
   * Standard Methods 2340 B: calcium 40, magnesium 12 mg/L give 149.296 mg/L as CaCO3 by factors
   * rounded to three decimals, which the tolerance allows for: (40 + 12) x 0.0005.
   */
  @Test
  void hardnessByCalculation() {
    assertEquals(
        149.296,
        WaterAnalysis.reported()
            .calcium(mgPerL(40))
            .magnesium(mgPerL(12))
            .build()
            .totalHardness()
            .orElseThrow()
            .inMilligramsPerLitreAsCaCO3(),
        0.026);
  }
}
