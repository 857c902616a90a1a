package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.brewchem.checks.Comparison;
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
import org.brewchem.substance.IonSizeParameters;
import org.brewchem.substance.PairSet;

/** Certified pH standards against temperature, at the default chemistry and at others beside it. */
public final class CertifiedBuffers {

  private static final Chemistry ACTIVITY =
      Chemistry.of(Level.ACTIVITY)
          .withConstants(ConstantSet.named("goldberg-2002"))
          .withActivityRule(ActivityRule.davies());

  private static final String DEFAULT_COMPUTATION =
      "pH of the composition at the default chemistry, nothing adjusted";

  private static final String COMPUTATION =
      "pH of the composition from pKa, dH and dCp of Goldberg, Kishore & Lennen 2002 with Davies"
          + " activity coefficients, nothing adjusted";

  private static final double LOWEST_USUAL = 5;
  private static final double HIGHEST_USUAL = 40;

  private static final String DAVIES =
      "the Davies equation is good to a few per cent of an activity coefficient at I = 0.1 mol/kg,";

  private static final Tolerance USUAL_AT_DEFAULT = usual(0.015);
  private static final Tolerance USUAL = usual(0.02);

  private static final Tolerance COLDER_OR_WARMER =
      Tolerance.absolute(
          0.03,
          "pH",
          String.format(
              Locale.ROOT, "%s below %.0f and above %.0f °C", DAVIES, LOWEST_USUAL, HIGHEST_USUAL));

  private static Tolerance usual(double size) {
    return Tolerance.absolute(
        size,
        "pH",
        String.format(Locale.ROOT, "%s from %.0f to %.0f °C", DAVIES, LOWEST_USUAL, HIGHEST_USUAL));
  }

  private static final String TETROXALATE = "K tetraoxalate (secondary since IUPAC 2002)";

