package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mV;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** The straight line through bought buffers, by its textbook formulas. */
class CalibrationLineTest {

  private static final double[] BUFFERS = {4, 7, 9};
  private static final double[] MILLIVOLTS = {172, 1, -116};

  private static ElectrodeCalibration calibration(double[] buffers, double... millivolts) {
    CalibrationReading[] readings = new CalibrationReading[buffers.length];
    for (int i = 0; i < readings.length; i++) {
      readings[i] = CalibrationReading.of(pH(buffers[i]), mV(millivolts[i]));
    }
    return ElectrodeCalibration.of(celsius(25), readings);
  }

  private static ElectrodeCalibration three() {
    return calibration(BUFFERS, MILLIVOLTS);
  }

  private static double nernst() {
    return 1000 * 8.314462618 * 298.15 * Math.log(10) / 96485.33212;
  }

  /** By hand: x of -3, 0 and 2 have the mean -1/3 and squares of 13 - 1/3 around it. */
  @Test
  void slopeAndOffsetMoveWithEachPotentialByTheFormulasOfTheLine() {
    double squares = 13 - 1.0 / 3;
    double[] x = {-3, 0, 2};
    double slope = 0;
    for (int i = 0; i < 3; i++) {
      slope += (x[i] + 1.0 / 3) * MILLIVOLTS[i] / squares;
    }
    double offset = (172 + 1 - 116) / 3.0 + slope / 3;
    Traced ofSlope = three().slope().step().found().orElseThrow();
    Traced ofOffset = three().offset().step().found().orElseThrow();
    assertEquals(-slope / nernst(), ofSlope.value(), 1e-9);
    assertEquals(offset, ofOffset.value(), 1e-9);
    for (int i = 0; i < 3; i++) {
      double perSlope = (x[i] + 1.0 / 3) / squares;
      assertEquals(-perSlope / nernst(), sensitivity(ofSlope, i + 1), 1e-9);
      assertEquals(1.0 / 3 + perSlope / 3, sensitivity(ofOffset, i + 1), 1e-9);
    }
    assertEquals(3, ofSlope.sources().size());
  }

