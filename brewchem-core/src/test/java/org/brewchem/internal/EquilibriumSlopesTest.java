package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.brewchem.internal.EquilibriumSolverTest.Everything;
import org.brewchem.internal.EquilibriumSystem.Activity;
import org.junit.jupiter.api.Test;

class EquilibriumSlopesTest {

  // A fixed seed: a difference of fourth order is itself off by 1.7e-6 in a rare mixture (seen
  // twice), and which mixtures are drawn should not change between runs of the same sources.

  private static final int COMPONENTS = Everything.CHARGES.length;

  /** The mixture of a seed: totals from 1e-6 to 0.1 mol/kg, some of them 0. */
  private static final class Mixture {
    final Everything everything;
    final EquilibriumSolver solver;
    final EquilibriumSlopes slopes;
    final double ph;

    /** Signs of the charges met since it was cleared: 1 above 0, 2 below, 3 both. */
    int signs;

    Mixture(long seed, int level, boolean held) {
      Random random = new Random(seed);
      everything = new Everything(level == 2, level == 0 ? 0 : 0.51);
      solver = new EquilibriumSolver(everything.system);
      slopes = new EquilibriumSlopes(solver);
      for (int i = 0; i < COMPONENTS; i++) {
        solver.totals()[i] = random.nextInt(4) == 0 ? 0 : 1e-6 * Math.pow(1e5, random.nextDouble());
      }
      solver.setInertCharge(
          (random.nextBoolean() ? 1 : -1) * Math.pow(10, -4 + random.nextDouble()));
      // Open to the gas, a basic solution would hold more carbonate than water.
      ph = 2 + (held ? 6 : 10) * random.nextDouble();
      if (held) {
        solver.holdActivity(everything.carbonicAcid, -4.2);
      }
    }

    double total(int j) {
      return j < COMPONENTS ? solver.totals()[j] : solver.inertCharge();
    }

    void set(int j, double value) {
      if (j < COMPONENTS) {
        solver.totals()[j] = value;
      } else {
        solver.setInertCharge(value);
      }
    }

    double chargeOf(int component) {
      solver.refresh();
      double charge = component < 4 ? Everything.CHARGES[component] * total(component) : 0;
      for (int[] row : everything.species) {
        if (row[1] == component) {
          int metal = row[0] < 0 ? 0 : Everything.CHARGES[row[0]];
          charge += (Everything.charge(row) - metal) * solver.concentration(row[4]);
        }
      }
      return charge;
    }

    int freeHandle(int ligand) {
      for (int[] row : everything.species) {
        if (row[0] < 0 && row[1] == ligand && row[2] == 0) {
          return row[4];
        }
      }
      throw new IllegalArgumentException();
    }

    double at(double ph, ToDoubleFunction<Mixture> quantity) {
      assertTrue(solver.solveAt(ph));
      signs |= solver.charge() > 0 ? 1 : 2;
      return quantity.applyAsDouble(this);
    }

    double withTotal(int j, double value, ToDoubleFunction<Mixture> quantity) {
      return withTotal(j, value, ph, quantity);
    }

    double withTotal(int j, double value, double ph, ToDoubleFunction<Mixture> quantity) {
      double own = total(j);
      set(j, value);
      double found = at(ph, quantity);
      set(j, own);
      return found;
    }

    /** Central differences of fourth order; upwards only from a total of 0. */
    double difference(int j, ToDoubleFunction<Mixture> quantity) {
      double own = total(j);
      DoubleUnaryOperator f = value -> withTotal(j, value, quantity);
      if (own == 0) {
        return upwards(f, 0, 2e-8);
      }
      return central(f, own, 0.004 * Math.abs(own));
    }
  }

  private static double central(DoubleUnaryOperator f, double x, double h) {
    return (8 * (f.applyAsDouble(x + h) - f.applyAsDouble(x - h))
            - (f.applyAsDouble(x + 2 * h) - f.applyAsDouble(x - 2 * h)))
        / (12 * h);
  }

  private static double upwards(DoubleUnaryOperator f, double x, double h) {
    return (-25 * f.applyAsDouble(x)
            + 48 * f.applyAsDouble(x + h)
            - 36 * f.applyAsDouble(x + 2 * h)
            + 16 * f.applyAsDouble(x + 3 * h)
            - 3 * f.applyAsDouble(x + 4 * h))
        / (12 * h);
  }

  private static int level(long seed) {
    return (int) Math.floorMod(seed, 3L);
  }

