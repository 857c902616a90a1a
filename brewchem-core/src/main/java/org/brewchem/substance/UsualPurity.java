package org.brewchem.substance;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.brewchem.figure.Notice;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.MassFraction;

/**
 * What a salt or a lime holds as it is bought, by what specifications allow: any share between two
 * limits is as likely as any other ({@code usual-purities.csv}).
 *
 * @param counted the compound that the limits count
 * @param least lower limit, % by mass
 * @param most upper limit, % by mass
 * @param provenance where the limits come from
 */
record UsualPurity(Compound counted, double least, double most, Provenance provenance) {

  private static final Map<String, ResourceTable.Row> ROWS = read();

  private static Map<String, ResourceTable.Row> read() {
    Map<String, ResourceTable.Row> rows = new LinkedHashMap<>();
    ResourceTable.read("usual-purities.csv").forEach(row -> rows.put(row.text("compound"), row));
    return rows;
  }

  /** The row of a compound; its own limits may count it without its water of hydration. */
  static Optional<UsualPurity> of(Compound compound) {
    return Optional.ofNullable(ROWS.get(compound.name()))
        .map(
            row -> {
              String counted = row.text("counted_as");
              return new UsualPurity(
                  counted.equals(compound.name()) ? compound : Salt.named(counted),
                  row.number("least"),
                  row.number("most"),
                  row.provenance());
            });
  }

  /** The compounds that have a row, as an error names them. */
  static String known() {
    return String.join("; ", ROWS.keySet());
  }

  MassFraction middle() {
    return MassFraction.ofMassPercent((least + most) / 2);
  }

  double relativeStandardUncertainty() {
    return (most - least) / (most + least) / Math.sqrt(3);
  }

  Notice notice() {
    String subject = "assay of " + counted.name();
    return Notice.of(
        SubstanceCode.ASSUMED_PURITY,
        subject,
        subject
            + ": assumed between "
            + NumberText.plain(least)
            + " and "
            + NumberText.plain(most)
            + " % by mass, as bags may hold ("
            + provenance.sourceKey()
            + ", "
            + provenance.locator()
            + ", "
            + provenance.howKnown()
            + "); state the assay of the bag");
  }
}
