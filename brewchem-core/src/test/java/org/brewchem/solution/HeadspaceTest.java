package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Gas;
import org.brewchem.substance.Ion;
import org.junit.jupiter.api.Test;

class HeadspaceTest {

  private static Solution carbonated(double strongBase, double carbonDioxide, double celsius) {
    return Solution.at(celsius(celsius))
        .with(Ion.SODIUM, mmolPerKg(strongBase))
        .with(Ion.CALCIUM, mmolPerKg(0.5))
        .with(Acid.CARBONIC, mmolPerKg(carbonDioxide));
  }

  @Property(tries = 200)
  void carbonDioxideIsConservedAndBothPhasesAgree(
      @ForAll @DoubleRange(min = 0, max = 20) double strongBase,
      @ForAll @DoubleRange(min = 0.01, max = 120) double carbonDioxide,
      @ForAll @DoubleRange(min = 0, max = 90) double celsius,
      @ForAll @DoubleRange(min = 0.01, max = 100) double headspace) {
    Solution before = carbonated(strongBase, carbonDioxide, celsius);
    Headspace after = Headspace.over(before, litres(2), litres(headspace));
    double moles = 2 * before.total(Component.CARBONATE).inMolesPerLitre();
    assertEquals(
        moles,
        2 * after.solution().total(Component.CARBONATE).inMolesPerLitre() + after.inGas().inMoles(),
        1e-12 * moles);
    assertEquals(
        after.solution().equilibrium().partialPressure(Gas.CARBON_DIOXIDE),
        after.partialPressure());
    assertTrue(after.pH().value() >= before.pH().value() - 1e-9);
    assertEquals(before.inertCharge(), after.solution().inertCharge());
  }

  /** Source: the ideal gas law with the molar volume of 22.414 L/mol at 0 °C and 1 atm. */
  @Test
  void theHeadspaceHoldsAnIdealGas() {
    Headspace after = Headspace.over(carbonated(1, 100, 0), litres(1), litres(0.05));
    assertEquals(
        after.partialPressure().inAtmospheres() * 0.05 / 22.41396954,
        after.inGas().inMoles(),
        1e-9 * after.inGas().inMoles());
  }

  @Test
  void withoutHeadspaceAllStaysDissolved() {
    Solution before = carbonated(1, 100, 10);
    Headspace after = Headspace.over(before, litres(1), litres(0));
    assertEquals(before.totals(), after.solution().totals());
    assertEquals(0, after.inGas().inMoles());
  }

  @Test
  void withoutCarbonDioxideThereIsNone() {
    Solution before = Solution.at(celsius(10)).with(Ion.SODIUM, mmolPerKg(1));
    Headspace after = Headspace.over(before, litres(1), litres(1));
    assertEquals(0, after.partialPressure().inKilopascals());
    assertEquals(before, after.solution());
  }

  @Test
  void withoutSolutionThereIsNoEquilibrium() {
    assertThrows(
        IllegalArgumentException.class,
        () -> Headspace.over(carbonated(1, 100, 10), litres(0), litres(1)));
  }
}
