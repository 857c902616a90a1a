package org.brewchem.units;

import javax.measure.IncommensurableException;
import javax.measure.MetricPrefix;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import javax.measure.quantity.Dimensionless;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.Carbonation;
import org.brewchem.quantity.Conductivity;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.ElectricPotential;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.MolarMass;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TemperatureDifference;
import org.brewchem.quantity.Volume;
import org.brewchem.quantity.VolumeRatio;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.ProductUnit;
import tech.units.indriya.unit.Units;

/**
 * The physical values as quantities of JSR-385, in and out. What has a scale of its own (pH,
 * specific gravity, equivalents, and the alkalinities, hardness and acidities stated in them) is
 * converted by {@link JavaLabMeasure}.
 *
 * <p>The unit of an incoming quantity is checked against the dimension that the method names; the
 * type parameter alone is no guarantee, because {@code Quantity.asType} does not look at the unit.
 * Dimension is all that can be checked: a density passes for a mass concentration where the caller
 * asks for one. A conversion costs microseconds, so convert at the edge and calculate with the
 * values of this library.
 */
public final class JavaMeasure {

  private static final Unit<Dimensionless> PLAIN_NUMBER = new ProductUnit<>();
  private static final Unit<javax.measure.quantity.Volume> LITRE = Units.LITRE;
  private static final Unit<javax.measure.quantity.Mass> GRAM = Units.GRAM;
  private static final Unit<javax.measure.quantity.AmountOfSubstance> MOLE = Units.MOLE;
  private static final Unit<javax.measure.quantity.Pressure> KILOPASCAL =
      MetricPrefix.KILO(Units.PASCAL);
  private static final Unit<javax.measure.quantity.ElectricPotential> VOLT = Units.VOLT;
  private static final Unit<MassPerAmount> GRAM_PER_MOLE = new ProductUnit<>(GRAM.divide(MOLE));
  private static final Unit<MassPerVolume> GRAM_PER_LITRE = new ProductUnit<>(GRAM.divide(LITRE));
  private static final Unit<MassPerVolume> KILOGRAM_PER_CUBIC_METRE =
      new ProductUnit<>(Units.KILOGRAM.divide(Units.CUBIC_METRE));
  private static final Unit<AmountPerMass> MOLE_PER_KILOGRAM =
      new ProductUnit<>(MOLE.divide(Units.KILOGRAM));
  private static final Unit<AmountPerVolume> MOLE_PER_LITRE = new ProductUnit<>(MOLE.divide(LITRE));

  private static final Unit<ConductancePerLength> MICROSIEMENS_PER_CENTIMETRE =
      new ProductUnit<>(MetricPrefix.MICRO(Units.SIEMENS).divide(MetricPrefix.CENTI(Units.METRE)));

  private JavaMeasure() {}

  /** Conductance per length, the kind of a conductivity; JSR-385 has none. */
  public interface ConductancePerLength extends Quantity<ConductancePerLength> {}

  /** Mass per volume, the kind of a density and of a mass concentration; JSR-385 has none. */
  public interface MassPerVolume extends Quantity<MassPerVolume> {}

  /** Amount of substance per volume, the kind of an amount concentration; JSR-385 has none. */
  public interface AmountPerVolume extends Quantity<AmountPerVolume> {}

  /** Amount of substance per mass, the kind of a molality; JSR-385 has none. */
  public interface AmountPerMass extends Quantity<AmountPerMass> {}

  /** Mass per amount of substance, the kind of a molar mass; JSR-385 has none. */
  public interface MassPerAmount extends Quantity<MassPerAmount> {}

  /**
   * Returns the volume that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in any unit of volume
   * @return the volume
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static Volume volume(Quantity<?> quantity) {
    return Volume.ofLitres(numberIn(LITRE, quantity, "volume"));
  }

  /**
   * Returns a volume as a JSR-385 quantity.
   *
   * @param value the volume
   * @return the quantity in litres
   */
  public static Quantity<javax.measure.quantity.Volume> toQuantity(Volume value) {
    return Quantities.getQuantity(value.inLitres(), LITRE);
  }

