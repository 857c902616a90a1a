package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.brewchem.internal.EquilibriumSolverTest.Everything;
import org.brewchem.internal.EquilibriumSystem.Activity;
import org.junit.jupiter.api.Test;

/** What a solve starts from, and what it must not have from the solves before. */
class EquilibriumSolverStartTest {

  private static EquilibriumSolver afterACurve(Everything everything, long seed) {
    EquilibriumSolver solver = everything.filled(new Random(seed), 0.02);
    for (int point = 0; point < 6; point++) {
      solver.setInertCharge(1e-3 * point);
      assertTrue(solver.solve());
    }
    return solver;
  }

  private static void assertSame(EquilibriumSolver expected, EquilibriumSolver found) {
    assertEquals(expected.iterations(), found.iterations());
    assertEquals(expected.ph(), found.ph(), 0);
    assertEquals(expected.charge(), found.charge(), 0);
    assertEquals(expected.ionicStrength(), found.ionicStrength(), 0);
  }

  @Test
  void aSolverThatIsColdSolvesLikeANewOne() {
    for (long seed = 0; seed < 20; seed++) {
      Everything everything = new Everything(seed % 2 == 0);
      EquilibriumSolver used = afterACurve(everything, seed);
      EquilibriumSolver fresh = everything.filled(new Random(seed), 0.02);
      used.coolDown();
      for (int point = 5; point < 9; point++) {
        used.setInertCharge(1e-3 * point);
        fresh.setInertCharge(1e-3 * point);
        assertTrue(used.solve() && fresh.solve());
        assertSame(fresh, used);
      }
    }
  }

  /** The point at a pH lies on no curve, and after it another curve begins. */
  @Test
  void aSolverThatIsColdSettlesAtAPHLikeANewOne() {
    for (long seed = 0; seed < 20; seed++) {
      Everything everything = new Everything(seed % 2 == 0);
      EquilibriumSolver used = afterACurve(everything, seed);
      EquilibriumSolver fresh = everything.filled(new Random(seed), 0.02);
      used.coolDown();
      fresh.setInertCharge(5e-3);
      assertTrue(used.solveAt(5) && fresh.solveAt(5));
      assertSame(fresh, used);
      for (int point = 6; point < 9; point++) {
        used.setInertCharge(1e-3 * point);
        fresh.setInertCharge(1e-3 * point);
        assertTrue(used.solve() && fresh.solve());
        assertSame(fresh, used);
      }
    }
  }

