package org.brewchem.plan;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;
import org.brewchem.plan.Search.Point;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Permission;
import org.brewchem.treatment.TreatmentCode;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.WaterCode;
import org.jspecify.annotations.Nullable;

/** What came of a search, and what the kernel says of it. Immutable. */
final class Solved {

  private static final Scale<Double> SUM = Scale.number("", 6);

  /** How far a sum may move between the search and the kernel, whose order of work differs. */
  private static final double SAME = 1e-8;

  private final Query query;
  private final Variables variables;
  private final Kettle kettle;
  private final @Nullable Point exact;
  private final @Nullable Point taken;
  private final boolean isWeighable;
  private final List<Conflict> conflicts;
  private final @Nullable Solved nearest;
  private final List<Liquid> waters = new ArrayList<>();
  private final List<Reached> reached = new ArrayList<>();
  private final @Nullable Liquid together;
  private final Problem.@Nullable Worth worth;

  private Solved(
      Problem problem,
      @Nullable Point exact,
      @Nullable Point taken,
      boolean isWeighable,
      List<Conflict> conflicts,
      @Nullable Solved nearest) {
    this.conflicts = List.copyOf(conflicts);
    this.nearest = nearest;
    this.query = problem.query();
    this.variables = problem.variables();
    this.kettle = problem.kettle();
    this.exact = exact;
    this.taken = taken;
    this.isWeighable = isWeighable;
    if (taken == null) {
      together = null;
      worth = null;
      return;
    }
    for (int p = 0; p < query.portions().size(); p++) {
      waters.add(kettle.water(p, taken.x()));
    }
    together = query.portions().size() == 1 ? waters.get(0) : kettle.together(taken.x());
    worth = judged(problem);
  }

  static Solved of(Query asked) {
    Query query = asked.spread();
    Problem problem = new Problem(query);
    Optional<Point> best = new Search(problem).best();
    if (best.isPresent() && best.get().isKept()) {
      return rounded(problem, best.get());
    }
    // Hard constraints that conflict are made weighted, until a plan is found that keeps the rest.
    List<Conflict> conflicts = new ArrayList<>();
    Problem softer = problem;
    while (true) {
      Optional<ConflictSearch.Found> conflict = conflict(softer, best);
      conflict.ifPresent(found -> conflicts.add(found.conflict()));
      if (conflict.isEmpty() || conflict.get().goals().isEmpty()) {
        return new Solved(problem, null, null, false, conflicts, null);
      }
      softer = new Problem(softened(softer, conflict.get().goals()));
      best = new Search(softer).best();
      if (best.isPresent() && best.get().isKept()) {
        Solved nearest = rounded(softer, best.get());
        return new Solved(problem, null, null, false, conflicts, nearest);
      }
    }
  }

  private static Solved rounded(Problem problem, Point exact) {
    Rounding rounding = new Rounding(problem);
    Optional<Point> rounded =
        rounding.isNeeded()
            ? rounding.round(exact).map(point -> rounding.improve(point, exact))
            : Optional.of(exact);
    return new Solved(problem, exact, rounded.orElse(exact), rounded.isPresent(), List.of(), null);
  }

  private static Optional<ConflictSearch.Found> conflict(Problem problem, Optional<Point> best) {
    Optional<ConflictSearch.Found> shown =
        best.or(() -> new Search(problem).anywhere())
            .flatMap(point -> new ConflictSearch(problem).at(point));
    SearchedConflict searched = new SearchedConflict(problem);
    if (shown.isEmpty()) {
      return searched.find();
    }
    return shown.get().conflict().isProved() ? shown : Optional.of(searched.checked(shown.get()));
  }

  /** The question with some hard constraints made weighted: weight 1, scale half the band. */
  private static Query softened(Problem problem, List<Integer> goals) {
    List<Wanted> wanted = new ArrayList<>(problem.query().wanted());
    for (int g : goals) {
      Wanted one = wanted.get(g);
      Constraint soft = one.constraint().withWeight(1).scaledBy(problem.goals().get(g).scale());
      wanted.set(g, new Wanted(soft, one.portion(), one.together(), one.downstream()));
    }
    return problem.query().wanting(wanted);
  }

