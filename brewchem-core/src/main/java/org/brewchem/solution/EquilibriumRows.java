package org.brewchem.solution;

import java.util.Collection;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.OutOfRangeException;
import org.brewchem.internal.Checks;
import org.brewchem.internal.LockstepSolver;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.jspecify.annotations.Nullable;

/**
 * A work space that solves many mixtures of the same components at once: totals in, pH out, a block
 * of rows at a time, and nothing allocated per row.
 *
 * <p>Where activities follow from charge alone and no ion pairs are counted (levels ideal and
 * activity), the rows of a block are solved side by side, in a quarter to a half of the time that
 * {@link Equilibria} takes; what does not settle there, and every other chemistry, is solved by
 * {@code Equilibria} row by row. The pH of both agrees within 1e-12. A row's result depends on no
 * other row. Amounts are mol per kg of water, charges eq per kg. Mutable and for one thread at a
 * time; make one per thread with {@link #another()}.
 */
public final class EquilibriumRows {

  /** The rows of a block. */
  public static final int SIZE = LockstepSolver.LANES;

  private static final String ROW = "row";

  private final Equilibria single;
  private final @Nullable LockstepSolver lockstep;
  private final double[][] totals;
  private final double[] inertCharge;
  private final double[] pH = new double[SIZE];
  private final double[] ionicStrength = new double[SIZE];
  private final @Nullable NoSolutionException[] failures = new @Nullable NoSolutionException[SIZE];
  private int solved;

  private EquilibriumRows(Equilibria single) {
    this.single = single;
    int components = single.components().size();
    totals = new double[components][];
    LockstepSolver solver =
        LockstepSolver.serves(single.compiled.system)
            ? new LockstepSolver(single.compiled.system)
            : null;
    for (int c = 0; c < components; c++) {
      totals[c] = solver == null ? new double[SIZE] : solver.totals(c);
    }
    inertCharge = solver == null ? new double[SIZE] : solver.inertCharge();
    lockstep = solver;
  }

  /**
   * Makes a work space with all totals zero.
   *
   * @param components the components, each once
   * @param temperature 0 to 100 °C
   * @param chemistry the chemistry
   * @return the work space
   * @throws IllegalArgumentException if the temperature is out of range, a component stands twice,
   *     or the chemistry is without its constants
   */
  public static EquilibriumRows of(
      Collection<Component> components, Temperature temperature, Chemistry chemistry) {
    Objects.requireNonNull(components, "components");
    return new EquilibriumRows(Equilibria.of(components, temperature, chemistry));
  }

  /**
   * Makes a work space for the mixtures of another.
   *
   * @param equilibria a work space of the components, which is not touched
   * @return a work space with all totals zero
   */
  public static EquilibriumRows like(Equilibria equilibria) {
    return new EquilibriumRows(Objects.requireNonNull(equilibria, "equilibria").another());
  }

  /**
   * Makes a further work space for the same mixtures, for another thread.
   *
   * @return a work space with all totals zero
   */
  public EquilibriumRows another() {
    return new EquilibriumRows(single.another());
  }

  /** {@return whether the rows are solved side by side} */
  public boolean isInLockstep() {
    return lockstep != null;
  }

  /**
   * Returns the index of a component for {@link #setTotal}.
   *
   * @param component the component
   * @return its index
   * @throws IllegalArgumentException if it is none of this mixture
   */
  public int indexOf(Component component) {
    return single.indexOf(component);
  }

  /**
   * Sets a total concentration of a row.
   *
   * @param index the component's index
   * @param row the row, from 0 and below {@link #SIZE}
   * @param molesPerKilogram the total, mol per kg of water, 0 or more
   * @throws IllegalArgumentException if the total is negative or not finite
   */
  public void setTotal(int index, int row, double molesPerKilogram) {
    double[] total = totals[Checks.index("index", index, totals.length)];
    if (!(molesPerKilogram >= 0 && molesPerKilogram < Double.POSITIVE_INFINITY)) {
      throw refused(index, molesPerKilogram);
    }
    total[Checks.index(ROW, row, SIZE)] = molesPerKilogram;
  }

  private OutOfRangeException refused(int index, double moles) {
    return Checks.outOfRange(
        single.components().get(index).name(), moles, "mol/kg", "a finite number of 0 or more");
  }