  /** Where the charge left over turns its sign, a difference would straddle a kink. */
  private static void assertSlopes(
      Mixture mixture, double[] perTotal, double byPh, ToDoubleFunction<Mixture> quantity) {
    double capacity = mixture.solver.bufferCapacity();
    for (int j = 0; j <= COMPONENTS; j++) {
      mixture.signs = 0;
      double expected = mixture.difference(j, quantity);
      if (mixture.signs != 3) {
        assertEquals(expected, perTotal[j], 1e-6 * Math.max(1, Math.abs(expected)), "total " + j);
      }
    }
    mixture.signs = 0;
    double expected = central(ph -> mixture.at(ph, quantity), mixture.ph, 2e-3);
    if (mixture.signs != 3) {
      assertEquals(expected, byPh, 1e-6 * capacity, "by pH");
    }
  }

  @Property(tries = 500, seed = "20261126")
  void slopesAreThoseOfDifferences(@ForAll long seed, @ForAll boolean held) {
    Mixture mixture = new Mixture(seed, level(seed), held);
    double[] perTotal = new double[COMPONENTS + 1];
    assertTrue(mixture.solver.solveAt(mixture.ph));
    double ofCharge = mixture.slopes.ofCharge(perTotal);
    assertEquals(-mixture.solver.bufferCapacity(), ofCharge, 1e-9 * Math.abs(ofCharge));
    assertSlopes(mixture, perTotal, ofCharge, m -> m.solver.charge());
    for (int component = 0; component < COMPONENTS; component++) {
      int of = component;
      assertTrue(mixture.solver.solveAt(mixture.ph));
      double byPh = mixture.slopes.ofChargeOf(of, perTotal);
      assertSlopes(mixture, perTotal, byPh, m -> m.chargeOf(of));
    }
    assertTrue(mixture.solver.solveAt(mixture.ph));
    double byPh = mixture.slopes.ofIonicStrength(perTotal);
    assertSlopes(mixture, perTotal, byPh, m -> m.solver.ionicStrength());
  }

  /** Totals near 0.01 mol/kg, where differences of sixth order are good for more digits. */
  @Property(tries = 50, seed = "20261126")
  void slopesAreExact(@ForAll long seed) {
    Mixture mixture = new Mixture(seed, level(seed), false);
    Random random = new Random(seed);
    for (int i = 0; i < COMPONENTS; i++) {
      mixture.solver.totals()[i] = 0.005 + 0.01 * random.nextDouble();
    }
    mixture.solver.setInertCharge(0.002);
    double[] perTotal = new double[COMPONENTS + 1];
    double ph = 5 + random.nextDouble();
    assertTrue(mixture.solver.solveAt(ph));
    mixture.slopes.ofCharge(perTotal);
    for (int j = 0; j <= COMPONENTS; j++) {
      int of = j;
      double own = mixture.total(j);
      double h = 0.01 * own;
      mixture.signs = 0;
      DoubleUnaryOperator f =
          steps ->
              mixture.withTotal(of, own + steps * h, ph, m -> m.solver.charge())
                  - mixture.withTotal(of, own - steps * h, ph, m -> m.solver.charge());
      double expected =
          (45 * f.applyAsDouble(1) - 9 * f.applyAsDouble(2) + f.applyAsDouble(3)) / (60 * h);
      if (mixture.signs != 3) {
        assertEquals(expected, perTotal[j], 1e-9 * Math.max(1, Math.abs(expected)), "total " + j);
      }
    }
  }

  @Property(tries = 300, seed = "20261126")
  void aSmallMixedChangeIsTheSumOfItsSlopes(@ForAll long seed) {
    Mixture mixture = new Mixture(seed, level(seed), false);
    Random random = new Random(seed);
    double[] perTotal = new double[COMPONENTS + 1];
    double[] change = new double[COMPONENTS + 1];
    assertTrue(mixture.solver.solveAt(mixture.ph));
    mixture.slopes.ofCharge(perTotal);
    double expected = 0;
    double scale = 0;
    for (int j = 0; j <= COMPONENTS; j++) {
      change[j] = 1e-4 * mixture.total(j) * random.nextGaussian();
      expected += perTotal[j] * change[j];
      scale += Math.abs(change[j]);
    }
    mixture.signs = 0;
    double after = moved(mixture, change, 1);
    double before = moved(mixture, change, -1);
    if (mixture.signs != 3) {
      assertEquals(expected, (after - before) / 2, 1e-6 * scale);
    }
  }

  private static double moved(Mixture mixture, double[] change, double share) {
    for (int j = 0; j <= COMPONENTS; j++) {
      mixture.set(j, mixture.total(j) + share * change[j]);
    }
    double charge = mixture.at(mixture.ph, m -> m.solver.charge());
    for (int j = 0; j <= COMPONENTS; j++) {
      mixture.set(j, mixture.total(j) - share * change[j]);
    }
    return charge;
  }

