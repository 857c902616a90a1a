package org.brewchem.checks.causes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.brewchem.quality.Difference;
import org.junit.jupiter.api.Test;

/** The ideal reader, and the pairs that it reads. */
class CauseReaderTest {

  private static final int PAIRS = 20_000;

  /** Of what it holds to be so with a probability, so many are so: within 4 binomial deviations. */
  @Test
  void probabilitiesAreFrequencies() {
    CauseReader reader = new CauseReader(CausePair.SIZES);
    SplittableRandom random = new SplittableRandom(1);
    int[] stated = new int[10];
    int[] right = new int[10];
    double[] sum = new double[10];
    for (int i = 0; i < PAIRS; i++) {
      SimulatedCause cause = SimulatedCause.values()[random.nextInt(7)];
      double size = CausePair.SIZES.get(random.nextInt(4));
      Map<SimulatedCause, Double> found =
          reader.probabilities(
              CausePair.draw(cause, cause == SimulatedCause.NONE ? 0 : size, random).scores());
      found.forEach(
          (named, probability) -> {
            int bin = (int) Math.min(9, 10 * probability);
            stated[bin]++;
            sum[bin] += probability;
            right[bin] += named == cause ? 1 : 0;
          });
    }
    for (int bin = 0; bin < 10; bin++) {
      double expected = sum[bin] / stated[bin];
      assertTrue(stated[bin] > 300, "bin " + bin + ": " + stated[bin]);
      assertEquals(
          expected,
          (double) right[bin] / stated[bin],
          4 * Math.sqrt(expected * (1 - expected) / stated[bin]),
          "bin " + bin + " of " + stated[bin]);
    }
  }

  @Test
  void itSpeaksInAFewQuietPairs() {
    CauseReader reader = new CauseReader(List.of(3.0));
    SplittableRandom random = new SplittableRandom(2);
    int spoken = 0;
    for (int i = 0; i < PAIRS; i++) {
      spoken += reader.speaks(CausePair.draw(SimulatedCause.NONE, 0, random).scores()) ? 1 : 0;
    }
    assertEquals(1 - CauseReader.QUIET, (double) spoken / PAIRS, 0.006);
  }

  /** What the differences of beers and waters say is what was drawn. */
  @Test
  void differencesHaveTheScoresThatWereDrawn() {
    SplittableRandom random = new SplittableRandom(3);
    for (SimulatedCause cause : SimulatedCause.values()) {
      CausePair pair = CausePair.draw(cause, 8, random);
      List<Difference> differences = pair.differences();
      double[] z = pair.scores();
      for (int i = 0; i < z.length; i++) {
        assertEquals(SimulatedFigure.values()[i].title, differences.get(i).figure().name());
        assertEquals(z[i], differences.get(i).z().orElseThrow(), 0.02, cause + " " + i);
      }
    }
  }
}
