package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.brewchem.figure.Caution;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.internal.Roots;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.solution.Liquid;
import org.brewchem.uncertainty.Traced;

/**
 * What of two figures can be reached by blending: the set of values that the {@link Blends} have,
 * with its corners as blends that the kernel evaluates.
 *
 * <p>Two figures that mix in proportion to the shares, such as totals, fill the polygon of the
 * corners, exactly. A ratio of such figures and, at level ideal, the pH do not mix in proportion,
 * but the blends with one value of them lie in a plane of the shares; so their least and greatest
 * values lie at corners of the shares, and the border of the set lies on the sides between two such
 * corners, where it is curved and found by the balance. At levels activity and pairs this holds for
 * the pH nearly, and a titratable acidity is nearly in proportion. Of any other figure nothing is
 * known between the corners, and a notice says so. Immutable.
 *
 * @param <L> the kind of liquid
 * @param <X> the meaning of the first figure
 * @param <Y> the meaning of the second figure
 */
public final class ReachableBlends<L extends Liquid, X, Y> {

  private static final Scale<Double> COUNT = Scale.number("", 0);

  /** How far a figure may be off the straight line, in its span, and count as in proportion. */
  private static final double STRAIGHT = 1e-9;

  /** The same where the line is said to be nearly straight; our choice. */
  private static final double NEARLY = 0.01;

  /** How far beyond the set, in the span of a figure, a value counts as in it. */
  private static final double WITHIN = 1e-6;

  private static final double[] ON_A_SIDE = {0.25, 0.5, 0.75};

  private final Function<double[], Blend<L>> blending;
  private final List<double[]> shares;
  private final List<int[]> sides;
  private final List<Blend<L>> all;
  private final Axis<X> first;
  private final Axis<Y> second;
  private final List<Blend<L>> corners;

  /** One of the two figures: its numbers at the corners of the shares, in the unit shown. */
  private static final class Axis<Q> {
    private final Figure<Q> figure;
    private final double[] numbers;
    private double least = Double.POSITIVE_INFINITY;
    private double most = Double.NEGATIVE_INFINITY;
    private double bend;
    private boolean ratio;
    private boolean ruled;

    Axis(Figure<Q> figure, int count) {
      this.figure = figure;
      numbers = new double[count];
    }

    double span() {
      return Math.max(most - least, Math.max(STRAIGHT * size(), Double.MIN_NORMAL));
    }

    private double size() {
      return Math.max(Math.abs(most), Math.abs(least));
    }

    boolean isStraight() {
      return bend <= STRAIGHT * size();
    }

    /** Whether blends with one value of it lie in a plane of the shares, at any level. */
    boolean isInPlanes() {
      return ratio || isStraight();
    }

    boolean isNearlyStraight() {
      return isStraight() || bend <= NEARLY * span();
    }
  }

  /**
   * The least and the greatest value of a figure.
   *
   * @param figure the title of the figure
   * @param least the least value, in {@code unit}
   * @param greatest the greatest value, in {@code unit}
   * @param unit the unit; empty when there is none
   */
  public record Range(String figure, double least, double greatest, String unit) {

    /**
     * Makes a range.
     *
     * @param figure the title of the figure
     * @param least the least value, in {@code unit}
     * @param greatest the greatest value, in {@code unit}
     * @param unit the unit; empty when there is none
     * @throws IllegalArgumentException if a value is not finite or the least is above the greatest
     */
    public Range {
      Checks.notBlank("figure", figure);
      Objects.requireNonNull(unit, "unit");
      Checks.finite("greatest value", greatest, unit);
      Checks.finite("least value", least, unit);
      if (least > greatest) {
        throw Checks.outOfRange("least value", least, unit, "at most the greatest");
      }
    }

    /** Prints the figure and both values. */
    @Override
    public String toString() {
      return figure
          + " "
          + NumberText.significant(least, 4)
          + " to "
          + NumberText.significant(greatest, 4)
          + (unit.isEmpty() ? "" : " " + unit);
    }
  }

