package org.brewchem.buffer;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * What a fit is told: the readings, and what leaves no trace in them as far as it was stated.
 *
 * @param readings one or more portions
 * @param noise standard uncertainty of a single reading of pH; empty when assumed
 * @param zero standard uncertainty of the electrode's zero in pH; empty when assumed
 * @param slope relative standard uncertainty of the electrode's slope; empty when assumed
 * @param metals calcium and magnesium; empty when assumed
 * @param salt background salt, mol per kg of water; empty when assumed
 * @param carbonDioxide left in the sample, mol per kg of water; empty when assumed
 */
record FitInputs(
    List<BufferReadings> readings,
    OptionalDouble noise,
    OptionalDouble zero,
    OptionalDouble slope,
    Optional<Metals> metals,
    Optional<Traced> salt,
    Optional<Traced> carbonDioxide) {

  static final FitInputs NOTHING =
      new FitInputs(
          List.of(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  FitInputs with(List<BufferReadings> other) {
    return new FitInputs(other, noise, zero, slope, metals, salt, carbonDioxide);
  }

  FitInputs withNoise(double pH) {
    return new FitInputs(readings, OptionalDouble.of(pH), zero, slope, metals, salt, carbonDioxide);
  }

  FitInputs withZero(double pH) {
    return new FitInputs(
        readings, noise, OptionalDouble.of(pH), slope, metals, salt, carbonDioxide);
  }

  FitInputs withSlope(double relative) {
    return new FitInputs(
        readings, noise, zero, OptionalDouble.of(relative), metals, salt, carbonDioxide);
  }

  FitInputs with(Metals other) {
    return new FitInputs(readings, noise, zero, slope, Optional.of(other), salt, carbonDioxide);
  }

  FitInputs withSalt(Traced molesPerKilogram) {
    return new FitInputs(
        readings, noise, zero, slope, metals, Optional.of(molesPerKilogram), carbonDioxide);
  }

  FitInputs withCarbonDioxide(Traced molesPerKilogram) {
    return new FitInputs(readings, noise, zero, slope, metals, salt, Optional.of(molesPerKilogram));
  }

  /** Standard uncertainty of a single reading of pH, stated or assumed. */
  double noisePH() {
    return noise.orElse(Usual.READING_OF_PH.standardUncertainty());
  }

  /** How well the noise of a reading is known, in degrees of freedom. */
  double noiseDegrees() {
    return (noise.isPresent() ? Usual.STATED_NOISE : Usual.ASSUMED_NOISE).value();
  }

  /** The errors of the electrode that all readings without errors of their own share. */
  Source zeroSource() {
    return Source.of(Usual.ZERO.toString(), 0, zero.orElse(Usual.ZERO.standardUncertainty()), "pH");
  }

  /** The same of its slope, relative. */
  Source slopeSource() {
    return Source.of(
        Usual.SLOPE.toString(), 0, slope.orElse(Usual.SLOPE.standardUncertainty()), "");
  }

  /** Whether a portion leaves the errors of the electrode to be stated or assumed here. */
  boolean electrodeCounts() {
    return readings.stream().anyMatch(leg -> leg.errorsOfPH().isEmpty());
  }
}
