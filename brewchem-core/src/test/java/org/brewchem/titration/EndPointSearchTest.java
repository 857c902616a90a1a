package org.brewchem.titration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.brewchem.titration.EndPointSearch.Place;
import org.junit.jupiter.api.Test;

class EndPointSearchTest {

  private static final double SQRT_3 = Math.sqrt(3);

  private static EndPointSearch search(double noise, double[] volumes, double... pH) {
    return new EndPointSearch(volumes, pH, true, noise);
  }

  private static double[] at(double... volumes) {
    return volumes;
  }

  private static void assertPlace(
      Place place,
      double millilitres,
      double slope,
      double halfWidth,
      double before,
      double after,
      int readings) {
    assertEquals(millilitres, place.millilitres(), 1e-12, "volume");
    assertEquals(slope, place.slope(), 1e-12, "slope");
    assertEquals(halfWidth, place.halfWidth(), 1e-12, "half width");
    assertEquals(before, place.before(), "before");
    assertEquals(after, place.after(), "after");
    assertEquals(readings, place.readings(), "readings");
    assertEquals(0, place.offset(), 1e-12, "offset");
    assertEquals(readings > 2, place.isFitted());
  }

  /**
   * By hand, of 4, 5, 8, 10 at 0, 1, 3, 4 mL: 1, 2/3 and 1/2 mL/pH, by parabolas 11/12 at 1 mL and
   * 17/30 at 3 mL. The volume bends by 1/6 and 1/15 mL/pH2, the pH by 1/3 pH/mL2 at either reading;
   * what a chord is off by is half of the most of the readings around, times the distances from its
   * ends, and twice as much where only one end is known.
   */
  @Test
  void aVolumeLiesOnTheCubicBetweenTwoReadings() {
    EndPointSearch search = search(0.01, at(0, 1, 3, 4), 4, 5, 8, 10);
    assertPlace(search.at(7), 73.0 / 30, 1.5, 1.0 / 6 * (2 * 1) / 2, 1, 3, 2);
    assertPlace(search.at(4.5), 49.0 / 96, 1, SQRT_3 / 3 * 49 * 47 / 96 / 96, 0, 1, 2);
    assertPlace(search.at(9), 211.0 / 60, 2, 2 * (1.0 / 6) * (1 * 1) / 2, 3, 4, 2);
    assertPlace(search.at(4), 0, 1, 0, 0, 1, 2);
    assertPlace(search.at(5), 1, 1, 0, 0, 1, 2);
    assertPlace(search.at(8), 3, 1.5, 0, 1, 3, 2);
  }

  /**
   * By hand: 0.1, 1 and 0.1 mL/pH over 1 pH each. The parabolas' 0.55 at either end are held down
   * to twice 0.1, so that the volume turns nowhere. The pH bends so much that it may be anywhere.
   */
  @Test
  void theCubicTurnsNowhere() {
    EndPointSearch search = search(0.01, at(0, 0.1, 1.1, 1.2), 5, 6, 7, 8);
    double cubic = 0.2 + 0.2 - 2;
    double square = 3 - 0.4 - 0.2;
    double volume = 0.1 + 0.25 * (0.2 + 0.25 * (square + 0.25 * cubic));
    assertPlace(search.at(6.25), volume, 1, 1.1 - volume, 0.1, 1.1, 2);
    double last = 0;
    for (double pH = 6; pH <= 7; pH += 1.0 / 64) {
      double next = search.at(pH).millilitres();
      assertTrue(next >= last, "at " + pH);
      last = next;
    }
  }

  /**
   * A neighbour that goes back or stays says nothing of the slope, and the volume is anywhere. By
   * hand: 1/2 mL/pH between the readings, and 5/6 by the parabola at the other of them.
   */
  @Test
  void aNeighbourThatGoesBackSaysNothing() {
    EndPointSearch back = search(0.01, at(0, 1, 2, 3), 6.1, 6, 8, 9);
    assertPlace(back.at(6.5), 1.21875, 2, 2 - 1.21875, 1, 2, 2);
    EndPointSearch still = search(0.01, at(0, 1, 2, 3), 5, 6, 8, 8);
    assertPlace(still.at(7.5), 1.78125, 2, 0.78125, 1, 2, 2);
  }

