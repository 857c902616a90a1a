package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.brewchem.internal.BufferRegression.Medium;
import org.brewchem.internal.BufferRegression.Prior;
import org.brewchem.internal.BufferRegression.Readings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Against an invented buffer whose charge balance is written down here once more, its differences
 * taken by numbers, and against the covariance of all readings together, where the class works with
 * that of the unknowns.
 */
class BufferRegressionTest {

  private static final double[] GRID = {2.5, 4, 5, 6.5, 9};
  private static final double[] AMOUNTS = {0.003, 0.011, 0.007, 0.004, 0.006};
  private static final double[] NO_AMOUNTS = new double[GRID.length];
  private static final int READINGS = 40;
  private static final int UNKNOWNS = GRID.length + 1;

  /** A liquid and what is done to it; the balance is the charge of one kilogram of sample. */
  private record Buffer(
      double debyeHueckelA,
      double background,
      double carbonDioxide,
      double strong,
      double[] amounts) {

    double logGamma(double ionic) {
      return -debyeHueckelA * (Math.sqrt(ionic) / (1 + Math.sqrt(ionic)) - 0.3 * ionic);
    }

    double ions(double pH, double dilution, double base) {
      double protons = Math.pow(10, -pH) * (1 + dilution);
      double weak = Math.abs(strong + base + protons);
      return background + (Math.abs(strong) + Math.abs(base) + protons + weak) / 2;
    }

    double charge(double pH, double dilution, double base) {
      return charge(pH, dilution, base, ions(pH, dilution, base) / (1 + dilution), 0, 99, 0);
    }

    double charge(
        double pH,
        double dilution,
        double base,
        double ionic,
        double fromPk,
        double belowPk,
        double morePk) {
      double log = logGamma(ionic);
      double gamma = Math.pow(10, log);
      double charge = strong + base;
      charge += (Math.pow(10, -pH) - Math.pow(10, pH - 14)) / gamma * (1 + dilution);
      for (int k = 0; k < GRID.length; k++) {
        double pK = GRID[k] + (GRID[k] >= fromPk && GRID[k] < belowPk ? morePk : 0);
        charge -= amounts[k] / (1 + Math.pow(10, pK + log - pH));
      }
      // Of the three forms the relative amounts, bicarbonate taken for one.
      double acid = Math.pow(10, 6.35 + log - pH);
      double carbonate = Math.pow(10, pH - 10.3 - 3 * log);
      charge -= carbonDioxide * (1 + 2 * carbonate) / (1 + acid + carbonate + acid * carbonate);
      return charge;
    }

    /** The base that leads to this pH. */
    double base(double pH, double dilution) {
      double base = 0;
      for (int i = 0; i < 200; i++) {
        base -= charge(pH, dilution, base);
      }
      return base;
    }

    Buffer withStrong(double other) {
      return new Buffer(debyeHueckelA, background, carbonDioxide, other, amounts);
    }

    Buffer withBackground(double other) {
      return new Buffer(debyeHueckelA, other, carbonDioxide, strong, amounts);
    }

    Buffer withCarbonDioxide(double other) {
      return new Buffer(debyeHueckelA, background, other, strong, amounts);
    }

    Medium medium(double misfit) {
      return new Medium(debyeHueckelA, -14, background, carbonDioxide, 6.35, 10.3, misfit);
    }

    Readings readings(double noise, double chargeNoise, double[][] errors) {
      Random random = new Random(5);
      double[] pH = new double[READINGS];
      double[] base = new double[READINGS];
      double[] dilution = new double[READINGS];
      double[] noises = new double[READINGS];
      for (int i = 0; i < READINGS; i++) {
        double curve = 2.2 + 0.2 * i;
        dilution[i] = 0.5 * i / READINGS;
        base[i] = base(curve, dilution[i]);
        pH[i] = curve + noise * random.nextGaussian();
        noises[i] = chargeNoise * (1 + i % 3);
      }
      return new Readings(pH, base, dilution, noises, errors);
    }
  }

