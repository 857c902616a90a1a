package org.brewchem.substance;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.quantity.MolarMass;
import org.jspecify.annotations.Nullable;

/**
 * A salt, with its water of hydration: the components it brings and its formula, checked against
 * each other atom by atom.
 */
public final class Salt implements Compound {

  private static final Library<Salt> LIBRARY = new Library<>("salt", "", Formula::parse);

  /** Calcium carbonate, called chalk in the trade, CaCO3. */
  public static final Salt CHALK =
      library(
          "calcium carbonate (chalk)",
          "CaCO3",
          Stoichiometry.ordered(Component.CALCIUM, 1.0, Component.CARBONATE, 1.0));

  /** Calcium chloride dihydrate, CaCl2.2H2O. */
  public static final Salt CALCIUM_CHLORIDE_DIHYDRATE =
      library(
          "calcium chloride dihydrate",
          "CaCl2.2H2O",
          Stoichiometry.ordered(Component.CALCIUM, 1.0, Component.CHLORIDE, 2.0));

  /** Calcium chloride without water of hydration, CaCl2. */
  public static final Salt CALCIUM_CHLORIDE_ANHYDROUS =
      library(
          "calcium chloride, anhydrous",
          "CaCl2",
          Stoichiometry.ordered(Component.CALCIUM, 1.0, Component.CHLORIDE, 2.0));

  /** Calcium sulfate dihydrate, called gypsum in the trade, CaSO4.2H2O. */
  public static final Salt GYPSUM =
      library(
          "calcium sulfate dihydrate (gypsum)",
          "CaSO4.2H2O",
          Stoichiometry.ordered(Component.CALCIUM, 1.0, Component.SULFATE, 1.0));

  /** Disodium hydrogen phosphate without water of hydration, Na2HPO4. */
  public static final Salt DISODIUM_HYDROGEN_PHOSPHATE =
      library(
          "disodium hydrogen phosphate",
          "Na2HPO4",
          Stoichiometry.ordered(Component.SODIUM, 2.0, Component.PHOSPHATE, 1.0));

  /** Disodium tetraborate decahydrate, called borax in the trade, Na2B4O7.10H2O. */
  public static final Salt BORAX =
      library(
          "disodium tetraborate decahydrate (borax)",
          "Na2B4O7.10H2O",
          Stoichiometry.ordered(Component.SODIUM, 2.0, Component.BORATE, 4.0));

  /** Magnesium chloride hexahydrate, MgCl2.6H2O. */
  public static final Salt MAGNESIUM_CHLORIDE_HEXAHYDRATE =
      library(
          "magnesium chloride hexahydrate",
          "MgCl2.6H2O",
          Stoichiometry.ordered(Component.MAGNESIUM, 1.0, Component.CHLORIDE, 2.0));

  /** Magnesium sulfate heptahydrate, called Epsom salt in the trade, MgSO4.7H2O. */
  public static final Salt EPSOM_SALT =
      library(
          "magnesium sulfate heptahydrate (Epsom salt)",
          "MgSO4.7H2O",
          Stoichiometry.ordered(Component.MAGNESIUM, 1.0, Component.SULFATE, 1.0));

  /** Potassium chloride, KCl. */
  public static final Salt POTASSIUM_CHLORIDE =
      library(
          "potassium chloride",
          "KCl",
          Stoichiometry.ordered(Component.POTASSIUM, 1.0, Component.CHLORIDE, 1.0));

  /** Potassium dihydrogen phosphate, KH2PO4. */
  public static final Salt POTASSIUM_DIHYDROGEN_PHOSPHATE =
      library(
          "potassium dihydrogen phosphate",
          "KH2PO4",
          Stoichiometry.ordered(Component.POTASSIUM, 1.0, Component.PHOSPHATE, 1.0));

  /** Potassium hydrogen phthalate, the acidimetric standard, KHC8H4O4. */
  public static final Salt POTASSIUM_HYDROGEN_PHTHALATE =
      library(
          "potassium hydrogen phthalate",
          "KHC8H4O4",
          Stoichiometry.ordered(Component.POTASSIUM, 1.0, Component.PHTHALATE, 1.0));

