package org.brewchem.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.brewchem.internal.LinearProgram;
import org.jspecify.annotations.Nullable;

/**
 * The search for the doses of a problem, before they are rounded: linear programs of its tangents,
 * each within a radius of trust around the last point, until none promises more.
 *
 * <p>First the weighted sum is made least without breaking a hard goal, from several starts where
 * the problem is not straight; then, among what is within 1e-6 of it, the cost. The same each time.
 */
final class Search {

  /** By how many scales hard goals may be broken, together, and count as kept. */
  static final double KEPT = 1e-9;

  /** Within how much of the least weighted sum plans count as equally good. */
  static final double EQUALLY_GOOD = 1e-6;

  /** By how many scales a limit is kept away from, so that rounding does not break it. */
  private static final double MARGIN = 1e-9;

  private static final double PRICE_OF_VIOLATION = 1e3;
  private static final double ENOUGH = 1e-11;
  private static final double LEAST_RADIUS = 1e-7;
  private static final int MOST_STEPS = 60;
  private static final int MOST_REPAIRS = 6;
  private static final int[] PRIMES = {2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43};

  private final Problem problem;
  private final Variables variables;
  private final double[] margins;

  /**
   * A point that was found.
   *
   * @param x the variables
   * @param worth what it is worth
   */
  record Point(double[] x, Problem.Worth worth) {
    boolean isKept() {
      return worth.violation() <= KEPT;
    }
  }

  Search(Problem problem) {
    this(problem, new double[0]);
  }

  /**
   * Makes a search that keeps away from limits.
   *
   * @param margins by how many scales from those of each goal; none where it is empty
   */
  Search(Problem problem, double[] margins) {
    this.problem = problem;
    this.variables = problem.variables();
    this.margins = margins;
  }

  /** Finds the best point; empty where no start leads to one that has a value. */
  Optional<Point> best() {
    Point best = null;
    List<Point> points = new ArrayList<>();
    for (double[] start : starts()) {
      Point reached = reach(start);
      if (reached != null) {
        Point point = restored(reached);
        points.add(point);
        best = best == null || isBetter(point, best) ? point : best;
      }
      if (best != null && best.isKept() && (best.worth.weighted() <= ENOUGH || isStraight())) {
        break;
      }
    }
    return best != null && best.isKept() ? cheapest(points, best) : Optional.ofNullable(best);
  }

  /**
   * The cheapest of what is as good as the best. It is looked for from each point that is, since a
   * search for less cost need not find its way from one to another.
   */
  private Optional<Point> cheapest(List<Point> points, Point best) {
    double least = best.worth.weighted();
    return points.stream()
        .filter(point -> point.isKept() && point.worth.weighted() <= least + EQUALLY_GOOD)
        .map(point -> economical(point, least))
        .min(Comparator.comparingDouble(point -> variables.cost(point.x)));
  }

  private static boolean isBetter(Point one, Point other) {
    if (one.isKept() != other.isKept()) {
      return one.isKept();
    }
    return one.isKept()
        ? one.worth.weighted() < other.worth.weighted() - ENOUGH
        : one.worth.violation() < other.worth.violation() - ENOUGH;
  }

  /** Whether every goal is linear, so that one start finds what there is. */
  private boolean isStraight() {
    for (int g = 0; g < problem.goals().size(); g++) {
      Goal goal = problem.goals().get(g);
      SiteFigure figure = problem.figure(g);
      boolean hardRatio =
          goal.isHard()
              && figure.ratio().isPresent()
              && figure.ratio().get().stream().allMatch(part -> part.linear().isPresent());
      if (figure.linear().isEmpty() && !hardRatio) {
        return false;
      }
    }
    return true;
  }

  List<double[]> starts() {
    List<double[]> starts = new ArrayList<>();
    boolean ratio = problem.goals().stream().anyMatch(goal -> goal.isRatio() && !goal.isHard());
    starts.add(scattered(0));
    starts.add(variables.plainStart());
    int more = isStraight() ? 0 : ratio ? 6 : 2;
    for (int k = 1; k <= more; k++) {
      starts.add(scattered(k));
    }
    return starts;
  }

