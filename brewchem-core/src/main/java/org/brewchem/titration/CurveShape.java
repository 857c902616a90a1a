package org.brewchem.titration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;

/** The shape of a titration curve: its steps in ascending order of volume. */
final class CurveShape {

  private static final double SIGNIFICANCE = 0.05;

  private final double[] millilitres;
  private final double[] pH;

  /**
   * A reading off the curve that its neighbours draw.
   *
   * @param index its index in ascending order of volume
   * @param distance pH read minus pH of that curve
   * @param allowed what noise and the bend of the curve explain, in pH
   */
  record Stray(int index, double distance, double allowed) {
    double excess() {
      return Math.abs(distance) / allowed;
    }
  }

  /**
   * The top of a parabola through three slopes.
   *
   * @param middle the middles of three steps, mL
   * @param slope the slopes there, pH per mL
   * @param millilitres the volume at the top
   */
  record Inflection(double[] middle, double[] slope, double millilitres) {

    /** The parabola's own slope at the top, as a share of the slope there per step: near zero. */
    double residual() {
      double sum = 0;
      for (int i = 0; i < 3; i++) {
        double next = middle[(i + 1) % 3];
        double last = middle[(i + 2) % 3];
        sum +=
            slope[i] * (2 * millilitres - next - last) / ((middle[i] - next) * (middle[i] - last));
      }
      return sum * (middle[2] - middle[0]) / slope[1];
    }
  }

  private CurveShape(double[] millilitres, double[] pH) {
    this.millilitres = millilitres;
    this.pH = pH;
  }

  /** The shape of readings in ascending order of volume. */
  static CurveShape of(double[] millilitres, double[] pH) {
    return new CurveShape(millilitres, pH);
  }

  /**
   * Where the curve is steepest, in mL: the top of the parabola through the steepest slope and its
   * two neighbours, each slope standing in the middle of its step.
   *
   * @throws IllegalStateException if the steepest step is the first or the last
   */
  Inflection inflection() {
    return inflection(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
  }

  /**
   * As {@link #inflection()}, of the steps that begin and end between two pH.
   *
   * @throws IllegalStateException if there is no such step, or the steepest is the first or last
   */
  Inflection inflection(double lowest, double highest) {
    int n = pH.length - 1;
    double[] middle = new double[n];
    double[] slope = new double[n];
    int steepest = -1;
    for (int i = 0; i < n; i++) {
      middle[i] = (millilitres[i] + millilitres[i + 1]) / 2;
      double width = millilitres[i + 1] - millilitres[i];
      slope[i] = width > 0 ? Math.abs((pH[i + 1] - pH[i]) / width) : 0;
      boolean within =
          Math.min(pH[i], pH[i + 1]) >= lowest && Math.max(pH[i], pH[i + 1]) <= highest;
      if (within && (steepest < 0 || slope[i] > slope[steepest])) {
        steepest = i;
      }
    }
    if (steepest <= 0 || steepest == n - 1) {
      throw new IllegalStateException(
          "readings: no step has flatter ones on both sides; an inflection needs them");
    }
    return new Inflection(
        Arrays.copyOfRange(middle, steepest - 1, steepest + 2),
        Arrays.copyOfRange(slope, steepest - 1, steepest + 2),
        topOfParabola(middle, slope, steepest));
  }

  /** The width of the step that holds a volume, mL; zero outside the readings. */
  double stepMillilitres(double volume) {
    for (int i = 1; i < millilitres.length; i++) {
      if (volume >= millilitres[i - 1] && volume <= millilitres[i]) {
        return millilitres[i] - millilitres[i - 1];
      }
    }
    return 0;
  }

  private static double topOfParabola(double[] x, double[] y, int i) {
    double left = (y[i] - y[i - 1]) / (x[i] - x[i - 1]);
    double right = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    double curvature = (right - left) / (x[i + 1] - x[i - 1]);
    double slopeHere = left + curvature * (x[i] - x[i - 1]);
    return x[i] - slopeHere / (2 * curvature);
  }

  /**
   * Readings that lie off the cubic through the two neighbours on either side (the four nearest at
   * the ends) by more than is allowed: the noise of reading and cubic at 5 % over all readings, and
   * how well four neighbours know the bend of the curve: twice the difference that leaving out one
   * neighbour or the other makes, and what the cubic differs from the straight line. The worst goes
   * first and no longer serves as a neighbour.
   */
  List<Stray> strays(double standardUncertainty) {
    List<Integer> kept = new ArrayList<>();
    for (int i = 0; i < pH.length; i++) {
      kept.add(i);
    }
    double quantile =
        new NormalDistribution().inverseCumulativeProbability(1 - SIGNIFICANCE / (2 * pH.length));
    List<Stray> strays = new ArrayList<>();
    while (kept.size() > 5) {
      Stray worst = null;
      for (int position = 0; position < kept.size(); position++) {
        Stray stray = judge(kept, position, quantile * standardUncertainty);
        if (stray.excess() > 1 && (worst == null || stray.excess() > worst.excess())) {
          worst = stray;
        }
      }
      if (worst == null) {
        return strays;
      }
      strays.add(worst);
      kept.remove((Integer) worst.index());
    }
    return strays;
  }

  private Stray judge(List<Integer> kept, int position, double noise) {
    int first = Math.max(0, Math.min(position - 2, kept.size() - 5));
    int[] neighbours = new int[4];
    int count = 0;
    for (int k = first; k < first + 5; k++) {
      if (k != position) {
        neighbours[count++] = kept.get(k);
      }
    }
    int index = kept.get(position);
    double cubic = 0;
    double squares = 1;
    for (int k = 0; k < 4; k++) {
      double weight = weight(neighbours, k, 0, 4, millilitres[index]);
      cubic += weight * pH[neighbours[k]];
      squares += weight * weight;
    }
    double bend = 0;
    for (int k = 0; k < 3; k++) {
      bend += weight(neighbours, k, 0, 3, millilitres[index]) * pH[neighbours[k]];
      bend -= weight(neighbours, k + 1, 1, 4, millilitres[index]) * pH[neighbours[k + 1]];
    }
    int[] next = nextTo(neighbours, index);
    double straight =
        weight(next, 0, 0, 2, millilitres[index]) * pH[next[0]]
            + weight(next, 1, 0, 2, millilitres[index]) * pH[next[1]];
    double allowed = noise * Math.sqrt(squares) + 2 * Math.abs(bend) + Math.abs(cubic - straight);
    return Double.isFinite(cubic)
        ? new Stray(index, pH[index] - cubic, allowed)
        : new Stray(index, 0, 1);
  }

  /** The neighbours on either side, or the two nearest at the ends. */
  private static int[] nextTo(int[] neighbours, int index) {
    int before = 0;
    while (before < 2 && neighbours[before + 1] < index) {
      before++;
    }
    return new int[] {neighbours[before], neighbours[before + 1]};
  }

  /** Lagrange weight of neighbour k among those from {@code from} to before {@code to}. */
  private double weight(int[] neighbours, int k, int from, int to, double volume) {
    double weight = 1;
    for (int j = from; j < to; j++) {
      if (j != k) {
        double other = millilitres[neighbours[j]];
        weight *= (volume - other) / (millilitres[neighbours[k]] - other);
      }
    }
    return weight;
  }
}
