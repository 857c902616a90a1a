package org.brewchem.substance;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;

/**
 * How a formula splits into its components without protons, H+ and H2O: {@code formula = sum of
 * components + hydrogenIons H+ + waters H2O}. Both numbers follow from charge and atoms, and the
 * atoms that are then left over must be none.
 */
record Stoichiometry(double hydrogenIons, double waters) {

  private static final double TOLERANCE = 1e-9;

  /** Returns two entries in the order given, which {@code Map.of} does not keep. */
  static Map<Component, Double> ordered(
      Component first, double molesOfFirst, Component second, double molesOfSecond) {
    Map<Component, Double> map = new LinkedHashMap<>();
    map.put(first, molesOfFirst);
    map.put(second, molesOfSecond);
    return map;
  }

  /** Returns a checked, unmodifiable copy in the order given. */
  static Map<Component, Double> checked(String name, Map<Component, Double> components) {
    Map<Component, Double> copy = new LinkedHashMap<>();
    components.forEach(
        (component, moles) ->
            copy.put(component, Checks.positive(name + ", " + component.key(), moles, "mol/mol")));
    if (copy.isEmpty()) {
      throw new IllegalArgumentException(Excerpt.of(name) + ": at least one component is needed");
    }
    return Collections.unmodifiableMap(copy);
  }

  /**
   * Splits a formula.
   *
   * @throws IllegalArgumentException if formula and components do not hold the same atoms, or a
   *     component has no formula
   */
  static Stoichiometry of(String name, Formula formula, Map<Component, Double> components) {
    double charge = formula.charge();
    for (Map.Entry<Component, Double> entry : components.entrySet()) {
      charge -= entry.getValue() * entry.getKey().chargeWithoutProtons();
    }
    double waters = excess(name, Element.of("O"), formula, components);
    double hydrogenIons = charge;
    Set<Element> elements = new LinkedHashSet<>(formula.counts().keySet());
    components
        .keySet()
        .forEach(component -> elements.addAll(formulaOf(name, component).counts().keySet()));
    elements.add(Element.of("H"));
    elements.remove(Element.of("O"));
    for (Element element : elements) {
      double excess = excess(name, element, formula, components);
      if (element.symbol().equals("H")) {
        excess -= hydrogenIons + 2.0 * waters;
      }
      if (Math.abs(excess) > TOLERANCE) {
        throw new IllegalArgumentException(
            Excerpt.of(name)
                + ": formula "
                + Excerpt.of(formula.text())
                + " and components "
                + Excerpt.of(components.keySet().toString(), 200)
                + " do not hold the same amount of "
                + element.name()
                + " at the same charge");
      }
    }
    return new Stoichiometry(hydrogenIons, waters);
  }

  private static double excess(
      String name, Element element, Formula formula, Map<Component, Double> components) {
    double excess = formula.count(element);
    for (Map.Entry<Component, Double> entry : components.entrySet()) {
      excess -= entry.getValue() * formulaOf(name, entry.getKey()).count(element);
    }
    return excess;
  }

  private static Formula formulaOf(String name, Component component) {
    return component
        .formula()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    Excerpt.of(name)
                        + ": component "
                        + Excerpt.of(component.key())
                        + " has no formula to check against"));
  }
}