  ReachableBlends(
      Figure<X> x, Figure<Y> y, ShareLimits limits, Function<double[], Blend<L>> blending) {
    this.blending = blending;
    shares = limits.corners();
    sides = ShareLimits.sides(shares);
    all = shares.stream().map(blending).toList();
    first = axis(x);
    second = axis(y);
    corners = isPolygon() ? hull() : all;
  }

  private <Q> Axis<Q> axis(Figure<Q> figure) {
    Axis<Q> axis = new Axis<>(figure, all.size());
    for (int i = 0; i < axis.numbers.length; i++) {
      axis.numbers[i] = number(all.get(i), figure);
      axis.least = Math.min(axis.least, axis.numbers[i]);
      axis.most = Math.max(axis.most, axis.numbers[i]);
    }
    axis.bend = bend(figure, axis.numbers);
    axis.ratio = isRatio(figure);
    axis.ruled = axis.ratio || figure.equals(Figures.PH_VALUE) || axis.isNearlyStraight();
    return axis;
  }

  /** Whether it is a ratio of figures that mix in proportion. */
  private boolean isRatio(Figure<?> figure) {
    return figure.rule() instanceof ClosedForm form
        && form.isRatio()
        && form.inputs().stream().allMatch(input -> axis(input).isStraight());
  }

  private static double number(Blend<?> blend, Figure<?> figure) {
    Step step = blend.after().step(figure);
    return Shown.shown(
        figure,
        step.found()
            .orElseThrow(() -> new UnknownFigureException(figure.title(), step.whyUnknown()))
            .value());
  }

  /** How far a figure lies off the straight lines between corners, and off their mean. */
  private double bend(Figure<?> figure, double[] numbers) {
    double most = 0;
    for (int[] side : sides) {
      for (double part : ON_A_SIDE) {
        double straight = (1 - part) * numbers[side[0]] + part * numbers[side[1]];
        most = Math.max(most, Math.abs(number(on(side, part), figure) - straight));
      }
    }
    double[] middle = new double[shares.get(0).length];
    double mean = 0;
    for (int i = 0; i < numbers.length; i++) {
      mean += numbers[i] / numbers.length;
      for (int k = 0; k < middle.length; k++) {
        middle[k] += shares.get(i)[k] / numbers.length;
      }
    }
    return Math.max(most, Math.abs(number(blending.apply(middle), figure) - mean));
  }

  private Blend<L> on(int[] side, double part) {
    double[] from = shares.get(side[0]);
    double[] to = shares.get(side[1]);
    return blending.apply(
        IntStream.range(0, from.length)
            .mapToDouble(k -> (1 - part) * from[k] + part * to[k])
            .toArray());
  }

  /**
   * Returns the corners of the set: where both figures mix in proportion those of its polygon, one
   * after the other round it; else all blends whose shares are at their limits but one.
   *
   * @return the blends, at least one
   */
  public List<Blend<L>> corners() {
    return corners;
  }

  /**
   * Tells whether the set is the polygon of its corners, because both figures mix in proportion to
   * the shares.
   *
   * @return true if it is, exactly
   */
  public boolean isPolygon() {
    return first.isStraight() && second.isStraight();
  }

  /**
   * Returns what is reached of the first figure.
   *
   * @return its least and its greatest value at the corners
   */
  public Range ofFirst() {
    return range(first, first.least, first.most);
  }

  /**
   * Returns what is reached of the second figure.
   *
   * @return its least and its greatest value at the corners
   */
  public Range ofSecond() {
    return range(second, second.least, second.most);
  }

  private static Range range(Axis<?> axis, double least, double most) {
    return new Range(axis.figure.title(), least, most, axis.figure.shown().symbol());
  }

