package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.Mixture;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.Molality;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.titration.CurveFit;

/**
 * A simulated titration of sea water, published with all its constants and totals: the best known
 * test of an alkalinity titration.
 *
 * <p>The constants are conditional ones on concentrations, so the level is ideal. Total alkalinity
 * counts from HSO4-, HF, H2CO3* and B(OH)3; the strong-ion charge is that alkalinity and the charge
 * of sulfate and fluoride without protons.
 */
public final class Dickson1981 {

  private static final Source SOURCE =
      new Source("dickson-1981", "A.G. Dickson, Deep-Sea Res. 28A (1981) 609, Table 1");

  private static final double SAMPLE_GRAMS = 200;
  private static final double ACID_MOLES_PER_KILOGRAM = 0.3;
  private static final double TOTAL_ALKALINITY = 2.450e-3;
  private static final double TOTAL_CARBONATE = 2.200e-3;
  private static final double TOTAL_BORATE = 4.2e-4;
  private static final double TOTAL_SULFATE = 0.02824;
  private static final double TOTAL_FLUORIDE = 7e-5;

  private static final Component CARBONATE =
      Component.group("carbonate of sea water", -2, pK(1.00e-6), pK(8.20e-10));
  private static final Component BORATE = Component.group("borate of sea water", -1, pK(1.78e-9));
  private static final Component SULFATE =
      Component.group("sulfate of sea water", -2, pK(1 / 12.3));
  private static final Component FLUORIDE =
      Component.group("fluoride of sea water", -1, pK(1.0 / 408));

  private static final Chemistry CHEMISTRY = Chemistry.textbook(pK(4.32e-14));

  private Dickson1981() {}

  /** Returns the check. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "dickson-1981",
            Suite.PUBLISHED,
            "Titration of sea water with hydrochloric acid",
            SOURCE,
            "pH of each mixture by mass, at level ideal with the constants and totals of the table",
            Tolerance.absolute(1e-6, "pH", "six decimals are printed"),
            "",
            51,
            Dickson1981::rows),
        new ReferenceCheck(
            "dickson-1981-inverted",
            Suite.PUBLISHED,
            "Total alkalinity and carbonate of sea water from its titration",
            SOURCE,
            "least squares through the 51 readings, from the constants and the other totals of the"
                + " table",
            Tolerance.absolute(1e-8, "mol/kg", "the pH is printed to 1e-6"),
            "",
            2,
            Dickson1981::inverted),
        new ReferenceCheck(
            "dickson-1981-spoiled",
            Suite.ROUNDTRIP,
            "The spoiled reading of a titration is named",
            SOURCE,
            "each of the 51 readings in turn spoiled by 0.005 pH: how many times the fit of the"
                + " curve names that row and no other",
            Tolerance.absolute(0.5, "rows", "all of them"),
            "",
            2,
            Dickson1981::spoiled));
  }

  private static CurveFit fit(double[] pH) {
    Solution water = Solution.textbook().under(CHEMISTRY);
    Solution known =
        water
            .with(BORATE, Molality.ofMolesPerKilogram(TOTAL_BORATE))
            .with(SULFATE, Molality.ofMolesPerKilogram(TOTAL_SULFATE))
            .with(FLUORIDE, Molality.ofMolesPerKilogram(TOTAL_FLUORIDE));
    Solution acid =
        water.with(Acid.HYDROCHLORIC, Molality.ofMolesPerKilogram(ACID_MOLES_PER_KILOGRAM));
    double[] acidPerSample =
        table().stream().mapToDouble(row -> row.number("acid_mass_g") / SAMPLE_GRAMS).toArray();
    return CurveFit.of(known, acid)
        .unknownInertCharge()
        .unknownTotal(CARBONATE)
        .to(acidPerSample, pH);
  }

  private static double[] pH() {
    return table().stream().mapToDouble(row -> row.number("pH_free")).toArray();
  }

  private static List<Row> inverted() {
    CurveFit fit = fit(pH());
    double alkalinity = fit.inertCharge().number() - 2 * TOTAL_SULFATE - TOTAL_FLUORIDE;
    return List.of(
        Row.of("total alkalinity", TOTAL_ALKALINITY, alkalinity, HowKnown.SEEN),
        Row.of("total carbonate", TOTAL_CARBONATE, fit.total(CARBONATE).number(), HowKnown.SEEN));
  }

  private static List<Row> spoiled() {
    return List.of(
        Row.of("spoiled downwards", 51, namedWhenSpoiledBy(-0.005), HowKnown.COMPUTED),
        Row.of("spoiled upwards", 51, namedWhenSpoiledBy(0.005), HowKnown.COMPUTED));
  }

  private static int namedWhenSpoiledBy(double spoil) {
    int named = 0;
    for (int row = 1; row <= table().size(); row++) {
      double[] pH = pH();
      pH[row - 1] += spoil;
      List<Notice> notices = fit(pH).notices();
      if (notices.size() == 1 && notices.get(0).row().orElse(0) == row) {
        named++;
      }
    }
    return named;
  }

  private static List<CsvTable.Line> table() {
    return CsvTable.read("dickson1981-table1.csv", 51).lines();
  }

  private static List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : table()) {
      rows.add(
          Row.of(
              row.text("acid_mass_g") + " g of acid",
              row.number("pH_free"),
              pH(row.number("acid_mass_g")),
              HowKnown.SEEN));
    }
    return rows;
  }

  private static double pH(double acidGrams) {
    double dilution = SAMPLE_GRAMS / (SAMPLE_GRAMS + acidGrams);
    Map<Component, Double> totals = new LinkedHashMap<>();
    totals.put(
        Component.SODIUM, dilution * (TOTAL_ALKALINITY + 2 * TOTAL_SULFATE + TOTAL_FLUORIDE));
    totals.put(
        Component.CHLORIDE, ACID_MOLES_PER_KILOGRAM * acidGrams / (SAMPLE_GRAMS + acidGrams));
    totals.put(CARBONATE, dilution * TOTAL_CARBONATE);
    totals.put(BORATE, dilution * TOTAL_BORATE);
    totals.put(SULFATE, dilution * TOTAL_SULFATE);
    totals.put(FLUORIDE, dilution * TOTAL_FLUORIDE);
    return Mixture.of(totals, 25, CHEMISTRY).pH();
  }

  private static double pK(double constant) {
    return -Math.log10(constant);
  }
}