  List<Conflict> conflicts() {
    return conflicts;
  }

  Optional<Solved> nearest() {
    return Optional.ofNullable(nearest);
  }

  /** By how much the plan would be better without each constraint, before rounding. */
  List<ConstraintCost> costs() {
    double sum = exact().worth().weighted();
    double own = economy(exact().x());
    List<ConstraintCost> costs = new ArrayList<>();
    for (int g = 0; g < query.wanted().size(); g++) {
      List<Wanted> fewer = new ArrayList<>(query.wanted());
      Wanted left = fewer.remove(g);
      Optional<Point> without =
          new Search(new Problem(query.wanting(fewer))).best().filter(Point::isKept);
      if (without.isPresent()) {
        costs.add(
            new ConstraintCost(
                left.constraint(),
                reached.get(g).liquid(),
                sum - without.get().worth().weighted(),
                own - economy(without.get().x())));
      }
    }
    return List.copyOf(costs);
  }

  /** Asks the liquids after the plan for every constraint. */
  private Problem.Worth judged(Problem problem) {
    List<Goal> goals = problem.goals();
    double[] numbers = new double[goals.size()];
    for (int g = 0; g < numbers.length; g++) {
      Goal goal = goals.get(g);
      Site site = problem.site(g);
      Liquid water = site.portion() < 0 ? together() : waters.get(site.portion());
      site.set(x());
      Liquid liquid = site.of(water);
      Answer<?> answer = liquid.answer(goal.figure());
      numbers[g] = answer.number();
      reached.add(Reached.of(goal, site.name(), answer));
    }
    Problem.Worth found = problem.worthOf(numbers);
    if (found.violation() > SAME || !variables.keepsToTheShelf(x())) {
      throw new IllegalStateException(
          "plan: its doses break the shelf, or the liquids a hard constraint by "
              + found.violation()
              + " of its scale");
    }
    return found;
  }

  boolean isFound() {
    return taken != null;
  }

  boolean isWeighable() {
    return isWeighable;
  }

  Query query() {
    return query;
  }

  Kettle kettle() {
    return kettle;
  }

  private <T> T there(@Nullable T value) {
    if (value == null) {
      throw new IllegalStateException("plan: none was found; ask for its outcome first");
    }
    return value;
  }

  Point exact() {
    return there(exact);
  }

  double[] x() {
    return there(taken).x();
  }

  Problem.Worth worth() {
    return there(worth);
  }

  List<Liquid> waters() {
    there(taken);
    return List.copyOf(waters);
  }

  Liquid together() {
    return there(together);
  }

  List<Reached> reached() {
    there(taken);
    return List.copyOf(reached);
  }

  int portion(String name) {
    Objects.requireNonNull(name, "portion");
    for (int p = 0; p < query.portions().size(); p++) {
      if (query.portions().get(p).name().equals(name)) {
        return p;
      }
    }
    throw new IllegalArgumentException(
        "portion: "
            + Excerpt.of(name)
            + " is not possible; the portions are "
            + Excerpt.of(query.portions().toString(), 250));
  }

  List<PlannedAmount> amounts(boolean ofWater) {
    return amounts(x(), ofWater);
  }

  List<PlannedAmount> amountsBeforeRounding(boolean ofWater) {
    return amounts(exact().x(), ofWater);
  }