  /**
   * Returns what of the second figure is reached by the blends that have a value of the first.
   *
   * @param x the value of the first figure
   * @return the least and the greatest value of the second; empty where no blend has that value
   */
  public Optional<Range> ofSecondAt(X x) {
    double wanted = first.figure.shown().in(Objects.requireNonNull(x, "x"));
    double slack = WITHIN * first.span();
    double[] reached = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (int i = 0; i < first.numbers.length; i++) {
      if (Math.abs(first.numbers[i] - wanted) <= slack) {
        add(reached, second.numbers[i]);
      }
    }
    for (int[] side : sides) {
      double from = first.numbers[side[0]] - wanted;
      double to = first.numbers[side[1]] - wanted;
      if (from * to < 0) {
        add(reached, secondOn(side, crossing(side, wanted, from, to)));
      }
    }
    return reached[0] > reached[1]
        ? Optional.empty()
        : Optional.of(range(second, reached[0], reached[1]));
  }

  private static void add(double[] reached, double number) {
    reached[0] = Math.min(reached[0], number);
    reached[1] = Math.max(reached[1], number);
  }

  /** How far along a side the first figure has a value. */
  private double crossing(int[] side, double wanted, double from, double to) {
    if (first.isStraight()) {
      return from / (from - to);
    }
    return Roots.between(
            part ->
                part <= 0 ? from : part >= 1 ? to : number(on(side, part), first.figure) - wanted,
            0,
            1)
        .orElseThrow(
            end -> new IllegalStateException(first.figure.title() + ": no blend was found"));
  }

  private double secondOn(int[] side, double part) {
    return second.isStraight()
        ? (1 - part) * second.numbers[side[0]] + part * second.numbers[side[1]]
        : number(on(side, part), second.figure);
  }

  /**
   * Tells whether two values are reached together. A millionth of the span of a figure beyond the
   * border counts as on it.
   *
   * @param x the value of the first figure
   * @param y the value of the second figure
   * @return true if a blend has both
   */
  public boolean contains(X x, Y y) {
    double wanted = second.figure.shown().in(Objects.requireNonNull(y, "y"));
    double slack = WITHIN * second.span();
    return ofSecondAt(x)
        .filter(range -> range.least - slack <= wanted && wanted <= range.greatest + slack)
        .isPresent();
  }

  /** The corners on the outside, counted round the set from its least first figure. */
  private List<Blend<L>> hull() {
    List<Integer> order =
        IntStream.range(0, all.size())
            .boxed()
            .sorted(
                (i, j) -> {
                  int byX = Double.compare(at(i)[0], at(j)[0]);
                  return byX != 0 ? byX : Double.compare(at(i)[1], at(j)[1]);
                })
            .toList();
    List<Integer> round = new ArrayList<>(chain(order));
    List<Integer> back = new ArrayList<>(order);
    Collections.reverse(back);
    for (int next : chain(back)) {
      if (round.stream().noneMatch(known -> distance(known, next) <= STRAIGHT)) {
        round.add(next);
      }
    }
    return round.stream().map(all::get).toList();
  }

  /** The corners of one half of the outside, those that turn left. */
  private List<Integer> chain(List<Integer> order) {
    List<Integer> chain = new ArrayList<>();
    for (int next : order) {
      while (chain.size() > 1
          && turn(chain.get(chain.size() - 2), chain.get(chain.size() - 1), next) <= STRAIGHT) {
        chain.remove(chain.size() - 1);
      }
      if (chain.isEmpty() || distance(chain.get(chain.size() - 1), next) > STRAIGHT) {
        chain.add(next);
      }
    }
    return chain;
  }

  private double turn(int a, int b, int c) {
    double[] one = at(a);
    double[] two = at(b);
    double[] three = at(c);
    return (two[0] - one[0]) * (three[1] - one[1]) - (two[1] - one[1]) * (three[0] - one[0]);
  }

  private double distance(int a, int b) {
    return Math.hypot(at(a)[0] - at(b)[0], at(a)[1] - at(b)[1]);
  }

  /** Where a corner lies, in the spans of the figures. */
  private double[] at(int corner) {
    return new double[] {
      (first.numbers[corner] - first.least) / first.span(),
      (second.numbers[corner] - second.least) / second.span()
    };
  }