  /** At the neutral pH, which follows the totals; there the charge left over has its kink. */
  @Property(tries = 300, seed = "20261126")
  void theNeutralPointMovesAsTheSlopesSay(@ForAll long seed) {
    Mixture mixture = new Mixture(seed, level(seed), false);
    EquilibriumSolver solver = mixture.solver;
    double[] ofCharge = new double[COMPONENTS + 1];
    double[] ofCarbonate = new double[COMPONENTS + 1];
    double[] ofIonicStrength = new double[COMPONENTS + 1];
    assertTrue(solver.solveAt(mixture.ph));
    solver.setInertCharge(solver.inertCharge() - solver.charge());
    assertTrue(solver.solve());
    double byPh = mixture.slopes.ofCharge(ofCharge);
    double carbonateByPh = mixture.slopes.ofChargeOf(5, ofCarbonate);
    double ionicByPh = mixture.slopes.ofIonicStrength(ofIonicStrength);
    for (int j = 0; j <= COMPONENTS; j++) {
      double perMole = -ofCharge[j] / byPh;
      double own = mixture.total(j);
      if (own == 0 || j == COMPONENTS && Math.abs(own) < 1e-6) {
        continue;
      }
      int of = j;
      double step = 1e-3 * Math.min(own < 0 ? -own : own, Math.abs(1 / perMole));
      double ph = central(total -> neutral(mixture, of, total, m -> m.solver.ph()), own, step);
      double carbonate =
          central(total -> neutral(mixture, of, total, m -> m.chargeOf(5)), own, step);
      double ionic =
          central(total -> neutral(mixture, of, total, m -> m.solver.ionicStrength()), own, step);
      double rounding = 1e-15 / step;
      assertEquals(ph * byPh, perMole * byPh, 1e-6 + rounding, "pH by total " + j);
      assertEquals(carbonate, ofCarbonate[j] + carbonateByPh * perMole, 1e-6 + rounding);
      assertEquals(ionic, ofIonicStrength[j] + ionicByPh * perMole, 1e-6 + rounding);
    }
  }

  private static double neutral(
      Mixture mixture, int j, double total, ToDoubleFunction<Mixture> quantity) {
    double own = mixture.total(j);
    mixture.set(j, total);
    assertTrue(mixture.solver.solve());
    double found = quantity.applyAsDouble(mixture);
    mixture.set(j, own);
    return found;
  }

  /** Without inert charge its slope is the mean of what it is on both sides. */
  @Property(tries = 100, seed = "20261126")
  void theKinkOfTheInertChargeIsHalved(@ForAll long seed) {
    Mixture mixture = new Mixture(seed, level(seed), false);
    mixture.solver.setInertCharge(0);
    double[] perTotal = new double[COMPONENTS + 1];
    assertTrue(mixture.solver.solveAt(mixture.ph));
    mixture.slopes.ofCharge(perTotal);
    mixture.signs = 0;
    DoubleUnaryOperator f = value -> mixture.withTotal(COMPONENTS, value, m -> m.solver.charge());
    double mean = (upwards(f, 0, 1e-7) + upwards(f, 0, -1e-7)) / 2;
    if (mixture.signs != 3) {
      assertEquals(mean, perTotal[COMPONENTS], 1e-6);
    }
  }

  /**
   * Where activities are concentrations, charge against the total of a metal and the metal's
   * potential against pH are mixed second derivatives of one free energy: what a mole of metal sets
   * free in protons is what a pH sets free in metal.
   */
  @Property(tries = 200, seed = "20261126")
  void idealSlopesHaveTheSymmetryOfAFreeEnergy(@ForAll long seed) {
    Mixture mixture = new Mixture(seed, 0, false);
    double[] perTotal = new double[COMPONENTS + 1];
    assertTrue(mixture.solver.solveAt(mixture.ph));
    mixture.slopes.ofCharge(perTotal);
    assertEquals(1, perTotal[COMPONENTS], 0);
    for (int j = 0; j < COMPONENTS; j++) {
      if (mixture.total(j) == 0) {
        continue;
      }
      int of = j;
      ToDoubleFunction<Mixture> logActivity =
          m -> {
            m.solver.refresh();
            return Math.log10(
                of < Everything.METALS
                    ? m.solver.metalActivity(of)
                    : of == 3 ? m.total(of) : m.solver.activity(m.freeHandle(of)));
          };
      double byPh = central(ph -> mixture.at(ph, logActivity), mixture.ph, 2e-3);
      assertEquals(Everything.CHARGES[j] + byPh, perTotal[j], 1e-7, "component " + j);
    }
  }

