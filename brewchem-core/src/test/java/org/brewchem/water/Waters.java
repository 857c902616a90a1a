package org.brewchem.water;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;

/** Invented reports that several tests use. */
final class Waters {

  private Waters() {}

  static WaterReport tap() {
    return WaterReport.reported()
        .calcium(mgPerL(92))
        .magnesium(mgPerL(11))
        .sodium(mgPerL(19))
        .nitrate(mgPerL(8))
        .sulfateAsSulfur(mgPerL(15))
        .chloride(mgPerL(31))
        .alkalinityAsCaCO3(mgPerL(215))
        .pH(pH(7.6))
        .build();
  }

  static WaterReport soft() {
    return WaterReport.reported()
        .calcium(mgPerL(9))
        .magnesium(mgPerL(2.5))
        .sodium(mgPerL(6))
        .potassium(mgPerL(1))
        .bicarbonate(mgPerL(33))
        .sulfate(mgPerL(7))
        .chloride(mgPerL(6))
        .nitrate(mgPerL(2))
        .pH(pH(7.9), celsius(12))
        .build();
  }

  /** Every figure with its standard uncertainty. */
  static WaterReport.Builder uncertain() {
    return WaterReport.reported()
        .calcium(mgPerL(92), mgPerL(3))
        .magnesium(mgPerL(11), mgPerL(0.4))
        .sodium(mgPerL(19), mgPerL(0.8))
        .nitrate(mgPerL(8), mgPerL(0.5))
        .sulfateAsSulfur(mgPerL(15), mgPerL(0.6))
        .chloride(mgPerL(31), mgPerL(1.2))
        .alkalinityAsCaCO3(mgPerL(215), mgPerL(4))
        .pH(pH(7.6), 0.05);
  }
}
