package org.brewchem.substance;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.jspecify.annotations.Nullable;

/**
 * The parameters of the extended Debye-Hückel equation for single species, by the name of the
 * species (see {@link Component#form(int)} and {@link IonPair#product()}). I is the ionic strength
 * in mol/kg:
 *
 * <pre>charged:  log10 gamma = -A z² sqrt(I) / (1 + B a sqrt(I)) + b I
 * neutral:  log10 gamma = b I.</pre>
 *
 * <p>Source: the USGS data set phreeqc.dat, which carries, and in part refits, those of Truesdell
 * and Jones, J. Res. U.S. Geol. Survey 2 (1974) 233; each row of the table says which.
 */
public final class IonSizeParameters {

  private static final IonSizeParameters STANDARD = read();

  private final Map<String, Values> bySpecies;

  private IonSizeParameters(Map<String, Values> bySpecies) {
    this.bySpecies = Collections.unmodifiableMap(bySpecies);
  }

  private static IonSizeParameters read() {
    Map<String, Values> values = new LinkedHashMap<>();
    for (ResourceTable.Row row : ResourceTable.read("ion-size-parameters.csv")) {
      Values parameters = new Values(row.number("a_angstrom"), row.number("b_kg_per_mol"));
      if (values.put(row.species("species"), parameters) != null) {
        throw new IllegalStateException(row.place() + ": a second row for one species");
      }
    }
    return new IonSizeParameters(values);
  }

  /**
   * Returns the default parameters. Species that the table does not name, all organic ones among
   * them, have none.
   *
   * @return the parameters
   */
  public static IonSizeParameters standard() {
    return STANDARD;
  }

  /**
   * Returns the parameters of a species.
   *
   * @param species the name of the species, such as "HPO42-"
   * @return its parameters; empty when the table does not name it
   */
  public Optional<Values> of(String species) {
    Objects.requireNonNull(species, "species");
    return Optional.ofNullable(bySpecies.get(species));
  }

  /**
   * Returns all parameters.
   *
   * @return an unmodifiable map from the name of a species to its parameters
   */
  public Map<String, Values> all() {
    return bySpecies;
  }

  /**
   * Returns new parameters with a species added or changed.
   *
   * @param species the name of the species
   * @param angstroms the ion size a in ångström, 0 or more
   * @param slope b in kg/mol
   * @return the new parameters
   * @throws IllegalArgumentException if the name is blank, a is negative or b is not finite
   */
  public IonSizeParameters with(String species, double angstroms, double slope) {
    Map<String, Values> copy = new LinkedHashMap<>(bySpecies);
    copy.put(Checks.notBlank("species", species), new Values(angstroms, slope));
    return new IonSizeParameters(copy);
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof IonSizeParameters other && bySpecies.equals(other.bySpecies);
  }

  @Override
  public int hashCode() {
    return bySpecies.hashCode();
  }

  /**
   * The parameters of one species.
   *
   * @param angstroms the ion size a in ångström, 0 or more; without meaning for a neutral species
   * @param slope b in kg/mol
   */
  public record Values(double angstroms, double slope) {

    /**
     * Makes the parameters of one species.
     *
     * @param angstroms the ion size a in ångström, 0 or more
     * @param slope b in kg/mol
     * @throws IllegalArgumentException if a is negative or b is not finite
     */
    public Values {
      Checks.nonNegative("ion size a", angstroms, "ångström");
      Checks.finite("slope b", slope, "kg/mol");
    }
  }
}
