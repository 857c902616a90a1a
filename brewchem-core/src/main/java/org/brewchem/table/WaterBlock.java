package org.brewchem.table;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.brewchem.solution.EquilibriumRows;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.substance.Component;
import org.jspecify.annotations.Nullable;

/**
 * A work space that is filled with one block of rows after the other, which are neutral by their
 * ions, and solves each block at once. Blocks begin at multiples of their size. Mutable, for one
 * thread.
 */
final class WaterBlock {

  private final EquilibriumRows rows;
  private final Map<Integer, Input> inputs;
  private final Set<Integer> mayBeMissing;
  private final int size;
  private final int carbonate;
  private final double[] read = new double[EquilibriumRows.SIZE];
  private final double[] alkalinity = new double[EquilibriumRows.SIZE];
  private final @Nullable Failure[] faults = new @Nullable Failure[EquilibriumRows.SIZE];
  private int first = -1;
  private boolean alkalinityFound;

  /**
   * Works on a work space.
   *
   * @param inputs what states the total of each component, mol/kg, by its index
   * @param mayBeMissing the components of which an empty cell counts as 0
   * @param size the rows of the table
   */
  WaterBlock(
      EquilibriumRows rows, Map<Integer, Input> inputs, Set<Integer> mayBeMissing, int size) {
    this.rows = rows;
    this.inputs = inputs;
    this.mayBeMissing = mayBeMissing;
    this.size = size;
    carbonate = rows.indexOf(Component.CARBONATE);
  }

  /** Solves the block of a row, if it is not the last one, and tells where the row stands in it. */
  int place(int index) {
    int from = index & -EquilibriumRows.SIZE;
    if (from != first) {
      solve(from);
    }
    return index - from;
  }

  /** Why the inputs of a row are none to solve, or null. */
  @Nullable Failure fault(int place) {
    return faults[place];
  }

  /** Why a row without a fault has no solution. */
  Optional<NoSolutionException> failure(int place) {
    return rows.failure(place);
  }

  double pH(int place) {
    return rows.pH(place);
  }

  /** mol/kg. */
  double ionicStrength(int place) {
    return rows.ionicStrength(place);
  }

  /** Eq/kg. */
  double alkalinity(int place) {
    if (!alkalinityFound) {
      rows.chargesOf(carbonate, alkalinity);
      alkalinityFound = true;
    }
    return -alkalinity[place];
  }

  private void solve(int from) {
    int count = Math.min(EquilibriumRows.SIZE, size - from);
    Arrays.fill(faults, null);
    inputs.forEach(
        (component, input) -> {
          input.read(from, count, read, faults, mayBeMissing.contains(component));
          rows.setTotals(component, read, count);
        });
    rows.solve(count);
    first = from;
    alkalinityFound = false;
  }
}
