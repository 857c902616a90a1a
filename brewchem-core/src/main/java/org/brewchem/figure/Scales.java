package org.brewchem.figure;

import java.util.Objects;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.VolumeRatio;

/** The scales in which figures are usually shown. */
public final class Scales {

  /** A pH with two decimals. */
  public static final Scale<PH> PH_SCALE = Scale.beforeTheNumber("pH", PH::value, PH::of, 2);

  /** Milligrams per litre with one decimal. */
  public static final Scale<MassConcentration> MILLIGRAMS_PER_LITRE =
      Scale.of(
          "mg/L",
          MassConcentration::inMilligramsPerLitre,
          MassConcentration::ofMilligramsPerLitre,
          1);

  /** Grams per hectolitre, as doses are weighed out, with two decimals. */
  public static final Scale<MassConcentration> GRAMS_PER_HECTOLITRE =
      Scale.of(
          "g/hL",
          MassConcentration::inGramsPerHectolitre,
          MassConcentration::ofGramsPerHectolitre,
          2);

  /** Millilitres per hectolitre, as doses are measured out, with two decimals. */
  public static final Scale<VolumeRatio> MILLILITRES_PER_HECTOLITRE =
      Scale.of(
          "mL/hL",
          VolumeRatio::inMillilitresPerHectolitre,
          VolumeRatio::ofMillilitresPerHectolitre,
          2);

  /** Millimoles per litre with three decimals. */
  public static final Scale<AmountConcentration> MILLIMOLES_PER_LITRE =
      Scale.of(
          "mmol/L",
          AmountConcentration::inMillimolesPerLitre,
          AmountConcentration::ofMillimolesPerLitre,
          3);

  /** Millimoles per kilogram of water with two decimals. */
  public static final Scale<Molality> MILLIMOLES_PER_KILOGRAM =
      Scale.of(
          "mmol/kg",
          m -> m.inMolesPerKilogram() * 1000,
          n -> Molality.ofMolesPerKilogram(n / 1000),
          2);

  /** Carbonate alkalinity as mg/L of CaCO3 with one decimal. */
  public static final Scale<CarbonateAlkalinity> ALKALINITY_AS_CACO3 =
      Scale.of(
          "mg/L as CaCO3",
          CarbonateAlkalinity::inMilligramsPerLitreAsCaCO3,
          CarbonateAlkalinity::ofMilligramsPerLitreAsCaCO3,
          1);

  /** Hardness as mg/L of CaCO3 with one decimal. */
  public static final Scale<Hardness> HARDNESS_AS_CACO3 =
      Scale.of(
          "mg/L as CaCO3",
          Hardness::inMilligramsPerLitreAsCaCO3,
          Hardness::ofMilligramsPerLitreAsCaCO3,
          1);

  /** Residual alkalinity as mg/L of CaCO3 with one decimal. */
  public static final Scale<ResidualAlkalinity> RESIDUAL_ALKALINITY_AS_CACO3 =
      Scale.of(
          "mg/L as CaCO3",
          ResidualAlkalinity::inMilligramsPerLitreAsCaCO3,
          ResidualAlkalinity::ofMilligramsPerLitreAsCaCO3,
          1);

  /** Residual alkalinity in German degrees with one decimal. */
  public static final Scale<ResidualAlkalinity> RESIDUAL_ALKALINITY_IN_GERMAN_DEGREES =
      Scale.of("°dH", ResidualAlkalinity::inGermanDegrees, ResidualAlkalinity::ofGermanDegrees, 1);

  /** Milliequivalents per litre and pH with one decimal. */
  public static final Scale<BufferCapacity> BUFFER_CAPACITY_SCALE =
      Scale.of(
          "mEq/L per pH",
          BufferCapacity::inMilliequivalentsPerLitrePerPH,
          BufferCapacity::ofMilliequivalentsPerLitrePerPH,
          1);

  /** Kilopascals, absolute, with three decimals. */
  public static final Scale<Pressure> KILOPASCALS =
      Scale.of("kPa absolute", Pressure::inKilopascals, Pressure::ofKilopascals, 3);

  private Scales() {}

