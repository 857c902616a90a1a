package org.brewchem.buffer;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * One portion of a liquid titrated in one direction: the strong base that was added before each
 * reading, the dilution by it, and the pH that was read. Immutable.
 *
 * <p>Adding alkali says nothing about the pH below the liquid's own; adding strong acid to a second
 * portion does. A fit of both knows both sides.
 *
 * <p>The base is known with an uncertainty of its own at each reading, and with what is common to
 * all: a {@link #with source} moves every reading by its column.
 */
public final class BufferReadings {

  /** Reading of a burette, mL, where nothing else is said (common practice, no source). */
  private static final Volume USUAL_VOLUME_UNCERTAINTY = Volume.ofMillilitres(0.02);

  private static final double KILOGRAMS_PER_LITRE =
      Contents.pure(Temperature.ofCelsius(20), Chemistry.standard()).kilogramsPerLitre();

  private final Temperature temperature;
  private final double[] base;
  private final double[] dilution;
  private final double[] pH;
  private final double baseUncertainty;
  private final Map<Source, double[]> columns;

  private BufferReadings(
      Temperature temperature,
      double[] base,
      double[] dilution,
      double[] pH,
      double baseUncertainty,
      Map<Source, double[]> columns) {
    this.temperature = Objects.requireNonNull(temperature, "temperature");
    if (base.length != pH.length || dilution.length != pH.length) {
      throw new IllegalArgumentException(
          "readings: "
              + base.length
              + " of base, "
              + dilution.length
              + " of dilution and "
              + pH.length
              + " of pH are not possible; one of each to each reading is needed");
    }
    this.base = base.clone();
    this.dilution = dilution.clone();
    this.pH = pH.clone();
    for (int i = 0; i < pH.length; i++) {
      Checks.finite("base of reading " + (i + 1), base[i], "Eq/kg");
      Checks.nonNegative("dilution of reading " + (i + 1), dilution[i], "");
      Checks.inRange("pH of reading " + (i + 1), pH[i], "", 0, 14);
    }
    this.baseUncertainty = Checks.nonNegative("uncertainty of the base", baseUncertainty, "Eq/kg");
    this.columns = Collections.unmodifiableMap(columns);
  }

  /**
   * Makes readings of plain arrays, at 20 °C.
   *
   * @param base strong base added before each reading, eq per kg of the liquid's water; negative
   *     for acid
   * @param dilution titrant and water per volume of the liquid at each reading, each 0 or more
   * @param pH the readings, 0 to 14
   * @param baseUncertainty standard uncertainty of the base at a single reading, independent of the
   *     others, Eq/kg, 0 or more
   * @return the readings
   * @throws IllegalArgumentException if the lengths differ or a number is out of range
   */
  public static BufferReadings of(
      double[] base, double[] dilution, double[] pH, double baseUncertainty) {
    return new BufferReadings(
        Temperature.ofCelsius(20), base, dilution, pH, baseUncertainty, Map.of());
  }

  /**
   * Makes the readings upwards, with a strong univalent base, volumes read to 0.02 mL.
   *
   * @param sample the portion titrated, more than 0
   * @param alkali the concentration of the base, more than 0
   * @param millilitres total volume added before each reading, mL, each 0 or more; 0 for the sample
   *     itself
   * @param pH the readings, 0 to 14, as many
   * @return the readings
   * @throws IllegalArgumentException if an argument is out of range or the lengths differ
   */
  public static BufferReadings withAlkali(
      Volume sample, AmountConcentration alkali, double[] millilitres, double[] pH) {
    return withAlkali(sample, alkali, USUAL_VOLUME_UNCERTAINTY, millilitres, pH);
  }

  /**
   * Makes the readings upwards, with a strong univalent base.
   *
   * @param sample the portion titrated, more than 0
   * @param alkali the concentration of the base, more than 0
   * @param volumeUncertainty standard uncertainty of a single volume
   * @param millilitres total volume added before each reading, mL, each 0 or more; 0 for the sample
   *     itself
   * @param pH the readings, 0 to 14, as many
   * @return the readings
   * @throws IllegalArgumentException if an argument is out of range or the lengths differ
   */
  public static BufferReadings withAlkali(
      Volume sample,
      AmountConcentration alkali,
      Volume volumeUncertainty,
      double[] millilitres,
      double[] pH) {
    double strength = Checks.positive("alkali", alkali.inMolesPerLitre(), "mol/L");
    return titrated(sample, strength, volumeUncertainty, millilitres, pH);
  }

  /**
   * Makes the readings downwards, with a strong univalent acid, volumes read to 0.02 mL.
   *
   * @param sample the portion titrated, more than 0
   * @param acid the concentration of the acid, more than 0
   * @param millilitres total volume added before each reading, mL, each 0 or more
   * @param pH the readings, 0 to 14, as many
   * @return the readings
   * @throws IllegalArgumentException if an argument is out of range or the lengths differ
   */
  public static BufferReadings withAcid(
      Volume sample, AmountConcentration acid, double[] millilitres, double[] pH) {
    return withAcid(sample, acid, USUAL_VOLUME_UNCERTAINTY, millilitres, pH);
  }

  /**
   * Makes the readings downwards, with a strong univalent acid.
   *
   * @param sample the portion titrated, more than 0
   * @param acid the concentration of the acid, more than 0
   * @param volumeUncertainty standard uncertainty of a single volume
   * @param millilitres total volume added before each reading, mL, each 0 or more
   * @param pH the readings, 0 to 14, as many
   * @return the readings
   * @throws IllegalArgumentException if an argument is out of range or the lengths differ
   */
  public static BufferReadings withAcid(
      Volume sample,
      AmountConcentration acid,
      Volume volumeUncertainty,
      double[] millilitres,
      double[] pH) {
    double strength = Checks.positive("acid", acid.inMolesPerLitre(), "mol/L");
    return titrated(sample, -strength, volumeUncertainty, millilitres, pH);
  }

  private static BufferReadings titrated(
      Volume sample,
      double equivalentsPerLitre,
      Volume volumeUncertainty,
      double[] millilitres,
      double[] pH) {
    double portion = Checks.positive("sample", sample.inMillilitres(), "mL");
    if (millilitres.length != pH.length) {
      throw new IllegalArgumentException(
          "readings: "
              + millilitres.length
              + " volumes and "
              + pH.length
              + " pH values are not possible; one pH to each volume is needed");
    }
    double[] base = new double[pH.length];
    double[] dilution = new double[pH.length];
    for (int i = 0; i < pH.length; i++) {
      Checks.nonNegative("volume of reading " + (i + 1), millilitres[i], "mL");
      base[i] = equivalentsPerLitre * millilitres[i] / portion / KILOGRAMS_PER_LITRE;
      dilution[i] = millilitres[i] / portion;
    }
    return of(
        base,
        dilution,
        pH,
        Math.abs(equivalentsPerLitre)
            * volumeUncertainty.inMillilitres()
            / portion
            / KILOGRAMS_PER_LITRE);
  }

  /**
   * States that water was added to the portion before the first reading.
   *
   * @param water its volume
   * @param portion the volume of the portion, above 0
   * @return the readings with that dilution besides
   * @throws IllegalArgumentException if the portion is 0
   */
  public BufferReadings dilutedBy(Volume water, Volume portion) {
    double more = water.inMillilitres() / Checks.positive("portion", portion.inMillilitres(), "mL");
    double[] diluted = dilution.clone();
    for (int i = 0; i < diluted.length; i++) {
      diluted[i] += more;
    }
    return new BufferReadings(temperature, base, diluted, pH, baseUncertainty, columns);
  }

  /**
   * States the temperature of the readings.
   *
   * @param actual 0 to 100 °C
   * @return the readings at it
   */
  public BufferReadings at(Temperature actual) {
    Checks.inRange("temperature", actual.inCelsius(), "°C", 0, 100);
    return new BufferReadings(actual, base, dilution, pH, baseUncertainty, columns);
  }

  /**
   * Adds a source of uncertainty that moves all readings together, such as the concentration of the
   * titrant. The same source in several readings, or in a pH or an acidity of the liquid,
   * correlates them.
   *
   * @param source the source
   * @param column by how much the base of each reading moves with a unit of the source, Eq/kg over
   *     the source's unit
   * @return the readings with it
   * @throws IllegalArgumentException if the column has another length or a number is not finite
   */
  public BufferReadings with(Source source, double[] column) {
    Objects.requireNonNull(source, "source");
    if (column.length != pH.length) {
      throw new IllegalArgumentException(
          source.name()
              + ": a column of "
              + column.length
              + " is not possible; one number to each of "
              + pH.length
              + " readings is needed");
    }
    Map<Source, double[]> more = new LinkedHashMap<>(columns);
    for (double slope : column) {
      Checks.finite(source.name(), slope, "Eq/kg");
    }
    double[] sum = column.clone();
    double[] before = columns.get(source);
    for (int i = 0; before != null && i < sum.length; i++) {
      sum[i] += before[i];
    }
    more.put(source, sum);
    return new BufferReadings(temperature, base, dilution, pH, baseUncertainty, more);
  }

  /**
   * States that the base of all readings is proportional to a number that is uncertain, such as the
   * concentration of the titrant over the volume of the sample.
   *
   * @param factor the number, not 0
   * @return the readings with its sources
   * @throws IllegalArgumentException if the number is 0
   */
  public BufferReadings proportionalTo(Traced factor) {
    double value = Checks.finite("factor", factor.value(), "");
    if (value == 0) {
      throw new IllegalArgumentException("factor: 0 is not possible; another number is needed");
    }
    BufferReadings all = this;
    for (Source source : factor.sources()) {
      double relative = factor.sensitivity(source) / value;
      double[] column = base.clone();
      for (int i = 0; i < column.length; i++) {
        column[i] *= relative;
      }
      all = all.with(source, column);
    }
    return all;
  }

  /**
   * Returns how many readings there are.
   *
   * @return a count
   */
  public int size() {
    return pH.length;
  }

  /**
   * Returns the temperature.
   *
   * @return the temperature of the readings
   */
  public Temperature temperature() {
    return temperature;
  }

  /**
   * Returns a reading.
   *
   * @param reading its index from 0
   * @return the pH read
   */
  public double pH(int reading) {
    return pH[reading];
  }

  double base(int reading) {
    return base[reading];
  }

  double dilution(int reading) {
    return dilution[reading];
  }

  double baseUncertainty() {
    return baseUncertainty;
  }

  Map<Source, double[]> columns() {
    return columns;
  }

  @Override
  public String toString() {
    return pH.length == 0
        ? "no readings"
        : String.format(
            Locale.ROOT, "%d readings from pH %.2f to %.2f", pH.length, pH[0], pH[pH.length - 1]);
  }
}
