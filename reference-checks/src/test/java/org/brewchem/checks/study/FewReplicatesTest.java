package org.brewchem.checks.study;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How often U holds the truth where the scatter of a few replicates, known from these alone, meets
 * something known well: Welch and Satterthwaite's degrees of freedom are an approximation. The
 * expected shares are those of a program of ours in Python, 200,000 draws each.
 */
class FewReplicatesTest {

  private static final int DRAWS = 20_000;

  @ParameterizedTest
  @CsvSource({
    "2, 0.5, 0.951",
    "2, 1, 0.932",
    "2, 4, 0.872",
    "3, 1, 0.942",
    "3, 4, 0.923",
    "4, 2, 0.936",
    "6, 2, 0.944"
  })
  void aFewReplicatesHoldTheTruthLessOften(int replicates, double scatter, double expected) {
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
      double variance = (squares - replicates * mean * mean) / (replicates - 1);
      Traced found =
          Traced.of(
                  Source.of("mean", mean, Math.sqrt(variance / replicates), replicates - 1, "g/L"))
              .plus(Traced.of(Source.of("apparatus", random.nextGaussian(), 1, "g/L")));
      double half = found.uncertain("g/L").orElseThrow().expanded().halfWidth();
      held += Math.abs(found.value()) <= half ? 1 : 0;
    }
    // Three standard deviations of a share of 20,000 are 0.007 at most.
    assertEquals(expected, (double) held / DRAWS, 0.007);
  }
}
