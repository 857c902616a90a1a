package org.brewchem.checks.independent;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Equilibrium;
import org.brewchem.solution.OpenSolution;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Mineral;
import org.brewchem.treatment.Treatments;

/** The tables of a general geochemistry engine, recomputed with its constants and rules. */
public final class EngineTables {

  static final Source ENGINE =
      new Source(
          "phreeqc-tables", "USGS PHREEQC, 2025 snapshot, run for the tables of this module");

  private static final List<String> MODELS = List.of("activity", "pairs");

  private static final double RELATIVE_TOLERANCE = 1e-3;
  private static final Tolerance INDEX_TOLERANCE =
      Tolerance.absolute(0.005, "", "twice the allowance for pH, rounded down");

  private static final Mineral CALCITE = Mineral.of("calcite", "phreeqc-dat");

  private static final String PH_REASON =
      "the engine's Debye-Hückel A is known to 0.0003 and its activity of water by an"
          + " approximation";

  /** Column of the tables in mmol/kg, and the component that it totals. */
  private static final Map<String, Component> MILLIMOLAL =
      Map.ofEntries(
          Map.entry("Na_mmol_per_kg", Component.SODIUM),
          Map.entry("K_mmol_per_kg", Component.POTASSIUM),
          Map.entry("Ca_mmol_per_kg", Component.CALCIUM),
          Map.entry("Mg_mmol_per_kg", Component.MAGNESIUM),
          Map.entry("Cl_mmol_per_kg", Component.CHLORIDE),
          Map.entry("SO4_mmol_per_kg", Component.SULFATE),
          Map.entry("CO2_total_mmol_per_kg", Component.CARBONATE),
          Map.entry("PO4_total_mmol_per_kg", Component.PHOSPHATE),
          Map.entry("B_total_mmol_per_kg", Component.BORATE),
          Map.entry("lactate_mmol_per_kg", Component.LACTATE),
          Map.entry("acetate_mmol_per_kg", Component.ACETATE),
          Map.entry("citrate_mmol_per_kg", Component.CITRATE),
          Map.entry("malate_mmol_per_kg", Component.MALATE),
          Map.entry("tartrate_mmol_per_kg", Component.TARTRATE),
          Map.entry("succinate_mmol_per_kg", Component.SUCCINATE),
          Map.entry("phthalate_mmol_per_kg", Component.PHTHALATE));

  private static final Map<String, Component> WATER_COLUMNS =
      Map.of(
          "Na", Component.SODIUM,
          "K", Component.POTASSIUM,
          "Ca", Component.CALCIUM,
          "Mg", Component.MAGNESIUM,
          "Cl", Component.CHLORIDE,
          "S(6)", Component.SULFATE,
          "C(4)", Component.CARBONATE);

  private static final Map<String, Component> BEER_COLUMNS =
      Map.ofEntries(
          Map.entry("Na", Component.SODIUM),
          Map.entry("K", Component.POTASSIUM),
          Map.entry("Ca", Component.CALCIUM),
          Map.entry("Mg", Component.MAGNESIUM),
          Map.entry("Cl", Component.CHLORIDE),
          Map.entry("P", Component.PHOSPHATE),
          Map.entry("Citr", Component.CITRATE),
          Map.entry("C(4)", Component.CARBONATE),
          Map.entry("Lact", Component.LACTATE),
          Map.entry("Acet", Component.ACETATE),
          Map.entry("Succ", Component.SUCCINATE));

  private static final Map<String, Acid> ACIDS =
      Map.of(
          "HCl", Acid.HYDROCHLORIC,
          "H2SO4", Acid.SULFURIC,
          "lactic", Acid.LACTIC,
          "phosphoric", Acid.PHOSPHORIC);

