package org.brewchem.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Target;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Permission;
import org.brewchem.water.Water;

/**
 * A plan: the waters to mix and the doses to give so that what is made of them meets constraints.
 *
 * <p>A constraint is hard unless it carries a weight. Hard constraints and the limits of the shelf
 * are never broken. A weighted one adds to a sum. With an aim it adds its weight times |value -
 * aim| / tolerance; without one, its weight times how far the value lies outside the limits,
 * divided by its scale: the one stated, else half the band. For a ratio, value, aim and limits
 * count as natural logarithms. The plan with the least sum is best; among plans within 1e-6 of it
 * the cheapest is taken or, where prices are missing, the one that doses the least mass.
 *
 * <p>The doses are rounded to what can be measured out, chosen among the neighbours. All figures of
 * the plan are those of the liquids after its treatments. The same question has the same answer,
 * bit by bit.
 *
 * <p>A plan is a proposal; local codes and a trained person decide. Immutable.
 */
public final class Plan {

  /** What came of the search. */
  public enum Outcome {
    /** A plan was found. */
    FOUND,
    /** There is a plan, and none was found whose doses can be measured out. */
    NOT_TO_BE_WEIGHED,
    /** No plan was found; that is no proof that there is none. */
    NONE_FOUND,
    /** No plan exists, and the first of the conflicts proves it. */
    IMPOSSIBLE
  }

  private static final WaterPortion WHOLE = new WaterPortion("water", Volume.ofHectolitres(1));

  static final Caution PROPOSAL =
      new Caution(
          Hazard.DOSING_FOOD, "This plan is a proposal; local codes and a trained person decide.");

  private final Solved solved;

  private Plan(Solved solved) {
    this.solved = solved;
  }

  /**
   * Starts a plan.
   *
   * @param sources the waters that come in, all at one temperature; they are called "source 1" and
   *     so on, or "source" where there is one
   * @return the request, for one hectolitre until {@link Request#forPortions} says otherwise
   * @throws IllegalArgumentException if there is no water
   */
  public static Request from(Water... sources) {
    List<Water> waters = List.of(sources.clone());
    if (waters.isEmpty()) {
      throw new IllegalArgumentException(
          "sources: none are not possible; a plan starts with a water");
    }
    List<String> names =
        waters.size() == 1
            ? List.of("source")
            : IntStream.rangeClosed(1, waters.size()).mapToObj(k -> "source " + k).toList();
    return new Request(
        new Query(
            waters,
            names,
            Shelf.of(),
            List.of(WHOLE),
            List.of(),
            Query.Economy.BY_THE_SHELF,
            Optional.empty()));
  }

  /** What a plan is asked for. Immutable: each call gives a further request. */
  public static final class Request {

    private final Query query;

    private Request(Query query) {
      this.query = query;
    }

    /**
     * Names the sources.
     *
     * @param names one to each source, in their order
     * @return the request
     * @throws IllegalArgumentException if there are more or fewer names than sources, or one is
     *     blank
     */
    public Request called(String... names) {
      if (names.length != query.sources().size()) {
        throw new IllegalArgumentException(
            "names: "
                + NumberText.count(names.length, "is", "are")
                + " not possible; one to each of "
                + query.sources().size()
                + " sources is needed");
      }
      for (String name : names) {
        Checks.notBlank("name of a source", name);
      }
      return new Request(query.called(List.of(names.clone())));
    }

    /**
     * States what may be used.
     *
     * @param shelf the shelf
     * @return the request
     */
    public Request using(Shelf shelf) {
      Objects.requireNonNull(shelf, "shelf");
      return new Request(query.using(shelf));
    }

    /**
     * Adds what the water of every portion is to be.
     *
     * @param target the constraints
     * @return the request
     */
    public Request meeting(Target target) {
      return wanting(target.constraints(), Optional.empty(), false, Optional.empty());
    }

