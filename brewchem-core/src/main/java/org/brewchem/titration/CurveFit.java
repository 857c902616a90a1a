package org.brewchem.titration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.uncertainty.UncertainValue;

/**
 * A composition fitted to a titration curve: totals, the strong-ion difference and dissociation
 * constants that were not known, such that the kernel's curve passes the readings as closely as
 * possible (least squares of pH). Immutable.
 *
 * <p>A reading that lies farther off the curve than the scatter of the others explains is named in
 * {@link #findings()}: its deleted studentised residual exceeds Student's t at 5 % over all
 * readings (Bonferroni). It is flagged and stays in the fit.
 */
public final class CurveFit {

  private static final double SIGNIFICANCE = 0.05;
  private static final double RELATIVE_STEP = 1e-5;
  private static final int MOST_ITERATIONS = 100;
  private static final double SMALL_STEP = 1e-10;
  private static final double SMALLEST_SHARE = 1e-6;
  private static final Volume UNIT = Volume.ofLitres(1);

  /** What is known of a sample, and what is to be found. Immutable. */
  public static final class Problem {

    private final Solution known;
    private final Solution titrant;
    private final List<Unknown> unknowns;

    private Problem(Solution known, Solution titrant, List<Unknown> unknowns) {
      this.known = known;
      this.titrant = titrant;
      this.unknowns = unknowns;
    }

    private Problem with(Unknown unknown) {
      List<Unknown> all = new ArrayList<>(unknowns);
      all.add(unknown);
      return new Problem(known, titrant, List.copyOf(all));
    }

    /**
     * Declares the total of a component unknown.
     *
     * @param component the component
     * @return the problem with one more unknown
     */
    public Problem unknownTotal(Component component) {
      return with(new Total(component));
    }

    /**
     * Declares the strong-ion difference unknown: an inert charge besides the known ions.
     *
     * @return the problem with one more unknown
     */
    public Problem unknownInertCharge() {
      return with(new InertCharge());
    }

    /**
     * Declares a dissociation constant unknown.
     *
     * @param component the component, of one step
     * @param start a pKa to start from
     * @return the problem with one more unknown
     * @throws IllegalArgumentException if the component has another number of steps than one, or
     *     the start is not finite
     */
    public Problem unknownPKa(Component component, double start) {
      if (component.protons() != 1) {
        throw new IllegalArgumentException(
            component.name()
                + ": "
                + component.protons()
                + " steps are not possible; a pKa is fitted for one");
      }
      return with(new DissociationConstant(component, Checks.finite("start", start, "")));
    }

    /**
     * Fits the unknowns to readings.
     *
     * @param titrantPerSample titrant added per sample, kg/kg, or L/L where both have the density
     *     of water; each 0 or more
     * @param pH the pH after each
     * @return the fit
     * @throws IllegalArgumentException if the lengths differ, there are fewer readings than
     *     unknowns and one more, or the readings do not determine the unknowns
     */
    public CurveFit to(double[] titrantPerSample, double[] pH) {
      if (titrantPerSample.length != pH.length) {
        throw new IllegalArgumentException(
            "readings: " + titrantPerSample.length + " do not go with " + pH.length + " pH");
      }
      if (pH.length < unknowns.size() + 2) {
        throw new IllegalArgumentException(
            "readings: "
                + pH.length
                + " are not enough; "
                + unknowns.size()
                + " unknowns need "
                + (unknowns.size() + 2)
                + " or more");
      }
      return new CurveFit(this, titrantPerSample.clone(), pH.clone());
    }

    /**
     * Fits the unknowns to a log.
     *
     * @param log the log of a titration of the sample
     * @return the fit; its composition is that of the sample under the burette
     * @throws IllegalArgumentException if there are too few readings, or they do not determine the
     *     unknowns
     */
    public CurveFit to(TitrationLog log) {
      double initial = log.titration().initialVolume().inLitres();
      return to(
          log.readings().stream().mapToDouble(r -> r.volume().inLitres() / initial).toArray(),
          log.readings().stream().mapToDouble(r -> r.pH().value()).toArray());
    }

    private Solution composed(double[] values) {
      Solution solution = known;
      for (int i = 0; i < values.length; i++) {
        solution = unknowns.get(i).applied(solution, values[i]);
      }
      return solution;
    }

