package org.brewchem.mash;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** pH(a) = 5.8 - 0.025 a + c a² by arithmetic, measured at -10, 2 and 20 mEq/kg. */
class MaltCurveTest {

  private static final Source OF_PH = Source.of("pH", 5.8, 0.1, "");
  private static final Source OF_SLOPE = Source.of("slope", -0.025, 0.005, "");
  private static final Source OF_CURVATURE = Source.of("curvature", 2e-4, 3e-5, "");
  private static final Source OF_MISFIT = Source.of("misfit", 0, 0.004, "");

  private static MaltCurve uncertain() {
    return new MaltCurve(
        Traced.of(OF_PH),
        Traced.of(OF_SLOPE),
        Traced.of(OF_CURVATURE),
        Traced.of(OF_MISFIT),
        -10,
        2,
        20);
  }

  private static MaltCurve curve(double slope, double curvature) {
    return curve(slope, curvature, -10, 20);
  }

  private static MaltCurve curve(double slope, double curvature, double lowest, double highest) {
    return new MaltCurve(
        Traced.exact(5.8),
        Traced.exact(slope),
        Traced.exact(curvature),
        Traced.exact(0),
        lowest,
        2,
        highest);
  }

  /** 5.8 - 0.025 x 10 + 0.0002 x 100 = 5.57; 5.8 + 0.025 x 15 + 0.0002 x 225 = 6.22. */
  @Test
  void theAcidThatBringsAMaltToAPHIsOnTheQuadratic() {
    MaltCurve curve = curve(-0.025, 2e-4);
    assertEquals(10, curve.acidAt(5.57), 1e-10);
    assertEquals(0, curve.acidAt(5.8), 1e-12);
    assertEquals(-15, curve.acidAt(6.22), 1e-10);
    assertEquals(-0.025 + 0.0004 * 10, curve.slopeAt(10), 1e-15);
    assertEquals(-0.025 - 0.0004 * 15, curve.slopeAt(-15), 1e-15);
  }

  /** A third of 30 mEq/kg beyond the ends: straight from -20, pH 6.38, and from 30, pH 5.23. */
  @Test
  void aThirdOfTheCoveredWidthBeyondTheCurveIsStraight() {
    MaltCurve curve = curve(-0.025, 2e-4);
    assertEquals(30, curve.acidAt(5.23), 1e-9);
    assertEquals(40, curve.acidAt(5.23 - 0.13), 1e-9);
    assertEquals(-0.013, curve.slopeAt(30), 1e-15);
    assertEquals(-0.013, curve.slopeAt(40), 1e-15);
    assertEquals(-20, curve.acidAt(6.38), 1e-9);
    assertEquals(-30, curve.acidAt(6.38 + 0.33), 1e-9);
    assertEquals(-0.033, curve.slopeAt(-20), 1e-15);
    assertEquals(-0.033, curve.slopeAt(-30), 1e-15);
  }

  /** -0.025 + 0.001 a is -0.005 at 20, and a quarter of that, -0.00125, at 23.75. */
  @Test
  void aCurveThatFlattensWithAcidIsLeftWhereItIsAQuarterAsSteepAsAtItsEnd() {
    MaltCurve curve = curve(-0.025, 5e-4);
    assertEquals(-0.00125, curve.slopeAt(100), 1e-15);
    assertEquals(-0.025 + 0.001 * 23, curve.slopeAt(23), 1e-15);
    double there = 5.8 - 0.025 * 23.75 + 5e-4 * 23.75 * 23.75;
    assertEquals(33.75, curve.acidAt(there - 0.0125), 1e-8);
    assertEquals(-0.025 - 0.001 * 20, curve.slopeAt(-100), 1e-15, "steeper on the other side");
  }

  /** -0.025 - 0.002 a is -0.005 at -10, and a quarter of that at -11.875. */
  @Test
  void aCurveThatFlattensWithBaseIsLeftWhereItIsAQuarterAsSteepAsAtItsEnd() {
    MaltCurve curve = curve(-0.025, -1e-3);
    assertEquals(-0.00125, curve.slopeAt(-100), 1e-15);
    double there = 5.8 + 0.025 * 11.875 - 1e-3 * 11.875 * 11.875;
    assertEquals(-21.875, curve.acidAt(there + 0.0125), 1e-8);
    assertEquals(-0.025 - 0.002 * 30, curve.slopeAt(100), 1e-15, "steeper on the other side");
  }

  /** pH falls by the slope, and a² is a tangent beyond the ends: 30² + 2 x 30 x 10 at 40. */
  @Test
  void thePHMovesWithEachNumberOfTheCurve() {
    MaltCurve curve = curve(-0.025, 2e-4);
    assertArrayEquals(new double[] {1, 10, 100, 20 * 8 * -10 / 1000.0}, curve.slopes(10), 1e-12);
    assertArrayEquals(
        new double[] {1, 40, 900 + 600, 50 * 38 * 20 / 1000.0}, curve.slopes(40), 1e-9);
    assertArrayEquals(
        new double[] {1, -30, 400 + 400, -20 * -32 * -50 / 1000.0}, curve.slopes(-30), 1e-9);
    for (double measured : new double[] {-10, 2, 20}) {
      assertEquals(0, curve.slopes(measured)[3], 1e-15, "nothing is missed at the jar " + measured);
    }
  }

  @Test
  void aCurveCoversWhatWasMeasuredItsEndsIncluded() {
    MaltCurve curve = curve(-0.025, 2e-4);
    assertTrue(curve.covers(-10) && curve.covers(20) && curve.covers(5));
    assertFalse(curve.covers(-10.001));
    assertFalse(curve.covers(20.001));
    assertEquals(-10, curve.lowest());
    assertEquals(20, curve.highest());
  }

