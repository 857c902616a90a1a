package org.brewchem.uncertainty;

import java.util.List;
import org.apache.commons.math3.random.MersenneTwister;
import org.apache.commons.math3.util.FastMath;

/**
 * Draws values of the inputs, one set at a time. The generator and the elementary functions are
 * those of a library that no longer changes, so a seed means the same draws everywhere.
 */
final class Sampler {

  private final MersenneTwister random;
  private final Distribution[] distributions;
  private final double[] estimates;
  private final double[] scales;
  private final double[] degreesOfFreedom;

  Sampler(List<Input> inputs, long seed) {
    this.random = new MersenneTwister(seed);
    int count = inputs.size();
    this.distributions = new Distribution[count];
    this.estimates = new double[count];
    this.scales = new double[count];
    this.degreesOfFreedom = new double[count];
    for (int i = 0; i < count; i++) {
      Input input = inputs.get(i);
      distributions[i] = input.distribution();
      estimates[i] = input.estimate();
      scales[i] = input.standardUncertainty() * halfWidthPerStandardUncertainty(distributions[i]);
      degreesOfFreedom[i] = input.degreesOfFreedom();
    }
  }

  void draw(double[] values) {
    for (int i = 0; i < values.length; i++) {
      values[i] = scales[i] == 0.0 ? estimates[i] : estimates[i] + scales[i] * standardised(i);
    }
  }

  private double standardised(int index) {
    return switch (distributions[index]) {
      case NORMAL -> random.nextGaussian();
      case UNIFORM -> 2.0 * random.nextDouble() - 1.0;
      case TRIANGULAR -> random.nextDouble() + random.nextDouble() - 1.0;
      case STUDENT -> studentT(degreesOfFreedom[index]);
    };
  }

  /** Polar method of Bailey (1994), Mathematics of Computation 62, 779, from memory. */
  private double studentT(double degreesOfFreedom) {
    while (true) {
      double u = 2.0 * random.nextDouble() - 1.0;
      double v = 2.0 * random.nextDouble() - 1.0;
      double w = u * u + v * v;
      if (w > 0.0 && w <= 1.0) {
        return u
            * FastMath.sqrt(
                degreesOfFreedom * FastMath.expm1(-2.0 / degreesOfFreedom * FastMath.log(w)) / w);
      }
    }
  }

  private static double halfWidthPerStandardUncertainty(Distribution distribution) {
    return switch (distribution) {
      case UNIFORM -> Math.sqrt(3.0);
      case TRIANGULAR -> Math.sqrt(6.0);
      case NORMAL, STUDENT -> 1.0;
    };
  }
}
