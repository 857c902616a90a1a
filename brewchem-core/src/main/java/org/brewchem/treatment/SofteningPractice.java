package org.brewchem.treatment;

import java.util.HashMap;
import java.util.Map;
import org.brewchem.internal.DataTable;

/** The rows of what practice reaches in softening. */
final class SofteningPractice {

  private static final Map<String, DataTable.Row> ROWS = read();

  private SofteningPractice() {}

  private static Map<String, DataTable.Row> read() {
    Map<String, DataTable.Row> rows = new HashMap<>();
    DataTable.read(SofteningPractice.class, "softening.csv")
        .forEach(row -> rows.put(row.text("item"), row));
    return rows;
  }

  private static DataTable.Row row(String item) {
    DataTable.Row row = ROWS.get(item);
    if (row == null) {
      throw new IllegalStateException("softening.csv: there is no row \"" + item + "\"");
    }
    return row;
  }

  static double number(String item) {
    return row(item).number("value");
  }

  /** What lime leaves in practice, where the kernel goes to equilibrium. */
  static String ofLime() {
    DataTable.Row left = row("carbonate hardness left by lime in a brewhouse");
    return "Practice stops earlier than equilibrium: lime leaves about "
        + left.text("value")
        + " "
        + left.text("unit")
        + " of carbonate hardness ("
        + left.text("source_key")
        + ", "
        + left.text("how_known")
        + "). Measure the water";
  }

  /** Why a treatment that ends at equilibrium stops earlier in practice. */
  static String stopsEarlier() {
    return "this is equilibrium, and practice stops earlier; no published figure that was seen says by"
        + " how much. Measure the water";
  }
}
