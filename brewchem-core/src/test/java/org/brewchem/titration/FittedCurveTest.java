package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerKg;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** A fit of three unknowns against the textbook of least squares, by differences of the curve. */
class FittedCurveTest {

  private static final int N = 30;

  private static final Solution ACID =
      Solution.at(celsius(20)).with(Acid.HYDROCHLORIC, molPerKg(0.1));

  private static double[] curve(double charge, double carbonate, double borate) {
    Solution empty = Solution.at(celsius(20));
    Solution water =
        empty
            .with(Component.CARBONATE, molPerKg(carbonate))
            .with(Component.BORATE, molPerKg(borate))
            .withInertCharge(
                ChargeConcentration.ofEquivalentsPerLitre(charge * empty.kilogramsPerLitre()));
    double[] millilitres = new double[N];
    for (int i = 0; i < N; i++) {
      millilitres[i] = i;
    }
    return SimulatedTitration.of(water, ACID, mL(1000)).pHAfter(millilitres);
  }

  private static double[] titrant() {
    double[] titrant = new double[N];
    for (int i = 0; i < N; i++) {
      titrant[i] = i * 1e-3;
    }
    return titrant;
  }

  private static double[] read(long seed) {
    double[] pH = curve(2.4e-3, 1.9e-3, 6e-4);
    Random random = new Random(seed);
    for (int i = 0; i < N; i++) {
      pH[i] += 0.004 * random.nextGaussian();
    }
    return pH;
  }

  private static CurveFit fit(double[] pH) {
    return CurveFit.of(Solution.at(celsius(20)), ACID)
        .unknownInertCharge()
        .unknownTotal(Component.CARBONATE)
        .unknownTotal(Component.BORATE)
        .to(titrant(), pH);
  }

  private static List<Traced> found(CurveFit fit) {
    return List.of(
        fit.inertCharge().traced(),
        fit.total(Component.CARBONATE).traced(),
        fit.total(Component.BORATE).traced());
  }

  private static RealMatrix slopes(CurveFit fit) {
    double[] at = found(fit).stream().mapToDouble(Traced::value).toArray();
    double[][] slopes = new double[N][3];
    double step = 1e-7;
    for (int p = 0; p < 3; p++) {
      double[] up = at.clone();
      double[] down = at.clone();
      up[p] += step;
      down[p] -= step;
      double[] above = curve(up[0], up[1], up[2]);
      double[] below = curve(down[0], down[1], down[2]);
      for (int i = 0; i < N; i++) {
        slopes[i][p] = (above[i] - below[i]) / (2 * step);
      }
    }
    return new Array2DRowRealMatrix(slopes);
  }

  private static RealMatrix inverse(RealMatrix slopes) {
    return new LUDecomposition(slopes.transpose().multiply(slopes)).getSolver().getInverse();
  }

  private static double squares(CurveFit fit) {
    double sum = 0;
    for (double residual : fit.residuals()) {
      sum += residual * residual;
    }
    return sum;
  }

  @Test
  void theParametersHaveTheCovarianceOfLeastSquares() {
    CurveFit fit = fit(read(11));
    RealMatrix covariance = inverse(slopes(fit)).scalarMultiply(squares(fit) / (N - 3));
    List<Traced> found = found(fit);
    for (int i = 0; i < 3; i++) {
      double u = Math.sqrt(covariance.getEntry(i, i));
      assertEquals(u, found.get(i).standardUncertainty().orElseThrow(), 1e-3 * u);
      assertEquals(N - 3, found.get(i).degreesOfFreedom(), 1e-6);
      for (int j = 0; j < i; j++) {
        double expected = covariance.getEntry(i, j);
        assertEquals(
            expected,
            found.get(i).covariance(found.get(j)),
            2e-3 * u * Math.sqrt(covariance.getEntry(j, j)));
        assertTrue(
            Math.abs(expected) > 0.05 * u * Math.sqrt(covariance.getEntry(j, j)), "they correlate");
      }
    }
    assertEquals(Math.sqrt(squares(fit) / (N - 3)), fit.standardDeviation(), 1e-12);
    double[] curve = curve(found.get(0).value(), found.get(1).value(), found.get(2).value());
    for (int i = 0; i < N; i++) {
      assertEquals(read(11)[i] - curve[i], fit.residuals()[i], 1e-7);
    }
  }

