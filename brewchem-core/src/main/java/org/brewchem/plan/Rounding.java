package org.brewchem.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.brewchem.plan.Search.Point;
import org.jspecify.annotations.Nullable;

/**
 * The search for doses that can be weighed: among the neighbours of a point, each dose one step
 * down or up, the one that keeps every hard goal and breaks the weighted ones least; among equally
 * good ones the cheapest. It may then be improved, a step at a time.
 *
 * <p>Neighbours are put in order by the tangent of the point and judged by the kernel, as far down
 * as one could still be better by the tangent's error. Where no neighbour keeps the hard goals, the
 * search is done once more away from their limits. Mutable, for one search.
 */
final class Rounding {

  /**
   * Within how much of a step a dose stands on it: a trace that the search left of a salt which it
   * does without is no reason to weigh some.
   */
  private static final double ON_A_STEP = 1e-6;

  private static final int MOST_AT_ONCE = 12;
  private static final int ROUNDS = 4;
  private static final int MOST_MOVES = 20;

  /** How many steps a dose may end from where the exact plan has it, when it is improved. */
  private static final int MOST_STEPS = 2;

  private static final double ERRORS = 3;
  private static final double[] AWAY = {1, 0.75, 0.5, 0.25, 1.5};

  private final Problem problem;
  private final Variables variables;
  private double @Nullable [] centre;
  private @Nullable Point best;
  private boolean improvedOn;
  private double wrongSum;
  private double wrongViolation;

  Rounding(Problem problem) {
    this.problem = problem;
    this.variables = problem.variables();
  }

  /** Whether anything is to be rounded. */
  boolean isNeeded() {
    for (int i = 0; i < variables.count(); i++) {
      if (variables.step(i) > 0) {
        return true;
      }
    }
    return false;
  }

