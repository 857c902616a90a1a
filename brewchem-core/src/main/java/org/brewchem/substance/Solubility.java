package org.brewchem.substance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.MolarMass;
import org.brewchem.quantity.Temperature;

/**
 * How much of a salt water takes up by a printed table, for salts that are more soluble than the
 * activity rules cover. For a sparingly soluble salt use its {@link Mineral}.
 *
 * @param compound the salt, any hydrate of it
 * @param molesPerKilogram the most that a kilogram of water holds, mol
 * @param temperature that of the row
 * @param provenance where the row comes from
 */
public record Solubility(
    Compound compound, double molesPerKilogram, Temperature temperature, Provenance provenance) {

  /** Rows further from a temperature than this say nothing about it, K (our choice). */
  private static final double REACH = 15;

  private static final List<Row> ROWS = read();

  private record Row(String name, double celsius, double molesPerKilogram, Provenance provenance) {}

  private static List<Row> read() {
    List<Row> rows = new ArrayList<>();
    for (ResourceTable.Row row : ResourceTable.read("solubilities.csv")) {
      MolarMass counted = Formula.parse(row.text("counted_as")).molarMass();
      double moles = 10 * row.number("grams_per_100_g_water") / counted.inGramsPerMole();
      for (String name : row.text("compounds").split("; ", -1)) {
        rows.add(new Row(name, row.number("t_C"), moles, row.provenance()));
      }
    }
    return List.copyOf(rows);
  }

  /**
   * Makes a solubility; what is known comes from {@link #of}.
   *
   * @param compound the salt, any hydrate of it
   * @param molesPerKilogram the most that a kilogram of water holds, mol, above 0
   * @param temperature that of the row
   * @param provenance where the row comes from
   * @throws IllegalArgumentException if the amount is not above 0
   */
  public Solubility {
    Checks.positive("solubility", molesPerKilogram, "mol/kg");
    Objects.requireNonNull(compound, "compound");
    Objects.requireNonNull(temperature, "temperature");
    Objects.requireNonNull(provenance, "provenance");
  }

  /**
   * Returns the solubility by the row nearest in temperature.
   *
   * @param compound the salt
   * @param temperature the temperature of the water
   * @return the solubility; empty where no row lies within 15 K
   */
  public static Optional<Solubility> of(Compound compound, Temperature temperature) {
    Objects.requireNonNull(compound, "compound");
    double celsius = temperature.inCelsius();
    return ROWS.stream()
        .filter(row -> row.name.equals(compound.name()))
        .filter(row -> Math.abs(row.celsius - celsius) <= REACH)
        .min(Comparator.comparingDouble(row -> Math.abs(row.celsius - celsius)))
        .map(
            row ->
                new Solubility(
                    compound,
                    row.molesPerKilogram,
                    Temperature.ofCelsius(row.celsius),
                    row.provenance));
  }
}
