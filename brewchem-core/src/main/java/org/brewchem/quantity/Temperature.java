package org.brewchem.quantity;

import org.brewchem.internal.Checks;

/**
 * A temperature on the Celsius, Kelvin or Fahrenheit scale, held in °C; not below absolute zero.
 * How far two temperatures lie apart is a {@link TemperatureDifference}.
 */
public final class Temperature extends ScalarValue<Temperature> {

  private static final String NAME = "temperature";

  /** By definition (SI). */
  private static final double ZERO_CELSIUS_IN_KELVIN = 273.15;

  /** Of 273.15 K, by definition. */
  private static final double ABSOLUTE_ZERO_IN_FAHRENHEIT = -459.67;

  private Temperature(double celsius, double stated, String scale, double absoluteZero) {
    super(notBelow(absoluteZero, stated, scale, celsius));
  }

  /**
   * Returns a temperature on the Celsius scale.
   *
   * @param celsius the temperature in °C, -273.15 or more
   * @return the temperature
   * @throws IllegalArgumentException if the number is below absolute zero, infinite or NaN
   */
  public static Temperature ofCelsius(double celsius) {
    return new Temperature(celsius, celsius, "°C", -ZERO_CELSIUS_IN_KELVIN);
  }

  /**
   * Returns a temperature on the Kelvin scale.
   *
   * @param kelvin the temperature in K, 0 or more
   * @return the temperature
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Temperature ofKelvin(double kelvin) {
    return new Temperature(kelvin - ZERO_CELSIUS_IN_KELVIN, kelvin, "K", 0);
  }

  /**
   * Returns a temperature on the Fahrenheit scale.
   *
   * @param fahrenheit the temperature in °F, -459.67 or more
   * @return the temperature
   * @throws IllegalArgumentException if the number is below absolute zero, infinite or NaN
   */
  public static Temperature ofFahrenheit(double fahrenheit) {
    // Rounding of the division must not carry absolute zero itself below absolute zero.
    double celsius = Math.max((fahrenheit - 32) / 1.8, -ZERO_CELSIUS_IN_KELVIN);
    return new Temperature(celsius, fahrenheit, "°F", ABSOLUTE_ZERO_IN_FAHRENHEIT);
  }

  /**
   * Returns the temperature on the Celsius scale.
   *
   * @return the temperature in °C
   */
  public double inCelsius() {
    return value;
  }

  /**
   * Returns the temperature on the Kelvin scale.
   *
   * @return the temperature in K
   */
  public double inKelvin() {
    return value + ZERO_CELSIUS_IN_KELVIN;
  }

  /**
   * Returns the temperature on the Fahrenheit scale.
   *
   * @return the temperature in °F
   */
  public double inFahrenheit() {
    return value * 1.8 + 32;
  }

  /**
   * Returns the temperature that lies a difference above this one.
   *
   * @param difference the difference, of either sign
   * @return the sum
   * @throws IllegalArgumentException if the result is below absolute zero
   */
  public Temperature plus(TemperatureDifference difference) {
    return ofCelsius(value + difference.inKelvin());
  }

  /**
   * Returns the temperature that lies a difference below this one.
   *
   * @param difference the difference, of either sign
   * @return the result
   * @throws IllegalArgumentException if the result is below absolute zero
   */
  public Temperature minus(TemperatureDifference difference) {
    return ofCelsius(value - difference.inKelvin());
  }

  /**
   * Returns how far this temperature lies above another.
   *
   * @param other the temperature to subtract
   * @return this - other, with its sign
   */
  public TemperatureDifference minus(Temperature other) {
    return TemperatureDifference.ofKelvin(value - other.value);
  }

  @Override
  public String toString() {
    return text(value, "°C");
  }

  private static double notBelow(double absoluteZero, double stated, String scale, double celsius) {
    finite(NAME, stated, scale, celsius);
    if (stated < absoluteZero) {
      throw Checks.outOfRange(
          NAME, stated, scale, "absolute zero, " + text(absoluteZero, scale) + ", or more");
    }
    return celsius;
  }
}
