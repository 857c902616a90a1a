package org.brewchem.solution;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.Molality;
import org.brewchem.substance.Component;
import org.brewchem.substance.Mineral;

/**
 * The search for how much of a mineral precipitates or dissolves until its saturation index is
 * zero.
 *
 * <p>The unknown is the logarithm of what is left of the component that would be used up first, so
 * that a trace that is left is as exact as a plenty. The index rises with it: more of all that the
 * mineral is made of.
 */
final class MineralSearch {

  /** Logarithm of the most that may be left of the scarcest component, 50 mol/kg. */
  private static final double LOG_OF_MOST = Math.log(50);

  /** Where the search starts when there is nothing of a component yet, mol/kg. */
  private static final double TRACE = 1e-9;

  private static final double STEP = 1;

  /** An index so near to zero that its sign may be that of rounding. */
  private static final double SETTLED = 1e-11;

  private final Mineral mineral;
  private final Solution start;
  private final Optional<OpenSolution> open;
  private final Equilibria equilibria;

  /** Moles that a mole of mineral brings, without those of a component that follows a gas. */
  private final Map<Component, Double> parts;

  /** The mineral that all of the scarcest component would make, mol/kg. */
  private final double most;

  /** Totals that would then be left. */
  private final Map<Component, Double> unused = new LinkedHashMap<>();

  MineralSearch(Solution solution, Mineral mineral) {
    this(mineral, solution, Optional.empty());
  }

  MineralSearch(OpenSolution solution, Mineral mineral) {
    this(mineral, solution.rest(), Optional.of(solution));
  }

  private MineralSearch(Mineral mineral, Solution start, Optional<OpenSolution> open) {
    this.mineral = mineral;
    this.start = start;
    this.open = open;
    parts = new LinkedHashMap<>(mineral.components());
    open.ifPresent(o -> parts.remove(o.gas().component()));

    Set<Component> all = new LinkedHashSet<>(start.molesPerKilogram().keySet());
    all.addAll(parts.keySet());
    equilibria = Equilibria.of(all, start.temperature(), start.chemistry());
    start
        .molesPerKilogram()
        .forEach((c, total) -> equilibria.setTotal(equilibria.indexOf(c), total));
    equilibria.setInertCharge(start.inertPerKilogram());
    open.ifPresent(o -> o.hold(equilibria));

    double scarcest = Double.POSITIVE_INFINITY;
    for (Map.Entry<Component, Double> part : parts.entrySet()) {
      scarcest = Math.min(scarcest, total(part.getKey()) / part.getValue());
    }
    most = scarcest;
    parts.forEach((c, moles) -> unused.put(c, Math.max(total(c) - moles * most, 0)));
  }

  private double total(Component component) {
    return start.molesPerKilogram().getOrDefault(component, 0.0);
  }

  /**
   * What was found.
   *
   * @param solution the solution that is left, closed
   * @param precipitated mol per kg of water, negative where the mineral dissolved
   */
  record Found(Solution solution, double precipitated) {}

  Found precipitating() {
    return most == 0 || index(Math.log(most)) <= 0 ? result(start, most) : withExcess();
  }

  Found withExcess() {
    double root =
        Roots.walking(this::index, Math.log(most == 0 ? TRACE : most), this::next, SETTLED)
            .orElseThrow(
                end ->
                    new NoSolutionException(
                        "equilibrium with " + mineral,
                        Math.exp(end.low()),
                        Math.exp(end.high()),
                        end.residual(),
                        end.evaluations()));
    return leaving(Math.exp(root));
  }

  /**
   * Down goes half as far as the index asks for if all its ions fall in proportion; up goes slowly,
   * for near neutrality pH and index leap, and a step too far ends where activity coefficients have
   * lost all meaning.
   */
  private double next(double logOfLeft, double index) {
    double ions = mineral.components().values().stream().mapToDouble(Double::doubleValue).sum();
    double step = index < 0 ? STEP : -Math.max(STEP, index * Math.log(10) / (2 * ions));
    return Math.min(logOfLeft + step, LOG_OF_MOST);
  }

  /** Saturation index when so much of the scarcest component is left. */
  private double index(double logOfLeft) {
    double left = Math.exp(logOfLeft);
    parts.keySet().forEach(c -> equilibria.setTotal(equilibria.indexOf(c), total(c, left)));
    return equilibria.equilibrium().saturationIndex(mineral).orElseThrow();
  }

  private double total(Component part, double left) {
    return unused.getOrDefault(part, 0.0) + parts.getOrDefault(part, 0.0) * left;
  }

  private Found leaving(double left) {
    Solution rest = start;
    for (Component part : parts.keySet()) {
      rest = rest.withTotal(part, Molality.ofMolesPerKilogram(total(part, left)));
    }
    return result(rest, left);
  }

  private Found result(Solution rest, double left) {
    Solution closed =
        open.map(o -> OpenSolution.of(rest, o.gas(), o.partialPressure()).solution()).orElse(rest);
    return new Found(closed, most - left);
  }
}
