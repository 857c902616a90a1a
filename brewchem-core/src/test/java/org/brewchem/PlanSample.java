package org.brewchem;

import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;

import org.brewchem.figure.Constraint;
import org.brewchem.figure.Target;
import org.brewchem.plan.Plan;
import org.brewchem.plan.Reached;
import org.brewchem.plan.Shelf;
import org.brewchem.plan.ShelfItem;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.water.Water;

/** An invented plan, for the samples of everything that answers. */
final class PlanSample {

  private PlanSample() {}

  static Reached reached(Water water) {
    return Plan.from(water)
        .using(Shelf.of(ShelfItem.of(Reagent.of(Salt.GYPSUM, massPercent(99)))))
        .meeting(Target.named("sample").with(Constraint.atLeast(Figures.CALCIUM, mgPerL(99))))
        .solve()
        .reached()
        .get(0);
  }
}
