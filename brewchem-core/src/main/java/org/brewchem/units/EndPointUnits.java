package org.brewchem.units;

import java.util.Objects;
import java.util.function.Function;
import org.brewchem.quantity.PH;

/**
 * The units of a value found by titration, whose text ends with the pH that the titration ends at:
 * {@code 215 mg/L as CaCO3, to pH 4.5}.
 *
 * @param <Q> the value, such as {@link org.brewchem.quantity.TitratableAcidity}
 */
public final class EndPointUnits<Q> {

  private static final String MARK = ", to ";

  private final Function<PH, UnitSet<Q>> toEndPoint;
  private final Function<Q, PH> endPointOf;

  EndPointUnits(Function<PH, UnitSet<Q>> toEndPoint, Function<Q, PH> endPointOf) {
    this.toEndPoint = toEndPoint;
    this.endPointOf = endPointOf;
  }

  /** The end point is written with all its digits: rounded, it would be another one. */
  static String symbol(String unit, PH endPoint) {
    return unit + MARK + LabUnits.PH.exact(endPoint);
  }

  /**
   * Returns the units for one end point; it is part of their symbols.
   *
   * @param endPoint the pH that the titration ends at
   * @return the units
   */
  public UnitSet<Q> to(PH endPoint) {
    Objects.requireNonNull(endPoint, "endPoint");
    return toEndPoint.apply(endPoint);
  }

  /**
   * Returns the unit of a symbol.
   *
   * @param symbol the symbol, such as {@code mg/L as CaCO3, to pH 4.5}
   * @return the unit
   * @throws UnitTextException if the end point is missing or no unit is spelled so
   */
  public LabUnit<Q> named(String symbol) {
    return named(symbol, 0, symbol.length());
  }

  /** Returns the unit of the symbol that stands between two places of a text. */
  LabUnit<Q> named(String text, int start, int end) {
    int mark = mark(text, start, end);
    PH endPoint = endPoint(text, mark, end);
    return to(endPoint).named(text, start, symbol(text.substring(start, mark), endPoint));
  }

  /**
   * Reads a value: a number, one space, a unit and the end point.
   *
   * @param text the text, such as {@code 215 mg/L as CaCO3, to pH 4.5}
   * @return the value
   * @throws UnitTextException if the text is not a number, a unit and an end point
   * @throws IllegalArgumentException if the value does not allow the number
   */
  public Q read(String text) {
    NumberReader.Read number = NumberReader.between(text, 0, text.length());
    if (number.end() == text.length()) {
      throw new UnitTextException(
          text, number.end(), "the unit is missing", "a unit and an end point are allowed");
    }
    return named(text, number.end() + 1, text.length()).from(number.value());
  }

  /**
   * Returns a value as text that reads back to an equal value: in the unit that it is held in, with
   * all digits of its number and its end point.
   *
   * @param value the value
   * @return such as {@code 31.12345678901234 mEq/L, to pH 8.2}
   */
  public String exact(Q value) {
    Objects.requireNonNull(value, "value");
    return to(endPointOf.apply(value)).exact(value);
  }

  private static int mark(String text, int start, int end) {
    int mark = text.lastIndexOf(MARK, end);
    if (mark < start) {
      throw new UnitTextException(
          text,
          end,
          "the end point is missing",
          "it is written after the unit, as in \"" + MARK + "pH 8.2\"");
    }
    return mark;
  }

  private static PH endPoint(String text, int mark, int end) {
    return LabUnits.PH.read(text, mark + MARK.length(), end);
  }
}
