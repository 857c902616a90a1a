package org.brewchem.titration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.internal.CurveLeastSquares;
import org.brewchem.internal.NoFitException;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.solution.TitratedMixture;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/**
 * A composition fitted to a titration curve: totals, the strong-ion difference and dissociation
 * constants that were not known, such that the kernel's curve passes the readings as closely as
 * possible (least squares of pH). Immutable.
 *
 * <p>A total is not negative: where the best fit would be below 0, it is 0 and the others are
 * fitted without it. Its uncertainty says how much of it the readings could have shown.
 *
 * <p>A reading that lies farther off the curve than the scatter of the others explains is named in
 * {@link #notices()}: its deleted studentised residual exceeds Student's t at 5 % over all readings
 * (Bonferroni), the worst left out and the curve fitted again until none is left. All are flagged,
 * and all stay in the fit.
 */
public final class CurveFit implements Answering {

  private static final double SIGNIFICANCE = 0.05;

  /** A reading that the curve follows wholly, as the only one of its kind, cannot be bad. */
  private static final double NO_FREEDOM = 1e-9;

  /** At most a quarter of the readings is named; a curve that loses more is another curve. */
  private static final int MOST_BAD_SHARE = 4;

  /** The quantile 0.75 of the normal distribution. */
  private static final double NORMAL_QUARTILE = 0.6745;

  /** Normal residuals of a dozen readings rarely have a scatter of 1.6 times their middle. */
  private static final double HEAVY_TAILED = 1.6;

  /** Share of a standard uncertainty by which a fit that has settled may still move. */
  private static final double SETTLED = 1e-3;

  private static final Volume UNIT = Volume.ofLitres(1);

  /** What is known of a sample, and what is to be found. Immutable. */
  public static final class Problem {

    private final Solution known;
    private final Solution titrant;
    private final List<CurveUnknown> unknowns;

    private Problem(Solution known, Solution titrant, List<CurveUnknown> unknowns) {
      this.known = known;
      this.titrant = titrant;
      this.unknowns = unknowns;
    }

    private Problem with(CurveUnknown unknown) {
      if (unknowns.stream().anyMatch(other -> other.name().equals(unknown.name()))) {
        throw new IllegalArgumentException(
            "unknown: " + unknown.name() + " was declared already; once is enough");
      }
      List<CurveUnknown> all = new ArrayList<>(unknowns);
      all.add(unknown);
      return new Problem(known, titrant, List.copyOf(all));
    }

    /**
     * Declares the total of a component unknown.
     *
     * @param component the component
     * @return the problem with one more unknown
     * @throws IllegalArgumentException if it was declared already
     */
    public Problem unknownTotal(Component component) {
      Objects.requireNonNull(component, "component");
      return with(new CurveUnknown.Total(component));
    }

    /**
     * Declares the strong-ion difference unknown: an inert charge besides the known ions.
     *
     * @return the problem with one more unknown
     * @throws IllegalArgumentException if it was declared already
     */
    public Problem unknownInertCharge() {
      return with(new CurveUnknown.InertCharge());
    }

    /**
     * Declares a dissociation constant unknown.
     *
     * @param component the component, of one step
     * @param start a pKa to start from
     * @return the problem with one more unknown
     * @throws IllegalArgumentException if the component has another number of steps than one, the
     *     start is not finite, or the constant was declared already
     */
    public Problem unknownPKa(Component component, double start) {
      if (component.protons() != 1) {
        throw new IllegalArgumentException(
            component.name()
                + ": "
                + component.protons()
                + " steps are not possible; a pKa is fitted for one");
      }
      return with(
          new CurveUnknown.DissociationConstant(component, Checks.finite("start", start, "")));
    }

    /**
     * Fits the unknowns to readings.
     *
     * @param titrantPerSample titrant added per sample, kg/kg, or L/L where both have the density
     *     of water; each 0 or more
     * @param pH the pH after each
     * @return the fit
     * @throws IllegalArgumentException if no unknown was declared, the lengths differ, a number is
     *     out of range, there are fewer readings than unknowns and two more, the pH is the same in
     *     all, or the readings do not determine the unknowns
     */
    public CurveFit to(double[] titrantPerSample, double[] pH) {
      if (unknowns.isEmpty()) {
        throw new IllegalArgumentException(
            "unknowns: none was declared; one or more is needed to fit");
      }
      if (titrantPerSample.length != pH.length) {
        throw new IllegalArgumentException(
            "readings: " + titrantPerSample.length + " do not go with " + pH.length + " pH");
      }
      if (pH.length < unknowns.size() + 2) {
        throw Checks.outOfRange(
            "readings",
            pH.length,
            "",
            (unknowns.size() + 2) + " or more for " + unknowns.size() + " unknowns");
      }
      for (int i = 0; i < pH.length; i++) {
        Checks.nonNegative("titrant per sample of reading " + (i + 1), titrantPerSample[i], "");
        Checks.inRange("pH of reading " + (i + 1), pH[i], "", 0, 14);
      }
      double first = pH[0];
      if (Arrays.stream(pH).allMatch(value -> value == first)) {
        throw Checks.outOfRange("pH of the readings", first, "in all of them", "a pH that moves");
      }
      try {
        return new CurveFit(this, fit(titrantPerSample, pH), titrantPerSample, pH);
      } catch (NoFitException e) {
        throw noFit(e);
      }
    }

