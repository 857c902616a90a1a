package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.brewchem.internal.EquilibriumSystem.Activity;
import org.junit.jupiter.api.Test;

/** What the solver does at a pH where Newton's method on all unknowns does not settle. */
class EquilibriumSolverSlowWayTest {

  private static final double SLOPE = 0.51;

  private static EquilibriumSystem.Builder builder(double debyeHueckelA) {
    return new EquilibriumSystem.Builder(
        -14, debyeHueckelA, 0.33, Activity.DAVIES, Activity.DAVIES);
  }

  /** Iterations of the slow way at a pH; the totals are taken in by a solve before. */
  private static int slowIterations(EquilibriumSolver solver, double ph) {
    assertTrue(solver.solveAt(ph));
    int before = solver.iterations();
    assertTrue(solver.bisectIonicStrength(ph));
    return solver.iterations() - before;
  }

  /**
   * From 1e-12 to 100 is a factor of e^32.24: halved 40 times, 2.9e-11 are left, and after 15
   * halvings more less than 1e-15. By hand, without activity coefficients: at pH 3 an anion of 0.01
   * lacks 0.009 and the 1e-11 of hydroxide, which count as well.
   */
  @Test
  void ionicStrengthIsFoundByHalving() {
    EquilibriumSolver solver = new EquilibriumSolver(builder(0).build());
    solver.setInertCharge(-0.01);
    int iterations = slowIterations(solver, 3);
    assertTrue(iterations >= 54 && iterations <= 56, "" + iterations);
    assertEquals(0.5 * (0.01 + 0.001 + 1e-11 + 0.009 + 1e-11), solver.ionicStrength(), 1e-16);
  }

  /**
   * A trivalent metal alone, in u the logarithm of its share that is free: Newton's step is 1 -
   * e^-u, at most 2.5, and is halved while it passes the lowest point by more than a tenth of the
   * slope before. At the pH of neutral water and a charge of q the ionic strength is abs(q) but for
   * the trace of metal. Where a step is all but small enough, rounding decides on one more.
   */
  @Test
  void stepsOfTheFreeMetalAreHalvedWhereTheyGoTooFar() {
    EquilibriumSystem.Builder builder = builder(SLOPE);
    int metal = builder.metal(3, Activity.DAVIES);
    EquilibriumSystem system = builder.build();
    int expected = 0;
    int found = 0;
    for (int n = 0; n < 40; n++) {
      double q = 1e-4 * Math.pow(10, 0.1 * n);
      EquilibriumSolver solver = new EquilibriumSolver(system);
      solver.totals()[metal] = 1e-6;
      solver.setInertCharge(-q);
      expected += expectedIterations(q);
      found += slowIterations(solver, 7);
      solver.refresh();
      assertEquals(1e-6, solver.freeMetal(metal), 1e-17);
    }
    assertEquals(expected, found, 10);
  }

  private static int expectedIterations(double q) {
    double low = 1e-12;
    double high = 100;
    int iterations = 0;
    double atStart = 0.5 * q + 4.5e-6;
    double logActivity = Math.log(0.8) + logGamma(atStart);
    for (int i = 0; high - low > 1e-15 * high; i++) {
      double ionic = i < 40 ? Math.sqrt(low * high) : (low + high) / 2;
      double u = logActivity - logGamma(ionic);
      double step;
      do {
        step = 1 - Math.exp(-u);
        double share = Math.min(1, 2.5 / Math.abs(step));
        double before = Math.expm1(u) * step;
        while (Math.expm1(u - share * step) * step < -0.1 * before) {
          share /= 2;
        }
        u -= share * step;
        iterations++;
      } while (Math.abs(step) >= 1e-7);
      logActivity = u + logGamma(ionic);
      double metal = 1e-6 * Math.exp(u);
      double water = 2 * Math.pow(10, -7 - logGamma(ionic) / (9 * Math.log(10)));
      double wanted = 0.5 * (q + 9 * metal + water) + 0.5 * Math.abs(3e-6 - q);
      if (wanted > ionic) {
        low = ionic;
      } else {
        high = ionic;
      }
    }
    return iterations;
  }

  /** ln of the activity coefficient of a trivalent ion. */
  private static double logGamma(double ionic) {
    double root = Math.sqrt(ionic);
    return -9 * Math.log(10) * SLOPE * (root / (1 + root) - 0.3 * ionic);
  }

