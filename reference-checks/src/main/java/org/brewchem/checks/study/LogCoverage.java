package org.brewchem.checks.study;

import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.brewchem.checks.study.SimulatedBeerTitration.Kind;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Severity;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.Reading;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.TitrationLog;

/**
 * How often the 95 % interval of a titratable acidity from a log holds the truth, by disturbance,
 * on beers of {@link SimulatedBeerTitration}. Errors are drawn from what the apparatus states: the
 * factor of the lye (u 0.1 %), pipette and burette (triangular), the electrode (offset u 0.017 and
 * noise 0.01, together the 0.02 stated).
 */
public final class LogCoverage {

  private static final double END_POINT = 8.2;
  private static final double SAMPLE = 50;
  private static final double LYE = 0.1;
  private static final double NOISE = 0.01;
  private static final double OFFSET = 0.0173;
  private static final double LAG = 0.2;
  private static final double DRIFT = 0.03;
  private static final double UPTAKE = 0.0003;

  /** What disturbs a titration. */
  public enum Disturbance {
    /** Nothing but what is stated. */
    NONE,
    /** A fifth of each step is not shown when the reading is taken. */
    LAG,
    /** The electrode drifts by 0.03 pH over the titration. */
    DRIFT,
    /** Up to 0.3 mmol/L of carbon dioxide from the air, in proportion to time. */
    UPTAKE,
    /** Noise of 0.05 where 0.02 is stated. */
    NOISE
  }

  /** What a log has to show a disturbance by. */
  public enum Means {
    /** One direction, no times. */
    NONE,
    /** Every third reading from pH 7 on again after a second wait, with times. */
    TIMES,
    /** Titrated back with acid from pH 9.2 on. */
    BACK
  }

