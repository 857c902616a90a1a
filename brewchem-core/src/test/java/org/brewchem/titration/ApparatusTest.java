package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mg;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.quantity.PH;
import org.brewchem.quantity.TemperatureDifference;
import org.junit.jupiter.api.Test;

class ApparatusTest {

  private static double titrated(Apparatus apparatus, String row) {
    return Titrant.sodiumHydroxide()
        .standardised(apparatus, Weighing.khp(g(0.4084), mL(20)), Weighing.khp(g(0.4084), mL(20)))
        .titrate(mL(50))
        .with(apparatus)
        .to(PH.of(8.2))
        .took(mL(10), mL(10))
        .acidity()
        .budget()
        .row(row)
        .contribution();
  }

  @Test
  void eachToleranceStandsWhereItWasStatedAndTheOthersStay() {
    Apparatus usual = Apparatus.usual();
    Apparatus other =
        usual
            .withBuretteTolerance(mL(0.05))
            .withPipetteTolerance(mL(0.07))
            .withBalanceTolerance(mg(0.5))
            .withEndPointReading(0.03)
            .withTemperatureSpread(TemperatureDifference.ofKelvin(-3))
            .withRepeatability(0.004);
    assertEquals(0.05, other.buretteTolerance().inMillilitres());
    assertEquals(0.07, other.pipetteTolerance(mL(50)).inMillilitres());
    assertEquals(0.5, other.balanceTolerance().inMilligrams(), 1e-12);
    assertEquals(0.03, other.endPointReading());
    assertEquals(3, other.temperatureSpread().inKelvin());
    assertEquals(0.004, other.relativeRepeatability().orElseThrow());
    assertEquals(
        "burette 0.05000 mL, pipette 0.07000 mL, balance 0.5000 mg, pH reading u 0.03000,"
            + " temperature 3.000 K, repeatability 0.40 %",
        other.toString());
    assertTrue(usual.toString().endsWith("repeatability not known"), usual.toString());
    assertTrue(usual.relativeRepeatability().isEmpty());
    assertTrue(usual.toString().contains("pipette of class A"), usual.toString());
  }

  /** Limits of one-mark pipettes of class A by ISO 648, from memory. */
  @Test
  void aPipetteOfClassAIsTheSmallestThatHoldsTheSample() {
    Apparatus usual = Apparatus.usual();
    assertEquals(0.05, usual.pipetteTolerance(mL(50)).inMillilitres());
    assertEquals(0.03, usual.pipetteTolerance(mL(25)).inMillilitres());
    assertEquals(0.05, usual.pipetteTolerance(mL(25.1)).inMillilitres());
    assertEquals(0.08, usual.pipetteTolerance(mL(100)).inMillilitres());
    assertEquals(0.2, usual.pipetteTolerance(mL(200)).inMillilitres(), 1e-12);
  }

  /** Half widths count as sqrt(1/6) of a triangle and sqrt(1/3) of a rectangle (GUM, 4.3). */
  @Test
  void aPoorerPipetteCountsInTheBudgetOfTheAcidity() {
    double usual = titrated(Apparatus.usual(), "sample");
    double poor = titrated(Apparatus.usual().withPipetteTolerance(mL(0.5)), "sample");
    // The slope of a budget is a difference quotient.
    assertEquals(10, poor / usual, 1e-5);
    // 10 mL of 0.1 mol/L in 50 mL are 20 mEq/L; 0.5 mL in 50 is 1 %, of which a triangle is 1/sqrt
    // 6.
    assertEquals(20 * 0.01 / Math.sqrt(6), poor, 2e-4);
  }

  @Test
  void whatIsNoToleranceIsRefused() {
    Apparatus usual = Apparatus.usual();
    assertThrows(IllegalArgumentException.class, () -> usual.withEndPointReading(-0.01));
    assertThrows(IllegalArgumentException.class, () -> usual.withRepeatability(0));
  }
}
