package org.brewchem.quantity;

/**
 * A difference of two temperatures with its sign, held in K; a difference of 1 K is one of 1 °C.
 */
public final class TemperatureDifference extends ScalarValue<TemperatureDifference> {

  private static final String NAME = "temperature difference";

  private TemperatureDifference(double kelvin, double stated, String statedUnit) {
    super(finite(NAME, stated, statedUnit, kelvin));
  }

  /**
   * Returns a temperature difference stated in kelvins.
   *
   * @param kelvin the temperature difference in K, finite
   * @return the temperature difference
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TemperatureDifference ofKelvin(double kelvin) {
    return new TemperatureDifference(kelvin, kelvin, "K");
  }

  /**
   * Returns a temperature difference stated in degrees Celsius.
   *
   * @param degrees the temperature difference in °C, finite
   * @return the temperature difference
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TemperatureDifference ofCelsiusDegrees(double degrees) {
    return new TemperatureDifference(degrees, degrees, "°C");
  }

  /**
   * Returns a temperature difference stated in degrees Fahrenheit.
   *
   * @param degrees the temperature difference in °F, finite
   * @return the temperature difference
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TemperatureDifference ofFahrenheitDegrees(double degrees) {
    return new TemperatureDifference(degrees / 1.8, degrees, "°F");
  }

  /**
   * Returns the temperature difference in kelvins.
   *
   * @return the temperature difference in K
   */
  public double inKelvin() {
    return value;
  }

  /**
   * Returns the temperature difference in degrees Celsius.
   *
   * @return the temperature difference in °C
   */
  public double inCelsiusDegrees() {
    return value;
  }

  /**
   * Returns the temperature difference in degrees Fahrenheit.
   *
   * @return the temperature difference in °F
   */
  public double inFahrenheitDegrees() {
    return value * 1.8;
  }

  /**
   * Adds a temperature difference.
   *
   * @param other the temperature difference to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public TemperatureDifference plus(TemperatureDifference other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a temperature difference.
   *
   * @param other the temperature difference to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is too large to be held
   */
  public TemperatureDifference minus(TemperatureDifference other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, finite
   * @return the product
   * @throws IllegalArgumentException if the product is infinite or NaN
   */
  public TemperatureDifference times(double factor) {
    return fromBase(value * factor);
  }

  @Override
  public String toString() {
    return text(value, "K");
  }

  private static TemperatureDifference fromBase(double kelvin) {
    return new TemperatureDifference(kelvin, kelvin, "K");
  }
}
