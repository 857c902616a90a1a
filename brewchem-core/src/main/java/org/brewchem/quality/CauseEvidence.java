package org.brewchem.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.random.MersenneTwister;
import org.brewchem.internal.NormalProbability;

/**
 * How well each cause, and none of them, explains the z of some figures: logarithms of densities.
 *
 * <p>A cause has one unknown size, the most by which it may move a figure; sizes are as likely as
 * their doubles. A figure that it moves is moved by any part of the size the right way, a slight
 * effect by a small part, and where the table says same by a small part either way: what is small
 * beside a small effect may be seen beside a large one. The noise of a z is standard normal.
 */
final class CauseEvidence {

  private static final Map<String, Double> VALUES = CauseRules.values();
  private static final double SMALLEST = value("smallest size");
  private static final double LARGEST = value("largest size");
  private static final double SLIGHT = value("slight");
  private static final double SAME = value("same");
  private static final double QUIET = value("quiet");

  private static final double LOG_ROOT_OF_TWO_PI = Math.log(2 * Math.PI) / 2;
  private static final int QUIET_PAIRS = 4_000;
  private static final int SEED = 20261127;
  private static final Map<List<String>, Double> LOUD = new ConcurrentHashMap<>();

  private final List<String> figures;
  private final double[] z;
  private final Map<String, Double> ofCauses = new LinkedHashMap<>();
  private final Map<String, Integer> signs = new LinkedHashMap<>();
  private final double ofNone;

  private CauseEvidence(List<String> figures, double[] z) {
    this.figures = figures;
    this.z = z;
    double[][][] logDensities = logDensities(z);
    CauseRules.CAUSES
        .keySet()
        .forEach(
            cause -> {
              double asListed = ofCause(logDensities, cause, 1);
              double reversed =
                  CauseRules.reverses(cause)
                      ? ofCause(logDensities, cause, -1)
                      : Double.NEGATIVE_INFINITY;
              signs.put(cause, reversed > asListed ? -1 : 1);
              ofCauses.put(
                  cause, CauseRules.reverses(cause) ? logMean(asListed, reversed) : asListed);
            });
    CauseRules.Direction[] either = new CauseRules.Direction[z.length];
    Arrays.fill(either, CauseRules.Direction.EITHER);
    ofNone = ofDirections(logDensities, either);
  }

  private static double value(String name) {
    return Objects.requireNonNull(VALUES.get(name), name);
  }

  /** Weighs z values by the names of their figures, one or more. */
  static CauseEvidence of(Map<String, Double> z) {
    List<String> figures = new ArrayList<>(CauseRules.FIGURES);
    figures.retainAll(z.keySet());
    return new CauseEvidence(
        figures,
        figures.stream().mapToDouble(name -> Objects.requireNonNull(z.get(name))).toArray());
  }

  /** Of each cause, in the order of the table. */
  Map<String, Double> ofCauses() {
    return ofCauses;
  }

  /** Of something else, which may move every figure either way. */
  double ofNone() {
    return ofNone;
  }

  /** What a cause says of a figure, turned to the side that explains more where it reverses. */
  CauseRules.Direction direction(String cause, String figure) {
    return CauseRules.rule(cause, figure)
        .direction()
        .times(Objects.requireNonNull(signs.get(cause)));
  }

  /**
   * Returns whether something happened: the evidence for any cause or for something else, against
   * noise alone, is larger than in all but a few pairs that do not differ. Those are drawn, once
   * for each set of figures and always the same.
   */
  boolean isLoud() {
    // Not computeIfAbsent: drawing takes long, and two threads find the same.
    Double loud = LOUD.get(figures);
    if (loud == null) {
      loud = loud(figures);
      LOUD.put(figures, loud);
    }
    return againstNoise() > loud;
  }

  private static double loud(List<String> figures) {
    MersenneTwister random = new MersenneTwister(SEED);
    double[] drawn = new double[QUIET_PAIRS];
    for (int i = 0; i < drawn.length; i++) {
      double[] z = new double[figures.size()];
      Arrays.setAll(z, k -> random.nextGaussian());
      drawn[i] = new CauseEvidence(figures, z).againstNoise();
    }
    Arrays.sort(drawn);
    return drawn[(int) (QUIET * QUIET_PAIRS)];
  }

  private double againstNoise() {
    double[] all = new double[ofCauses.size() + 1];
    int n = 0;
    for (double evidence : ofCauses.values()) {
      all[n++] = evidence;
    }
    all[n] = ofNone;
    return logMean(all) + Arrays.stream(z).map(value -> value * value / 2).sum();
  }

  private double ofCause(double[][][] logDensities, String cause, int sign) {
    return ofDirections(
        logDensities,
        figures.stream()
            .map(figure -> CauseRules.rule(cause, figure).direction().times(sign))
            .toArray(CauseRules.Direction[]::new));
  }

  private static double ofDirections(double[][][] logDensities, CauseRules.Direction[] directions) {
    double[] ofSizes = new double[logDensities.length];
    for (int k = 0; k < ofSizes.length; k++) {
      for (int i = 0; i < directions.length; i++) {
        ofSizes[k] += logDensities[k][i][directions[i].ordinal()];
      }
    }
    return logMean(ofSizes);
  }

  /** By size, figure and direction. */
  private static double[][][] logDensities(double[] z) {
    double largest = Math.max(LARGEST, 2 * Arrays.stream(z).map(Math::abs).max().orElse(0));
    int sizes = 1;
    while (SMALLEST * Math.scalb(1.0, sizes - 1) < largest) {
      sizes++;
    }
    double[][][] all = new double[sizes][z.length][];
    for (int k = 0; k < sizes; k++) {
      double size = SMALLEST * Math.scalb(1.0, k);
      for (int i = 0; i < z.length; i++) {
        double[] ofDirections = new double[CauseRules.Direction.values().length];
        for (CauseRules.Direction direction : CauseRules.Direction.values()) {
          ofDirections[direction.ordinal()] =
              switch (direction) {
                case UP -> logDensity(z[i], 0, size);
                case DOWN -> logDensity(z[i], -size, 0);
                case SLIGHTLY_UP -> logDensity(z[i], 0, SLIGHT * size);
                case SLIGHTLY_DOWN -> logDensity(z[i], -SLIGHT * size, 0);
                case SAME -> logDensity(z[i], -SAME * size, SAME * size);
                case EITHER -> logDensity(z[i], -size, size);
              };
        }
        all[k][i] = ofDirections;
      }
    }
    return all;
  }

  /**
   * Of a z whose effect is anywhere in an interval, without the factor that noise alone has too.
   */
  private static double logDensity(double z, double from, double to) {
    double below = z - to;
    double above = z - from;
    // In the lower tail the difference of two probabilities keeps its digits.
    double probability =
        below > 0
            ? NormalProbability.below(-below) - NormalProbability.below(-above)
            : NormalProbability.below(above) - NormalProbability.below(below);
    // The floor keeps a z far on the wrong side from becoming the logarithm of 0.
    return Math.log(Math.max(probability, Double.MIN_NORMAL) / (to - from)) + LOG_ROOT_OF_TWO_PI;
  }

  private static double logMean(double... logs) {
    double most = Arrays.stream(logs).max().orElseThrow();
    return most
        + Math.log(
            Arrays.stream(logs).map(value -> Math.exp(value - most)).average().orElseThrow());
  }
}
