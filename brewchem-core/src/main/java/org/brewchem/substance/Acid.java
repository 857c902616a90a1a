package org.brewchem.substance;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Excerpt;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.MolarMass;
import org.jspecify.annotations.Nullable;

/**
 * An acid: the component it brings, its formula, and how many protons it has <em>by
 * definition</em>.
 *
 * <p><strong>By definition is not what it delivers.</strong> {@link #gramsPerEquivalent()} is the
 * molar mass divided by the protons of the formula. It is the convention in which an acidity "as
 * citric acid" is expressed, and nothing else. What one mole really gives off between two pH values
 * is another number: at pH 8.2 phosphoric acid has given about 1.9 of its 3 protons, at pH 5.4
 * citric acid about 2 of 3, at pH 4.2 carbonic acid next to none of its 2. Ask the solution for it:
 * {@code Solution.equivalents(from, to)} in {@code org.brewchem.solution}. Never compute a dose
 * from the equivalent by definition.
 *
 * <p>An acid that carries a charge, such as ammonium, is added together with its counter-ion: the
 * charge balance takes what the components say.
 */
public final class Acid implements Compound, AcidBasis {

  private static final Library<Acid> LIBRARY = new Library<>("acid", " acid", Formula::parse);

  /** Lactic acid, C3H6O3, one proton. */
  public static final Acid LACTIC = library("lactic acid", "C3H6O3", Component.LACTATE);

  /** Phosphoric acid, H3PO4, three protons by definition. */
  public static final Acid PHOSPHORIC = library("phosphoric acid", "H3PO4", Component.PHOSPHATE);

  /** Citric acid without water of hydration, C6H8O7, three protons by definition. */
  public static final Acid CITRIC = library("citric acid", "C6H8O7", Component.CITRATE);

  /** Citric acid monohydrate, C6H8O7.H2O, three protons by definition. */
  public static final Acid CITRIC_MONOHYDRATE =
      library("citric acid monohydrate", "C6H8O7.H2O", Component.CITRATE);

  /** Malic acid, C4H6O5, two protons by definition. */
  public static final Acid MALIC = library("malic acid", "C4H6O5", Component.MALATE);

  /** Tartaric acid, C4H6O6, two protons by definition. */
  public static final Acid TARTARIC = library("tartaric acid", "C4H6O6", Component.TARTRATE);

  /** Acetic acid, C2H4O2, one proton. */
  public static final Acid ACETIC = library("acetic acid", "CH3COOH", Component.ACETATE);

  /** Succinic acid, C4H6O4, two protons by definition. */
  public static final Acid SUCCINIC = library("succinic acid", "C4H6O4", Component.SUCCINATE);

  /** Pyruvic acid, C3H4O3, one proton. */
  public static final Acid PYRUVIC = library("pyruvic acid", "C3H4O3", Component.PYRUVATE);

  /** Carbonic acid, weighed as carbon dioxide, CO2; two protons by definition. */
  public static final Acid CARBONIC =
      library("carbon dioxide", "CO2", Component.CARBONATE, "carbonic acid", "H2CO3");

  /** Sulfurous acid, weighed as sulfur dioxide, SO2; two protons by definition. */
  public static final Acid SULFUROUS =
      library("sulfur dioxide", "SO2", Component.SULFITE, "sulfurous acid", "H2SO3");

  /** Sulfuric acid, H2SO4, two protons by definition, the first of them strong. */
  public static final Acid SULFURIC = library("sulfuric acid", "H2SO4", Component.SULFATE);

  /** Hydrochloric acid, HCl, one strong proton. */
  public static final Acid HYDROCHLORIC = library("hydrochloric acid", "HCl", Component.CHLORIDE);

  /** Nitric acid, HNO3, one strong proton; a titrant, and nothing to dose into a food. */
  public static final Acid NITRIC = library("nitric acid", "HNO3", Component.NITRATE);

  /** Oxalic acid without water of hydration, H2C2O4, two protons by definition. */
  public static final Acid OXALIC = library("oxalic acid", "H2C2O4", Component.OXALATE);