    /**
     * Adds what the water of one portion is to be.
     *
     * @param portion the name of the portion
     * @param target the constraints
     * @return the request
     */
    public Request meeting(String portion, Target target) {
      Objects.requireNonNull(portion, "portion");
      return wanting(target.constraints(), Optional.of(portion), false, Optional.empty());
    }

    /**
     * Adds what all portions mixed are to be.
     *
     * @param target the constraints
     * @return the request
     */
    public Request meetingTogether(Target target) {
      return wanting(target.constraints(), Optional.empty(), true, Optional.empty());
    }

    /**
     * Adds what a liquid made of the water is to be, such as a mash.
     *
     * @param made the liquid downstream
     * @param constraints the constraints on its figures
     * @return the request
     */
    public Request and(Downstream made, Constraint... constraints) {
      return wanting(
          List.of(constraints.clone()),
          made.portion(),
          made.portion().isEmpty(),
          Optional.of(made));
    }

    private Request wanting(
        List<Constraint> constraints,
        Optional<String> portion,
        boolean together,
        Optional<Downstream> made) {
      List<Wanted> more = new ArrayList<>(query.wanted());
      constraints.forEach(c -> more.add(new Wanted(c, portion, together, made)));
      return new Request(query.wanting(more));
    }

    /**
     * Plans for portions of water, each mixed and treated by itself.
     *
     * @param portions the portions, each name once
     * @return the request
     * @throws IllegalArgumentException if there are none, or two have one name
     */
    public Request forPortions(WaterPortion... portions) {
      List<WaterPortion> all = List.of(portions.clone());
      if (all.isEmpty() || all.stream().map(WaterPortion::name).distinct().count() < all.size()) {
        throw new IllegalArgumentException(
            "portions: " + all + " are not possible; at least one, and each name once, is needed");
      }
      return new Request(query.forPortions(all));
    }

    /**
     * Takes the cheapest among equally good plans; an item without a price counts as free.
     *
     * @return the request
     */
    public Request leastCost() {
      return new Request(query.keepingLow(Query.Economy.COST));
    }

    /**
     * Takes the one that doses the least mass among equally good plans, whatever it costs.
     *
     * @return the request
     */
    public Request leastMass() {
      return new Request(query.keepingLow(Query.Economy.MASS));
    }

    /** The problem that the request states. */
    Problem problem() {
      return new Problem(query);
    }

    /**
     * Finds the plan.
     *
     * @return the plan, or what was found instead; see {@link Plan#outcome()}
     * @throws IllegalArgumentException if an item of the shelf states no strength or may not go
     *     into brewing water, or into beer where a beer is constrained, the waters have different
     *     temperatures, a portion that is named does not exist, a mash takes more liquor than there
     *     is water, or a weighted constraint has no scale
     * @throws UnknownFigureException if a figure that is constrained is not known of the waters
     */
    public Plan solve() {
      Set<String> known = new LinkedHashSet<>();
      query.portions().forEach(portion -> known.add(portion.name()));
      for (Wanted wanted : query.wanted()) {
        wanted
            .portion()
            .filter(name -> !known.contains(name))
            .ifPresent(
                name -> {
                  throw new IllegalArgumentException(
                      "portion: "
                          + Excerpt.of(name)
                          + " is not possible; the portions are "
                          + Excerpt.of(known.toString(), 250));
                });
      }
      Set<Downstream> made = new LinkedHashSet<>();
      query.wanted().forEach(wanted -> wanted.downstream().ifPresent(made::add));
      made.forEach(one -> one.requireWater(query.portions()));
      query.permissionsInBeer().forEach(Permission::orThrow);
      return new Plan(Solved.of(query));
    }
  }

  /**
   * Returns what came of the search.
   *
   * @return the outcome
   */
  public Outcome outcome() {
    return outcome(solved);
  }

  static Outcome outcome(Solved solved) {
    if (!solved.isFound()) {
      return !solved.conflicts().isEmpty() && solved.conflicts().get(0).isProved()
          ? Outcome.IMPOSSIBLE
          : Outcome.NONE_FOUND;
    }
    return solved.isWeighable() ? Outcome.FOUND : Outcome.NOT_TO_BE_WEIGHED;
  }

