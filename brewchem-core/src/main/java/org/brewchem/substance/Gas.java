package org.brewchem.substance;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A gas that dissolves as the fully protonated form of a component, with the constant of its
 * solubility (Henry's constant), in mol/(kg atm).
 */
public final class Gas {

  /** Carbon dioxide, by Plummer and Busenberg 1982 (0 to 90 °C). */
  public static final Gas CARBON_DIOXIDE = read("carbon dioxide");

  private final String name;
  private final Component component;
  private final EquilibriumConstant solubility;

  private Gas(String name, Component component, EquilibriumConstant solubility) {
    this.name = name;
    this.component = component;
    this.solubility = solubility;
  }

  private static Gas read(String name) {
    List<ResourceTable.Row> rows =
        ResourceTable.read("gases.csv").stream()
            .filter(row -> row.text("gas").equals(name))
            .toList();
    if (rows.size() != 1) {
      throw new IllegalStateException(
          name + ": the table holds " + rows.size() + " rows instead of one");
    }
    ResourceTable.Row row = rows.get(0);
    return new Gas(
        name,
        Component.of(row.species("component")),
        row.constant("log_K_25C", 1.0).from(row.provenance()));
  }

  /**
   * Returns the name.
   *
   * @return the name, such as "carbon dioxide"
   */
  public String name() {
    return name;
  }

  /**
   * Returns the component whose fully protonated form is the dissolved gas.
   *
   * @return the component
   */
  public Component component() {
    return component;
  }

  /**
   * Returns the solubility: activity of the dissolved gas in mol/kg, divided by its fugacity in
   * atm.
   *
   * @return the constant, log10 of mol/(kg atm)
   */
  public EquilibriumConstant solubility() {
    return solubility;
  }

  /**
   * Returns the same gas with a typed solubility.
   *
   * @param constant the constant, log10 of mol/(kg atm)
   * @return the gas with that constant
   */
  public Gas with(EquilibriumConstant constant) {
    Objects.requireNonNull(constant, "constant");
    return new Gas(name, component, constant);
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Gas other
        && name.equals(other.name)
        && component.equals(other.component)
        && solubility.equals(other.solubility);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, component, solubility);
  }

  /** Returns the name. */
  @Override
  public String toString() {
    return name;
  }
}
