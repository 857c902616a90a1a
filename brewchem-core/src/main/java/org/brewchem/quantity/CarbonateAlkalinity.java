package org.brewchem.quantity;

/**
 * A carbonate alkalinity: the charge of the carbonate system, [HCO3-] + 2 [CO3--], held in mEq/L; 0
 * or more.
 *
 * <p>It is a property of a composition and has no end point. What a titration finds, which counts
 * hydroxide, borate or phosphate too and depends on the pH it stops at, is a {@link
 * TitrationAlkalinity}. Neither converts to the other without the composition of the water.
 */
public final class CarbonateAlkalinity extends ScalarValue<CarbonateAlkalinity> {

  private static final String NAME = "carbonate alkalinity";

  private CarbonateAlkalinity(double milliequivalentsPerLitre, double stated, String statedUnit) {
    super(nonNegative(NAME, stated, statedUnit, milliequivalentsPerLitre));
  }

  /**
   * Returns a carbonate alkalinity stated in milliequivalents per litre.
   *
   * @param milliequivalentsPerLitre the carbonate alkalinity in mEq/L, 0 or more
   * @return the carbonate alkalinity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static CarbonateAlkalinity ofMilliequivalentsPerLitre(double milliequivalentsPerLitre) {
    return new CarbonateAlkalinity(milliequivalentsPerLitre, milliequivalentsPerLitre, "mEq/L");
  }

  /**
   * Returns a carbonate alkalinity stated in milligrams per litre as calcium carbonate.
   *
   * @param milligramsPerLitre the carbonate alkalinity in mg/L as CaCO3, 0 or more
   * @return the carbonate alkalinity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static CarbonateAlkalinity ofMilligramsPerLitreAsCaCO3(double milligramsPerLitre) {
    return new CarbonateAlkalinity(
        milligramsPerLitre / EquivalentScales.MILLIGRAMS_OF_CACO3,
        milligramsPerLitre,
        "mg/L as CaCO3");
  }

  /**
   * Returns a carbonate alkalinity stated in milligrams per litre as bicarbonate.
   *
   * @param milligramsPerLitre the carbonate alkalinity in mg/L as HCO3-, 0 or more
   * @return the carbonate alkalinity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static CarbonateAlkalinity ofMilligramsPerLitreAsBicarbonate(double milligramsPerLitre) {
    return new CarbonateAlkalinity(
        milligramsPerLitre / EquivalentScales.MILLIGRAMS_OF_BICARBONATE,
        milligramsPerLitre,
        "mg/L as HCO3-");
  }

  /**
   * Returns a carbonate alkalinity stated in millimoles per litre of a monoprotic strong acid, the
   * acid capacity of a German report.
   *
   * @param millimolesPerLitre the carbonate alkalinity in mmol/L of acid, 0 or more
   * @return the carbonate alkalinity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static CarbonateAlkalinity ofMillimolesOfAcidPerLitre(double millimolesPerLitre) {
    return new CarbonateAlkalinity(millimolesPerLitre, millimolesPerLitre, "mmol/L of acid");
  }

  /**
   * Returns a carbonate alkalinity stated in German degrees of 10 mg/L of CaO.
   *
   * @param degrees the carbonate alkalinity in °dH, 0 or more
   * @return the carbonate alkalinity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static CarbonateAlkalinity ofGermanDegrees(double degrees) {
    return new CarbonateAlkalinity(degrees * EquivalentScales.GERMAN_DEGREE, degrees, "°dH");
  }

  /**
   * Returns a carbonate alkalinity stated in French degrees of 10 mg/L of CaCO3.
   *
   * @param degrees the carbonate alkalinity in °fH, 0 or more
   * @return the carbonate alkalinity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static CarbonateAlkalinity ofFrenchDegrees(double degrees) {
    return new CarbonateAlkalinity(degrees * EquivalentScales.FRENCH_DEGREE, degrees, "°fH");
  }

  /**
   * Returns a carbonate alkalinity stated in English degrees of one grain of CaCO3 in an imperial
   * gallon.
   *
   * @param degrees the carbonate alkalinity in °e, 0 or more
   * @return the carbonate alkalinity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static CarbonateAlkalinity ofEnglishDegrees(double degrees) {
    return new CarbonateAlkalinity(degrees * EquivalentScales.ENGLISH_DEGREE, degrees, "°e");
  }

  /**
   * Returns a carbonate alkalinity stated in grains of CaCO3 in a US gallon.
   *
   * @param grainsPerGallon the carbonate alkalinity in gr/US gal, 0 or more
   * @return the carbonate alkalinity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static CarbonateAlkalinity ofUsGrainsPerGallon(double grainsPerGallon) {
    return new CarbonateAlkalinity(
        grainsPerGallon * EquivalentScales.US_GRAIN_PER_GALLON, grainsPerGallon, "gr/US gal");
  }

  /**
   * Returns the carbonate alkalinity that a report states as calcium carbonate.
   *
   * @param reported the reported mass concentration
   * @return the carbonate alkalinity
   */
  public static CarbonateAlkalinity fromCaCO3(MassConcentration reported) {
    return ofMilligramsPerLitreAsCaCO3(reported.inMilligramsPerLitre());
  }

