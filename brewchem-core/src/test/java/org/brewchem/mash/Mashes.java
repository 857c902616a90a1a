package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;

import org.brewchem.solution.Liquid;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Treatments;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;

/** Invented waters, malts and mashes. */
final class Mashes {

  static final Reagent LACTIC_80 =
      Reagent.of(Acid.LACTIC, massPercent(80)).withAssayUncertainty(0.02);

  private Mashes() {}

  /** A hard, alkaline water, every figure with its u. */
  static Water tap() {
    return WaterReport.reported()
        .calcium(mgPerL(92), mgPerL(3))
        .magnesium(mgPerL(11), mgPerL(1))
        .sodium(mgPerL(19), mgPerL(1))
        .potassium(mgPerL(3), mgPerL(0.3))
        .sulfate(mgPerL(45), mgPerL(2))
        .chloride(mgPerL(31), mgPerL(1))
        .nitrate(mgPerL(8), mgPerL(1))
        .alkalinityAsCaCO3(mgPerL(215), mgPerL(4))
        .pH(pH(7.6), 0.05)
        .build()
        .water();
  }

  /** Distilled water with so much sodium bicarbonate, mEq/L. */
  static Water alkaline(double milliequivalentsPerLitre) {
    return Water.pure()
        .after(Treatments.solute(Base.SODIUM_BICARBONATE, mmolPerL(milliequivalentsPerLitre)));
  }

  /** Distilled water with strong acid, or base, mEq/L. */
  static Water acid(double milliequivalentsPerLitre) {
    return Water.pure()
        .after(
            milliequivalentsPerLitre >= 0
                ? Treatments.solute(Acid.HYDROCHLORIC, mmolPerL(milliequivalentsPerLitre))
                : Treatments.solute(Base.SODIUM_HYDROXIDE, mmolPerL(-milliequivalentsPerLitre)));
  }

  /** A malt known exactly. */
  static Malt exact(double pH, double capacity) {
    return Malt.stated("invented malt", "invented", pH(pH), 0, capacity, 0);
  }

  /** One kilogram of a malt in so many litres. */
  static Mash mash(Malt malt, Liquid liquor, double litresPerKilogram) {
    return Mash.of(Grist.of(kg(1), malt), liquor, litres(litresPerKilogram));
  }
}
