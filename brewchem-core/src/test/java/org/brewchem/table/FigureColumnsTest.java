package org.brewchem.table;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Field;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import org.brewchem.figure.Answer;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.quantity.Hardness;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.solution.SolutionCode;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.brewchem.units.LabUnits;
import org.brewchem.water.Water;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Any figure over rows: the same as the single route, with u, notices and steps on request. */
class FigureColumnsTest {

  private static final int ROWS = 12;
  private static final double CLOSE = 1e-12;

  /** The public constants, and one of each family. */
  private static List<Figure<?>> allFigures() throws IllegalAccessException {
    List<Figure<?>> all = new ArrayList<>();
    for (Class<?> room : List.of(Figures.class, WaterFigures.class)) {
      for (Field field : room.getFields()) {
        if (field.get(null) instanceof Figure<?> figure) {
          all.add(figure);
        }
      }
    }
    assertTrue(all.size() >= 24, all.toString());
    all.add(Figures.titratableAcidity(pH(8.2)));
    all.add(Figures.titrationAlkalinity(pH(4.3)));
    all.add(Figures.bufferCapacity(pH(5.4)));
    all.add(Figures.saturationIndex(Mineral.CALCITE));
    all.add(WaterFigures.residualAlkalinity(pH(5.6)));
    all.add(WaterFigures.TOTAL_HARDNESS.shownIn(germanDegrees()));
    return all;
  }

  private static Scale<Hardness> germanDegrees() {
    return Scale.of("°dH", Hardness::inGermanDegrees, Hardness::ofGermanDegrees, 1);
  }

  private static double[] random(Random random, double low, double high) {
    double[] values = new double[ROWS];
    Arrays.setAll(values, i -> low * Math.pow(high / low, random.nextDouble()));
    return values;
  }

  private static Table randomIons() {
    Random random = new Random(11);
    List<Column> columns = new ArrayList<>();
    for (Ion ion : WaterColumns.IONS) {
      columns.add(Column.of(ion.name() + " [mg/L]", random(random, 2, 150)));
    }
    return Table.of(columns.toArray(Column[]::new));
  }

