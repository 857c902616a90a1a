package org.brewchem.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.brewchem.plan.RandomProblems.Kind;
import org.brewchem.plan.Search.Point;
import org.junit.jupiter.api.Test;

/**
 * What the search and the rounding find for a few of the random problems of the study: our own
 * numbers, kept so that a plan that gets worse is seen. That no grid and no neighbour is better is
 * for the study itself.
 */
class SearchTest {

  private static final long SEED = 4_100;

  /**
   * Solves problems of one kind, one for each line.
   *
   * @param lines weighted sum, violation and cost before rounding, then weighted sum and cost after
   */
  private static void assertFound(Kind kind, boolean ten, String... lines) {
    for (int n = 0; n < lines.length; n++) {
      String which = kind + (ten ? " of ten doses, " : " of three variables, ") + n;
      double[] expected =
          Arrays.stream(lines[n].split(" ")).mapToDouble(Double::parseDouble).toArray();
      RandomProblems random = new RandomProblems(kind, SEED + n);
      Problem problem = (ten ? random.ten() : random.three()).problem();
      Point exact = new Search(problem).best().orElseThrow();
      assertEquals(expected[0], exact.worth().weighted(), 2e-5, which);
      assertEquals(expected[1], exact.worth().violation(), 2e-5, which);
      assertCost(expected[2], problem, exact, which);
      assertEquals(expected.length > 3, exact.isKept(), which);
      if (exact.isKept()) {
        Rounding rounding = new Rounding(problem);
        assertTrue(rounding.isNeeded(), which);
        Point rounded = rounding.round(exact).orElseThrow();
        assertTrue(rounded.isKept(), which);
        assertEquals(expected[3], rounded.worth().weighted(), 2e-5, which);
        assertCost(expected[4], problem, rounded, which);
        assertSteps(problem, rounded, which);
      }
    }
  }

  private static void assertCost(double expected, Problem problem, Point point, String which) {
    assertEquals(expected, problem.variables().cost(point.x()), 0.006 + 1e-5 * expected, which);
  }

  private static void assertSteps(Problem problem, Point point, String which) {
    for (int i = 0; i < point.x().length; i++) {
      double step = problem.variables().step(i);
      if (step > 0) {
        double count = point.x()[i] / step;
        assertEquals(Math.rint(count), count, 1e-6, which);
      }
    }
  }

  @Test
  void limitsOnIonsAreMetAtTheLeastSumAndCost() {
    assertFound(
        Kind.LINEAR,
        false,
        "0.00000 0.85754 2.41",
        "5.63711 0.00000 166.17 5.64008 166.16",
        "0.68779 0.00000 1.20 0.69545 1.21",
        "0.00000 0.00000 2.76 0.00000 2.84",
        "0.94039 0.00000 0.93 1.23522 0.89",
        "0.00000 0.49395 5.45");
    assertFound(
        Kind.LINEAR,
        true,
        "0.00000 0.00000 14.50 0.00000 14.73",
        "0.89645 0.00000 96.38 0.89646 96.38",
        "0.00000 0.00000 1.04 0.00699 1.05",
        "0.00000 0.00000 10.04 0.07029 10.15",
        "0.00000 0.00000 1.35 0.00000 1.47",
        "0.00000 0.00000 8.05 0.00000 8.06");
  }

  @Test
  void limitsOnRatiosAreMetAtTheLeastSumAndCost() {
    assertFound(
        Kind.RATIO,
        false,
        "0.50704 0.00000 5.84 0.58129 5.95",
        "0.00000 0.06795 165.71",
        "0.00000 0.00000 1.10 0.00000 1.11",
        "4.65887 0.00000 6.53 5.09541 6.44",
        "0.00000 0.00000 0.27 0.00000 0.31",
        "0.03018 0.00000 10.11 0.03598 10.11");
    assertFound(
        Kind.RATIO,
        true,
        "0.00000 0.00000 17.01 0.01246 17.20",
        "0.00000 0.00000 1.67 0.01661 1.68",
        "0.00000 0.00000 0.10 0.00000 0.10",
        "0.00000 0.00000 295.56 0.01194 295.55",
        "0.00000 0.00000 7.04 0.00021 7.10",
        "0.00000 0.00000 9.68 0.00000 9.70");
  }

