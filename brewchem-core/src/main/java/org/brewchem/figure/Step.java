package org.brewchem.figure;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;
import org.brewchem.internal.Checks;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/**
 * One step on the way to a value: the quantity, the formula or balance that gave it, the steps it
 * started from, what was found, and what is notable about it.
 *
 * <p>A step is written by whoever computes, while computing. Explaining only prints it. A step that
 * found nothing says why. Immutable.
 */
public final class Step {

  /** How a step came to its value. */
  public enum Kind {
    /** A value that was stated, measured or assumed; nothing was computed. */
    STATED,
    /** A formula of the steps before it. */
    FORMULA,
    /** The root of a charge balance: the listed charges sum to zero. */
    ROOT,
    /** A fit to readings: its normal equations hold. */
    FIT
  }

  /**
   * What a step shows when it is explained, computed from the state that it stored.
   *
   * @param lines lines of text, such as the charges of a balance
   * @param residual how far the last line is from holding, in the unit of that line: the sum of the
   *     listed charges, a formula computed once more less the value found
   * @param tolerance how far it may be, in the unit of the last line
   */
  public record Detail(List<String> lines, double residual, double tolerance) {

    /**
     * Makes a detail.
     *
     * @param lines lines of text, such as the charges of a balance
     * @param residual how far the last line is from holding, in the unit of that line: the sum of
     *     the listed charges, a formula computed once more less the value found
     * @param tolerance how far it may be, in the unit of the last line
     * @throws IllegalArgumentException if a number is not finite or the tolerance is negative
     */
    public Detail {
      Objects.requireNonNull(lines, "lines");

      lines = List.copyOf(lines);
      Checks.finite("residual", residual, "");
      Checks.nonNegative("tolerance", tolerance, "");
    }

    /**
     * Tells whether the last line holds.
     *
     * @return true if the residual is within the tolerance
     */
    public boolean holds() {
      return Math.abs(residual) <= tolerance;
    }
  }

  private final String quantity;
  private final Scale<?> scale;
  private final Kind kind;
  private final Origin origin;
  private final String text;
  private final String source;
  private final List<Step> inputs;
  private final List<Notice> own;
  private final @Nullable Traced found;
  private final List<String> whyUnknown;
  private final Supplier<Optional<Detail>> detail;

  private Step(Builder builder, @Nullable Traced found, List<String> whyUnknown) {
    this.quantity = builder.quantity;
    this.scale = builder.scale;
    this.kind = builder.kind;
    this.origin = builder.origin;
    this.text = builder.text;
    this.source = builder.source;
    this.inputs = List.copyOf(builder.inputs);
    this.own = List.copyOf(builder.notices);
    this.found = found;
    this.whyUnknown = List.copyOf(whyUnknown);
    this.detail = builder.detail;
  }

  /**
   * Starts a step.
   *
   * @param quantity what is sought, such as "residual alkalinity"
   * @param scale in which it is counted
   * @param kind how it is sought
   * @return a builder
   */
  public static Builder of(String quantity, Scale<?> scale, Kind kind) {
    return new Builder(quantity, scale, kind);
  }

  /** A step that is being written. */
  public static final class Builder {
    private final String quantity;
    private final Scale<?> scale;
    private final Kind kind;
    private Origin origin = Origin.COMPUTED;
    private String text = "";
    private String source = "";
    private List<Step> inputs = List.of();
    private final List<Notice> notices = new ArrayList<>();
    private Supplier<Optional<Detail>> detail = Optional::empty;

    private Builder(String quantity, Scale<?> scale, Kind kind) {
      this.quantity = Checks.notBlank("quantity", quantity);
      this.scale = Objects.requireNonNull(scale, "scale");
      this.kind = Objects.requireNonNull(kind, "kind");
    }

    /**
     * States where the value comes from; computed unless said.
     *
     * @param where the origin
     * @return this builder
     */
    public Builder origin(Origin where) {
      origin = Objects.requireNonNull(where, "where");
      return this;
    }

