package org.brewchem.internal;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;

/**
 * Finds the buffer of a liquid from its titration: how much of each monoprotic acid on a grid of
 * pK, and the strong-ion difference, explain the readings.
 *
 * <p>At each reading the charge balance of the original kilogram of sample reads {@code S - sum n_k
 * a_k(pH) - c z(pH) + (h - oh)(1 + v) + t = 0} with t the strong base added (negative for acid), v
 * the titrant and water added, both per kg of sample, and c carbon dioxide whose charge z is known.
 * It is linear in S and the n_k, and an error of the reading enters through its slope; the a_k are
 * those of the pH on the curve, not of the one read, whose noise would bias them. The amounts are
 * kept from falling below zero and are drawn towards a prior, the less the more of an acid and of
 * its neighbours there is. Errors of the pH that are common to readings are estimated along with
 * them as far as their own uncertainty allows.
 */
public final class BufferRegression {

  private static final double LN10 = Math.log(10);
  private static final int PASSES = 4;

  /** Step of a difference over the ionic strength, mol/kg. */
  private static final double IONIC_STEP = 1e-6;

  private static final double LOWEST_PH = 0;
  private static final double HIGHEST_PH = 14;

  /** Keeps a factor of what the readings know positive, relative to its diagonal. */
  private static final double ROUNDING = 1e-12;

  /**
   * What is believed before any reading: amounts on the grid, each with a spread of so much and a
   * share of the amount besides, the strong-ion difference, and the noise of a reading of pH with
   * its degrees of freedom, which count against those of the residuals. Signed amounts may fall
   * below zero: no beer, but without a bound tests of the residuals are exact.
   */
  public record Prior(
      double[] gridPk,
      double[] mean,
      double spread,
      double relativeSpread,
      double strongIonDifference,
      double strongIonStandardDeviation,
      double noise,
      double noiseDegrees,
      boolean signed) {}

  /**
   * Readings: arrays of one length; the charge noise is that of the base, Eq/kg. Each common error
   * says by how much it moves every pH, at a standard uncertainty of its own.
   */
  public record Readings(
      double[] pH,
      double[] baseEquivalentsPerKg,
      double[] dilution,
      double[] chargeNoise,
      double[][] commonErrorsOfPH) {}

  /**
   * Constants of the water: the Debye-Hückel A, log10 of the ion product, background salt; carbon
   * dioxide in mol/kg with its two pK; the misfit of the grid in pH.
   */
  public record Medium(
      double debyeHueckelA,
      double log10IonProduct,
      double background,
      double carbonDioxide,
      double carbonicPk1,
      double carbonicPk2,
      double misfit) {}

  private final Prior prior;
  private final Readings readings;
  private final Medium medium;
  private final int groups;
  private final int unknowns;
  private double[] estimate;
  private final CholeskyDecomposition factor;
  private final double[][] design;
  private final double[] right;
  private final double[] weight;
  private final double[] feedback;
  private final double[] overBackground;
  private final double[] overCarbonDioxide;
  private final double[] slopes;
  private final double[] residual;
  private final double[] onCurve;
  private final double[] spread;

  /** 10^pK of each place on the grid. */
  private final double[] binding;

  private double noise;
  private double squares;
  private double degrees;
  private double unbalanced;

  private BufferRegression(Prior prior, Readings readings, Medium medium) {
    this.prior = prior;
    this.readings = readings;
    this.medium = medium;
    int n = readings.pH.length;
    groups = prior.gridPk.length;
    unknowns = groups + 1 + readings.commonErrorsOfPH.length;
    estimate = new double[unknowns];
    estimate[0] = prior.strongIonDifference;
    System.arraycopy(prior.mean, 0, estimate, 1, groups);
    slopes = new double[n];
    residual = new double[n];
    onCurve = readings.pH.clone();
    noise = prior.noise;
    spread = new double[groups];
    binding = new double[groups];
    for (int k = 0; k < groups; k++) {
      binding[k] = Math.pow(10, prior.gridPk[k]);
    }
    design = new double[n][];
    right = new double[n];
    weight = new double[n];
    feedback = new double[n];
    overBackground = new double[n];
    overCarbonDioxide = new double[n];
    factor = fit();
  }

