package org.brewchem.table;

import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.OutOfRangeException;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.units.LabUnits;
import org.junit.jupiter.api.Test;

class ColumnTest {

  private static Column second() {
    BitSet missing = new BitSet();
    missing.set(1);
    return Column.of("calcium [mg/L]", new double[] {40, 7, -3}, missing);
  }

  @Test
  void headingIsANameAndAUnit() {
    Column column = Column.of("calcium [mg/L]", 40, 80);
    assertEquals("calcium", column.name());
    assertEquals(Optional.of("mg/L"), column.unit());
    assertEquals("calcium [mg/L]", column.heading());
    assertThrows(IllegalArgumentException.class, () -> Column.of("calcium [mg/L", 40));
  }

  @Test
  void numbersAreCopiedInAndOut() {
    double[] given = {40, 80};
    Column column = Column.of("calcium [mg/L]", given);
    given[0] = 1;
    column.values()[1] = 1;
    assertArrayEquals(new double[] {40, 80}, column.values());
  }

  @Test
  void zeroHasNoSign() {
    assertEquals(0.0, Column.of("pH", -0.0).value(0));
  }

  @Test
  void aNumberThatIsNoneIsRefusedUnlessItIsDeclaredMissing() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class, () -> Column.of("calcium [mg/L]", 40, Double.NaN));
    assertEquals(
        "row 2, column \"calcium [mg/L]\": NaN is not possible; a finite number, or none where it"
            + " is missing, is allowed",
        refused.getMessage());
    BitSet missing = new BitSet();
    missing.set(1);
    Column column = Column.of("calcium [mg/L]", new double[] {40, Double.NaN}, missing);
    assertEquals(OptionalDouble.empty(), column.get(1));
  }

  @Test
  void aRowThatDoesNotExistIsRefused() {
    Column column = second();
    OutOfRangeException refused = assertThrows(OutOfRangeException.class, () -> column.value(99));
    assertEquals("row index: 99 is not possible; 0 to 2 is allowed", refused.getMessage());
    assertThrows(OutOfRangeException.class, () -> column.row(-1));
    assertThrows(OutOfRangeException.class, () -> column.isPresent(3));
    assertThrows(OutOfRangeException.class, () -> column.get(-1));
    assertThrows(OutOfRangeException.class, () -> column.failure(3));
    OutOfRangeException empty =
        assertThrows(OutOfRangeException.class, () -> Column.of("calcium [mg/L]").value(0));
    assertEquals("none", empty.allowed());
  }

  @Test
  void aMissingRowThatDoesNotExistIsRefused() {
    BitSet missing = new BitSet();
    missing.set(2);
    assertEquals(
        "index of a missing row: 2 is not possible; less than 2 is allowed",
        assertThrows(
                IllegalArgumentException.class, () -> Column.of("pH", new double[] {7, 8}, missing))
            .getMessage());
  }

  @Test
  void aMissingRowStaysMissing() {
    Column column = second();
    assertTrue(column.isPresent(0));
    assertFalse(column.isPresent(1));
    Failure failure = new Failure.Missing(2, "calcium [mg/L]");
    assertEquals(Optional.of(failure), column.failure(1));
    assertEquals(List.of(failure), column.failures());
    assertEquals(List.of("", "calcium [mg/L]: is missing", ""), column.reasons());
    assertEquals("calcium [mg/L], 3 rows, 1 without a number: 40, none, -3", column.toString());
    assertThrows(IllegalStateException.class, () -> column.value(1));
  }

  @Test
  void anArrayOfAllRowsTakesAChoiceForThoseWithoutANumber() {
    Column column = second();
    IllegalStateException refused =
        assertThrows(IllegalStateException.class, () -> column.values());
    assertEquals(
        "column \"calcium [mg/L]\": 1 of 3 rows has no number; the first: row 2, column \"calcium"
            + " [mg/L]\": is missing",
        refused.getMessage());
    assertArrayEquals(new double[] {40, Double.NaN, -3}, column.valuesOr(Double.NaN));
  }

  @Test
  void anotherUnitConvertsRowByRowAndKeepsFailures() {
    Column grams = second().in(LabUnits.MASS_CONCENTRATION, "g/L");
    assertEquals("calcium [g/L]", grams.heading());
    assertEquals(0.04, grams.value(0), 1e-15);
    assertEquals(Optional.of(new Failure.Missing(2, "calcium [mg/L]")), grams.failure(1));
    assertTrue(grams.failure(2).orElseThrow() instanceof Failure.NotPossible);
    assertThrows(
        IllegalArgumentException.class, () -> second().in(LabUnits.MASS_CONCENTRATION, "mmol/L"));
    assertThrows(IllegalArgumentException.class, () -> second().in(LabUnits.VOLUME, "mL"));
  }

  /** Definition of the German degree: 10 mg/L of CaO; its molar mass from the weights of 2021. */
  @Test
  void residualAlkalinityInGermanDegreesIsNotABoundedHardness() {
    Column column = Column.of("residual alkalinity [mEq/L]", -2);
    assertEquals(
        -2 * (40.078 + 15.999) / 2 / 10,
        column.in(LabUnits.RESIDUAL_ALKALINITY, "°dH").value(0),
        1e-9);
  }

  @Test
  void onlyTheFirstRowsArePrintedAndTheyAreRounded() {
    double[] many = {1.0 / 3, 2, 3, 4, 5, 6, 7, 8};
    assertEquals(
        "calcium [mg/L], 8 rows: 0.33333, 2, 3, 4, 5, 6, ...",
        Column.of("calcium [mg/L]", many).toString());
    String table = Table.of(Column.of("calcium [mg/L]", many)).toString();
    assertEquals(8, table.lines().count());
    assertTrue(table.endsWith("\n... 8 rows"), table);
  }

  private static Column withUncertainty() {
    Table.Builder rows = Table.withHeadings("calcium [mg/L]", "u(calcium) [mg/L]");
    rows.row(3).set(0, 80).set(1, 4);
    rows.row(5).set(0, 40);
    rows.row(8).set(1, 2);
    rows.row(9).set(0, 20).set(1, 2);
    return Waters.from(rows.build()).columnWithUncertainty(Figures.CALCIUM);
  }

  @Test
  void aColumnPrintsHowManyRowsItHas() {
    assertEquals("pH, 0 rows", Column.of("pH").toString());
    assertEquals("pH, 1 row: 7", Column.of("pH", 7).toString());
    assertEquals("pH, 6 rows: 1, 2, 3, 4, 5, 6", Column.of("pH", 1, 2, 3, 4, 5, 6).toString());
  }

  @Test
  void anUncertaintyIsPrintedBesideItsNumber() {
    assertEquals(
        "calcium [mg/L], 4 rows, 1 without a number: 80 (u 4.0), 40, none, 20 (u 2.0)",
        withUncertainty().toString());
  }

  @Test
  void anotherUnitKeepsRowsWithoutAnUncertainty() {
    Column grams = withUncertainty().in(LabUnits.MASS_CONCENTRATION, "g/L");
    Column u = grams.standardUncertainty().orElseThrow();
    assertEquals("u(calcium) [g/L]", u.heading());
    assertEquals(0.004, u.value(0), 1e-15);
    assertEquals("no uncertainty", u.failure(1).orElseThrow().kind());
    assertEquals("missing", u.failure(2).orElseThrow().kind());
    assertEquals(9, u.row(3));
  }

  @Test
  void aRenamedOrPickedColumnKeepsItsUncertainty() {
    Table table = Table.of(withUncertainty());
    Column renamed = table.renamed("calcium", "Ca").column("Ca");
    Column u = renamed.standardUncertainty().orElseThrow();
    assertEquals("u(Ca) [mg/L]", u.heading());
    assertEquals(List.of(2.0, 4.0), List.of(u.value(3), u.value(0)));
    assertTrue(u.failure(1).isPresent());
    Column sorted = table.sortedBy("calcium").column("calcium");
    assertEquals(9, sorted.row(0));
    assertEquals(2, sorted.standardUncertainty().orElseThrow().value(0));
    assertEquals(
        "no uncertainty",
        sorted.standardUncertainty().orElseThrow().failure(1).orElseThrow().kind());
  }

  @Test
  void aColumnOfDosesKeepsItsCautions() {
    Column dose =
        Waters.from(Table.of(Column.of("alkalinity [mEq/L]", 4, 2))).doseOf(Acid.LACTIC, pH(5.5));
    assertFalse(dose.cautions().isEmpty());
    assertEquals("lactic acid to pH 5.5 [mmol/L]", dose.heading());
    Table table = Table.of(dose);
    assertEquals(dose.cautions(), table.head(1).columns().get(0).cautions());
    assertEquals(dose.cautions(), table.renamed(dose.name(), "dose").column("dose").cautions());
    assertEquals(dose.cautions(), dose.in(LabUnits.AMOUNT_CONCENTRATION, "mol/L").cautions());
    assertTrue(Column.of("pH", 7).cautions().isEmpty());
  }
}
