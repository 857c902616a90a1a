package org.brewchem.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.mash.MashFigures;
import org.brewchem.solution.BalanceFigure;
import org.brewchem.solution.Figures;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.solution.TotalFigure;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/**
 * A figure of a site as a plain function of the variables, by the very rules that answer for a
 * liquid; what no work space can walk is asked of the liquid itself.
 */
final class SiteFigure {

  /** A figure that is a sum of totals times factors, and a constant. */
  record Linear(double[] perTotal, double constant) {}

  /** Finds the number in the figure's own scale. */
  private interface Rule {
    double number();
  }

  /**
   * Step of a variable in a difference: small against a millimole per litre, far above rounding.
   */
  static final double STEP = 1e-5;

  /** Probes of a formula: if it is linear in these, it is taken for linear. */
  private static final double[][] PROBES = {{0.3, 1.7}, {5, 0.2}, {2, 11}, {40, 90}, {250, 31}};

  private static final double SAME = 1e-12;

  private final Figure<?> figure;
  private final Site site;
  private final Rule rule;
  private final List<SiteFigure> inputs;
  private final @Nullable ClosedForm form;
  private final @Nullable Linear linear;
  private final Shown shown;
  private final boolean isAsked;

  private SiteFigure(
      Figure<?> figure,
      Site site,
      Rule rule,
      List<SiteFigure> inputs,
      @Nullable ClosedForm form,
      @Nullable Linear own,
      boolean isAsked) {
    this.figure = figure;
    this.site = site;
    this.rule = rule;
    this.inputs = inputs;
    this.form = form;
    this.isAsked = isAsked;
    this.shown = new Shown(figure);
    this.linear = own == null ? null : shown.of(own);
  }

  /** Reads a figure of a site in the unit in which it is shown. */
  static SiteFigure of(Figure<?> figure, Site site) {
    if (figure.equals(MashFigures.MASH_PH) && site.hasMash()) {
      return new SiteFigure(figure, site, () -> site.mash().pH(), List.of(), null, null, false);
    }
    if (site.isDownstream()) {
      return asked(figure, site);
    }
    Figure.Rule how = figure.rule();
    if (how instanceof TotalFigure total && !site.isUnknown(total.component())) {
      return total(figure, total, site);
    }
    if (how instanceof BalanceFigure balance && site.hasWorkSpace()) {
      return new SiteFigure(
          figure,
          site,
          () -> balance.number(site.equilibria(), site.kilogramsPerLitre()),
          List.of(),
          null,
          null,
          false);
    }
    if (how instanceof ClosedForm form && !form.countsAbsent()) {
      List<SiteFigure> inputs = new ArrayList<>();
      form.inputs().forEach(input -> inputs.add(of(input, site)));
      if (inputs.stream().noneMatch(input -> input.isAsked)) {
        double[] numbers = new double[inputs.size()];
        return new SiteFigure(
            figure,
            site,
            () -> {
              for (int i = 0; i < numbers.length; i++) {
                numbers[i] = inputs.get(i).number();
              }
              return form.apply(numbers);
            },
            inputs,
            form,
            linear(form, inputs),
            false);
      }
    }
    return asked(figure, site);
  }

  private static SiteFigure total(Figure<?> figure, TotalFigure total, Site site) {
    int index = site.indexOf(total.component());
    double factor = total.milligramsPerMole() * site.kilogramsPerLitre();
    double[] perTotal = new double[Math.max(index, 0) + 1];
    if (index >= 0) {
      perTotal[index] = factor;
    }
    return new SiteFigure(
        figure,
        site,
        () -> index < 0 ? 0 : site.total(index) * factor,
        List.of(),
        null,
        new Linear(perTotal, 0),
        false);
  }

  /** Asks the liquid. */
  static SiteFigure asked(Figure<?> figure, Site site) {
    return new SiteFigure(
        figure,
        site,
        () -> {
          Step step = site.step(figure);
          return step.found()
              .orElseThrow(() -> new UnknownFigureException(figure.title(), step.whyUnknown()))
              .value();
        },
        List.of(),
        null,
        null,
        true);
  }

  private static @Nullable Linear linear(ClosedForm form, List<SiteFigure> inputs) {
    int n = inputs.size();
    int most = 0;
    for (SiteFigure input : inputs) {
      if (input.linear == null) {
        return null;
      }
      most = Math.max(most, input.linear.perTotal.length);
    }
    double[] slopes = new double[n];
    double constant = form.apply(new double[n]);
    for (int i = 0; i < n; i++) {
      double[] one = new double[n];
      one[i] = 1;
      slopes[i] = form.apply(one) - constant;
    }
    for (double[] probe : PROBES) {
      double[] numbers = new double[n];
      double expected = constant;
      double size = Math.abs(constant);
      for (int i = 0; i < n; i++) {
        numbers[i] = probe[i % 2] * (1 + i / 2);
        expected += slopes[i] * numbers[i];
        size += Math.abs(slopes[i] * numbers[i]);
      }
      double off = form.apply(numbers) - expected;
      if (!(Math.abs(off) <= SAME * Math.max(size, 1e-300))) {
        return null;
      }
    }
    double[] perTotal = new double[most];
    for (int i = 0; i < n; i++) {
      Linear input = inputs.get(i).linear;
      for (int c = 0; input != null && c < input.perTotal.length; c++) {
        perTotal[c] += slopes[i] * input.perTotal[c];
      }
      constant += input == null ? 0 : slopes[i] * input.constant;
    }
    return new Linear(perTotal, constant);
  }

