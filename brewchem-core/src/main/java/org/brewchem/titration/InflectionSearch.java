package org.brewchem.titration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.brewchem.internal.NumberText;

/**
 * The search for the place where a titration curve is steepest, in readings that may be dense and
 * noisy. A slope counts only if its step in pH is many times what noise makes of it: readings are
 * averaged over stretches of volume, from none to a sixteenth of all, and the stretch with which
 * the place is known best is taken.
 */
final class InflectionSearch {

  /** The steepest step in pH is at least so many of its own standard deviations of noise. */
  private static final double LEAST_SIGNIFICANCE = 8;

  /** Slopes that differ by fewer standard deviations are not told apart. */
  private static final double TOLD_APART = 3;

  /** Where noise leaves the place less well known than this share of the volume it is refused. */
  private static final double GREATEST_SHARE = 0.03;

  private static final int FINEST = 4096;
  private static final int COARSEST = 16;

  /** The quantile 0.75 of the normal distribution. */
  private static final double NORMAL_QUARTILE = 0.6745;

  private final double[] millilitres;
  private final double[] pH;
  private final double lowest;
  private final double highest;
  private final double noise;

  /**
   * An inflection.
   *
   * @param middle the middles of three steps, mL
   * @param slope the slopes there, pH per mL
   * @param millilitres the volume at the top of the parabola through them
   * @param halfWidth how far from it the steepest place may lie, mL
   * @param averagedOver the stretch over which readings were averaged, mL; 0 for none
   */
  record Found(
      double[] middle, double[] slope, double millilitres, double halfWidth, double averagedOver) {

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

  private InflectionSearch(
      double[] millilitres, double[] pH, double lowest, double highest, double greatestNoise) {
    this.millilitres = millilitres;
    this.pH = pH;
    this.lowest = lowest;
    this.highest = highest;
    this.noise = Math.min(noise(millilitres, pH), greatestNoise);
  }

  /**
   * Finds the inflection.
   *
   * @param millilitres volumes in ascending order
   * @param pH the pH after each
   * @param lowest the lowest pH of a step that counts, unless it straddles it
   * @param highest the highest pH of a step that counts, unless it straddles it
   * @param greatestNoise the noise of a reading at most, pH
   * @throws IllegalStateException if the readings do not hold the inflection, or noise leaves its
   *     place open
   */
  static Found find(
      double[] millilitres, double[] pH, double lowest, double highest, double greatestNoise) {
    return new InflectionSearch(millilitres, pH, lowest, highest, greatestNoise).best();
  }

  private Found best() {
    double range = millilitres[millilitres.length - 1] - millilitres[0];
    Found best = null;
    IllegalStateException refusal = null;
    for (int parts = 0; parts <= FINEST; parts = parts == 0 ? COARSEST : 2 * parts) {
      try {
        Found found = averagedOver(parts == 0 ? 0 : range / parts);
        if (best == null || found.halfWidth < best.halfWidth) {
          best = found;
        }
      } catch (IllegalStateException e) {
        refusal = refusal == null ? e : refusal;
      }
    }
    if (best != null) {
      return best;
    }
    throw refusal == null ? new IllegalStateException("readings: none") : refusal;
  }

  private Found averagedOver(double stretch) {
    List<double[]> groups = groups(stretch);
    int n = groups.size() - 1;
    double[] middle = new double[Math.max(n, 0)];
    double[] slope = new double[middle.length];
    double[] error = new double[middle.length];
    boolean[] counts = new boolean[middle.length];
    int steepest = -1;
    for (int i = 0; i < n; i++) {
      double[] one = groups.get(i);
      double[] two = groups.get(i + 1);
      double width = two[0] - one[0];
      middle[i] = (one[0] + two[0]) / 2;
      slope[i] = Math.abs((two[1] - one[1]) / width);
      error[i] = noise * Math.sqrt(1 / one[2] + 1 / two[2]) / width;
      counts[i] =
          Math.max(one[1], two[1]) >= lowest
              && Math.min(one[1], two[1]) <= highest
              && slope[i] >= LEAST_SIGNIFICANCE * error[i];
      if (counts[i] && (steepest < 0 || slope[i] > slope[steepest])) {
        steepest = i;
      }
    }
    if (steepest < 0) {
      throw new IllegalStateException(
          String.format(
              Locale.ROOT,
              "readings: none between pH %s and %s changes by much more than the noise, %s pH; an"
                  + " inflection needs that",
              NumberText.plain(lowest),
              NumberText.plain(highest),
              NumberText.significant(noise, 2)));
    }
    if (steepest == 0 || steepest == n - 1) {
      throw new IllegalStateException(
          "readings: no step has flatter ones on both sides; an inflection needs them");
    }
    for (int side = -1; side <= 1; side += 2) {
      int beside = steepest + side;
      if (slope[beside] > slope[steepest]) {
        throw new IllegalStateException(
            String.format(
                Locale.ROOT,
                "readings: the curve is steeper still at %s mL, beyond pH %s to %s, or noise hides"
                    + " where it is steepest",
                NumberText.significant(middle[beside], 4),
                NumberText.plain(lowest),
                NumberText.plain(highest)));
      }
    }
    double top = topOfParabola(middle, slope, steepest);
    double halfStep = (groups.get(steepest + 1)[0] - groups.get(steepest)[0]) / 2;
    double reach = halfStep;
    for (int i = 0; i < n; i++) {
      boolean same =
          counts[i]
              && slope[i] >= slope[steepest] - TOLD_APART * Math.hypot(error[i], error[steepest]);
      if (same) {
        reach = Math.max(reach, Math.abs(middle[i] - top));
      }
    }
    if (reach > halfStep && reach > GREATEST_SHARE * top) {
      throw new IllegalStateException(
          String.format(
              Locale.ROOT,
              "readings: noise of %s pH leaves open by %s mL where the curve is steepest, more than"
                  + " 3 %% of %s mL",
              NumberText.significant(noise, 2),
              NumberText.significant(reach, 2),
              NumberText.significant(top, 4)));
    }
    return new Found(
        Arrays.copyOfRange(middle, steepest - 1, steepest + 2),
        Arrays.copyOfRange(slope, steepest - 1, steepest + 2),
        top,
        reach,
        stretch);
  }

  /** Means of volume and pH with their count; readings of one volume are always one. */
  private List<double[]> groups(double stretch) {
    List<double[]> groups = new ArrayList<>();
    double start = Double.NaN;
    for (int i = 0; i < pH.length; i++) {
      double[] last = groups.isEmpty() ? null : groups.get(groups.size() - 1);
      if (last != null && (millilitres[i] == start || millilitres[i] - start < stretch)) {
        last[2]++;
        last[0] += (millilitres[i] - last[0]) / last[2];
        last[1] += (pH[i] - last[1]) / last[2];
      } else {
        groups.add(new double[] {millilitres[i], pH[i], 1});
        start = millilitres[i];
      }
    }
    return groups;
  }

  private static double topOfParabola(double[] x, double[] y, int i) {
    double left = (y[i] - y[i - 1]) / (x[i] - x[i - 1]);
    double right = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    double curvature = (right - left) / (x[i + 1] - x[i - 1]);
    if (curvature == 0) {
      return x[i];
    }
    double slopeHere = left + curvature * (x[i] - x[i - 1]);
    return x[i] - slopeHere / (2 * curvature);
  }

  /** The noise of a reading, pH, as all readings show it: see {@link #medianDistance}. */
  static double noise(double[] millilitres, double[] pH) {
    return medianDistance(distances(millilitres, pH, Double.POSITIVE_INFINITY));
  }

  /**
   * What noise makes distances of their median, pH: outliers and jumps do not move it.
   *
   * @param distances from {@link #distances}
   * @return 0 where there are none
   */
  static double medianDistance(List<Double> distances) {
    return distances.isEmpty()
        ? 0
        : distances.stream().sorted().toList().get(distances.size() / 2) / NORMAL_QUARTILE;
  }

  /**
   * The distances of readings from the cubic through two neighbours on either side, each as a
   * multiple of what noise of 1 makes of it.
   *
   * @param greatestStep the change of pH from one to the next of the five readings, at most
   */
  static List<Double> distances(double[] millilitres, double[] pH, double greatestStep) {
    List<Double> distances = new ArrayList<>();
    for (int i = 2; i < pH.length - 2; i++) {
      int[] near = {i - 2, i - 1, i + 1, i + 2};
      double cubic = 0;
      double squares = 1;
      for (int k : near) {
        double weight = 1;
        for (int j : near) {
          if (j != k) {
            weight *= (millilitres[i] - millilitres[j]) / (millilitres[k] - millilitres[j]);
          }
        }
        cubic += weight * pH[k];
        squares += weight * weight;
      }
      double step = 0;
      for (int k = i - 1; k <= i + 2; k++) {
        step = Math.max(step, Math.abs(pH[k] - pH[k - 1]));
      }
      double distance = Math.abs(pH[i] - cubic) / Math.sqrt(squares);
      if (Double.isFinite(distance) && step <= greatestStep) {
        distances.add(distance);
      }
    }
    return distances;
  }
}
