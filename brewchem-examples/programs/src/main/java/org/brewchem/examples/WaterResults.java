package org.brewchem.examples;

import java.util.List;
import org.brewchem.figure.Figure;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.brewchem.water.WaterFigures;

/**
 * The loop that the programs with many waters share: pH, alkalinity and residual alkalinity of a
 * table of waters, and why a row has none.
 */
public final class WaterResults {

  /** The name of the column of text that says why a row has no number, or is empty. */
  public static final String FAILURE = "failure";

  /** The figures that the columns hold. */
  public static final List<Figure<?>> FIGURES =
      List.of(Figures.PH_VALUE, Figures.CARBONATE_ALKALINITY, WaterFigures.RESIDUAL_ALKALINITY);

  private WaterResults() {}

  /**
   * Solves all rows.
   *
   * @param table the waters
   * @param chemistry under which they are solved
   * @param threads how many threads solve them
   * @return a table of a column to each of {@link #FIGURES}, the texts of the waters and the texts
   *     {@link #FAILURE}
   */
  public static Table of(Table table, Chemistry chemistry, int threads) {
    List<Column> columns =
        Waters.from(table)
            .under(chemistry)
            .parallel(threads)
            .columns(FIGURES.toArray(new Figure<?>[0]));
    // Residual alkalinity rests on all that the other two rest on, and so fails where they do.
    List<String> reasons = columns.get(columns.size() - 1).reasons();
    Table results = Table.of(columns.toArray(new Column[0]));
    for (String name : table.textNames()) {
      results = results.withTexts(name, table.texts(name));
    }
    return results.withTexts(FAILURE, reasons);
  }
}