  /**
   * Returns the carbonate alkalinity that a report states as bicarbonate.
   *
   * @param reported the reported mass concentration
   * @return the carbonate alkalinity
   */
  public static CarbonateAlkalinity fromBicarbonate(MassConcentration reported) {
    return ofMilligramsPerLitreAsBicarbonate(reported.inMilligramsPerLitre());
  }

  /**
   * Returns the carbonate alkalinity in milliequivalents per litre.
   *
   * @return the carbonate alkalinity in mEq/L
   */
  public double inMilliequivalentsPerLitre() {
    return value;
  }

  /**
   * Returns the carbonate alkalinity in milligrams per litre as calcium carbonate.
   *
   * @return the carbonate alkalinity in mg/L as CaCO3
   */
  public double inMilligramsPerLitreAsCaCO3() {
    return value * EquivalentScales.MILLIGRAMS_OF_CACO3;
  }

  /**
   * Returns the carbonate alkalinity in milligrams per litre as bicarbonate.
   *
   * @return the carbonate alkalinity in mg/L as HCO3-
   */
  public double inMilligramsPerLitreAsBicarbonate() {
    return value * EquivalentScales.MILLIGRAMS_OF_BICARBONATE;
  }

  /**
   * Returns the carbonate alkalinity in millimoles per litre of a monoprotic strong acid, the acid
   * capacity of a German report.
   *
   * @return the carbonate alkalinity in mmol/L of acid
   */
  public double inMillimolesOfAcidPerLitre() {
    return value;
  }

  /**
   * Returns the carbonate alkalinity in German degrees of 10 mg/L of CaO.
   *
   * @return the carbonate alkalinity in °dH
   */
  public double inGermanDegrees() {
    return value / EquivalentScales.GERMAN_DEGREE;
  }

  /**
   * Returns the carbonate alkalinity in French degrees of 10 mg/L of CaCO3.
   *
   * @return the carbonate alkalinity in °fH
   */
  public double inFrenchDegrees() {
    return value / EquivalentScales.FRENCH_DEGREE;
  }

  /**
   * Returns the carbonate alkalinity in English degrees of one grain of CaCO3 in an imperial
   * gallon.
   *
   * @return the carbonate alkalinity in °e
   */
  public double inEnglishDegrees() {
    return value / EquivalentScales.ENGLISH_DEGREE;
  }

  /**
   * Returns the carbonate alkalinity in grains of CaCO3 in a US gallon.
   *
   * @return the carbonate alkalinity in gr/US gal
   */
  public double inUsGrainsPerGallon() {
    return value / EquivalentScales.US_GRAIN_PER_GALLON;
  }

  /**
   * Adds a carbonate alkalinity.
   *
   * @param other the carbonate alkalinity to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public CarbonateAlkalinity plus(CarbonateAlkalinity other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a carbonate alkalinity.
   *
   * @param other the carbonate alkalinity to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is below 0
   */
  public CarbonateAlkalinity minus(CarbonateAlkalinity other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, 0 or more
   * @return the product
   * @throws IllegalArgumentException if the product is negative, infinite or NaN
   */
  public CarbonateAlkalinity times(double factor) {
    return fromBase(value * factor);
  }

  @Override
  public String toString() {
    return text(inMilligramsPerLitreAsCaCO3(), "mg/L as CaCO3");
  }

  private static CarbonateAlkalinity fromBase(double milliequivalentsPerLitre) {
    return new CarbonateAlkalinity(milliequivalentsPerLitre, milliequivalentsPerLitre, "mEq/L");
  }
}
