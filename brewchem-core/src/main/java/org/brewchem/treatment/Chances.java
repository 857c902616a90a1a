package org.brewchem.treatment;

import java.util.Objects;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.uncertainty.Traced;
import org.brewchem.uncertainty.UncertainValue;

/**
 * Where a figure may lie after a dose: the chance beyond each limit, by linear propagation of the
 * uncertainties that are stated, normal or Student's t at the effective degrees of freedom.
 *
 * @param constraint the limits
 * @param answer the figure after the dose
 * @param below the chance that it lies below the lower limit; empty where there is none, or where
 *     an uncertainty that matters is not stated
 * @param above the chance that it lies above the upper limit; empty as for {@code below}
 */
public record Chances(
    Constraint constraint, Answer<?> answer, OptionalDouble below, OptionalDouble above) {

  /**
   * Makes chances.
   *
   * @param constraint the limits
   * @param answer the figure after the dose
   * @param below the chance below the lower limit, 0 to 1
   * @param above the chance above the upper limit, 0 to 1
   * @throws IllegalArgumentException if a chance is out of range
   */
  public Chances {
    Objects.requireNonNull(constraint, "constraint");
    Objects.requireNonNull(answer, "answer");
    below.ifPresent(chance -> Checks.inRange("chance below", chance, "", 0, 1));
    above.ifPresent(chance -> Checks.inRange("chance above", chance, "", 0, 1));
  }

  /** The chances of a figure as a liquid or a prediction answers it. */
  static Chances of(Constraint constraint, Answer<?> answer) {
    if (!answer.isStated() || answer.uncertain().isEmpty()) {
      return new Chances(constraint, answer, OptionalDouble.empty(), OptionalDouble.empty());
    }
    UncertainValue value = answer.uncertain().get();
    return new Chances(
        constraint,
        answer,
        constraint.lower().isPresent()
            ? OptionalDouble.of(value.chanceBelow(constraint.lower().getAsDouble()))
            : OptionalDouble.empty(),
        constraint.upper().isPresent()
            ? OptionalDouble.of(above(value, constraint.upper().getAsDouble()))
            : OptionalDouble.empty());
  }

  private static double above(UncertainValue value, double limit) {
    return UncertainValue.of(-value.value(), value.standardUncertainty(), value.unit())
        .withDegreesOfFreedom(value.degreesOfFreedom())
        .chanceBelow(-limit);
  }

  /** The number below which a traced figure lies with a probability, in its own scale. */
  static OptionalDouble quantile(Traced found, double probability) {
    return found
        .uncertain("")
        .map(value -> OptionalDouble.of(value.quantile(probability)))
        .orElse(OptionalDouble.empty());
  }

  /**
   * Returns the chance that the figure lies within the limits.
   *
   * @return 0 to 1; empty where an uncertainty that matters is not stated
   */
  public OptionalDouble within() {
    if (below.isEmpty() && above.isEmpty()) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(Math.max(0, 1 - below.orElse(0) - above.orElse(0)));
  }

  /** Prints the figure, and the chance beyond each limit. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(constraint.figure().title() + " then: " + answer);
    if (below.isEmpty() && above.isEmpty()) {
      return text.append(", chances unknown").toString();
    }
    below.ifPresent(chance -> text.append(percent(chance, "below", constraint.lower())));
    above.ifPresent(chance -> text.append(percent(chance, "above", constraint.upper())));
    return text.toString();
  }

  private String percent(double chance, String where, OptionalDouble limit) {
    return ", "
        + where
        + " "
        + constraint.figure().shown().text(limit.getAsDouble())
        + ": "
        + NumberText.chance(chance);
  }
}
