package org.brewchem.quantity;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A titration alkalinity: the strong acid per litre that takes a water down to the pH where the
 * titration ends, held in mEq/L together with that end point.
 *
 * <p>It counts every base that takes up protons above the end point. The part that is due to
 * bicarbonate and carbonate alone is a {@link CarbonateAlkalinity}. A water below the end point has
 * a negative one.
 */
public final class TitrationAlkalinity implements Comparable<TitrationAlkalinity> {

  private static final String NAME = "titration alkalinity";

  /**
   * The end point of routine work, pH 4.5, which a report means that names none (Standard Methods
   * 2320 B, from memory). DIN 38409-7 titrates to pH 4.3.
   */
  public static final PH USUAL_END_POINT = PH.of(4.5);

  private final double milliequivalentsPerLitre;
  private final PH endPoint;

  private TitrationAlkalinity(
      double milliequivalentsPerLitre, PH endPoint, double stated, String statedUnit) {
    this.milliequivalentsPerLitre =
        ScalarValue.finite(NAME, stated, statedUnit, milliequivalentsPerLitre) + 0.0;
    this.endPoint = Objects.requireNonNull(endPoint, "end point");
  }

  /**
   * Returns a titration alkalinity stated in milliequivalents per litre.
   *
   * @param milliequivalentsPerLitre the titration alkalinity in mEq/L; negative where the sample
   *     lies on the far side of the end point
   * @param endPoint the pH that the titration ends at
   * @return the titration alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TitrationAlkalinity ofMilliequivalentsPerLitre(
      double milliequivalentsPerLitre, PH endPoint) {
    return new TitrationAlkalinity(
        milliequivalentsPerLitre, endPoint, milliequivalentsPerLitre, "mEq/L");
  }

  /**
   * Returns a titration alkalinity stated in milligrams per litre as calcium carbonate.
   *
   * @param milligramsPerLitre the titration alkalinity in mg/L as CaCO3; negative where the sample
   *     lies on the far side of the end point
   * @param endPoint the pH that the titration ends at
   * @return the titration alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TitrationAlkalinity ofMilligramsPerLitreAsCaCO3(
      double milligramsPerLitre, PH endPoint) {
    return new TitrationAlkalinity(
        milligramsPerLitre / EquivalentScales.MILLIGRAMS_OF_CACO3,
        endPoint,
        milligramsPerLitre,
        "mg/L as CaCO3");
  }

  /**
   * Returns a titration alkalinity stated in milligrams per litre as bicarbonate.
   *
   * @param milligramsPerLitre the titration alkalinity in mg/L as HCO3-; negative where the sample
   *     lies on the far side of the end point
   * @param endPoint the pH that the titration ends at
   * @return the titration alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TitrationAlkalinity ofMilligramsPerLitreAsBicarbonate(
      double milligramsPerLitre, PH endPoint) {
    return new TitrationAlkalinity(
        milligramsPerLitre / EquivalentScales.MILLIGRAMS_OF_BICARBONATE,
        endPoint,
        milligramsPerLitre,
        "mg/L as HCO3-");
  }

  /**
   * Returns a titration alkalinity stated in millimoles per litre of a monoprotic strong acid, the
   * acid capacity of a German report.
   *
   * @param millimolesPerLitre the titration alkalinity in mmol/L of acid; negative where the sample
   *     lies on the far side of the end point
   * @param endPoint the pH that the titration ends at
   * @return the titration alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TitrationAlkalinity ofMillimolesOfAcidPerLitre(
      double millimolesPerLitre, PH endPoint) {
    return new TitrationAlkalinity(
        millimolesPerLitre, endPoint, millimolesPerLitre, "mmol/L of acid");
  }

  /**
   * Returns a titration alkalinity stated in German degrees of 10 mg/L of CaO.
   *
   * @param degrees the titration alkalinity in °dH; negative where the sample lies on the far side
   *     of the end point
   * @param endPoint the pH that the titration ends at
   * @return the titration alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TitrationAlkalinity ofGermanDegrees(double degrees, PH endPoint) {
    return new TitrationAlkalinity(
        degrees * EquivalentScales.GERMAN_DEGREE, endPoint, degrees, "°dH");
  }

  /**
   * Returns a titration alkalinity stated in French degrees of 10 mg/L of CaCO3.
   *
   * @param degrees the titration alkalinity in °fH; negative where the sample lies on the far side
   *     of the end point
   * @param endPoint the pH that the titration ends at
   * @return the titration alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TitrationAlkalinity ofFrenchDegrees(double degrees, PH endPoint) {
    return new TitrationAlkalinity(
        degrees * EquivalentScales.FRENCH_DEGREE, endPoint, degrees, "°fH");
  }

  /**
   * Returns a titration alkalinity stated in English degrees of one grain of CaCO3 in an imperial
   * gallon.
   *
   * @param degrees the titration alkalinity in °e; negative where the sample lies on the far side
   *     of the end point
   * @param endPoint the pH that the titration ends at
   * @return the titration alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TitrationAlkalinity ofEnglishDegrees(double degrees, PH endPoint) {
    return new TitrationAlkalinity(
        degrees * EquivalentScales.ENGLISH_DEGREE, endPoint, degrees, "°e");
  }

  /**
   * Returns a titration alkalinity stated in grains of CaCO3 in a US gallon.
   *
   * @param grainsPerGallon the titration alkalinity in gr/US gal; negative where the sample lies on
   *     the far side of the end point
   * @param endPoint the pH that the titration ends at
   * @return the titration alkalinity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TitrationAlkalinity ofUsGrainsPerGallon(double grainsPerGallon, PH endPoint) {
    return new TitrationAlkalinity(
        grainsPerGallon * EquivalentScales.US_GRAIN_PER_GALLON,
        endPoint,
        grainsPerGallon,
        "gr/US gal");
  }

  /**
   * Returns the alkalinity that a report states as calcium carbonate, with the end point it was
   * titrated to.
   *
   * @param reported the reported mass concentration
   * @param endPoint the pH that the titration ended at
   * @return the titration alkalinity
   */
  public static TitrationAlkalinity fromCaCO3(MassConcentration reported, PH endPoint) {
    return ofMilligramsPerLitreAsCaCO3(reported.inMilligramsPerLitre(), endPoint);
  }

