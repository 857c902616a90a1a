package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.MineralAssemblage;
import org.brewchem.solution.Solution;
import org.brewchem.solution.SolutionCode;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Component;
import org.brewchem.substance.Mineral;
import org.brewchem.uncertainty.Traced;

/** Minerals that precipitate until the liquid is no longer supersaturated with any of them. */
final class Precipitation implements Treatment {

  private static final double INDEX_TOLERANCE = 1e-6;

  private final List<Mineral> minerals;

  Precipitation(List<Mineral> minerals) {
    minerals.forEach(mineral -> Objects.requireNonNull(mineral, "mineral"));
    this.minerals = List.copyOf(minerals);
  }

  @Override
  public Contents on(Contents before) {
    Set<Component> needed = new LinkedHashSet<>();
    minerals.forEach(mineral -> needed.addAll(mineral.components().keySet()));
    Balance.required(text(), before, needed);
    Solution start = Solution.of(before);
    MineralAssemblage found =
        MineralAssemblage.precipitating(start, minerals.toArray(Mineral[]::new));
    List<Leaving.Way> ways = new ArrayList<>();
    List<Double> amounts = new ArrayList<>();
    for (Mineral mineral : minerals) {
      double amount = perKilogram(found, mineral, start);
      if (amount > 0) {
        ways.add(way(mineral));
        amounts.add(amount);
      }
    }
    double[] plain = amounts.stream().mapToDouble(Double::doubleValue).toArray();
    Traced[] wanted = new Traced[plain.length];
    Arrays.fill(wanted, Traced.exact(0));
    Traced[] precipitated = Leaving.traced(before, ways, plain, wanted);
    Contents after = Leaving.without(before, ways, precipitated);
    List<Step> steps = new ArrayList<>();
    int next = 0;
    for (Mineral mineral : minerals) {
      boolean some = perKilogram(found, mineral, start) > 0;
      Traced amount = some ? precipitated[next++] : Traced.exact(0);
      steps.add(step(mineral, before, after, amount));
    }
    return after
        .withBasis(steps)
        .withoutNotices(notice -> minerals.stream().anyMatch(one -> isSupersaturation(notice, one)))
        .withNotices(found.notices());
  }

  /** Whether a notice is about a mineral that was too much and has precipitated since. */
  static boolean isSupersaturation(Notice notice, Mineral mineral) {
    return notice.code() == SolutionCode.SUPERSATURATED && notice.subject().equals(mineral.name());
  }

  /** A mineral that leaves until its saturation index is zero. */
  static Leaving.Way way(Mineral mineral) {
    return new Leaving.Way(mineral.components(), work -> index(work, mineral));
  }

  private static double perKilogram(MineralAssemblage found, Mineral mineral, Solution start) {
    return found.precipitatedMillimolesPerLitre(mineral) / (1000 * start.kilogramsPerLitre());
  }

  /** How much of a mineral has precipitated, with the index that it leaves. */
  static Step step(Mineral mineral, Contents before, Contents after, Traced amount) {
    return Step.of(mineral.name() + " precipitated", Scales.MILLIMOLES_PER_LITRE, Step.Kind.ROOT)
        .text("until its saturation index is 0, or none if it is below", "")
        .inputs(before.basis())
        .detail(() -> shown(mineral, after, amount.value()))
        .found(amount.times(1000 * before.kilogramsPerLitre()));
  }

  static double index(Equilibria equilibria, Mineral mineral) {
    equilibria.pH();
    return equilibria.state().saturationIndex(mineral).orElseThrow();
  }

  private static Step.Detail shown(Mineral mineral, Contents after, double amount) {
    if (amount == 0) {
      return new Step.Detail(List.of("not supersaturated"), 0, 0);
    }
    double index = index(after.equilibria(), mineral);
    return new Step.Detail(
        List.of(String.format(Locale.ROOT, "saturation index afterwards: %.3g", index)),
        index,
        INDEX_TOLERANCE);
  }

  @Override
  public String text() {
    return "precipitation of "
        + String.join(" and ", minerals.stream().map(Mineral::name).toList())
        + " to equilibrium";
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
