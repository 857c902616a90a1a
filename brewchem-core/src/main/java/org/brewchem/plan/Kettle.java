package org.brewchem.plan;

import java.util.ArrayList;
import java.util.List;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.Volume;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Treatments;

/** Variables of a plan as treatments of waters, done one by one. Immutable. */
final class Kettle {

  private final Variables variables;

  Kettle(Variables variables) {
    this.variables = variables;
  }

  /** The first water of a portion, which the others are mixed into. */
  private int first(int portion, double[] x) {
    int first = variables.index(portion, 0);
    while (x[first] <= 0 && variables.isWater(first)) {
      first++;
    }
    return first;
  }

  /** The water that a portion begins with. */
  Liquid start(int portion, double[] x) {
    return variables.waters().get(variables.inPortion(first(portion, x)));
  }

  /** What is done to it, in this order. */
  List<Treatment> steps(int portion, double[] x) {
    List<Treatment> steps = new ArrayList<>();
    int first = first(portion, x);
    double litres = variables.amount(first, x[first]);
    int end = variables.index(portion, 0) + variables.perPortion();
    for (int i = first + 1; i < end; i++) {
      double amount = variables.amount(i, x[i]);
      if (amount <= 0) {
        continue;
      }
      if (variables.isWater(i)) {
        Liquid other = variables.waters().get(variables.inPortion(i));
        steps.add(Treatments.blend(Volume.ofLitres(litres), other, Volume.ofLitres(amount)));
        litres += amount;
      } else {
        steps.add(dose(variables.dose(i), amount, litres));
        litres += growth(i, x[i], portion);
      }
    }
    return steps;
  }

  private double growth(int i, double value, int portion) {
    return value
        * variables.litresPerMillimole(i)
        * variables.query().portions().get(portion).volume().inLitres();
  }

  private static Treatment dose(ShelfItem item, double amount, double litres) {
    Reagent reagent = item.reagent().orElseThrow();
    boolean acid = reagent.compound() instanceof Acid;
    if (item.kind() == ShelfItem.Kind.POURED) {
      VolumeRatio ratio = VolumeRatio.ofMillilitresPerHectolitre(100 * amount / litres);
      return acid ? Treatments.acid(reagent, ratio) : Treatments.base(reagent, ratio);
    }
    MassConcentration mass = MassConcentration.ofGramsPerLitre(amount / litres);
    if (acid) {
      return Treatments.acid(reagent, mass);
    }
    return reagent.compound() instanceof Base
        ? Treatments.base(reagent, mass)
        : Treatments.salt(reagent, mass);
  }

  /** The water of a portion after all that is done to it. */
  Liquid water(int portion, double[] x) {
    return start(portion, x).after(steps(portion, x).toArray(Treatment[]::new));
  }

  /** Its volume, litres. */
  double litres(int portion, double[] x) {
    double litres = variables.query().portions().get(portion).volume().inLitres();
    double all = litres;
    for (int k = variables.waters().size(); k < variables.perPortion(); k++) {
      int i = variables.index(portion, k);
      all += growth(i, x[i], portion);
    }
    return all;
  }

  /** All portions mixed. */
  Liquid together(double[] x) {
    Liquid all = water(0, x);
    double litres = litres(0, x);
    for (int p = 1; p < variables.query().portions().size(); p++) {
      double more = litres(p, x);
      all =
          all.after(Treatments.blend(Volume.ofLitres(litres), water(p, x), Volume.ofLitres(more)));
      litres += more;
    }
    return all;
  }
}
