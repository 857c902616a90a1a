package org.brewchem.table;

import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.figure.FigureCode;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.titration.Titrant;
import org.brewchem.water.WaterFigures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is read of columns: headings, numbers that are unusual or impossible, uncertainties. */
class ReadColumnsTest {

  private static final Figure<TitratableAcidity> ACIDITY = Figures.titratableAcidity(pH(8.2));

  private static List<String> texts(List<Notice> notices) {
    return notices.stream().map(Notice::text).toList();
  }

  private static List<Notice> unusual(double... calcium) {
    return Waters.from(Table.of(Column.of("calcium [mmol/L]", calcium))).notices();
  }

  /** Usual is up to 700 mg/L, 17.47 mmol/L of 40.078 g/mol; 20 mmol/L are 801.56 mg/L. */
  @Test
  void unusualRowsOfAColumnAreCountedInOneNotice() {
    assertEquals(List.of(), unusual(17.4, 0, 17.46));
    Notice one = unusual(2, 20, 2).get(0);
    assertEquals(FigureCode.UNUSUAL_VALUE, one.code());
    assertEquals(2, one.row().orElseThrow());
    assertTrue(one.text().startsWith("calcium: 801.56 mg/L is unusual; usual is 0 to 700 mg/L"));
    assertEquals(-1, one.text().indexOf("more row"));
    assertEquals(1, unusual(2, 20, 2).size());
    assertTrue(unusual(2, 20, 21).get(0).text().endsWith("; so is 1 more row"));
    assertTrue(unusual(20, 20, 21, 22).get(0).text().endsWith("; so are 3 more rows"));
    assertEquals(1, unusual(20, 20, 21, 22).get(0).row().orElseThrow());
  }

  @Test
  void rowsWithoutANumberOrWithAnImpossibleOneAreNotCalledUnusual() {
    Table.Builder rows = Table.withHeadings("calcium [mg/L]");
    rows.row();
    rows.row().set(0, -4);
    rows.row().set(0, 1.1e6);
    rows.row().unreadable(0, "9999 mg", "is not a number");
    rows.row().set(0, 800);
    List<Notice> notices = Waters.from(rows.build()).notices();
    assertEquals(1, notices.size());
    assertEquals(5, notices.get(0).row().orElseThrow());
    assertEquals(-1, notices.get(0).text().indexOf("more row"));
  }

  private static Table neutralByIons(double calcium, double chloride) {
    return Table.of(
        Column.of("calcium [mmol/L]", calcium, 1, 0),
        Column.of("magnesium [mmol/L]", 0.5, 0.5, 0),
        Column.of("sodium [mmol/L]", 1, 1, 0),
        Column.of("chloride [mmol/L]", chloride, 1, 0),
        Column.of("sulfate [mmol/L]", 0.5, 0.5, 0),
        Column.of("total carbon dioxide [mmol/L]", 2.5, 2.5, 0));
  }

