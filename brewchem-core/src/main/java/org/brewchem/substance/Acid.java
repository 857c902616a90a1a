package org.brewchem.substance;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;
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

  /** Lactic acid, C3H6O3, one proton. */
  public static final Acid LACTIC = named("lactic acid", "C3H6O3", Component.LACTATE);

  /** Phosphoric acid, H3PO4, three protons by definition. */
  public static final Acid PHOSPHORIC = named("phosphoric acid", "H3PO4", Component.PHOSPHATE);

  /** Citric acid without water of hydration, C6H8O7, three protons by definition. */
  public static final Acid CITRIC = named("citric acid", "C6H8O7", Component.CITRATE);

  /** Citric acid monohydrate, C6H8O7.H2O, three protons by definition. */
  public static final Acid CITRIC_MONOHYDRATE =
      named("citric acid monohydrate", "C6H8O7.H2O", Component.CITRATE);

  /** Malic acid, C4H6O5, two protons by definition. */
  public static final Acid MALIC = named("malic acid", "C4H6O5", Component.MALATE);

  /** Tartaric acid, C4H6O6, two protons by definition. */
  public static final Acid TARTARIC = named("tartaric acid", "C4H6O6", Component.TARTRATE);

  /** Acetic acid, C2H4O2, one proton. */
  public static final Acid ACETIC = named("acetic acid", "CH3COOH", Component.ACETATE);

  /** Succinic acid, C4H6O4, two protons by definition. */
  public static final Acid SUCCINIC = named("succinic acid", "C4H6O4", Component.SUCCINATE);

  /** Pyruvic acid, C3H4O3, one proton. */
  public static final Acid PYRUVIC = named("pyruvic acid", "C3H4O3", Component.PYRUVATE);

  /** Carbonic acid, weighed as carbon dioxide, CO2; two protons by definition. */
  public static final Acid CARBONIC = named("carbon dioxide", "CO2", Component.CARBONATE);

  /** Sulfurous acid, weighed as sulfur dioxide, SO2; two protons by definition. */
  public static final Acid SULFUROUS = named("sulfur dioxide", "SO2", Component.SULFITE);

  /** Sulfuric acid, H2SO4, two protons by definition, the first of them strong. */
  public static final Acid SULFURIC = named("sulfuric acid", "H2SO4", Component.SULFATE);

  /** Hydrochloric acid, HCl, one strong proton. */
  public static final Acid HYDROCHLORIC = named("hydrochloric acid", "HCl", Component.CHLORIDE);

  /** Oxalic acid without water of hydration, H2C2O4, two protons by definition. */
  public static final Acid OXALIC = named("oxalic acid", "H2C2O4", Component.OXALATE);

  /** Boric acid, B(OH)3, one proton. */
  public static final Acid BORIC = named("boric acid", "B(OH)3", Component.BORATE);

  /** Phthalic acid, C8H6O4, two protons by definition. */
  public static final Acid PHTHALIC = named("phthalic acid", "C8H6O4", Component.PHTHALATE);

  /** Ammonium, NH4+, one proton; add its counter-ion too. */
  public static final Acid AMMONIUM = named("ammonium", "NH4+", Component.AMMONIA);

  private final String name;
  private final @Nullable Formula formula;
  private final Component component;
  private final int protons;

  private Acid(String name, @Nullable Formula formula, Component component, int protons) {
    this.name = name;
    this.formula = formula;
    this.component = component;
    this.protons = protons;
  }

  private static Acid named(String name, String formulaText, Component component) {
    Formula formula = Formula.parse(formulaText);
    Stoichiometry stoichiometry = Stoichiometry.of(name, formula, Map.of(component, 1.0));
    return new Acid(
        name, formula, component, Math.toIntExact(Math.round(stoichiometry.hydrogenIons())));
  }

  /**
   * Makes an acid with the constants that an exercise or a textbook prints: they hold at every
   * temperature, and at zero ionic strength. The acid without its protons carries one negative
   * charge per proton.
   *
   * @param name the name, such as "acetic"
   * @param ka the dissociation constants in mol/L or mol/kg, the first lost proton first, each more
   *     than 0 and none greater than the one before
   * @return the acid; it has no formula until {@link #withFormula(String)} gives it one
   * @throws IllegalArgumentException if the name is blank, there is no constant, one is not more
   *     than 0, or their order is wrong
   */
  public static Acid of(String name, double... ka) {
    EquilibriumConstant[] constants = new EquilibriumConstant[ka.length];
    for (int i = 0; i < ka.length; i++) {
      double log10 = Math.log10(Checks.positive("Ka of " + name, ka[i], ""));
      constants[i] = EquilibriumConstant.ofLog10(log10);
    }
    return new Acid(name, null, Component.group(name, -ka.length, constants), ka.length);
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
    Formula given = Formula.parse(formulaText);
    if (given.charge() != 0 || given.count(Element.of("H")) < protons) {
      throw new IllegalArgumentException(
          name
              + ": formula "
              + given
              + " is not possible for a neutral acid of "
              + protons
              + " protons");
    }
    return new Acid(name, given, component, protons);
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
          name + ": the molar mass is not known; give the acid a formula");
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
        && Objects.equals(formula, other.formula);
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
