package org.brewchem.mash;

import java.util.LinkedHashMap;
import java.util.Map;
import org.brewchem.internal.DataTable;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/** The numbers of the mash that no balance tells, by item, each a row with its source. */
final class MashValues {

  /** Half of a 95 % interval of the normal distribution, in standard deviations. */
  static final double HALF_95 = 1.959963984540054;

  private static final Map<String, DataTable.Row> ROWS = read();

  /**
   * The factor on Kolbach's term, its logarithm counted: one source for all mashes, because an
   * error of the term is the same for every mash until it was measured.
   */
  private static final Traced KOLBACH_FACTOR = kolbachFactor();

  private MashValues() {}

  private static Map<String, DataTable.Row> read() {
    Map<String, DataTable.Row> rows = new LinkedHashMap<>();
    for (DataTable.Row row : DataTable.read(MashValues.class, "mash-values.csv")) {
      rows.put(row.text("item"), row);
    }
    return rows;
  }

  static DataTable.Row row(String item) {
    DataTable.Row row = ROWS.get(item);
    if (row == null) {
      throw new IllegalStateException("mash-values.csv: there is no item " + item);
    }
    return row;
  }

  static double value(String item) {
    return row(item).number("value");
  }

  /** Source and how it is known, as an explanation shows it. */
  static String source(DataTable.Row row) {
    return row.text("source_key") + ", " + row.text("locator") + " (" + row.text("how_known") + ")";
  }

  /** Standard deviation of the logarithm of what lies between two positive numbers by 95 %. */
  static double logarithmicSpread(double lower, double upper) {
    return Math.log(upper / lower) / (2 * HALF_95);
  }

  static Traced factorOnKolbachsTerm() {
    return KOLBACH_FACTOR;
  }

  /** What a brew differs by from others of its grist: a source of its own for each brew. */
  static Source anotherBrew() {
    return Source.of("brew to brew", 0, value("brew to brew"), "");
  }

  private static Traced kolbachFactor() {
    DataTable.Row row = row("Kolbach factor");
    double median = row.number("value");
    Source logarithm =
        Source.of(
            "factor on Kolbach's term in a mash, its logarithm",
            Math.log(median),
            logarithmicSpread(row.number("lower"), row.number("upper")),
            "");
    return Traced.of(logarithm).times(median).withValue(median);
  }
}