  private static Buffer buffer(double debyeHueckelA, double carbonDioxide) {
    return new Buffer(debyeHueckelA, 0.01, carbonDioxide, 0.015, AMOUNTS);
  }

  private static Prior prior(
      double[] mean, double spread, double relative, double strong, double noiseDegrees) {
    return new Prior(GRID, mean, spread, relative, strong, 0.05, 0.02, noiseDegrees, false);
  }

  /** One error that moves every pH alike, and one that moves it the more, the further from 7. */
  private static double[][] errors() {
    double[][] errors = new double[2][READINGS];
    for (int i = 0; i < READINGS; i++) {
      errors[0][i] = 0.02;
      errors[1][i] = 0.005 * (2.2 + 0.2 * i - 7);
    }
    return errors;
  }

  private static double derivative(DoubleUnaryOperator f, double at, double step) {
    return (f.applyAsDouble(at + step) - f.applyAsDouble(at - step)) / (2 * step);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.51})
  void readingsWithoutErrorsGiveTheBufferBack(double debyeHueckelA) {
    Buffer buffer = buffer(debyeHueckelA, 0.002);
    BufferRegression fit =
        BufferRegression.of(
            prior(NO_AMOUNTS, 1, 0, 0, 4),
            buffer.readings(0, 0, new double[0][]),
            buffer.medium(0));
    assertEquals(0.015, fit.estimate()[0], 1e-6);
    for (int k = 0; k < GRID.length; k++) {
      assertEquals(AMOUNTS[k], fit.estimate()[k + 1], 1e-6, "pK " + GRID[k]);
    }
    assertTrue(fit.unbalanced() < 1e-6);
    assertArrayEquals(new double[READINGS], fit.residuals(), 1e-4);
  }

  /**
   * The belief is the truth, so the fit stays there and its derivatives are those of the balance.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.015, -0.012})
  void whatTheReadingsWouldSeemToSayIsTheDerivativeOfTheBalance(double strong) {
    Buffer buffer = buffer(0.51, 0).withStrong(strong);
    Readings readings = buffer.readings(0, 1e-5, new double[0][]);
    BufferRegression fit =
        BufferRegression.of(prior(AMOUNTS, 0.001, 0, strong, 4), readings, buffer.medium(0));
    assertEquals(strong, fit.estimate()[0], 1e-12);
    for (int i = 0; i < READINGS; i++) {
      double pH = readings.pH()[i];
      double v = readings.dilution()[i];
      double t = readings.baseEquivalentsPerKg()[i];
      double salt = buffer.ions(pH, v, t);
      assertEquals(
          -derivative(x -> buffer.charge(x, v, t, salt / (1 + v), 0, 0, 0), pH, 1e-4),
          fit.slopes()[i],
          1e-6 * fit.slopes()[i],
          "slope");
      assertEquals(
          derivative(x -> buffer.withBackground(x).charge(pH, v, t), 0.01, 1e-5),
          fit.overBackground()[i],
          1e-5,
          "salt");
      assertEquals(
          derivative(x -> buffer.withCarbonDioxide(x).charge(pH, v, t), 0, 1e-3),
          fit.overCarbonDioxide()[i],
          1e-9,
          "carbon dioxide");
      double moved = buffer.logGamma(salt / (1 + v)) - buffer.logGamma(salt);
      for (double[] range : new double[][] {{0, 14}, {2.5, 5}, {5, 9}}) {
        assertEquals(
            moved
                * derivative(
                    x -> buffer.charge(pH, v, t, salt / (1 + v), range[0], range[1], x), 0, 1e-4),
            fit.overActivity(range[0], range[1])[i],
            1e-9,
            "activity");
      }
    }
  }

  /** The second proton of carbon dioxide counts as if the first were gone. */
  @Test
  void carbonDioxideIsPartOfTheSlope() {
    Buffer buffer = buffer(0.51, 0.02);
    Readings readings = buffer.readings(0, 0, new double[0][]);
    BufferRegression fit =
        BufferRegression.of(prior(AMOUNTS, 0.001, 0, 0.015, 4), readings, buffer.medium(0));
    for (int i = 0; i < READINGS; i++) {
      double v = readings.dilution()[i];
      double t = readings.baseEquivalentsPerKg()[i];
      double ionic = buffer.ions(readings.pH()[i], v, t) / (1 + v);
      double slope =
          -derivative(x -> buffer.charge(x, v, t, ionic, 0, 0, 0), readings.pH()[i], 1e-4);
      assertEquals(slope, fit.slopes()[i], 1e-5);
    }
  }

  /** The readings' covariance by what is believed before: noise, spread of the unknowns, errors. */
  private static RealMatrix covariance(double[][] design, double[] weight, double[] spreads) {
    RealMatrix all = MatrixUtils.createRealDiagonalMatrix(weight);
    for (int i = 0; i < weight.length; i++) {
      all.setEntry(i, i, 1 / weight[i]);
    }
    RealMatrix columns = new Array2DRowRealMatrix(design);
    RealMatrix believed =
        MatrixUtils.createRealDiagonalMatrix(Arrays.stream(spreads).map(s -> s * s).toArray());
    return all.add(columns.multiply(believed).multiply(columns.transpose()));
  }

  private static RealMatrix inverse(RealMatrix matrix) {
    return new QRDecomposition(matrix).getSolver().getInverse();
  }

  @Test
  void covariancesAreThoseOfBeliefAndReadingsTogether() {
    Buffer buffer = buffer(0.51, 0);
    double chargeNoise = 3e-4;
    double misfit = 0.01;
    double relative = 0.4;
    Readings readings = buffer.readings(0, chargeNoise, errors());
    BufferRegression fit =
        BufferRegression.of(
            prior(AMOUNTS, 0.001, relative, 0.015, 1e15), readings, buffer.medium(misfit));
    assertEquals(0.02, fit.noise(), 1e-9);
    int all = UNKNOWNS + 2;
    double[] spreads = new double[all];
    spreads[0] = 0.05;
    // By hand: the middle counts twice, neighbours once.
    double[] around = {
      (2 * 0.003 + 0.011) / 3,
      (0.003 + 2 * 0.011 + 0.007) / 4,
      (0.011 + 2 * 0.007 + 0.004) / 4,
      (0.007 + 2 * 0.004 + 0.006) / 4,
      (0.004 + 2 * 0.006) / 3
    };
    for (int k = 0; k < GRID.length; k++) {
      spreads[k + 1] = 0.001 + relative * Math.max(AMOUNTS[k], around[k]);
    }
    spreads[UNKNOWNS] = 1;
    spreads[UNKNOWNS + 1] = 1;
    double[][] design = new double[READINGS][all];
    double[] weight = new double[READINGS];
    double[] one = new double[READINGS];
    double[] other = new double[READINGS];
    for (int i = 0; i < READINGS; i++) {
      double pH = readings.pH()[i];
      double v = readings.dilution()[i];
      double t = readings.baseEquivalentsPerKg()[i];
      double slope = fit.slopes()[i];
      double ofPH = slope * Math.hypot(0.02, misfit);
      weight[i] = 1 / (ofPH * ofPH + Math.pow(readings.chargeNoise()[i], 2));
      design[i][0] = derivative(x -> buffer.withStrong(x).charge(pH, v, t), 0.015, 1e-5);
      double log = buffer.logGamma(buffer.ions(pH, v, t) / (1 + v));
      for (int k = 0; k < GRID.length; k++) {
        design[i][k + 1] = -1 / (1 + Math.pow(10, GRID[k] - pH + log));
      }
      design[i][UNKNOWNS] = slope * 0.02;
      design[i][UNKNOWNS + 1] = slope * readings.commonErrorsOfPH()[1][i];
      one[i] = Math.sin(i);
      other[i] = i % 7;
    }
    RealMatrix ofReadings = inverse(covariance(design, weight, spreads));
    // What the unknowns then have: their spread less what the readings take away.
    RealMatrix believed =
        MatrixUtils.createRealDiagonalMatrix(Arrays.stream(spreads).map(s -> s * s).toArray());
    RealMatrix columns = new Array2DRowRealMatrix(design);
    RealMatrix gain = believed.multiply(columns.transpose()).multiply(ofReadings);
    RealMatrix left = believed.subtract(gain.multiply(columns).multiply(believed));

    double scale = 1e-5;
    RealMatrix parts = new Array2DRowRealMatrix(fit.principalParts());
    RealMatrix together = parts.multiply(parts.transpose());
    for (int error = 0; error < 2; error++) {
      double[] part = fit.partOfCommonError(error);
      assertEquals(UNKNOWNS, part.length);
      for (int i = 0; i < UNKNOWNS; i++) {
        assertEquals(left.getEntry(i, UNKNOWNS + error), part[i], scale * spreads[i]);
      }
      together = together.add(new Array2DRowRealMatrix(part).multiply(row(part)));
    }
    for (int i = 0; i < UNKNOWNS; i++) {
      for (int j = 0; j < UNKNOWNS; j++) {
        assertEquals(left.getEntry(i, j), together.getEntry(i, j), scale * spreads[i] * spreads[j]);
      }
    }
    double[] response = fit.response(one);
    double[] expected = gain.operate(one);
    assertEquals(UNKNOWNS, response.length);
    for (int i = 0; i < UNKNOWNS; i++) {
      assertEquals(-expected[i], response[i], scale * Math.abs(expected[i]));
    }
    double shared =
        new Array2DRowRealMatrix(one).transpose().multiply(ofReadings).operate(other)[0];
    assertEquals(shared, fit.shared(one, other), scale * Math.abs(shared));
    assertEquals(shared, fit.shared(other, one), scale * Math.abs(shared));
  }

  private static RealMatrix row(double[] entries) {
    return new Array2DRowRealMatrix(entries).transpose();
  }

  /** An error that moves no reading is no part of the covariance. */
  @Test
  void aCommonErrorOfNothingChangesNothing() {
    Buffer buffer = buffer(0.51, 0.002);
    Prior prior = prior(AMOUNTS, 0.001, 0.5, 0.015, 4);
    BufferRegression without =
        BufferRegression.of(
            prior, buffer.readings(0.02, 1e-4, new double[0][]), buffer.medium(0.01));
    BufferRegression with =
        BufferRegression.of(
            prior, buffer.readings(0.02, 1e-4, new double[1][READINGS]), buffer.medium(0.01));
    assertArrayEquals(new double[UNKNOWNS], with.partOfCommonError(0), 1e-15);
    RealMatrix expected = new Array2DRowRealMatrix(without.principalParts());
    RealMatrix found = new Array2DRowRealMatrix(with.principalParts());
    expected = expected.multiply(expected.transpose());
    found = found.multiply(found.transpose());
    for (int i = 0; i < UNKNOWNS; i++) {
      for (int j = 0; j < UNKNOWNS; j++) {
        assertEquals(expected.getEntry(i, j), found.getEntry(i, j), 1e-12);
      }
    }
  }

  /** The noise is what the residuals and the belief in it say; each reading lies off the curve. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-3})
  void theNoiseIsEstimatedFromTheResiduals(double chargeNoise) {
    Buffer buffer = buffer(0, 0);
    double misfit = 0.01;
    Readings readings = buffer.readings(0.05, chargeNoise, errors());
    BufferRegression fit =
        BufferRegression.of(prior(AMOUNTS, 0.001, 0, 0.015, 6), readings, buffer.medium(misfit));
    double[] residuals = fit.residuals();
    double[] estimate = fit.estimate();
    int all = UNKNOWNS + 2;
    assertEquals(all, estimate.length);
    Buffer fitted = new Buffer(0, 0.01, 0, estimate[0], Arrays.copyOfRange(estimate, 1, UNKNOWNS));
    double[] spreads = new double[all];
    Arrays.fill(spreads, 0.001);
    spreads[0] = 0.05;
    spreads[UNKNOWNS] = 1;
    spreads[UNKNOWNS + 1] = 1;
    double[][] design = new double[READINGS][all];
    double[] weight = new double[READINGS];
    double squares = 0;
    double ofNoise = 0;
    double asked = 0;
    double[] column = new double[READINGS];
    for (int i = 0; i < READINGS; i++) {
      double v = readings.dilution()[i];
      double t = readings.baseEquivalentsPerKg()[i];
      double slope = fit.slopes()[i];
      double ofPH = Math.pow(slope * Math.hypot(fit.noise(), misfit), 2);
      weight[i] = 1 / (ofPH + Math.pow(readings.chargeNoise()[i], 2));
      double pH = readings.pH()[i] - ofPH * weight[i] * residuals[i];
      assertEquals(
          -derivative(x -> fitted.charge(x, v, t), pH, 1e-4), slope, 1e-3 * slope, "slope");
      double error =
          estimate[UNKNOWNS] * 0.02 + estimate[UNKNOWNS + 1] * readings.commonErrorsOfPH()[1][i];
      double charge = slope * residuals[i];
      assertEquals(
          fitted.charge(pH, v, t) - slope * (readings.pH()[i] - pH - error),
          -charge,
          1e-3 * slope * 0.05,
          "residual");
      double stated =
          Math.pow(slope * Math.hypot(0.02, misfit), 2) + Math.pow(readings.chargeNoise()[i], 2);
      squares += charge * charge / stated;
      ofNoise += weight[i] * charge * charge * fit.noise() * fit.noise();
      column[i] = Math.cos(i);
      asked += column[i] * weight[i] * charge;
      design[i][0] = 1;
      for (int k = 0; k < GRID.length; k++) {
        design[i][k + 1] = -1 / (1 + Math.pow(10, GRID[k] - pH));
      }
      design[i][UNKNOWNS] = slope * 0.02;
      design[i][UNKNOWNS + 1] = slope * readings.commonErrorsOfPH()[1][i];
    }
    RealMatrix ofReadings = inverse(covariance(design, weight, spreads));
    double degrees = 0;
    double[] standardized = fit.standardizedResiduals();
    for (int i = 0; i < READINGS; i++) {
      degrees += ofReadings.getEntry(i, i) / weight[i];
      double expected =
          weight[i] * fit.slopes()[i] * residuals[i] / Math.sqrt(ofReadings.getEntry(i, i));
      assertEquals(expected, standardized[i], 1e-2 * Math.abs(expected), "reading " + i);
    }
    assertEquals(degrees, fit.scatter()[1], 1e-2);
    assertEquals(squares / fit.scatter()[1], fit.scatter()[0], 1e-9);
    assertEquals(
        Math.sqrt((6 * 0.02 * 0.02 + ofNoise) / (6 + degrees)), fit.noise(), 1e-3 * fit.noise());
    assertEquals(asked, fit.asked(column), 1e-2 * Math.abs(asked));
    assertTrue(fit.unbalanced() > 0 && fit.unbalanced() < 1e-9, "off by " + fit.unbalanced());
  }

  /** Of a liquid that lacks an acid only a signed fit says so; the other has none of it. */
  @Test
  void amountsDoNotFallBelowZeroUnlessTheyMay() {
    double[] lacking = AMOUNTS.clone();
    lacking[2] = -0.002;
    Buffer buffer = new Buffer(0.51, 0.01, 0, 0.015, lacking);
    Readings readings = buffer.readings(0, 0, new double[0][]);
    BufferRegression signed =
        BufferRegression.of(
            new Prior(GRID, AMOUNTS, 1, 0, 0, 0.05, 0.02, 4, true), readings, buffer.medium(0));
    assertArrayEquals(lacking, Arrays.copyOfRange(signed.estimate(), 1, UNKNOWNS), 1e-5);
    BufferRegression bounded =
        BufferRegression.of(prior(AMOUNTS, 1, 0, 0, 4), readings, buffer.medium(0));
    assertEquals(0, bounded.estimate()[3]);
    assertTrue(bounded.estimate()[2] > 0.005 && bounded.estimate()[4] > 0.003);
    for (BufferRegression fit : new BufferRegression[] {signed, bounded}) {
      assertTrue(fit.unbalanced() < 1e-6, "off by " + fit.unbalanced());
    }
  }

  @Test
  void withoutReadingsWhatWasBelievedStays() {
    double[] none = {};
    BufferRegression fit =
        BufferRegression.of(
            prior(AMOUNTS, 0.001, 0.5, 0.015, 4),
            new Readings(none, none, none, none, new double[0][]),
            buffer(0.51, 0).medium(0.01));
    assertEquals(0.015, fit.estimate()[0], 1e-12);
    assertArrayEquals(AMOUNTS, Arrays.copyOfRange(fit.estimate(), 1, UNKNOWNS), 1e-12);
    assertArrayEquals(new double[] {1, 0}, fit.scatter());
    assertEquals(0.02, fit.noise(), 1e-12);
  }

  /** Where nothing explains a reading, the curve is left at pH 0 or 14: ln 10 Eq/kg per pH. */
  @ParameterizedTest
  @ValueSource(doubles = {100, -100})
  void aReadingThatNothingExplainsStaysOnTheScale(double base) {
    BufferRegression fit =
        BufferRegression.of(
            new Prior(new double[0], new double[0], 1, 0, 0, 1e-9, 0.02, 1e9, false),
            new Readings(
                new double[] {7},
                new double[] {base},
                new double[] {0.5},
                new double[1],
                new double[0][]),
            new Medium(0, -14, 0, 0, 6.35, 10.3, 0));
    assertEquals(1.5 * Math.log(10), fit.slopes()[0], 1e-9);
  }

  /**
   * One reading at pH 2.2 that settles the strong ions, the acid being known: they answer to base
   * that is added, less what they change the ionic strength by. Half of that is their own, half
   * that of the weak ions that balance them, which with a little acid are positive by the free
   * protons and, without any, negative by what their activity takes off: then both halves cancel.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.008})
  void strongIonsCountInTheIonicStrengthWithTheWeakOnes(double amount) {
    double[] amounts = {amount, 0, 0, 0, 0};
    Buffer buffer = new Buffer(0.51, 0.01, 0, 0.02, amounts);
    double base = buffer.base(2.2, 0.5);
    Prior known = new Prior(GRID, amounts, 1e-9, 0, 0.02, 1e3, 0.02, 4, false);
    Readings one =
        new Readings(
            new double[] {2.2},
            new double[] {base},
            new double[] {0.5},
            new double[1],
            new double[0][]);
    BufferRegression fit = BufferRegression.of(known, one, buffer.medium(0));
    assertEquals(0.02, fit.estimate()[0], 1e-9);
    double weak = 0.02 + base + Math.pow(10, -2.2) * 1.5;
    assertEquals(amount == 0 ? -1 : 1, Math.signum(weak));
    double perIon = amount == 0 ? 0 : fit.overBackground()[0];
    assertTrue(Math.abs(fit.overBackground()[0]) > 0.005);
    assertEquals(-1 / (1 + perIon), fit.response(new double[] {1})[0], 1e-7);
  }
}
