package org.brewchem.figure;

import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.uncertainty.Traced;
import org.brewchem.uncertainty.UncertainValue;
import org.brewchem.units.LabUnit;

/**
 * How the values of one meaning are shown as numbers: the unit, the way in and out, and how many
 * decimals a reader wants. Immutable.
 *
 * @param <Q> the meaning
 */
public final class Scale<Q> {

  /** Far above rounding, and small against the bend of a scale. */
  private static final double SLOPE_STEP = 1e-3;

  /** What is less than this share of the last decimal is shown as 0. */
  private static final double LEAST_SHOWN = 1e-3;

  private final String symbol;
  private final String prefix;
  private final ToDoubleFunction<Q> in;
  private final DoubleFunction<Q> of;
  private final int mostDecimals;

  private Scale(
      String symbol,
      String prefix,
      ToDoubleFunction<Q> in,
      DoubleFunction<Q> of,
      int mostDecimals) {
    this.symbol = Objects.requireNonNull(symbol, "symbol");
    this.prefix = prefix;
    this.in = Objects.requireNonNull(in, "in");
    this.of = Objects.requireNonNull(of, "of");
    this.mostDecimals = (int) Checks.inRange("most decimals", mostDecimals, "", 0, 12);
  }

  /**
   * Returns a scale.
   *
   * @param symbol the unit, such as "mg/L"; empty when there is none
   * @param in gives the number of a value in this unit
   * @param of makes a value of a number in this unit
   * @param mostDecimals the most decimals a reader wants, 0 to 12
   * @param <Q> the meaning
   * @return the scale
   * @throws IllegalArgumentException if the decimals are out of range
   */
  public static <Q> Scale<Q> of(
      String symbol, ToDoubleFunction<Q> in, DoubleFunction<Q> of, int mostDecimals) {
    return new Scale<>(symbol, "", in, of, mostDecimals);
  }

  /**
   * Returns a scale whose name stands before the number, as in "pH 4.38".
   *
   * @param name the name before the number
   * @param in gives the number of a value
   * @param of makes a value of a number
   * @param mostDecimals the most decimals a reader wants, 0 to 12
   * @param <Q> the meaning
   * @return the scale
   * @throws IllegalArgumentException if the decimals are out of range
   */
  public static <Q> Scale<Q> beforeTheNumber(
      String name, ToDoubleFunction<Q> in, DoubleFunction<Q> of, int mostDecimals) {
    return new Scale<>("", Checks.notBlank("name", name) + " ", in, of, mostDecimals);
  }

  /**
   * Returns the scale of a unit.
   *
   * @param unit the unit
   * @param mostDecimals the most decimals a reader wants, 0 to 12
   * @param <Q> the meaning
   * @return the scale
   * @throws IllegalArgumentException if the decimals are out of range
   */
  public static <Q> Scale<Q> of(LabUnit<Q> unit, int mostDecimals) {
    return of(unit.symbol(), unit::in, unit::from, mostDecimals);
  }

  /**
   * Returns the scale of plain numbers, such as ratios.
   *
   * @param symbol what stands behind the number, such as "by mass"; empty when nothing does
   * @param mostDecimals the most decimals a reader wants, 0 to 12
   * @return the scale
   * @throws IllegalArgumentException if the decimals are out of range
   */
  public static Scale<Double> number(String symbol, int mostDecimals) {
    return of(symbol, Double::doubleValue, Double::valueOf, mostDecimals);
  }

  /**
   * Returns the unit.
   *
   * @return the symbol behind the number; empty when there is none
   */
  public String symbol() {
    return symbol;
  }

  /**
   * Returns the most decimals that a reader wants.
   *
   * @return 0 to 12
   */
  public int mostDecimals() {
    return mostDecimals;
  }

  /**
   * Returns the number of a value.
   *
   * @param value the value
   * @return the number in this unit
   */
  public double in(Q value) {
    return in.applyAsDouble(value);
  }

  /**
   * Makes a value of a number.
   *
   * @param number the number in this unit
   * @return the value
   * @throws IllegalArgumentException if the number is not finite or the meaning does not allow it
   */
  public Q of(double number) {
    return of.apply(Checks.finite("number", number, symbol));
  }

