package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.internal.ClosedForms;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * The log of an alkalinity titration, read by end points that the log itself decides: the one that
 * fits the alkalinity found, the inflection, and the equivalence point of Gran's function.
 * Immutable.
 */
public final class AlkalinityCurve {

  /** End points of Standard Methods 2320 B at 30, 150 and 500 mg/L as CaCO3. */
  private static final double[] ALKALINITIES = {30, 150, 500};

  private static final double[] END_POINTS = {4.9, 4.6, 4.3};
  private static final int MOST_ROUNDS = 50;

  /**
   * More than the 0.01 to which end points are rounded by definition, so that two neighbours do not
   * alternate for ever.
   */
  private static final double SETTLED = 0.0101;

  /** What is left of a condition that holds, mL or as a share. */
  private static final double ROUNDING = 1e-9;

  private static final double LOWEST_INFLECTION = 3.5;
  private static final double HIGHEST_INFLECTION = 5.5;

  private static final double GRAN_FROM = 3.7;
  private static final double GRAN_TO = 2.7;

  private final TitrationCurve log;

  private AlkalinityCurve(TitrationCurve log) {
    this.log = log;
  }

  static AlkalinityCurve of(TitrationCurve log) {
    if (log.titration().titrant().substance().isAlkali()) {
      throw new IllegalStateException(
          "titrant: " + log.titration().titrant() + " measures no alkalinity; an acid is needed");
    }
    return new AlkalinityCurve(log);
  }

  /**
   * Returns the end point that fits an alkalinity: 4.9 at 30, 4.6 at 150 and 4.3 at 500 mg/L as
   * CaCO3 (Standard Methods 2320 B), linear in the logarithm of the alkalinity between, as the pH
   * of a solution of carbon dioxide is; 4.9 below and 4.3 above.
   *
   * @param alkalinity the alkalinity, above 0
   * @return the end point
   * @throws IllegalArgumentException if the alkalinity is not above 0
   */
  public static PH endPointFor(TitrationAlkalinity alkalinity) {
    double asCaCO3 = alkalinity.inMilligramsPerLitreAsCaCO3();
    if (!(asCaCO3 > 0)) {
      throw Checks.outOfRange("alkalinity", asCaCO3, "mg/L as CaCO3", "more than 0");
    }
    if (asCaCO3 <= ALKALINITIES[0]) {
      return PH.of(END_POINTS[0]);
    }
    for (int i = 1; i < ALKALINITIES.length; i++) {
      if (asCaCO3 <= ALKALINITIES[i]) {
        double share =
            Math.log(asCaCO3 / ALKALINITIES[i - 1])
                / Math.log(ALKALINITIES[i] / ALKALINITIES[i - 1]);
        return PH.of(END_POINTS[i - 1] + share * (END_POINTS[i] - END_POINTS[i - 1]));
      }
    }
    return PH.of(END_POINTS[END_POINTS.length - 1]);
  }

