package org.brewchem.water;

import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.substance.Element;
import org.brewchem.substance.Ion;

/** What the same figure is on another basis; each factor follows from molar masses. */
final class Bases {

  static final double SULFATE_PER_SULFUR = perElement(Ion.SULFATE, "S");
  static final double NITRATE_PER_NITROGEN = perElement(Ion.NITRATE, "N");

  /** Equivalents of a mass of carbonate over those of the same mass of bicarbonate. */
  static final double CARBONATE_OVER_BICARBONATE =
      2 * Ion.BICARBONATE.molarMass().inGramsPerMole() / Ion.CARBONATE.molarMass().inGramsPerMole();

  /** Equivalents of a mass of calcium carbonate over those of the same mass of bicarbonate. */
  static final double CACO3_OVER_BICARBONATE =
      1 / CarbonateAlkalinity.ofMilligramsPerLitreAsBicarbonate(1).inMilligramsPerLitreAsCaCO3();

  private Bases() {}

  private static double perElement(Ion ion, String symbol) {
    return ion.molarMass().inGramsPerMole() / Element.of(symbol).molarMass().inGramsPerMole();
  }
}
