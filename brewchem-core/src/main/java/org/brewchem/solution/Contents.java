package org.brewchem.solution;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.BinaryOperator;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.internal.WaterProperties;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/**
 * What a liquid holds: totals of its components per kilogram of water and the inert charge that
 * closes its balance, each with its sources of uncertainty.
 *
 * <p>Treatments act on contents, and whatever is computed from them keeps its sources, so that what
 * was measured once correlates, and cancels, however often the liquid is treated. A constituent may
 * be unknown; what was added since is then the least that there is of it. The balance may be open,
 * because nothing tells its charge; then pH and everything that rests on it are unknown, with the
 * reason.
 *
 * <p>Immutable and thread-safe.
 */
public final class Contents {

  /** Water at 20 °C, which is 293.15 K by definition; extract and dissolved salts are neglected. */
  static final double STANDARD_KILOGRAMS_PER_LITRE =
      WaterProperties.densityKgPerCubicMetre(293.15) / 1000;

  private final Temperature temperature;
  private final Chemistry chemistry;
  private final double kilogramsPerLitre;
  private final Map<Component, Traced> totals;
  private final Map<Component, Traced> unknown;
  private final Optional<Traced> inert;
  private final List<String> whyOpen;
  private final Carried carried;
  private final List<Step> basis;
  private final List<Notice> notices;
  private volatile @Nullable CompiledMixture compiled;

  private Contents(ContentsDraft draft) {
    this.temperature = draft.temperature;
    this.chemistry = draft.chemistry;
    this.kilogramsPerLitre = draft.kilogramsPerLitre;
    this.totals = Collections.unmodifiableMap(draft.totals);
    this.unknown = Collections.unmodifiableMap(draft.unknown);
    this.inert = draft.inert;
    this.whyOpen = List.copyOf(draft.whyOpen);
    this.carried = draft.carried;
    this.basis = List.copyOf(draft.basis);
    this.notices = List.copyOf(draft.notices);
    this.compiled = draft.compiled;
    totals.forEach((c, total) -> Checks.nonNegative(c.name(), total.value(), "mol/kg"));
  }

  /**
   * Returns pure water.
   *
   * @param temperature 0 to 100 °C
   * @param chemistry the chemistry
   * @return contents without components, its balance closed
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public static Contents pure(Temperature temperature, Chemistry chemistry) {
    Checks.inRange("temperature", temperature.inCelsius(), "°C", 0, 100);
    return new Contents(new ContentsDraft(temperature, chemistry, STANDARD_KILOGRAMS_PER_LITRE));
  }

  private ContentsDraft copy() {
    ContentsDraft copy = new ContentsDraft(temperature, chemistry, kilogramsPerLitre);
    copy.totals = new LinkedHashMap<>(totals);
    copy.unknown = new LinkedHashMap<>(unknown);
    copy.inert = inert;
    copy.whyOpen = whyOpen;
    copy.carried = carried;
    copy.basis = basis;
    copy.notices = notices;
    copy.compiled = compiled;
    return copy;
  }

  /** Contents that are known exactly, such as those of a solution made on paper. */
  static Contents exact(
      Temperature temperature,
      Chemistry chemistry,
      double kilogramsPerLitre,
      Map<Component, Double> totals,
      double inertCharge,
      @Nullable CompiledMixture compiled) {
    ContentsDraft draft = new ContentsDraft(temperature, chemistry, kilogramsPerLitre);
    totals.forEach((component, total) -> draft.totals.put(component, Traced.exact(total)));
    draft.inert = Optional.of(Traced.exact(inertCharge));
    draft.compiled = compiled;
    return new Contents(draft);
  }

  /**
   * Replaces a total; the component is known from then on.
   *
   * @param component the component
   * @param molesPerKilogram its total, 0 or more, mol per kg of water
   * @return the changed contents
   * @throws IllegalArgumentException if the total is negative
   */
  public Contents withTotal(Component component, Traced molesPerKilogram) {
    ContentsDraft changed = copy();
    changed.unknown.remove(Objects.requireNonNull(component, "component"));
    put(changed, component, Objects.requireNonNull(molesPerKilogram, "moles per kilogram"));
    return new Contents(changed);
  }

  private static void put(ContentsDraft changed, Component component, Traced total) {
    if (changed.totals.put(component, total) == null) {
      changed.compiled = null;
    }
  }

  /**
   * Marks a component as one whose total nobody stated.
   *
   * @param component the component
   * @return the changed contents, whose balance counts the component as absent
   */
  public Contents withUnknown(Component component) {
    ContentsDraft changed = copy();
    if (changed.totals.remove(Objects.requireNonNull(component, "component")) != null) {
      changed.compiled = null;
    }
    changed.unknown.putIfAbsent(component, Traced.exact(0));
    return new Contents(changed);
  }