  /** A start that uses a little of everything. */
  private double[] scattered(int k) {
    double[] x = variables.plainStart();
    if (problem.query().blends().isPresent() && k > 0) {
      for (int i = 0; i < x.length; i++) {
        x[i] = halton(k + 2, PRIMES[i]);
      }
      return cleaned(x);
    }
    int doses = 0;
    for (int i = 0; i < x.length; i++) {
      if (!variables.isWater(i)) {
        double part = k == 0 ? 0.25 : halton(k + 2, PRIMES[doses % PRIMES.length]);
        double most = Math.min(variables.upper(i), 4);
        x[i] = Math.max(variables.lower(i), part * part * most);
        doses++;
      }
    }
    return x;
  }

  private static double halton(int index, int base) {
    double part = 1;
    double sum = 0;
    for (int i = index; i > 0; i /= base) {
      part /= base;
      sum += part * (i % base);
    }
    return sum;
  }

  /** Walks from a start to where no step promises more. */
  @Nullable Point reach(double[] start) {
    double[] from = onTheShelf(start);
    if (from == null) {
      return null;
    }
    Point here = new Point(from, problem.worth(from));
    if (hasGaps(here)) {
      return null;
    }
    double radius = Double.POSITIVE_INFINITY;
    for (int steps = 0; steps < MOST_STEPS && radius > LEAST_RADIUS; steps++) {
      Tangent tangent = new Tangent(problem, here.x, here.worth);
      Point next = null;
      while (next == null && radius > LEAST_RADIUS) {
        double[] x = step(tangent, radius, null);
        if (x == null) {
          radius = smaller(radius, 1);
          continue;
        }
        double promised = merit(here.worth) - merit(tangent.weighted(x), tangent.violation(x));
        if (!(promised > ENOUGH)) {
          return here;
        }
        Point there = new Point(x, problem.worth(x));
        double gained = hasGaps(there) ? -1 : merit(here.worth) - merit(there.worth);
        if (gained > 0.1 * promised) {
          next = there;
          if (gained > 0.75 * promised) {
            radius *= 2;
          }
        } else {
          double length = length(here.x, x);
          radius = smaller(Math.min(radius, length), 0.3);
          if (gained > ENOUGH) {
            next = there;
          }
        }
      }
      if (next == null) {
        return here;
      }
      here = next;
    }
    return here;
  }

  /** The nearest point that keeps to the shelf; null where its limits contradict each other. */
  private double @Nullable [] onTheShelf(double[] start) {
    if (variables.keepsToTheShelf(start)) {
      return start;
    }
    LinearProgram program = frame(start, Double.POSITIVE_INFINITY, 2 * start.length);
    return nearest(program, start);
  }

  /** A start whose figures have values, whatever limits it breaks; empty where there is none. */
  Optional<Point> anywhere() {
    return starts().stream()
        .map(start -> new Point(start, problem.worth(start)))
        .filter(point -> !hasGaps(point))
        .findFirst();
  }

  private static double smaller(double radius, double factor) {
    return Double.isInfinite(radius) ? 4 : radius * Math.min(factor, 0.5);
  }

  private static boolean hasGaps(Point point) {
    return Arrays.stream(point.worth.numbers()).anyMatch(number -> !Double.isFinite(number));
  }

  private static double length(double[] from, double[] to) {
    double most = 0;
    for (int i = 0; i < from.length; i++) {
      most = Math.max(most, Math.abs(to[i] - from[i]));
    }
    return most;
  }

  private static double merit(Problem.Worth worth) {
    return merit(worth.weighted(), worth.violation());
  }

  private static double merit(double weighted, double violation) {
    return weighted + PRICE_OF_VIOLATION * violation;
  }

