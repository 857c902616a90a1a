package org.brewchem.units;

import java.util.Objects;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import org.brewchem.internal.NumberText;

/**
 * A unit of the laboratory or the trade for one kind of value: its symbol, and the way from a
 * number in it to the value and back.
 *
 * @param <Q> the value, such as {@link org.brewchem.quantity.MassConcentration}
 */
public final class LabUnit<Q> {

  private final String symbol;
  private final boolean beforeTheNumber;
  private final DoubleFunction<Q> of;
  private final ToDoubleFunction<Q> in;

  private LabUnit(
      String symbol, boolean beforeTheNumber, DoubleFunction<Q> of, ToDoubleFunction<Q> in) {
    this.symbol = symbol;
    this.beforeTheNumber = beforeTheNumber;
    this.of = of;
    this.in = in;
  }

  static <Q> LabUnit<Q> of(String symbol, DoubleFunction<Q> of, ToDoubleFunction<Q> in) {
    return new LabUnit<>(symbol, false, of, in);
  }

  static <Q> LabUnit<Q> beforeTheNumber(
      String symbol, DoubleFunction<Q> of, ToDoubleFunction<Q> in) {
    return new LabUnit<>(symbol, true, of, in);
  }

  /**
   * Returns the symbol, with the basis and the end point where the unit has them.
   *
   * @return such as {@code mg/L} or {@code g/L as lactic acid, to pH 8.2}
   */
  public String symbol() {
    return symbol;
  }

  /**
   * Returns the value that a number in this unit stands for.
   *
   * @param number the number in this unit
   * @return the value
   * @throws IllegalArgumentException if the value does not allow the number
   */
  public Q from(double number) {
    return of.apply(number);
  }

  /**
   * Returns the number that a value has in this unit.
   *
   * @param value the value
   * @return the number in this unit
   * @throws IllegalArgumentException if the unit has an end point and the value another one
   */
  public double in(Q value) {
    Objects.requireNonNull(value, "value");
    return in.applyAsDouble(value);
  }

  /**
   * Returns a value as text in this unit with up to six significant digits.
   *
   * @param value the value
   * @return such as {@code 5.3 mg/L}
   */
  public String text(Q value) {
    return withNumber(NumberText.plain(in(value)));
  }

  /**
   * Returns a value as text in this unit, rounded to a number of significant digits.
   *
   * @param value the value
   * @param significantDigits the digits to keep, 1 to 15
   * @return such as {@code 2.80 g/L} for three digits
   * @throws IllegalArgumentException if {@code significantDigits} is not 1 to 15
   */
  public String text(Q value, int significantDigits) {
    return withNumber(NumberText.significant(in(value), significantDigits));
  }

  /**
   * Returns a value as text in this unit, rounded to a number of decimal places.
   *
   * @param value the value
   * @param decimals the decimal places to keep, 0 to 15
   * @return such as {@code pH 4.20} for two decimals
   * @throws IllegalArgumentException if {@code decimals} is not 0 to 15
   */
  public String textWithDecimals(Q value, int decimals) {
    return withNumber(NumberText.decimals(in(value), decimals));
  }

  /** Returns a value as text in this unit with all its digits. */
  String exact(Q value) {
    return withNumber(NumberText.exact(in(value)));
  }

  boolean isBeforeTheNumber() {
    return beforeTheNumber;
  }

  private String withNumber(String number) {
    return beforeTheNumber ? symbol + " " + number : number + " " + symbol;
  }

  /**
   * Returns the symbol.
   *
   * @return the same as {@link #symbol()}
   */
  @Override
  public String toString() {
    return symbol;
  }
}