  /**
   * What a cell of the table found.
   *
   * @param count how many logs
   * @param bias mean error, mEq/L
   * @param coverage share of intervals that hold the truth
   * @param medianU median expanded uncertainty, mEq/L
   * @param warned share of logs with a warning or fault
   * @param beyond how many errors exceed U
   * @param warnedBeyond share of those with a warning or fault
   */
  public record Cell(
      int count,
      double bias,
      double coverage,
      double medianU,
      double warned,
      int beyond,
      double warnedBeyond) {

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "%+.3f | %.3f | %.3f | %.3f | %s",
          bias,
          coverage,
          medianU,
          warned,
          beyond == 0 ? "none" : String.format(Locale.ROOT, "%.2f of %d", warnedBeyond, beyond));
    }
  }

  private LogCoverage() {}

  private static double triangular(Random random, double halfWidth) {
    double one = random.nextDouble();
    double other = random.nextDouble();
    return halfWidth * (one - other);
  }

  /** One log with its errors, and the truth it was drawn from. */
  private record Drawn(TitrationLog log, double truth) {}

  private static Drawn draw(
      Kind kind, Random random, double step, Disturbance disturbance, Means means) {
    double lye = LYE * (1 + 0.001 * random.nextGaussian());
    double sample = SAMPLE + triangular(random, 0.05);
    var beer = SimulatedBeerTitration.draw(kind, random, lye, sample);
    double truth = 1000 * lye * beer.volumeAt(END_POINT, 0) / sample;
    double offset = OFFSET * random.nextGaussian();
    double noise = disturbance == Disturbance.NOISE ? 0.05 : NOISE;
    double end = beer.volumeAt(9.2, 0);
    double length = end / step * 30;
    List<Reading> readings = new ArrayList<>();
    double shown = Double.NaN;
    double last = 0;
    double clock = 0;
    int row = 0;
    double delivered = 0;
    double burette = triangular(random, 0.03);
    for (double volume = 0; last < 9.2 && volume < 2 * end; volume += step, row++) {
      delivered = volume == 0 ? 0 : Math.max(0, volume + burette);
      int waits = means == Means.TIMES && row % 3 == 0 && last > 7 ? 2 : 1;
      for (int wait = 0; wait < waits; wait++) {
        clock += 30;
        double gone = clock / length;
        double gas = disturbance == Disturbance.UPTAKE ? UPTAKE * Math.min(gone, 1.5) : 0;
        double actual = beer.pHAt(delivered, gas);
        if (disturbance == Disturbance.LAG && !Double.isNaN(shown)) {
          actual -= LAG * (actual - shown);
        }
        shown = actual;
        if (disturbance == Disturbance.DRIFT) {
          actual += DRIFT * gone;
        }
        last = actual + offset + noise * random.nextGaussian();
        Reading reading = Reading.reading(mL(volume), pH(last));
        readings.add(means == Means.TIMES ? reading.at(Duration.ofSeconds((long) clock)) : reading);
      }
    }
    Titrant titrant = Titrant.sodiumHydroxide().of(molPerL(LYE), molPerL(0.001 * LYE));
    TitrationLog log = titrant.titrate(mL(SAMPLE)).log(readings);
    if (means == Means.BACK) {
      Titrant acid = Titrant.hydrochloricAcid().of(molPerL(LYE), molPerL(0.001 * LYE));
      double strength = LYE * (1 + 0.001 * random.nextGaussian());
      double back = triangular(random, 0.03);
      List<Reading> way = new ArrayList<>();
      for (double volume = 0; volume < 0.4 * end; volume += step) {
        clock += 30;
        double gone = clock / length;
        double gas = disturbance == Disturbance.UPTAKE ? UPTAKE * Math.min(gone, 1.5) : 0;
        double out = volume == 0 ? 0 : Math.max(0, volume + back);
        double actual = beer.pHAt(delivered - out * strength / lye, delivered + out, gas);
        if (disturbance == Disturbance.LAG) {
          actual -= LAG * (actual - shown);
        }
        shown = actual;
        if (disturbance == Disturbance.DRIFT) {
          actual += DRIFT * gone;
        }
        way.add(Reading.reading(mL(volume), pH(actual + offset + noise * random.nextGaussian())));
      }
      log = log.andBack(acid.titrate(mL(SAMPLE)).log(way));
    }
    return new Drawn(log, truth);
  }

  /**
   * Measures one cell, on beers of many groups.
   *
   * @param count how many logs
   * @param step the step of the volumes, mL
   * @param disturbance what disturbs
   * @param means what the log has to show it by
   * @param seed the seed of the random numbers
   * @return the cell
   */
  public static Cell measure(
      int count, double step, Disturbance disturbance, Means means, long seed) {
    return measure(Kind.MANY_GROUPS, count, step, disturbance, means, seed);
  }

  /** Undisturbed logs of a kind of beer. */
  static Cell undisturbed(Kind kind, int count, double step, long seed) {
    return measure(kind, count, step, Disturbance.NONE, Means.NONE, seed);
  }

  private static Cell measure(
      Kind kind, int count, double step, Disturbance disturbance, Means means, long seed) {
    Random random = new Random(seed);
    double[] expanded = new double[count];
    double sum = 0;
    int within = 0;
    int warned = 0;
    int warnedBeyond = 0;
    for (int i = 0; i < count; i++) {
      Drawn drawn = draw(kind, random, step, disturbance, means);
      AcidityResult result = drawn.log.acidity();
      double error = result.value().inMilliequivalentsPerLitre() - drawn.truth;
      expanded[i] = result.budget().result().expanded().halfWidth();
      boolean alarm =
          result.notices().stream().map(Notice::severity).anyMatch(s -> s != Severity.REMARK);
      sum += error;
      within += Math.abs(error) <= expanded[i] ? 1 : 0;
      warned += alarm ? 1 : 0;
      warnedBeyond += alarm && Math.abs(error) > expanded[i] ? 1 : 0;
    }
    java.util.Arrays.sort(expanded);
    int beyond = count - within;
    return new Cell(
        count,
        sum / count,
        (double) within / count,
        expanded[count / 2],
        (double) warned / count,
        beyond,
        beyond == 0 ? 0 : (double) warnedBeyond / beyond);
  }

  /**
   * Prints the table.
   *
   * @param arguments the number of logs a cell, 1000 if none is given
   */
  public static void main(String[] arguments) {
    int count = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
    System.out.println(
        "| step, mL | disturbance | means | bias | coverage | U | warned | beyond U |");
    System.out.println("|---|---|---|---|---|---|---|---|");
    for (double step : new double[] {0.1, 0.5, 1.0}) {
      for (Disturbance disturbance : Disturbance.values()) {
        for (Means means : Means.values()) {
          if (step != 0.5 && (disturbance != Disturbance.NONE && means != Means.NONE)) {
            continue;
          }
          System.out.printf(
              Locale.ROOT,
              "| %s | %s | %s | %s |%n",
              step,
              disturbance.toString().toLowerCase(Locale.ROOT),
              means.toString().toLowerCase(Locale.ROOT),
              measure(count, step, disturbance, means, 20261126));
        }
      }
    }
    System.out.println();
    System.out.println("| step, mL | beers | bias | coverage | U | warned | beyond U |");
    System.out.println("|---|---|---|---|---|---|---|");
    for (double step : new double[] {0.1, 0.25, 0.5, 1.0, 2.0}) {
      for (Kind kind : Kind.values()) {
        System.out.printf(
            Locale.ROOT,
            "| %s | %s | %s |%n",
            step,
            kind,
            undisturbed(kind, count, step, 20261128));
      }
    }
  }
}
