package org.brewchem.plan;

import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;

import java.util.function.ToDoubleFunction;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Target;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;

/** Salts of 100 % and what a millimole of them brings, for problems that are solved by hand. */
final class SmallProblems {

  static final double CA = 40.078;
  static final double MG = 24.305;
  static final double NA = 22.990;
  static final double CL = 35.45;
  static final double SO4 = 32.06 + 4 * 15.999;
  static final double H2O = 2 * 1.008 + 15.999;
  static final double GYPSUM = CA + SO4 + 2 * H2O;
  static final double CALCIUM_CHLORIDE = CA + 2 * CL + 2 * H2O;
  static final double EPSOM = MG + SO4 + 7 * H2O;

  private SmallProblems() {}

  static ShelfItem item(Compound compound) {
    return ShelfItem.of(Reagent.of(compound, massPercent(100)));
  }

  static ShelfItem gypsum() {
    return item(Salt.GYPSUM);
  }

  static ShelfItem calciumChloride() {
    return item(Salt.CALCIUM_CHLORIDE_DIHYDRATE);
  }

  static ShelfItem epsom() {
    return item(Salt.EPSOM_SALT);
  }

  static ShelfItem tableSalt() {
    return item(Salt.SODIUM_CHLORIDE);
  }

  /** A ratio of what a salt brings to what the balance tells. */
  static Figure<Double> sulfateToAlkalinity() {
    return ClosedForm.ratio(
        "sulfate to carbonate alkalinity",
        Scale.number("", 3),
        "by hand",
        "ours",
        Figures.SULFATE,
        Figures.CARBONATE_ALKALINITY,
        1);
  }

  /** A liquid whose calcium, in mg/L, is a function of the water that it is made of. */
  static Downstream made(ToDoubleFunction<Water> calcium) {
    return Downstream.of(
        "made",
        water ->
            WaterReport.reported().calcium(mgPerL(calcium.applyAsDouble(water))).build().water());
  }

  /** Calcium of a water, mmol/L. */
  static double millimoles(Water water) {
    return water.calcium().number() / CA;
  }

  /** Magnesium of a water, mmol/L. */
  static double millimolesOfMagnesium(Water water) {
    return water.magnesium().number() / MG;
  }

  static Target target(Constraint... constraints) {
    Target target = Target.named("by hand");
    for (Constraint constraint : constraints) {
      target = target.with(constraint);
    }
    return target;
  }
}
