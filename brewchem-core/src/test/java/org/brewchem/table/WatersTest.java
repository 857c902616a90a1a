package org.brewchem.table;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.solution.CarbonateSystem;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.water.Constituent;
import org.brewchem.water.Water;
import org.brewchem.water.WaterCode;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** All waters are invented. */
class WatersTest {

  private static final List<Ion> IONS =
      List.of(
          Ion.CALCIUM,
          Ion.MAGNESIUM,
          Ion.SODIUM,
          Ion.POTASSIUM,
          Ion.CHLORIDE,
          Ion.SULFATE,
          Ion.NITRATE);

  private static final double[] TAP = {92, 11, 19, 4, 31, 45, 8};

  private static Table tap(Column... more) {
    Table table = Table.of(more);
    for (int k = 0; k < TAP.length; k++) {
      double[] values = new double[table.size()];
      Arrays.fill(values, TAP[k]);
      table = table.with(Column.of(IONS.get(k).name() + " [mg/L]", values));
    }
    return table;
  }

  private static WaterReport.Builder tapReport() {
    return WaterReport.reported()
        .calcium(mgPerL(TAP[0]))
        .magnesium(mgPerL(TAP[1]))
        .sodium(mgPerL(TAP[2]))
        .potassium(mgPerL(TAP[3]))
        .chloride(mgPerL(TAP[4]))
        .sulfate(mgPerL(TAP[5]))
        .nitrate(mgPerL(TAP[6]));
  }

