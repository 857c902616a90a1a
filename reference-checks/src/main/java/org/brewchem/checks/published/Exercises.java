package org.brewchem.checks.published;

import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mol;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleSupplier;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibrium;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Formula;
import org.brewchem.substance.Ion;

/**
 * Exercises of a textbook, solved as docs/exercises.md shows it: constants as printed, level ideal,
 * pKw 14.00. Exercises that are bare arithmetic, in which no code of the library takes part, stand
 * on that page only.
 */
public final class Exercises {

  private static final Source CHEMISTRY_2E =
      new Source("flowers", "Flowers et al., Chemistry 2e (OpenStax, CC BY)");

  private static final Tolerance AS_PRINTED = Tolerance.halfOfLastDigit("", "as printed");

  private static final Tolerance APPROXIMATED =
      Tolerance.relative(
          0.012,
          "the printed answer is the root of Ka c, which neglects the share that is ionised, 1.8"
              + " and 2.3 %: half of it in the answer");

  private static final Tolerance ROUNDED =
      Tolerance.absolute(0.01, "", "printed from [H3O+] rounded to 1.2e-3");

  private static final Tolerance CUT =
      Tolerance.ofLastDigit(
          1,
          "",
          "6.5156 follows from [H3O+] rounded to 3.051e-7; of 23.767 the last digit was cut, not"
              + " rounded");

  private static final List<String> SLIPS =
      List.of("P15 Ka HNO2", "P24 [H3O+]", "P53 m(CaSO4.2H2O)", "P54 m(Ca(OH)2)", "P57 m(Mg(OH)2)");

  private static final Map<String, Tolerance> OWN =
      Map.of(
          "P01 pH", CUT,
          "P16 [H3O+]", APPROXIMATED,
          "P18 [OH-]", APPROXIMATED,
          "P32 pH", ROUNDED,
          "P39 Cl-", CUT);

  private static final Solution WATER = Solution.textbook();

  private Exercises() {}

