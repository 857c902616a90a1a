package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Assume;
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

  /** A liquid of all that a system can hold, with the means to count it without the solver. */
  static final class Everything {
    static final int METALS = 3;
    static final int[] CHARGES = {1, 2, 2, -2, -3, -2, -1};
    private static final Activity ION_SIZE = new Activity(5, 0.1);
    private static final Activity NEUTRAL = new Activity(0, 0.2);

    /** Metal, ligand, protons, number of ligands, handle. */
    final List<int[]> species = new ArrayList<>();

    private final EquilibriumSystem.Builder builder;
    final EquilibriumSystem system;
    private final boolean ionSize;
    int carbonicAcid;

    Everything(boolean ionSize) {
      this(ionSize, SLOPE);
    }

    Everything(boolean ionSize, double debyeHueckelA) {
      this.ionSize = ionSize;
      builder =
          new EquilibriumSystem.Builder(
              LOG10_ION_PRODUCT, debyeHueckelA, INVERSE_LENGTH, activity(1), activity(-1));
      for (int i = 0; i < METALS; i++) {
        builder.metal(CHARGES[i], activity(CHARGES[i]));
      }
      builder.strongIon(CHARGES[3], activity(CHARGES[3]));
      double[][] pKa = {{12.35, 7.2, 2.15}, {10.33, 6.35}, {3.86}};
      for (int k = 0; k < pKa.length; k++) {
        int ligand = 4 + k;
        species.add(new int[] {EquilibriumSystem.NONE, ligand, 0, 1, builder.nextSpecies()});
        builder.ligand(CHARGES[ligand], activity(CHARGES[ligand]));
        double log10Beta = 0;
        for (int p = 1; p <= pKa[k].length; p++) {
          log10Beta += pKa[k][p - 1];
          add(EquilibriumSystem.NONE, ligand, p, 1, log10Beta);
        }
      }
      add(0, 4, 1, 1, 12.6);
      for (int metal = 1; metal < METALS; metal++) {
        double more = metal == 1 ? 0 : 0.4;
        add(metal, 4, 0, 1, 6.5 + more);
        add(metal, 4, 1, 1, 15.1 + more);
        add(metal, 4, 2, 1, 21 + more);
        add(metal, 5, 0, 1, 3.2 + more);
        add(metal, 5, 1, 1, 11.3 + more);
        add(metal, 5, 0, 2, 5.5 + more);
        add(metal, 5, 1, 2, 14 + more);
        add(metal, 6, 0, 1, 1.4 + more);
        add(metal, EquilibriumSystem.NONE, -1, 0, -12 + more);
      }
      system = builder.build();
    }

    private Activity activity(int charge) {
      return !ionSize || Math.abs(charge) == 3 ? Activity.DAVIES : charge == 0 ? NEUTRAL : ION_SIZE;
    }

    private void add(int metal, int ligand, int protons, int ligands, double log10Beta) {
      int[] row = {metal, ligand, protons, ligands, builder.nextSpecies()};
      int charge = charge(row);
      builder.species(metal, ligand, protons, ligands, log10Beta, activity(charge));
      species.add(row);
      if (ligand == 5 && protons == 2) {
        carbonicAcid = row[4];
      }
    }

    static int charge(int[] row) {
      return row[2]
          + (row[0] < 0 ? 0 : CHARGES[row[0]])
          + (row[1] < 0 ? 0 : row[3] * CHARGES[row[1]]);
    }

    EquilibriumSolver filled(Random random, double most) {
      EquilibriumSolver solver = new EquilibriumSolver(system);
      for (int i = 0; i < CHARGES.length; i++) {
        solver.totals()[i] =
            random.nextInt(5) == 0 ? 0 : 1e-9 * Math.pow(most / 1e-9, random.nextDouble());
      }
      return solver;
    }

    /** Sum of the charges without their signs, Eq/kg. */
    double charges(EquilibriumSolver solver, double inert) {
      double sum = Math.abs(inert) + solver.protonConcentration() + solver.hydroxideConcentration();
      for (int i = 0; i <= METALS; i++) {
        sum += Math.abs(CHARGES[i]) * (i < METALS ? solver.freeMetal(i) : solver.totals()[i]);
      }
      for (int[] row : species) {
        sum += Math.abs(charge(row)) * solver.concentration(row[4]);
      }
      return sum;
    }

    /** Charge, ionic strength and totals by the species reported, each against what is there. */
    void assertBalanced(EquilibriumSolver solver, double inert) {
      double[] found = new double[CHARGES.length];
      double h = solver.protonConcentration();
      double oh = solver.hydroxideConcentration();
      double charge = inert + h - oh;
      double squares = Math.abs(inert) + h + oh;
      for (int i = 0; i <= METALS; i++) {
        found[i] = i < METALS ? solver.freeMetal(i) : solver.totals()[i];
        charge += CHARGES[i] * found[i];
        squares += CHARGES[i] * CHARGES[i] * found[i];
      }
      for (int[] row : species) {
        double c = solver.concentration(row[4]);
        charge += charge(row) * c;
        squares += charge(row) * charge(row) * c;
        if (row[0] >= 0) {
          found[row[0]] += c;
        }
        if (row[1] >= 0) {
          found[row[1]] += row[3] * c;
        }
      }
      assertEquals(0, charge, 1e-12 * charges(solver, inert), "charge");
      assertEquals(0.5 * squares, solver.ionicStrength(), 1e-12 * squares, "ionic strength");
      for (int i = 0; i < CHARGES.length; i++) {
        double total = solver.totals()[i];
        assertEquals(total, found[i], 1e-12 * total, "component " + i);
      }
    }
  }

  /** From traces to 5 mol/kg; there a pH may lie beyond the range that is searched. */
  @Property(tries = 1000)
  void whatIsReportedBalancesAndDoesNotDependOnTheMixtureBefore(
      @ForAll long seed, @ForAll boolean ionSize) {
    Random random = new Random(seed);
    Everything everything = new Everything(ionSize);
    EquilibriumSolver used = everything.filled(random, 5);
    used.solve();
    EquilibriumSolver solver = everything.filled(random, random.nextBoolean() ? 0.5 : 5);
    double inert = 0;
    if (random.nextBoolean()) {
      assertTrue(solver.solveAt(-1 + 16 * random.nextDouble()));
      inert = -solver.charge();
      solver.setInertCharge(inert);
      solver.coolDown();
    }
    if (!solver.solve()) {
      assertTrue(solver.bracketLow() < -2.999 || solver.bracketHigh() > 16.999);
      return;
    }
    solver.refresh();
    everything.assertBalanced(solver, inert);

    System.arraycopy(solver.totals(), 0, used.totals(), 0, solver.totals().length);
    used.setInertCharge(inert);
    assertTrue(used.solve());
    used.refresh();
    double rounding = 8 * Math.ulp(1.0) * everything.charges(used, inert) / used.bufferCapacity();
    assertEquals(solver.ph(), used.ph(), Math.max(1e-12, rounding));
  }

  /** The block of charge and metals is symmetric, and only its upper half is filled. */
  @Property(tries = 300)
  void theJacobianIsThatOfTheResiduals(
      @ForAll long seed, @ForAll boolean ionSize, @ForAll boolean held, @ForAll boolean carried) {
    Random random = new Random(seed);
    Everything everything = new Everything(ionSize);
    EquilibriumSolver solver = everything.filled(random, 0.1);
    for (int i = 0; i < Everything.METALS; i++) {
      solver.totals()[i] = Math.max(solver.totals()[i], 1e-6);
    }
    if (held) {
      solver.holdActivity(everything.carbonicAcid, -4);
    }
    double ph = 3 + 8 * random.nextDouble();
    assertTrue(solver.solveAt(ph));
    int n = Everything.METALS + 2;
    double[] at = unknowns(solver);
    for (int i = 0; i < n; i++) {
      at[i] *= Math.exp(0.3 * random.nextGaussian());
    }
    set(solver, at);
    solver.evaluate(carried);
    double[] matrix = solver.matrix.clone();
    // Differences over four points: a step ten times as long is as exact, and rounds ten times
    // less.
    double step = 1e-4;
    for (int c = 0; c < n; c++) {
      double[] above = residual(solver, moved(at, c, step), carried);
      double[] below = residual(solver, moved(at, c, -step), carried);
      double[] farAbove = residual(solver, moved(at, c, 2 * step), carried);
      double[] farBelow = residual(solver, moved(at, c, -2 * step), carried);
      for (int r = 0; r < n; r++) {
        boolean lower = r < n - 1 && c < r;
        double filled = lower ? matrix[c * n + r] : matrix[r * n + c];
        double scale = 0;
        for (int other = 0; other < n; other++) {
          scale = Math.max(scale, Math.abs(above[r]) + Math.abs(matrix[other * n + c]));
        }
        double tolerance = Math.max(1e-7 * scale, 1e-10 * at[n - 1]);
        double slope = (8 * (above[r] - below[r]) - (farAbove[r] - farBelow[r])) / (12 * step);
        assertEquals(slope, filled, tolerance, "row " + r + " column " + c);
      }
    }
  }

  private static double[] moved(double[] at, int unknown, double by) {
    double[] moved = at.clone();
    moved[unknown] *= Math.exp(by);
    return moved;
  }

  private static double[] unknowns(EquilibriumSolver solver) {
    double[] unknowns = new double[Everything.METALS + 2];
    unknowns[0] = solver.proton;
    System.arraycopy(solver.metalActivity, 1, unknowns, 1, Everything.METALS);
    unknowns[unknowns.length - 1] = solver.ionic;
    return unknowns;
  }

  private static void set(EquilibriumSolver solver, double[] unknowns) {
    solver.proton = unknowns[0];
    System.arraycopy(unknowns, 1, solver.metalActivity, 1, Everything.METALS);
    solver.ionic = unknowns[unknowns.length - 1];
  }

  private static double[] residual(EquilibriumSolver solver, double[] unknowns, boolean carried) {
    set(solver, unknowns);
    solver.evaluate(carried);
    return solver.residual.clone();
  }

  @Property(tries = 200)
  void aHeldAcidHasItsActivityAndItsLigandsFollow(@ForAll long seed) {
    Everything everything = new Everything(true);
    EquilibriumSolver open = everything.filled(new Random(seed), 0.05);
    open.holdActivity(everything.carbonicAcid, -4.5);
    assertTrue(open.solve());
    open.refresh();
    assertEquals(-4.5, Math.log10(open.activity(everything.carbonicAcid)), 1e-12);
    double total = 0;
    for (int[] row : everything.species) {
      total += row[1] == 5 ? row[3] * open.concentration(row[4]) : 0;
    }
    EquilibriumSolver closed = everything.filled(new Random(seed), 0.05);
    closed.totals()[5] = total;
    assertTrue(closed.solve());
    assertEquals(open.ph(), closed.ph(), 1e-10);
  }

  @Test
  void aChargedSpeciesIsNotHeld() {
    Everything everything = new Everything(false);
    EquilibriumSolver solver = new EquilibriumSolver(everything.system);
    assertThrows(IllegalArgumentException.class, () -> solver.holdActivity(0, -3));
  }

  /** The start is extrapolated along even steps; a stray point in between must do no harm. */
  @Property(tries = 100)
  void aCurveIsWhatItsPointsAreAlone(@ForAll long seed) {
    Everything everything = new Everything(false);
    EquilibriumSolver along = everything.filled(new Random(seed), 0.02);
    EquilibriumSolver alone = everything.filled(new Random(seed), 0.02);
    for (int point = 0; point < 60; point++) {
      double inert = point == 30 ? -0.05 : 5e-4 * (point < 45 ? point : 2 * point - 45);
      along.setInertCharge(inert);
      alone.setInertCharge(inert);
      alone.coolDown();
      assertTrue(along.solve() && alone.solve());
      double scale = 0.1 / alone.bufferCapacity();
      assertEquals(alone.ph(), along.ph(), Math.max(1e-12, 4 * Math.ulp(1.0) * scale));
    }
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
    EquilibriumSolver fresh = filled(system(true, false), seed);
    assertTrue(fresh.solve() && fresh.solveAt(11) && fresh.bisectIonicStrength(5));
    fresh.refresh();
    assertEquals(charge, fresh.charge(), 1e-12);
  }

  /** Where the charge turns, the inert ion that carries it does, and the slope has a kink. */
  @Property(tries = 300)
  void theReportedSlopeIsThatOfTheCharge(@ForAll long seed) {
    EquilibriumSolver solver = filled(system(true, true), seed);
    assertTrue(solver.solveAt(5.5));
    double capacity = solver.bufferCapacity();
    double step = 1e-4;
    assertTrue(solver.solveAt(5.5 - step));
    double above = solver.charge();
    assertTrue(solver.solveAt(5.5 + step));
    Assume.that(above * solver.charge() > 0);
    assertEquals((above - solver.charge()) / (2 * step), capacity, 1e-6 * capacity);
  }

  @Property(tries = 300)
  void theSlopeAtTheNeutralPointDoesNotHangOnRounding(@ForAll long seed) {
    EquilibriumSolver solver = filled(system(true, true), seed);
    assertTrue(solver.solve());
    double capacity = solver.bufferCapacity();
    double ph = solver.ph();
    for (double moved : new double[] {Math.nextDown(ph), ph, Math.nextUp(ph)}) {
      assertTrue(solver.solveAt(moved));
      assertEquals(capacity, solver.bufferCapacity(), 1e-9 * capacity);
    }
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

  /**
   * By hand, without activity coefficients, at pH 4: of A-, HA of pKa 4.8 and (HA)2 with 10^1.5
   * L/mol there are a, 10^0.8 a and 10^3.1 a^2.
   */
  @Test
  void aSpeciesMayHoldTwoOfALigandAndNoMetal() {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, 0, INVERSE_LENGTH, Activity.DAVIES, Activity.DAVIES);
    int acid = ladder(builder, -1, 4.8);
    builder.species(EquilibriumSystem.NONE, acid, 2, 2, 9.6 + 1.5, Activity.DAVIES);
    EquilibriumSystem system = builder.build();
    assertFalse(LockstepSolver.serves(system));
    EquilibriumSolver solver = new EquilibriumSolver(system);
    solver.totals()[acid] = 0.01;
    assertTrue(solver.solveAt(4));
    double once = 1 + Math.pow(10, 0.8);
    double twice = 2 * Math.pow(10, 3.1);
    double free = (-once + Math.sqrt(once * once + 4 * twice * 0.01)) / (2 * twice);
    assertEquals(1e-4 - 1e-10 - free, solver.charge(), 1e-15);
    solver.refresh();
    assertEquals(free, solver.concentration(0), 1e-15);
    assertEquals(twice / 2 * free * free, solver.concentration(2), 1e-15);
  }

  /** By hand: 5000 equivalents want pH -3.7 or 17.7. */
  @Test
  void whatIsNeutralBeyondTheScaleIsNoSolution() {
    EquilibriumSystem ideal =
        new EquilibriumSystem.Builder(-14, 0, INVERSE_LENGTH, Activity.DAVIES, Activity.DAVIES)
            .build();
    // At pH -2.5 there are 316 mol/kg of protons, and the search of I ends at 100.
    assertFalse(new EquilibriumSolver(ideal).bisectIonicStrength(-2.5));
    for (double inert : new double[] {-5000, 5000}) {
      EquilibriumSolver solver = new EquilibriumSolver(ideal);
      solver.setInertCharge(inert);
      assertFalse(solver.solve());
      assertEquals(inert < 0 ? -3 : 17, solver.bracketLow(), 1e-9);
      assertEquals(inert < 0 ? -3 : 17, solver.bracketHigh(), 1e-9);
      solver.setInertCharge(inert / 10);
      assertTrue(solver.solve());
      assertEquals(inert < 0 ? -Math.log10(500) : 14 + Math.log10(500), solver.ph(), 1e-12);
    }
  }

  /**
   * What the starts are for: a few steps from afar, and fewer from one point of a curve to the
   * next.
   */
  @Test
  void solvesTakeFewIterations() {
    int cold = 0;
    int pairs = 0;
    int at = 0;
    int along = 0;
    int turned = 0;
    for (int seed = 0; seed < 500; seed++) {
      EquilibriumSolver solver = filled(system(false, false), seed);
      assertTrue(solver.solve());
      cold += solver.iterations();
      solver = filled(system(true, false), seed);
      assertTrue(solver.solve());
      pairs += solver.iterations();
      solver.coolDown();
      assertTrue(solver.solveAt(5));
      at += solver.iterations();
      for (int point = 0; point < 20; point++) {
        solver.setInertCharge(solver.inertCharge() + (point < 10 ? 2e-4 : -2e-4));
        assertTrue(solver.solve());
        if (point > 2 && point < 10) {
          along += solver.iterations();
        } else if (point == 10) {
          turned += solver.iterations();
        }
      }
    }
    assertEquals(3.99, cold / 500.0, 0.04, "cold");
    assertEquals(4.36, pairs / 500.0, 0.04, "with pairs");
    assertEquals(3.21, at / 500.0, 0.03, "at a pH");
    assertEquals(1.98, along / 3500.0, 0.02, "along a curve");
    assertEquals(3.24, turned / 500.0, 0.03, "where it turns");
  }

  /**
   * A curve whose steps grow is followed at its pace, and one whose steps double is not: the counts
   * of today.
   */
  @Test
  void aCurveIsFollowedAtItsPace() {
    double[] growth = {0.75, 1.3, 2};
    int[] iterations = new int[growth.length];
    for (int g = 0; g < growth.length; g++) {
      for (int seed = 0; seed < 300; seed++) {
        EquilibriumSolver solver = filled(system(true, false), seed);
        assertTrue(solver.solve());
        double step = 4e-4;
        for (int point = 0; point < 9; point++) {
          solver.setInertCharge(solver.inertCharge() + step);
          step *= growth[g];
          assertTrue(solver.solve());
          if (point > 2) {
            iterations[g] += solver.iterations();
          }
        }
      }
    }
    // Nine of 1800 solves may take one iteration more where exp and log round another way.
    assertEquals(1.730, iterations[0] / 1800.0, 0.005, "slower and slower");
    assertEquals(3.093, iterations[1] / 1800.0, 0.005, "faster and faster");
    assertEquals(5.663, iterations[2] / 1800.0, 0.005, "twice as fast");
  }

  /** What stood in the equations for metals is gone with them. */
  @Test
  void metalsThatAreTakenOutLeaveNothingBehind() {
    for (long seed = 0; seed < 20; seed++) {
      Everything everything = new Everything(false);
      EquilibriumSolver used = everything.filled(new Random(seed), 0.02);
      EquilibriumSolver never = everything.filled(new Random(seed), 0.02);
      for (int i = 0; i < Everything.METALS; i++) {
        used.totals()[i] = 0.01 * (i + 1);
        never.totals()[i] = 0;
      }
      assertTrue(used.solve());
      assertTrue(used.bufferCapacity() > 0);
      for (int i = 0; i < Everything.METALS; i++) {
        used.totals()[i] = 0;
      }
      assertTrue(used.solveAt(6.5) && never.solveAt(6.5));
      assertEquals(never.charge(), used.charge(), 1e-15);
      assertEquals(never.bufferCapacity(), used.bufferCapacity(), 1e-13 * used.bufferCapacity());
    }
  }

  /** By hand, without activity coefficients: the acid's free form follows the root of its pair. */
  @Test
  void twoOfALigandMayBeHeldTogether() {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, 0, INVERSE_LENGTH, Activity.DAVIES, Activity.DAVIES);
    int acid = ladder(builder, -1, 4.8);
    int pair = builder.species(EquilibriumSystem.NONE, acid, 2, 2, 9.6 + 1.5, Activity.DAVIES);
    EquilibriumSolver solver = new EquilibriumSolver(builder.build());
    solver.holdActivity(pair, -6);
    assertTrue(solver.solveAt(4));
    double free = Math.sqrt(1e-6 / Math.pow(10, 3.1));
    assertEquals(1e-4 - 1e-10 - free, solver.charge(), 1e-15);
    assertEquals(solver.charge(), solver.lastResidual());
    assertEquals(Math.log(10) * (1e-4 + 1e-10 + free), solver.bufferCapacity(), 1e-12);
    solver.refresh();
    assertEquals(1e-6, solver.activity(pair), 1e-18);
  }

  @Test
  void whatIsNoNumberHasNoSolution() {
    for (boolean pairs : new boolean[] {false, true}) {
      EquilibriumSolver solver = filled(system(pairs, false), 3);
      solver.totals()[0] = Double.NaN;
      assertFalse(solver.solveAt(7));
      assertFalse(solver.solve());
      assertFalse(solver.bisectIonicStrength(7));
    }
  }

  @Test
  void onlyMetalsAreAskedFreeMetals() {
    EquilibriumSolver solver = filled(system(true, false), 3);
    assertThrows(IllegalArgumentException.class, () -> solver.freeMetal(0));
    assertThrows(IllegalArgumentException.class, () -> solver.metalActivity(0));
  }

  /** The slow and sure way through three metals that share their ligands. */
  @Property(tries = 50)
  void bisectionOfIonicStrengthFindsTheSameMetals(@ForAll long seed, @ForAll boolean ionSize) {
    Random random = new Random(seed);
    Everything everything = new Everything(ionSize);
    EquilibriumSolver solver = everything.filled(random, 0.1);
    double ph = 3 + 8 * random.nextDouble();
    assertTrue(solver.solveAt(ph));
    solver.refresh();
    double charge = solver.charge();
    double ionic = solver.ionicStrength();
    assertTrue(solver.bisectIonicStrength(ph));
    solver.refresh();
    assertEquals(ionic, solver.ionicStrength(), 1e-10 * ionic);
    assertEquals(charge, solver.charge(), 1e-10 * ionic);
  }
}
