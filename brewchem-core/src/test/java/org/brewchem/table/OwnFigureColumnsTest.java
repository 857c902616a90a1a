package org.brewchem.table;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.beer.SouredWort;
import org.brewchem.figure.Answering;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.titration.Titrant;
import org.brewchem.water.WaterFigures;
import org.junit.jupiter.api.Test;

/** Columns of figures in other units, by rules of the user's own, and of rows that have none. */
class OwnFigureColumnsTest {

  private static final String ACIDITY = "titratable acidity [mEq/L, to pH 8.2]";

  private static Table waters() {
    return Table.of(Column.of("alkalinity [mEq/L]", 4, 4, 4), Column.of("pH", 7, 8, 9));
  }

  /** By definition 10^-7 mol/L are 10^-16 mol/nL. */
  @Test
  void aFigureIsShownInAUnitThatIsNoMultipleOfItsOwn() {
    Scale<PH> perNanolitre =
        Scale.of(
            "mol/nL", pH -> 1e-9 * Math.pow(10, -pH.value()), x -> PH.of(-9 - Math.log10(x)), 3);
    Column column = Waters.from(waters()).column(Figures.PH_VALUE.shownIn(perNanolitre));
    assertEquals("pH [mol/nL]", column.heading());
    assertEquals(1e-16, column.value(0), 1e-26);
    assertEquals(1e-18, column.value(2), 1e-28);
  }

  @Test
  void aNumberThatItsUnitDoesNotAllowFailsInItsRow() {
    Scale<PH> below =
        Scale.of(
            "below 8.5",
            pH -> {
              if (pH.value() > 8.5) {
                throw new IllegalArgumentException("pH: no more than 8.5 is allowed");
              }
              return 8.5 - pH.value();
            },
            x -> PH.of(8.5 - x),
            3);
    Table.Builder rows = Table.withHeadings("alkalinity [mEq/L]", "pH");
    rows.row().set(0, 4).set(1, 7);
    rows.row().set(0, 4).set(1, 9);
    rows.row().set(0, 4);
    Column column = Waters.from(rows.build()).column(Figures.PH_VALUE.shownIn(below));
    assertEquals(1.5, column.value(0), 1e-12);
    assertEquals(
        new Failure.NotPossible(2, "pH [below 8.5]", "pH: no more than 8.5 is allowed"),
        column.failure(1).orElseThrow());
    assertEquals(new Failure.Missing(3, "pH"), column.failure(2).orElseThrow());
  }