  private EngineTables() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    List<ReferenceCheck> checks = new ArrayList<>();
    for (String model : MODELS) {
      checks.add(
          check(
              "engine-ph-" + model,
              "pH of solutions",
              model,
              "pH of 18 solutions at 5 to 65 °C",
              pHTolerance(model),
              90,
              () -> solutions(model, EngineModel.named(model))));
      checks.add(
          check(
              "engine-waters-" + model,
              "Random waters",
              model,
              "pH of 2000 waters at 25 °C",
              pHTolerance(model),
              2000,
              () -> waters(model, EngineModel.named(model))));
      checks.add(
          check(
              "engine-beers-" + model,
              "Random beer-like mixtures",
              model,
              "pH of 2000 mixtures at 25 °C",
              pHTolerance(model),
              2000,
              () -> beers(model, EngineModel.named(model))));
      checks.add(
          check(
              "engine-brewing-waters-" + model,
              "Waters closed and open to carbon dioxide",
              model,
              "pH of three waters at 10 to 65 °C, closed and at two partial pressures",
              pHTolerance(model),
              27,
              () -> waterStates(model)));
      checks.add(
          check(
              "engine-treatments-" + model,
              "Waters by treatments",
              model,
              "pH of the same waters, each blended of one twice as strong and pure water, the open"
                  + " ones then aerated at the pressure of the row",
              pHTolerance(model),
              27,
              () -> treated(model)));
      checks.add(
          check(
              "engine-acidity-" + model,
              "Titratable acidities",
              model,
              "volume of 0.1 mol/L alkali to pH 7.0 and 8.2, diluted by the titrant",
              relative("acidities agree closer than they can be titrated"),
              28,
              () -> acidities(model, EngineModel.named(model))));
      checks.add(
          check(
              "engine-dose-" + model,
              "Acid doses of waters",
              model,
              "acid that brings three waters to a pH, closed and open to carbon dioxide",
              relative("doses agree closer than they can be measured out"),
              130,
              () -> doses(model, EngineModel.named(model))));
      checks.addAll(EngineDoses.of(model));
    }
    checks.add(
        check(
            "engine-calcite",
            "Saturation index of calcite",
            "pairs",
            "saturation index of the waters, closed and open",
            INDEX_TOLERANCE,
            27,
            EngineTables::calciteIndices));
    checks.add(
        check(
            "engine-calcite-dosed",
            "Saturation index of calcite after a dose",
            "pairs",
            "saturation index of the waters brought to a pH by an acid, closed and open",
            INDEX_TOLERANCE,
            130,
            EngineTables::calciteIndicesAfterDoses));
    return checks;
  }

  interface Rows {
    List<Row> evaluate();
  }

  static ReferenceCheck check(
      String id,
      String title,
      String model,
      String computation,
      Tolerance tolerance,
      int expectedRows,
      Rows rows) {
    return new ReferenceCheck(
        id,
        Suite.INDEPENDENT,
        title + ", model " + model,
        ENGINE,
        computation + ", with the constants and the activity rule of the engine",
        tolerance,
        "",
        expectedRows,
        rows::evaluate);
  }

  static Tolerance pHTolerance(String model) {
    return Tolerance.absolute(model.equals("pairs") ? 0.003 : 0.0015, "pH", PH_REASON);
  }

  static Tolerance relative(String reason) {
    return Tolerance.relative(RELATIVE_TOLERANCE, reason);
  }

  /** Rows of the solutions for the results of one model, recomputed with a model of one's own. */
  static List<Row> solutions(String model, EngineModel own) {
    return CsvTable.read("engine-ph.csv", 180).where("model", model).stream()
        .map(
            row ->
                pH(
                    row.text("case") + " " + row.text("description") + ", " + row.text("t_C"),
                    row.number("pH"),
                    own.solve(totals(row), row.number("t_C"), Solution::equilibrium).pH()))
        .toList();
  }

  /** As {@link #solutions}, for the random waters. */
  static List<Row> waters(String model, EngineModel own) {
    return random("engine-random-waters.csv", WATER_COLUMNS, model, own);
  }

  /** As {@link #solutions}, for the random beer-like mixtures. */
  static List<Row> beers(String model, EngineModel own) {
    return random("engine-random-beers.csv", BEER_COLUMNS, model, own);
  }

  private static List<Row> random(
      String file, Map<String, Component> columns, String model, EngineModel own) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read(file, 2000).lines()) {
      Map<Component, Double> totals = new LinkedHashMap<>();
      columns.forEach((column, component) -> put(totals, component, row.number(column)));
      rows.add(
          pH(
              row.text("id"),
              row.number("pH_" + model),
              own.solve(totals, 25, Solution::equilibrium).pH()));
    }
    return rows;
  }

  private static List<Row> waterStates(String model) {
    return CsvTable.read("engine-waters.csv", 54).where("model", model).stream()
        .map(row -> pH(waterLabel(row), row.number("pH"), state(row).pH()))
        .toList();
  }

  private static List<Row> treated(String model) {
    return CsvTable.read("engine-waters.csv", 54).where("model", model).stream()
        .map(
            row ->
                pH(
                    waterLabel(row),
                    row.number("pH"),
                    EngineModel.named(model)
                        .solve(
                            totals(row),
                            row.number("t_C"),
                            solution -> blendedAndOpened(row, solution).equilibrium())
                        .pH()))
        .toList();
  }

  private static Solution blendedAndOpened(CsvTable.Line row, Solution water) {
    Map<Component, Molality> twice = new LinkedHashMap<>();
    water.totals().forEach((component, total) -> twice.put(component, total.times(2)));
    Solution strong =
        Solution.fromTotals(
            water.temperature(), water.chemistry(), twice, water.inertCharge().times(2));
    Solution pure = Solution.at(water.temperature()).under(water.chemistry());
    Solution blend = strong.after(Treatments.blend(Volume.ofLitres(3), pure, Volume.ofLitres(3)));
    return isOpen(row) ? blend.after(Treatments.aeration(carbonDioxide(row))) : blend;
  }

  private static List<Row> calciteIndices() {
    return CsvTable.read("engine-waters.csv", 54).where("model", "pairs").stream()
        .map(
            row ->
                Row.of(
                    waterLabel(row),
                    row.number("SI_calcite"),
                    state(row).saturationIndex(CALCITE).orElseThrow(),
                    HowKnown.COMPUTED))
        .toList();
  }

  private static Equilibrium state(CsvTable.Line row) {
    return EngineModel.named(row.text("model"))
        .solve(totals(row), row.number("t_C"), solution -> equilibrium(row, solution));
  }

  private static Equilibrium stateAfter(CsvTable.Line row, Molality dose) {
    return EngineModel.named(row.text("model"))
        .solve(
            totals(row),
            row.number("t_C"),
            solution -> equilibrium(row, solution.with(acid(row), dose)));
  }

  /** The equilibrium of a solution in the mode of the row, closed or open to carbon dioxide. */
  private static Equilibrium equilibrium(CsvTable.Line row, Solution solution) {
    return isOpen(row)
        ? OpenSolution.of(solution, carbonDioxide(row)).equilibrium()
        : solution.equilibrium();
  }

  static boolean isOpen(CsvTable.Line row) {
    return row.text("mode").equals("open");
  }

  static Pressure carbonDioxide(CsvTable.Line row) {
    return Pressure.ofAtmospheres(Math.pow(10, row.number("log10_pCO2_atm")));
  }

  /** As {@link #solutions}, for the titratable acidities. */
  static List<Row> acidities(String model, EngineModel own) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row :
        CsvTable.read("engine-titratable-acidity.csv", 56).where("model", model)) {
      double celsius = row.number("t_C");
      PH endPoint = PH.of(row.number("end_point_pH"));
      Volume sample = Volume.ofMillilitres(row.number("sample_mL"));
      Molality alkali = Molality.ofMolesPerKilogram(row.number("NaOH_mol_per_L"));
      Volume titre =
          own.find(
              totals(row),
              celsius,
              solution -> {
                Solution titrant =
                    Solution.at(Temperature.ofCelsius(celsius)).with(Base.SODIUM_HYDROXIDE, alkali);
                Volume volume = SimulatedTitration.of(solution, titrant, sample).volumeTo(endPoint);
                return new EngineModel.Found<>(
                    volume, solution.mixed(sample, titrant, volume).equilibrium());
              });
      rows.add(
          Row.of(
              row.text("case")
                  + " "
                  + row.text("description")
                  + ", "
                  + row.text("t_C")
                  + " °C to pH "
                  + row.text("end_point_pH"),
              row.number("NaOH_mL"),
              titre.inMillilitres(),
              HowKnown.COMPUTED));
    }
    return rows;
  }

  /** As {@link #solutions}, for the acid doses. */
  static List<Row> doses(String model, EngineModel own) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read("engine-acid-dose.csv", 260).where("model", model)) {
      rows.add(
          Row.of(
              doseLabel(row),
              row.number("dose_mmol_per_kg"),
              dose(row, own).inMillimolesPerKilogram(),
              HowKnown.COMPUTED));
    }
    return rows;
  }

  private static List<Row> calciteIndicesAfterDoses() {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read("engine-acid-dose.csv", 260).where("model", "pairs")) {
      if (!row.isEmpty("SI_calcite_end")) {
        rows.add(
            Row.of(
                doseLabel(row),
                row.number("SI_calcite_end"),
                stateAfter(row, dose(row, EngineModel.PAIRS))
                    .saturationIndex(CALCITE)
                    .orElseThrow(),
                HowKnown.COMPUTED));
      }
    }
    return rows;
  }

  private static Molality dose(CsvTable.Line row, EngineModel own) {
    PH target = PH.of(row.number("pH_target"));
    return own.find(
        totals(row),
        row.number("t_C"),
        solution -> {
          Molality dose =
              isOpen(row)
                  ? OpenSolution.of(solution, carbonDioxide(row)).doseOf(acid(row), target)
                  : solution.doseOf(acid(row), target);
          return new EngineModel.Found<>(dose, equilibrium(row, solution.with(acid(row), dose)));
        });
  }

  static Acid acid(CsvTable.Line row) {
    return ACIDS.getOrDefault(row.text("acid"), Acid.HYDROCHLORIC);
  }

  static Map<Component, Double> totals(CsvTable.Line row) {
    Map<Component, Double> totals = new LinkedHashMap<>();
    MILLIMOLAL.forEach(
        (column, component) -> {
          if (!row.isEmpty(column)) {
            put(totals, component, row.number(column) * 1e-3);
          }
        });
    return totals;
  }

  private static void put(Map<Component, Double> totals, Component component, double total) {
    if (total > 0) {
      totals.put(component, total);
    }
  }

  static Row pH(String label, double expected, PH computed) {
    return Row.of(label, expected, computed.value(), HowKnown.COMPUTED);
  }

  private static String waterLabel(CsvTable.Line row) {
    String pressure = row.isEmpty("log10_pCO2_atm") ? "" : " " + row.text("log10_pCO2_atm");
    return row.text("water") + ", " + row.text("t_C") + " °C, " + row.text("mode") + pressure;
  }

  static String doseLabel(CsvTable.Line row) {
    return waterLabel(row) + ", " + row.text("acid") + " to pH " + row.text("pH_target");
  }
}
