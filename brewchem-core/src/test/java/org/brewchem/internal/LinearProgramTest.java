package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.brewchem.internal.LinearProgram.End;
import org.brewchem.internal.LinearProgram.Found;
import org.junit.jupiter.api.Test;

class LinearProgramTest {

  private static LinearProgram of(int variables) {
    double[] upper = new double[variables];
    Arrays.fill(upper, Double.POSITIVE_INFINITY);
    double[] scale = new double[variables];
    Arrays.fill(scale, 1);
    return new LinearProgram(new double[variables], upper, scale);
  }

  @Test
  void theProgramOnWhichTheUsualPivotRuleGoesRoundInCirclesIsSolved() {
    // E. M. L. Beale, Naval Research Logistics Quarterly 2 (1955) 269, from memory: -1/20 at
    // (1/25, 0, 1, 0).
    LinearProgram beale = of(4);
    beale.atMost(new double[] {0.25, -60, -0.04, 9}, 0);
    beale.atMost(new double[] {0.5, -90, -0.02, 3}, 0);
    beale.atMost(new double[] {0, 0, 1, 0}, 1);
    Found found = beale.minimise(new double[] {-0.75, 150, -0.02, 6});
    assertEquals(End.OPTIMAL, found.end());
    assertEquals(-0.05, found.value(), 1e-12);
    assertArrayEquals(new double[] {0.04, 0, 1, 0}, found.point(), 1e-12);
  }

  @Test
  void aSmallLimitIsNotTakenForNone() {
    LinearProgram program = of(1);
    program.atMost(new double[] {1}, 1e-7);
    program.atLeast(new double[] {1}, 9e-7);
    assertEquals(End.INFEASIBLE, program.minimise(new double[] {1}).end());
  }

  @Test
  void aSmallCoefficientOfTheObjectiveCounts() {
    LinearProgram program = of(2);
    program.atMost(new double[] {1, 1}, 1);
    assertEquals(-1e-7, program.minimise(new double[] {-1e-7, 0}).value(), 1e-20);
  }

  @Test
  void boundsMayBeNegativeEqualOrMissing() {
    LinearProgram program =
        new LinearProgram(
            new double[] {-3, 2, Double.NEGATIVE_INFINITY},
            new double[] {5, 2, Double.POSITIVE_INFINITY},
            new double[] {1, 1, 10});
    program.atLeast(new double[] {1, 1, 1}, -20);
    program.equal(new double[] {1, 0, 0}, -1.5);
    Found found = program.minimise(new double[] {0, 7, 1});
    assertArrayEquals(new double[] {-1.5, 2, -20.5}, found.point(), 1e-12);
    assertEquals(-6.5, found.value(), 1e-12);
  }

  @Test
  void whatFallsWithoutEndIsSaid() {
    assertEquals(End.UNBOUNDED, of(1).minimise(new double[] {-1}).end());
  }

  @Test
  void aRowOfVariablesThatCannotMoveIsJudged() {
    LinearProgram program =
        new LinearProgram(new double[] {1, 0}, new double[] {1, 9}, new double[] {1, 1});
    program.atMost(new double[] {1, 0}, 0.5);
    assertEquals(End.INFEASIBLE, program.minimise(new double[] {0, 1}).end());
  }

  /** A row of what cannot move holds if it is off by 1e-8 of its largest coefficient at most. */
  @Test
  void aRowOfVariablesThatCannotMoveMayBeOffByItsTolerance() {
    for (double off : new double[] {1e-8, Math.nextUp(1e-8)}) {
      End expected = off == 1e-8 ? End.OPTIMAL : End.INFEASIBLE;
      LinearProgram least = new LinearProgram(new double[1], new double[1], new double[] {1});
      least.atLeast(new double[] {1}, off);
      assertEquals(expected, least.minimise(new double[] {1}).end(), "at least " + off);
      LinearProgram most = new LinearProgram(new double[1], new double[1], new double[] {1});
      most.atMost(new double[] {1}, -off);
      assertEquals(expected, most.minimise(new double[] {1}).end(), "at most " + -off);
      for (double sign : new double[] {1, -1}) {
        LinearProgram equal = new LinearProgram(new double[1], new double[1], new double[] {1});
        equal.equal(new double[] {1}, sign * off);
        assertEquals(expected, equal.minimise(new double[] {1}).end(), "equal " + sign * off);
      }
    }
  }

