package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;

/** The shape of a titration curve: its steps in ascending order of volume. */
final class CurveShape {

  private static final double SIGNIFICANCE = 0.05;

  /** A reading with fewer neighbours on one side than two is known less well, the last least. */
  private static final int BESIDE = 3;

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

  private CurveShape(double[] millilitres, double[] pH) {
    this.millilitres = millilitres;
    this.pH = pH;
  }

  /** The shape of readings in ascending order of volume. */
  static CurveShape of(double[] millilitres, double[] pH) {
    return new CurveShape(millilitres, pH);
  }

  /**
   * Readings that lie off the cubic through the two neighbours on either side (the four nearest at
   * the ends) by more than is allowed: the noise of reading and cubic at 5 % over all readings, and
   * how well four neighbours know the bend of the curve: twice the difference that leaving out one
   * neighbour or the other makes, and what the cubic differs from the straight line, twice and
   * three times that much for the last but one and the last reading. The worst goes first and no
   * longer serves as a neighbour.
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
    int beside = Math.min(position, kept.size() - 1 - position);
    double allowed =
        noise * Math.sqrt(squares)
            + Math.max(1, BESIDE - beside) * (2 * Math.abs(bend) + Math.abs(cubic - straight));
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
