package org.brewchem.treatment;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.MineralEquilibrium;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Component;
import org.brewchem.substance.Mineral;
import org.brewchem.uncertainty.Traced;

/** A mineral that precipitates until the liquid is no longer supersaturated with it. */
final class Precipitation implements Treatment {

  private static final double STEP = 1e-6;

  private final Mineral mineral;

  Precipitation(Mineral mineral) {
    this.mineral = Objects.requireNonNull(mineral, "mineral");
  }

  @Override
  public Contents on(Contents before) {
    Map<Component, Double> parts = mineral.components();
    Balance.required(text(), before, parts.keySet());
    Solution start = Solution.of(before);
    double amount =
        MineralEquilibrium.precipitating(start, mineral).precipitatedMillimolesPerLitre()
            / (1000 * start.kilogramsPerLitre());
    Traced precipitated = Traced.exact(amount);
    if (amount > 0) {
      Contents left = less(before, precipitated);
      Traced index = left.trace(index());
      precipitated =
          Traced.linear(amount, new Traced[] {index}, new double[] {-1 / slope(left, amount)});
    }
    Traced perLitre = precipitated.times(1000 * before.kilogramsPerLitre());
    Contents after = less(before, precipitated);
    Step step =
        Step.of(mineral.name() + " precipitated", Scales.MILLIMOLES_PER_LITRE, Step.Kind.ROOT)
            .text("until its saturation index is 0, or none if it is below", "")
            .inputs(before.basis())
            .detail(() -> shown(after, amount))
            .found(perLitre);
    return after.withBasis(List.of(step));
  }

  private Contents less(Contents before, Traced precipitated) {
    Contents after = before;
    for (Map.Entry<Component, Double> part : mineral.components().entrySet()) {
      if (precipitated.value() > 0) {
        Traced left = before.least(part.getKey()).minus(precipitated.times(part.getValue()));
        after = after.withTotal(part.getKey(), left.withValue(Math.max(left.value(), 0)));
      }
    }
    return after;
  }

  private ToDoubleFunction<Equilibria> index() {
    return equilibria -> {
      equilibria.pH();
      return equilibria.state().saturationIndex(mineral).orElseThrow();
    };
  }

  /** By how much the index changes with a mole that precipitates. */
  private double slope(Contents left, double amount) {
    Equilibria equilibria = left.equilibria();
    double at = index().applyAsDouble(equilibria);
    double scarcest =
        mineral.components().entrySet().stream()
            .mapToDouble(part -> left.least(part.getKey()).value() / part.getValue())
            .min()
            .orElse(amount);
    double step = Math.min(amount, scarcest) * STEP;
    mineral
        .components()
        .forEach(
            (component, count) ->
                equilibria.setTotal(
                    equilibria.indexOf(component), left.least(component).value() + step * count));
    return (at - index().applyAsDouble(equilibria)) / step;
  }

  private Step.Detail shown(Contents after, double amount) {
    if (amount == 0) {
      return new Step.Detail(List.of("not supersaturated"), 0, 0);
    }
    double index = index().applyAsDouble(after.equilibria());
    return new Step.Detail(
        List.of(String.format(Locale.ROOT, "saturation index afterwards: %.3g", index)),
        index,
        1e-6);
  }

  @Override
  public String text() {
    return "precipitation of " + mineral.name() + " to equilibrium";
  }

  @Override
  public List<Caution> cautions() {
    return List.of();
  }

  @Override
  public String toString() {
    return text();
  }
}
