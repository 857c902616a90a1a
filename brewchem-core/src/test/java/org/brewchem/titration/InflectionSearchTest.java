package org.brewchem.titration;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.brewchem.titration.InflectionSearch.Found;
import org.junit.jupiter.api.Test;

class InflectionSearchTest {

  private static double[] at(double... volumes) {
    return volumes;
  }

  private static final double[] SEVEN = {0, 1, 2, 3, 4, 5, 6};

  private static Found found(double[] millilitres, double... pH) {
    return InflectionSearch.find(millilitres, pH, 3.5, 5.5, 0);
  }

  private static String refused(double noise, double[] millilitres, double... pH) {
    return assertThrows(
            IllegalStateException.class,
            () -> InflectionSearch.find(millilitres, pH, 3.5, 5.5, noise))
        .getMessage();
  }

  /** By hand: slopes of 1, 2 and 1.2 at 2.5, 3.5 and 4.5 mL are 2 + 0.1 x - 0.9 x2 there. */
  @Test
  void theTopOfTheParabolaThroughThreeSlopesIsTheInflection() {
    Found found = found(SEVEN, 8.2, 8, 7.5, 6.5, 4.5, 3.3, 3);
    assertArrayEquals(at(2.5, 3.5, 4.5), found.middle(), 1e-12);
    assertArrayEquals(at(1, 2, 1.2), found.slope(), 1e-12);
    assertEquals(3.5 + 0.1 / 1.8, found.millilitres(), 1e-12);
    assertEquals(0.5, found.halfWidth(), 1e-12);
    assertEquals(0, found.averagedOver());
    assertEquals(0, found.residual(), 1e-12);
    Found rising = found(SEVEN, 1, 1.2, 1.7, 2.7, 4.7, 5.9, 6.2);
    assertEquals(3.5 + 0.1 / 1.8, rising.millilitres(), 1e-12);
    assertArrayEquals(at(1, 2, 1.2), rising.slope(), 1e-12);
  }

  /** By hand: slopes of 1, 3 and 0.8 at 1, 2.5 and 5 mL. */
  @Test
  void unevenStepsHaveTheirOwnParabola() {
    Found found = found(at(0, 2, 3, 7), 9, 7, 4, 0.8);
    assertArrayEquals(at(1, 2.5, 5), found.middle(), 1e-12);
    assertArrayEquals(at(1, 3, 0.8), found.slope(), 1e-12);
    double left = 2 / 1.5;
    double right = -2.2 / 2.5;
    double bend = (right - left) / 4;
    assertEquals(2.5 - (left + bend * 1.5) / (2 * bend), found.millilitres(), 1e-12);
    assertEquals(0, found.residual(), 1e-12);
    assertEquals(0.5, found.halfWidth(), 1e-12, "half of its own step");
  }

  /** By hand: 1 + 4 x - 2 x2 falls by 2 at 1.5, over a width of 2 and of 3 at its middle. */
  @Test
  void besideTheTopTheParabolaHasASlope() {
    Found beside = new Found(at(0, 1, 2), at(1, 3, 1), 1.5, 0.5, 0);
    assertEquals(-2 * 2 / 3.0, beside.residual(), 1e-12);
    assertEquals(-2 * 2 / 3.0, new Found(at(5, 6, 7), at(1, 3, 1), 6.5, 0.5, 0).residual(), 1e-12);
    Found before = new Found(at(0, 1, 4), at(0, 3, 0), 0.5, 0.5, 0);
    // 4 x - x2 rises by 3 at 0.5.
    assertEquals(3 * 4 / 3.0, before.residual(), 1e-12);
    assertEquals(0, new Found(at(0, 1, 2), at(1, 3, 1), 1, 0.5, 0).residual(), 1e-12);
  }