  /** A variable with 1e-12 of the largest coefficient of a row does not count in it. */
  @Test
  void whatIsNothingBesideWhatCannotMoveDoesNotCount() {
    for (double share : new double[] {1e-12, 1e-11}) {
      LinearProgram program =
          new LinearProgram(
              new double[2], new double[] {0, Double.POSITIVE_INFINITY}, new double[] {1, 1});
      program.atLeast(new double[] {1, share}, 1);
      Found found = program.minimise(new double[] {0, 1});
      assertEquals(share == 1e-12 ? End.INFEASIBLE : End.OPTIMAL, found.end(), "share " + share);
    }
  }

  /** Limits of some ten thousand hold within their rounding, about 1e-12. */
  @Test
  void aLargeLimitIsHeldWithinItsRounding() {
    for (int seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      LinearProgram program = of(4);
      double[] sums = new double[3];
      double[] point = new double[4];
      Arrays.setAll(point, j -> 1e4 * random.nextDouble());
      for (int r = 0; r < 3; r++) {
        double[] row = new double[4];
        Arrays.setAll(row, j -> 0.1 + random.nextDouble());
        for (int j = 0; j < 4; j++) {
          sums[r] += row[j] * point[j];
        }
        program.equal(row, sums[r]);
      }
      Found found = program.minimise(new double[] {1, 1, 1, 1});
      assertEquals(End.OPTIMAL, found.end(), "seed " + seed);
    }
  }

  @Test
  void upperBoundsHoldWhetherOrNotTheyAreReached() {
    LinearProgram program =
        new LinearProgram(new double[3], new double[] {1, 2, 9}, new double[] {1, 1, 1});
    program.atMost(new double[] {1, 1, 1}, 4);
    Found found = program.minimise(new double[] {-3, -2, -1});
    assertArrayEquals(new double[] {1, 2, 1}, found.point(), 1e-12);
    assertEquals(-8, found.value(), 1e-12);
    LinearProgram free =
        new LinearProgram(
            new double[] {Double.NEGATIVE_INFINITY}, new double[] {-2}, new double[] {1});
    assertEquals(2, free.minimise(new double[] {-1}).value(), 1e-12);
  }

  @Test
  void whereNothingIsWantedAnyPointThatHoldsWillDo() {
    LinearProgram program = of(2);
    program.atLeast(new double[] {1, 2}, 3);
    Found found = program.minimise(new double[2]);
    assertEquals(End.OPTIMAL, found.end());
    assertEquals(0, found.value());
    assertTrue(found.point()[0] + 2 * found.point()[1] >= 3 - 1e-12);
  }

  @Test
  void anObjectiveSmallerThanWhatTheSimplexTakesForZeroCounts() {
    LinearProgram program = of(2);
    program.atLeast(new double[] {1, 1}, 2);
    Found found = program.minimise(new double[] {2e-12, 1e-12});
    assertArrayEquals(new double[] {0, 2}, found.point(), 1e-12);
    assertEquals(2e-12, found.value(), 1e-24);
  }

