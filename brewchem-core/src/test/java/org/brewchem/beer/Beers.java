package org.brewchem.beer;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;

import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.substance.Ion;

/** Invented beers. */
final class Beers {

  private Beers() {}

  static TitratableAcidity asLactic(double gramsPerLitre) {
    return acidity(gPerL(gramsPerLitre), LACTIC, pH(8.2));
  }

  static Beer lager() {
    return Beer.of(pH(4.35), asLactic(1.80))
        .withStandardUncertaintyOfPH(0.01)
        .withStandardUncertaintyOfAcidity(asLactic(0.01))
        .with(Ion.CALCIUM, mgPerL(60), mgPerL(2))
        .with(Ion.MAGNESIUM, mgPerL(80), mgPerL(3))
        .with(Ion.SULFATE, mgPerL(120), mgPerL(4))
        .with(Ion.CHLORIDE, mgPerL(150), mgPerL(4));
  }

  static Beer sour() {
    return Beer.of(pH(3.5), asLactic(6.50))
        .withStandardUncertaintyOfPH(0.02)
        .withStandardUncertaintyOfAcidity(asLactic(0.05));
  }
}