  /**
   * Replaces the inert charge, which closes the balance.
   *
   * @param equivalentsPerKilogram the net charge of inert univalent ions, of either sign, eq per kg
   *     of water
   * @return the changed contents
   */
  public Contents withInertCharge(Traced equivalentsPerKilogram) {
    ContentsDraft changed = copy();
    changed.inert =
        Optional.of(Objects.requireNonNull(equivalentsPerKilogram, "equivalents per kilogram"));
    changed.whyOpen = List.of();
    return new Contents(changed);
  }

  /**
   * Closes the balance to a measured pH: adds the inert univalent ions that make the liquid have
   * it. The charge moves with the totals and the pH in such a way that the pH comes back with the
   * uncertainty it went in with.
   *
   * @param measured the pH it is to have
   * @return the changed contents
   */
  public Contents closedTo(Traced measured) {
    Contents bare = withInertCharge(Traced.exact(0));
    return bare.withInertCharge(
        bare.chargeAt(Objects.requireNonNull(measured, "measured")).times(-1));
  }

  /**
   * Opens the balance: its charge is not known.
   *
   * @param why what is missing, at least one reason
   * @return the changed contents
   * @throws IllegalArgumentException if there is no reason
   */
  public Contents open(List<String> why) {
    if (why.isEmpty()) {
      throw new IllegalArgumentException(
          "why: no reason is not possible; an open balance says what is missing");
    }
    ContentsDraft changed = copy();
    changed.inert = Optional.empty();
    changed.whyOpen = why;
    return new Contents(changed);
  }

  /**
   * Adds to totals, the volume unchanged. An addition to an unknown component makes its least
   * amount known, not the whole.
   *
   * @param molesPerKilogram what is added, 0 or more, mol per kg of water
   * @return the changed contents
   */
  public Contents plus(Map<Component, Traced> molesPerKilogram) {
    ContentsDraft changed = copy();
    molesPerKilogram.forEach(
        (component, added) -> {
          if (changed.unknown.containsKey(component)) {
            changed.unknown.merge(component, added, Traced::plus);
            changed.compiled = null;
          } else {
            Traced before = changed.totals.get(component);
            put(changed, component, before == null ? added : before.plus(added));
          }
        });
    return new Contents(changed);
  }

  /**
   * Mixes with other contents at the same temperature: totals and inert charge mix exactly, pH does
   * not. What is unknown in one is unknown in the mixture.
   *
   * @param other the other contents
   * @param share the mass of this one's water over that of both, 0 to 1
   * @return the mixture, under this one's chemistry
   * @throws IllegalArgumentException if the temperatures differ or the share is out of range
   */
  public Contents mixed(Contents other, Traced share) {
    if (!temperature.equals(other.temperature)) {
      throw new IllegalArgumentException(
          "temperature: " + other.temperature + " is not possible; " + temperature + " is needed");
    }
    Checks.inRange("share", share.value(), "", 0, 1);
    BinaryOperator<Traced> mix =
        (one, two) ->
            Traced.linear(
                share.value() * one.value() + (1 - share.value()) * two.value(),
                new Traced[] {one, two, share},
                new double[] {share.value(), 1 - share.value(), one.value() - two.value()});
    ContentsDraft changed = copy();
    Set<Component> all = new LinkedHashSet<>(totals.keySet());
    all.addAll(unknown.keySet());
    all.addAll(other.totals.keySet());
    all.addAll(other.unknown.keySet());
    for (Component component : all) {
      Traced sum = mix.apply(least(component), other.least(component));
      if (unknown.containsKey(component) || other.unknown.containsKey(component)) {
        changed.totals.remove(component);
        changed.unknown.put(component, sum);
      } else {
        changed.totals.put(component, sum);
      }
    }
    changed.compiled =
        changed.inBalance().equals(ContentsDraft.inBalance(totals, unknown)) ? compiled : null;
    if (inert.isPresent() && other.inert.isPresent()) {
      changed.inert = Optional.of(mix.apply(inert.get(), other.inert.get()));
    } else {
      changed.inert = Optional.empty();
      changed.whyOpen = union(whyOpen, other.whyOpen);
    }
    changed.carried = carried.mixed(other.carried, mix).without(untold()).without(other.untold());
    changed.basis = union(basis, other.basis);
    changed.notices = union(notices, other.notices);
    return new Contents(changed);
  }

  /** Components of which nobody told anything, not even from another liquid. */
  private Set<Component> untold() {
    Set<Component> untold = new LinkedHashSet<>(unknown.keySet());
    untold.removeIf(component -> carried.get(component).isPresent());
    return untold;
  }

