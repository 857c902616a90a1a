package org.brewchem.quality;

import org.brewchem.internal.DataTable;

/** The printed constants of charts of individuals and their moving ranges. */
final class ChartConstants {

  /** Average range of two neighbours over the standard deviation. */
  static final double D2 = constant("d2");

  /** Upper limit of a range of two over the average range. */
  static final double D4 = constant("D4");

  private ChartConstants() {}

  private static double constant(String symbol) {
    return DataTable.read(ChartConstants.class, "control-chart-constants.csv").stream()
        .filter(row -> row.text("symbol").equals(symbol))
        .findFirst()
        .orElseThrow()
        .number("value");
  }
}
