package org.brewchem.uncertainty;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.brewchem.internal.Checks;

/**
 * Whether a linear {@link Budget} may be trusted: its standard uncertainty and the two end points
 * of its 95 % interval beside those of {@link MonteCarlo} draws from the same model (the idea of
 * JCGM 101:2008, clause 8, from memory; there the tolerance is half a unit of the last digit of u,
 * here it is stated).
 *
 * <p>A difference is that of the linear from the drawn number, as a fraction of the standard
 * deviation or of half the length of the interval. The draws have an error of their own, so each
 * difference comes with its standard error, and a verdict is given only where two standard errors
 * do not change it.
 *
 * <p>The standard deviation of Student's t exceeds the standard uncertainty by definition. To judge
 * the formula and not that convention, the linear standard uncertainty is recomputed here from the
 * standard deviations of the distributions; without a fourth moment (4 degrees of freedom or fewer)
 * only the end points are compared. End points can differ although the formula is linear: for a
 * single uniform input the draws end at 0.95 of the half width and the budget at 1.13 of it. A
 * source without a stated uncertainty is in neither, and the text names it.
 */
public final class LinearityCheck {

  private static final double COVERAGE_PROBABILITY = 0.95;
  private static final double STANDARD_ERRORS = 2.0;

  /** What the comparison says. */
  public enum Verdict {
    /** All differences are within the tolerance: the budget may be used. */
    AGREES,
    /** At least one difference is beyond the tolerance: use the Monte Carlo result. */
    DIFFERS,
    /** The number of draws is too small to tell. */
    UNDECIDED
  }

  private record Difference(double value, double standardError) {

    static Difference of(double linear, double drawn, double scale, double standardError) {
      if (linear == drawn) {
        return new Difference(0.0, 0.0);
      }
      return new Difference((linear - drawn) / scale, standardError / scale);
    }

    Verdict within(double tolerance) {
      double margin = STANDARD_ERRORS * standardError;
      if (Math.abs(value) - margin > tolerance) {
        return Verdict.DIFFERS;
      }
      return Math.abs(value) + margin <= tolerance ? Verdict.AGREES : Verdict.UNDECIDED;
    }
  }

  private final double relativeTolerance;
  private final Optional<Difference> standardUncertainty;
  private final Difference lowerEndPoint;
  private final Difference upperEndPoint;
  private final String notDrawn;

  private LinearityCheck(
      double relativeTolerance,
      Optional<Difference> standardUncertainty,
      Difference lowerEndPoint,
      Difference upperEndPoint,
      String notDrawn) {
    this.relativeTolerance = relativeTolerance;
    this.standardUncertainty = standardUncertainty;
    this.lowerEndPoint = lowerEndPoint;
    this.upperEndPoint = upperEndPoint;
    this.notDrawn = notDrawn;
  }

  static LinearityCheck of(Budget budget, MonteCarlo draws, double relativeTolerance) {
    Optional<Difference> standardUncertainty = Optional.empty();
    if (draws.hasMoment(4)) {
      double linear = 0.0;
      double[] ofInputs = budget.rows().stream().mapToDouble(Budget.Row::sensitivity).toArray();
      for (DrawnError error : draws.errors()) {
        linear =
            Math.hypot(linear, error.sensitivity(ofInputs) * error.distributionStandardDeviation());
      }
      standardUncertainty =
          Optional.of(
              Difference.of(
                  linear,
                  draws.standardDeviation(),
                  draws.standardDeviation(),
                  draws.standardErrorOfStandardDeviation()));
    }
    ExpandedUncertainty linear = budget.result().expandedAt(COVERAGE_PROBABILITY);
    Interval drawn = draws.interval(COVERAGE_PROBABILITY);
    double half = 0.5 * drawn.length();
    double tail = 0.5 * (1.0 - COVERAGE_PROBABILITY);
    return new LinearityCheck(
        Checks.positive("relative tolerance", relativeTolerance, ""),
        standardUncertainty,
        Difference.of(linear.lower(), drawn.lower(), half, draws.standardErrorOfQuantile(tail)),
        Difference.of(
            linear.upper(), drawn.upper(), half, draws.standardErrorOfQuantile(1.0 - tail)),
        draws.notDrawn());
  }

  /**
   * Returns the tolerance that the differences are compared with.
   *
   * @return the tolerance, a fraction above 0
   */
  public double relativeTolerance() {
    return relativeTolerance;
  }

  /**
   * Returns the linear minus the drawn standard deviation, as a fraction of the drawn one.
   *
   * @return the difference, negative if the linear one is too small; empty if the draws have no
   *     standard deviation that can be judged
   */
  public OptionalDouble standardUncertaintyDifference() {
    return standardUncertainty.isPresent()
        ? OptionalDouble.of(standardUncertainty.get().value())
        : OptionalDouble.empty();
  }

  /**
   * Returns the linear minus the drawn lower end point of the 95 % interval, as a fraction of half
   * the length of the drawn interval.
   *
   * @return the difference
   */
  public double lowerEndPointDifference() {
    return lowerEndPoint.value();
  }

  /**
   * Returns the linear minus the drawn upper end point of the 95 % interval, as a fraction of half
   * the length of the drawn interval.
   *
   * @return the difference
   */
  public double upperEndPointDifference() {
    return upperEndPoint.value();
  }

  /**
   * Returns the verdict on all differences together.
   *
   * @return {@link Verdict#DIFFERS} if one of them is beyond the tolerance, else {@link
   *     Verdict#UNDECIDED} if one cannot be told, else {@link Verdict#AGREES}
   */
  public Verdict verdict() {
    List<Verdict> verdicts =
        Stream.concat(standardUncertainty.stream(), Stream.of(lowerEndPoint, upperEndPoint))
            .map(difference -> difference.within(relativeTolerance))
            .toList();
    if (verdicts.contains(Verdict.DIFFERS)) {
      return Verdict.DIFFERS;
    }
    return verdicts.contains(Verdict.UNDECIDED) ? Verdict.UNDECIDED : Verdict.AGREES;
  }

  /**
   * Prints the verdict, each difference in per cent with its standard error, and whose uncertainty
   * is in neither the budget nor the draws because it is not stated.
   */
  @Override
  public String toString() {
    String verdictText =
        switch (verdict()) {
          case AGREES -> "linear budget agrees with Monte Carlo";
          case DIFFERS -> "linear budget differs from Monte Carlo";
          case UNDECIDED -> "too few draws to judge the linear budget";
        };
    return verdictText
        + " (tolerance "
        + Digits.significant(100.0 * relativeTolerance, 3)
        + " %): standard uncertainty "
        + standardUncertainty.map(LinearityCheck::percent).orElse("not comparable")
        + ", lower end point "
        + percent(lowerEndPoint)
        + ", upper end point "
        + percent(upperEndPoint)
        + notDrawn;
  }

  private static String percent(Difference difference) {
    return String.format(
        Locale.ROOT,
        "%+.2f %% (standard error %.2f %%)",
        100.0 * difference.value(),
        100.0 * difference.standardError());
  }
}