  /**
   * Returns the scale of titratable acidities in equivalents.
   *
   * @param endPoint the end point
   * @return mEq/L with two decimals; a value to another end point is refused
   */
  public static Scale<TitratableAcidity> acidity(PH endPoint) {
    Objects.requireNonNull(endPoint, "end point");
    return Scale.of(
        "mEq/L, to " + endPoint,
        acidity -> to(endPoint, acidity).inMilliequivalentsPerLitre(),
        number -> TitratableAcidity.ofMilliequivalentsPerLitre(number, endPoint),
        2);
  }

  /**
   * Returns the scale of titratable acidities as grams of an acid.
   *
   * @param basis the acid
   * @param endPoint the end point
   * @return g/L with three decimals; a value to another end point is refused
   */
  public static Scale<TitratableAcidity> acidityAs(AcidBasis basis, PH endPoint) {
    Objects.requireNonNull(endPoint, "end point");
    double grams = basis.gramsPerEquivalent() / 1000;
    return Scale.of(
        "g/L as " + basis.name() + ", to " + endPoint,
        acidity -> to(endPoint, acidity).inMilliequivalentsPerLitre() * grams,
        number -> TitratableAcidity.ofMilliequivalentsPerLitre(number / grams, endPoint),
        3);
  }

  /**
   * Returns the scale of titration alkalinities.
   *
   * @param endPoint the end point
   * @return mEq/L with three decimals; a value to another end point is refused
   */
  public static Scale<TitrationAlkalinity> titrationAlkalinity(PH endPoint) {
    Objects.requireNonNull(endPoint, "end point");
    return Scale.of(
        "mEq/L, to " + endPoint,
        alkalinity -> to(endPoint, alkalinity).inMilliequivalentsPerLitre(),
        number -> TitrationAlkalinity.ofMilliequivalentsPerLitre(number, endPoint),
        3);
  }

  /**
   * Returns the scale of titratable acidities as grams of an acid in 100 mL.
   *
   * @param basis the acid
   * @param endPoint the end point
   * @return g/100 mL with four decimals; a value to another end point is refused
   */
  public static Scale<TitratableAcidity> acidityPer100MillilitresAs(AcidBasis basis, PH endPoint) {
    Objects.requireNonNull(endPoint, "end point");
    return acidityAs("g/100 mL", 0.1, basis, endPoint);
  }

  /**
   * Returns the scale of titratable acidities as grams of an acid in 100 g of the liquid.
   *
   * @param basis the acid
   * @param density the density of the liquid, taken as exact
   * @param endPoint the end point
   * @return g/100 g with four decimals; a value to another end point is refused
   */
  public static Scale<TitratableAcidity> acidityPer100GramsAs(
      AcidBasis basis, Density density, PH endPoint) {
    Objects.requireNonNull(endPoint, "end point");
    return acidityAs("g/100 g", 100 / density.inKilogramsPerCubicMetre(), basis, endPoint);
  }

  private static Scale<TitratableAcidity> acidityAs(
      String unit, double factor, AcidBasis basis, PH endPoint) {
    double grams = basis.gramsPerEquivalent() / 1000 * factor;
    return Scale.of(
        unit + " as " + basis.name() + ", to " + endPoint,
        acidity -> to(endPoint, acidity).inMilliequivalentsPerLitre() * grams,
        number -> TitratableAcidity.ofMilliequivalentsPerLitre(number / grams, endPoint),
        4);
  }

  /**
   * Returns the scale of titration alkalinities as calcium carbonate.
   *
   * @param endPoint the end point
   * @return mg/L as CaCO3 with one decimal; a value to another end point is refused
   */
  public static Scale<TitrationAlkalinity> titrationAlkalinityAsCaCO3(PH endPoint) {
    Objects.requireNonNull(endPoint, "end point");
    return Scale.of(
        "mg/L as CaCO3, to " + endPoint,
        alkalinity -> to(endPoint, alkalinity).inMilligramsPerLitreAsCaCO3(),
        number -> TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(number, endPoint),
        1);
  }

  // Adding nothing to that end point refuses any other.

  private static TitratableAcidity to(PH endPoint, TitratableAcidity acidity) {
    return acidity.plus(TitratableAcidity.ofMilliequivalentsPerLitre(0, endPoint));
  }

  private static TitrationAlkalinity to(PH endPoint, TitrationAlkalinity alkalinity) {
    return alkalinity.plus(TitrationAlkalinity.ofMilliequivalentsPerLitre(0, endPoint));
  }
}