  private static <T> List<T> union(Collection<T> one, Collection<T> other) {
    Set<T> all = new LinkedHashSet<>(one);
    all.addAll(other);
    return List.copyOf(all);
  }

  /**
   * {@return the same contents at another temperature, totals per kilogram unchanged}
   *
   * @param other 0 to 100 °C
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public Contents at(Temperature other) {
    Checks.inRange("temperature", other.inCelsius(), "°C", 0, 100);
    ContentsDraft changed = copy();
    changed.temperature = other;
    changed.compiled = other.equals(temperature) ? compiled : null;
    return new Contents(changed);
  }

  /**
   * {@return the same contents under another chemistry}
   *
   * @param other the chemistry
   */
  public Contents under(Chemistry other) {
    ContentsDraft changed = copy();
    changed.chemistry = Objects.requireNonNull(other, "other");
    changed.compiled = null;
    return new Contents(changed);
  }

  /**
   * {@return the contents with steps by which they came about, which explanations begin with}
   *
   * @param steps the steps
   */
  public Contents withBasis(List<Step> steps) {
    ContentsDraft changed = copy();
    changed.basis = union(basis, Objects.requireNonNull(steps, "steps"));
    return new Contents(changed);
  }

  /**
   * {@return the contents with notices that hold for whatever rests on them}
   *
   * @param more the notices
   */
  public Contents withNotices(List<Notice> more) {
    ContentsDraft changed = copy();
    changed.notices = union(notices, Objects.requireNonNull(more, "more"));
    return new Contents(changed);
  }

  /**
   * {@return the contents without some of their notices}
   *
   * @param ended those that no longer hold, such as of what has precipitated
   */
  public Contents withoutNotices(Predicate<Notice> ended) {
    ContentsDraft left = copy();
    left.notices = notices.stream().filter(ended.negate()).toList();
    return new Contents(left);
  }

  /**
   * States by how much a titrated acidity differs from that of the balance. The difference, what
   * the balance does not know, mixes and dilutes with the liquid.
   *
   * @param endPoint the end point of the titration
   * @param equivalentsPerKilogram measured less computed, eq per kg of water
   * @return the changed contents
   */
  public Contents withAcidityBeyond(PH endPoint, Traced equivalentsPerKilogram) {
    Objects.requireNonNull(equivalentsPerKilogram, "equivalents per kilogram");
    return carrying(Objects.requireNonNull(endPoint, "end point"), equivalentsPerKilogram);
  }

  /**
   * States how much of a component, unknown here, was in a liquid from which this one was made. The
   * amount mixes and dilutes with the liquid, is kept apart from its totals, and counts in no
   * balance.
   *
   * @param component the component
   * @param molesPerKilogram its total there, mol per kg of water
   * @return the changed contents
   */
  public Contents withCarriedOver(Component component, Traced molesPerKilogram) {
    Objects.requireNonNull(molesPerKilogram, "moles per kilogram");
    return carrying(Objects.requireNonNull(component, "component"), molesPerKilogram);
  }

  private Contents carrying(Object key, Traced perKilogram) {
    ContentsDraft changed = copy();
    changed.carried = carried.with(key, perKilogram);
    return new Contents(changed);
  }

  /**
   * Returns the temperature.
   *
   * @return 0 to 100 °C
   */
  public Temperature temperature() {
    return temperature;
  }

  /**
   * Returns the chemistry.
   *
   * @return the chemistry
   */
  public Chemistry chemistry() {
    return chemistry;
  }

  /**
   * Returns the factor between concentrations per litre and per kilogram of water.
   *
   * @return kg of water per litre
   */
  public double kilogramsPerLitre() {
    return kilogramsPerLitre;
  }

  /**
   * Returns the total of a component.
   *
   * @param component the component
   * @return mol per kg of water; empty when it is unknown, 0 when there is none
   */
  public Optional<Traced> total(Component component) {
    Objects.requireNonNull(component, "component");
    return unknown.containsKey(component)
        ? Optional.empty()
        : Optional.of(totals.getOrDefault(component, Traced.exact(0)));
  }

  /**
   * Returns the least that is known of a component.
   *
   * @param component the component
   * @return its total, or for an unknown component what was added to it; mol per kg of water
   */
  public Traced least(Component component) {
    Traced own = totals.get(Objects.requireNonNull(component, "component"));
    return own == null ? unknown.getOrDefault(component, Traced.exact(0)) : own;
  }

  /**
   * Returns the components whose total is unknown.
   *
   * @return an unmodifiable set
   */
  public Set<Component> unknown() {
    return unknown.keySet();
  }