  /** The step before is as steep, but ends above pH 5.5. */
  @Test
  void equalSlopesOnAllThreeStepsLeaveTheMiddle() {
    Found found = found(at(100, 101, 102, 103, 104, 105), 8.5, 8, 6.5, 5, 3.5, 3);
    assertArrayEquals(at(101.5, 102.5, 103.5), found.middle(), 1e-12);
    assertEquals(102.5, found.millilitres(), 1e-12);
    // The step behind may hold it as well.
    assertEquals(1, found.halfWidth(), 1e-12);
  }

  /** By hand: slopes of 0.5, 1.5, 1.5 at 0.5, 1.5, 2.5 mL have their top at 2 mL. */
  @Test
  void stepsOfOneSlopeLeaveThePlaceOpen() {
    assertEquals(
        "readings: noise of 0.0 pH leaves open by 1.5 mL where the curve is steepest, more than 3 %"
            + " of 2.000 mL",
        refused(0, at(0, 1, 2, 3, 4, 5), 7.5, 7, 5.5, 4, 2.5, 2));
  }

  /** A step counts if it lies between the two pH, or straddles one of them. */
  @Test
  void stepsBeyondThePHAskedForDoNotCount() {
    String none =
        "readings: none between pH 3.5 and 5.5 changes by much more than the noise, 0.0 pH; an"
            + " inflection needs that";
    assertEquals(none, refused(0, at(0, 1, 2, 3), 9, 8, 6.5, 5.51));
    assertEquals(none, refused(0, at(0, 1, 2, 3), 3.49, 3.2, 2.5, 2));
    assertEquals(1.5, found(at(0, 1, 2, 3), 8, 7.5, 5.5, 5).middle()[1], 1e-12);
    assertEquals(1.5, found(at(0, 1, 2, 3), 3.6, 3.5, 3, 2.9).middle()[1], 1e-12);
  }

  @Test
  void anInflectionNeedsFlatterStepsOnBothSides() {
    String sides = "readings: no step has flatter ones on both sides; an inflection needs them";
    assertEquals(sides, refused(0, at(0, 1, 2, 3), 6, 4.5, 4.2, 4));
    assertEquals(sides, refused(0, at(0, 1, 2, 3), 5, 4.8, 4.5, 3));
    assertEquals(
        "readings: the curve is steeper still at 0.5000 mL, beyond pH 3.5 to 5.5, or noise hides"
            + " where it is steepest",
        refused(0, at(0, 1, 2, 3), 9, 6, 4.5, 4.2));
    assertEquals(
        "readings: the curve is steeper still at 2.500 mL, beyond pH 3.5 to 5.5, or noise hides"
            + " where it is steepest",
        refused(0, at(0, 1, 2, 3), 5, 4.8, 3.4, 1));
  }

  /** By hand: -1, 4, 4, -1 sixths of the neighbours miss a zigzag of 0.1 by 16/6 of it. */
  @Test
  void theNoiseIsTheMedianDistanceFromTheCubicThroughFourNeighbours() {
    double[] volumes = new double[11];
    double[] zigzag = new double[11];
    for (int i = 0; i < 11; i++) {
      volumes[i] = 0.5 * i;
      zigzag[i] = 4 + 0.2 * i + 0.01 * i * i + (i % 2 == 0 ? 0.1 : -0.1);
    }
    double expected = 0.1 * 16 / 6 / Math.sqrt(70.0 / 36) / 0.6745;
    assertEquals(expected, InflectionSearch.noise(volumes, zigzag), 1e-12);
    // A jump at one place does not move a median.
    zigzag[10] += 5;
    assertEquals(expected, InflectionSearch.noise(volumes, zigzag), 1e-12);
    assertEquals(0, InflectionSearch.noise(at(0, 1, 2, 3), at(4, 5, 4, 5)));
    double[] five = at(0, 1, 2, 3, 4);
    assertEquals(
        0.6 / Math.sqrt(70.0 / 36) / 0.6745,
        InflectionSearch.noise(five, at(4, 5, 6.6, 7, 8)),
        1e-12);
    // Neighbours of one volume make no cubic.
    assertEquals(0, InflectionSearch.noise(at(0, 1, 2, 3, 3), at(4, 5, 7, 7, 7.1)));
  }

