package org.brewchem.figure;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.MapEntries;
import org.jspecify.annotations.Nullable;

/**
 * Bounds on a figure: a lower limit, an upper limit or both, and perhaps an aim. It is hard unless
 * it carries a weight. It is made from typed values and holds numbers in the figure's unit.
 * Immutable.
 */
public final class Constraint {

  /**
   * What a conversion of units there and back may leave of a decimal, in units in the last place.
   */
  private static final int ROUNDINGS = 4;

  private final Figure<?> figure;
  private final double lower;
  private final double upper;
  private final OptionalDouble aim;
  private final OptionalDouble weight;
  private final OptionalDouble scale;

  private Constraint(
      Figure<?> figure,
      double lower,
      double upper,
      OptionalDouble aim,
      OptionalDouble weight,
      OptionalDouble scale) {
    this.figure = Objects.requireNonNull(figure, "figure");
    this.lower = lower;
    this.upper = upper;
    this.aim = aim;
    this.weight = weight;
    this.scale = scale;
    if (lower > upper) {
      throw new IllegalArgumentException(
          figure.title()
              + ": the lower limit "
              + figure.shown().text(lower)
              + " is not possible; at most the upper limit "
              + figure.shown().text(upper)
              + " is allowed");
    }
  }

  /**
   * Returns an upper limit.
   *
   * @param figure the figure
   * @param limit the most that is allowed
   * @param <Q> its meaning
   * @return the constraint
   * @throws IllegalArgumentException if the limit is not finite
   */
  public static <Q> Constraint atMost(Figure<Q> figure, Q limit) {
    double most = number(figure, "limit", limit);
    return of(figure, Double.NEGATIVE_INFINITY, most, OptionalDouble.empty());
  }

  /**
   * Returns a lower limit.
   *
   * @param figure the figure
   * @param limit the least that is allowed
   * @param <Q> its meaning
   * @return the constraint
   * @throws IllegalArgumentException if the limit is not finite
   */
  public static <Q> Constraint atLeast(Figure<Q> figure, Q limit) {
    double least = number(figure, "limit", limit);
    return of(figure, least, Double.POSITIVE_INFINITY, OptionalDouble.empty());
  }

  /**
   * Returns two limits.
   *
   * @param figure the figure
   * @param lower the least that is allowed
   * @param upper the most that is allowed
   * @param <Q> its meaning
   * @return the constraint
   * @throws IllegalArgumentException if the lower limit is above the upper or one is not finite
   */
  public static <Q> Constraint between(Figure<Q> figure, Q lower, Q upper) {
    double least = number(figure, "lower", lower);
    double most = number(figure, "upper", upper);
    return of(figure, least, most, OptionalDouble.empty());
  }

  /**
   * Returns an aim with a tolerance on both sides. The limits are their sum and difference as
   * decimals: around 4.3 by 0.1 they are 4.2 and 4.4.
   *
   * @param figure the figure
   * @param aim what is wanted
   * @param tolerance how far off is allowed, 0 or more, in the unit that the figure is shown in
   * @param <Q> its meaning
   * @return the constraint
   * @throws IllegalArgumentException if the tolerance is negative, or it or the aim is not finite
   */
  public static <Q> Constraint around(Figure<Q> figure, Q aim, double tolerance) {
    double middle = number(figure, "aim", aim);
    Checks.nonNegative("tolerance of " + figure.title(), tolerance, figure.shown().symbol());
    // As they are read: 4.3 and 0.1 make 4.4, of which the doubles fall short.
    BigDecimal aimed = BigDecimal.valueOf(middle);
    BigDecimal off = BigDecimal.valueOf(tolerance);
    return of(
        figure,
        aimed.subtract(off).doubleValue(),
        aimed.add(off).doubleValue(),
        OptionalDouble.of(middle));
  }

  /**
   * Returns a constraint to exactly this value: an aim without a tolerance, as for a dose.
   *
   * @param figure the figure
   * @param aim what is wanted
   * @param <Q> its meaning
   * @return the constraint
   * @throws IllegalArgumentException if the aim is not finite
   */
  public static <Q> Constraint exactly(Figure<Q> figure, Q aim) {
    return around(figure, aim, 0);
  }

