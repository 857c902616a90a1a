package org.brewchem.internal;

/**
 * Tells where the unknowns of a solve will be when the totals go on in the direction, and about at
 * the pace, that led through the last solutions, as along a titration.
 *
 * <p>Newton's divided differences of the logarithms: straight on from two solutions, on a bend from
 * three. It places starts and no answer.
 */
final class CurveExtrapolation {

  /** From how many solves on a curve its last change, and the change of that, are known. */
  private static final int STRAIGHT_FROM = 3;

  private static final int BENT_FROM = 4;
  private static final double SLOWEST = 0.7;
  private static final double FASTEST = 1.4;

  /** Squared cosine between two changes above which they have one direction. */
  private static final double STRAIGHT = 0.99;

  /** The least and the most that an unknown changes from one point to the next to be followed. */
  private static final double LEAST_RATIO = 0.2;

  private static final double MOST_RATIO = 5;

  /** Where the series for the rest of a power ends. */
  private static final double MOST_REST = 0.6;

  private final double[] lastTotals;
  private final double[] lastChange;
  private final double[] lastValue;
  private final double[] lastRatio;
  private int followed;
  private double pace;
  private boolean straight;
  private boolean bent;
  private double byLast;
  private double byEarlier;

  CurveExtrapolation(int totals, int unknowns) {
    lastTotals = new double[totals + 1];
    lastChange = new double[totals + 1];
    lastValue = new double[unknowns];
    lastRatio = new double[unknowns];
  }

  /** Begins a new curve. */
  void forget() {
    followed = 0;
  }

  /** Takes in the totals of the next point. */
  void follow(double[] totals, double inertCharge) {
    followed++;
    double along = 0;
    double before = 0;
    double now = 0;
    for (int c = 0; c < lastTotals.length; c++) {
      double total = c < totals.length ? totals[c] : inertCharge;
      double change = total - lastTotals[c];
      along += change * lastChange[c];
      before += lastChange[c] * lastChange[c];
      now += change * change;
      lastTotals[c] = total;
      lastChange[c] = change;
    }
    double lastPace = pace;
    pace = along / before;
    boolean wasStraight = straight;
    straight =
        followed >= STRAIGHT_FROM
            && pace > SLOWEST
            && pace < FASTEST
            && along * along > STRAIGHT * before * now;
    bent = straight && wasStraight && followed >= BENT_FROM;
    double curvature = pace * (pace + 1) / (1 + 1 / lastPace);
    byLast = pace + curvature;
    byEarlier = curvature * lastPace;
  }

  /**
   * Where an unknown is expected; where it was, if there is nothing to follow.
   *
   * @param unknown its index; each is asked once a point
   * @param value what it was at the last point, above 0
   */
  double onward(int unknown, double value) {
    double ratio = value / lastValue[unknown];
    double earlier = lastRatio[unknown];
    lastValue[unknown] = value;
    lastRatio[unknown] = ratio;
    if (!straight || !isFollowed(ratio)) {
      return value;
    }
    // Whole powers of the ratios exactly; the rest by a series, for steps are nearly even.
    double onBend = ratio * ratio / earlier;
    double rest = (byLast - 2) * logarithm(ratio) - (byEarlier - 1) * logarithm(earlier);
    return bent && isFollowed(earlier) && isFollowed(onBend) && Math.abs(rest) < MOST_REST
        ? value * onBend * exponential(rest)
        : value * ratio * exponential((pace - 1) * logarithm(ratio));
  }

  private static boolean isFollowed(double ratio) {
    return ratio > LEAST_RATIO && ratio < MOST_RATIO;
  }

  private static double logarithm(double ratio) {
    return 2 * (ratio - 1) / (ratio + 1);
  }

  private static double exponential(double x) {
    return 1 + x * (1 + 0.5 * x);
  }
}
