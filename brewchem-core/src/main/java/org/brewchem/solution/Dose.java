package org.brewchem.solution;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Component;

/**
 * The charge of a solution to which something is added, as a function of how much: the one search
 * behind every dose and every simulated titration.
 *
 * <p>With x kg of what is added per kg of solution, or x mol where it brings no water, the mixture
 * holds (own + x added)/(1 + dilution x) per kg.
 */
final class Dose {

  /** The most that is ever tried: mol of solute, or kg of titrant, per kg of solution. */
  private static final double MOST = 50;

  private final Equilibria equilibria;
  private final double[] own;
  private final double[] added;
  private final double ownInert;
  private final double addedInert;
  private final double dilution;

  private Dose(
      Solution solution, Map<Component, Double> added, double addedInert, double dilution) {
    Set<Component> all = new LinkedHashSet<>(solution.totals().keySet());
    all.addAll(added.keySet());
    equilibria = Equilibria.of(all, solution.temperature(), solution.chemistry());
    own = new double[all.size()];
    this.added = new double[all.size()];
    solution.totals().forEach((c, total) -> own[equilibria.indexOf(c)] = total);
    added.forEach((c, total) -> this.added[equilibria.indexOf(c)] = total);
    ownInert = solution.inertCharge();
    this.addedInert = addedInert;
    this.dilution = dilution;
  }

  /** A dose into what a work space holds, which is not restored afterwards. */
  Dose(Equilibria equilibria, double[] own, double ownInert, double[] added) {
    this.equilibria = equilibria;
    this.own = own;
    this.ownInert = ownInert;
    this.added = added;
    this.addedInert = 0;
    this.dilution = 0;
  }

  Dose(Solution solution, Map<Component, Double> added, double dilution) {
    this(solution, added, 0, dilution);
  }

  static Dose of(Solution solution, Solution titrant) {
    return new Dose(solution, new LinkedHashMap<>(titrant.totals()), titrant.inertCharge(), 1);
  }

  /** Holds the activity of a form of a component throughout, as {@link Equilibria#hold}. */
  void hold(Component component, int protons, double log10Activity) {
    equilibria.hold(component, protons, log10Activity);
  }

  /** pH after the addition of x. */
  double pHAfter(double x) {
    set(x);
    return equilibria.pH();
  }

  /** The x that brings the solution to the target. */
  double toReach(PH target, String what) {
    double start = chargeAfter(0, target);
    if (Math.abs(start) < 1e-15) {
      return 0;
    }
    double sign = Math.signum(start);
    return Roots.rising(x -> -sign * chargeAfter(x, target), 0, 1e-9 + Math.abs(start), MOST)
        .orElseThrow(end -> new NoSolutionException(what + " to pH " + target.value(), end));
  }

  /** Charge per kg of the original solution, so that dilution does not flatten the function. */
  private double chargeAfter(double x, PH target) {
    set(x);
    return equilibria.chargeAt(target.value()) * (1 + dilution * x);
  }

  private void set(double x) {
    double share = 1 / (1 + dilution * x);
    for (int i = 0; i < own.length; i++) {
      equilibria.setTotal(i, (own[i] + x * added[i]) * share);
    }
    equilibria.setInertCharge((ownInert + x * addedInert) * share);
  }
}
