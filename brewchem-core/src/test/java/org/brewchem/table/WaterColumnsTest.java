package org.brewchem.table;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Conductivity;
import org.brewchem.quantity.Hardness;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.solution.SolutionCode;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.water.Constituent;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What the columns of a table of waters state, as a balance and as reports read it. */
class WaterColumnsTest {

  private static CarbonateAlkalinity mEq(double perLitre) {
    return CarbonateAlkalinity.ofMilliequivalentsPerLitre(perLitre);
  }

  @Test
  void anIonIsStatedOnOneBasis() {
    Table table =
        Table.of(Column.of("nitrate as nitrogen [mg/L]", 2), Column.of("nitrate [mg/L]", 8));
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> Waters.from(table));
    assertEquals(
        "columns \"nitrate\" and \"nitrate as nitrogen\" state the same thing; leave one out with"
            + " Table.without",
        refused.getMessage());
    assertEquals(List.of("nitrate as nitrogen"), Waters.from(table.without("nitrate")).used());
  }

  @Test
  void ofSeveralFaultsOfARowThatOfTheFirstIonIsNamed() {
    Table.Builder rows =
        Table.withHeadings(
            "sulfate [mg/L]", "chloride [mg/L]", "calcium [mg/L]", "alkalinity [mEq/L]", "pH");
    rows.row().set(0, -1).set(1, -1).set(2, 80).set(3, 4).set(4, 7.5);
    rows.row().set(0, -1).set(1, -1).set(2, -1).set(3, -1).set(4, 7.5);
    Column strength = Waters.from(rows.build()).ionicStrength();
    assertEquals("chloride [mg/L]", strength.failure(0).orElseThrow().column());
    assertEquals("calcium [mg/L]", strength.failure(1).orElseThrow().column());
  }

  @Test
  void anIonWithoutAColumnIsNotKnownOfAnyRow() {
    Table table =
        Table.of(
            Column.of("calcium [mg/L]", 80),
            Column.of("sodium [mg/L]", 10),
            Column.of("alkalinity [mEq/L]", 4),
            Column.of("pH", 7.5));
    Set<String> absent =
        Waters.from(table).notices(Figures.IONIC_STRENGTH).stream()
            .filter(notice -> notice.code() == SolutionCode.COUNTED_AS_ABSENT)
            .map(Notice::subject)
            .collect(Collectors.toSet());
    assertEquals(Set.of("magnesium", "potassium", "chloride", "sulfate", "nitrate"), absent);
  }

  /** Ammonium is a total of the balance and something that a report states. */
  @Test
  void theTotalOfAnIonThatReportsStateIsItsColumn() {
    Table table = Table.of(Column.of("ammonium [mg/L]", 3), Column.of("iron [mg/L]", 1));
    Waters waters = Waters.from(table);
    assertEquals(3, waters.column(Figures.concentration(Ion.AMMONIUM)).value(0), 1e-12);
    assertEquals(3, waters.column(Constituent.AMMONIUM.figure()).value(0), 1e-12);
    assertEquals(
        "column \"ammonium\" is needed and is not in the table: 1 row of [iron]",
        assertThrows(
                IllegalStateException.class,
                () ->
                    Waters.from(table.without("ammonium"))
                        .column(Figures.concentration(Ion.AMMONIUM)))
            .getMessage());
    Ion thiosulfate = Ion.strong("thiosulfate", "S2O3^2-");
    assertEquals(
        "column \"thiosulfate\" is needed and is not in the table: 1 row of [ammonium, iron]",
        assertThrows(
                IllegalStateException.class,
                () -> waters.column(Figures.concentration(thiosulfate)))
            .getMessage());
  }

  @Test
  void theReportOfARowHoldsItsNumbersAndTheirUncertainties() {
    Table numbers =
        Table.of(
            Column.of("calcium [mmol/L]", 2),
            Column.of("alkalinity [mEq/L]", 4),
            Column.of("pH", 7.5),
            Column.of("conductivity [µS/cm at 25 °C]", 400),
            Column.of("total hardness [mg/L as CaCO3]", 200),
            Column.of("dry residue [mg/L]", 250));
    WaterReport.Builder sides =
        WaterReport.reported()
            .conductivity(Conductivity.ofMicrosiemensPerCentimetreAt25(400))
            .totalHardness(Hardness.ofMilligramsPerLitreAsCaCO3(200))
            .dryResidue(mgPerL(250));
    assertEquals(
        sides
            .concentration(Constituent.CALCIUM, mmolPerL(2))
            .alkalinity(mEq(4))
            .pH(pH(7.5), celsius(20))
            .build(),
        Waters.from(numbers).at(celsius(20)).report(0));
    Table ofUncertainties =
        Table.of(
            Column.of("calcium [mmol/L]", 2),
            Column.of("u(calcium) [mmol/L]", 0.25),
            Column.of("alkalinity [mEq/L]", 4),
            Column.of("u(alkalinity) [mEq/L]", 0.125),
            Column.of("pH", 7.5),
            Column.of("u(pH)", 0.0625));
    assertEquals(
        WaterReport.reported()
            .concentration(Constituent.CALCIUM, mmolPerL(2), mmolPerL(0.25))
            .alkalinity(mEq(4), mEq(0.125))
            .pH(pH(7.5), celsius(25), 0.0625)
            .build(),
        Waters.from(ofUncertainties).report(0));
  }

  /** By definition: 61.0168 g of bicarbonate are an equivalent, 50.0432 g of calcium carbonate. */
  @Test
  void bicarbonateIsReportedAsSuch() {
    Table table =
        Table.of(Column.of("bicarbonate [mg/L]", 244), Column.of("u(bicarbonate) [mg/L]", 6));
    Answer<CarbonateAlkalinity> alkalinity = Waters.from(table).report(0).water().alkalinity();
    assertEquals(244 / 61.0168 * 50.0432, alkalinity.number(), 1e-2);
    assertEquals(6 / 61.0168 * 50.0432, alkalinity.standardUncertainty().orElseThrow(), 1e-3);
    assertTrue(alkalinity.explain().toString().contains("reported as bicarbonate"));
    Answer<CarbonateAlkalinity> without =
        Waters.from(table.without("u(bicarbonate)")).report(0).water().alkalinity();
    assertEquals(alkalinity.number(), without.number());
    assertEquals(OptionalDouble.empty(), without.standardUncertainty());
    assertTrue(without.explain().toString().contains("reported as bicarbonate"));
    Table other = Table.of(Column.of("alkalinity [mg/L as CaCO3]", 200));
    assertFalse(
        Waters.from(other)
            .report(0)
            .water()
            .alkalinity()
            .explain()
            .toString()
            .contains("bicarbonate"));
  }

  @Test
  void whatAReportCannotUseIsLeftOutAndNamed() {
    Table.Builder rows =
        Table.withHeadings(
            "calcium [mg/L]", "alkalinity [mEq/L]", "pH", "total hardness [mg/L as CaCO3]");
    rows.row(4).set(0, 80).set(1, -4).set(2, 40).set(3, -200);
    rows.row(5).set(0, 80);
    Waters waters = Waters.from(rows.build());
    assertEquals("calcium 80.0 mg/L", waters.report(0).toString());
    assertEquals("calcium 80.0 mg/L", waters.report(1).toString());
    List<Notice> unused =
        waters.reportNotices().stream()
            .filter(notice -> notice.code() == TableCode.CELL_NOT_USED)
            .toList();
    assertEquals(
        List.of("alkalinity [mEq/L]", "pH", "total hardness [mg/L as CaCO3]"),
        unused.stream().map(Notice::subject).toList());
    assertTrue(unused.stream().allMatch(notice -> notice.row().orElseThrow() == 4));
    assertEquals(
        "column \"alkalinity [mEq/L]\" is left out of the report: alkalinity: -4 mEq/L is not"
            + " possible; 0 or more is allowed",
        unused.get(0).text());
  }

  /** Usual is a conductivity up to 10000 µS/cm and a hardness up to 3000 mg/L as CaCO3. */
  @Test
  void sideColumnsAreJudgedByWhatIsUsual() {
    Table table =
        Table.of(
            Column.of("conductivity [µS/cm at 25 °C]", 400, 20_000),
            Column.of("total hardness [mg/L as CaCO3]", 4000, 200),
            Column.of("dry residue [mg/L]", 300, 300));
    assertEquals(
        List.of("conductivity", "total hardness"),
        Waters.from(table).notices().stream().map(Notice::subject).toList());
    assertEquals(
        List.of(2L, 1L),
        Waters.from(table).notices().stream().map(n -> n.row().orElseThrow()).toList());
  }

  @Test
  void sideColumnsAreUsedWhereTheirUnitIsOneOfTheirMeaning() {
    Table table =
        Table.of(
            Column.of("conductivity [µS/cm at 20 °C]", 400),
            Column.of("total hardness [°dH]", 11),
            Column.of("dry residue [mg/L]", 300));
    assertEquals(
        List.of("conductivity", "total hardness", "dry residue"), Waters.from(table).used());
    Table others =
        Table.of(
            Column.of("conductivity [%]", 400),
            Column.of("total hardness [mL]", 11),
            Column.of("dry residue [mL]", 300));
    assertEquals(List.of(), Waters.from(others).used());
    assertEquals(
        List.of("conductivity", "total hardness", "dry residue"), Waters.from(others).ignored());
  }

  /** As little carbon dioxide as 2 mmol/L holds no alkalinity of 4.5 mEq/L. */
  @Test
  void whatContradictsTheAlkalinityOfARowSaysWhy() {
    Table.Builder rows = Table.withHeadings("alkalinity [mEq/L]", "total carbon dioxide [mmol/L]");
    rows.row().set(0, 4.5).set(1, 2);
    rows.row().set(0, 4.5);
    rows.row().set(0, 4.5).set(1, -1);
    rows.row().set(0, 4.5).set(1, 4.6);
    Column closed = Waters.from(rows.build()).pH();
    assertEquals(
        "alkalinity: 4.5 mEq/L is not possible with 2 mmol/L of carbon dioxide; more than 0 and"
            + " less than twice as many mEq/L are",
        closed.failure(0).orElseThrow().reason());
    assertEquals("alkalinity [mEq/L]", closed.failure(0).orElseThrow().column());
    assertEquals(
        new Failure.Missing(2, "total carbon dioxide [mmol/L]"), closed.failure(1).orElseThrow());
    assertEquals("total carbon dioxide [mmol/L]", closed.failure(2).orElseThrow().column());
    assertTrue(closed.isPresent(3));
    Table acid = Table.of(Column.of("alkalinity [mEq/L]", 4, 4), Column.of("pH", 2, 5));
    Column measured = Waters.from(acid).ionicStrength();
    assertEquals(
        "pH: 2 is not possible with the alkalinity of the row; more than 10 mol/kg of carbon"
            + " dioxide would be needed",
        measured.failure(0).orElseThrow().reason());
    assertEquals("pH", measured.failure(0).orElseThrow().column());
    assertTrue(measured.isPresent(1));
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void aCellThatIsSaidToBeUnreadableAfterAllHasNoNumber(Level level) {
    Table.Builder rows =
        Table.withHeadings(
            "calcium [mmol/L]",
            "magnesium [mmol/L]",
            "sodium [mmol/L]",
            "chloride [mmol/L]",
            "sulfate [mmol/L]",
            "total carbon dioxide [mmol/L]");
    for (int row = 0; row < 2; row++) {
      rows.row();
      for (int column = 0; column < 6; column++) {
        rows.set(column, 1);
      }
    }
    rows.unreadable(0, "1?", "\"1?\" is not a number");
    Column pH = Waters.from(rows.build()).under(Chemistry.of(level)).pH();
    assertTrue(pH.isPresent(0));
    assertEquals("unreadable", pH.failure(1).orElseThrow().kind());
    assertEquals("calcium [mmol/L]", pH.failure(1).orElseThrow().column());
  }

  /** An empty cell of an ion that no balance needs is the column that is not there. */
  @ParameterizedTest
  @EnumSource(Level.class)
  void anEmptyCellOfAnIonThatIsNotNeededCountsAsItsMissingColumn(Level level) {
    String[] headings = {
      "calcium [mg/L]",
      "magnesium [mg/L]",
      "sodium [mg/L]",
      "chloride [mg/L]",
      "sulfate [mg/L]",
      "total carbon dioxide [mmol/L]",
      "potassium [mg/L]",
      "nitrate [mg/L]"
    };
    double[] all = {92, 11, 19, 31, 45, 4.6, 4, 8};
    Table.Builder rows = Table.withHeadings(headings);
    for (int row = 0; row < 4; row++) {
      rows.row();
      for (int k = 0; k < all.length; k++) {
        boolean isEmpty = row == 1 && k == 6 || row == 2 && k > 5 || row == 3 && k == 1;
        if (!isEmpty) {
          rows.set(k, all[k]);
        }
      }
    }
    Table table = rows.build();
    Chemistry chemistry = Chemistry.of(level);
    Waters waters = Waters.from(table).under(chemistry);
    Waters withoutPotassium = Waters.from(table.without("potassium")).under(chemistry);
    Waters without = Waters.from(table.without("potassium").without("nitrate")).under(chemistry);
    for (Figure<?> figure :
        List.<Figure<?>>of(
            Figures.PH_VALUE,
            Figures.CARBONATE_ALKALINITY,
            Figures.IONIC_STRENGTH,
            WaterFigures.RESIDUAL_ALKALINITY,
            Figures.titrationAlkalinity(pH(4.3)))) {
      Column found = waters.column(figure);
      assertEquals(
          List.of(new Failure.Missing(4, "magnesium [mg/L]")), found.failures(), figure.title());
      assertEquals(withoutPotassium.column(figure).value(1), found.value(1), 1e-9);
      assertEquals(without.column(figure).value(2), found.value(2), 1e-9);
      assertEquals(waters.answer(figure, 2).number(), found.value(2), 1e-9);
    }
    assertTrue(waters.doseOf(Acid.LACTIC, pH(5)).isPresent(2));
    List<String> absent =
        waters.notices(Figures.PH_VALUE).stream()
            .map(Notice::toString)
            .filter(notice -> notice.contains("absent"))
            .toList();
    assertEquals(
        List.of(
            "row 2: counted as absent: potassium",
            "row 3: counted as absent: potassium",
            "row 3: counted as absent: nitrate"),
        absent);
    Table.Builder negative = Table.withHeadings(headings);
    negative.row();
    for (int k = 0; k < all.length; k++) {
      negative.set(k, k == 6 ? -1 : all[k]);
    }
    assertEquals(
        "not possible",
        Waters.from(negative.build()).under(chemistry).pH().failure(0).orElseThrow().kind());
  }

  /**
   * A litre of these waters would hold a kilogram of two ions and more: no balance of them at level
   * pairs has a solution, or none that can be shown. That is said of their rows, and of no other.
   */
  @Test
  void anAbsurdRowIsAnsweredByItsReason() {
    Table table =
        Table.of(
            Column.of("calcium [mg/L]", 92, 1e6, 100, 100, 100),
            Column.of("sodium [mg/L]", 19, 100, 0, 0, 1e6),
            Column.of("chloride [mg/L]", 31, 100, 1e6, 1e6, 3e5),
            Column.of("sulfate [mg/L]", 45, 1e6, 1e6, 1e6, 3e5),
            Column.of("alkalinity [mEq/L]", 4, 4, 4, 0, 1000),
            Column.of("pH", 7.5, 12, 9, 12, 12));
    for (Table each : List.of(table, table.without("pH"))) {
      Waters waters = Waters.from(each);
      for (int i = 0; i < table.size(); i++) {
        for (Figure<?> figure :
            List.<Figure<?>>of(
                Figures.PH_VALUE,
                Figures.IONIC_STRENGTH,
                Figures.TOTAL_CARBON_DIOXIDE,
                WaterFigures.ION_BALANCE)) {
          Answer<?> answer = waters.answer(figure, i);
          assertFalse(answer.explain().lines().isEmpty());
          assertTrue(i > 0 || answer.explain().holds());
          assertTrue(answer.isStated() || !answer.whyUnknown().isEmpty());
        }
        assertFalse(waters.water(i).toString().isEmpty());
        assertFalse(waters.report(i).water().toString().isEmpty());
        Answer<?> capacity = waters.water(i).answer(Figures.BUFFER_CAPACITY);
        assertTrue(capacity.isStated() || i > 0 && !capacity.whyUnknown().isEmpty());
      }
      List<Notice> notices = waters.reportNotices();
      for (long row = 1; row <= table.size(); row++) {
        long number = row;
        assertTrue(notices.stream().anyMatch(n -> n.row().equals(OptionalLong.of(number))));
      }
    }
    assertTrue(
        Waters.from(table)
            .water(4)
            .answer(Figures.BUFFER_CAPACITY)
            .whyUnknown()
            .get(0)
            .startsWith("row 5, column \"pH\": "));
  }

  @Test
  void aRowWithoutWhatAFigureStandsOnNamesTheCell() {
    Table.Builder rows = Table.withHeadings("alkalinity [mEq/L]", "pH");
    rows.row().set(0, 4).set(1, 7.5);
    rows.row().set(1, 7.5);
    rows.row().set(0, 4);
    Waters waters = Waters.from(rows.build());
    Failure alkalinity = new Failure.Missing(2, "alkalinity [mEq/L]");
    assertEquals(List.of(alkalinity), waters.alkalinity().failures());
    assertEquals(
        List.of(alkalinity, new Failure.Missing(3, "pH")),
        waters.column(Figures.TOTAL_CARBON_DIOXIDE).failures());
    assertEquals(
        waters.answer(Figures.TOTAL_CARBON_DIOXIDE, 0).number(),
        waters.column(Figures.TOTAL_CARBON_DIOXIDE).value(0),
        1e-9);
    Table.Builder totals = Table.withHeadings("total carbon dioxide [mmol/L]");
    totals.row().set(0, 4);
    totals.row();
    Column total = Waters.from(totals.build()).column(Figures.TOTAL_CARBON_DIOXIDE);
    assertEquals(4, total.value(0), 1e-12);
    assertEquals(
        List.of(new Failure.Missing(2, "total carbon dioxide [mmol/L]")), total.failures());
  }

  /** 900 g/L of chloride are beyond every activity rule. */
  @Test
  void aRowWithoutASolutionIsAnsweredByTheReason() {
    Table table =
        Table.of(
            Column.of("calcium [mg/L]", 92, 92),
            Column.of("magnesium [mg/L]", 11, 11),
            Column.of("sodium [mg/L]", 19, 19),
            Column.of("chloride [mg/L]", 900_000, 31),
            Column.of("sulfate [mg/L]", 45, 45),
            Column.of("total carbon dioxide [mmol/L]", 4.5, 4.5));
    Waters waters = Waters.from(table).under(Chemistry.of(Level.ACTIVITY));
    Failure failure = waters.ionicStrength().failure(0).orElseThrow();
    assertEquals("no solution", failure.kind());
    for (Figure<?> figure :
        List.of(Figures.PH_VALUE, Figures.IONIC_STRENGTH, Figures.CARBONATE_ALKALINITY)) {
      assertEquals(List.of(failure.toString()), waters.answer(figure, 0).whyUnknown());
      assertTrue(waters.answer(figure, 1).isStated());
    }
    assertEquals(92, waters.answer(Figures.CALCIUM, 0).number(), 1e-9);
  }

  /** No water holds 900 g/L of magnesium; ion pairs have no solution there. */
  @Test
  void aRowWithoutASolutionFailsByItselfWhateverClosesIt() {
    Table table =
        Table.of(
            Column.of("magnesium [mg/L]", 900_000, 9),
            Column.of("sulfate [mg/L]", 110_000, 11),
            Column.of("alkalinity [mEq/L]", 0.01, 4),
            Column.of("pH", 7.5, 7.5));
    Table neutral =
        table
            .without("pH")
            .without("alkalinity")
            .with(Column.of("calcium [mg/L]", 14, 14))
            .with(Column.of("sodium [mg/L]", 10, 10))
            .with(Column.of("chloride [mg/L]", 10, 10))
            .with(Column.of("total carbon dioxide [mmol/L]", 0.01, 2));
    for (Table each : List.of(table, table.without("pH"), neutral)) {
      Waters waters = Waters.from(each);
      for (Column found : List.of(waters.ionicStrength(), waters.pH())) {
        assertEquals("no solution", found.failure(0).orElseThrow().kind());
        assertEquals("pH", found.failure(0).orElseThrow().column());
        assertTrue(found.isPresent(1));
      }
    }
  }
}
