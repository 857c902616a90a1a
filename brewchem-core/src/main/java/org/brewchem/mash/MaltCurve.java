package org.brewchem.mash;

import java.util.LinkedHashSet;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import org.brewchem.solution.Contents;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * The charge curve of a malt in distilled water: the pH of a cooled sample against the strong acid
 * given to it, mEq per kg of malt, base negative. A quadratic about the mash without acid, held
 * straight from a third of the covered width beyond it; it falls everywhere.
 *
 * <p>pH(a) = pH(0) + slope a + curvature a² + misfit (a - a1) (a - a2) (a - a3) / 1000, with the
 * misfit estimated as 0: what a quadratic through jars at a1, a2 and a3 may miss of the malt.
 * Immutable.
 */
final class MaltCurve {

  /** How flat the quadratic may become beyond what was measured, against its end there. */
  private static final double FLATTEST = 0.25;

  /** More acid than any malt is given, mEq/kg. */
  private static final double FAR = 1e4;

  private final Traced pH;
  private final Traced slope;
  private final Traced curvature;
  private final Traced misfit;
  private final double lowest;
  private final double middle;
  private final double highest;
  private final double from;
  private final double to;
  private final double pHFrom;
  private final double pHTo;

  /**
   * Makes a curve.
   *
   * @param pH of the mash without acid
   * @param slope pH per mEq/kg there, below 0
   * @param curvature half the second derivative, pH per (mEq/kg)²
   * @param misfit its value is 0
   * @param lowest the least acid that was measured, mEq/kg
   * @param middle acid of the jar between, mEq/kg
   * @param highest the most acid that was measured, mEq/kg
   */
  MaltCurve(
      Traced pH,
      Traced slope,
      Traced curvature,
      Traced misfit,
      double lowest,
      double middle,
      double highest) {
    this.pH = pH;
    this.slope = slope;
    this.curvature = curvature;
    this.misfit = misfit;
    this.lowest = lowest;
    this.middle = middle;
    this.highest = highest;
    if (!(steepness(lowest) < 0 && steepness(highest) < 0)) {
      throw new IllegalArgumentException(
          "curve of the malt: "
              + slope.value()
              + " pH per mEq/kg with curvature "
              + curvature.value()
              + " is not possible; the pH has to fall with acid from "
              + lowest
              + " to "
              + highest
              + " mEq/kg");
    }
    double margin = (highest - lowest) / 3;
    to = straightFrom(highest, highest + margin);
    from = straightFrom(lowest, lowest - margin);
    pHFrom = quadratic(from);
    pHTo = quadratic(to);
  }

  /** A curve of one capacity, of which no reading says how far it goes. */
  static MaltCurve straight(Traced pH, Traced slope) {
    return new MaltCurve(pH, slope, Traced.exact(0), Traced.exact(0), -FAR, 0, FAR);
  }

  /** What a quadratic through jars may miss of a malt. */
  static Traced missed(String malt) {
    return Traced.of(
        Source.of("what a quadratic misses of " + malt, 0, MashValues.value("misfit of jars"), ""));
  }

  /** The curve of species that are known, through three jars that the kernel mashes. */
  static MaltCurve ofSpecies(String malt, Contents species, double litresPerKilogram) {
    double least = -10;
    double most = 20;
    double perKilogram = 1e-3 / (litresPerKilogram * species.kilogramsPerLitre());
    Traced inert = species.inertCharge().orElseThrow();
    Traced[] pH = new Traced[3];
    double[] acids = {least, 0, most};
    for (int i = 0; i < acids.length; i++) {
      pH[i] = species.withInertCharge(inert.plus(Traced.exact(-acids[i] * perKilogram))).pH();
    }
    Traced below = pH[0].minus(pH[1]);
    Traced above = pH[2].minus(pH[1]);
    double width = least * most * (most - least);
    return new MaltCurve(
        pH[1],
        below.times(most * most / width).plus(above.times(-least * least / width)),
        above.times(least / width).plus(below.times(-most / width)),
        missed(malt),
        least,
        0,
        most);
  }

