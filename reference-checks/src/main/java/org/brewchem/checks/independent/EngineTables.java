package org.brewchem.checks.independent;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.Gas;

/** The tables of a general geochemistry engine, recomputed with its constants and rules. */
public final class EngineTables {

  static final Source ENGINE =
      new Source(
          "phreeqc-tables", "USGS PHREEQC, 2025 snapshot, run for the tables of this module");

  private static final List<String> MODELS = List.of("activity", "pairs");

  private static final Map<String, Double> PH_TOLERANCE =
      Map.of("activity", 0.0015, "pairs", 0.003);
  private static final double RELATIVE_TOLERANCE = 1e-3;
  private static final double INDEX_TOLERANCE = 0.005;

  private static final double MOST_MILLIMOLES_OF_ACID = 50;
  private static final int MOST_STEPS = 200;

  /** The table holds the engine's solubility to 0.01 in log10. */
  static final EquilibriumConstant HENRY = Gas.CARBON_DIOXIDE.solubility();

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
              () -> solutions(model)));
      checks.add(
          check(
              "engine-waters-" + model,
              "Random waters",
              model,
              "pH of 2000 waters at 25 °C",
              pHTolerance(model),
              2000,
              () -> random("engine-random-waters.csv", WATER_COLUMNS, model)));
      checks.add(
          check(
              "engine-beers-" + model,
              "Random beer-like mixtures",
              model,
              "pH of 2000 mixtures at 25 °C",
              pHTolerance(model),
              2000,
              () -> random("engine-random-beers.csv", BEER_COLUMNS, model)));
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
              "engine-acidity-" + model,
              "Titratable acidities",
              model,
              "volume of 0.1 mol/L alkali to pH 7.0 and 8.2, diluted by the titrant",
              relative("acidities agree closer than they can be titrated"),
              28,
              () -> acidities(model)));
      checks.add(
          check(
              "engine-dose-" + model,
              "Acid doses of waters",
              model,
              "acid that brings three waters to a pH, closed and open to carbon dioxide",
              relative("doses agree closer than they can be measured out"),
              130,
              () -> doses(model)));
    }
    checks.add(
        check(
            "engine-calcite",
            "Saturation index of calcite",
            "pairs",
            "saturation index of the waters, closed and open",
            Tolerance.absolute(INDEX_TOLERANCE, "", "twice the allowance for pH, rounded down"),
            27,
            EngineTables::calciteIndices));
    checks.add(
        check(
            "engine-calcite-dosed",
            "Saturation index of calcite after a dose",
            "pairs",
            "saturation index of the waters brought to a pH by an acid, closed and open",
            Tolerance.absolute(INDEX_TOLERANCE, "", "twice the allowance for pH, rounded down"),
            130,
            EngineTables::calciteIndicesAfterDoses));
    return checks;
  }

  private interface Rows {
    List<Row> evaluate();
  }

  private static ReferenceCheck check(
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

  private static Tolerance pHTolerance(String model) {
    return Tolerance.absolute(PH_TOLERANCE.getOrDefault(model, 0.0), "pH", PH_REASON);
  }

  private static Tolerance relative(String reason) {
    return Tolerance.relative(RELATIVE_TOLERANCE, reason);
  }

  private static List<Row> solutions(String model) {
    return CsvTable.read("engine-ph.csv", 180).where("model", model).stream()
        .map(
            row ->
                pH(
                    row.text("case") + " " + row.text("description") + ", " + row.text("t_C"),
                    row.number("pH"),
                    EngineModel.named(model).solve(totals(row), row.number("t_C")).pH(),
                    model))
        .toList();
  }

  private static List<Row> random(String file, Map<String, Component> columns, String model) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read(file, 2000).lines()) {
      Map<Component, Double> totals = new LinkedHashMap<>();
      columns.forEach((column, component) -> put(totals, component, row.number(column)));
      rows.add(
          pH(
              row.text("id"),
              row.number("pH_" + model),
              EngineModel.named(model).solve(totals, 25).pH(),
              model));
    }
    return rows;
  }

  private static List<Row> waterStates(String model) {
    return CsvTable.read("engine-waters.csv", 54).where("model", model).stream()
        .map(row -> pH(waterLabel(row), row.number("pH"), state(row).pH(), model))
        .toList();
  }

  private static List<Row> calciteIndices() {
    return CsvTable.read("engine-waters.csv", 54).where("model", "pairs").stream()
        .map(
            row ->
                Row.of(
                    waterLabel(row),
                    row.number("SI_calcite"),
                    state(row).calciteIndex(),
                    INDEX_TOLERANCE,
                    HowKnown.COMPUTED))
        .toList();
  }

  private static EngineModel.State state(CsvTable.Line row) {
    return state(row, totals(row));
  }

  private static EngineModel.State state(CsvTable.Line row, Map<Component, Double> totals) {
    EngineModel model = EngineModel.named(row.text("model"));
    double celsius = row.number("t_C");
    return row.text("mode").equals("open")
        ? model.solveOpen(totals, celsius, row.number("log10_pCO2_atm"))
        : model.solve(totals, celsius);
  }

  private static List<Row> acidities(String model) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row :
        CsvTable.read("engine-titratable-acidity.csv", 56).where("model", model)) {
      double celsius = row.number("t_C");
      PH endPoint = PH.of(row.number("end_point_pH"));
      Volume sample = Volume.ofMillilitres(row.number("sample_mL"));
      Molality alkali = Molality.ofMolesPerKilogram(row.number("NaOH_mol_per_L"));
      Volume titre =
          EngineModel.named(model)
              .searched(
                  totals(row),
                  celsius,
                  solution -> {
                    Solution titrant =
                        Solution.at(Temperature.ofCelsius(celsius))
                            .with(Base.SODIUM_HYDROXIDE, alkali);
                    Volume volume = solution.titratedWith(titrant, sample).volumeTo(endPoint);
                    return new EngineModel.Found<>(volume, solution.mixed(sample, titrant, volume));
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
              RELATIVE_TOLERANCE,
              HowKnown.COMPUTED));
    }
    return rows;
  }

  private static List<Row> doses(String model) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read("engine-acid-dose.csv", 260).where("model", model)) {
      rows.add(
          Row.of(
              doseLabel(row),
              row.number("dose_mmol_per_kg"),
              dose(row),
              RELATIVE_TOLERANCE,
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
                state(row, dosed(row, dose(row))).calciteIndex(),
                INDEX_TOLERANCE,
                HowKnown.COMPUTED));
      }
    }
    return rows;
  }

  private static double dose(CsvTable.Line row) {
    if (row.text("mode").equals("open")) {
      return openDose(row);
    }
    Acid acid = ACIDS.getOrDefault(row.text("acid"), Acid.HYDROCHLORIC);
    PH target = PH.of(row.number("pH_target"));
    Molality dose =
        EngineModel.named(row.text("model"))
            .searched(
                totals(row),
                row.number("t_C"),
                solution -> {
                  Molality found = solution.doseOf(acid, target);
                  return new EngineModel.Found<>(found, solution.with(acid, found));
                });
    return dose.inMillimolesPerKilogram();
  }

  private static double openDose(CsvTable.Line row) {
    double target = row.number("pH_target");
    return root(
        millimoles -> target - state(row, dosed(row, millimoles)).pH(), MOST_MILLIMOLES_OF_ACID);
  }

  private static Map<Component, Double> dosed(CsvTable.Line row, double millimoles) {
    Map<Component, Double> totals = totals(row);
    Acid acid = ACIDS.getOrDefault(row.text("acid"), Acid.HYDROCHLORIC);
    totals.merge(acid.component(), millimoles * 1e-3, Double::sum);
    return totals;
  }

  private static Map<Component, Double> totals(CsvTable.Line row) {
    Map<Component, Double> totals = new LinkedHashMap<>();
    MILLIMOLAL.forEach(
        (column, component) -> {
          if (!row.isEmpty(column)) {
            put(totals, component, row.number(column) * 1e-3);
          }
        });
    if (row.isEmpty("CO2_total_mmol_per_kg")) {
      totals.put(Component.CARBONATE, 0.0);
    }
    return totals;
  }

  private static void put(Map<Component, Double> totals, Component component, double total) {
    if (total > 0) {
      totals.put(component, total);
    }
  }

  private static Row pH(String label, double expected, double computed, String model) {
    return Row.of(
        label, expected, computed, PH_TOLERANCE.getOrDefault(model, 0.0), HowKnown.COMPUTED);
  }

  private static String waterLabel(CsvTable.Line row) {
    String pressure = row.isEmpty("log10_pCO2_atm") ? "" : " " + row.text("log10_pCO2_atm");
    return row.text("water") + ", " + row.text("t_C") + " °C, " + row.text("mode") + pressure;
  }

  private static String doseLabel(CsvTable.Line row) {
    return waterLabel(row) + ", " + row.text("acid") + " to pH " + row.text("pH_target");
  }

  /** Root of a rising function, between 0 and an upper end, by bisection and regula falsi. */
  private static double root(DoubleUnaryOperator function, double upper) {
    double low = 0;
    double high = upper;
    double atLow = function.applyAsDouble(low);
    double atHigh = function.applyAsDouble(high);
    for (int step = 0; step < MOST_STEPS; step++) {
      double share = step % 2 == 0 ? 0.5 : -atLow / (atHigh - atLow);
      double next = low + (high - low) * share;
      double atNext = function.applyAsDouble(next);
      if (Math.abs(atNext) < 1e-7) {
        return next;
      }
      if (atNext > 0) {
        high = next;
        atHigh = atNext;
      } else {
        low = next;
        atLow = atNext;
      }
    }
    throw new IllegalStateException("no root after " + MOST_STEPS + " steps");
  }
}