  /** Boric acid, B(OH)3, one proton. */
  public static final Acid BORIC = library("boric acid", "B(OH)3", Component.BORATE);

  /** Phthalic acid, C8H6O4, two protons by definition. */
  public static final Acid PHTHALIC = library("phthalic acid", "C8H6O4", Component.PHTHALATE);

  /** Ammonium, NH4+, one proton; add its counter-ion too. */
  public static final Acid AMMONIUM = library("ammonium", "NH4+", Component.AMMONIA);

  private final String name;
  private final @Nullable Formula formula;
  private final Component component;
  private final int protons;
  private final Map<Use, String> uses;

  private Acid(
      String name,
      @Nullable Formula formula,
      Component component,
      int protons,
      Map<Use, String> uses) {
    this.name = name;
    this.formula = formula;
    this.component = component;
    this.protons = protons;
    this.uses = uses;
  }

  private static Acid library(
      String name, String formulaText, Component component, String... otherNames) {
    Formula formula = Formula.parse(formulaText);
    Stoichiometry stoichiometry = Stoichiometry.of(name, formula, Map.of(component, 1.0));
    Acid acid =
        new Acid(
            name,
            formula,
            component,
            Math.toIntExact(Math.round(stoichiometry.hydrogenIons())),
            Map.of());
    return LIBRARY.add(acid, formula, name, otherNames);
  }

  /**
   * Returns the acids that this class names.
   *
   * @return an unmodifiable list
   */
  public static List<Acid> named() {
    return LIBRARY.members();
  }

  /**
   * Returns the acid with a name or a formula, written exactly so.
   *
   * @param nameOrFormula the name, such as "lactic acid" or "lactic", or the formula, such as
   *     "H3PO4"
   * @return the acid
   * @throws IllegalArgumentException if this class names none; the message lists near names
   */
  public static Acid named(String nameOrFormula) {
    Objects.requireNonNull(nameOrFormula, "nameOrFormula");
    return LIBRARY.find(nameOrFormula);
  }

  /**
   * Makes an acid that the library does not name, from its dissociation constants Ka as an exercise
   * or a textbook prints them: they hold at every temperature, and at zero ionic strength. The acid
   * without its protons carries one negative charge per proton.
   *
   * <p>For an acid that the library names, other constants belong to the constants and not to a
   * second acid: {@code ConstantSet.standard().withKa(Acid.ACETIC, 1.8e-5)}. Then acid and salts
   * share one component.
   *
   * @param name the name, such as "chloroacetic acid"
   * @param ka the dissociation constants Ka (not pKa) in mol/L or mol/kg, the first lost proton
   *     first, each more than 0 and none greater than the one before
   * @return the acid; it has no formula until {@link #withFormula(String)} gives it one
   * @throws IllegalArgumentException if the name is blank or belongs to an acid of the library,
   *     there is no constant, one is not more than 0, or their order is wrong
   * @see ConstantSet#withKa(Acid, double...)
   */
  public static Acid ofKa(String name, double... ka) {
    Objects.requireNonNull(ka, "ka");
    return own(name, EquilibriumConstant.ofKa(name, ka));
  }

  /**
   * Makes an acid that the library does not name, from its pKa values as an exercise or a textbook
   * prints them; for the rest like {@link #ofKa(String, double...)}.
   *
   * @param name the name, such as "chloroacetic acid"
   * @param pKa the pKa values (not Ka), the first lost proton first, not falling
   * @return the acid; it has no formula until {@link #withFormula(String)} gives it one
   * @throws IllegalArgumentException if the name is blank or belongs to an acid of the library,
   *     there is no pKa, one is not finite, or they fall
   * @see ConstantSet#withPKa(Acid, double...)
   */
  public static Acid ofPKa(String name, double... pKa) {
    Objects.requireNonNull(pKa, "pKa");
    return own(name, EquilibriumConstant.ofPKa(name, pKa));
  }

