package org.brewchem.figure;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.uncertainty.ExpandedUncertainty;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.brewchem.uncertainty.UncertainValue;

/**
 * The answer to a figure: stated, with its value, its uncertainty, where it comes from and what is
 * notable about it; or unknown, with the reason.
 *
 * <p>It prints as a laboratory writes it. Asking an unknown answer for its value throws and says
 * what is missing. An uncertainty that is missing is missing; it never counts as zero. Immutable.
 *
 * @param <Q> the meaning of its value
 */
public final class Answer<Q> {

  private final Figure<Q> figure;
  private final Step step;

  private Answer(Figure<Q> figure, Step step) {
    this.figure = Objects.requireNonNull(figure, "figure");
    this.step = Objects.requireNonNull(step, "step");
  }

  /**
   * Asks for a figure.
   *
   * @param figure the figure
   * @param from what is asked
   * @param <Q> the meaning of its value
   * @return the answer
   */
  public static <Q> Answer<Q> of(Figure<Q> figure, Answering from) {
    return new Answer<>(figure, from.step(figure));
  }

  /**
   * Wraps a step that found a figure.
   *
   * @param figure the figure
   * @param step the step, its value in the figure's own scale
   * @param <Q> the meaning of its value
   * @return the answer
   */
  public static <Q> Answer<Q> of(Figure<Q> figure, Step step) {
    return new Answer<>(figure, step);
  }

  /**
   * Returns what was asked.
   *
   * @return the figure
   */
  public Figure<Q> figure() {
    return figure;
  }

  /**
   * Tells whether there is a value.
   *
   * @return false when it is unknown
   */
  public boolean isStated() {
    return step.found().isPresent();
  }

  /**
   * Returns why there is no value.
   *
   * @return the reasons; empty when there is one
   */
  public List<String> whyUnknown() {
    return step.whyUnknown();
  }

  /**
   * Returns the value.
   *
   * @return the value
   * @throws UnknownFigureException if it is unknown; its message says what is missing
   */
  public Q value() {
    return figure.scale().of(found().value());
  }

  /**
   * Returns the value if there is one.
   *
   * @return the value; empty when it is unknown
   */
  public Optional<Q> optional() {
    return step.found().map(found -> figure.scale().of(found.value()));
  }

  /**
   * Returns the number in the unit that the answer is shown in.
   *
   * @return the number
   * @throws UnknownFigureException if it is unknown
   */
  public double number() {
    return traced().value();
  }

  /**
   * Returns the number with its sources of uncertainty, in the unit that the answer is shown in.
   *
   * @return the traced number
   * @throws UnknownFigureException if it is unknown
   */
  public Traced traced() {
    return figure.inShown(found());
  }

  private Traced found() {
    return step.found()
        .orElseThrow(() -> new UnknownFigureException(figure.title(), step.whyUnknown()));
  }

  /**
   * Returns the unit that the answer is shown in.
   *
   * @return the symbol; empty when there is none
   */
  public String unit() {
    return figure.shown().symbol();
  }

  /**
   * Returns the standard uncertainty.
   *
   * @return u, in {@link #unit()}; empty when it is unknown or an input that matters states none
   */
  public OptionalDouble standardUncertainty() {
    return isStated() ? traced().standardUncertainty() : OptionalDouble.empty();
  }

  /**
   * Returns value and standard uncertainty with the degrees of freedom.
   *
   * @return the uncertain value, in {@link #unit()}; empty when u or the value is unknown
   */
  public Optional<UncertainValue> uncertain() {
    return isStated() ? traced().uncertain(unit()) : Optional.empty();
  }

  /**
   * Returns the expanded uncertainty by the library's one rule.
   *
   * @return value, U and k; empty when u or the value is unknown
   */
  public Optional<ExpandedUncertainty> expanded() {
    return uncertain().map(UncertainValue::expanded);
  }

  /**
   * Returns the inputs that matter and state no uncertainty, each with what 1 % of it would add.
   *
   * @return a sentence to each; empty when the uncertainty is known or the value is not
   */
  public List<String> uncertaintiesMissing() {
    if (!isStated()) {
      return List.of();
    }
    Traced number = traced();
    return number.missing().stream()
        .map(
            source ->
                source.name()
                    + ": 1 % of it would add "
                    + figure.shown().text(onePercent(number, source)))
        .toList();
  }

  private static double onePercent(Traced number, Source source) {
    return Math.abs(0.01 * source.estimate() * number.sensitivity(source));
  }

  /**
   * Returns where the value comes from.
   *
   * @return the origin of the last step
   */
  public Origin origin() {
    return step.origin();
  }

  /**
   * Returns what is notable about the value, from every step that found it.
   *
   * @return an unmodifiable list without repetition
   */
  public List<Notice> notices() {
    return step.notices();
  }

  /**
   * Shows the same answer in another unit.
   *
   * @param other a scale of the same meaning
   * @return the answer
   */
  public Answer<Q> in(Scale<Q> other) {
    return new Answer<>(figure.shownIn(other), step);
  }

  /**
   * Returns the step that found the value.
   *
   * @return the last step; its inputs are the ones before it
   */
  public Step step() {
    return step;
  }

  /**
   * Explains the value: the steps that were walked, each with its formula, its inputs and its
   * source.
   *
   * @return the explanation; of an unknown answer, how far it came and what is missing
   */
  public Explanation explain() {
    return new Explanation(step);
  }

  /**
   * Returns the answer as plain data, for JSON and the like.
   *
   * @return the record, which is lossless
   */
  public StructuredAnswer structured() {
    return StructuredAnswer.of(this);
  }

  /** Prints value, unit and U as a laboratory writes them, or "unknown" and why. */
  @Override
  public String toString() {
    return isStated()
        ? figure.shown().text(traced())
        : "unknown: " + String.join("; ", step.whyUnknown());
  }
}
