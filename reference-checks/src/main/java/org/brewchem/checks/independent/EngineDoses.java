package org.brewchem.checks.independent;

import java.util.ArrayList;
import java.util.List;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Solution;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Treatments;

/**
 * The engine's acid doses as a brewery puts them in: by treatments, and by the search of a dose.
 */
final class EngineDoses {

  private static final String FILE = "engine-acid-dose.csv";
  private static final int ROWS = 260;

  private EngineDoses() {}

  /** Returns the checks of one model. */
  static List<ReferenceCheck> of(String model) {
    EngineModel own = EngineModel.named(model);
    return List.of(
        EngineTables.check(
            "engine-dose-treatment-" + model,
            "Acid doses as treatments",
            model,
            "pH of three waters after the engine's dose as a treatment, the open ones then aerated"
                + " at the pressure of the row",
            EngineTables.pHTolerance(model),
            130,
            () -> afterTheDose(model, own)),
        EngineTables.check(
            "engine-dose-search-" + model,
            "Acid doses by the search of a dose",
            model,
            "acid that brings three waters, closed, to a pH, by the search of a dose into a liquid",
            EngineTables.relative("doses agree closer than they can be measured out"),
            65,
            () -> searched(model, own)));
  }

  private static List<Row> afterTheDose(String model, EngineModel own) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read(FILE, ROWS).where("model", model)) {
      rows.add(
          EngineTables.pH(
              EngineTables.doseLabel(row),
              row.number("pH_target"),
              own.solve(
                      EngineTables.totals(row),
                      row.number("t_C"),
                      water -> dosed(row, water).equilibrium())
                  .pH()));
    }
    return rows;
  }

  private static Solution dosed(CsvTable.Line row, Solution water) {
    AmountConcentration dose =
        AmountConcentration.ofMillimolesPerLitre(
            row.number("dose_mmol_per_kg") * water.contents().kilogramsPerLitre());
    Solution after = water.after(Treatments.solute(EngineTables.acid(row), dose));
    return EngineTables.isOpen(row)
        ? after.after(Treatments.aeration(EngineTables.carbonDioxide(row)))
        : after;
  }

  private static List<Row> searched(String model, EngineModel own) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read(FILE, ROWS).where("model", model)) {
      if (!EngineTables.isOpen(row)) {
        rows.add(
            Row.of(
                EngineTables.doseLabel(row),
                row.number("dose_mmol_per_kg"),
                own.find(EngineTables.totals(row), row.number("t_C"), water -> search(row, water)),
                HowKnown.COMPUTED));
      }
    }
    return rows;
  }

  private static EngineModel.Found<Double> search(CsvTable.Line row, Solution water) {
    Dose<Solution> dose =
        Dose.of(water, EngineTables.acid(row)).to(Figures.PH_VALUE, PH.of(row.number("pH_target")));
    double perLitre = dose.answer(Dose.AMOUNT).value().inMillimolesPerLitre();
    return new EngineModel.Found<>(
        perLitre / water.contents().kilogramsPerLitre(), dose.after().equilibrium());
  }
}