  /** 0.1 + 0.2 is more than 0.3 by rounding; a thousandth more is no rounding. */
  @Test
  void aRowOfVariablesThatCannotMoveHoldsButForRounding() {
    double third = 0.1 + 0.2;
    LinearProgram program =
        new LinearProgram(new double[] {third, 0}, new double[] {third, 9}, new double[] {1, 1});
    program.atMost(new double[] {1e6, 0}, 3e5);
    assertEquals(End.OPTIMAL, program.minimise(new double[] {0, 1}).end());
    program.atMost(new double[] {1e-6, 0}, 2.999e-7);
    assertEquals(End.INFEASIBLE, program.minimise(new double[] {0, 1}).end());
  }

  /** By hand: 1e-6 and 1e-7 x are at least 1.5e-6 from x = 5. */
  @Test
  void smallCoefficientsBesideAVariableThatCannotMoveCount() {
    LinearProgram program =
        new LinearProgram(new double[] {1, 0}, new double[] {1, 9}, new double[] {1, 1});
    program.atLeast(new double[] {1e-6, 1e-7}, 1.5e-6);
    assertArrayEquals(new double[] {1, 5}, program.minimise(new double[] {0, 1}).point(), 1e-9);
  }

  @Test
  void withoutAnythingThatCanMoveTheBoundsAreThePoint() {
    LinearProgram program =
        new LinearProgram(new double[] {2, -1}, new double[] {2, -1}, new double[] {1, 1});
    program.equal(new double[] {1, 1}, 1);
    Found found = program.minimise(new double[] {3, 1});
    assertArrayEquals(new double[] {2, -1}, found.point());
    assertEquals(5, found.value());
    LinearProgram crossed = new LinearProgram(new double[] {2}, new double[] {1}, new double[] {1});
    assertEquals(End.INFEASIBLE, crossed.minimise(new double[] {1}).end());
  }

  /** By hand: half of the sum and of the difference; each row holds to its own rounding. */
  @Test
  void rowsOfMillionsNeedNotHoldToTheLastDigit() {
    LinearProgram program = of(2);
    program.equal(new double[] {1, 1}, 1e6 + 0.1);
    program.equal(new double[] {0.3, -0.7}, 0.9);
    Found found = program.minimise(new double[] {1, 0});
    assertEquals(End.OPTIMAL, found.end());
    assertEquals(700_000.97, found.point()[0], 1e-8);
    assertEquals(299_999.13, found.point()[1], 1e-8);
  }

  @Test
  void noPointHasANegativeZero() {
    LinearProgram program =
        new LinearProgram(
            new double[] {-1, Double.NEGATIVE_INFINITY},
            new double[] {-0.0, -0.0},
            new double[] {1, 1});
    assertArrayEquals(new double[2], program.minimise(new double[] {-1, -1}).point());
  }

  /** A row with what it asks for: -1 at most, 0 equal, 1 at least. */
  private record Row(double[] coefficients, int relation, double limit) {
    double excess(double[] point) {
      double value = -limit;
      for (int j = 0; j < point.length; j++) {
        value += coefficients[j] * point[j];
      }
      return value;
    }

    double size() {
      return Arrays.stream(coefficients).map(Math::abs).max().orElseThrow();
    }

    boolean holds(double[] point) {
      double excess = excess(point) / size();
      double rounding = 1e-9 * (1 + Math.abs(limit) / size());
      return relation == 0 ? Math.abs(excess) < rounding : relation * excess > -rounding;
    }
  }

  private static Row unit(int variables, int j, int relation, double limit) {
    double[] coefficients = new double[variables];
    coefficients[j] = 1;
    return new Row(coefficients, relation, limit);
  }

