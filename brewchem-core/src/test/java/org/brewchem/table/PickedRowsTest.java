package org.brewchem.table;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.brewchem.figure.Figure;
import org.brewchem.solution.Figures;
import org.brewchem.water.Water;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

class PickedRowsTest {

  private static Table table() {
    Table.Builder builder = Table.withHeadings(List.of("calcium [mg/L]", "pH"), List.of("well"));
    builder.row(3).set(0, 92).set(1, 7.6).text(0, "north");
    builder.row().set(0, 40).text(0, "south");
    builder.row().unreadable(0, "< 0.5", "is a limit").set(1, 7.1).text(0, "north");
    builder.row().set(0, 40).set(1, 6.9).text(0, "east");
    return builder.build();
  }

  private static List<Long> rows(Table table) {
    return IntStream.range(0, table.size()).mapToObj(table::row).toList();
  }

  @Test
  void columnsAreKeptInTheOrderAskedFor() {
    Table kept = table().select("pH", "well");
    assertEquals("pH", kept.columns().get(0).name());
    assertEquals(List.of("well"), kept.textNames());
    assertEquals(1, kept.columns().size());
    assertThrows(IllegalArgumentException.class, () -> table().select("pH", "pH"));
    assertThrows(IllegalArgumentException.class, () -> table().select());
    assertThrows(IllegalArgumentException.class, () -> table().select("iron"));
  }

  @Test
  void aRenamedColumnKeepsItsUnitItsPlaceAndItsFailures() {
    Table renamed = table().renamed("calcium", "Ca").renamed("well", "source");
    assertEquals("Ca [mg/L]", renamed.columns().get(0).heading());
    assertEquals(List.of("source"), renamed.textNames());
    assertTrue(renamed.column("Ca").failure(2).isPresent());
    assertEquals("calcium", table().renamed("calcium", "calcium").columns().get(0).name());
    for (String there : List.of("pH", "well")) {
      assertEquals(
          "column \"" + there + "\" stands twice",
          assertThrows(IllegalArgumentException.class, () -> table().renamed("calcium", there))
              .getMessage());
    }
    assertThrows(IllegalArgumentException.class, () -> table().renamed("well", "calcium"));
    assertThrows(IllegalArgumentException.class, () -> table().renamed("iron", "Fe"));
    assertEquals(
        "new name of \"pH\": \"acidity [g/L]\" is not possible; a name without a unit is needed,"
            + " for the unit stays",
        assertThrows(IllegalArgumentException.class, () -> table().renamed("pH", "acidity [g/L]"))
            .getMessage());
  }

  @Test
  void rowsThatPassKeepTheirNumbersTextsAndFailures() {
    Table low = table().where("pH", value -> value < 7.5);
    assertEquals(List.of(5L, 6L), rows(low));
    assertEquals(List.of("north", "east"), low.texts("well"));
    assertEquals(table().column("calcium").failure(2), low.column("calcium").failure(0));
    assertEquals(40, low.column("calcium").value(1));
    assertEquals(List.of(3L, 5L), rows(table().whereText("well", "north"::equals)));
    assertEquals(0, table().where("calcium", value -> false).size());
  }

  @Test
  void rowsWithoutANumberAreLastInBothOrdersAndAlikeOnesStayInOrder() {
    assertEquals(List.of(4L, 6L, 3L, 5L), rows(table().sortedBy("calcium")));
    assertEquals(List.of(3L, 4L, 6L, 5L), rows(table().sortedDescendingBy("calcium")));
    assertEquals(List.of(6L, 3L, 5L, 4L), rows(table().sortedBy("well")));
    assertEquals(List.of(4L, 3L, 5L, 6L), rows(table().sortedDescendingBy("well")));
    assertThrows(IllegalArgumentException.class, () -> table().sortedBy("iron"));
    Column sorted = table().sortedBy("calcium").column("pH");
    assertEquals(List.of(new Failure.Missing(4, "pH")), sorted.failures());
    assertEquals(6.9, sorted.value(1));
  }

