package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Treatment;
import org.brewchem.uncertainty.Traced;

/** Volumes of any number of liquids in one vessel: totals mix exactly, pH does not. */
final class Blending implements Treatment {

  private static final Scale<Double> PERCENT = Scale.number("% by volume", 2);

  private final double own;
  private final List<Liquid> liquids;
  private final List<Volume> volumes;
  private final double all;

  Blending(Volume own, List<Liquid> liquids, List<Volume> volumes) {
    this.own = own.inLitres();
    this.liquids = List.copyOf(liquids);
    this.volumes = List.copyOf(volumes);
    double sum = this.own;
    for (Volume volume : this.volumes) {
      sum += volume.inLitres();
    }
    all = Checks.positive("volumes", sum, "L");
  }

  @Override
  public Contents on(Contents before) {
    Contents mixture = before;
    double water = own * before.kilogramsPerLitre();
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < liquids.size(); i++) {
      Contents added = liquids.get(i).contents();
      double more = volumes.get(i).inLitres() * added.kilogramsPerLitre();
      if (more > 0) {
        mixture = mixture.mixed(added, Traced.exact(water / (water + more)));
        water += more;
      }
      steps.add(
          Step.of(name(i) + " in the mixture", PERCENT, Step.Kind.STATED)
              .origin(Origin.REPORTED)
              .text("totals mix, pH follows", "")
              .found(Traced.exact(100 * volumes.get(i).inLitres() / all)));
    }
    return mixture.withBasis(steps);
  }

  private String name(int index) {
    return "liquid " + (index + 2) + " (" + liquids.get(index).kind() + ")";
  }

  @Override
  public String text() {
    return "blending with " + volumes + " of other liquids";
  }

  @Override
  public List<Caution> cautions() {
    Set<Caution> cautions = new LinkedHashSet<>();
    liquids.forEach(liquid -> cautions.addAll(liquid.cautions()));
    return List.copyOf(cautions);
  }

  @Override
  public String toString() {
    return text();
  }
}
