package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;

/**
 * The search for the volume at a pH in the readings of a titration: on the straight line between
 * two readings, or, where readings are so dense that noise crosses the pH more than once or makes
 * the slope, on a parabola through those around it.
 */
final class EndPointSearch {

  /**
   * A parabola is taken where the step in pH at the end point is less than so many times the noise.
   */
  private static final double DENSE = 8;

  private static final int LEAST_READINGS = 7;

  /** The bend of a curve is an error of one sign and of about this size: its u, as a half width. */
  static final double SQRT_3 = Math.sqrt(3);

  /**
   * A parabola spans at least so many times the noise, so that its slope is known to some per cent.
   */
  private static final double LEAST_SPAN = 25;

  /** Readings of one volume are one: their mean, with half of what they differ by. */
  private final double[] millilitres;

  private final double[] pH;
  private final double[] halfSpread;
  private final double sign;
  private final double noise;

  /**
   * Where a pH is reached.
   *
   * @param millilitres the volume
   * @param slope the slope of the curve there, pH per mL; not 0
   * @param halfWidth how far off the volume may be, mL, by the course of the curve between readings
   * @param before the last volume before it that counts, mL
   * @param after the first volume behind it that counts, mL
   * @param readings how many readings it rests on
   * @param offset the pH of line or parabola there less the pH sought: near zero
   */
  record Place(
      double millilitres,
      double slope,
      double halfWidth,
      double before,
      double after,
      int readings,
      double offset) {

    boolean isFitted() {
      return readings > 2;
    }
  }

  /**
   * Takes readings.
   *
   * @param volumes mL, in ascending order, not all the same
   * @param read the pH after each
   * @param alkali whether the pH rises
   * @param noise standard uncertainty of a reading, pH
   */
  EndPointSearch(double[] volumes, double[] read, boolean alkali, double noise) {
    List<double[]> groups = new ArrayList<>();
    for (int i = 0; i < read.length; i++) {
      double[] last = groups.isEmpty() ? null : groups.get(groups.size() - 1);
      if (last != null && last[0] == volumes[i]) {
        last[1] += read[i];
        last[2]++;
        last[3] = Math.min(last[3], read[i]);
        last[4] = Math.max(last[4], read[i]);
      } else {
        groups.add(new double[] {volumes[i], read[i], 1, read[i], read[i]});
      }
    }
    this.millilitres = groups.stream().mapToDouble(g -> g[0]).toArray();
    this.pH = groups.stream().mapToDouble(g -> g[1] / g[2]).toArray();
    this.halfSpread = groups.stream().mapToDouble(g -> (g[4] - g[3]) / 2).toArray();
    this.sign = alkali ? 1 : -1;
    this.noise = noise;
  }

  /** Whether the first reading is past a pH already. */
  boolean startsBeyond(double target) {
    return sign * (pH[0] - target) > 0;
  }

  /** Whether a reading is at or past a pH. */
  boolean reaches(double target) {
    return firstPassing(target) < pH.length;
  }

  private int firstPassing(double target) {
    for (int i = 0; i < pH.length; i++) {
      if (sign * (pH[i] - target) >= 0) {
        return i;
      }
    }
    return pH.length;
  }

  /** The last reading that is not past a pH; the first never is. */
  private int lastNotPast(double target) {
    int last = pH.length - 1;
    while (last > 0 && sign * (pH[last] - target) > 0) {
      last--;
    }
    return last;
  }

  /** The place of a pH that the readings reach and do not begin beyond. */
  Place at(double target) {
    int first = Math.max(1, firstPassing(target));
    int last = Math.max(first - 1, lastNotPast(target));
    double step = Math.abs(pH[first] - pH[first - 1]);
    boolean dense = step < DENSE * noise && pH.length >= LEAST_READINGS;
    if (last > first || dense) {
      return fitted(target, Math.min(first, last), Math.max(first, last));
    }
    return onTheLine(target, first);
  }

  /** On the line through two readings; a pH beyond them continues it. */
  private Place onTheLine(double target, int after) {
    int before = after - 1;
    double width = millilitres[after] - millilitres[before];
    double slope = (pH[after] - pH[before]) / width;
    double volume =
        slope == 0 ? millilitres[before] : millilitres[before] + (target - pH[before]) / slope;
    double farthest =
        Math.max(Math.abs(volume - millilitres[before]), Math.abs(millilitres[after] - volume));
    double halfWidth =
        slope == 0
            ? millilitres[millilitres.length - 1] - millilitres[0]
            : Math.min(
                farthest, SQRT_3 * (bend(after, volume) / Math.abs(slope) + spread(after, slope)));
    // A flat pair has no slope; the least that its reading could show stands for it.
    double known = slope == 0 ? sign * Math.max(noise, 1e-6) / width : slope;
    return new Place(
        volume,
        known,
        halfWidth,
        millilitres[before],
        millilitres[after],
        2,
        pH[before] + slope * (volume - millilitres[before]) - target);
  }

