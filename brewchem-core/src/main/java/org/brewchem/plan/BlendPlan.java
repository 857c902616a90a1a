package org.brewchem.plan;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Target;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Liquid;
import org.brewchem.treatment.Blend;
import org.brewchem.treatment.Blends;

/**
 * A plan for a blend: how much of each part makes the blend that meets constraints, by the search
 * and the weighted sum of a {@link Plan}. Where no blend meets them it tells which constraints
 * exclude each other, and the nearest blend that can be reached. Immutable.
 *
 * @param <L> the kind of the parts and of the blend
 */
public final class BlendPlan<L extends Liquid> {

  private static final String BLEND = "blend";

  private final Blends<L> blends;
  private final Solved solved;

  private BlendPlan(Blends<L> blends, Solved solved) {
    this.blends = blends;
    this.solved = solved;
  }

  /**
   * Starts a plan.
   *
   * @param blends the parts, with the limits of their shares
   * @param total the volume of the blend, above 0
   * @param <L> the kind of the parts
   * @return the request
   * @throws IllegalArgumentException if the volume is not above 0
   */
  public static <L extends Liquid> Request<L> of(Blends<L> blends, Volume total) {
    Objects.requireNonNull(blends, "blends");
    Objects.requireNonNull(total, "total");
    Checks.positive("volume of the blend", total.inLitres(), "L");
    return new Request<>(
        blends,
        new Query(
            blends.liquids(),
            blends.names(),
            Shelf.of(),
            List.of(new WaterPortion(BLEND, total)),
            List.of(),
            Query.Economy.MASS,
            Optional.of(blends)));
  }

  /**
   * What a plan for a blend is asked for. Immutable: each call gives a further request.
   *
   * @param <L> the kind of the parts
   */
  public static final class Request<L extends Liquid> {

    private final Blends<L> blends;
    private final Query query;

    private Request(Blends<L> blends, Query query) {
      this.blends = blends;
      this.query = query;
    }

    /**
     * States how finely volumes are metered; unless stated, they are not rounded.
     *
     * @param step the least step, above 0
     * @return the request
     * @throws IllegalArgumentException if the step is not above 0
     */
    public Request<L> meteringTo(Volume step) {
      Objects.requireNonNull(step, "step");
      return new Request<>(blends, query.using(query.shelf().meteringWaterTo(step)));
    }

    /**
     * Adds what the blend is to be.
     *
     * @param target the constraints: hard ones, or with a weight
     * @return the request
     */
    public Request<L> meeting(Target target) {
      Objects.requireNonNull(target, "target");
      List<Wanted> more = new ArrayList<>(query.wanted());
      target
          .constraints()
          .forEach(
              constraint ->
                  more.add(new Wanted(constraint, Optional.of(BLEND), false, Optional.empty())));
      return new Request<>(blends, query.wanting(more));
    }

    /**
     * Finds the plan.
     *
     * @return the plan, or what was found instead; see {@link BlendPlan#outcome()}
     * @throws IllegalArgumentException if a weighted constraint has no scale
     * @throws UnknownFigureException if a figure that is constrained is not known of the parts
     */
    public BlendPlan<L> solve() {
      return new BlendPlan<>(blends, Solved.of(query));
    }
  }

  /**
   * Returns what came of the search.
   *
   * @return the outcome
   */
  public Plan.Outcome outcome() {
    return Plan.outcome(solved);
  }

  /**
   * Returns the volumes of the parts.
   *
   * @return in their order, without those of 0
   * @throws IllegalStateException if no plan was found
   */
  public List<PlannedAmount> parts() {
    return solved.amounts(true);
  }

  /**
   * Returns the blend.
   *
   * @return its shares and the liquid that it is
   * @throws IllegalStateException if no plan was found
   */
  public Blend<L> blend() {
    return blends.shares(solved.x().clone());
  }

  /**
   * Returns what is reached of each constraint, with its uncertainty and chance.
   *
   * @return in the order in which the constraints were added
   * @throws IllegalStateException if no plan was found
   */
  public List<Reached> reached() {
    return solved.reached();
  }

  /**
   * Returns the weighted sum, as defined by {@link Plan}.
   *
   * @return a number of 0 or more; 0 where every weighted constraint is met, or there is none
   * @throws IllegalStateException if no plan was found
   */
  public double weightedSum() {
    return solved.worth().weighted();
  }

  /**
   * Returns the weighted sum before the volumes were rounded.
   *
   * @return a number of 0 or more
   * @throws IllegalStateException if no plan was found
   */
  public double weightedSumBeforeRounding() {
    return solved.exact().worth().weighted();
  }

  /**
   * Returns what cannot be kept together: constraints and limits of shares, as {@link
   * Plan#conflicts()} does.
   *
   * @return the conflicts; empty where a plan was found
   */
  public List<Conflict> conflicts() {
    return solved.conflicts();
  }

  /**
   * Returns the plan for the nearest blend that can be reached, as {@link Plan#nearest()} does.
   *
   * @return the plan; empty where one was found
   */
  public Optional<BlendPlan<L>> nearest() {
    return solved.nearest().map(found -> new BlendPlan<>(blends, found));
  }

  /**
   * Explains the plan: how each figure is found from the blend, and what each weighted constraint
   * adds to the sum.
   *
   * @return the explanation
   * @throws IllegalStateException if no plan was found
   */
  public Explanation explain() {
    return new Explanation(solved.step());
  }

  /**
   * Returns what is notable about the plan and its blend.
   *
   * @return the notices, without repetition
   */
  public List<Notice> notices() {
    return solved.notices();
  }

  /**
   * Returns what to mind: that a plan is a proposal, and the cautions of the blend or of the
   * nearest one.
   *
   * @return the cautions, without repetition
   */
  public List<Caution> cautions() {
    Set<Caution> all = new LinkedHashSet<>();
    all.add(Plan.PROPOSAL);
    if (solved.isFound()) {
      all.addAll(blend().cautions());
    }
    nearest().ifPresent(plan -> all.addAll(plan.cautions()));
    return List.copyOf(all);
  }

  /** Prints the parts and what is reached, or what is in conflict and the nearest blend. */
  @Override
  public String toString() {
    List<String> lines = new ArrayList<>();
    if (!solved.isFound()) {
      lines.add(outcome() == Plan.Outcome.IMPOSSIBLE ? "no blend exists" : "no blend found");
      conflicts().forEach(conflict -> lines.add(conflict.toString()));
      nearest().ifPresent(plan -> lines.add("nearest:\n" + plan));
      return String.join("\n", lines);
    }
    parts().forEach(part -> lines.add(part.toString()));
    reached().forEach(reached -> lines.add(reached.toString()));
    lines.add(String.format(Locale.ROOT, "weighted sum %.4f", weightedSum()));
    lines.add(Plan.PROPOSAL.toString());
    return String.join("\n", lines);
  }
}