  private static List<Table> randomTables() {
    Random random = new Random(12);
    Column alkalinity = Column.of("alkalinity [mg/L as CaCO3]", random(random, 5, 350));
    Column pH = Column.of("pH", random(random, 6.2, 9));
    double[] more = alkalinity.values();
    for (int i = 0; i < more.length; i++) {
      more[i] = more[i] / 50 * (0.8 + random.nextDouble());
    }
    Column carbonDioxide = Column.of("total carbon dioxide [mmol/L]", more);
    Table ions = randomIons();
    return List.of(
        ions.with(alkalinity).with(pH),
        ions.with(alkalinity),
        ions.with(alkalinity).with(carbonDioxide),
        ions.with(carbonDioxide));
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void tableAndSingleRouteAgreeForEveryFigure(Level level) throws IllegalAccessException {
    int compared = 0;
    for (Table table : randomTables()) {
      Waters waters = Waters.from(table).under(Chemistry.of(level)).at(celsius(18));
      for (Figure<?> figure : allFigures()) {
        Column column = waters.column(figure);
        for (int i = 0; i < ROWS; i++) {
          Answer<?> single = waters.answer(figure, i);
          String where = figure + ", row " + i + " of " + table.summary() + ": " + single;
          assertEquals(single.isStated(), column.isPresent(i), where);
          if (single.isStated()) {
            double number = single.number();
            double digits = CLOSE * Math.max(Math.abs(number), magnitude(figure));
            assertEquals(number, column.value(i), digits, where);
            compared++;
          }
        }
      }
    }
    assertTrue(compared > 1300, compared + " compared");
  }

  /** Differences are compared with what they are differences of; all else with itself. */
  private static double magnitude(Figure<?> figure) {
    return switch (figure.name()) {
      case "ion balance", "ion balance of the mean", "residual alkalinity" -> 100;
      case "permanent hardness" -> 100;
      case "titratable acidity", "titration alkalinity", "saturation index" -> 1;
      default -> 0;
    };
  }

  @Test
  void aRowIsTheReportOfTheSameNumbers() throws IllegalAccessException {
    Table table = randomTables().get(0);
    Waters waters = Waters.from(table);
    for (int i = 0; i < 5; i++) {
      Water reported = report(table, i).build().water();
      for (Figure<?> figure : allFigures()) {
        double number = reported.answer(figure).number();
        assertEquals(
            number,
            waters.column(figure).value(i),
            CLOSE * Math.max(Math.abs(number), magnitude(figure)),
            figure.toString());
      }
    }
  }

  private static WaterReport.Builder report(Table t, int i) {
    return WaterReport.reported()
        .calcium(mgPerL(t.column("calcium").value(i)), mgPerL(2))
        .magnesium(mgPerL(t.column("magnesium").value(i)), mgPerL(0.5))
        .sodium(mgPerL(t.column("sodium").value(i)), mgPerL(1))
        .potassium(mgPerL(t.column("potassium").value(i)), mgPerL(0.3))
        .chloride(
            mgPerL(t.column("chloride").value(i)), mgPerL(0.02 * t.column("chloride").value(i)))
        .sulfate(mgPerL(t.column("sulfate").value(i)), mgPerL(1))
        .nitrate(mgPerL(t.column("nitrate").value(i)), mgPerL(1))
        .alkalinityAsCaCO3(mgPerL(t.column("alkalinity").value(i)), mgPerL(4))
        .pH(pH(t.column("pH").value(i)), 0.05);
  }

  private static Column same(String heading, double value) {
    double[] values = new double[ROWS];
    Arrays.fill(values, value);
    return Column.of(heading, values);
  }

  @Test
  void theUncertaintyOfARowIsThatOfTheReport() throws IllegalAccessException {
    Table table = randomTables().get(0);
    Waters waters =
        Waters.from(
                table
                    .with(same("u(calcium) [g/L]", 0.002))
                    .with(same("u(magnesium) [mg/L]", 0.5))
                    .with(same("u(sodium) [mg/L]", 1))
                    .with(same("u(potassium) [mg/L]", 0.3))
                    .with(same("u(sulphate) [mg/L]", 1))
                    .with(same("u(nitrate) [mg/L]", 1))
                    .with(same("u(alkalinity) [mg/L as CaCO3]", 4)))
            .withRelativeUncertainty("chloride", 0.02)
            .withUncertainty("pH", 0.05)
            .parallel(2);
    for (Figure<?> figure : allFigures()) {
      Column column = waters.columnWithUncertainty(figure);
      for (int i = 0; i < 3; i++) {
        Answer<?> single = report(table, i).build().water().answer(figure);
        double u = single.standardUncertainty().orElseThrow();
        assertEquals(single.number(), column.value(i), 1e-10 * Math.max(1, single.number()));
        assertEquals(
            u, column.standardUncertainty().orElseThrow().value(i), 1e-6 * u, figure.toString());
      }
    }
  }

  @Test
  void anUncertaintyIsInTheUnitOfTheColumnAndConvertedWithIt() {
    Table table =
        Table.of(Column.of("calcium [mg/L]", 80, 40), Column.of("u(calcium) [mg/L]", 4, 2));
    Column hardness = Waters.from(table).columnWithUncertainty(WaterFigures.CALCIUM_HARDNESS);
    Column u = hardness.standardUncertainty().orElseThrow();
    assertEquals("u(calcium hardness) [mg/L as CaCO3]", u.heading());
    assertEquals(0.05 * hardness.value(1), u.value(1), 1e-9);
    Column degrees = hardness.in(LabUnits.HARDNESS, "°dH");
    Column ofDegrees = degrees.standardUncertainty().orElseThrow();
    assertEquals("u(calcium hardness) [°dH]", ofDegrees.heading());
    assertEquals(0.05 * degrees.value(0), ofDegrees.value(0), 1e-9);
    assertTrue(Waters.from(table).calciumHardness().standardUncertainty().isEmpty());
  }

  /** A missing u is no u of zero: of what it matters to, there is none. */
  @Test
  void aRowInWhichAnInputStatesNoUncertaintyHasNone() {
    Table.Builder rows =
        Table.withHeadings(
            "calcium [mg/L]", "u(calcium) [mg/L]", "magnesium [mg/L]", "u(magnesium) [mg/L]");
    rows.row().set(0, 80).set(1, 2).set(2, 10).set(3, 1);
    rows.row().set(0, 80).set(2, 10).set(3, 1);
    rows.row().set(0, 80).set(1, -2).set(2, 10).set(3, 1);
    rows.row().set(0, 80).set(1, 2).set(3, 1);
    rows.row().set(0, 80).set(1, 0).set(2, 10).set(3, 0);
    Waters waters = Waters.from(rows.build());
    Column total = waters.columnWithUncertainty(WaterFigures.TOTAL_HARDNESS);
    Column u = total.standardUncertainty().orElseThrow();
    assertEquals(1, total.failures().size());
    assertTrue(u.isPresent(0));
    assertEquals(
        "row 2, column \"u(total hardness) [mg/L as CaCO3]\": no uncertainty is stated of calcium",
        u.failure(1).orElseThrow().toString());
    assertTrue(u.failure(1).orElseThrow() instanceof Failure.NoUncertainty);
    assertEquals(
        "row 3, column \"u(calcium) [mg/L]\": u(calcium): -2 mg/L is not possible; 0 or more is"
            + " allowed",
        u.failure(2).orElseThrow().toString());
    assertTrue(u.failure(3).orElseThrow() instanceof Failure.Missing);
    assertEquals(0, u.value(4), 0);
    Column magnesium = waters.columnWithUncertainty(WaterFigures.MAGNESIUM_HARDNESS);
    assertTrue(magnesium.standardUncertainty().orElseThrow().isPresent(1));
  }

  @Test
  void whatIsStatedOfUncertaintyIsChecked() {
    Table table = Table.of(Column.of("calcium [mg/L]", 80), Column.of("u(calcium) [mg/L]", 4));
    Waters waters = Waters.from(table);
    assertThrows(IllegalStateException.class, () -> waters.withUncertainty("calcium", 1));
    assertThrows(IllegalStateException.class, () -> waters.withRelativeUncertainty("calcium", 0.1));
    assertThrows(IllegalArgumentException.class, () -> waters.withUncertainty("magnesium", 1));
    Waters without = Waters.from(table.without("u(calcium)"));
    assertThrows(IllegalArgumentException.class, () -> without.withUncertainty("calcium", -1));
    assertThrows(
        IllegalArgumentException.class,
        () -> Waters.from(table.without("u(calcium)").with(Column.of("u(calcium) [mL]", 1))));
  }

  @Test
  void columnsThatAreUsedAndIgnoredAreNamed() {
    Table table =
        Table.of(
                Column.of("calcum [mg/L]", 80),
                Column.of("magnesium [mg/L]", 10),
                Column.of("sulphate as sulphur [mg/L]", 15),
                Column.of("u(magnesium) [mg/L]", 1),
                Column.of("u(calcium) [mg/L]", 1),
                Column.of("alkalinity [mEq/L]", 4),
                Column.of("total carbon dioxide [mmol/L]", 4.1),
                Column.of("pH", 7.5),
                Column.of("turbidity [%]", 1))
            .withTexts("Nitrate", List.of("n.d."));
    Waters waters = Waters.from(table);
    assertEquals(
        List.of(
            "magnesium",
            "sulphate as sulphur",
            "u(magnesium)",
            "alkalinity",
            "total carbon dioxide"),
        waters.used());
    assertEquals(List.of("calcum", "u(calcium)", "turbidity", "Nitrate", "pH"), waters.ignored());
    assertEquals(
        List.of(
            "column \"calcum\" is not read; a name that is read is \"calcium\"",
            "column \"u(calcium)\" is not read; the table has no column \"calcium\" for it",
            "column \"Nitrate\" is not read; a name that is read is \"nitrate\"",
            "column \"pH\" is not used; the pH follows from the alkalinity and the total carbon"
                + " dioxide"),
        waters.notices().stream().map(Notice::text).toList());
    assertEquals(TableCode.HEADING_NEARLY_KNOWN, waters.notices().get(0).code());
    assertTrue(waters.toString().endsWith("; ignored: calcum, u(calcium), turbidity, Nitrate, pH"));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            Waters.from(
                Table.of(Column.of("sulphate [mg/L]", 15), Column.of("sulfate [mg/L]", 15))));
  }