  private static Solution tapIons(Chemistry chemistry) {
    Solution solution = Solution.at(celsius(25)).under(chemistry);
    for (int k = 0; k < TAP.length; k++) {
      Ion ion = IONS.get(k);
      solution = solution.with(ion, AmountConcentration.from(mgPerL(TAP[k]), ion.molarMass()));
    }
    return solution;
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void ionsAndCarbonDioxideGiveThePhAndAlkalinityOfTheSolution(Level level) {
    double[] total = {0, 0.5, 3.9, 4.5, 9};
    Chemistry chemistry = Chemistry.of(level);
    Waters waters =
        Waters.from(tap(Column.of("total carbon dioxide [mmol/L]", total))).under(chemistry);
    for (int i = 0; i < total.length; i++) {
      Solution single = tapIons(chemistry).with(Component.CARBONATE, mmolPerL(total[i]));
      assertEquals(single.pH().value(), waters.pH().value(i), 1e-12);
      assertEquals(
          CarbonateSystem.carbonateAlkalinity(single).inMilligramsPerLitreAsCaCO3(),
          waters.alkalinity().value(i),
          1e-10);
    }
  }

  @Property(tries = 100)
  void aRowIsTheSingleAnalysis(
      @ForAll @Scale(2) @DoubleRange(min = 1, max = 200) double calcium,
      @ForAll @Scale(2) @DoubleRange(min = 0, max = 50) double magnesium,
      @ForAll @Scale(2) @DoubleRange(min = 0, max = 100) double sodium,
      @ForAll @Scale(2) @DoubleRange(min = 1, max = 200) double chloride,
      @ForAll @Scale(2) @DoubleRange(min = 0, max = 300) double sulfur,
      @ForAll @Scale(2) @DoubleRange(min = 5, max = 400) double bicarbonate,
      @ForAll @Scale(2) @DoubleRange(min = 6, max = 9) double measured) {
    Water single =
        WaterReport.reported()
            .calcium(mgPerL(calcium))
            .magnesium(mgPerL(magnesium))
            .sodium(mgPerL(sodium))
            .chloride(mgPerL(chloride))
            .sulfateAsSulfur(mgPerL(sulfur))
            .bicarbonate(mgPerL(bicarbonate))
            .pH(pH(measured))
            .build()
            .water();
    Table table =
        Table.of(
            Column.of("calcium [g/L]", calcium / 1000),
            Column.of("magnesium [mg/L]", magnesium),
            Column.of("sodium [mg/L]", sodium),
            Column.of("chloride [mg/L]", chloride),
            Column.of("sulfate as sulfur [mg/L]", sulfur),
            Column.of("bicarbonate [mg/L]", bicarbonate),
            Column.of("pH", measured));
    Waters waters = Waters.from(table);
    assertEquals(measured, waters.pH().value(0), 0);
    near(single.calciumHardness(), waters.calciumHardness());
    near(single.magnesiumHardness(), waters.magnesiumHardness());
    near(single.totalHardness(), waters.totalHardness());
    near(single.alkalinity(), waters.alkalinity());
    near(single.residualAlkalinity(), waters.residualAlkalinity());
    near(single.sulfateToChloride(), waters.sulfateToChloride());
    near(single.ionBalance(), waters.ionBalance());
    assertEquals(
        single.solution().doseOf(Acid.LACTIC, pH(5.4)).inMillimolesPerKilogram()
            * Solution.at(celsius(25)).kilogramsPerLitre(),
        waters.doseOf(Acid.LACTIC, pH(5.4)).value(0),
        1e-8);
    assertThrows(IllegalArgumentException.class, () -> waters.doseOf(Acid.OXALIC, pH(5.4)));
  }

  private static void near(Answer<?> single, Column column) {
    double number = single.number();
    assertEquals(number, column.value(0), 1e-12 * Math.max(1, Math.abs(number)), column.heading());
    assertEquals(single.unit(), column.unit().orElse(""));
  }

  @Test
  void anAlkalinityAloneIsTakenAsBicarbonateAsInASingleAnalysis() {
    double[] alkalinity = {0, 5, 215};
    Column found = Waters.from(tap(Column.of("alkalinity [mg/L as CaCO3]", alkalinity))).pH();
    for (int i = 0; i < alkalinity.length; i++) {
      double single =
          tapReport().alkalinityAsCaCO3(mgPerL(alkalinity[i])).build().water().pH().number();
      assertEquals(single, found.value(i), 1e-9);
    }
  }

  @Test
  void alkalinityAndCarbonDioxideGiveThePhOfTheCarbonateSystem() {
    Table table =
        tap(
            Column.of("alkalinity [mEq/L]", 4.3, 4.3, 4.3, 0),
            Column.of("total carbon dioxide [mmol/L]", 4.5, 4.3, 2.1, 1));
    Column found = Waters.from(table).pH();
    for (int i = 0; i < 2; i++) {
      Solution ions =
          tapIons(Chemistry.standard())
              .with(Component.CARBONATE, mmolPerL(table.column("total carbon dioxide").value(i)));
      assertEquals(
          CarbonateSystem.pH(ions, CarbonateAlkalinity.ofMilliequivalentsPerLitre(4.3)).value(),
          found.value(i),
          1e-9);
    }
    assertTrue(found.failure(2).orElseThrow() instanceof Failure.NotPossible);
    assertTrue(found.failure(3).orElseThrow() instanceof Failure.NotPossible);
  }

  @Test
  void rowsBeyondTheRangeOfTheActivityRuleAreNamed() {
    double[] sodium = {1, 400, 1000};
    double[] none = new double[3];
    Table table =
        Table.of(
            Column.of("sodium [mmol/L]", sodium),
            Column.of("chloride [mmol/L]", sodium),
            Column.of("calcium [mmol/L]", none),
            Column.of("magnesium [mmol/L]", none),
            Column.of("sulfate [mmol/L]", none),
            Column.of("total carbon dioxide [mmol/L]", none));
    Waters waters = Waters.from(table).under(Chemistry.of(Level.ACTIVITY));
    assertEquals(
        400 / Solution.at(celsius(25)).kilogramsPerLitre(), waters.ionicStrength().value(1), 1e-3);
    assertArrayEquals(new long[] {3}, waters.beyondActivityRange());
    assertArrayEquals(new long[0], waters.under(Chemistry.of(Level.IDEAL)).beyondActivityRange());
  }

  @Test
  void temperatureIsThatOfTheWaters() {
    Table table = tap(Column.of("total carbon dioxide [mmol/L]", 4.5));
    double single =
        tapIons(Chemistry.standard())
            .with(Component.CARBONATE, mmolPerL(4.5))
            .heldAt(celsius(60))
            .pH()
            .value();
    assertEquals(single, Waters.from(table).at(celsius(60)).pH().value(0), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> Waters.from(table).at(celsius(101)));
  }

  @Test
  void badRowsFailEachForItsReasonAndTheOthersAreKept() {
    Table.Builder rows =
        Table.withHeadings(
            "calcium [mg/L]",
            "magnesium [mg/L]",
            "sodium [mg/L]",
            "chloride [mg/L]",
            "sulfate [mg/L]",
            "total carbon dioxide [mmol/L]");
    double[] good = {92, 11, 19, 31, 45, 4.5};
    for (int row = 2; row <= 7; row++) {
      rows.row(row);
      for (int column = 0; column < good.length; column++) {
        if (row != 3 || column != 0) {
          rows.set(column, good[column]);
        }
      }
      if (row == 4) {
        rows.set(2, -3);
      } else if (row == 5) {
        rows.unreadable(4, "n.d.", "\"n.d.\" is not a number");
      } else if (row == 6) {
        rows.set(3, 900_000);
      }
    }
    Waters waters = Waters.from(rows.build()).under(Chemistry.of(Level.ACTIVITY));
    List<Failure> failures = waters.pH().failures();
    assertEquals(4, failures.size());
    assertEquals(new Failure.Missing(3, "calcium [mg/L]"), failures.get(0));
    assertEquals(
        new Failure.NotPossible(
            4, "sodium [mg/L]", "sodium: -3 mg/L is not possible; 0 or more is allowed"),
        failures.get(1));
    assertEquals(
        new Failure.Unreadable(5, "sulfate [mg/L]", "n.d.", "\"n.d.\" is not a number"),
        failures.get(2));
    assertTrue(failures.get(3) instanceof Failure.NoSolution);
    assertEquals(6, failures.get(3).row());
    assertEquals("pH", failures.get(3).column());
    assertEquals(failures, waters.residualAlkalinity().failures());
    assertEquals(waters.pH().value(0), waters.pH().value(5), 0);
    assertEquals(List.of(1), List.of(waters.totalHardness().failures().size()));
    assertEquals(2, waters.doseOf(Acid.LACTIC, pH(5.4)).size() - failures.size());
  }

  /** A water of which an ion is not known still has the pH that its alkalinity gives it. */
  @Test
  void withAnAlkalinityAMissingIonIsLeftOutAsInASingleAnalysis() {
    Table.Builder rows = Table.withHeadings("calcium [mg/L]", "alkalinity [mEq/L]", "pH");
    rows.row().set(1, 4.3).set(2, 7.6);
    rows.row().set(0, 92).set(2, 7.6);
    rows.row().set(0, 92).set(1, 4.3);
    rows.row().set(0, 92).set(1, 4.3).set(2, 40);
    rows.row().set(0, -1).set(1, 4.3).set(2, 7.6);
    Column found = Waters.from(rows.build()).pH();
    assertEquals(7.6, found.value(0));
    assertEquals(Optional.of(new Failure.Missing(2, "alkalinity [mEq/L]")), found.failure(1));
    assertEquals(Optional.of(new Failure.Missing(3, "pH")), found.failure(2));
    assertTrue(found.failure(3).orElseThrow() instanceof Failure.NotPossible);
    assertTrue(found.failure(4).orElseThrow() instanceof Failure.NotPossible);
  }

  @Test
  void theIonBalanceCountsWhatIsKnownAsASingleReportDoes() {
    Table.Builder rows =
        Table.withHeadings(
            "calcium [mmol/L]",
            "magnesium [mmol/L]",
            "sodium [mmol/L]",
            "potassium [mmol/L]",
            "chloride [mmol/L]",
            "sulfate [mmol/L]",
            "alkalinity [mEq/L]");
    rows.row().set(0, 2).set(1, 0.5).set(2, 1).set(3, 1).set(4, 1).set(5, 0.5).set(6, 4);
    rows.row().set(0, 2).set(1, 0.5).set(2, 1).set(4, 1).set(5, 0.5).set(6, 4);
    rows.row().set(0, 2).set(1, 0.5).set(2, 1).set(3, -1).set(4, 1).set(5, 0.5).set(6, 4);
    rows.row().set(1, 0.5).set(2, 1).set(3, 1).set(4, 1).set(5, 0.5).set(6, 4);
    Column balance = Waters.from(rows.build()).ionBalance();
    assertEquals(100 * (7.0 - 6) / 13, balance.value(0), 1e-12);
    assertEquals(0, balance.value(1), 1e-12);
    assertTrue(balance.failure(2).orElseThrow() instanceof Failure.NotPossible);
    assertEquals(100 * (3.0 - 6) / 9, balance.value(3), 1e-12);
    assertTrue(
        Waters.from(rows.build()).notices(WaterFigures.ION_BALANCE).stream()
            .anyMatch(n -> n.toString().equals("row 4: counted as absent: calcium")));
  }

  @Test
  void withoutChlorideThereIsNoRatio() {
    Table table =
        Table.of(Column.of("sulfate [mg/L]", 45, 45), Column.of("chloride [mg/L]", 30, 0));
    Column ratio = Waters.from(table).sulfateToChloride();
    assertEquals(1.5, ratio.value(0), 1e-12);
    assertEquals("sulfate to chloride [by mass]", ratio.heading());
    assertEquals(
        "row 2, column \"sulfate to chloride [by mass]\": sulfate / chloride has no value for the"
            + " numbers of the row",
        ratio.failure(1).orElseThrow().toString());
  }

  @Test
  void unitsAreCheckedOnceAndBeforeAnyRow() {
    assertThrows(
        IllegalArgumentException.class, () -> Waters.from(Table.of(Column.of("calcium [mL]", 1))));
    assertThrows(
        IllegalArgumentException.class, () -> Waters.from(Table.of(Column.of("calcium", 1))));
    assertThrows(
        IllegalArgumentException.class, () -> Waters.from(Table.of(Column.of("pH [mg/L]", 7))));
    Table twice =
        Table.of(Column.of("alkalinity [mEq/L]", 4), Column.of("bicarbonate [mg/L]", 244));
    assertThrows(IllegalArgumentException.class, () -> Waters.from(twice));
    assertEquals(200.2, Waters.from(twice.without("bicarbonate")).alkalinity().value(0), 0.05);
  }

  @Test
  void aColumnThatIsNeededIsNamed() {
    Waters waters = Waters.from(Table.of(Column.of("calcium [mg/L]", 92)));
    IllegalStateException missing =
        assertThrows(IllegalStateException.class, () -> waters.totalHardness());
    assertEquals(
        "column \"magnesium\" is needed and is not in the table: 1 row of [calcium]",
        missing.getMessage());
    assertThrows(IllegalStateException.class, waters::pH);
    assertThrows(IllegalStateException.class, waters::ionBalance);
    assertThrows(
        IllegalStateException.class,
        () ->
            Waters.from(
                    Table.of(
                        Column.of("calcium [mg/L]", 92),
                        Column.of("total carbon dioxide [mmol/L]", 4)))
                .pH());
  }

  private static double[][] randomWaters(int rows) {
    Random random = new Random(7);
    double[][] columns = new double[7][rows];
    for (double[] column : columns) {
      for (int i = 0; i < rows; i++) {
        column[i] = Math.pow(10, 2 * random.nextDouble() - 1);
      }
    }
    for (int i = 5; i < rows; i += 100) {
      columns[i % 7][i] = i % 200 < 100 ? -1 : 1e5;
    }
    return columns;
  }

  private static Table table(double[][] columns) {
    List<String> names =
        List.of(
            "calcium",
            "magnesium",
            "sodium",
            "potassium",
            "chloride",
            "sulfate",
            "total carbon dioxide");
    Column[] all = new Column[names.size()];
    for (int k = 0; k < all.length; k++) {
      all[k] = Column.of(names.get(k) + " [mmol/L]", columns[k]);
    }
    return Table.of(all);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 7})
  void manyThreadsGiveTheSameToTheLastBit(int threads) {
    Waters one = Waters.from(table(randomWaters(5000)));
    Waters many = Waters.from(table(randomWaters(5000))).parallel(threads);
    assertTrue(one.pH().failures().size() >= 25);
    assertSame(one.pH(), many.pH());
    assertSame(one.alkalinity(), many.alkalinity());
    assertSame(one.doseOf(Acid.LACTIC, pH(4)), many.doseOf(Acid.LACTIC, pH(4)));
    assertThrows(IllegalArgumentException.class, () -> one.parallel(0));
  }

