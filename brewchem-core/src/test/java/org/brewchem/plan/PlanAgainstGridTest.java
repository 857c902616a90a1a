package org.brewchem.plan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.brewchem.plan.RandomProblems.Kind;
import org.brewchem.plan.Search.Point;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Random problems against a grid of 41 steps of three variables, and rounding against every
 * neighbour of up to ten doses. A tenth of the study runs here; all of it by the Maven profile
 * plan-study.
 */
class PlanAgainstGridTest {

  private static final int PROBLEMS = Integer.getInteger("plan.problems", 20);
  private static final int STEPS = 40;
  private static final double MOST = 2;
  private static final double SLACK = 1e-6;

  @ParameterizedTest
  @EnumSource(Kind.class)
  void beforeRoundingAPlanIsNeverWorseThanAGrid(Kind kind) {
    List<String> faults = new ArrayList<>();
    int found = 0;
    for (int n = 0; n < PROBLEMS; n++) {
      Problem problem = new RandomProblems(kind, 20261126L + n).three().problem();
      Optional<Point> best = new Search(problem).best().filter(Point::isKept);
      found += best.isPresent() ? 1 : 0;
      Optional<Point> again =
          new Search(new RandomProblems(kind, 20261126L + n).three().problem())
              .best()
              .filter(Point::isKept);
      assertEquals(best.isPresent(), again.isPresent());
      if (best.isPresent()) {
        // Not within a tolerance: the same bits.
        assertArrayEquals(best.get().x(), again.orElseThrow().x());
      }
      double least = best.map(point -> point.worth().weighted()).orElse(Double.POSITIVE_INFINITY);
      double grid = leastOnGrid(problem);
      if (grid < least - SLACK) {
        faults.add(n + ": " + least + " instead of " + grid);
      }
    }
    report(kind + " before rounding: " + found + " plans, worse than the grid " + faults.size());
    assertEquals(List.of(), faults);
    assertTrue(found > PROBLEMS / 2, found + " plans of " + PROBLEMS);
  }

  /** Prints a line for docs/plan-study.md, where the whole study is run. */
  private static void report(String line) {
    if (PROBLEMS >= 200) {
      System.out.println("plan study: " + PROBLEMS + " problems, " + line);
    }
  }

  private static double leastOnGrid(Problem problem) {
    Variables variables = problem.variables();
    List<Integer> free = new ArrayList<>();
    for (int i = 0; i < variables.count(); i++) {
      if (variables.lower(i) < variables.upper(i) && i != 0) {
        free.add(i);
      }
    }
    assertEquals(3, free.size());
    double least = Double.POSITIVE_INFINITY;
    double[] x = variables.plainStart();
    for (int a = 0; a <= STEPS; a++) {
      for (int b = 0; b <= STEPS; b++) {
        for (int c = 0; c <= STEPS; c++) {
          int[] at = {a, b, c};
          for (int k = 0; k < 3; k++) {
            int i = free.get(k);
            double most = Math.min(variables.upper(i), MOST);
            x[i] = variables.lower(i) + (most - variables.lower(i)) * at[k] / STEPS;
            if (variables.isWater(i)) {
              x[0] = 1 - x[i];
            }
          }
          Problem.Worth worth = problem.worth(x);
          if (worth.violation() == 0) {
            least = Math.min(least, worth.weighted());
          }
        }
      }
    }
    return least;
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void afterRoundingAPlanIsNeverWorseThanAnyNeighbour(Kind kind) {
    List<String> faults = new ArrayList<>();
    int rounded = 0;
    for (int n = 0; n < PROBLEMS; n++) {
      Problem problem = new RandomProblems(kind, 777_000L + n).ten().problem();
      Optional<Point> best = new Search(problem).best().filter(Point::isKept);
      if (best.isEmpty()) {
        continue;
      }
      Optional<Point> taken = new Rounding(problem).round(best.get());
      double least = leastOfNeighbours(problem, best.get().x());
      double own = taken.map(point -> point.worth().weighted()).orElse(Double.POSITIVE_INFINITY);
      if (least < own - SLACK) {
        faults.add(n + ": " + own + " instead of " + least);
      }
      if (taken.isPresent()) {
        rounded++;
        assertTrue(problem.worth(taken.get().x()).violation() <= Search.KEPT);
        assertTrue(problem.variables().keepsToTheShelf(taken.get().x()));
      }
    }
    report(
        kind + " after rounding: " + rounded + " plans, worse than a neighbour " + faults.size());
    assertEquals(List.of(), faults);
    assertTrue(rounded > PROBLEMS / 2, rounded + " plans of " + PROBLEMS);
  }

  private static double leastOfNeighbours(Problem problem, double[] exact) {
    Variables variables = problem.variables();
    List<Integer> moving = new ArrayList<>();
    for (int i = 0; i < exact.length; i++) {
      if (variables.step(i) > 0) {
        moving.add(i);
      }
    }
    double least = Double.POSITIVE_INFINITY;
    for (int mask = 0; mask < 1 << moving.size(); mask++) {
      double[] x = exact.clone();
      for (int k = 0; k < moving.size(); k++) {
        int i = moving.get(k);
        double count = x[i] / variables.step(i);
        double down = Math.floor(count + 1e-9);
        x[i] = variables.step(i) * ((mask >> k & 1) == 0 ? down : Math.ceil(count - 1e-9));
      }
      if (variables.keepsToTheShelf(x)) {
        Problem.Worth worth = problem.worth(x);
        if (worth.violation() == 0) {
          least = Math.min(least, worth.weighted());
        }
      }
    }
    return least;
  }
}
