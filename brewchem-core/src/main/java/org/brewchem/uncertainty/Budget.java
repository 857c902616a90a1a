package org.brewchem.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.brewchem.internal.Excerpt;

/**
 * The uncertainty budget of a result: which input contributes what, by the law of propagation of
 * uncertainty (JCGM 100:2008, 5.1.2, from memory), with the effective degrees of freedom of Welch
 * and Satterthwaite (G.4.1, from memory).
 */
public final class Budget {

  private final String measurand;
  private final String unit;
  private final Traced traced;
  private final List<Row> rows;

  private Budget(String measurand, String unit, Traced traced, List<Row> rows) {
    this.measurand = measurand;
    this.unit = unit;
    this.traced = traced;
    this.rows = rows;
  }

  static Budget of(
      String measurand, String unit, double value, List<Input> inputs, double[] sensitivities) {
    Traced traced =
        Traced.linear(
            value, inputs.stream().map(Input::traced).toArray(Traced[]::new), sensitivities);
    double combined = traced.knownPart();
    int sources = 0;
    for (int i = 0; i < sensitivities.length; i++) {
      sources += sensitivities[i] == 0 ? 0 : inputs.get(i).traced().sources().size();
    }
    boolean isShared = sources > traced.sources().size();
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < sensitivities.length; i++) {
      Input input = inputs.get(i);
      double part =
          combined == 0 ? 0 : Math.abs(sensitivities[i]) * input.standardUncertainty() / combined;
      double share =
          isShared && combined > 0
              ? sensitivities[i] / combined * (input.traced().covariance(traced) / combined)
              : part * part;
      rows.add(new Row(input, sensitivities[i], share));
    }
    return new Budget(measurand, unit, traced, List.copyOf(rows));
  }

  /** One line of a {@link Budget}: an input and what it contributes to the uncertainty. */
  public static final class Row {

    private final Input input;
    private final double sensitivity;
    private final double shareOfVariance;

    private Row(Input input, double sensitivity, double shareOfVariance) {
      this.input = input;
      this.sensitivity = sensitivity;
      this.shareOfVariance = shareOfVariance;
    }

    /**
     * Returns the input.
     *
     * @return the input, with estimate, standard uncertainty and distribution
     */
    public Input input() {
      return input;
    }

    /**
     * Returns the sensitivity coefficient: how much the result changes per unit of the input.
     *
     * @return the coefficient, in the unit of the result per unit of the input
     */
    public double sensitivity() {
      return sensitivity;
    }

    /**
     * Returns the standard uncertainty of the result that this input alone would cause.
     *
     * @return the absolute sensitivity times the standard uncertainty, in the unit of the result
     */
    public double contribution() {
      return Math.abs(sensitivity) * input.standardUncertainty();
    }

    /**
     * Returns the part of this input in the variance of the result: its covariance with the result,
     * as a fraction.
     *
     * @return a fraction; the fractions of all rows add up to 1 unless all are 0. From 0 to 1 where
     *     inputs are independent; where they share a source, one that takes away what another
     *     brings is negative, and the other may exceed 1
     */
    public double shareOfVariance() {
      return shareOfVariance;
    }
  }

  /**
   * Returns the name of the result.
   *
   * @return the name
   */
  public String measurand() {
    return measurand;
  }

  /**
   * Returns the result with the sources of its inputs, signed: what two results share correlates.
   *
   * @return the traced result, in the unit of the measurand; its u is missing while an input that
   *     matters has none
   */
  public Traced traced() {
    return traced;
  }

  /**
   * Returns the result with its combined standard uncertainty, as far as the inputs state theirs,
   * and effective degrees of freedom.
   *
   * @return the result; while {@link Traced#missing()} of {@link #traced()} names a source, its u
   *     is the least that it can be
   */
  public UncertainValue result() {
    return UncertainValue.of(traced.value(), traced.knownPart(), unit)
        .withDegreesOfFreedom(traced.degreesOfFreedom());
  }

  /**
   * Returns the rows, one for each input.
   *
   * @return the rows in the order of the inputs
   */
  public List<Row> rows() {
    return rows;
  }

  /**
   * Returns the row of an input.
   *
   * @param inputName the name of the input
   * @return its row
   * @throws IllegalArgumentException if there is no such input
   */
  public Row row(String inputName) {
    Objects.requireNonNull(inputName, "inputName");
    return rows.stream()
        .filter(row -> row.input().name().equals(inputName))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "input: \""
                        + Excerpt.of(inputName)
                        + "\" is not in the budget of "
                        + measurand));
  }

  /**
   * Prints the result with u and with U by the library's one rule, or which input states no
   * uncertainty, and below it a table with one line per input: estimate, u, distribution, degrees
   * of freedom, sensitivity, contribution and share of the variance. Lines end with a line feed.
   */
  @Override
  public String toString() {
    List<String[]> cells = new ArrayList<>();
    cells.add(
        new String[] {
          "input", "estimate", "u", "distribution", "dof", "sensitivity", "contribution", "share"
        });
    for (Row row : rows) {
      Input input = row.input();
      double u = input.standardUncertainty();
      cells.add(
          new String[] {
            input.name(),
            Digits.withUnit(Digits.ofValue(input.estimate(), u), input.unit()),
            input.isUncertaintyStated() ? Digits.ofUncertainty(u) : "not stated",
            input.distribution().toString(),
            Digits.significant(input.degreesOfFreedom(), 3),
            Digits.significant(row.sensitivity(), 4),
            input.isUncertaintyStated() ? Digits.ofUncertainty(row.contribution()) : "",
            String.format(Locale.ROOT, "%.1f %%", 100.0 * row.shareOfVariance())
          });
    }
    int[] widths = new int[cells.get(0).length];
    for (String[] line : cells) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], line[i].length());
      }
    }
    StringBuilder text = new StringBuilder();
    if (traced.missing().isEmpty()) {
      text.append(measurand).append(" = ").append(result()).append('\n');
      text.append(measurand).append(" = ").append(result().expanded()).append('\n');
    } else {
      text.append(measurand)
          .append(" = ")
          .append(Digits.withUnit(Digits.significant(traced.value(), 6), unit))
          .append(", u not stated of ")
          .append(String.join(", ", traced.missing().stream().map(Source::name).toList()))
          .append('\n');
    }
    for (String[] line : cells) {
      StringBuilder padded = new StringBuilder();
      for (int i = 0; i < widths.length; i++) {
        padded.append(line[i]).append(" ".repeat(widths[i] - line[i].length() + 2));
      }
      text.append(padded.toString().stripTrailing()).append('\n');
    }
    return text.toString();
  }
}
