package org.brewchem.uncertainty;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.special.Gamma;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NormalProbability;
import org.brewchem.internal.Roots;

/**
 * Factors of tolerance intervals: how many standard deviations of a sample around its mean hold a
 * stated share of a normal population with a stated confidence.
 *
 * <p>The two-sided factor is the exact one: mean and variance of a normal sample are independent,
 * so that the confidence is an integral over the one of a probability of the other (as tabulated in
 * ISO 16269-6, from memory). It is not Howe's approximation, which gives 9.993 instead of 9.789 for
 * three values.
 */
public final class ToleranceFactor {

  /** Half width of the integral over the sample's mean, in standard errors, and its steps. */
  private static final double REACH = 8.5;

  private static final int STEPS = 400;

  private static final double LARGEST = 1e12;

  /** Nearer to 0 or 1 the integral does not tell a probability from it. */
  private static final double LEAST = 1e-9;

  /** Where the factor is looked for first, and last. */
  private static final double SMALL = 1e-3;

  private static final double SMALLEST = 1e-15;

  private ToleranceFactor() {}

  /**
   * Returns the two-sided factor.
   *
   * @param count how many values the sample has, 2 to 10 000
   * @param content the share of the population that the interval is to hold, a fraction from 1e-9
   *     to 1 - 1e-9
   * @param confidence the confidence that it does, a fraction from 1e-9 to 1 - 1e-9
   * @return the factor of the standard deviation, above 0
   * @throws IllegalArgumentException if a number is out of range
   */
  public static double twoSided(int count, double content, double confidence) {
    Checks.inRange("values of the sample", count, "", 2, 10_000);
    Checks.inRange("content", content, "", LEAST, 1 - LEAST);
    Checks.inRange("confidence", confidence, "", LEAST, 1 - LEAST);
    double[] squares = new double[STEPS + 1];
    double[] weights = new double[STEPS + 1];
    double step = REACH / STEPS;
    for (int i = 0; i <= STEPS; i++) {
      double errors = i * step;
      double half = halfWidth(errors / Math.sqrt(count), content);
      squares[i] = half * half;
      double simpson = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
      weights[i] = 2 * simpson * step / 3 * Math.exp(-errors * errors / 2) / Math.sqrt(2 * Math.PI);
    }
    int degrees = count - 1;
    DoubleUnaryOperator excess =
        factor -> {
          double held = 0;
          for (int i = 0; i <= STEPS; i++) {
            double least = degrees * squares[i] / (factor * factor);
            held += weights[i] * Gamma.regularizedGammaQ(degrees / 2.0, least / 2);
          }
          return held - confidence;
        };
    double from = excess.applyAsDouble(SMALL) < 0 ? SMALL : SMALLEST;
    return Roots.rising(excess, from, 1, LARGEST).asOptional().orElseThrow();
  }

  /** The half width around a centre off the mean that holds the content. */
  private static double halfWidth(double offset, double content) {
    return Roots.rising(
            half -> NormalProbability.between(offset - half, offset + half) - content,
            0,
            1,
            LARGEST)
        .asOptional()
        .orElseThrow();
  }
}
