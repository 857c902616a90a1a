package org.brewchem.checks;

import java.util.Map;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibria;
import org.brewchem.substance.Component;

/** Mixtures of stated totals, as tables give them. */
public final class Mixture {

  private Mixture() {}

  /**
   * Returns a work space for a mixture.
   *
   * @param totals total of each component, in mol per kg of water
   * @param celsius temperature, 0 to 100 °C
   * @param chemistry the chemistry
   */
  public static Equilibria of(Map<Component, Double> totals, double celsius, Chemistry chemistry) {
    Equilibria equilibria =
        Equilibria.of(totals.keySet(), Temperature.ofCelsius(celsius), chemistry);
    totals.forEach((component, total) -> equilibria.setTotal(equilibria.indexOf(component), total));
    return equilibria;
  }
}
