package org.brewchem.table;

import java.util.Locale;
import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.water.WaterCode;

/**
 * How the ion balances of one source, a laboratory or a whole table, would change if one of its
 * columns were on another basis in every row. Errors of single rows scatter; a wrong basis moves
 * the median.
 *
 * @param source the source; empty for a whole table
 * @param code which reading it is
 * @param condition in words, such as "the sulfate were stated as sulfur"
 * @param rows how many rows have the figure and a balance
 * @param medianAsStated the median of the ion balance as stated, per cent of the sum
 * @param medianIfSo the same if the column is read so, per cent
 * @param typicalAsStated the median of its absolute value as stated, per cent
 * @param typicalIfSo the same if the column is read so, per cent
 * @param shareNearer the share of rows whose balance comes nearer to 0, 0 to 1
 * @param suspected whether all this is more than chance and no other reading does clearly better
 */
public record SourceBasis(
    String source,
    WaterCode code,
    String condition,
    int rows,
    double medianAsStated,
    double medianIfSo,
    double typicalAsStated,
    double typicalIfSo,
    double shareNearer,
    boolean suspected) {

  /**
   * Makes a view of one reading.
   *
   * @param source the source; empty for a whole table
   * @param code which reading it is
   * @param condition in words, such as "the sulfate were stated as sulfur"
   * @param rows how many rows have the figure and a balance
   * @param medianAsStated the median of the ion balance as stated, per cent of the sum
   * @param medianIfSo the same if the column is read so, per cent
   * @param typicalAsStated the median of its absolute value as stated, per cent
   * @param typicalIfSo the same if the column is read so, per cent
   * @param shareNearer the share of rows whose balance comes nearer to 0, 0 to 1
   * @param suspected whether all this is more than chance and no other reading does clearly better
   * @throws IllegalArgumentException if a number is not finite or the share is not from 0 to 1
   */
  public SourceBasis {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(condition, "condition");
    Checks.finite("median as stated", medianAsStated, "%");
    Checks.finite("median if so", medianIfSo, "%");
    Checks.finite("typical balance as stated", typicalAsStated, "%");
    Checks.finite("typical balance if so", typicalIfSo, "%");
    Checks.inRange("share of rows", shareNearer, "", 0, 1);
  }

  /**
   * Returns the view in a sentence.
   *
   * @return such as {@code if the sulfate were stated as sulfur: median ion balance +0.7 % instead
   *     of +14.1 %, 99 % of 100 rows nearer to 0: suspected}
   */
  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%sif %s: median ion balance %+.1f %% instead of %+.1f %%, %.0f %% of %d rows nearer to 0%s",
        source.isEmpty() ? "" : source + ": ",
        condition,
        medianIfSo,
        medianAsStated,
        100 * shareNearer,
        rows,
        suspected ? ": suspected" : "");
  }
}
