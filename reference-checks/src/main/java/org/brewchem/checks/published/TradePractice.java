package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.brewchem.beer.Beer;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.TitrationCode;

/** Facts of the trade that everybody uses and nobody cites: they count as no published value. */
public final class TradePractice {

  private static final Pattern RANGE = Pattern.compile("([0-9.]+)-([0-9.]+)");

  private TradePractice() {}

  /** Returns the check. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "trade-practice",
            Suite.IDENTITY,
            "Facts of the trade",
            new Source("trade-practice", "common practice, no source"),
            "end point of an alkali titration when none is stated; which acidities are flagged as"
                + " unusual (1) or not (0): the highest published ones and one above 10 g/L",
            Tolerance.absolute(1e-9, "", "nothing to round"),
            "beer as lactic, wine as tartaric acid: nothing is computed in them",
            5,
            TradePractice::rows));
  }

  private static List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    rows.add(exact("end point of beer titrated with alkali, pH", 8.2, endPoint()));
    for (CsvTable.Line line : CsvTable.read("beer-acidity.csv", 5).where("unit", "% as lactic")) {
      Matcher range = RANGE.matcher(line.text("value"));
      if (range.find()) {
        rows.add(
            flag("highest of: " + line.text("item"), 0, 10 * Double.parseDouble(range.group(2))));
      }
    }
    rows.add(flag("10.1 g/L", 1, 10.1));
    return rows;
  }

  private static double endPoint() {
    return Titrant.sodiumHydroxide()
        .of(AmountConcentration.ofMolesPerLitre(0.1))
        .titrate(Volume.ofMillilitres(50))
        .endPoint()
        .value();
  }

  private static Row flag(String label, double expected, double gramsPerLitre) {
    Beer beer =
        Beer.of(
            PH.of(4), TitratableAcidity.ofGramsPerLitreAs(gramsPerLitre, Acid.LACTIC, PH.of(8.2)));
    boolean found =
        beer.notices().stream().anyMatch(notice -> notice.code() == TitrationCode.ACIDITY_UNUSUAL);
    return exact(label, expected, found ? 1 : 0);
  }

  private static Row exact(String label, double expected, double computed) {
    return Row.of(label, expected, computed, HowKnown.COMMON_PRACTICE);
  }
}