  /**
   * A metal that binds one or two of a ligand, and one that binds two of it strongly; there is just
   * enough of the ligand for two to each of the first. Newton's method gives up twice, after 60
   * iterations each. Against the balances, solved for the free ligand alone.
   */
  @Test
  void strongPairsThatShareALigandAreFound() {
    EquilibriumSystem.Builder builder = builder(0);
    int first = builder.metal(2, Activity.DAVIES);
    int second = builder.metal(2, Activity.DAVIES);
    int ligand = builder.ligand(-1, Activity.DAVIES);
    builder.species(first, ligand, 0, 1, 9, Activity.DAVIES);
    builder.species(first, ligand, 0, 2, 16, Activity.DAVIES);
    builder.species(second, ligand, 0, 2, 26, Activity.DAVIES);
    EquilibriumSolver solver = new EquilibriumSolver(builder.build());
    solver.totals()[first] = 0.005;
    solver.totals()[second] = 0.001;
    solver.totals()[ligand] = 0.01;
    assertTrue(solver.solveAt(7));
    assertTrue(solver.iterations() > 2 * EquilibriumSolver.NEWTON_CAP, "" + solver.iterations());

    double low = 1e-30;
    double high = 0.01;
    for (int i = 0; i < 100; i++) {
      double free = Math.sqrt(low * high);
      double ofFirst = 0.005 / (1 + 1e9 * free + 1e16 * free * free);
      double ofSecond = 0.001 / (1 + 1e26 * free * free);
      double bound = 1e9 * ofFirst * free + 2 * (1e16 * ofFirst + 1e26 * ofSecond) * free * free;
      if (free + bound < 0.01) {
        low = free;
      } else {
        high = free;
      }
    }
    double ofFirst = 0.005 / (1 + 1e9 * low + 1e16 * low * low);
    double ofSecond = 0.001 / (1 + 1e26 * low * low);
    solver.refresh();
    assertEquals(1, solver.freeMetal(first) / ofFirst, 1e-9);
    assertEquals(1, solver.freeMetal(second) / ofSecond, 1e-9);
    assertEquals(1, solver.concentration(0) / low, 1e-9);
    // Two metals of two charges less one ligand are missing 0.002.
    assertEquals(0.002, solver.charge(), 1e-15);
    double onePair = 1e9 * ofFirst * low;
    assertEquals(
        0.5 * (4 * (ofFirst + ofSecond) + onePair + low + 2e-7 + 0.002),
        solver.ionicStrength(),
        1e-14);
  }

  /** Three metals, one of them trivalent, that compete for two ligands. */
  @Test
  void metalsThatCompeteAreAsExactAsTheUsualWay() {
    for (int seed = 0; seed < 200; seed++) {
      Random random = new Random(seed);
      EquilibriumSystem.Builder builder = builder(SLOPE);
      int[] metals = new int[3];
      int[] ligands = new int[2];
      for (int m = 0; m < 3; m++) {
        metals[m] = builder.metal(m < 2 ? 2 : 3, Activity.DAVIES);
      }
      for (int k = 0; k < 2; k++) {
        ligands[k] = builder.ligand(-1 - k, Activity.DAVIES);
      }
      for (int metal : metals) {
        for (int ligand : ligands) {
          double constant = 4 + 6 * random.nextDouble();
          builder.species(metal, ligand, 0, 1, constant, Activity.DAVIES);
          builder.species(metal, ligand, 0, 2, 2 * constant - 0.5, Activity.DAVIES);
        }
      }
      EquilibriumSolver solver = new EquilibriumSolver(builder.build());
      for (int i = 0; i < 5; i++) {
        solver.totals()[i] = Math.pow(10, -4 + 3 * random.nextDouble());
      }
      assertTrue(solver.solveAt(7));
      double ionic = solver.ionicStrength();
      double[] free = new double[3];
      for (int m = 0; m < 3; m++) {
        free[m] = solver.metalActivity(metals[m]);
      }
      assertTrue(solver.bisectIonicStrength(7));
      assertEquals(1, solver.ionicStrength() / ionic, 1e-11, "seed " + seed);
      for (int m = 0; m < 3; m++) {
        assertEquals(1, solver.metalActivity(metals[m]) / free[m], 1e-10, "seed " + seed);
      }
    }
  }

  /**
   * At 40 mol/kg the Davies equation gives an ion of five charges an activity coefficient of
   * 10^142; a start from there leads no way home: two attempts by Newton's method and one of the
   * free metal are each given up.
   */
  @Test
  void aMetalThatDoesNotSettleIsReported() {
    EquilibriumSystem.Builder builder = builder(SLOPE);
    int metal = builder.metal(5, Activity.DAVIES);
    EquilibriumSolver solver = new EquilibriumSolver(builder.build());
    solver.totals()[metal] = 0.001;
    solver.setInertCharge(40);
    assertFalse(solver.solveAt(7));
    assertEquals(3 * EquilibriumSolver.NEWTON_CAP, solver.iterations());
  }

  @Test
  void aMetalOfNoNumberIsGivenUpOnce() {
    EquilibriumSystem.Builder builder = builder(SLOPE);
    int metal = builder.metal(2, Activity.DAVIES);
    EquilibriumSolver solver = new EquilibriumSolver(builder.build());
    solver.totals()[metal] = Double.NaN;
    assertFalse(solver.solveAt(7));
    int before = solver.iterations();
    assertFalse(solver.bisectIonicStrength(7));
    assertEquals(before + EquilibriumSolver.NEWTON_CAP, solver.iterations());
  }

  /** A step that is beyond all numbers leads nowhere: pH is bisected at once, up to its end. */
  @Test
  void aStepBeyondAllNumbersIsNotTaken() {
    EquilibriumSolver solver = new EquilibriumSolver(builder(0).build());
    solver.setInertCharge(1e308);
    assertFalse(solver.solve());
    int both = solver.iterations();
    assertFalse(solver.bisect());
    int bisection = solver.iterations() - both;
    assertEquals(1, both - bisection);
    assertEquals(17, solver.bracketLow(), 1e-9);
  }
}
