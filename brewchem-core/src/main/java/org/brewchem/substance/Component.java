package org.brewchem.substance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.quantity.MolarMass;
import org.jspecify.annotations.Nullable;

/**
 * A family of species that differ only by the protons they hold and share one total concentration:
 * all the phosphate of a beer, all the dissolved carbon dioxide with its ions, or a strong ion,
 * which is a family of one.
 *
 * <p>A component is named after its form without protons, in IUPAC's notation with the charge
 * number before its sign: {@code PO43-}, {@code citrate3-}. That form carries {@link
 * #chargeWithoutProtons()}; each of up to {@link #protons()} protons adds one. Step 1 of its
 * dissociation is the first proton lost by the fully protonated form. Dissolved carbon dioxide (CO2
 * and H2CO3 together) counts as the fully protonated carbonate, dissolved sulfur dioxide as the
 * fully protonated sulfite, and boric acid as the protonated form of B(OH)4-. The strong first
 * proton of sulfuric acid is no step.
 *
 * <p>Two components are equal when their keys are; only equal components share one total. The
 * constants of the named components live in {@link ConstantSet}s; only a component made by a caller
 * carries its own, and its key then holds them, so that two different acids never pass for one. A
 * component with own constants is therefore never equal to a named one: lactate of a caller's own
 * stands beside {@link #LACTATE} in a solution.
 *
 * <p>As a {@link Solute} a component brings one mole of itself; the solution finds its protons.
 */
public final class Component implements Solute {

  private static final Library<Component> LIBRARY = new Library<>("component", "", Formula::parse);

  /** Sodium, Na+. */
  public static final Component SODIUM = strong("sodium", "Na+");

  /** Potassium, K+. */
  public static final Component POTASSIUM = strong("potassium", "K+");

  /** Calcium, Ca2+. */
  public static final Component CALCIUM = strong("calcium", "Ca^2+");

  /** Magnesium, Mg2+. */
  public static final Component MAGNESIUM = strong("magnesium", "Mg^2+");

  /** Chloride, Cl-. */
  public static final Component CHLORIDE = strong("chloride", "Cl-");

  /** Nitrate, NO3-. */
  public static final Component NITRATE = strong("nitrate", "NO3-");

  /** Carbonate: CO32-, HCO3- and dissolved carbon dioxide. */
  public static final Component CARBONATE = weak("carbonate", "CO3^2-", "HCO3-", "CO2(aq)");

  /** Phosphate: PO43- to H3PO4. */
  public static final Component PHOSPHATE =
      weak("phosphate", "PO4^3-", "HPO42-", "H2PO4-", "H3PO4");

  /** Sulfate: SO42- and HSO4-. */
  public static final Component SULFATE = weak("sulfate", "SO4^2-", "HSO4-");

  /** Sulfite: SO32-, HSO3- and dissolved sulfur dioxide. */
  public static final Component SULFITE = weak("sulfite", "SO3^2-", "HSO3-", "SO2(aq)");

  /** Borate: B(OH)4- and boric acid, B(OH)3. */
  public static final Component BORATE = weak("borate", "B(OH)4-", "B(OH)3");

  /** Ammonia: NH3 and NH4+. */
  public static final Component AMMONIA = weak("ammonia", "NH3", "NH4+");

  /** Lactate. */
  public static final Component LACTATE = organic("lactate", "C3H5O3-", 1);

  /** Citrate. */
  public static final Component CITRATE = organic("citrate", "C6H5O7^3-", 3);

  /** Malate. */
  public static final Component MALATE = organic("malate", "C4H4O5^2-", 2);

  /** Tartrate. */
  public static final Component TARTRATE = organic("tartrate", "C4H4O6^2-", 2);

  /** Acetate. */
  public static final Component ACETATE = organic("acetate", "C2H3O2-", 1);

  /** Succinate. */
  public static final Component SUCCINATE = organic("succinate", "C4H4O4^2-", 2);

  /** Pyruvate, its keto form and its hydrate together. */
  public static final Component PYRUVATE = organic("pyruvate", "C3H3O3-", 1);

  /** Oxalate. */
  public static final Component OXALATE = organic("oxalate", "C2O4^2-", 2);

  /** Phthalate. */
  public static final Component PHTHALATE = organic("phthalate", "C8H4O4^2-", 2);

  /** Formate. */
  public static final Component FORMATE = organic("formate", "CHO2-", 1);

  /** Propionate. */
  public static final Component PROPIONATE = organic("propionate", "C3H5O2-", 1);

  /** Butyrate. */
  public static final Component BUTYRATE = organic("butyrate", "C4H7O2-", 1);

  /** Gluconate. */
  public static final Component GLUCONATE = organic("gluconate", "C6H11O7-", 1);

  /** Ascorbate, with the first proton only; the second is lost above pH 11. */
  public static final Component ASCORBATE = organic("ascorbate", "C6H7O6-", 1);

  /** Glycinate: the amino acid glycine from its cation to its anion. */
  public static final Component GLYCINATE = organic("glycinate", "C2H4NO2-", 2);

