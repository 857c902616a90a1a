package org.brewchem.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.brewchem.OutOfRangeException;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class EquilibriumRowsTest {

  private static final List<Component> COMPONENTS =
      List.of(
          Component.SODIUM,
          Component.CALCIUM,
          Component.CHLORIDE,
          Component.SULFATE,
          Component.PHOSPHATE,
          Component.CITRATE,
          Component.LACTATE,
          Component.CARBONATE);

  private static EquilibriumRows rows(Level level) {
    return EquilibriumRows.of(COMPONENTS, Temperature.ofCelsius(25), Chemistry.of(level));
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void agreesWithSingleSolvesAtEveryLevel(Level level) {
    EquilibriumRows rows = rows(level);
    Equilibria single = Equilibria.of(COMPONENTS, Temperature.ofCelsius(25), Chemistry.of(level));
    assertEquals(level != Level.PAIRS, rows.isInLockstep());
    Random random = new Random(5);
    double[][] totals = new double[COMPONENTS.size()][EquilibriumRows.SIZE];
    double[] inert = new double[EquilibriumRows.SIZE];
    double[] carbonate = new double[EquilibriumRows.SIZE];
    double[] sodium = new double[EquilibriumRows.SIZE];
    int carbonates = rows.indexOf(Component.CARBONATE);
    for (int block = 0; block < 10; block++) {
      int count = block == 0 ? EquilibriumRows.SIZE : 1 + random.nextInt(EquilibriumRows.SIZE);
      for (int c = 0; c < totals.length; c++) {
        for (int row = 0; row < count; row++) {
          // now and then a brine, which is solved alone at every level
          totals[c][row] = Math.pow(10, -4 + 3 * random.nextDouble()) * (row % 17 == 3 ? 20 : 1);
        }
        rows.setTotals(c, totals[c], count);
      }
      for (int row = 0; row < count; row++) {
        inert[row] = 0.01 * random.nextGaussian();
        rows.setInertCharge(row, inert[row]);
      }
      rows.solve(count);
      rows.chargesOf(carbonates, carbonate);
      rows.chargesOf(rows.indexOf(Component.SODIUM), sodium);
      for (int row = 0; row < count; row++) {
        for (int c = 0; c < totals.length; c++) {
          single.setTotal(c, totals[c][row]);
        }
        single.setInertCharge(inert[row]);
        single.forget();
        assertEquals(single.pH(), rows.pH(row), 1e-12);
        assertEquals(
            single.ionicStrength(), rows.ionicStrength(row), 1e-12 * single.ionicStrength());
        assertEquals(single.chargeOf(carbonates), carbonate[row], 1e-12 * totals[7][row]);
        assertEquals(totals[0][row], sodium[row], 1e-12 * totals[0][row]);
        assertTrue(rows.failure(row).isEmpty());
      }
    }
  }

  @Test
  void tellsWhichRowHasNoPH() {
    EquilibriumRows rows =
        EquilibriumRows.of(
            List.of(Component.SODIUM), Temperature.ofCelsius(25), Chemistry.of(Level.ACTIVITY));
    rows.setTotal(0, 1, 1e4);
    rows.solve(3);
    assertEquals(rows.pH(0), rows.pH(2));
    assertTrue(rows.failure(1).isPresent());
    assertThrows(NoSolutionException.class, () -> rows.pH(1));
    assertThrows(NoSolutionException.class, () -> rows.ionicStrength(1));
    double[] charges = new double[EquilibriumRows.SIZE];
    rows.chargesOf(0, charges);
    assertEquals(0, charges[2]);
  }

  @Test
  void anotherStartsAfresh() {
    EquilibriumRows rows = rows(Level.ACTIVITY);
    rows.setTotal(rows.indexOf(Component.LACTATE), 0, 0.01);
    EquilibriumRows other = rows.another();
    other.solve(1);
    rows.solve(1);
    assertTrue(rows.pH(0) < other.pH(0), "the first is lactic acid");
    assertEquals(other.pH(0), solvedLikeAnEquilibria(), 0);
  }

  private static double solvedLikeAnEquilibria() {
    EquilibriumRows like =
        EquilibriumRows.like(
            Equilibria.of(COMPONENTS, Temperature.ofCelsius(25), Chemistry.of(Level.ACTIVITY)));
    like.solve(1);
    return like.pH(0);
  }

  @Test
  void refusesByName() {
    EquilibriumRows rows = rows(Level.ACTIVITY);
    double[] few = new double[3];
    rows.solve(2);
    for (Executable call :
        new Executable[] {
          () -> rows.setTotal(0, 0, -1),
          () -> rows.setTotal(0, EquilibriumRows.SIZE, 1),
          () -> rows.setTotal(COMPONENTS.size(), 0, 1),
          () -> rows.setTotals(0, few, 4),
          () -> rows.setTotals(0, few, -1),
          () -> rows.setTotals(0, new double[] {Double.NaN}, 1),
          () -> rows.setInertCharge(0, Double.POSITIVE_INFINITY),
          () -> rows.solve(-1),
          () -> rows.solve(EquilibriumRows.SIZE + 1),
          () -> rows.chargesOf(-1, new double[EquilibriumRows.SIZE]),
          () -> rows.chargesOf(0, few)
        }) {
      assertThrows(OutOfRangeException.class, call);
    }
    rows.solve(2);
    assertThrows(OutOfRangeException.class, () -> rows.pH(2));
    assertThrows(IllegalArgumentException.class, () -> rows.indexOf(Component.ACETATE));
  }
}
