package org.brewchem.plan;

import java.util.Objects;
import org.brewchem.figure.Constraint;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;

/**
 * What a constraint costs a plan: by how much it would be better without it.
 *
 * @param constraint the constraint
 * @param liquid the liquid that it bounds
 * @param weightedSum by how much the weighted sum, a number without a unit, would be less
 * @param economy by how much the plan would be cheaper or, where it went by mass, lighter in grams;
 *     negative where a better sum takes more
 */
public record ConstraintCost(
    Constraint constraint, String liquid, double weightedSum, double economy) {

  /**
   * Makes what a constraint costs.
   *
   * @param constraint the constraint
   * @param liquid the liquid that it bounds
   * @param weightedSum by how much the weighted sum, a number without a unit, would be less
   * @param economy by how much the plan would be cheaper or lighter
   * @throws IllegalArgumentException if a number is not finite
   */
  public ConstraintCost {
    Objects.requireNonNull(constraint, "constraint");
    Objects.requireNonNull(liquid, "liquid");
    Checks.finite("weighted sum", weightedSum, "");
    Checks.finite("economy", economy, "");
  }

  /** Prints the constraint and both numbers. */
  @Override
  public String toString() {
    return liquid
        + ", "
        + constraint
        + ": weighted sum "
        + NumberText.significant(weightedSum, 3)
        + ", cost or mass "
        + NumberText.significant(economy, 3);
  }
}