  /** The least value at the points where as many rows meet as there are variables; NaN if none. */
  private static double leastCorner(List<Row> rows, double[] objective) {
    int n = objective.length;
    double least = Double.NaN;
    for (int chosen = 0; chosen < 1 << rows.size(); chosen++) {
      if (Integer.bitCount(chosen) == n) {
        double[][] meeting = new double[n][];
        double[] limits = new double[n];
        int at = 0;
        for (int r = 0; r < rows.size(); r++) {
          if ((chosen >> r & 1) == 1) {
            double size = rows.get(r).size();
            meeting[at] = Arrays.stream(rows.get(r).coefficients()).map(c -> c / size).toArray();
            limits[at++] = rows.get(r).limit() / size;
          }
        }
        double[] corner;
        try {
          corner =
              new LUDecomposition(new Array2DRowRealMatrix(meeting, false))
                  .getSolver()
                  .solve(new ArrayRealVector(limits, false))
                  .toArray();
        } catch (SingularMatrixException parallel) {
          continue;
        }
        if (rows.stream().allMatch(row -> row.holds(corner))) {
          double value = new Row(objective, 0, 0).excess(corner);
          least = least <= value ? least : value;
        }
      }
    }
    return least;
  }

  /**
   * Against all corners: bounds of any place, some of them rows, variables that cannot move,
   * scales, rows in units of their own, and numbers from one to millions.
   */
  @Property(tries = 1000)
  void theLeastValueIsThatOfTheBestCorner(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 3) int n) {
    Random random = new Random(seed);
    double size = random.nextBoolean() ? 1 : 1e6;
    double[] lower = new double[n];
    double[] upper = new double[n];
    double[] scale = new double[n];
    double[] objective = new double[n];
    List<Row> rows = new ArrayList<>();
    List<Row> corners = new ArrayList<>();
    for (int j = 0; j < n; j++) {
      lower[j] = size * random.nextGaussian();
      upper[j] = lower[j] + (random.nextInt(5) == 0 ? 0 : size * random.nextDouble());
      scale[j] = size * Math.pow(10, 2 * random.nextDouble() - 1);
      objective[j] = random.nextGaussian();
      corners.add(unit(n, j, 1, lower[j]));
      corners.add(unit(n, j, -1, upper[j]));
      if (random.nextInt(4) == 0) {
        rows.add(unit(n, j, 1, lower[j]));
        lower[j] = Double.NEGATIVE_INFINITY;
      }
      if (random.nextInt(4) == 0) {
        rows.add(unit(n, j, -1, upper[j]));
        upper[j] = Double.POSITIVE_INFINITY;
      }
    }
    for (int r = random.nextInt(4); r > 0; r--) {
      double unit = Math.pow(10, 12 * random.nextDouble() - 6);
      double[] coefficients = new double[n];
      double limit = 0.2 * size * unit * random.nextGaussian();
      for (int j = 0; j < n; j++) {
        coefficients[j] = unit * random.nextGaussian();
        double middle = 0.5 * (corners.get(2 * j).limit() + corners.get(2 * j + 1).limit());
        limit += coefficients[j] * middle;
      }
      Row row =
          new Row(coefficients, random.nextInt(5) == 0 ? 0 : random.nextBoolean() ? 1 : -1, limit);
      rows.add(row);
      corners.add(row);
    }
    LinearProgram program = new LinearProgram(lower, upper, scale);
    for (Row row : rows) {
      switch (row.relation()) {
        case 1 -> program.atLeast(row.coefficients(), row.limit());
        case -1 -> program.atMost(row.coefficients(), row.limit());
        default -> program.equal(row.coefficients(), row.limit());
      }
    }
    Found found = program.minimise(objective);
    double least = leastCorner(corners, objective);
    if (Double.isNaN(least)) {
      assertEquals(End.INFEASIBLE, found.end());
      return;
    }
    assertEquals(End.OPTIMAL, found.end());
    assertEquals(least, found.value(), 1e-7 * size);
    assertEquals(found.value(), new Row(objective, 0, 0).excess(found.point()), 1e-12 * size);
    for (int j = 0; j < n; j++) {
      assertTrue(found.point()[j] >= lower[j] && found.point()[j] <= upper[j], "bounds");
    }
    for (Row row : corners) {
      double excess = row.relation() * row.excess(found.point()) / row.size();
      assertTrue(excess > -1e-7 * size, "row");
    }
  }
}