  /** What readings of the same volume differ by, as a volume. */
  private double spread(int after, double slope) {
    return Math.max(halfSpread[after - 1], halfSpread[after]) / Math.abs(slope);
  }

  /** How far the curve may be off the straight line between two readings, pH. */
  private double bend(int after, double volume) {
    int before = after - 1;
    boolean hasBefore = before > 0;
    boolean hasAfter = after < pH.length - 1;
    if (!hasBefore && !hasAfter) {
      return Double.POSITIVE_INFINITY;
    }
    double curvature =
        Math.max(
            hasBefore ? Math.abs(secondDerivative(before)) : 0,
            hasAfter ? Math.abs(secondDerivative(after)) : 0);
    // One neighbour alone may lie where the curve happens to be straight.
    double factor = hasBefore && hasAfter ? 1 : 2;
    return factor
        * curvature
        * Math.abs((volume - millilitres[before]) * (millilitres[after] - volume))
        / 2;
  }

  private double secondDerivative(int middle) {
    double left = millilitres[middle] - millilitres[middle - 1];
    double right = millilitres[middle + 1] - millilitres[middle];
    return 2
        * ((pH[middle + 1] - pH[middle]) / right - (pH[middle] - pH[middle - 1]) / left)
        / (left + right);
  }

  /** On a parabola through the readings around the first and the last crossing. */
  private Place fitted(double target, int first, int last) {
    int from = Math.max(0, first - 2);
    int to = Math.min(pH.length - 1, last + 2);
    while ((to - from + 1 < LEAST_READINGS
            || Math.abs(mean(to, -1, from) - mean(from, 1, to)) < LEAST_SPAN * noise)
        && (from > 0 || to < pH.length - 1)) {
      int more = Math.max(1, (to - from) / 8);
      from = Math.max(0, from - more);
      to = Math.min(pH.length - 1, to + more);
    }
    double centre = (millilitres[first] + millilitres[last]) / 2;
    double scale = (millilitres[to] - millilitres[from]) / 2;
    int n = to - from + 1;
    if (n < 4) {
      double edge = Math.max(centre - millilitres[from], millilitres[to] - centre);
      double slope = (pH[to] - pH[from]) / (2 * scale);
      double known = slope == 0 ? sign * Math.max(noise, 1e-6) / scale : slope;
      return new Place(centre, known, edge, millilitres[from], millilitres[to], n, 0);
    }
    double[] observed = new double[n];
    double[][] powers = new double[n][2];
    for (int i = 0; i < n; i++) {
      double x = (millilitres[from + i] - centre) / scale;
      observed[i] = pH[from + i] - target;
      powers[i][0] = x;
      powers[i][1] = x * x;
    }
    OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
    regression.newSampleData(observed, powers);
    double[] b = regression.estimateRegressionParameters();
    double discriminant = b[1] * b[1] - 4 * b[0] * b[2];
    double root =
        b[1] == 0 || discriminant < 0
            ? 0
            : -2 * b[0] / (b[1] + Math.signum(b[1]) * Math.sqrt(discriminant));
    double slope = b[1] + 2 * b[2] * root;
    // Without the variance of a reading, which commons-math leaves to the caller.
    double[][] inverse = regression.estimateRegressionParametersVariance();
    double[] at = {1, root, root * root};
    double squared = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        squared += at[i] * at[j] * inverse[i][j];
      }
    }
    boolean lost = !(sign * slope > 0) || Math.abs(root) > 1 || discriminant < 0;
    double edge = Math.max(centre - millilitres[from], millilitres[to] - centre);
    if (lost) {
      double least = sign * Math.max(noise, 1e-6) / scale;
      return new Place(centre, least, edge, millilitres[from], millilitres[to], n, 0);
    }
    squared *= regression.estimateErrorVariance();
    double u = Math.sqrt(Math.max(squared, 0)) / Math.abs(slope) * scale;
    return new Place(
        centre + root * scale,
        slope / scale,
        Math.min(edge, SQRT_3 * u),
        millilitres[from],
        millilitres[to],
        n,
        b[0] + b[1] * root + b[2] * root * root);
  }

  /** The mean of up to a quarter of the readings from one on, so that noise makes no span. */
  private double mean(int start, int direction, int end) {
    int count = Math.max(1, (Math.abs(end - start) + 1) / 4);
    double sum = 0;
    for (int i = 0; i < count; i++) {
      sum += pH[start + direction * i];
    }
    return sum / count;
  }

  /** The volume at a pH on the line through two readings; beyond them the outermost continues. */
  double onLines(double target) {
    return onTheLine(target, Math.max(1, Math.min(firstPassing(target), pH.length - 1)))
        .millilitres();
  }
}
