package org.brewchem.units;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.brewchem.internal.Excerpt;

/**
 * The units that one kind of value is read and printed in, each under its one spelling.
 *
 * @param <Q> the value, such as {@link org.brewchem.quantity.MassConcentration}
 */
public final class UnitSet<Q> {

  /** They look alike and are both typed. */
  private static final char GREEK_MU = '\u03BC';

  private static final char MICRO_SIGN = '\u00B5';

  private final String meaning;
  private final LabUnit<Q> heldIn;
  private final Map<String, LabUnit<Q>> bySymbol;

  private UnitSet(String meaning, LabUnit<Q> heldIn, Map<String, LabUnit<Q>> bySymbol) {
    this.meaning = meaning;
    this.heldIn = heldIn;
    this.bySymbol = bySymbol;
  }

  /** Makes the set; the value holds its number in the unit of the symbol {@code heldIn}. */
  static <Q> UnitSet<Q> of(String meaning, String heldIn, List<LabUnit<Q>> units) {
    Map<String, LabUnit<Q>> bySymbol = new LinkedHashMap<>();
    units.forEach(unit -> bySymbol.put(unit.symbol(), unit));
    return new UnitSet<>(meaning, Objects.requireNonNull(bySymbol.get(heldIn), heldIn), bySymbol);
  }

  /**
   * Returns what the units measure.
   *
   * @return such as {@code mass concentration}
   */
  public String meaning() {
    return meaning;
  }

  /**
   * Returns the units in the order in which they are documented.
   *
   * @return the units, unmodifiable
   */
  public List<LabUnit<Q>> units() {
    return List.copyOf(bySymbol.values());
  }

  /**
   * Returns the unit of a symbol.
   *
   * @param symbol the symbol, in its one spelling
   * @return the unit
   * @throws UnitTextException if no unit of this set is spelled so
   */
  public LabUnit<Q> named(String symbol) {
    Objects.requireNonNull(symbol, "symbol");
    return named(symbol, 0, symbol);
  }

  /**
   * Reads a value: a number, one space and a unit; for a pH the name comes first.
   *
   * @param text the text, such as {@code 5.3 mg/L}
   * @return the value
   * @throws UnitTextException if the text is not a number and a unit of this set
   * @throws IllegalArgumentException if the value does not allow the number
   */
  public Q read(String text) {
    return read(text, 0, text.length());
  }

  /**
   * Returns a value as text that reads back to an equal value: in the unit that it is held in, with
   * all its digits.
   *
   * @param value the value
   * @return such as {@code 0.09207775176923001 g/L}
   */
  public String exact(Q value) {
    return heldIn.exact(value);
  }

  /** Reads the value that stands between two places of a text. */
  Q read(String text, int start, int end) {
    LabUnit<Q> first = bySymbol.values().iterator().next();
    return first.isBeforeTheNumber()
        ? readNumberAfter(first, text, start, end)
        : readNumberBeforeUnit(text, start, end);
  }

  private Q readNumberAfter(LabUnit<Q> unit, String text, int start, int end) {
    String name = unit.symbol() + " ";
    if (!text.startsWith(name, start)) {
      throw new UnitTextException(
          text, start, "\"" + name + "\" is missing", "it is written before the number");
    }
    NumberReader.Read number = NumberReader.between(text, start + name.length(), end);
    if (number.end() < end) {
      throw new UnitTextException(
          text, number.end(), "text after the " + meaning, "only the number is allowed here");
    }
    return unit.from(number.value());
  }

  private Q readNumberBeforeUnit(String text, int start, int end) {
    NumberReader.Read number = NumberReader.between(text, start, end);
    if (number.end() == end) {
      throw new UnitTextException(text, number.end(), "the unit is missing", allowed());
    }
    int unitStart = number.end() + 1;
    return named(text, unitStart, text.substring(unitStart, end)).from(number.value());
  }

  /** Returns the unit of a symbol that stands at a place of a text. */
  LabUnit<Q> named(String text, int position, String symbol) {
    return named(text, position, symbol, List.of());
  }

  /** As {@link #named(String, int, String)}; the message names the units of other sets too. */
  LabUnit<Q> named(String text, int position, String symbol, List<? extends UnitSet<?>> readToo) {
    LabUnit<Q> unit = bySymbol.get(symbol.replace(GREEK_MU, MICRO_SIGN));
    if (unit == null) {
      String meanings =
          Stream.concat(Stream.of(meaning), readToo.stream().map(UnitSet::meaning))
              .collect(Collectors.joining(" or "));
      throw new UnitTextException(
          text,
          position,
          "\"" + Excerpt.of(symbol) + "\" is not a unit of " + meanings,
          allowed(readToo));
    }
    return unit;
  }

  private String allowed() {
    return allowed(List.of());
  }

  private String allowed(List<? extends UnitSet<?>> readToo) {
    return Stream.concat(Stream.of(this), readToo.stream())
        .flatMap(set -> set.bySymbol.keySet().stream())
        .collect(Collectors.joining(", ", "allowed: ", ""));
  }

  /**
   * Returns the meaning and the symbols.
   *
   * @return such as {@code mass concentration [mg/L, g/L, g/hL, µg/L, ppm of dilute water]}
   */
  @Override
  public String toString() {
    return meaning + " " + bySymbol.keySet();
  }
}