    private double[] curve(double[] values, double[] titrantPerSample) {
      double[] millilitres =
          Arrays.stream(titrantPerSample).map(x -> x * UNIT.inMillilitres()).toArray();
      return composed(values).titratedWith(titrant, UNIT).pHAfter(millilitres);
    }

    /** Net charge of the mixtures at the pH read: nil for the right values. */
    private double[] charges(double[] values, double[] titrantPerSample, double[] pH) {
      Solution sample = composed(values);
      double[] charges = new double[pH.length];
      for (int i = 0; i < pH.length; i++) {
        charges[i] =
            sample
                .mixed(UNIT, titrant, UNIT.times(titrantPerSample[i]))
                .charge(PH.of(pH[i]))
                .inEquivalentsPerLitre();
      }
      return charges;
    }

    /** The charge is nearly linear in totals and inert charge: solved for them at the pH read. */
    private double[] start(double[] titrantPerSample, double[] pH) {
      double[] values = unknowns.stream().mapToDouble(Unknown::start).toArray();
      double[] base = charges(values, titrantPerSample, pH);
      List<Integer> linear = new ArrayList<>();
      for (int i = 0; i < values.length; i++) {
        if (unknowns.get(i).isLinear()) {
          linear.add(i);
        }
      }
      if (linear.isEmpty()) {
        return values;
      }
      double[][] slopes = new double[pH.length][linear.size()];
      for (int j = 0; j < linear.size(); j++) {
        int i = linear.get(j);
        double[] moved = values.clone();
        moved[i] += unknowns.get(i).scale();
        double[] charges = charges(moved, titrantPerSample, pH);
        for (int k = 0; k < charges.length; k++) {
          slopes[k][j] = (charges[k] - base[k]) / unknowns.get(i).scale();
        }
      }
      RealVector solved =
          new QRDecomposition(MatrixUtils.createRealMatrix(slopes))
              .getSolver()
              .solve(new ArrayRealVector(base).mapMultiply(-1));
      for (int j = 0; j < linear.size(); j++) {
        int i = linear.get(j);
        values[i] = unknowns.get(i).allowed(values[i] + solved.getEntry(j));
      }
      return values;
    }
  }

  /** One number to be found. */
  private interface Unknown {
    String name();

    String unit();

    double start();

    /** Size of a change that matters. */
    double scale();

    boolean isLinear();

    double allowed(double value);

    Solution applied(Solution solution, double value);
  }

  private record Total(Component component) implements Unknown {
    @Override
    public String name() {
      return "total " + component.name();
    }

    @Override
    public String unit() {
      return "mol/kg";
    }

    @Override
    public double start() {
      return 0;
    }

    @Override
    public double scale() {
      return 1e-3;
    }

    @Override
    public boolean isLinear() {
      return true;
    }

    @Override
    public double allowed(double value) {
      return Math.max(value, 0);
    }

    @Override
    public Solution applied(Solution solution, double value) {
      return solution.withTotal(component, Molality.ofMolesPerKilogram(value));
    }
  }

  private record InertCharge() implements Unknown {
    @Override
    public String name() {
      return "inert charge";
    }

    @Override
    public String unit() {
      return "eq/kg";
    }

    @Override
    public double start() {
      return 0;
    }

    @Override
    public double scale() {
      return 1e-3;
    }

    @Override
    public boolean isLinear() {
      return true;
    }

    @Override
    public double allowed(double value) {
      return value;
    }

    @Override
    public Solution applied(Solution solution, double value) {
      return solution.withInertCharge(
          ChargeConcentration.ofEquivalentsPerLitre(value * solution.kilogramsPerLitre()));
    }
  }

  private record DissociationConstant(Component component, double start) implements Unknown {
    @Override
    public String name() {
      return "pKa of " + component.name();
    }

    @Override
    public String unit() {
      return "";
    }

    @Override
    public double scale() {
      return 1;
    }

    @Override
    public boolean isLinear() {
      return false;
    }

    @Override
    public double allowed(double value) {
      return value;
    }

    @Override
    public Solution applied(Solution solution, double value) {
      Chemistry chemistry = solution.chemistry();
      return solution.under(
          chemistry.withConstants(
              chemistry.constants().with(component, EquilibriumConstant.ofLog10(-value))));
    }
  }

