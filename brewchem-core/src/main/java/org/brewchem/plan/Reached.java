package org.brewchem.plan;

import java.util.Objects;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.internal.Checks;
import org.brewchem.uncertainty.UncertainValue;

/**
 * What a plan reaches of one constraint.
 *
 * @param constraint the constraint
 * @param liquid the liquid that it bounds
 * @param answer the figure after the plan, with its uncertainty
 * @param penalty the number that it adds to the weighted sum; 0 for a hard constraint
 * @param chance the chance that the true value lies within the limits, by linear propagation of the
 *     uncertainties that are stated; empty where one that matters is not
 */
public record Reached(
    Constraint constraint, String liquid, Answer<?> answer, double penalty, OptionalDouble chance) {
  /**
   * Makes an entry.
   *
   * @param constraint the constraint
   * @param liquid the liquid that it bounds
   * @param answer the figure after the plan, with its uncertainty
   * @param penalty the number that it adds to the weighted sum; 0 for a hard constraint
   * @param chance the chance that the true value lies within the limits, by linear propagation of
   *     the uncertainties that are stated; empty where one that matters is not
   * @throws IllegalArgumentException if the penalty is negative or not finite
   */
  public Reached {
    Checks.nonNegative("penalty", penalty, "");
    Objects.requireNonNull(constraint, "constraint");
    Objects.requireNonNull(liquid, "liquid");
    Objects.requireNonNull(answer, "answer");
    Objects.requireNonNull(chance, "chance");
  }

  static Reached of(Goal goal, String liquid, Answer<?> answer) {
    return new Reached(
        goal.constraint(),
        liquid,
        answer,
        goal.isHard() ? 0 : goal.penalty(answer.number()),
        chance(goal, answer));
  }

  private static OptionalDouble chance(Goal goal, Answer<?> answer) {
    if (answer.uncertain().isEmpty()) {
      return OptionalDouble.empty();
    }
    UncertainValue value = answer.uncertain().get();
    if (value.standardUncertainty() == 0) {
      return OptionalDouble.of(goal.constraint().excess(value.value()) == 0 ? 1 : 0);
    }
    double below = below(value, goal.plainLower());
    double above = below(value, goal.plainUpper());
    return OptionalDouble.of(Math.max(0, above - below));
  }

  private static double below(UncertainValue value, double limit) {
    return Double.isInfinite(limit) ? (limit < 0 ? 0 : 1) : value.chanceBelow(limit);
  }

  /** Whether a hard constraint is kept by the value and its interval reaches beyond. */
  boolean isDoubtful() {
    double half = answer.uncertain().map(value -> value.expanded().halfWidth()).orElse(0.0);
    return constraint.weight().isEmpty()
        && (constraint.excess(answer.number() - half) != 0
            || constraint.excess(answer.number() + half) != 0);
  }

  /** Prints figure, value, what was wanted and the chance. */
  @Override
  public String toString() {
    return liquid
        + ", "
        + constraint.figure().title()
        + ": "
        + answer
        + ", wanted "
        + constraint.band()
        + (chance.isPresent()
            ? ", chance " + Math.round(100 * chance.getAsDouble()) + " %"
            : ", chance unknown");
  }
}
