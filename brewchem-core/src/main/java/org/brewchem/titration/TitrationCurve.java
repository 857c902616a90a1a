package org.brewchem.titration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.brewchem.uncertainty.Traced;

/**
 * The readings of a titration, volume by volume, with how it was done. Rows count from 1 in the
 * order in which the readings were given. Immutable; {@link TitrationLog} is how it is stated.
 *
 * <p>The end point is interpolated on a monotone cubic between the readings before and after it,
 * which looks one reading further on either side, or on a parabola through those around it where
 * they are denser than their noise; volumes are taken in ascending order, whatever the order of the
 * rows, and readings of one volume by their mean.
 */
public class TitrationCurve {

  /** Steps against the direction that noise of the reading explains: 3 u times sqrt(2). */
  private static final double NOISE_FACTOR = 3 * Math.sqrt(2);

  private static final int MOST_SHOWN = 20;

  private static final int LEAST_FOR_NOISE = 8;

  /**
   * Readings further apart than so many times u show the bend of the curve rather than their noise.
   */
  private static final double CLOSE = 24;

  /** No meter tells less apart, pH. */
  private static final double LEAST_STATED = 0.001;

  private static final double LEAST_EXCESS = 1.5;

  /** The median of n distances shows so much more than the noise in one honest log of a hundred. */
  private static final double EXCESS_OF_ONE = 5;

  private final TitrationSetup titration;
  private final List<Reading> readings;
  private final Optional<TitrationCurve> back;
  private final double[] millilitres;
  private final double[] pH;
  private final EndPointSearch search;
  private final Optional<EndPointSearch.Place> endPoint;

  TitrationCurve(TitrationSetup titration, List<Reading> readings, Optional<TitrationCurve> back) {
    if (readings.size() < 2) {
      throw Checks.outOfRange("readings", readings.size(), "", "2 or more");
    }
    this.titration = titration;
    this.readings = List.copyOf(readings);
    this.back = back;
    for (int row = 1; row <= readings.size(); row++) {
      Checks.inRange("pH of reading " + row, readings.get(row - 1).pH().value(), "", 0, 14);
    }
    List<Reading> ascending = new ArrayList<>(readings);
    ascending.sort(Comparator.comparing(Reading::volume));
    this.millilitres = ascending.stream().mapToDouble(r -> r.volume().inMillilitres()).toArray();
    this.pH = ascending.stream().mapToDouble(r -> r.pH().value()).toArray();
    if (millilitres[0] == millilitres[millilitres.length - 1]) {
      throw Checks.outOfRange(
          "volumes of the readings", millilitres[0], "mL in all of them", "two that differ");
    }
    this.search =
        new EndPointSearch(millilitres, pH, titration.titrant().substance().isAlkali(), noise());
    this.endPoint = placeOf(titration.endPoint().value());
  }

  private Optional<EndPointSearch.Place> placeOf(double target) {
    return search.startsBeyond(target) || !search.reaches(target)
        ? Optional.empty()
        : Optional.of(search.at(target));
  }

  /**
   * Returns what was titrated, with what, and to which end point.
   *
   * @return the titration
   */
  public TitrationSetup titration() {
    return titration;
  }

  /**
   * Returns the readings in the order in which they were given.
   *
   * @return an unmodifiable list of two or more
   */
  public List<Reading> readings() {
    return readings;
  }

  /**
   * Finds the volume at a pH by interpolation, the blank not subtracted.
   *
   * @param target the pH
   * @return the volume; empty when the readings do not reach the pH
   */
  public Optional<Volume> volumeTo(PH target) {
    return placeOf(target.value()).map(place -> Volume.ofMillilitres(place.millilitres()));
  }

  /** The same readings, for another end point. */
  TitrationCurve endingAt(PH other) {
    return new TitrationCurve(titration.endingAt(other), readings, back);
  }

  /** The way back with the opposite titrant, where it was recorded. */
  Optional<TitrationCurve> back() {
    return back;
  }

  EndPointSearch search() {
    return search;
  }

  /** The end point in the readings; empty where they do not hold it. */
  Optional<EndPointSearch.Place> endPoint() {
    return endPoint;
  }

  /** Volume at the end point of the titration. */
  Volume titre() {
    return volumeTo(titration.endPoint())
        .orElseThrow(
            () ->
                new IllegalStateException(
                    startsBeyond(titration.endPoint())
                        ? "readings: they begin at "
                            + NumberText.plain(millilitres[0])
                            + " mL: "
                            + PH.of(pH[0])
                            + ", beyond the end point of "
                            + titration.endPoint()
                        : "readings: they end at "
                            + NumberText.plain(millilitres[pH.length - 1])
                            + " mL: "
                            + PH.of(pH[pH.length - 1])
                            + " and do not reach the end point of "
                            + titration.endPoint()));
  }

