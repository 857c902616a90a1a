package org.brewchem.checks.independent;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import org.brewchem.checks.Comparison;
import org.brewchem.checks.Row;
import org.brewchem.checks.ValidationPage;
import org.brewchem.substance.PairSet;

/**
 * How far the library's own defaults lie from the engine, and which of them makes the difference.
 */
public final class EngineDefaults {

  private static final Map<String, BiFunction<String, EngineModel, List<Row>>> TABLES = tables();

  private EngineDefaults() {}

  private static Map<String, BiFunction<String, EngineModel, List<Row>>> tables() {
    Map<String, BiFunction<String, EngineModel, List<Row>>> tables = new LinkedHashMap<>();
    tables.put("solutions, pH", EngineTables::solutions);
    tables.put("waters, pH", EngineTables::waters);
    tables.put("beers, pH", EngineTables::beers);
    tables.put("acidities, %", EngineTables::acidities);
    tables.put("doses, %", EngineTables::doses);
    return tables;
  }

  /** Returns the comparison. */
  public static Comparison comparison() {
    List<String> header = new ArrayList<>(List.of("engine's model", "library's own"));
    header.addAll(TABLES.keySet());
    List<List<String>> rows = new ArrayList<>();
    for (String model : List.of("activity", "pairs")) {
      EngineModel engine = EngineModel.named(model);
      Map<String, EngineModel> variants = new LinkedHashMap<>();
      variants.put("none", engine);
      variants.put("constants", engine.withDefaultConstants());
      variants.put("ion product and activity of water", engine.withDefaultWater());
      EngineModel all = engine.withDefaultConstants().withDefaultWater();
      if (model.equals("pairs")) {
        variants.put("activity coefficients", engine.withDefaultActivity());
        variants.put(
            "ion pairs, all of sodium and potassium", engine.withPairs(PairSet.withAlkaliPairs()));
        variants.put("ion pairs", engine.withPairs(PairSet.standard()));
        all = all.withDefaultActivity().withPairs(PairSet.standard());
      }
      variants.put("all", all);
      variants.forEach((variant, own) -> rows.add(row(model, variant, own)));
    }
    return new Comparison(
        "The library's defaults against the engine",
        "The engine's tables computed with its own constants, and with one or all of the"
            + " library's defaults in their place: RMS and largest difference. Constants: the"
            + " default lactic acid has another heat capacity (0.025 in pH at 65 °C, 0.001 and less"
            + " at 25 °C); the engine's phosphoric acid in model pairs has none, and a first pKa of"
            + " 2.168 where the default is 2.148 (0.10 in pH at 65 °C, 0.01 at 25 °C; 4 % in a dose"
            + " of phosphoric acid at 65 °C). Water: the library takes its activity as 1 and the"
            + " ion product of IAPWS R11-07 (0.006 in pH in 0.01 mol/kg of lye at 65 °C). Activity"
            + " coefficients: Davies for all species instead of ion sizes (0.026 in pH at an ionic"
            + " strength of 0.25 mol/kg). Ion pairs: MgPO4- of 4.654 instead of 6.589 (up to 3.7 %"
            + " of an acidity, no effect on the pH of a beer), magnesium malate of 2.6 instead of"
            + " 2.3, and fourteen pairs of sodium and potassium that the default leaves out because"
            + " it finds activities by the Davies equation (0.026 in pH beside ion sizes, which"
            + " need them).",
        header,
        rows);
  }

  private static List<String> row(String model, String variant, EngineModel own) {
    List<String> cells = new ArrayList<>(List.of(model, variant));
    TABLES.forEach(
        (name, table) -> {
          double squares = 0;
          double largest = 0;
          List<Row> rows = table.apply(model, own);
          boolean relative = name.endsWith("%");
          for (Row row : rows) {
            double difference = Math.abs(row.computed() - row.expected());
            double deviation = relative ? 100 * difference / Math.abs(row.expected()) : difference;
            squares += deviation * deviation;
            largest = Math.max(largest, deviation);
          }
          cells.add(
              ValidationPage.deviationText(Math.sqrt(squares / rows.size()))
                  + "; "
                  + ValidationPage.deviationText(largest));
        });
    return cells;
  }
}