  private static <Q> double number(Figure<Q> figure, String argument, Q value) {
    Objects.requireNonNull(value, argument);
    Scale<Q> shown = figure.shown();
    return Checks.finite(argument, shown.in(value), shown.symbol());
  }

  private static Constraint of(Figure<?> figure, double lower, double upper, OptionalDouble aim) {
    return new Constraint(
        figure, lower, upper, aim, OptionalDouble.empty(), OptionalDouble.empty());
  }

  /**
   * Makes the constraint soft.
   *
   * @param weight how much it counts against others, above 0
   * @return the constraint
   * @throws IllegalArgumentException if the weight is not above 0
   */
  public Constraint withWeight(double weight) {
    double checked = Checks.positive("weight of " + figure.title(), weight, "");
    return new Constraint(figure, lower, upper, aim, OptionalDouble.of(checked), scale);
  }

  /**
   * States how large a violation counts as one; if it is not stated, half the width of the band
   * does.
   *
   * @param scale above 0, in the unit that the figure is shown in
   * @return the constraint
   * @throws IllegalArgumentException if the scale is not above 0
   */
  public Constraint scaledBy(double scale) {
    double checked = Checks.positive("scale of " + figure.title(), scale, figure.shown().symbol());
    return new Constraint(figure, lower, upper, aim, weight, OptionalDouble.of(checked));
  }

  /**
   * Returns the figure.
   *
   * @return the figure
   */
  public Figure<?> figure() {
    return figure;
  }

  /**
   * Returns the lower limit.
   *
   * @return the least allowed, in the unit that the figure is shown in; empty when there is none
   */
  public OptionalDouble lower() {
    return Double.isInfinite(lower) ? OptionalDouble.empty() : OptionalDouble.of(lower);
  }

  /**
   * Returns the upper limit.
   *
   * @return the most allowed, in the unit that the figure is shown in; empty when there is none
   */
  public OptionalDouble upper() {
    return Double.isInfinite(upper) ? OptionalDouble.empty() : OptionalDouble.of(upper);
  }

  /**
   * Returns the aim.
   *
   * @return what is wanted, in the unit that the figure is shown in; empty when limits are all
   */
  public OptionalDouble aim() {
    return aim;
  }

  /**
   * Returns the weight.
   *
   * @return above 0; empty when the constraint is hard
   */
  public OptionalDouble weight() {
    return weight;
  }

  /**
   * Returns by how much a violation counts as one.
   *
   * @return as stated, else half the width of the band; empty for one limit without a stated scale
   */
  public OptionalDouble scale() {
    if (scale.isPresent() || Double.isInfinite(upper - lower) || upper == lower) {
      return scale;
    }
    return OptionalDouble.of((upper - lower) / 2);
  }

  /**
   * Returns by how much a violation counts as one, if somebody said so.
   *
   * @return the scale of {@link #scaledBy}; empty when half the band counts
   */
  public OptionalDouble statedScale() {
    return scale;
  }

  /**
   * Returns how far a number lies outside the limits.
   *
   * @param number the number, in the unit that the figure is shown in
   * @return negative below the lower limit, positive above the upper, 0 within and where nothing
   *     but the rounding of a conversion of units lies between, 4 units in the last place of limit
   *     or aim
   * @throws IllegalArgumentException if the number is not finite
   */
  public double excess(double number) {
    Checks.finite("number", number, "");
    return isBelow(number) ? number - lower : isAbove(number) ? number - upper : 0;
  }

  private boolean isBelow(double number) {
    return number < lower && lower - number > rounding(lower);
  }

  private boolean isAbove(double number) {
    return number > upper && number - upper > rounding(upper);
  }

  private double rounding(double limit) {
    return ROUNDINGS * Math.ulp(Math.max(Math.abs(limit), Math.abs(aim.orElse(limit))));
  }

  /**
   * Holds an interval against the limits.
   *
   * @param from its lower end
   * @param to its upper end
   * @return the verdict; undecided when a limit lies inside the interval
   */
  Verdict verdict(double from, double to) {
    if (isBelow(to)) {
      return Verdict.BELOW;
    }
    if (isAbove(from)) {
      return Verdict.ABOVE;
    }
    return isBelow(from) || isAbove(to) ? Verdict.UNDECIDED : Verdict.WITHIN;
  }

