package org.brewchem.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.random.MersenneTwister;
import org.apache.commons.math3.util.FastMath;

/**
 * Draws values of the inputs, one set at a time. The generator and the elementary functions are
 * those of a library that no longer changes, so a seed means the same draws everywhere.
 */
final class Sampler {

  private final MersenneTwister random;
  private final double[] estimates;
  private final DrawnError[] errors;
  private final double[] scales;

  /** Where the common width of the errors of one scatter stands; -1 of an error of its own. */
  private final int[] widthOf;

  private final GammaDistribution[] squares;
  private final double[] widths;

  Sampler(List<Input> inputs, long seed) {
    this.random = new MersenneTwister(seed);
    this.estimates = inputs.stream().mapToDouble(Input::estimate).toArray();
    this.errors = DrawnError.of(inputs).toArray(DrawnError[]::new);
    this.scales = new double[errors.length];
    this.widthOf = new int[errors.length];
    List<Object> scatters = new ArrayList<>();
    List<GammaDistribution> common = new ArrayList<>();
    for (int i = 0; i < errors.length; i++) {
      DrawnError error = errors[i];
      scales[i] =
          error.standardUncertainty() * halfWidthPerStandardUncertainty(error.distribution());
      widthOf[i] = -1;
      if (error.distribution() == Distribution.STUDENT && isOneOfSeveral(error)) {
        widthOf[i] = scatters.indexOf(error.scatter());
        if (widthOf[i] < 0) {
          widthOf[i] = scatters.size();
          scatters.add(error.scatter());
          // Chi squared over its degrees of freedom is 1 on average.
          double half = 0.5 * error.degreesOfFreedom();
          common.add(new GammaDistribution(random, half, 1 / half));
        }
      }
    }
    this.squares = common.toArray(GammaDistribution[]::new);
    this.widths = new double[squares.length];
  }

  private boolean isOneOfSeveral(DrawnError error) {
    return Arrays.stream(errors).filter(one -> one.scatter() == error.scatter()).count() > 1;
  }

  void draw(double[] values) {
    System.arraycopy(estimates, 0, values, 0, values.length);
    for (int i = 0; i < widths.length; i++) {
      widths[i] = 1 / FastMath.sqrt(squares[i].sample());
    }
    for (int i = 0; i < errors.length; i++) {
      errors[i].addTo(values, scales[i] * standardised(i));
    }
  }

  private double standardised(int index) {
    return switch (errors[index].distribution()) {
      case NORMAL -> random.nextGaussian();
      case UNIFORM -> 2.0 * random.nextDouble() - 1.0;
      case TRIANGULAR -> random.nextDouble() + random.nextDouble() - 1.0;
      case STUDENT ->
          widthOf[index] < 0
              ? studentT(errors[index].degreesOfFreedom())
              : widths[widthOf[index]] * random.nextGaussian();
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
