package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.gPerHL;
import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.mLPerHL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.Pressure;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Held;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a treatment calls itself, and the numbers that it adds to an explanation. */
class TreatmentTextsTest {

  private static final Held WATER = Held.water();
  private static final Held BEER = Held.beer();
  private static final Pressure AIR = Pressure.ofKilopascals(0.04);
  private static final Reagent BOTTLE =
      Reagent.of(Acid.LACTIC, massPercent(80)).withDensity(gPerML(1.19), 0.002);

  static Stream<Arguments> treatments() {
    return Stream.of(
        Arguments.of(
            Treatments.salt(Salt.GYPSUM, gPerHL(15)),
            "15 g/hL of calcium sulfate dihydrate (gypsum)"),
        Arguments.of(Treatments.acid(BOTTLE, gPerHL(10)), "10 g/hL of lactic acid, 80 % by mass"),
        Arguments.of(Treatments.acid(BOTTLE, mLPerHL(10)), "10 mL/hL of lactic acid, 80 % by mass"),
        Arguments.of(Treatments.solute(Acid.LACTIC, mmolPerL(1)), "1 mmol/L of lactic acid"),
        Arguments.of(
            Treatments.blend(BEER, massPercent(25)), "mixing in 25 % by mass of another liquid"),
        Arguments.of(
            Treatments.blend(hL(3), BEER, hL(1)), "mixing in 25 % by volume of another liquid"),
        Arguments.of(
            Treatments.blend(hL(3), List.of(BEER, WATER), List.of(hL(1), hL(2))),
            "blending with [100 L, 200 L] of other liquids"),
        Arguments.of(
            Treatments.reverseOsmosis(0.97), "reverse osmosis with a rejection of 97.00 %"),
        Arguments.of(Treatments.dilution(massPercent(30)), "mixing in 30 % by mass of pure water"),
        Arguments.of(Treatments.degassing(mgPerL(5)), "degassing to 5.0 mg/L of CO2"),
        Arguments.of(Treatments.chalkClosed(gPerHL(10)), "10.00 g/hL of chalk, closed"),
        Arguments.of(
            Treatments.chalkOpen(gPerHL(10), AIR),
            "10.00 g/hL of chalk, open to the gas, 0.040 kPa absolute of CO2"),
        Arguments.of(
            Treatments.precipitation(Mineral.CALCITE, Mineral.BRUCITE),
            "precipitation of calcite and brucite to equilibrium"));
  }

  @ParameterizedTest
  @MethodSource("treatments")
  void aTreatmentIsPrintedWithItsAmount(Treatment treatment, String text) {
    assertEquals(text, treatment.text());
    assertEquals(text, treatment.toString());
  }

  private static String explained(Treatment treatment) {
    return WATER.after(treatment).answer(Figures.CALCIUM).explain().toString();
  }

  /** Shares by hand: 1 of 4, and 1 and 2 of 6. */
  @Test
  void sharesOfAMixtureAreInPerCentOfWhatWasStated() {
    String mass = explained(Treatments.blend(BEER, massPercent(25)));
    assertTrue(
        mass.contains("another liquid in the mixture, totals mix, pH follows = 25.00 % by mass"),
        mass);
    String volume = explained(Treatments.blend(hL(3), BEER, hL(1)));
    assertTrue(volume.contains("= 25.00 % by volume"), volume);
    String several =
        explained(Treatments.blend(hL(3), List.of(BEER, WATER), List.of(hL(1), hL(2))));
    assertTrue(
        several.contains("liquid 2 (liquid) in the mixture, totals mix, pH follows = 16.67 %"),
        several);
    assertTrue(
        several.contains("liquid 3 (liquid) in the mixture, totals mix, pH follows = 33.33 %"),
        several);
  }

  /** What is dissolved is what the calcium rose by; 40.078 mg to the millimole. */
  @Test
  void theChalkThatDissolvesIsTheRiseOfTheCalcium() {
    Held before = WATER.after(Treatments.acid(BOTTLE, gPerHL(20)));
    Held after = before.after(Treatments.chalkClosed(gPerHL(10)));
    double rise = after.answer(Figures.CALCIUM).number() - before.answer(Figures.CALCIUM).number();
    String said = after.answer(Figures.CALCIUM).explain().toString();
    String line =
        said.lines().filter(l -> l.startsWith("chalk dissolved")).findFirst().orElseThrow();
    double shown = Double.parseDouble(line.replaceAll(".* = ([0-9.]+) mmol/L.*", "$1"));
    assertEquals(rise / 40.078, shown, 0.0006);
    assertTrue(rise > 1, said);
    double all = 100 / 100.087;
    long percent = Math.round(100 * rise / 40.078 / all);
    assertTrue(
        after.notices().toString().contains(percent + " % of the chalk dissolves"),
        after.notices().toString());
  }

  @Test
  void whatATreatmentNeedsToKnowIsNamedWithIt() {
    Held open = new Held(WATER.contents().withUnknown(Component.CALCIUM));
    for (Treatment treatment :
        List.of(
            Treatments.chalkClosed(gPerHL(10)),
            Treatments.chalkOpen(gPerHL(10), AIR),
            Treatments.boiling())) {
      String message =
          assertThrows(UnknownFigureException.class, () -> open.after(treatment)).getMessage();
      assertTrue(message.contains("calcium is not reported"), message);
      assertTrue(message.startsWith(treatment.text().split(",")[0]), message);
    }
  }
}