  @Test
  void theFirstRowsAreKept() {
    assertEquals(List.of(3L, 4L), rows(table().head(2)));
    assertEquals(4, table().head(100).size());
    assertEquals(4, table().head().size());
    assertEquals(0, table().head(0).size());
    assertThrows(IllegalArgumentException.class, () -> table().head(-1));
  }

  @Test
  void aSortedTableIsCalculatedWithRowByRow() {
    Table waters =
        Table.of(
            Column.of("calcium [mg/L]", 92, 40, 70),
            Column.of("magnesium [mg/L]", 11, 5, 8),
            Column.of("alkalinity [mg/L as CaCO3]", 215, 80, 120));
    Column plain = Waters.from(waters).residualAlkalinity();
    Table sorted = waters.sortedBy("calcium");
    Column found = Waters.from(sorted).residualAlkalinity();
    assertArrayEquals(
        new double[] {plain.value(1), plain.value(2), plain.value(0)}, found.values());
    assertEquals(List.of(2L, 3L, 1L), rows(sorted.with(found)));
  }

  @Test
  void failuresMakeATable() {
    Table failures = Table.ofFailures(table().column("calcium").failures());
    assertEquals(List.of(5L), rows(failures));
    assertEquals(List.of("unreadable"), failures.texts("kind"));
    assertEquals(List.of("calcium [mg/L]"), failures.texts("column"));
    assertEquals(List.of("is a limit"), failures.texts("reason"));
    assertEquals(
        List.of("missing", "not possible", "no solution", "no uncertainty"),
        List.of(
            new Failure.Missing(1, "c").kind(),
            new Failure.NotPossible(1, "c", "r").kind(),
            new Failure.NoSolution(1, "c", "r").kind(),
            new Failure.NoUncertainty(1, "c", "r").kind()));
  }

  /** Waters into a table and out of it again. */
  @Test
  void answersMakeAColumnWithTheirUncertainties() {
    List<Water> waters = List.of(water(92), water(40), WaterReport.reported().build().water());
    Figure<?> alkalinity = Figures.CARBONATE_ALKALINITY;
    Column found = Answers.of(waters).column(alkalinity);
    assertEquals(waters.get(1).answer(alkalinity).number(), found.value(1));
    assertEquals("no solution", found.failure(2).orElseThrow().kind());
    Column calcium = Answers.of(waters).column(Figures.CALCIUM);
    assertEquals("calcium [mg/L]", calcium.heading());
    assertEquals("u(calcium) [mg/L]", calcium.standardUncertainty().orElseThrow().heading());
    assertEquals(3, calcium.standardUncertainty().orElseThrow().value(0), 1e-12);
    Column magnesium = Answers.of(waters).column(Figures.MAGNESIUM);
    assertEquals(
        "no uncertainty",
        magnesium.standardUncertainty().orElseThrow().failure(0).orElseThrow().kind());
    Table back =
        Answers.of(waters)
            .table(Figures.CALCIUM, Figures.MAGNESIUM, Figures.PH_VALUE)
            .with(found.renamed("alkalinity"))
            .head(2);
    Column residual = Waters.from(back).residualAlkalinity();
    assertEquals(
        waters.get(0).answer(WaterFigures.RESIDUAL_ALKALINITY).number(), residual.value(0), 1e-9);
  }

  private static Water water(double calcium) {
    return WaterReport.reported()
        .calcium(mgPerL(calcium), mgPerL(3))
        .magnesium(mgPerL(11))
        .alkalinityAsCaCO3(mgPerL(120), mgPerL(2))
        .pH(pH(7.5), 0.05)
        .build()
        .water();
  }

  @Test
  void cellsBelowALimitBoundWhatRestsOnThem() {
    ColumnStatistics calcium = table().statistics("calcium");
    assertEquals(3, calcium.count());
    assertEquals(1, calcium.belowLimit());
    assertEquals(0, calcium.missing());
    assertEquals(172 / 4.0, calcium.mean().lower(), 1e-12);
    assertEquals(172.5 / 4.0, calcium.mean().upper(), 1e-12);
    assertEquals(new ColumnStatistics.Bounds(40, 40), calcium.quantile(0.5));
    assertEquals(new ColumnStatistics.Bounds(0, 0.5), calcium.quantile(0));
    assertEquals(new ColumnStatistics.Bounds(92, 92), calcium.quantile(1));
    assertTrue(calcium.standardDeviation().isEmpty());
    assertEquals(
        "calcium [mg/L]: 3 numbers, 1 below a limit, 0 missing; mean 43 to 43.125, least 0 to 0.5,"
            + " median 40, greatest 92",
        calcium.toString());
  }

