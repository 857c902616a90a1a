package org.brewchem.solution;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.internal.EquilibriumSlopes;
import org.brewchem.internal.EquilibriumSolver;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;

/**
 * A work space that solves mixtures of the same components again and again: totals in, pH out, and
 * nothing allocated per solve.
 *
 * <p>Amounts are mol per kg of water, charges eq per kg. Mutable and for one thread at a time; make
 * one per thread with {@link #another()}. Each solve starts from the last one, which is fast along
 * a curve; {@link #forget()} makes it start from the beginning. The result does not depend on it.
 */
public final class Equilibria {

  final CompiledMixture compiled;
  private final EquilibriumSolver solver;
  private final EquilibriumSlopes slopes;

  private Equilibria(CompiledMixture compiled) {
    this.compiled = compiled;
    this.solver = new EquilibriumSolver(compiled.system);
    this.slopes = new EquilibriumSlopes(solver);
  }

  /**
   * Makes a work space with all totals zero.
   *
   * @param components the components, each once
   * @param temperature 0 to 100 °C
   * @param chemistry the chemistry
   * @return the work space
   * @throws IllegalArgumentException if the temperature is out of range, a component stands twice,
   *     or the chemistry is without its constants
   */
  public static Equilibria of(
      Collection<Component> components, Temperature temperature, Chemistry chemistry) {
    return over(compile(Objects.requireNonNull(components, "components"), temperature, chemistry));
  }

  static CompiledMixture compile(
      Collection<Component> components, Temperature temperature, Chemistry chemistry) {
    return new CompiledMixture(components, temperature, chemistry);
  }

  static Equilibria over(CompiledMixture compiled) {
    return new Equilibria(compiled);
  }

  /**
   * Makes a further work space for the same mixture, for another thread.
   *
   * @return a work space with all totals zero
   */
  public Equilibria another() {
    return new Equilibria(compiled);
  }

  /**
   * Returns the index of a component for {@link #setTotal}.
   *
   * @param component the component
   * @return its index
   * @throws IllegalArgumentException if it is none of this mixture
   */
  public int indexOf(Component component) {
    Integer index = compiled.index.get(component);
    if (index == null) {
      throw new IllegalArgumentException(
          component.key() + " is none of the components " + compiled.index.keySet());
    }
    return index;
  }

  /**
   * Returns the components in the order of their indices.
   *
   * @return an unmodifiable list
   */
  public List<Component> components() {
    return compiled.components;
  }

  /**
   * Sets a total concentration.
   *
   * @param index the component's index
   * @param molesPerKilogram its total, mol per kg of water, 0 or more
   * @throws IllegalArgumentException if the total is negative or not finite
   */
  public void setTotal(int index, double molesPerKilogram) {
    solver.totals()[Checks.index("index", index, compiled.components.size())] =
        molesPerKilogram >= 0 && molesPerKilogram < Double.POSITIVE_INFINITY
            ? molesPerKilogram
            : Checks.nonNegative(compiled.components.get(index).name(), molesPerKilogram, "mol/kg");
  }

  /**
   * Returns a total concentration as it was set.
   *
   * @param index the component's index
   * @return its total, mol per kg of water
   * @throws IllegalArgumentException if there is no component of that index
   */
  public double total(int index) {
    return solver.totals()[Checks.index("index", index, compiled.components.size())];
  }

  /**
   * Sets the charge of the inert univalent ions that are there in addition to the components.
   *
   * @param equivalentsPerKilogram their net charge, eq per kg of water, of either sign
   * @throws IllegalArgumentException if it is not finite
   */
  public void setInertCharge(double equivalentsPerKilogram) {
    solver.setInertCharge(Checks.finite("inert charge", equivalentsPerKilogram, "Eq/kg"));
  }

  /** What the totals would carry if no proton were bound, Eq/kg. */
  double chargeWithoutProtons() {
    double charge = 0;
    for (int i = 0; i < compiled.components.size(); i++) {
      charge += compiled.components.get(i).chargeWithoutProtons() * solver.totals()[i];
    }
    return charge;
  }

  /**
   * Holds the activity of one form of a component, whose total then follows: a solution open to a
   * gas.
   *
   * @param component the component
   * @param protons the protons of the form, such as 2 for CO2 of the carbonate family
   * @param log10Activity log10 of its activity, mol/kg
   * @throws IllegalArgumentException if there is no such form
   */
  public void hold(Component component, int protons, double log10Activity) {
    solver.holdActivity(
        compiled.formHandle(component, protons),
        Checks.finite("log10 of the activity held", log10Activity, ""));
  }