  @Test
  void theNextVolumeIsThatOfAnotherReading() {
    EndPointSearch search = search(0.01, at(0, 1, 1, 3), 4, 5, 5.1, 8);
    assertEquals(3, search.next(1, 1));
    assertEquals(0, search.next(1, -1));
    assertEquals(0, search.next(0, -1));
    assertEquals(3, search.next(3, 1));
  }

  @Test
  void linesAreContinuedBeyondTheReadings() {
    EndPointSearch search = search(0.01, at(0, 1, 3, 4), 4, 5, 8, 10);
    assertEquals(5, search.onLines(12), 1e-12);
    assertEquals(-1, search.onLines(3), 1e-12);
    assertEquals(7.0 / 3, search.onLines(7), 1e-12);
    assertEquals(4, search.onLines(10), 1e-12);
  }

  @Test
  void acidMovesDownAsAlkaliMovesUp() {
    EndPointSearch search =
        new EndPointSearch(at(0, 1, 3, 4), new double[] {10, 9, 6, 4}, false, 0.01);
    Place place = search.at(7);
    assertEquals(73.0 / 30, place.millilitres(), 1e-12);
    assertEquals(-1.5, place.slope(), 1e-12);
    assertEquals(1.0 / 6, place.halfWidth(), 1e-12);
    assertTrue(search.startsBeyond(10.5));
    assertFalse(search.startsBeyond(10));
    assertFalse(search.startsBeyond(9.5));
    assertTrue(search.reaches(4));
    assertFalse(search.reaches(3.9));
  }

  @Test
  void aReadingAtThePHReachesItAndIsNotBeyond() {
    EndPointSearch search = search(0.01, at(0, 1), 4, 8);
    assertTrue(search.startsBeyond(3.9));
    assertFalse(search.startsBeyond(4));
    assertTrue(search.reaches(8));
    assertFalse(search.reaches(8.1));
  }

  /** Of the curve between two readings that are all there is nothing is known but its ends. */
  @Test
  void betweenTwoReadingsAloneTheVolumeIsAnywhere() {
    assertPlace(search(0.01, at(0, 2), 4, 8).at(5), 0.5, 2, 1.5, 0, 2, 2);
    assertPlace(search(0.01, at(0, 2), 4, 8).at(7.5), 1.75, 2, 1.75, 0, 2, 2);
    // But for one of them that stands at the pH.
    assertPlace(search(0.01, at(0, 2), 4, 8).at(4), 0, 2, 0, 0, 2, 2);
    assertPlace(search(0.01, at(0, 2), 4, 8).at(8), 2, 2, 0, 0, 2, 2);
  }

  /** By hand: readings of one volume that differ by 0.2 are half of that off, over a slope of 2. */
  @Test
  void readingsOfOneVolumeCountByTheirMeanAndTheirSpread() {
    double width = SQRT_3 * 0.1 / 2;
    assertPlace(
        search(0.01, at(0, 1, 1, 2, 3), 2.2, 4.1, 4.3, 6.2, 8.2).at(5.2), 1.5, 2, width, 1, 2, 2);
    assertPlace(
        search(0.01, at(0, 1, 2, 2, 3), 2.2, 4.2, 6.3, 6.1, 8.2).at(5.2), 1.5, 2, width, 1, 2, 2);
    assertPlace(
        search(0.01, at(0, 1, 1, 1, 2, 3), 2.2, 4.1, 4.3, 4.2, 6.2, 8.2).at(5.2),
        1.5,
        2,
        width,
        1,
        2,
        2);
  }

  /** Two equal readings have no slope: what the noise of one could hide stands for it. */
  @Test
  void aFlatPairIsKnownToAllOfTheReadingsOnly() {
    assertPlace(search(0.01, at(1, 3, 4), 5, 5, 6).at(5), 1, 0.005, 3, 1, 3, 2);
    assertPlace(search(0, at(1, 3, 4), 5, 5, 6).at(5), 1, 5e-7, 3, 1, 3, 2);
    Place falling = new EndPointSearch(at(1, 3, 4), new double[] {5, 5, 4}, false, 0.01).at(5);
    assertEquals(-0.005, falling.slope(), 1e-15);
  }

  private static double[] grid(int count, double step) {
    return IntStream.range(0, count).mapToDouble(i -> i * step).toArray();
  }

