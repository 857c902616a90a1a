package org.brewchem.quantity;

/** An electric potential, such as the reading of a pH electrode, with its sign; held in mV. */
public final class ElectricPotential extends ScalarValue<ElectricPotential> {

  private static final String NAME = "electric potential";

  private ElectricPotential(double millivolts, double stated, String statedUnit) {
    super(finite(NAME, stated, statedUnit, millivolts));
  }

  /**
   * Returns an electric potential stated in millivolts.
   *
   * @param millivolts the electric potential in mV, finite
   * @return the electric potential
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ElectricPotential ofMillivolts(double millivolts) {
    return new ElectricPotential(millivolts, millivolts, "mV");
  }

  /**
   * Returns an electric potential stated in volts.
   *
   * @param volts the electric potential in V, finite
   * @return the electric potential
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ElectricPotential ofVolts(double volts) {
    return new ElectricPotential(volts * 1000, volts, "V");
  }

  /**
   * Returns the electric potential in millivolts.
   *
   * @return the electric potential in mV
   */
  public double inMillivolts() {
    return value;
  }

  /**
   * Returns the electric potential in volts.
   *
   * @return the electric potential in V
   */
  public double inVolts() {
    return value / 1000;
  }

  /**
   * Adds an electric potential.
   *
   * @param other the electric potential to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public ElectricPotential plus(ElectricPotential other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts an electric potential.
   *
   * @param other the electric potential to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is too large to be held
   */
  public ElectricPotential minus(ElectricPotential other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, finite
   * @return the product
   * @throws IllegalArgumentException if the product is infinite or NaN
   */
  public ElectricPotential times(double factor) {
    return fromBase(value * factor);
  }

  @Override
  public String toString() {
    return text(value, "mV");
  }

  private static ElectricPotential fromBase(double millivolts) {
    return new ElectricPotential(millivolts, millivolts, "mV");
  }
}
