package org.brewchem.substance;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Excerpt;
import org.brewchem.quantity.MolarMass;
import org.jspecify.annotations.Nullable;

/**
 * A chemical element with its abridged standard atomic weight of 2021 (CIAAW; Prohaska et al., Pure
 * Appl. Chem. 94 (2022) 573). For an element whose standard is an interval, such as hydrogen, the
 * weight is the conventional value, and the uncertainty spans normal materials.
 *
 * <p>The table holds the elements that waters, beers and laboratory reagents need, not all.
 */
public final class Element {

  private static final Library<Element> LIBRARY = read();

  private final String symbol;
  private final String name;
  private final BigDecimal weight;
  private final double uncertaintyGramsPerMole;
  private final Provenance provenance;

  private Element(ResourceTable.Row row) {
    this.symbol = row.text("symbol");
    this.name = row.text("element");
    this.weight = new BigDecimal(row.text("weight_g_per_mol"));
    this.uncertaintyGramsPerMole = row.number("uncertainty_g_per_mol");
    this.provenance = row.provenance();
  }

  private static Library<Element> read() {
    Library<Element> elements = new Library<>("element", "", symbol -> symbol);
    for (ResourceTable.Row row : ResourceTable.read("elements.csv")) {
      Element element = new Element(row);
      elements.add(element, null, element.symbol, element.name);
    }
    return elements;
  }

  /**
   * Returns the element with a symbol.
   *
   * @param symbol the symbol, such as "Ca"
   * @return the element
   * @throws IllegalArgumentException if the table does not hold it
   */
  public static Element of(String symbol) {
    Objects.requireNonNull(symbol, "symbol");
    return find(symbol)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "element: \""
                        + Excerpt.of(symbol)
                        + "\" is not in the table of atomic weights"));
  }

  /** Returns the element with a symbol, if the table holds it. */
  static Optional<Element> find(String symbol) {
    return LIBRARY.withName(symbol).filter(element -> element.symbol.equals(symbol));
  }

  /**
   * Returns the elements of the table.
   *
   * @return an unmodifiable list
   */
  public static List<Element> named() {
    return LIBRARY.members();
  }

  /**
   * Returns the element with an English name or a symbol, written exactly so.
   *
   * @param nameOrSymbol the name, such as "calcium", or the symbol, such as "Ca"
   * @return the element
   * @throws IllegalArgumentException if the table does not hold it; the message lists near names
   */
  public static Element named(String nameOrSymbol) {
    Objects.requireNonNull(nameOrSymbol, "nameOrSymbol");
    return LIBRARY.find(nameOrSymbol);
  }

  /**
   * Returns the symbol.
   *
   * @return the symbol, such as "Ca"
   */
  public String symbol() {
    return symbol;
  }

  /**
   * Returns the English name.
   *
   * @return the name, such as "calcium"
   */
  public String name() {
    return name;
  }

  /**
   * Returns the abridged atomic weight as a molar mass.
   *
   * @return the molar mass of the atoms
   */
  public MolarMass molarMass() {
    return MolarMass.ofGramsPerMole(weight.doubleValue());
  }

  /**
   * Returns the uncertainty that is published with the abridged atomic weight: for an interval, the
   * reach of normal materials.
   *
   * @return the uncertainty in g/mol
   */
  public double uncertaintyInGramsPerMole() {
    return uncertaintyGramsPerMole;
  }

  /**
   * Returns where the weight comes from.
   *
   * @return the provenance
   */
  public Provenance provenance() {
    return provenance;
  }

  /** The weight as printed, so that sums of weights are exact. */
  BigDecimal weight() {
    return weight;
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Element other && symbol.equals(other.symbol);
  }

  @Override
  public int hashCode() {
    return symbol.hashCode();
  }

  /** Returns the symbol. */
  @Override
  public String toString() {
    return symbol;
  }
}
