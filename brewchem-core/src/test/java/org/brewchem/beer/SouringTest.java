package org.brewchem.beer;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mEqPerLPerPH;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.figure.Hazard;
import org.brewchem.mash.MashCode;
import org.brewchem.mash.SourcedRange;
import org.brewchem.mash.WortBuffer;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.treatment.UnreachableException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Souring of invented worts, and the default buffer against its own arithmetic. */
class SouringTest {

  /** The lactic acid of the table, by which its rows were computed. */
  private static final double PKA = 3.86;

  private static final double GRAMS_PER_MOLE = 90.078;

  /** The pKa of the library's own set differs by 0.003. */
  private static final double SAME = 0.01;

  private static Solution wort(Level level) {
    return wort(level, 25);
  }

  private static Solution wort(Level level, double celsius) {
    return Solution.at(celsius(celsius))
        .under(Chemistry.of(level))
        .with(Acid.CITRIC, mmolPerL(4))
        .with(Acid.PHOSPHORIC, mmolPerL(6))
        .with(Acid.ACETIC, mmolPerL(12))
        .with(Base.SODIUM_HYDROXIDE, mmolPerL(24));
  }

  /** The charge of the wort at the pH at stop is what lactic acid gives off there. */
  @Test
  void whatIsFormedIsTheChargeAtTheStopByWhatAMoleGivesOff() {
    Solution wort = wort(Level.IDEAL);
    SouredWort soured = Souring.of(wort).to(pH(3.4));
    assertEquals(3.4, soured.pH().number(), 1e-9);
    double charge = wort.answer(Figures.titrationAlkalinity(pH(3.4))).number() / 1000;
    double givenOff = 1 / (1 + Math.pow(10, PKA - 3.4));
    assertEquals(charge / givenOff * GRAMS_PER_MOLE, soured.lactateFormed().number(), SAME * 5.4);
    // To 8.2 nearly every proton counts: the acidity rises by what was formed.
    assertEquals(
        soured.lactateFormed().number(),
        soured.titratableAcidity(pH(8.2)).number()
            - wort.answer(Figures.titratableAcidity(pH(8.2))).number(),
        1e-3);
    assertTrue(soured.explain().holds());
    assertTrue(soured.toString().contains("g/L as lactic acid formed; pH 3.40"), soured.toString());
    assertEquals(
        "souring of a wort of " + wort.answer(Figures.PH_VALUE), Souring.of(wort).toString());
    assertEquals(3, soured.cautions().size());
  }

  @Test
  void thePHOfWhatWasFormedIsTheInverse() {
    for (Level level : Level.values()) {
      Souring souring = Souring.of(wort(level));
      SouredWort there = souring.to(pH(3.5));
      SouredWort back = souring.forming(there.lactateFormed().value());
      assertEquals(3.5, back.pH().number(), 1e-9);
      assertTrue(back.explain().holds());
    }
  }

  /** A wort titrated with acid tells what its souring forms, within its own uncertainty. */
  @Test
  void aTitratedWortHasAnUncertainty() {
    Solution truth = wort(Level.PAIRS, 20);
    double[] volumes = {0, 2, 4, 6, 8, 10, 12};
    double[] read = new double[volumes.length];
    for (int i = 0; i < read.length; i++) {
      double added = 100 * volumes[i] / (50 + volumes[i]);
      Solution diluted = truth.diluted((50 + volumes[i]) / 50);
      read[i] =
          volumes[i] == 0
              ? truth.pH().value()
              : diluted.with(Acid.HYDROCHLORIC, mmolPerL(added)).pH().value();
    }
    MeasuredBuffer buffer =
        MeasuredBuffer.fit()
            .with(BufferReadings.withAcid(mL(50), molPerL(0.1), volumes, read))
            .metals(mmolPerL(0), mmolPerL(0), 0.1)
            .buffer();
    SouredWort soured = Souring.of(buffer.liquid()).to(pH(3.5));
    double expected = Souring.of(truth).to(pH(3.5)).lactateFormed().number();
    double u = soured.lactateFormed().standardUncertainty().orElseThrow();
    assertEquals(expected, soured.lactateFormed().number(), 2 * u);
    assertTrue(u > 0.005 && u < 0.5, Double.toString(u));
    assertFalse(soured.notices().isEmpty());
  }

  @Test
  void lactateThatWasThereIsToldApart() {
    Souring souring = Souring.of(wort(Level.PAIRS));
    SouredWort unknown = souring.to(pH(3.5));
    assertEquals("unknown: the lactate before souring is not stated", unknown.lactate().toString());
    SouredWort stated = souring.withLactateBefore(gPerL(0.4), gPerL(0.05)).to(pH(3.5));
    assertEquals(unknown.lactateFormed().number(), stated.lactateFormed().number(), 1e-12);
    assertEquals(0.4 + stated.lactateFormed().number(), stated.lactate().number(), 1e-12);
    assertEquals(0.05, stated.lactate().standardUncertainty().orElseThrow(), 1e-9);
    assertTrue(stated.lactate().explain().holds());
  }

