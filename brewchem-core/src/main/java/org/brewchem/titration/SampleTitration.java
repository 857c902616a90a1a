package org.brewchem.titration;

import java.util.List;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;

/**
 * The titration of a sample: what was taken, with which titrant, to which end point, and what it
 * took. Immutable; each step returns a new one, so that it reads as a laboratory note.
 *
 * <p>Unless said otherwise the sample is undiluted, there is no blank, the titration is done at 20
 * °C and with {@link Apparatus#usual()}.
 */
public final class SampleTitration {

  private final Titrant titrant;
  private final Volume sample;
  private final double predilution;
  private final Volume waterAdded;
  private final PH endPoint;
  private final Volume blank;
  private final Temperature temperature;
  private final Apparatus apparatus;
  private final List<Volume> titres;

  private SampleTitration(
      Titrant titrant,
      Volume sample,
      double predilution,
      Volume waterAdded,
      PH endPoint,
      Volume blank,
      Temperature temperature,
      Apparatus apparatus,
      List<Volume> titres) {
    this.titrant = titrant;
    this.sample = sample;
    Checks.positive("sample", sample.inMillilitres(), "mL");
    this.predilution = Checks.inRange("predilution", predilution, "", 1, Double.MAX_VALUE);
    this.waterAdded = waterAdded;
    this.endPoint = endPoint;
    this.blank = blank;
    this.temperature = temperature;
    this.apparatus = apparatus;
    this.titres = List.copyOf(titres);
  }

  static SampleTitration of(Titrant titrant, Volume sample, PH endPoint) {
    return new SampleTitration(
        titrant,
        sample,
        1,
        Volume.ofMillilitres(0),
        endPoint,
        Volume.ofMillilitres(0),
        Temperature.ofCelsius(20),
        Apparatus.usual(),
        List.of());
  }

  /**
   * Chooses the end point.
   *
   * @param chosen the pH that the titration ends at
   * @return the titration to that end point
   */
  public SampleTitration to(PH chosen) {
    return new SampleTitration(
        titrant, sample, predilution, waterAdded, chosen, blank, temperature, apparatus, titres);
  }

  /**
   * States a blank: the volume of titrant that everything but the sample takes to the same end
   * point. It is subtracted from each titre.
   *
   * @param volume the volume that the blank takes
   * @return the titration with that blank
   */
  public SampleTitration blank(Volume volume) {
    return new SampleTitration(
        titrant, sample, predilution, waterAdded, endPoint, volume, temperature, apparatus, titres);
  }

  /**
   * States that the sample was diluted before its volume was taken.
   *
   * @param factor volume after dilution over volume before, 1 or more; the result is that of the
   *     undiluted liquid
   * @return the titration of the diluted sample
   * @throws IllegalArgumentException if the factor is below 1 or not finite
   */
  public SampleTitration prediluted(double factor) {
    return new SampleTitration(
        titrant, sample, factor, waterAdded, endPoint, blank, temperature, apparatus, titres);
  }

  /**
   * States that water was added to the sample taken. It does not enter the arithmetic of the
   * result, but the pH that the sample has along the way.
   *
   * @param water the volume of water
   * @return the titration with that water
   */
  public SampleTitration into(Volume water) {
    return new SampleTitration(
        titrant, sample, predilution, water, endPoint, blank, temperature, apparatus, titres);
  }

  /**
   * States the temperature.
   *
   * @param actual the temperature of the titration
   * @return the titration at that temperature
   */
  public SampleTitration at(Temperature actual) {
    return new SampleTitration(
        titrant, sample, predilution, waterAdded, endPoint, blank, actual, apparatus, titres);
  }

  /**
   * States what it was done with.
   *
   * @param used the apparatus
   * @return the titration with that apparatus
   */
  public SampleTitration with(Apparatus used) {
    return new SampleTitration(
        titrant, sample, predilution, waterAdded, endPoint, blank, temperature, used, titres);
  }

  /**
   * States the volumes that the end point took, one for each portion of the sample.
   *
   * @param replicates one or more volumes, before the blank is subtracted
   * @return the titration with these titres
   * @throws IllegalArgumentException if there is none
   */
  public SampleTitration took(Volume... replicates) {
    if (replicates.length == 0) {
      throw new IllegalArgumentException("titres: none is not possible; one or more are needed");
    }
    return new SampleTitration(
        titrant,
        sample,
        predilution,
        waterAdded,
        endPoint,
        blank,
        temperature,
        apparatus,
        List.of(replicates));
  }

  /**
   * Records readings along the titration instead of a volume at its end.
   *
   * @param readings volume and pH, in the order in which they were taken; at least two
   * @return the log
   * @throws IllegalArgumentException if there are fewer than two
   */
  public TitrationLog log(List<Reading> readings) {
    return TitrationLog.of(this, readings);
  }

  /**
   * Records readings along the titration instead of a volume at its end.
   *
   * @param millilitres total volumes of titrant, in mL, each 0 or more
   * @param pH the pH after each
   * @return the log
   * @throws IllegalArgumentException if the lengths differ or are below two, or a value is not
   *     possible
   */
  public TitrationLog log(double[] millilitres, double[] pH) {
    return TitrationLog.of(this, Reading.list(millilitres, pH));
  }

  /**
   * Computes the titratable acidity.
   *
   * @return the acidity with its uncertainty
   * @throws IllegalStateException if the titrant is an acid or no titre was stated
   */
  public AcidityResult acidity() {
    if (titres.isEmpty()) {
      throw new IllegalStateException("titres: none was stated; say what the titration took");
    }
    return AcidityResult.of(this, titres, List.of());
  }

  /**
   * Returns the titrant.
   *
   * @return the titrant
   */
  public Titrant titrant() {
    return titrant;
  }

  /**
   * Returns the volume of sample taken.
   *
   * @return the volume
   */
  public Volume sample() {
    return sample;
  }

  /**
   * Returns how far the sample was diluted before its volume was taken.
   *
   * @return the factor, 1 or more
   */
  public double predilution() {
    return predilution;
  }

  /**
   * Returns the volume of undiluted liquid in the sample taken.
   *
   * @return the volume
   */
  public Volume undilutedSample() {
    return sample.times(1 / predilution);
  }

  /**
   * Returns the volume that stands under the burette before the first drop.
   *
   * @return sample and added water
   */
  public Volume initialVolume() {
    return sample.plus(waterAdded);
  }

  /**
   * Returns the end point.
   *
   * @return the pH that the titration ends at
   */
  public PH endPoint() {
    return endPoint;
  }

  /**
   * Returns what the blank takes.
   *
   * @return the volume, 0 when there is no blank
   */
  public Volume blank() {
    return blank;
  }

  /**
   * Returns the temperature.
   *
   * @return the temperature
   */
  public Temperature temperature() {
    return temperature;
  }

  /**
   * Returns what it was done with.
   *
   * @return the apparatus
   */
  public Apparatus apparatus() {
    return apparatus;
  }

  /** Prints titrant, sample and end point. */
  @Override
  public String toString() {
    return sample + " with " + titrant + ", to " + endPoint;
  }
}
