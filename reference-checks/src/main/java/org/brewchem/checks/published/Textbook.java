package org.brewchem.checks.published;

import java.util.LinkedHashMap;
import java.util.Map;
import org.brewchem.checks.Mixture;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibria;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.Solute;

/**
 * A solution as a textbook exercise has it: level ideal, pKw 14.00, and a litre read as a kilogram.
 */
final class Textbook {

  private final double millilitres;
  private final ConstantSet constants;
  private final Map<Component, Double> millimoles;

  private Textbook(double millilitres, ConstantSet constants, Map<Component, Double> millimoles) {
    this.millilitres = millilitres;
    this.constants = constants;
    this.millimoles = millimoles;
  }

  /** Returns pure water of a volume, under the library's default constants. */
  static Textbook in(double millilitres) {
    return in(millilitres, ConstantSet.standard());
  }

  /** Returns pure water of a volume, under the constants that the exercise prints. */
  static Textbook in(double millilitres, ConstantSet constants) {
    return new Textbook(millilitres, constants, Map.of());
  }

  /** Returns the same volume with a solute added. */
  Textbook with(Solute solute, double amountMillimoles) {
    Map<Component, Double> sum = new LinkedHashMap<>(millimoles);
    solute
        .components()
        .forEach((component, moles) -> sum.merge(component, moles * amountMillimoles, Double::sum));
    return new Textbook(millilitres, constants, sum);
  }

  double pH() {
    return equilibria().pH();
  }

  /** Returns the buffer capacity at a pH, in mol/L per pH. */
  double bufferCapacity(double pH) {
    Equilibria equilibria = equilibria();
    equilibria.chargeAt(pH);
    return equilibria.bufferCapacity();
  }

  /** Returns the share of a component that holds so many protons at the pH of the solution. */
  double fraction(Component component, int protons) {
    Equilibria equilibria = equilibria();
    equilibria.pH();
    double form =
        equilibria.species().stream()
            .filter(species -> species.name().equals(component.form(protons)))
            .mapToDouble(species -> species.molality().inMolesPerKilogram())
            .sum();
    return form * millilitres / millimoles.getOrDefault(component, 0.0);
  }

  private Equilibria equilibria() {
    Map<Component, Double> totals = new LinkedHashMap<>();
    millimoles.forEach((component, amount) -> totals.put(component, amount / millilitres));
    return Mixture.of(totals, 25, Chemistry.textbook(14).withConstants(constants));
  }
}