  private static void assertSame(Column one, Column other) {
    assertEquals(one.failures(), other.failures());
    assertArrayEquals(one.valuesOr(-1), other.valuesOr(-1), 0);
  }

  @Test
  void aRowDoesNotDependOnItsNeighbours() {
    double[][] forwards = randomWaters(2500);
    double[][] backwards = new double[forwards.length][2500];
    for (int k = 0; k < forwards.length; k++) {
      for (int i = 0; i < 2500; i++) {
        backwards[k][i] = forwards[k][2499 - i];
      }
    }
    double[] one = Waters.from(table(forwards)).pH().valuesOr(-1);
    double[] other = Waters.from(table(backwards)).pH().valuesOr(-1);
    for (int i = 0; i < 2500; i++) {
      assertEquals(one[i], other[2499 - i], 0);
    }
  }

  /** Balanced waters of which sulfate takes a fifth to a half, with an error of up to 2 %. */
  private static Table balanced(int rows, double sulfateFactor) {
    Random random = new Random(20261126);
    double[] sodium = new double[rows];
    double[] chloride = new double[rows];
    double[] sulfate = new double[rows];
    double[] bicarbonate = new double[rows];
    for (int i = 0; i < rows; i++) {
      sulfate[i] = sulfateFactor * (1 + random.nextDouble());
      chloride[i] = 1 + random.nextDouble();
      bicarbonate[i] = 61.016 * (1 + random.nextDouble());
      sodium[i] =
          (2 * sulfate[i] / sulfateFactor + chloride[i] + bicarbonate[i] / 61.016)
              * (0.98 + 0.04 * random.nextDouble());
    }
    return Table.of(
        Column.of("calcium [mg/L]", new double[rows]),
        Column.of("magnesium [mg/L]", new double[rows]),
        Column.of("sodium [mmol/L]", sodium),
        Column.of("chloride [mmol/L]", chloride),
        Column.of("sulphate [mmol/L]", sulfate),
        Column.of("bicarbonate [mg/L]", bicarbonate));
  }

