package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How often the readings of a log are said to scatter more than stated, on simulated beers and
 * waters: acids of random pKa, ideal, the pH by halving. The bounds of honest logs, of 40 and of
 * 120 readings were set before the first run.
 */
class NoiseOfLogTest {

  private static final int LOGS = 500;
  private static final double U = 0.02;

  private static double[] volumes(int count, double last) {
    double[] millilitres = new double[count];
    for (int i = 0; i < count; i++) {
      millilitres[i] = last * i / (count - 1);
    }
    return millilitres;
  }

  private static TitrationLog beer(Random random, int count, double noise) {
    double[] pKa = {1.95, 2.9, 3.3, 3.7, 3.75, 4.3, 4.4, 4.66, 4.8, 4.9, 5.7, 6.3, 6.85, 7.6, 9};
    double[] molar = new double[pKa.length];
    for (int i = 0; i < molar.length; i++) {
      pKa[i] += 0.4 * random.nextDouble() - 0.2;
      molar[i] = 0.0003 + 0.0022 * random.nextDouble();
    }
    double[] millilitres = volumes(count, 10 + 8 * random.nextDouble());
    double[] read =
        SimulatedAcids.curve(50, pKa, molar, 3.9 + 0.8 * random.nextDouble(), millilitres, 0.1);
    return Titrant.sodiumHydroxide()
        .of(molPerL(0.1), molPerL(0.0001))
        .titrate(mL(50))
        .log(millilitres, noisy(random, read, noise));
  }

  private static TitrationLog water(Random random, int count, double noise) {
    double alkalinity = 0.0003 * Math.pow(20, random.nextDouble());
    double[] molar = {alkalinity * 1.1};
    double[] millilitres = volumes(count, 50 * alkalinity / 0.05 * 1.05);
    double[] read = SimulatedAcids.curve(50, new double[] {6.35}, molar, 7.3, millilitres, -0.05);
    return Titrant.hydrochloricAcid()
        .of(molPerL(0.05), molPerL(0.00005))
        .titrate(mL(50))
        .to(pH(4.5))
        .log(millilitres, noisy(random, read, noise));
  }

  private static double[] noisy(Random random, double[] read, double noise) {
    double[] noisy = read.clone();
    for (int i = 0; i < noisy.length; i++) {
      noisy[i] += noise * random.nextGaussian();
    }
    return noisy;
  }

  private static double named(int count, double noise, boolean isBeer) {
    Random random = new Random(20261128);
    int named = 0;
    for (int i = 0; i < LOGS; i++) {
      TitrationLog log = isBeer ? beer(random, count, noise) : water(random, count, noise);
      named += log.excessNoise() > 0 ? 1 : 0;
    }
    return named / (double) LOGS;
  }

  /** A curve that bends between few readings is not noise: it was said of 98 of 100 such beers. */
  @ParameterizedTest
  @CsvSource({"12, 0", "16, 0", "20, 0.3", "40, 0.8", "120, 0.95"})
  void honestLogsAreNotNamedAndNoisyOnesAre(int readings, double leastOfThreefold) {
    for (boolean isBeer : new boolean[] {true, false}) {
      double honest = named(readings, U, isBeer);
      double threefold = named(readings, 3 * U, isBeer);
      String text = readings + " readings: " + honest + " named, threefold noise " + threefold;
      assertTrue(honest <= 0.03, text);
      assertTrue(threefold >= leastOfThreefold, text);
    }
  }
}
