package org.brewchem.beer;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.brewchem.internal.NumberText;
import org.brewchem.substance.Acid;
import org.jspecify.annotations.Nullable;

/**
 * The figures of a beer held against a {@link Target}, one row for each figure that has a band.
 *
 * <p>A figure without uncertainty is taken at its word. With one, it is judged by its interval, U
 * (k = 2): a limit inside the interval leaves the question undecided.
 */
public final class Comparison {

  private final String target;
  private final List<Row> rows;

  Comparison(String target, List<Row> rows) {
    this.target = target;
    this.rows = rows;
  }

  /** One figure held against its band. */
  public static final class Row {

    private final KeyFigure kind;
    private final @Nullable Figure<?> figure;
    private final double lower;
    private final double upper;
    private final @Nullable Double aim;

    Row(
        KeyFigure kind,
        @Nullable Figure<?> figure,
        double lower,
        double upper,
        @Nullable Double aim) {
      this.kind = kind;
      this.figure = figure;
      this.lower = lower;
      this.upper = upper;
      this.aim = aim;
    }

    /**
     * Returns which figure it is.
     *
     * @return the figure
     */
    public KeyFigure kind() {
      return kind;
    }

    /**
     * Returns the figure of the beer.
     *
     * @return the figure; empty when it is missing
     */
    public Optional<Figure<?>> figure() {
      return Optional.ofNullable(figure);
    }

    /**
     * Returns the verdict.
     *
     * @return the verdict
     */
    public Verdict verdict() {
      if (figure == null) {
        return Verdict.MISSING;
      }
      double u = figure.standardUncertainty().orElse(0);
      double from = figure.number() - Figure.COVERAGE_FACTOR * u;
      double to = figure.number() + Figure.COVERAGE_FACTOR * u;
      if (to < lower) {
        return Verdict.BELOW;
      }
      if (from > upper) {
        return Verdict.ABOVE;
      }
      return from >= lower && to <= upper ? Verdict.WITHIN : Verdict.UNDECIDED;
    }

    /**
     * Returns how far the figure lies outside the band: from the limit that it violates.
     *
     * @return negative below, positive above, 0 within the band, in the unit of {@link #kind()};
     *     empty when the figure is missing
     */
    public OptionalDouble differenceFromBand() {
      if (figure == null) {
        return OptionalDouble.empty();
      }
      double number = figure.number();
      return OptionalDouble.of(
          number < lower ? number - lower : number > upper ? number - upper : 0.0);
    }

    /**
     * Returns how far the figure lies from the value aimed at.
     *
     * @return figure less aim, in the unit of {@link #kind()}; empty when the figure is missing or
     *     the band was given by its limits
     */
    public OptionalDouble differenceFromAim() {
      return figure == null || aim == null
          ? OptionalDouble.empty()
          : OptionalDouble.of(figure.number() - aim);
    }

    /** Returns a line such as "pH 4.41 (measured in beer): above 4.10 to 4.30 by 0.11". */
    @Override
    public String toString() {
      if (figure == null) {
        return kind + ": missing; wanted " + band();
      }
      String text = figure + ": " + verdict() + " " + band();
      double outside = differenceFromBand().orElse(0);
      if (verdict() == Verdict.BELOW || verdict() == Verdict.ABOVE) {
        text += " by " + number(Math.abs(outside));
      }
      OptionalDouble fromAim = differenceFromAim();
      if (fromAim.isPresent()) {
        double difference = fromAim.getAsDouble();
        text += ", " + (difference < 0 ? "" : "+") + number(difference) + " from the aim";
      }
      return text;
    }

    String band() {
      if (lower == Double.NEGATIVE_INFINITY) {
        return "at most " + number(upper) + unit();
      }
      return upper == Double.POSITIVE_INFINITY
          ? "at least " + number(lower) + unit()
          : number(lower) + " to " + number(upper) + unit();
    }

    private String number(double inUnit) {
      return switch (kind) {
        case TITRATABLE_ACIDITY ->
            NumberText.decimals(inUnit * Acid.LACTIC.gramsPerEquivalent() / 1000, 2);
        case CALCIUM -> NumberText.decimals(inUnit, 0);
        default -> NumberText.decimals(inUnit, 2);
      };
    }

    private String unit() {
      return switch (kind) {
        case TITRATABLE_ACIDITY -> " g/L as lactic acid";
        case CALCIUM -> " mg/L";
        default -> "";
      };
    }
  }

  /**
   * Returns the rows.
   *
   * @return one row for each figure that has a band, in the order of {@link KeyFigure}
   */
  public List<Row> rows() {
    return rows;
  }

  /**
   * Returns the row of a figure.
   *
   * @param kind the figure
   * @return its row; empty when the target has no band for it
   */
  public Optional<Row> row(KeyFigure kind) {
    return rows.stream().filter(row -> row.kind() == kind).findFirst();
  }

  /**
   * Tells whether every figure that has a band is known to lie within it.
   *
   * @return true if all verdicts are {@link Verdict#WITHIN}
   */
  public boolean allWithin() {
    return rows.stream().allMatch(row -> row.verdict() == Verdict.WITHIN);
  }

  /** Returns the name of the target and the rows, one a line. */
  @Override
  public String toString() {
    return rows.stream().map(Row::toString).collect(Collectors.joining("\n", target + "\n", ""));
  }
}