  /**
   * Returns the doses.
   *
   * @return portion by portion, in the order of the shelf, without those of 0
   * @throws IllegalStateException if no plan was found
   */
  public List<PlannedAmount> doses() {
    return solved.amounts(false);
  }

  /**
   * Returns the volumes of the waters.
   *
   * @return portion by portion, sources before diluents, without those of 0
   * @throws IllegalStateException if no plan was found
   */
  public List<PlannedAmount> waters() {
    return solved.amounts(true);
  }

  /**
   * Returns the water of a portion after the plan.
   *
   * @param portion the name of the portion
   * @return the water
   * @throws IllegalStateException if no plan was found
   * @throws IllegalArgumentException if there is no such portion
   */
  public Water water(String portion) {
    return (Water) solved.waters().get(solved.portion(portion));
  }

  /**
   * Returns the water of all portions mixed after the plan; of a plan for one portion, its water.
   *
   * @return the water
   * @throws IllegalStateException if no plan was found
   */
  public Water water() {
    return (Water) solved.together();
  }

  /**
   * Returns the water that a portion begins with, which the steps are done to.
   *
   * @param portion the name of the portion
   * @return the first water that the portion is made of
   * @throws IllegalStateException if no plan was found
   * @throws IllegalArgumentException if there is no such portion
   */
  public Water start(String portion) {
    return (Water) solved.kettle().start(solved.portion(portion), solved.x());
  }

  /**
   * Returns what is done to the first water of a portion, step by step.
   *
   * @param portion the name of the portion
   * @return the other waters, then the doses, each counting on the liquid as it is then
   * @throws IllegalStateException if no plan was found
   * @throws IllegalArgumentException if there is no such portion
   */
  public List<Treatment> steps(String portion) {
    return List.copyOf(solved.kettle().steps(solved.portion(portion), solved.x()));
  }

  /**
   * Returns what is reached of each constraint, with its uncertainty and chance.
   *
   * @return in the order in which the constraints were added, portion by portion
   * @throws IllegalStateException if no plan was found
   */
  public List<Reached> reached() {
    return solved.reached();
  }

  /**
   * Returns the weighted sum.
   *
   * @return a number of 0 or more; 0 where every weighted constraint is met, or there is none
   * @throws IllegalStateException if no plan was found
   */
  public double weightedSum() {
    return solved.worth().weighted();
  }

  /**
   * Returns the weighted sum before the doses were rounded.
   *
   * @return 0 or more
   * @throws IllegalStateException if no plan was found
   */
  public double weightedSumBeforeRounding() {
    return solved.exact().worth().weighted();
  }

  /**
   * Returns the doses before they were rounded.
   *
   * @return as {@link #doses()}
   * @throws IllegalStateException if no plan was found
   */
  public List<PlannedAmount> dosesBeforeRounding() {
    return solved.amountsBeforeRounding(false);
  }

  /**
   * Returns the volumes of the waters before they were rounded.
   *
   * @return as {@link #waters()}
   * @throws IllegalStateException if no plan was found
   */
  public List<PlannedAmount> watersBeforeRounding() {
    return solved.amountsBeforeRounding(true);
  }

  /**
   * Returns what rounding lost.
   *
   * @return the weighted sum less that before rounding, a number; below 0 by at most 1e-6, where
   *     the cheaper of equally good plans was taken
   * @throws IllegalStateException if no plan was found
   */
  public double lostByRounding() {
    return weightedSum() - weightedSumBeforeRounding();
  }

  /**
   * Returns what the doses and diluents cost.
   *
   * @return in the currency of the prices; empty if the plan went by mass
   * @throws IllegalStateException if no plan was found
   */
  public OptionalDouble cost() {
    return solved.query().byCost()
        ? OptionalDouble.of(solved.economy(solved.x()))
        : OptionalDouble.empty();
  }

  /**
   * Returns the mass of all doses, waters left out.
   *
   * @return the mass, that of a liquid by its density
   * @throws IllegalStateException if no plan was found
   */
  public Mass massOfDoses() {
    return Mass.ofGrams(solved.grams(solved.x()));
  }

