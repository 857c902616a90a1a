package org.brewchem.units;

import java.util.Objects;
import javax.measure.MetricPrefix;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.SpecificGravity;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.BaseUnit;
import tech.units.indriya.unit.ProductUnit;
import tech.units.indriya.unit.UnitDimension;
import tech.units.indriya.unit.Units;

/**
 * The values of the laboratory that have units of their own as quantities of JSR-385, in and out:
 * pH, specific gravity, and what is counted in equivalents. The units are defined here, each with a
 * dimension of its own, so that an amount concentration does not pass for a charge concentration.
 *
 * <p>JSR-385 knows neither a basis nor an end point. A hardness, an alkalinity and an acidity are
 * all milliequivalents per litre there, and the caller says which is meant by the method; the end
 * point of a titration has to be handed over beside the quantity.
 */
public final class JavaLabMeasure {

  /** The equivalent, Eq: the amount of an ion times its charge number. */
  public static final Unit<Charge> EQUIVALENT = new BaseUnit<>("Eq", UnitDimension.parse('E'));

  /** The step of the pH scale, with the symbol pH. */
  public static final Unit<Acidity> PH_UNIT = new BaseUnit<>("pH", UnitDimension.parse('P'));

  /** The specific gravity 20/20, with the symbol SG. */
  public static final Unit<Gravity> SPECIFIC_GRAVITY =
      new BaseUnit<>("SG", UnitDimension.parse('G'));

  /** Milliequivalents per litre, mEq/L. */
  public static final Unit<ChargePerVolume> MILLIEQUIVALENT_PER_LITRE =
      new ProductUnit<>(MetricPrefix.MILLI(EQUIVALENT).divide(Units.LITRE));

  /** Milliequivalents per litre and step of pH. */
  public static final Unit<ChargePerVolumeAndPH> MILLIEQUIVALENT_PER_LITRE_PER_PH =
      new ProductUnit<>(MILLIEQUIVALENT_PER_LITRE.divide(PH_UNIT));

  private JavaLabMeasure() {}

  /** Charge in equivalents; JSR-385 has no such kind. */
  public interface Charge extends Quantity<Charge> {}

  /** The kind of a pH; JSR-385 has none. */
  public interface Acidity extends Quantity<Acidity> {}

  /** The kind of a specific gravity; JSR-385 has none. */
  public interface Gravity extends Quantity<Gravity> {}

  /**
   * Charge per volume, the kind of a charge concentration, a hardness, an alkalinity and an
   * acidity; JSR-385 has none.
   */
  public interface ChargePerVolume extends Quantity<ChargePerVolume> {}

  /** Charge per volume and step of pH, the kind of a buffer capacity; JSR-385 has none. */
  public interface ChargePerVolumeAndPH extends Quantity<ChargePerVolumeAndPH> {}

  /**
   * Returns the pH that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in {@link #PH_UNIT} or a multiple of it
   * @return the pH
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static PH pH(Quantity<?> quantity) {
    return PH.of(JavaMeasure.numberIn(PH_UNIT, quantity, "pH"));
  }

  /**
   * Returns a pH as a JSR-385 quantity.
   *
   * @param value the pH
   * @return the quantity in {@link #PH_UNIT}
   */
  public static Quantity<Acidity> toQuantity(PH value) {
    return Quantities.getQuantity(value.value(), PH_UNIT);
  }

  /**
   * Returns the specific gravity that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in {@link #SPECIFIC_GRAVITY} or a multiple of it
   * @return the specific gravity
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static SpecificGravity specificGravity(Quantity<?> quantity) {
    return SpecificGravity.of(JavaMeasure.numberIn(SPECIFIC_GRAVITY, quantity, "specific gravity"));
  }

  /**
   * Returns a specific gravity as a JSR-385 quantity.
   *
   * @param value the specific gravity
   * @return the quantity in {@link #SPECIFIC_GRAVITY}
   */
  public static Quantity<Gravity> toQuantity(SpecificGravity value) {
    return Quantities.getQuantity(value.value(), SPECIFIC_GRAVITY);
  }

  /**
   * Returns the charge concentration that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in {@link #MILLIEQUIVALENT_PER_LITRE} or a multiple of it
   * @return the charge concentration
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static ChargeConcentration chargeConcentration(Quantity<?> quantity) {
    return ChargeConcentration.ofMilliequivalentsPerLitre(
        JavaMeasure.numberIn(MILLIEQUIVALENT_PER_LITRE, quantity, "charge concentration"));
  }

  /**
   * Returns a charge concentration as a JSR-385 quantity.
   *
   * @param value the charge concentration
   * @return the quantity in {@link #MILLIEQUIVALENT_PER_LITRE}
   */
  public static Quantity<ChargePerVolume> toQuantity(ChargeConcentration value) {
    return Quantities.getQuantity(value.inMilliequivalentsPerLitre(), MILLIEQUIVALENT_PER_LITRE);
  }

