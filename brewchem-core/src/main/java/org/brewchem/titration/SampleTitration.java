package org.brewchem.titration;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.BufferCapacity;
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

  // The low-alkalinity method: first end point 4.3 to 4.7, the second exactly 0.3 lower, both read
  // to 0.01 (Standard Methods 2320 B, from memory).
  private static final double LEAST_FIRST_LOW = 4.3;
  private static final double GREATEST_FIRST_LOW = 4.7;
  private static final double LOW_STEP = 0.3;
  private static final double LOW_STEP_TOLERANCE = 0.005;

  private final TitrationMethod method;
  private final Titrant titrant;
  private final Volume sample;
  private final double predilution;
  private final Volume waterAdded;
  private final PH endPoint;
  private final Volume blank;
  private final Temperature temperature;
  private final Apparatus apparatus;
  private final Optional<BufferCapacity> slope;
  private final List<Volume> titres;

  /** What is changed on the way from one titration to the next. */
  private static final class Note {
    private TitrationMethod method;
    private Titrant titrant;
    private Volume sample;
    private double predilution = 1;
    private Volume waterAdded = Volume.ofMillilitres(0);
    private PH endPoint;
    private Volume blank = Volume.ofMillilitres(0);
    private Temperature temperature = Temperature.ofCelsius(20);
    private Apparatus apparatus = Apparatus.usual();
    private Optional<BufferCapacity> slope = Optional.empty();
    private List<Volume> titres = List.of();

    private Note(TitrationMethod method, Titrant titrant, Volume sample, PH endPoint) {
      this.method = method;
      this.titrant = titrant;
      this.sample = sample;
      this.endPoint = endPoint;
    }

    private SampleTitration done() {
      return new SampleTitration(this);
    }
  }

  private SampleTitration(Note note) {
    this.method = note.method;
    this.titrant = note.titrant;
    this.sample = note.sample;
    Checks.positive("sample", sample.inMillilitres(), "mL");
    this.predilution = Checks.inRange("predilution", note.predilution, "", 1, Double.MAX_VALUE);
    this.waterAdded = note.waterAdded;
    this.endPoint = note.endPoint;
    this.blank = note.blank;
    this.temperature = note.temperature;
    this.apparatus = note.apparatus;
    this.slope = note.slope;
    this.titres = note.titres;
  }

  private Note note() {
    Note note = new Note(method, titrant, sample, endPoint);
    note.predilution = predilution;
    note.waterAdded = waterAdded;
    note.blank = blank;
    note.temperature = temperature;
    note.apparatus = apparatus;
    note.slope = slope;
    note.titres = titres;
    return note;
  }

  static SampleTitration of(TitrationMethod method, Titrant titrant, Volume sample, PH endPoint) {
    return new Note(method, titrant, sample, endPoint).done();
  }

  /**
   * Chooses the end point.
   *
   * @param chosen the pH that the titration ends at
   * @return the titration to that end point
   */
  public SampleTitration to(PH chosen) {
    Note note = note();
    note.endPoint = chosen;
    return note.done();
  }

  /**
   * States a blank: the volume of titrant that everything but the sample takes to the same end
   * point. It is subtracted from each titre.
   *
   * @param volume the volume that the blank takes
   * @return the titration with that blank
   */
  public SampleTitration blank(Volume volume) {
    Note note = note();
    note.blank = volume;
    return note.done();
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
    Note note = note();
    note.predilution = factor;
    return note.done();
  }

  /**
   * States that water was added to the sample taken. It does not enter the arithmetic of the
   * result, but the pH that the sample has along the way.
   *
   * @param water the volume of water
   * @return the titration with that water
   */
  public SampleTitration into(Volume water) {
    Note note = note();
    note.waterAdded = water;
    return note.done();
  }

  /**
   * States the temperature.
   *
   * @param actual the temperature of the titration
   * @return the titration at that temperature
   */
  public SampleTitration at(Temperature actual) {
    Note note = note();
    note.temperature = actual;
    return note.done();
  }

  /**
   * States what it was done with.
   *
   * @param used the apparatus
   * @return the titration with that apparatus
   */
  public SampleTitration with(Apparatus used) {
    Note note = note();
    note.apparatus = used;
    return note.done();
  }

  /**
   * States the slope of the curve at the end point, as an earlier log of such a sample showed it
   * ({@link AcidityResult#slopeAtEndPoint}), so that the reading of pH enters the budget of a mere
   * volume.
   *
   * @param slope equivalents per litre of undiluted sample and pH
   * @return the titration with that slope
   */
  public SampleTitration slopeAtEndPoint(BufferCapacity slope) {
    Note note = note();
    note.slope = Optional.of(slope);
    return note.done();
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
      throw Checks.outOfRange("titres", 0, "", "1 or more");
    }
    Note note = note();
    note.titres = List.of(replicates);
    return note.done();
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
    return AcidityResult.of(this, statedTitres(), List.of());
  }

  /**
   * Computes the alkalinity.
   *
   * @return the alkalinity with its uncertainty
   * @throws IllegalStateException if the titrant is an alkali or no titre was stated
   */
  public AlkalinityResult alkalinity() {
    return AlkalinityResult.of(this, statedTitres(), List.of());
  }

  /**
   * Computes a low alkalinity from two end points, the second 0.3 pH below the first: what doubles
   * the free acid is taken twice off. (2B - C) c z 1000 / S, B to the first and C in all to the
   * second (Standard Methods 2320 B, for less than 20 mg/L as CaCO3). A blank cancels in part: it
   * is subtracted from both volumes.
   *
   * @param first volume and pH of the first end point, pH 4.3 to 4.7
   * @param second volume and pH of the second, 0.3 lower
   * @return the alkalinity, whose end point is the first
   * @throws IllegalArgumentException if the pH are not those of the method, or the second volume is
   *     smaller than the first
   * @throws IllegalStateException if the titrant is an alkali
   */
  public AlkalinityResult lowAlkalinity(Reading first, Reading second) {
    Checks.inRange(
        "first end point", first.pH().value(), "pH", LEAST_FIRST_LOW, GREATEST_FIRST_LOW);
    double step = first.pH().minus(second.pH());
    if (Math.abs(step - LOW_STEP) > LOW_STEP_TOLERANCE) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "second end point: %s is not possible; 0.3 below %s is needed",
              second.pH(),
              first.pH()));
    }
    if (second.volume().compareTo(first.volume()) < 0) {
      throw new IllegalArgumentException(
          "second volume: "
              + second.volume()
              + " is not possible; it is the total, "
              + first.volume()
              + " or more");
    }
    Volume reduced = first.volume().times(2).minus(second.volume());
    String text = "2 x " + first.volume() + " - " + second.volume() + ", by two end points";
    return AlkalinityResult.of(
        to(first.pH()),
        List.of(reduced),
        List.of(),
        Optional.of(new TitratedCharge.EndPointFound(text, 0)));
  }

  private List<Volume> statedTitres() {
    if (titres.isEmpty()) {
      throw new IllegalStateException("titres: none was stated; say what the titration took");
    }
    return titres;
  }

  /**
   * Returns how the end point is found.
   *
   * @return the method
   */
  public TitrationMethod method() {
    return method;
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

  /**
   * Returns the slope of the curve at the end point, if it was stated.
   *
   * @return equivalents per litre of undiluted sample and pH; empty when it was not stated
   */
  public Optional<BufferCapacity> slopeAtEndPoint() {
    return slope;
  }

  /** Prints titrant, sample and end point. */
  @Override
  public String toString() {
    return sample + " with " + titrant + ", to " + endPoint;
  }
}
