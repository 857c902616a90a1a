package org.brewchem.titration;

import java.util.Locale;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.TemperatureDifference;
import org.brewchem.quantity.Volume;
import org.brewchem.uncertainty.Input;

/**
 * The tolerances of what a titration is done with: burette, pipette, balance, pH meter, and the
 * repeatability of the method. They are what an uncertainty budget is made of. Immutable.
 *
 * <p>{@link #usual()} is a starting point; a laboratory puts its own certificates in.
 */
public final class Apparatus {

  /**
   * Volume expansion of water at 20 °C per kelvin, as EURACHEM/CITAC Guide CG 4 uses it in example
   * A2 (from memory).
   */
  static final double EXPANSION_PER_KELVIN = 2.1e-4;

  private static final Apparatus USUAL =
      new Apparatus(0.03, OptionalDouble.empty(), 0.15, 0.02, 3, OptionalDouble.empty());

  /** Nominal volume and limit of error, mL, of one-mark pipettes of class A. */
  private static final double[][] CLASS_A_PIPETTES = {
    {1, 0.008}, {2, 0.01}, {5, 0.015}, {10, 0.02}, {20, 0.03}, {25, 0.03}, {50, 0.05}, {100, 0.08}
  };

  private final double buretteMillilitres;
  private final OptionalDouble pipetteMillilitres;
  private final double balanceMilligrams;
  private final double endPointReading;
  private final double temperatureKelvin;
  private final OptionalDouble relativeRepeatability;

  private Apparatus(
      double buretteMillilitres,
      OptionalDouble pipetteMillilitres,
      double balanceMilligrams,
      double endPointReading,
      double temperatureKelvin,
      OptionalDouble relativeRepeatability) {
    this.buretteMillilitres = buretteMillilitres;
    this.pipetteMillilitres = pipetteMillilitres;
    this.balanceMilligrams = balanceMilligrams;
    this.endPointReading = endPointReading;
    this.temperatureKelvin = temperatureKelvin;
    this.relativeRepeatability = relativeRepeatability;
  }

  /**
   * Returns usual tolerances: a burette of 0.03 mL and a balance of 0.15 mg (example A2 of
   * EURACHEM/CITAC Guide CG 4, from memory), a pipette of class A (ISO 648, from memory), a pH read
   * with a standard uncertainty of 0.02 and a laboratory within 3 °C of 20 °C (common practice, no
   * source). The repeatability is not known.
   *
   * @return the tolerances
   */
  public static Apparatus usual() {
    return USUAL;
  }

  /**
   * Returns the same with another burette.
   *
   * @param tolerance the limit of error of a delivered volume, the half width of a triangular
   *     distribution
   * @return the apparatus with that burette
   */
  public Apparatus withBuretteTolerance(Volume tolerance) {
    return new Apparatus(
        tolerance.inMillilitres(),
        pipetteMillilitres,
        balanceMilligrams,
        endPointReading,
        temperatureKelvin,
        relativeRepeatability);
  }

  /**
   * Returns the same with another pipette for the sample.
   *
   * @param tolerance the limit of error of the sample volume, the half width of a triangular
   *     distribution
   * @return the apparatus with that pipette
   */
  public Apparatus withPipetteTolerance(Volume tolerance) {
    return new Apparatus(
        buretteMillilitres,
        OptionalDouble.of(tolerance.inMillilitres()),
        balanceMilligrams,
        endPointReading,
        temperatureKelvin,
        relativeRepeatability);
  }

  /**
   * Returns the same with another balance.
   *
   * @param tolerance the limit of error of one reading, the half width of a uniform distribution; a
   *     weighing by difference takes two readings
   * @return the apparatus with that balance
   */
  public Apparatus withBalanceTolerance(Mass tolerance) {
    return new Apparatus(
        buretteMillilitres,
        pipetteMillilitres,
        tolerance.inMilligrams(),
        endPointReading,
        temperatureKelvin,
        relativeRepeatability);
  }