  /**
   * Returns the buffer capacity that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in {@link #MILLIEQUIVALENT_PER_LITRE_PER_PH} or a multiple of it
   * @return the buffer capacity
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static BufferCapacity bufferCapacity(Quantity<?> quantity) {
    return BufferCapacity.ofMilliequivalentsPerLitrePerPH(
        JavaMeasure.numberIn(MILLIEQUIVALENT_PER_LITRE_PER_PH, quantity, "buffer capacity"));
  }

  /**
   * Returns a buffer capacity as a JSR-385 quantity.
   *
   * @param value the buffer capacity
   * @return the quantity in {@link #MILLIEQUIVALENT_PER_LITRE_PER_PH}
   */
  public static Quantity<ChargePerVolumeAndPH> toQuantity(BufferCapacity value) {
    return Quantities.getQuantity(
        value.inMilliequivalentsPerLitrePerPH(), MILLIEQUIVALENT_PER_LITRE_PER_PH);
  }

  /**
   * Returns the hardness that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in {@link #MILLIEQUIVALENT_PER_LITRE} or a multiple of it
   * @return the hardness
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static Hardness hardness(Quantity<?> quantity) {
    return Hardness.ofMilliequivalentsPerLitre(
        JavaMeasure.numberIn(MILLIEQUIVALENT_PER_LITRE, quantity, "hardness"));
  }

  /**
   * Returns a hardness as a JSR-385 quantity.
   *
   * @param value the hardness
   * @return the quantity in {@link #MILLIEQUIVALENT_PER_LITRE}
   */
  public static Quantity<ChargePerVolume> toQuantity(Hardness value) {
    return Quantities.getQuantity(value.inMilliequivalentsPerLitre(), MILLIEQUIVALENT_PER_LITRE);
  }

  /**
   * Returns the carbonate alkalinity that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in {@link #MILLIEQUIVALENT_PER_LITRE} or a multiple of it
   * @return the carbonate alkalinity
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static CarbonateAlkalinity carbonateAlkalinity(Quantity<?> quantity) {
    return CarbonateAlkalinity.ofMilliequivalentsPerLitre(
        JavaMeasure.numberIn(MILLIEQUIVALENT_PER_LITRE, quantity, "carbonate alkalinity"));
  }

  /**
   * Returns a carbonate alkalinity as a JSR-385 quantity.
   *
   * @param value the carbonate alkalinity
   * @return the quantity in {@link #MILLIEQUIVALENT_PER_LITRE}
   */
  public static Quantity<ChargePerVolume> toQuantity(CarbonateAlkalinity value) {
    return Quantities.getQuantity(value.inMilliequivalentsPerLitre(), MILLIEQUIVALENT_PER_LITRE);
  }

  /**
   * Returns the residual alkalinity that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in {@link #MILLIEQUIVALENT_PER_LITRE} or a multiple of it
   * @return the residual alkalinity
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static ResidualAlkalinity residualAlkalinity(Quantity<?> quantity) {
    return ResidualAlkalinity.ofMilliequivalentsPerLitre(
        JavaMeasure.numberIn(MILLIEQUIVALENT_PER_LITRE, quantity, "residual alkalinity"));
  }

  /**
   * Returns a residual alkalinity as a JSR-385 quantity.
   *
   * @param value the residual alkalinity
   * @return the quantity in {@link #MILLIEQUIVALENT_PER_LITRE}
   */
  public static Quantity<ChargePerVolume> toQuantity(ResidualAlkalinity value) {
    return Quantities.getQuantity(value.inMilliequivalentsPerLitre(), MILLIEQUIVALENT_PER_LITRE);
  }

  /**
   * Returns the titration alkalinity that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in {@link #MILLIEQUIVALENT_PER_LITRE} or a multiple of it
   * @param endPoint the pH that the titration ended at, which a JSR-385 quantity cannot carry
   * @return the titration alkalinity
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static TitrationAlkalinity titrationAlkalinity(Quantity<?> quantity, PH endPoint) {
    Objects.requireNonNull(endPoint, "endPoint");
    return TitrationAlkalinity.ofMilliequivalentsPerLitre(
        JavaMeasure.numberIn(MILLIEQUIVALENT_PER_LITRE, quantity, "titration alkalinity"),
        endPoint);
  }

  /**
   * Returns a titration alkalinity as a JSR-385 quantity without its end point.
   *
   * @param value the titration alkalinity
   * @return the quantity in {@link #MILLIEQUIVALENT_PER_LITRE}
   */
  public static Quantity<ChargePerVolume> toQuantity(TitrationAlkalinity value) {
    return Quantities.getQuantity(value.inMilliequivalentsPerLitre(), MILLIEQUIVALENT_PER_LITRE);
  }

  /**
   * Returns the titratable acidity that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in {@link #MILLIEQUIVALENT_PER_LITRE} or a multiple of it
   * @param endPoint the pH that the titration ended at, which a JSR-385 quantity cannot carry
   * @return the titratable acidity
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static TitratableAcidity titratableAcidity(Quantity<?> quantity, PH endPoint) {
    Objects.requireNonNull(endPoint, "endPoint");
    return TitratableAcidity.ofMilliequivalentsPerLitre(
        JavaMeasure.numberIn(MILLIEQUIVALENT_PER_LITRE, quantity, "titratable acidity"), endPoint);
  }

  /**
   * Returns a titratable acidity as a JSR-385 quantity without its end point.
   *
   * @param value the titratable acidity
   * @return the quantity in {@link #MILLIEQUIVALENT_PER_LITRE}
   */
  public static Quantity<ChargePerVolume> toQuantity(TitratableAcidity value) {
    return Quantities.getQuantity(value.inMilliequivalentsPerLitre(), MILLIEQUIVALENT_PER_LITRE);
  }
}
