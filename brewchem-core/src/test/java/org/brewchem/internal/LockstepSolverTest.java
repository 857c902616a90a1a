package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Random;
import org.brewchem.internal.EquilibriumSystem.Activity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LockstepSolverTest {

  private static final int COMPONENTS = 6;

  /** Sodium, calcium, acids of three, two and one proton, and a base. */
  private static EquilibriumSystem system(double slope) {
    return builder(slope).build();
  }

  private static EquilibriumSystem.Builder builder(double slope) {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, slope, 0.33, Activity.DAVIES, Activity.DAVIES);
    builder.strongIon(1, Activity.DAVIES);
    builder.strongIon(2, Activity.DAVIES);
    ladder(builder, -3, 12.35, 7.2, 2.15);
    ladder(builder, -2, 10.33, 6.35);
    ladder(builder, -1, 3.86);
    ladder(builder, 0, 9.25);
    return builder;
  }

  private static void ladder(EquilibriumSystem.Builder builder, int charge, double... pKa) {
    int index = builder.ligand(charge, Activity.DAVIES);
    double log10Beta = 0;
    for (int p = 1; p <= pKa.length; p++) {
      log10Beta += pKa[p - 1];
      builder.species(EquilibriumSystem.NONE, index, p, 1, log10Beta, Activity.DAVIES);
    }
  }

  private static double[][] draw(long seed, int rows, double highest) {
    Random random = new Random(seed);
    double[][] drawn = new double[rows][COMPONENTS + 1];
    for (double[] row : drawn) {
      for (int c = 0; c < COMPONENTS; c++) {
        row[c] = random.nextInt(5) == 0 ? 0 : highest * Math.pow(10, -5 * random.nextDouble());
      }
      row[COMPONENTS] = random.nextBoolean() ? 0 : highest * 0.3 * random.nextGaussian();
    }
    return drawn;
  }

  private static void fill(LockstepSolver solver, int at, double[] row) {
    for (int c = 0; c < COMPONENTS; c++) {
      solver.totals(c)[at] = row[c];
    }
    solver.inertCharge()[at] = row[COMPONENTS];
  }

  private static EquilibriumSolver single(EquilibriumSystem system, double[] row) {
    EquilibriumSolver single = new EquilibriumSolver(system);
    System.arraycopy(row, 0, single.totals(), 0, COMPONENTS);
    single.setInertCharge(row[COMPONENTS]);
    return single;
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.49, 0.51, 0.6})
  void agreesWithTheSolverOfSingleRows(double slope) {
    EquilibriumSystem system = system(slope);
    LockstepSolver solver = new LockstepSolver(system);
    double[] charges = new double[LockstepSolver.LANES];
    int settled = 0;
    int all = 40 * LockstepSolver.LANES;
    for (int block = 0; block < 40; block++) {
      double[][] rows = draw(block, LockstepSolver.LANES, 0.1);
      for (int l = 0; l < rows.length; l++) {
        fill(solver, l, rows[l]);
      }
      solver.solve(rows.length);
      solver.chargesOf(2, charges);
      for (int l = 0; l < rows.length; l++) {
        if (solver.isSettled(l)) {
          settled++;
          EquilibriumSolver one = single(system, rows[l]);
          assertTrue(one.solve());
          assertEquals(one.ph(), solver.ph(l), 1e-12, "pH");
          assertEquals(
              one.ionicStrength(), solver.ionicStrength(l), 1e-12 * one.ionicStrength(), "I");
          assertEquals(chargeOfTheTriproticAcid(system, one), charges[l], 1e-12 * rows[l][2]);
        }
      }
    }
    assertTrue(settled > 0.97 * all, settled + " of " + all);
  }

  private static double chargeOfTheTriproticAcid(
      EquilibriumSystem system, EquilibriumSolver solver) {
    solver.refresh();
    double charge = 0;
    for (int s = system.speciesStart[0]; s < system.speciesStart[1]; s++) {
      charge +=
          system.numbers[s * EquilibriumSystem.NUMBERS + EquilibriumSystem.CHARGE]
              * solver.concentrationAt(s);
    }
    return charge;
  }

  @Test
  void leavesToTheOtherSolverWhatItDoesNotSettle() {
    EquilibriumSystem system = system(0.51);
    LockstepSolver solver = new LockstepSolver(system);
    for (int block = 0; block < 20; block++) {
      double[][] rows = draw(block, LockstepSolver.LANES, 5);
      for (int l = 0; l < rows.length; l++) {
        fill(solver, l, rows[l]);
      }
      solver.solve(rows.length);
      for (int l = 0; l < rows.length; l++) {
        if (solver.isSettled(l)) {
          assertTrue(solver.ionicStrength(l) <= LockstepSolver.MOST_IONIC);
          EquilibriumSolver one = single(system, rows[l]);
          assertTrue(one.solve());
          assertEquals(one.ph(), solver.ph(l), 1e-12);
        }
      }
    }
  }

  @Test
  void aRowDependsOnNoOther() {
    EquilibriumSystem system = system(0.51);
    double[][] rows = draw(7, LockstepSolver.LANES, 0.1);
    LockstepSolver together = new LockstepSolver(system);
    for (int l = 0; l < rows.length; l++) {
      fill(together, l, rows[l]);
    }
    together.solve(rows.length);
    LockstepSolver moved = new LockstepSolver(system);
    double[][] others = draw(8, LockstepSolver.LANES, 5);
    for (int l = 0; l < rows.length; l++) {
      int place = (l * 37 + 11) % LockstepSolver.LANES;
      for (int other = 0; other < LockstepSolver.LANES; other++) {
        fill(moved, other, others[other]);
      }
      moved.solve(LockstepSolver.LANES);
      fill(moved, place, rows[l]);
      moved.solve(place + 1);
      assertEquals(together.isSettled(l), moved.isSettled(place));
      if (together.isSettled(l)) {
        assertEquals(
            Double.doubleToRawLongBits(together.ph(l)),
            Double.doubleToRawLongBits(moved.ph(place)));
        assertEquals(
            Double.doubleToRawLongBits(together.ionicStrength(l)),
            Double.doubleToRawLongBits(moved.ionicStrength(place)));
      }
    }
  }

  @Test
  void solvesPureWaterAndNothingElse() {
    LockstepSolver solver = new LockstepSolver(system(0.51));
    assertTrue(solver.solve(LockstepSolver.LANES));
    assertEquals(7, solver.ph(0), 1e-12);
    assertTrue(solver.solve(0));
    assertFalse(solver.isSettled(0));
  }

  @Test
  void refusesMetalsIonSizesAndCharges() {
    EquilibriumSystem.Builder metals = builder(0.51);
    metals.metal(2, Activity.DAVIES);
    EquilibriumSystem.Builder sizes = builder(0.51);
    sizes.strongIon(1, new Activity(4, 0.1));
    EquilibriumSystem.Builder charges = builder(0.51);
    ladder(charges, -5, 9, 8);
    for (EquilibriumSystem.Builder builder :
        new EquilibriumSystem.Builder[] {metals, sizes, charges}) {
      EquilibriumSystem system = builder.build();
      assertFalse(LockstepSolver.serves(system));
      assertThrows(IllegalArgumentException.class, () -> new LockstepSolver(system));
    }
    LockstepSolver solver = new LockstepSolver(system(0.51));
    assertThrows(
        IllegalArgumentException.class,
        () -> solver.chargesOf(0, new double[LockstepSolver.LANES]));
  }

  @Test
  void allocatesNothingPerSolve() {
    LockstepSolver solver = new LockstepSolver(system(0.51));
    double[][] rows = draw(3, LockstepSolver.LANES, 0.1);
    for (int l = 0; l < rows.length; l++) {
      fill(solver, l, rows[l]);
    }
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long thread = Thread.currentThread().getId();
    double sum = 0;
    for (int i = 0; i < 200; i++) {
      solver.solve(rows.length);
      sum += solver.ph(0);
    }
    long before = threads.getThreadAllocatedBytes(thread);
    for (int i = 0; i < 1000; i++) {
      solver.solve(rows.length);
      sum += solver.ph(1);
    }
    long allocated = threads.getThreadAllocatedBytes(thread) - before;
    assertTrue(allocated < 1000, allocated + " bytes for 128,000 rows, sum " + sum);
  }

  /** Pyrophosphate, -4, and its steps, beside carbonate. */
  @Test
  void chargesOfFourAreServed() {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, 0.51, 0.33, Activity.DAVIES, Activity.DAVIES);
    builder.strongIon(1, Activity.DAVIES);
    ladder(builder, -4, 9.4, 6.7, 2.1, 0.9);
    ladder(builder, -2, 10.33, 6.35);
    EquilibriumSystem system = builder.build();
    assertTrue(LockstepSolver.serves(system));
    LockstepSolver solver = new LockstepSolver(system);
    for (int l = 0; l < LockstepSolver.LANES; l++) {
      solver.totals(0)[l] = 1e-4 * l;
      solver.totals(1)[l] = 0.005;
      solver.totals(2)[l] = 0.002;
    }
    assertTrue(solver.solve(LockstepSolver.LANES));
    for (int l = 0; l < LockstepSolver.LANES; l++) {
      EquilibriumSolver one = new EquilibriumSolver(system);
      one.totals()[0] = 1e-4 * l;
      one.totals()[1] = 0.005;
      one.totals()[2] = 0.002;
      assertTrue(one.solve());
      assertEquals(one.ph(), solver.ph(l), 1e-12);
      assertEquals(one.ionicStrength(), solver.ionicStrength(l), 1e-14);
    }
  }

  /**
   * An acid that loses its four protons nearly all at once: where a mol/kg more of ions makes half
   * a mol/kg of ions more by itself, a row is left to the other solver. By the Davies equation that
   * is A (sqrt(I)/2/(1 + sqrt(I))^2 - 0.3 I) ln 10 times half the variance of the squared charges,
   * against I.
   */
  @Test
  void leavesToTheOtherSolverWhatNearlyFeedsItself() {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, 0.51, 0.33, Activity.DAVIES, Activity.DAVIES);
    int acid = builder.ligand(-4, Activity.DAVIES);
    double[] log10Betas = {5, 11, 19, 27};
    for (int p = 1; p <= 4; p++) {
      builder.species(EquilibriumSystem.NONE, acid, p, 1, log10Betas[p - 1], Activity.DAVIES);
    }
    EquilibriumSystem system = builder.build();
    LockstepSolver solver = new LockstepSolver(system);
    EquilibriumSolver single = new EquilibriumSolver(system);
    int left = 0;
    for (double total : new double[] {0.003, 0.02, 0.03, 0.05}) {
      for (int percent = 15; percent <= 35; percent += 5) {
        double share = 0.01 * percent;
        solver.totals(acid)[0] = total;
        solver.inertCharge()[0] = 4 * share * total;
        solver.solve(1);
        single.totals()[acid] = total;
        single.setInertCharge(4 * share * total);
        single.coolDown();
        assertTrue(single.solve());
        single.refresh();
        double squares = 0;
        double fourth = single.protonConcentration() + single.hydroxideConcentration();
        for (int p = 0; p <= 4; p++) {
          double c = single.concentration(p);
          squares += c * Math.pow(4 - p, 2);
          fourth += c * Math.pow(4 - p, 4);
        }
        fourth -= squares * squares / total;
        double ionic = single.ionicStrength();
        double root = Math.sqrt(ionic);
        double slope = 0.51 * Math.log(10) * (0.5 * root / ((1 + root) * (1 + root)) - 0.3 * ionic);
        boolean feeds = 0.5 * slope * fourth > 0.5 * ionic;
        assertEquals(!feeds, solver.isSettled(0), total + " mol/kg, " + percent + " %");
        left += feeds ? 1 : 0;
      }
    }
    assertTrue(left >= 10, left + " rows");
  }
}
