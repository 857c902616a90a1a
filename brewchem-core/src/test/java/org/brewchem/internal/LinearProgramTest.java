package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
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
}
