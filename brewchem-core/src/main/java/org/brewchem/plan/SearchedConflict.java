package org.brewchem.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.figure.Constraint;
import org.brewchem.plan.ConflictSearch.Found;
import org.brewchem.plan.Search.Point;

/**
 * A conflict as searches tell it: hard goals of which no plan was found that keeps them all, and
 * one was found that keeps all but any of them. It proves nothing of all of them together; a plan
 * that keeps all but one is a proof that this one is needed.
 */
final class SearchedConflict {

  private final Problem problem;
  private final Query query;

  /**
   * Makes a search.
   *
   * @param problem the problem, one goal to each constraint
   */
  SearchedConflict(Problem problem) {
    this.problem = problem;
    this.query = problem.query();
  }

  /** Finds the goals; empty where even without goals nothing was found. */
  Optional<Found> find() {
    List<Integer> hard = new ArrayList<>();
    for (int g = 0; g < problem.goals().size(); g++) {
      if (problem.goals().get(g).isHard()) {
        hard.add(g);
      }
    }
    Map<Integer, Point> needed = needed(hard);
    return needed.isEmpty() ? Optional.empty() : Optional.of(described(needed));
  }

  /**
   * Leaves out of a conflict that tangents show what searches can do without, and adds the ways
   * that they found.
   */
  Found checked(Found shown) {
    Map<Integer, Point> needed = needed(shown.goals());
    if (needed.isEmpty()) {
      return shown;
    }
    if (needed.size() == shown.goals().size()) {
      return withWays(shown, needed);
    }
    List<Integer> left = List.copyOf(needed.keySet());
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

  /** A conflict of fewer goals, its goals as they count in the whole problem. */
  private static Found asBefore(Found found, List<Integer> left) {
    return new Found(
        found.conflict(),
        found.goals().stream().map(left::get).toList(),
        found.members().stream()
            .map(m -> m.goal() < 0 ? m : m.ofGoal(left.get(m.goal())))
            .toList());
  }

  private Found withWays(Found found, Map<Integer, Point> needed) {
    List<Conflict.Way> ways = new ArrayList<>();
    for (Member member : found.members()) {
      String text = member.text();
      Optional<Conflict.Way> known =
          found.conflict().ways().stream().filter(way -> way.without().equals(text)).findFirst();
      long sides = found.members().stream().filter(m -> m.goal() == member.goal()).count();
      // The search left out both limits of a goal, which is too much where both take part.
      if (known.isEmpty() && member.goal() >= 0 && sides == 1) {
        known = Optional.of(way(needed, member.goal(), text));
      }
      known.ifPresent(ways::add);
    }
    Conflict own = found.conflict();
    return new Found(
        new Conflict(own.members(), own.constraints(), own.isProved(), own.proof(), ways),
        found.goals(),
        found.members());
  }

  private Conflict.Way way(Map<Integer, Point> needed, int g, String text) {
    List<Integer> others = new ArrayList<>(needed.keySet());
    others.remove(Integer.valueOf(g));
    double[] x = Objects.requireNonNull(needed.get(g)).x();
    return new ConflictSearch(problem).evaluated(x, others, text);
  }

  private Found described(Map<Integer, Point> needed) {
    List<Constraint> constraints = new ArrayList<>();
    List<String> members = new ArrayList<>();
    List<Conflict.Way> ways = new ArrayList<>();
    for (int g : needed.keySet()) {
      Constraint constraint = problem.goals().get(g).constraint();
      String text =
          constraint.figure().title() + " of " + problem.site(g).name() + ": " + constraint.band();
      members.add(text);
      constraints.add(constraint);
      ways.add(way(needed, g, text));
    }
    members.add("the limits of the shelf, and that doses and volumes are 0 or more");
    return new Found(
        new Conflict(members, constraints, false, List.of(), ways),
        List.copyOf(needed.keySet()),
        List.of());
  }

  /**
   * Leaves out one goal after the other, from the last to the first, where no plan is found without
   * it either.
   *
   * @return the goals that stay, in their order, each with a point that keeps the others; empty
   *     where even without goals nothing was found
   */
  private Map<Integer, Point> needed(List<Integer> goals) {
    List<Integer> in = new ArrayList<>(goals);
    Map<Integer, Point> kept = new LinkedHashMap<>();
    for (int g = in.size() - 1; g >= 0; g--) {
      List<Integer> fewer = new ArrayList<>(in);
      int left = fewer.remove(g);
      Optional<Point> point = kept(fewer);
      if (point.isPresent()) {
        kept.put(left, point.get());
      } else {
        in = fewer;
      }
    }
    // A point that keeps more goals than stay keeps those that stay.
    Map<Integer, Point> ordered = new LinkedHashMap<>();
    for (int g : in) {
      ordered.put(g, Objects.requireNonNull(kept.get(g)));
    }
    return ordered;
  }

  private Optional<Point> kept(List<Integer> goals) {
    return new Search(new Problem(wanting(goals))).best().filter(Point::isKept);
  }

  private Query wanting(List<Integer> goals) {
    return query.wanting(goals.stream().map(query.wanted()::get).toList());
  }
}
