package org.brewchem.beer;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;

import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.substance.Ion;

/** Invented beers for the tests of this package. */
final class Beers {

  private Beers() {}

  static TitratableAcidity asLactic(double gramsPerLitre) {
    return acidity(gPerL(gramsPerLitre), LACTIC, pH(8.2));
  }

  static Beer lager() {
    return Beer.of(pH(4.35), asLactic(1.80))
        .withStandardUncertainties(0.01, asLactic(0.01))
        .with(Ion.CALCIUM, mgPerL(60), Origin.MEASURED_IN_BEER)
        .with(Ion.MAGNESIUM, mgPerL(80), Origin.MEASURED_IN_BEER)
        .with(Ion.SULFATE, mgPerL(120), Origin.MEASURED_IN_BEER)
        .with(Ion.CHLORIDE, mgPerL(150), Origin.MEASURED_IN_BEER);
  }

  static Beer sour() {
    return Beer.of(pH(3.5), asLactic(6.50));
  }
}
