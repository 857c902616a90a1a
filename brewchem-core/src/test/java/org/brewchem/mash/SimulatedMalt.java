package org.brewchem.mash;

import java.util.Random;

/**
 * A malt as single buffering groups: a second algorithm, which knows nothing of curves. It takes up
 * strong acid by the protons that its groups bind, in a mash of which nothing else counts.
 */
final class SimulatedMalt {

  private final double[] amounts;
  private final double[] pKa;
  private final double own;

  private SimulatedMalt(double[] amounts, double[] pKa, double own) {
    this.amounts = amounts;
    this.pKa = pKa;
    this.own = own;
  }

  /** Groups as acids and proteins have them: carboxyl, imidazole and phosphate, amino. */
  static SimulatedMalt curved(Random random) {
    double[] pKa = {
      3.6 + 1.0 * random.nextDouble(),
      4.4 + 0.8 * random.nextDouble(),
      6.0 + 0.5 * random.nextDouble(),
      6.6 + 0.5 * random.nextDouble(),
      8.0 + 1.0 * random.nextDouble()
    };
    return scaled(random, pKa);
  }

  /** Groups of every strength. */
  static SimulatedMalt broad(Random random) {
    double[] pKa = new double[16];
    for (int i = 0; i < pKa.length; i++) {
      pKa[i] = 2.5 + 0.5 * i;
    }
    return scaled(random, pKa);
  }

  /** With random amounts such that the capacity at the malt's own pH is 30 to 65 mEq/(kg pH). */
  private static SimulatedMalt scaled(Random random, double[] pKa) {
    double[] amounts = new double[pKa.length];
    for (int i = 0; i < amounts.length; i++) {
      amounts[i] = 0.4 + 1.2 * random.nextDouble();
    }
    double own = 5.8 + 0.1 * random.nextGaussian();
    double capacity = 30 + 35 * random.nextDouble();
    double now = 0;
    for (int i = 0; i < amounts.length; i++) {
      double bound = bound(own, pKa[i]);
      now += amounts[i] * Math.log(10) * bound * (1 - bound);
    }
    for (int i = 0; i < amounts.length; i++) {
      amounts[i] *= capacity / now;
    }
    return new SimulatedMalt(amounts, pKa, own);
  }

  private static double bound(double pH, double pKa) {
    return 1 / (1 + Math.pow(10, pH - pKa));
  }

  /** Strong acid that brings the malt to a pH, mEq/kg. */
  double acidAt(double pH) {
    double acid = 0;
    for (int i = 0; i < amounts.length; i++) {
      acid += amounts[i] * (bound(pH, pKa[i]) - bound(own, pKa[i]));
    }
    return acid;
  }

  /** The pH that strong acid brings the malt to, by halving. */
  double pHAt(double acid) {
    double low = 0;
    double high = 12;
    while (high - low > 1e-12) {
      double middle = (low + high) / 2;
      if (acidAt(middle) > acid) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** The pH of a mixture, the second malt's share by mass given, by halving. */
  static double pHAt(SimulatedMalt first, SimulatedMalt second, double share, double acid) {
    double low = 0;
    double high = 12;
    while (high - low > 1e-12) {
      double middle = (low + high) / 2;
      double taken = (1 - share) * first.acidAt(middle) + share * second.acidAt(middle);
      if (taken > acid) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