  private static double[] along(double[] volumes, DoubleUnaryOperator curve) {
    return IntStream.range(0, volumes.length)
        .mapToDouble(i -> curve.applyAsDouble(volumes[i]))
        .toArray();
  }

  /**
   * By hand: the root of 6 + x + x2/2 at 6.3 is sqrt(1.6) - 1, its slope sqrt(1.6). Readings are
   * taken in until the means of a quarter of them at either end differ by 25 times the noise: from
   * 0.6 to 1.9 mL they are 3 readings each, 5.748 and 7.123.
   */
  @Test
  void whereReadingsAreDenseAParabolaGoesThroughThem() {
    double[] volumes = grid(21, 0.1);
    double[] pH = along(volumes, v -> 6 + (v - 1) + (v - 1) * (v - 1) / 2);
    Place place = new EndPointSearch(volumes, pH, true, 0.05).at(6.3);
    double root = Math.sqrt(1.6);
    assertEquals(root, place.millilitres(), 1e-9);
    assertEquals(root, place.slope(), 1e-9);
    assertEquals(0, place.halfWidth(), 1e-9);
    assertEquals(0.6, place.before(), 1e-12);
    assertEquals(1.9, place.after(), 1e-12);
    assertEquals(14, place.readings());
    assertEquals(0, place.offset(), 1e-9);
    // Ten times denser, a window grows by an eighth of itself at either end.
    volumes = grid(201, 0.01);
    pH = along(volumes, v -> 6 + (v - 1) + (v - 1) * (v - 1) / 2);
    place = new EndPointSearch(volumes, pH, true, 0.05).at(6.3);
    assertEquals(root, place.millilitres(), 1e-9);
    int readings = place.readings();
    assertEquals(readings, (int) Math.round((place.after() - place.before()) / 0.01) + 1);
    assertTrue(place.after() - place.before() < 1.6, "no wider than it must");
    // A step of eight times the noise or more is a line.
    assertEquals(
        2,
        new EndPointSearch(grid(21, 0.1), along(grid(21, 0.1), v -> v), true, 0.0124)
            .at(1.05)
            .readings());
    assertTrue(
        new EndPointSearch(grid(21, 0.1), along(grid(21, 0.1), v -> v), true, 0.0126)
            .at(1.05)
            .isFitted());
    // So are fewer than seven readings.
    assertEquals(
        2,
        new EndPointSearch(grid(6, 0.1), along(grid(6, 0.1), v -> v), true, 1).at(0.25).readings());
    assertEquals(
        7,
        new EndPointSearch(grid(7, 0.1), along(grid(7, 0.1), v -> v), true, 1).at(0.25).readings());
  }

  /** Another way: the normal equations of the parabola in millilitres, not scaled. */
  @Test
  void theScatterAroundAParabolaIsTheWidthOfItsRoot() {
    double[] volumes = grid(13, 0.1);
    for (int sign : new int[] {1, -1}) {
      double[] pH = new double[13];
      for (int i = 0; i < 13; i++) {
        double x = volumes[i] - 0.6;
        pH[i] = 7 + sign * (1.5 * x + 0.8 * x * x) + (i * i % 5 - 2) * 0.01;
      }
      double target = 7.1;
      Place place = new EndPointSearch(volumes, pH, sign > 0, 0.2).at(target);
      assertEquals(13, place.readings());
      double[][] rows = new double[13][];
      for (int i = 0; i < 13; i++) {
        rows[i] = new double[] {1, volumes[i], volumes[i] * volumes[i]};
      }
      RealMatrix x = new Array2DRowRealMatrix(rows);
      RealMatrix inverse = new LUDecomposition(x.transpose().multiply(x)).getSolver().getInverse();
      RealVector y = new ArrayRealVector(pH);
      RealVector b = inverse.multiply(x.transpose()).operate(y);
      double scatter = Math.pow(y.subtract(x.operate(b)).getNorm(), 2) / 10;
      double v = place.millilitres();
      RealVector here = new ArrayRealVector(new double[] {1, v, v * v});
      double slope = b.getEntry(1) + 2 * b.getEntry(2) * v;
      double u = Math.sqrt(scatter * here.dotProduct(inverse.operate(here))) / Math.abs(slope);
      assertEquals(target, b.dotProduct(here), 1e-9);
      assertEquals(slope, place.slope(), 1e-9);
      assertEquals(SQRT_3 * u, place.halfWidth(), 1e-9);
      assertEquals(0, place.offset(), 1e-9);
    }
  }