  /** Histidinate: carboxyl, imidazole and amino group of histidine. */
  public static final Component HISTIDINATE = organic("histidinate", "C6H8N3O2-", 3);

  /** Glutamate: both carboxyl groups and the amino group of glutamic acid. */
  public static final Component GLUTAMATE = organic("glutamate", "C5H7NO4^2-", 3);

  /** Aspartate: both carboxyl groups and the amino group of aspartic acid. */
  public static final Component ASPARTATE = organic("aspartate", "C4H5NO4^2-", 3);

  /** Imidazole, a base that takes up one proton. */
  public static final Component IMIDAZOLE = organic("imidazole", "C3H4N2", 1);

  /** Tris(hydroxymethyl)aminomethane, a base that takes up one proton. */
  public static final Component TRIS = organic("tris", "C4H11NO3", 1);

  private final String key;
  private final String name;
  private final int chargeWithoutProtons;
  private final List<String> forms;
  private final @Nullable Formula formula;
  private final List<EquilibriumConstant> ownConstants;

  private Component(
      String key,
      String name,
      int chargeWithoutProtons,
      List<String> forms,
      @Nullable Formula formula,
      List<EquilibriumConstant> ownConstants) {
    this.key = key;
    this.name = name;
    this.chargeWithoutProtons = chargeWithoutProtons;
    this.forms = List.copyOf(forms);
    this.formula = formula;
    this.ownConstants = List.copyOf(ownConstants);
  }

  private static Component strong(String name, String formulaText) {
    return weak(name, formulaText);
  }

  private static Component weak(String name, String formulaText, String... protonated) {
    Formula formula = Formula.parse(formulaText);
    List<String> forms = new ArrayList<>(List.of(formula.text()));
    forms.addAll(Arrays.asList(protonated));
    return library(
        new Component(formula.text(), name, formula.charge(), forms, formula, List.of()), formula);
  }

  private static Component organic(String name, String formulaText, int protons) {
    Formula formula = Formula.parse(formulaText);
    return library(
        new Component(
            name + SpeciesName.charge(formula.charge()),
            name,
            formula.charge(),
            forms(name, formula.charge(), protons),
            formula,
            List.of()),
        formula);
  }

  private static Component library(Component component, Formula formula) {
    return LIBRARY.add(component, formula, component.key, component.name, formula.text());
  }

  private static List<String> forms(String name, int chargeWithoutProtons, int protons) {
    List<String> forms = new ArrayList<>();
    forms.add(name + SpeciesName.charge(chargeWithoutProtons));
    for (int n = 1; n <= protons; n++) {
      String hydrogen = n == 1 ? "H" : "H" + n;
      forms.add(hydrogen + "(" + name + ")" + SpeciesName.charge(chargeWithoutProtons + n));
    }
    return forms;
  }

