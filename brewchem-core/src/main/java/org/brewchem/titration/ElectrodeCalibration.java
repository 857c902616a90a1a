package org.brewchem.titration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Severity;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;
import org.brewchem.internal.PhysicalConstants;
import org.brewchem.quantity.ElectricPotential;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * The calibration of a pH electrode with two or more buffers in one bath: the straight line of
 * potential against pH, its slope as a fraction of Nernst's, its offset at pH 7, and a verdict.
 * Immutable.
 *
 * <p>The line is E = E7 - s N(T) (pH - 7), with N(T) = R T ln 10 / F, 59.16 mV at 25 °C, and s the
 * slope relative to it. To read a sample at another temperature T' the isopotential point, where
 * the potential does not depend on temperature, is taken to be pH 7, as is usual for glass
 * electrodes filled with a buffer of pH 7, and s to be the same. That is all that automatic
 * temperature compensation does: it corrects the slope of the electrode and nothing about the
 * sample, whose own pH changes with temperature.
 */
public final class ElectrodeCalibration implements Answering {

  /** C/mol, exact in the SI of 2019. */
  private static final double FARADAY_CONSTANT = 96485.33212;

  private static final double ISOPOTENTIAL_PH = 7;

  /** A limit of the verdict, like those below: common practice, no source. */
  private static final double LEAST_SLOPE = 0.95;

  /** Common practice, no source. */
  private static final double GREATEST_SLOPE = 1.02;

  private static final double GREATEST_OFFSET_MILLIVOLTS = 30;
  private static final double GREATEST_DEVIATION_PH = 0.05;
  private static final double LEAST_SPAN_PH = 1;

  private final Temperature bath;
  private final List<CalibrationReading> readings;
  private final double millivoltsAt7;
  private final double relativeSlope;
  private final List<Step> potentials;
  private final List<Notice> notices;

