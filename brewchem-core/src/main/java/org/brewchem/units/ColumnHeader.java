package org.brewchem.units;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The heading of a table column, which carries the unit of its numbers in square brackets: {@code
 * calcium [mg/L]}. A column of names, dates or pH has a name alone.
 */
public final class ColumnHeader {

  private final String text;
  private final String name;
  private final Optional<String> unit;

  private ColumnHeader(String text, String name, Optional<String> unit) {
    this.text = text;
    this.name = name;
    this.unit = unit;
  }

  /**
   * Reads a heading: a name, then where there is a unit one space and the unit in brackets.
   *
   * @param text the heading, such as {@code calcium [mg/L]} or {@code sample}
   * @return the heading
   * @throws UnitTextException if the name or the unit is empty or the brackets do not close at the
   *     end
   */
  public static ColumnHeader parse(String text) {
    int open = text.indexOf('[');
    int close = text.indexOf(']');
    if (open < 0 && close < 0) {
      return new ColumnHeader(text, checkedName(text, text), Optional.empty());
    }
    if (open < 0 || close != text.length() - 1 || text.indexOf('[', open + 1) >= 0) {
      throw malformed(text, open < 0 ? close : open, "the brackets are not one pair at the end");
    }
    if (open == 0 || text.charAt(open - 1) != ' ') {
      throw malformed(text, open, "a name and one space are missing before the bracket");
    }
    String unit = text.substring(open + 1, close);
    if (unit.isBlank() || !unit.equals(unit.strip())) {
      throw malformed(text, open + 1, "the unit is empty or stands between spaces");
    }
    return new ColumnHeader(
        text, checkedName(text, text.substring(0, open - 1)), Optional.of(unit));
  }

  private static String checkedName(String text, String name) {
    if (name.isBlank() || !name.equals(name.strip())) {
      throw malformed(text, 0, "the name is empty or stands between spaces");
    }
    return name;
  }

  private static UnitTextException malformed(String text, int position, String problem) {
    return new UnitTextException(
        text, position, problem, "a heading such as \"calcium [mg/L]\" or \"sample\" is allowed");
  }

  /**
   * Returns the name of the column.
   *
   * @return the text before the unit
   */
  public String name() {
    return name;
  }

  /**
   * Returns the unit as it is written.
   *
   * @return the text between the brackets, or empty for a name alone
   */
  public Optional<String> unit() {
    return unit;
  }

  /**
   * Returns the unit of the column as one of the units of a meaning.
   *
   * @param units the units that are allowed
   * @param <Q> the value
   * @return the unit
   * @throws UnitTextException if the heading has no unit or another one
   */
  public <Q> LabUnit<Q> unitOf(UnitSet<Q> units) {
    return units.named(text, unitPosition(), unit.orElse(""));
  }

  /**
   * Returns the unit of the column as one of the units of a meaning, where units of other meanings
   * would have been read as well.
   *
   * @param units the units that are allowed
   * @param readToo the units of other meanings, which the message names too
   * @param <Q> the value
   * @return the unit, one of the first
   * @throws UnitTextException if the heading has no unit or another one
   */
  public <Q> LabUnit<Q> unitOf(UnitSet<Q> units, List<? extends UnitSet<?>> readToo) {
    Objects.requireNonNull(readToo, "readToo");
    return units.named(text, unitPosition(), unit.orElse(""), readToo);
  }

  /**
   * Returns the unit of the column as one of the units of a value found by titration, with its end
   * point.
   *
   * @param units the units that are allowed
   * @param <Q> the value
   * @return the unit
   * @throws UnitTextException if the heading has no unit, no end point or another unit
   */
  public <Q> LabUnit<Q> unitOf(EndPointUnits<Q> units) {
    return units.named(text, unitPosition(), text.length() - (unit.isPresent() ? 1 : 0));
  }

  private int unitPosition() {
    return unit.isPresent() ? name.length() + 2 : text.length();
  }

  /**
   * Returns the heading as it was read.
   *
   * @return the text
   */
  @Override
  public String toString() {
    return text;
  }
}
