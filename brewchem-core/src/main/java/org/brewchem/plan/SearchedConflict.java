package org.brewchem.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.brewchem.figure.Constraint;
import org.brewchem.plan.Search.Point;

/**
 * A conflict where no tangent shows one: hard goals of which no plan was found that keeps them all,
 * and one was found that keeps all but any of them. It proves nothing.
 */
final class SearchedConflict {

  private final Query query;

  /**
   * Makes a search.
   *
   * @param query the question, one goal to each constraint
   */
  SearchedConflict(Query query) {
    this.query = query;
  }

  /** Finds the goals; empty where even without goals nothing was found. */
  Optional<ConflictSearch.Found> find(Problem problem) {
    List<Integer> in = new ArrayList<>();
    for (int g = 0; g < problem.goals().size(); g++) {
      if (problem.goals().get(g).isHard()) {
        in.add(g);
      }
    }
    for (int g = in.size() - 1; g >= 0; g--) {
      List<Integer> fewer = new ArrayList<>(in);
      fewer.remove(g);
      if (kept(fewer).isEmpty()) {
        in = fewer;
      }
    }
    if (in.isEmpty()) {
      return Optional.empty();
    }
    List<Constraint> constraints = new ArrayList<>();
    List<String> members = new ArrayList<>();
    List<Conflict.Way> ways = new ArrayList<>();
    for (int g : in) {
      Constraint constraint = problem.goals().get(g).constraint();
      String text =
          constraint.figure().title() + " of " + problem.site(g).name() + ": " + constraint.band();
      members.add(text);
      constraints.add(constraint);
      List<Integer> others = new ArrayList<>(in);
      others.remove(Integer.valueOf(g));
      kept(others)
          .ifPresent(
              point -> ways.add(new ConflictSearch(problem).evaluated(point.x(), others, text)));
    }
    members.add("the limits of the shelf, and that doses and volumes are 0 or more");
    return Optional.of(
        new ConflictSearch.Found(new Conflict(members, constraints, false, List.of(), ways), in));
  }

  private Optional<Point> kept(List<Integer> goals) {
    List<Wanted> wanted = goals.stream().map(query.wanted()::get).toList();
    return new Search(new Problem(query.wanting(wanted))).best().filter(Point::isKept);
  }
}
