package org.brewchem.buffer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.brewchem.figure.Notice;
import org.brewchem.internal.BufferRegression;
import org.brewchem.uncertainty.Traced;

/**
 * Judges readings by the curve that was fitted to them. Each test asks how strongly the residuals
 * want an error that nobody stated, in standard deviations: a score test, in whose variance the fit
 * and everything that was stated or assumed count (textbook statistics; levels: our choice).
 */
final class Misfit {

  /** No more than this share of the readings is rejected one by one. */
  private static final double MOST_REJECTED = 0.15;

  private static final double LEAST_DEGREES = 3;

  /** Readings that end below say nothing of carbon dioxide. */
  private static final double REACHES_CARBON_DIOXIDE = 7;

  /**
   * Relative error of a titrant up to which one linear step finds it, within 0.07 for an invented
   * beer. At half the concentration it says 0.43, at a fifth less than nothing.
   */
  private static final double FIRST_ORDER = 0.5;

  private final GridFit grid;
  private final AllReadings all;
  private final int legs;

  Misfit(GridFit grid) {
    this.grid = grid;
    all = grid.readings();
    legs = grid.inputs().readings().size();
  }

  List<Notice> notices() {
    List<Notice> notices = new ArrayList<>();
    findImplausible(notices);
    findDirection(notices);
    if (!notices.isEmpty()) {
      return notices;
    }
    boolean[] rejected = new boolean[all.size()];
    AllReadings kept = all;
    BufferRegression fit = grid.judging(kept);
    BufferRegression whole = fit;
    List<Notice> single = new ArrayList<>();
    boolean isolated = true;
    for (int worst = worst(kept, fit); worst >= 0; worst = worst(kept, fit)) {
      if (single.size() + 1 > MOST_REJECTED * all.size()) {
        isolated = false;
        break;
      }
      mark(rejected, kept, worst);
      single.add(rejection(kept, fit, worst));
      kept = all.without(rejected);
      fit = grid.judging(kept);
    }
    single.sort((one, other) -> Long.compare(one.row().orElse(0), other.row().orElse(0)));
    notices.addAll(single);
    Judge judge = isolated ? new Judge(kept, fit) : new Judge(all, whole);
    judge.findNoise(notices);
    judge.findPattern(notices);
    if (legs > 1) {
      judge.findGap(notices);
      judge.findTitrant(notices);
    }
    findCarbonDioxide(notices);
    return notices;
  }

  private void findCarbonDioxide(List<Notice> notices) {
    double[] near = grid.nearCarbonDioxide();
    if (grid.highestPH() > REACHES_CARBON_DIOXIDE
        && near[0] > Usual.LIKELY_CARBON_DIOXIDE.value()
        && near[1] > Usual.LIKELY_SHARE.value()) {
      notices.add(
          Notice.of(
              BufferCode.CARBON_DIOXIDE_LIKELY,
              "readings",
              String.format(
                  Locale.ROOT,
                  "%.1f mmol/kg are bound about pK 6.4, more than a beer holds there: was the sample"
                      + " degassed? Its pH and its acidity count carbon dioxide that is left",
                  1000 * near[0])));
    }
  }

  private String name(int leg) {
    BufferReadings readings = grid.inputs().readings().get(leg);
    String direction = last(readings) < 0 ? "acid" : "alkali";
    return legs == 1 ? "readings" : "readings " + (leg + 1) + ", with " + direction;
  }

  private static double last(BufferReadings readings) {
    double furthest = 0;
    for (int i = 0; i < readings.size(); i++) {
      if (Math.abs(readings.base(i)) > Math.abs(furthest)) {
        furthest = readings.base(i);
      }
    }
    return furthest;
  }

  private void findImplausible(List<Notice> notices) {
    for (int i = 0; i < all.size(); i++) {
      if (all.pH[i] < Usual.LOWEST_PH.value() || all.pH[i] > Usual.HIGHEST_PH.value()) {
        notices.add(
            Notice.ofRow(
                BufferCode.READING_IMPLAUSIBLE,
                name(all.leg[i]),
                all.row[i] + 1L,
                String.format(
                    Locale.ROOT,
                    "pH %.2f, beyond %.0f to %.0f, is no reading of a beer's titration: are volume"
                        + " and pH exchanged?",
                    all.pH[i],
                    Usual.LOWEST_PH.value(),
                    Usual.HIGHEST_PH.value())));
        return;
      }
    }
  }

  private void findDirection(List<Notice> notices) {
    for (int leg = 0; leg < legs; leg++) {
      BufferReadings readings = grid.inputs().readings().get(leg);
      SimpleRegression line = new SimpleRegression();
      for (int i = 0; i < readings.size(); i++) {
        line.addData(readings.base(i), readings.pH(i));
      }
      if (line.getSlope() < 0) {
        boolean acid = last(readings) < 0;
        notices.add(
            Notice.of(
                BufferCode.RUNS_AGAINST_TITRANT,
                name(leg),
                "the pH "
                    + (acid ? "rises while acid" : "falls while alkali")
                    + " is added: the titrant is "
                    + (acid ? "an alkali" : "an acid")
                    + ", or a column is reversed"));
      }
    }
  }

  private static void mark(boolean[] rejected, AllReadings kept, int index) {
    int passed = -1;
    for (int i = 0; i < rejected.length; i++) {
      if (!rejected[i] && ++passed == index) {
        rejected[i] = true;
        return;
      }
    }
    throw new IllegalStateException("reading " + index + " of " + kept.size());
  }

  private Notice rejection(AllReadings kept, BufferRegression fit, int index) {
    return Notice.ofRow(
        BufferCode.READING_REJECTED,
        name(kept.leg[index]),
        kept.row[index] + 1L,
        String.format(
            Locale.ROOT,
            "pH %.3f lies %+.3f off the fitted curve, more than a scatter of %.3f explains",
            kept.pH[index],
            fit.residuals()[index],
            fit.noise()));
  }