  /**
   * Returns the same with another standard uncertainty of a pH reading: meter, electrode and
   * calibration together.
   *
   * @param standardUncertainty the standard uncertainty in pH, 0 or more
   * @return the apparatus with that meter
   * @throws IllegalArgumentException if it is negative or not finite
   */
  public Apparatus withEndPointReading(double standardUncertainty) {
    return new Apparatus(
        buretteMillilitres,
        pipetteMillilitres,
        balanceMilligrams,
        Checks.nonNegative("standard uncertainty of the reading", standardUncertainty, "pH"),
        temperatureKelvin,
        relativeRepeatability);
  }

  /**
   * Returns the same in a laboratory of another spread of temperature.
   *
   * @param spread how far the temperature may lie from the 20 °C that the glassware is made for,
   *     the half width of a uniform distribution; its size counts, not its sign
   * @return the apparatus at that spread
   */
  public Apparatus withTemperatureSpread(TemperatureDifference spread) {
    return new Apparatus(
        buretteMillilitres,
        pipetteMillilitres,
        balanceMilligrams,
        endPointReading,
        Math.abs(spread.inKelvin()),
        relativeRepeatability);
  }

  /**
   * Returns the same with the repeatability of the method, as many earlier determinations showed
   * it. It then takes the place of the scatter of the few replicates at hand.
   *
   * @param relativeStandardDeviation of one determination, a fraction above 0
   * @return the apparatus with that repeatability
   * @throws IllegalArgumentException if it is not above 0
   */
  public Apparatus withRepeatability(double relativeStandardDeviation) {
    return new Apparatus(
        buretteMillilitres,
        pipetteMillilitres,
        balanceMilligrams,
        endPointReading,
        temperatureKelvin,
        OptionalDouble.of(
            Checks.positive("relative repeatability", relativeStandardDeviation, "")));
  }

  /**
   * Returns the limit of error of a burette.
   *
   * @return the half width of a triangular distribution
   */
  public Volume buretteTolerance() {
    return Volume.ofMillilitres(buretteMillilitres);
  }

  /**
   * Returns the limit of error of a sample volume: the stated one, or else that of the smallest
   * one-mark pipette of class A (ISO 648, from memory) that holds the volume, and 0.1 % above 100
   * mL (common practice, no source).
   *
   * @param sample the volume
   * @return the half width of a triangular distribution
   */
  public Volume pipetteTolerance(Volume sample) {
    if (pipetteMillilitres.isPresent()) {
      return Volume.ofMillilitres(pipetteMillilitres.getAsDouble());
    }
    for (double[] pipette : CLASS_A_PIPETTES) {
      if (sample.inMillilitres() <= pipette[0]) {
        return Volume.ofMillilitres(pipette[1]);
      }
    }
    return sample.times(0.001);
  }

  /**
   * Returns the limit of error of one reading of the balance.
   *
   * @return the half width of a uniform distribution
   */
  public Mass balanceTolerance() {
    return Mass.ofMilligrams(balanceMilligrams);
  }

  /**
   * Returns the standard uncertainty of a pH reading.
   *
   * @return the standard uncertainty in pH
   */
  public double endPointReading() {
    return endPointReading;
  }

  /**
   * Returns how far the temperature may lie from 20 °C.
   *
   * @return the half width of a uniform distribution
   */
  public TemperatureDifference temperatureSpread() {
    return TemperatureDifference.ofKelvin(temperatureKelvin);
  }

  /**
   * Returns the repeatability of the method.
   *
   * @return the relative standard deviation of one determination; empty when it is not known
   */
  public OptionalDouble relativeRepeatability() {
    return relativeRepeatability;
  }

  Input temperatureInput() {
    return Input.uniform("temperature off 20 °C", 0, temperatureKelvin, "K");
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "burette %.4g mL, pipette %s, balance %.4g mg, pH reading u %.4g, temperature %.4g K,"
            + " repeatability %s",
        buretteMillilitres,
        pipetteMillilitres.isPresent()
            ? String.format(Locale.ROOT, "%.4g mL", pipetteMillilitres.getAsDouble())
            : "of class A",
        balanceMilligrams,
        endPointReading,
        temperatureKelvin,
        relativeRepeatability.isPresent()
            ? String.format(Locale.ROOT, "%.2g %%", 100 * relativeRepeatability.getAsDouble())
            : "not known");
  }
}