  @Test
  void limitsOnAlkalinityAndPHAreMetAtTheLeastSumAndCost() {
    assertFound(
        Kind.BALANCE,
        false,
        "0.40431 0.00000 5.61 0.43382 5.74",
        "0.00000 0.20266 3.74",
        "0.00000 0.00000 1.10 0.00000 1.11",
        "3.27076 0.00000 7.16 3.44840 7.08",
        "0.00000 0.00000 0.43 0.00457 0.43",
        "0.03018 0.00000 7.04 0.03032 7.04");
    assertFound(
        Kind.BALANCE,
        true,
        "0.00000 0.00000 17.01 0.01246 17.20",
        "0.00000 0.00000 10.49 0.00151 10.50",
        "0.00000 0.00000 0.10 0.00000 0.10",
        "0.00000 0.00000 4.32 0.02107 4.32",
        "0.00000 0.00000 6.98 0.00610 7.02",
        "0.00000 0.00000 9.68 0.00000 9.70");
  }

  @Test
  void limitsOnTheMashPHAreMetAtTheLeastSumAndCost() {
    assertFound(
        Kind.MASH_PH,
        false,
        "0.00000 0.00000 2.41 0.00000 2.58",
        "1.33941 0.00000 5.25 1.34900 5.24",
        "3.24804 0.55061 0.10",
        "3.81213 0.00000 7.37 3.81737 7.28",
        "0.00000 0.00000 0.37 0.04820 0.36",
        "0.00000 0.44061 7.80");
    assertFound(
        Kind.MASH_PH,
        true,
        "0.00000 0.00000 15.14 0.00000 15.36",
        "0.00000 0.00000 1.51 0.00000 1.54",
        "0.00000 0.00000 2.08 0.00000 2.08",
        "0.00000 0.00000 9.26 0.04737 9.24",
        "0.00000 0.00000 0.56 0.00000 0.60",
        "0.00000 0.00000 8.73 0.00000 8.75");
  }

  /** Of two plans whose weighted sums differ by 1e-8, one cost 165 and the other 7. */
  @Test
  void amongPlansThatAreEquallyGoodTheCheapestIsTaken() {
    Problem problem = new RandomProblems(Kind.BALANCE, SEED + 5).three().problem();
    double cost = problem.variables().cost(new Search(problem).best().orElseThrow().x());
    assertTrue(cost < 7.1, "cost " + cost);
  }

  @Test
  void aTraceThatTheSearchLeftIsNotWeighed() {
    Problem problem = PlanTest.pale().problem();
    Point exact = new Search(problem).best().orElseThrow();
    double[] x = exact.x().clone();
    int traces = 0;
    for (int i = 0; i < x.length; i++) {
      if (x[i] < 1e-9 && problem.variables().step(i) > 0) {
        x[i] = 5e-7 * problem.variables().step(i);
        traces++;
      }
    }
    assertTrue(traces > 3, traces + " traces");
    Point rounded = new Rounding(problem).round(new Point(x, problem.worth(x))).orElseThrow();
    for (int i = 0; i < x.length; i++) {
      if (exact.x()[i] < 1e-9) {
        assertEquals(0, rounded.x()[i], "variable " + i);
      }
    }
  }

  @Test
  void nothingIsRoundedWhereNothingSaysHowItIsMeasured() {
    Problem problem = Plan.from(Invented.soft()).using(Shelf.of(Invented.gypsum())).problem();
    assertFalse(new Rounding(problem).isNeeded());
  }
}