  /** Rounds a point that keeps the hard goals; empty where nothing that can be weighed does. */
  Optional<Point> round(Point exact) {
    Optional<Point> near = among(exact, 0);
    if (near.isPresent()) {
      return near;
    }
    Tangent tangent = new Tangent(problem, exact.x(), exact.worth());
    double[] halves = new double[problem.goals().size()];
    for (Tangent.Row row : tangent.rows()) {
      double half = 0;
      for (int i = 0; i < exact.x().length; i++) {
        half += Math.abs(row.slopes()[i]) * variables.step(i) / 2;
      }
      halves[row.goal()] = Math.max(halves[row.goal()], half);
    }
    for (double part : AWAY) {
      double[] margins = halves.clone();
      for (int g = 0; g < margins.length; g++) {
        margins[g] *= part;
      }
      Optional<Point> away = new Search(problem, margins).best();
      if (away.isPresent() && away.get().isKept()) {
        Optional<Point> found = among(away.get(), 0);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return among(exact, 1);
  }

  /**
   * Goes on from a point that was rounded: as long as doses a step down or up keep the weighted
   * goals better, goes there, each less than two steps from where the exact plan has it, and what
   * the exact plan does without is not weighed.
   */
  Point improve(Point rounded, Point exact) {
    centre = exact.x();
    Point now = rounded;
    for (int move = 0; move < MOST_MOVES; move++) {
      Optional<Point> next = among(now, 1);
      if (next.isEmpty() || !isBetter(next.get(), now)) {
        break;
      }
      now = next.get();
    }
    return now;
  }

  private static boolean isBetter(Point one, Point other) {
    return one.worth().weighted() < other.worth().weighted() - Search.EQUALLY_GOOD;
  }

  /** The best of the neighbours, so many steps further than down and up; empty if none will do. */
  private Optional<Point> among(Point exact, int further) {
    best = null;
    wrongSum = 0;
    wrongViolation = 0;
    Tangent tangent = new Tangent(problem, exact.x(), exact.worth());
    List<Integer> moving = new ArrayList<>();
    double[] nearest = exact.x().clone();
    double[][] values = new double[nearest.length][];
    for (int i = 0; i < nearest.length; i++) {
      values[i] = steps(i, exact.x(), further);
      if (values[i].length == 0) {
        return Optional.empty();
      }
      double own = nearest[i];
      nearest[i] =
          Arrays.stream(values[i])
              .boxed()
              .min(Comparator.comparingDouble(v -> Math.abs(v - own)))
              .orElse(own);
      if (values[i].length > 1) {
        moving.add(i);
      }
    }
    int block = further == 0 ? MOST_AT_ONCE : MOST_AT_ONCE / 2;
    double[] around = nearest;
    look(tangent, filled(exact.x(), nearest));
    if (moving.size() <= block) {
      choose(tangent, exact.x(), around, moving, values);
      return Optional.ofNullable(best);
    }
    for (int round = 0; round < ROUNDS; round++) {
      improvedOn = false;
      for (int first = 0; first < moving.size(); first += block / 2) {
        List<Integer> some = new ArrayList<>();
        for (int k = 0; k < block; k++) {
          some.add(moving.get((first + k) % moving.size()));
        }
        choose(tangent, exact.x(), best == null ? around : best.x(), some, values);
      }
      if (!improvedOn) {
        break;
      }
    }
    return Optional.ofNullable(best);
  }

  /** What a variable may be, in steps. */
  private double[] steps(int i, double[] x, int further) {
    double step = variables.step(i);
    if (step == 0 || i == rest(variables.portionOf(i), x)) {
      return new double[] {x[i]};
    }
    double count = x[i] / step;
    double near = Math.rint(count);
    boolean isOn = Math.abs(count - near) < ON_A_STEP * Math.max(1, near);
    double down = isOn ? near : Math.floor(count);
    double up = isOn ? near : Math.ceil(count);
    List<Double> values = new ArrayList<>();
    double least = Math.ceil(variables.lower(i) / step * (1 - Variables.ON) - Variables.ON);
    double most = Math.floor(variables.upper(i) / step * (1 + Variables.ON) + Variables.ON);
    for (double n = Math.max(down - further, least); n <= Math.min(up + further, most); n++) {
      if (isNear(i, n) || n == near) {
        values.add(n * step);
      }
    }
    if (values.isEmpty() && least <= most) {
      values.add((count < least ? least : most) * step);
    }
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private boolean isNear(int i, double steps) {
    if (centre == null) {
      return true;
    }
    double exact = centre[i] / variables.step(i);
    return exact < ON_A_STEP ? steps == 0 : Math.abs(steps - exact) < MOST_STEPS;
  }

  /** The water of a portion that takes the rest of the volume: the one there is most of. */
  private int rest(int portion, double[] x) {
    int rest = variables.index(portion, 0);
    for (int k = 1; k < variables.waters().size(); k++) {
      int other = variables.index(portion, k);
      if (x[other] > x[rest]) {
        rest = other;
      }
    }
    return rest;
  }

  /** Lets one water of each portion take the rest of the volume. */
  private double[] filled(double[] exact, double[] rounded) {
    double[] x = rounded.clone();
    for (int p = 0; p < variables.query().portions().size(); p++) {
      int rest = rest(p, exact);
      double others = 0;
      boolean moved = false;
      for (int k = 0; k < variables.waters().size(); k++) {
        int i = variables.index(p, k);
        if (i != rest) {
          others += x[i];
          moved |= x[i] != exact[i];
        }
      }
      if (moved) {
        x[rest] = 1 - others;
      }
    }
    return x;
  }

  private record Neighbour(double[] x, double weighted, double violation, double cost) {}

  private void choose(
      Tangent tangent, double[] exact, double[] around, List<Integer> moving, double[][] values) {
    List<Neighbour> all = new ArrayList<>();
    int[] at = new int[moving.size()];
    while (true) {
      double[] x = around.clone();
      for (int k = 0; k < at.length; k++) {
        x[moving.get(k)] = values[moving.get(k)][at[k]];
      }
      x = filled(exact, x);
      if (variables.keepsToTheShelf(x)) {
        all.add(new Neighbour(x, tangent.weighted(x), tangent.violation(x), variables.cost(x)));
      }
      int k = 0;
      while (k < at.length && ++at[k] == values[moving.get(k)].length) {
        at[k++] = 0;
      }
      if (k == at.length) {
        break;
      }
    }
    if (all.isEmpty()) {
      return;
    }
    // The ends tell how far the tangent may be wrong.
    look(tangent, all.get(0).x);
    look(tangent, all.get(all.size() - 1).x);
    all.sort(Comparator.comparingDouble(Neighbour::weighted).thenComparingDouble(Neighbour::cost));
    for (Neighbour neighbour : all) {
      if (best != null
          && (best.worth().weighted() <= 0
              || neighbour.weighted > best.worth().weighted() + ERRORS * wrongSum)) {
        break;
      }
      if (mayBeKept(neighbour)) {
        look(tangent, neighbour.x);
      }
    }
    if (best == null) {
      return;
    }
    double least = best.worth().weighted();
    double cost = variables.cost(best.x());
    all.sort(Comparator.comparingDouble(Neighbour::cost).thenComparingDouble(Neighbour::weighted));
    for (Neighbour neighbour : all) {
      if (neighbour.cost >= cost) {
        return;
      }
      if (mayBeKept(neighbour)
          && neighbour.weighted <= least + Search.EQUALLY_GOOD + ERRORS * wrongSum) {
        Point point = new Point(neighbour.x, problem.worth(neighbour.x));
        if (point.isKept() && point.worth().weighted() <= least + Search.EQUALLY_GOOD) {
          take(point);
          return;
        }
      }
    }
  }

  private boolean mayBeKept(Neighbour neighbour) {
    return neighbour.violation <= Search.KEPT + ERRORS * wrongViolation;
  }

  /** Judges a neighbour by the kernel. */
  private void look(Tangent tangent, double[] x) {
    if (!variables.keepsToTheShelf(x)) {
      return;
    }
    Point point = new Point(x, problem.worth(x));
    Problem.Worth worth = point.worth();
    if (!worth.isKnown()) {
      return;
    }
    wrongSum = Math.max(wrongSum, Math.abs(worth.weighted() - tangent.weighted(x)));
    wrongViolation = Math.max(wrongViolation, Math.abs(worth.violation() - tangent.violation(x)));
    if (point.isKept() && (best == null || worth.weighted() < best.worth().weighted())) {
      take(point);
    }
  }

  private void take(Point point) {
    best = point;
    improvedOn = true;
  }
}
