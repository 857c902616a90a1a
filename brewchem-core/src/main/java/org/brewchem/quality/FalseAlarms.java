package org.brewchem.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.apache.commons.math3.random.MersenneTwister;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;

/**
 * How often a chart alarms although nothing has changed: drawn by simulation of independent batches
 * of a normal process, with limits made from as many points as the chart's own, so that their
 * uncertainty counts too. Where each batch follows the one before, a chart alarms more often:
 * {@link InControl#notices()} tells whether the past shows it. The same choices give the same
 * numbers, since the draws start from a fixed seed. Immutable.
 */
public final class FalseAlarms {

  private static final int SERIES = 20_000;
  private static final long SEED = 20_261_126;

  private final int watched;
  private final double perPoint;
  private final double perPointError;
  private final double atLeastOne;
  private final OptionalInt limitsFrom;

  private FalseAlarms(
      int watched,
      OptionalInt limitsFrom,
      double perPoint,
      double perPointError,
      double atLeastOne) {
    this.watched = watched;
    this.limitsFrom = limitsFrom;
    this.perPoint = perPoint;
    this.perPointError = perPointError;
    this.atLeastOne = atLeastOne;
  }

  /**
   * Draws the false alarms of a set of rules.
   *
   * @param rules one or more
   * @param limitsFrom from how many batches the limits were made, 8 or more; empty when mean and
   *     standard deviation are known
   * @param points how many batches are watched afterwards, 1 to 1000
   * @return the rates
   * @throws IllegalArgumentException if there is no rule or a number is out of range
   */
  public static FalseAlarms of(List<ControlRule> rules, OptionalInt limitsFrom, int points) {
    Checks.inRange("rules", rules.size(), "", 1, 100);
    Checks.inRange("batches watched", points, "", 1, 1000);
    limitsFrom.ifPresent(n -> Checks.inRange("batches behind the limits", n, "", 8, 100_000));
    MersenneTwister random = new MersenneTwister(SEED);
    double[] past = new double[limitsFrom.orElse(0)];
    double sum = 0;
    double squares = 0;
    int alarmed = 0;
    for (int n = 0; n < SERIES; n++) {
      for (int i = 0; i < past.length; i++) {
        past[i] = random.nextGaussian();
      }
      InControl state = past.length == 0 ? InControl.stated(0, 1, "") : InControl.from(past, "");
      List<ControlRule.Watch> watches = new ArrayList<>();
      rules.forEach(rule -> watches.add(rule.start()));
      int alarms = 0;
      for (int i = 0; i < points; i++) {
        double z = state.standardised(random.nextGaussian());
        boolean signals = false;
        for (ControlRule.Watch watch : watches) {
          signals |= watch.signals(z);
        }
        alarms += signals ? 1 : 0;
      }
      double rate = (double) alarms / points;
      sum += rate;
      squares += rate * rate;
      alarmed += alarms > 0 ? 1 : 0;
    }
    double mean = sum / SERIES;
    return new FalseAlarms(
        points,
        limitsFrom,
        mean,
        Math.sqrt(Math.max(0, squares / SERIES - mean * mean) / SERIES),
        (double) alarmed / SERIES);
  }

  /**
   * Returns the share of batches that signal although nothing has changed. After a cumulative sum
   * has signalled it goes on to signal until it falls back, as a chart does that nobody resets.
   *
   * @return 0 to 1
   */
  public double perPoint() {
    return perPoint;
  }

  /**
   * Returns the standard error of the simulation in {@link #perPoint}.
   *
   * @return 0 or more
   */
  public double perPointError() {
    return perPointError;
  }

  /**
   * Returns the chance that at least one of the watched batches signals although nothing has
   * changed.
   *
   * @return 0 to 1
   */
  public double atLeastOne() {
    return atLeastOne;
  }

  /**
   * Draws how many points pass on average until one of the rules signals, the mean and standard
   * deviation known.
   *
   * @param rules one or more
   * @param shift by how much the mean has shifted, in standard deviations; 0 for a false alarm
   * @return the average run length, in points
   * @throws IllegalArgumentException if there is no rule, the shift is not finite, or a rule lets a
   *     million points pass
   */
  public static double averageRunLength(List<ControlRule> rules, double shift) {
    Checks.inRange("rules", rules.size(), "", 1, 100);
    Checks.finite("shift", shift, "");
    MersenneTwister random = new MersenneTwister(SEED);
    long points = 0;
    for (int n = 0; n < SERIES; n++) {
      List<ControlRule.Watch> watches = new ArrayList<>();
      rules.forEach(rule -> watches.add(rule.start()));
      int length = 0;
      for (boolean signals = false; !signals; ) {
        double z = random.nextGaussian() + shift;
        for (ControlRule.Watch watch : watches) {
          signals |= watch.signals(z);
        }
        length++;
        Checks.inRange("run length", length, "points", 1, 1_000_000);
      }
      points += length;
    }
    return (double) points / SERIES;
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "false alarms: %s of batches, at least one among %d in %s of cases (limits %s;"
            + " simulated, independent batches of a normal process)",
        NumberText.chance(perPoint),
        watched,
        NumberText.chance(atLeastOne),
        limitsFrom.isPresent() ? "from " + limitsFrom.getAsInt() + " batches" : "known");
  }
}
