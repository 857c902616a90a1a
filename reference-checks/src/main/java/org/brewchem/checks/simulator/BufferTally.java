package org.brewchem.checks.simulator;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** What the beers of one kind and one disturbance, or of one fault, came to. */
final class BufferTally {

  private static final long SEED = 20261126;

  private final List<BufferTrial> trials = new ArrayList<>();

  private BufferTally() {}

  /** Runs a cell of the study; fewer beers are the first ones of more. */
  static BufferTally of(BeerKind kind, Disturbance disturbance, boolean told, int beers) {
    BufferTally tally = new BufferTally();
    for (int i = 0; i < beers; i++) {
      tally.trials.add(
          new BufferTrial(
              kind,
              disturbance,
              Fault.NONE,
              told,
              random(kind.ordinal(), disturbance.ordinal(), i)));
    }
    return tally;
  }

  /** Runs a fault on beers of all kinds by turns. */
  static BufferTally of(Fault fault, boolean told, int beers) {
    BufferTally tally = new BufferTally();
    List<BeerKind> kinds = BeerKind.notSoured();
    for (int i = 0; i < beers; i++) {
      tally.trials.add(
          new BufferTrial(
              kinds.get(i % kinds.size()),
              Disturbance.NONE,
              fault,
              told,
              random(kinds.size(), fault.ordinal(), i)));
    }
    return tally;
  }

  /** What an ideal reader notices of a stray reading and of a titrant, on beers of all kinds. */
  static double[] ideal(int beers) {
    List<BeerKind> kinds = BeerKind.notSoured();
    double[] noticed = new double[2];
    for (int i = 0; i < beers; i++) {
      double[] powers =
          IdealReader.powers(
              kinds.get(i % kinds.size()), seed(kinds.size(), Fault.values().length, i));
      noticed[0] += powers[0] / beers;
      noticed[1] += powers[1] / beers;
    }
    return noticed;
  }

  private static long seed(int first, int second, int beer) {
    return SEED + 1_000_003L * (first * 100L + second) + 7919L * beer;
  }

  private static Random random(int first, int second, int beer) {
    return new Random(seed(first, second, beer));
  }

  /** The first beers only. */
  BufferTally first(int beers) {
    BufferTally first = new BufferTally();
    first.trials.addAll(trials.subList(0, Math.min(beers, trials.size())));
    return first;
  }

  /** Share of 95 % intervals that hold the true change of pH. */
  double coverage() {
    return Predicted.coverage(changes());
  }

  /** Share of 95 % intervals that hold the true acidity. */
  double coverageOfAcidity() {
    return Predicted.coverage(acidities());
  }

  int beers() {
    return trials.size();
  }

  /** Changes of pH that were predicted, by whether they end inside or outside of the readings. */
  List<Predicted> changes(boolean outside) {
    List<Predicted> changes = new ArrayList<>();
    for (BufferTrial trial : trials) {
      for (int d = 0; !trial.refused && d < trial.error.length; d++) {
        if (trial.outside[d] == outside) {
          changes.add(new Predicted(trial.error[d], trial.uncertainty[d]));
        }
      }
    }
    return changes;
  }

  /** All changes of pH that were predicted. */
  List<Predicted> changes() {
    List<Predicted> changes = changes(false);
    changes.addAll(changes(true));
    return changes;
  }

  /** The acidities that were predicted. */
  List<Predicted> acidities() {
    return trials.stream()
        .filter(trial -> !trial.refused)
        .map(trial -> new Predicted(trial.acidityError, trial.acidityUncertainty))
        .toList();
  }

  /** Share of the beers of which anything was noticed or that were refused. */
  double noticed() {
    return (double) trials.stream().filter(BufferTrial::isNoticed).count() / trials.size();
  }

  /** Share of the beers that were refused. */
  double refused() {
    return (double) trials.stream().filter(trial -> trial.refused).count() / trials.size();
  }

  /** Changes of pH in error by more than U. */
  long beyond() {
    return beyond(false);
  }

  /** Of these the ones whose beer was noticed. */
  long beyondAndNoticed() {
    return beyond(true);
  }

  private long beyond(boolean onlyNoticed) {
    long count = 0;
    for (BufferTrial trial : trials) {
      for (int d = 0; !trial.refused && d < trial.error.length; d++) {
        if (Math.abs(trial.error[d]) > 2 * trial.uncertainty[d]
            && (!onlyNoticed || trial.isNoticed())) {
          count++;
        }
      }
    }
    return count;
  }

  /** A prediction's error and its standard uncertainty. */
  record Predicted(double error, double uncertainty) {

    /** Share of 95 % intervals that hold the truth; NaN of none. */
    static double coverage(List<Predicted> all) {
      return (double)
              all.stream()
                  .filter(
                      each ->
                          Math.abs(each.error) <= BufferTrial.COVERAGE_FACTOR * each.uncertainty)
                  .count()
          / all.size();
    }

    /** Root mean square of the errors. */
    static double rms(List<Predicted> all) {
      return Math.sqrt(
          all.stream().mapToDouble(each -> each.error * each.error).average().orElse(Double.NaN));
    }

    /** Median of U, k = 2. */
    static double medianU(List<Predicted> all) {
      List<Double> sorted =
          new ArrayList<>(all.stream().map(each -> 2 * each.uncertainty).toList());
      Collections.sort(sorted);
      return sorted.isEmpty() ? Double.NaN : sorted.get(sorted.size() / 2);
    }
  }
}
