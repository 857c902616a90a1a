package org.brewchem.titration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.math3.distribution.TDistribution;
import org.brewchem.figure.Notice;
import org.brewchem.internal.NumberText;

/**
 * What a log shows of lag of the electrode, drift and uptake of carbon dioxide: readings taken
 * again at one volume after a wait, or a way back. Neither tells the three apart with certainty, so
 * what they show widens the uncertainty and corrects nothing.
 */
final class Movement {

  static final String NAME = "lag, drift and carbon dioxide";

  /** Chance of a false alarm, both sides. */
  private static final double SIGNIFICANCE = 0.01;

  /** The quantile 0.995 of the normal distribution. */
  private static final double NORMAL_QUANTILE = 2.576;

  /** A wait as long as the first leaves some movement unseen; our choice. */
  private static final double STILL_TO_COME = 1.5;

  /** How near the end point, in pH, a volume read again speaks for it. */
  private static final double NEAR = 1;

  private final boolean checked;
  private final double halfWidth;
  private final Optional<Notice> notice;

  private Movement(boolean checked, double halfWidth, Optional<Notice> notice) {
    this.checked = checked;
    this.halfWidth = halfWidth;
    this.notice = notice;
  }

  /** Looks at a log that holds its end point. */
  static Movement of(TitrationCurve log) {
    EndPointSearch.Place place = log.endPoint().orElseThrow();
    Optional<Movement> back = log.back().flatMap(way -> ofWayBack(log, way, place));
    return back.or(() -> ofWaits(log, place))
        .orElseGet(() -> new Movement(false, 0, Optional.empty()));
  }

  /** Whether the log has what it takes to show any. */
  boolean isChecked() {
    return checked;
  }

  /** What it makes of the volume at the end point at most, mL. */
  double halfWidth() {
    return halfWidth;
  }

  Optional<Notice> notice() {
    return notice;
  }

  private static Optional<Movement> ofWayBack(
      TitrationCurve log, TitrationCurve way, EndPointSearch.Place place) {
    double target = log.titration().endPoint().value();
    if (way.search().startsBeyond(target) || !way.search().reaches(target)) {
      return Optional.empty();
    }
    EndPointSearch.Place there = way.search().at(target);
    List<Reading> readings = log.readings();
    double last =
        readings.stream().mapToDouble(r -> r.volume().inMillilitres()).max().orElseThrow();
    double ratio =
        way.titration().titrant().equivalentsPerLitre().value()
            / log.titration().titrant().equivalentsPerLitre().value();
    double difference = last - there.millilitres() * ratio - place.millilitres();
    double burette = log.titration().apparatus().buretteTolerance().inMillilitres() / Math.sqrt(6);
    double read = log.titration().apparatus().endPointReading() / Math.abs(place.slope());
    double factors =
        Math.hypot(relative(way.titration().titrant()), relative(log.titration().titrant()));
    double u =
        Math.sqrt(
            2 * read * read
                + 3 * burette * burette
                + square(there.millilitres() * ratio * factors)
                + (square(place.halfWidth()) + square(there.halfWidth() * ratio)) / 3);
    double halfWidth =
        Math.abs(difference) * (difference > u ? sinceStart(log, way, place, there) : 1);
    if (Math.abs(difference) <= NORMAL_QUANTILE * u) {
      return Optional.of(new Movement(true, halfWidth, Optional.empty()));
    }
    return Optional.of(
        new Movement(
            true,
            halfWidth,
            Optional.of(
                Notice.of(
                    TitrationCode.DIRECTIONS_DISAGREE,
                    "readings",
                    String.format(
                        Locale.ROOT,
                        "the way back passes the end point %s mL %s the way there: %s",
                        NumberText.significant(Math.abs(difference), 2),
                        difference < 0 ? "before" : "behind",
                        difference < 0
                            ? "the electrode lags, so wait longer, or it drifts"
                            : "the sample took up carbon dioxide meanwhile, or the electrode"
                                + " drifts")))));
  }

  /**
   * What is taken up with time began with the first reading, and shows between the two passings of
   * the end point only: the readings before the first over those between them, as a clock.
   */
  private static double sinceStart(
      TitrationCurve log,
      TitrationCurve way,
      EndPointSearch.Place place,
      EndPointSearch.Place there) {
    long before = count(log, place.millilitres());
    long between = log.readings().size() - before + count(way, there.millilitres());
    return Math.max(1, (double) before / Math.max(1, between));
  }

  private static long count(TitrationCurve curve, double upTo) {
    return curve.readings().stream().filter(r -> r.volume().inMillilitres() < upTo).count();
  }

  private static double relative(TitrantSolution titrant) {
    return titrant.equivalentsPerLitre().knownPart() / titrant.equivalentsPerLitre().value();
  }

  private static double square(double x) {
    return x * x;
  }

  /** By volumes read again: later less earlier, in the direction of the titration. */
  private static Optional<Movement> ofWaits(TitrationCurve log, EndPointSearch.Place place) {
    TreeMap<Double, List<Reading>> again = new TreeMap<>();
    for (Reading reading : log.readings()) {
      if (reading.time().isPresent()) {
        again
            .computeIfAbsent(reading.volume().inMillilitres(), volume -> new ArrayList<>())
            .add(reading);
      }
    }
    double sign = log.titration().titrant().substance().isAlkali() ? 1 : -1;
    double target = log.titration().endPoint().value();
    List<Double> moves = new ArrayList<>();
    double near = 0;
    for (List<Reading> same : again.values()) {
      if (same.size() < 2) {
        continue;
      }
      same.sort(Comparator.comparing(reading -> reading.time().orElseThrow()));
      Reading first = same.get(0);
      Reading second = same.get(same.size() - 1);
      double move = sign * second.pH().minus(first.pH());
      moves.add(move);
      if (Math.abs(first.pH().value() - target) < NEAR) {
        near = Math.max(near, Math.abs(move));
      }
    }
    int n = moves.size();
    if (n < 2) {
      return Optional.empty();
    }
    double mean = moves.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    double squares = moves.stream().mapToDouble(move -> square(move - mean)).sum();
    double noise = Math.sqrt(2) * log.noise();
    double deviation = Math.max(Math.sqrt(squares / (n - 1)), noise);
    double quantile =
        n == 2
            ? NORMAL_QUANTILE
            : new TDistribution(n - 1).inverseCumulativeProbability(1 - SIGNIFICANCE / 2);
    boolean moved = Math.abs(mean) > quantile * deviation / Math.sqrt(n);
    double halfWidth =
        (moved ? STILL_TO_COME * Math.max(Math.abs(mean), near) : Math.abs(mean))
            / Math.abs(place.slope());
    if (!moved) {
      return Optional.of(new Movement(true, halfWidth, Optional.empty()));
    }
    return Optional.of(
        new Movement(
            true,
            halfWidth,
            Optional.of(
                Notice.of(
                    TitrationCode.READINGS_STILL_MOVING,
                    "readings",
                    String.format(
                        Locale.ROOT,
                        "read again after a wait, %d volumes moved by %s pH on average: %s",
                        n,
                        NumberText.significant(sign * mean, 2),
                        mean > 0
                            ? "the electrode had not come to rest; wait longer"
                            : "the sample took up carbon dioxide, or the electrode drifts")))));
  }
}