  @Test
  void aBasisThatIsWrongInAllRowsIsNamedFromTheMedian() {
    Waters asSulfur = Waters.from(balanced(40, 32.06 / 96.056));
    List<SourceBasis> suspected = asSulfur.bases().stream().filter(SourceBasis::suspected).toList();
    assertEquals(1, suspected.size());
    assertEquals(WaterCode.SULFATE_PERHAPS_SULFUR, suspected.get(0).code());
    assertEquals(40, suspected.get(0).rows());
    assertEquals(0, suspected.get(0).medianIfSo(), 1);
    assertTrue(suspected.get(0).medianAsStated() > 15);
    assertEquals(WaterCode.SULFATE_PERHAPS_SULFUR, asSulfur.reportNotices().get(0).code());
    assertTrue(Waters.from(balanced(40, 1)).bases().stream().noneMatch(SourceBasis::suspected));
  }

  @Test
  void sourcesAreJudgedEachOnItsOwn() {
    Table wrong = balanced(12, 32.06 / 96.056);
    Table.Builder rows =
        Table.withHeadings(wrong.columns().stream().map(Column::heading).toList(), List.of("lab"));
    for (Table table : List.of(wrong, balanced(12, 1))) {
      for (int i = 0; i < table.size(); i++) {
        rows.row();
        for (int k = 0; k < 6; k++) {
          rows.set(k, table.columns().get(k).value(i));
        }
        rows.text(0, table == wrong ? "north" : "south");
      }
    }
    List<SourceBasis> suspected =
        Waters.from(rows.build()).basesBy("lab").stream().filter(SourceBasis::suspected).toList();
    assertEquals(List.of("north"), suspected.stream().map(SourceBasis::source).toList());
    assertTrue(
        suspected.get(0).toString().startsWith("north: if the sulfate were stated as sulfur: "),
        suspected.get(0).toString());
  }