  /** Fits. */
  public static BufferRegression of(Prior prior, Readings readings, Medium medium) {
    return new BufferRegression(prior, readings, medium);
  }

  /** S, then the amounts on the grid, mol/kg, then the common errors in their own uncertainties. */
  public double[] estimate() {
    return estimate.clone();
  }

  /** Standard deviation of a single reading in pH, as the residuals and the prior have it. */
  public double noise() {
    return noise;
  }

  /** Variance of the residuals over the one stated for them, and its degrees of freedom. */
  public double[] scatter() {
    return new double[] {degrees > 0 ? squares / degrees : 1, degrees};
  }

  /** How far the normal equations of the estimate are from holding, in standard deviations. */
  public double unbalanced() {
    return unbalanced;
  }

  /** By how much each reading lies off the fitted curve, in pH. */
  public double[] residuals() {
    double[] inPH = residual.clone();
    for (int i = 0; i < inPH.length; i++) {
      inPH[i] /= slopes[i];
    }
    return inPH;
  }

  /** Slope of the curve at each reading, Eq/kg per pH. */
  public double[] slopes() {
    return slopes.clone();
  }

  /** By how much the base of each reading seems larger for a mol/kg more of background salt. */
  public double[] overBackground() {
    return overBackground.clone();
  }

  /** By how much the base of each reading seems larger for a mol/kg more of carbon dioxide. */
  public double[] overCarbonDioxide() {
    return overCarbonDioxide.clone();
  }

  /**
   * By how much the base of each reading seems larger if the acids of a range of pK moved with the
   * ionic strength by one charge number more than assumed. Only the dilution counts: what is
   * predicted, without it, has the same ions.
   */
  public double[] overActivity(double fromPk, double belowPk) {
    double[] column = new double[right.length];
    for (int i = 0; i < column.length; i++) {
      double ions = ions(i);
      double shift = logGamma(ions / (1 + readings.dilution[i]));
      double proton = Math.pow(10, shift - readings.pH[i]);
      double bound = 0;
      for (int k = 0; k < groups; k++) {
        if (prior.gridPk[k] >= fromPk && prior.gridPk[k] < belowPk) {
          double a = dissociated(binding[k], proton);
          bound += estimate[k + 1] * a * (1 - a);
        }
      }
      column[i] = LN10 * bound * (shift - logGamma(ions));
    }
    return column;
  }

  /** The part of S and the amounts that a common error of the pH has, at its uncertainty. */
  public double[] partOfCommonError(int index) {
    ArrayRealVector unit = new ArrayRealVector(unknowns);
    unit.setEntry(groups + 1 + index, 1);
    return factor.getSolver().solve(unit).getSubVector(0, groups + 1).toArray();
  }

  /**
   * Independent standard deviations that together have the covariance of S and the amounts, but for
   * the common errors: a row for each of these, a column for each source.
   */
  public double[][] principalParts() {
    // With H = M + C, C what is believed of the common errors, the rest is H^-1 M H^-1; M = L L'.
    double[][] known = normalMatrix(false);
    for (int i = 0; i < unknowns; i++) {
      // An error that moves no reading leaves nothing on its diagonal.
      known[i][i] = known[i][i] == 0 ? ROUNDING : known[i][i] + ROUNDING * known[i][i];
    }
    double[][] lower = factor(known).getL().getData();
    double[][] parts = new double[groups + 1][unknowns];
    DecompositionSolver inverse = factor.getSolver();
    double[][] moved = inverse.solve(new Array2DRowRealMatrix(lower, false)).getData();
    for (int i = 0; i <= groups; i++) {
      parts[i] = moved[i];
    }
    return parts;
  }