  /** Makes a point cheaper without making it worse. */
  private Point economical(Point best, double least) {
    Point here = best;
    double radius = Double.POSITIVE_INFINITY;
    double cap = least + 0.9 * EQUALLY_GOOD;
    for (int steps = 0; steps < MOST_STEPS && radius > LEAST_RADIUS; steps++) {
      Tangent tangent = new Tangent(problem, here.x, here.worth);
      double[] x = step(tangent, radius, cap);
      if (x == null) {
        radius = smaller(radius, 1);
        continue;
      }
      double own = variables.cost(here.x);
      if (!(variables.cost(x) < own - 1e-9 * Math.max(own, 1e-3))) {
        return here;
      }
      Point there = restored(new Point(x, problem.worth(x)));
      boolean good =
          there.isKept()
              && there.worth.weighted() <= least + EQUALLY_GOOD
              && variables.cost(there.x) < own;
      if (good) {
        here = there;
      } else {
        radius = smaller(Math.min(radius, length(here.x, x)), 0.3);
      }
    }
    return here;
  }

  /** Brings a point that curvature has led a little astray back to the limits, the nearest way. */
  private Point restored(Point point) {
    Point here = point;
    for (int k = 0; k < MOST_REPAIRS && !here.isKept() && !hasGaps(here); k++) {
      double[] x = nearest(new Tangent(problem, here.x, here.worth));
      Point there = x == null ? null : new Point(x, problem.worth(x));
      if (there == null || !(there.worth.violation() < 0.5 * here.worth.violation())) {
        return here;
      }
      here = there;
    }
    return here;
  }

  /** The point nearest to a tangent's that keeps every limit of it; null where there is none. */
  private double @Nullable [] nearest(Tangent tangent) {
    int n = variables.count();
    LinearProgram program = frame(tangent.at(), Double.POSITIVE_INFINITY, 2 * n);
    addRows(program, tangent, 2 * n, new double[tangent.rows().size()], -1);
    return nearest(program, tangent.at());
  }

  /** The point of a program nearest to another; the program has as many distances as variables. */
  private double @Nullable [] nearest(LinearProgram program, double[] to) {
    int n = to.length;
    for (int i = 0; i < n; i++) {
      for (int sign = -1; sign <= 1; sign += 2) {
        double[] row = new double[2 * n];
        row[n + i] = 1;
        row[i] = sign;
        program.atLeast(row, sign * to[i]);
      }
    }
    double[] objective = new double[2 * n];
    Arrays.fill(objective, n, 2 * n, 1);
    LinearProgram.Found found = program.minimise(objective);
    return found.end() == LinearProgram.End.OPTIMAL
        ? cleaned(Arrays.copyOf(found.point(), n))
        : null;
  }

  /**
   * The best point of a tangent within a radius; least broken where all limits cannot be kept.
   *
   * @param cap what the weighted sum may be, while the cost is made least; null where the sum
   *     itself is made least
   */
  private double @Nullable [] step(Tangent tangent, double radius, @Nullable Double cap) {
    double[] none = new double[tangent.rows().size()];
    LinearProgram.Found found = program(tangent, radius, cap, none, false);
    if (found.end() == LinearProgram.End.INFEASIBLE && cap == null) {
      LinearProgram.Found least = program(tangent, radius, null, none, true);
      if (least.end() != LinearProgram.End.OPTIMAL) {
        return null;
      }
      int first = variables.count() + tangent.softs().size();
      double[] given = Arrays.copyOfRange(least.point(), first, first + none.length);
      for (int r = 0; r < given.length; r++) {
        given[r] = given[r] > 0 ? given[r] * (1 + 1e-9) + 1e-10 : 0;
      }
      found = program(tangent, radius, null, given, false);
      if (found.end() != LinearProgram.End.OPTIMAL) {
        found = least;
      }
    }
    return found.end() == LinearProgram.End.OPTIMAL
        ? cleaned(Arrays.copyOf(found.point(), variables.count()))
        : null;
  }

  /** What is nothing but rounding becomes 0, and shares make up their portion. */
  private double[] cleaned(double[] x) {
    for (int i = 0; i < x.length; i++) {
      if (x[i] < 1e-11) {
        x[i] = Math.max(0, variables.lower(i));
      }
    }
    int waters = variables.waters().size();
    for (int p = 0; p < variables.query().portions().size(); p++) {
      double sum = 0;
      for (int k = 0; k < waters; k++) {
        sum += x[variables.index(p, k)];
      }
      for (int k = 0; waters > 1 && k < waters; k++) {
        x[variables.index(p, k)] /= sum;
      }
    }
    return x;
  }

