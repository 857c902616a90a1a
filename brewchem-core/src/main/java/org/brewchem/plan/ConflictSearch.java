package org.brewchem.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.fraction.BigFraction;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.internal.Contradiction;
import org.brewchem.internal.LinearProgram;
import org.brewchem.internal.NumberText;
import org.brewchem.plan.Search.Point;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.NoSolutionException;

/**
 * The search for bounds that cannot be kept together and of which none can be left out: each bound
 * is left out in turn, from the last to the first, and stays out if the rest still cannot be kept.
 */
final class ConflictSearch {

  private static final int MOST_TANGENTS = 8;

  private final Problem problem;
  private final Variables variables;

  ConflictSearch(Problem problem) {
    this.problem = problem;
    this.variables = problem.variables();
  }

  /**
   * A conflict with the goals that take part.
   *
   * @param conflict the conflict
   * @param goals the hard goals that take part
   * @param members its bounds; empty where no tangent shows them
   */
  record Found(Conflict conflict, List<Integer> goals, List<Member> members) {}

  /** Finds a conflict by the tangent of the least broken point; empty where it shows none. */
  Optional<Found> at(Point point) {
    List<Member> all = Member.all(problem, new Tangent(problem, point.x(), point.worth()));
    boolean[] in = new boolean[all.size()];
    Arrays.fill(in, true);
    if (canBeKept(all, in)) {
      return Optional.empty();
    }
    for (int m = all.size() - 1; m >= 0; m--) {
      in[m] = false;
      in[m] = canBeKept(all, in);
    }
    List<Member> members =
        IntStream.range(0, in.length).filter(m -> in[m]).mapToObj(all::get).toList();
    return Optional.of(found(members, point.x()));
  }

  private boolean canBeKept(List<Member> all, boolean[] in) {
    return program(all, in).minimise(new double[variables.count()]).end()
        != LinearProgram.End.INFEASIBLE;
  }

  private LinearProgram program(List<Member> all, boolean[] in) {
    int n = variables.count();
    double[] lower = new double[n];
    double[] upper = new double[n];
    double[] scale = new double[n];
    Arrays.fill(lower, Double.NEGATIVE_INFINITY);
    Arrays.fill(upper, Double.POSITIVE_INFINITY);
    Arrays.fill(scale, 1);
    for (int m = 0; m < in.length; m++) {
      if (in[m] && all.get(m).bounded() >= 0) {
        lower[all.get(m).bounded()] = 0;
      }
    }
    LinearProgram program = new LinearProgram(lower, upper, scale);
    for (int m = 0; m < in.length; m++) {
      if (in[m] && all.get(m).bounded() < 0) {
        add(program, all.get(m), 0);
      }
    }
    return program;
  }

  private static void add(LinearProgram program, Member member, double margin) {
    if (member.isEqual()) {
      program.equal(member.slopes(), member.limit());
    } else {
      program.atLeast(member.slopes(), member.limit() + margin);
    }
  }

  private Found found(List<Member> members, double[] start) {
    Optional<Contradiction> contradiction = contradiction(members);
    boolean proved =
        contradiction.isPresent() && members.stream().allMatch(m -> m.exact().isPresent());
    List<Integer> goals =
        members.stream().map(Member::goal).filter(goal -> goal >= 0).distinct().toList();
    List<Constraint> constraints =
        goals.stream().map(goal -> problem.goals().get(goal).constraint()).distinct().toList();
    List<Conflict.Way> ways = new ArrayList<>();
    for (Member member : members) {
      way(members, member, start).ifPresent(ways::add);
    }
    return new Found(
        new Conflict(
            members.stream().map(Member::text).toList(),
            constraints,
            proved,
            contradiction.map(found -> lines(members, found)).orElse(List.of()),
            ways),
        goals,
        members);
  }

  private static Optional<Contradiction> contradiction(List<Member> members) {
    int count = members.size();
    BigFraction[][] rows = new BigFraction[count][];
    BigFraction[] limits = new BigFraction[count];
    boolean[] equal = new boolean[count];
    for (int m = 0; m < count; m++) {
      BigFraction[] row = members.get(m).fractions();
      rows[m] = Arrays.copyOf(row, row.length - 1);
      limits[m] = row[row.length - 1];
      equal[m] = members.get(m).isEqual();
    }
    return Contradiction.of(rows, limits, equal);
  }