  /** The volume at the end point, with the readings that it lies between. */
  Step titreStep(String name) {
    double found = titre().inMillilitres();
    EndPointSearch.Place place = endPoint.orElseThrow();
    double from = place.isFitted() ? place.before() : search.next(place.before(), -1);
    double to = place.isFitted() ? place.after() : search.next(place.after(), 1);
    List<String> lines = new ArrayList<>();
    for (Reading reading : readings) {
      double volume = reading.volume().inMillilitres();
      if (volume >= from && volume <= to && lines.size() < MOST_SHOWN) {
        lines.add(NumberText.plain(volume) + " mL: " + reading.pH());
      }
    }
    String text =
        place.isFitted()
            ? "on the parabola through " + place.readings() + " readings around "
            : "on the monotone cubic between the readings before and after ";
    return Step.of(name, TitrationFigures.MILLILITRES, Step.Kind.FORMULA)
        .origin(Origin.MEASURED)
        .text(text + titration.endPoint(), "")
        .detail(() -> new Step.Detail(lines, place.offset(), 1e-9))
        .found(Traced.exact(found));
  }

  /** Whether the first reading is past a pH already. */
  boolean startsBeyond(PH target) {
    return search.startsBeyond(target.value());
  }

  /** Whether the readings span a volume. */
  boolean holds(Volume volume) {
    double target = volume.inMillilitres();
    return target >= millilitres[0] && target <= millilitres[millilitres.length - 1];
  }

  /** The pH at a volume, on the straight line between the readings around it. */
  PH pHAt(Volume volume) {
    double target = volume.inMillilitres();
    for (int i = 1; i < pH.length; i++) {
      if (target >= millilitres[i - 1] && target <= millilitres[i]) {
        double width = millilitres[i] - millilitres[i - 1];
        double share = width > 0 ? (target - millilitres[i - 1]) / width : 0;
        return PH.of(pH[i - 1] + share * (pH[i] - pH[i - 1]));
      }
    }
    throw new IllegalStateException(
        String.format(
            Locale.ROOT,
            "readings: they span %s to %s mL and do not hold %s",
            NumberText.plain(millilitres[0]),
            NumberText.plain(millilitres[millilitres.length - 1]),
            volume));
  }

  double[] ascendingMillilitres() {
    return millilitres.clone();
  }

  double[] ascendingPH() {
    return pH.clone();
  }

  /** How much more titrant another pH takes than the end point, mL. */
  double shiftTo(double other) {
    double target = titration.endPoint().value();
    EndPointSearch.Place place = endPoint.orElseThrow();
    return place.isFitted()
        ? (other - target) / place.slope()
        : search.onLines(other) - search.onLines(target);
  }

  /** The noise of a reading as the readings show it, at most what is stated of them, pH. */
  double noise() {
    return Math.min(
        titration.apparatus().endPointReading(), InflectionSearch.noise(millilitres, pH));
  }

  /** What the readings scatter by, pH, where it is much more than was stated of them; else 0. */
  double excessNoise() {
    double stated = Math.max(titration.apparatus().endPointReading(), LEAST_STATED);
    List<Double> close = InflectionSearch.distances(millilitres, pH, CLOSE * stated);
    double shown = InflectionSearch.medianDistance(close);
    return close.size() >= LEAST_FOR_NOISE
            && shown > Math.max(LEAST_EXCESS, 1 + EXCESS_OF_ONE / Math.sqrt(close.size())) * stated
        ? shown
        : 0;
  }

  /** How far the volume at the end point may be off by the course of the curve, mL. */
  double interpolationError() {
    return endPoint.map(EndPointSearch.Place::halfWidth).orElse(0.0);
  }

  /**
   * Examines the readings.
   *
   * @return an unmodifiable list of what is notable, each naming its row
   */
  public List<Notice> notices() {
    List<Notice> list = new ArrayList<>();
    findDisorder(list);
    findSteps(list);
    findStrays(list);
    findNoise(list);
    findEndPoint(list);
    return List.copyOf(list);
  }

  private void findDisorder(List<Notice> list) {
    Volume largest = readings.get(0).volume();
    for (int row = 2; row <= readings.size(); row++) {
      Volume volume = readings.get(row - 1).volume();
      if (volume.compareTo(largest) < 0) {
        list.add(
            Notice.ofRow(
                TitrationCode.READING_OUT_OF_ORDER,
                "readings",
                row,
                volume + " comes after " + largest + "; volumes are totals and only grow"));
      } else {
        largest = volume;
      }
    }
  }

