package org.brewchem.checks.frozen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.brewchem.uncertainty.UncertainValue;
import org.junit.jupiter.api.Test;

/** What is held against the files is caught where it moves. */
class FrozenComparisonTest {

  private static final FrozenRoom ROOM = FrozenDigits.rooms().get(0);

  private static List<FrozenFigure> figures(Consumer<FrozenFigures.Of> statements) {
    FrozenFigures figures = new FrozenFigures();
    statements.accept(figures.of("beer"));
    return figures.all();
  }

  private static List<String> differences(
      Consumer<FrozenFigures.Of> was, Consumer<FrozenFigures.Of> is) {
    return FrozenComparison.differences(figures(was), figures(is));
  }

  private static List<String> differences(double was, double is) {
    return differences(of -> of.number("pH", "", was), of -> of.number("pH", "", is));
  }

  @Test
  void aChangedDigitIsCaught() {
    assertEquals(List.of(), differences(4.35, 4.35 * (1 + 0.9e-10)));
    assertEquals(
        List.of("beer, pH: was 4.3499999999999996, is 4.3499999994999996"),
        differences(4.35, 4.3499999995));
    assertEquals(1, differences(-4.35, 4.35).size());
    assertEquals(1, differences(4.35e9, 4.35e9 + 1).size());
  }

  @Test
  void aboutZeroTheDifferenceCountsAsItIs() {
    assertEquals(List.of(), differences(0, 0.9e-12));
    assertEquals(1, differences(0, 1.1e-12).size());
    assertEquals(1, differences(1e-6, 1.00001e-6).size());
  }

  @Test
  void aChangedUncertaintyIsCaught() {
    Consumer<FrozenFigures.Of> was = of -> of.uncertain("pH", "", 4.35, 0.02);
    assertEquals(
        List.of(), differences(was, of -> of.uncertain("pH", "", 4.35, 0.02 * (1 + 0.9e-6))));
    assertEquals(1, differences(was, of -> of.uncertain("pH", "", 4.35, 0.020001)).size());
    assertEquals(1, differences(was, of -> of.number("pH", "", 4.35)).size());
    assertEquals(1, differences(of -> of.number("pH", "", 4.35), was).size());
  }

  @Test
  void aMissingRowIsCaughtOnEitherSide() {
    Consumer<FrozenFigures.Of> one = of -> of.number("pH", "", 4.35);
    Consumer<FrozenFigures.Of> two = one.andThen(of -> of.number("acidity", "g/L", 1.8));
    assertEquals(List.of("beer, acidity: computed, but not in the file"), differences(one, two));
    assertEquals(
        List.of("beer, acidity: in the file, but not computed (or twice in the file)"),
        differences(two, one));
    FrozenFigure twice = figures(one).get(0);
    assertEquals(
        List.of("beer, pH: in the file, but not computed (or twice in the file)"),
        FrozenComparison.differences(List.of(twice, twice), List.of(twice)));
  }

  @Test
  void otherWordsUnitsAndWordsForNumbersAreCaught() {
    Consumer<FrozenFigures.Of> was = of -> of.text("verdict", "within");
    assertEquals(List.of(), differences(was, was));
    assertEquals(
        List.of("beer, verdict: was within, is below"),
        differences(was, of -> of.text("verdict", "below")));
    assertEquals(1, differences(was, of -> of.number("verdict", "", 1)).size());
    assertEquals(
        List.of("beer, acidity: was in g/L, is in mEq/L"),
        differences(
            of -> of.number("acidity", "g/L", 1.8), of -> of.number("acidity", "mEq/L", 1.8)));
  }

  /** A digit changed in the text of a real file, and a line taken out of it. */
  @Test
  void aFileThatWasTouchedIsCaught() {
    List<FrozenFigure> frozen = ROOM.frozen();
    FrozenFigure first = frozen.get(0);
    FrozenFigure changed =
        new FrozenFigure(first.input(), first.figure(), first.unit(), first.value() + "1", "");
    List<FrozenFigure> computed = ROOM.computed();
    assertEquals(List.of(), FrozenComparison.differences(frozen, computed));
    assertEquals(
        1, FrozenComparison.differences(frozen.subList(1, frozen.size()), computed).size());
    List<FrozenFigure> touched = new ArrayList<>(frozen);
    touched.set(0, changed);
    assertEquals(1, FrozenComparison.differences(touched, computed).size());
  }

  @Test
  void aFileThatLostARowIsRefused() {
    FrozenRoom shorter = new FrozenRoom(ROOM.name(), ROOM.expectedFigures() + 1, ROOM.adapter());
    assertThrows(IllegalStateException.class, shorter::frozen);
  }

  @Test
  void whatIsWrittenIsReadBackToTheLastBit() {
    for (double number : new double[] {0, 0.1, 1.0 / 3, -2e-300, 1e17, 123456789, 4.35, 1e22}) {
      assertEquals(number, Double.parseDouble(FrozenFigure.digits(number)));
    }
    assertEquals("0.10000000000000001", FrozenFigure.digits(0.1));
    assertEquals("100", FrozenFigure.digits(100));
    assertThrows(IllegalArgumentException.class, () -> FrozenFigure.digits(Double.NaN));
    String text =
        FrozenRoom.fileText(figures(of -> of.uncertain("pH", "", UncertainValue.of(4, 0.5, "1"))));
    assertEquals("beer,pH,,4,0.5", text.lines().toList().get(3));
  }

  @Test
  void aFigureIsStatedOnceAndFitsIntoAField() {
    assertThrows(
        IllegalStateException.class,
        () ->
            figures(
                of -> {
                  of.number("pH", "", 4);
                  of.number("pH", "", 5);
                }));
    assertThrows(
        IllegalArgumentException.class, () -> figures(of -> of.text("findings", "one, two")));
    assertThrows(IllegalArgumentException.class, () -> figures(of -> of.text("findings", "")));
  }

  @Test
  void aRefusalIsAResult() {
    assertEquals(
        List.of("beer, dose: possible: was no, is yes"),
        differences(
            of ->
                of.attempt(
                    "dose",
                    () -> {
                      throw new IllegalArgumentException("not possible");
                    },
                    dose -> {}),
            of -> of.attempt("dose", () -> 1, dose -> {})));
  }
}