  /**
   * How S and the amounts move if the base added before each reading was larger by so much, Eq/kg.
   */
  public double[] response(double[] baseEquivalentsPerKg) {
    return factor
        .getSolver()
        .solve(new ArrayRealVector(projected(baseEquivalentsPerKg), false))
        .mapMultiply(-1)
        .getSubVector(0, groups + 1)
        .toArray();
  }

  /**
   * What the readings say of an error of the base that nobody stated: how strongly they ask for it,
   * and what of one column another shares, both weighted and with the fit taken off.
   */
  public double asked(double[] column) {
    double sum = 0;
    for (int i = 0; i < right.length; i++) {
      sum += column[i] * weight[i] * residual[i];
    }
    return sum;
  }

  /** See {@link #asked}. */
  public double shared(double[] one, double[] other) {
    double sum = 0;
    for (int i = 0; i < right.length; i++) {
      sum += one[i] * weight[i] * other[i];
    }
    double[] first = projected(one);
    double[] second = factor.getSolver().solve(new ArrayRealVector(projected(other))).toArray();
    for (int c = 0; c < unknowns; c++) {
      sum -= first[c] * second[c];
    }
    return sum;
  }

  /**
   * What a reading's own residual is, over its standard deviation with the fit taken off: {@link
   * #asked} of an error of that reading alone, over the square root of {@link #shared}.
   */
  public double[] standardizedResiduals() {
    double[][] lower = factor.getL().getData();
    double[] standardized = new double[right.length];
    for (int i = 0; i < standardized.length; i++) {
      double fitted = weight[i] * squaredLength(lower, design[i].clone(), 0);
      standardized[i] = Math.sqrt(weight[i]) * residual[i] / Math.sqrt(1 - fitted);
    }
    return standardized;
  }

  private double[] projected(double[] column) {
    double[] sums = new double[unknowns];
    for (int i = 0; i < design.length; i++) {
      double weighted = weight[i] * column[i];
      for (int c = 0; c < unknowns; c++) {
        sums[c] += weighted * design[i][c];
      }
    }
    return sums;
  }

  /**
   * The part of an acid that has lost its proton.
   *
   * @param binding 10^pK
   * @param proton activity of H+ times the activity coefficients of the step
   */
  private static double dissociated(double binding, double proton) {
    return 1 / (1 + binding * proton);
  }

  private double logGamma(double ionicStrength) {
    return ActivityCoefficients.davies(medium.debyeHueckelA, ionicStrength);
  }

  private CholeskyDecomposition fit() {
    int n = readings.pH.length;
    boolean[] free = new boolean[unknowns];
    Arrays.fill(free, prior.signed ? 1 : groups + 1, unknowns, true);
    free[0] = true;
    for (int pass = 0; pass < PASSES; pass++) {
      widen();
      for (int i = 0; i < n; i++) {
        row(i);
        double sd =
            Math.hypot(slopes[i] * Math.hypot(noise, medium.misfit), readings.chargeNoise[i]);
        weight[i] = 1 / (sd * sd);
      }
      double[][] h = normalMatrix(true);
      double[] g = projected(right);
      g[0] += prior.strongIonDifference / square(prior.strongIonStandardDeviation);
      for (int k = 0; k < groups; k++) {
        g[k + 1] += prior.mean[k] / square(spread[k]);
      }
      estimate = scaledSolve(h, g, free, estimate);
      unbalanced = unbalanced(h, g, free);
      updateNoise(factor(h));
    }
    // Here the strong ions count in the ionic strength, too, which the passes hold constant: what
    // is predicted from the parameters moves like that.
    for (int i = 0; i < n; i++) {
      design[i][0] += feedback[i];
    }
    return factor(normalMatrix(true));
  }

  /** An amount may lie the further from the typical one the more of it, or next to it, is found. */
  private void widen() {
    for (int k = 0; k < groups; k++) {
      double found = 2 * estimate[k + 1];
      double parts = 2;
      if (k > 0) {
        found += estimate[k];
        parts++;
      }
      if (k < groups - 1) {
        found += estimate[k + 2];
        parts++;
      }
      spread[k] =
          prior.spread + prior.relativeSpread * Math.max(prior.mean[k], Math.abs(found) / parts);
    }
  }

