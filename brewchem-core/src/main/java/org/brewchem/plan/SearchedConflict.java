package org.brewchem.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.plan.ConflictSearch.Found;
import org.brewchem.plan.Search.Point;

/**
 * A conflict as searches tell it: limits of hard goals of which no plan was found that keeps them
 * all, and one was found that keeps all but any of them. It proves nothing of all of them together;
 * a plan that keeps all but one is a proof that this one is needed.
 */
final class SearchedConflict {

  private final Problem problem;
  private final Query query;

  /**
   * One limit of a hard goal.
   *
   * @param goal the goal in the whole problem
   * @param isLower whether it is the lower limit
   * @param wanted the limit as a constraint of its own
   */
  private record Limit(int goal, boolean isLower, Wanted wanted) {}

  /**
   * Makes a search.
   *
   * @param problem the problem, one goal to each constraint
   */
  SearchedConflict(Problem problem) {
    this.problem = problem;
    this.query = problem.query();
  }

  /** Finds the limits; empty where even without any nothing was found. */
  Optional<Found> find() {
    List<Limit> all = new ArrayList<>();
    for (int g = 0; g < problem.goals().size(); g++) {
      Goal goal = problem.goals().get(g);
      for (boolean isLower : new boolean[] {true, false}) {
        if (goal.isHard() && !Double.isInfinite(isLower ? goal.plainLower() : goal.plainUpper())) {
          all.add(limit(g, isLower));
        }
      }
    }
    Map<Limit, Point> needed = needed(all);
    return needed.isEmpty() ? Optional.empty() : Optional.of(described(needed));
  }

  /**
   * Leaves out of a conflict that tangents show what searches can do without, and adds the ways
   * that they found.
   */
  Found checked(Found shown) {
    List<Limit> all =
        shown.members().stream()
            .filter(member -> member.goal() >= 0)
            .map(member -> limit(member.goal(), member.isLower()))
            .toList();
    Map<Limit, Point> needed = needed(all);
    if (needed.isEmpty()) {
      return shown;
    }
    if (needed.size() == all.size()) {
      return withWays(shown, needed);
    }
    List<Limit> left = List.copyOf(needed.keySet());
    Problem fewer = new Problem(wanting(left));
    Search search = new Search(fewer);
    return search
        .best()
        .or(search::anywhere)
        .flatMap(point -> new ConflictSearch(fewer).at(point))
        .filter(found -> found.goals().size() == left.size())
        .map(found -> withWays(asBefore(found, left), needed))
        .orElseGet(() -> described(needed));
  }

  private Limit limit(int g, boolean isLower) {
    Goal goal = problem.goals().get(g);
    Wanted own = query.wanted().get(g);
    Constraint alone =
        oneSided(goal.figure(), isLower ? goal.plainLower() : goal.plainUpper(), isLower)
            .scaledBy(goal.plainScale());
    return new Limit(
        g, isLower, new Wanted(alone, own.portion(), own.together(), own.downstream()));
  }

  private static <Q> Constraint oneSided(Figure<Q> figure, double limit, boolean isLower) {
    Q stated = figure.shown().of(limit);
    return isLower ? Constraint.atLeast(figure, stated) : Constraint.atMost(figure, stated);
  }

  /** A conflict of limits, each a goal of its own, as one of the goals of the whole problem. */
  private Found asBefore(Found found, List<Limit> left) {
    List<Integer> goals = found.goals().stream().map(k -> left.get(k).goal()).distinct().toList();
    Conflict own = found.conflict();
    return new Found(
        new Conflict(own.members(), constraints(goals), own.isProved(), own.proof(), own.ways()),
        goals,
        found.members().stream()
            .map(m -> m.goal() < 0 ? m : m.ofGoal(left.get(m.goal()).goal()))
            .toList());
  }

  private List<Constraint> constraints(List<Integer> goals) {
    return goals.stream().map(g -> problem.goals().get(g).constraint()).distinct().toList();
  }

  private Found withWays(Found found, Map<Limit, Point> needed) {
    List<Conflict.Way> ways = new ArrayList<>();
    for (Member member : found.members()) {
      String text = member.text();
      found.conflict().ways().stream()
          .filter(way -> way.without().equals(text))
          .findFirst()
          .or(
              () ->
                  needed.keySet().stream()
                      .filter(l -> l.goal() == member.goal() && l.isLower() == member.isLower())
                      .findFirst()
                      .map(limit -> way(needed, limit, text)))
          .ifPresent(ways::add);
    }
    Conflict own = found.conflict();
    return new Found(
        new Conflict(own.members(), own.constraints(), own.isProved(), own.proof(), ways),
        found.goals(),
        found.members());
  }

  private Conflict.Way way(Map<Limit, Point> needed, Limit without, String text) {
    List<Integer> others =
        needed.keySet().stream().filter(l -> !l.equals(without)).map(Limit::goal).toList();
    double[] x = Objects.requireNonNull(needed.get(without)).x();
    return new ConflictSearch(problem).evaluated(x, others, text);
  }

  private Found described(Map<Limit, Point> needed) {
    List<String> members = new ArrayList<>();
    List<Conflict.Way> ways = new ArrayList<>();
    for (Limit limit : needed.keySet()) {
      Constraint alone = limit.wanted().constraint();
      String text =
          alone.figure().title() + " of " + problem.site(limit.goal()).name() + ": " + alone.band();
      members.add(text);
      ways.add(way(needed, limit, text));
    }
    members.add("the limits of the shelf, and that doses and volumes are 0 or more");
    List<Integer> goals = needed.keySet().stream().map(Limit::goal).distinct().toList();
    return new Found(
        new Conflict(members, constraints(goals), false, List.of(), ways), goals, List.of());
  }

  /**
   * Leaves out one limit after the other, from the last to the first, where no plan is found
   * without it either.
   *
   * @return the limits that stay, in their order, each with a point that keeps the others; empty
   *     where even without limits nothing was found
   */
  private Map<Limit, Point> needed(List<Limit> limits) {
    List<Limit> in = new ArrayList<>(limits);
    Map<Limit, Point> kept = new LinkedHashMap<>();
    for (int k = in.size() - 1; k >= 0; k--) {
      List<Limit> fewer = new ArrayList<>(in);
      Limit left = fewer.remove(k);
      Optional<Point> point = kept(fewer);
      if (point.isPresent()) {
        kept.put(left, point.get());
      } else {
        in = fewer;
      }
    }
    // A point that keeps more limits than stay keeps those that stay.
    Map<Limit, Point> ordered = new LinkedHashMap<>();
    for (Limit limit : in) {
      ordered.put(limit, Objects.requireNonNull(kept.get(limit)));
    }
    return ordered;
  }

  private Optional<Point> kept(List<Limit> limits) {
    return new Search(new Problem(wanting(limits))).best().filter(Point::isKept);
  }

  private Query wanting(List<Limit> limits) {
    return query.wanting(limits.stream().map(Limit::wanted).toList());
  }
}