  /**
   * Returns the mass that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in any unit of mass
   * @return the mass
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static Mass mass(Quantity<?> quantity) {
    return Mass.ofGrams(numberIn(GRAM, quantity, "mass"));
  }

  /**
   * Returns a mass as a JSR-385 quantity.
   *
   * @param value the mass
   * @return the quantity in grams
   */
  public static Quantity<javax.measure.quantity.Mass> toQuantity(Mass value) {
    return Quantities.getQuantity(value.inGrams(), GRAM);
  }

  /**
   * Returns the amount of substance that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in any unit of amount of substance
   * @return the amount of substance
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static AmountOfSubstance amountOfSubstance(Quantity<?> quantity) {
    return AmountOfSubstance.ofMoles(numberIn(MOLE, quantity, "amount of substance"));
  }

  /**
   * Returns an amount of substance as a JSR-385 quantity.
   *
   * @param value the amount of substance
   * @return the quantity in moles
   */
  public static Quantity<javax.measure.quantity.AmountOfSubstance> toQuantity(
      AmountOfSubstance value) {
    return Quantities.getQuantity(value.inMoles(), MOLE);
  }

  /**
   * Returns the molar mass that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in any unit of mass per amount of substance
   * @return the molar mass
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static MolarMass molarMass(Quantity<?> quantity) {
    return MolarMass.ofGramsPerMole(numberIn(GRAM_PER_MOLE, quantity, "molar mass"));
  }

  /**
   * Returns a molar mass as a JSR-385 quantity.
   *
   * @param value the molar mass
   * @return the quantity in g/mol
   */
  public static Quantity<MassPerAmount> toQuantity(MolarMass value) {
    return Quantities.getQuantity(value.inGramsPerMole(), GRAM_PER_MOLE);
  }

  /**
   * Returns the density that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in any unit of mass per volume
   * @return the density
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static Density density(Quantity<?> quantity) {
    return Density.ofKilogramsPerCubicMetre(
        numberIn(KILOGRAM_PER_CUBIC_METRE, quantity, "density"));
  }

  /**
   * Returns a density as a JSR-385 quantity.
   *
   * @param value the density
   * @return the quantity in kg/m3
   */
  public static Quantity<MassPerVolume> toQuantity(Density value) {
    return Quantities.getQuantity(value.inKilogramsPerCubicMetre(), KILOGRAM_PER_CUBIC_METRE);
  }

  /**
   * Returns the mass concentration that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in any unit of mass per volume
   * @return the mass concentration
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static MassConcentration massConcentration(Quantity<?> quantity) {
    return MassConcentration.ofGramsPerLitre(
        numberIn(GRAM_PER_LITRE, quantity, "mass concentration"));
  }

  /**
   * Returns a mass concentration as a JSR-385 quantity.
   *
   * @param value the mass concentration
   * @return the quantity in g/L
   */
  public static Quantity<MassPerVolume> toQuantity(MassConcentration value) {
    return Quantities.getQuantity(value.inGramsPerLitre(), GRAM_PER_LITRE);
  }

  /**
   * Returns the amount concentration that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in any unit of amount of substance per volume
   * @return the amount concentration
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static AmountConcentration amountConcentration(Quantity<?> quantity) {
    return AmountConcentration.ofMolesPerLitre(
        numberIn(MOLE_PER_LITRE, quantity, "amount concentration"));
  }

  /**
   * Returns an amount concentration as a JSR-385 quantity.
   *
   * @param value the amount concentration
   * @return the quantity in mol/L
   */
  public static Quantity<AmountPerVolume> toQuantity(AmountConcentration value) {
    return Quantities.getQuantity(value.inMolesPerLitre(), MOLE_PER_LITRE);
  }

  /**
   * Returns the mass fraction that a JSR-385 quantity states.
   *
   * @param quantity the quantity without a dimension, such as a number of per cent
   * @return the mass fraction
   * @throws IllegalArgumentException if the quantity has a dimension, or the value does not allow
   *     its number
   */
  public static MassFraction massFraction(Quantity<?> quantity) {
    return MassFraction.of(numberIn(PLAIN_NUMBER, quantity, "mass fraction"));
  }