  /**
   * Returns the alkalinity that a report states as bicarbonate, with the end point it was titrated
   * to.
   *
   * @param reported the reported mass concentration
   * @param endPoint the pH that the titration ended at
   * @return the titration alkalinity
   */
  public static TitrationAlkalinity fromBicarbonate(MassConcentration reported, PH endPoint) {
    return ofMilligramsPerLitreAsBicarbonate(reported.inMilligramsPerLitre(), endPoint);
  }

  /**
   * Returns the pH that the titration ends at.
   *
   * @return the end point
   */
  public PH endPoint() {
    return endPoint;
  }

  /**
   * Returns the titration alkalinity in milliequivalents per litre.
   *
   * @return the titration alkalinity in mEq/L
   */
  public double inMilliequivalentsPerLitre() {
    return milliequivalentsPerLitre;
  }

  /**
   * Returns the titration alkalinity in milligrams per litre as calcium carbonate.
   *
   * @return the titration alkalinity in mg/L as CaCO3
   */
  public double inMilligramsPerLitreAsCaCO3() {
    return milliequivalentsPerLitre * EquivalentScales.MILLIGRAMS_OF_CACO3;
  }

  /**
   * Returns the titration alkalinity in milligrams per litre as bicarbonate.
   *
   * @return the titration alkalinity in mg/L as HCO3-
   */
  public double inMilligramsPerLitreAsBicarbonate() {
    return milliequivalentsPerLitre * EquivalentScales.MILLIGRAMS_OF_BICARBONATE;
  }

