package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.substance.Formula;
import org.brewchem.substance.Ion;
import org.brewchem.treatment.LimeSoftening;

/** Worked examples of lime and soda softening, with the pages' round masses and with exact ones. */
public final class SofteningExamples {

  private static final Tolerance ROUND =
      Tolerance.relative(4e-4, "as far as the pages round on the way");
  private static final Tolerance EXACT =
      Tolerance.relative(0.05, "a dose of soda is a small difference, which round masses move");

  private static final Map<String, Double> ROUND_MASSES =
      Map.ofEntries(
          Map.entry("CaCO3", 100.0),
          Map.entry("MgCO3", 84.0),
          Map.entry("CaCl2", 111.0),
          Map.entry("MgCl2", 95.0),
          Map.entry("CaSO4", 136.0),
          Map.entry("MgSO4", 120.0),
          Map.entry("Ca(HCO3)2", 162.0),
          Map.entry("Mg(HCO3)2", 146.0),
          Map.entry("Ca(NO3)2", 164.0),
          Map.entry("HCl", 36.5),
          Map.entry("H2SO4", 98.0),
          Map.entry("CO2", 44.0),
          Map.entry("HCO3", 61.0),
          Map.entry("Ca", 40.0),
          Map.entry("Mg", 24.0),
          Map.entry("CaO", 56.0),
          Map.entry("Ca(OH)2", 74.0),
          Map.entry("Na2CO3", 106.0));

  private static final double AS_CACO3 =
      CarbonateAlkalinity.ofMilliequivalentsPerLitre(2).inMilligramsPerLitreAsCaCO3();

  private SofteningExamples() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    Source source =
        new Source(
            "davis-2010",
            "M.L. Davis, Water and Wastewater Engineering (2010), ch. 7; solved questions of two"
                + " tutoring sites and a question bank");
    return List.of(
        new ReferenceCheck(
            "softening-round",
            Suite.PUBLISHED,
            "Lime and soda softening, round masses",
            source,
            "dose of lime and of soda, and the hardness left, from the closed forms with the round"
                + " molar masses of the pages",
            ROUND,
            "what precipitates in practice",
            17,
            () -> rows(true)),
        new ReferenceCheck(
            "softening-exact",
            Suite.PUBLISHED,
            "Lime and soda softening, exact masses",
            source,
            "the same with the library's molar masses",
            EXACT,
            "what precipitates in practice",
            17,
            () -> rows(false)));
  }

  private static List<Row> rows(boolean round) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line line : CsvTable.read("softening-doses.csv", 17).lines()) {
      Row row =
          Row.of(
              line.text("item") + ", " + line.text("substance"),
              line.number("printed"),
              computed(line, round),
              line.howKnown());
      rows.add(line.text("reproduced").equals("yes") ? row : row.asNotReproduced());
    }
    return rows;
  }

  private static double computed(CsvTable.Line line, boolean round) {
    // Millimoles per litre of what the closed forms count.
    Map<String, Double> water = water(line.text("inputs"), round);
    String options = line.text("options");
    LimeSoftening softening =
        LimeSoftening.withLime()
            .withMineralAcid(
                ChargeConcentration.ofMilliequivalentsPerLitre(water.getOrDefault("H", 0.0)));
    softening = options.contains("magnesium") ? softening.removingMagnesium() : softening;
    softening = options.contains("soda") ? softening.withSoda() : softening;
    softening = options.contains("excess") ? softening.withExcess() : softening;
    softening = options.contains("practical") ? softening.toPracticalLimits() : softening;
    double[] inputs = {
      water.getOrDefault("Ca", 0.0) * Ion.CALCIUM.molarMass().inGramsPerMole(),
      water.getOrDefault("Mg", 0.0) * Ion.MAGNESIUM.molarMass().inGramsPerMole(),
      water.getOrDefault("HCO3", 0.0) * AS_CACO3 / 2,
      water.getOrDefault("HCO3", 0.0) + water.getOrDefault("CO2", 0.0)
    };
    String substance = line.text("substance");
    if (substance.equals("hardness left")) {
      // Practical limits are the library's own rows, mg/L as CaCO3 by its own mass.
      return (options.contains("practical") ? AS_CACO3 : caCO3(round))
          * (number(softening.calciumLeft(), inputs) + number(softening.magnesiumLeft(), inputs));
    }
    double millimoles =
        number(substance.equals("soda") ? softening.soda() : softening.lime(), inputs);
    double mass =
        switch (substance) {
          case "lime as CaCO3" -> caCO3(round);
          case "lime as CaO" -> mass("CaO", round);
          case "lime" -> mass("Ca(OH)2", round);
          default -> mass("Na2CO3", round);
        };
    double perUnit =
        switch (line.text("unit")) {
          case "kg" -> 1e-6;
          case "g" -> 1e-3;
          default -> 1;
        };
    return millimoles * mass / line.number("purity") * line.number("litres") * perUnit;
  }

  private static double number(Figure<?> figure, double[] inputs) {
    return ((ClosedForm) figure.rule()).apply(inputs);
  }

  private static double caCO3(boolean round) {
    return round ? 100 : AS_CACO3;
  }

  private static Map<String, Double> water(String inputs, boolean round) {
    Map<String, Double> water = new HashMap<>();
    boolean asCaCO3 = inputs.startsWith("as CaCO3: ");
    for (String part : inputs.replace("as CaCO3: ", "").split("; ")) {
      String[] words = part.split(" ");
      double milligrams = Double.parseDouble(words[1]);
      double millimoles =
          asCaCO3
              ? milligrams / caCO3(round) * (words[0].equals("HCO3") ? 2 : 1)
              : milligrams / mass(words[0], round);
      bring(water, words[0], millimoles);
    }
    return water;
  }

  /** The ions that a compound of a question brings; a carbonate stands for the bicarbonate. */
  private static void bring(Map<String, Double> water, String compound, double millimoles) {
    switch (compound) {
      case "Ca", "Mg", "HCO3", "CO2" -> water.merge(compound, millimoles, Double::sum);
      case "HCl" -> water.merge("H", millimoles, Double::sum);
      case "H2SO4" -> water.merge("H", 2 * millimoles, Double::sum);
      default -> {
        water.merge(compound.startsWith("Ca") ? "Ca" : "Mg", millimoles, Double::sum);
        if (compound.contains("CO3")) {
          water.merge("HCO3", 2 * millimoles, Double::sum);
        }
      }
    }
  }

  private static double mass(String compound, boolean round) {
    return round
        ? Objects.requireNonNull(ROUND_MASSES.get(compound), compound)
        : Formula.parse(compound).molarMass().inGramsPerMole();
  }
}