  @Test
  void aRowIsJudgedAsTheSingleReport() {
    Table.Builder rows =
        Table.withHeadings(
            "calcium [mg/L]",
            "magnesium [mg/L]",
            "sodium [mg/L]",
            "potassium [mg/L]",
            "chloride [mg/L]",
            "sulfate [mg/L]",
            "nitrate [mg/L]",
            "bicarbonate [mg/L]",
            "pH");
    rows.row(7);
    double[] numbers = {92, 11, 19, 2, 31, 450, 8, 262, 7.6};
    for (int k = 0; k < numbers.length; k++) {
      rows.set(k, numbers[k]);
    }
    rows.row(8);
    for (int k = 0; k < numbers.length; k++) {
      rows.set(k, k == 0 ? -92 : numbers[k]);
    }
    rows.row(9);
    for (int k = 0; k < numbers.length; k++) {
      if (k == 5) {
        rows.unreadable(k, "< 50", "\"< 50\" is not a number");
      } else {
        rows.set(k, numbers[k]);
      }
    }
    Waters waters = Waters.from(rows.build());
    List<Notice> first =
        waters.reportNotices().stream().filter(n -> n.row().orElseThrow() == 7).toList();
    assertEquals(
        List.of(WaterCode.ION_BALANCE_OFF, WaterCode.TENFOLD_SLIP),
        first.stream().map(Notice::code).toList());
    assertEquals(
        waters.report(0).notices().stream().map(Notice::text).toList(),
        first.stream().map(Notice::text).toList());
    Notice unused =
        waters.reportNotices().stream().filter(n -> n.row().orElseThrow() == 8).findFirst().get();
    assertEquals(TableCode.CELL_NOT_USED, unused.code());
    assertTrue(unused.text().contains("calcium: -92 mg/L is not possible"), unused.text());
    assertEquals(
        List.of("sulfate is reported as below 50 mg/L"),
        waters.report(2).water().sulfate().whyUnknown());
    assertEquals(WaterCode.ION_BALANCE_ACCEPTABLE, waters.report(2).notices().get(0).code());
    assertThrows(IllegalArgumentException.class, () -> waters.report(3));
  }

