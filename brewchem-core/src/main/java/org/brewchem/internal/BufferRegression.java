package org.brewchem.internal;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;

/**
 * Finds the buffer of a liquid from its titration: how much of each monoprotic acid on a grid of
 * pK, and the strong-ion difference, explain the readings.
 *
 * <p>At each reading the charge balance of the original kilogram of sample reads {@code S - sum n_k
 * a_k(pH) + (h - oh)(1 + v) + t = 0} with t the strong base added (negative for acid) and v the
 * titrant and water added, both per kg of sample. It is linear in S and the n_k, and an error of
 * the reading enters through its slope. The amounts are kept from falling below zero and are drawn
 * towards a prior; an offset and a slope error of the electrode, common to all readings, are
 * estimated along with them as far as their own prior allows.
 */
public final class BufferRegression {

  private static final double LN10 = Math.log(10);
  private static final int PASSES = 4;

  /** Step of a difference over the ionic strength, mol/kg. */
  private static final double IONIC_STEP = 1e-6;

  /** Readings' worth of belief in the stated noise, against what the residuals show. */
  private static final double NOISE_PRIOR_WEIGHT = 4;

  /** What is believed before any reading: amounts on the grid and the electrode. */
  public record Prior(
      double[] gridPk,
      double[] mean,
      double[] standardDeviation,
      double strongIonDifference,
      double strongIonStandardDeviation,
      double electrodeOffset,
      double electrodeSlope,
      double noise) {}

  /** Readings: arrays of one length. */
  public record Readings(
      double[] pH, double[] baseEquivalentsPerKg, double[] dilution, double chargeNoise) {}

  /** Constants of the water: the Debye-Hückel A, log10 of the ion product, background salt. */
  public record Medium(double debyeHueckelA, double log10IonProduct, double background) {}

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
  private final double[] slopes;
  private final double[] residualPh;
  private double noise;
  private double unbalanced;

  private BufferRegression(Prior prior, Readings readings, Medium medium) {
    this.prior = prior;
    this.readings = readings;
    this.medium = medium;
    groups = prior.gridPk.length;
    unknowns = groups + 3;
    estimate = new double[unknowns];
    estimate[0] = prior.strongIonDifference;
    System.arraycopy(prior.mean, 0, estimate, 1, groups);
    slopes = new double[readings.pH.length];
    residualPh = new double[readings.pH.length];
    noise = prior.noise;
    design = new double[readings.pH.length][];
    right = new double[readings.pH.length];
    weight = new double[readings.pH.length];
    feedback = new double[readings.pH.length];
    factor = fit();
  }

  /** Fits. */
  public static BufferRegression of(Prior prior, Readings readings, Medium medium) {
    return new BufferRegression(prior, readings, medium);
  }

  /** S, then the amounts on the grid, mol/kg, then offset and relative slope error of the pH. */
  public double[] estimate() {
    return estimate.clone();
  }

  /** Standard deviation of a single reading in pH, as the residuals and the prior have it. */
  public double noise() {
    return noise;
  }

  /** How far the normal equations of the estimate are from holding, in standard deviations. */
  public double unbalanced() {
    return unbalanced;
  }

  /** By how much each reading lies off the fitted curve, in pH. */
  public double[] residuals() {
    return residualPh.clone();
  }

  /**
   * Independent standard deviations that together have the covariance of S and the amounts: a row
   * for each of these, a column for each of as many sources as there are unknowns.
   */
  public double[][] principalParts() {
    // The covariance is the inverse of H = L L', so that the rows of L inverse, transposed, do it.
    double[][] lower = factor.getL().getData();
    double[][] parts = new double[groups + 1][unknowns];
    for (int unit = 0; unit <= groups; unit++) {
      for (int row = unit; row < unknowns; row++) {
        double sum = row == unit ? 1 : 0;
        for (int column = unit; column < row; column++) {
          sum -= lower[row][column] * parts[unit][column];
        }
        parts[unit][row] = sum / lower[row][row];
      }
    }
    return parts;
  }

  /**
   * How S and the amounts move if the base added before each reading was larger by so much, Eq/kg.
   */
  public double[] response(double[] baseEquivalentsPerKg) {
    ArrayRealVector moved = new ArrayRealVector(unknowns);
    for (int i = 0; i < design.length; i++) {
      for (int c = 0; c < unknowns; c++) {
        moved.addToEntry(c, -weight[i] * design[i][c] * baseEquivalentsPerKg[i]);
      }
    }
    return factor.getSolver().solve(moved).getSubVector(0, groups + 1).toArray();
  }

  private static double dissociated(double pH, double pK, double logGamma) {
    return 1 / (1 + Math.pow(10, pK - pH + logGamma));
  }