  /** Lagrange weights at 0 of neighbours at -2, -1, 2 and 4. */
  @Test
  void unevenNeighboursHaveTheirOwnWeights() {
    double[] volumes = at(-2, -1, 0, 2, 4);
    double[] weights = new double[4];
    double[] x = at(-2, -1, 2, 4);
    double squares = 1;
    for (int k = 0; k < 4; k++) {
      double weight = 1;
      for (int j = 0; j < 4; j++) {
        weight *= j == k ? 1 : -x[j] / (x[k] - x[j]);
      }
      weights[k] = weight;
      squares += weight * weight;
    }
    assertEquals(1, Arrays.stream(weights).sum(), 1e-12);
    // A cubic with a reading of 0.05 beside it.
    double[] pH = Arrays.stream(volumes).map(v -> 5 + v - 0.1 * v * v * v).toArray();
    pH[2] += 0.05;
    assertEquals(0.05 / Math.sqrt(squares) / 0.6745, InflectionSearch.noise(volumes, pH), 1e-12);
  }

  /** By hand: the distances are 0.6 and 0.4 of noise. */
  @Test
  void ofAnEvenNumberOfDistancesTheUpperIsTheMiddle() {
    double[] volumes = at(0, 1, 2, 3, 4, 5);
    double[] pH = at(0, 0, 0.6, 0, 0, 0);
    // At 2: 0.6; at 3: 4 sixths of 0.6.
    assertEquals(0.6 / Math.sqrt(70.0 / 36) / 0.6745, InflectionSearch.noise(volumes, pH), 1e-12);
  }

  private static double[] jump(double[] volumes, double noise, long seed) {
    Random random = new Random(seed);
    return Arrays.stream(volumes)
        .map(v -> 4.5 - 1.5 * Math.tanh(v - 15) + noise * random.nextGaussian())
        .toArray();
  }

  /** A tanh is steepest at 15 mL; the stretch is the range over a power of two. */
  @Test
  void denseNoisyReadingsAreAveragedOverAStretch() {
    double[] volumes = new double[2001];
    for (int i = 0; i < volumes.length; i++) {
      volumes[i] = 5 + 0.01 * i;
    }
    double[] pH = jump(volumes, 0.02, 11);
    Found found = InflectionSearch.find(volumes, pH, 3.5, 5.5, 1);
    assertEquals(15, found.millilitres(), 0.3);
    assertTrue(Math.abs(found.millilitres() - 15) <= found.halfWidth());
    double parts = 20 / found.averagedOver();
    assertEquals(Math.rint(parts), parts, 1e-9);
    assertEquals(1, Integer.bitCount((int) Math.rint(parts)));
    assertTrue(parts >= 16 && parts <= 4096, "parts " + parts);
    List<double[]> means = means(volumes, pH, found.averagedOver());
    int middle = -1;
    for (int i = 0; i + 1 < means.size(); i++) {
      if (Math.abs((means.get(i)[0] + means.get(i + 1)[0]) / 2 - found.middle()[1]) < 1e-9) {
        middle = i;
      }
    }
    for (int k = 0; k < 3; k++) {
      double[] one = means.get(middle + k - 1);
      double[] two = means.get(middle + k);
      assertEquals((one[0] + two[0]) / 2, found.middle()[k], 1e-9);
      assertEquals(Math.abs((two[1] - one[1]) / (two[0] - one[0])), found.slope()[k], 1e-9);
    }
    // Steps whose slopes differ by less than three of their standard deviations are not told apart.
    double noise = InflectionSearch.noise(volumes, pH);
    double top = found.millilitres();
    double reach = (means.get(middle + 1)[0] - means.get(middle)[0]) / 2;
    double steepest = found.slope()[1];
    double own = error(noise, means.get(middle), means.get(middle + 1));
    for (int i = 0; i + 1 < means.size(); i++) {
      double[] one = means.get(i);
      double[] two = means.get(i + 1);
      double slope = Math.abs((two[1] - one[1]) / (two[0] - one[0]));
      double error = error(noise, one, two);
      boolean counts =
          Math.max(one[1], two[1]) >= 3.5 && Math.min(one[1], two[1]) <= 5.5 && slope >= 8 * error;
      if (counts && slope >= steepest - 3 * Math.hypot(error, own)) {
        reach = Math.max(reach, Math.abs((one[0] + two[0]) / 2 - top));
      }
    }
    assertEquals(reach, found.halfWidth(), 1e-9);
  }