  /** -1 + 0.5 a is 0 at 2, and -1 - 0.5 a is 0 at -2. */
  @Test
  void aCurveThatDoesNotFallFromEndToEndIsRefused() {
    for (MaltCurveOf of :
        new MaltCurveOf[] {
          () -> curve(-1, 0.25, -1, 2), () -> curve(-1, -0.25, -2, 1), () -> curve(0.025, 0, -1, 1)
        }) {
      assertThrows(IllegalArgumentException.class, of::curve);
    }
    assertEquals(
        "curve of the malt: -1.0 pH per mEq/kg with curvature 0.25 is not possible; the pH has to"
            + " fall with acid from -1.0 to 2.0 mEq/kg",
        assertThrows(IllegalArgumentException.class, () -> curve(-1, 0.25, -1, 2)).getMessage());
    assertEquals(-0.05, curve(-1, 0.25, -1, 1.9).slopeAt(1.9), 1e-12);
  }

  private interface MaltCurveOf {
    MaltCurve curve();
  }

  /** One capacity at every pH: 45 mEq/kg for each pH below 5.8. */
  @Test
  void aStraightCurveHasOneCapacity() {
    MaltCurve curve = MaltCurve.straight(Traced.exact(5.8), Traced.exact(-1 / 45.0));
    assertEquals(45 * 0.8, curve.acidAt(5), 1e-9);
    assertEquals(-45 * 2.2, curve.acidAt(8), 1e-9);
    assertEquals(-1 / 45.0, curve.slopeAt(36), 1e-15);
    assertEquals(0, curve.curvature().value());
    assertTrue(curve.covers(5000) && curve.covers(-5000));
  }

  @Test
  void whatAQuadraticMissesIsZeroAndKnownToItsRow() {
    Traced missed = MaltCurve.missed("own malt");
    assertEquals(0, missed.value());
    assertEquals(0.004, missed.standardUncertainty().orElseThrow());
    assertEquals("what a quadratic misses of own malt", missed.sources().get(0).name());
  }

  @Test
  void aReadingTeachesAboutPHSlopeAndCurvatureButNotAboutTheMisfit() {
    MaltCurve curve = uncertain();
    assertEquals(Set.of(OF_PH, OF_SLOPE, OF_CURVATURE), curve.sources());
    Traced[] parameters = curve.parameters();
    assertEquals(4, parameters.length);
    assertSame(curve.pH(), parameters[0]);
    assertSame(curve.slope(), parameters[1]);
    assertSame(curve.curvature(), parameters[2]);
    assertEquals(OF_MISFIT, parameters[3].sources().get(0));
  }

  private static ToDoubleFunction<Source> deviations(double pH, double slope, double curvature) {
    return source ->
        source == OF_PH ? pH : source == OF_SLOPE ? slope : source == OF_CURVATURE ? curvature : 0;
  }

  /** The slope by its logarithm: off by 0.005 of -0.025, it is e^-0.2 times as steep. */
  @Test
  void aCurveOffItsEstimatesMovesEachNumberInItsOwnWay() {
    MaltCurve moved = uncertain().moved(deviations(-0.3, 0.005, 1e-5));
    assertEquals(5.5, moved.pH().value(), 1e-12);
    assertEquals(-0.025 * Math.exp(-0.2), moved.slope().value(), 1e-15);
    assertEquals(2.1e-4, moved.curvature().value(), 1e-17);
    assertEquals(-10, moved.lowest());
    assertEquals(20, moved.highest());
    assertEquals(OF_MISFIT, moved.parameters()[3].sources().get(0));
    MaltCurve there = uncertain().moved(deviations(0, 0, 0));
    assertEquals(5.8, there.pH().value());
    assertEquals(-0.025, there.slope().value());
    assertEquals(2e-4, there.curvature().value());
  }

  /** u is 0.2 of the slope: e^(-0.2 - 0.02) times, and the curvature with it. */
  @Test
  void aDrawScalesSlopeAndCurvatureAlikeSuchThatTheMeanOfTheSlopeStays() {
    MaltCurve drawn = uncertain().drawn(deviations(0.2, 0.005, 1e-5));
    assertEquals(6.0, drawn.pH().value(), 1e-12);
    assertEquals(-0.025 * Math.exp(-0.22), drawn.slope().value(), 1e-15);
    assertEquals(2e-4 * Math.exp(-0.22), drawn.curvature().value(), 1e-17);
    // The mean over a normal deviate, by the trapezium rule.
    double sum = 0;
    double weights = 0;
    for (double z = -8; z <= 8; z += 0.01) {
      double weight = Math.exp(-z * z / 2);
      sum += weight * uncertain().drawn(deviations(0, 0.005 * z, 0)).slope().value();
      weights += weight;
    }
    assertEquals(-0.025, sum / weights, 1e-10);
  }

  @Test
  void aCurveRestsOnOtherSourcesButKeepsItsMisfit() {
    MaltCurve resting = uncertain().resting(number -> Traced.exact(number.value()));
    assertEquals(Set.of(), resting.sources());
    assertEquals(5.8, resting.pH().value());
    assertEquals(-0.025, resting.slope().value());
    assertEquals(2e-4, resting.curvature().value());
    assertEquals(OF_MISFIT, resting.parameters()[3].sources().get(0));
  }

  /** 3 x 0.1 - 2 x 0.01. */
  @Test
  void aNumberMovesByTheSumOverItsSources() {
    Traced number =
        Traced.linear(
            1, new Traced[] {Traced.of(OF_PH), Traced.of(OF_SLOPE)}, new double[] {3, -2});
    assertEquals(0.28, MaltCurve.shift(number, deviations(0.1, 0.01, 7)), 1e-15);
  }
}
