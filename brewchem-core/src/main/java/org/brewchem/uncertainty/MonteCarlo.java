package org.brewchem.uncertainty;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.brewchem.internal.Checks;

/**
 * The distribution of a result found by drawing the inputs of a {@link MeasurementModel} (JCGM
 * 101:2008, from memory). An input with Student's t for few degrees of freedom has such wide tails
 * that the result has no mean (1 or fewer), no standard deviation (2 or fewer) or no standard error
 * of it (4 or fewer); median and intervals always exist.
 *
 * <p>Inputs that share a {@link Source} move together: each of their sources is drawn once, normal
 * or as Student's t at its own degrees of freedom, those of one scatter ({@link
 * Source#ofOneScatter}) with one common width. A source of which no uncertainty is stated is not
 * drawn; {@link #missing()} names it, and the distribution is narrower than it would be with it.
 */
public final class MonteCarlo {

  private final String measurand;
  private final String unit;
  private final List<Input> inputs;
  private final List<DrawnError> errors;
  private final long seed;
  private final double[] sorted;
  private final double mean;
  private final double standardDeviation;
  private final double standardErrorOfStandardDeviation;

  private MonteCarlo(
      String measurand, String unit, List<Input> inputs, long seed, double[] results) {
    this.measurand = measurand;
    this.unit = unit;
    this.inputs = inputs;
    this.errors = DrawnError.of(inputs);
    this.seed = seed;
    double n = results.length;
    double first = results[0];
    double sum = 0.0;
    for (double result : results) {
      sum += result - first;
    }
    this.mean = first + sum / n;
    double squares = 0.0;
    double fourths = 0.0;
    for (double result : results) {
      double square = (result - mean) * (result - mean);
      squares += square;
      fourths += square * square;
    }
    double variance = squares / (n - 1.0);
    this.standardDeviation = Math.sqrt(variance);
    // Variance of a sample variance: (m4 - s^4 (n-3)/(n-1)) / n; half of it relative for s.
    double varianceOfVariance =
        Math.max(0.0, (fourths / n - variance * variance * (n - 3.0) / (n - 1.0)) / n);
    this.standardErrorOfStandardDeviation =
        variance == 0.0 ? 0.0 : Math.sqrt(varianceOfVariance) / (2.0 * standardDeviation);
    Arrays.sort(results);
    this.sorted = results;
  }

  /** Takes the array over and sorts it. */
  static MonteCarlo of(
      String measurand, String unit, List<Input> inputs, long seed, double[] results) {
    return new MonteCarlo(measurand, unit, inputs, seed, results);
  }

  /**
   * Returns the name of the result.
   *
   * @return the name
   */
  public String measurand() {
    return measurand;
  }

  /**
   * Returns the unit of the result.
   *
   * @return the unit, empty when there is none
   */
  public String unit() {
    return unit;
  }

  /**
   * Returns the number of draws.
   *
   * @return 1000 or more
   */
  public int draws() {
    return sorted.length;
  }

  /**
   * Returns the seed of the random generator.
   *
   * @return the seed
   */
  public long seed() {
    return seed;
  }

  /**
   * Returns the sources that the inputs move with and of which no uncertainty is stated. They
   * stayed at their estimates, so that standard deviation and intervals are the least that they can
   * be.
   *
   * @return an unmodifiable list, empty when every uncertainty is stated
   */
  public List<Source> missing() {
    return inputs.stream().flatMap(input -> input.traced().missing().stream()).distinct().toList();
  }

  /** What was not drawn, in words; empty when there is nothing. */
  String notDrawn() {
    return missing().isEmpty()
        ? ""
        : missing().stream()
            .map(Source::name)
            .collect(Collectors.joining(", ", ", without that of ", ", which is not stated"));
  }

  /**
   * Returns the mean of the draws.
   *
   * @return the mean, in {@link #unit()}
   * @throws IllegalStateException if the distribution of an input has no mean
   */
  public double mean() {
    requireMoment(1, "mean");
    return mean;
  }

  /**
   * Returns the standard deviation of the draws, the standard uncertainty of the result.
   *
   * @return the standard deviation, 0 or more, in {@link #unit()}
   * @throws IllegalStateException if the distribution of an input has no standard deviation
   */
  public double standardDeviation() {
    requireMoment(2, "standard deviation");
    return standardDeviation;
  }

  /**
   * Returns how well the number of draws determines the standard deviation, whatever the shape of
   * the distribution.
   *
   * @return the standard error of the standard deviation, 0 or more, in {@link #unit()}
   * @throws IllegalStateException if the distribution of an input has no fourth moment
   */
  public double standardErrorOfStandardDeviation() {
    requireMoment(4, "standard error of the standard deviation");
    return standardErrorOfStandardDeviation;
  }

