package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.brewchem.internal.EquilibriumSystem.Activity;
import org.junit.jupiter.api.Test;

class EquilibriumSolverTest {

  private static final double LOG10_ION_PRODUCT = -14;
  private static final double SLOPE = 0.51;
  private static final double INVERSE_LENGTH = 0.33;

  /** Sodium, calcium, an acid of three protons, one of two, one of one, and two pairs. */
  private static EquilibriumSystem system(boolean pairs, boolean ionSizeSomewhere) {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(
            LOG10_ION_PRODUCT, SLOPE, INVERSE_LENGTH, Activity.DAVIES, Activity.DAVIES);
    builder.strongIon(1, Activity.DAVIES);
    int calcium = pairs ? builder.metal(2, Activity.DAVIES) : builder.strongIon(2, Activity.DAVIES);
    int triprotic = ladder(builder, -3, 12.35, 7.2, 2.15);
    int diprotic = ladder(builder, -2, 10.33, 6.35);
    ladder(builder, -1, 3.86);
    if (pairs) {
      builder.species(calcium, triprotic, 1, 1, 12.35 + 2.7, Activity.DAVIES);
      builder.species(calcium, triprotic, 0, 1, 6.5, Activity.DAVIES);
      builder.species(calcium, diprotic, 0, 1, 3.2, Activity.DAVIES);
      builder.species(calcium, diprotic, 0, 2, 4.0, Activity.DAVIES);
      builder.species(calcium, EquilibriumSystem.NONE, -1, 0, -12.8, Activity.DAVIES);
    }
    if (ionSizeSomewhere) {
      builder.ligand(-1, new Activity(4, 0.1));
    }
    return builder.build();
  }

  private static int ladder(EquilibriumSystem.Builder builder, int charge, double... pKa) {
    int index = builder.ligand(charge, Activity.DAVIES);
    double log10Beta = 0;
    for (int p = 1; p <= pKa.length; p++) {
      log10Beta += pKa[p - 1];
      builder.species(EquilibriumSystem.NONE, index, p, 1, log10Beta, Activity.DAVIES);
    }
    return index;
  }

  private static EquilibriumSolver filled(EquilibriumSystem system, long seed) {
    EquilibriumSolver solver = new EquilibriumSolver(system);
    Random random = new Random(seed);
    for (int i = 0; i < 5; i++) {
      solver.totals()[i] = random.nextInt(5) == 0 ? 0 : Math.pow(10, -6 + 5 * random.nextDouble());
    }
    solver.setInertCharge(0.02 * random.nextGaussian());
    return solver;
  }

  /** A species of no amount with an ion size keeps the solver from its short way for ladders. */
  @Property(tries = 300)
  void theShortWayWithoutMetalsIsTheLongOne(@ForAll long seed) {
    EquilibriumSolver fast = filled(system(false, false), seed);
    EquilibriumSolver general = filled(system(false, true), seed);
    assertTrue(fast.solve() && general.solve());
    assertEquals(general.ph(), fast.ph(), 1e-12);
    assertEquals(general.bufferCapacity(), fast.bufferCapacity(), 1e-9 * fast.bufferCapacity());
    assertTrue(fast.solveAt(6) && general.solveAt(6));
    assertEquals(general.charge(), fast.charge(), 1e-14);
  }

  @Property(tries = 300)
  void theAnswerDoesNotDependOnTheStart(@ForAll long seed) {
    EquilibriumSolver cold = filled(system(true, false), seed);
    assertTrue(cold.solve());
    double expected = cold.ph();
    for (double start : new double[] {0, 4, 7, 11, 14}) {
      EquilibriumSolver warm = filled(system(true, false), seed);
      warm.solveAt(start);
      assertTrue(warm.solve());
      assertEquals(expected, warm.ph(), 1e-11, "from pH " + start);
    }
  }

  @Property(tries = 100)
  void bisectionFindsTheSame(@ForAll long seed) {
    EquilibriumSolver solver = filled(system(true, false), seed);
    assertTrue(solver.solve());
    double expected = solver.ph();
    assertTrue(solver.bisect());
    assertEquals(expected, solver.ph(), 1e-10);
    assertTrue(solver.solveAt(5));
    double charge = solver.charge();
    assertTrue(solver.bisectIonicStrength(5));
    solver.refresh();
    assertEquals(charge, solver.charge(), 1e-12);
  }

  @Property(tries = 300)
  void theReportedSlopeIsThatOfTheCharge(@ForAll long seed) {
    EquilibriumSolver solver = filled(system(true, true), seed);
    assertTrue(solver.solveAt(5.5));
    double capacity = solver.bufferCapacity();
    double step = 1e-4;
    assertTrue(solver.solveAt(5.5 - step));
    double above = solver.charge();
    assertTrue(solver.solveAt(5.5 + step));
    assertEquals((above - solver.charge()) / (2 * step), capacity, 1e-6 * capacity);
  }

  @Test
  void aMixtureOutOfReachIsNoSolution() {
    EquilibriumSolver solver = new EquilibriumSolver(system(false, false));
    solver.setInertCharge(-1e5);
    assertFalse(solver.solve());
    assertTrue(solver.bracketHigh() > solver.bracketLow());
  }

  @Test
  void nothingIsAllocatedPerSolve() {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    for (boolean pairs : new boolean[] {false, true}) {
      EquilibriumSolver solver = filled(system(pairs, false), 3);
      run(solver, 20_000);
      long before = threads.getCurrentThreadAllocatedBytes();
      run(solver, 1000);
      long bytes = threads.getCurrentThreadAllocatedBytes() - before;
      assertTrue(bytes < 1000, bytes + " bytes in 1000 solves");
    }
  }

  private static void run(EquilibriumSolver solver, int solves) {
    for (int i = 0; i < solves; i++) {
      solver.coolDown();
      solver.totals()[2] = 1e-3 * (1 + i % 7);
      assertTrue(solver.solve() && solver.solveAt(8.2));
    }
  }
}
