package org.brewchem.checks.independent;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.CarbonateSystem;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Species;
import org.brewchem.substance.Component;

/** Total carbon dioxide of the engine's waters, found back from their alkalinity and pH. */
public final class EngineCarbonDioxide {

  private static final double RELATIVE_TOLERANCE = 1e-3;

  private static final Map<String, Component> OTHERS =
      Map.of(
          "Na_mmol_per_kg", Component.SODIUM,
          "K_mmol_per_kg", Component.POTASSIUM,
          "Ca_mmol_per_kg", Component.CALCIUM,
          "Mg_mmol_per_kg", Component.MAGNESIUM,
          "Cl_mmol_per_kg", Component.CHLORIDE,
          "SO4_mmol_per_kg", Component.SULFATE);

  private EngineCarbonDioxide() {}

  /** Returns the check. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "engine-carbon-dioxide",
            Suite.INDEPENDENT,
            "Total carbon dioxide of waters",
            EngineTables.ENGINE,
            "total carbon dioxide of three waters at 10 to 65 °C from their alkalinity and pH, with"
                + " the constants and the activity rule of the engine",
            Tolerance.relative(
                RELATIVE_TOLERANCE,
                "0.003 in pH, the allowance of the engine's tables, makes 7e-4 at their lowest pH"),
            "the waters open to carbon dioxide, for which the table gives no total",
            18,
            EngineCarbonDioxide::rows));
  }

  private static List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line line : CsvTable.read("engine-waters.csv", 54).where("mode", "closed")) {
      Solution others =
          Solution.at(Temperature.ofCelsius(line.number("t_C")))
              .under(EngineModel.named(line.text("model")).chemistry());
      for (Map.Entry<String, Component> entry : OTHERS.entrySet()) {
        others =
            others.with(
                entry.getValue(), Molality.ofMillimolesPerKilogram(line.number(entry.getKey())));
      }
      PH pH = PH.of(line.number("pH"));
      double carbonate =
          line.number("alkalinity_meq_per_kg")
              - millimolal(others, pH, "OH-")
              + millimolal(others, pH, "H+");
      double perLitre = others.kilogramsPerLitre();
      rows.add(
          Row.of(
              line.text("water") + ", " + line.text("t_C") + " °C, " + line.text("model"),
              line.number("CO2_total_mmol_per_kg"),
              CarbonateSystem.totalCarbonDioxide(
                          others,
                          CarbonateAlkalinity.ofMilliequivalentsPerLitre(carbonate * perLitre),
                          pH)
                      .inMillimolesPerLitre()
                  / perLitre,
              HowKnown.COMPUTED));
    }
    return rows;
  }

  private static double millimolal(Solution solution, PH pH, String name) {
    return solution
        .equilibriumAt(pH)
        .species(name)
        .map(Species::molality)
        .orElseThrow()
        .inMillimolesPerKilogram();
  }
}
