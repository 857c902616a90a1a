package org.brewchem.solution;

import java.util.Map;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Component;

/**
 * The charge of what a work space holds when something is added to it, as a function of how much:
 * the one search behind every dose and every simulated titration.
 *
 * <p>With x kg of what is added per kg of solution, or x mol where it brings no water, the mixture
 * holds (own + x added)/(1 + dilution x) per kg. The work space is left with the last mixture
 * tried.
 */
final class DoseSearch {

  /** The most that is ever tried: mol of solute, or kg of titrant, per kg of solution. */
  private static final double MOST = 50;

  private final Equilibria equilibria;
  private final double[] own;
  private double ownInert;
  private final double[] added;
  private final double addedInert;
  private final double dilution;

  /**
   * Makes a search.
   *
   * @param equilibria the work space
   * @param own totals to start from by component index, mol/kg
   * @param ownInert inert charge to start from, Eq/kg
   * @param added what one unit of the addition brings by component index, mol
   * @param addedInert its inert charge, Eq
   * @param dilution kg of water that it brings
   */
  DoseSearch(
      Equilibria equilibria,
      double[] own,
      double ownInert,
      double[] added,
      double addedInert,
      double dilution) {
    Checks.inRange("components of the moles added", added.length, "", own.length, own.length);
    this.equilibria = equilibria;
    this.own = own;
    this.ownInert = ownInert;
    this.added = added;
    this.addedInert = addedInert;
    this.dilution = dilution;
  }

  /** Makes a search of totals by component. */
  static DoseSearch along(
      Equilibria equilibria,
      Map<Component, Double> own,
      double ownInert,
      Map<Component, Double> added,
      double addedInert,
      double dilution) {
    return new DoseSearch(
        equilibria,
        byIndex(own, equilibria),
        ownInert,
        byIndex(added, equilibria),
        addedInert,
        dilution);
  }

  private static double[] byIndex(Map<Component, Double> moles, Equilibria equilibria) {
    double[] byIndex = new double[equilibria.components().size()];
    moles.forEach((component, amount) -> byIndex[equilibria.indexOf(component)] = amount);
    return byIndex;
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

  /** Changes a total to start from, mol/kg. */
  void setOwn(int index, double molesPerKilogram) {
    own[index] = molesPerKilogram;
  }

  /** Changes the inert charge to start from, Eq/kg. */
  void setOwnInert(double equivalentsPerKilogram) {
    ownInert = equivalentsPerKilogram;
  }

  Equilibria equilibria() {
    return equilibria;
  }

  /** The share of the original solution in the mixture with x. */
  double share(double x) {
    return 1 / (1 + dilution * x);
  }

  /** Adds x to the original solution. */
  void set(double x) {
    double share = share(x);
    for (int i = 0; i < own.length; i++) {
      equilibria.setTotal(i, (own[i] + x * added[i]) * share);
    }
    equilibria.setInertCharge((ownInert + x * addedInert) * share);
  }
}