  /** The reading furthest off, if the curve rejects it; else -1. */
  private int worst(AllReadings some, BufferRegression fit) {
    double degrees = fit.scatter()[1];
    if (degrees < LEAST_DEGREES) {
      return -1;
    }
    // What was stated or assumed of the noise counts beside the residuals, the reading itself not.
    double known = grid.inputs().noiseDegrees() + degrees;
    int n = some.size();
    double furthest =
        new TDistribution(null, known - 1)
            .inverseCumulativeProbability(1 - Usual.REJECTED.value() / (2 * n));
    int worst = -1;
    double[] standardized = fit.standardizedResiduals();
    for (int i = 0; i < n; i++) {
      double z = Math.abs(standardized[i]);
      double deleted = z * Math.sqrt((known - 1) / Math.max(known - z * z, 1e-3 * known));
      if (deleted > furthest) {
        furthest = deleted;
        worst = i;
      }
    }
    return worst;
  }

  /** Tests on readings of which single bad ones are left out. */
  private final class Judge {
    private final AllReadings some;
    private final BufferRegression fit;
    private final Map<Traced, double[]> untraced;

    Judge(AllReadings some, BufferRegression fit) {
      this.some = some;
      this.fit = fit;
      untraced = grid.untraced(some, fit);
    }

    /** An unknown error by its column: what the readings say it is, and in standard deviations. */
    private double[] asked(double[] column) {
      double information = fit.shared(column, column);
      double variance = information;
      for (Map.Entry<Traced, double[]> known : untraced.entrySet()) {
        double part = fit.shared(column, known.getValue()) * known.getKey().knownPart();
        variance += part * part;
      }
      double score = fit.asked(column);
      return new double[] {score / information, score / Math.sqrt(variance)};
    }

    void findNoise(List<Notice> notices) {
      double[] scatter = fit.scatter();
      if (scatter[1] < 1) {
        return;
      }
      double limit =
          new ChiSquaredDistribution(null, scatter[1])
                  .inverseCumulativeProbability(Usual.NOISE.value())
              / scatter[1];
      if (scatter[0] > limit) {
        notices.add(
            Notice.of(
                BufferCode.TOO_MUCH_NOISE,
                "readings",
                String.format(
                    Locale.ROOT,
                    "the readings scatter by %.3f pH around the fitted curve, %.1f times what was"
                        + " stated for them",
                    fit.noise(),
                    Math.sqrt(scatter[0]))));
      }
    }

    void findPattern(List<Notice> notices) {
      double sum = 0;
      double squares = 0;
      double[] residuals = fit.residuals();
      double[] slopes = fit.slopes();
      double[] scaled = new double[residuals.length];
      for (int i = 0; i < scaled.length; i++) {
        scaled[i] =
            residuals[i] / Math.hypot(fit.noise(), some.chargeNoise[i] / Math.abs(slopes[i]));
        squares += scaled[i] * scaled[i] / scaled.length;
      }
      int pairs = 0;
      for (int i = 1; i < scaled.length; i++) {
        if (some.leg[i] == some.leg[i - 1]) {
          sum += scaled[i] * scaled[i - 1];
          pairs++;
        }
      }
      if (pairs > 2 * LEAST_DEGREES && sum > Usual.PATTERN.value() * Math.sqrt(pairs) * squares) {
        notices.add(
            Notice.of(
                BufferCode.RESIDUALS_WITH_PATTERN,
                "readings",
                "readings that follow each other lie off the fitted curve to the same side: the"
                    + " electrode lagged or drifted, or a volume is wrong"));
      }
    }

    void findGap(List<Notice> notices) {
      double[] slopes = fit.slopes();
      for (int leg = 1; leg < legs; leg++) {
        double[] column = new double[some.size()];
        for (int i = 0; i < column.length; i++) {
          column[i] = some.leg[i] == leg ? slopes[i] : 0;
        }
        double[] gap = asked(column);
        if (Math.abs(gap[1]) > Usual.LEGS.value()) {
          notices.add(
              Notice.of(
                  BufferCode.LEGS_DO_NOT_MEET,
                  name(leg),
                  String.format(
                      Locale.ROOT,
                      "they lie %+.3f pH off those of the first portion: another liquid, or an"
                          + " electrode that moved in between",
                      gap[0])));
        }
      }
    }

    void findTitrant(List<Notice> notices) {
      double most = Usual.DOUBTFUL.value();
      int doubted = -1;
      OptionalDouble ratio = OptionalDouble.empty();
      for (int leg = 0; leg < legs; leg++) {
        double[] column = new double[some.size()];
        for (int i = 0; i < column.length; i++) {
          column[i] = some.leg[i] == leg ? some.base[i] : 0;
        }
        if (fit.shared(column, column) > 0) {
          double[] error = asked(column);
          if (Math.abs(error[1]) > most) {
            most = Math.abs(error[1]);
            doubted = leg;
            ratio = OptionalDouble.of(1 + error[0]);
          }
        }
      }
      if (doubted >= 0) {
        notices.add(
            Notice.of(
                BufferCode.TITRANT_DOUBTFUL,
                name(doubted),
                "they would fit the other portion with "
                    + times(ratio.getAsDouble())
                    + " the stated concentration of titrant over sample"));
      }
    }

    /** One step of the fit tells the way, and the size of a small error only. */
    private static String times(double ratio) {
      if (Math.abs(ratio - 1) > FIRST_ORDER) {
        return ratio < 1 ? "far less than" : "far more than";
      }
      return String.format(Locale.ROOT, "%.2f times", ratio);
    }
  }
}