  /** Finds the number in the unit in which the figure is shown, at the site's variables. */
  double number() {
    return shown.of(rule.number());
  }

  /** The same; NaN where it has no value. */
  double numberOrNaN() {
    try {
      return number();
    } catch (NoSolutionException | IllegalArgumentException | UnknownFigureException none) {
      return Double.NaN;
    }
  }

  /** The figure as a sum of totals; empty where it is none. */
  Optional<Linear> linear() {
    return Optional.ofNullable(linear);
  }

  /** Numerator and denominator of a ratio that a work space can walk. */
  Optional<List<SiteFigure>> ratio() {
    return form != null && form.isRatio() ? Optional.of(inputs) : Optional.empty();
  }

  /** The factor of a ratio. */
  double factor() {
    return form == null ? 1 : form.apply(new double[] {1, 1});
  }

  /** Whether it is a pH that is the root of its site's own balance. */
  boolean isRoot() {
    return !isAsked && (figure.equals(Figures.PH_VALUE) || figure.equals(MashFigures.MASH_PH));
  }

  /** The slopes of the charge of the site's balance at a pH, at variables that are set. */
  double[] chargeGradient(double pH, double[] x) {
    double[] slopes = new double[x.length];
    double own = site.chargeAt(pH);
    for (int i : site.own()) {
      double[] moved = x.clone();
      moved[i] += STEP;
      double step = moved[i] - x[i];
      site.set(moved);
      slopes[i] = (site.chargeAt(pH) - own) / step;
    }
    site.set(x);
    return slopes;
  }

  /** Whether the liquid itself is asked. */
  boolean isAsked() {
    return isAsked;
  }

  /** The slopes of the number against every variable of the site, at variables that are set. */
  double[] gradient(double[] x) {
    double[] slopes = new double[x.length];
    if (linear != null) {
      double number = number() - linear.constant;
      for (int i : site.own()) {
        double sum = 0;
        for (int c = 0; c < linear.perTotal.length; c++) {
          sum += linear.perTotal[c] * site.brings(c)[i];
        }
        slopes[i] = (sum - number * site.volume()[i]) / site.litres();
      }
      return slopes;
    }
    if (form != null) {
      return chained(form, x, slopes);
    }
    double number = number();
    if (isRoot() && site.hasMash()) {
      // The root moves as the charge there does, over the capacity: no root is found again.
      double capacity = site.capacityAt(number);
      double[] charges = chargeGradient(number, x);
      for (int i : site.own()) {
        slopes[i] = charges[i] / capacity;
      }
      return slopes;
    }
    for (int i : site.own()) {
      double ahead = slope(x, i, STEP, number);
      double slope = Double.isFinite(ahead) ? ahead : slope(x, i, -STEP, number);
      slopes[i] = Double.isFinite(slope) ? slope : 0;
    }
    site.set(x);
    return slopes;
  }

  /** The slope to a point a step away; NaN where the figure has no value there. */
  private double slope(double[] x, int i, double by, double number) {
    double[] moved = x.clone();
    moved[i] += by;
    site.set(moved);
    return (numberOrNaN() - number) / (moved[i] - x[i]);
  }

  private double[] chained(ClosedForm formula, double[] x, double[] slopes) {
    double[] numbers = inputs.stream().mapToDouble(SiteFigure::number).toArray();
    double perOwn = shown.slope(formula.apply(numbers.clone()));
    for (int k = 0; k < numbers.length; k++) {
      double own = numbers[k];
      double step = small(own);
      numbers[k] = own + step;
      double above = formula.apply(numbers.clone());
      numbers[k] = own - step;
      double below = formula.apply(numbers.clone());
      numbers[k] = own;
      double slope = perOwn * (above - below) / (2 * step);
      double[] input = inputs.get(k).gradient(x);
      for (int i : site.own()) {
        slopes[i] += slope * input[i];
      }
    }
    return slopes;
  }

  /** A step of a number in a difference. */
  private static double small(double number) {
    return Math.max(Math.abs(number), 1e-3) * 1e-5;
  }

  /** The way from a figure's own scale to the one in which it is shown. */
  private static final class Shown {
    private final Figure<?> figure;
    private final boolean same;
    private final boolean straight;
    private final double factor;
    private final double offset;

    Shown(Figure<?> figure) {
      this.figure = figure;
      same = figure.scale() == figure.shown();
      double one = same ? 1 : convert(1);
      double two = same ? 2 : convert(2);
      factor = two - one;
      offset = same ? 0 : one - factor;
      straight = same || Math.abs(convert(5) - (offset + 5 * factor)) <= SAME * Math.abs(factor);
    }

    private double convert(double number) {
      return figure.inShown(Traced.exact(number)).value();
    }

    double of(double own) {
      return same ? own : straight ? offset + factor * own : convert(own);
    }

    /** By how much the number that is shown grows with the figure's own. */
    double slope(double own) {
      double step = small(own);
      return straight ? factor : (convert(own + step) - convert(own - step)) / (2 * step);
    }

    @Nullable Linear of(Linear own) {
      if (same) {
        return own;
      }
      if (!straight) {
        return null;
      }
      double[] perTotal = own.perTotal.clone();
      for (int c = 0; c < perTotal.length; c++) {
        perTotal[c] *= factor;
      }
      return new Linear(perTotal, offset + factor * own.constant);
    }
  }

  @Override
  public String toString() {
    return figure.toString();
  }
}
