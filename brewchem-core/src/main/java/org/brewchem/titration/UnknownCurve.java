package org.brewchem.titration;

import java.util.List;
import java.util.function.Function;
import org.brewchem.internal.CurveLeastSquares;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.TitratedMixture;

/**
 * The pH of a sample along a titration, and how it moves with what is unknown of the sample. For
 * one thread.
 */
final class UnknownCurve implements CurveLeastSquares.Curve {

  private final Function<double[], TitratedMixture> mixtures;
  private final List<CurveUnknown> unknowns;
  private final double knownInertCharge;
  private final double[] titrantPerSample;

  /** Whether no unknown is compiled into a mixture, so that one does for all. */
  private final boolean isLinear;

  private TitratedMixture mixture;

  /**
   * Makes a curve.
   *
   * @param mixtures the mixture of stated unknowns
   * @param unknowns the unknowns
   * @param knownInertCharge what is known of the inert charge of the sample, Eq/kg
   * @param titrantPerSample where the curve is followed
   */
  UnknownCurve(
      Function<double[], TitratedMixture> mixtures,
      List<CurveUnknown> unknowns,
      double knownInertCharge,
      double[] titrantPerSample) {
    this.mixtures = mixtures;
    this.unknowns = unknowns;
    this.knownInertCharge = knownInertCharge;
    this.titrantPerSample = titrantPerSample;
    this.isLinear = unknowns.stream().allMatch(CurveUnknown::isLinear);
    this.mixture = mixtures.apply(unknowns.stream().mapToDouble(CurveUnknown::start).toArray());
  }

  @Override
  public double[] at(double[] values, double[][] slopes) {
    prepare(values);
    double[] pH = new double[titrantPerSample.length];
    for (int k = 0; k < pH.length; k++) {
      Equilibria solved = mixture.with(titrantPerSample[k]);
      pH[k] = solved.pH();
      double capacity = readSlopes(k, solved, slopes[k]);
      for (int i = 0; i < slopes[k].length; i++) {
        slopes[k][i] /= capacity;
      }
    }
    return pH;
  }

  /**
   * Net charge of the mixtures at the pH read, zero for the right values; cheaper than the curve.
   *
   * @param capacities receives the buffer capacity at each reading
   * @param slopes receives the slopes of each charge by the unknowns
   */
  double[] charges(double[] pH, double[] values, double[] capacities, double[][] slopes) {
    prepare(values);
    double[] charges = new double[pH.length];
    for (int k = 0; k < pH.length; k++) {
      Equilibria solved = mixture.with(titrantPerSample[k]);
      charges[k] = solved.chargeAt(pH[k]);
      capacities[k] = readSlopes(k, solved, slopes[k]);
    }
    return charges;
  }

  private void prepare(double[] values) {
    if (!isLinear) {
      mixture = mixtures.apply(values);
    }
    for (int i = 0; i < values.length; i++) {
      unknowns.get(i).put(mixture, values[i], knownInertCharge);
    }
    // The digits of a curve do not depend on the one before.
    mixture.with(0).forget();
  }

  /** Slopes of the charge at a point by the unknowns; returns the buffer capacity, Eq/kg. */
  private double readSlopes(int point, Equilibria solved, double[] byUnknown) {
    double[] perTotal = new double[solved.components().size() + 1];
    double capacity = -solved.chargeSlopes(perTotal);
    double share = mixture.share(titrantPerSample[point]);
    for (int i = 0; i < byUnknown.length; i++) {
      byUnknown[i] = unknowns.get(i).chargeSlope(solved, share, perTotal);
    }
    return capacity;
  }
}