  /**
   * Converts a number of this scale to another of the same meaning, with its sources.
   *
   * @param number a number in this unit
   * @param other the other scale
   * @return the number in the other's unit
   */
  public Traced convert(Traced number, Scale<Q> other) {
    Objects.requireNonNull(number, "number");
    if (other == this) {
      return number;
    }
    double here = number.value();
    double there = other.in(of(here));
    return Traced.linear(there, new Traced[] {number}, new double[] {slope(here, there, other)});
  }

  /** Central; to one side where the meaning forbids the other. */
  private double slope(double here, double there, Scale<Q> other) {
    double step = here == 0 ? SLOPE_STEP : Math.abs(here) * SLOPE_STEP;
    OptionalDouble above = inOther(here + step, other);
    OptionalDouble below = inOther(here - step, other);
    if (above.isPresent() && below.isPresent()) {
      return (above.getAsDouble() - below.getAsDouble()) / (2 * step);
    }
    return above.isPresent()
        ? (above.getAsDouble() - there) / step
        : (there - below.orElse(there)) / step;
  }

  private OptionalDouble inOther(double number, Scale<Q> other) {
    try {
      return OptionalDouble.of(other.in(of(number)));
    } catch (IllegalArgumentException e) {
      return OptionalDouble.empty();
    }
  }

  /**
   * Writes a number as a laboratory would: with its expanded uncertainty, which sets its decimals,
   * or without one to the decimals a reader wants.
   *
   * @param number the number in this unit
   * @return the text, such as "2.636 g/L, U 0.012 (k = 2)"
   */
  public String text(Traced number) {
    OptionalDouble u = number.standardUncertainty();
    if (u.isEmpty() || u.getAsDouble() == 0) {
      return text(number.value());
    }
    UncertainValue value = number.uncertain(symbol).orElseThrow();
    double k = value.coverageFactor();
    double expanded = k * u.getAsDouble();
    int most = decimalsFor(number.value(), expanded);
    int decimals = Math.min(most, decimalsOf(expanded));
    String half =
        expanded < Math.pow(10, -most) / 2
            ? NumberText.significant(expanded, 2)
            : NumberText.decimals(expanded, Math.max(decimals, 0));
    return withUnit(NumberText.decimals(number.value(), Math.max(decimals, 0)))
        + ", U "
        + half
        + " (k = "
        + (k == 2 ? "2" : NumberText.significant(k, 3))
        + ")";
  }

  /** The most decimals of a number; more for a small one that is known better than they show. */
  private int decimalsFor(double number, double expanded) {
    return Math.abs(number) > expanded
        ? Math.max(mostDecimals, decimalsOf(Math.abs(number)))
        : mostDecimals;
  }

  /** The decimals of a number with two significant digits. */
  private static int decimalsOf(double positive) {
    return 1 - (int) Math.floor(Math.log10(positive));
  }

  /**
   * Writes a number to the decimals a reader wants; to two digits one that they would show as 0.
   *
   * @param number the number in this unit
   * @return the text with its unit, without an uncertainty
   * @throws IllegalArgumentException if the number is not finite
   */
  public String text(double number) {
    double size = Math.abs(Checks.finite("number", number, symbol));
    double last = Math.pow(10, -mostDecimals);
    return withUnit(
        size < last && size >= LEAST_SHOWN * last
            ? NumberText.significant(number, 2)
            : NumberText.decimals(number, mostDecimals));
  }

  /**
   * Writes two numbers as a range.
   *
   * @param lower the lower number in this unit
   * @param upper the upper number in this unit
   * @return the text, such as "50 to 90 mg/L"
   * @throws IllegalArgumentException if a number is not finite
   */
  public String range(double lower, double upper) {
    Checks.finite("lower", lower, symbol);
    Checks.finite("upper", upper, symbol);
    return prefix
        + NumberText.decimals(lower, mostDecimals)
        + " to "
        + NumberText.decimals(upper, mostDecimals)
        + (symbol.isEmpty() ? "" : " " + symbol);
  }

  private String withUnit(String number) {
    return prefix + number + (symbol.isEmpty() ? "" : " " + symbol);
  }

  @Override
  public String toString() {
    return symbol.isEmpty() ? prefix.strip() : symbol;
  }
}
