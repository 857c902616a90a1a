package org.brewchem.substance;

import java.util.List;
import java.util.Locale;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;

/**
 * A pH standard with its certified pH at each temperature, by which electrodes are calibrated.
 * Immutable.
 *
 * <p>Between the certified temperatures, 5 °C apart, the pH is interpolated linearly, which is off
 * by less than 0.001. Bought buffers of other composition carry their own table: type its pH.
 */
public final class PrimaryBuffer {

  /** Potassium hydrogen phthalate, 0.05 mol/kg, pH 4.005 at 25 °C, 0 to 50 °C. */
  public static final PrimaryBuffer PHTHALATE = read("potassium hydrogen phthalate");

  /** Potassium dihydrogen and disodium hydrogen phosphate, pH 6.865 at 25 °C, 0 to 50 °C. */
  public static final PrimaryBuffer PHOSPHATE = read("phosphate");

  /** Sodium bicarbonate and carbonate, pH 10.012 at 25 °C, 0 to 50 °C. */
  public static final PrimaryBuffer CARBONATE = read("carbonate");

  /** Potassium hydrogen tartrate, saturated at 25 °C, pH 3.557 there, 25 to 50 °C. */
  public static final PrimaryBuffer TARTRATE = read("potassium hydrogen tartrate");

  /** Potassium tetraoxalate, 0.05 mol/kg, pH 1.679 at 25 °C, 0 to 50 °C; secondary since 2002. */
  public static final PrimaryBuffer TETRAOXALATE = read("potassium tetraoxalate");

  private final String name;
  private final NavigableMap<Double, Double> pHByCelsius;
  private final Provenance provenance;

  private PrimaryBuffer(
      String name, NavigableMap<Double, Double> pHByCelsius, Provenance provenance) {
    this.name = name;
    this.pHByCelsius = pHByCelsius;
    this.provenance = provenance;
  }

  private static PrimaryBuffer read(String name) {
    List<ResourceTable.Row> rows =
        ResourceTable.read("primary-buffers.csv").stream()
            .filter(row -> row.text("buffer").equals(name))
            .toList();
    TreeMap<Double, Double> values = new TreeMap<>();
    rows.forEach(row -> values.put(row.number("t_C"), row.number("pHS")));
    if (values.isEmpty() || values.size() != rows.size()) {
      throw new IllegalStateException(
          name
              + ": the table holds "
              + rows.size()
              + " rows of "
              + values.size()
              + " temperatures");
    }
    return new PrimaryBuffer(name, values, rows.get(0).provenance());
  }

  /**
   * Returns the certified pH.
   *
   * @param temperature within the range of the table
   * @return the pH at that temperature
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public PH pH(Temperature temperature) {
    double celsius = temperature.inCelsius();
    var below = pHByCelsius.floorEntry(celsius);
    var above = pHByCelsius.ceilingEntry(celsius);
    if (below == null || above == null) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "temperature: %s is not possible; %s is certified from %.0f to %.0f °C",
              temperature,
              name,
              pHByCelsius.firstKey(),
              pHByCelsius.lastKey()));
    }
    double width = above.getKey() - below.getKey();
    double share = width > 0 ? (celsius - below.getKey()) / width : 0;
    return PH.of(below.getValue() + share * (above.getValue() - below.getValue()));
  }

  /**
   * Returns the name.
   *
   * @return the name, such as "phosphate"
   */
  public String name() {
    return name;
  }

  /**
   * Returns where the values come from.
   *
   * @return the source of the table
   */
  public Provenance provenance() {
    return provenance;
  }

  /** Returns the name. */
  @Override
  public String toString() {
    return name;
  }
}