  /**
   * Returns the limits in words.
   *
   * @return for example "50 to 90 mg/L", without the figure's name
   */
  public String band() {
    Scale<?> shown = figure.shown();
    if (lower == upper) {
      return shown.text(lower);
    }
    if (lower == Double.NEGATIVE_INFINITY) {
      return "at most " + shown.text(upper);
    }
    return upper == Double.POSITIVE_INFINITY
        ? "at least " + shown.text(lower)
        : shown.range(lower, upper);
  }

  /**
   * Returns the constraint as a map of maps, numbers and strings, for JSON, a file or a database.
   *
   * @return a new map in a fixed order, which {@link #from} reads back without loss: the figure's
   *     name, its parameters, the unit that it is shown in, and what is stated of the limits,
   *     numbers in that unit
   */
  public Map<String, Object> toMap() {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("figure", figure.name());
    map.put("parameters", figure.parameters());
    map.put("unit", figure.shown().symbol());
    lower().ifPresent(limit -> map.put("atLeast", limit));
    upper().ifPresent(limit -> map.put("atMost", limit));
    aim.ifPresent(value -> map.put("aim", value));
    weight.ifPresent(value -> map.put("weight", value));
    scale.ifPresent(value -> map.put("scale", value));
    return map;
  }

  /**
   * Reads what {@link #toMap} wrote, also after a way through JSON.
   *
   * @param map the map
   * @param known the figures among which its figure is looked for, by name, parameters and unit
   * @return the constraint, equal to the one written
   * @throws IllegalArgumentException if an entry is missing or of another kind, the figure is not
   *     known, there is no limit, or the limits are not possible
   */
  public static Constraint from(Map<String, ?> map, Collection<? extends Figure<?>> known) {
    Objects.requireNonNull(known, "known");
    String name = MapEntries.text(map, "figure");
    Map<String, String> parameters = MapEntries.textsByName(map, "parameters");
    String unit = MapEntries.text(map, "unit");
    Figure<?> figure =
        known.stream()
            .filter(one -> one.name().equals(name))
            .filter(one -> one.parameters().equals(parameters))
            .filter(one -> one.shown().symbol().equals(unit))
            .findFirst()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "figure: "
                            + Excerpt.of(name + " " + parameters + " [" + unit + "]")
                            + " is not known here"));
    OptionalDouble aim = MapEntries.number(map, "aim");
    OptionalDouble least = MapEntries.number(map, "atLeast");
    OptionalDouble most = MapEntries.number(map, "atMost");
    if (least.isEmpty() && most.isEmpty()) {
      throw new IllegalArgumentException(
          figure.title() + ": no limit is not possible; atLeast, atMost or both are needed");
    }
    Constraint limits =
        of(
            figure,
            least.orElse(Double.NEGATIVE_INFINITY),
            most.orElse(Double.POSITIVE_INFINITY),
            aim);
    if (aim.isPresent() && limits.excess(aim.getAsDouble()) != 0) {
      throw new IllegalArgumentException(
          "aim: "
              + figure.shown().text(aim.getAsDouble())
              + " is not possible; "
              + limits.band()
              + " is allowed");
    }
    OptionalDouble weight = MapEntries.number(map, "weight");
    Constraint weighed = weight.isPresent() ? limits.withWeight(weight.getAsDouble()) : limits;
    OptionalDouble scale = MapEntries.number(map, "scale");
    return scale.isPresent() ? weighed.scaledBy(scale.getAsDouble()) : weighed;
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Constraint other
        && figure.equals(other.figure)
        && figure.shown().symbol().equals(other.figure.shown().symbol())
        && Double.compare(lower, other.lower) == 0
        && Double.compare(upper, other.upper) == 0
        && aim.equals(other.aim)
        && weight.equals(other.weight)
        && scale.equals(other.scale);
  }

  @Override
  public int hashCode() {
    return Objects.hash(figure, lower, upper, aim, weight, scale);
  }

  @Override
  public String toString() {
    // A pH is printed with its name before the number already.
    return band().startsWith(figure.title() + " ") ? band() : figure.title() + " " + band();
  }
}