  @Test
  void editsBetweenHeadingsAreCounted() {
    assertEquals(0, Headings.distance("calcium", "calcium"));
    assertEquals(1, Headings.distance("calcum", "calcium"));
    assertEquals(1, Headings.distance("calcuim", "calcium"));
    assertEquals(2, Headings.distance("kalzium", "calcium"));
    assertEquals(7, Headings.distance("", "calcium"));
  }

  @Test
  void aRowIsExplainedByTheStepsOfItsWater() throws IllegalAccessException {
    Waters waters = Waters.from(randomTables().get(0));
    for (Figure<?> figure : allFigures()) {
      Explanation explanation = waters.explain(figure, 3);
      assertTrue(explanation.holds(), explanation.toString());
    }
    String text = waters.explain(WaterFigures.RESIDUAL_ALKALINITY, 3).toString();
    assertTrue(text.contains("row 4, column \"calcium [mg/L]\""), text);
    assertTrue(text.contains("Kolbach"), text);
    assertThrows(IllegalArgumentException.class, () -> waters.explain(Figures.PH_VALUE, ROWS));
  }

  @Test
  void aRowWithoutAFigureIsExplainedAsFarAsItComes() {
    Table.Builder rows = Table.withHeadings("calcium [mg/L]", "alkalinity [mEq/L]", "pH");
    rows.row().set(0, 80).set(2, 7.5);
    Waters waters = Waters.from(rows.build());
    assertTrue(waters.answer(Figures.CALCIUM, 0).isStated());
    assertEquals(
        List.of("row 1, column \"alkalinity [mEq/L]\": is missing"),
        waters.answer(Figures.IONIC_STRENGTH, 0).whyUnknown());
    assertEquals(
        List.of("alkalinity is not in the table"),
        Waters.from(Table.of(Column.of("calcium [mg/L]", 80)))
            .answer(Figures.IONIC_STRENGTH, 0)
            .whyUnknown());
  }

