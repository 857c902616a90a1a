package org.brewchem.checks.frozen;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.checks.CsvTable;
import org.brewchem.figure.Scale;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.substance.Acid;
import org.brewchem.table.Acidities;
import org.brewchem.table.Column;
import org.brewchem.table.Failure;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;

/** Columns of tables: the waters of the room before row by row, and titres. */
final class FrozenTables {

  private static final PH END_POINT = PH.of(8.2);

  private FrozenTables() {}

  static void compute(FrozenFigures figures) {
    List<CsvTable.Line> waters =
        FrozenWaters.waters().lines().stream()
            .filter(line -> line.text("alkalinity_as").equals("CaCO3"))
            .toList();
    Waters table = Waters.from(waterTable(waters));
    Map<String, Column> columns = new LinkedHashMap<>();
    columns.put("calcium hardness", table.calciumHardness());
    columns.put("magnesium hardness", table.magnesiumHardness());
    columns.put("total hardness", table.totalHardness());
    columns.put("residual alkalinity", table.residualAlkalinity());
    columns.put("sulfate to chloride", table.sulfateToChloride());
    columns.put("ion balance", table.ionBalance());
    columns.put("pH", table.pH());
    columns.put(
        "ionic strength",
        table.column(
            Figures.IONIC_STRENGTH.shownIn(
                Scale.of(
                    "mol/kg", Molality::inMolesPerKilogram, Molality::ofMolesPerKilogram, 5))));
    columns.put("lactic acid to pH 5.4", table.doseOf(Acid.LACTIC, PH.of(5.4)));
    columns.put(
        "phosphoric acid to pH 5.4 at 65 °C",
        table.at(Temperature.ofCelsius(65)).doseOf(Acid.PHOSPHORIC, PH.of(5.4)));
    columns.put("pH at level ideal", table.under(Chemistry.of(Level.IDEAL)).pH());
    columns.forEach((name, column) -> column(figures, waters, name, column));
    titres(figures);
  }

  private static Table waterTable(List<CsvTable.Line> waters) {
    String[] columns = {
      "calcium",
      "magnesium",
      "sodium",
      "potassium",
      "sulfate",
      "chloride",
      "nitrate",
      "pH",
      "alkalinity"
    };
    Table.Builder table =
        Table.withHeadings(
            "calcium [mg/L]",
            "magnesium [mg/L]",
            "sodium [mg/L]",
            "potassium [mg/L]",
            "sulfate [mg/L]",
            "chloride [mg/L]",
            "nitrate [mg/L]",
            "pH",
            "alkalinity [mg/L as CaCO3]");
    for (CsvTable.Line water : waters) {
      table.row();
      for (int i = 0; i < columns.length; i++) {
        if (!water.isEmpty(columns[i])) {
          table.set(i, water.number(columns[i]));
        }
      }
    }
    return table.build();
  }

  private static void titres(FrozenFigures figures) {
    List<CsvTable.Line> lines = CsvTable.read("frozen/table-titrations.csv", 30).lines();
    Table table =
        Table.of(
            column("volume [mL]", lines, "volume"),
            column("sample [mL]", lines, "sample"),
            column("titrant [mol/L]", lines, "titrant"),
            column("blank [mL]", lines, "blank"));
    Acidities acidities = Acidities.from(table, END_POINT);
    column(figures, lines, "titratable acidity", acidities.acidity());
    column(figures, lines, "acidity as lactic acid", acidities.acidityAs(Acid.LACTIC));
    TitratableAcidity target = TitratableAcidity.ofMilliequivalentsPerLitre(30, END_POINT);
    column(
        figures,
        lines,
        "lactic acid to 30 mEq/L",
        acidities.doseByEffectiveEquivalents(Acid.LACTIC, target));
    column(
        figures,
        lines,
        "phosphoric acid to 30 mEq/L",
        acidities.doseByEffectiveEquivalents(Acid.PHOSPHORIC, target));
  }

  private static Column column(String heading, List<CsvTable.Line> lines, String name) {
    return Column.of(heading, lines.stream().mapToDouble(line -> line.number(name)).toArray());
  }

  /** States a column row by row; a row without a number says what kind of failure it is. */
  private static void column(
      FrozenFigures figures, List<CsvTable.Line> lines, String name, Column column) {
    for (int i = 0; i < lines.size(); i++) {
      FrozenFigures.Of of = figures.of("row " + lines.get(i).text("id"));
      if (column.isPresent(i)) {
        of.number(
            name,
            column.unit().orElse("").replace("by mass", "").replace(",", ""),
            column.value(i));
      } else {
        of.text(name, kind(column.failure(i).orElseThrow()));
      }
    }
  }

  private static String kind(Failure failure) {
    if (failure instanceof Failure.Missing) {
      return "missing";
    }
    return failure instanceof Failure.NoSolution ? "no solution" : "not possible";
  }
}