  @Test
  void chargeOfAnIonWithoutProtonsFollowsItsTotalAlone() {
    Mixture mixture = new Mixture(5, 1, false);
    assertTrue(mixture.solver.solve());
    double[] perTotal = new double[COMPONENTS + 1];
    for (int j = 0; j < 4; j++) {
      assertEquals(0, mixture.slopes.ofChargeOf(j, perTotal), 0);
      double[] expected = new double[COMPONENTS + 1];
      expected[j] = Everything.CHARGES[j];
      assertArrayEquals(expected, perTotal);
    }
  }

  @Test
  void whatHasNoSlopesIsRefused() {
    Mixture mixture = new Mixture(5, 1, false);
    double[] perTotal = new double[COMPONENTS + 1];
    assertThrows(IllegalStateException.class, () -> mixture.slopes.ofCharge(perTotal));
    assertTrue(mixture.solver.solve());
    assertThrows(
        IllegalArgumentException.class, () -> mixture.slopes.ofCharge(new double[COMPONENTS]));
    assertThrows(
        IllegalArgumentException.class, () -> mixture.slopes.ofChargeOf(COMPONENTS, perTotal));
  }

  /** The state that slopes leave behind is the one found: the next solve has the same bits. */
  @Property(tries = 100, seed = "20261126")
  void slopesDoNotDisturbASeriesOfSolves(@ForAll long seed) {
    Mixture with = new Mixture(seed, level(seed), false);
    Mixture without = new Mixture(seed, level(seed), false);
    double[] perTotal = new double[COMPONENTS + 1];
    for (int point = 0; point < 10; point++) {
      for (Mixture mixture : new Mixture[] {with, without}) {
        mixture.solver.totals()[3] = 1e-3 * (1 + point);
        assertTrue(mixture.solver.solve());
      }
      assertEquals(without.solver.ph(), with.solver.ph(), 0);
      with.slopes.ofCharge(perTotal);
      with.slopes.ofChargeOf(5, perTotal);
    }
  }

  @Test
  void nothingIsAllocatedPerCall() {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    for (int level = 0; level < 3; level++) {
      Mixture mixture = new Mixture(3, level, false);
      double[] perTotal = new double[COMPONENTS + 1];
      assertTrue(mixture.solver.solve());
      run(mixture, perTotal, 5000);
      long before = threads.getCurrentThreadAllocatedBytes();
      run(mixture, perTotal, 1000);
      long bytes = threads.getCurrentThreadAllocatedBytes() - before;
      assertTrue(bytes < 1000, bytes + " bytes in 3000 calls");
    }
  }

  private static void run(Mixture mixture, double[] perTotal, int times) {
    for (int i = 0; i < times; i++) {
      mixture.slopes.ofCharge(perTotal);
      mixture.slopes.ofChargeOf(5, perTotal);
      mixture.slopes.ofIonicStrength(perTotal);
    }
  }