    /**
     * States how the value is found.
     *
     * @param how a formula or a sentence
     * @param from the source of the formula or value; empty when there is none to name
     * @return this builder
     */
    public Builder text(String how, String from) {
      text = Objects.requireNonNull(how, "how");
      source = Objects.requireNonNull(from, "from");
      return this;
    }

    /**
     * States the steps that this one starts from.
     *
     * @param steps the steps, in the order of the formula
     * @return this builder
     */
    public Builder inputs(List<Step> steps) {
      Objects.requireNonNull(steps, "steps");
      inputs = steps;
      return this;
    }

    /**
     * Adds notices about this step.
     *
     * @param more the notices
     * @return this builder
     */
    public Builder notices(List<Notice> more) {
      Objects.requireNonNull(more, "more");
      notices.addAll(more);
      return this;
    }

    /**
     * States what is shown on explaining, evaluated only then.
     *
     * @param shown gives lines and residual from the stored state; it must not search again
     * @return this builder
     */
    public Builder detail(Supplier<Detail> shown) {
      Objects.requireNonNull(shown, "shown");
      detail = () -> Optional.of(shown.get());
      return this;
    }

    /**
     * Ends with a value.
     *
     * @param value the value, in the step's scale
     * @return the step
     */
    public Step found(Traced value) {
      return new Step(this, Objects.requireNonNull(value, "value"), List.of());
    }

    /**
     * Ends without a value.
     *
     * @param why the reasons, at least one
     * @return the step
     * @throws IllegalArgumentException if there is no reason
     */
    public Step unknown(List<String> why) {
      if (why.isEmpty()) {
        throw new IllegalArgumentException(
            quantity + ": no reason is not possible; an unknown value says why");
      }
      return new Step(this, null, why);
    }
  }

  /**
   * Returns what was sought.
   *
   * @return the name with its parameters
   */
  public String quantity() {
    return quantity;
  }

  /**
   * Returns in which scale the value is counted.
   *
   * @return the scale
   */
  public Scale<?> scale() {
    return scale;
  }

  /**
   * Returns how the value was got.
   *
   * @return the kind
   */
  public Kind kind() {
    return kind;
  }

  /**
   * Returns where the value comes from.
   *
   * @return the origin
   */
  public Origin origin() {
    return origin;
  }

  /**
   * Returns how the value is found, in words or as a formula.
   *
   * @return the text; empty when there is nothing to say
   */
  public String text() {
    return text;
  }

  /**
   * Returns the source of the formula or value.
   *
   * @return the source; empty when there is none to name
   */
  public String source() {
    return source;
  }

  /**
   * Returns the steps that this one started from.
   *
   * @return an unmodifiable list
   */
  public List<Step> inputs() {
    return inputs;
  }

  /**
   * Returns the value.
   *
   * @return the value in {@link #scale()}; empty when it is unknown
   */
  public Optional<Traced> found() {
    return Optional.ofNullable(found);
  }

  /**
   * Returns why nothing was found.
   *
   * @return the reasons; empty when there is a value
   */
  public List<String> whyUnknown() {
    return whyUnknown;
  }

  /**
   * Returns what is notable about this step and all before it.
   *
   * @return an unmodifiable list without repetition
   */
  public List<Notice> notices() {
    Set<Notice> all = new LinkedHashSet<>();
    collect(all);
    return List.copyOf(all);
  }

  private void collect(Set<Notice> all) {
    inputs.forEach(step -> step.collect(all));
    all.addAll(own);
  }

  /**
   * Returns what the step shows when it is explained.
   *
   * @return lines and residual; empty for a step that shows its formula only
   */
  public Optional<Detail> detail() {
    return detail.get();
  }

  /**
   * Returns the standard uncertainty of the value.
   *
   * @return u in the unit of {@link #scale()}; empty when it or the value is unknown
   */
  public OptionalDouble standardUncertainty() {
    return found == null ? OptionalDouble.empty() : found.standardUncertainty();
  }

  @Override
  public String toString() {
    return quantity
        + ": "
        + (found == null ? "unknown: " + String.join("; ", whyUnknown) : scale.text(found));
  }
}
