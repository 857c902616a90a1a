package org.brewchem.uncertainty;

import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.brewchem.internal.Checks;

/** Quantiles of the distributions that intervals and tests are made of. */
final class Quantiles {

  private static final double ACCURACY = 1e-14;
  private static final double LARGE_DEGREES_OF_FREEDOM = 1e4;

  /** Of two observations. */
  static final double LEAST_DEGREES_OF_FREEDOM = 1;

  /** Beyond it a double holds no probability but 0 and 1. */
  private static final double FARTHEST = 40;

  // Without the null the distributions would seed a random generator that is never used.
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0.0, 1.0);

  private Quantiles() {}

  /** The quantile of Student's t; of the normal distribution if the degrees are infinite. */
  static double studentT(double probability, double degreesOfFreedom) {
    if (degreesOfFreedom <= LARGE_DEGREES_OF_FREEDOM) {
      return new TDistribution(null, degreesOfFreedom, ACCURACY)
          .inverseCumulativeProbability(probability);
    }
    // Expansion in 1/dof (Abramowitz and Stegun 26.7.5, from memory): here exact to 1e-11, where
    // the incomplete beta function becomes slow.
    double z = NORMAL.inverseCumulativeProbability(probability);
    double z2 = z * z;
    return z
        + z * (z2 + 1.0) / (4.0 * degreesOfFreedom)
        + z * (5.0 * z2 * z2 + 16.0 * z2 + 3.0) / (96.0 * degreesOfFreedom * degreesOfFreedom);
  }

  /**
   * The probability of Student's t below a number; of the normal one if the degrees are infinite.
   */
  static double below(double number, double degreesOfFreedom) {
    if (Double.isInfinite(degreesOfFreedom)) {
      return NORMAL.cumulativeProbability(number);
    }
    return degreesOfFreedom <= LARGE_DEGREES_OF_FREEDOM
        ? new TDistribution(null, degreesOfFreedom, ACCURACY).cumulativeProbability(number)
        : NORMAL.cumulativeProbability(normalOf(number, degreesOfFreedom));
  }

  /**
   * The normal number with the same probability below it (Hill, Communications of the ACM 13 (1970)
   * 617, from memory): here exact to rounding, where the incomplete beta function loses digits and
   * at last does not converge.
   */
  private static double normalOf(double t, double degreesOfFreedom) {
    double a = degreesOfFreedom - 0.5;
    double b = 48 * a * a;
    double root = t / Math.sqrt(degreesOfFreedom);
    double square = a * Math.log1p(root * root);
    double z = Math.sqrt(square);
    if (z > FARTHEST) {
      return Math.copySign(z, t);
    }
    double second =
        z
            * (((4 * square + 33) * square + 240) * square + 855)
            / (10 * b * (b + 0.8 * square * square + 100));
    return Math.copySign(z + z * (square + 3) / b - second, t);
  }

  static double chiSquared(double probability, double degreesOfFreedom) {
    return new ChiSquaredDistribution(null, degreesOfFreedom, ACCURACY)
        .inverseCumulativeProbability(probability);
  }

  /** The factor for a two-sided interval: 1.96 for 0.95 and infinite degrees of freedom. */
  static double coverageFactor(double coverageProbability, double degreesOfFreedom) {
    return studentT(0.5 + 0.5 * probability(coverageProbability), degreesOfFreedom);
  }

  /** Returns a coverage probability that lies strictly between 0 and 1. */
  static double probability(double coverageProbability) {
    if (!(coverageProbability > 0.0 && coverageProbability < 1.0)) {
      throw Checks.outOfRange(
          "coverage probability", coverageProbability, "", "more than 0 and less than 1");
    }
    return coverageProbability;
  }

  /**
   * Returns degrees of freedom, which may be infinite or a fraction, but are those of two
   * observations at least: below, the factor of Student's t grows beyond every double, and an
   * interval tells nothing.
   */
  static double degreesOfFreedom(double degreesOfFreedom) {
    if (!(degreesOfFreedom >= LEAST_DEGREES_OF_FREEDOM)) {
      throw Checks.outOfRange(
          "degrees of freedom",
          degreesOfFreedom,
          "",
          "1, which two observations have, or more, infinite included,");
    }
    return degreesOfFreedom;
  }
}
