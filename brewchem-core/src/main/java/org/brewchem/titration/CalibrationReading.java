package org.brewchem.titration;

import java.util.Objects;
import java.util.function.Function;
import org.brewchem.quantity.ElectricPotential;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.PrimaryBuffer;

/** A reading of an electrode in a buffer of known pH, to calibrate it by. Immutable. */
public final class CalibrationReading {

  private final String buffer;
  private final Function<Temperature, PH> pH;
  private final ElectricPotential potential;

  private CalibrationReading(
      String buffer, Function<Temperature, PH> pH, ElectricPotential potential) {
    this.buffer = buffer;
    this.pH = pH;
    this.potential = potential;
  }

  /**
   * A reading in a certified buffer, whose pH follows from the temperature of the bath.
   *
   * @param buffer the buffer
   * @param potential the reading of the electrode
   * @return the reading
   */
  public static CalibrationReading of(PrimaryBuffer buffer, ElectricPotential potential) {
    Objects.requireNonNull(potential, "potential");
    return new CalibrationReading(buffer.name(), buffer::pH, potential);
  }

  /**
   * A reading in a bought buffer.
   *
   * @param certified the pH that its label gives for the temperature of the bath
   * @param potential the reading of the electrode
   * @return the reading
   */
  public static CalibrationReading of(PH certified, ElectricPotential potential) {
    Objects.requireNonNull(potential, "potential");
    return new CalibrationReading(certified.toString(), bath -> certified, potential);
  }

  /**
   * Returns the pH of the buffer.
   *
   * @param bath the temperature of the bath
   * @return the pH at that temperature
   * @throws IllegalArgumentException if the buffer is not certified there
   */
  public PH pH(Temperature bath) {
    Objects.requireNonNull(bath, "bath");
    return pH.apply(bath);
  }

  /**
   * Returns the reading of the electrode.
   *
   * @return the potential
   */
  public ElectricPotential potential() {
    return potential;
  }

  /** Prints the buffer and the reading. */
  @Override
  public String toString() {
    return buffer + ", " + potential;
  }
}