  /**
   * Our own proposed row, 12 °P from 5.2 to 3.4: 65 mmol/L, 5.8 g/L (4.3 to 7.7). It follows from
   * the proposed capacity by arithmetic, so this shows that the row is consistent with its own
   * default. It is no check of any wort.
   */
  @Test
  void theDefaultIsConsistentWithItsOwnArithmeticWhichIsNoCheck() {
    double[] capacities = {0.55, 0.75, 1};
    double[] printed = {4.3, 5.8, 7.7};
    double[] independent = new double[3];
    for (int i = 0; i < 3; i++) {
      double taken = capacities[i] * 12 * (5.2 - 3.4);
      double free = 1000 * (Math.pow(10, -3.4) - Math.pow(10, -5.2));
      double millimoles = (taken + free) * (1 + Math.pow(10, PKA - 3.4));
      independent[i] = millimoles * GRAMS_PER_MOLE / 1000;
      assertEquals(printed[i], independent[i], 0.06);
      if (i == 1) {
        assertEquals(65, millimoles, 0.7);
      }
    }
    SouringEstimate estimate =
        SouringEstimate.of(WortBuffer.assumedForSouring(), massPercent(12), pH(5.2));
    SourcedRange formed = estimate.lactateFormedTo(pH(3.4));
    assertEquals(independent[0], formed.lower(), SAME * 4.3);
    assertEquals(independent[2], formed.upper(), SAME * 7.7);
    assertEquals(
        independent[1],
        ofCapacity(0.75 * 12, 12, 5.2).lactateFormedTo(pH(3.4)).lower(),
        SAME * 5.8);
  }

  private static SouringEstimate ofCapacity(double capacity, double degrees, double start) {
    return SouringEstimate.of(
        WortBuffer.measured(
            mEqPerLPerPH(capacity), mEqPerLPerPH(capacity), massPercent(degrees), "computed"),
        massPercent(degrees),
        pH(start));
  }

  /**
   * A thesis (heriot-watt-souring, seen): 5.03 to 3.41 at 10.7 °P, acid formed 4.13 g/L as the rise
   * of an acidity whose end point was not seen. The capacity computed from it, 7.1 mEq/(L pH),
   * gives it back, and it lies in the range of the default, which was made from it: no check.
   */
  @Test
  void theMeasuredSouringStandsBesideItsDefault() {
    assertEquals(4.13, ofCapacity(7.1, 10.7, 5.03).lactateFormedTo(pH(3.41)).lower(), 0.06);
    SourcedRange range =
        SouringEstimate.of(WortBuffer.assumedForSouring(), massPercent(10.7), pH(5.03))
            .riseOfAcidityTo(pH(3.41), pH(8.2));
    assertTrue(range.contains(4.13), range.toString());
  }

  @Test
  void theEstimateTurnsRoundAndAddsWhatWasThere() {
    SouringEstimate estimate =
        SouringEstimate.of(WortBuffer.assumedForSouring(), massPercent(12), pH(5.0));
    SourcedRange formed = estimate.lactateFormedTo(pH(3.4));
    assertEquals(3.4, estimate.pHForming(gPerL(formed.lower())).lower(), 1e-9);
    assertEquals(3.4, estimate.pHForming(gPerL(formed.upper())).upper(), 1e-9);
    assertTrue(formed.basis().toString().contains("heriot-watt-souring"), formed.toString());
    SourcedRange all = estimate.withLactateBefore(gPerL(0.3)).lactateAt(pH(3.4));
    assertEquals(formed.lower() + 0.3, all.lower(), 1e-12);
    assertThrows(IllegalStateException.class, () -> estimate.lactateAt(pH(3.4)));
    assertEquals(
        formed.lower(), estimate.riseOfAcidityTo(pH(3.4), pH(8.2)).lower(), 1e-3 * formed.lower());
    assertEquals(1, estimate.notices(pH(3.4)).size());
    assertEquals(MashCode.ASSUMED_WORT_BUFFER, estimate.notices(pH(3.4)).get(0).code());
    assertEquals(MashCode.BEYOND_WORT_BUFFER, estimate.notices(pH(4.2)).get(1).code());
    assertEquals(0, ofCapacity(9, 12, 5.2).notices(pH(3.4)).size());
    assertTrue(estimate.toString().startsWith("souring of a wort of 12"), estimate.toString());
  }

  @Test
  void onlyASouringAnswersWhatWasFormed() {
    assertEquals(
        "from the pH at start to the pH at stop by the proton balance",
        SouredWort.FORMED.rule().text());
    assertEquals(
        "unknown: does not apply to a solution; a souring answers it",
        wort(Level.PAIRS).answer(SouredWort.LACTATE).toString());
  }

  @Test
  void souringSaysWhatToMind() {
    assertTrue(
        Souring.of(wort(Level.PAIRS)).to(pH(3.5)).cautions().stream()
            .allMatch(caution -> caution.hazard() == Hazard.SOURING));
    assertEquals(
        3,
        SouringEstimate.of(WortBuffer.assumedForSouring(), massPercent(12), pH(5.2))
            .cautions()
            .size());
  }

  @Test
  void whatIsNoSouringIsRefused() {
    Souring souring = Souring.of(wort(Level.PAIRS));
    assertThrows(UnreachableException.class, () -> souring.to(pH(6)));
    refused("lactate formed: 0 g/L", () -> souring.forming(gPerL(0)));
    WortBuffer buffer = WortBuffer.assumedForSouring();
    refused("extract: 0 °P", () -> SouringEstimate.of(buffer, massPercent(0), pH(5)));
    refused("target: pH 2.5", () -> SouringEstimate.of(buffer, massPercent(12), pH(2.4)));
    SouringEstimate estimate = SouringEstimate.of(buffer, massPercent(12), pH(5));
    refused("target: pH 5.2", () -> estimate.lactateFormedTo(PH.of(5.2)));
    refused("lactate formed: 0 g/L", () -> estimate.pHForming(gPerL(0)));
    refused("lactate formed: 500 g/L", () -> estimate.pHForming(gPerL(500)));
  }

  private static void refused(String start, Executable input) {
    IllegalArgumentException exception = assertThrows(IllegalArgumentException.class, input);
    assertTrue(exception.getMessage().startsWith(start), exception.getMessage());
  }
}
