package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.atm;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.kPa;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.Pressure;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.Gas;
import org.brewchem.substance.Ion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class OpenSolutionTest {

  private static final Pressure AIR = atm(4e-4);

  private static Solution hardWater(double celsius) {
    return Solution.at(celsius(celsius))
        .with(Ion.CALCIUM, mmolPerKg(2.5))
        .with(Ion.MAGNESIUM, mmolPerKg(0.5))
        .with(Ion.SODIUM, mmolPerKg(1))
        .with(Ion.CHLORIDE, mmolPerKg(2));
  }

  /** Source: the charge balance of carbonic acid in water, written out. */
  @Test
  void waterUnderCarbonDioxideHasThePhOfItsChargeBalance() {
    Solution water = Solution.textbook();
    double h = Math.pow(10, -OpenSolution.of(water, AIR).pH().value());
    double dissolved = 4e-4 * Math.pow(10, Gas.CARBON_DIOXIDE.solubility().log10(298.15));
    double k1 = constant(0);
    double k2 = constant(1);
    double bicarbonate = k1 * dissolved / h;
    assertEquals(h, 1e-14 / h + bicarbonate + 2 * k2 * bicarbonate / h, 1e-12 * h);
    assertEquals(
        dissolved + bicarbonate + k2 * bicarbonate / h,
        OpenSolution.of(water, AIR)
            .solution()
            .totals()
            .get(Component.CARBONATE)
            .inMolesPerKilogram(),
        1e-15);
  }

  private static double constant(int step) {
    return Math.pow(
        10, Chemistry.standard().constants().of(Component.CARBONATE).get(step).log10(298.15));
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void closedItKeepsPhAndPressure(Level level) {
    OpenSolution open = OpenSolution.of(hardWater(20).under(level), kPa(80));
    Solution closed = open.solution();
    assertEquals(open.pH().value(), closed.pH().value(), 1e-11);
    assertEquals(
        80, closed.equilibrium().partialPressure(Gas.CARBON_DIOXIDE).inKilopascals(), 80 * 1e-10);
  }

  @Test
  void theCarbonDioxideThatItHeldBeforeDoesNotCount() {
    Solution carbonated = hardWater(20).with(Acid.CARBONIC, mmolPerKg(100));
    assertEquals(OpenSolution.of(hardWater(20), AIR).pH(), OpenSolution.of(carbonated, AIR).pH());
  }

  @Property(tries = 200)
  void phFallsAsThePressureRises(
      @ForAll @DoubleRange(min = -6, max = 0.5) double log10Atmospheres,
      @ForAll @DoubleRange(min = 0.05, max = 0.5) double more,
      @ForAll @DoubleRange(min = 0, max = 90) double celsius) {
    Solution water = hardWater(celsius);
    double low = OpenSolution.of(water, atm(Math.pow(10, log10Atmospheres))).pH().value();
    double high = OpenSolution.of(water, atm(Math.pow(10, log10Atmospheres + more))).pH().value();
    assertTrue(high < low, low + " to " + high);
  }

  @Property(tries = 200)
  void aMixtureWithManyPairsSettlesUnderEveryPressure(
      @ForAll @DoubleRange(min = -5, max = 0.5) double log10Atmospheres,
      @ForAll @DoubleRange(min = 0, max = 10) double phosphate,
      @ForAll @DoubleRange(min = 0, max = 2) double citrate,
      @ForAll @DoubleRange(min = 0, max = 15) double potassium,
      @ForAll @DoubleRange(min = 0, max = 90) double celsius) {
    Solution mixture =
        hardWater(celsius)
            .with(Acid.PHOSPHORIC, mmolPerKg(phosphate))
            .with(Acid.CITRIC, mmolPerKg(citrate))
            .with(Ion.POTASSIUM, mmolPerKg(potassium));
    Pressure pressure = atm(Math.pow(10, log10Atmospheres));
    OpenSolution open = OpenSolution.of(mixture, pressure);
    assertEquals(open.pH().value(), open.solution().pH().value(), 1e-9);
  }

  @Property(tries = 100)
  void aDoseReachesItsTargetWhileTheGasFollows(
      @ForAll @DoubleRange(min = 3.5, max = 5.5) double target,
      @ForAll @DoubleRange(min = -4, max = -0.5) double log10Atmospheres) {
    Solution water = hardWater(25);
    Pressure pressure = atm(Math.pow(10, log10Atmospheres));
    Molality dose = OpenSolution.of(water, pressure).doseOf(Acid.LACTIC, pH(target));
    Solution dosed = water.with(Acid.LACTIC, dose);
    assertEquals(target, OpenSolution.of(dosed, pressure).pH().value(), 1e-9);
  }

  @Test
  void equivalentsAreThoseOfTheDose() {
    OpenSolution open = OpenSolution.of(hardWater(25).under(Level.ACTIVITY), AIR);
    Molality dose = open.doseOf(Acid.HYDROCHLORIC, pH(5));
    assertEquals(
        -dose.inMolesPerKilogram() * hardWater(25).kilogramsPerLitre(),
        open.equivalents(open.pH(), pH(5)).inEquivalentsPerLitre(),
        1e-12);
  }

  @Test
  void anotherSolubilityIsHeldTo() {
    Gas typed = Gas.CARBON_DIOXIDE.with(EquilibriumConstant.ofLog10(-1.5));
    OpenSolution open = OpenSolution.of(hardWater(25), typed, atm(0.1));
    assertEquals(
        Math.pow(10, -2.5), open.equilibrium().species("CO2(aq)").orElseThrow().activity(), 1e-14);
    assertEquals(typed, open.gas());
    assertEquals(atm(0.1), open.partialPressure());
  }

  @Test
  void aSolubilityBeyondItsRangeIsFlagged() {
    assertEquals(
        SolutionCode.CONSTANT_BEYOND_RANGE,
        OpenSolution.of(hardWater(100), AIR).notices().get(0).code());
    assertEquals(List.of(), OpenSolution.of(hardWater(65), AIR).notices());
  }

  @Test
  void noPressureIsRefused() {
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> OpenSolution.of(hardWater(20), kPa(0)));
    assertEquals(
        "partial pressure of carbon dioxide: 0 kPa is not possible; more than 0 is allowed",
        thrown.getMessage());
  }
}