  /**
   * How many of the unknowns the prior decides; the readings decide the rest. With H the normal
   * matrix and P the prior's diagonal part of it, it is the trace of P H^-1, and that of the
   * readings' part, (H - P) H^-1, is the number of unknowns less this.
   */
  private double decidedByPrior(CholeskyDecomposition knowledge) {
    double[][] lower = knowledge.getL().getData();
    double sum = 0;
    for (int j = 0; j < unknowns; j++) {
      double[] unit = new double[unknowns];
      unit[j] = 1;
      sum += priorKnowledge(j) * squaredLength(lower, unit, j);
    }
    return sum;
  }

  /** What the prior knows of an unknown: 1 over its variance. */
  private double priorKnowledge(int unknown) {
    if (unknown == 0) {
      return 1 / square(prior.strongIonStandardDeviation);
    }
    return unknown <= groups ? 1 / square(spread[unknown - 1]) : 1;
  }

  /**
   * The product x' H^-1 x, with H = L L', as the squared length of L^-1 x.
   *
   * @param x 0 before the entry {@code from}; holds L^-1 x afterwards
   */
  private static double squaredLength(double[][] lower, double[] x, int from) {
    double sum = 0;
    for (int r = from; r < x.length; r++) {
      double[] row = lower[r];
      double rest = x[r];
      for (int c = from; c < r; c++) {
        rest -= row[c] * x[c];
      }
      x[r] = rest / row[r];
      sum += x[r] * x[r];
    }
    return sum;
  }

  private static double square(double x) {
    return x * x;
  }

  /** The normal matrix, with or without what is believed of the common errors. */
  private double[][] normalMatrix(boolean withCommonErrors) {
    double[][] h = new double[unknowns][unknowns];
    int believed = withCommonErrors ? unknowns : groups + 1;
    for (int j = 0; j < believed; j++) {
      h[j][j] = priorKnowledge(j);
    }
    for (int i = 0; i < design.length; i++) {
      double[] row = design[i];
      for (int r = 0; r < unknowns; r++) {
        double weighted = weight[i] * row[r];
        for (int c = 0; c <= r; c++) {
          h[r][c] += weighted * row[c];
        }
      }
    }
    for (int r = 0; r < unknowns; r++) {
      for (int c = 0; c < r; c++) {
        h[c][r] = h[r][c];
      }
    }
    return h;
  }

  private static CholeskyDecomposition factor(double[][] h) {
    return new CholeskyDecomposition(
        new Array2DRowRealMatrix(h, false),
        BoundedLeastSquares.SYMMETRY_TOLERANCE,
        BoundedLeastSquares.POSITIVITY);
  }

  /** By how much the normal equations are off, each over the square root of its diagonal. */
  private double unbalanced(double[][] h, double[] g, boolean[] free) {
    double most = 0;
    for (int i = 0; i < unknowns; i++) {
      double gradient = g[i];
      for (int j = 0; j < unknowns; j++) {
        gradient -= h[i][j] * estimate[j];
      }
      // An amount of zero may want to fall, and must not want to rise.
      double off = free[i] || estimate[i] > 0 ? Math.abs(gradient) : Math.max(gradient, 0);
      most = Math.max(most, off / Math.sqrt(h[i][i]));
    }
    return most;
  }

  private static double[] scaledSolve(double[][] h, double[] g, boolean[] free, double[] previous) {
    int n = g.length;
    double[] scale = new double[n];
    double[][] scaled = new double[n][n];
    double[] right = new double[n];
    double[] start = new double[n];
    for (int i = 0; i < n; i++) {
      scale[i] = 1 / Math.sqrt(h[i][i]);
    }
    for (int i = 0; i < n; i++) {
      right[i] = g[i] * scale[i];
      start[i] = previous[i] / scale[i];
      for (int j = 0; j < n; j++) {
        scaled[i][j] = h[i][j] * scale[i] * scale[j];
      }
    }
    double[] x = BoundedLeastSquares.solve(scaled, right, free, start);
    for (int i = 0; i < n; i++) {
      x[i] *= scale[i];
    }
    return x;
  }

