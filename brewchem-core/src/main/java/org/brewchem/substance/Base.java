package org.brewchem.substance;

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

  /** Sodium hydroxide, NaOH. */
  public static final Base SODIUM_HYDROXIDE =
      new Base("sodium hydroxide", "NaOH", Map.of(Component.SODIUM, 1.0));

  /** Potassium hydroxide, KOH. */
  public static final Base POTASSIUM_HYDROXIDE =
      new Base("potassium hydroxide", "KOH", Map.of(Component.POTASSIUM, 1.0));

  /** Calcium hydroxide, slaked lime, Ca(OH)2. */
  public static final Base CALCIUM_HYDROXIDE =
      new Base("calcium hydroxide", "Ca(OH)2", Map.of(Component.CALCIUM, 1.0));

  /** Sodium hydrogencarbonate, called sodium bicarbonate in the trade, NaHCO3. */
  public static final Base SODIUM_BICARBONATE =
      new Base(
          "sodium bicarbonate",
          "NaHCO3",
          Stoichiometry.ordered(Component.SODIUM, 1.0, Component.CARBONATE, 1.0));

  /** Sodium carbonate without water of hydration, Na2CO3. */
  public static final Base SODIUM_CARBONATE =
      new Base(
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
