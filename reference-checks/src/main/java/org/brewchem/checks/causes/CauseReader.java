package org.brewchem.checks.causes;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.MultivariateNormalDistribution;

/**
 * The ideal reader: Bayes' rule by one who knows how {@link CausePair} draws. Causes and sizes are
 * as likely as they are drawn, and so is "none". Given cause, size, sign and the angle of a malt
 * the z are jointly normal with a known covariance; signs are summed, the angle is integrated by
 * the trapezoidal rule, which converges faster than any power for a periodic function.
 *
 * <p>It may keep silent as the rules may: it names when the evidence for any cause against none is
 * larger than in {@link #QUIET} of quiet pairs, which by the lemma of Neyman and Pearson names most
 * pairs at that price.
 */
final class CauseReader {

  /** Share of quiet pairs in which it keeps silent, as the rules state theirs. */
  static final double QUIET = 0.96;

  private static final int ANGLES = 128;
  private static final int QUIET_PAIRS = 50_000;
  private static final long SEED = 20261127;
  private static final int FIGURES = SimulatedFigure.values().length;

  private final List<Double> sizes;
  private final Map<SimulatedCause, List<MultivariateNormalDistribution>> likelihoods =
      new EnumMap<>(SimulatedCause.class);
  private final double least;

  /** A reader who knows that the size is one of these. */
  CauseReader(List<Double> sizes) {
    this.sizes = List.copyOf(sizes);
    for (SimulatedCause cause : SimulatedCause.values()) {
      likelihoods.put(cause, sizes.stream().map(size -> distribution(cause, size)).toList());
    }
    SplittableRandom random = new SplittableRandom(SEED);
    double[] evidence = new double[QUIET_PAIRS];
    Arrays.setAll(evidence, i -> evidence(CausePair.draw(SimulatedCause.NONE, 0, random).scores()));
    Arrays.sort(evidence);
    least = evidence[(int) (QUIET * QUIET_PAIRS)];
  }

  /** Of the effect without a malt's angle, with the plus sign, and the noise. */
  private static MultivariateNormalDistribution distribution(SimulatedCause cause, double size) {
    double[] means = cause.means();
    double[] standardDeviations = cause.standardDeviations();
    double[] mean = new double[FIGURES];
    double[][] covariance = new double[FIGURES][FIGURES];
    for (int i = 0; i < SimulatedFigure.MEASURED; i++) {
      mean[i] = size * means[i];
      covariance[i][i] = 1 + Math.pow(size * standardDeviations[i], 2);
    }
    int alkalinity = SimulatedFigure.ALKALINITY.ordinal();
    int residual = SimulatedFigure.RESIDUAL.ordinal();
    double c = CausePair.CORRELATION;
    mean[residual] = c * mean[alkalinity];
    covariance[alkalinity][residual] = c * covariance[alkalinity][alkalinity];
    covariance[residual][alkalinity] = covariance[alkalinity][residual];
    covariance[residual][residual] = c * c * covariance[alkalinity][alkalinity] + 1 - c * c;
    return new MultivariateNormalDistribution(null, mean, covariance);
  }

  private double likelihood(SimulatedCause cause, double[] z) {
    List<MultivariateNormalDistribution> ofSizes = Objects.requireNonNull(likelihoods.get(cause));
    double sum = 0;
    for (int k = 0; k < sizes.size(); k++) {
      MultivariateNormalDistribution normal = ofSizes.get(k);
      if (cause == SimulatedCause.MALT) {
        sum += normal.density(z) * overAngles(sizes.get(k), z);
      } else if (cause.eitherSign) {
        double[] negative = Arrays.stream(z).map(value -> -value).toArray();
        sum += (normal.density(z) + normal.density(negative)) / 2;
      } else {
        sum += normal.density(z);
      }
    }
    return sum / sizes.size();
  }

  /**
   * How much more likely a shift of pH and acidity by a size at any angle makes z than no shift.
   */
  private static double overAngles(double size, double[] z) {
    double sum = 0;
    for (int i = 0; i < ANGLES; i++) {
      double angle = 2 * Math.PI * i / ANGLES;
      double along =
          z[SimulatedFigure.PH.ordinal()] * Math.cos(angle)
              + z[SimulatedFigure.ACIDITY.ordinal()] * Math.sin(angle);
      sum += Math.exp(size * along - size * size / 2);
    }
    return sum / ANGLES;
  }

  private double evidence(double[] z) {
    return SimulatedCause.CAUSES.stream().mapToDouble(cause -> likelihood(cause, z)).sum()
        / likelihood(SimulatedCause.NONE, z);
  }

  /** Returns the probability of each cause and of none, all as likely before. */
  Map<SimulatedCause, Double> probabilities(double[] z) {
    Map<SimulatedCause, Double> found = new EnumMap<>(SimulatedCause.class);
    double sum = 0;
    for (SimulatedCause cause : SimulatedCause.values()) {
      double likelihood = likelihood(cause, z);
      found.put(cause, likelihood);
      sum += likelihood;
    }
    double total = sum;
    found.replaceAll((cause, likelihood) -> likelihood / total);
    return found;
  }

  /** Returns whether it names a cause where it may keep silent. */
  boolean speaks(double[] z) {
    return evidence(z) > least;
  }
}