  private static final Source TABLE =
      new Source(
          "nbs-ph-standards",
          "National Bureau of Standards, table of pH(S): Bates, J. Res. NBS 66A (1962) 179; Staples"
              + " & Bates 73A (1969) 37; NIST SP 260-53");

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
          TETROXALATE,
          Map.of(Component.POTASSIUM, 0.05, Component.OXALATE, 0.10));

  private CertifiedBuffers() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        check(
            "certified-buffers",
            "Certified pH of primary standards",
            TABLE,
            buffer -> !buffer.equals(TETROXALATE),
            Chemistry.standard(),
            "pairs of calcium and magnesium: the standards hold neither and say nothing about them;"
                + " borax, dihydrogen citrate and the calcium hydroxide standard are not in the"
                + " table",
            39),
        check(
            "certified-secondary-buffer",
            "Certified pH of potassium tetraoxalate, a secondary standard",
            TABLE,
            buffer -> buffer.equals(TETROXALATE),
            Chemistry.standard(),
            "",
            11),
        check(
            "certified-buffers-activity",
            "Certified pH of the same standards without ion pairs",
            TABLE,
            buffer -> true,
            ACTIVITY,
            "",
            50),
        check(
            "staples-bates",
            "pH of the carbonate standard",
            new Source("staples-bates-1969", "Staples & Bates 1969, abstract"),
            buffer -> true,
            Chemistry.standard(),
            "",
            1),
        check(
            "hamer-25",
            "pH of the phthalate standard at 25 °C",
            new Source("hamer-1946", "Hamer, Pinching & Acree, J. Res. NBS 36 (1946) 47, RP1690"),
            buffer -> true,
            Chemistry.standard(),
            "",
            1),
        check(
            "hetzer",
            "pH of the phthalate standard, measured again",
            new Source(
                "hetzer-1977",
                "Hetzer, Durst, Robinson & Bates, J. Res. NBS 81A (1977) 21: equation in"
                    + " temperature"),
            buffer -> true,
            Chemistry.standard(),
            "",
            11),
        check(
            "hamer",
            "pH of the phthalate standard, superseded scale",
            new Source("hamer-1946", "Hamer, Pinching & Acree, J. Res. NBS 36 (1946) 47: equation"),
            buffer -> true,
            Chemistry.standard(),
            "",
            11));
  }

  /** Where each check finds its rows: the start of their source in the data file. */
  private static final Map<String, String> STARTS =
      Map.of(
          "certified-buffers", "NBS/NIST",
          "certified-secondary-buffer", "NBS/NIST",
          "certified-buffers-activity", "NBS/NIST",
          "staples-bates", "Staples & Bates",
          "hamer-25", "Hamer, Pinching",
          "hetzer", "Hetzer",
          "hamer", "Hamer et al.");

  private static ReferenceCheck check(
      String id,
      String title,
      Source source,
      Predicate<String> buffers,
      Chemistry chemistry,
      String notCovered,
      int expectedRows) {
    boolean byDefault = chemistry.equals(Chemistry.standard());
    Tolerance usual = byDefault ? USUAL_AT_DEFAULT : USUAL;
    return new ReferenceCheck(
        id,
        Suite.PUBLISHED,
        title,
        source,
        byDefault ? DEFAULT_COMPUTATION : COMPUTATION,
        usual,
        notCovered,
        expectedRows,
        () ->
            rows(STARTS.getOrDefault(id, id), buffers, chemistry).stream()
                .map(row -> isUsual(row) ? row.within(usual) : row.within(COLDER_OR_WARMER))
                .toList());
  }

  private static List<Row> rows(
      String startOfSource, Predicate<String> buffers, Chemistry chemistry) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read("primary-buffers.csv", 74).lines()) {
      String buffer = row.text("buffer");
      if (row.text("source").startsWith(startOfSource) && buffers.test(buffer)) {
        rows.add(
            Row.of(
                buffer + ", " + row.text("t_C") + " °C",
                row.number("pHS"),
                pH(buffer, row.number("t_C"), chemistry),
                row.howKnown()));
      }
    }
    return rows;
  }

  private static boolean isUsual(Row row) {
    String[] words = row.label().split(" ", -1);
    double celsius = Double.parseDouble(words[words.length - 2]);
    return celsius >= LOWEST_USUAL && celsius <= HIGHEST_USUAL;
  }

  private static double pH(String buffer, double celsius, Chemistry chemistry) {
    return Mixture.of(COMPOSITIONS.getOrDefault(buffer, Map.of()), celsius, chemistry).pH();
  }

  /** Returns the standards at the default chemistry and at others, with the sign. */
  public static Comparison comparison() {
    PairSet nist =
        PairSet.standard()
            .with(PairSet.named("nist46").find("NaHPO4-").orElseThrow())
            .with(PairSet.named("nist46").find("KHPO4-").orElseThrow());
    Map<String, Chemistry> chemistries = new LinkedHashMap<>();
    chemistries.put("default", Chemistry.standard());
    chemistries.put("level activity", Chemistry.of(Level.ACTIVITY));
    chemistries.put(
        "all pairs of sodium and potassium",
        Chemistry.standard().withPairs(PairSet.withAlkaliPairs()));
    chemistries.put(
        "the same, ion sizes",
        Chemistry.standard()
            .withActivityRule(ActivityRule.ionSize(IonSizeParameters.standard(), 0.1)));
    chemistries.put(
        "pairs with hydrogen phosphate of NIST 46", Chemistry.standard().withPairs(nist));
    List<String> header = new ArrayList<>(List.of("standard", "°C"));
    header.addAll(chemistries.keySet());
    List<List<String>> cells = new ArrayList<>();
    for (String buffer : new TreeSet<>(COMPOSITIONS.keySet())) {
      for (boolean usual : new boolean[] {true, false}) {
        List<String> line =
            new ArrayList<>(List.of(buffer, usual ? "5 to 40" : "below 5, above 40"));
        for (Chemistry chemistry : chemistries.values()) {
          double largest =
              rows("NBS/NIST", buffer::equals, chemistry).stream()
                  .filter(row -> isUsual(row) == usual)
                  .map(row -> row.computed() - row.expected())
                  .max(Comparator.comparingDouble(Math::abs))
                  .orElseThrow();
          line.add(String.format(Locale.ROOT, "%+.4f", largest));
        }
        cells.add(line);
      }
    }
    return new Comparison(
        "The pH standards at several chemistries",
        "Computed less certified pH, the largest difference over the temperatures of the table."
            + " Because of this table, the pairs of sodium and potassium with anything but hydrogen"
            + " phosphate are not in the default. The standards hold no calcium and no magnesium,"
            + " so they say nothing about the pairs of these.",
        header,
        cells);
  }
}
