package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.atm;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.junit.jupiter.api.Test;

class MineralEquilibriumTest {

  private static Solution water(double calcium, double alkalinity, double carbonDioxide) {
    return Solution.at(celsius(20))
        .with(Ion.CALCIUM, mmolPerKg(calcium))
        .with(Ion.CHLORIDE, mmolPerKg(Math.max(2 * calcium - alkalinity, 0)))
        .with(Ion.SODIUM, mmolPerKg(Math.max(alkalinity - 2 * calcium, 0)))
        .with(Acid.CARBONIC, mmolPerKg(carbonDioxide));
  }

  @Provide
  Arbitrary<Mineral> minerals() {
    return Arbitraries.of(Mineral.table());
  }

  @Provide
  Arbitrary<Level> levels() {
    return Arbitraries.of(Level.values());
  }

  @Property(tries = 300)
  void withAnExcessTheIndexIsNilAndNothingIsLost(
      @ForAll("minerals") Mineral mineral,
      @ForAll("levels") Level level,
      @ForAll @DoubleRange(min = 0, max = 90) double celsius,
      @ForAll @DoubleRange(min = 0, max = 5) double calcium,
      @ForAll @DoubleRange(min = 0, max = 10) double phosphate,
      @ForAll @DoubleRange(min = 0, max = 10) double carbonDioxide,
      @ForAll @DoubleRange(min = 0, max = 30) double potassium,
      @ForAll @DoubleRange(min = 0, max = 2) double citrate) {
    Solution before =
        Solution.at(celsius(celsius))
            .under(level)
            .with(Ion.CALCIUM, mmolPerKg(calcium))
            .with(Acid.PHOSPHORIC, mmolPerKg(phosphate))
            .with(Acid.CARBONIC, mmolPerKg(carbonDioxide))
            .with(Acid.CITRIC, mmolPerKg(citrate))
            .with(Ion.POTASSIUM, mmolPerKg(potassium));
    MineralEquilibrium after = MineralEquilibrium.of(before, mineral);
    assertEquals(0, after.solution().equilibrium().saturationIndex(mineral).orElseThrow(), 1e-9);
    double made = after.precipitatedMillimolesPerLitre() / 1000;
    mineral
        .components()
        .forEach(
            (component, moles) ->
                assertEquals(
                    before.total(component).inMolesPerLitre(),
                    after.solution().total(component).inMolesPerLitre() + moles * made,
                    1e-15 + 1e-13 * moles * Math.abs(made)));
    assertEquals(
        0,
        MineralEquilibrium.of(after.solution(), mineral).precipitatedMillimolesPerLitre(),
        1e-6 * (Math.abs(made) + 1e-3));
  }

  @Property(tries = 200)
  void openToAGasTheIndexIsNilToo(
      @ForAll @DoubleRange(min = 0, max = 90) double celsius,
      @ForAll @DoubleRange(min = -5, max = 0.3) double log10Atmospheres,
      @ForAll @DoubleRange(min = 0.1, max = 5) double calcium,
      @ForAll @DoubleRange(min = -4, max = 10) double alkalinity) {
    Solution before = water(calcium, alkalinity, 0).heldAt(celsius(celsius));
    OpenSolution open = OpenSolution.of(before, atm(Math.pow(10, log10Atmospheres)));
    MineralEquilibrium after = MineralEquilibrium.of(open, Mineral.CALCITE);
    Equilibrium state = after.solution().equilibrium();
    assertEquals(0, state.saturationIndex(Mineral.CALCITE).orElseThrow(), 1e-9);
    assertEquals(
        log10Atmospheres, Math.log10(state.partialPressure(open.gas()).inAtmospheres()), 1e-9);
    assertEquals(
        before.total(Component.CALCIUM).inMolesPerLitre(),
        after.solution().total(Component.CALCIUM).inMolesPerLitre()
            + after.precipitatedMillimolesPerLitre() / 1000,
        1e-14);
  }

  @Property(tries = 100)
  void tracesInALyeSettle(@ForAll @DoubleRange(min = -12, max = -1) double log10Trace) {
    Solution lye =
        Solution.at(celsius(0))
            .with(Ion.POTASSIUM, mmolPerKg(14.44))
            .with(Acid.PHOSPHORIC, mmolPerKg(0.09))
            .with(Mineral.CALCITE, mmolPerKg(1000 * Math.pow(10, log10Trace)));
    assertTrue(lye.pH().value() > 12.5);
  }

  /** Source: definition; the index of a typed constant written out at level ideal. */
  @Test
  void theIndexIsTheProductOfTheActivitiesOverTheConstant() {
    Solution solution =
        Solution.textbook()
            .with(Ion.CALCIUM, mmolPerKg(2))
            .with(Acid.PHOSPHORIC, mmolPerKg(3))
            .with(Ion.POTASSIUM, mmolPerKg(1));
    Equilibrium state = solution.equilibrium();
    double product =
        5 * Math.log10(2e-3)
            + 3 * Math.log10(state.species("PO43-").orElseThrow().activity())
            + state.pH().value();
    Mineral typed = Mineral.HYDROXYAPATITE.with(EquilibriumConstant.ofLog10(-40));
    assertEquals(product + 40, state.saturationIndex(typed).orElseThrow(), 1e-12);
  }