  private double logGamma(double ionicStrength) {
    return ActivityCoefficients.davies(medium.debyeHueckelA, ionicStrength);
  }

  private CholeskyDecomposition fit() {
    int n = readings.pH.length;
    for (int pass = 0; pass < PASSES; pass++) {
      double[][] h = new double[unknowns][unknowns];
      double[] g = new double[unknowns];
      boolean[] free = new boolean[unknowns];
      free[0] = true;
      free[groups + 1] = true;
      free[groups + 2] = true;
      addPrior(h, g);
      for (int i = 0; i < n; i++) {
        row(i);
        double sd = Math.hypot(slopes[i] * noise, readings.chargeNoise);
        weight[i] = 1 / (sd * sd);
        for (int r = 0; r < unknowns; r++) {
          double wr = weight[i] * design[i][r];
          g[r] += wr * right[i];
          for (int c = 0; c < unknowns; c++) {
            h[r][c] += wr * design[i][c];
          }
        }
      }
      estimate = scaledSolve(h, g, free, estimate);
      unbalanced = unbalanced(h, g, free);
      updateNoise(factor(h).getSolver());
    }
    return covariance();
  }

  /**
   * The normal equations at the estimate. Here the strong ions count in the ionic strength, too,
   * which the passes hold constant: what is predicted from the parameters moves like that.
   */
  private CholeskyDecomposition covariance() {
    double[][] h = new double[unknowns][unknowns];
    addPrior(h, new double[unknowns]);
    for (int i = 0; i < design.length; i++) {
      design[i][0] += feedback[i];
      for (int r = 0; r < unknowns; r++) {
        for (int c = 0; c < unknowns; c++) {
          h[r][c] += weight[i] * design[i][r] * design[i][c];
        }
      }
    }
    return factor(h);
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

  private void addPrior(double[][] h, double[] g) {
    addPrior(h, g, 0, prior.strongIonDifference, prior.strongIonStandardDeviation);
    for (int k = 0; k < groups; k++) {
      addPrior(h, g, k + 1, prior.mean[k], prior.standardDeviation[k]);
    }
    addPrior(h, g, groups + 1, 0, prior.electrodeOffset);
    addPrior(h, g, groups + 2, 0, prior.electrodeSlope);
  }

  private static void addPrior(double[][] h, double[] g, int i, double mean, double sd) {
    h[i][i] += 1 / (sd * sd);
    g[i] += mean / (sd * sd);
  }

  private void row(int i) {
    double pH = readings.pH[i];
    double v = readings.dilution[i];
    double base = readings.baseEquivalentsPerKg[i];
    double ions = Math.abs(estimate[0]) + Math.abs(base) + medium.background;
    double ionic = ions / (1 + v);
    double shift = logGamma(ionic);
    double gamma = Math.pow(10, shift);
    double h = Math.pow(10, -pH) / gamma * (1 + v);
    double oh = Math.pow(10, medium.log10IonProduct + pH) / gamma * (1 + v);
    double[] row = new double[unknowns];
    row[0] = 1;
    double overLogGamma = oh - h;
    double slope = h + oh;
    for (int k = 0; k < groups; k++) {
      double a = dissociated(pH, prior.gridPk[k], shift);
      row[k + 1] = -a;
      slope += estimate[k + 1] * a * (1 - a);
      overLogGamma += estimate[k + 1] * a * (1 - a);
    }
    slope *= LN10;
    slopes[i] = slope;
    double perIonic = (logGamma(ionic + IONIC_STEP) - shift) / IONIC_STEP;
    feedback[i] = LN10 * overLogGamma * perIonic * Math.signum(estimate[0]) / (1 + v);
    row[groups + 1] = slope;
    row[groups + 2] = slope * (pH - 7);
    design[i] = row;
    right[i] = -(h - oh) - base;
  }

  private void updateNoise(DecompositionSolver inverse) {
    int n = right.length;
    double squares = 0;
    double effective = 0;
    for (int i = 0; i < n; i++) {
      double r = right[i];
      for (int c = 0; c < unknowns; c++) {
        r -= design[i][c] * estimate[c];
      }
      residualPh[i] = r / slopes[i];
      squares += weight[i] * r * r;
      ArrayRealVector row = new ArrayRealVector(design[i], false);
      effective += weight[i] * row.dotProduct(inverse.solve(row));
    }
    double degrees = Math.max(n - effective, 0);
    double variance =
        (NOISE_PRIOR_WEIGHT * prior.noise * prior.noise + squares * noise * noise)
            / (NOISE_PRIOR_WEIGHT + degrees);
    noise = Math.sqrt(variance);
  }
}
