package org.brewchem.uncertainty;

import java.util.OptionalInt;
import org.brewchem.internal.Checks;

/**
 * The result of Grubbs' two-sided test for one outlier in a sample from a normal distribution: the
 * value farthest from the mean, how many standard deviations away it lies, and the critical value.
 *
 * <p>The critical value is computed, not tabulated: (n-1)/sqrt(n) sqrt(t²/(n-2+t²)) with t the
 * upper quantile of Student's t at alpha/(2n) and n-2 degrees of freedom (NIST/SEMATECH e-Handbook,
 * Grubbs' test, from memory). An outlier is a reason to look for a cause, not by itself a licence
 * to drop the value. Values rounded to a resolution coarser than their scatter tie, and then the
 * test fails: of three of which two are equal G is 1.1547, above the critical 1.1543 at 5 %,
 * however near the third lies; such an outlier must also lie farther off than the resolution
 * explains.
 */
public final class GrubbsTest {

  private final double statistic;
  private final double criticalValue;
  private static final double LEAST_SIGNIFICANCE = 1e-12;

  private final double significance;
  private final int suspectIndex;
  private final double suspectValue;
  private final String unit;

  private GrubbsTest(
      double statistic,
      double criticalValue,
      double significance,
      int suspectIndex,
      double suspectValue,
      String unit) {
    this.statistic = statistic;
    this.criticalValue = criticalValue;
    this.significance = significance;
    this.suspectIndex = suspectIndex;
    this.suspectValue = suspectValue;
    this.unit = unit;
  }

  static GrubbsTest of(Replicates sample, double significance) {
    double[] values = sample.values();
    if (values.length < 3) {
      throw new IllegalStateException(
          "Grubbs' test: 2 replicates are not enough; 3 or more are needed");
    }
    int suspect = 0;
    double farthest = 0.0;
    for (int i = 0; i < values.length; i++) {
      double distance = Math.abs(values[i] - sample.mean());
      if (distance > farthest) {
        suspect = i;
        farthest = distance;
      }
    }
    double statistic = farthest == 0.0 ? 0.0 : farthest / sample.standardDeviation();
    return new GrubbsTest(
        statistic,
        criticalValue(values.length, significance),
        significance,
        suspect,
        values[suspect],
        sample.unit());
  }

  /**
   * Returns the critical value of the two-sided test.
   *
   * @param count the number of values n, 3 or more
   * @param significance the significance level alpha, from 1e-12 and below 1, by custom 0.05
   * @return the number of standard deviations beyond which a value is an outlier
   * @throws IllegalArgumentException if n is below 3 or the significance is out of range
   */
  public static double criticalValue(int count, double significance) {
    if (count < 3) {
      throw Checks.outOfRange("count", count, "", "3 or more");
    }
    if (!(significance >= LEAST_SIGNIFICANCE && significance < 1.0)) {
      throw Checks.outOfRange("significance", significance, "", "1e-12 or more and less than 1");
    }
    // The lower quantile; its square is that of the upper one.
    double t = Quantiles.studentT(significance / (2.0 * count), count - 2.0);
    return (count - 1.0) / Math.sqrt(count) * Math.sqrt(t * t / (count - 2.0 + t * t));
  }

  /**
   * Returns the distance of the suspect value from the mean in standard deviations.
   *
   * @return the statistic G, 0 when all values are equal
   */
  public double statistic() {
    return statistic;
  }

  /**
   * Returns the critical value for this number of values and this significance.
   *
   * @return the G beyond which the suspect value is an outlier
   */
  public double criticalValue() {
    return criticalValue;
  }

  /**
   * Returns the significance level of the test.
   *
   * @return the probability of finding an outlier where there is none
   */
  public double significance() {
    return significance;
  }

  /**
   * Returns the place of the value farthest from the mean, in the order given.
   *
   * @return the index, counted from 0; of values equally far, the first
   */
  public int suspectIndex() {
    return suspectIndex;
  }

  /**
   * Returns the value farthest from the mean.
   *
   * @return the value, in the unit of the sample
   */
  public double suspectValue() {
    return suspectValue;
  }

  /**
   * Says whether the suspect value is an outlier.
   *
   * @return whether G exceeds the critical value
   */
  public boolean isOutlier() {
    return statistic > criticalValue;
  }

  /**
   * Returns the place of the outlier, in the order given.
   *
   * @return the index, counted from 0; empty when there is no outlier
   */
  public OptionalInt outlierIndex() {
    return isOutlier() ? OptionalInt.of(suspectIndex) : OptionalInt.empty();
  }

  /** Prints the verdict with the value, its place counted from 1, G and the critical value. */
  @Override
  public String toString() {
    return (isOutlier() ? "outlier: " : "no outlier; farthest is ")
        + "value "
        + (suspectIndex + 1)
        + ", "
        + Digits.withUnit(Double.toString(suspectValue), unit)
        + ": G "
        + Digits.significant(statistic, 4)
        + ", critical "
        + Digits.significant(criticalValue, 4)
        + " (Grubbs, two-sided, significance "
        + Digits.significant(significance, 3)
        + ")";
  }
}