  private List<PlannedAmount> amounts(double[] x, boolean ofWater) {
    List<PlannedAmount> all = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      if (x[i] > 0 && variables.isWater(i) == ofWater) {
        all.add(PlannedAmount.of(variables, i, x[i]));
      }
    }
    return List.copyOf(all);
  }

  /** What the doses cost, or weigh in grams, whichever was kept low. */
  double economy(double[] x) {
    return variables.cost(x);
  }

  double grams(double[] x) {
    return new Variables(query.keepingLow(Query.Economy.MASS)).cost(x);
  }

  /** The weighted sum as a step, from the answers that it counts. */
  Step step() {
    double sum = worth().weighted();
    List<String> lines = new ArrayList<>();
    amounts(true).forEach(amount -> lines.add(amount.toString()));
    amounts(false).forEach(amount -> lines.add(amount.toString()));
    for (Reached one : reached) {
      lines.add(
          one.liquid()
              + ", "
              + one.constraint()
              + (one.constraint().weight().isPresent()
                  ? ": adds " + NumberText.significant(one.penalty(), 4)
                  : ": hard, kept"));
    }
    return Step.of("weighted sum", SUM, Step.Kind.FORMULA)
        .text("weight x |value - aim| / tolerance, or weight x beyond the limits / scale", "")
        .inputs(reached.stream().map(one -> one.answer().step()).toList())
        .detail(
            () ->
                new Step.Detail(
                    lines,
                    reached.stream().mapToDouble(Reached::penalty).sum() - sum,
                    1e-12 * Math.max(1, sum)))
        .found(Traced.exact(sum));
  }

  List<Notice> notices() {
    Set<Notice> all = new LinkedHashSet<>();
    if (taken != null && !isWeighable) {
      all.add(
          Notice.of(
              PlanCode.NOT_TO_BE_WEIGHED,
              "plan",
              "no doses were found that can be measured out and keep every limit; those given are"
                  + " not rounded. Widen a limit, or measure more finely"));
    }
    for (int k = 0; k < variables.perPortion(); k++) {
      if (variables.step(k) == 0 && !variables.isWater(k)) {
        all.add(
            Notice.of(
                PlanCode.NOT_ROUNDED,
                variables.name(k),
                "nothing says how finely "
                    + variables.name(k)
                    + " is measured out: its doses are not rounded"));
      }
    }
    reached.stream()
        .filter(one -> one.isDoubtful() && !isSingle(one))
        .forEach(one -> all.add(doubt(one)));
    query.permissionsInBeer().stream()
        .filter(Permission::isNotable)
        .map(one -> Notice.of(TreatmentCode.PERMISSION, one.subject(), one.text()))
        .forEach(all::add);
    query.portions().forEach(portion -> shared(portion).ifPresent(all::add));
    for (int p = 0; p < waters.size(); p++) {
      boolean isLiquor = query.isLiquor(query.portions().get(p));
      waters.get(p).notices().stream()
          .filter(notice -> !isLiquor || !isAboutWaterByItself(notice))
          .forEach(all::add);
    }
    reached.forEach(one -> all.addAll(one.answer().notices()));
    return List.copyOf(all);
  }

  private Optional<Notice> shared(WaterPortion portion) {
    List<Downstream> mashes = query.sharing(portion);
    double litres = mashes.stream().mapToDouble(Downstream::litresOfLiquor).sum();
    return mashes.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Notice.of(
                PlanCode.LIQUOR_SHARED,
                portion.name(),
                mashes.stream().map(Downstream::toString).collect(Collectors.joining(" and "))
                    + " take "
                    + Volume.ofLitres(litres)
                    + " of "
                    + portion.volume()
                    + " together: the water suits each of them and is not enough for all"));
  }

  /** The liquor of a mash takes the acid of the mash, and nobody has it as water. */
  private static boolean isAboutWaterByItself(Notice notice) {
    return notice.code() == WaterCode.CARBON_DIOXIDE_LEAVES
        || (notice.code() == WaterCode.TREATED_WATER_UNUSUAL
            && notice.subject().equals(Figures.PH_VALUE.title()));
  }

  /** A single value is met by no chance, and narrowing it would not help. */
  private static boolean isSingle(Reached one) {
    Constraint wanted = one.constraint();
    return wanted.lower().equals(wanted.upper());
  }

  private static Notice doubt(Reached one) {
    String title = one.constraint().figure().title();
    return Notice.of(
        PlanCode.AT_THE_LIMIT,
        title,
        title
            + " of "
            + one.liquid()
            + ": the chance of "
            + one.constraint().band()
            + " is only "
            + Math.round(100 * one.chance().orElseThrow())
            + " %; a narrower limit makes it surer");
  }
}