  /** A litre holds less than 1 000 000 mg of calcium, which are 24 951 mmol. */
  @ParameterizedTest
  @EnumSource(Level.class)
  void whatALitreCannotHoldIsRefusedInRowsThatAreNeutralByTheirIons(Level level) {
    Chemistry chemistry = Chemistry.of(level);
    Column pH = Waters.from(neutralByIons(26_000, 1)).under(chemistry).pH();
    assertInstanceOf(Failure.NotPossible.class, pH.failure(0).orElseThrow());
    assertEquals("calcium [mmol/L]", pH.failure(0).orElseThrow().column());
    assertTrue(pH.isPresent(1) && pH.isPresent(2));
    assertEquals(7, pH.value(2), 0.01);
    Column twice = Waters.from(neutralByIons(-1, -1)).under(chemistry).pH();
    assertEquals("calcium [mmol/L]", twice.failure(0).orElseThrow().column());
    assertEquals(
        "chloride [mmol/L]",
        Waters.from(neutralByIons(1, -1)).under(chemistry).pH().failure(0).orElseThrow().column());
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void whatIsBeyondAllNumbersIsRefusedInRowsThatAreNeutralByTheirIons(Level level) {
    Table table =
        neutralByIons(1, 1)
            .without("total carbon dioxide")
            .with(Column.of("total carbon dioxide [mmol/L]", 1e102, 2.5, 0));
    Column pH = Waters.from(table).under(Chemistry.of(level)).pH();
    assertInstanceOf(Failure.NotPossible.class, pH.failure(0).orElseThrow());
    assertEquals("total carbon dioxide [mmol/L]", pH.failure(0).orElseThrow().column());
    assertTrue(pH.isPresent(1) && pH.isPresent(2));
  }

  /** Rows are solved in blocks; each tenth has a fault, and the last block is not full. */
  @ParameterizedTest
  @EnumSource(Level.class)
  void aRowDoesNotDependOnItsPlaceInTheTable(Level level) {
    int size = 333;
    double[][] forwards = new double[6][size];
    double[][] backwards = new double[6][size];
    for (int k = 0; k < 6; k++) {
      for (int i = 0; i < size; i++) {
        forwards[k][i] = k == 0 && i % 10 == 3 ? -1 : 0.5 + k / 4.0 + i % 23 / 10.0;
        backwards[k][size - 1 - i] = forwards[k][i];
      }
    }
    Waters one = Waters.from(ofIons(forwards)).under(Chemistry.of(level));
    Waters other = Waters.from(ofIons(backwards)).under(Chemistry.of(level));
    List<Column> forwardFound =
        one.columns(Figures.CARBONATE_ALKALINITY, Figures.PH_VALUE, Figures.IONIC_STRENGTH);
    for (Column found : forwardFound) {
      assertEquals(33, found.failures().size());
      assertEquals(4, found.failures().get(0).row());
    }
    Column alkalinity = other.alkalinity();
    Column pH = other.pH();
    Column strength = other.ionicStrength();
    for (int i = 0; i < size; i++) {
      if (i % 10 != 3) {
        int there = size - 1 - i;
        assertEquals(forwardFound.get(0).value(i), alkalinity.value(there), 1e-9);
        assertEquals(forwardFound.get(1).value(i), pH.value(there), 1e-10);
        assertEquals(forwardFound.get(2).value(i), strength.value(there), 1e-9);
      }
    }
  }

  private static Table ofIons(double[][] columns) {
    return Table.of(
        Column.of("calcium [mmol/L]", columns[0]),
        Column.of("magnesium [mmol/L]", columns[1]),
        Column.of("sodium [mmol/L]", columns[2]),
        Column.of("chloride [mmol/L]", columns[3]),
        Column.of("sulfate [mmol/L]", columns[4]),
        Column.of("total carbon dioxide [mmol/L]", columns[5]));
  }

  @Test
  void anUncertaintyOfATitrationThatCannotBeIsSaid() {
    Table table = Table.of(Column.of("volume [mL]", 10, 10), Column.of("u(volume) [mL]", -1, 1));
    Column u =
        Acidities.from(table, pH(8.2))
            .withSample(mL(50), mL(0.1))
            .withTitrant(Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0001)))
            .columnWithUncertainty(ACIDITY)
            .standardUncertainty()
            .orElseThrow();
    assertEquals(
        "u(volume): -1 mL is not possible; 0 or more is allowed",
        u.failure(0).orElseThrow().reason());
    assertTrue(u.isPresent(1));
  }

  @Test
  void aNegativePHOfARowIsNoPHOfAWater() {
    Table table =
        Table.of(Column.of("alkalinity [mEq/L]", 4, 4, 4), Column.of("pH", -1, 14.1, 7.5));
    Column found = Waters.from(table).pH();
    assertEquals("pH", found.failure(0).orElseThrow().column());
    assertInstanceOf(Failure.NotPossible.class, found.failure(1).orElseThrow());
    assertEquals(7.5, found.value(2));
  }

  @Test
  void anUncertaintyThatCannotBeReadIsSaid() {
    Table.Builder rows = Table.withHeadings("calcium [mg/L]", "u(calcium) [mg/L]");
    rows.row().set(0, 80).unreadable(1, "few", "\"few\" is not a number");
    rows.row().set(0, 80);
    rows.row().set(0, 80).set(1, 2);
    Column u =
        Waters.from(rows.build())
            .columnWithUncertainty(WaterFigures.CALCIUM_HARDNESS)
            .standardUncertainty()
            .orElseThrow();
    assertEquals(
        new Failure.Unreadable(1, "u(calcium) [mg/L]", "few", "\"few\" is not a number"),
        u.failure(0).orElseThrow());
    assertEquals("no uncertainty", u.failure(1).orElseThrow().kind());
    assertEquals(2 / 40.078 * 100.086, u.value(2), 0.01);
  }

  /** A share of the number, whatever its sign. */
  @Test
  void aRelativeUncertaintyIsAShareOfTheNumber() {
    Waters waters =
        Waters.from(Table.of(Column.of("calcium [mg/L]", 80, 40)))
            .withRelativeUncertainty("calcium", 0.05);
    Column u = waters.columnWithUncertainty(Figures.CALCIUM).standardUncertainty().orElseThrow();
    assertEquals(4, u.value(0), 1e-12);
    assertEquals(2, u.value(1), 1e-12);
    assertEquals(
        "calcium, relative standard uncertainty: -0.1 is not possible; 0 to 1 is allowed",
        assertThrows(
                IllegalArgumentException.class,
                () -> waters.withRelativeUncertainty("calcium", -0.1))
            .getMessage());
    assertEquals(
        "calcium, standard uncertainty: -2 mg/L is not possible; 0 or more is allowed",
        assertThrows(IllegalArgumentException.class, () -> waters.withUncertainty("calcium", -2))
            .getMessage());
    assertEquals(
        "column: \"iron\" is not possible; those that are read are [calcium]",
        assertThrows(IllegalArgumentException.class, () -> waters.withUncertainty("iron", 1))
            .getMessage());
  }

  @Test
  void theUncertaintyOfAColumnStandsInOneColumn() {
    Table table =
        Table.of(
            Column.of("sulfate [mg/L]", 40),
            Column.of("u(sulfate) [mg/L]", 2),
            Column.of("u(sulphate) [mg/L]", 2));
    assertEquals(
        "columns \"u(sulfate)\" and \"u(sulphate)\" state the same thing; leave one out with"
            + " Table.without",
        assertThrows(IllegalArgumentException.class, () -> Waters.from(table)).getMessage());
    assertEquals(
        "sulfate: the table has a column of its uncertainty, \"u(sulfate) [mg/L]\"; leave it out"
            + " with Table.without",
        assertThrows(
                IllegalStateException.class,
                () -> Waters.from(table.without("u(sulphate)")).withUncertainty("sulfate", 1))
            .getMessage());
  }

  /** One letter in three may differ, two at most; of a short name only the size of letters. */
  @Test
  void headingsThatAreNearlyKnownAreNamed() {
    Table table =
        Table.of(
            Column.of("ph", 7.5),
            Column.of("p", 7.5),
            Column.of("irn [mg/L]", 1),
            Column.of("ion [mg/L]", 1),
            Column.of("in [mg/L]", 1),
            Column.of("magnsum [mg/L]", 1),
            Column.of("mgnsum [mg/L]", 1),
            Column.of("u(sodum) [mg/L]", 1),
            Column.of("u(sodium) [mg/L]", 1),
            Column.of("u(nitrate [mg/L]", 1));
    Waters waters = Waters.from(table);
    assertEquals(10, waters.ignored().size());
    assertEquals(
        List.of(
            "column \"ph\" is not read; a name that is read is \"pH\"",
            "column \"irn\" is not read; a name that is read is \"iron\"",
            "column \"ion\" is not read; a name that is read is \"iron\"",
            "column \"magnsum\" is not read; a name that is read is \"magnesium\"",
            "column \"u(sodum)\" is not read; a name that is read is \"sodium\"",
            "column \"u(sodium)\" is not read; the table has no column \"sodium\" for it",
            "column \"u(nitrate\" is not read; a name that is read is \"nitrate\""),
        texts(waters.notices()));
  }

  @Test
  void editsAreLettersLeftOutPutInReplacedOrSwapped() {
    assertEquals(1, Headings.distance("ab", "ba"));
    assertEquals(1, Headings.distance("xab", "xba"));
    assertEquals(2, Headings.distance("abcd", "badc"));
    assertEquals(1, Headings.distance("iron", "irons"));
    assertEquals(4, Headings.distance("iron", ""));
    assertEquals(3, Headings.distance("abc", "xyz"));
  }

  /** By hand: 0.1 mol/L x 10 mL of 50 mL are 20 mEq/L; a blank of 0 counts as none. */
  @Test
  void aTitrationSaysWhatIsTheSameForAllRows() {
    Table table = Table.of(Column.of("volume [mL]", 10));
    Acidities acidities =
        Acidities.from(table, pH(8.2))
            .withSample(mL(50), mL(0.1))
            .withTitrant(Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0001)));
    Answer<TitratableAcidity> answer = acidities.answer(ACIDITY, 0);
    assertEquals(20, answer.value().inMilliequivalentsPerLitre(), 1e-12);
    String steps = answer.explain().toString();
    assertTrue(steps.contains("the same for all rows"), steps);
    assertTrue(steps.contains("titrant x (volume - blank) / sample"), steps);
    Acidities without = Acidities.from(table, pH(8.2)).withSample(mL(50));
    assertEquals(
        "titrant: neither a column nor a value for all rows is there: 1 row of [volume]",
        assertThrows(IllegalStateException.class, without::acidity).getMessage());
    assertEquals(List.of("titrant is not stated"), without.answer(ACIDITY, 0).whyUnknown());
    assertEquals(
        "sample: the table has a column of it; leave it out with Table.without",
        assertThrows(
                IllegalStateException.class,
                () ->
                    Acidities.from(table.with(Column.of("sample [mL]", 50)), pH(8.2))
                        .withSample(mL(50)))
            .getMessage());
  }

  @Test
  void ofSeveralFaultsOfATitrationThatOfTheVolumeComesFirst() {
    List<String> names = List.of("volume [mL]", "sample [mL]", "titrant [mol/L]", "blank [mL]");
    for (int first = 0; first < names.size(); first++) {
      Column[] columns = new Column[names.size()];
      for (int k = 0; k < columns.length; k++) {
        columns[k] = Column.of(names.get(k), k < first ? 1 : -1);
      }
      Acidities acidities = Acidities.from(Table.of(columns), pH(8.2));
      assertEquals(names.get(first), acidities.acidity().failure(0).orElseThrow().column());
    }
    double[] good = {10, 50, 0.1, 0};
    Column[] all = new Column[good.length];
    Arrays.setAll(all, k -> Column.of(names.get(k), good[k]));
    assertEquals(Optional.empty(), Acidities.from(Table.of(all), pH(8.2)).acidity().failure(0));
  }
}