  /** By hand, without activity coefficients: held ammonia takes protons, its total has no slope. */
  @Test
  void aLigandThatIsHeldByItsFreeFormHasTheSlopesOfItsIons() {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, 0, 0.33, Activity.DAVIES, Activity.DAVIES);
    int ammonia = builder.ligand(0, Activity.DAVIES);
    builder.species(EquilibriumSystem.NONE, ammonia, 1, 1, 9.25, Activity.DAVIES);
    int chloride = builder.strongIon(-1, Activity.DAVIES);
    EquilibriumSolver solver = new EquilibriumSolver(builder.build());
    solver.totals()[chloride] = 0.01;
    solver.holdActivity(0, -3);
    assertTrue(solver.solveAt(8));
    double ammonium = 1e-3 * Math.pow(10, 9.25 - 8);
    assertEquals(ammonium - 0.01 + 1e-8 - 1e-6, solver.charge(), 1e-15);
    double[] perTotal = new double[3];
    EquilibriumSlopes slopes = new EquilibriumSlopes(solver);
    double byPH = slopes.ofCharge(perTotal);
    assertEquals(-Math.log(10) * (ammonium + 1e-8 + 1e-6), byPH, 1e-12);
    assertArrayEquals(new double[] {0, -1, 1}, perTotal, 1e-12);
    byPH = slopes.ofChargeOf(ammonia, perTotal);
    assertEquals(-Math.log(10) * ammonium, byPH, 1e-12);
    assertArrayEquals(new double[3], perTotal, 1e-12);
  }

  /**
   * By hand, without activity coefficients: of a pair of acids that is held, the ion follows the
   * root, one proton less: tenfold with each pH.
   */
  @Test
  void aPairThatIsHeldHasOneProtonForEachLigand() {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, 0, 0.33, Activity.DAVIES, Activity.DAVIES);
    int acid = builder.ligand(-1, Activity.DAVIES);
    builder.species(EquilibriumSystem.NONE, acid, 1, 1, 4.8, Activity.DAVIES);
    int pair = builder.species(EquilibriumSystem.NONE, acid, 2, 2, 9.6 + 1.5, Activity.DAVIES);
    EquilibriumSolver solver = new EquilibriumSolver(builder.build());
    solver.holdActivity(pair, -6);
    assertTrue(solver.solveAt(4));
    assertEquals(1, solver.protonsHeld(0));
    double free = Math.sqrt(1e-6 / Math.pow(10, 3.1));
    double[] perTotal = new double[2];
    double byPH = new EquilibriumSlopes(solver).ofChargeOf(acid, perTotal);
    assertEquals(-Math.log(10) * free, byPH, 1e-15);
    assertArrayEquals(new double[2], perTotal, 1e-15);
  }

  /** Calcium with carbonate, phosphate and hydroxide; one constant is off by so much. */
  private static EquilibriumSolver withConstantOff(int species, double by) {
    int[][] rows = {
      {-1, 1, 1, 1}, {-1, 1, 2, 1}, {-1, 2, 1, 1}, {-1, 2, 2, 1}, {-1, 2, 3, 1},
      {0, 1, 0, 1}, {0, 1, 1, 1}, {0, 1, 0, 2}, {0, 2, 1, 1}, {0, -1, -1, 0}
    };
    double[] constants = {10.3, 16.6, 12.3, 19.5, 21.6, 3.2, 11.4, 5.5, 15, -12.5};
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, 0.51, 0.33, Activity.DAVIES, Activity.DAVIES);
    builder.metal(2, Activity.DAVIES);
    builder.ligand(-2, Activity.DAVIES);
    builder.ligand(-3, Activity.DAVIES);
    for (int s = 0; s < rows.length; s++) {
      double constant = constants[s] + (s == species ? by : 0);
      builder.species(rows[s][0], rows[s][1], rows[s][2], rows[s][3], constant, Activity.DAVIES);
    }
    EquilibriumSolver solver = new EquilibriumSolver(builder.build());
    solver.totals()[0] = 0.02;
    solver.totals()[1] = 0.01;
    solver.totals()[2] = 0.005;
    solver.setInertCharge(-0.015);
    assertTrue(solver.solveAt(8.5));
    return solver;
  }

  /** The deprotonated forms are species 0 and 1 and have no constant. */
  @Test
  void slopesByConstantsOfPairsAreThoseOfDifferences() {
    EquilibriumSolver solver = withConstantOff(0, 0);
    EquilibriumSlopes slopes = new EquilibriumSlopes(solver);
    slopes.ofCharge(new double[4]);
    for (int s = 0; s < 10; s++) {
      int of = s;
      double expected = central(by -> withConstantOff(of, by).charge(), 0, 1e-3);
      assertEquals(expected, slopes.ofChargeByFormation(s + 2), 1e-10, "species " + s);
    }
  }

  @Test
  void theConstantOfALigandThatIsHeldHasNoSlope() {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, 0, 0.33, Activity.DAVIES, Activity.DAVIES);
    int ammonia = builder.ligand(0, Activity.DAVIES);
    int ammonium = builder.species(EquilibriumSystem.NONE, ammonia, 1, 1, 9.25, Activity.DAVIES);
    EquilibriumSolver solver = new EquilibriumSolver(builder.build());
    solver.holdActivity(0, -3);
    assertTrue(solver.solveAt(8));
    EquilibriumSlopes slopes = new EquilibriumSlopes(solver);
    slopes.ofCharge(new double[2]);
    assertEquals(
        "slope by a constant: an activity of the ligand is held",
        assertThrows(IllegalStateException.class, () -> slopes.ofChargeByFormation(ammonium))
            .getMessage());
  }

  @Test
  void aRefusalSaysHowLongTheArrayMustBe() {
    Everything everything = new Everything(false);
    EquilibriumSlopes slopes = new EquilibriumSlopes(new EquilibriumSolver(everything.system));
    assertEquals(
        "slopes: length 2; it must be 8, one for each component and one for the inert charge",
        assertThrows(IllegalArgumentException.class, () -> slopes.ofCharge(new double[2]))
            .getMessage());
  }
}
