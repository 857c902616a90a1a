package org.brewchem.table;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import java.util.List;
import org.brewchem.OutOfRangeException;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Figure;
import org.brewchem.figure.FigureCode;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.substance.Ion;
import org.junit.jupiter.api.Test;

class BeersTest {

  private static final String ACIDITY = "titratable acidity [g/L as lactic acid, to pH 8.2]";
  private static final Figure<TitratableAcidity> TO_EIGHT = Figures.titratableAcidity(pH(8.2));
  private static final Figure<?> TO_SEVEN = Figures.titratableAcidity(pH(7));

  private static Table table() {
    return Table.of(
        missing("pH", 2, 4.36, 4.21, 0, 4.4, 8.4, 4.3),
        Column.of(ACIDITY, 1.8, 2.4, 2, -1, 2, 2.1),
        Column.of("u(" + ACIDITY.replace(" [", ") ["), 0.05, 0.06, 0.05, 0.05, 0.05, 0.05),
        missing("calcium [mg/L]", 1, 60, 0, 50, 50, 50, 55),
        Column.of("sulfate [mg/L]", 90, 80, 80, 80, 80, -3),
        Column.of("chloride [mg/L]", 60, 55, 60, 60, 60, 60));
  }

  private static Column missing(String heading, int index, double... values) {
    BitSet missing = new BitSet();
    missing.set(index);
    return Column.of(heading, values, missing);
  }

  private static Beers beers() {
    return Beers.from(table()).withUncertainty("pH", 0.02);
  }

  private static Beer single(double pH, double grams, double u) {
    return Beer.of(pH(pH), acidity(gPerL(grams), LACTIC, pH(8.2)))
        .withStandardUncertaintyOfPH(0.02)
        .withStandardUncertaintyOfAcidity(acidity(gPerL(u), LACTIC, pH(8.2)));
  }

  @Test
  void aRowAnswersWhatTheSingleBeerAnswers() {
    Beer first =
        single(4.36, 1.8, 0.05)
            .with(Ion.CALCIUM, mgPerL(60))
            .with(Ion.SULFATE, mgPerL(90))
            .with(Ion.CHLORIDE, mgPerL(60));
    Beers beers = beers();
    for (Figure<?> figure :
        List.of(
            Figures.PH_VALUE,
            TO_EIGHT,
            TO_SEVEN,
            Figures.CALCIUM,
            Figures.SULFATE_TO_CHLORIDE,
            Figures.BUFFER_CAPACITY,
            Figures.IONIC_STRENGTH)) {
      double expected = first.answer(figure).number();
      Column column = beers.columnWithUncertainty(figure);
      assertEquals(expected, column.value(0), 1e-12 * Math.abs(expected), figure.title());
      assertTrue(beers.explain(figure, 0).holds(), figure.title());
      if (first.answer(figure).standardUncertainty().isPresent()) {
        double u = first.answer(figure).standardUncertainty().getAsDouble();
        assertEquals(u, column.standardUncertainty().orElseThrow().value(0), 1e-9 * u);
      }
    }
  }