  /**
   * Returns the components whose total is known.
   *
   * @return an unmodifiable map to their totals, mol per kg of water
   */
  public Map<Component, Traced> totals() {
    return totals;
  }

  /**
   * Returns the inert charge.
   *
   * @return eq per kg of water, of either sign; empty when the balance is open
   */
  public Optional<Traced> inertCharge() {
    return inert;
  }

  /**
   * Returns why the balance is open.
   *
   * @return what is missing; empty when it is closed
   */
  public List<String> whyOpen() {
    return whyOpen;
  }

  /**
   * Returns by how much a titrated acidity differs from that of the balance.
   *
   * @param endPoint the end point
   * @return eq per kg of water; 0 when none was titrated to it
   */
  public Traced acidityBeyond(PH endPoint) {
    return carried.get(Objects.requireNonNull(endPoint, "end point")).orElse(Traced.exact(0));
  }

  /**
   * Returns what was carried over of a component.
   *
   * @param component the component
   * @return mol per kg of water; empty when nothing was
   */
  public Optional<Traced> carriedOver(Component component) {
    return carried.get(Objects.requireNonNull(component, "component"));
  }

  /**
   * Returns the steps by which these contents came about.
   *
   * @return an unmodifiable list
   */
  public List<Step> basis() {
    return basis;
  }

  /**
   * Returns what is notable about whatever rests on the balance of these contents.
   *
   * @return the notices, among them those about unknown constituents
   */
  public List<Notice> notices() {
    return union(notices, BalanceNotices.unknown(unknown));
  }

  /**
   * Finds the pH.
   *
   * @return the root of the charge balance with its sources
   * @throws IllegalStateException if the balance is open
   * @throws NoSolutionException if there is no pH between -3 and 17
   */
  public Traced pH() {
    return balance().pH();
  }

  /**
   * Finds the net charge at a pH.
   *
   * @param pH the pH, itself perhaps uncertain
   * @return eq per kg of water: positive below the liquid's own pH, negative above
   * @throws IllegalStateException if the balance is open
   */
  public Traced chargeAt(Traced pH) {
    return balance().chargeAt(pH);
  }

  /**
   * Finds the charge that a component carries in all its forms and pairs at the liquid's own pH,
   * see {@link Equilibria#chargeOf}.
   *
   * @param component the component
   * @return eq per kg of water, of either sign; 0 when there is none of it
   * @throws IllegalStateException if the balance is open
   * @throws NoSolutionException if there is no pH between -3 and 17
   */
  public Traced chargeOf(Component component) {
    return balance().chargeOf(Objects.requireNonNull(component, "component"));
  }

  /**
   * Finds the ionic strength at the liquid's own pH.
   *
   * @return mol per kg of water
   * @throws IllegalStateException if the balance is open
   * @throws NoSolutionException if there is no pH between -3 and 17
   */
  public Traced ionicStrength() {
    return balance().ionicStrength();
  }

  /**
   * Evaluates any function of the solved balance, its sources by differences over the totals that
   * have any.
   *
   * @param function evaluates a work space that holds the totals; it solves what it needs
   * @return the value with its sources
   * @throws IllegalStateException if the balance is open
   */
  public Traced trace(ToDoubleFunction<Equilibria> function) {
    return balance().byDifferences(function);
  }

  TracedBalance balance() {
    Equilibria equilibria = equilibria();
    List<Component> components = equilibria.components();
    Traced[] inputs = new Traced[components.size() + 1];
    for (int i = 0; i < components.size(); i++) {
      inputs[i] = least(components.get(i));
    }
    inputs[components.size()] = inert.orElseThrow(this::isOpen);
    return new TracedBalance(equilibria, inputs);
  }

  private IllegalStateException isOpen() {
    return new IllegalStateException("balance: is open; " + String.join("; ", whyOpen));
  }

  /**
   * Returns a work space that holds these contents.
   *
   * @return a new work space, for one thread
   * @throws IllegalStateException if the balance is open
   */
  public Equilibria equilibria() {
    Equilibria equilibria = Equilibria.over(compiled());
    List<Component> components = equilibria.components();
    for (int i = 0; i < components.size(); i++) {
      equilibria.setTotal(i, least(components.get(i)).value());
    }
    equilibria.setInertCharge(inert.orElseThrow(this::isOpen).value());
    return equilibria;
  }

  CompiledMixture compiled() {
    CompiledMixture ready = compiled;
    if (ready == null) {
      ready = Equilibria.compile(ContentsDraft.inBalance(totals, unknown), temperature, chemistry);
      compiled = ready;
    }
    return ready;
  }

  @Override
  public String toString() {
    return temperature
        + ", "
        + totals.keySet()
        + (unknown.isEmpty() ? "" : ", unknown " + unknown());
  }
}
