package org.brewchem.internal;

import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.fraction.BigFraction;

/**
 * The proof, in exact arithmetic, that linear rows cannot hold together: multipliers with which
 * they add up to 0 being at least 1 (J. Farkas 1902, from memory). Immutable.
 *
 * <p>Every number is a fraction of whole numbers; a double is the fraction that it stands for, so
 * nothing is rounded. It finds the multipliers where they are unique but for a factor, as those of
 * rows are of which none can be left out.
 */
public final class Contradiction {

  private final BigFraction[][] rows;
  private final BigFraction[] limits;
  private final BigFraction[] multipliers;

  private Contradiction(BigFraction[][] rows, BigFraction[] limits, BigFraction[] multipliers) {
    this.rows = rows;
    this.limits = limits;
    this.multipliers = multipliers;
  }

  /**
   * Finds the multipliers.
   *
   * @param rows coefficients, row by row, all of one length
   * @param limits what each row is at least, or equal to
   * @param equal whether a row is an equation, whose multiplier may have either sign
   * @return the proof; empty where the rows do not contradict each other, or do so in more than one
   *     way
   */
  public static Optional<Contradiction> of(
      BigFraction[][] rows, BigFraction[] limits, boolean[] equal) {
    BigFraction[] found = nullVector(rows);
    if (found.length == 0) {
      return Optional.empty();
    }
    BigFraction sum = BigFraction.ZERO;
    for (int r = 0; r < rows.length; r++) {
      sum = sum.add(found[r].multiply(limits[r]));
    }
    if (sum.equals(BigFraction.ZERO)) {
      return Optional.empty();
    }
    for (int r = 0; r < found.length; r++) {
      found[r] = found[r].divide(sum);
      if (!equal[r] && found[r].compareTo(BigFraction.ZERO) < 0) {
        return Optional.empty();
      }
    }
    BigFraction[][] ownRows =
        Arrays.stream(rows).map(BigFraction[]::clone).toArray(BigFraction[][]::new);
    Contradiction contradiction = new Contradiction(ownRows, limits.clone(), found);
    return contradiction.holds() ? Optional.of(contradiction) : Optional.empty();
  }

  /** The multipliers that make the rows cancel; empty unless they are unique but for a factor. */
  private static BigFraction[] nullVector(BigFraction[][] rows) {
    int m = rows.length;
    int n = m == 0 ? 0 : rows[0].length;
    BigFraction[][] matrix = new BigFraction[n][m];
    for (int i = 0; i < n; i++) {
      for (int r = 0; r < m; r++) {
        matrix[i][r] = rows[r][i];
      }
    }
    int[] pivots = new int[m];
    Arrays.fill(pivots, -1);
    int rank = 0;
    for (int column = 0; column < m; column++) {
      int pivot = rank;
      while (pivot < n && matrix[pivot][column].equals(BigFraction.ZERO)) {
        pivot++;
      }
      if (pivot == n) {
        continue;
      }
      BigFraction[] swapped = matrix[pivot];
      matrix[pivot] = matrix[rank];
      matrix[rank] = swapped;
      eliminate(matrix, rank, column);
      pivots[column] = rank++;
    }
    if (rank != m - 1) {
      return new BigFraction[0];
    }
    int free = 0;
    while (pivots[free] >= 0) {
      free++;
    }
    BigFraction[] vector = new BigFraction[m];
    for (int column = 0; column < m; column++) {
      vector[column] = column == free ? BigFraction.ONE : matrix[pivots[column]][free].negate();
    }
    return vector;
  }

  private static void eliminate(BigFraction[][] matrix, int row, int column) {
    BigFraction[] own = matrix[row];
    BigFraction pivot = own[column];
    for (int c = 0; c < own.length; c++) {
      own[c] = own[c].divide(pivot);
    }
    for (int other = 0; other < matrix.length; other++) {
      BigFraction factor = matrix[other][column];
      if (other != row && !factor.equals(BigFraction.ZERO)) {
        for (int c = 0; c < own.length; c++) {
          matrix[other][c] = matrix[other][c].subtract(factor.multiply(own[c]));
        }
      }
    }
  }

  /**
   * Adds the rows up once more.
   *
   * @return true if every coefficient cancels exactly and the limits add up to exactly 1
   */
  public boolean holds() {
    int n = rows[0].length;
    for (int i = 0; i < n; i++) {
      BigFraction sum = BigFraction.ZERO;
      for (int r = 0; r < rows.length; r++) {
        sum = sum.add(multipliers[r].multiply(rows[r][i]));
      }
      if (!sum.equals(BigFraction.ZERO)) {
        return false;
      }
    }
    BigFraction sum = BigFraction.ZERO;
    for (int r = 0; r < rows.length; r++) {
      sum = sum.add(multipliers[r].multiply(limits[r]));
    }
    return sum.equals(BigFraction.ONE);
  }

  /**
   * Returns a multiplier.
   *
   * @param row the row
   * @return its multiplier, rounded to a double for a reader
   */
  public double multiplier(int row) {
    return multipliers[row].doubleValue();
  }

  /**
   * Returns a multiplier as it is.
   *
   * @param row the row
   * @return the fraction
   */
  public BigFraction exactMultiplier(int row) {
    return multipliers[row];
  }
}