  /** Each deleted studentised residual against Student's t at 5 % over all readings. */
  @Test
  void aBadReadingIsNamedWithItsDeletedStudentisedResidual() {
    for (int bad : new int[] {0, 6, 29}) {
      double[] pH = read(11);
      pH[bad] += 0.2;
      CurveFit fit = fit(pH);
      RealMatrix slopes = slopes(fit);
      RealMatrix hat = slopes.multiply(inverse(slopes)).multiply(slopes.transpose());
      double residual = fit.residuals()[bad];
      double free = 1 - hat.getEntry(bad, bad);
      double others = (squares(fit) - residual * residual / free) / (N - 4);
      double t = Math.abs(residual) / Math.sqrt(others * free);
      double critical =
          new TDistribution(null, N - 4).inverseCumulativeProbability(1 - 0.05 / (2 * N));
      List<Notice> notices = fit.notices();
      assertEquals(1, notices.size(), notices.toString());
      assertEquals(bad + 1, notices.get(0).row().orElseThrow());
      String[] said =
          notices
              .get(0)
              .text()
              .replaceFirst(
                  ".* lies (\\S+) off the fitted curve, (\\S+) of its standard deviations where"
                      + " (\\S+) are allowed",
                  "$1 $2 $3")
              .split(" ");
      assertEquals(residual, Double.parseDouble(said[0]), 0.05 * residual);
      assertEquals(t, Double.parseDouble(said[1]), 0.01 * t);
      assertEquals(critical, Double.parseDouble(said[2]), 0.006);
    }
    assertEquals(List.of(), fit(read(11)).notices());
  }

  /** Two that are equally far off hide each other from a test of one. */
  @Test
  void badReadingsThatHideEachOtherAreAllNamed() {
    double[] pH = read(11);
    int[] bad = {4, 9, 14, 19, 24};
    for (int i : bad) {
      pH[i] += i % 2 == 0 ? 0.1 : -0.1;
    }
    assertEquals(
        List.of(5L, 10L, 15L, 20L, 25L),
        fit(pH).notices().stream().map(notice -> notice.row().orElseThrow()).toList());
  }

  /**
   * In a scatter of equal sizes one reading of four times as much is named. Two of them hide each
   * other, and others are sought behind them only where a few residuals make most of the scatter.
   */
  @Test
  void inAnEvenScatterTwoReadingsMayHideEachOther() {
    double[] pH = curve(2.4e-3, 1.9e-3, 6e-4);
    for (int i = 0; i < N; i++) {
      pH[i] += i % 2 == 0 ? 0.004 : -0.004;
    }
    pH[10] += 0.012;
    assertEquals(List.of(11L), fit(pH).notices().stream().map(n -> n.row().orElseThrow()).toList());
    pH[17] -= 0.012;
    assertEquals(List.of(), fit(pH).notices());
    pH[10] += 0.2;
    pH[17] -= 0.2;
    assertEquals(
        List.of(11L, 18L), fit(pH).notices().stream().map(n -> n.row().orElseThrow()).toList());
  }

  /** Eight of thirty are too many: seven of them are named. */
  @Test
  void atMostAQuarterOfTheReadingsIsNamed() {
    double[] pH = read(11);
    for (int i : new int[] {1, 4, 8, 11, 15, 18, 22, 25}) {
      pH[i] += i % 2 == 0 ? 0.3 : -0.3;
    }
    assertEquals(7, fit(pH).notices().size());
  }

  @Test
  void aFitShowsItsReadingsAndThatItHasSettled() {
    CurveFit fit = fit(read(11));
    Step.Detail detail = fit.inertCharge().step().detail().orElseThrow();
    assertTrue(detail.holds());
    assertEquals(N + 1, detail.lines().size());
    assertTrue(
        detail.lines().get(0).matches("reading 1: pH 9\\.\\d{4}, [+-][0-9.e-]+ off the curve"),
        detail.lines().get(0));
    assertTrue(detail.lines().get(N - 1).startsWith("reading 30: pH "), detail.lines().get(29));
    assertTrue(detail.lines().get(N).startsWith("one more solution of the normal equations"));
    assertEquals("fitted curve", fit.kind());
    assertTrue(
        fit.toString()
            .matches(
                "fitted inert charge .*; fitted total of carbonate .*; fitted total"
                    + " of borate .*; scatter 0\\.00\\d+ pH"),
        fit.toString());
  }

