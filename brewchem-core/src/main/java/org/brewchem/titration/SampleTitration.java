package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.uncertainty.Traced;

/**
 * The titration of a sample: what was taken, with which titrant, to which end point, and what it
 * took. Immutable; each step returns a new one, so that it reads as a laboratory note.
 *
 * <p>Unless said otherwise the sample is undiluted, there is no blank, the titration is done at 20
 * °C and with {@link Apparatus#usual()}.
 */
public final class SampleTitration extends TitrationSetup {

  // The low-alkalinity method: first end point 4.3 to 4.7, the second exactly 0.3 lower, both read
  // to 0.01 (Standard Methods 2320 B, from memory).
  private static final double LEAST_FIRST_LOW = 4.3;
  private static final double GREATEST_FIRST_LOW = 4.7;
  private static final double LOW_STEP = 0.3;
  private static final double LOW_STEP_TOLERANCE = 0.005;

  private final List<Volume> titres;

  private SampleTitration(Note note, List<Volume> titres) {
    super(note);
    this.titres = titres;
  }

  static SampleTitration of(
      TitrationMethod method, TitrantSolution titrant, Volume sample, PH endPoint) {
    return new SampleTitration(new Note(method, titrant, sample, endPoint), List.of());
  }

  private SampleTitration with(Consumer<Note> change) {
    Note note = note();
    change.accept(note);
    return new SampleTitration(note, titres);
  }

  /**
   * Chooses the end point.
   *
   * @param chosen the pH that the titration ends at
   * @return the titration to that end point
   * @throws IllegalArgumentException if it lies outside pH 0 to 14
   */
  public SampleTitration to(PH chosen) {
    Objects.requireNonNull(chosen, "chosen end point");
    return with(
        note -> {
          note.endPoint = chosen;
          note.endPointStated = true;
        });
  }

  /**
   * States a blank: the volume of titrant that everything but the sample takes to the same end
   * point. It is subtracted from each titre, and counts in the uncertainty as one reading of the
   * burette.
   *
   * @param volume the volume that the blank takes
   * @return the titration with that blank
   */
  public SampleTitration blank(Volume volume) {
    Objects.requireNonNull(volume, "volume");
    return with(note -> note.blank = volume);
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
    return with(note -> note.predilution = factor);
  }

  /**
   * States that water was added to the sample taken. It does not enter the arithmetic of the
   * result, but the pH that the sample has along the way.
   *
   * @param water the volume of water
   * @return the titration with that water
   */
  public SampleTitration into(Volume water) {
    return with(note -> note.waterAdded = water);
  }

  /**
   * States the temperature.
   *
   * @param actual the temperature of the titration
   * @return the titration at that temperature
   * @throws IllegalArgumentException if it lies outside 0 to 100 °C
   */
  public SampleTitration at(Temperature actual) {
    Objects.requireNonNull(actual, "actual temperature");
    return with(note -> note.temperature = actual);
  }

  /**
   * States what it was done with.
   *
   * @param used the apparatus
   * @return the titration with that apparatus
   */
  public SampleTitration with(Apparatus used) {
    Objects.requireNonNull(used, "used apparatus");
    return with(note -> note.apparatus = used);
  }

  /**
   * States the slope of the curve at the end point, as an earlier log of such a sample showed it
   * ({@link Determination#slopeAtEndPoint}), so that the reading of pH enters the budget of a mere
   * volume.
   *
   * @param slope equivalents per litre of undiluted sample and pH
   * @return the titration with that slope
   */
  public SampleTitration slopeAtEndPoint(BufferCapacity slope) {
    Objects.requireNonNull(slope, "slope");
    return with(note -> note.slope = Optional.of(slope));
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
    return new SampleTitration(note(), List.of(replicates));
  }

  /**
   * Records readings along the titration instead of a volume at its end.
   *
   * @param readings volume and pH, in the order in which they were taken; at least two
   * @return the log
   * @throws IllegalArgumentException if there are fewer than two
   */
  public TitrationLog log(List<Reading> readings) {
    return new TitrationLog(this, readings);
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
    return new TitrationLog(this, Reading.list(millilitres, pH));
  }

  /**
   * Computes the titratable acidity.
   *
   * @return the acidity with its uncertainty
   * @throws IllegalStateException if the titrant is an acid or no titre was stated
   */
  public AcidityResult acidity() {
    return AcidityResult.of(this, statedTitres());
  }

  /**
   * Computes the alkalinity.
   *
   * @return the alkalinity with its uncertainty
   * @throws IllegalStateException if the titrant is an alkali or no titre was stated
   */
  public AlkalinityResult alkalinity() {
    return AlkalinityResult.of(this, statedTitres());
  }

  /**
   * Computes a low alkalinity from two end points, the second 0.3 pH below the first, by (2B - C) c
   * z 1000 / S, with B the volume to the first and C the whole volume to the second (Standard
   * Methods 2320 B, for less than 20 mg/L as CaCO3). The step of 0.3 pH doubles the free hydrogen
   * ions, so C - B is the volume that made the free acid at the first end point. A blank cancels in
   * part: it is subtracted from both volumes.
   *
   * @param first volume and pH of the first end point, pH 4.3 to 4.7
   * @param second volume and pH of the second, 0.3 lower
   * @return the alkalinity, whose end point is the first
   * @throws IllegalArgumentException if the pH are not those of the method, or the second volume is
   *     smaller than the first or more than twice as large
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
    if (second.volume().compareTo(first.volume().times(2)) > 0) {
      throw new IllegalArgumentException(
          "second volume: "
              + second.volume()
              + " is not possible; more than twice "
              + first.volume()
              + " would be an alkalinity below 0");
    }
    return AlkalinityResult.of(
        this, List.of(), new FoundEndPoint(reduced(first, second), first.pH()));
  }

  /** Twice the first volume less the second; how well each was read counts with the burette. */
  private static Step reduced(Reading first, Reading second) {
    List<Step> volumes = new ArrayList<>();
    for (Reading reading : List.of(first, second)) {
      volumes.add(
          Step.of("volume to " + reading.pH(), TitrationFigures.MILLILITRES, Step.Kind.STATED)
              .origin(Origin.MEASURED)
              .text("read", "")
              .found(Traced.exact(reading.volume().inMillilitres())));
    }
    Volume reduced = first.volume().times(2).minus(second.volume());
    return Step.of("titre", TitrationFigures.MILLILITRES, Step.Kind.FORMULA)
        .text(
            "2 x " + first.volume() + " - " + second.volume() + ", by two end points",
            "Standard Methods 2320 B")
        .inputs(volumes)
        .detail(
            () ->
                new Step.Detail(
                    List.of(),
                    2 * volumes.get(0).found().orElseThrow().value()
                        - volumes.get(1).found().orElseThrow().value()
                        - reduced.inMillilitres(),
                    1e-12 * first.volume().inMillilitres()))
        .found(Traced.exact(reduced.inMillilitres()));
  }

  private List<Volume> statedTitres() {
    if (titres.isEmpty()) {
      throw new IllegalStateException("titres: none was stated; say what the titration took");
    }
    return titres;
  }
}
