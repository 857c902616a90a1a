package org.brewchem.substance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.quantity.MolarMass;
import org.jspecify.annotations.Nullable;

/**
 * A solid that dissolves into components, with the constant of its dissolution into free metals,
 * fully deprotonated ligands, H+ and water:
 *
 * <pre>solid = components + {@link #hydrogenIons()} H+ + {@link #waters()} H2O.</pre>
 *
 * <p>Its saturation index is the base-10 logarithm of the product of the activities on the right
 * side, less log10 of the constant.
 */
public final class Mineral implements Compound {

  private static final List<Mineral> TABLE = read();

  /** Calcite, CaCO3, by Plummer and Busenberg 1982 (0 to 90 °C). */
  public static final Mineral CALCITE = of("calcite", "plummer-busenberg-1982");

  /** Aragonite, CaCO3, by Plummer and Busenberg 1982 (0 to 90 °C). */
  public static final Mineral ARAGONITE = of("aragonite", "plummer-busenberg-1982");

  /** Vaterite, CaCO3, by Plummer and Busenberg 1982 (0 to 90 °C). */
  public static final Mineral VATERITE = of("vaterite", "plummer-busenberg-1982");

  /** Gypsum, CaSO4.2H2O, by the USGS data set phreeqc.dat. */
  public static final Mineral GYPSUM = of("gypsum", "phreeqc-dat");

  /** Hydroxyapatite, Ca5(PO4)3OH, by the USGS data set phreeqc.dat. */
  public static final Mineral HYDROXYAPATITE = of("hydroxyapatite", "phreeqc-dat");

  /** Dicalcium phosphate dihydrate, CaHPO4.2H2O, by NIST 46. */
  public static final Mineral DICALCIUM_PHOSPHATE_DIHYDRATE =
      of("dicalcium phosphate dihydrate", "nist46");

  /** Dicalcium phosphate without water of hydration, CaHPO4, by NIST 46. */
  public static final Mineral DICALCIUM_PHOSPHATE_ANHYDROUS =
      of("dicalcium phosphate anhydrous", "nist46");

  /** Brucite, Mg(OH)2, log K 16.84 from memory; rows of the table have 16.30 and 17.14. */
  public static final Mineral BRUCITE = of("brucite", "brucite-set-a");

  /** Portlandite, slaked lime, Ca(OH)2, from memory. */
  public static final Mineral PORTLANDITE = of("portlandite", "portlandite-data-sets");

  private final String name;
  private final Formula formula;
  private final Map<Component, Double> components;
  private final Stoichiometry stoichiometry;
  private final EquilibriumConstant constant;

  private Mineral(
      String name,
      Formula formula,
      Map<Component, Double> components,
      EquilibriumConstant constant) {
    this.name = Checks.notBlank("name of the mineral", name);
    this.formula = formula;
    this.components = Stoichiometry.checked(name, components);
    this.stoichiometry = Stoichiometry.of(name, formula, this.components);
    this.constant = constant;
  }

  private static List<Mineral> read() {
    List<Mineral> minerals = new ArrayList<>();
    for (ResourceTable.Row row : ResourceTable.read("minerals.csv")) {
      Map<Component, Double> components = new LinkedHashMap<>();
      for (String part : row.text("components").split("; ", -1)) {
        int space = part.indexOf(' ');
        components.put(
            Component.of(SpeciesName.iupac(part.substring(0, space))),
            Double.valueOf(part.substring(space + 1)));
      }
      EquilibriumConstant constant = row.constant("log_K_25C", 1.0);
      if (!row.text("written_on").isEmpty()) {
        double ligands = components.getOrDefault(Component.PHOSPHATE, 0.0);
        EquilibriumConstant dissociation =
            AssociationConstants.of(row.species("written_on")).negate();
        for (int n = 0; n < ligands; n++) {
          constant = constant.plus(dissociation);
        }
      }
      minerals.add(
          new Mineral(
              row.text("mineral"),
              Formula.parse(row.text("formula")),
              components,
              constant.from(row.provenance())));
    }
    return List.copyOf(minerals);
  }

  /**
   * Returns a mineral with its solubility by a source.
   *
   * @param name the name, such as "calcite"
   * @param sourceKey the key of the source, such as "phreeqc-dat"
   * @return the mineral
   * @throws IllegalArgumentException if no row has this name and source
   */
  public static Mineral of(String name, String sourceKey) {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(sourceKey, "sourceKey");
    for (Mineral mineral : TABLE) {
      if (mineral.name.equals(name)
          && mineral.constant.provenance().orElseThrow().sourceKey().equals(sourceKey)) {
        return mineral;
      }
    }
    throw new IllegalArgumentException(
        "mineral: there is no \""
            + Excerpt.of(name)
            + "\" by source \""
            + Excerpt.of(sourceKey)
            + "\"");
  }

  /**
   * Returns all rows of the table, competing ones included.
   *
   * @return an unmodifiable list
   */
  public static List<Mineral> table() {
    return TABLE;
  }

  /**
   * Returns the same mineral with a typed constant.
   *
   * @param dissolution the constant of the dissolution into free metals, fully deprotonated
   *     ligands, H+ and water
   * @return the mineral with that constant
   */
  public Mineral with(EquilibriumConstant dissolution) {
    Objects.requireNonNull(dissolution, "dissolution");
    return new Mineral(name, formula, components, dissolution);
  }

  /**
   * Returns the name.
   *
   * @return the name, such as "calcite"
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
   * Returns the moles of H+ that one mole sets free when it dissolves into free metals and fully
   * deprotonated ligands.
   *
   * @return the moles of H+: 0 for calcite, 1 for CaHPO4, -1 for hydroxyapatite, which takes one up
   */
  public double hydrogenIons() {
    return stoichiometry.hydrogenIons();
  }

  /**
   * Returns the moles of water that one mole sets free when it dissolves.
   *
   * @return the moles of water: 2 for gypsum, 1 for hydroxyapatite
   */
  public double waters() {
    return stoichiometry.waters();
  }

  /**
   * Returns the constant of the dissolution into free metals, fully deprotonated ligands, H+ and
   * water.
   *
   * @return the constant, at zero ionic strength
   */
  public EquilibriumConstant constant() {
    return constant;
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Mineral other
        && name.equals(other.name)
        && formula.equals(other.formula)
        && components.equals(other.components)
        && constant.equals(other.constant);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, constant);
  }

  /** Returns the name. */
  @Override
  public String toString() {
    return name;
  }
}
