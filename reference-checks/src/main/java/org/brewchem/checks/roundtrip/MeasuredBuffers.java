package org.brewchem.checks.roundtrip;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.buffer.TypicalBeer;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Scales;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Solute;

/**
 * Random beers titrated by simulation at level pairs, with noise, and their buffers fitted without
 * knowing what they hold.
 */
public final class MeasuredBuffers {

  private static final int BEERS = 500;
  private static final int READINGS = 30;
  private static final long SEED = 20261125;
  private static final Temperature TEMPERATURE = Temperature.ofCelsius(20);
  private static final Volume SAMPLE = Volume.ofMillilitres(50);
  private static final AmountConcentration TITRANT = AmountConcentration.ofMolesPerLitre(0.1);
  private static final Volume BURETTE = Volume.ofMillilitres(0.01);
  private static final PH END_POINT = PH.of(8.2);
  private static final double[] DOSES = {0.3, 1, 3};

  /** Half the width of a 95 % interval in standard uncertainties. */
  private static final double COVERAGE_FACTOR = 1.96;

  private static final double ELECTRODE_OFFSET = 0.02;
  private static final double ELECTRODE_SLOPE = 0.02;

  /** Standard deviations of a calibrated electrode's zero, in pH, and of its relative slope. */
  private static final double CALIBRATED_OFFSET = 0.005;

  private static final double CALIBRATED_SLOPE = 0.003;

  // What the simulated samples do not have, and their titrant and pipette are exact: all stated.
  private static final AmountConcentration NO_SALT = AmountConcentration.ofMolesPerLitre(0);
  private static final MassConcentration NO_CARBON_DIOXIDE = MassConcentration.ofGramsPerLitre(0);

  // Of the metals the buffer is told how they were drawn; what it assumes of real beers is another.
  private static final Drawn CALCIUM = new Drawn(0.5, 3);
  private static final Drawn MAGNESIUM = new Drawn(2, 5);

  /** One relative spread for both, of which their sum has the spread that it is drawn with. */
  private static final double SPREAD_OF_METALS =
      Math.hypot(CALCIUM.spread(), MAGNESIUM.spread())
          / Math.hypot(
              CALCIUM.mean().inMillimolesPerLitre(), MAGNESIUM.mean().inMillimolesPerLitre());

  private static final Source SOURCE =
      new Source("own-simulation", "own simulation of invented beers with level pairs");

  private static final Tolerance SHARE =
      Tolerance.range(
          0.90,
          0.99,
          "",
          "what an interval of 95 % promises, with room for 500 beers and for prior knowledge");

  private static final Tolerance AT_LEAST =
      Tolerance.range(
          0.90,
          1,
          "",
          "what an interval of 95 % promises at least, with room for 500 beers; below the readings"
              + " prior knowledge may widen it");

