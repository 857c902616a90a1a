package org.brewchem.substance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.jspecify.annotations.Nullable;

/**
 * A named choice of acid dissociation constants, one list per component.
 *
 * <p>The constants are those of the dissociation as written, log10 Ka = -pKa, at zero ionic
 * strength, the first proton lost by the fully protonated form first. A constant whose source
 * prints no enthalpy keeps its value at 25 °C at every temperature.
 *
 * <p>Several published collections stand side by side and are never mixed in silence: a component
 * that a set does not hold is an error until {@link #completedWith(ConstantSet)} or {@link
 * #with(Component, EquilibriumConstant...)} says where its constants come from. Only a component
 * that a caller made with its own constants needs no set.
 *
 * <p>Own constants for an acid of the library: {@link #withPKa(Acid, double...)} or {@link
 * #withKa(Acid, double...)}. A second acid of the same name would be a second component beside that
 * of the library's salts, and is refused.
 *
 * <p>Two sets are equal when name and constants are.
 */
public final class ConstantSet {

  private static final Map<String, ConstantSet> PUBLISHED = read();
  private static final ConstantSet STANDARD = composeStandard();

  private final String name;
  private final String description;
  private final Map<Component, Map<Integer, EquilibriumConstant>> steps;

  private ConstantSet(
      String name, String description, Map<Component, Map<Integer, EquilibriumConstant>> steps) {
    this.name = Checks.notBlank("name of the set", name);
    this.description = description;
    this.steps = Collections.unmodifiableMap(steps);
  }

  private static Map<String, ConstantSet> read() {
    Map<String, Map<Component, Map<Integer, EquilibriumConstant>>> tables = new LinkedHashMap<>();
    for (ResourceTable.Row row : ResourceTable.read("dissociation-constants.csv")) {
      Component component = Component.of(row.species("component"));
      int step = row.integer("step");
      Map<Integer, EquilibriumConstant> steps =
          tables
              .computeIfAbsent(row.text("set"), key -> new LinkedHashMap<>())
              .computeIfAbsent(component, key -> new TreeMap<>());
      EquilibriumConstant constant = row.constant("pKa", -1.0).from(row.provenance());
      if (step < 1 || step > component.protons() || steps.put(step, constant) != null) {
        throw new IllegalStateException(row.place() + ": step " + step + " is not possible");
      }
    }
    Map<String, ConstantSet> sets = new LinkedHashMap<>();
    tables.forEach(
        (name, steps) ->
            sets.put(name, new ConstantSet(name, "Published under source " + name + ".", steps)));
    return Collections.unmodifiableMap(sets);
  }

  private static ConstantSet composeStandard() {
    ConstantSet composed =
        named("goldberg-2002")
            .completedWith(named("obigt"))
            .completedWith(named("nist46"))
            .completedWith(named("thermochimie"))
            .completedWith(named("serjeant-dempsey-1979"));
    return new ConstantSet(
        "standard",
        "Goldberg, Kishore & Lennen 2002; lactic, malic, pyruvic and formic acid from OBIGT; "
            + "propionic, butyric, glutamic and aspartic acid from NIST 46; gluconic acid from ThermoChimie; "
            + "ascorbic acid from Serjeant & Dempsey 1979.",
        composed.steps);
  }

  /**
   * Returns the default set: Goldberg, Kishore and Lennen 2002, completed for acids that are
   * missing there by OBIGT (lactic, malic, pyruvic, formic), NIST 46 (propionic, butyric, glutamic,
   * aspartic), ThermoChimie (gluconic) and Serjeant and Dempsey (ascorbic).
   *
   * @return the set
   */
  public static ConstantSet standard() {
    return STANDARD;
  }

  /**
   * Returns a published set. The name is the key of its source, see docs/sources.md.
   *
   * @param name the name, one of {@link #names()}
   * @return the set, holding what its source prints and no more
   * @throws IllegalArgumentException if there is no such set
   */
  public static ConstantSet named(String name) {
    Objects.requireNonNull(name, "name");
    ConstantSet set = PUBLISHED.get(name);
    if (set == null) {
      throw new IllegalArgumentException(
          "constant set: \""
              + Excerpt.of(name)
              + "\" is not one of "
              + Excerpt.of(PUBLISHED.keySet().toString(), 250));
    }
    return set;
  }

  /**
   * Returns the names of the published sets.
   *
   * @return an unmodifiable list
   */
  public static List<String> names() {
    return List.copyOf(PUBLISHED.keySet());
  }

  /**
   * Returns an empty set, as a start for your own.
   *
   * @param name the name of the new set
   * @return the set
   * @throws IllegalArgumentException if the name is blank
   */
  public static ConstantSet empty(String name) {
    return new ConstantSet(name, "Typed by the caller.", Map.of());
  }

  /**
   * Returns the name.
   *
   * @return the name
   */
  public String name() {
    return name;
  }

  /**
   * Returns what the set holds and where it comes from, in a sentence.
   *
   * @return the description
   */
  public String description() {
    return description;
  }

  /**
   * Returns whether the set itself holds all the steps of a component. A strong ion has none and is
   * always contained.
   *
   * @param component the component
   * @return whether all steps are there
   */
  public boolean contains(Component component) {
    return component.protons() == 0
        || steps.getOrDefault(component, Map.of()).size() == component.protons();
  }

