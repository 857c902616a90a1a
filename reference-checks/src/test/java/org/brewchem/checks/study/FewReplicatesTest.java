package org.brewchem.checks.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.apache.commons.math3.distribution.TDistribution;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How often U holds the truth where the scatter of a few replicates, known from these alone, meets
 * something known well: Welch and Satterthwaite's degrees of freedom (JCGM 100:2008, G.4.1, from
 * memory) are an approximation. U is compared with the formula written out, and the shares with the
 * ranges that the page of uncertainty states.
 */
class FewReplicatesTest {

  private static final int DRAWS = 20_000;

  /** Three standard deviations of a share of 0.87 among so many. */
  private static final double CHANCE = 0.0072;

  @ParameterizedTest
  @CsvSource({
    "2, 1, 0.87, 0.93", "2, 2, 0.87, 0.93", "2, 4, 0.87, 0.93", "2, 8, 0.87, 0.93",
    "3, 1, 0.92, 0.94", "3, 4, 0.92, 0.94", "4, 2, 0.94, 0.95", "6, 2, 0.94, 0.95"
  })
  void aFewReplicatesHoldTheTruthLessOften(
      int replicates, double scatter, double least, double most) {
    Random random = new Random(20261128);
    int held = 0;
    for (int draw = 0; draw < DRAWS; draw++) {
      double sum = 0;
      double squares = 0;
      for (int i = 0; i < replicates; i++) {
        double value = scatter * Math.sqrt(replicates) * random.nextGaussian();
        sum += value;
        squares += value * value;
      }
      double mean = sum / replicates;
      double ofMean = (squares - replicates * mean * mean) / (replicates - 1) / replicates;
      Traced found =
          Traced.of(Source.of("mean", mean, Math.sqrt(ofMean), replicates - 1, "g/L"))
              .plus(Traced.of(Source.of("apparatus", random.nextGaussian(), 1, "g/L")));
      double half = found.uncertain("g/L").orElseThrow().expanded().halfWidth();
      if (draw < 200) {
        double variance = ofMean + 1;
        double freedom = (replicates - 1) * Math.pow(variance / ofMean, 2);
        double factor =
            Math.max(2, new TDistribution(null, freedom).inverseCumulativeProbability(0.975));
        assertEquals(factor * Math.sqrt(variance), half, 1e-6 * half);
      }
      held += Math.abs(found.value()) <= half ? 1 : 0;
    }
    double share = (double) held / DRAWS;
    assertTrue(share > least - CHANCE && share < most + CHANCE, replicates + ": " + share);
  }
}