  /**
   * Returns the titration alkalinity in millimoles per litre of a monoprotic strong acid, the acid
   * capacity of a German report.
   *
   * @return the titration alkalinity in mmol/L of acid
   */
  public double inMillimolesOfAcidPerLitre() {
    return milliequivalentsPerLitre;
  }

  /**
   * Returns the titration alkalinity in German degrees of 10 mg/L of CaO.
   *
   * @return the titration alkalinity in °dH
   */
  public double inGermanDegrees() {
    return milliequivalentsPerLitre / EquivalentScales.GERMAN_DEGREE;
  }

  /**
   * Returns the titration alkalinity in French degrees of 10 mg/L of CaCO3.
   *
   * @return the titration alkalinity in °fH
   */
  public double inFrenchDegrees() {
    return milliequivalentsPerLitre / EquivalentScales.FRENCH_DEGREE;
  }

  /**
   * Returns the titration alkalinity in English degrees of one grain of CaCO3 in an imperial
   * gallon.
   *
   * @return the titration alkalinity in °e
   */
  public double inEnglishDegrees() {
    return milliequivalentsPerLitre / EquivalentScales.ENGLISH_DEGREE;
  }

  /**
   * Returns the titration alkalinity in grains of CaCO3 in a US gallon.
   *
   * @return the titration alkalinity in gr/US gal
   */
  public double inUsGrainsPerGallon() {
    return milliequivalentsPerLitre / EquivalentScales.US_GRAIN_PER_GALLON;
  }

  /**
   * Adds a titration alkalinity to the same end point.
   *
   * @param other the titration alkalinity to add
   * @return the sum
   * @throws IllegalArgumentException if the end points differ
   */
  public TitrationAlkalinity plus(TitrationAlkalinity other) {
    return ofMilliequivalentsPerLitre(
        milliequivalentsPerLitre + other.milliequivalentsPerLitre,
        EndPoints.shared(NAME, endPoint, other.endPoint));
  }

  /**
   * Subtracts a titration alkalinity to the same end point.
   *
   * @param other the titration alkalinity to take away
   * @return the difference
   * @throws IllegalArgumentException if the end points differ
   */
  public TitrationAlkalinity minus(TitrationAlkalinity other) {
    return ofMilliequivalentsPerLitre(
        milliequivalentsPerLitre - other.milliequivalentsPerLitre,
        EndPoints.shared(NAME, endPoint, other.endPoint));
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number
   * @return the product, to the same end point
   * @throws IllegalArgumentException if the product is infinite or NaN
   */
  public TitrationAlkalinity times(double factor) {
    return ofMilliequivalentsPerLitre(milliequivalentsPerLitre * factor, endPoint);
  }

  /**
   * Compares by size.
   *
   * @param other the titration alkalinity to compare with
   * @return a negative number, zero or a positive number as this value is smaller than, equal to or
   *     larger than the other
   * @throws IllegalArgumentException if the end points differ
   */
  @Override
  public int compareTo(TitrationAlkalinity other) {
    EndPoints.shared(NAME, endPoint, other.endPoint);
    return Double.compare(milliequivalentsPerLitre, other.milliequivalentsPerLitre);
  }

  /**
   * Tells whether the other object is a titration alkalinity of exactly the same size and end
   * point.
   *
   * @param other the object to compare with
   * @return true if size and end point are equal
   */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof TitrationAlkalinity that
        && Double.compare(milliequivalentsPerLitre, that.milliequivalentsPerLitre) == 0
        && endPoint.equals(that.endPoint);
  }

  @Override
  public int hashCode() {
    return Objects.hash(milliequivalentsPerLitre, endPoint);
  }

  /**
   * Returns the alkalinity as CaCO3 with its end point, in a form that the readers of {@code
   * org.brewchem.units} read back.
   *
   * @return such as {@code 215 mg/L as CaCO3, to pH 4.5}
   */
  @Override
  public String toString() {
    return ScalarValue.text(inMilligramsPerLitreAsCaCO3(), "mg/L as CaCO3")
        + EndPoints.text(endPoint);
  }
}