  /** Where the quadratic is left: at the margin, or earlier where it becomes too flat. */
  private double straightFrom(double end, double margin) {
    double flattest = FLATTEST * steepness(end);
    return steepness(margin) <= flattest
        ? margin
        : (flattest - slope.value()) / (2 * curvature.value());
  }

  private double quadratic(double acid) {
    return pH.value() + acid * (slope.value() + acid * curvature.value());
  }

  private double steepness(double acid) {
    return slope.value() + 2 * curvature.value() * acid;
  }

  /** Slope of the pH at an acid, pH per mEq/kg, below 0. */
  double slopeAt(double acid) {
    return steepness(Math.max(from, Math.min(to, acid)));
  }

  /** Acid that brings the malt in distilled water to a pH, mEq/kg. */
  double acidAt(double at) {
    if (at > pHFrom) {
      return from + (at - pHFrom) / steepness(from);
    }
    if (at < pHTo) {
      return to + (at - pHTo) / steepness(to);
    }
    double fall = pH.value() - at;
    double root = Math.sqrt(slope.value() * slope.value() - 4 * curvature.value() * fall);
    return 2 * fall / (-slope.value() + root);
  }

  /** The uncertain numbers of the curve. */
  Traced[] parameters() {
    return new Traced[] {pH, slope, curvature, misfit};
  }

  /** How the pH at an acid moves with each of {@link #parameters()}. */
  double[] slopes(double acid) {
    double end = Math.max(from, Math.min(to, acid));
    return new double[] {
      1,
      acid,
      end * end + 2 * end * (acid - end),
      (acid - lowest) * (acid - middle) * (acid - highest) / 1000
    };
  }

  boolean covers(double acid) {
    return acid >= lowest && acid <= highest;
  }

  /** Whether it is the straight line of a pH and a capacity, without a range that was measured. */
  boolean isOneCapacity() {
    return lowest == -FAR && highest == FAR;
  }

  double lowest() {
    return lowest;
  }

  double highest() {
    return highest;
  }

  Traced pH() {
    return pH;
  }

  Traced slope() {
    return slope;
  }

  Traced curvature() {
    return curvature;
  }

  /** The sources that a measured mash pH teaches about: those of all numbers but the misfit. */
  Set<Source> sources() {
    Set<Source> all = new LinkedHashSet<>(pH.sources());
    all.addAll(slope.sources());
    all.addAll(curvature.sources());
    return all;
  }

  /**
   * The curve with its sources off their estimates. The slope moves as a lognormal number does, by
   * its logarithm, and keeps its sign.
   *
   * @param deviation of each source, in its unit
   */
  MaltCurve moved(ToDoubleFunction<Source> deviation) {
    return new MaltCurve(
        pH.withValue(pH.value() + shift(pH, deviation)),
        slope.times(Math.exp(shift(slope, deviation) / slope.value())),
        curvature.withValue(curvature.value() + shift(curvature, deviation)),
        misfit,
        lowest,
        middle,
        highest);
  }

  /**
   * The curve at one draw of its sources: as {@link #moved}, but such that the mean of the slope
   * stays, and with the curvature scaled along, so that every draw falls everywhere. What the
   * curvature's own uncertainty does is left to first order.
   */
  MaltCurve drawn(ToDoubleFunction<Source> deviation) {
    double u = slope.knownPart() / slope.value();
    double factor = Math.exp(shift(slope, deviation) / slope.value() - u * u / 2);
    return new MaltCurve(
        pH.withValue(pH.value() + shift(pH, deviation)),
        slope.times(factor),
        curvature.times(factor),
        misfit,
        lowest,
        middle,
        highest);
  }

  /** The curve with other sources behind its numbers. */
  MaltCurve resting(UnaryOperator<Traced> on) {
    return new MaltCurve(
        on.apply(pH), on.apply(slope), on.apply(curvature), misfit, lowest, middle, highest);
  }

  /** How far a number moves when its sources do. */
  static double shift(Traced number, ToDoubleFunction<Source> deviation) {
    double sum = 0;
    for (Source source : number.sources()) {
      sum += number.sensitivity(source) * deviation.applyAsDouble(source);
    }
    return sum;
  }
}
