package org.brewchem.quantity;

/**
 * A specific gravity 20/20: the density of a liquid at 20 °C divided by that of water at 20 °C;
 * above 0.
 *
 * <p>The density of water at 20 °C and 101.325 kPa is 998.2072 kg/m3 (IAPWS-95).
 */
public final class SpecificGravity extends ScalarValue<SpecificGravity> {

  private static final String NAME = "specific gravity";

  private static final double WATER_AT_20_CELSIUS = 998.2072;

  private SpecificGravity(double specificGravity, double stated, String statedUnit) {
    super(positive(NAME, stated, statedUnit, specificGravity));
  }

  /**
   * Returns a specific gravity 20/20.
   *
   * @param specificGravity the density of the liquid over that of water, both at 20 °C, above 0
   * @return the specific gravity
   * @throws IllegalArgumentException if the number is 0, negative, infinite or NaN
   */
  public static SpecificGravity of(double specificGravity) {
    return new SpecificGravity(specificGravity, specificGravity, "SG 20/20");
  }

  /**
   * Returns the specific gravity of a liquid of known density.
   *
   * @param densityAt20Celsius the density at 20 °C
   * @return the density over that of water at 20 °C
   */
  public static SpecificGravity from(Density densityAt20Celsius) {
    return of(densityAt20Celsius.inKilogramsPerCubicMetre() / WATER_AT_20_CELSIUS);
  }

  /**
   * Returns the specific gravity as a plain number.
   *
   * @return the number, 1 for water
   */
  public double value() {
    return value;
  }

  /**
   * Returns the density of the liquid at 20 °C.
   *
   * @return specific gravity x density of water at 20 °C
   * @throws IllegalArgumentException if the density is too large to be held
   */
  public Density asDensity() {
    return Density.ofKilogramsPerCubicMetre(value * WATER_AT_20_CELSIUS);
  }

  @Override
  public String toString() {
    return text(value, "SG 20/20");
  }
}
