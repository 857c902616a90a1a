package org.brewchem.table;

import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Mineral;
import org.brewchem.water.WaterFigures;
import org.junit.jupiter.api.Test;

/**
 * A cell of no use is a failure of its own row; every other row stays as it is without that row.
 */
class SpoiltCellsTest {

  private static final double[] SPOILT = {1e308, 1e100, -1e308, 1e-310};

  private static final String ACIDITY = "titratable acidity [g/L as lactic acid, to pH 8.2]";

  /** Each column in three rows, and its standard uncertainty, 2 % of the first number. */
  private static Map<String, double[]> withUncertainties(Map<String, double[]> columns) {
    Map<String, double[]> all = new LinkedHashMap<>(columns);
    columns.forEach(
        (heading, numbers) -> {
          double u = numbers[0] * 0.02;
          all.put(Column.ofUncertainty(heading), new double[] {u, u, u});
        });
    return all;
  }

  /** The rows, the second of them left out or with one cell replaced by a text or a number. */
  private static Table table(
      Map<String, double[]> columns, boolean second, String spoilt, double number) {
    Table.Builder rows = Table.withHeadings(columns.keySet().toArray(String[]::new));
    for (int i = 0; i < 3; i++) {
      if (i == 1 && !second) {
        continue;
      }
      rows.row(i + 1L);
      int k = 0;
      for (Map.Entry<String, double[]> column : columns.entrySet()) {
        if (i == 1 && column.getKey().equals(spoilt)) {
          if (Double.isNaN(number)) {
            rows.unreadable(k, "NaN", "is not a number");
          } else {
            rows.set(k, number);
          }
        } else {
          rows.set(k, column.getValue()[i]);
        }
        k++;
      }
    }
    return rows.build();
  }

  private static void assertOthersAreKept(
      Map<String, double[]> columns, Function<Table, List<Column>> room) {
    List<Column> expected = room.apply(table(columns, false, "", 0));
    for (String heading : columns.keySet()) {
      for (double number : Arrays.copyOf(SPOILT, SPOILT.length + 1)) {
        double cell = number == 0 ? Double.NaN : number;
        List<Column> found = room.apply(table(columns, true, heading, cell));
        for (int c = 0; c < found.size(); c++) {
          String where = heading + " = " + cell + ", " + found.get(c).heading();
          assertKept(expected.get(c), found.get(c), where);
        }
        assertTrue(
            found.stream()
                .flatMap(column -> column.failure(1).stream())
                .anyMatch(failure -> failure.row() == 2 && failure.column().equals(heading)),
            heading + " = " + cell + " is named by no failure");
      }
    }
  }

  private static void assertKept(Column expected, Column found, String where) {
    long[] bits = {Double.doubleToLongBits(found.raw(0)), Double.doubleToLongBits(found.raw(2))};
    long[] wanted = {
      Double.doubleToLongBits(expected.raw(0)), Double.doubleToLongBits(expected.raw(1))
    };
    assertArrayEquals(wanted, bits, where);
    assertEquals(expected.failure(0), found.failure(0), where);
    assertEquals(expected.failure(1), found.failure(2), where);
    assertTrue(!found.isPresent(1) || Double.isFinite(found.raw(1)), where);
  }

  /** The columns, and those of their standard uncertainties beside them. */
  private static List<Column> both(Column... columns) {
    return Arrays.stream(columns)
        .flatMap(
            column ->
                column
                    .standardUncertainty()
                    .map(u -> List.of(column, u))
                    .orElse(List.of(column))
                    .stream())
        .toList();
  }

  private static double[] three(double first, double second, double third) {
    return new double[] {first, second, third};
  }

  private static List<Column> askedOfWaters(Table table) {
    Waters waters = Waters.from(table);
    waters.notices();
    waters.bases();
    waters.notices(WaterFigures.ION_BALANCE);
    waters.explain(Figures.PH_VALUE, table.size() - 2);
    assertTrue(
        waters.reportNotices().stream()
            .filter(notice -> notice.code() == TableCode.CELL_NOT_USED)
            .allMatch(notice -> notice.row().orElseThrow() == 2));
    return both(
        waters.pH(),
        waters.ionBalance(),
        waters.column(Figures.saturationIndex(Mineral.CALCITE)),
        waters.columnWithUncertainty(Figures.PH_VALUE),
        waters.columnWithUncertainty(WaterFigures.TOTAL_HARDNESS));
  }

  @Test
  void aSpoiltCellOfWatersThatAreNeutralByTheirIonsSpoilsItsRowAlone() {
    Map<String, double[]> columns = new LinkedHashMap<>();
    columns.put("calcium [mg/L]", three(92, 60, 40));
    columns.put("magnesium [mmol/L]", three(0.4, 0.3, 0.2));
    columns.put("sodium [mg/L]", three(19, 15, 12));
    columns.put("chloride [mg/L]", three(31, 25, 22));
    columns.put("sulfate [mg/L]", three(45, 33, 30));
    columns.put("total carbon dioxide [mmol/L]", three(4.6, 3, 1.6));
    assertOthersAreKept(withUncertainties(columns), SpoiltCellsTest::askedOfWaters);
  }

