package org.brewchem.quantity;

/**
 * A residual alkalinity: the alkalinity left over after the calcium and magnesium of the water have
 * offset a part of it, held in mEq/L. It is negative where they offset more than all of it.
 */
public final class ResidualAlkalinity extends ScalarValue<ResidualAlkalinity> {

  private static final String NAME = "residual alkalinity";

  private ResidualAlkalinity(double milliequivalentsPerLitre, double stated, String statedUnit) {
    super(finite(NAME, stated, statedUnit, milliequivalentsPerLitre));
  }

  /**
   * Returns a residual alkalinity stated in milliequivalents per litre.
   *
   * @param milliequivalentsPerLitre the residual alkalinity in mEq/L, finite
   * @return the residual alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ResidualAlkalinity ofMilliequivalentsPerLitre(double milliequivalentsPerLitre) {
    return new ResidualAlkalinity(milliequivalentsPerLitre, milliequivalentsPerLitre, "mEq/L");
  }

  /**
   * Returns a residual alkalinity stated in milligrams per litre as calcium carbonate.
   *
   * @param milligramsPerLitre the residual alkalinity in mg/L as CaCO3, finite
   * @return the residual alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ResidualAlkalinity ofMilligramsPerLitreAsCaCO3(double milligramsPerLitre) {
    return new ResidualAlkalinity(
        milligramsPerLitre / EquivalentScales.MILLIGRAMS_OF_CACO3,
        milligramsPerLitre,
        "mg/L as CaCO3");
  }

  /**
   * Returns a residual alkalinity stated in milligrams per litre as bicarbonate.
   *
   * @param milligramsPerLitre the residual alkalinity in mg/L as HCO3-, finite
   * @return the residual alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ResidualAlkalinity ofMilligramsPerLitreAsBicarbonate(double milligramsPerLitre) {
    return new ResidualAlkalinity(
        milligramsPerLitre / EquivalentScales.MILLIGRAMS_OF_BICARBONATE,
        milligramsPerLitre,
        "mg/L as HCO3-");
  }

  /**
   * Returns a residual alkalinity stated in millimoles per litre of a monoprotic strong acid, the
   * acid capacity of a German report.
   *
   * @param millimolesPerLitre the residual alkalinity in mmol/L of acid, finite
   * @return the residual alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ResidualAlkalinity ofMillimolesOfAcidPerLitre(double millimolesPerLitre) {
    return new ResidualAlkalinity(millimolesPerLitre, millimolesPerLitre, "mmol/L of acid");
  }

  /**
   * Returns a residual alkalinity stated in German degrees of 10 mg/L of CaO.
   *
   * @param degrees the residual alkalinity in °dH, finite
   * @return the residual alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ResidualAlkalinity ofGermanDegrees(double degrees) {
    return new ResidualAlkalinity(degrees * EquivalentScales.GERMAN_DEGREE, degrees, "°dH");
  }

  /**
   * Returns a residual alkalinity stated in French degrees of 10 mg/L of CaCO3.
   *
   * @param degrees the residual alkalinity in °fH, finite
   * @return the residual alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ResidualAlkalinity ofFrenchDegrees(double degrees) {
    return new ResidualAlkalinity(degrees * EquivalentScales.FRENCH_DEGREE, degrees, "°fH");
  }

  /**
   * Returns a residual alkalinity stated in English degrees of one grain of CaCO3 in an imperial
   * gallon.
   *
   * @param degrees the residual alkalinity in °e, finite
   * @return the residual alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ResidualAlkalinity ofEnglishDegrees(double degrees) {
    return new ResidualAlkalinity(degrees * EquivalentScales.ENGLISH_DEGREE, degrees, "°e");
  }

  /**
   * Returns a residual alkalinity stated in grains of CaCO3 in a US gallon.
   *
   * @param grainsPerGallon the residual alkalinity in gr/US gal, finite
   * @return the residual alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static ResidualAlkalinity ofUsGrainsPerGallon(double grainsPerGallon) {
    return new ResidualAlkalinity(
        grainsPerGallon * EquivalentScales.US_GRAIN_PER_GALLON, grainsPerGallon, "gr/US gal");
  }

  /**
   * Returns the residual alkalinity in milliequivalents per litre.
   *
   * @return the residual alkalinity in mEq/L
   */
  public double inMilliequivalentsPerLitre() {
    return value;
  }

  /**
   * Returns the residual alkalinity in milligrams per litre as calcium carbonate.
   *
   * @return the residual alkalinity in mg/L as CaCO3
   */
  public double inMilligramsPerLitreAsCaCO3() {
    return value * EquivalentScales.MILLIGRAMS_OF_CACO3;
  }

  /**
   * Returns the residual alkalinity in milligrams per litre as bicarbonate.
   *
   * @return the residual alkalinity in mg/L as HCO3-
   */
  public double inMilligramsPerLitreAsBicarbonate() {
    return value * EquivalentScales.MILLIGRAMS_OF_BICARBONATE;
  }

  /**
   * Returns the residual alkalinity in millimoles per litre of a monoprotic strong acid, the acid
   * capacity of a German report.
   *
   * @return the residual alkalinity in mmol/L of acid
   */
  public double inMillimolesOfAcidPerLitre() {
    return value;
  }

  /**
   * Returns the residual alkalinity in German degrees of 10 mg/L of CaO.
   *
   * @return the residual alkalinity in °dH
   */
  public double inGermanDegrees() {
    return value / EquivalentScales.GERMAN_DEGREE;
  }

  /**
   * Returns the residual alkalinity in French degrees of 10 mg/L of CaCO3.
   *
   * @return the residual alkalinity in °fH
   */
  public double inFrenchDegrees() {
    return value / EquivalentScales.FRENCH_DEGREE;
  }

  /**
   * Returns the residual alkalinity in English degrees of one grain of CaCO3 in an imperial gallon.
   *
   * @return the residual alkalinity in °e
   */
  public double inEnglishDegrees() {
    return value / EquivalentScales.ENGLISH_DEGREE;
  }

  /**
   * Returns the residual alkalinity in grains of CaCO3 in a US gallon.
   *
   * @return the residual alkalinity in gr/US gal
   */
  public double inUsGrainsPerGallon() {
    return value / EquivalentScales.US_GRAIN_PER_GALLON;
  }

  /**
   * Adds a residual alkalinity.
   *
   * @param other the residual alkalinity to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public ResidualAlkalinity plus(ResidualAlkalinity other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a residual alkalinity.
   *
   * @param other the residual alkalinity to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is too large to be held
   */
  public ResidualAlkalinity minus(ResidualAlkalinity other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, finite
   * @return the product
   * @throws IllegalArgumentException if the product is infinite or NaN
   */
  public ResidualAlkalinity times(double factor) {
    return fromBase(value * factor);
  }

  @Override
  public String toString() {
    return text(inMilligramsPerLitreAsCaCO3(), "mg/L as CaCO3");
  }

  private static ResidualAlkalinity fromBase(double milliequivalentsPerLitre) {
    return new ResidualAlkalinity(milliequivalentsPerLitre, milliequivalentsPerLitre, "mEq/L");
  }
}
