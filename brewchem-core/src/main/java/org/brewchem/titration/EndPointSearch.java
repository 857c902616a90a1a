package org.brewchem.titration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;

/**
 * The search for the volume at a pH in the readings of a titration: on a monotone cubic between two
 * readings, or, where readings are so dense that noise crosses the pH more than once or makes the
 * slope, on a parabola through those around it.
 *
 * <p>The cubic is the volume as a function of the pH, with the slopes of M. Steffen, Astronomy and
 * Astrophysics 239 (1990) 443 (from memory): it goes through the readings, rises or falls between
 * them without a turn, and looks one reading further on either side. A straight line between two
 * readings mostly gives too small a volume, because a beer's pH jumps before its end point.
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
    return between(target, first);
  }

  /** On the cubic between two readings that the pH lies between. */
  private Place between(double target, int after) {
    int before = after - 1;
    double width = millilitres[after] - millilitres[before];
    double step = pH[after] - pH[before];
    if (step == 0) {
      // A flat pair has no slope; the least that its reading could show stands for it.
      double least = sign * Math.max(noise, 1e-6) / width;
      double all = millilitres[millilitres.length - 1] - millilitres[0];
      return new Place(
          millilitres[before], least, all, millilitres[before], millilitres[after], 2, 0);
    }
    double chord = width / step;
    double start = slopeAt(before, chord);
    double end = slopeAt(after, chord);
    double along = target - pH[before];
    double square = (3 * chord - 2 * start - end) / step;
    double cubic = (start + end - 2 * chord) / (step * step);
    double volume = millilitres[before] + along * (start + along * (square + along * cubic));
    double again =
        bezier(
            along / step,
            millilitres[before],
            millilitres[before] + step * start / 3,
            millilitres[after] - step * end / 3,
            millilitres[after]);
    double farthest = Math.max(volume - millilitres[before], millilitres[after] - volume);
    double error =
        Math.max(
            SQRT_3 * bend(millilitres, pH, before, volume) * Math.abs(chord),
            bend(pH, millilitres, before, target));
    double spread = Math.max(halfSpread[before], halfSpread[after]) * Math.abs(chord);
    return new Place(
        volume,
        1 / chord,
        Math.min(farthest, error + SQRT_3 * spread),
        millilitres[before],
        millilitres[after],
        2,
        (again - volume) / chord);
  }

  /** The same cubic another way, by lines between four points. */
  private static double bezier(double share, double... points) {
    for (int left = points.length - 1; left > 0; left--) {
      for (int i = 0; i < left; i++) {
        points[i] += share * (points[i + 1] - points[i]);
      }
    }
    return points[0];
  }

  /** Millilitres per pH from a reading to the next; NaN where there is none or it goes back. */
  private double volumePerPH(int from) {
    if (from < 0 || from + 1 >= pH.length || !(sign * (pH[from + 1] - pH[from]) > 0)) {
      return Double.NaN;
    }
    return (millilitres[from + 1] - millilitres[from]) / (pH[from + 1] - pH[from]);
  }

  /** Steffen's slope of the volume at a reading; that of the line where a neighbour is missing. */
  private double slopeAt(int reading, double otherwise) {
    double left = volumePerPH(reading - 1);
    double right = volumePerPH(reading);
    if (Double.isNaN(left) || Double.isNaN(right)) {
      return otherwise;
    }
    double stepLeft = pH[reading] - pH[reading - 1];
    double stepRight = pH[reading + 1] - pH[reading];
    double parabola = (left * stepRight + right * stepLeft) / (stepLeft + stepRight);
    return sign * Math.min(2 * Math.min(Math.abs(left), Math.abs(right)), Math.abs(parabola));
  }

  /** How far y may be off the straight line over x between two readings, by those around them. */
  private double bend(double[] x, double[] y, int before, double at) {
    double curvature = 0;
    int known = 0;
    // One reading further on either side: next to an inflection the nearest two show no bend.
    for (int middle = before - 1; middle <= before + 2; middle++) {
      if (middle > 0 && middle < pH.length - 1) {
        curvature = Math.max(curvature, Math.abs(secondDerivative(x, y, middle)));
        known += middle == before || middle == before + 1 ? 1 : 0;
      }
    }
    double distances = Math.abs((at - x[before]) * (x[before + 1] - at));
    if (distances == 0) {
      return 0;
    }
    // One neighbour alone may lie where the curve happens to be straight.
    return known == 0 ? Double.POSITIVE_INFINITY : (known == 1 ? 2 : 1) * curvature * distances / 2;
  }

  /** The second derivative by three readings; infinite where x goes back. */
  private static double secondDerivative(double[] x, double[] y, int middle) {
    double left = x[middle] - x[middle - 1];
    double right = x[middle + 1] - x[middle];
    return left * right <= 0
        ? Double.POSITIVE_INFINITY
        : 2
            * ((y[middle + 1] - y[middle]) / right - (y[middle] - y[middle - 1]) / left)
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

  /** The volume next to one, or the same where it is the last. */
  double next(double volume, int direction) {
    int index = Arrays.binarySearch(millilitres, volume) + direction;
    return millilitres[Math.max(0, Math.min(pH.length - 1, index))];
  }

  /** The volume at a pH on the line through two readings; beyond them the outermost continues. */
  double onLines(double target) {
    int after = Math.max(1, Math.min(firstPassing(target), pH.length - 1));
    double step = pH[after] - pH[after - 1];
    double share = step == 0 ? 0 : (target - pH[after - 1]) / step;
    return millilitres[after - 1] + share * (millilitres[after] - millilitres[after - 1]);
  }
}