  private LinearProgram.Found program(
      Tangent tangent, double radius, @Nullable Double cap, double[] given, boolean elastic) {
    int n = variables.count();
    int softs = tangent.softs().size();
    int rows = tangent.rows().size();
    int all = n + softs + (elastic ? rows : 0);
    LinearProgram program = frame(tangent.at(), radius, all);
    addRows(program, tangent, all, given, elastic ? n + softs : -1);
    double[] objective = new double[all];
    double[] sum = new double[all];
    for (int s = 0; s < softs; s++) {
      Tangent.Soft soft = tangent.softs().get(s);
      addSoft(program, soft, tangent.at(), n + s, all);
      sum[n + s] = problem.goals().get(soft.goal()).weight();
    }
    if (elastic) {
      Arrays.fill(objective, n + softs, all, 1);
    } else if (cap == null) {
      objective = sum;
    } else {
      System.arraycopy(variables.cost(), 0, objective, 0, n);
      if (softs > 0) {
        program.atMost(sum, cap);
      }
    }
    return program.minimise(objective);
  }

  /** The variables with their bounds within a radius, and what the shelf and the volumes ask. */
  private LinearProgram frame(double[] at, double radius, int all) {
    int n = variables.count();
    double[] lower = Arrays.copyOf(variables.lower(), all);
    double[] upper = Arrays.copyOf(variables.upper(), all);
    double[] scale = new double[all];
    Arrays.fill(scale, 1);
    Arrays.fill(upper, n, all, Double.POSITIVE_INFINITY);
    if (!Double.isInfinite(radius)) {
      for (int i = 0; i < n; i++) {
        lower[i] = Math.max(lower[i], at[i] - radius);
        upper[i] = Math.max(lower[i], Math.min(upper[i], at[i] + radius));
      }
    }
    LinearProgram program = new LinearProgram(lower, upper, scale);
    if (variables.waters().size() > 1) {
      for (int p = 0; p < variables.query().portions().size(); p++) {
        program.equal(Arrays.copyOf(variables.sharesOf(p), all), 1);
      }
    }
    for (int k : variables.shared()) {
      double[] row = Arrays.copyOf(variables.totalOf(k), all);
      ShelfItem item = variables.item(k);
      if (item.least() > 0) {
        program.atLeast(row, item.least());
      }
      if (!Double.isInfinite(item.most())) {
        program.atMost(row, item.most());
      }
    }
    return program;
  }

  /** The hard goals, each given a little, or with a variable that it may lack from a place on. */
  private void addRows(
      LinearProgram program, Tangent tangent, int all, double[] given, int lacking) {
    for (int r = 0; r < given.length; r++) {
      Tangent.Row row = tangent.rows().get(r);
      double[] entries = Arrays.copyOf(row.slopes(), all);
      if (lacking >= 0) {
        entries[lacking + r] = 1;
      }
      program.atLeast(entries, row.limit() + margin(row.goal()) - given[r]);
    }
  }

  private double margin(int g) {
    Goal goal = problem.goals().get(g);
    double width = (goal.plainUpper() - goal.plainLower()) / goal.plainScale();
    double own = margins.length == 0 ? 0 : margins[g];
    return Math.min(MARGIN + own, 0.49 * width) * (width > 4 * MARGIN ? 1 : 0);
  }

  private void addSoft(LinearProgram program, Tangent.Soft soft, double[] at, int t, int all) {
    Goal goal = problem.goals().get(soft.goal());
    double constant = Tangent.dot(soft.slopes(), at) - soft.number();
    double[] limits =
        goal.hasAim()
            ? new double[] {goal.aim(), goal.aim()}
            : new double[] {goal.lower(), goal.upper()};
    for (int side = 0; side < 2; side++) {
      if (!Double.isInfinite(limits[side])) {
        double sign = side == 0 ? 1 : -1;
        double[] entries = new double[all];
        for (int i = 0; i < at.length; i++) {
          entries[i] = sign * soft.slopes()[i];
        }
        entries[t] = goal.scale();
        program.atLeast(entries, sign * (limits[side] + constant));
      }
    }
  }
}