  private static double error(double noise, double[] one, double[] two) {
    return noise * Math.sqrt(1 / one[2] + 1 / two[2]) / (two[0] - one[0]);
  }

  /** Mean volume, mean pH and count of readings less than a stretch behind the first of each. */
  private static List<double[]> means(double[] volumes, double[] pH, double stretch) {
    List<double[]> means = new ArrayList<>();
    int start = 0;
    while (start < volumes.length) {
      int end = start;
      double volume = 0;
      double sum = 0;
      while (end < volumes.length && (end == start || volumes[end] - volumes[start] < stretch)) {
        volume += volumes[end];
        sum += pH[end];
        end++;
      }
      int count = end - start;
      means.add(new double[] {volume / count, sum / count, count});
      start = end;
    }
    return means;
  }

  /** No more noise than the reading is stated to have counts. */
  @Test
  void theNoiseIsAtMostThatOfTheReading() {
    double[] volumes = new double[41];
    for (int i = 0; i < volumes.length; i++) {
      volumes[i] = 5 + 0.5 * i;
    }
    double[] pH = jump(volumes, 0.002, 5);
    double shown = InflectionSearch.noise(volumes, pH);
    assertTrue(shown > 0.001, "shown " + shown);
    Found exact = InflectionSearch.find(volumes, pH, 3.5, 5.5, 0);
    assertEquals(0, exact.averagedOver());
    assertEquals(0.25, exact.halfWidth(), 1e-9);
    Found known = InflectionSearch.find(volumes, pH, 3.5, 5.5, shown);
    Found doubtful = InflectionSearch.find(volumes, pH, 3.5, 5.5, 1);
    assertEquals(known.millilitres(), doubtful.millilitres());
    assertEquals(known.halfWidth(), doubtful.halfWidth());
  }

  @Test
  void noiseThatLeavesThePlaceOpenIsRefused() {
    // Slopes of 1 on a long stretch, noise of some tenths of its steps.
    double[] volumes = new double[31];
    double[] pH = new double[31];
    for (int i = 0; i < 31; i++) {
      volumes[i] = i;
      double off = i - 15;
      pH[i] = 4.5 - 0.5 * off + 0.0004 * off * off * off + (i % 2 == 0 ? 0.01 : -0.01);
    }
    String text = refused(0.05, volumes, pH);
    assertTrue(
        text.matches(
            "readings: noise of 0\\.0\\d+ pH leaves open by [0-9.]+ mL where the curve is steepest,"
                + " more than 3 % of [0-9.]+ mL"),
        text);
  }

  /** By hand: a step is told from noise if it is eight times as large as that of two readings. */
  @Test
  void aStepCountsFromEightTimesItsNoiseOn() {
    double noise = 0.01 * 16 / 6 / Math.sqrt(70.0 / 36) / 0.6745;
    for (double share : new double[] {0.99, 1.01}) {
      double[] volumes = new double[40];
      double[] pH = new double[40];
      double step = share * 8 * noise * Math.sqrt(2);
      for (int i = 0; i < 40; i++) {
        volumes[i] = i;
        pH[i] = 4.8 - (i < 20 ? 0 : step - 0.02) + (i % 2 == 0 ? -0.01 : 0.01);
      }
      assertEquals(noise, InflectionSearch.noise(volumes, pH), 1e-12);
      assertEquals(step, pH[19] - pH[20], 1e-12);
      Found found = InflectionSearch.find(volumes, pH, 3.5, 5.5, 1);
      assertEquals(share > 1, found.averagedOver() == 0, "share " + share);
    }
  }
}