  @Test
  void aSpoiltCellOfWatersOfAnAlkalinitySpoilsItsRowAlone() {
    Map<String, double[]> columns = new LinkedHashMap<>();
    columns.put("calcium [g/L]", three(0.092, 0.06, 0.04));
    columns.put("magnesium [mg/L]", three(11, 8, 9));
    columns.put("bicarbonate [mg/L]", three(137, 80, 117));
    columns.put("pH", three(7.2, 7.4, 7.6));
    assertOthersAreKept(withUncertainties(columns), SpoiltCellsTest::askedOfAlkalineWaters);
  }

  private static List<Column> askedOfAlkalineWaters(Table table) {
    Waters waters = Waters.from(table);
    waters.notices();
    waters.reportNotices();
    waters.notices(Figures.PH_VALUE);
    return both(
        waters.residualAlkalinity(),
        waters.column(Figures.saturationIndex(Mineral.CALCITE)),
        waters.columnWithUncertainty(Figures.PH_VALUE),
        waters.columnWithUncertainty(WaterFigures.RESIDUAL_ALKALINITY));
  }

  @Test
  void aSpoiltCellOfTitrationsSpoilsItsRowAlone() {
    Map<String, double[]> columns = new LinkedHashMap<>();
    columns.put("volume [mL]", three(14.6, 15, 14));
    columns.put("sample [L]", three(0.05, 0.05, 0.05));
    columns.put("titrant [mol/L]", three(0.1, 0.1, 0.1));
    columns.put("blank [mL]", three(0.1, 0.1, 0.1));
    assertOthersAreKept(
        withUncertainties(columns),
        table -> {
          Acidities acidities = Acidities.from(table, pH(8.2));
          acidities.notices();
          return both(
              acidities.acidityAs(Acid.LACTIC),
              acidities.columnWithUncertainty(Figures.titratableAcidity(pH(8.2))),
              acidities.doseByEffectiveEquivalents(
                  Acid.LACTIC, TitratableAcidity.ofMilliequivalentsPerLitre(60, pH(8.2))));
        });
  }

  @Test
  void aSpoiltCellOfBeersSpoilsItsRowAlone() {
    Map<String, double[]> columns = new LinkedHashMap<>();
    columns.put("pH", three(4.3, 4.4, 4.5));
    columns.put(ACIDITY, three(1.8, 2.4, 2));
    columns.put("calcium [mg/L]", three(60, 50, 40));
    assertOthersAreKept(
        withUncertainties(columns),
        table -> {
          Beers beers = Beers.from(table);
          beers.notices();
          Figure<?> acidity = Figures.titratableAcidity(pH(7), Acid.LACTIC);
          return both(beers.column(Figures.PH_VALUE), beers.columnWithUncertainty(acidity));
        });
  }

  @Test
  void aFailureSaysTheRowTheColumnTheValueAndWhatIsAllowed() {
    Waters waters =
        Waters.from(
            Table.of(
                Column.of("calcium [mg/L]", 92, 1e308),
                Column.of("alkalinity [mEq/L]", 2, 3),
                Column.of("u(alkalinity) [mEq/L]", 0.1, 1e95)));
    assertEquals(
        "row 2, column \"calcium [mg/L]\": calcium: 1.0E308 mg/L is not possible; 0 or a size of"
            + " 1e-90 to 1e90 is allowed",
        waters.pH().failure(1).orElseThrow().toString());
    Column alkalinity = waters.columnWithUncertainty(Figures.CARBONATE_ALKALINITY);
    assertTrue(alkalinity.isPresent(1));
    String reason = "u(alkalinity): 1.0E95 mEq/L is not possible; 0 or a size of 1e-90 to 1e90";
    assertEquals(
        "row 2, column \"u(alkalinity) [mEq/L]\": " + reason + " is allowed",
        alkalinity.standardUncertainty().orElseThrow().failure(1).orElseThrow().toString());
    List<String> left =
        waters.reportNotices().stream()
            .filter(notice -> notice.code() == TableCode.CELL_NOT_USED)
            .map(Notice::text)
            .toList();
    assertEquals(2, left.size());
    assertTrue(left.get(1).contains(reason), left.get(1));
  }

  /**
   * An acidity that no beer has at its pH is refused when the beer is asked, not when it is made.
   */
  @Test
  void aBeerThatCannotAnswerIsAFailureOfItsRow() {
    Figure<?> acidity = Figures.titratableAcidity(pH(7), Acid.LACTIC);
    List<Beer> beers =
        List.of(
            Beer.of(pH(4.4), TitratableAcidity.ofMilliequivalentsPerLitre(20, pH(8.2))),
            Beer.of(pH(4.4), TitratableAcidity.ofMilliequivalentsPerLitre(1e5, pH(8.2))));
    Column column = Answers.of(beers).column(acidity);
    assertTrue(column.isPresent(0));
    assertTrue(column.failure(1).orElseThrow().reason().contains("is not possible"));
  }
}
