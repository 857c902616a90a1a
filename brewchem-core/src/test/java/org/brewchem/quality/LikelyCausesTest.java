package org.brewchem.quality;

import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.brewchem.beer.Beer;
import org.brewchem.quantity.TitratableAcidity;
import org.junit.jupiter.api.Test;

/** Causes of differences, on invented batches and a simulator with sizes of its own. */
class LikelyCausesTest {

  private static final List<String> FIGURES =
      List.of(
          "pH",
          "titratable acidity",
          "calcium",
          "sulfate to chloride",
          "titration alkalinity",
          "residual alkalinity");

  /** The simulator: relative sizes of effects, invented; the rules know directions only. */
  private static final Map<String, double[]> SIMULATED =
      Map.of(
          "alkalinity of the water up", new double[] {1, -0.8, 0, 0, 1.2, 1.1},
          "less acid in the mash", new double[] {1, -1, 0, 0, 0, 0},
          "other malt", new double[] {1, 1, 0, 0, 0, 0},
          "incomplete degassing", new double[] {-0.1, 1, 0, 0, 0, 0},
          "old titrant", new double[] {0, 1, 0, 0, 0, 0},
          "offset of the electrode", new double[] {1, -0.2, 0, 0, 0, 0});

  private static LikelyCauses of(double... z) {
    Map<String, Double> scores = new LinkedHashMap<>();
    for (int i = 0; i < z.length; i++) {
      scores.put(FIGURES.get(i), z[i]);
    }
    return LikelyCauses.ofScores(scores);
  }

  private static double[] noise(SplittableRandom random) {
    double[] z = new double[FIGURES.size()];
    Arrays.setAll(z, i -> random.nextGaussian());
    return z;
  }

  @Test
  void nothingIsNamedInFivePercentOfQuietPairsAtMost() {
    SplittableRandom random = new SplittableRandom(20261126);
    int named = 0;
    for (int i = 0; i < 20_000; i++) {
      named += of(noise(random)).suspects().isEmpty() ? 0 : 1;
    }
    System.out.printf("quiet pairs with a name: %.2f %%%n", named / 200.0);
    assertTrue(named <= 1_000, named + " of 20000");
  }

  /** Bounds of the issue: four of five likely ones are right. */
  @Test
  void fourOfFiveLikelyCausesAreRight() {
    SplittableRandom random = new SplittableRandom(20261127);
    for (double size : new double[] {2, 3, 5, 8}) {
      int likely = 0;
      int right = 0;
      for (Map.Entry<String, double[]> truth : new TreeMap<>(SIMULATED).entrySet()) {
        int first = 0;
        int firstTwo = 0;
        for (int i = 0; i < 1_000; i++) {
          double[] z = noise(random);
          // The sign of a malt and of an offset is chance; both figures of a malt have their own.
          double sign = truth.getKey().startsWith("o") ? Math.signum(random.nextDouble() - 0.5) : 1;
          boolean malt = truth.getKey().equals("other malt");
          boolean titrant = truth.getKey().equals("old titrant");
          for (int f = 0; f < z.length; f++) {
            double flip = malt && f == 1 ? Math.signum(random.nextDouble() - 0.5) : 1;
            z[f] += size * truth.getValue()[f] * flip * (titrant ? 1 : sign);
          }
          List<LikelyCauses.Suspect> found = of(z).suspects();
          for (int k = 0; k < Math.min(2, found.size()); k++) {
            if (found.get(k).causes().contains(truth.getKey())) {
              firstTwo++;
              first += k == 0 ? 1 : 0;
            }
          }
          if (!found.isEmpty() && found.get(0).strength() == LikelyCauses.Strength.LIKELY) {
            likely++;
            right += found.get(0).causes().contains(truth.getKey()) ? 1 : 0;
          }
        }
        System.out.printf(
            "%.0f u, %s: first %.1f %%, first two %.1f %%%n",
            size, truth.getKey(), first / 10.0, firstTwo / 10.0);
      }
      System.out.printf("%.0f u: likely %d, right %.1f %%%n", size, likely, 100.0 * right / likely);
      assertTrue(likely > 0 && right >= 0.8 * likely, size + " u: " + right + " of " + likely);
    }
  }

  @Test
  void causesThatAreAlikeInTheGivenFiguresAreNamedTogether() {
    LikelyCauses.Suspect suspect = of(0.1, 5, 0, 0, 0, 0).suspects().get(0);
    assertEquals(List.of("incomplete degassing", "old titrant"), suspect.causes());
    assertEquals(LikelyCauses.Strength.LIKELY, suspect.strength());
    assertEquals(2, suspect.tellingMeasurements().size());
    assertTrue(suspect.speaksFor().get(0).startsWith("titratable acidity, z +5.0"));
    assertEquals(List.of(), suspect.speaksAgainst());
    assertEquals(
        List.of("alkalinity of the water up"), of(5, -4, 0, 0, 6, 6).suspects().get(0).causes());
    assertEquals(
        List.of("alkalinity of the water up", "less acid in the mash"),
        of(6, -6).suspects().get(0).causes().subList(0, 2));
  }

  @Test
  void whatNoRuleExplainsIsNotPutOnACause() {
    LikelyCauses found = of(0, 0, 8, 0, 0, 0);
    assertEquals(List.of(), found.suspects());
    assertTrue(found.shareOfNone() > 0.99);
    assertEquals("no cause is named", found.toString());
  }

  @Test
  void everyCauseSpeaksOfEveryFigureAndHasAMeasurement() {
    assertEquals(6, CauseRules.CAUSES.size());
    CauseRules.CAUSES.forEach(
        (cause, rules) -> {
          assertEquals(CauseRules.FIGURES, rules.keySet(), cause);
          assertTrue(!CauseRules.measurement(cause).isBlank());
        });
    assertTrue(CauseRules.FIGURES.containsAll(FIGURES));
  }

  private static Beer beer(double pH) {
    return Beer.of(pH(pH), TitratableAcidity.ofMilliequivalentsPerLitre(19, pH(8.2)))
        .withStandardUncertaintyOfPH(0.02);
  }

  @Test
  void differencesOfBeersAreWeighedAndWhatIsNotCountedIsNamed() {
    Difference acidity =
        Difference.of(beer(4.5).titratableAcidity(), beer(4.3).titratableAcidity());
    Difference pH = Difference.of(beer(4.5).pH(), beer(4.3).pH());
    LikelyCauses found = LikelyCauses.of(List.of(pH, acidity));
    assertEquals(
        List.of("titratable acidity: the uncertainty of the difference is unknown"),
        found.notCounted());
    assertEquals(
        List.of(
            "alkalinity of the water up",
            "less acid in the mash",
            "other malt",
            "offset of the electrode"),
        found.suspects().get(0).causes());
    assertThrows(IllegalArgumentException.class, () -> LikelyCauses.of(List.of(pH, pH)));
  }
}