    /**
     * Fits the unknowns to a log.
     *
     * @param log the log of a titration of the sample
     * @return the fit; its composition is that of the sample under the burette
     * @throws IllegalArgumentException if no unknown was declared, there are too few readings, or
     *     they do not determine the unknowns
     */
    public CurveFit to(TitrationLog log) {
      double initial = log.titration().initialVolume().inLitres();
      return to(
          log.readings().stream().mapToDouble(r -> r.volume().inLitres() / initial).toArray(),
          log.readings().stream().mapToDouble(r -> r.pH().value()).toArray());
    }

    private CurveLeastSquares fit(double[] titrantPerSample, double[] pH) throws NoFitException {
      UnknownCurve curve =
          new UnknownCurve(this::mixture, unknowns, inertCharge(), titrantPerSample);
      return CurveLeastSquares.fit(parameters(curve, pH), curve, pH);
    }

    private IllegalArgumentException noFit(NoFitException cause) {
      String reason =
          switch (cause.reason()) {
            case NOT_DETERMINED -> "they do not determine " + names();
            case NOT_SETTLED -> "no fit of " + names() + " was found";
          };
      return new IllegalArgumentException(
          "readings: " + reason + "; fewer unknowns are needed", cause);
    }

    private String names() {
      return unknowns.stream().map(CurveUnknown::name).toList().toString();
    }

    private Solution composed(double[] values) {
      Solution solution = known;
      for (int i = 0; i < values.length; i++) {
        solution = unknowns.get(i).applied(solution, values[i]);
      }
      return solution;
    }

    /** What is known of the inert charge, Eq/kg. */
    private double inertCharge() {
      return known.inertCharge().inEquivalentsPerLitre() / known.kilogramsPerLitre();
    }

    private TitratedMixture mixture(double[] values) {
      return SimulatedTitration.of(composed(values), titrant, UNIT).mixture();
    }

    private CurveLeastSquares.Parameter[] parameters(UnknownCurve curve, double[] pH)
        throws NoFitException {
      double[] start = unknowns.stream().mapToDouble(CurveUnknown::start).toArray();
      int[] linear =
          IntStream.range(0, start.length).filter(i -> unknowns.get(i).isLinear()).toArray();
      if (linear.length > 0) {
        moveTowards(pH, curve, start, linear, false);
        moveTowards(pH, curve, start, linear, true);
      }
      CurveLeastSquares.Parameter[] parameters = new CurveLeastSquares.Parameter[start.length];
      for (int i = 0; i < start.length; i++) {
        CurveUnknown unknown = unknowns.get(i);
        parameters[i] =
            new CurveLeastSquares.Parameter(start[i], unknown.scale(), unknown.isNonNegative());
      }
      return parameters;
    }

    /**
     * The charge is nearly linear in totals and inert charge: it is solved for them at the pH read.
     * Over the buffer capacity, which asks for values not far off, it is nearly a distance in pH.
     */
    private void moveTowards(
        double[] pH, UnknownCurve curve, double[] values, int[] linear, boolean inPH)
        throws NoFitException {
      double[] capacities = new double[pH.length];
      double[][] slopes = new double[pH.length][values.length];
      double[] charges = curve.charges(pH, values, capacities, slopes);
      double[][] falls = new double[pH.length][linear.length];
      for (int k = 0; k < pH.length; k++) {
        double unit = inPH ? capacities[k] : 1;
        charges[k] /= unit;
        for (int j = 0; j < linear.length; j++) {
          falls[k][j] = -slopes[k][linear[j]] / unit;
        }
      }
      double[] moves = CurveLeastSquares.solveLinear(falls, charges);
      for (int j = 0; j < linear.length; j++) {
        int i = linear[j];
        double moved = values[i] + moves[j];
        values[i] = unknowns.get(i).isNonNegative() ? Math.max(moved, 0) : moved;
      }
    }
  }

