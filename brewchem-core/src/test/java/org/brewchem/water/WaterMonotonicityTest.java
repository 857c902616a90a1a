package org.brewchem.water;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.solution.CarbonateSystem;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;

class WaterMonotonicityTest {

  private static WaterAnalysis water(double calcium, double magnesium, double bicarbonate) {
    return WaterAnalysis.reported()
        .calcium(mgPerL(calcium))
        .magnesium(mgPerL(magnesium))
        .sodium(mgPerL(10))
        .bicarbonate(mgPerL(bicarbonate))
        .sulfate(mgPerL(30))
        .chloride(mgPerL(20))
        .build();
  }

  private static double residual(WaterAnalysis water) {
    return water.residualAlkalinity().orElseThrow().inMilliequivalentsPerLitre();
  }

  @Property(tries = 300)
  void eachIonMovesTheFiguresItsWay(
      @ForAll @DoubleRange(min = 0, max = 300) @Scale(6) double calcium,
      @ForAll @DoubleRange(min = 0, max = 100) @Scale(6) double magnesium,
      @ForAll @DoubleRange(min = 0, max = 600) @Scale(6) double bicarbonate,
      @ForAll @DoubleRange(min = 0.01, max = 100) @Scale(6) double more) {
    WaterAnalysis water = water(calcium, magnesium, bicarbonate);
    WaterAnalysis moreCalcium = water(calcium + more, magnesium, bicarbonate);
    WaterAnalysis moreMagnesium = water(calcium, magnesium + more, bicarbonate);
    WaterAnalysis moreBicarbonate = water(calcium, magnesium, bicarbonate + more);
    Hardness hardness = water.totalHardness().orElseThrow();
    assertTrue(moreCalcium.totalHardness().orElseThrow().compareTo(hardness) > 0);
    assertTrue(moreMagnesium.totalHardness().orElseThrow().compareTo(hardness) > 0);
    assertEquals(hardness, moreBicarbonate.totalHardness().orElseThrow());
    assertTrue(
        moreBicarbonate.alkalinity().orElseThrow().compareTo(water.alkalinity().orElseThrow()) > 0);
    assertEquals(water.alkalinity(), moreCalcium.alkalinity());
    assertTrue(residual(moreCalcium) < residual(water));
    assertTrue(residual(moreMagnesium) < residual(water));
    assertTrue(residual(moreBicarbonate) > residual(water));
    assertEquals(
        hardness.inMilliequivalentsPerLitre(),
        water.temporaryHardness().orElseThrow().inMilliequivalentsPerLitre()
            + water.permanentHardness().orElseThrow().inMilliequivalentsPerLitre(),
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
        KolbachResidualAlkalinity.of(
                CarbonateAlkalinity.ofGermanDegrees(alkalinity),
                Hardness.ofGermanDegrees(calcium),
                Hardness.ofGermanDegrees(magnesium))
            .value()
            .inGermanDegrees(),
        1e-12);
    ResidualAlkalinity inCalciumCarbonate =
        KolbachResidualAlkalinity.of(
                CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(alkalinity),
                Hardness.ofMilligramsPerLitreAsCaCO3(calcium),
                Hardness.ofMilligramsPerLitreAsCaCO3(magnesium))
            .value();
    assertEquals(expected, inCalciumCarbonate.inMilligramsPerLitreAsCaCO3(), 1e-12);
  }

  @Property(tries = 300)
  void figuresOfABlendAreTheFiguresBlended(
      @ForAll @DoubleRange(min = 0, max = 300) @Scale(6) double calcium,
      @ForAll @DoubleRange(min = 0, max = 600) @Scale(6) double bicarbonate,
      @ForAll @DoubleRange(min = 0.01, max = 100) @Scale(6) double own,
      @ForAll @DoubleRange(min = 0.01, max = 100) @Scale(6) double volume) {
    WaterAnalysis one = water(calcium, 12, bicarbonate);
    WaterAnalysis other = water(40, 3, 90);
    WaterAnalysis blend = one.mixed(litres(own), other, litres(volume));
    double share = own / (own + volume);
    assertEquals(share * residual(one) + (1 - share) * residual(other), residual(blend), 1e-11);
    assertEquals(
        share * one.ionBalance().difference().inMilliequivalentsPerLitre()
            + (1 - share) * other.ionBalance().difference().inMilliequivalentsPerLitre(),
        blend.ionBalance().difference().inMilliequivalentsPerLitre(),
        1e-11);
    assertEquals(residual(one) / 2, residual(one.diluted(2)), 1e-11);
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
    WaterAnalysis report =
        WaterAnalysis.reported()
            .calcium(mmolPerL(calcium).times(Ion.CALCIUM.molarMass()))
            .alkalinityAsCaCO3(
                mgPerL(CarbonateSystem.carbonateAlkalinity(water).inMilligramsPerLitreAsCaCO3()))
            .pH(water.pH())
            .build();
    assertEquals(
        alkalinity * carbonDioxidePerAlkalinity,
        report.totalCarbonDioxide().orElseThrow().inMillimolesPerLitre(),
        1e-7 * alkalinity);
    assertEquals(
        water.charge(pH(5)).inMilliequivalentsPerLitre(),
        report.toSolution(celsius(25)).charge(pH(5)).inMilliequivalentsPerLitre(),
        1e-6 * alkalinity);
  }
}
