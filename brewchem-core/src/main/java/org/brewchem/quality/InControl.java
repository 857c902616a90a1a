package org.brewchem.quality;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;

/**
 * What a process does when nothing disturbs it: the mean and the standard deviation from point to
 * point, and where they come from. Limits are made from it. Immutable.
 */
public final class InControl {

  private static final int FEWEST_POINTS = 8;

  private final Optional<String> title;
  private final double mean;
  private final double standardDeviation;
  private final String unit;
  private final OptionalInt points;
  private final List<Notice> notices;

  private InControl(
      Optional<String> title,
      double mean,
      double standardDeviation,
      String unit,
      OptionalInt points,
      List<Notice> notices) {
    this.title = title;
    this.notices = List.copyOf(notices);
    this.unit = unit;
    this.mean = Checks.finite("mean", mean, unit);
    this.standardDeviation = Checks.positive("standard deviation", standardDeviation, unit);
    this.points = points;
  }

  /**
   * States mean and standard deviation, as from long experience or an aim with the precision of the
   * method.
   *
   * @param mean the mean or the aim, in {@code unit}
   * @param standardDeviation from point to point, above 0, in {@code unit}
   * @param unit the unit of the series; empty when there is none
   * @return the state
   * @throws IllegalArgumentException if a number is not finite or the standard deviation not above
   *     0
   */
  public static InControl stated(double mean, double standardDeviation, String unit) {
    return new InControl(
        Optional.empty(),
        mean,
        standardDeviation,
        Objects.requireNonNull(unit, "unit"),
        OptionalInt.empty(),
        List.of());
  }

  /**
   * States mean and standard deviation of a figure, so that a chart refuses the series of another.
   *
   * @param figure the figure, in the unit that it is shown in
   * @param mean the mean or the aim, in that unit
   * @param standardDeviation from point to point, above 0, in that unit
   * @return the state
   * @throws IllegalArgumentException if a number is not finite or the standard deviation not above
   *     0
   */
  public static InControl stated(Figure<?> figure, double mean, double standardDeviation) {
    return new InControl(
        Optional.of(figure.title()),
        mean,
        standardDeviation,
        figure.shown().symbol(),
        OptionalInt.empty(),
        List.of());
  }

  /**
   * Estimates mean and standard deviation from batches that were in control: the standard deviation
   * is the average moving range over d2 = 1.128 (NIST/SEMATECH e-Handbook of Statistical Methods,
   * 6.3.2.2). Neighbours are batches that follow each other among those with a value.
   *
   * <p>The limits hold for batches that are independent of each other. Where each follows the one
   * before, as by a yeast that is pitched on, moving ranges are too small and a chart alarms far
   * more often than it says; where one batch lies apart the limits are too wide. {@link #notices()}
   * tells what the batches show of either.
   *
   * @param series the batches, at least 8 of them with a value
   * @return the state
   * @throws IllegalArgumentException if there are fewer than 8 values, of which no limits worth
   *     having come, or if all are equal
   */
  public static InControl from(ControlSeries series) {
    InControl state = from(series.known(), series.unit());
    return new InControl(
        Optional.of(series.title()),
        state.mean,
        state.standardDeviation,
        state.unit,
        state.points,
        Past.notices(series));
  }

  static InControl from(double[] values, String unit) {
    if (values.length < FEWEST_POINTS) {
      throw Checks.outOfRange(
          "batches with a value",
          values.length,
          "",
          "at least " + FEWEST_POINTS + " to make limits");
    }
    double sum = 0;
    double ranges = 0;
    for (int i = 0; i < values.length; i++) {
      sum += values[i];
      ranges += i == 0 ? 0 : Math.abs(values[i] - values[i - 1]);
    }
    return new InControl(
        Optional.empty(),
        sum / values.length,
        ranges / (values.length - 1) / ChartConstants.D2,
        unit,
        OptionalInt.of(values.length),
        List.of());
  }

  /**
   * Returns what the state is of: the title of the series that it was estimated from, or of the
   * figure that it was stated of. A chart refuses a series of another title.
   *
   * @return the title; empty where only a unit was stated
   */
  public Optional<String> title() {
    return title;
  }

  /**
   * Returns the mean.
   *
   * @return the mean, in {@link #unit()}
   */
  public double mean() {
    return mean;
  }

  /**
   * Returns the standard deviation from point to point.
   *
   * @return the standard deviation, in {@link #unit()}
   */
  public double standardDeviation() {
    return standardDeviation;
  }

  /**
   * Returns the unit.
   *
   * @return the unit; empty when there is none
   */
  public String unit() {
    return unit;
  }

  /**
   * Returns from how many points the state was estimated.
   *
   * @return the count; empty when it was stated
   */
  public OptionalInt points() {
    return points;
  }

  /**
   * Returns what is notable about the batches that the state was estimated from: neighbours that
   * correlate, at a level of 5 %, and one that lies apart, at 1 % (our choice). That many of sound
   * pasts are named, too.
   *
   * @return an unmodifiable list; empty when there is nothing or the state was stated
   */
  public List<Notice> notices() {
    return notices;
  }

  /** How far a value lies from the mean, in standard deviations. */
  double standardised(double value) {
    return (value - mean) / standardDeviation;
  }

  @Override
  public String toString() {
    return "mean "
        + NumberText.significant(mean, 4)
        + ", standard deviation "
        + NumberText.significant(standardDeviation, 2)
        + (unit.isEmpty() ? "" : " " + unit)
        + (points.isPresent() ? ", from " + points.getAsInt() + " batches" : ", stated");
  }
}
