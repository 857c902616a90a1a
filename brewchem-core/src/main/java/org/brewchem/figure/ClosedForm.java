package org.brewchem.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/**
 * The rule of a figure that is a formula of other figures. The same function serves a single
 * answer, its explanation and the rows of a table. Immutable.
 */
public final class ClosedForm implements Figure.Rule {

  private final String text;
  private final String source;
  private final List<Figure<?>> inputs;
  private final ToDoubleFunction<double[]> formula;
  private final @Nullable Code absent;

  /** How many of the inputs, the last ones, are unknown so often that it is not worth a notice. */
  private final int minor;

  /**
   * Makes a rule.
   *
   * @param text the formula in words
   * @param source the source of the formula
   * @param inputs the figures of the formula, each counted in the scale it is shown in
   * @param formula gives the number from those of the inputs; NaN where it has no value
   * @throws IllegalArgumentException if the text is blank or there are no inputs
   */
  public ClosedForm(
      String text, String source, List<Figure<?>> inputs, ToDoubleFunction<double[]> formula) {
    this(text, source, inputs, formula, null, 0);
  }

  private ClosedForm(
      String text,
      String source,
      List<Figure<?>> inputs,
      ToDoubleFunction<double[]> formula,
      @Nullable Code absent,
      int minor) {
    this.absent = absent;
    this.minor = minor;
    this.text = Checks.notBlank("text", text);
    this.source = Objects.requireNonNull(source, "source");
    this.inputs = List.copyOf(inputs);
    this.formula = Objects.requireNonNull(formula, "formula");
    if (this.inputs.isEmpty()) {
      throw new IllegalArgumentException(
          Excerpt.of(text) + ": a formula without inputs is not possible; at least one is needed");
    }
  }

  /**
   * Makes a figure that is a formula of others.
   *
   * @param name its name in the terms of the field
   * @param scale the scale in which the formula counts
   * @param text the formula in words
   * @param source the source of the formula
   * @param inputs the figures of the formula, each counted in the scale it is shown in
   * @param formula gives the number from those of the inputs, in their order; it must not keep the
   *     array, and gives NaN where it has no value
   * @param <Q> the meaning of its value
   * @return the figure
   * @throws IllegalArgumentException if name or text is blank or there are no inputs
   */
  public static <Q> Figure<Q> figure(
      String name,
      Scale<Q> scale,
      String text,
      String source,
      List<Figure<?>> inputs,
      ToDoubleFunction<double[]> formula) {
    return Figure.of(name, Map.of(), scale, new ClosedForm(text, source, inputs, formula));
  }

  /**
   * Makes a figure that is a formula of others, of which those that are unknown count as 0 with a
   * notice, such as a sum of the ions that a report states. It is unknown only if all of them are.
   *
   * @param name its name in the terms of the field
   * @param scale the scale in which the formula counts
   * @param text the formula in words
   * @param source the source of the formula
   * @param absent the code of the notice that an unknown input gives
   * @param inputs the figures of the formula, each counted in the scale it is shown in
   * @param formula as in {@link #figure}
   * @param <Q> the meaning of its value
   * @return the figure
   * @throws IllegalArgumentException if name or text is blank or there are no inputs
   */
  public static <Q> Figure<Q> countingAbsent(
      String name,
      Scale<Q> scale,
      String text,
      String source,
      Code absent,
      List<Figure<?>> inputs,
      ToDoubleFunction<double[]> formula) {
    return countingAbsent(name, scale, text, source, absent, inputs, List.of(), formula);
  }

  /**
   * Makes a figure like {@link #countingAbsent(String, Scale, String, String, Code, List,
   * ToDoubleFunction)}, with further inputs that are left out so often that it gives no notice.
   *
   * @param name its name in the terms of the field
   * @param scale the scale in which the formula counts
   * @param text the formula in words
   * @param source the source of the formula
   * @param absent the code of the notice that an unknown one of the first inputs gives
   * @param inputs the figures of the formula, each counted in the scale it is shown in
   * @param minor the further ones, which come behind them
   * @param formula as in {@link #figure}, of all of them
   * @param <Q> the meaning of its value
   * @return the figure
   * @throws IllegalArgumentException if name or text is blank or there are no inputs
   */
  public static <Q> Figure<Q> countingAbsent(
      String name,
      Scale<Q> scale,
      String text,
      String source,
      Code absent,
      List<Figure<?>> inputs,
      List<Figure<?>> minor,
      ToDoubleFunction<double[]> formula) {
    List<Figure<?>> all = new ArrayList<>(inputs);
    all.addAll(minor);
    return Figure.of(
        name, Map.of(), scale, new ClosedForm(text, source, all, formula, absent, minor.size()));
  }

  /**
   * Tells whether unknown inputs count as 0, with a notice.
   *
   * @return false when a single unknown input makes the figure unknown
   */
  public boolean countsAbsent() {
    return absent != null;
  }