  private static List<String> lines(List<Member> members, Contradiction contradiction) {
    List<String> lines = new ArrayList<>();
    for (int m = 0; m < members.size(); m++) {
      lines.add(
          NumberText.significant(contradiction.multiplier(m), 6) + " x " + members.get(m).text());
    }
    lines.add("add up, in exact fractions, to 0 being at least 1");
    return lines;
  }

  /** Doses of 0 or more that keep every member but one. */
  private Optional<Conflict.Way> way(List<Member> members, Member without, double[] start) {
    if (without.bounded() >= 0 || without.isEqual()) {
      return Optional.empty();
    }
    double[] x = start;
    List<Integer> kept = new ArrayList<>();
    for (int k = 0; k < MOST_TANGENTS; k++) {
      Problem.Worth worth = problem.worth(x);
      if (Arrays.stream(worth.numbers()).anyMatch(number -> !Double.isFinite(number))) {
        return Optional.empty();
      }
      Tangent tangent = new Tangent(problem, x, worth);
      kept.clear();
      LinearProgram program = nonNegative();
      for (Member member : members) {
        if (!member.text().equals(without.text()) && member.bounded() < 0 && !member.isEqual()) {
          add(program, again(member, tangent), member.goal() < 0 ? 0 : 1e-9);
          if (member.goal() >= 0) {
            kept.add(member.goal());
          }
        }
      }
      double[] least = new double[variables.count()];
      Arrays.fill(least, 1);
      LinearProgram.Found found = program.minimise(least);
      if (found.end() != LinearProgram.End.OPTIMAL) {
        return Optional.empty();
      }
      x = found.point();
      if (keeps(members, without, problem.worth(x))) {
        return known(x, kept, without.text());
      }
    }
    return Optional.empty();
  }

  /** A way; empty where its doses are so large that the liquids have no solution. */
  private Optional<Conflict.Way> known(double[] x, List<Integer> goals, String without) {
    try {
      return Optional.of(evaluated(x, goals, without));
    } catch (NoSolutionException none) {
      return Optional.empty();
    }
  }

  private LinearProgram nonNegative() {
    int n = variables.count();
    double[] upper = new double[n];
    double[] scale = new double[n];
    Arrays.fill(upper, Double.POSITIVE_INFINITY);
    Arrays.fill(scale, 1);
    LinearProgram program = new LinearProgram(new double[n], upper, scale);
    for (int p = 0; p < variables.query().portions().size(); p++) {
      program.equal(variables.sharesOf(p), 1);
    }
    return program;
  }

  private Member again(Member member, Tangent tangent) {
    return tangent.rows().stream()
        .filter(row -> row.goal() == member.goal() && row.isLower() == member.isLower())
        .findFirst()
        .map(
            row ->
                new Member(
                    member.text(),
                    row.slopes(),
                    row.limit(),
                    false,
                    member.goal(),
                    member.isLower(),
                    -1,
                    member.exact()))
        .orElse(member);
  }

  private boolean keeps(List<Member> members, Member without, Problem.Worth worth) {
    for (Member member : members) {
      if (member.goal() >= 0 && !member.text().equals(without.text())) {
        Goal goal = problem.goals().get(member.goal());
        double number = worth.numbers()[member.goal()];
        double beyond = member.isLower() ? goal.plainLower() - number : number - goal.plainUpper();
        if (!(beyond <= Search.KEPT * goal.plainScale())) {
          return false;
        }
      }
    }
    return true;
  }

  /** What the liquids themselves have after those doses. */
  Conflict.Way evaluated(double[] x, List<Integer> goals, String without) {
    List<PlannedAmount> amounts = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      if (x[i] > 0) {
        amounts.add(PlannedAmount.of(variables, i, x[i]));
      }
    }
    List<String> figures = new ArrayList<>();
    for (int g : goals.stream().distinct().toList()) {
      Site site = problem.site(g);
      Liquid water =
          site.portion() < 0
              ? problem.kettle().together(x)
              : problem.kettle().water(site.portion(), x);
      Answer<?> answer = site.of(water).answer(problem.goals().get(g).figure());
      figures.add(site.name() + ", " + answer.figure().title() + ": " + answer);
    }
    return new Conflict.Way(without, amounts, figures);
  }
}
