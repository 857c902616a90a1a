package org.brewchem.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;

/**
 * What a plan is asked for, as functions of its variables: the goals, the sites that they bound and
 * the figures by which they are judged. Mutable work space, for one search.
 */
final class Problem {

  /** How far the plain function of a figure may be from the liquid's own answer. */
  private static final double SAME = 1e-9;

  /** Millimoles per litre of every item, where figures are tried out. */
  private static final double TRIAL = 0.5;

  private final Query query;
  private final Variables variables;
  private final Kettle kettle;
  private final List<Site> sites = new ArrayList<>();
  private final List<Goal> goals = new ArrayList<>();
  private final List<SiteFigure> figures = new ArrayList<>();

  /**
   * What a point of the search is worth.
   *
   * @param numbers the figure of each goal, in its unit; NaN where it has no value
   * @param weighted the sum of the weighted goals
   * @param violation by how many scales hard goals are broken, together
   */
  record Worth(double[] numbers, double weighted, double violation) {
    boolean isKnown() {
      return weighted < Double.POSITIVE_INFINITY && violation < Double.POSITIVE_INFINITY;
    }
  }

  private record SiteKey(List<Integer> portions, Optional<Downstream> downstream) {}

  Problem(Query query) {
    this.query = query;
    variables = new Variables(query);
    kettle = new Kettle(variables);
    Map<SiteKey, Integer> known = new LinkedHashMap<>();
    for (Wanted wanted : query.wanted()) {
      for (List<Integer> portions : portions(wanted)) {
        SiteKey key = new SiteKey(portions, wanted.downstream());
        Integer site = known.get(key);
        if (site == null) {
          site = sites.size();
          known.put(key, site);
          sites.add(new Site(variables, portions, wanted.downstream()));
        }
        goals.add(new Goal(wanted.constraint(), site));
      }
    }
    tryOut();
  }

  private List<List<Integer>> portions(Wanted wanted) {
    List<WaterPortion> all = query.portions();
    List<Integer> every = IntStream.range(0, all.size()).boxed().toList();
    if (wanted.portion().isPresent()) {
      String name = wanted.portion().get();
      return List.of(every.stream().filter(p -> all.get(p).name().equals(name)).toList());
    }
    return wanted.together() ? List.of(every) : every.stream().map(List::of).toList();
  }

  /**
   * Asks every figure of a mixture of everything, and holds the plain functions against the liquid.
   *
   * @throws UnknownFigureException if a figure is not known there
   */
  private void tryOut() {
    double[] x = variables.plainStart();
    for (int i = 0; i < x.length; i++) {
      if (!variables.isWater(i)) {
        x[i] = Math.min(Math.max(TRIAL, variables.lower(i)), variables.upper(i));
      }
    }
    set(x);
    for (Goal goal : goals) {
      Site site = sites.get(goal.site());
      SiteFigure figure = SiteFigure.of(goal.figure(), site);
      Step step = site.step(goal.figure());
      double asked =
          goal.figure()
              .inShown(
                  step.found()
                      .orElseThrow(
                          () ->
                              new UnknownFigureException(
                                  goal.figure().title() + " of " + site.name(), step.whyUnknown())))
              .value();
      boolean same =
          figure.isAsked()
              || Math.abs(figure.number() - asked) <= SAME * Math.max(1, Math.abs(asked));
      figures.add(same ? figure : SiteFigure.asked(goal.figure(), site));
    }
  }

  Query query() {
    return query;
  }

  Variables variables() {
    return variables;
  }

  Kettle kettle() {
    return kettle;
  }

  List<Goal> goals() {
    return goals;
  }

  SiteFigure figure(int goal) {
    return figures.get(goal);
  }

  Site site(int goal) {
    return sites.get(goals.get(goal).site());
  }

  /** Sets the sites to variables, so that figures and gradients can be asked there. */
  void set(double[] x) {
    sites.forEach(site -> site.set(x));
  }

  /** The number of a goal's figure at the variables that are set; NaN where it has no value. */
  double number(int goal) {
    return figures.get(goal).numberOrNaN();
  }

  Worth worth(double[] x) {
    set(x);
    double[] numbers = new double[goals.size()];
    for (int g = 0; g < numbers.length; g++) {
      numbers[g] = number(g);
    }
    return worthOf(numbers);
  }

  Worth worthOf(double[] numbers) {
    double weighted = 0;
    double violation = 0;
    for (int g = 0; g < numbers.length; g++) {
      Goal goal = goals.get(g);
      if (goal.isHard()) {
        violation += goal.violation(numbers[g]);
      } else {
        weighted += goal.penalty(numbers[g]);
      }
    }
    return new Worth(numbers, weighted, violation);
  }
}