  /** Makes the next solve start from the beginning instead of from the last solution. */
  public void forget() {
    solver.coolDown();
  }

  /**
   * Finds the pH at which the mixture is neutral.
   *
   * @return the pH, -log10 of the H+ activity
   * @throws NoSolutionException if there is none between -3 and 17
   */
  public double pH() {
    if (!solver.solve()) {
      throw failure("pH");
    }
    return solver.ph();
  }

  /**
   * Finds the net charge of the mixture at a pH; where it is not zero, an inert univalent ion that
   * makes up for it counts in the ionic strength.
   *
   * @param pH the pH
   * @return the charge, eq per kg of water
   * @throws NoSolutionException if the ion pairs at that pH cannot be solved
   */
  public double chargeAt(double pH) {
    if (!solver.solveAt(pH)) {
      throw failure("charge at pH " + pH);
    }
    return solver.charge();
  }

  /**
   * Finds how much of a solute brings the mixture to a pH. The totals are afterwards what they were
   * before.
   *
   * @param added what one mole of the solute brings, moles of each component by index
   * @param target the pH to reach
   * @return mol per kg of water; 0 when the mixture is there already
   * @throws NoSolutionException if no dose between 0 and 50 mol/kg reaches the target
   */
  public double doseTo(double[] added, PH target) {
    double[] own = solver.totals().clone();
    double ownInert = solver.inertCharge();
    try {
      return new DoseSearch(this, own, ownInert, added, 0, 0).toReach(target, "dose");
    } finally {
      System.arraycopy(own, 0, solver.totals(), 0, own.length);
      solver.setInertCharge(ownInert);
    }
  }

  /**
   * Returns the charge that a component carries at the last solution, in all its forms and pairs;
   * of a pair only the part of its ligand counts for the ligand, and that of its metal for the
   * metal.
   *
   * @param index the component's index
   * @return eq per kg of water, of either sign
   * @throws IllegalArgumentException if there is no component of that index
   */
  public double chargeOf(int index) {
    solver.refresh();
    int[] handles = compiled.handles[Checks.index("index", index, compiled.handles.length)];
    if (handles.length == 0) {
      return compiled.components.get(index).chargeWithoutProtons() * solver.totals()[index];
    }
    double charge = 0;
    for (int i = 0; i < handles.length; i++) {
      charge += compiled.charges[index][i] * solver.concentration(handles[i]);
    }
    return charge;
  }

  /** {@return the buffer capacity at the last solution, eq per kg of water and pH, above 0} */
  public double bufferCapacity() {
    return solver.bufferCapacity();
  }

  /**
   * Finds the exact slopes of the net charge at the last solution against every total, at its pH,
   * with pairs and ionic strength following. Allocates nothing.
   *
   * <p>Charge that is missing at that pH is carried by an inert univalent ion, as in {@link
   * #chargeAt}. Where an inert charge is 0 its share in ionic strength has a kink; the mean of both
   * sides is taken. Where a total is 0 the slope is the one upwards. The total of a component with
   * a form that is held follows and has the slope 0. After {@link #pH()}, the pH moves by the
   * negative of a slope over the value returned, per mole.
   *
   * @param perTotal receives the slopes by component index, eq per mol, and behind them that
   *     against the inert charge, eq per eq: one more than there are components
   * @return the slope against pH at the totals, eq per kg of water and pH: the negative of {@link
   *     #bufferCapacity()}
   * @throws IllegalArgumentException if the array has another length
   * @throws IllegalStateException if nothing was solved, or the last solution was forgotten
   */
  public double chargeSlopes(double[] perTotal) {
    return slopes.ofCharge(perTotal);
  }

  /**
   * Finds the exact slope of the net charge at the last solution against a pKa, at its pH and
   * totals, right after {@link #chargeSlopes}. Allocates nothing.
   *
   * <p>After {@link #pH()}, the pH moves by the negative of it over what {@code chargeSlopes}
   * returned, per unit of pKa.
   *
   * @param index the component's index
   * @param step the step of dissociation, 0 for the first proton given off
   * @return eq per kg of water and unit of pKa
   * @throws IllegalArgumentException if there is no such component, or it has no such step
   * @throws IllegalStateException if a form of the component is held
   */
  public double chargeSlopeByPKa(int index, int step) {
    Component component =
        compiled.components.get(Checks.index("index", index, compiled.handles.length));
    int left = component.protons() - Checks.index("step", step, component.protons());
    double slope = 0;
    for (int protons = left; protons <= component.protons(); protons++) {
      slope += slopes.ofChargeByFormation(compiled.handles[index][protons]);
    }
    return slope;
  }

