package org.brewchem.uncertainty;

import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;

/**
 * Two or more determinations of the same quantity, repeated under the same conditions, with the
 * statistics of the sample. A single determination has no standard deviation and is no sample.
 */
public final class Replicates {

  private final String unit;
  private final double[] values;
  private final double mean;
  private final double standardDeviation;

  private Replicates(String unit, double[] values) {
    this.unit = Objects.requireNonNull(unit, "unit");
    if (values.length < 2) {
      throw Checks.outOfRange("replicates", values.length, "", "2 or more");
    }
    this.values = values.clone();
    for (int i = 0; i < values.length; i++) {
      this.values[i] = Checks.finite("replicate " + (i + 1), values[i], unit);
    }
    // Taken from the first value, so that equal values have a standard deviation of exactly 0.
    double first = this.values[0];
    double sum = 0.0;
    for (double value : this.values) {
      sum += value - first;
    }
    this.mean = Checks.finite("mean", first + sum / values.length, unit);
    double squares = 0.0;
    for (double value : this.values) {
      squares += (value - mean) * (value - mean);
    }
    this.standardDeviation =
        Checks.finite("standard deviation", Math.sqrt(squares / (values.length - 1)), unit);
  }

  /**
   * Returns the sample of some determinations.
   *
   * @param unit the unit of the values, empty when there is none
   * @param values two or more values, in {@code unit}
   * @return the sample
   * @throws IllegalArgumentException if there are fewer than two values or one is not finite
   */
  public static Replicates of(String unit, double... values) {
    return new Replicates(unit, values);
  }

  /**
   * Returns how many values there are.
   *
   * @return 2 or more
   */
  public int count() {
    return values.length;
  }

  /**
   * Returns the values in the order given.
   *
   * @return a copy of the values, in {@link #unit()}
   */
  public double[] values() {
    return values.clone();
  }

  /**
   * Returns the unit.
   *
   * @return the unit, empty when there is none
   */
  public String unit() {
    return unit;
  }

  /**
   * Returns the arithmetic mean.
   *
   * @return the mean, in {@link #unit()}
   */
  public double mean() {
    return mean;
  }

  /**
   * Returns the standard deviation s of the sample, with n - 1 in the denominator.
   *
   * @return s, 0 or more, in {@link #unit()}
   */
  public double standardDeviation() {
    return standardDeviation;
  }

  /**
   * Returns the standard deviation as a fraction of the mean.
   *
   * @return s divided by the absolute mean, 0 or more
   * @throws IllegalStateException if the mean is 0
   */
  public double relativeStandardDeviation() {
    return relativeToMean(standardDeviation, "relative standard deviation");
  }

  /**
   * Returns the greatest minus the least value: for two replicates, their difference.
   *
   * @return the range, 0 or more, in {@link #unit()}
   */
  public double range() {
    double least = values[0];
    double greatest = values[0];
    for (double value : values) {
      least = Math.min(least, value);
      greatest = Math.max(greatest, value);
    }
    return greatest - least;
  }

  /**
   * Returns the range as a fraction of the mean: for two replicates, their relative difference.
   *
   * @return the range divided by the absolute mean, 0 or more
   * @throws IllegalStateException if the mean is 0
   */
  public double relativeRange() {
    return relativeToMean(range(), "relative range");
  }

  /**
   * Returns the degrees of freedom of the standard deviation.
   *
   * @return n - 1
   */
  public int degreesOfFreedom() {
    return values.length - 1;
  }

  /**
   * Returns the mean with its standard error s / sqrt(n) as standard uncertainty and n - 1 degrees
   * of freedom (JCGM 100:2008, 4.2.3, from memory).
   *
   * @return the mean with its uncertainty
   */
  public UncertainValue uncertainMean() {
    return UncertainValue.of(mean, standardDeviation / Math.sqrt(values.length), unit)
        .withDegreesOfFreedom(degreesOfFreedom());
  }

  /**
   * Returns the interval in which the standard deviation of the method lies, given the one of this
   * sample: s sqrt((n-1)/chi2) with the two quantiles of the chi-squared distribution (e.g.
   * NIST/SEMATECH e-Handbook, 1.3.5.8, from memory). For two replicates and 95 % it reaches from
   * 0.45 s to 32 s.
   *
   * @param coverageProbability the probability, above 0 and below 1
   * @return the interval, in {@link #unit()}
   * @throws IllegalArgumentException if the probability is out of range
   */
  public Interval standardDeviationInterval(double coverageProbability) {
    double tail = 0.5 * (1.0 - Quantiles.probability(coverageProbability));
    return Interval.of(
        standardDeviation * standardDeviationFactor(1.0 - tail),
        standardDeviation * standardDeviationFactor(tail),
        coverageProbability,
        unit);
  }

  /**
   * Tests the value farthest from the mean with Grubbs' two-sided test.
   *
   * @param significance the significance level, 1e-12 or more and below 1, by custom 0.05
   * @return the result, which names the value
   * @throws IllegalStateException if there are only two values, which are always equally far away
   * @throws IllegalArgumentException if the significance is out of range
   */
  public GrubbsTest grubbs(double significance) {
    return GrubbsTest.of(this, significance);
  }

  /**
   * Returns what to keep in mind about an uncertainty that comes from two replicates alone: the
   * coverage factor, the quantile of Student's t for 95 %, and how many would do.
   *
   * @return the caution; empty for three or more values
   */
  public Optional<String> caution() {
    if (values.length > 2) {
      return Optional.empty();
    }
    return Optional.of(
        "two replicates do not fix the spread, t(0.975, 1) = "
            + Digits.significant(Quantiles.studentT(0.975, 1.0), 3)
            + ": run four");
  }

  /**
   * Prints the mean with its expanded uncertainty, n, s, and the caution if there is one: {@code
   * 0.1002 mol/L, U 0.0014 (k = 12.7), n = 2, s 0.00016; two replicates: ...}.
   */
  @Override
  public String toString() {
    String text =
        uncertainMean().expanded()
            + ", n = "
            + values.length
            + ", s "
            + Digits.ofUncertainty(standardDeviation);
    return caution().map(caution -> text + "; " + caution).orElse(text);
  }

  private double standardDeviationFactor(double probability) {
    return Math.sqrt(degreesOfFreedom() / Quantiles.chiSquared(probability, degreesOfFreedom()));
  }

  private double relativeToMean(double spread, String name) {
    if (mean == 0.0) {
      throw new IllegalStateException(name + ": not defined, because the mean is 0");
    }
    return spread / Math.abs(mean);
  }
}