  @Test
  void aRuleOfTheUsersOwnIsAskedRowByRow() {
    Figure.Rule rule =
        new Figure.Rule() {
          @Override
          public Step find(Figure<?> figure, Answering from) {
            Step own = from.step(Figures.PH_VALUE);
            Step.Builder step =
                Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA).text(text(), "");
            return own.found().isPresent() && own.found().get().value() < 8.5
                ? step.found(own.found().get().times(2))
                : step.unknown(List.of("the pH is too high", "or there is none"));
          }

          @Override
          public String text() {
            return "twice the pH";
          }
        };
    Figure<Double> twice = Figure.of("twice", Map.of(), Scale.number("", 2), rule);
    Column column = Waters.from(waters()).column(twice);
    assertEquals("twice", column.heading());
    assertEquals(14, column.value(0), 1e-12);
    assertEquals(16, column.value(1), 1e-12);
    assertEquals(
        new Failure.NoSolution(3, "twice", "the pH is too high; or there is none"),
        column.failure(2).orElseThrow());
  }

  @Test
  void zeroHasNoSign() {
    Figure<Double> negative =
        ClosedForm.figure(
            "less calcium",
            Scale.number("mg/L", 1),
            "- calcium",
            "",
            Figure.list(Figures.CALCIUM),
            x -> -x[0]);
    Column column = Waters.from(Table.of(Column.of("calcium [mg/L]", 0, 40))).column(negative);
    assertEquals(0.0, column.value(0));
    assertEquals(-40, column.value(1), 1e-12);
  }

  /** What is missing counts as 0 in an ion balance, unless all cations or all anions are. */
  @Test
  void aRowWithoutAnyCationOrAnionHasNoBalance() {
    Table.Builder rows =
        Table.withHeadings("calcium [mmol/L]", "chloride [mmol/L]", "alkalinity [mEq/L]");
    rows.row().set(0, 1).set(1, 1).set(2, 1);
    rows.row();
    rows.row().set(1, 1);
    rows.row().set(0, 1);
    rows.row().set(0, 1).set(1, 1);
    rows.row().set(0, 0).set(1, 0).set(2, 0);
    Column balance = Waters.from(rows.build()).ionBalance();
    assertEquals(0, balance.value(0), 1e-12);
    for (int row = 1; row < 4; row++) {
      assertInstanceOf(Failure.Missing.class, balance.failure(row).orElseThrow());
    }
    assertEquals(100 * (2 - 1) / 3.0, balance.value(4), 1e-12);
    assertEquals(0, balance.value(5));
  }

  @Test
  void aFigureThatTakesColumnsThatAreNotThereIsRefusedBeforeAnyRow() {
    Waters none = Waters.from(Table.withHeadings("sodium [mg/L]").build());
    assertThrows(IllegalStateException.class, none::totalHardness);
    assertThrows(IllegalStateException.class, none::alkalinity);
    assertEquals(0, none.column(Figures.SODIUM).size());
  }

  @Test
  void ionsOfABeerHaveTheirUncertainties() {
    Table table =
        Table.of(
            Column.of("pH", 4.4, 4.4),
            Column.of(ACIDITY, 20, 20),
            Column.of("calcium [mg/L]", 60, 50),
            Column.of("u(calcium) [mg/L]", 3, 2),
            Column.of("sulfate [mg/L]", 90, 80));
    Beers beers = Beers.from(table);
    Column calcium = beers.columnWithUncertainty(Figures.CALCIUM);
    assertEquals(60, calcium.value(0), 1e-12);
    assertEquals(3, calcium.standardUncertainty().orElseThrow().value(0), 1e-9);
    assertEquals(2, calcium.standardUncertainty().orElseThrow().value(1), 1e-9);
    Column sulfate = beers.columnWithUncertainty(Figures.SULFATE);
    assertEquals(
        "no uncertainty is stated of sulfate",
        sulfate.standardUncertainty().orElseThrow().failure(0).orElseThrow().reason());
    Column relative =
        beers.withRelativeUncertainty("sulfate", 0.1).columnWithUncertainty(Figures.SULFATE);
    assertEquals(8, relative.standardUncertainty().orElseThrow().value(1), 1e-9);
    assertEquals(
        "u(calcium): -3 mg/L is not possible; 0 or more is allowed",
        Beers.from(table.without("u(calcium)").with(Column.of("u(calcium) [mg/L]", -3, 2)))
            .columnWithUncertainty(Figures.CALCIUM)
            .standardUncertainty()
            .orElseThrow()
            .failure(0)
            .orElseThrow()
            .reason());
  }

  @Test
  void ofSeveralFaultsOfABeerThatOfThePHComesFirst() {
    BitSet first = new BitSet();
    first.set(0);
    Table table =
        Table.of(
            Column.of("pH", new double[] {0, 8.5, 4.4, 4.4, 8.2}, first),
            Column.of(ACIDITY, -1, -1, -1, 20, 20),
            Column.of("calcium [mg/L]", -1, -1, -1, -1, 50),
            Column.of("sulfate [mg/L]", -1, -1, -1, -1, 50));
    Column found = Beers.from(table).column(Figures.CALCIUM);
    assertEquals(new Failure.Missing(1, "pH"), found.failure(0).orElseThrow());
    assertEquals(ACIDITY, found.failure(1).orElseThrow().column());
    assertEquals(ACIDITY, found.failure(2).orElseThrow().column());
    assertEquals("calcium [mg/L]", found.failure(3).orElseThrow().column());
    assertEquals(
        Optional.of("pH: 8.2 is not below the end point, pH 8.2"),
        found.failure(4).map(Failure::reason));
    SingleBeers single =
        new SingleBeers(table, BeerColumns.from(table), celsius(20), Chemistry.standard());
    assertEquals("beer", single.at(0).kind());
  }

  /** The library counts up to 1e100, whatever the unit. */
  @Test
  void aNumberBeyondAllOthersFailsInItsRow() {
    for (String heading :
        List.of("calcium [mg/L]", "manganese [mg/L]", "total carbon dioxide [mmol/L]")) {
      Table table =
          Table.of(
              Column.of("sodium [mg/L]", 10, 10),
              Column.of("alkalinity [mEq/L]", 4, 4),
              Column.of(heading, 1e200, 4.1));
      Column strength = Waters.from(table).ionicStrength();
      assertEquals(heading, strength.failure(0).orElseThrow().column());
      assertInstanceOf(Failure.NotPossible.class, strength.failure(0).orElseThrow());
      assertTrue(strength.isPresent(1));
      assertTrue(
          Waters.from(table).reportNotices().stream()
              .noneMatch(
                  notice ->
                      notice.code() == TableCode.CELL_NOT_USED && notice.row().orElseThrow() == 2));
    }
    Table beers = Table.of(Column.of("pH", 4.4, 4.4, 4.4), Column.of(ACIDITY, 1e200, 1e5, 20));
    Column capacity = Beers.from(beers).column(Figures.BUFFER_CAPACITY);
    assertInstanceOf(Failure.NotPossible.class, capacity.failure(0).orElseThrow());
    assertEquals(
        new Failure.NoSolution(
            2,
            "buffer capacity",
            "titratable acidity: 100000 mEq/L, to pH 8.2 at pH 4.4 is not possible; no amount of a"
                + " typical beer's acids has it"),
        capacity.failure(1).orElseThrow());
    assertTrue(capacity.isPresent(2));
  }

  /** A titration has an acidity alone; other figures say that they do not apply to it. */
  @Test
  void aFigureThatDoesNotApplyToARowSaysSo() {
    Acidities acidities =
        Acidities.from(Table.of(Column.of("volume [mL]", 10)), pH(8.2))
            .withSample(mL(50))
            .withTitrant(Titrant.sodiumHydroxide().of(molPerL(0.1)));
    assertEquals(
        List.of("does not apply to a titration; a souring answers it"),
        acidities.answer(SouredWort.FORMED, 0).whyUnknown());
    assertEquals(
        "does not apply to a titration; a souring answers it",
        acidities.column(SouredWort.FORMED).failure(0).orElseThrow().reason());
    Waters waters = Waters.from(waters());
    assertEquals(
        "does not apply to a water; a souring answers it",
        waters.column(SouredWort.FORMED).failure(0).orElseThrow().reason());
    assertEquals(
        "row 1, column \"lactate formed [g/L as lactic acid]\": does not apply to a water; a souring"
            + " answers it",
        waters.column(SouredWort.FORMED).failure(0).orElseThrow().toString());
  }

  @Test
  void answersSayHowManyTheyAre() {
    Waters waters = Waters.from(waters());
    assertEquals("1 row", Answers.of(List.of(waters.water(0))).toString());
    assertEquals("2 rows", Answers.of(List.of(waters.water(0), waters.water(1))).toString());
    Column alkalinity =
        Answers.of(List.of(waters.water(0), waters.water(1)))
            .column(WaterFigures.RESIDUAL_ALKALINITY);
    assertEquals(List.of(1L, 2L), List.of(alkalinity.row(0), alkalinity.row(1)));
  }

  @Test
  void watersSayHowManyTheyAreAndWhatTheyComeFrom() {
    assertEquals(
        "3 waters at 18 °C, from alkalinity, pH", Waters.from(waters()).at(celsius(18)).toString());
    assertEquals(
        "3 waters at 25 °C, from alkalinity, pH; ignored: sample",
        Waters.from(waters().withTexts("sample", List.of("a", "b", "c"))).toString());
  }
}