  /** Mean 7.2, squares of the differences 0.16, 0.01, 0.09, by hand; quartiles interpolated. */
  @Test
  void missingCellsCountInNothing() {
    ColumnStatistics statistics = table().statistics("pH");
    assertEquals(3, statistics.count());
    assertEquals(1, statistics.missing());
    assertEquals(7.2, statistics.mean().lower(), 1e-12);
    assertEquals(Math.sqrt(0.26 / 2), statistics.standardDeviation().orElseThrow(), 1e-12);
    assertEquals(7.35, statistics.quantile(0.75).upper(), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> statistics.quantile(1.1));
    ColumnStatistics none = table().where("pH", value -> value > 9).statistics("pH");
    assertEquals("pH: 0 numbers, 0 below a limit, 0 missing", none.toString());
    assertEquals(
        "column \"pH\": without a number there is no mean or quantile",
        assertThrows(IllegalStateException.class, none::mean).getMessage());
  }

  /** By hand: between (5 + 0 + 0) / 3 and (5 + 1 + 2) / 3; no standard deviation. */
  @Test
  void everyLimitCountsOnce() {
    Table.Builder builder = Table.withHeadings("iron [mg/L]");
    builder.row().unreadable(0, "< 1", "is a limit");
    builder.row().set(0, 5);
    builder.row().unreadable(0, "< 2", "is a limit");
    ColumnStatistics iron = builder.build().statistics("iron");
    assertEquals(2, iron.belowLimit());
    assertEquals(5 / 3.0, iron.mean().lower(), 1e-12);
    assertEquals(8 / 3.0, iron.mean().upper(), 1e-12);
    assertEquals(new ColumnStatistics.Bounds(0, 2), iron.quantile(0.5));
    assertTrue(iron.standardDeviation().isEmpty());
  }

  /** By hand: mean 2, squares of the differences 1 and 1, over one degree of freedom. */
  @Test
  void twoNumbersHaveAStandardDeviation() {
    ColumnStatistics two = Table.of(Column.of("iron [mg/L]", 1, 3)).statistics("iron");
    assertEquals(Math.sqrt(2), two.standardDeviation().orElseThrow(), 1e-12);
    assertEquals(
        "iron [mg/L]: 2 numbers, 0 below a limit, 0 missing; mean 2, standard deviation 1.4142,"
            + " least 1, median 2, greatest 3",
        two.toString());
    assertTrue(Table.of(Column.of("pH", 7)).statistics("pH").standardDeviation().isEmpty());
    Table.Builder builder = Table.withHeadings("iron [mg/L]");
    builder.row().unreadable(0, "< 1", "is a limit");
    builder.row().set(0, 5);
    assertEquals(
        "iron [mg/L]: 1 number, 1 below a limit, 0 missing; mean 2.5 to 3, least 0 to 1,"
            + " median 2.5 to 3, greatest 5",
        builder.build().statistics("iron").toString());
  }

  @Test
  void limitsMayStandInAColumnOfTheirOwn() {
    Table.Builder builder = Table.withHeadings("iron [mg/L]", "iron below [mg/L]");
    builder.row().set(0, 0.05);
    builder.row().set(1, 0.02);
    ColumnStatistics iron = builder.build().statistics("iron");
    assertEquals(1, iron.belowLimit());
    assertEquals(0.025, iron.mean().lower(), 1e-15);
    assertEquals(0.035, iron.mean().upper(), 1e-15);
    Table mixed = Table.of(Column.of("iron [mg/L]", 1), Column.of("iron below [mmol/L]", 1));
    assertThrows(IllegalArgumentException.class, () -> mixed.statistics("iron"));
  }
}