  /**
   * Returns a mass fraction as a JSR-385 quantity.
   *
   * @param value the mass fraction
   * @return the quantity as a plain number
   */
  public static Quantity<Dimensionless> toQuantity(MassFraction value) {
    return Quantities.getQuantity(value.fraction(), PLAIN_NUMBER);
  }

  /**
   * Returns the volume ratio that a JSR-385 quantity states.
   *
   * @param quantity the quantity without a dimension, such as litres per litre
   * @return the volume ratio
   * @throws IllegalArgumentException if the quantity has a dimension, or the value does not allow
   *     its number
   */
  public static VolumeRatio volumeRatio(Quantity<?> quantity) {
    return VolumeRatio.of(numberIn(PLAIN_NUMBER, quantity, "volume ratio"));
  }

  /**
   * Returns a volume ratio as a JSR-385 quantity.
   *
   * @param value the volume ratio
   * @return the quantity as a plain number
   */
  public static Quantity<Dimensionless> toQuantity(VolumeRatio value) {
    return Quantities.getQuantity(value.ratio(), PLAIN_NUMBER);
  }

  /**
   * Returns the molality that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in any unit of amount of substance per mass
   * @return the molality
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static Molality molality(Quantity<?> quantity) {
    return Molality.ofMolesPerKilogram(numberIn(MOLE_PER_KILOGRAM, quantity, "molality"));
  }

  /**
   * Returns a molality as a JSR-385 quantity.
   *
   * @param value the molality
   * @return the quantity in mol/kg
   */
  public static Quantity<AmountPerMass> toQuantity(Molality value) {
    return Quantities.getQuantity(value.inMolesPerKilogram(), MOLE_PER_KILOGRAM);
  }

  /**
   * Returns the carbonation that a JSR-385 quantity states.
   *
   * @param quantity the dissolved CO2, in any unit of mass per volume
   * @return the carbonation
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static Carbonation carbonation(Quantity<?> quantity) {
    return Carbonation.ofGramsPerLitre(numberIn(GRAM_PER_LITRE, quantity, "carbonation"));
  }

  /**
   * Returns a carbonation as a JSR-385 quantity.
   *
   * @param value the carbonation
   * @return the dissolved CO2 in g/L
   */
  public static Quantity<MassPerVolume> toQuantity(Carbonation value) {
    return Quantities.getQuantity(value.inGramsPerLitre(), GRAM_PER_LITRE);
  }

  /**
   * Returns the absolute pressure that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in any unit of pressure
   * @return the absolute pressure
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static Pressure pressure(Quantity<?> quantity) {
    return Pressure.ofKilopascals(numberIn(KILOPASCAL, quantity, "absolute pressure"));
  }

  /**
   * Returns an absolute pressure as a JSR-385 quantity.
   *
   * @param value the absolute pressure
   * @return the quantity in kPa
   */
  public static Quantity<javax.measure.quantity.Pressure> toQuantity(Pressure value) {
    return Quantities.getQuantity(value.inKilopascals(), KILOPASCAL);
  }

  /**
   * Returns the electric potential that a JSR-385 quantity states.
   *
   * @param quantity the quantity, in any unit of electric potential
   * @return the electric potential
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static ElectricPotential electricPotential(Quantity<?> quantity) {
    return ElectricPotential.ofVolts(numberIn(VOLT, quantity, "electric potential"));
  }

  /**
   * Returns an electric potential as a JSR-385 quantity.
   *
   * @param value the electric potential
   * @return the quantity in volts
   */
  public static Quantity<javax.measure.quantity.ElectricPotential> toQuantity(
      ElectricPotential value) {
    return Quantities.getQuantity(value.inVolts(), VOLT);
  }

  /**
   * Returns the conductivity at 25 °C that a JSR-385 quantity states; such a quantity has no place
   * for the reference temperature.
   *
   * @param quantity the quantity, in any unit of conductance per length, for 25 °C
   * @return the conductivity
   * @throws IllegalArgumentException if the quantity has another dimension, or the value does not
   *     allow its number
   */
  public static Conductivity conductivity(Quantity<?> quantity) {
    return Conductivity.ofMicrosiemensPerCentimetreAt25(
        numberIn(MICROSIEMENS_PER_CENTIMETRE, quantity, "conductivity"));
  }

