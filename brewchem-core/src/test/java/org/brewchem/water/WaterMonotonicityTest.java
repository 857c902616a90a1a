package org.brewchem.water;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.treatment.Treatments.blend;
import static org.brewchem.treatment.Treatments.dilution;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.CarbonateSystem;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;

class WaterMonotonicityTest {

  private static Water water(double calcium, double magnesium, double bicarbonate) {
    return WaterReport.reported()
        .calcium(mgPerL(calcium))
        .magnesium(mgPerL(magnesium))
        .sodium(mgPerL(10))
        .bicarbonate(mgPerL(bicarbonate))
        .sulfate(mgPerL(30))
        .chloride(mgPerL(20))
        .build()
        .water();
  }

  private static double residual(Water water) {
    return water.residualAlkalinity().value().inMilliequivalentsPerLitre();
  }

  private static double ionDifference(Water water) {
    return water.answer(WaterFigures.SUM_OF_CATIONS).number()
        - water.answer(WaterFigures.SUM_OF_ANIONS).number();
  }

  @Property(tries = 300)
  void eachIonMovesTheFiguresItsWay(
      @ForAll @DoubleRange(min = 0, max = 300) @Scale(6) double calcium,
      @ForAll @DoubleRange(min = 0, max = 100) @Scale(6) double magnesium,
      @ForAll @DoubleRange(min = 0, max = 600) @Scale(6) double bicarbonate,
      @ForAll @DoubleRange(min = 0.01, max = 100) @Scale(6) double more) {
    Water water = water(calcium, magnesium, bicarbonate);
    Water moreCalcium = water(calcium + more, magnesium, bicarbonate);
    Water moreMagnesium = water(calcium, magnesium + more, bicarbonate);
    Water moreBicarbonate = water(calcium, magnesium, bicarbonate + more);
    Hardness hardness = water.totalHardness().value();
    assertTrue(moreCalcium.totalHardness().value().compareTo(hardness) > 0);
    assertTrue(moreMagnesium.totalHardness().value().compareTo(hardness) > 0);
    assertEquals(hardness, moreBicarbonate.totalHardness().value());
    assertTrue(moreBicarbonate.alkalinity().value().compareTo(water.alkalinity().value()) > 0);
    assertEquals(water.alkalinity().value(), moreCalcium.alkalinity().value());
    assertTrue(residual(moreCalcium) < residual(water));
    assertTrue(residual(moreMagnesium) < residual(water));
    assertTrue(residual(moreBicarbonate) > residual(water));
    assertEquals(
        hardness.inMilliequivalentsPerLitre(),
        water.temporaryHardness().value().inMilliequivalentsPerLitre()
            + water.permanentHardness().value().inMilliequivalentsPerLitre(),
        1e-12);
  }

  @Property(tries = 300)
  void residualAlkalinityIsTheSameInEveryUnit(
      @ForAll @DoubleRange(min = 0, max = 30) @Scale(6) double alkalinity,
      @ForAll @DoubleRange(min = 0, max = 30) @Scale(6) double calcium,
      @ForAll @DoubleRange(min = 0, max = 30) @Scale(6) double magnesium) {
    double expected = alkalinity - calcium / 3.5 - magnesium / 7;
    assertEquals(
        expected,
        WaterFiguresTest.residual(
                CarbonateAlkalinity.ofGermanDegrees(alkalinity),
                Hardness.ofGermanDegrees(calcium),
                Hardness.ofGermanDegrees(magnesium))
            .inGermanDegrees(),
        1e-12);
    ResidualAlkalinity inCalciumCarbonate =
        WaterFiguresTest.residual(
            CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(alkalinity),
            Hardness.ofMilligramsPerLitreAsCaCO3(calcium),
            Hardness.ofMilligramsPerLitreAsCaCO3(magnesium));
    assertEquals(expected, inCalciumCarbonate.inMilligramsPerLitreAsCaCO3(), 1e-12);
  }

  @Property(tries = 300)
  void figuresOfABlendAreTheFiguresBlended(
      @ForAll @DoubleRange(min = 0, max = 300) @Scale(6) double calcium,
      @ForAll @DoubleRange(min = 0, max = 600) @Scale(6) double bicarbonate,
      @ForAll @DoubleRange(min = 0.01, max = 100) @Scale(6) double own,
      @ForAll @DoubleRange(min = 0.01, max = 100) @Scale(6) double volume) {
    Water one = water(calcium, 12, bicarbonate);
    Water other = water(40, 3, 90);
    Water blend = one.after(blend(litres(own), other, litres(volume)));
    double share = own / (own + volume);
    // Carbonate alkalinity mixes but for the hydrogen and hydroxide ions that react.
    assertEquals(share * residual(one) + (1 - share) * residual(other), residual(blend), 5e-3);
    assertEquals(
        share * ionDifference(one) + (1 - share) * ionDifference(other),
        ionDifference(blend),
        5e-3);
    assertEquals(residual(one) / 2, residual(one.after(dilution(VolumeRatio.of(1)))), 5e-3);
  }

  /** A water of known totals, reported by its ions, alkalinity and pH, gives its totals back. */
  @Property(tries = 100)
  void aSimulatedReportGivesItsCarbonDioxideBack(
      @ForAll @DoubleRange(min = 0, max = 4) @Scale(6) double calcium,
      @ForAll @DoubleRange(min = 0.2, max = 10) @Scale(6) double alkalinity,
      @ForAll @DoubleRange(min = 0.6, max = 1.5) @Scale(6) double carbonDioxidePerAlkalinity) {
    Solution water =
        Solution.at(celsius(25))
            .with(Ion.CALCIUM, mmolPerL(calcium))
            .with(Acid.CARBONIC, mmolPerL(alkalinity * carbonDioxidePerAlkalinity))
            .withInertCharge(mEqPerL(alkalinity - 2 * calcium));
    Water report =
        WaterReport.reported()
            .calcium(mmolPerL(calcium).times(Ion.CALCIUM.molarMass()))
            .alkalinityAsCaCO3(
                mgPerL(CarbonateSystem.carbonateAlkalinity(water).inMilligramsPerLitreAsCaCO3()))
            .pH(water.pH())
            .build()
            .water();
    assertEquals(
        alkalinity * carbonDioxidePerAlkalinity,
        report.totalCarbonDioxide().value().inMillimolesPerLitre(),
        1e-7 * alkalinity);
    assertEquals(
        water.charge(pH(5)).inMilliequivalentsPerLitre(),
        report.solution().charge(pH(5)).inMilliequivalentsPerLitre(),
        1e-6 * alkalinity);
  }
}
