package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.MineralEquilibrium;
import org.brewchem.solution.OpenSolution;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Component;
import org.brewchem.substance.Gas;
import org.brewchem.substance.Mineral;
import org.brewchem.uncertainty.Traced;

/**
 * A liquid left open to a pressure of carbon dioxide until both are in equilibrium, perhaps hot,
 * and perhaps with a mineral that precipitates meanwhile: aeration and boiling.
 */
final class Opening implements Treatment {

  private static final List<Caution> CAUTIONS = Caution.of(List.of(Hazard.CARBON_DIOXIDE));
  private static final double TOLERANCE = 1e-6;

  private final String name;
  private final Traced kilopascals;
  private final Optional<Temperature> meanwhile;
  private final Optional<Mineral> mineral;
  private final List<Notice> notices;

  Opening(
      String name,
      Traced kilopascals,
      Optional<Temperature> meanwhile,
      Optional<Mineral> mineral,
      List<Notice> notices) {
    this.name = name;
    this.kilopascals = kilopascals;
    this.meanwhile = meanwhile;
    this.mineral = mineral;
    this.notices = notices;
  }

  @Override
  public Contents on(Contents before) {
    List<Component> needed = new ArrayList<>(List.of(Component.CARBONATE));
    mineral.ifPresent(solid -> needed.addAll(solid.components().keySet()));
    Balance.required(name, before, needed);
    Contents there = meanwhile.map(before::at).orElse(before);
    Solution start = Solution.of(there);
    OpenSolution open = OpenSolution.of(start, Pressure.ofKilopascals(kilopascals.value()));
    List<Notice> said = new ArrayList<>(notices);
    said.addAll(open.notices());
    double precipitated = 0;
    Solution closed;
    if (mineral.isPresent()) {
      MineralEquilibrium found = MineralEquilibrium.precipitating(open, mineral.get());
      said.addAll(found.notices());
      closed = found.solution();
      precipitated =
          Math.max(0, found.precipitatedMillimolesPerLitre() / (1000 * start.kilogramsPerLitre()));
    } else {
      closed = open.solution();
    }
    double gas =
        there.least(Component.CARBONATE).value()
            - precipitated
            - closed.equilibrium().total(Component.CARBONATE).inMolesPerKilogram();
    List<Leaving.Way> ways = new ArrayList<>();
    ways.add(new Leaving.Way(Map.of(Component.CARBONATE, 1.0), Opening::logPressure));
    Traced wanted =
        Traced.linear(
            Math.log10(kilopascals.value()),
            new Traced[] {kilopascals},
            new double[] {1 / (kilopascals.value() * Math.log(10))});
    boolean solid = precipitated > 0;
    if (solid) {
      ways.add(Precipitation.way(mineral.orElseThrow()));
    }
    Traced[] left =
        Leaving.traced(
            there,
            ways,
            solid ? new double[] {gas, precipitated} : new double[] {gas},
            solid ? new Traced[] {wanted, Traced.exact(0)} : new Traced[] {wanted});
    Contents after = Leaving.without(there, ways, left);
    List<Step> steps = new ArrayList<>();
    steps.add(
        Step.of("partial pressure of carbon dioxide", Scales.KILOPASCALS, Step.Kind.STATED)
            .origin(Origin.REPORTED)
            .text(name, "")
            .found(kilopascals));
    steps.add(
        Step.of("carbon dioxide given off", Scales.MILLIMOLES_PER_LITRE, Step.Kind.ROOT)
            .text("until the liquid is in equilibrium with the gas; negative where taken up", "")
            .inputs(before.basis())
            .detail(() -> shown(after))
            .found(left[0].times(1000 * before.kilogramsPerLitre())));
    mineral.ifPresent(
        formed ->
            steps.add(Precipitation.step(formed, there, after, solid ? left[1] : Traced.exact(0))));
    return after
        .at(before.temperature())
        .withBasis(steps)
        .withoutNotices(
            notice -> mineral.filter(m -> Precipitation.isSupersaturation(notice, m)).isPresent())
        .withNotices(said);
  }

  /** The same without a mineral that precipitates. */
  Opening withoutMineral() {
    return new Opening(name, kilopascals, meanwhile, Optional.empty(), notices);
  }

  private static double logPressure(Equilibria equilibria) {
    equilibria.pH();
    return Math.log10(equilibria.state().partialPressure(Gas.CARBON_DIOXIDE).inKilopascals());
  }

  private Step.Detail shown(Contents after) {
    double excess = logPressure(after.equilibria()) - Math.log10(kilopascals.value());
    return new Step.Detail(
        List.of(
            String.format(
                Locale.ROOT, "log10 of the pressure over that wanted, afterwards: %.3g", excess)),
        excess,
        TOLERANCE);
  }

  @Override
  public String text() {
    return name + ", " + Scales.KILOPASCALS.text(kilopascals.value()) + " of CO2";
  }

  @Override
  public List<Caution> cautions() {
    return CAUTIONS;
  }

  @Override
  public String toString() {
    return text();
  }
}