  /**
   * Returns a conductivity at 25 °C as a JSR-385 quantity.
   *
   * @param value the conductivity
   * @return the quantity in microsiemens per centimetre
   */
  public static Quantity<ConductancePerLength> toQuantity(Conductivity value) {
    return Quantities.getQuantity(
        value.inMicrosiemensPerCentimetreAt25(), MICROSIEMENS_PER_CENTIMETRE);
  }

  /**
   * Returns the temperature that a JSR-385 quantity states, with its scale counted from its own
   * zero.
   *
   * @param quantity the quantity of absolute scale, in any unit of temperature
   * @return the temperature
   * @throws IllegalArgumentException if the quantity is not a temperature, is marked as a
   *     difference, or lies below absolute zero
   */
  public static Temperature temperature(Quantity<?> quantity) {
    if (quantity.getScale() != Quantity.Scale.ABSOLUTE) {
      throw new IllegalArgumentException(
          "temperature: "
              + text(quantity)
              + " is a difference (its scale is relative) and no temperature; "
              + "a quantity of absolute scale is allowed");
    }
    return Temperature.ofKelvin(numberIn(Units.KELVIN, quantity, "temperature"));
  }

  /**
   * Returns a temperature as a JSR-385 quantity. It is given in kelvin because the sum of two
   * quantities in degrees Celsius counts the zero of the scale twice.
   *
   * @param value the temperature
   * @return the quantity in kelvin, of absolute scale
   */
  public static Quantity<javax.measure.quantity.Temperature> toQuantity(Temperature value) {
    return Quantities.getQuantity(value.inKelvin(), Units.KELVIN);
  }

  /**
   * Returns the temperature difference that a JSR-385 quantity states. A number of kelvins may be a
   * temperature or a difference and is taken as what this method asks for; a quantity in degrees
   * Celsius or Fahrenheit must be marked as of relative scale.
   *
   * @param quantity the quantity in kelvin or a multiple of it, or of relative scale
   * @return the difference
   * @throws IllegalArgumentException if the quantity is not of temperature, or is a temperature on
   *     a scale with its own zero
   */
  public static TemperatureDifference temperatureDifference(Quantity<?> quantity) {
    UnitConverter toKelvin = converter(Units.KELVIN, quantity, "temperature difference");
    double zero = toKelvin.convert(0.0);
    if (zero != 0 && quantity.getScale() == Quantity.Scale.ABSOLUTE) {
      throw new IllegalArgumentException(
          "temperature difference: "
              + text(quantity)
              + " is a temperature and no difference; "
              + "a number of kelvins or a quantity of relative scale is allowed");
    }
    double kelvinPerUnit = toKelvin.convert(1.0) - zero;
    return TemperatureDifference.ofKelvin(number(quantity) * kelvinPerUnit);
  }

  /**
   * Returns a temperature difference as a JSR-385 quantity.
   *
   * @param value the difference
   * @return the quantity in kelvin, of relative scale
   */
  public static Quantity<javax.measure.quantity.Temperature> toQuantity(
      TemperatureDifference value) {
    return Quantities.getQuantity(value.inKelvin(), Units.KELVIN, Quantity.Scale.RELATIVE);
  }

  static double numberIn(Unit<?> unit, Quantity<?> quantity, String name) {
    return converter(unit, quantity, name).convert(number(quantity));
  }

  /** The number may be an Integer, a BigDecimal or a fraction, whatever the library chose. */
  private static double number(Quantity<?> quantity) {
    return quantity.getValue().doubleValue();
  }

  /** The text of a quantity follows the default locale; that of a unit does not. */
  private static String text(Quantity<?> quantity) {
    return number(quantity) + " " + quantity.getUnit();
  }

  private static UnitConverter converter(Unit<?> unit, Quantity<?> quantity, String name) {
    try {
      return quantity.getUnit().getConverterToAny(unit);
    } catch (IncommensurableException e) {
      throw new IllegalArgumentException(
          name
              + ": "
              + text(quantity)
              + " is not possible; a quantity that converts to "
              + unit
              + " is allowed",
          e);
    }
  }
}