  @Test
  void withoutAComponentThereIsNoIndex() {
    Solution solution = Solution.at(celsius(20)).with(Ion.CALCIUM, mmolPerKg(2));
    assertEquals(OptionalDouble.empty(), solution.equilibrium().saturationIndex(Mineral.CALCITE));
    assertEquals(
        OptionalDouble.empty(),
        solution.with(Acid.CARBONIC, mmolPerKg(0)).equilibrium().saturationIndex(Mineral.CALCITE));
  }

  /**
   * Source: pure water over calcite without a gas phase has pH 9.9 and 0.12 mmol/L of calcium, as
   * textbooks of aquatic chemistry print it (from memory).
   */
  @Test
  void calciteDissolvesInPureWaterAsTextbooksSay() {
    MineralEquilibrium after = MineralEquilibrium.of(Solution.at(celsius(25)), Mineral.CALCITE);
    assertEquals(9.9, after.pH().value(), 0.05);
    assertEquals(-0.12, after.precipitatedMillimolesPerLitre(), 0.01);
  }

  /**
   * Source: pure water over calcite in air (10^-3.5 atm of CO2) has pH 8.3 and about 0.5 mmol/L of
   * calcium, as textbooks of aquatic chemistry print it (from memory).
   */
  @Test
  void calciteDissolvesInWaterUnderAirAsTextbooksSay() {
    MineralEquilibrium after =
        MineralEquilibrium.of(
            OpenSolution.of(Solution.at(celsius(25)), atm(Math.pow(10, -3.5))), Mineral.CALCITE);
    assertEquals(8.3, after.pH().value(), 0.05);
    assertEquals(-0.5, after.precipitatedMillimolesPerLitre(), 0.05);
  }

  /** Source: solubility of gypsum at 25 °C, 15.2 mmol/kg (handbooks, from memory). */
  @Test
  void gypsumDissolvesAsHandbooksSay() {
    MineralEquilibrium after = MineralEquilibrium.of(Solution.at(celsius(25)), Mineral.GYPSUM);
    assertEquals(-15.2, after.precipitatedMillimolesPerLitre(), 0.5);
  }

  @Test
  void whatIsNotSupersaturatedDoesNotPrecipitate() {
    Solution soft = water(0.2, 0.3, 0.4);
    MineralEquilibrium after = MineralEquilibrium.precipitating(soft, Mineral.CALCITE);
    assertSame(soft, after.solution());
    assertEquals(0, after.precipitatedMillimolesPerLitre());
    assertTrue(MineralEquilibrium.of(soft, Mineral.CALCITE).precipitatedMillimolesPerLitre() < 0);
    assertSame(soft, MineralEquilibrium.precipitating(soft, Mineral.GYPSUM).solution());
  }

  @Test
  void limeSoftensAHardWater() {
    Solution hard = water(2.5, 5, 5.5);
    Solution limed = hard.with(Base.CALCIUM_HYDROXIDE, mmolPerKg(2.6));
    MineralEquilibrium softened = MineralEquilibrium.precipitating(limed, Mineral.CALCITE);
    assertEquals(Mineral.CALCITE, softened.mineral());
    assertTrue(softened.solution().total(Component.CALCIUM).inMillimolesPerLitre() < 0.7);
    assertTrue(softened.precipitatedMillimolesPerLitre() > 4.4);
    assertTrue(softened.pH().value() < limed.pH().value());
  }

  @Test
  void boilingDrivesCarbonDioxideOutAndCalciteDown() {
    MineralEquilibrium boiled =
        MineralEquilibrium.precipitating(
            OpenSolution.of(water(2.5, 5, 5.5).heldAt(celsius(95)), atm(1e-3)), Mineral.CALCITE);
    assertEquals(SolutionCode.CONSTANT_BEYOND_RANGE, boiled.notices().get(0).code());
    assertEquals(
        List.of(), MineralEquilibrium.precipitating(water(2.5, 5, 5.5), Mineral.CALCITE).notices());
    assertEquals(
        5.0
            - 2
                * (2.5
                    - boiled.solution().totals().get(Component.CALCIUM).inMillimolesPerKilogram()),
        2 * boiled.solution().totals().get(Component.CALCIUM).inMillimolesPerKilogram(),
        1e-9);
    assertTrue(boiled.solution().totals().get(Component.CALCIUM).inMillimolesPerKilogram() < 1);
  }

  @Test
  void whatNeverSaturatesSaysSo() {
    Mineral soluble = Mineral.GYPSUM.with(EquilibriumConstant.ofLog10(30));
    NoSolutionException thrown =
        assertThrows(
            NoSolutionException.class, () -> MineralEquilibrium.of(Solution.textbook(), soluble));
    assertTrue(thrown.getMessage().startsWith("equilibrium with gypsum"), thrown.getMessage());
  }

  @Test
  void itSaysWhatHappened() {
    assertTrue(
        MineralEquilibrium.of(water(2.5, 5, 5.5), Mineral.CALCITE)
            .toString()
            .contains("mmol/L of calcite precipitated; left: 20 °C"));
  }
}
