package org.brewchem.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Step;
import org.brewchem.mash.Mash;
import org.brewchem.mash.MashBalance;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.jspecify.annotations.Nullable;

/**
 * A liquid whose figures a plan bounds, as a function of the plan's variables: the water of one
 * portion, or of all mixed, or what is made of it.
 *
 * <p>Totals are a linear function of shares and doses, divided by the volume, which is linear too:
 * what a dose brings and by how much it makes the water grow is known per millimole. Mutable, for
 * one search.
 */
final class Site {

  private static final double PER_MILLI = 1e-3;

  private final Variables variables;
  private final Optional<Downstream> downstream;
  private final int portion;
  private final String name;
  private final Contents pattern;
  private final List<Component> components;
  private final double kilogramsPerLitre;

  /** Litres of the water before doses make it grow. */
  private final double poured;

  /** By component, and behind them the inert charge: what one of each variable brings. */
  private final double[][] brings;

  /** By how much one of each variable makes the volume grow. */
  private final double[] volume;

  /** The variables that the liquid depends on. */
  private final int[] own;

  private final double[] totals;
  private double[] at = new double[0];
  private double litres = 1;
  private @Nullable Equilibria equilibria;
  private boolean solvedFor;
  private @Nullable MashBalance mash;
  private @Nullable Liquid liquid;

  /**
   * Makes a site.
   *
   * @param variables the variables
   * @param portions the portions that are mixed in it
   * @param downstream what is made of the water; empty for the water itself
   */
  Site(Variables variables, List<Integer> portions, Optional<Downstream> downstream) {
    this.variables = variables;
    this.downstream = downstream;
    List<WaterPortion> all = variables.query().portions();
    portion = portions.size() == 1 ? portions.get(0) : -1;
    String water = portion < 0 ? "all portions mixed" : all.get(portion).name();
    name = downstream.map(made -> made.name() + " of " + water).orElse(water);
    List<Contents> waters = variables.waters().stream().map(Liquid::contents).toList();
    Contents mixed = waters.get(0);
    for (int k = 1; k < waters.size(); k++) {
      mixed = mixed.mixed(waters.get(k), Traced.exact(0.5));
    }
    Set<Component> held = new LinkedHashSet<>(mixed.totals().keySet());
    held.addAll(mixed.unknown());
    variables
        .doses()
        .forEach(
            item -> held.addAll(item.reagent().orElseThrow().compound().components().keySet()));
    components = List.copyOf(held);
    pattern = pattern(mixed);
    kilogramsPerLitre = mixed.kilogramsPerLitre();
    brings = new double[components.size() + 1][variables.count()];
    volume = new double[variables.count()];
    totals = new double[components.size() + 1];
    poured = portions.stream().mapToDouble(p -> all.get(p).volume().inLitres()).sum();
    own = new int[portions.size() * variables.perPortion()];
    int count = 0;
    for (int p : portions) {
      double part = all.get(p).volume().inLitres() / poured;
      for (int k = 0; k < variables.perPortion(); k++) {
        int i = variables.index(p, k);
        own[count++] = i;
        if (variables.isWater(i)) {
          water(i, waters.get(k), part);
        } else {
          dose(i, variables, part);
        }
      }
    }
  }

  private Contents pattern(Contents mixed) {
    Contents bare = Contents.pure(mixed.temperature(), mixed.chemistry());
    for (Component component : components) {
      bare =
          mixed.unknown().contains(component)
              ? bare.withUnknown(component)
              : bare.withTotal(component, Traced.exact(0));
    }
    if (!mixed.whyOpen().isEmpty()) {
      return bare.open(mixed.whyOpen());
    }
    // Asked once, so that the copies share what is compiled.
    bare.equilibria();
    return bare;
  }

  private void water(int i, Contents contents, double part) {
    for (int c = 0; c < components.size(); c++) {
      brings[c][i] = part * contents.least(components.get(c)).value();
    }
    brings[components.size()][i] = part * contents.inertCharge().map(Traced::value).orElse(0.0);
    volume[i] = part;
  }

  private void dose(int i, Variables variables, double part) {
    variables
        .dose(i)
        .reagent()
        .orElseThrow()
        .compound()
        .components()
        .forEach(
            (component, count) ->
                brings[components.indexOf(component)][i] =
                    part * count * PER_MILLI / kilogramsPerLitre);
    volume[i] = part * variables.litresPerMillimole(i);
  }

  /** Sets the variables. */
  void set(double[] x) {
    boolean same = at.length == x.length;
    for (int k = 0; same && k < own.length; k++) {
      same = at[own[k]] == x[own[k]];
    }
    if (same) {
      return;
    }
    at = x.clone();
    litres = dot(volume);
    for (int c = 0; c < totals.length; c++) {
      totals[c] = dot(brings[c]) / litres;
    }
    solvedFor = false;
    liquid = null;
  }

