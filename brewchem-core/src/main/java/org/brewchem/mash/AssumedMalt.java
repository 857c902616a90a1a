package org.brewchem.mash;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import org.brewchem.internal.DataTable;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * What is assumed of a kind of malt, a row with its source. Its two numbers have one source of
 * uncertainty each, the same for all malts of the kind.
 *
 * @param curve the charge curve
 * @param source where the row comes from
 */
record AssumedMalt(MaltCurve curve, String source) {

  private static final Map<MaltKind, AssumedMalt> ALL = read();

  static AssumedMalt of(MaltKind kind) {
    return Objects.requireNonNull(ALL.get(kind));
  }

  private static Map<MaltKind, AssumedMalt> read() {
    Map<MaltKind, AssumedMalt> all = new EnumMap<>(MaltKind.class);
    for (DataTable.Row row : DataTable.read(AssumedMalt.class, "malts.csv")) {
      for (MaltKind kind : MaltKind.values()) {
        if (row.text("kind").equals(kind.toString())) {
          all.put(kind, new AssumedMalt(curve(kind, row), MashValues.source(row)));
        }
      }
    }
    return all;
  }

  private static MaltCurve curve(MaltKind kind, DataTable.Row row) {
    Source pH =
        Source.of("pH of " + kind + " malt, assumed", row.number("pH"), row.number("u_pH"), "");
    double lower = row.number("capacity_low");
    double upper = row.number("capacity_high");
    double spread = MashValues.logarithmicSpread(lower, upper);
    Source logarithm =
        Source.of(
            "capacity of " + kind + " malt, assumed, its logarithm",
            Math.log(lower * upper) / 2,
            spread,
            "");
    // Of a lognormal capacity the inverse is lognormal too. The pH is linear in the inverse, whose
    // mean is therefore the estimate.
    double mean = Math.exp(spread * spread / 2) / Math.sqrt(lower * upper);
    return MaltCurve.straight(Traced.of(pH), Traced.of(logarithm).times(mean).withValue(-mean));
  }
}