  /** Potassium hydrogen tartrate, KHC4H4O6. */
  public static final Salt POTASSIUM_HYDROGEN_TARTRATE =
      library(
          "potassium hydrogen tartrate",
          "KHC4H4O6",
          Stoichiometry.ordered(Component.POTASSIUM, 1.0, Component.TARTRATE, 1.0));

  /** Potassium metabisulfite, K2S2O5, which gives two sulfite in water. */
  public static final Salt POTASSIUM_METABISULFITE =
      library(
          "potassium metabisulfite",
          "K2S2O5",
          Stoichiometry.ordered(Component.POTASSIUM, 2.0, Component.SULFITE, 2.0));

  /** Sodium acetate trihydrate, NaC2H3O2.3H2O. */
  public static final Salt SODIUM_ACETATE_TRIHYDRATE =
      library(
          "sodium acetate trihydrate",
          "NaC2H3O2.3H2O",
          Stoichiometry.ordered(Component.SODIUM, 1.0, Component.ACETATE, 1.0));

  /** Sodium chloride, NaCl. */
  public static final Salt SODIUM_CHLORIDE =
      library(
          "sodium chloride",
          "NaCl",
          Stoichiometry.ordered(Component.SODIUM, 1.0, Component.CHLORIDE, 1.0));

  /** Sodium dihydrogen phosphate without water of hydration, NaH2PO4. */
  public static final Salt SODIUM_DIHYDROGEN_PHOSPHATE =
      library(
          "sodium dihydrogen phosphate",
          "NaH2PO4",
          Stoichiometry.ordered(Component.SODIUM, 1.0, Component.PHOSPHATE, 1.0));

  /** Sodium metabisulfite, Na2S2O5, which gives two sulfite in water. */
  public static final Salt SODIUM_METABISULFITE =
      library(
          "sodium metabisulfite",
          "Na2S2O5",
          Stoichiometry.ordered(Component.SODIUM, 2.0, Component.SULFITE, 2.0));

  private final String name;
  private final Formula formula;
  private final Map<Component, Double> components;

  private Salt(String name, String formula, Map<Component, Double> components) {
    this.name = Checks.notBlank("name of the salt", name);
    this.formula = Formula.parse(formula);
    if (this.formula.charge() != 0) {
      throw new IllegalArgumentException(
          Excerpt.of(name) + ": a salt carries no charge, " + Excerpt.of(formula) + " does");
    }
    this.components = Stoichiometry.checked(name, components);
    Stoichiometry.of(name, this.formula, this.components);
  }

  private static Salt library(
      String name, String formula, Map<Component, Double> components, String... otherNames) {
    Salt salt = new Salt(name, formula, components);
    return LIBRARY.add(salt, salt.formula, name, otherNames);
  }

  /**
   * Returns the salts that this class names.
   *
   * @return an unmodifiable list
   */
  public static List<Salt> named() {
    return LIBRARY.members();
  }

  /**
   * Returns the salt with a name or a formula, written exactly so.
   *
   * @param nameOrFormula the name, such as "gypsum", or the formula, such as "CaSO4.2H2O"
   * @return the salt
   * @throws IllegalArgumentException if this class names none; the message lists near names
   */
  public static Salt named(String nameOrFormula) {
    Objects.requireNonNull(nameOrFormula, "nameOrFormula");
    return LIBRARY.find(nameOrFormula);
  }

  /**
   * Makes a salt that this class does not name.
   *
   * @param name the name
   * @param formula the formula with its water of hydration, such as "Na2CO3.10H2O"
   * @param components the moles of each component that one mole brings, each more than 0
   * @return the salt
   * @throws IllegalArgumentException if the formula cannot be read or carries a charge, or if
   *     formula and components do not hold the same atoms
   */
  public static Salt of(String name, String formula, Map<Component, Double> components) {
    Objects.requireNonNull(formula, "formula");
    return new Salt(name, formula, components);
  }

  /**
   * Returns the name.
   *
   * @return the name, such as "calcium sulfate dihydrate (gypsum)"
   */
  @Override
  public String name() {
    return name;
  }

  /**
   * Returns the formula, water of hydration included.
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

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Salt other
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
