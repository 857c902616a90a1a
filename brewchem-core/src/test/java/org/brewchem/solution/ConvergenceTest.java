package org.brewchem.solution;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Acids without strong ions, whose ionic strength is far from what the totals suggest. */
class ConvergenceTest {

  private static final List<Component> ACIDS =
      List.of(
          Component.LACTATE,
          Component.ACETATE,
          Component.PHOSPHATE,
          Component.CARBONATE,
          Component.TARTRATE,
          Component.CITRATE,
          Component.SULFATE,
          Component.BORATE);

  @ParameterizedTest
  @ValueSource(doubles = {1e-5, 1e-3, 0.02, 0.1, 0.5, 1})
  void acidsAloneAreSolvedAtAnyPHAndTemperature(double total) {
    for (Component acid : ACIDS) {
      for (double celsius = 0; celsius <= 100; celsius += 25) {
        Equilibria cold = of(acid, total, celsius);
        double own = assertDoesNotThrow(cold::pH, () -> acid + " " + total);
        for (double pH = 0; pH <= 14; pH += 0.5) {
          double at = pH;
          Equilibria fresh = of(acid, total, celsius);
          assertDoesNotThrow(() -> fresh.chargeAt(at), () -> acid + " " + total + ", pH " + at);
        }
        cold.chargeAt(own + 3);
        assertEquals(own, cold.pH(), 1e-10, acid::key);
      }
    }
  }

  private static Equilibria of(Component acid, double total, double celsius) {
    Equilibria equilibria =
        Equilibria.of(List.of(acid), Temperature.ofCelsius(celsius), Chemistry.of(Level.ACTIVITY));
    equilibria.setTotal(equilibria.indexOf(acid), total);
    return equilibria;
  }
}