  @Test
  void noticesNameTheirRow() {
    Table.Builder rows =
        Table.withHeadings("calcium [mg/L]", "potassium [mg/L]", "alkalinity [mEq/L]", "pH");
    rows.row(7).set(0, 80).set(1, 3).set(2, 4).set(3, 7.5);
    rows.row(9).set(0, 80).set(2, 4).set(3, 7.5);
    List<Notice> notices = Waters.from(rows.build()).notices(Figures.IONIC_STRENGTH);
    assertEquals(
        List.of(OptionalLong.of(9)),
        notices.stream()
            .filter(n -> n.code() == SolutionCode.COUNTED_AS_ABSENT)
            .filter(n -> n.subject().equals("potassium"))
            .map(Notice::row)
            .toList());
  }

  @Test
  void aFigureOfTheUsersOwnIsAColumnToo() {
    Figure<Double> share =
        ClosedForm.figure(
            "calcium share",
            Scale.number("%", 1),
            "100 x calcium hardness / total hardness",
            "",
            Figure.list(WaterFigures.CALCIUM_HARDNESS, WaterFigures.TOTAL_HARDNESS),
            x -> x[1] == 0 ? Double.NaN : 100 * x[0] / x[1]);
    Table table =
        Table.of(Column.of("calcium [mmol/L]", 3, 0), Column.of("magnesium [mmol/L]", 1, 0));
    Column column = Waters.from(table).column(share);
    assertEquals("calcium share [%]", column.heading());
    assertEquals(75, column.value(0), 1e-9);
    assertTrue(column.failure(1).orElseThrow() instanceof Failure.NoSolution);
  }

  @Test
  void severalFiguresComeFromOnePass() {
    Waters waters = Waters.from(randomTables().get(3));
    List<Column> columns =
        waters.columns(
            Figures.PH_VALUE, Figures.CARBONATE_ALKALINITY, WaterFigures.RESIDUAL_ALKALINITY);
    assertEquals(3, columns.size());
    for (int i = 0; i < ROWS; i++) {
      assertEquals(waters.pH().value(i), columns.get(0).value(i), 0);
      assertEquals(
          waters.alkalinity().value(i), columns.get(1).value(i), 1e-12 * columns.get(1).value(i));
      assertEquals(waters.residualAlkalinity().value(i), columns.get(2).value(i), 1e-10);
    }
  }

  @Test
  void headingsSayWhatAndInWhichUnit() {
    Waters waters = Waters.from(randomTables().get(0));
    assertEquals("pH", waters.pH().heading());
    assertEquals(
        "titratable acidity [g/L as lactic acid, to pH 8.2]",
        waters.column(Figures.titratableAcidity(pH(8.2))).heading());
    assertEquals(
        "residual alkalinity to pH 5.6 [mg/L as CaCO3]",
        waters.column(WaterFigures.residualAlkalinity(pH(5.6))).heading());
    assertEquals(
        "residual alkalinity [°dH]",
        waters
            .column(
                WaterFigures.RESIDUAL_ALKALINITY.shownIn(
                    Scales.RESIDUAL_ALKALINITY_IN_GERMAN_DEGREES))
            .heading());
  }

  @Test
  void aRowAsAWaterCanBeTreatedAndSeenUnderAnotherChemistry() {
    Waters waters = Waters.from(randomTables().get(0));
    Water water = waters.water(2);
    assertEquals(waters.pH().value(2), water.pH().number(), 0);
    Waters ideal = waters.under(Chemistry.of(Level.IDEAL));
    double number = ideal.answer(Figures.TOTAL_CARBON_DIOXIDE, 2).number();
    assertEquals(
        number,
        water.under(Chemistry.of(Level.IDEAL)).totalCarbonDioxide().number(),
        1e-12 * number);
  }
}
