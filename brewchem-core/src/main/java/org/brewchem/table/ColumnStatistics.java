package org.brewchem.table;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;
import org.jspecify.annotations.Nullable;

/**
 * What the numbers of a column are like: how many there are, how many are missing or lie below a
 * limit of the laboratory, mean, standard deviation and quantiles.
 *
 * <p>A row without a number counts in nothing but its count. A cell such as {@code < 0.5} is not
 * missing: it lies somewhere between 0 and its limit, so whatever rests on it lies between two
 * ends; see {@link Bounds}. Immutable and thread-safe.
 */
public final class ColumnStatistics {

  /** The square of it, times any count of rows, does not overflow. */
  private static final double LARGE = 1e140;

  private final String heading;
  private final int rows;
  private final double[] numbers;
  private final double[] limits;

  private final int failed;

  private ColumnStatistics(
      String heading, int rows, int failed, double[] numbers, double[] limits) {
    this.heading = heading;
    this.rows = rows;
    this.failed = failed;
    this.numbers = numbers;
    this.limits = limits;
  }

  /**
   * Judges a column.
   *
   * @param below the limits of cells that a reader of files put into a column of their own
   */
  static ColumnStatistics of(Column column, @Nullable Column below) {
    if (below != null && !below.unit().equals(column.unit())) {
      throw new IllegalArgumentException(
          "unit of \""
              + Excerpt.of(below.heading())
              + "\" is not possible; that of \""
              + Excerpt.of(column.heading())
              + "\" is needed");
    }
    double[] numbers = new double[column.size()];
    double[] limits = new double[column.size()];
    int present = 0;
    int limited = 0;
    int failed = 0;
    for (int i = 0; i < column.size(); i++) {
      if (column.isPresent(i)) {
        numbers[present++] = column.raw(i);
      } else {
        OptionalDouble limit = below == null ? column.limit(i) : below.get(i);
        if (limit.isPresent()) {
          limits[limited++] = limit.getAsDouble();
        } else if (!(column.failureOrNull(i) instanceof Failure.Missing)) {
          failed++;
        }
      }
    }
    return new ColumnStatistics(
        column.heading(),
        column.size(),
        failed,
        Arrays.copyOf(numbers, present),
        Arrays.copyOf(limits, limited));
  }

  /**
   * Two ends between which a statistic lies: with every cell below a limit taken as 0, and as the
   * limit. They are one number where no such cell takes part.
   *
   * @param lower the lower end, in the unit of the column
   * @param upper the upper end, at least the lower one
   */
  public record Bounds(double lower, double upper) {

    /**
     * Makes bounds.
     *
     * @param lower the lower end, finite, in the unit of the column
     * @param upper the upper end, at least the lower one, in the same unit
     * @throws IllegalArgumentException if the ends are not in order
     */
    public Bounds {
      if (!Double.isFinite(lower)) {
        throw Checks.outOfRange("lower end", lower, "", "a finite number");
      }
      if (!(upper >= lower && upper <= Double.MAX_VALUE)) {
        throw Checks.outOfRange("upper end", upper, "", lower + " or more");
      }
    }

    /** Returns the number, or both ends. */
    @Override
    public String toString() {
      String from = NumberText.plain(Column.rounded(lower));
      return lower == upper ? from : from + " to " + NumberText.plain(Column.rounded(upper));
    }
  }

  /**
   * Returns how many rows have a number.
   *
   * @return the count
   */
  public int count() {
    return numbers.length;
  }

  /**
   * Returns how many rows say that they lie below a limit.
   *
   * @return the count
   */
  public int belowLimit() {
    return limits.length;
  }

  /**
   * Returns how many rows are empty.
   *
   * @return the count
   */
  public int missing() {
    return rows - numbers.length - limits.length - failed;
  }

  /**
   * Returns how many rows hold something that is neither a number nor a limit, such as a text that
   * cannot be read; {@link Column#failures} says what.
   *
   * @return the count
   */
  public int failed() {
    return failed;
  }

  /**
   * Returns the mean.
   *
   * @return its bounds, in the unit of the column
   * @throws IllegalStateException if no row has a number or a limit
   */
  public Bounds mean() {
    return new Bounds(mean(all(0)), mean(all(1)));
  }

  private static double mean(double[] of) {
    return scaled(of, 64, StatUtils::mean);
  }

  /** Of numbers whose sum or squares might overflow, so many powers of 2 smaller. */
  private static double scaled(double[] of, int powers, ToDoubleFunction<double[]> statistic) {
    if (Arrays.stream(of).allMatch(number -> Math.abs(number) < LARGE)) {
      return statistic.applyAsDouble(of);
    }
    double[] smaller = Arrays.stream(of).map(number -> Math.scalb(number, -powers)).toArray();
    return Math.scalb(statistic.applyAsDouble(smaller), powers);
  }

  /**
   * Returns the standard deviation of the numbers, with the divisor of a sample.
   *
   * @return it, in the unit of the column; empty with fewer than two numbers, where a cell lies
   *     below a limit, for then it is not known, and beyond {@link Double#MAX_VALUE}
   */
  public OptionalDouble standardDeviation() {
    if (numbers.length < 2 || limits.length > 0) {
      return OptionalDouble.empty();
    }
    double deviation = scaled(numbers, 600, of -> Math.sqrt(StatUtils.variance(of)));
    return Double.isFinite(deviation) ? OptionalDouble.of(deviation) : OptionalDouble.empty();
  }

  /**
   * Returns a quantile, interpolated between the two numbers next to it.
   *
   * @param share of the rows that lie below it, 0 to 1: 0 is the least number, 0.5 the median, 1
   *     the greatest
   * @return its bounds, in the unit of the column
   * @throws IllegalArgumentException if the share is out of range
   * @throws IllegalStateException if no row has a number or a limit
   */
  public Bounds quantile(double share) {
    Checks.inRange("share", share, "", 0, 1);
    return new Bounds(quantile(all(0), share), quantile(all(1), share));
  }

  private static double quantile(double[] of, double share) {
    return share == 0
        ? StatUtils.min(of)
        : scaled(
            of,
            2,
            numbers ->
                new Percentile()
                    .withEstimationType(Percentile.EstimationType.R_7)
                    .evaluate(numbers, 100 * share));
  }

  /** The numbers, and of each limit a share. */
  private double[] all(double share) {
    if (numbers.length + limits.length == 0) {
      throw new IllegalStateException(
          "column \"" + heading + "\": without a number there is no mean or quantile");
    }
    double[] all = Arrays.copyOf(numbers, numbers.length + limits.length);
    for (int i = 0; i < limits.length; i++) {
      all[numbers.length + i] = share * limits[i];
    }
    return all;
  }

  /** Returns the counts, and mean, least, median and greatest where there are any. */
  @Override
  public String toString() {
    String counts =
        heading
            + ": "
            + NumberText.count(count(), "number", "numbers")
            + ", "
            + belowLimit()
            + " below a limit, "
            + missing()
            + " missing"
            + (failed == 0 ? "" : ", " + failed + " of no use");
    return numbers.length + limits.length == 0
        ? counts
        : counts
            + "; mean "
            + mean()
            + (standardDeviation().isPresent()
                ? ", standard deviation "
                    + NumberText.plain(Column.rounded(standardDeviation().getAsDouble()))
                : "")
            + ", least "
            + quantile(0)
            + ", median "
            + quantile(0.5)
            + ", greatest "
            + quantile(1);
  }
}
