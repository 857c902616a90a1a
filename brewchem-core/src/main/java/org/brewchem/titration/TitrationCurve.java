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
 * <p>The end point is interpolated on the straight line between the readings before and after it;
 * volumes are taken in ascending order, whatever the order of the rows.
 */
public class TitrationCurve {

  /** Steps against the direction that noise of the reading explains: 3 u times sqrt(2). */
  private static final double NOISE_FACTOR = 3 * Math.sqrt(2);

  private final TitrationSetup titration;
  private final List<Reading> readings;
  private final double[] millilitres;
  private final double[] pH;

  TitrationCurve(TitrationSetup titration, List<Reading> readings) {
    if (readings.size() < 2) {
      throw Checks.outOfRange("readings", readings.size(), "", "2 or more");
    }
    this.titration = titration;
    this.readings = List.copyOf(readings);
    List<Reading> ascending = new ArrayList<>(readings);
    ascending.sort(Comparator.comparing(Reading::volume));
    this.millilitres = ascending.stream().mapToDouble(r -> r.volume().inMillilitres()).toArray();
    this.pH = ascending.stream().mapToDouble(r -> r.pH().value()).toArray();
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
    int after = firstPassing(target.value());
    return after < 0 || after >= pH.length
        ? Optional.empty()
        : Optional.of(Volume.ofMillilitres(onSegment(after, target.value())));
  }

  /** The same readings, for another end point. */
  TitrationCurve endingAt(PH endPoint) {
    return new TitrationCurve(titration.endingAt(endPoint), readings);
  }

  /** Volume at the end point of the titration. */
  Volume titre() {
    return volumeTo(titration.endPoint())
        .orElseThrow(
            () ->
                new IllegalStateException(
                    "readings: they end at "
                        + readings.get(readings.size() - 1)
                        + " and do not reach the end point of "
                        + titration.endPoint()));
  }

  /** The volume at the end point, with the two readings that it lies between. */
  Step titreStep(String name) {
    double target = titration.endPoint().value();
    int after = firstPassing(target);
    double found = titre().inMillilitres();
    double width = millilitres[after] - millilitres[after - 1];
    double slope = (pH[after] - pH[after - 1]) / width;
    return Step.of(name, TitrationFigures.MILLILITRES, Step.Kind.FORMULA)
        .origin(Origin.MEASURED)
        .text("on the line between the readings before and after " + titration.endPoint(), "")
        .detail(
            () ->
                new Step.Detail(
                    List.of(shown(after - 1), shown(after)),
                    width > 0
                        ? pH[after - 1] + slope * (found - millilitres[after - 1]) - target
                        : found - millilitres[after],
                    1e-9))
        .found(Traced.exact(found));
  }

  private String shown(int i) {
    return NumberText.plain(millilitres[i]) + " mL: " + PH.of(pH[i]);
  }

  /** Whether the first reading is past a pH already. */
  boolean startsBeyond(PH target) {
    return firstPassing(target.value()) < 0;
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

  /** mL at a pH; beyond the readings the outermost segment is continued. */
  double millilitresAt(double target) {
    int after = firstPassing(target);
    return onSegment(Math.max(1, Math.min(after < 0 ? 1 : after, pH.length - 1)), target);
  }

  /**
   * Index of the first reading at or past the target in the direction of the titration; the length
   * when none is; -1 when the first reading is past it already.
   */
  private int firstPassing(double target) {
    int direction = titration.titrant().substance().isAlkali() ? 1 : -1;
    if (direction * (pH[0] - target) > 0) {
      return -1;
    }
    for (int i = 1; i < pH.length; i++) {
      if (direction * (pH[i] - target) >= 0) {
        return i;
      }
    }
    return pH.length;
  }

  private double onSegment(int after, double target) {
    double slope = (millilitres[after] - millilitres[after - 1]) / (pH[after] - pH[after - 1]);
    return Double.isFinite(slope)
        ? millilitres[after - 1] + slope * (target - pH[after - 1])
        : millilitres[after];
  }

  /**
   * How far the straight line may be off at the end point, in mL: the curvature of the neighbouring
   * readings times the distances to the two readings, half.
   */
  double interpolationError() {
    double target = titration.endPoint().value();
    int after = firstPassing(target);
    if (after < 1 || after >= pH.length) {
      return 0;
    }
    double curvature = 0;
    for (int middle = after - 1; middle <= after; middle++) {
      if (middle > 0 && middle < pH.length - 1) {
        curvature = Math.max(curvature, Math.abs(secondDerivative(middle)));
      }
    }
    double volume = onSegment(after, target);
    double pHError =
        curvature * (volume - millilitres[after - 1]) * (millilitres[after] - volume) / 2;
    double slope = (pH[after] - pH[after - 1]) / (millilitres[after] - millilitres[after - 1]);
    return Math.abs(pHError / slope);
  }

  private double secondDerivative(int middle) {
    double left = millilitres[middle] - millilitres[middle - 1];
    double right = millilitres[middle + 1] - millilitres[middle];
    if (left == 0 || right == 0) {
      return 0;
    }
    return 2
        * ((pH[middle + 1] - pH[middle]) / right - (pH[middle] - pH[middle - 1]) / left)
        / (left + right);
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
    PH endPoint = titration.endPoint();
    int after = firstPassing(endPoint.value());
    if (after >= pH.length) {
      list.add(
          Notice.ofRow(
              TitrationCode.END_POINT_NOT_REACHED,
              "readings",
              readings.size(),
              "the log ends at "
                  + readings.get(readings.size() - 1).pH()
                  + ", before the end point of "
                  + endPoint));
      return;
    }
    double error = interpolationError();
    double tolerance = titration.apparatus().buretteTolerance().inMillilitres();
    if (error > tolerance) {
      list.add(
          Notice.ofRow(
              TitrationCode.STEPS_TOO_COARSE,
              "readings",
              rowOf(after),
              String.format(
                  Locale.ROOT,
                  "the step of %s mL to %s is too coarse next to the end point: the curve may be"
                      + " %s mL off the straight line",
                  NumberText.plain(millilitres[after] - millilitres[after - 1]),
                  PH.of(pH[after]),
                  NumberText.significant(error, 2))));
    }
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
