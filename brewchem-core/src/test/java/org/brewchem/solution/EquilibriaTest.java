package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Map;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class EquilibriaTest {

  private static final Map<Component, Double> LIQUID =
      Map.of(
          Component.CALCIUM, 2.0,
          Component.SODIUM, 1.0,
          Component.CHLORIDE, 1.5,
          Component.SULFATE, 0.5,
          Component.CARBONATE, 3.0,
          Component.LACTATE, 0.0);

  private static Equilibria liquid(Level level) {
    Equilibria equilibria = Equilibria.of(LIQUID.keySet(), celsius(25), Chemistry.of(level));
    LIQUID.forEach(
        (component, millimoles) ->
            equilibria.setTotal(equilibria.indexOf(component), millimoles / 1000));
    equilibria.setInertCharge(0.0002);
    return equilibria;
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void chargesOfTheComponentsAddUpToTheChargeOfTheMixture(Level level) {
    Equilibria equilibria = liquid(level);
    for (double at : new double[] {3, 6, 8, 11}) {
      double whole = equilibria.chargeAt(at);
      double sum = 0.0002;
      for (int i = 0; i < equilibria.components().size(); i++) {
        sum += equilibria.chargeOf(i);
      }
      for (Species species : equilibria.species()) {
        if (species.component().isEmpty()) {
          int metalCharge = species.metal().map(Component::chargeWithoutProtons).orElse(0);
          sum += (species.charge() - metalCharge) * species.molality().inMolesPerKilogram();
        }
      }
      assertEquals(whole, sum, 1e-15);
    }
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void aDoseIntoAWorkSpaceIsThatIntoTheSolution(Level level) {
    Equilibria equilibria = liquid(level);
    double before = equilibria.pH();
    double[] added = new double[LIQUID.size()];
    added[equilibria.indexOf(Component.LACTATE)] = 1;
    Solution solution = Solution.at(celsius(25)).under(level);
    for (Map.Entry<Component, Double> entry : LIQUID.entrySet()) {
      solution = solution.with(entry.getKey(), mmolPerKg(entry.getValue()));
    }
    solution = solution.withInertCharge(mEqPerL(0.2 * solution.kilogramsPerLitre()));
    assertEquals(
        solution.doseOf(Acid.LACTIC, pH(5.5)).inMolesPerKilogram(),
        equilibria.doseTo(added, pH(5.5)),
        1e-12);
    assertEquals(before, equilibria.pH(), 1e-12);
    assertThrows(NoSolutionException.class, () -> equilibria.doseTo(added, pH(9)));
    assertEquals(before, equilibria.pH(), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> equilibria.indexOf(Component.CITRATE));
  }
}
