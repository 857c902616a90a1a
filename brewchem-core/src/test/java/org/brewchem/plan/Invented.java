package org.brewchem.plan;

import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;

import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;

/** Waters and a shelf of no brewery: inventions of ours. */
final class Invented {

  private Invented() {}

  static Water hard() {
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

  static Water soft() {
    return WaterReport.reported()
        .calcium(mgPerL(9), mgPerL(0.5))
        .magnesium(mgPerL(1.5), mgPerL(0.1))
        .sodium(mgPerL(6), mgPerL(0.3))
        .potassium(mgPerL(0.8), mgPerL(0.1))
        .sulfate(mgPerL(7), mgPerL(0.5))
        .chloride(mgPerL(8), mgPerL(0.5))
        .nitrate(mgPerL(2), mgPerL(0.3))
        .alkalinityAsCaCO3(mgPerL(22), mgPerL(1))
        .pH(pH(7.2), 0.05)
        .build()
        .water();
  }

  static Reagent pure(Compound compound) {
    return Reagent.of(compound, massPercent(99)).withAssayUncertainty(0.003);
  }

  static ShelfItem gypsum() {
    return ShelfItem.of(pure(Salt.GYPSUM));
  }

  static ShelfItem calciumChloride() {
    return ShelfItem.of(pure(Salt.CALCIUM_CHLORIDE_DIHYDRATE));
  }

  static ShelfItem epsom() {
    return ShelfItem.of(pure(Salt.EPSOM_SALT));
  }

  static ShelfItem tableSalt() {
    return ShelfItem.of(pure(Salt.SODIUM_CHLORIDE));
  }

  static ShelfItem magnesiumChloride() {
    return ShelfItem.of(pure(Salt.MAGNESIUM_CHLORIDE_HEXAHYDRATE));
  }

  static ShelfItem potassiumChloride() {
    return ShelfItem.of(pure(Salt.POTASSIUM_CHLORIDE));
  }

  static ShelfItem lactic() {
    return ShelfItem.of(Reagent.of(Acid.LACTIC, massPercent(80)).withAssayUncertainty(0.01));
  }

  static ShelfItem phosphoric() {
    return ShelfItem.of(Reagent.of(Acid.PHOSPHORIC, massPercent(75)).withAssayUncertainty(0.01));
  }

  static ShelfItem hydrochloric() {
    return ShelfItem.of(Reagent.of(Acid.HYDROCHLORIC, massPercent(20)).withAssayUncertainty(0.01));
  }

  static ShelfItem lime() {
    return ShelfItem.of(pure(Base.CALCIUM_HYDROXIDE));
  }

  static Shelf salts() {
    return Shelf.of(gypsum(), calciumChloride(), epsom(), tableSalt())
        .weighingTo(g(1))
        .pipettingTo(mL(1));
  }

  static Shelf full() {
    return Shelf.of(
            gypsum(),
            calciumChloride(),
            epsom(),
            tableSalt(),
            magnesiumChloride(),
            potassiumChloride(),
            lactic(),
            phosphoric())
        .weighingTo(g(1))
        .pipettingTo(mL(1));
  }
}