  private static double sensitivity(Traced traced, int buffer) {
    return traced.sources().stream()
        .filter(source -> source.name().equals("potential in buffer " + buffer))
        .mapToDouble(traced::sensitivity)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void theErrorOfEachBufferHasItsShareInAPHThatIsRead() {
    double squares = 13 - 1.0 / 3;
    for (double read : new double[] {3, 5.5, 8.2, 11}) {
      double[] shares = three().shares(pH(read));
      for (int i = 0; i < 3; i++) {
        double off = BUFFERS[i] - 20.0 / 3;
        assertEquals(1.0 / 3 + (read - 20.0 / 3) * off / squares, shares[i], 1e-12);
      }
    }
  }

  @Test
  void theStepsShowPotentialsAndWhatTheLineLeaves() {
    Step step = three().slope().step();
    assertEquals(
        List.of("potential in buffer 1", "potential in buffer 2", "potential in buffer 3"),
        step.inputs().stream().map(Step::quantity).toList());
    assertEquals("pH 4, 172 mV, pH 4", step.inputs().get(0).text());
    Step.Detail detail = step.detail().orElseThrow();
    assertTrue(detail.holds());
    assertEquals(3, detail.lines().size());
    double slope = -three().slopePotential().inMillivolts();
    double off = 172 - three().offset().number() + 3 * slope;
    assertEquals(
        String.format(Locale.ROOT, "pH 4, 172 mV: %.2f mV off the line", off),
        detail.lines().get(0));
    double[] deviations = three().deviations();
    assertEquals(off / slope, deviations[0], 1e-9);
    assertEquals(3, deviations.length);
  }

  @Test
  void aCalibrationPrintsItsVerdict() {
    assertTrue(
        three()
            .toString()
            .matches(
                "slope 9[0-9.]+ % of Nernst \\(5[0-9.]+ mV per pH at 25 °C\\),"
                    + " offset -?[0-9.]+ mV: fit for use"),
        three().toString());
    String worn = calibration(BUFFERS, 140, 0, -90).toString();
    assertTrue(worn.contains(" mV: not fit for use: [slope "), worn);
    assertEquals(
        List.of("does not apply to a calibration"),
        Answer.of(TitrationFigures.EQUIVALENCE_VOLUME, three()).whyUnknown());
    assertEquals(celsius(25), three().bath());
  }

  @Test
  void buffersOnePHApartAreEnough() {
    assertEquals(1, calibration(new double[] {6, 7}, 59.16, 0).slope().value(), 1e-3);
    String close =
        assertThrows(
                IllegalArgumentException.class, () -> calibration(new double[] {6.01, 7}, 59, 0))
            .getMessage();
    assertEquals(
        "buffers: pH 6.010 to 7.000 is not possible; a calibration needs 1 or more between", close);
  }

  @Test
  void potentialsThatDoNotFallAreRefused() {
    for (double second : new double[] {10, 11}) {
      String said =
          assertThrows(
                  IllegalArgumentException.class,
                  () -> calibration(new double[] {4, 7}, 10, second))
              .getMessage();
      assertTrue(
          said.endsWith(
              "rise with pH, which no glass electrode does; are two of them" + " exchanged?"),
          said);
    }
  }

  /** By hand: 59 mV a pH from 207 to 30 mV at pH 7. */
  @Test
  void anOffsetOfThirtyMillivoltsIsStillUsual() {
    assertEquals(
        List.of(TitrationCode.CALIBRATION_UNCHECKED), codes(calibration(at(4, 7), 207, 30)));
    assertEquals(
        List.of(TitrationCode.CALIBRATION_UNCHECKED), codes(calibration(at(4, 7), 147, -30)));
    assertEquals(
        List.of(TitrationCode.ELECTRODE_OFFSET, TitrationCode.CALIBRATION_UNCHECKED),
        codes(calibration(at(4, 7), 146, -31)));
  }

  private static double[] at(double... values) {
    return values;
  }

  private static List<TitrationCode> codes(ElectrodeCalibration calibration) {
    return calibration.notices().stream().map(notice -> (TitrationCode) notice.code()).toList();
  }

  @Test
  void aBufferOffTheLineIsNamedByItsRow() {
    // The line passes 2 mV: 4 mV below the second, 2 above either other.
    List<Notice> notices = calibration(at(4, 7, 10), 177.5, 6, -177.5).notices();
    assertEquals(1, notices.size(), notices.toString());
    assertEquals(
        "row 2: pH 7, 6 mV reads -0.07 pH off the line through all buffers, more than 0.05 (common"
            + " practice)",
        notices.get(0).toString());
  }

  private static final double[] VOLUMES = new double[20];
  private static final double[] READ = new double[20];

  static {
    for (int i = 0; i < 20; i++) {
      VOLUMES[i] = 0.5 * i;
      READ[i] = 4.2 + 0.2 * i + 0.002 * i * i;
    }
  }

  private static TitrationLog log(double blank) {
    return Titrant.sodiumHydroxide()
        .of(molPerL(0.1), molPerL(0.0002))
        .titrate(mL(50))
        .blank(mL(blank))
        .log(VOLUMES, READ);
  }

  private static Traced acidity(BufferReadings readings) {
    return MeasuredBuffer.from(readings).acidityTo(pH(8)).in(Scales.acidity(pH(8))).traced();
  }

  @Test
  void theErrorsOfACalibrationGoWithTheReadingsOfALog() {
    List<Source> errors = three().errors(0.01);
    BufferReadings byHand = log(0).bufferReadings();
    for (int buffer = 0; buffer < 3; buffer++) {
      double[] column = new double[20];
      for (int i = 0; i < 20; i++) {
        column[i] = 1.0 / 3 + (READ[i] - 20.0 / 3) * (BUFFERS[buffer] - 20.0 / 3) / (13 - 1.0 / 3);
      }
      byHand = byHand.withErrorOfPH(errors.get(buffer), column);
    }
    Traced expected = acidity(byHand);
    Traced found = acidity(log(0).bufferReadings(three(), errors));
    assertEquals(expected.value(), found.value(), 1e-9);
    for (Source error : errors) {
      assertEquals(expected.sensitivity(error), found.sensitivity(error), 1e-6, error.name());
      assertTrue(Math.abs(found.sensitivity(error)) > 1e-3, error.name());
    }
    String message =
        assertThrows(
                IllegalArgumentException.class,
                () -> log(0).bufferReadings(three(), errors.subList(0, 2)))
            .getMessage();
    assertEquals(
        "buffers: 2 sources are not possible; one to each of 3 buffers is needed", message);
  }

  private static double u(Traced traced, String name) {
    return traced.sources().stream()
        .filter(source -> source.name().equals(name))
        .mapToDouble(source -> source.standardUncertainty().orElseThrow())
        .findFirst()
        .orElse(-1);
  }

  /** Half widths of triangles: 0.05 mL of the sample, 0.03 mL of the burette. */
  @Test
  void whatAllReadingsOfALogShareAreSourcesOfItsBuffer() {
    Traced plain = acidity(log(0).bufferReadings());
    assertEquals(0.0002, u(plain, "concentration of NaOH"), 1e-12);
    assertEquals(0.05 / Math.sqrt(6), u(plain, "sample"), 1e-12);
    assertEquals(0.03 / Math.sqrt(6), u(plain, "burette at its last volume"), 1e-12);
    assertEquals(-1, u(plain, "blank"), "none was stated");
    Traced blank = acidity(log(0.2).bufferReadings());
    assertEquals(0.03 / Math.sqrt(6), u(blank, "blank"), 1e-12);
    // To nearly its end point the blank takes 0.2 of 50 mL of 0.1 mol/L, 0.4 mEq/L.
    assertEquals(-0.4, blank.value() - plain.value(), 0.02);
    List<String> names = new ArrayList<>();
    blank.sources().forEach(source -> names.add(source.name()));
    assertTrue(
        names.stream().noneMatch(name -> name.contains("relative to the stated one")),
        names.toString());
  }
}
