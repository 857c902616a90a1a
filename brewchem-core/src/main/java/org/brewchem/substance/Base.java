package org.brewchem.substance;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.brewchem.quantity.MolarMass;
import org.jspecify.annotations.Nullable;

/**
 * A base: the components it brings, its formula, and how many protons it takes up <em>by
 * definition</em>.
 *
 * <p>As with an acid, the equivalent by definition is a convention. Sodium hydrogencarbonate takes
 * up one proton only where the carbon dioxide it becomes is no longer dissociated; the effective
 * equivalents between two pH values come from {@code org.brewchem.solution}.
 */
public final class Base implements Compound {

  private static final Library<Base> LIBRARY = new Library<>("base", "", Formula::parse);

  /** Sodium hydroxide, NaOH. */
  public static final Base SODIUM_HYDROXIDE =
      library("sodium hydroxide", "NaOH", Map.of(Component.SODIUM, 1.0));

  /** Potassium hydroxide, KOH. */
  public static final Base POTASSIUM_HYDROXIDE =
      library("potassium hydroxide", "KOH", Map.of(Component.POTASSIUM, 1.0));

  /** Calcium hydroxide, slaked lime, Ca(OH)2. */
  public static final Base CALCIUM_HYDROXIDE =
      library("calcium hydroxide", "Ca(OH)2", Map.of(Component.CALCIUM, 1.0), "slaked lime");

  /** Sodium hydrogencarbonate, called sodium bicarbonate in the trade, NaHCO3. */
  public static final Base SODIUM_BICARBONATE =
      library(
          "sodium bicarbonate",
          "NaHCO3",
          Stoichiometry.ordered(Component.SODIUM, 1.0, Component.CARBONATE, 1.0),
          "sodium hydrogencarbonate");

  /** Potassium hydrogencarbonate, called potassium bicarbonate in the trade, KHCO3. */
  public static final Base POTASSIUM_BICARBONATE =
      library(
          "potassium bicarbonate",
          "KHCO3",
          Stoichiometry.ordered(Component.POTASSIUM, 1.0, Component.CARBONATE, 1.0),
          "potassium hydrogencarbonate");

  /** Sodium carbonate without water of hydration, Na2CO3. */
  public static final Base SODIUM_CARBONATE =
      library(
          "sodium carbonate",
          "Na2CO3",
          Stoichiometry.ordered(Component.SODIUM, 2.0, Component.CARBONATE, 1.0));

  private final String name;
  private final Formula formula;
  private final Map<Component, Double> components;
  private final int protonsTakenUp;

  private Base(String name, String formula, Map<Component, Double> components) {
    this.name = name;
    this.formula = Formula.parse(formula);
    this.components = Stoichiometry.checked(name, components);
    double protons = -Stoichiometry.of(name, this.formula, components).hydrogenIons();
    for (Map.Entry<Component, Double> entry : components.entrySet()) {
      protons += entry.getKey().protons() * entry.getValue();
    }
    this.protonsTakenUp = Math.toIntExact(Math.round(protons));
  }

  private static Base library(
      String name, String formula, Map<Component, Double> components, String... otherNames) {
    Base base = new Base(name, formula, components);
    return LIBRARY.add(base, base.formula, name, otherNames);
  }

  /**
   * Returns the bases that this class names.
   *
   * @return an unmodifiable list
   */
  public static List<Base> named() {
    return LIBRARY.members();
  }

  /**
   * Returns the base with a name or a formula, written exactly so.
   *
   * @param nameOrFormula the name, such as "sodium hydroxide", or the formula, such as "NaOH"
   * @return the base
   * @throws IllegalArgumentException if this class names none; the message lists near names
   */
  public static Base named(String nameOrFormula) {
    Objects.requireNonNull(nameOrFormula, "nameOrFormula");
    return LIBRARY.find(nameOrFormula);
  }

  /**
   * Returns the name.
   *
   * @return the name, such as "sodium hydroxide"
   */
  @Override
  public String name() {
    return name;
  }

  /**
   * Returns the formula.
   *
   * @return the formula
   */
  public Formula formula() {
    return formula;
  }

  @Override
  public Map<Component, Double> components() {
    return components;
  }

  @Override
  public MolarMass molarMass() {
    return formula.molarMass();
  }

  /**
   * Returns how many protons one mole takes up by definition, until it is water, strong ions and
   * dissolved carbon dioxide.
   *
   * @return the number of protons: 1 for sodium bicarbonate, 2 for sodium carbonate
   */
  public int protonsByDefinition() {
    return protonsTakenUp;
  }

  /**
   * Returns the equivalent by definition, molar mass divided by protons taken up: a convention, not
   * what the base delivers between two pH values.
   *
   * @return the equivalent in g/mol of protons
   */
  public double gramsPerEquivalent() {
    return molarMass().inGramsPerMole() / protonsTakenUp;
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Base other
        && name.equals(other.name)
        && formula.equals(other.formula)
        && components.equals(other.components);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, formula);
  }

  /** Returns the name. */
  @Override
  public String toString() {
    return name;
  }
}