  private ElectrodeCalibration(Temperature bath, List<CalibrationReading> readings) {
    this.bath = bath;
    this.readings = readings;
    SimpleRegression line = new SimpleRegression();
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (CalibrationReading reading : readings) {
      double pH = reading.pH(bath).value();
      line.addData(pH - ISOPOTENTIAL_PH, reading.potential().inMillivolts());
      lowest = Math.min(lowest, pH);
      highest = Math.max(highest, pH);
    }
    if (highest - lowest < LEAST_SPAN_PH) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "buffers: pH %.3f to %.3f is not possible; a calibration needs %.0f or more between",
              lowest,
              highest,
              LEAST_SPAN_PH));
    }
    this.millivoltsAt7 = line.getIntercept();
    this.relativeSlope = -line.getSlope() / nernstMillivolts(bath);
    if (relativeSlope <= 0) {
      throw new IllegalArgumentException(
          "readings: "
              + Excerpt.of(readings.toString(), 300)
              + " rise with pH, which no glass electrode does; are two of them exchanged?");
    }
    this.potentials = potentials();
    this.notices = List.copyOf(examine());
  }

  /**
   * Calibrates an electrode.
   *
   * @param bath the temperature of the buffers
   * @param readings two or more readings, in buffers at least one pH apart
   * @return the calibration
   * @throws IllegalArgumentException if there are fewer than two readings, the buffers lie too
   *     close, the potential rises with pH, or a buffer is not certified at the temperature
   */
  public static ElectrodeCalibration of(Temperature bath, CalibrationReading... readings) {
    if (readings.length < 2) {
      throw Checks.outOfRange("readings", readings.length, "", "2 or more");
    }
    return new ElectrodeCalibration(bath, List.of(readings));
  }

  /**
   * Returns Nernst's slope of an ideal electrode, R T ln 10 / F, with the constants of the SI.
   *
   * @param temperature the temperature
   * @return the potential per unit of pH, 59.16 mV at 25 °C
   */
  public static ElectricPotential nernstSlope(Temperature temperature) {
    return ElectricPotential.ofMillivolts(nernstMillivolts(temperature));
  }

  private static double nernstMillivolts(Temperature temperature) {
    return 1000
        * PhysicalConstants.GAS_CONSTANT
        * temperature.inKelvin()
        * Math.log(10)
        / FARADAY_CONSTANT;
  }

  private List<Step> potentials() {
    List<Step> steps = new ArrayList<>();
    for (CalibrationReading reading : readings) {
      String name = "potential in buffer " + (steps.size() + 1);
      double millivolts = reading.potential().inMillivolts();
      steps.add(
          Step.of(name, TitrationFigures.ELECTRODE_OFFSET.scale(), Step.Kind.STATED)
              .origin(Origin.MEASURED)
              .text(reading + ", pH " + NumberText.plain(reading.pH(bath).value()), "")
              .found(Traced.stated(name, millivolts, OptionalDouble.empty(), "mV")));
    }
    return List.copyOf(steps);
  }

  private List<Notice> examine() {
    List<Notice> list = new ArrayList<>();
    if (relativeSlope < LEAST_SLOPE || relativeSlope > GREATEST_SLOPE) {
      list.add(
          Notice.of(
              TitrationCode.ELECTRODE_SLOPE,
              "slope",
              String.format(
                  Locale.ROOT,
                  "slope %.1f %% of Nernst, outside %.0f to %.0f %% (common practice): %s",
                  100 * relativeSlope,
                  100 * LEAST_SLOPE,
                  100 * GREATEST_SLOPE,
                  relativeSlope < LEAST_SLOPE
                      ? "an aged or dirty membrane, or a buffer that is not what its label says"
                      : "a buffer that is not what its label says")));
    }
    if (Math.abs(millivoltsAt7) > GREATEST_OFFSET_MILLIVOLTS) {
      list.add(
          Notice.of(
              TitrationCode.ELECTRODE_OFFSET,
              "offset",
              String.format(
                  Locale.ROOT,
                  "offset %.1f mV at pH 7, beyond %.0f mV (common practice): a spent reference"
                      + " electrolyte or a clogged junction",
                  millivoltsAt7,
                  GREATEST_OFFSET_MILLIVOLTS)));
    }
    if (readings.size() == 2) {
      list.add(
          Notice.of(
              TitrationCode.CALIBRATION_UNCHECKED,
              "buffers",
              "two buffers draw a line through any error; a third one checks it"));
    }
    double[] deviations = deviations();
    for (int i = 0; i < deviations.length; i++) {
      if (Math.abs(deviations[i]) > GREATEST_DEVIATION_PH) {
        list.add(
            Notice.ofRow(
                TitrationCode.CALIBRATION_NOT_LINEAR,
                "buffers",
                i + 1L,
                String.format(
                    Locale.ROOT,
                    "%s reads %+.2f pH off the line through all buffers, more than %.2f (common"
                        + " practice)",
                    readings.get(i),
                    deviations[i],
                    GREATEST_DEVIATION_PH)));
      }
    }
    return list;
  }

  /**
   * Returns how far each buffer reads off the line.
   *
   * @return pH by the line minus certified pH, in the order of the readings, in a new array; all
   *     zero for two buffers
   */
  public double[] deviations() {
    double[] deviations = new double[readings.size()];
    for (int i = 0; i < deviations.length; i++) {
      CalibrationReading reading = readings.get(i);
      deviations[i] = value(reading.potential(), bath) - reading.pH(bath).value();
    }
    return deviations;
  }

  /**
   * Returns the errors of the buffers as sources of uncertainty, one to each: what its label allows
   * and how well it was read, together. They give the line its zero and its slope with their
   * covariance.
   *
   * @param standardUncertainty of each buffer and its reading, in pH, above 0
   * @return the sources, in the order of the readings
   * @throws IllegalArgumentException if the uncertainty is not above 0
   */
  public List<Source> errors(double standardUncertainty) {
    double u = Checks.positive("uncertainty of a buffer", standardUncertainty, "pH");
    List<Source> errors = new ArrayList<>();
    for (CalibrationReading reading : readings) {
      errors.add(Source.of("electrode in a buffer of " + reading.pH(bath), 0, u, "pH"));
    }
    return List.copyOf(errors);
  }

  /** By how much a pH that is read moves with the error of each buffer. */
  double[] shares(PH pH) {
    double[] x = readings.stream().mapToDouble(r -> r.pH(bath).value()).toArray();
    double mean = Arrays.stream(x).average().orElseThrow();
    double squares = Arrays.stream(x).map(v -> (v - mean) * (v - mean)).sum();
    return Arrays.stream(x)
        .map(v -> 1.0 / x.length + (pH.value() - mean) * (v - mean) / squares)
        .toArray();
  }

  /**
   * Returns the pH of a sample.
   *
   * @param potential the reading of the electrode in the sample
   * @param sample the temperature of the sample
   * @return the pH that the sample has at its own temperature
   */
  public PH pH(ElectricPotential potential, Temperature sample) {
    Objects.requireNonNull(sample, "sample");
    return PH.of(value(potential, sample));
  }

  private double value(ElectricPotential potential, Temperature at) {
    return ISOPOTENTIAL_PH
        - (potential.inMillivolts() - millivoltsAt7) / (relativeSlope * nernstMillivolts(at));
  }

  /**
   * Returns what the electrode shows at a pH, the inverse of {@link #pH}.
   *
   * @param pH the pH of a sample
   * @param sample the temperature of the sample
   * @return the potential
   */
  public ElectricPotential potential(PH pH, Temperature sample) {
    Objects.requireNonNull(sample, "sample");
    return ElectricPotential.ofMillivolts(
        millivoltsAt7 - relativeSlope * nernstMillivolts(sample) * (pH.value() - ISOPOTENTIAL_PH));
  }

  /**
   * Tells whether a pH lies between the buffers.
   *
   * @param pH the pH
   * @return false where the line is extended
   */
  public boolean covers(PH pH) {
    double[] buffers = readings.stream().mapToDouble(r -> r.pH(bath).value()).sorted().toArray();
    return pH.value() >= buffers[0] && pH.value() <= buffers[buffers.length - 1];
  }

  /**
   * Returns the slope relative to Nernst's at the temperature of the bath.
   *
   * @return the slope as a fraction, 1 for an ideal electrode, shown in per cent; without an
   *     uncertainty, as that of the readings is not known
   */
  public Answer<Double> slope() {
    return Answer.of(TitrationFigures.ELECTRODE_SLOPE, this);
  }

  /**
   * Returns the slope as a potential.
   *
   * @return the fall of the potential per unit of pH at the temperature of the bath
   */
  public ElectricPotential slopePotential() {
    return ElectricPotential.ofMillivolts(relativeSlope * nernstMillivolts(bath));
  }

  /**
   * Returns the offset.
   *
   * @return the potential at pH 7, zero for an ideal electrode
   */
  public Answer<ElectricPotential> offset() {
    return Answer.of(TitrationFigures.ELECTRODE_OFFSET, this);
  }

  @Override
  public Step step(Figure<?> figure) {
    if (figure.equals(TitrationFigures.ELECTRODE_SLOPE)) {
      return fitted(figure, relativeSlope, -1 / nernstMillivolts(bath), 0);
    }
    return figure.equals(TitrationFigures.ELECTRODE_OFFSET)
        ? fitted(figure, millivoltsAt7, 0, 1)
        : figure.rule().find(figure, this);
  }

  /** A number of the line: so much of its slope in mV per pH and of its potential at pH 7. */
  private Step fitted(Figure<?> figure, double value, double ofSlope, double ofPotential) {
    int n = readings.size();
    double[] x = readings.stream().mapToDouble(r -> r.pH(bath).value() - ISOPOTENTIAL_PH).toArray();
    double mean = Arrays.stream(x).average().orElseThrow();
    double squares = Arrays.stream(x).map(v -> (v - mean) * (v - mean)).sum();
    Traced[] traced = potentials.stream().map(s -> s.found().orElseThrow()).toArray(Traced[]::new);
    double[] slopes = new double[n];
    for (int i = 0; i < n; i++) {
      double perSlope = (x[i] - mean) / squares;
      slopes[i] = ofSlope * perSlope + ofPotential * (1.0 / n - mean * perSlope);
    }
    return Step.of(figure.title(), figure.scale(), Step.Kind.FIT)
        .origin(Origin.MEASURED)
        .text(
            "least squares of potential against pH",
            "Nernst's slope R T ln 10 / F with the constants of the SI")
        .inputs(potentials)
        .notices(notices)
        .detail(() -> moved(x))
        .found(Traced.linear(value, traced, slopes));
  }

  /** What the readings leave of the line, and how far a second fit to that moves it, mV. */
  private Step.Detail moved(double[] x) {
    SimpleRegression left = new SimpleRegression();
    List<String> lines = new ArrayList<>();
    double slope = relativeSlope * nernstMillivolts(bath);
    for (int i = 0; i < x.length; i++) {
      double off = readings.get(i).potential().inMillivolts() - millivoltsAt7 + slope * x[i];
      left.addData(x[i], off);
      lines.add(String.format(Locale.ROOT, "%s: %.2f mV off the line", readings.get(i), off));
    }
    return new Step.Detail(
        lines, Math.max(Math.abs(left.getIntercept()), Math.abs(left.getSlope())), 1e-9);
  }

  @Override
  public String kind() {
    return "calibration";
  }

  /**
   * Returns the temperature of the bath.
   *
   * @return the temperature
   */
  public Temperature bath() {
    return bath;
  }

  /**
   * Returns the verdict: whether slope, offset and linearity are within what is common practice.
   *
   * @return true if no notice is more than a remark
   */
  public boolean isFitForUse() {
    return notices.stream().allMatch(notice -> notice.severity() == Severity.REMARK);
  }

  /**
   * Returns the reasons of the verdict.
   *
   * @return an unmodifiable list of what is notable
   */
  public List<Notice> notices() {
    return notices;
  }

  /** Prints slope, offset and verdict. */
  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "slope %s %% of Nernst (%s mV per pH at %s), offset %s mV: %s",
        NumberText.decimals(100 * relativeSlope, 1),
        NumberText.decimals(slopePotential().inMillivolts(), 2),
        bath,
        NumberText.decimals(millivoltsAt7, 1),
        isFitForUse() ? "fit for use" : "not fit for use: " + notices);
  }
}
