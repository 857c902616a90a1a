package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.List;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.titration.AlkalinitySplit;

/** Alkalinity titrations: the split of P and M, and the pH of the equivalence point. */
public final class AlkalinityTitrations {

  private static final PH PHENOLPHTHALEIN = PH.of(8.3);
  private static final double TOTAL = 100;

  private AlkalinityTitrations() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "p-and-m-cases",
            Suite.IDENTITY,
            "The five cases of P and M",
            new Source("sm-2320", "classical P and M relations (Standard Methods 2320)"),
            "the split of an invented pair of alkalinities for each case of the table",
            Tolerance.absolute(1e-9, "mg/L as CaCO3", "arithmetic"),
            "",
            15,
            AlkalinityTitrations::cases),
        new ReferenceCheck(
            "alkalinity-end-points",
            Suite.PUBLISHED,
            "pH of the equivalence point of an alkalinity titration",
            new Source("sm-2320", "Standard Methods 2320 B"),
            "pH of carbonic acid as concentrated as the alkalinity, closed to the air",
            Tolerance.absolute(
                0.2,
                "pH",
                "half of the carbon dioxide lost while stirring raises the point by 0.15, and half"
                    + " the last printed digit is 0.05"),
            "end points for silicate, phosphate and routine samples, which are conventions",
            3,
            AlkalinityTitrations::equivalencePoints));
  }

  private static List<Row> cases() {
    List<Row> rows = new ArrayList<>();
    addCase(rows, "P = 0", 0, 0, 0, TOTAL);
    addCase(rows, "P below M/2", 30, 0, 2 * 30, TOTAL - 2 * 30);
    addCase(rows, "P = M/2", 50, 0, 2 * 50, 0);
    addCase(rows, "P above M/2", 70, 2 * 70 - TOTAL, 2 * (TOTAL - 70), 0);
    addCase(rows, "P = M", TOTAL, TOTAL, 0, 0);
    return rows;
  }

  private static void addCase(
      List<Row> rows,
      String name,
      double p,
      double hydroxide,
      double carbonate,
      double bicarbonate) {
    AlkalinitySplit split = split(p, TOTAL);
    rows.add(row(name + ", hydroxide", hydroxide, split.hydroxide().value()));
    rows.add(row(name + ", carbonate", carbonate, split.carbonate().value()));
    rows.add(row(name + ", bicarbonate", bicarbonate, split.bicarbonate().value()));
  }

  private static AlkalinitySplit split(double p, double m) {
    return AlkalinitySplit.of(
        TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(p, PHENOLPHTHALEIN),
        TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(m, TitrationAlkalinity.USUAL_END_POINT));
  }

  private static Row row(String label, double expected, TitrationAlkalinity computed) {
    return Row.of(label, expected, computed.inMilligramsPerLitreAsCaCO3(), HowKnown.COMPUTED);
  }

  private static List<Row> equivalencePoints() {
    HowKnown known =
        CsvTable.read("water.csv", 39).only("item", "alkalinity end points").howKnown();
    return List.of(
        equivalencePoint(30, 4.9, known),
        equivalencePoint(150, 4.6, known),
        equivalencePoint(500, 4.3, known));
  }

  private static Row equivalencePoint(double asCaCO3, double expected, HowKnown known) {
    double equivalents =
        TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(
                asCaCO3, TitrationAlkalinity.USUAL_END_POINT)
            .inMilliequivalentsPerLitre();
    double pH =
        Solution.at(Temperature.ofCelsius(25))
            .with(Acid.CARBONIC, AmountConcentration.ofMillimolesPerLitre(equivalents))
            .pH()
            .value();
    return Row.of(Math.round(asCaCO3) + " mg/L as CaCO3", expected, pH, known);
  }
}
