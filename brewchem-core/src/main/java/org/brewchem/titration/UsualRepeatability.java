package org.brewchem.titration;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.brewchem.internal.DataTable;

/**
 * How closely determinations by a method usually agree: what judges replicates where the laboratory
 * states no repeatability of its own.
 *
 * @param relative relative standard deviation of one determination
 * @param published what is printed of the method
 */
record UsualRepeatability(double relative, String published) {

  private static final Map<String, UsualRepeatability> LIBRARY = read();

  private static Map<String, UsualRepeatability> read() {
    Map<String, UsualRepeatability> all = new HashMap<>();
    for (DataTable.Row row : DataTable.read(UsualRepeatability.class, "usual-repeatability.csv")) {
      all.put(
          row.text("method"),
          new UsualRepeatability(row.number("relative"), row.text("published")));
    }
    return Map.copyOf(all);
  }

  /** That of a method, or of any other where the table does not name it. */
  static UsualRepeatability of(String method) {
    return Objects.requireNonNull(LIBRARY.getOrDefault(method, LIBRARY.get("other")));
  }
}