  /**
   * Returns the named component with a key.
   *
   * @param key the key, such as "PO43-" or "lactate-"
   * @return the component
   * @throws IllegalArgumentException if there is none with this key
   */
  public static Component of(String key) {
    Objects.requireNonNull(key, "key");
    return LIBRARY
        .withName(key)
        .filter(component -> component.key.equals(key))
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "component: \""
                        + Excerpt.of(key)
                        + "\" is not one of "
                        + Excerpt.of(LIBRARY.members().toString(), 250)));
  }

  /**
   * Returns the named components.
   *
   * @return an unmodifiable list
   */
  public static List<Component> named() {
    return LIBRARY.members();
  }

  /**
   * Returns the named component with a name, key or formula, written exactly so.
   *
   * @param nameOrFormula the name, such as "phosphate", the key, such as "PO43-" or "lactate-", or
   *     the formula without protons as {@link Formula} reads it, such as "PO4^3-"
   * @return the component
   * @throws IllegalArgumentException if there is none; the message lists near names
   */
  public static Component named(String nameOrFormula) {
    Objects.requireNonNull(nameOrFormula, "nameOrFormula");
    return LIBRARY.find(nameOrFormula);
  }

  /**
   * Makes a strong ion that the table does not name, such as fluoride or iron(II): it never takes
   * up or gives off a proton.
   *
   * @param name the name, such as "fluoride"
   * @param formula the formula with its charge as {@link Formula} reads it, such as "F-" or
   *     "Fe^2+"; the key is its text, "Fe2+"
   * @return the component
   * @throws IllegalArgumentException if the formula cannot be read, has no charge, or belongs to a
   *     named component
   */
  public static Component strongIon(String name, String formula) {
    Objects.requireNonNull(formula, "formula");
    Checks.notBlank("name of the ion", name);
    Formula parsed = Formula.parse(formula);
    if (parsed.charge() == 0) {
      throw new IllegalArgumentException("strong ion: " + Excerpt.of(formula) + " has no charge");
    }
    for (Component component : LIBRARY.members()) {
      if (parsed.equals(component.formula)) {
        throw new IllegalArgumentException(
            "strong ion: " + Excerpt.of(formula) + " is already the component " + component.key);
      }
    }
    String key = parsed.text();
    return new Component(key, name, parsed.charge(), List.of(key), parsed, List.of());
  }

  /**
   * Makes a group of buffering sites with pKa values that do not change with temperature, such as
   * the lumped carboxyl groups of a beer's proteins.
   *
   * @param name the name, such as "carboxyl groups"
   * @param chargeWithoutProtons the charge without any of the protons: -1 for a carboxyl group, 0
   *     for an amino or imidazole group
   * @param pKa the stepwise pKa values at zero ionic strength, the first lost proton first, not
   *     falling
   * @return the component, which carries its own constants
   * @throws IllegalArgumentException if the name is blank, there is no pKa, one is not finite, or
   *     they fall
   */
  public static Component group(String name, int chargeWithoutProtons, double... pKa) {
    Objects.requireNonNull(pKa, "pKa");
    return group(name, chargeWithoutProtons, EquilibriumConstant.ofPKa(name, pKa));
  }

  /**
   * Makes a group of buffering sites with typed constants.
   *
   * @param name the name
   * @param chargeWithoutProtons the charge without any of the protons
   * @param dissociation the constants of dissociation, log10 Ka, the first lost proton first; at 25
   *     °C none may be greater than the one before
   * @return the component, which carries its own constants
   * @throws IllegalArgumentException if the name is blank, there is no constant, or their order is
   *     wrong
   */
  public static Component group(
      String name, int chargeWithoutProtons, EquilibriumConstant... dissociation) {
    Checks.notBlank("name of the group", name);
    Objects.requireNonNull(dissociation, "dissociation");
    checkOrder(name, Arrays.asList(dissociation));
    List<String> definitions = new ArrayList<>();
    for (EquilibriumConstant constant : dissociation) {
      definitions.add(constant.definition());
    }
    return new Component(
        name
            + SpeciesName.charge(chargeWithoutProtons)
            + " {"
            + String.join("; ", definitions)
            + "}",
        name,
        chargeWithoutProtons,
        forms(name, chargeWithoutProtons, dissociation.length),
        null,
        Arrays.asList(dissociation));
  }

  /** Refuses an empty list, and steps that become stronger at 25 °C, by definition 298.15 K. */
  static void checkOrder(String name, List<EquilibriumConstant> dissociation) {
    if (dissociation.isEmpty()) {
      throw new IllegalArgumentException(Excerpt.of(name) + ": at least one constant is needed");
    }
    for (int i = 1; i < dissociation.size(); i++) {
      double before = -dissociation.get(i - 1).log10(298.15);
      double pKa = -dissociation.get(i).log10(298.15);
      if (pKa < before) {
        throw Checks.outOfRange(
            "pKa " + (i + 1) + " of " + name,
            pKa,
            "",
            "the " + before + " of the step before or more");
      }
    }
  }

  /**
   * Returns the key, the identity of the component.
   *
   * @return the key, such as "PO43-", "Na+" or "lactate-"
   */
  public String key() {
    return key;
  }

  /**
   * Returns the name.
   *
   * @return the name, such as "phosphate"
   */
  @Override
  public String name() {
    return name;
  }

  /**
   * Returns the charge of the form without protons.
   *
   * @return the charge number, -3 for phosphate
   */
  public int chargeWithoutProtons() {
    return chargeWithoutProtons;
  }

  /**
   * Returns how many weak protons the component takes up at most.
   *
   * @return the number of dissociation steps: 3 for phosphate, 1 for sulfate, 0 for a strong ion
   */
  public int protons() {
    return forms.size() - 1;
  }

  /**
   * Returns the name of the form that holds some of the protons.
   *
   * @param protons how many protons it holds, from 0 to {@link #protons()}
   * @return the name, such as "HPO42-", "CO2(aq)" or "H2(citrate)-"
   * @throws IllegalArgumentException if there is no such form
   */
  public String form(int protons) {
    if (protons < 0 || protons >= forms.size()) {
      throw Checks.outOfRange("protons of " + key, protons, "", "0 to " + protons());
    }
    return forms.get(protons);
  }

  /**
   * Returns the formula of the form without protons.
   *
   * @return the formula; empty when it is not known
   */
  public Optional<Formula> formula() {
    return Optional.ofNullable(formula);
  }

  /**
   * Returns the molar mass of the form without protons.
   *
   * @return the molar mass; empty when it is not known
   */
  public Optional<MolarMass> molarMass() {
    return formula().map(Formula::molarMass);
  }

  /**
   * Returns the dissociation constants that a caller typed with the component. A {@link
   * ConstantSet} uses them when it has no row for the component.
   *
   * @return log10 Ka, the first lost proton first; empty for a named component
   */
  public List<EquilibriumConstant> ownConstants() {
    return ownConstants;
  }

  /**
   * Returns one mole of this component.
   *
   * @return a map of one entry
   */
  @Override
  public Map<Component, Double> components() {
    return Map.of(this, 1.0);
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Component other && key.equals(other.key);
  }

  @Override
  public int hashCode() {
    return key.hashCode();
  }

  /** Returns the key. */
  @Override
  public String toString() {
    return key;
  }
}