  /**
   * Returns the dissociation constants of a component, log10 Ka, the first lost proton first: those
   * of the set, or else those that the component carries itself.
   *
   * @param component the component
   * @return an unmodifiable list of as many constants as the component has protons
   * @throws IllegalArgumentException if neither the set nor the component has all of them
   */
  public List<EquilibriumConstant> of(Component component) {
    if (contains(component)) {
      return List.copyOf(steps.getOrDefault(component, Map.of()).values());
    }
    if (!component.ownConstants().isEmpty()) {
      return component.ownConstants();
    }
    throw new IllegalArgumentException(
        "constant set "
            + Excerpt.of(name)
            + ": it has no complete dissociation constants of "
            + Excerpt.of(component.key())
            + "; complete it with another set or type them");
  }

  /**
   * Returns one step of a component, also where the source prints only some of its steps.
   *
   * @param component the component
   * @param step the step, 1 for the first lost proton
   * @return log10 Ka of the step; empty when the set has no row for it
   */
  public Optional<EquilibriumConstant> step(Component component, int step) {
    Objects.requireNonNull(component, "component");
    return Optional.ofNullable(steps.getOrDefault(component, Map.of()).get(step));
  }

  /**
   * Returns a new set in which a component has other constants.
   *
   * @param component the component
   * @param dissociation log10 Ka, the first lost proton first, as many as the component has protons
   * @return the new set, named after this one and the component
   * @throws IllegalArgumentException if the number or the order of the constants is wrong
   */
  public ConstantSet with(Component component, EquilibriumConstant... dissociation) {
    if (dissociation.length != component.protons() || dissociation.length == 0) {
      throw Checks.outOfRange(
          "constants of " + component.key(),
          dissociation.length,
          "",
          "one for each of its protons, " + component.protons() + ",");
    }
    Component.checkOrder(component.key(), Arrays.asList(dissociation));
    Map<Integer, EquilibriumConstant> typed = new TreeMap<>();
    for (EquilibriumConstant constant : dissociation) {
      typed.put(typed.size() + 1, constant);
    }
    Map<Component, Map<Integer, EquilibriumConstant>> copy = new LinkedHashMap<>(steps);
    copy.put(component, typed);
    return new ConstantSet(
        name + " with other " + component.name(),
        description + " Other constants for " + component.name() + ".",
        copy);
  }

  /**
   * Returns a new set in which an acid of the library has the pKa values that an exercise, a
   * textbook or a laboratory states. They hold at every temperature, and at zero ionic strength.
   * The acid and all salts that bring its component then share them:
   *
   * <p>{@code Chemistry.standard().withConstants(ConstantSet.standard().withPKa(Acid.ACETIC,
   * 4.76))}
   *
   * @param acid the acid, such as {@link Acid#ACETIC}
   * @param pKa the pKa values (not Ka), the first lost proton first, as many as its component has
   *     protons: one for sulfuric acid, whose first proton is strong, none for hydrochloric acid
   * @return the new set, named after this one and the component
   * @throws IllegalArgumentException if the number or the order of the values is wrong, or one is
   *     not finite
   */
  public ConstantSet withPKa(Acid acid, double... pKa) {
    Objects.requireNonNull(pKa, "pKa");
    return with(acid.component(), EquilibriumConstant.ofPKa(acid.name(), pKa));
  }

  /**
   * Returns a new set in which an acid of the library has the dissociation constants Ka that an
   * exercise prints; for the rest like {@link #withPKa(Acid, double...)}.
   *
   * @param acid the acid, such as {@link Acid#ACETIC}
   * @param ka the dissociation constants Ka (not pKa) in mol/L or mol/kg, the first lost proton
   *     first, as many as its component has protons
   * @return the new set, named after this one and the component
   * @throws IllegalArgumentException if the number or the order of the values is wrong, or one is
   *     not more than 0
   */
  public ConstantSet withKa(Acid acid, double... ka) {
    Objects.requireNonNull(ka, "ka");
    return with(acid.component(), EquilibriumConstant.ofKa(acid.name(), ka));
  }

  /**
   * Returns a new set that holds what this one holds, and what another holds of the components that
   * this one does not hold completely.
   *
   * @param other the set to complete from
   * @return the new set, named after both
   */
  public ConstantSet completedWith(ConstantSet other) {
    Map<Component, Map<Integer, EquilibriumConstant>> copy = new LinkedHashMap<>(steps);
    List<String> added = new ArrayList<>();
    other.steps.forEach(
        (component, constants) -> {
          if (!contains(component) && other.contains(component)) {
            copy.put(component, constants);
            added.add(component.name());
          }
        });
    return new ConstantSet(
        name + ", then " + other.name,
        description + " From " + other.name + ": " + String.join(", ", added) + ".",
        copy);
  }

  /**
   * Returns the same set under another name.
   *
   * @param newName the name
   * @param newDescription what the set holds and where it comes from
   * @return the renamed set
   * @throws IllegalArgumentException if the name is blank
   */
  public ConstantSet renamed(String newName, String newDescription) {
    Objects.requireNonNull(newName, "newName");
    Objects.requireNonNull(newDescription, "newDescription");
    return new ConstantSet(newName, newDescription, steps);
  }

  /**
   * Returns the components that the set holds completely.
   *
   * @return an unmodifiable list
   */
  public List<Component> components() {
    return steps.keySet().stream().filter(this::contains).toList();
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof ConstantSet other
        && name.equals(other.name)
        && steps.equals(other.steps);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, steps);
  }

  /** Returns the name. */
  @Override
  public String toString() {
    return name;
  }
}
