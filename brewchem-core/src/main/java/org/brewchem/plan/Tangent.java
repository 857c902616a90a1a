package org.brewchem.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A problem as it is at a point, linear: rows of the hard goals, numbers and slopes of the weighted
 * ones.
 *
 * <p>A sum of totals is multiplied out with the volume and a ratio with its denominator, which is
 * exact everywhere. A limit of a water's pH, or a mash's, is the charge of its balance at that pH,
 * which is linear but for activities and pairs. Anything else is as good as its slopes.
 */
final class Tangent {

  /** Below what a numerator or denominator counts as this much where a logarithm is taken. */
  private static final double LEAST = 1e-3;

  /**
   * A row of a hard goal: slopes times variables are at least the limit, in scales of the goal.
   *
   * @param slopes one to each variable
   * @param limit the limit
   * @param goal the goal
   * @param isLower whether it is the goal's lower limit
   * @param isExact whether it holds everywhere, not at this point alone
   */
  record Row(double[] slopes, double limit, int goal, boolean isLower, boolean isExact) {}

  /**
   * A weighted goal: the number that counts, and its slopes.
   *
   * @param goal the goal
   * @param number the number at the point
   * @param slopes one to each variable
   */
  record Soft(int goal, double number, double[] slopes) {}

  private final Problem problem;
  private final double[] at;
  private final List<Row> rows = new ArrayList<>();
  private final List<Soft> softs = new ArrayList<>();

  /** The tangent at a point whose worth has numbers for all goals. */
  Tangent(Problem problem, double[] at, Problem.Worth worth) {
    this.problem = problem;
    this.at = at;
    problem.set(at);
    for (int g = 0; g < problem.goals().size(); g++) {
      Goal goal = problem.goals().get(g);
      if (goal.isHard()) {
        hard(g, goal, worth.numbers()[g]);
      } else {
        soft(g, goal, worth.numbers()[g]);
      }
    }
  }

  List<Row> rows() {
    return rows;
  }

  List<Soft> softs() {
    return softs;
  }

  double[] at() {
    return at;
  }

  private void hard(int g, Goal goal, double number) {
    double[] limits = {goal.plainLower(), goal.plainUpper()};
    double[] gradient = null;
    for (int side = 0; side < 2; side++) {
      double limit = limits[side];
      if (Double.isInfinite(limit)) {
        continue;
      }
      boolean isLower = side == 0;
      Optional<double[]> exact = multipliedOut(g, goal, limit);
      if (exact.isPresent()) {
        rows.add(new Row(signed(exact.get(), isLower), 0, g, isLower, true));
      } else if (problem.figure(g).isRoot() && limit > 0 && limit < 14) {
        rows.add(charge(g, goal, limit, isLower));
      } else {
        if (gradient == null) {
          gradient = problem.figure(g).gradient(at);
        }
        double[] slopes = divided(gradient, goal.plainScale());
        double constant = (limit - number) / goal.plainScale() + dot(slopes, at);
        rows.add(
            new Row(signed(slopes, isLower), isLower ? constant : -constant, g, isLower, false));
      }
    }
  }

  /** Number less limit, times what makes it linear, in scales of the goal. */
  private Optional<double[]> multipliedOut(int g, Goal goal, double limit) {
    SiteFigure figure = problem.figure(g);
    Site site = problem.site(g);
    if (figure.linear().isPresent()) {
      double[] row = timesVolume(figure.linear().get(), site);
      for (int i = 0; i < row.length; i++) {
        row[i] = (row[i] - limit * site.volume()[i]) / goal.plainScale();
      }
      return Optional.of(row);
    }
    Optional<List<SiteFigure>> ratio = figure.ratio();
    if (ratio.isEmpty() || !ratio.get().stream().allMatch(part -> part.linear().isPresent())) {
      return Optional.empty();
    }
    double[] above = timesVolume(ratio.get().get(0).linear().orElseThrow(), site);
    double[] below = timesVolume(ratio.get().get(1).linear().orElseThrow(), site);
    double size = Math.max(ratio.get().get(1).number(), LEAST) * goal.plainScale();
    double factor = figure.factor();
    for (int i = 0; i < above.length; i++) {
      above[i] = (factor * above[i] - limit * below[i]) / size;
    }
    return Optional.of(above);
  }

  private static double[] timesVolume(SiteFigure.Linear linear, Site site) {
    double[] row = new double[site.volume().length];
    for (int i : site.own()) {
      double sum = linear.constant() * site.volume()[i];
      for (int c = 0; c < linear.perTotal().length; c++) {
        sum += linear.perTotal()[c] * site.brings(c)[i];
      }
      row[i] = sum;
    }
    return row;
  }

  /** The charge at the limit: at least 0 where the pH is at least the limit. */
  private Row charge(int g, Goal goal, double limit, boolean isLower) {
    Site site = problem.site(g);
    double own = site.chargeAt(limit);
    double size = site.capacityAt(limit) * goal.plainScale();
    double[] slopes = divided(problem.figure(g).chargeGradient(limit, at), size);
    double constant = dot(slopes, at) - own / size;
    return new Row(signed(slopes, isLower), isLower ? constant : -constant, g, isLower, false);
  }

  private void soft(int g, Goal goal, double number) {
    SiteFigure figure = problem.figure(g);
    double[] slopes;
    double counted = number;
    if (goal.isRatio()) {
      Optional<List<SiteFigure>> ratio = figure.ratio();
      if (ratio.isPresent()) {
        SiteFigure above = ratio.get().get(0);
        SiteFigure below = ratio.get().get(1);
        double over = Math.max(above.number(), LEAST);
        double under = Math.max(below.number(), LEAST);
        slopes = divided(above.gradient(at), over);
        double[] less = below.gradient(at);
        for (int i = 0; i < slopes.length; i++) {
          slopes[i] -= less[i] / under;
        }
        counted = Math.log(figure.factor() * over / under);
      } else {
        double size = Math.max(number, 1e-9);
        slopes = divided(figure.gradient(at), size);
        counted = Math.log(size);
      }
    } else {
      slopes = figure.gradient(at);
    }
    softs.add(new Soft(g, counted, slopes));
  }

  /** The sum of the weighted goals at another point, by the slopes. */
  double weighted(double[] x) {
    double sum = 0;
    for (Soft soft : softs) {
      Goal goal = problem.goals().get(soft.goal());
      double number = soft.number();
      for (int i = 0; i < x.length; i++) {
        number += soft.slopes()[i] * (x[i] - at[i]);
      }
      sum += goal.weight() * goal.off(number) / goal.scale();
    }
    return sum;
  }

  /** By how many scales hard goals are broken at another point, by the rows. */
  double violation(double[] x) {
    double sum = 0;
    for (Row row : rows) {
      sum += Math.max(0, row.limit() - dot(row.slopes(), x));
    }
    return sum;
  }

  private static double[] divided(double[] numbers, double by) {
    double[] parts = numbers.clone();
    for (int i = 0; i < parts.length; i++) {
      parts[i] /= by;
    }
    return parts;
  }

  private static double[] signed(double[] numbers, boolean asTheyAre) {
    return asTheyAre ? numbers : divided(numbers, -1);
  }

  static double dot(double[] one, double[] other) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += one[i] * other[i];
    }
    return sum;
  }
}