  private final Problem problem;
  private final double[] pH;
  private final double[] values;
  private final double[] residuals;
  private final double[] standardUncertainties;
  private final double standardDeviation;
  private final List<Finding> findings;

  private CurveFit(Problem problem, double[] titrantPerSample, double[] pH) {
    this.problem = problem;
    this.pH = pH;
    this.values = optimise(titrantPerSample, problem.start(titrantPerSample, pH));
    this.residuals = offsets(values, titrantPerSample);
    int free = pH.length - values.length;
    double squares = Arrays.stream(residuals).map(r -> r * r).sum();
    this.standardDeviation = Math.sqrt(squares / free);
    RealMatrix jacobian = slopes(values, titrantPerSample);
    RealMatrix covariance = inverse(jacobian.transpose().multiply(jacobian));
    this.standardUncertainties = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      standardUncertainties[i] = standardDeviation * Math.sqrt(covariance.getEntry(i, i));
    }
    RealMatrix hat = jacobian.multiply(covariance).multiply(jacobian.transpose());
    this.findings = List.copyOf(outliers(hat, squares, free));
  }

  private RealMatrix inverse(RealMatrix normal) {
    try {
      return new LUDecomposition(normal).getSolver().getInverse();
    } catch (SingularMatrixException e) {
      throw undetermined(e);
    }
  }

  private IllegalArgumentException undetermined(SingularMatrixException cause) {
    return new IllegalArgumentException(
        "readings: they do not determine " + names() + "; fewer unknowns are needed", cause);
  }

  /** Gauss-Newton steps, halved while they make the fit worse. */
  private double[] optimise(double[] titrantPerSample, double[] start) {
    double[] point = start;
    double squares = squares(point, titrantPerSample);
    for (int iteration = 0; iteration < MOST_ITERATIONS; iteration++) {
      RealMatrix slopes = slopes(point, titrantPerSample);
      double[] offsets = offsets(point, titrantPerSample);
      RealVector step = step(slopes, offsets);
      double share = 1;
      double[] next = moved(point, step, share);
      double after = squares(next, titrantPerSample);
      while (after > squares && share > SMALLEST_SHARE) {
        share /= 2;
        next = moved(point, step, share);
        after = squares(next, titrantPerSample);
      }
      if (after >= squares) {
        return point;
      }
      boolean settled = isSmall(step, share);
      point = next;
      squares = after;
      if (settled) {
        return point;
      }
    }
    throw new IllegalArgumentException(
        "readings: no fit of " + names() + " was found within " + MOST_ITERATIONS + " steps");
  }

  private RealVector step(RealMatrix slopes, double[] offsets) {
    try {
      return new QRDecomposition(slopes).getSolver().solve(new ArrayRealVector(offsets));
    } catch (SingularMatrixException e) {
      throw undetermined(e);
    }
  }

  private double[] moved(double[] point, RealVector step, double share) {
    double[] moved = point.clone();
    for (int i = 0; i < moved.length; i++) {
      moved[i] = problem.unknowns.get(i).allowed(moved[i] + share * step.getEntry(i));
    }
    return moved;
  }

  private boolean isSmall(RealVector step, double share) {
    for (int i = 0; i < step.getDimension(); i++) {
      if (Math.abs(share * step.getEntry(i)) > SMALL_STEP * problem.unknowns.get(i).scale()) {
        return false;
      }
    }
    return true;
  }

  private double[] offsets(double[] point, double[] titrantPerSample) {
    double[] model = problem.curve(point, titrantPerSample);
    double[] offsets = new double[model.length];
    for (int i = 0; i < model.length; i++) {
      offsets[i] = pH[i] - model[i];
    }
    return offsets;
  }

  private double squares(double[] point, double[] titrantPerSample) {
    return Arrays.stream(offsets(point, titrantPerSample)).map(r -> r * r).sum();
  }

  private RealMatrix slopes(double[] point, double[] titrantPerSample) {
    double[][] slopes = new double[pH.length][point.length];
    for (int j = 0; j < point.length; j++) {
      Unknown unknown = problem.unknowns.get(j);
      double step = RELATIVE_STEP * Math.max(Math.abs(point[j]), unknown.scale());
      double[] above = point.clone();
      double[] below = point.clone();
      above[j] += step;
      below[j] = unknown.allowed(below[j] - step);
      double width = above[j] - below[j];
      double[] high = problem.curve(above, titrantPerSample);
      double[] low = problem.curve(below, titrantPerSample);
      for (int i = 0; i < slopes.length; i++) {
        slopes[i][j] = (high[i] - low[i]) / width;
      }
    }
    return new Array2DRowRealMatrix(slopes);
  }

  private List<Finding> outliers(RealMatrix hat, double squares, int free) {
    int n = residuals.length;
    double critical =
        new TDistribution(free - 1).inverseCumulativeProbability(1 - SIGNIFICANCE / (2 * n));
    List<Finding> list = new ArrayList<>();
    int worst = -1;
    double largest = critical;
    for (int i = 0; i < n; i++) {
      double leverage = 1 - hat.getEntry(i, i);
      if (leverage < 1e-9) {
        continue;
      }
      double without = (squares - residuals[i] * residuals[i] / leverage) / (free - 1);
      double t = Math.abs(residuals[i]) / Math.sqrt(Math.max(without, 0) * leverage);
      if (t > largest) {
        largest = t;
        worst = i;
      }
    }
    if (worst >= 0) {
      list.add(
          Finding.ofRow(
              Finding.Kind.BAD_POINT,
              worst + 1,
              String.format(
                  Locale.ROOT,
                  "pH %s lies %s off the fitted curve, %.3g of its standard deviations where %.3g"
                      + " are allowed",
                  NumberText.plain(pH[worst]),
                  NumberText.significant(residuals[worst], 2),
                  largest,
                  critical)));
    }
    return list;
  }

  private String names() {
    return problem.unknowns.stream().map(Unknown::name).toList().toString();
  }

  /**
   * Starts a problem.
   *
   * @param known the sample as far as it is known, with the chemistry to be used
   * @param titrant the titrant, at the same temperature
   * @return a problem without unknowns
   */
  public static Problem of(Solution known, Solution titrant) {
    return new Problem(known, titrant, List.of());
  }

  /**
   * Returns the fitted total of a component.
   *
   * @param component a component that was declared unknown
   * @return mol per kg of water in the sample before the first drop, with its uncertainty
   * @throws IllegalArgumentException if it was not declared unknown
   */
  public UncertainValue total(Component component) {
    return value(new Total(component).name());
  }

  /**
   * Returns the fitted inert charge, besides that of the known solution.
   *
   * @return eq per kg of water in the sample before the first drop, with its uncertainty
   * @throws IllegalArgumentException if it was not declared unknown
   */
  public UncertainValue inertCharge() {
    return value(new InertCharge().name());
  }

  /**
   * Returns the fitted dissociation constant.
   *
   * @param component a component whose constant was declared unknown
   * @return the pKa with its uncertainty, under the chemistry of the known solution
   * @throws IllegalArgumentException if it was not declared unknown
   */
  public UncertainValue pKa(Component component) {
    return value(new DissociationConstant(component, 0).name());
  }

  private UncertainValue value(String name) {
    for (int i = 0; i < values.length; i++) {
      Unknown unknown = problem.unknowns.get(i);
      if (unknown.name().equals(name)) {
        return UncertainValue.of(values[i], standardUncertainties[i], unknown.unit())
            .withDegreesOfFreedom(residuals.length - values.length);
      }
    }
    throw new IllegalArgumentException(name + " was not declared unknown, only " + names());
  }

  /**
   * Returns the fitted sample.
   *
   * @return the solution before the first drop
   */
  public Solution solution() {
    return problem.composed(values);
  }

  /**
   * Returns how far each reading lies from the fitted curve.
   *
   * @return pH read minus pH of the curve, in a new array
   */
  public double[] residuals() {
    return residuals.clone();
  }

  /**
   * Returns the scatter of the readings around the fitted curve.
   *
   * @return the residual standard deviation in pH
   */
  public double standardDeviation() {
    return standardDeviation;
  }

  /**
   * Names the reading that does not belong to the curve.
   *
   * @return an unmodifiable list of one finding, empty when all readings belong to it
   */
  public List<Finding> findings() {
    return findings;
  }

  /** Prints the fitted values and the scatter. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    for (Unknown unknown : problem.unknowns) {
      text.append(unknown.name()).append(' ').append(value(unknown.name())).append("; ");
    }
    return text + "scatter " + NumberText.significant(standardDeviation, 2) + " pH";
  }
}
