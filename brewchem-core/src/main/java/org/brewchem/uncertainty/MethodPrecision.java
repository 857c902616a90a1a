package org.brewchem.uncertainty;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.internal.DataTable;

/**
 * How closely results of a method agree: within one laboratory (repeatability) and between
 * laboratories (reproducibility). Published precisions carry their source. For a method without a
 * published one, such as the titratable acidity of beer, state your own.
 *
 * <p>The limits r95 and R95 are 2.8 times the standard deviations (ISO 5725-6, from memory).
 */
public final class MethodPrecision {

  private static final double FACTOR = 2.8;

  private final String method;
  private final double repeatability;
  private final OptionalDouble reproducibility;
  private final String unit;
  private final String source;

  private MethodPrecision(
      String method,
      double repeatability,
      OptionalDouble reproducibility,
      String unit,
      String source) {
    this.method = Checks.notBlank("method", method);
    this.unit = Objects.requireNonNull(unit, "unit");
    this.source = source;
    this.repeatability = Checks.positive("repeatability standard deviation", repeatability, unit);
    this.reproducibility = reproducibility;
    reproducibility.ifPresent(
        between ->
            Checks.inRange(
                "reproducibility standard deviation",
                between,
                unit,
                repeatability,
                Double.MAX_VALUE));
  }

  /**
   * States your own repeatability.
   *
   * @param method what is measured, and how
   * @param standardDeviation s_r of one laboratory, above 0, in {@code unit}
   * @param unit the unit; empty when there is none
   * @return the precision, without a reproducibility
   * @throws IllegalArgumentException if the method is blank or the number not above 0
   */
  public static MethodPrecision stated(String method, double standardDeviation, String unit) {
    return new MethodPrecision(
        method, standardDeviation, OptionalDouble.empty(), unit, "stated by the user");
  }

  /**
   * Adds the reproducibility.
   *
   * @param standardDeviation s_R between laboratories, at least the repeatability
   * @return the precision with it
   * @throws IllegalArgumentException if it is less than the repeatability
   */
  public MethodPrecision withReproducibility(double standardDeviation) {
    return new MethodPrecision(
        method, repeatability, OptionalDouble.of(standardDeviation), unit, source);
  }

  /**
   * Returns a published precision, of the level nearest to the value.
   *
   * @param method one of {@link #publishedMethods}, such as "pH of beer"
   * @param value the value that is judged, in the unit of the method: none for pH, else mg/L
   * @return the precision; empty when none is published
   * @throws IllegalArgumentException if the value is not finite
   */
  public static Optional<MethodPrecision> published(String method, double value) {
    Objects.requireNonNull(method, "method");
    Checks.finite("value", value, "");
    return rows().stream()
        .filter(row -> row.text("method").equals(method))
        .min(Comparator.comparingDouble(row -> Math.abs(row.number("level") - value)))
        .map(
            row ->
                new MethodPrecision(
                    method,
                    row.number("r95") / FACTOR,
                    OptionalDouble.of(row.number("R95") / FACTOR),
                    row.text("unit"),
                    row.text("source_key")));
  }

  /**
   * Returns the methods of which a precision is published here.
   *
   * @return their names, an unmodifiable list
   */
  public static List<String> publishedMethods() {
    return rows().stream().map(row -> row.text("method")).distinct().toList();
  }

  private static List<DataTable.Row> rows() {
    return DataTable.read(MethodPrecision.class, "method-precision.csv");
  }

  /**
   * Returns the name of the method.
   *
   * @return the method
   */
  public String method() {
    return method;
  }

  /**
   * Returns the standard deviation within a laboratory.
   *
   * @return s_r, in {@link #unit()}
   */
  public double repeatability() {
    return repeatability;
  }

  /**
   * Returns the limit within a laboratory.
   *
   * @return r95, by how much two results differ at most in 95 % of cases
   */
  public RepeatabilityLimit repeatabilityLimit() {
    return RepeatabilityLimit.fromStandardDeviation(repeatability, unit);
  }

  /**
   * Returns the standard deviation between laboratories.
   *
   * @return s_R, in {@link #unit()}; empty when it is not known
   */
  public OptionalDouble reproducibility() {
    return reproducibility;
  }

  /**
   * Returns the limit between laboratories.
   *
   * @return R95, by how much the results of two laboratories differ at most in 95 % of cases; empty
   *     when it is not known
   */
  public OptionalDouble reproducibilityLimit() {
    return reproducibility.isPresent()
        ? OptionalDouble.of(FACTOR * reproducibility.getAsDouble())
        : reproducibility;
  }

  /**
   * Returns the unit.
   *
   * @return the unit; empty when there is none
   */
  public String unit() {
    return unit;
  }

  /**
   * Returns where the precision comes from.
   *
   * @return a key of docs/sources.md, or that the user stated it
   */
  public String source() {
    return source;
  }

  @Override
  public String toString() {
    String between =
        reproducibility.isPresent()
            ? String.format(Locale.ROOT, ", s_R %.2g", reproducibility.getAsDouble())
            : ", s_R unknown";
    return String.format(Locale.ROOT, "%s: s_r %.2g", method, repeatability)
        + between
        + (unit.isEmpty() ? "" : " " + unit)
        + " ("
        + source
        + ")";
  }
}
