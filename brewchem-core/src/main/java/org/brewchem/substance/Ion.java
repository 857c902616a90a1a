package org.brewchem.substance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MolarMass;
import org.jspecify.annotations.Nullable;

/**
 * An ion as a water report or a recipe names it, with the molar mass and the charge that turn
 * milligrams into millimoles and milliequivalents.
 *
 * <p>An ion brings its {@link Component}; what it brings in protons follows from the charge balance
 * of the whole solution. Hydrogencarbonate and carbonate bring the same component: they differ in
 * the cations that come with them, so give the cations too.
 */
public final class Ion implements Compound {

  private static final Library<Ion> LIBRARY = new Library<>("ion", "", Formula::parse);

  /** Sodium, Na+. */
  public static final Ion SODIUM = library("sodium", "Na+", Component.SODIUM);

  /** Potassium, K+. */
  public static final Ion POTASSIUM = library("potassium", "K+", Component.POTASSIUM);

  /** Calcium, Ca2+. */
  public static final Ion CALCIUM = library("calcium", "Ca^2+", Component.CALCIUM);

  /** Magnesium, Mg2+. */
  public static final Ion MAGNESIUM = library("magnesium", "Mg^2+", Component.MAGNESIUM);

  /** Ammonium, NH4+. */
  public static final Ion AMMONIUM = library("ammonium", "NH4+", Component.AMMONIA);

  /** Chloride, Cl-. */
  public static final Ion CHLORIDE = library("chloride", "Cl-", Component.CHLORIDE);

  /** Nitrate, NO3-. */
  public static final Ion NITRATE = library("nitrate", "NO3-", Component.NITRATE);

  /** Sulfate, SO42-. */
  public static final Ion SULFATE = library("sulfate", "SO4^2-", Component.SULFATE);

  /** Hydrogencarbonate, called bicarbonate in the trade, HCO3-. */
  public static final Ion BICARBONATE =
      library("bicarbonate", "HCO3-", Component.CARBONATE, "hydrogencarbonate");

  /** Carbonate, CO32-. */
  public static final Ion CARBONATE = library("carbonate", "CO3^2-", Component.CARBONATE);

  /** Phosphate, PO43-. */
  public static final Ion PHOSPHATE = library("phosphate", "PO4^3-", Component.PHOSPHATE);

  private final String name;
  private final Formula formula;
  private final Map<Component, Double> components;

  private Ion(String name, String formula, Component component) {
    this.name = Checks.notBlank("name of the ion", name);
    this.formula = Formula.parse(formula);
    this.components = Stoichiometry.checked(name, Map.of(component, 1.0));
    Stoichiometry.of(name, this.formula, components);
  }

  private static Ion library(
      String name, String formula, Component component, String... otherNames) {
    Ion ion = new Ion(name, formula, component);
    List<String> names = new ArrayList<>(Arrays.asList(otherNames));
    names.add(ion.toString());
    return LIBRARY.add(ion, ion.formula, name, names.toArray(String[]::new));
  }

  /**
   * Returns the ions that this class names.
   *
   * @return an unmodifiable list
   */
  public static List<Ion> named() {
    return LIBRARY.members();
  }

  /**
   * Returns the ion with a name or a formula, written exactly so.
   *
   * @param nameOrFormula the name, such as "calcium", the name of the species, such as "Ca2+", or
   *     the formula as {@link Formula} reads it, such as "Ca^2+"
   * @return the ion
   * @throws IllegalArgumentException if this class names none; the message lists near names
   */
  public static Ion named(String nameOrFormula) {
    Objects.requireNonNull(nameOrFormula, "nameOrFormula");
    return LIBRARY.find(nameOrFormula);
  }

  /**
   * Makes a strong ion that this class does not name, such as fluoride.
   *
   * @param name the name, such as "fluoride"
   * @param formula the formula with its charge as {@link Formula} reads it, such as "F-" or "Fe^2+"
   * @return the ion
   * @throws IllegalArgumentException if the formula cannot be read, has no charge, or belongs to a
   *     named component
   */
  public static Ion strong(String name, String formula) {
    Objects.requireNonNull(formula, "formula");
    return new Ion(name, formula, Component.strongIon(name, formula));
  }

  /**
   * Returns the name.
   *
   * @return the name, such as "calcium"
   */
  @Override
  public String name() {
    return name;
  }

  /**
   * Returns the formula.
   *
   * @return the formula with its charge
   */
  public Formula formula() {
    return formula;
  }

  /**
   * Returns the charge, which is also the (signed) number of equivalents in one mole.
   *
   * @return the charge number, 2 for calcium and -1 for chloride
   */
  public int charge() {
    return formula.charge();
  }

  /**
   * Returns the equivalents of a concentration of this ion.
   *
   * @param concentration the mass of the ion per litre
   * @return its equivalents, positive for cations and anions alike
   */
  public ChargeConcentration equivalents(MassConcentration concentration) {
    return ChargeConcentration.ofMilliequivalentsPerLitre(
        milliequivalentsPerMilligram()
            * Objects.requireNonNull(concentration, "concentration").inMilligramsPerLitre());
  }

  /**
   * Returns the equivalents of a mass of this ion.
   *
   * @return mEq per mg, above 0 for cations and anions alike
   */
  public double milliequivalentsPerMilligram() {
    return Math.abs(charge()) / molarMass().inGramsPerMole();
  }

  /**
   * Returns what the ion weighs for each gram of an element in it, as nitrate for each gram of
   * nitrogen.
   *
   * @param element an element of the ion
   * @return the ratio of the masses, above 1
   * @throws IllegalArgumentException if the ion holds none of the element
   */
  public double massPerMassOf(Element element) {
    Objects.requireNonNull(element, "element");
    double grams = formula.count(element) * element.molarMass().inGramsPerMole();
    return molarMass().inGramsPerMole()
        / Checks.positive(element.name() + " in " + name, grams, "g/mol");
  }

  @Override
  public MolarMass molarMass() {
    return formula.molarMass();
  }

  @Override
  public Map<Component, Double> components() {
    return components;
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Ion other
        && formula.equals(other.formula)
        && components.equals(other.components);
  }

  @Override
  public int hashCode() {
    return formula.hashCode();
  }

  /** Returns the formula in IUPAC's notation, such as "Ca2+". */
  @Override
  public String toString() {
    return formula.text();
  }
}