  /**
   * Says how the figures mix and what lies between the corners.
   *
   * @return a sentence for each figure and one for the set
   */
  public List<String> scope() {
    List<String> lines = new ArrayList<>(List.of(scope(first), scope(second)));
    if (isPolygon()) {
      lines.add("every value within the polygon of the corners is reached, and none outside it");
    } else if (first.ruled && second.ruled) {
      lines.add(
          "the border lies on blends of two neighbouring corners of the shares, and every value"
              + " within it is reached"
              + (isExact() ? "" : "; nearly so, for at this level of chemistry no rule is exact"));
    }
    return List.copyOf(lines);
  }

  /** Whether planes of the shares hold the values of both figures exactly. */
  private boolean isExact() {
    return all.get(0).after().contents().chemistry().level() == Level.IDEAL
        || (first.isInPlanes() && second.isInPlanes());
  }

  private static String scope(Axis<?> axis) {
    if (axis.isStraight()) {
      return axis.figure.title() + " mixes in proportion to the shares";
    }
    String symbol = axis.figure.shown().symbol();
    return axis.figure.title()
        + (axis.isNearlyStraight() ? " mixes nearly" : " does not mix")
        + " in proportion to the shares: between corners it lies up to "
        + NumberText.significant(axis.bend, 2)
        + (symbol.isEmpty() ? "" : " " + symbol)
        + " off the straight line";
  }

  /**
   * Explains the corners: the figures of each, and that its shares make up a blend.
   *
   * @return the steps
   */
  public Explanation explain() {
    List<Step> inputs = new ArrayList<>();
    List<String> lines = new ArrayList<>();
    for (Blend<L> corner : corners) {
      inputs.add(corner.after().step(first.figure));
      inputs.add(corner.after().step(second.figure));
      lines.add(line(corner));
    }
    lines.addAll(scope());
    return new Explanation(
        Step.of("corners of what is reachable", COUNT, Step.Kind.FORMULA)
            .text("blends whose shares are at their limits but one", "")
            .inputs(inputs)
            .notices(ownNotices())
            .detail(
                () ->
                    new Step.Detail(
                        lines,
                        corners.stream()
                            .mapToDouble(
                                corner ->
                                    Math.abs(
                                        corner.shares().stream()
                                                .mapToDouble(Double::doubleValue)
                                                .sum()
                                            - 1))
                            .max()
                            .orElseThrow(),
                        ShareLimits.ON))
            .found(Traced.exact(corners.size())));
  }

  private String line(Blend<L> corner) {
    return corner.parts()
        + ": "
        + corner.answer(first.figure)
        + "; "
        + corner.answer(second.figure);
  }

  private List<Notice> ownNotices() {
    List<Notice> own = new ArrayList<>();
    for (Axis<?> axis : List.of(first, second)) {
      if (!axis.ruled) {
        String title = axis.figure.title();
        own.add(
            Notice.of(
                TreatmentCode.NO_RULE_BETWEEN,
                title,
                title
                    + " is known at the corners only: no rule says where between them it is least"
                    + " or greatest, and blends inside may lie outside the set"));
      }
    }
    return own;
  }

  /**
   * Returns what is notable about the set and the blends at its corners.
   *
   * @return the notices, without repetition
   */
  public List<Notice> notices() {
    Set<Notice> notices = new LinkedHashSet<>(ownNotices());
    for (Blend<L> corner : corners) {
      notices.addAll(corner.answer(first.figure).notices());
      notices.addAll(corner.answer(second.figure).notices());
    }
    return List.copyOf(notices);
  }

  /**
   * Returns what to mind while blending.
   *
   * @return the cautions of the blends at the corners, without repetition
   */
  public List<Caution> cautions() {
    Set<Caution> cautions = new LinkedHashSet<>();
    corners.forEach(corner -> cautions.addAll(corner.cautions()));
    return List.copyOf(cautions);
  }

  /** Prints the corners with their figures, and what lies between them, line by line. */
  @Override
  public String toString() {
    List<String> lines = new ArrayList<>();
    corners.forEach(corner -> lines.add(line(corner)));
    lines.addAll(scope());
    return String.join("\n", lines);
  }
}