  private double dot(double[] row) {
    double sum = 0;
    for (int i : own) {
      sum += row[i] * at[i];
    }
    return sum;
  }

  /** The portion whose water it is or is made of; -1 for all of them mixed. */
  int portion() {
    return portion;
  }

  /** What it is called. */
  String name() {
    return name;
  }

  /** Total of a component, mol per kg of water. */
  double total(int component) {
    return totals[component];
  }

  /** What one of each variable brings of a component, mol per kg of the water before it grows. */
  double[] brings(int component) {
    return brings[component];
  }

  /** By how much one of each variable makes the volume grow, for one litre. */
  double[] volume() {
    return volume;
  }

  /** Litres that come of a litre. */
  double litres() {
    return litres;
  }

  int[] own() {
    return own;
  }

  /** The position of a component; -1 where no water and no dose brings it. */
  int indexOf(Component component) {
    return components.indexOf(component);
  }

  boolean isUnknown(Component component) {
    return pattern.unknown().contains(component);
  }

  double kilogramsPerLitre() {
    return kilogramsPerLitre;
  }

  /** Whether the water itself is asked, whose balance is closed. */
  boolean hasWorkSpace() {
    return downstream.isEmpty() && pattern.whyOpen().isEmpty();
  }

  /** Whether something is made of the water. */
  boolean isDownstream() {
    return downstream.isPresent();
  }

  /** The work space of the water, set to the variables. */
  Equilibria equilibria() {
    Equilibria ready = equilibria;
    if (ready == null) {
      ready = Equilibria.of(components, pattern.temperature(), pattern.chemistry());
      equilibria = ready;
    }
    if (!solvedFor) {
      for (int c = 0; c < components.size(); c++) {
        ready.setTotal(c, Math.max(0, totals[c]));
      }
      ready.setInertCharge(totals[components.size()]);
      solvedFor = true;
    }
    return ready;
  }

  /** Whether it is a mash whose balance can be walked. */
  boolean hasMash() {
    return downstream.isPresent()
        && downstream.get().isMash()
        && pattern.whyOpen().isEmpty()
        && pattern.unknown().isEmpty();
  }

  /** The balance of the mash, set to the variables. */
  MashBalance mash() {
    MashBalance ready = mash;
    if (ready == null) {
      ready = ((Mash) liquid()).balance();
      mash = ready;
      solvedFor = false;
    }
    if (!solvedFor) {
      Equilibria liquor = ready.liquor();
      for (int c = 0; c < components.size(); c++) {
        liquor.setTotal(liquor.indexOf(components.get(c)), Math.max(0, totals[c]));
      }
      liquor.setInertCharge(totals[components.size()]);
      solvedFor = true;
    }
    return ready;
  }

  /** The charge of its balance at a pH: above 0 where its own pH is higher. */
  double chargeAt(double pH) {
    return hasMash() ? mash().chargeAt(pH) : equilibria().chargeAt(pH);
  }

  /** By how much that charge falls with the pH there. */
  double capacityAt(double pH) {
    if (hasMash()) {
      return mash().bufferCapacityAt(pH);
    }
    equilibria().chargeAt(pH);
    return equilibria().bufferCapacity();
  }

  /** The liquid at the variables; of waters with the inputs taken as exact. */
  Liquid liquid() {
    Liquid ready = liquid;
    if (ready == null) {
      ready =
          variables.query().blends().isPresent()
              ? new Kettle(variables).water(portion, at)
              : of(water());
      liquid = ready;
    }
    return ready;
  }

  private Water water() {
    Map<Component, Traced> held = new LinkedHashMap<>();
    for (int c = 0; c < components.size(); c++) {
      if (totals[c] > 0) {
        held.put(components.get(c), Traced.exact(totals[c]));
      }
    }
    Contents plus = pattern.plus(held);
    Contents contents =
        pattern.whyOpen().isEmpty()
            ? plus.withInertCharge(Traced.exact(totals[components.size()]))
            : plus;
    return Water.reported(Map.of(), chemistry -> contents);
  }

  /** What is made of as much of a water as there is at the variables, or the liquid itself. */
  Liquid of(Liquid mixed) {
    return downstream.isPresent()
        ? downstream.get().of((Water) mixed, Volume.ofLitres(poured * litres))
        : mixed;
  }

  /** Asks the liquid at the variables, in the figure's own scale. */
  Step step(Figure<?> figure) {
    return liquid().step(figure);
  }

  @Override
  public String toString() {
    return new ArrayList<>(components) + " " + downstream.map(Downstream::name).orElse("water");
  }
}