  private void findSteps(List<Notice> list) {
    boolean alkali = titration.titrant().substance().isAlkali();
    double noise = NOISE_FACTOR * titration.apparatus().endPointReading();
    for (int row = 2; row <= readings.size(); row++) {
      Reading before = readings.get(row - 2);
      Reading reading = readings.get(row - 1);
      double step = reading.pH().minus(before.pH()) * (alkali ? 1 : -1);
      if (reading.volume().compareTo(before.volume()) > 0 && step < -noise) {
        list.add(
            Notice.ofRow(
                TitrationCode.STEP_NOT_MONOTONE,
                "readings",
                row,
                String.format(
                    Locale.ROOT,
                    "%s follows %s, though %s was added; more than noise of the reading explains",
                    reading.pH(),
                    before.pH(),
                    alkali ? "alkali" : "acid")));
      }
    }
  }

  private void findNoise(List<Notice> list) {
    double shown = excessNoise();
    if (shown > 0) {
      list.add(
          Notice.of(
              TitrationCode.NOISE_ABOVE_STATED,
              "readings",
              "the readings scatter by "
                  + NumberText.significant(shown, 2)
                  + " pH where u "
                  + NumberText.plain(titration.apparatus().endPointReading())
                  + " is stated of one"));
    }
  }

  private void findStrays(List<Notice> list) {
    double u = titration.apparatus().endPointReading();
    for (CurveShape.Stray stray : CurveShape.of(millilitres, pH).strays(u)) {
      list.add(
          Notice.ofRow(
              TitrationCode.BAD_POINT,
              "readings",
              rowOf(stray.index()),
              String.format(
                  Locale.ROOT,
                  "%s lies %s off the curve of its neighbours, where %s is allowed",
                  PH.of(pH[stray.index()]),
                  NumberText.significant(stray.distance(), 2),
                  NumberText.significant(stray.allowed(), 2))));
    }
  }

  private void findEndPoint(List<Notice> list) {
    if (!search.reaches(titration.endPoint().value())) {
      if (titration.needsEndPoint()) {
        list.add(
            Notice.ofRow(
                TitrationCode.END_POINT_NOT_REACHED,
                "readings",
                rowOf(pH.length - 1),
                "the log ends at "
                    + PH.of(pH[pH.length - 1])
                    + ", before the end point of "
                    + titration.endPoint()));
      }
      return;
    }
    if (startsBeyond(titration.endPoint())) {
      if (titration.needsEndPoint()) {
        list.add(
            Notice.ofRow(
                TitrationCode.END_POINT_NOT_REACHED,
                "readings",
                rowOf(0),
                "the log begins at "
                    + PH.of(pH[0])
                    + ", beyond the end point of "
                    + titration.endPoint()));
      }
      return;
    }
    double error = interpolationError() / EndPointSearch.SQRT_3;
    if (error > titration.apparatus().buretteTolerance().inMillilitres()) {
      EndPointSearch.Place place = endPoint.orElseThrow();
      int row = rowOf(place.after());
      String reason =
          place.isFitted()
              ? "readings from %s mL to %s scatter around the end point or are doubled there: it is"
                  + " known to %s mL only"
              : "the step of %s mL to %s is too coarse next to the end point, which is"
                  + " known to %s mL only";
      list.add(
          Notice.ofRow(
              TitrationCode.STEPS_TOO_COARSE,
              "readings",
              row,
              String.format(
                  Locale.ROOT,
                  reason,
                  NumberText.plain(
                      place.isFitted() ? place.before() : place.after() - place.before()),
                  readings.get(row - 1).pH(),
                  NumberText.significant(error, 2))));
    }
  }

  /** The first row of a volume. */
  private int rowOf(double volume) {
    for (int row = 1; row <= readings.size(); row++) {
      if (readings.get(row - 1).volume().inMillilitres() == volume) {
        return row;
      }
    }
    throw new IllegalStateException("a reading of " + volume + " mL is in no row");
  }

  /** The row of the i-th reading in ascending order of volume. */
  private int rowOf(int ascending) {
    for (int row = 1; row <= readings.size(); row++) {
      Reading reading = readings.get(row - 1);
      if (reading.volume().inMillilitres() == millilitres[ascending]
          && reading.pH().value() == pH[ascending]) {
        return row;
      }
    }
    throw new IllegalStateException("reading " + ascending + " is in no row");
  }

  /** Prints what was titrated and the readings. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(titration.toString());
    for (Reading reading : readings) {
      text.append(String.format(Locale.ROOT, "%n  %s", reading));
    }
    return text.toString();
  }
}