  /**
   * By hand, without activity coefficients: of a ligand in excess with two protons, all but free of
   * charge, two bind a metal by 10^(4 pH). At pH 17 so little of it is free that to where half of
   * it is, at pH 0, it is 68 powers of ten: at most 2.5 powers of e a step, that takes 63 steps.
   * After 60 the solver starts once more, as if it was cold.
   */
  @Test
  void aStartThatIsTooFarAwayIsGivenUpForAColdOne() {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, 0, 0.33, Activity.DAVIES, Activity.DAVIES);
    int metal = builder.metal(2, Activity.DAVIES);
    int ligand = builder.ligand(-2, Activity.DAVIES);
    builder.species(EquilibriumSystem.NONE, ligand, 2, 1, 80, Activity.DAVIES);
    builder.species(metal, ligand, 0, 2, 160, Activity.DAVIES);
    EquilibriumSolver solver = new EquilibriumSolver(builder.build());
    solver.totals()[metal] = 1e-6;
    solver.totals()[ligand] = 1;
    assertTrue(solver.solveAt(0));
    int cold = solver.iterations();
    for (double ph : new double[] {3, 6, 9, 12, 15, 17}) {
      assertTrue(solver.solveAt(ph));
    }
    assertEquals(-74, Math.log10(solver.metalActivity(metal)), 1e-5);
    assertTrue(solver.solveAt(0));
    assertEquals(5e-7, solver.metalActivity(metal), 1e-11);
    assertEquals(EquilibriumSolver.NEWTON_CAP + cold, solver.iterations());
  }

  /** In the equations a metal that is absent stands for itself alone, whatever stood there. */
  @Test
  void aMetalThatIsTakenOutIsUncoupled() {
    for (int kept = 0; kept <= Everything.METALS; kept++) {
      Everything everything = new Everything(false);
      EquilibriumSolver solver = everything.filled(new Random(1), 0.02);
      for (int i = 0; i < Everything.CHARGES.length; i++) {
        solver.totals()[i] = 0.01 * (i + 1);
      }
      assertTrue(solver.solveAt(9));
      solver.refresh();
      for (int i = 0; i < Everything.METALS; i++) {
        if (i != kept) {
          solver.totals()[i] = 0;
        }
      }
      assertTrue(solver.solveAt(6.5));
      solver.evaluate(true);
      int n = Everything.METALS + 2;
      for (int r = 1; r <= Everything.METALS; r++) {
        if (r != kept + 1) {
          assertEquals(1, solver.matrix[r * n + r], 0);
          assertEquals(0, solver.residual[r], 0);
          assertEquals(0, solver.matrix[(n - 1) * n + r], 0, "ionic strength by metal " + r);
          for (int c = 0; c < r; c++) {
            assertEquals(0, solver.matrix[c * n + r], 0, "row " + c + " by metal " + r);
          }
          for (int c = r + 1; c < n; c++) {
            assertEquals(0, solver.matrix[r * n + c], 0, "metal " + r + " by column " + c);
          }
        }
      }
    }
  }

  /**
   * By hand, without activity coefficients: salt of 1e-4 at pH 6.9, where H+ exceeds OH- by 4.6e-8.
   * So little is no rounding: with an anion for it the ions add up to 1e-4 and H+.
   */
  @Test
  void aSmallChargeThatIsLeftOverCountsInTheIonicStrength() {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, 0, 0.33, Activity.DAVIES, Activity.DAVIES);
    int sodium = builder.strongIon(1, Activity.DAVIES);
    EquilibriumSolver solver = new EquilibriumSolver(builder.build());
    solver.totals()[sodium] = 1e-4;
    solver.setInertCharge(-1e-4);
    assertTrue(solver.solveAt(6.9));
    double h = Math.pow(10, -6.9);
    assertEquals(h - 1e-14 / h, solver.charge(), 1e-19);
    assertEquals(1e-4 + h, solver.ionicStrength(), 1e-18);
    assertEquals(0.5, solver.carriedSlope());
  }

  /**
   * By hand, by the Davies equation at 0.02 mol/kg: every half unit from pH 0 to 14 the charge of
   * the water's ions, then mean charge and half the mean squared charge of an acid.
   */
  @Test
  void startsAreTakenFromACoarseGrid() {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, 0.51, 0.33, Activity.DAVIES, Activity.DAVIES);
    int acid = builder.ligand(-2, Activity.DAVIES);
    builder.species(EquilibriumSystem.NONE, acid, 1, 1, 10.3, Activity.DAVIES);
    builder.species(EquilibriumSystem.NONE, acid, 2, 1, 16.6, Activity.DAVIES);
    double[] table = builder.build().startTable;
    assertEquals(29 * 3, table.length);
    double root = Math.sqrt(0.02);
    double gamma = Math.pow(10, -0.51 * (root / (1 + root) - 0.006));
    for (int i = 0; i < 29; i++) {
      double h = Math.pow(10, -0.5 * i);
      double two = 1 / Math.pow(gamma, 4);
      double one = Math.pow(10, 10.3) * h / gamma;
      double none = Math.pow(10, 16.6) * h * h;
      double sum = two + one + none;
      double oh = 1e-14 / h;
      assertEquals((h - oh) / gamma, table[3 * i], 1e-12 * (h + oh), "row " + i);
      assertEquals((-2 * two - one) / sum, table[3 * i + 1], 1e-12);
      assertEquals((4 * two + one) / 2 / sum, table[3 * i + 2], 1e-12);
    }
  }
}
