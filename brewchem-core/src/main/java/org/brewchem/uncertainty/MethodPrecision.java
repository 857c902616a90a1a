package org.brewchem.uncertainty;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
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

  private static final double MOST_ABOVE = 10;

  private final String method;
  private final double repeatability;
  private final OptionalDouble reproducibility;
  private final String unit;
  private final String source;
  private final Optional<Level> level;

  /** Of the samples of a trial, and the lowest and highest of the method. */
  private record Level(double level, double lowest, double highest, boolean within) {}

  private MethodPrecision(
      String method,
      double repeatability,
      OptionalDouble reproducibility,
      String unit,
      String source,
      Optional<Level> level) {
    this.level = level;
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
        method,
        standardDeviation,
        OptionalDouble.empty(),
        unit,
        "stated by the user",
        Optional.empty());
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
        method, repeatability, OptionalDouble.of(standardDeviation), unit, source, level);
  }

  /**
   * Returns a published precision, of the level nearest to the value; see {@link #level} and {@link
   * #isWithinLevels}.
   *
   * @param method one of {@link #publishedMethods}, such as "pH of beer"
   * @param value the value that is judged, in the unit of the method: none for pH, else mg/L; 0 up
   *     to ten times the highest level, our choice
   * @return the precision, whose text names the level, and says so where the value lies outside the
   *     levels of the trial; empty when none is published
   * @throws IllegalArgumentException if the value is out of range
   */
  public static Optional<MethodPrecision> published(String method, double value) {
    Objects.requireNonNull(method, "method");
    List<DataTable.Row> own =
        rows().stream().filter(row -> row.text("method").equals(method)).toList();
    if (own.isEmpty()) {
      Checks.finite("value", value, "");
      return Optional.empty();
    }
    double lowest = extreme(own, "lowest").min().orElseThrow();
    double highest = extreme(own, "highest").max().orElseThrow();
    String unit = own.get(0).text("unit");
    Checks.inRange("value, " + method, value, unit, 0, MOST_ABOVE * highest);
    return own.stream()
        .min(Comparator.comparingDouble(row -> Math.abs(row.number("level") - value)))
        .map(
            row ->
                new MethodPrecision(
                    method,
                    row.number("r95") / FACTOR,
                    OptionalDouble.of(row.number("R95") / FACTOR),
                    unit,
                    row.text("source_key"),
                    Optional.of(
                        new Level(
                            row.number("level"),
                            lowest,
                            highest,
                            value >= lowest && value <= highest))));
  }

  private static DoubleStream extreme(List<DataTable.Row> rows, String column) {
    return rows.stream()
        .mapToDouble(row -> row.optionalNumber(column).orElseGet(() -> row.number("level")));
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
   * Returns the level of the samples that a published precision was found with.
   *
   * @return the level, in {@link #unit()}; empty for a precision that the user stated
   */
  public OptionalDouble level() {
    return level.map(own -> OptionalDouble.of(own.level)).orElseGet(OptionalDouble::empty);
  }

  /**
   * Tells whether the value that was judged lies between the lowest and the highest level of the
   * trial, so that the precision was found with such samples.
   *
   * @return false where it lies outside; true for a precision that the user stated
   */
  public boolean isWithinLevels() {
    return level.map(Level::within).orElse(true);
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
    return String.format(Locale.ROOT, "%s%s: s_r %.2g", method, levelText(), repeatability)
        + between
        + (unit.isEmpty() ? "" : " " + unit)
        + " ("
        + source
        + ")";
  }

  /** Such as " at a level of 101.4 mg/L". */
  private String levelText() {
    return level.map(own -> " at a level of " + own.level + withUnit() + outside(own)).orElse("");
  }

  private String outside(Level own) {
    return own.within
        ? ""
        : ", outside the levels of the trial, " + own.lowest + " to " + own.highest + withUnit();
  }

  private String withUnit() {
    return unit.isEmpty() ? "" : " " + unit;
  }
}