  @Test
  void aBadRowKeepsItsReasonAndTheOthersTheirNumbers() {
    Column acidity = beers().column(TO_SEVEN);
    assertTrue(acidity.isPresent(0) && acidity.isPresent(1));
    assertInstanceOf(Failure.Missing.class, acidity.failure(2).orElseThrow());
    assertEquals(
        "titratable acidity: -1 g/L as lactic acid, to pH 8.2 is not possible; more than 0 is allowed",
        acidity.failure(3).orElseThrow().reason());
    assertEquals(
        "pH: 8.4 is not below the end point, pH 8.2", acidity.failure(4).orElseThrow().reason());
    assertTrue(acidity.failure(5).orElseThrow().reason().startsWith("sulfate: -3 mg/L"));
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> beers().beer(4));
    assertTrue(String.valueOf(refused.getMessage()).contains("below the end point"));
    assertEquals(
        List.of("row 5, column \"pH\": pH: 8.4 is not below the end point, pH 8.2"),
        beers().answer(Figures.PH_VALUE, 4).whyUnknown());
    assertThrows(OutOfRangeException.class, () -> beers().beer(6));
  }

  @Test
  void anIonThatIsMissingIsNotKnownOfItsBeerAlone() {
    Column calcium = beers().column(Figures.CALCIUM);
    assertEquals(60, calcium.value(0), 1e-12);
    assertEquals("calcium is not reported", calcium.failure(1).orElseThrow().reason());
    assertTrue(beers().column(Figures.SODIUM).failure(0).orElseThrow().reason().contains("sodium"));
  }

  @Test
  void anAcidityThatNoBeerHasFailsByItsRow() {
    Table table = Table.of(Column.of("pH", 3.2, 4.4), Column.of(ACIDITY, 0.02, 2));
    Column capacity = Beers.from(table).column(Figures.BUFFER_CAPACITY);
    assertInstanceOf(Failure.NoSolution.class, capacity.failure(0).orElseThrow());
    assertTrue(capacity.isPresent(1));
    assertEquals(4.4, Beers.from(table).column(Figures.PH_VALUE).value(1));
  }

  @Test
  void threadsAndOrderChangeNoBit() {
    double[] read = new double[3000];
    double[] titrated = new double[3000];
    for (int i = 0; i < read.length; i++) {
      read[i] = 4.1 + 0.5 * (i % 37) / 37;
      titrated[i] = 1.5 + (i % 41) / 41.0;
    }
    Table many = Table.of(Column.of("pH", read), Column.of(ACIDITY, titrated));
    Beers beers = Beers.from(many).under(Chemistry.of(Level.ACTIVITY));
    List<Column> together = beers.columns(TO_SEVEN, Figures.PH_VALUE);
    double[] two = beers.parallel(2).column(TO_SEVEN).values();
    for (int i = 0; i < read.length; i++) {
      assertEquals(together.get(0).value(i), two[i]);
    }
    assertEquals(
        Beer.of(pH(read[77]), acidity(gPerL(titrated[77]), LACTIC, pH(8.2)))
            .under(Chemistry.of(Level.ACTIVITY))
            .answer(TO_SEVEN)
            .number(),
        two[77],
        1e-12 * two[77]);
  }

  @Test
  void headingsSayWhatIsReadAndWhatIsOdd() {
    Table table =
        Table.of(
            Column.of("pH", 4.4, 44),
            Column.of("titratable acidity [mEq/L, to pH 8.2]", 20, 20),
            Column.of("calcum [mg/L]", 60, 60));
    Beers beers = Beers.from(table).measuredAt(celsius(25));
    assertEquals(List.of("pH", "titratable acidity"), beers.used());
    assertEquals(List.of("calcum"), beers.ignored());
    assertTrue(
        beers.notices().stream().anyMatch(one -> one.code() == TableCode.HEADING_NEARLY_KNOWN));
    assertTrue(beers.column(Figures.PH_VALUE).failure(1).isPresent(), "44 is no pH of a beer");
    assertEquals(celsius(25), beers.beer(0).contents().temperature());
    Table sourly = Table.of(Column.of("pH", 2.7), Column.of(ACIDITY, 12));
    assertTrue(
        Beers.from(sourly).notices().stream()
            .anyMatch(one -> one.code() == FigureCode.UNUSUAL_VALUE));
    for (Table wrong :
        List.of(
            Table.of(Column.of("pH", 4.4)),
            Table.of(Column.of(ACIDITY, 2)),
            Table.of(Column.of("pH", 4.4), Column.of("titratable acidity [g/L]", 2)),
            Table.of(Column.of("pH [mol/L]", 4.4), Column.of(ACIDITY, 2)))) {
      assertThrows(IllegalArgumentException.class, () -> Beers.from(wrong));
    }
  }
}