  /** Three readings that cross the pH twice make no parabola: the middle, and the edges. */
  @Test
  void aFewReadingsThatGoBackLeaveTheirMiddle() {
    assertPlace(search(0.01, at(0, 1, 2), 5, 7, 6.5).at(6.8), 1.5, 0.75, 1.5, 0, 2, 3);
    assertPlace(search(0.01, at(0, 1, 2), 5, 7, 5).at(6), 1.5, 0.01, 1.5, 0, 2, 3);
    assertPlace(search(0, at(0, 1, 3), 5, 7, 5).at(6), 2, 1e-6 / 1.5, 2, 0, 3, 3);
  }

  /** A parabola that falls where it should rise, or ends before the pH, is none either. */
  @Test
  void aCurveThatGoesTheWrongWayLeavesItsMiddle() {
    assertPlace(search(0.01, at(0, 1, 2, 3, 4), 5, 8, 5, 4, 3).at(6), 2.5, 0.005, 2.5, 0, 4, 5);
    assertPlace(search(0, at(0, 1, 2, 3, 4), 5, 8, 5, 4, 3).at(6), 2.5, 5e-7, 2.5, 0, 4, 5);
    Place mirrored =
        new EndPointSearch(at(0, 1, 2, 3, 4), new double[] {9, 6, 9, 10, 11}, false, 0.01).at(8);
    assertEquals(-0.005, mirrored.slope(), 1e-12);
    assertEquals(2.5, mirrored.halfWidth(), 1e-12);
  }

  /**
   * By hand: -1, 0, 0, 1 at -1, -1/3, 1/3, 1 have the slope 0.9 and squares of 0.2 about it; the
   * parabola knows its middle by sqrt(0.2 x 164 / 256), over 0.9 and 1.5 mL.
   */
  @Test
  void twoReadingsAtThePHHaveItsPlaceBetweenThem() {
    double u = Math.sqrt(0.2 * 164 / 256) / 0.9 * 1.5;
    assertPlace(search(0.01, at(0, 1, 2, 3), 4, 5, 5, 6).at(5), 1.5, 0.6, SQRT_3 * u, 0, 3, 4);
    assertPlace(search(0.01, at(7, 8, 9, 10), 4, 5, 5, 6).at(5), 8.5, 0.6, SQRT_3 * u, 7, 10, 4);
  }

  @Test
  void volumesCountFromTheirOwnBeginning() {
    assertPlace(search(0.01, at(1, 3), 4, 8).at(5), 1.5, 2, 1.5, 1, 3, 2);
    assertPlace(search(0.01, at(1, 3), 4, 8).at(7.5), 2.75, 2, 1.75, 1, 3, 2);
    assertPlace(search(0.01, at(10, 12, 14), 5, 7, 6.5).at(6.8), 13, 0.375, 3, 10, 14, 3);
    assertPlace(
        search(0.01, at(10, 11, 12, 13, 14), 5, 8, 5, 4, 3).at(6), 12.5, 0.005, 2.5, 10, 14, 5);
  }

  /** By hand: a step of eight times the noise is a line; a shorter one is not. */
  @Test
  void aStepOfEightTimesTheNoiseIsALine() {
    double[] volumes = grid(7, 1);
    assertEquals(2, new EndPointSearch(volumes, volumes, true, 0.125).at(2.5).readings());
    assertEquals(7, new EndPointSearch(volumes, volumes, true, 0.126).at(2.5).readings());
  }

  /** Two readings on either side of the crossings, then one more a side until they are seven. */
  @Test
  void aParabolaGoesThroughSevenReadingsOrMore() {
    double[] volumes = grid(20, 1);
    double[] swapped = grid(20, 1);
    swapped[7] = 8;
    swapped[8] = 7;
    Place place = new EndPointSearch(volumes, swapped, true, 0).at(7.5);
    assertEquals(8, place.readings());
    assertEquals(4, place.before());
    assertEquals(11, place.after());
    double[] three = grid(20, 1);
    three[7] = 8;
    three[8] = 9;
    three[9] = 7;
    place = new EndPointSearch(volumes, three, true, 0).at(7.5);
    assertEquals(7, place.readings());
    assertEquals(5, place.before());
    assertEquals(11, place.after());
  }
}
