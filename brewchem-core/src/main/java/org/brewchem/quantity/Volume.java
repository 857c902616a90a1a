package org.brewchem.quantity;

/**
 * A volume of liquid, held in litres; 0 or more.
 *
 * <p>The US gallon is 3.785411784 L and the US beer barrel 31 US gallons, both by definition.
 */
public final class Volume extends ScalarValue<Volume> {

  private static final String NAME = "volume";

  /** A volume from 10 hL prints in hL. */
  private static final double SMALLEST_IN_HECTOLITRES = 1000;

  static final double LITRES_PER_US_GALLON = 3.785411784;
  static final double LITRES_PER_IMPERIAL_GALLON = 4.54609;
  private static final double LITRES_PER_US_BARREL = 31 * LITRES_PER_US_GALLON;

  private Volume(double litres, double stated, String statedUnit) {
    super(nonNegative(NAME, stated, statedUnit, litres));
  }

  /**
   * Returns a volume stated in litres.
   *
   * @param litres the volume in L, 0 or more
   * @return the volume
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Volume ofLitres(double litres) {
    return new Volume(litres, litres, "L");
  }

  /**
   * Returns a volume stated in millilitres.
   *
   * @param millilitres the volume in mL, 0 or more
   * @return the volume
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Volume ofMillilitres(double millilitres) {
    return new Volume(millilitres / 1000, millilitres, "mL");
  }

  /**
   * Returns a volume stated in hectolitres.
   *
   * @param hectolitres the volume in hL, 0 or more
   * @return the volume
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Volume ofHectolitres(double hectolitres) {
    return new Volume(hectolitres * 100, hectolitres, "hL");
  }

  /**
   * Returns a volume stated in US gallons.
   *
   * @param gallons the volume in US gal, 0 or more
   * @return the volume
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Volume ofUsGallons(double gallons) {
    return new Volume(gallons * LITRES_PER_US_GALLON, gallons, "US gal");
  }

  /**
   * Returns a volume stated in US beer barrels of 31 US gallons.
   *
   * @param barrels the volume in US bbl, 0 or more
   * @return the volume
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Volume ofUsBarrels(double barrels) {
    return new Volume(barrels * LITRES_PER_US_BARREL, barrels, "US bbl");
  }

  /**
   * Returns the volume in litres.
   *
   * @return the volume in L
   */
  public double inLitres() {
    return value;
  }

  /**
   * Returns the volume in millilitres.
   *
   * @return the volume in mL
   */
  public double inMillilitres() {
    return value * 1000;
  }

  /**
   * Returns the volume in hectolitres.
   *
   * @return the volume in hL
   */
  public double inHectolitres() {
    return value / 100;
  }

  /**
   * Returns the volume in US gallons.
   *
   * @return the volume in US gal
   */
  public double inUsGallons() {
    return value / LITRES_PER_US_GALLON;
  }

  /**
   * Returns the volume in US beer barrels of 31 US gallons.
   *
   * @return the volume in US bbl
   */
  public double inUsBarrels() {
    return value / LITRES_PER_US_BARREL;
  }

  /**
   * Adds a volume.
   *
   * @param other the volume to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public Volume plus(Volume other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a volume.
   *
   * @param other the volume to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is below 0
   */
  public Volume minus(Volume other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, 0 or more
   * @return the product
   * @throws IllegalArgumentException if the product is negative, infinite or NaN
   */
  public Volume times(double factor) {
    return fromBase(value * factor);
  }

  @Override
  public String toString() {
    if (value < 1) {
      return text(inMillilitres(), "mL");
    }
    return value < SMALLEST_IN_HECTOLITRES ? text(value, "L") : text(inHectolitres(), "hL");
  }

  private static Volume fromBase(double litres) {
    return new Volume(litres, litres, "L");
  }
}
