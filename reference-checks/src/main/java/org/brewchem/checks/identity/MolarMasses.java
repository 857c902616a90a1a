package org.brewchem.checks.identity;

import java.util.List;
import java.util.Map;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.substance.Formula;

/** Molar masses by the definition: the sum of the atomic weights of 2021. */
public final class MolarMasses {

  private static final Map<String, String> FORMULAS =
      Map.ofEntries(
          Map.entry("water", "H2O"),
          Map.entry("HCO3-", "HCO3-"),
          Map.entry("CO3 2-", "CO3^2-"),
          Map.entry("SO4 2-", "SO4^2-"),
          Map.entry("PO4 3-", "PO4^3-"),
          Map.entry("lactic acid", "C3H6O3"),
          Map.entry("acetic acid", "CH3COOH"),
          Map.entry("tartaric acid", "C4H6O6"),
          Map.entry("malic acid", "C4H6O5"),
          Map.entry("succinic acid", "C4H6O4"),
          Map.entry("citric acid anhydrous", "C6H8O7"),
          Map.entry("citric acid monohydrate", "C6H8O7.H2O"),
          Map.entry("oxalic acid", "H2C2O4"),
          Map.entry("formic acid", "HCOOH"),
          Map.entry("pyruvic acid", "C3H4O3"),
          Map.entry("gluconic acid", "C6H12O7"),
          Map.entry("ascorbic acid", "C6H8O6"),
          Map.entry("KHP", "KHC8H4O4"),
          Map.entry("KH tartrate", "KHC4H4O6"),
          Map.entry("borax decahydrate", "Na2B4O7.10H2O"));

  private MolarMasses() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "molar-masses",
            Suite.IDENTITY,
            "Molar masses from atomic weights",
            new Source(
                "ciaaw-2021",
                "Prohaska et al., Standard atomic weights of the elements 2021, Pure Appl. Chem."
                    + " 94 (2022) 573"),
            "molar mass from the formula",
            Tolerance.halfOfLastDigit("g/mol", "sums written with three decimals"),
            "",
            42,
            MolarMasses::rows),
        new ReferenceCheck(
            "khp-molar-mass",
            Suite.PUBLISHED,
            "Molar mass of potassium hydrogen phthalate",
            new Source("nist-srm-84", "NIST SRM 84 series"),
            "molar mass from the formula",
            Tolerance.halfOfLastDigit("g/mol", "as printed"),
            "",
            1,
            () -> List.of(printedKhp())));
  }

  private static List<Row> rows() {
    return table().where("kind", "compound").stream()
        .map(
            row ->
                Row.ofPrinted(
                    row.text("name"),
                    row.text("molar_mass_g_mol"),
                    molarMass(FORMULAS.getOrDefault(row.text("name"), row.text("name"))),
                    row.howKnown()))
        .toList();
  }

  private static Row printedKhp() {
    CsvTable.Line row = table().only("kind", "check");
    return Row.ofPrinted(
        row.text("name"), row.text("molar_mass_g_mol"), molarMass("KHC8H4O4"), HowKnown.SEEN);
  }

  private static double molarMass(String formula) {
    return Formula.parse(formula).molarMass().inGramsPerMole();
  }

  private static CsvTable table() {
    return CsvTable.read("atomic-weights.csv", 56);
  }
}
