package org.brewchem.quantity;

/**
 * A hardness of water: its calcium and magnesium together, held in mEq/L; 0 or more.
 *
 * <p>The scales are explained by their definitions: 1 German degree is 10 mg/L of CaO, 1 French
 * degree 10 mg/L of CaCO3, 1 English degree a grain of CaCO3 in an imperial gallon.
 */
public final class Hardness extends ScalarValue<Hardness> {

  private static final String NAME = "hardness";

  private Hardness(double milliequivalentsPerLitre, double stated, String statedUnit) {
    super(nonNegative(NAME, stated, statedUnit, milliequivalentsPerLitre));
  }

  /**
   * Returns a hardness stated in milliequivalents per litre.
   *
   * @param milliequivalentsPerLitre the hardness in mEq/L, 0 or more
   * @return the hardness
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Hardness ofMilliequivalentsPerLitre(double milliequivalentsPerLitre) {
    return new Hardness(milliequivalentsPerLitre, milliequivalentsPerLitre, "mEq/L");
  }

  /**
   * Returns a hardness stated in milligrams per litre as calcium carbonate.
   *
   * @param milligramsPerLitre the hardness in mg/L as CaCO3, 0 or more
   * @return the hardness
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Hardness ofMilligramsPerLitreAsCaCO3(double milligramsPerLitre) {
    return new Hardness(
        milligramsPerLitre / EquivalentScales.MILLIGRAMS_OF_CACO3,
        milligramsPerLitre,
        "mg/L as CaCO3");
  }

  /**
   * Returns a hardness stated in millimoles per litre of calcium and magnesium together.
   *
   * @param millimolesPerLitre the hardness in mmol/L, 0 or more
   * @return the hardness
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Hardness ofMillimolesPerLitre(double millimolesPerLitre) {
    return new Hardness(millimolesPerLitre * 2, millimolesPerLitre, "mmol/L");
  }

  /**
   * Returns a hardness stated in German degrees of 10 mg/L of CaO.
   *
   * @param degrees the hardness in °dH, 0 or more
   * @return the hardness
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Hardness ofGermanDegrees(double degrees) {
    return new Hardness(degrees * EquivalentScales.GERMAN_DEGREE, degrees, "°dH");
  }

  /**
   * Returns a hardness stated in French degrees of 10 mg/L of CaCO3.
   *
   * @param degrees the hardness in °fH, 0 or more
   * @return the hardness
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Hardness ofFrenchDegrees(double degrees) {
    return new Hardness(degrees * EquivalentScales.FRENCH_DEGREE, degrees, "°fH");
  }

  /**
   * Returns a hardness stated in English degrees of one grain of CaCO3 in an imperial gallon.
   *
   * @param degrees the hardness in °e, 0 or more
   * @return the hardness
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Hardness ofEnglishDegrees(double degrees) {
    return new Hardness(degrees * EquivalentScales.ENGLISH_DEGREE, degrees, "°e");
  }

  /**
   * Returns a hardness stated in grains of CaCO3 in a US gallon.
   *
   * @param grainsPerGallon the hardness in gr/US gal, 0 or more
   * @return the hardness
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static Hardness ofUsGrainsPerGallon(double grainsPerGallon) {
    return new Hardness(
        grainsPerGallon * EquivalentScales.US_GRAIN_PER_GALLON, grainsPerGallon, "gr/US gal");
  }

  /**
   * Returns the hardness that a report states as calcium carbonate.
   *
   * @param reported the reported mass concentration
   * @return the hardness
   */
  public static Hardness fromCaCO3(MassConcentration reported) {
    return ofMilligramsPerLitreAsCaCO3(reported.inMilligramsPerLitre());
  }

  /**
   * Returns the hardness in milliequivalents per litre.
   *
   * @return the hardness in mEq/L
   */
  public double inMilliequivalentsPerLitre() {
    return value;
  }

  /**
   * Returns the hardness in milligrams per litre as calcium carbonate.
   *
   * @return the hardness in mg/L as CaCO3
   */
  public double inMilligramsPerLitreAsCaCO3() {
    return value * EquivalentScales.MILLIGRAMS_OF_CACO3;
  }

  /**
   * Returns the hardness in millimoles per litre of calcium and magnesium together.
   *
   * @return the hardness in mmol/L
   */
  public double inMillimolesPerLitre() {
    return value / 2;
  }

  /**
   * Returns the hardness in German degrees of 10 mg/L of CaO.
   *
   * @return the hardness in °dH
   */
  public double inGermanDegrees() {
    return value / EquivalentScales.GERMAN_DEGREE;
  }

  /**
   * Returns the hardness in French degrees of 10 mg/L of CaCO3.
   *
   * @return the hardness in °fH
   */
  public double inFrenchDegrees() {
    return value / EquivalentScales.FRENCH_DEGREE;
  }

  /**
   * Returns the hardness in English degrees of one grain of CaCO3 in an imperial gallon.
   *
   * @return the hardness in °e
   */
  public double inEnglishDegrees() {
    return value / EquivalentScales.ENGLISH_DEGREE;
  }

  /**
   * Returns the hardness in grains of CaCO3 in a US gallon.
   *
   * @return the hardness in gr/US gal
   */
  public double inUsGrainsPerGallon() {
    return value / EquivalentScales.US_GRAIN_PER_GALLON;
  }

  /**
   * Adds a hardness.
   *
   * @param other the hardness to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public Hardness plus(Hardness other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a hardness.
   *
   * @param other the hardness to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is below 0
   */
  public Hardness minus(Hardness other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, 0 or more
   * @return the product
   * @throws IllegalArgumentException if the product is negative, infinite or NaN
   */
  public Hardness times(double factor) {
    return fromBase(value * factor);
  }

  @Override
  public String toString() {
    return text(inMilligramsPerLitreAsCaCO3(), "mg/L as CaCO3");
  }

  private static Hardness fromBase(double milliequivalentsPerLitre) {
    return new Hardness(milliequivalentsPerLitre, milliequivalentsPerLitre, "mEq/L");
  }
}
