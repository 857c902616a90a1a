package org.brewchem.solution;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.brewchem.figure.Notice;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;

/**
 * A charge balance whose totals and inert charge have sources of uncertainty, and what it tells
 * with the sources kept: by the kernel's exact slopes where it has them, else by differences.
 *
 * <p>Used once, by one thread.
 */
final class TracedBalance {

  /** Relative step of a total in a difference; the kernel's roots hold to 1e-14. */
  private static final double STEP = 1e-6;

  /** Gives the slopes of a quantity at the last solution, and returns that against pH. */
  interface Slopes {
    double of(Equilibria equilibria, double[] perTotal);
  }

  private final Equilibria equilibria;
  private final Traced[] inputs;
  private double ionicStrength;

  /**
   * Wraps a work space.
   *
   * @param equilibria the work space, its totals set
   * @param inputs the same totals by component index, and behind them the inert charge
   */
  TracedBalance(Equilibria equilibria, Traced[] inputs) {
    this.equilibria = equilibria;
    this.inputs = inputs;
  }

  Traced pH() {
    double pH = equilibria.pH();
    ionicStrength = equilibria.ionicStrength();
    return Traced.linear(pH, inputs, pHSlopes());
  }

  /** Slopes of the pH at which the balance is neutral, after it was found. */
  private double[] pHSlopes() {
    double[] slopes = new double[inputs.length];
    double overPH = equilibria.chargeSlopes(slopes);
    for (int i = 0; i < slopes.length; i++) {
      slopes[i] /= -overPH;
    }
    return slopes;
  }

  /** Charge at a pH that may have sources of its own. */
  Traced chargeAt(Traced pH) {
    double charge = equilibria.chargeAt(pH.value());
    ionicStrength = equilibria.ionicStrength();
    double[] slopes = new double[inputs.length];
    double overPH = equilibria.chargeSlopes(slopes);
    Traced[] all = Arrays.copyOf(inputs, inputs.length + 1);
    double[] allSlopes = Arrays.copyOf(slopes, all.length);
    all[inputs.length] = pH;
    allSlopes[inputs.length] = overPH;
    return Traced.linear(charge, all, allSlopes);
  }

  /** A quantity at the balance's own pH, which follows, by slopes of the kernel. */
  Traced atOwnPH(ToDoubleFunction<Equilibria> quantity, Slopes slopesOf) {
    equilibria.pH();
    ionicStrength = equilibria.ionicStrength();
    double value = quantity.applyAsDouble(equilibria);
    double[] slopes = new double[inputs.length];
    double overPH = slopesOf.of(equilibria, slopes);
    double[] pH = pHSlopes();
    for (int i = 0; i < slopes.length; i++) {
      slopes[i] += overPH * pH[i];
    }
    return Traced.linear(value, inputs, slopes);
  }

  /** Any function of the balance, by differences over the totals that have sources. */
  Traced byDifferences(ToDoubleFunction<Equilibria> function) {
    double value = function.applyAsDouble(equilibria);
    ionicStrength = equilibria.ionicStrength();
    double[] slopes = new double[inputs.length];
    for (int i = 0; i < inputs.length; i++) {
      if (!inputs[i].sources().isEmpty()) {
        double own = inputs[i].value();
        double step = Math.max(Math.abs(own), 1e-5) * STEP;
        // From a total of none upwards only.
        boolean bothWays = own >= step || i == inputs.length - 1;
        set(i, own + step);
        double above = function.applyAsDouble(equilibria);
        set(i, bothWays ? own - step : own);
        double below = bothWays ? function.applyAsDouble(equilibria) : value;
        slopes[i] = (above - below) / (bothWays ? 2 * step : step);
        set(i, own);
      }
    }
    return Traced.linear(value, inputs, slopes);
  }

  /** Charge that a component carries at the balance's own pH. */
  Traced chargeOf(Component component) {
    if (!equilibria.components().contains(component)) {
      equilibria.pH();
      ionicStrength = equilibria.ionicStrength();
      return Traced.exact(0);
    }
    int index = equilibria.indexOf(component);
    return atOwnPH(
        work -> work.chargeOf(index), (work, perTotal) -> work.chargeSlopesOf(index, perTotal));
  }

  /** Ionic strength at the balance's own pH. */
  Traced ionicStrength() {
    return atOwnPH(Equilibria::ionicStrength, Equilibria::ionicStrengthSlopes);
  }

  /** What is notable about the balance where it was last evaluated. */
  List<Notice> notices() {
    List<Notice> constants = equilibria.notices();
    return equilibria
        .activityNotice(ionicStrength)
        .map(
            notice -> {
              List<Notice> all = new ArrayList<>(constants);
              all.add(notice);
              return List.copyOf(all);
            })
        .orElse(constants);
  }

  private void set(int index, double value) {
    if (index < inputs.length - 1) {
      equilibria.setTotal(index, value);
    } else {
      equilibria.setInertCharge(value);
    }
  }
}