  /**
   * Sets a total concentration of the first rows.
   *
   * @param index the component's index
   * @param molesPerKilogram the totals by row, mol per kg of water, 0 or more
   * @param rows how many of them, 0 to {@link #SIZE}
   * @throws IllegalArgumentException if a total is negative or not finite, or there are not so many
   */
  public void setTotals(int index, double[] molesPerKilogram, int rows) {
    Checks.inRange("rows", rows, "", 0, Math.min(SIZE, molesPerKilogram.length));
    double[] total = totals[Checks.index("index", index, totals.length)];
    for (int row = 0; row < rows; row++) {
      double moles = molesPerKilogram[row];
      if (!(moles >= 0 && moles < Double.POSITIVE_INFINITY)) {
        throw refused(index, moles);
      }
      total[row] = moles;
    }
  }

  /**
   * Sets the charge of the inert univalent ions of a row that are there in addition to the
   * components.
   *
   * @param row the row, from 0 and below {@link #SIZE}
   * @param equivalentsPerKilogram their net charge, eq per kg of water, of either sign
   * @throws IllegalArgumentException if it is not finite
   */
  public void setInertCharge(int row, double equivalentsPerKilogram) {
    inertCharge[Checks.index(ROW, row, SIZE)] =
        Checks.finite("inert charge", equivalentsPerKilogram, "Eq/kg");
  }

  /**
   * Finds the pH at which each row is neutral.
   *
   * @param rows how many rows, from the first, 0 to {@link #SIZE}
   * @throws IllegalArgumentException if there are not so many rows
   */
  public void solve(int rows) {
    solved = 0;
    int count = Checks.index("rows", rows, SIZE + 1);
    LockstepSolver side = lockstep;
    boolean all = side != null && side.solve(count);
    for (int row = 0; row < count; row++) {
      failures[row] = null;
      if (side != null && (all || side.isSettled(row))) {
        pH[row] = side.ph(row);
        ionicStrength[row] = side.ionicStrength(row);
      } else {
        solveAlone(row);
      }
    }
    solved = count;
  }

  private void solveAlone(int row) {
    fill(row);
    try {
      pH[row] = single.pH();
      ionicStrength[row] = single.ionicStrength();
    } catch (NoSolutionException e) {
      failures[row] = e;
    }
  }

  private void fill(int row) {
    for (int c = 0; c < totals.length; c++) {
      single.setTotal(c, totals[c][row]);
    }
    single.setInertCharge(inertCharge[row]);
    single.forget();
  }

  /**
   * Returns the pH of a row of the last {@link #solve}.
   *
   * @param row the row
   * @return the pH, -log10 of the H+ activity
   * @throws NoSolutionException if there is none between -3 and 17
   * @throws IllegalArgumentException if the row was not solved
   */
  public double pH(int row) {
    check(row);
    return pH[row];
  }

  /**
   * Returns the ionic strength of a row of the last {@link #solve}.
   *
   * @param row the row
   * @return mol per kg of water
   * @throws NoSolutionException if the row has no pH
   * @throws IllegalArgumentException if the row was not solved
   */
  public double ionicStrength(int row) {
    check(row);
    return ionicStrength[row];
  }

  /**
   * Returns why a row of the last {@link #solve} has no pH.
   *
   * @param row the row
   * @return the reason; empty if it has one
   * @throws IllegalArgumentException if the row was not solved
   */
  public Optional<NoSolutionException> failure(int row) {
    return Optional.ofNullable(failures[Checks.index(ROW, row, solved)]);
  }

  private void check(int row) {
    NoSolutionException failure = failures[Checks.index(ROW, row, solved)];
    if (failure != null) {
      throw failure;
    }
  }

  /**
   * Finds the charge that a component carries in each row of the last {@link #solve}, in all its
   * forms and pairs, as {@link Equilibria#chargeOf}.
   *
   * @param index the component's index
   * @param charges receives eq per kg of water by row; has room for {@link #SIZE}. What it receives
   *     for a row without a pH does not matter.
   * @throws IllegalArgumentException if there is no such component, or not so much room
   */
  public void chargesOf(int index, double[] charges) {
    Checks.index("index", index, totals.length);
    Checks.inRange("length of charges", charges.length, "", SIZE, Integer.MAX_VALUE);
    LockstepSolver side = lockstep;
    boolean together =
        side != null && single.compiled.ligands.contains(single.components().get(index));
    if (side != null && together) {
      side.chargesOf(index, charges);
    }
    for (int row = 0; row < solved; row++) {
      if (failures[row] == null && !(side != null && together && side.isSettled(row))) {
        fill(row);
        single.pH();
        charges[row] = single.chargeOf(index);
      }
    }
  }
}
