package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.Mixture;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.solution.ActivityRule;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;

/** Certified pH standards against temperature, at level activity and with nothing adjusted. */
public final class CertifiedBuffers {

  private static final Chemistry ACTIVITY =
      Chemistry.of(Level.ACTIVITY)
          .withConstants(ConstantSet.named("goldberg-2002"))
          .withActivityRule(ActivityRule.davies());

  private static final String COMPUTATION =
      "pH of the composition from pKa, dH and dCp of Goldberg, Kishore & Lennen 2002 with Davies"
          + " activity coefficients, nothing adjusted";

  private static final double LOWEST_USUAL = 5;
  private static final double HIGHEST_USUAL = 40;

  private static final String DAVIES =
      "the Davies equation is good to a few per cent of an activity coefficient at I = 0.1 mol/kg,";

  private static final Tolerance USUAL =
      Tolerance.absolute(
          0.02,
          "pH",
          String.format(
              Locale.ROOT, "%s from %.0f to %.0f °C", DAVIES, LOWEST_USUAL, HIGHEST_USUAL));

  private static final Tolerance COLDER_OR_WARMER =
      Tolerance.absolute(
          0.03,
          "pH",
          String.format(
              Locale.ROOT, "%s below %.0f and above %.0f °C", DAVIES, LOWEST_USUAL, HIGHEST_USUAL));

  /** Totals in mol/kg of each buffer. */
  private static final Map<String, Map<Component, Double>> COMPOSITIONS =
      Map.of(
          "KH tartrate saturated at 25 C",
          Map.of(Component.POTASSIUM, 0.0341, Component.TARTRATE, 0.0341),
          "KH phthalate",
          Map.of(Component.POTASSIUM, 0.05, Component.PHTHALATE, 0.05),
          "KH2PO4 + Na2HPO4 (equimolal)",
          Map.of(Component.POTASSIUM, 0.025, Component.SODIUM, 0.05, Component.PHOSPHATE, 0.05),
          "NaHCO3 + Na2CO3",
          Map.of(Component.SODIUM, 0.075, Component.CARBONATE, 0.05),
          "K tetraoxalate (secondary since IUPAC 2002)",
          Map.of(Component.POTASSIUM, 0.05, Component.OXALATE, 0.10));

  private CertifiedBuffers() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        check(
            "certified-buffers",
            "Certified pH of primary standards",
            new Source(
                "buck-2002",
                "NBS/NIST pH(S) table (Bates J.Res.NBS 66A (1962) 179; Staples & Bates 73A (1969)"
                    + " 37; NIST SP 260-53; reprinted as IUPAC primary standards, Buck et al., Pure"
                    + " Appl. Chem. 74 (2002) 2169, Table 2)"),
            "NBS/NIST",
            "borax, dihydrogen citrate and the calcium hydroxide standard are not in the table",
            50),
        check(
            "staples-bates",
            "pH of the carbonate standard",
            new Source("staples-bates-1969", "Staples & Bates 1969, abstract"),
            "Staples & Bates",
            "",
            1),
        check(
            "hamer-25",
            "pH of the phthalate standard at 25 °C",
            new Source("hamer-1946", "Hamer, Pinching & Acree, J. Res. NBS 36 (1946) 47, RP1690"),
            "Hamer, Pinching",
            "",
            1),
        check(
            "hetzer",
            "pH of the phthalate standard, measured again",
            new Source("hetzer-1977", "Hetzer, Durst, Robinson & Bates, J. Res. NBS 81A (1977) 21"),
            "Hetzer",
            "",
            11),
        check(
            "hamer",
            "pH of the phthalate standard, superseded scale",
            new Source("hamer-1946", "Hamer, Pinching & Acree, J. Res. NBS 36 (1946) 47: equation"),
            "Hamer et al.",
            "",
            11));
  }

  private static ReferenceCheck check(
      String id,
      String title,
      Source source,
      String startOfSource,
      String notCovered,
      int expectedRows) {
    return new ReferenceCheck(
        id,
        Suite.PUBLISHED,
        title,
        source,
        COMPUTATION,
        USUAL,
        notCovered,
        expectedRows,
        () -> rows(startOfSource));
  }

  private static List<Row> rows(String startOfSource) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read("primary-buffers.csv", 74).lines()) {
      if (row.text("source").startsWith(startOfSource)) {
        double celsius = row.number("t_C");
        rows.add(
            Row.of(
                    row.text("buffer") + ", " + row.text("t_C") + " °C",
                    row.number("pHS"),
                    pH(row.text("buffer"), celsius),
                    row.howKnown())
                .within(
                    celsius >= LOWEST_USUAL && celsius <= HIGHEST_USUAL
                        ? USUAL
                        : COLDER_OR_WARMER));
      }
    }
    return rows;
  }

  private static double pH(String buffer, double celsius) {
    return Mixture.of(COMPOSITIONS.getOrDefault(buffer, Map.of()), celsius, ACTIVITY).pH();
  }
}
