package org.brewchem.quantity;

import java.util.Objects;
import org.brewchem.internal.Checks;
import org.jspecify.annotations.Nullable;

/**
 * A titratable acidity: the strong base per litre that takes a degassed sample up to the pH where
 * the titration ends, held in mEq/L together with that end point.
 *
 * <p>The acid that it is stated as is a way of writing it and not a part of the value: 1 mEq/L is
 * 0.090 g/L as lactic acid and 0.075 g/L as tartaric acid. Acidities to different end points do not
 * combine, and a sample above the end point has a negative one.
 */
public final class TitratableAcidity implements Comparable<TitratableAcidity> {

  private static final String NAME = "titratable acidity";

  private final double milliequivalentsPerLitre;
  private final PH endPoint;

  private TitratableAcidity(
      double milliequivalentsPerLitre, PH endPoint, double stated, String statedUnit) {
    this.milliequivalentsPerLitre =
        ScalarValue.finite(NAME, stated, statedUnit, milliequivalentsPerLitre) + 0.0;
    this.endPoint = Objects.requireNonNull(endPoint, "end point");
  }

  /**
   * Returns a titratable acidity stated in milliequivalents per litre.
   *
   * @param milliequivalentsPerLitre the titratable acidity in mEq/L; negative where the sample lies
   *     on the far side of the end point
   * @param endPoint the pH that the titration ends at
   * @return the titratable acidity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TitratableAcidity ofMilliequivalentsPerLitre(
      double milliequivalentsPerLitre, PH endPoint) {
    return new TitratableAcidity(
        milliequivalentsPerLitre, endPoint, milliequivalentsPerLitre, "mEq/L");
  }

  /**
   * Returns a titratable acidity stated in millilitres of alkali of 0.1 mol/L for 100 mL of sample,
   * which is the same number as mEq/L.
   *
   * @param millilitres the titratable acidity in mL of 0.1 mol/L alkali per 100 mL; negative where
   *     the sample lies on the far side of the end point
   * @param endPoint the pH that the titration ends at
   * @return the titratable acidity
   * @throws IllegalArgumentException if the number is infinite or NaN
   */
  public static TitratableAcidity ofMillilitresOfDecimolarAlkaliPer100Millilitres(
      double millilitres, PH endPoint) {
    return new TitratableAcidity(
        millilitres, endPoint, millilitres, "mL of 0.1 mol/L alkali per 100 mL");
  }

  /**
   * Returns an acidity that is stated as a mass concentration of an acid.
   *
   * @param concentration the concentration of the acid
   * @param basis the acid that it is stated as
   * @param endPoint the pH that the titration ends at
   * @return the titratable acidity
   * @throws IllegalArgumentException if the equivalent of the basis is not above 0
   */
  public static TitratableAcidity from(
      MassConcentration concentration, AcidBasis basis, PH endPoint) {
    return ofGramsPerLitreAs(concentration.inGramsPerLitre(), basis, endPoint);
  }

  /**
   * Returns a titratable acidity stated as an acid in grams per litre.
   *
   * @param gramsPerLitre the acidity in g/L of that acid; negative where the sample lies above the
   *     end point
   * @param basis the acid that it is stated as
   * @param endPoint the pH that the titration ends at
   * @return the titratable acidity
   * @throws IllegalArgumentException if the number is infinite or NaN, or the equivalent of the
   *     basis is not above 0
   */
  public static TitratableAcidity ofGramsPerLitreAs(
      double gramsPerLitre, AcidBasis basis, PH endPoint) {
    return fromGramsPerLitre(gramsPerLitre, basis, endPoint, gramsPerLitre, "g/L");
  }

  /**
   * Returns a titratable acidity stated as an acid in grams per 100 mL of sample, the per cent
   * weight per volume.
   *
   * @param gramsPer100Millilitres the acidity in g/100 mL of that acid; negative where the sample
   *     lies above the end point
   * @param basis the acid that it is stated as
   * @param endPoint the pH that the titration ends at
   * @return the titratable acidity
   * @throws IllegalArgumentException if the number is infinite or NaN, or the equivalent of the
   *     basis is not above 0
   */
  public static TitratableAcidity ofGramsPer100MillilitresAs(
      double gramsPer100Millilitres, AcidBasis basis, PH endPoint) {
    return fromGramsPerLitre(
        gramsPer100Millilitres * 10, basis, endPoint, gramsPer100Millilitres, "g/100 mL");
  }

