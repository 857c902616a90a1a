package org.brewchem.quantity;

import java.util.Objects;
import org.brewchem.internal.Checks;

/**
 * The electrical conductivity of a water, held in µS/cm at 25 °C; 0 or more. A conductivity without
 * its reference temperature does not exist: reports state 25 or 20 °C.
 *
 * <p>At 25 °C a natural water conducts 1.116 times as well as at 20 °C (EN 27888, from memory).
 */
public final class Conductivity extends ScalarValue<Conductivity> {

  private static final String NAME = "conductivity";
  private static final String UNIT = "µS/cm";

  /** EN 27888, natural waters; from memory. */
  private static final double AT_25_OVER_20 = 1.116;

  private Conductivity(double atTwentyFive, double stated) {
    super(nonNegative(NAME, stated, UNIT, atTwentyFive));
  }

  /**
   * Returns a conductivity that is stated for 25 °C.
   *
   * @param microsiemensPerCentimetre the number in µS/cm, 0 or more
   * @return the conductivity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Conductivity ofMicrosiemensPerCentimetreAt25(double microsiemensPerCentimetre) {
    return new Conductivity(microsiemensPerCentimetre, microsiemensPerCentimetre);
  }

  /**
   * Returns a conductivity that is stated for 20 °C.
   *
   * @param microsiemensPerCentimetre the number in µS/cm, 0 or more
   * @return the conductivity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Conductivity ofMicrosiemensPerCentimetreAt20(double microsiemensPerCentimetre) {
    return new Conductivity(microsiemensPerCentimetre * AT_25_OVER_20, microsiemensPerCentimetre);
  }

  /**
   * Returns a conductivity stated for one of the two temperatures that reports use.
   *
   * @param microsiemensPerCentimetre the number in µS/cm, 0 or more
   * @param reference 20 or 25 °C
   * @return the conductivity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN, or the temperature
   *     another one
   */
  public static Conductivity of(double microsiemensPerCentimetre, Temperature reference) {
    double celsius = Objects.requireNonNull(reference, "reference").inCelsius();
    if (Math.abs(celsius - 25) < 1e-9) {
      return ofMicrosiemensPerCentimetreAt25(microsiemensPerCentimetre);
    }
    if (Math.abs(celsius - 20) < 1e-9) {
      return ofMicrosiemensPerCentimetreAt20(microsiemensPerCentimetre);
    }
    throw Checks.outOfRange(NAME + ", reference temperature", celsius, "°C", "20 or 25 °C");
  }

  /**
   * Returns the conductivity at 25 °C.
   *
   * @return µS/cm
   */
  public double inMicrosiemensPerCentimetreAt25() {
    return value;
  }

  /**
   * Returns the conductivity at 20 °C.
   *
   * @return µS/cm
   */
  public double inMicrosiemensPerCentimetreAt20() {
    return value / AT_25_OVER_20;
  }

  @Override
  public String toString() {
    return text(value, "µS/cm at 25 °C");
  }
}