  /**
   * Returns by how much the plan would be better without each constraint, before rounding. It is
   * planned once more for each.
   *
   * @return in the order of {@link #reached()}
   * @throws IllegalStateException if no plan was found
   */
  public List<ConstraintCost> costs() {
    return solved.costs();
  }

  /**
   * Returns the constraint that costs most: the most of the weighted sum, and among those within
   * 1e-6 of it the most of cost or mass.
   *
   * @return the constraint; empty where leaving any of them out makes the plan no better
   * @throws IllegalStateException if no plan was found
   */
  public Optional<ConstraintCost> costliest() {
    List<ConstraintCost> costs = costs();
    double most = costs.stream().mapToDouble(ConstraintCost::weightedSum).max().orElse(0);
    return costs.stream()
        .filter(cost -> cost.weightedSum() >= most - Search.EQUALLY_GOOD)
        .max(Comparator.comparingDouble(ConstraintCost::economy))
        .filter(cost -> most > Search.EQUALLY_GOOD || cost.economy() > Search.EQUALLY_GOOD);
  }

  /**
   * Returns what cannot be kept together: sets of bounds of which none can be left out. The first
   * is that of the question; further ones are what was still in conflict when the hard constraints
   * of those before had been made weighted.
   *
   * @return the conflicts; empty where a plan was found
   */
  public List<Conflict> conflicts() {
    return solved.conflicts();
  }

  /**
   * Returns the plan for the nearest water that can be reached: by the same weighted sum, the hard
   * constraints in conflict made weighted, with weight 1 and their stated scale, else half the
   * band, else, of a limit on one side, its size, and 1 in natural logarithms for a ratio.
   *
   * @return the plan; empty where one was found, or the limits of the shelf alone are in conflict
   */
  public Optional<Plan> nearest() {
    return solved.nearest().map(Plan::new);
  }

  /**
   * Explains the plan: how each figure is found from the treated waters, what is measured out, and
   * what each weighted constraint adds to the sum.
   *
   * @return the explanation
   * @throws IllegalStateException if no plan was found
   */
  public Explanation explain() {
    return new Explanation(solved.step());
  }

  /**
   * Returns what is notable about the plan and its waters.
   *
   * @return the notices, without repetition
   */
  public List<Notice> notices() {
    return solved.notices();
  }

  /**
   * Returns what to mind: the usual cautions for everything that is dosed, in the nearest plan too,
   * and that a plan is a proposal.
   *
   * @return the cautions, without repetition
   */
  public List<Caution> cautions() {
    Set<Caution> all = new LinkedHashSet<>();
    all.add(PROPOSAL);
    if (solved.query().isForBeer()) {
      all.addAll(Caution.of(List.of(Hazard.DOSING_FOOD, Hazard.TASTING)));
    }
    if (solved.isFound()) {
      solved.waters().forEach(water -> all.addAll(water.cautions()));
    }
    nearest().ifPresent(plan -> all.addAll(plan.cautions()));
    return List.copyOf(all);
  }

  /** Prints waters, doses and what is reached, line by line. */
  @Override
  public String toString() {
    if (!solved.isFound()) {
      List<String> lines = new ArrayList<>();
      lines.add(outcome() == Outcome.IMPOSSIBLE ? "no plan exists" : "no plan found");
      conflicts().forEach(conflict -> lines.add(conflict.toString()));
      nearest().ifPresent(plan -> lines.add("nearest:\n" + plan));
      return String.join("\n", lines);
    }
    List<String> lines = new ArrayList<>();
    waters().forEach(water -> lines.add(water.toString()));
    doses().forEach(dose -> lines.add(dose.toString()));
    reached().forEach(reached -> lines.add(reached.toString()));
    lines.add(String.format(Locale.ROOT, "weighted sum %.4f", weightedSum()));
    cautions().stream().limit(1).forEach(caution -> lines.add(caution.toString()));
    return String.join("\n", lines);
  }
}
