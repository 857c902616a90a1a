package org.brewchem.checks.simulator;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * How often a reader who knows how beers, electrode and burette are drawn could notice a fault: the
 * power of the most powerful test, to first order around the true beer.
 *
 * <p>The readings of one experiment are normal around the true curve. Their covariance is that of
 * everything that was drawn: each number behind the beer moves the curve by its slope times its own
 * standard deviation; electrode, burette and noise come besides. A fault adds a known vector f to
 * the readings, and lies sqrt(f' C^-1 f) standard deviations from none (the lemma of Neyman and
 * Pearson). The reader may spend all of the {@link BufferReport#HIGHEST_NOTICED} false notices on
 * this one fault, by Bonferroni over the readings or over the legs.
 */
final class IdealReader {

  private static final NormalDistribution NORMAL = new NormalDistribution();
  private static final double STEP = 1e-3;
  private static final double STEP_MILLILITRES = 1e-3;
  private static final double STRAY = 5 * Experiment.NOISE;
  private static final double WRONG_TITRANT = 0.1;

  private final Experiment experiment;
  private final SimulatedBeer beer;
  private final int alkali;
  private final double[] volumes;
  private final double[] perMillilitre;
  private final RealMatrix precision;

  private IdealReader(BeerKind kind, long seed) {
    experiment = new Experiment(kind, Disturbance.NONE, Fault.NONE, new Random(seed));
    Replay undisturbed = new Replay(seed, -1, 0);
    beer = kind.draw(undisturbed);
    alkali = experiment.alkaliVolumes.length;
    int n = alkali + experiment.acidVolumes.length;
    volumes = new double[n];
    perMillilitre = new double[n];
    for (int i = 0; i < n; i++) {
      volumes[i] = i < alkali ? experiment.alkaliVolumes[i] : experiment.acidVolumes[i - alkali];
      perMillilitre[i] =
          (pH(beer, i, STEP_MILLILITRES) - pH(beer, i, -STEP_MILLILITRES)) / (2 * STEP_MILLILITRES);
    }
    precision =
        new CholeskyDecomposition(covariance(kind, seed, undisturbed.standardDeviations))
            .getSolver()
            .getInverse();
  }

  /**
   * Returns how often each reading but the first of a leg would be noticed if it were off by 5
   * times the noise, on average, and how often a titrant that is 10 % wrong on one leg.
   */
  static double[] powers(BeerKind kind, long seed) {
    IdealReader reader = new IdealReader(kind, seed);
    return new double[] {reader.powerOnStrayReading(), reader.powerOnTitrant()};
  }

  private double pH(SimulatedBeer of, int reading, double more) {
    double sample = experiment.sampleMillilitres;
    double volume = volumes[reading];
    double perKilogram =
        Experiment.MOLES_PER_LITRE / SimulatedBeer.KILOGRAMS_PER_LITRE * (volume + more) / sample;
    return of.pH(reading < alkali ? perKilogram : -perKilogram, sample / (sample + volume));
  }

  private RealMatrix covariance(BeerKind kind, long seed, List<Double> standardDeviations) {
    int n = volumes.length;
    RealMatrix covariance = new Array2DRowRealMatrix(n, n);
    for (int drawn = 0; drawn < standardDeviations.size(); drawn++) {
      SimulatedBeer more = kind.draw(new Replay(seed, drawn, STEP));
      SimulatedBeer less = kind.draw(new Replay(seed, drawn, -STEP));
      double[] moved = new double[n];
      for (int i = 0; i < n; i++) {
        moved[i] = standardDeviations.get(drawn) * (pH(more, i, 0) - pH(less, i, 0)) / (2 * STEP);
      }
      add(covariance, moved);
    }
    double[] zero = new double[n];
    double[] slope = new double[n];
    for (int i = 0; i < n; i++) {
      zero[i] = experiment.zeroUncertainty;
      slope[i] = experiment.slopeUncertainty * (pH(beer, i, 0) - 7);
      double burette = volumes[i] == 0 ? 0 : Experiment.BURETTE_MILLILITRES * perMillilitre[i];
      covariance.addToEntry(i, i, Experiment.NOISE * Experiment.NOISE + burette * burette);
    }
    add(covariance, zero);
    add(covariance, slope);
    return covariance;
  }

  private static void add(RealMatrix covariance, double[] moved) {
    for (int i = 0; i < moved.length; i++) {
      for (int j = 0; j < moved.length; j++) {
        covariance.addToEntry(i, j, moved[i] * moved[j]);
      }
    }
  }

  private double powerOnStrayReading() {
    double sum = 0;
    int readings = 0;
    for (int i = 0; i < volumes.length; i++) {
      if (i != 0 && i != alkali) {
        sum += power(STRAY * Math.sqrt(precision.getEntry(i, i)), volumes.length);
        readings++;
      }
    }
    return sum / readings;
  }

  private double powerOnTitrant() {
    double sum = 0;
    for (int leg = 0; leg < 2; leg++) {
      RealVector moved = new ArrayRealVector(volumes.length);
      for (int i = 0; i < volumes.length; i++) {
        if (i < alkali == (leg == 0)) {
          moved.setEntry(i, WRONG_TITRANT * volumes[i] * perMillilitre[i]);
        }
      }
      sum += power(Math.sqrt(moved.dotProduct(precision.operate(moved))), 2) / 2;
    }
    return sum;
  }

  private static double power(double standardDeviations, int tests) {
    double limit =
        NORMAL.inverseCumulativeProbability(1 - BufferReport.HIGHEST_NOTICED / (2 * tests));
    return NORMAL.cumulativeProbability(standardDeviations - limit);
  }

  /** The same numbers drawn again, one of them moved. */
  private static final class Replay extends Random {

    private static final long serialVersionUID = 1;
    private static final double OF_UNIFORM = 1 / Math.sqrt(12);

    private final Random source;
    private final int moved;
    private final double by;
    private final List<Double> standardDeviations = new ArrayList<>();

    Replay(long seed, int moved, double by) {
      source = new Random(seed);
      this.moved = moved;
      this.by = by;
    }

    private double drawn(double value, double standardDeviation) {
      standardDeviations.add(standardDeviation);
      return standardDeviations.size() - 1 == moved ? value + by : value;
    }

    @Override
    public double nextDouble() {
      return drawn(source.nextDouble(), OF_UNIFORM);
    }

    @Override
    public synchronized double nextGaussian() {
      return drawn(source.nextGaussian(), 1);
    }

    @Override
    public int nextInt(int bound) {
      return source.nextInt(bound);
    }
  }
}