  /**
   * Returns the value that half of the draws stay below.
   *
   * @return the median, in {@link #unit()}
   */
  public double median() {
    return quantile(0.5);
  }

  /**
   * Returns the value that a given part of the draws stays below, interpolated between draws.
   *
   * @param probability from 0 (the least draw) to 1 (the greatest)
   * @return the quantile, in {@link #unit()}
   * @throws IllegalArgumentException if the probability is out of range
   */
  public double quantile(double probability) {
    Checks.inRange("probability", probability, "", 0, 1);
    double position = probability * (sorted.length - 1.0);
    int below = (int) position;
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
  }

  /**
   * Returns the probabilistically symmetric coverage interval: as many draws below it as above it.
   *
   * @param coverageProbability the part of the draws inside, above 0 and below 1
   * @return the interval, in {@link #unit()}
   * @throws IllegalArgumentException if the probability is out of range
   */
  public Interval interval(double coverageProbability) {
    double tail = 0.5 * (1.0 - Quantiles.probability(coverageProbability));
    return Interval.of(quantile(tail), quantile(1.0 - tail), coverageProbability, unit);
  }

  /**
   * Returns the shortest coverage interval, which for a lopsided distribution is not the symmetric
   * one (JCGM 101:2008, 7.7, from memory).
   *
   * @param coverageProbability the part of the draws inside, above 0 and below 1
   * @return the interval, in {@link #unit()}; of equally short ones the lowest
   * @throws IllegalArgumentException if the probability is out of range
   */
  public Interval shortestInterval(double coverageProbability) {
    int steps =
        Math.min(
            (int) Math.ceil(Quantiles.probability(coverageProbability) * sorted.length),
            sorted.length - 1);
    int best = 0;
    for (int i = 1; i + steps < sorted.length; i++) {
      if (sorted[i + steps] - sorted[i] < sorted[best + steps] - sorted[best]) {
        best = i;
      }
    }
    return Interval.of(sorted[best], sorted[best + steps], coverageProbability, unit);
  }

  /**
   * Says whether a linear budget agrees with these draws.
   *
   * @param budget the budget of the same model
   * @param relativeTolerance the difference to be tolerated, as a fraction of the standard
   *     deviation and of half the length of the interval, above 0, by custom 0.02 to 0.05
   * @return the comparison
   * @throws IllegalArgumentException if the budget has another measurand or other inputs, or if the
   *     tolerance is not above 0
   */
  public LinearityCheck comparedWith(Budget budget, double relativeTolerance) {
    if (!budget.measurand().equals(measurand)
        || !budget.rows().stream().map(Budget.Row::input).toList().equals(inputs)) {
      throw new IllegalArgumentException(
          "budget: the one of "
              + budget.measurand()
              + " is not of the model that was drawn; take both from one model");
    }
    return LinearityCheck.of(budget, this, relativeTolerance);
  }

  /**
   * Prints the median, the 95 % interval, where they exist mean and standard deviation, and whose
   * uncertainty is not stated.
   */
  @Override
  public String toString() {
    double half = 0.5 * interval(0.95).length();
    String text = measurand + ": median " + Digits.withUnit(Digits.ofValue(median(), half), unit);
    text += ", " + interval(0.95);
    if (hasMoment(2)) {
      text += ", mean with standard deviation " + UncertainValue.of(mean, standardDeviation, unit);
    }
    return text + ", " + sorted.length + " draws, seed " + seed + notDrawn();
  }

  boolean hasMoment(int order) {
    return errors.stream().allMatch(error -> error.hasMoment(order));
  }

  /** What was drawn. */
  List<DrawnError> errors() {
    return errors;
  }

  /**
   * How far a quantile may be off: half the span of one binomial standard deviation of its rank.
   */
  double standardErrorOfQuantile(double probability) {
    double n = sorted.length;
    double ranks = Math.sqrt(n * probability * (1.0 - probability)) / n;
    return 0.5
        * (quantile(Math.min(1.0, probability + ranks))
            - quantile(Math.max(0.0, probability - ranks)));
  }

  private void requireMoment(int order, String name) {
    for (DrawnError error : errors) {
      if (!error.hasMoment(order)) {
        throw new IllegalStateException(
            name
                + ": does not exist, because \""
                + error.name()
                + "\" has Student's t with degrees of freedom "
                + Digits.significant(error.degreesOfFreedom(), 3)
                + ", and more than "
                + order
                + " are needed; use the median and an interval");
      }
    }
  }
}