  /** Returns the check. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "chemistry-2e-exercises",
            Suite.PUBLISHED,
            "Exercises of a textbook",
            CHEMISTRY_2E,
            "pH, [H3O+], [OH-], species and amounts; level ideal, the constants printed with the"
                + " exercise, pKw 14.00",
            AS_PRINTED,
            "",
            answers().size(),
            Exercises::rows));
  }

  private static List<Row> rows() {
    Map<String, DoubleSupplier> answers = answers();
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line line : CsvTable.read("exercises.csv", 49).lines()) {
      String item = line.text("item");
      DoubleSupplier answer = answers.remove(item);
      if (answer != null) {
        Row row = Row.ofPrinted(item, line.text("value"), answer.getAsDouble(), line.howKnown());
        if (OWN.containsKey(item)) {
          row = row.within(OWN.get(item));
        }
        rows.add(SLIPS.contains(item) ? row.asNotReproduced() : row);
      }
    }
    if (!answers.isEmpty()) {
      throw new IllegalStateException("no such exercises: " + answers.keySet());
    }
    return rows;
  }

  private static Map<String, DoubleSupplier> answers() {
    Map<String, DoubleSupplier> all = new LinkedHashMap<>();
    Solution hot = WATER.under(Chemistry.textbook(-Math.log10(9.311e-14)));
    all.put("P01 [H3O+]", () -> hydrogen(hot));
    all.put("P01 pH", () -> value(hot));
    all.put("P03a pH", () -> value(WATER.with(Acid.HYDROCHLORIC, molPerL(0.000259))));
    all.put("P03b pH", () -> value(WATER.with(Base.SODIUM_HYDROXIDE, molPerL(0.21))));
    all.put("P03d pH", () -> value(WATER.with(Base.POTASSIUM_HYDROXIDE, molPerL(2.5))));
    all.put("P04 [H3O+]", () -> hydrogen(WATER.closedTo(pH(6.52))));
    all.put("P04 [OH-]", () -> hydroxide(WATER.closedTo(pH(6.52))));
    Solution potash = WATER.with(Base.POTASSIUM_HYDROXIDE, molPerL(0.0125));
    all.put("P09 pOH", () -> -Math.log10(hydroxide(potash)));
    all.put("P09 pH", () -> value(potash));
    all.put("P10 per cent ionised", () -> 100 * hydrogen(WATER.closedTo(pH(2.09))) / 0.125);
    all.put("P15 Ka HNO2", () -> constant(0.0516, 2.34));
    Solution formic = WATER.with(Acid.ofKa("formic acid", 1.8e-4), molPerL(0.534));
    all.put("P16 [H3O+]", () -> hydrogen(formic));
    all.put("P16 pH", () -> value(formic));
    all.put("P18 [OH-]", () -> hydroxide(base(1.76e-5, 0.0325)));
    all.put("P19 pH", () -> value(WATER.with(Acid.ofKa("HSO4-", 1.2e-2), molPerL(0.50))));
    Solution nicotine =
        WATER
            .with(Acid.ofKa("nicotine", 1e-14 / 1.4e-11, 1e-14 / 7e-7), molPerL(0.050))
            .with(Base.SODIUM_HYDROXIDE, molPerL(0.100));
    all.put("P24 [OH-]", () -> hydroxide(nicotine));
    all.put("P24 [H3O+]", () -> hydrogen(nicotine));
    all.put("P25 Ka HSO4-", () -> constant(0.15, 1.43));
    all.put("P27a [H3O+]", () -> hydrogen(WATER.with(Acid.ofKa("HClO", 2.9e-8), molPerL(0.0092))));
    all.put("P27b [OH-]", () -> hydroxide(base(4.3e-10, 0.0784)));
    all.put("P29 pH", () -> value(WATER.with(Acid.ofKa("anilinium", 2.3e-5), molPerL(0.233))));
    all.put(
        "P30 [CH3COOH]",
        () ->
            molar(
                WATER
                    .with(Acid.ofKa("A", 1.8e-5), molPerL(0.050))
                    .equilibriumAt(pH(14 + Math.log10(2.5e-6))),
                "H(A)"));
    Acid aluminium = Acid.ofKa("Al(H2O)6", 1.4e-5);
    all.put("P32 pH", () -> value(WATER.with(aluminium, molPerL(0.10))));
    all.put(
        "P33 [Al(OH)+2]",
        () -> molar(WATER.with(aluminium, molPerL(0.15)).equilibriumAt(pH(1)), "Al(H2O)6-"));
    all.put(
        "P35 [H3O+]",
        () -> hydrogen(WATER.with(Acid.ofKa("H2Te", 2.3e-3, 1.5e-11), molPerL(0.10))));
    all.put(
        "P36 [OH-]",
        () ->
            hydroxide(
                WATER
                    .with(Acid.ofKa("methylammonium", 1e-14 / 4.4e-4), molPerL(0.255))
                    .with(Base.SODIUM_HYDROXIDE, molPerL(0.125))));
    all.put("P39 Cl-", () -> 100 * 1.0881 / grams("AgCl") * grams("Cl") / 1.1324);
    all.put("P41 c(Ca(OH)2)", () -> concentration(0.2074 / grams("Ca(OH)2"), 0.040));
    all.put("P42 c(Na2SO4)", () -> concentration(10_500 / grams("Na2SO4.10H2O"), 18.60));
    all.put(
        "P44 c(Ca+2)",
        () -> AmountConcentration.from(gPerL(1), Ion.CALCIUM.molarMass()).inMolesPerLitre());
    all.put(
        "P45 c(H3PO4)",
        () ->
            AmountConcentration.from(molPerL(0.350).times(litres(2.35)), litres(4))
                .inMolesPerLitre());
    all.put(
        "P48 m(NaOH 97.0 %)",
        () ->
            gPerML(1.109).times(litres(1)).inGrams()
                * massPercent(10).fraction()
                / massPercent(97).fraction());
    all.put(
        "P50 m(HCl)", () -> gPerML(1.19).times(mL(500)).inGrams() * massPercent(37.2).fraction());
    all.put(
        "P51 V(HCl)",
        () -> gPerML(1.19).volumeOf(g(125 / massPercent(37.2).fraction())).inMillilitres());
    all.put(
        "P53 m(CaSO4.2H2O)",
        () -> (Math.sqrt(0.010 * 0.010 + 4 * 2.4e-5) - 0.010) / 2 * grams("CaSO4.2H2O"));
    all.put("P54 m(Ca(OH)2)", () -> 1.026 * 1.272 / grams("Mg") * grams("Ca(OH)2") * 0.999);
    all.put("P57 m(Mg(OH)2)", () -> Math.cbrt(7.1e-12 / 4) * 0.200 * grams("Mg(OH)2"));
    all.put("P59 [C2O4-2]", () -> 7e-7 / (8.156 / grams("Mg(NO3)2") / 2.250));
    return all;
  }

  private static double value(Solution solution) {
    return solution.pH().value();
  }

  private static double hydrogen(Solution solution) {
    return molar(solution.equilibrium(), "H+");
  }

  private static double hydroxide(Solution solution) {
    return molar(solution.equilibrium(), "OH-");
  }

  private static double molar(Equilibrium state, String species) {
    return state.species(species).orElseThrow().molality().inMolesPerKilogram();
  }

  private static Solution base(double kb, double molesPerLitre) {
    return WATER
        .with(Acid.ofKa("conjugate acid", 1e-14 / kb), molPerL(molesPerLitre))
        .with(Base.SODIUM_HYDROXIDE, molPerL(molesPerLitre));
  }

  /** The Ka that gives a pH: the pH of a solution with this Ka has to be the one stated. */
  private static double constant(double molesPerLitre, double stated) {
    double hydrogen = hydrogen(WATER.closedTo(pH(stated)));
    double ka = hydrogen * hydrogen / (molesPerLitre - hydrogen);
    double again = value(WATER.with(Acid.ofKa("A", ka), molPerL(molesPerLitre)));
    if (Math.abs(again - stated) > 1e-4) {
      throw new IllegalStateException("Ka " + ka + " gives pH " + again);
    }
    return ka;
  }

  private static double concentration(double moles, double litres) {
    return AmountConcentration.from(mol(moles), litres(litres)).inMolesPerLitre();
  }

  private static double grams(String formula) {
    return Formula.parse(formula).molarMass().inGramsPerMole();
  }
}