  /**
   * Returns a titratable acidity stated as an acid in grams per 100 g of sample.
   *
   * @param gramsPer100Grams the acidity in g/100 g of that acid; negative where the sample lies
   *     above the end point
   * @param basis the acid that it is stated as
   * @param density the density of the sample
   * @param endPoint the pH that the titration ends at
   * @return the titratable acidity
   * @throws IllegalArgumentException if the number is infinite or NaN, or the equivalent of the
   *     basis is not above 0
   */
  public static TitratableAcidity ofGramsPer100GramsAs(
      double gramsPer100Grams, AcidBasis basis, Density density, PH endPoint) {
    return fromGramsPerLitre(
        gramsPer100Grams * density.inKilogramsPerCubicMetre() / 100,
        basis,
        endPoint,
        gramsPer100Grams,
        "g/100 g");
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
   * Returns the titratable acidity in milliequivalents per litre.
   *
   * @return the titratable acidity in mEq/L
   */
  public double inMilliequivalentsPerLitre() {
    return milliequivalentsPerLitre;
  }

  /**
   * Returns the titratable acidity in millilitres of alkali of 0.1 mol/L for 100 mL of sample,
   * which is the same number as mEq/L.
   *
   * @return the titratable acidity in mL of 0.1 mol/L alkali per 100 mL
   */
  public double inMillilitresOfDecimolarAlkaliPer100Millilitres() {
    return milliequivalentsPerLitre;
  }

  /**
   * Returns the acidity stated as an acid in grams per litre.
   *
   * @param basis the acid to state it as
   * @return the acidity in g/L of that acid
   * @throws IllegalArgumentException if the equivalent of the basis is not above 0
   */
  public double inGramsPerLitreAs(AcidBasis basis) {
    return milliequivalentsPerLitre * gramsPerEquivalent(basis) / 1000;
  }

  /**
   * Returns the acidity stated as an acid in grams per 100 mL of sample, the per cent weight per
   * volume.
   *
   * @param basis the acid to state it as
   * @return the acidity in g/100 mL of that acid
   * @throws IllegalArgumentException if the equivalent of the basis is not above 0
   */
  public double inGramsPer100MillilitresAs(AcidBasis basis) {
    return inGramsPerLitreAs(basis) / 10;
  }

  /**
   * Returns the acidity stated as an acid in grams per 100 g of sample.
   *
   * @param basis the acid to state it as
   * @param density the density of the sample
   * @return the acidity in g/100 g of that acid
   * @throws IllegalArgumentException if the equivalent of the basis is not above 0
   */
  public double inGramsPer100GramsAs(AcidBasis basis, Density density) {
    return inGramsPerLitreAs(basis) * 100 / density.inKilogramsPerCubicMetre();
  }

  /**
   * Returns the acidity stated as a mass concentration of an acid.
   *
   * @param basis the acid to state it as
   * @return the mass concentration of that acid
   * @throws IllegalArgumentException if the acidity is negative, or the equivalent of the basis is
   *     not above 0
   */
  public MassConcentration asMassConcentration(AcidBasis basis) {
    return MassConcentration.ofGramsPerLitre(inGramsPerLitreAs(basis));
  }

  /**
   * Adds a titratable acidity to the same end point.
   *
   * @param other the titratable acidity to add
   * @return the sum
   * @throws IllegalArgumentException if the end points differ
   */
  public TitratableAcidity plus(TitratableAcidity other) {
    return ofMilliequivalentsPerLitre(
        milliequivalentsPerLitre + other.milliequivalentsPerLitre,
        EndPoints.shared(NAME, endPoint, other.endPoint));
  }

  /**
   * Subtracts a titratable acidity to the same end point.
   *
   * @param other the titratable acidity to take away
   * @return the difference
   * @throws IllegalArgumentException if the end points differ
   */
  public TitratableAcidity minus(TitratableAcidity other) {
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
  public TitratableAcidity times(double factor) {
    return ofMilliequivalentsPerLitre(milliequivalentsPerLitre * factor, endPoint);
  }

  /**
   * Compares by size.
   *
   * @param other the titratable acidity to compare with
   * @return a negative number, zero or a positive number as this value is smaller than, equal to or
   *     larger than the other
   * @throws IllegalArgumentException if the end points differ
   */
  @Override
  public int compareTo(TitratableAcidity other) {
    EndPoints.shared(NAME, endPoint, other.endPoint);
    return Double.compare(milliequivalentsPerLitre, other.milliequivalentsPerLitre);
  }

  /**
   * Tells whether the other object is a titratable acidity of exactly the same size and end point.
   *
   * @param other the object to compare with
   * @return true if size and end point are equal
   */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof TitratableAcidity that
        && Double.compare(milliequivalentsPerLitre, that.milliequivalentsPerLitre) == 0
        && endPoint.equals(that.endPoint);
  }

  @Override
  public int hashCode() {
    return Objects.hash(milliequivalentsPerLitre, endPoint);
  }

  /**
   * Returns the acidity in mEq/L with its end point, in a form that the readers of {@code
   * org.brewchem.units} read back.
   *
   * @return such as {@code 31.1 mEq/L, to pH 8.2}
   */
  @Override
  public String toString() {
    return ScalarValue.text(milliequivalentsPerLitre, "mEq/L") + EndPoints.text(endPoint);
  }

  private static TitratableAcidity fromGramsPerLitre(
      double gramsPerLitre, AcidBasis basis, PH endPoint, double stated, String statedUnit) {
    return new TitratableAcidity(
        gramsPerLitre * 1000 / gramsPerEquivalent(basis),
        endPoint,
        stated,
        statedUnit + " as " + basis.name());
  }

  private static double gramsPerEquivalent(AcidBasis basis) {
    return Checks.positive("equivalent of " + basis.name(), basis.gramsPerEquivalent(), "g/Eq");
  }
}