  /**
   * Finds the exact slopes of {@link #chargeOf} of a component, else as {@link #chargeSlopes}.
   *
   * @param index the component's index
   * @param perTotal receives the slopes by component index, eq per mol, and behind them that
   *     against the inert charge, eq per eq: one more than there are components
   * @return the slope against pH at the totals, eq per kg of water and pH
   * @throws IllegalArgumentException if the array has another length or there is no such component
   * @throws IllegalStateException if nothing was solved, or the last solution was forgotten
   */
  public double chargeSlopesOf(int index, double[] perTotal) {
    return slopes.ofChargeOf(index, perTotal);
  }

  /**
   * Finds the exact slopes of the ionic strength, else as {@link #chargeSlopes}.
   *
   * @param perTotal receives the slopes by component index, 1, and behind them that against the
   *     inert charge, mol per eq: one more than there are components
   * @return the slope against pH at the totals, mol per kg of water and pH
   * @throws IllegalArgumentException if the array has another length
   * @throws IllegalStateException if nothing was solved, or the last solution was forgotten
   */
  public double ionicStrengthSlopes(double[] perTotal) {
    return slopes.ofIonicStrength(perTotal);
  }

  /**
   * Returns the ionic strength at the last solution.
   *
   * @return mol per kg of water
   */
  public double ionicStrength() {
    return solver.ionicStrength();
  }

  /** {@return what is notable about the constants of this mixture at its temperature} */
  public List<Notice> notices() {
    return compiled.notices();
  }

  /** What is notable about an ionic strength, mol/kg, in this mixture. */
  Optional<Notice> activityNotice(double ionicStrength) {
    return BalanceNotices.ionicStrength(ionicStrength, compiled.level);
  }

  /**
   * Returns the species at the last solution.
   *
   * @return an unmodifiable list: H+, OH-, then the components and their forms and pairs
   */
  public List<Species> species() {
    solver.refresh();
    List<Species> list = new ArrayList<>();
    list.add(
        species(
            "H+",
            1,
            Optional.empty(),
            Optional.empty(),
            0,
            solver.protonConcentration(),
            Math.pow(10, -solver.ph())));
    list.add(
        species(
            "OH-",
            -1,
            Optional.empty(),
            Optional.empty(),
            0,
            solver.hydroxideConcentration(),
            compiled.ionProduct * Math.pow(10, solver.ph())));
    for (Component component : compiled.components) {
      int index = indexOf(component);
      if (compiled.metals.contains(component)) {
        list.add(
            species(
                component.form(0),
                component.chargeWithoutProtons(),
                Optional.of(component),
                Optional.of(component),
                1,
                solver.freeMetal(index),
                solver.metalActivity(index)));
      } else if (!compiled.ligands.contains(component)) {
        double total = solver.totals()[index];
        list.add(
            species(
                component.form(0),
                component.chargeWithoutProtons(),
                Optional.of(component),
                Optional.empty(),
                1,
                total,
                total / solver.inverseGamma(compiled.strongActivity(component))));
      }
    }
    for (CompiledMixture.Form form : compiled.forms) {
      list.add(
          species(
              form.name(),
              form.charge(),
              form.component(),
              form.metal(),
              form.ligandCount(),
              solver.concentration(form.handle()),
              solver.activity(form.handle())));
    }
    return List.copyOf(list);
  }

  /** Solves for everything at once. */
  Equilibrium equilibrium() {
    return stateAt(pH());
  }

  /** Solves for everything at a given pH. */
  Equilibrium equilibriumAt(double pH) {
    chargeAt(pH);
    return stateAt(pH);
  }

  /** {@return pH, ionic strength and species at the last solution of this work space} */
  public Equilibrium state() {
    return stateAt(solver.ph());
  }

  private Equilibrium stateAt(double pH) {
    return new Equilibrium(pH, ionicStrength(), species(), compiled.level, compiled.temperature);
  }

  private static Species species(
      String name,
      int charge,
      Optional<Component> component,
      Optional<Component> metal,
      int count,
      double molality,
      double activity) {
    return new Species(
        name, charge, component, metal, count, Molality.ofMolesPerKilogram(molality), activity);
  }

  private NoSolutionException failure(String what) {
    return new NoSolutionException(
        what,
        solver.bracketLow(),
        solver.bracketHigh(),
        solver.lastResidual(),
        solver.iterations());
  }
}