  private static Acid own(String name, EquilibriumConstant[] constants) {
    LIBRARY
        .withName(name)
        .ifPresent(
            known -> {
              throw new IllegalArgumentException(
                  "acid: \""
                      + name
                      + "\" is not possible for an acid of one's own; the library has "
                      + known
                      + ". Other constants for it go into a set, ConstantSet.withPKa or withKa, so"
                      + " that its salts share them");
            });
    return new Acid(
        name,
        null,
        Component.group(name, -constants.length, constants),
        constants.length,
        Map.of());
  }

  /**
   * Returns the same acid with a formula, so that it can be weighed and serve as a basis. Its
   * constants stay what they are.
   *
   * @param formulaText the formula of the neutral acid, such as "CH3COOH"
   * @return the acid with its formula
   * @throws IllegalArgumentException if the formula cannot be read, carries a charge, or has fewer
   *     hydrogen atoms than the acid has protons
   */
  public Acid withFormula(String formulaText) {
    Objects.requireNonNull(formulaText, "formulaText");
    Formula given = Formula.parse(formulaText);
    if (given.charge() != 0 || given.count(Element.of("H")) < protons) {
      throw new IllegalArgumentException(
          Excerpt.of(name)
              + ": formula "
              + Excerpt.of(given.text())
              + " is not possible for a neutral acid of "
              + protons
              + " protons");
    }
    return new Acid(name, given, component, protons, uses);
  }

  /**
   * Returns the same acid with a use that the caller answers for, where the library does not know
   * the acid or food laws differ.
   *
   * @param use the liquid that it may be dosed into
   * @param basis by what authority, such as "permit of our food authority"
   * @return the acid with that use
   * @throws IllegalArgumentException if the basis is blank, or the library refuses the acid in this
   *     liquid
   * @see Permissions
   */
  public Acid withUse(Use use, String basis) {
    Objects.requireNonNull(use, "use");
    return new Acid(
        name, formula, component, protons, Permissions.stating(name, this, uses, use, basis));
  }

  @Override
  public Map<Use, String> statedUses() {
    return uses;
  }

  /**
   * Returns the name.
   *
   * @return the name, such as "lactic acid"
   */
  @Override
  public String name() {
    return name;
  }

  /**
   * Returns the formula.
   *
   * @return the formula; empty for an acid that was made from constants alone
   */
  public Optional<Formula> formula() {
    return Optional.ofNullable(formula);
  }

  /**
   * Returns the component that the acid brings.
   *
   * @return the component
   */
  public Component component() {
    return component;
  }

  /**
   * Returns one mole of the component.
   *
   * @return a map of one entry
   */
  @Override
  public Map<Component, Double> components() {
    return Map.of(component, 1.0);
  }

  /**
   * Returns the number of protons by definition: those that separate the formula from the component
   * without protons. It is not the number that the acid gives off at any pH.
   *
   * @return the number of protons: 3 for citric acid, 2 for sulfuric acid
   */
  public int protonsByDefinition() {
    return protons;
  }

  /**
   * Returns the molar mass, water of hydration included.
   *
   * @return the molar mass
   * @throws IllegalStateException if the acid was made without a formula
   */
  @Override
  public MolarMass molarMass() {
    if (formula == null) {
      throw new IllegalStateException(
          Excerpt.of(name) + ": the molar mass is not known; give the acid a formula");
    }
    return formula.molarMass();
  }

  /**
   * Returns the equivalent <em>by definition</em>, molar mass divided by protons: the convention in
   * which an acidity is expressed, not what the acid delivers. The effective equivalents between
   * two pH values come from {@code org.brewchem.solution}.
   *
   * @return the equivalent in g/mol of protons, 90.078 for lactic acid
   * @throws IllegalStateException if the acid was made without a formula
   */
  @Override
  public double gramsPerEquivalent() {
    return molarMass().inGramsPerMole() / protons;
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Acid other
        && name.equals(other.name)
        && component.equals(other.component)
        && Objects.equals(formula, other.formula)
        && uses.equals(other.uses);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, component);
  }

  /** Returns the name. */
  @Override
  public String toString() {
    return name;
  }
}