  /**
   * Finds the alkalinity to the end point that fits it ({@link #endPointFor}), to two decimals.
   *
   * @return the alkalinity; what the end point misses the equivalence point by, in waters of that
   *     alkalinity that keep or lose their carbon dioxide, counts in its uncertainty
   * @throws IllegalStateException if the readings do not reach that end point
   */
  public AlkalinityResult toFittingEndPoint() {
    PH endPoint = PH.of(END_POINTS[1]);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      AlkalinityResult result = to(endPoint);
      PH fitting = rounded(endPointFor(result.value()));
      if (Math.abs(fitting.minus(endPoint)) < SETTLED) {
        return withBias(endPoint);
      }
      endPoint = fitting;
    }
    throw new IllegalStateException(
        "readings: no end point fits its alkalinity within " + MOST_ROUNDS + " rounds");
  }

  /**
   * The result with what the end point misses the equivalence point by in model waters. A water
   * keeps its gas or loses it, so that the miss is nearly all or nothing: of U-shaped distributions
   * the arcsine, the half width over root 2.
   */
  private AlkalinityResult withBias(PH endPoint) {
    TitrationCurve there = log.endingAt(endPoint);
    double miss =
        ModelWaters.of(there, there.titre().inMillilitres())
            .greatestMiss(titration -> titration.volumeTo(endPoint).inMillilitres());
    return AlkalinityResult.ofBiasedLogs(
        there.titration(),
        List.of(there),
        Source.of("fitting end point in model waters", 0, miss / Math.sqrt(2), "mL"));
  }

  /**
   * Finds the alkalinity to a fixed end point.
   *
   * @param endPoint such as 4.5 (routine), 4.3 (DIN 38409-7) or 8.3 (phenolphthalein)
   * @return the alkalinity
   * @throws IllegalStateException if the readings do not reach the end point
   */
  public AlkalinityResult to(PH endPoint) {
    TitrationCurve there = log.endingAt(endPoint);
    return AlkalinityResult.ofLogs(there.titration(), List.of(there));
  }

  /**
   * Finds the alkalinity to the inflection, where the curve is steepest between pH 3.5 and 5.5: the
   * top of the parabola through the steepest slope and its neighbours. In a soft water it lies some
   * tenths of a per cent before the equivalence point. A step that straddles one of the two pH
   * values counts. Where readings are so dense that their slopes are mostly noise, they are
   * averaged over the stretch of volume that determines the place best.
   *
   * @return the alkalinity, its end point the pH read there; half a step between readings, or the
   *     stretch in which slopes are not told apart, is the half width of what the place is known to
   * @throws IllegalStateException if the readings do not hold the inflection, or noise leaves it
   *     open by more than 3 % of the volume
   */
  public AlkalinityResult toInflection() {
    InflectionSearch.Found top =
        InflectionSearch.find(
            log.ascendingMillilitres(),
            log.ascendingPH(),
            LOWEST_INFLECTION,
            HIGHEST_INFLECTION,
            log.titration().apparatus().endPointReading());
    double volume = top.millilitres();
    double u = top.halfWidth() / Math.sqrt(3);
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < top.middle().length; i++) {
      lines.add(
          String.format(Locale.ROOT, "%.5g mL: %.4g pH per mL", top.middle()[i], top.slope()[i]));
    }
    return at(
        Step.of("titre", TitrationFigures.MILLILITRES, Step.Kind.FORMULA)
            .text(
                "where the curve is steepest: top of the parabola through three slopes"
                    + (top.averagedOver() > 0
                        ? ", readings averaged over "
                            + NumberText.significant(top.averagedOver(), 2)
                            + " mL"
                        : ""),
                "half a step between readings, or where slopes are not told apart by their noise,"
                    + " is the half width of what the place is known to")
            .detail(() -> new Step.Detail(lines, top.residual(), ROUNDING))
            .found(Traced.of(Source.of("place of the inflection", volume, u, "mL"))));
  }

  /**
   * Finds the alkalinity by Gran's function, from the readings between pH 3.7 and 2.7.
   *
   * @return the alkalinity, its end point the pH read at the equivalence volume
   * @throws IllegalStateException if fewer than three readings lie there
   */
  public AlkalinityResult byGran() {
    return byGran(PH.of(GRAN_FROM), PH.of(GRAN_TO));
  }

  /**
   * Finds the alkalinity by Gran's function: past the end point, (V0 + V) 10^-pH grows in
   * proportion to the acid in excess, and its straight line meets the axis at the equivalence
   * volume (Gran, Analyst 77 (1952) 661, from memory). The ionic strength that grows with the acid
   * bends the line, and it meets the axis some hundredths of 1 mEq/L too early: what the kernel
   * finds of that in waters of the same alkalinity, with their carbon dioxide and without, counts
   * in the uncertainty and corrects nothing. The log may start past the equivalence point.
   *
   * @param from the highest pH of the readings to use
   * @param to the lowest pH of the readings to use
   * @return the alkalinity, its end point the pH read at the equivalence volume, or where the log
   *     does not hold it the one that fits; its uncertainty from the scatter around the line and
   *     its bias
   * @throws IllegalStateException if fewer than three readings lie there, or the line meets the
   *     axis at no volume above 0
   */
  public AlkalinityResult byGran(PH from, PH to) {
    SimpleRegression line = new SimpleRegression();
    double volumes = 0;
    List<Double> used = new ArrayList<>();
    List<double[]> points = new ArrayList<>();
    double initial = log.titration().initialVolume().inMillilitres();
    for (Reading reading : log.readings()) {
      double pH = reading.pH().value();
      if (pH <= from.value() && pH >= to.value()) {
        double volume = reading.volume().inMillilitres();
        double acid = (initial + volume) * Math.pow(10, -pH);
        volumes += volume;
        used.add(volume);
        points.add(new double[] {volume, acid});
        line.addData(volume, acid);
      }
    }
    if (line.getN() < 3) {
      throw new IllegalStateException(
          String.format(
              Locale.ROOT,
              "readings: %d between %s and %s are not enough; Gran's function needs three",
              line.getN(),
              to,
              from));
    }
    double volume = -line.getIntercept() / line.getSlope();
    if (!(volume > 0)) {
      throw new IllegalStateException(
          "readings: Gran's line meets the axis at "
              + NumberText.significant(volume, 3)
              + " mL, so that there is no alkalinity, or they do not lie on a line");
    }
    double mean = volumes / line.getN();
    double u =
        Math.sqrt(
                line.getMeanSquareError()
                    * (1.0 / line.getN()
                        + (volume - mean) * (volume - mean) / line.getXSumSquares()))
            / Math.abs(line.getSlope());
    return at(
        Step.of("titre", TitrationFigures.MILLILITRES, Step.Kind.FIT)
            .text(
                "where Gran's line of " + line.getN() + " readings meets the axis",
                "Gran, Analyst 77 (1952) 661, from memory")
            .detail(() -> moved(points, line.getIntercept(), line.getSlope()))
            .found(
                Traced.of(Source.of("scatter around Gran's line", volume, u, "mL"))
                    .plus(Traced.of(bias(volume, used)))));
  }

  /** By how much Gran's line over the same volumes misses in waters of that alkalinity. */
  private Source bias(double volume, List<Double> used) {
    double initial = log.titration().initialVolume().inMillilitres();
    double[] millilitres = used.stream().mapToDouble(Double::doubleValue).toArray();
    double miss =
        ModelWaters.of(log, volume)
            .greatestMiss(
                titration -> {
                  double[] pH = titration.pHAfter(millilitres);
                  SimpleRegression line = new SimpleRegression();
                  for (int i = 0; i < pH.length; i++) {
                    line.addData(millilitres[i], (initial + millilitres[i]) * Math.pow(10, -pH[i]));
                  }
                  return -line.getIntercept() / line.getSlope();
                });
    return Source.of("bias of Gran's line in model waters", 0, miss / Math.sqrt(3), "mL");
  }

  /** How far one more solution of the normal equations moves the volume, mL. */
  private static Step.Detail moved(List<double[]> points, double intercept, double slope) {
    SimpleRegression left = new SimpleRegression();
    points.forEach(p -> left.addData(p[0], p[1] - intercept - slope * p[0]));
    double again = -(intercept + left.getIntercept()) / (slope + left.getSlope());
    List<String> lines = new ArrayList<>();
    points.forEach(
        p -> lines.add(String.format(Locale.ROOT, "%.5g mL: %.5g mL mol/L", p[0], p[1])));
    return new Step.Detail(lines, again + intercept / slope, ROUNDING);
  }

  /** The pH read there names the end point; where none was read, the one that fits. */
  private AlkalinityResult at(Step titre) {
    Volume volume = Volume.ofMillilitres(titre.found().orElseThrow().value());
    PH there = log.holds(volume) ? log.pHAt(volume) : endPointFor(alkalinity(volume));
    return AlkalinityResult.of(
        log.titration(), List.of(log), new FoundEndPoint(titre, rounded(there)));
  }

  private TitrationAlkalinity alkalinity(Volume volume) {
    TitrationSetup setup = log.titration();
    double net = volume.inMillilitres() - setup.blank().inMillilitres();
    return TitrationAlkalinity.ofMilliequivalentsPerLitre(
        ClosedForms.titratedMilliequivalentsPerLitre(
            setup.titrant().equivalentsPerLitre().value(),
            net,
            setup.predilution(),
            setup.sample().inMillilitres()),
        setup.endPoint());
  }

  /** An end point to two decimals, as it is read. */
  private static PH rounded(PH pH) {
    return PH.of(Math.round(100 * pH.value()) / 100.0);
  }

  /**
   * Splits the alkalinity by its end points 8.3 and 4.5.
   *
   * @return hydroxide, carbonate and bicarbonate
   * @throws IllegalStateException if the readings do not reach pH 4.5
   */
  public AlkalinitySplit split() {
    PH phenolphthalein = PH.of(8.3);
    Answer<TitrationAlkalinity> total = to(TitrationAlkalinity.USUAL_END_POINT).answer();
    if (!log.startsBeyond(phenolphthalein)) {
      return AlkalinitySplit.of(to(phenolphthalein).answer(), total);
    }
    Figure<TitrationAlkalinity> p = Figures.titrationAlkalinity(phenolphthalein);
    Step none =
        Step.of(p.title(), p.scale(), Step.Kind.STATED)
            .origin(Origin.MEASURED)
            .text("the first reading is below " + phenolphthalein + " already", "")
            .found(Traced.exact(0));
    return AlkalinitySplit.of(Answer.of(p, none), total);
  }

  /** Prints how many readings there are. */
  @Override
  public String toString() {
    return NumberText.plain(log.readings().size()) + " readings of " + log.titration();
  }
}