  /** Of 2.4 mEq/kg one is known. */
  @Test
  void whatIsKnownOfTheInertChargeIsNotFoundAgain() {
    Solution empty = Solution.at(celsius(20));
    Solution known =
        empty.withInertCharge(
            ChargeConcentration.ofEquivalentsPerLitre(1e-3 * empty.kilogramsPerLitre()));
    CurveFit fit =
        CurveFit.of(known, ACID)
            .unknownInertCharge()
            .unknownTotal(Component.CARBONATE)
            .to(titrant(), curve(2.4e-3, 1.9e-3, 0));
    assertEquals(1.4e-3, fit.inertCharge().number(), 1e-9);
    assertEquals(1.9e-3, fit.total(Component.CARBONATE).number(), 1e-9);
    assertEquals(
        2.4e-3,
        fit.solution().inertCharge().inEquivalentsPerLitre() / empty.kilogramsPerLitre(),
        1e-9);
    CurveFit all =
        CurveFit.of(
                empty.withInertCharge(
                    ChargeConcentration.ofEquivalentsPerLitre(2.4e-3 * empty.kilogramsPerLitre())),
                ACID)
            .unknownTotal(Component.CARBONATE)
            .to(titrant(), curve(2.4e-3, 1.9e-3, 0));
    assertEquals(1.9e-3, all.total(Component.CARBONATE).number(), 1e-9);
  }

  @Test
  void twoReadingsMoreThanUnknownsAreEnough() {
    CurveFit.Problem two =
        CurveFit.of(Solution.at(celsius(20)), ACID)
            .unknownInertCharge()
            .unknownTotal(Component.CARBONATE);
    double[] titrant = {0, 8e-3, 16e-3, 24e-3};
    double[] whole = curve(2.4e-3, 1.9e-3, 0);
    double[] pH = {whole[0], whole[8], whole[16], whole[24]};
    assertEquals(1.9e-3, two.to(titrant, pH).total(Component.CARBONATE).number(), 1e-8);
    assertEquals(
        "readings: 3 is not possible; 4 or more for 2 unknowns is allowed",
        assertThrows(
                IllegalArgumentException.class,
                () -> two.to(Arrays.copyOf(titrant, 3), Arrays.copyOf(pH, 3)))
            .getMessage());
    assertEquals(
        "readings: 3 do not go with 4 pH",
        assertThrows(IllegalArgumentException.class, () -> two.to(Arrays.copyOf(titrant, 3), pH))
            .getMessage());
  }

  /** More acid than base: a total is 0 or more, an inert charge may lie below. */
  @Test
  void anInertChargeBelowNothingIsFound() {
    CurveFit fit =
        CurveFit.of(Solution.at(celsius(20)), ACID)
            .unknownInertCharge()
            .unknownTotal(Component.PHOSPHATE)
            .to(titrant(), acidified());
    assertEquals(-1e-3, fit.inertCharge().number(), 1e-8);
    assertEquals(5e-3, fit.total(Component.PHOSPHATE).number(), 1e-8);
  }

  private static double[] acidified() {
    Solution empty = Solution.at(celsius(20));
    double[] millilitres = new double[N];
    for (int i = 0; i < N; i++) {
      millilitres[i] = i;
    }
    return SimulatedTitration.of(
            empty
                .with(Component.PHOSPHATE, molPerKg(5e-3))
                .withInertCharge(
                    ChargeConcentration.ofEquivalentsPerLitre(-1e-3 * empty.kilogramsPerLitre())),
            ACID,
            mL(1000))
        .pHAfter(millilitres);
  }

  @Test
  void onlyATotalMayNotBeNegative() {
    assertTrue(new CurveUnknown.Total(Component.BORATE).isNonNegative());
    assertFalse(new CurveUnknown.InertCharge().isNonNegative());
    assertFalse(new CurveUnknown.DissociationConstant(Component.LACTATE, -3).isNonNegative());
  }

  @Test
  void aPHThatStandsStillIsRefused() {
    double[] flat = new double[N];
    Arrays.fill(flat, 7);
    assertEquals(
        "pH of the readings: 7 in all of them is not possible; a pH that moves is allowed",
        assertThrows(IllegalArgumentException.class, () -> fit(flat)).getMessage());
  }
}