  private final Problem problem;
  private final CurveLeastSquares fit;
  private final double[] pH;
  private final List<Notice> notices;
  private final List<Traced> values;

  private CurveFit(Problem problem, CurveLeastSquares fit, double[] titrantPerSample, double[] pH) {
    this.problem = problem;
    this.fit = fit;
    this.pH = pH.clone();
    this.notices = badPoints(problem, titrantPerSample, pH, fit);
    this.values = values(fit);
  }

  /**
   * The parameters as they move with independent parts of the one scatter, so that they correlate:
   * rows of the triangle whose square is their covariance (Cholesky).
   */
  private static List<Traced> values(CurveLeastSquares fit) {
    double[] found = fit.parameters();
    int n = found.length;
    Traced[] scatter =
        Source.ofOneScatter("scatter around the fitted curve", n, fit.residuals().length - n)
            .stream()
            .map(Traced::of)
            .toArray(Traced[]::new);
    double[][] triangle = new double[n][n];
    List<Traced> values = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double rest = fit.covariance(i, j);
        for (int k = 0; k < j; k++) {
          rest -= triangle[i][k] * triangle[j][k];
        }
        boolean none = triangle[j][j] == 0;
        triangle[i][j] = i == j ? Math.sqrt(Math.max(rest, 0)) : none ? 0 : rest / triangle[j][j];
      }
      values.add(Traced.linear(found[i], scatter, triangle[i]));
    }
    return List.copyOf(values);
  }

  /**
   * A reading and how far it lies off a curve.
   *
   * @param index its index
   * @param residual pH read less pH of the curve
   * @param t its deleted studentised residual, without sign
   * @param critical what is allowed
   */
  private record Suspect(int index, double residual, double t, double critical) {}

  /**
   * All readings that do not belong: the worst is left out, the curve is fitted to the others, and
   * so on (the generalised test of many outliers of Rosner 1983, from memory: up to the last that
   * is significant, since two can hide each other).
   */
  private static List<Notice> badPoints(
      Problem problem, double[] titrantPerSample, double[] pH, CurveLeastSquares whole) {
    List<Integer> kept = new ArrayList<>(IntStream.range(0, pH.length).boxed().toList());
    List<Suspect> left = new ArrayList<>();
    int bad = 0;
    CurveLeastSquares fit = whole;
    int most = Math.max(1, pH.length / MOST_BAD_SHARE);
    while (left.size() < most && kept.size() > problem.unknowns.size() + 2) {
      Suspect worst = worst(fit, kept);
      if (worst == null || (worst.t <= worst.critical && !isHeavyTailed(fit.residuals()))) {
        break;
      }
      left.add(worst);
      bad = worst.t > worst.critical ? left.size() : bad;
      kept.remove((Integer) worst.index);
      try {
        fit =
            problem.fit(
                kept.stream().mapToDouble(i -> titrantPerSample[i]).toArray(),
                kept.stream().mapToDouble(i -> pH[i]).toArray());
      } catch (NoFitException e) {
        break;
      }
    }
    return left.subList(0, bad).stream()
        .sorted(Comparator.comparingInt(Suspect::index))
        .map(suspect -> notice(suspect, pH))
        .toList();
  }

  /** Whether the scatter is much more than the middle of the residuals shows. */
  private static boolean isHeavyTailed(double[] residuals) {
    double[] sizes = Arrays.stream(residuals).map(Math::abs).sorted().toArray();
    double middle = sizes[sizes.length / 2] / NORMAL_QUARTILE;
    double squares = Arrays.stream(residuals).map(r -> r * r).sum();
    return Math.sqrt(squares / residuals.length) > HEAVY_TAILED * middle;
  }

  private static Notice notice(Suspect suspect, double[] pH) {
    return Notice.ofRow(
        TitrationCode.BAD_POINT,
        "readings",
        suspect.index + 1L,
        String.format(
            Locale.ROOT,
            "pH %s lies %s off the fitted curve, %.3g of its standard deviations where %.3g"
                + " are allowed",
            NumberText.plain(pH[suspect.index]),
            NumberText.significant(suspect.residual, 2),
            suspect.t,
            suspect.critical));
  }

  /** The reading with the largest deleted studentised residual; null where none can be judged. */
  private static @Nullable Suspect worst(CurveLeastSquares fit, List<Integer> kept) {
    int n = kept.size();
    int freeWithoutIt = n - fit.parameters().length - 1;
    double[] residuals = fit.residuals();
    double[] leverages = fit.leverages();
    double squares = fit.squares();
    double critical =
        new TDistribution(freeWithoutIt).inverseCumulativeProbability(1 - SIGNIFICANCE / (2 * n));
    Suspect worst = null;
    for (int i = 0; i < n; i++) {
      double free = 1 - leverages[i];
      if (free < NO_FREEDOM) {
        continue;
      }
      double variance = (squares - residuals[i] * residuals[i] / free) / freeWithoutIt;
      double t = Math.abs(residuals[i]) / Math.sqrt(Math.max(variance, 0) * free);
      if (worst == null || t > worst.t) {
        worst = new Suspect(kept.get(i), residuals[i], t, critical);
      }
    }
    return worst;
  }

  /**
   * Starts a problem.
   *
   * @param known the sample as far as it is known, with the chemistry to be used
   * @param titrant the titrant, at the same temperature
   * @return a problem without unknowns
   */
  public static Problem of(Solution known, Solution titrant) {
    Objects.requireNonNull(known, "known");
    Objects.requireNonNull(titrant, "titrant");
    return new Problem(known, titrant, List.of());
  }

  /**
   * Returns the fitted total of a component.
   *
   * @param component a component that was declared unknown
   * @return mol per kg of water in the sample before the first drop, with the uncertainty that the
   *     scatter of the readings gives it; unknown if it was not declared unknown
   */
  public Answer<Molality> total(Component component) {
    return Answer.of(TitrationFigures.fittedTotal(component), this);
  }

  /**
   * Returns the fitted inert charge, besides that of the known solution.
   *
   * @return Eq per kg of water in the sample before the first drop, with the uncertainty that the
   *     scatter of the readings gives it; unknown if it was not declared unknown
   */
  public Answer<Double> inertCharge() {
    return Answer.of(TitrationFigures.FITTED_INERT_CHARGE, this);
  }

  /**
   * Returns the fitted dissociation constant.
   *
   * @param component a component whose constant was declared unknown
   * @return the pKa under the chemistry of the known solution, with the uncertainty that the
   *     scatter of the readings gives it; unknown if it was not declared unknown
   */
  public Answer<Double> pKa(Component component) {
    return Answer.of(TitrationFigures.fittedPKa(component), this);
  }

  @Override
  public Step step(Figure<?> figure) {
    for (int i = 0; i < values.size(); i++) {
      if (problem.unknowns.get(i).figure().equals(figure)) {
        return Step.of(figure.title(), figure.scale(), Step.Kind.FIT)
            .origin(Origin.MEASURED)
            .text(
                "least squares of pH over " + pH.length + " readings",
                "the charge balance of the mixtures")
            .notices(notices)
            .detail(this::shown)
            .found(values.get(i));
      }
    }
    return Step.of(figure.title(), figure.scale(), Step.Kind.FIT)
        .text("least squares of pH", "")
        .unknown(List.of("was not declared unknown, only " + problem.names()));
  }

  private Step.Detail shown() {
    List<String> lines = new ArrayList<>();
    double[] residuals = fit.residuals();
    for (int i = 0; i < pH.length; i++) {
      lines.add(
          String.format(
              Locale.ROOT, "reading %d: pH %.4f, %+.2g off the curve", i + 1, pH[i], residuals[i]));
    }
    lines.add(
        String.format(
            Locale.ROOT,
            "one more solution of the normal equations moves nothing by more than %.2g of its"
                + " standard uncertainty",
            fit.nextStep()));
    return new Step.Detail(lines, fit.nextStep(), SETTLED);
  }

  @Override
  public String kind() {
    return "fitted curve";
  }

  /**
   * Returns the fitted sample.
   *
   * @return the solution before the first drop
   */
  public Solution solution() {
    return problem.composed(fit.parameters());
  }

  /**
   * Returns how far each reading lies from the fitted curve.
   *
   * @return pH read minus pH of the curve, in a new array
   */
  public double[] residuals() {
    return fit.residuals();
  }

  /**
   * Returns the scatter of the readings around the fitted curve.
   *
   * @return the residual standard deviation in pH
   */
  public double standardDeviation() {
    return fit.standardDeviation();
  }

  /**
   * Names the readings that do not belong to the curve.
   *
   * @return an unmodifiable list of notices by row, empty when all readings belong to it
   */
  public List<Notice> notices() {
    return notices;
  }

  /** Prints the fitted values and the scatter. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    for (CurveUnknown unknown : problem.unknowns) {
      text.append(unknown.name())
          .append(' ')
          .append(Answer.of(unknown.figure(), this))
          .append("; ");
    }
    return text + "scatter " + NumberText.significant(fit.standardDeviation(), 2) + " pH";
  }
}