  /**
   * Univalent ions per kilogram of sample: strong ions, those of the titrant, H+, and the weak
   * acids that balance them. The ion of an acid that is added takes the place of theirs.
   */
  private double ions(int i) {
    double base = readings.baseEquivalentsPerKg[i];
    double protons = Math.pow(10, -readings.pH[i]) * (1 + readings.dilution[i]);
    double strong = estimate[0];
    double net = strong + base + protons;
    return (Math.abs(strong) + Math.abs(base) + protons + Math.abs(net)) / 2 + medium.background;
  }

  private void row(int i) {
    double pH = onCurve[i];
    double v = readings.dilution[i];
    double base = readings.baseEquivalentsPerKg[i];
    double ionic = ions(i) / (1 + v);
    double shift = logGamma(ionic);
    double gamma = Math.pow(10, shift);
    double h = Math.pow(10, -pH) / gamma * (1 + v);
    double oh = Math.pow(10, medium.log10IonProduct + pH) / gamma * (1 + v);
    double proton = Math.pow(10, shift - pH);
    double[] row = new double[unknowns];
    row[0] = 1;
    double overLogGamma = oh - h;
    double slope = h + oh;
    for (int k = 0; k < groups; k++) {
      double a = dissociated(binding[k], proton);
      row[k + 1] = -a;
      slope += estimate[k + 1] * a * (1 - a);
      overLogGamma += estimate[k + 1] * a * (1 - a);
    }
    // The second step of carbon dioxide takes a proton from a charged form: three times the shift.
    double first = dissociated(Math.pow(10, medium.carbonicPk1), proton);
    double second = dissociated(Math.pow(10, medium.carbonicPk2), Math.pow(10, 3 * shift - pH));
    double carbonate = first * (1 + second);
    slope += medium.carbonDioxide * (first * (1 - first) + second * (1 - second));
    slope *= LN10;
    slopes[i] = slope;
    double perIonic = (logGamma(ionic + IONIC_STEP) - shift) / IONIC_STEP;
    overBackground[i] = LN10 * overLogGamma * perIonic / (1 + v);
    overCarbonDioxide[i] = -carbonate;
    double net = estimate[0] + base + Math.pow(10, -pH) * (1 + v);
    feedback[i] = overBackground[i] * (Math.signum(estimate[0]) + Math.signum(net)) / 2;
    for (int e = 0; e < readings.commonErrorsOfPH.length; e++) {
      row[groups + 1 + e] = slope * readings.commonErrorsOfPH[e][i];
    }
    design[i] = row;
    right[i] = -(h - oh) - base + medium.carbonDioxide * carbonate + slope * (readings.pH[i] - pH);
  }

  private void updateNoise(CholeskyDecomposition knowledge) {
    int n = right.length;
    double weighted = 0;
    squares = 0;
    for (int i = 0; i < n; i++) {
      double r = right[i];
      for (int c = 0; c < unknowns; c++) {
        r -= design[i][c] * estimate[c];
      }
      residual[i] = r;
      double ofPH = square(slopes[i] * Math.hypot(noise, medium.misfit));
      onCurve[i] =
          Math.min(
              HIGHEST_PH, Math.max(LOWEST_PH, readings.pH[i] - ofPH * weight[i] * r / slopes[i]));
      weighted += weight[i] * r * r;
      double stated =
          Math.hypot(slopes[i] * Math.hypot(prior.noise, medium.misfit), readings.chargeNoise[i]);
      squares += square(r / stated);
    }
    degrees = Math.max(n - (unknowns - decidedByPrior(knowledge)), 0);
    double variance =
        (prior.noiseDegrees * prior.noise * prior.noise + weighted * noise * noise)
            / (prior.noiseDegrees + degrees);
    noise = Math.sqrt(variance);
  }
}