  @Test
  void aLimitBeyondAllNumbersIsLeftOutOfAReport() {
    Table.Builder rows = Table.withHeadings("calcium [mg/L]", "alkalinity [mg/L as CaCO3]", "pH");
    for (int digits : new int[] {400, 200}) {
      String text = "<" + "9".repeat(digits);
      rows.row().unreadable(0, text, "is not a number").set(1, 215).set(2, 7.6);
    }
    Waters waters = Waters.from(rows.build());
    for (int i = 0; i < 2; i++) {
      long row = i + 1;
      Notice unused =
          waters.reportNotices().stream().filter(n -> n.row().orElseThrow() == row).toList().get(0);
      assertEquals(TableCode.CELL_NOT_USED, unused.code());
      assertTrue(unused.text().contains("calcium"), unused.text());
      assertTrue(waters.report(i).missing().contains(Ion.CALCIUM));
    }
  }

  @Test
  void minorIonsOfAReportAreColumnsToo() {
    Waters waters =
        Waters.from(
            tap(
                Column.of("alkalinity [mEq/L]", 4.3),
                Column.of("iron [mg/L]", 5),
                Column.of("ammonium as nitrogen [mg/L]", 1),
                Column.of("silica [mg/L]", 12)));
    assertEquals(1 / 14.007 * 18.039, waters.column(Constituent.AMMONIUM.figure()).value(0), 1e-4);
    assertEquals(5, waters.column(Constituent.IRON.figure()).value(0), 1e-12);
    assertEquals(12, waters.column(Constituent.SILICA.figure()).value(0), 1e-12);
    assertEquals(12, waters.water(0).answer(Constituent.SILICA.figure()).number(), 1e-12);
    assertEquals(waters.water(0).ionBalance().number(), waters.ionBalance().value(0), 1e-12);
    assertTrue(
        waters.ionBalance().value(0)
            > Waters.from(tap(Column.of("alkalinity [mEq/L]", 4.3))).ionBalance().value(0) + 1);
  }

  @Test
  void anEmptyTableHasEmptyColumns() {
    Table empty = Table.withHeadings("alkalinity [mEq/L]").build();
    assertEquals(0, Waters.from(empty).parallel(2).pH().size());
  }

  /**
   * Values and places of failures, 18 bytes, and the work space: also of rows that are unusual in
   * three cells.
   */
  @Test
  void aRowAllocatesNoMoreThanItsColumn() {
    int rows = 20_000;
    List<Column> columns = new ArrayList<>();
    for (String ion : List.of("sodium", "calcium", "magnesium", "chloride", "sulfate")) {
      double[] unusual = new double[rows];
      Arrays.setAll(unusual, i -> 20 + 0.001 * (i % 1000));
      columns.add(Column.of(ion + " [mmol/L]", unusual));
    }
    double[] gas = new double[rows];
    Arrays.fill(gas, 2);
    columns.add(Column.of("total carbon dioxide [mmol/L]", gas));
    Waters waters =
        Waters.from(Table.of(columns.toArray(new Column[0]))).under(Chemistry.of(Level.ACTIVITY));
    assertTrue(waters.notices().size() >= 3, waters.notices()::toString);
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long thread = Thread.currentThread().getId();
    double sum = 0;
    long allocated = 0;
    for (int i = 0; i < 5; i++) {
      long before = threads.getThreadAllocatedBytes(thread);
      sum += waters.pH().value(i);
      allocated = threads.getThreadAllocatedBytes(thread) - before;
    }
    assertTrue(allocated < 32L * rows, allocated + " bytes, sum " + sum);
  }
}
