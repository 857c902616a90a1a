package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mV;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.PrimaryBuffer.CARBONATE;
import static org.brewchem.substance.PrimaryBuffer.PHOSPHATE;
import static org.brewchem.substance.PrimaryBuffer.PHTHALATE;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Base;
import org.brewchem.substance.PrimaryBuffer;
import org.brewchem.substance.Salt;
import org.brewchem.uncertainty.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ElectrodeCalibrationTest {

  /**
   * R T ln 10 / F: 59.16 mV at 25 °C, 58.17 at 20 °C, 54.20 at 0 °C (CRC Handbook, from memory).
   */
  @Test
  void nernstsSlope() {
    assertEquals(59.16, millivoltsPerPH(25), 0.005);
    assertEquals(58.17, millivoltsPerPH(20), 0.005);
    assertEquals(54.20, millivoltsPerPH(0), 0.005);
  }

  private static double millivoltsPerPH(double celsius) {
    return ElectrodeCalibration.nernstSlope(celsius(celsius)).inMillivolts();
  }

  private static CalibrationReading ideal(
      PrimaryBuffer buffer, Temperature bath, double s, double e7) {
    double slope = ElectrodeCalibration.nernstSlope(bath).inMillivolts();
    return CalibrationReading.of(buffer, mV(e7 - s * slope * (buffer.pH(bath).value() - 7)));
  }

  /** Slope and offset that made the readings are found again, at every bath temperature. */
  @ParameterizedTest
  @ValueSource(doubles = {5, 18.5, 20, 25, 37})
  void slopeAndOffsetAreFoundAgain(double bathCelsius) {
    Temperature bath = celsius(bathCelsius);
    ElectrodeCalibration calibration =
        ElectrodeCalibration.of(
            bath,
            ideal(PHTHALATE, bath, 0.982, -8),
            ideal(PHOSPHATE, bath, 0.982, -8),
            ideal(CARBONATE, bath, 0.982, -8));
    assertEquals(0.982, calibration.slope().value(), 1e-12);
    assertEquals(-8, calibration.offset().number(), 1e-10);
    assertArrayEquals(new double[3], calibration.deviations(), 1e-12);
    assertTrue(calibration.isFitForUse());
    assertEquals(List.of(), calibration.notices());
  }

  /** Each certified buffer reads its certified pH after a calibration in the two others. */
  @Test
  void aCertifiedBufferIsReadAsWhatItIs() {
    Temperature bath = celsius(25);
    ElectrodeCalibration calibration =
        ElectrodeCalibration.of(
            bath, ideal(PHTHALATE, bath, 0.99, 5), ideal(CARBONATE, bath, 0.99, 5));
    PH read = calibration.pH(ideal(PHOSPHATE, bath, 0.99, 5).potential(), bath);
    assertEquals(6.865, read.value(), 1e-12);
    assertEquals(
        List.of(TitrationCode.CALIBRATION_UNCHECKED),
        calibration.notices().stream().map(Notice::code).toList());
    assertTrue(calibration.isFitForUse());
  }

  /** Limits of 95 to 102 % and 30 mV: common practice, no source. */
  @Test
  void theVerdictHasItsReason() {
    Temperature bath = celsius(25);
    ElectrodeCalibration old =
        ElectrodeCalibration.of(
            bath, ideal(PHTHALATE, bath, 0.91, 41), ideal(PHOSPHATE, bath, 0.91, 41));
    assertFalse(old.isFitForUse());
    assertEquals(
        List.of(
            TitrationCode.ELECTRODE_SLOPE,
            TitrationCode.ELECTRODE_OFFSET,
            TitrationCode.CALIBRATION_UNCHECKED),
        old.notices().stream().map(Notice::code).toList());
    assertTrue(old.toString().startsWith("slope 91.0 % of Nernst"), old.toString());
  }

  @Test
  void aThirdBufferThatIsSpoiledIsSaid() {
    Temperature bath = celsius(25);
    ElectrodeCalibration calibration =
        ElectrodeCalibration.of(
            bath,
            ideal(PHTHALATE, bath, 0.99, 0),
            ideal(PHOSPHATE, bath, 0.99, 15),
            ideal(CARBONATE, bath, 0.99, 0));
    assertTrue(
        calibration.notices().stream()
            .anyMatch(f -> f.code() == TitrationCode.CALIBRATION_NOT_LINEAR));
    assertFalse(calibration.isFitForUse());
  }

  @Test
  void whatIsNoCalibrationIsRefused() {
    Temperature bath = celsius(25);
    CalibrationReading one = ideal(PHTHALATE, bath, 1, 0);
    assertThrows(IllegalArgumentException.class, () -> ElectrodeCalibration.of(bath, one));
    assertThrows(IllegalArgumentException.class, () -> ElectrodeCalibration.of(bath, one, one));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            ElectrodeCalibration.of(
                bath,
                CalibrationReading.of(pH(4.01), mV(0)),
                CalibrationReading.of(pH(7), mV(170))));
    assertThrows(
        IllegalArgumentException.class, () -> ElectrodeCalibration.of(celsius(60), one, one));
  }

  /**
   * What automatic temperature compensation does: the slope. Calibrated at 20 °C, a sample at 65 °C
   * is read at the pH that it has there; with the slope of 20 °C it would be 0.24 pH too low at pH
   * 5.4.
   */
  @Test
  void compensationCorrectsTheSlope() {
    Temperature bath = celsius(20);
    ElectrodeCalibration calibration =
        ElectrodeCalibration.of(bath, ideal(PHTHALATE, bath, 1, 0), ideal(PHOSPHATE, bath, 1, 0));
    var mash = calibration.potential(pH(5.4), celsius(65));
    assertEquals(5.4, calibration.pH(mash, celsius(65)).value(), 1e-12);
    double uncorrected = calibration.pH(mash, bath).value();
    assertEquals(5.4 - 1.6 * (338.15 / 293.15 - 1), uncorrected, 1e-9);
  }

  /**
   * What it does not do: the pH of a sample changes by itself. The certified phosphate buffer falls
   * from 6.923 at 10 °C to 6.838 at 40 °C, the carbonate buffer from 10.179 to 9.889, and the meter
   * shows just that; the kernel explains it from the constants alone, within 0.02.
   */
  @Test
  void compensationLeavesTheSampleAsItIs() {
    Solution phosphate =
        Solution.at(celsius(25))
            .with(Salt.POTASSIUM_DIHYDROGEN_PHOSPHATE, mmolPerL(25))
            .with(Salt.DISODIUM_HYDROGEN_PHOSPHATE, mmolPerL(25));
    Solution carbonate =
        Solution.at(celsius(25))
            .with(Base.SODIUM_BICARBONATE, mmolPerL(25))
            .with(Base.SODIUM_CARBONATE, mmolPerL(25));
    assertEquals(6.838 - 6.923, change(phosphate), 0.02);
    assertEquals(9.889 - 10.179, change(carbonate), 0.02);
    assertEquals(6.838 - 6.923, PHOSPHATE.pH(celsius(40)).minus(PHOSPHATE.pH(celsius(10))), 1e-12);
  }

  private static double change(Solution solution) {
    return solution.heldAt(celsius(40)).pH().minus(solution.heldAt(celsius(10)).pH());
  }

  private static ElectrodeCalibration three(double millivoltsMore, int at) {
    Temperature bath = celsius(25);
    CalibrationReading[] readings = {
      ideal(PHTHALATE, bath, 0.982, -8),
      ideal(PHOSPHATE, bath, 0.982, -8),
      ideal(CARBONATE, bath, 0.982, -8)
    };
    if (at >= 0) {
      PrimaryBuffer buffer = List.of(PHTHALATE, PHOSPHATE, CARBONATE).get(at);
      readings[at] =
          CalibrationReading.of(
              buffer, mV(readings[at].potential().inMillivolts() + millivoltsMore));
    }
    return ElectrodeCalibration.of(bath, readings);
  }

  /** Another way: each potential moved by what a hundredth of a pH is, and a pH read once more. */
  @Test
  void anErrorInABufferMovesAPHByItsShare() {
    ElectrodeCalibration calibration = three(0, -1);
    double millivolts = calibration.slopePotential().inMillivolts();
    assertEquals(0.982 * millivoltsPerPH(25), millivolts, 1e-9);
    for (double value : new double[] {3.5, 4.6, 7, 8.2, 10}) {
      double[] shares = calibration.shares(pH(value));
      double sum = 0;
      for (int i = 0; i < 3; i++) {
        double read =
            three(0.01 * millivolts, i)
                .pH(calibration.potential(pH(value), celsius(25)), celsius(25))
                .value();
        assertEquals((read - value) / 0.01, shares[i], 0.01, "pH " + value + ", buffer " + i);
        sum += shares[i];
      }
      assertEquals(1, sum, 1e-12);
    }
    List<Source> errors = calibration.errors(0.02);
    assertEquals(3, errors.size());
    assertEquals(0.02, errors.get(1).standardUncertainty().orElseThrow());
    assertTrue(
        errors.get(0).name().startsWith("electrode in a buffer of pH 4.0"), errors.get(0).name());
    assertThrows(IllegalArgumentException.class, () -> calibration.errors(0));
  }

  @Test
  void aCalibrationCoversWhatLiesBetweenItsBuffers() {
    ElectrodeCalibration calibration = three(0, -1);
    Temperature bath = celsius(25);
    double lowest = PHTHALATE.pH(bath).value();
    double highest = CARBONATE.pH(bath).value();
    assertTrue(calibration.covers(pH(lowest)));
    assertTrue(calibration.covers(pH(7)));
    assertTrue(calibration.covers(pH(highest)));
    assertFalse(calibration.covers(pH(lowest - 1e-6)));
    assertFalse(calibration.covers(pH(highest + 1e-6)));
  }

  /** Slopes of 94 and 110 %, an offset of 31 mV, and buffers that nothing checks. */
  @Test
  void slopesAndOffsetsBeyondWhatIsUsualAreSaid() {
    Temperature bath = celsius(25);
    List<String> said =
        ElectrodeCalibration.of(
                bath, ideal(PHTHALATE, bath, 0.94, 31), ideal(CARBONATE, bath, 0.94, 31))
            .notices()
            .stream()
            .map(Notice::text)
            .toList();
    assertEquals(3, said.size(), said.toString());
    assertTrue(said.get(0).startsWith("slope 94.0 % of Nernst, outside 95 to "), said.get(0));
    assertTrue(said.get(0).contains("an aged or dirty membrane"), said.get(0));
    assertTrue(said.get(1).startsWith("offset 31.0 mV at pH 7, beyond 30 mV"), said.get(1));
    assertTrue(said.get(2).startsWith("two buffers draw a line"), said.get(2));
    List<String> steep =
        ElectrodeCalibration.of(
                bath, ideal(PHTHALATE, bath, 1.1, 0), ideal(CARBONATE, bath, 1.1, 0))
            .notices()
            .stream()
            .map(Notice::text)
            .toList();
    assertTrue(steep.get(0).endsWith(": a buffer that is not what its label says"), steep.get(0));
    assertFalse(steep.get(0).contains("membrane"), steep.get(0));
  }
}
