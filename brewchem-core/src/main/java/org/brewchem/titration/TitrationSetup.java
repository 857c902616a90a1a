package org.brewchem.titration;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UsualRange;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;

/**
 * How a sample is titrated: what was taken, with which titrant, to which end point and with which
 * apparatus. {@link SampleTitration} is how it is stated. Immutable.
 */
public class TitrationSetup {

  private static final UsualRange SAMPLE = UsualRange.named("sample of a titration");
  private static final UsualRange WATER = UsualRange.named("water added to a sample");
  private static final UsualRange PREDILUTION = UsualRange.named("predilution of a sample");
  private static final UsualRange BLANK = UsualRange.named("blank");
  private static final UsualRange TEMPERATURE = UsualRange.named("temperature of a titration");
  private static final UsualRange ALKALINE_END =
      UsualRange.named("end point of a titration with alkali");
  private static final UsualRange ACID_END = UsualRange.named("end point of a titration with acid");

  private final TitrationMethod method;
  private final TitrantSolution titrant;
  private final Volume sample;
  private final double predilution;
  private final Volume waterAdded;
  private final PH endPoint;
  private final Volume blank;
  private final Temperature temperature;
  private final Apparatus apparatus;
  private final Optional<BufferCapacity> slope;
  private final boolean endPointStated;

  /** A setup that is being stated; whatever is not stated is usual. */
  static final class Note {
    TitrationMethod method;
    TitrantSolution titrant;
    Volume sample;
    double predilution = 1;
    Volume waterAdded = Volume.ofMillilitres(0);
    PH endPoint;
    boolean endPointStated;
    Volume blank = Volume.ofMillilitres(0);
    Temperature temperature = Temperature.ofCelsius(20);
    Apparatus apparatus = Apparatus.usual();
    Optional<BufferCapacity> slope = Optional.empty();

    Note(TitrationMethod method, TitrantSolution titrant, Volume sample, PH endPoint) {
      this.method = method;
      this.titrant = titrant;
      this.sample = sample;
      this.endPoint = endPoint;
    }
  }

  TitrationSetup(Note note) {
    this.method = note.method;
    this.titrant = Objects.requireNonNull(note.titrant, "titrant");
    this.sample = Objects.requireNonNull(note.sample, "sample");
    Checks.positive("sample", sample.inMillilitres(), "mL");
    this.predilution = Checks.inRange("predilution", note.predilution, "", 1, Double.MAX_VALUE);
    this.waterAdded = Objects.requireNonNull(note.waterAdded, "water");
    this.endPoint = Objects.requireNonNull(note.endPoint, "end point");
    usualEndPoint().possible("end point", endPoint.value());
    this.blank = Objects.requireNonNull(note.blank, "blank");
    this.temperature = Objects.requireNonNull(note.temperature, "temperature");
    TEMPERATURE.possible("temperature of the titration", temperature.inCelsius());
    this.apparatus = Objects.requireNonNull(note.apparatus, "apparatus");
    this.slope = note.slope;
    this.endPointStated = note.endPointStated;
  }

  private UsualRange usualEndPoint() {
    return titrant.substance().isAlkali() ? ALKALINE_END : ACID_END;
  }

  /** What is unusual about what was stated. */
  List<Notice> unusual() {
    return Stream.of(
            SAMPLE.judge("sample", sample.inMillilitres()),
            PREDILUTION.judge("predilution", predilution),
            WATER.judge("water added", waterAdded.inMillilitres()),
            BLANK.judge("blank", blank.inMillilitres()),
            TEMPERATURE.judge("temperature of the titration", temperature.inCelsius()),
            usualEndPoint().judge("end point", endPoint.value()))
        .flatMap(Optional::stream)
        .toList();
  }

  Note note() {
    Note note = new Note(method, titrant, sample, endPoint);
    note.predilution = predilution;
    note.waterAdded = waterAdded;
    note.blank = blank;
    note.temperature = temperature;
    note.apparatus = apparatus;
    note.slope = slope;
    note.endPointStated = endPointStated;
    return note;
  }

  /** The same, to another end point. */
  TitrationSetup endingAt(PH other) {
    Note note = note();
    note.endPoint = other;
    note.endPointStated = true;
    return new TitrationSetup(note);
  }

  /**
   * Whether a log has to reach the end point: an acid log for a buffer has none, unless one was
   * stated.
   */
  boolean needsEndPoint() {
    return endPointStated || titrant.substance().isAlkali();
  }

  /** The same titration of another portion: what the result is computed with agrees. */
  boolean replicates(TitrationSetup other) {
    return sample.equals(other.sample)
        && predilution == other.predilution
        && waterAdded.equals(other.waterAdded)
        && blank.equals(other.blank)
        && endPoint.equals(other.endPoint)
        && temperature.equals(other.temperature)
        && titrant.substance().equals(other.titrant.substance())
        && titrant.equivalentsPerLitre().value() == other.titrant.equivalentsPerLitre().value()
        && apparatus.endPointReading() == other.apparatus.endPointReading()
        && apparatus.buretteTolerance().equals(other.apparatus.buretteTolerance());
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
  public TitrantSolution titrant() {
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
