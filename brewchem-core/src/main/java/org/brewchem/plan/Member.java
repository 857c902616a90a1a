package org.brewchem.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.fraction.BigFraction;
import org.brewchem.figure.Constraint;
import org.brewchem.internal.NumberText;

/**
 * A bound that may take part in a conflict: slopes times variables are at least the limit, or equal
 * to it.
 *
 * @param text what it says
 * @param slopes one to each variable
 * @param limit the limit
 * @param isEqual whether it is an equation
 * @param goal the hard goal whose limit it is; -1 for none
 * @param isLower whether it is that goal's lower limit
 * @param bounded the variable that it keeps at 0 or more; -1 for none
 * @param exact the row in fractions; empty where it is a tangent
 */
record Member(
    String text,
    double[] slopes,
    double limit,
    boolean isEqual,
    int goal,
    boolean isLower,
    int bounded,
    Optional<BigFraction[]> exact) {

  /** The same bound, its goal counted otherwise. */
  Member ofGoal(int other) {
    return new Member(text, slopes, limit, isEqual, other, isLower, bounded, exact);
  }

  /** All bounds of a problem in a fixed order, those of goals by a tangent. */
  static List<Member> all(Problem problem, Tangent tangent) {
    List<Member> all = new ArrayList<>();
    for (Tangent.Row row : tangent.rows()) {
      all.add(ofGoal(problem, row));
    }
    Variables variables = problem.variables();
    int count = variables.count();
    boolean several = variables.query().portions().size() > 1;
    for (int k = variables.query().sources().size(); k < variables.perPortion(); k++) {
      ShelfItem item = variables.item(k);
      double[] row = variables.totalOf(k);
      if (item.least() > 0) {
        all.add(shelf(item.name() + ": at least " + item.text(item.least()), row, item.least()));
      }
      if (!Double.isInfinite(item.most())) {
        all.add(
            shelf(
                item.name() + ": at most " + item.text(item.most()) + " on the shelf",
                negative(row),
                -item.most()));
      }
    }
    boolean blend = variables.query().blends().isPresent();
    for (int i = 0; blend && i < count; i++) {
      double[] row = new double[count];
      row[i] = 1;
      if (variables.lower(i) > 0) {
        all.add(shelf(share(variables, i, "least ", variables.lower(i)), row, variables.lower(i)));
      }
      if (variables.upper(i) < 1) {
        all.add(
            shelf(
                share(variables, i, "most ", variables.upper(i)),
                negative(row),
                -variables.upper(i)));
      }
    }
    for (int p = 0; p < variables.query().portions().size(); p++) {
      all.add(
          of(
              blend
                  ? "the parts make up the blend"
                  : "the waters make up the portion " + variables.query().portions().get(p).name(),
              variables.sharesOf(p),
              1,
              true,
              -1));
    }
    for (int i = 0; i < count; i++) {
      if (variables.lower(i) < variables.upper(i) || !variables.isWater(i)) {
        double[] row = new double[count];
        row[i] = 1;
        String into = several ? " in the portion " + variables.portion(i).name() : "";
        all.add(
            of(
                (variables.isWater(i) ? "a volume of " : "a dose of ")
                    + variables.name(i)
                    + into
                    + " is 0 or more",
                row,
                0,
                false,
                i));
      }
    }
    for (int i = 0; i < count; i++) {
      if (!variables.isWater(i) && Variables.isCapped(variables.dose(i))) {
        double[] row = new double[count];
        row[i] = -1;
        all.add(
            shelf(
                variables.name(i)
                    + ": at most "
                    + NumberText.plain(variables.mostUnstated(i))
                    + " mmol/L"
                    + into(variables)
                    + ", where the shelf states no limit",
                row,
                -variables.mostUnstated(i)));
      }
    }
    return all;
  }

  private static String into(Variables variables) {
    return variables.query().isForBeer() ? " of the portion" : "";
  }

  private static String share(Variables variables, int i, String side, double share) {
    return variables.name(i)
        + ": at "
        + side
        + NumberText.significant(100 * share, 3)
        + " % of the blend";
  }

  private static Member shelf(String text, double[] row, double limit) {
    return of(text, row, limit, false, -1);
  }

  private static Member of(String text, double[] row, double limit, boolean isEqual, int bounded) {
    return new Member(
        text, row, limit, isEqual, -1, false, bounded, Optional.of(fractions(row, limit)));
  }

  private static Member ofGoal(Problem problem, Tangent.Row row) {
    Goal goal = problem.goals().get(row.goal());
    double limit = row.isLower() ? goal.plainLower() : goal.plainUpper();
    Constraint constraint = goal.constraint();
    String text =
        constraint.figure().title()
            + " of "
            + problem.site(row.goal()).name()
            + ": at "
            + (row.isLower() ? "least " : "most ")
            + constraint.figure().shown().text(limit);
    return new Member(
        text,
        row.slopes(),
        row.limit(),
        false,
        row.goal(),
        row.isLower(),
        -1,
        row.isExact()
            ? Optional.of(exact(problem, row.goal(), limit, row.isLower()))
            : Optional.empty());
  }

  /** The row of a goal, multiplied out, with nothing rounded but its own constants. */
  private static BigFraction[] exact(Problem problem, int g, double limit, boolean isLower) {
    SiteFigure figure = problem.figure(g);
    Site site = problem.site(g);
    int count = site.volume().length;
    BigFraction[] row = new BigFraction[count + 1];
    BigFraction most = new BigFraction(limit);
    Optional<List<SiteFigure>> ratio = figure.ratio();
    for (int i = 0; i < count; i++) {
      BigFraction above;
      BigFraction below;
      if (ratio.isPresent()) {
        above = timesVolume(ratio.get().get(0), site, i).multiply(new BigFraction(figure.factor()));
        below = timesVolume(ratio.get().get(1), site, i);
      } else {
        above = timesVolume(figure, site, i);
        below = new BigFraction(site.volume()[i]);
      }
      BigFraction entry = above.subtract(most.multiply(below));
      row[i] = isLower ? entry : entry.negate();
    }
    row[count] = BigFraction.ZERO;
    return row;
  }

  private static BigFraction timesVolume(SiteFigure figure, Site site, int i) {
    SiteFigure.Linear linear = figure.linear().orElseThrow();
    BigFraction sum =
        new BigFraction(linear.constant()).multiply(new BigFraction(site.volume()[i]));
    for (int c = 0; c < linear.perTotal().length; c++) {
      if (linear.perTotal()[c] != 0 && site.brings(c)[i] != 0) {
        sum =
            sum.add(
                new BigFraction(linear.perTotal()[c]).multiply(new BigFraction(site.brings(c)[i])));
      }
    }
    return sum;
  }

  /** A row of doubles as the fractions that they stand for, the limit behind it. */
  BigFraction[] fractions() {
    return exact.orElseGet(() -> fractions(slopes, limit));
  }

  private static BigFraction[] fractions(double[] row, double limit) {
    BigFraction[] all = new BigFraction[row.length + 1];
    for (int i = 0; i < row.length; i++) {
      all[i] = new BigFraction(row[i]);
    }
    all[row.length] = new BigFraction(limit);
    return all;
  }

  private static double[] negative(double[] row) {
    double[] less = row.clone();
    for (int i = 0; i < less.length; i++) {
      less[i] = -less[i] + 0.0;
    }
    return less;
  }
}