  /**
   * Makes a figure that is the ratio of two others, times a factor. A ratio is compared by its
   * logarithm where distances count: half as much is as far off as twice as much.
   *
   * @param name its name in the terms of the field
   * @param scale the scale in which the ratio counts
   * @param text the formula in words
   * @param source the source of the formula
   * @param numerator what is divided, counted in the scale it is shown in
   * @param denominator what it is divided by, counted in the scale it is shown in; where it is 0
   *     the ratio has no value
   * @param factor the factor, above 0
   * @return the figure
   * @throws IllegalArgumentException if name or text is blank or the factor is not above 0
   */
  public static Figure<Double> ratio(
      String name,
      Scale<Double> scale,
      String text,
      String source,
      Figure<?> numerator,
      Figure<?> denominator,
      double factor) {
    Objects.requireNonNull(numerator, "numerator");
    Objects.requireNonNull(denominator, "denominator");
    Checks.positive("factor of " + name, factor, "");
    List<Figure<?>> both = List.of(numerator, denominator);
    return figure(name, scale, text, source, both, new Quotient(factor));
  }

  /**
   * Tells whether the formula is the ratio of its two inputs times a factor.
   *
   * @return true for a figure made by {@link #ratio}
   */
  public boolean isRatio() {
    return formula instanceof Quotient;
  }

  /** A ratio as a formula. */
  private record Quotient(double factor) implements ToDoubleFunction<double[]> {
    @Override
    public double applyAsDouble(double[] x) {
      return x[1] == 0 ? Double.NaN : factor * x[0] / x[1];
    }
  }

  /**
   * Returns the figures of the formula.
   *
   * @return an unmodifiable list, each counted in the scale it is shown in
   */
  public List<Figure<?>> inputs() {
    return inputs;
  }

  /**
   * Computes the formula.
   *
   * @param numbers the numbers of the inputs, in their order
   * @return the number; NaN where the formula has no value
   */
  public double apply(double[] numbers) {
    return formula.applyAsDouble(numbers);
  }

  @Override
  public Step find(Figure<?> figure, Answering from) {
    List<Step> steps = new ArrayList<>();
    List<String> why = new ArrayList<>();
    List<Notice> notices = new ArrayList<>();
    Traced[] traced = new Traced[inputs.size()];
    double[] numbers = new double[traced.length];
    int unknown = 0;
    for (int i = 0; i < traced.length; i++) {
      Figure<?> input = inputs.get(i);
      Step step = from.step(input);
      boolean counts = i < traced.length - minor;
      if (counts || step.found().isPresent()) {
        steps.add(step);
      }
      if (step.found().isPresent()) {
        traced[i] = input.inShown(step.found().get());
        numbers[i] = traced[i].value();
      } else {
        unknown++;
        traced[i] = Traced.exact(0);
        if (absent != null && counts) {
          notices.add(Notice.of(absent, input.title(), "counted as absent: " + input.title()));
        }
        step.whyUnknown().stream().filter(reason -> !why.contains(reason)).forEach(why::add);
      }
    }
    Step.Builder builder =
        Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA).text(text, source).inputs(steps);
    if (absent == null ? !why.isEmpty() : unknown == traced.length) {
      return builder.unknown(why);
    }
    double value = apply(numbers.clone());
    if (!Double.isFinite(value)) {
      return builder.unknown(List.of(text + " has no value here: " + shown(numbers)));
    }
    return builder
        .notices(notices)
        .detail(() -> new Step.Detail(List.of(), apply(numbers.clone()) - value, 0))
        .found(Traced.linear(value, traced, slopes(numbers, value)));
  }

  private double[] slopes(double[] numbers, double value) {
    double[] slopes = new double[numbers.length];
    for (int i = 0; i < slopes.length; i++) {
      // Central, over a share that leaves ten digits; formulas of the field are smooth there.
      double step = Math.max(Math.abs(numbers[i]), 1e-3) * 1e-5;
      double at = numbers[i];
      numbers[i] = at + step;
      double above = apply(numbers.clone());
      numbers[i] = at - step;
      double below = apply(numbers.clone());
      numbers[i] = at;
      // At the end of what a formula allows, such as a root at 0, one side has to do.
      slopes[i] =
          Double.isFinite(above) && Double.isFinite(below)
              ? (above - below) / (2 * step)
              : Double.isFinite(above) ? (above - value) / step : (value - below) / step;
    }
    return slopes;
  }

  private String shown(double[] numbers) {
    List<String> parts = new ArrayList<>();
    for (int i = 0; i < numbers.length; i++) {
      parts.add(inputs.get(i).title() + " " + inputs.get(i).shown().text(numbers[i]));
    }
    return String.join(", ", parts);
  }

  @Override
  public String text() {
    return text;
  }
}
