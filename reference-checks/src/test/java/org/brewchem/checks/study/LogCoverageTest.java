package org.brewchem.checks.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.checks.study.LogCoverage.Cell;
import org.brewchem.checks.study.LogCoverage.Disturbance;
import org.brewchem.checks.study.LogCoverage.Means;
import org.brewchem.checks.study.SimulatedBeerTitration.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A small part of the study, with the bounds that were set before it ran: undisturbed logs cover
 * the truth in 93 % of cases, less two standard deviations of so few.
 */
class LogCoverageTest {

  private static final int COUNT = 60;

  /** 0.93 less twice the standard deviation of a share of 60. */
  private static final double LEAST = 0.93 - 0.066;

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.5, 1.0})
  void undisturbedLogsCoverTheTruth(double step) {
    Cell cell = LogCoverage.measure(COUNT, step, Disturbance.NONE, Means.NONE, 20261126);
    assertTrue(cell.coverage() >= LEAST, cell.toString());
  }

  /** Beers whose pH jumps before the end point, in steps that are usual by hand. */
  @ParameterizedTest
  @EnumSource(Kind.class)
  void soDoLogsOfBeersWithAJump(Kind kind) {
    for (double step : new double[] {0.25, 0.5, 1}) {
      Cell cell = LogCoverage.undisturbed(kind, COUNT, step, 20261128);
      assertTrue(cell.coverage() >= LEAST, step + " mL: " + cell);
    }
  }

  @Test
  void aLagIsCoveredWhereTheLogCanShowIt() {
    Cell unseen = LogCoverage.measure(COUNT, 0.5, Disturbance.LAG, Means.NONE, 20261126);
    Cell seen = LogCoverage.measure(COUNT, 0.5, Disturbance.LAG, Means.TIMES, 20261126);
    assertTrue(unseen.coverage() < 0.5, unseen.toString());
    assertTrue(seen.coverage() > unseen.coverage() + 0.3, seen.toString());
  }
}