  private MeasuredBuffers() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    List<ReferenceCheck> checks = new ArrayList<>();
    checks.add(
        new ReferenceCheck(
            "buffer-error",
            Suite.ROUNDTRIP,
            "Change of pH by lactic acid, predicted by a buffer of two legs",
            SOURCE,
            "rms error over 500 random beers, 30 readings a leg with white noise of 0.02 pH; doses"
                + " of 0.3, 1 and 3 g/L",
            Tolerance.absolute(0.01, "pH", "required of the method"),
            "",
            DOSES.length,
            () -> errors(Tally.of(0.02, false, true))));
    for (boolean electrode : new boolean[] {false, true}) {
      for (boolean twoLegs : new boolean[] {true, false}) {
        checks.add(coverage(electrode, twoLegs));
      }
    }
    return checks;
  }

  private static ReferenceCheck coverage(boolean electrode, boolean twoLegs) {
    String error =
        electrode
            ? "an electrode offset of 0.02 pH and a slope of 98 to 102 % besides"
            : "a calibrated electrode, its zero good to 0.005 pH and its slope to 0.3 %";
    return new ReferenceCheck(
        "buffer-coverage-" + (electrode ? "electrode-" : "white-") + (twoLegs ? "two" : "one"),
        Suite.ROUNDTRIP,
        "Share of 95 % intervals that hold the truth, "
            + (twoLegs ? "two legs, " : "one leg, ")
            + (electrode ? "electrode astray" : "white noise"),
        SOURCE,
        "500 random beers, white noise of 0.005 and 0.02 pH, a burette good to 0.01 mL, an exact"
            + " titrant, no background salt and no carbon dioxide, all stated, "
            + error
            + "; change of pH by 0.3, 1 and 3 g/L of lactic acid ("
            + (twoLegs ? "inside" : "below")
            + " the readings) and acidity to pH 8.2",
        SHARE,
        "",
        2 * (DOSES.length + 1),
        () -> {
          List<Row> rows = new ArrayList<>();
          for (double noise : new double[] {0.005, 0.02}) {
            rows.addAll(shares(Tally.of(noise, electrode, twoLegs), noise, twoLegs));
          }
          return rows;
        });
  }

  private static List<Row> errors(Tally tally) {
    List<Row> rows = new ArrayList<>();
    for (int d = 0; d < DOSES.length; d++) {
      rows.add(
          Row.of(
              String.format(Locale.ROOT, "%.1f g/L of lactic acid", DOSES[d]),
              0,
              Math.sqrt(tally.squares[d] / BEERS),
              HowKnown.COMPUTED));
    }
    return rows;
  }

  private static List<Row> shares(Tally tally, double noise, boolean inside) {
    List<Row> rows = new ArrayList<>();
    for (int d = 0; d < DOSES.length; d++) {
      String label =
          String.format(Locale.ROOT, "noise %.3f pH, %.1f g/L of lactic acid", noise, DOSES[d]);
      rows.add(share(label, tally.covered[d], inside));
    }
    rows.add(
        share(
            String.format(Locale.ROOT, "noise %.3f pH, acidity", noise),
            tally.acidityCovered,
            true));
    return rows;
  }

  private static Row share(String label, int covered, boolean twoSided) {
    double share = (double) covered / BEERS;
    return twoSided
        ? Row.of(label, SHARE.middle(), share, HowKnown.COMPUTED)
        : Row.of(label, AT_LEAST.middle(), share, HowKnown.COMPUTED).within(AT_LEAST);
  }

  /** What 500 beers of one kind of experiment came to. */
  private static final class Tally {
    private final double[] squares = new double[DOSES.length];
    private final int[] covered = new int[DOSES.length];
    private int acidityCovered;

    private record Experiment(double noise, boolean electrode, boolean twoLegs) {}

    /** Several checks ask for the same experiment, which takes its time. */
    private static final Map<Experiment, Tally> DONE = new ConcurrentHashMap<>();

    static Tally of(double noise, boolean electrode, boolean twoLegs) {
      return DONE.computeIfAbsent(
          new Experiment(noise, electrode, twoLegs),
          wanted -> simulate(wanted.noise, wanted.electrode, wanted.twoLegs));
    }

    private static Tally simulate(double noise, boolean electrode, boolean twoLegs) {
      Tally tally = new Tally();
      Random random = new Random(SEED);
      for (int i = 0; i < BEERS; i++) {
        tally.add(beer(random), noise, electrode, twoLegs, random);
      }
      return tally;
    }

    private void add(
        Solution beer, double noise, boolean electrode, boolean twoLegs, Random random) {
      double offset =
          electrode
              ? ELECTRODE_OFFSET * (random.nextBoolean() ? 1 : -1)
              : CALIBRATED_OFFSET * random.nextGaussian();
      double slope =
          electrode
              ? ELECTRODE_SLOPE * (2 * random.nextDouble() - 1)
              : CALIBRATED_SLOPE * random.nextGaussian();
      Meter meter = new Meter(noise, offset, slope, random);
      MeasuredBuffer.Fit fit =
          MeasuredBuffer.fit()
              .withReadingUncertainty(noise)
              .withZeroUncertainty(electrode ? ELECTRODE_OFFSET : CALIBRATED_OFFSET)
              .withSlopeUncertainty(electrode ? ELECTRODE_SLOPE / 2 : CALIBRATED_SLOPE)
              .metals(CALCIUM.mean(), MAGNESIUM.mean(), SPREAD_OF_METALS)
              .backgroundSalt(NO_SALT, NO_SALT)
              .carbonDioxide(NO_CARBON_DIOXIDE, NO_CARBON_DIOXIDE);
      double[] up = volumes(beer, Base.SODIUM_HYDROXIDE, 9);
      fit =
          fit.with(
              BufferReadings.withAlkali(
                      SAMPLE, TITRANT, BURETTE, up, meter.read(beer, Base.SODIUM_HYDROXIDE, up))
                  .withTitrantUncertainty(0)
                  .withSampleUncertainty(0));
      if (twoLegs) {
        double[] down = volumes(beer, Acid.HYDROCHLORIC, 2.6);
        fit =
            fit.with(
                BufferReadings.withAcid(
                        SAMPLE, TITRANT, BURETTE, down, meter.read(beer, Acid.HYDROCHLORIC, down))
                    .withTitrantUncertainty(0)
                    .withSampleUncertainty(0));
      }
      compare(beer, fit.buffer());
    }

    private void compare(Solution beer, MeasuredBuffer buffer) {
      PH before = beer.pH();
      for (int d = 0; d < DOSES.length; d++) {
        AmountConcentration dose =
            AmountConcentration.from(
                MassConcentration.ofGramsPerLitre(DOSES[d]), Acid.LACTIC.molarMass());
        double truth = beer.with(Acid.LACTIC, dose).pH().minus(before);
        Answer<Double> predicted = buffer.changeOfPHBy(Acid.LACTIC, dose);
        double error = predicted.number() - truth;
        squares[d] += error * error;
        if (holds(predicted, error)) {
          covered[d]++;
        }
      }
      Answer<TitratableAcidity> acidity = buffer.acidityTo(END_POINT).in(Scales.acidity(END_POINT));
      double truth = beer.titratableAcidity(END_POINT).inMilliequivalentsPerLitre();
      if (holds(acidity, acidity.number() - truth)) {
        acidityCovered++;
      }
    }

    private static boolean holds(Answer<?> predicted, double error) {
      return Math.abs(error) <= COVERAGE_FACTOR * predicted.standardUncertainty().orElseThrow();
    }
  }

  /** A concentration drawn evenly between two, mmol/L. */
  private record Drawn(double least, double most) {
    AmountConcentration mean() {
      return AmountConcentration.ofMillimolesPerLitre((least + most) / 2);
    }

    double spread() {
      return (most - least) / Math.sqrt(12);
    }
  }

  /** A pH meter with its errors, beside a burette with its own. */
  private record Meter(double noise, double offset, double slope, Random random) {
    double[] read(Solution beer, Solute titrant, double[] millilitres) {
      double[] delivered = millilitres.clone();
      for (int i = 1; i < delivered.length; i++) {
        delivered[i] += BURETTE.inMillilitres() * random.nextGaussian();
      }
      double[] pH =
          SimulatedTitration.of(beer, Solution.at(TEMPERATURE).with(titrant, TITRANT), SAMPLE)
              .pHAfter(delivered);
      for (int i = 0; i < pH.length; i++) {
        pH[i] += offset + slope * (pH[i] - 7) + noise * random.nextGaussian();
      }
      return pH;
    }
  }

  private static double[] volumes(Solution beer, Solute titrant, double lastPh) {
    double last =
        SimulatedTitration.of(beer, Solution.at(TEMPERATURE).with(titrant, TITRANT), SAMPLE)
            .volumeTo(PH.of(lastPh))
            .inMillilitres();
    double[] volumes = new double[READINGS];
    for (int i = 0; i < READINGS; i++) {
      volumes[i] = last * i / (READINGS - 1);
    }
    return volumes;
  }

  private static Solution beer(Random random) {
    Solution beer = Solution.at(TEMPERATURE);
    beer = beer.with(Acid.PHOSPHORIC, between(random, 3, 9));
    beer = beer.with(Acid.LACTIC, between(random, 0.5, 10));
    beer = beer.with(Acid.ACETIC, between(random, 0.5, 4));
    beer = beer.with(Acid.CITRIC, between(random, 0.3, 1.5));
    beer = beer.with(Acid.MALIC, between(random, 0.2, 1.5));
    beer = beer.with(Acid.SUCCINIC, between(random, 0.2, 1.5));
    beer = beer.with(Acid.PYRUVIC, between(random, 0.2, 1));
    beer = beer.with(TypicalBeer.CARBOXYL, between(random, 2, 12));
    beer = beer.with(TypicalBeer.IMIDAZOLE, between(random, 0.5, 3));
    AmountConcentration amino = between(random, 1, 6).times(0.5);
    beer = beer.with(TypicalBeer.AMINO_OF_PEPTIDES, amino);
    beer = beer.with(TypicalBeer.AMINO_OF_AMINO_ACIDS, amino);
    beer = beer.with(Ion.CALCIUM, between(random, CALCIUM.least, CALCIUM.most));
    beer = beer.with(Ion.MAGNESIUM, between(random, MAGNESIUM.least, MAGNESIUM.most));
    return beer.closedTo(PH.of(3.3 + 1.4 * random.nextDouble()));
  }

  private static AmountConcentration between(Random random, double low, double high) {
    return AmountConcentration.ofMillimolesPerLitre(low + (high - low) * random.nextDouble());
  }
}
