package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.MassFraction;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;

/** Concentrations of reagents from their assay and density. */
public final class ReagentTables {

  private static final Pattern PRINTED = Pattern.compile("molarity printed ([0-9.]+);.*");
  private static final Pattern RECOMPUTED = Pattern.compile("recomputed ([0-9.]+) M.*");

  private static final Map<String, Compound> COMPOUNDS =
      Map.of(
          "HCl", Acid.HYDROCHLORIC,
          "H3PO4", Acid.PHOSPHORIC,
          "H2SO4", Acid.SULFURIC,
          "NaOH", Base.SODIUM_HYDROXIDE);

  private ReagentTables() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "hydrochloric-acid-table",
            Suite.PUBLISHED,
            "Concentration of hydrochloric acid",
            new Source(
                "hydrochloric-acid-density-table",
                "encyclopaedia table after Perry/International Critical Tables"),
            "mol/L from mass per cent and density",
            Tolerance.halfOfLastDigit("mol/L", "as printed"),
            "the densities themselves",
            7,
            () -> rows(PRINTED)),
        new ReferenceCheck(
            "reagent-concentrations",
            Suite.IDENTITY,
            "Concentration of phosphoric and sulfuric acid and of lye",
            new Source("reagent-table", "densities of reagent tables, molar masses of CIAAW 2021"),
            "mol/L from mass per cent and density",
            Tolerance.halfOfLastDigit("mol/L", "digits written"),
            "",
            4,
            () -> rows(RECOMPUTED)));
  }

  private static List<Row> rows(Pattern pattern) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read("reagents.csv", 40).lines()) {
      Matcher matcher = pattern.matcher(row.text("note"));
      Compound compound = COMPOUNDS.get(row.text("substance"));
      if (matcher.matches() && compound != null) {
        double concentration =
            Reagent.of(compound, MassFraction.ofMassPercent(row.number("mass_percent")))
                .withDensity(Density.ofGramsPerMillilitre(row.number("value")), 0)
                .concentration()
                .inMolesPerLitre();
        rows.add(
            Row.ofPrinted(
                row.text("substance") + " " + row.text("mass_percent") + " %",
                matcher.group(1),
                concentration,
                pattern == PRINTED ? row.howKnown() : HowKnown.COMPUTED));
      }
    }
    return rows;
  }
}
