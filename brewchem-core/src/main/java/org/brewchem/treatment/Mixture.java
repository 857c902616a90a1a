package org.brewchem.treatment;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Equilibria;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;

/**
 * A liquid with a variable amount of a reagent in it, on one work space: totals (own + added x)/(1
 * + growth x), x in moles per litre of the liquid before. Mutable, for one search.
 */
final class Mixture {

  private final Equilibria equilibria;
  private final double kilogramsPerLitre;
  private final double[] own;
  private final double[] added;
  private final double inert;
  private final double litresPerMole;
  private double share = 1;

  Mixture(Contents contents, Supply supply) {
    kilogramsPerLitre = contents.kilogramsPerLitre();
    litresPerMole = supply.litresPerMole().orElse(0);
    inert = contents.inertCharge().map(charge -> charge.value()).orElse(0.0);
    Map<Component, Double> perMole = supply.compound().components();
    equilibria = workSpace(contents, perMole.keySet());
    List<Component> components = equilibria.components();
    own = new double[components.size()];
    added = new double[own.length];
    for (int i = 0; i < own.length; i++) {
      own[i] = contents.least(components.get(i)).value();
      added[i] =
          perMole.getOrDefault(components.get(i), 0.0) * supply.actingPerMole() / kilogramsPerLitre;
    }
    set(0);
  }

  /**
   * The same contents with none of what the reagent brings, whose system serves before and after.
   */
  static Contents prepared(Contents known, Supply supply) {
    Map<Component, Traced> none = new LinkedHashMap<>();
    supply.compound().components().keySet().stream()
        .filter(component -> !known.totals().containsKey(component))
        .forEach(component -> none.put(component, Traced.exact(0)));
    return none.isEmpty() ? known : known.plus(none);
  }

  private static Equilibria workSpace(Contents contents, Set<Component> more) {
    if (contents.inertCharge().isPresent()) {
      Equilibria ready = contents.equilibria();
      if (ready.components().containsAll(more)) {
        return ready;
      }
    }
    Set<Component> all = new LinkedHashSet<>(contents.totals().keySet());
    contents.unknown().stream().filter(c -> contents.least(c).value() > 0).forEach(all::add);
    all.addAll(more);
    return Equilibria.of(all, contents.temperature(), contents.chemistry());
  }

  void set(double molesPerLitre) {
    share = 1 / (1 + molesPerLitre * litresPerMole);
    for (int i = 0; i < own.length; i++) {
      equilibria.setTotal(i, (own[i] + molesPerLitre * added[i]) * share);
    }
    equilibria.setInertCharge(inert * share);
  }

  /** The share of the liquid before in the mixture, by volume. */
  double share() {
    return share;
  }

  Equilibria equilibria() {
    return equilibria;
  }

  double kilogramsPerLitre() {
    return kilogramsPerLitre;
  }

  /** Total of a component of the mixture, mol per kg of water, with so many moles of reagent. */
  double total(Component component, double molesPerLitre) {
    if (!equilibria.components().contains(component)) {
      return 0;
    }
    int index = equilibria.indexOf(component);
    return (own[index] + molesPerLitre * added[index]) * share;
  }
}
