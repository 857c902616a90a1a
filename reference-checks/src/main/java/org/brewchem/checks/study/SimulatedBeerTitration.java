package org.brewchem.checks.study;

import java.util.Random;

/**
 * A second algorithm for titrations of beer: an ideal charge balance with pKa drawn at random, of
 * which the volume at a pH is a closed form, and the pH at a volume its inversion by halving. It
 * uses nothing of the library.
 */
final class SimulatedBeerTitration {

  private static final double PKW = 14;
  private static final double PKA1 = 6.35;
  private static final double PKA2 = 10.33;

  private final double[] pKa;
  private final double[] molar;
  private final double start;
  private final double lye;
  private final double sample;

  private SimulatedBeerTitration(
      double[] pKa, double[] molar, double start, double lye, double sample) {
    this.pKa = pKa;
    this.molar = molar;
    this.start = start;
    this.lye = lye;
    this.sample = sample;
  }

  /** What buffers a beer near the end point; amounts are our choice. */
  enum Kind {
    /** 10 to 18 groups of any pKa from 2.5 to 9.5. */
    MANY_GROUPS("many groups", 0, 0, 0, 0),
    /** Phosphate of 2 to 5 mmol/L and weak groups of 0.5 to 2.5 mmol/L. */
    PHOSPHATE("phosphate", 2, 5, 0.5, 2.5),
    /** Phosphate of at most 1.5 mmol/L, so that the jump is steep before the end point. */
    LITTLE_PHOSPHATE("little phosphate", 0, 1.5, 0.5, 2.5),
    /** Next to nothing above pH 6. */
    LEAN("next to no buffer above pH 6", 0.3, 1, 0.05, 0.4),
    /**
     * Phosphate below pH 8 and amines above it, and nothing between: the end point is in a jump.
     */
    GAP("nothing between pH 7.5 and 8.5", 0.3, 4, 0.3, 4);

    private final String title;
    private final double leastPhosphate;
    private final double mostPhosphate;
    private final double leastWeak;
    private final double mostWeak;

    Kind(
        String title,
        double leastPhosphate,
        double mostPhosphate,
        double leastWeak,
        double mostWeak) {
      this.title = title;
      this.leastPhosphate = leastPhosphate;
      this.mostPhosphate = mostPhosphate;
      this.leastWeak = leastWeak;
      this.mostWeak = mostWeak;
    }

    @Override
    public String toString() {
      return title;
    }
  }

  /** A beer of a kind, pH 3.9 to 4.7, with lye of about 0.1 mol/L. */
  static SimulatedBeerTitration draw(Kind kind, Random random, double lye, double sample) {
    return kind == Kind.MANY_GROUPS
        ? manyGroups(random, lye, sample)
        : ofAcids(kind, random, lye, sample);
  }

  /** Ten acids below pH 6, phosphate, and three weak groups above it. */
  private static SimulatedBeerTitration ofAcids(
      Kind kind, Random random, double lye, double sample) {
    double[] low = {3.75, 4.66, 2.9, 4.4, 5.7, 3.3, 4.8, 3.7, 4.3, 4.9};
    double[] phosphate = {1.95, 6.85, 11.7};
    double[] weak = {6.2, 7.6, 9};
    double[] pKa = new double[16];
    double[] molar = new double[16];
    double phosphates = between(random, kind.leastPhosphate, kind.mostPhosphate);
    for (int i = 0; i < 16; i++) {
      pKa[i] =
          i < 10
              ? low[i] + between(random, -0.2, 0.2)
              : i < 13 ? phosphate[i - 10] : weak[i - 13] + between(random, -0.5, 0.5);
      molar[i] =
          0.001
              * (i < 10
                  ? between(random, 0.5, 2.5)
                  : i < 13
                      ? phosphates
                      : kind == Kind.GAP && i < 15
                          ? 0
                          : between(random, kind.leastWeak, kind.mostWeak));
    }
    return new SimulatedBeerTitration(pKa, molar, between(random, 3.9, 4.7), lye, sample);
  }

  private static double between(Random random, double least, double most) {
    return least + (most - least) * random.nextDouble();
  }

  private static SimulatedBeerTitration manyGroups(Random random, double lye, double sample) {
    int n = 10 + random.nextInt(9);
    double[] pKa = new double[n];
    double[] molar = new double[n];
    for (int i = 0; i < n; i++) {
      pKa[i] = 2.5 + 7 * random.nextDouble();
      molar[i] = 0.0005 + 0.004 * random.nextDouble();
    }
    return new SimulatedBeerTitration(pKa, molar, 3.9 + 0.8 * random.nextDouble(), lye, sample);
  }

  /** Anionic charge of the buffers, mol/L of undiluted sample. */
  private double buffers(double pH, double carbonDioxide) {
    double sum = 0;
    for (int i = 0; i < pKa.length; i++) {
      sum += molar[i] / (1 + Math.pow(10, pKa[i] - pH));
    }
    double h = Math.pow(10, -pH);
    double k1 = Math.pow(10, -PKA1);
    double k2 = Math.pow(10, -PKA2);
    return sum + carbonDioxide * (k1 * h + 2 * k1 * k2) / (h * h + k1 * h + k1 * k2);
  }

  private static double water(double pH) {
    return Math.pow(10, pH - PKW) - Math.pow(10, -pH);
  }

  /** The volume of lye, in the unit of the sample, at a pH, with carbon dioxide taken up. */
  double volumeAt(double pH, double carbonDioxide) {
    double asked = buffers(pH, carbonDioxide) - buffers(start, 0) - water(start);
    return sample * (asked + water(pH)) / (lye - water(pH));
  }

  /** The pH at a net volume of lye diluted to a total volume, with carbon dioxide taken up. */
  double pHAt(double net, double total, double carbonDioxide) {
    double low = 1;
    double high = 13;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      double charge =
          sample * (buffers(middle, carbonDioxide) - buffers(start, 0) - water(start))
              + (sample + total) * water(middle);
      if (charge < lye * net) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  double pHAt(double volume, double carbonDioxide) {
    return pHAt(volume, volume, carbonDioxide);
  }
}
