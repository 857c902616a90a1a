package org.brewchem.quality;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.brewchem.beer.Beer;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

/** Causes of differences, on invented batches. How often they are right: the study of causes. */
class LikelyCausesTest {

  private static final List<String> FIGURES =
      List.of("pH", "titratable acidity", "calcium", "sulfate to chloride", "titration alkalinity");

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

  @Test
  void aLargeOffsetOfTheElectrodeIsNoCauseThatMovesTheAcidityAsWell() {
    for (int sign : new int[] {1, -1}) {
      LikelyCauses.Suspect first = of(sign * 12, sign * -2.2, 0, 0, 0).suspects().get(0);
      assertEquals(List.of("offset of the electrode"), first.causes());
      assertEquals(2, first.speaksFor().size());
      assertEquals(List.of(), first.speaksAgainst());
    }
  }

  @Test
  void aHugeDifferenceIsWeighedToo() {
    assertEquals(
        List.of("incomplete degassing", "old titrant"),
        of(0, 5000, 0, 0, 0).suspects().get(0).causes());
    assertEquals(List.of(), of(0, 0, 5000, 0, 0).suspects());
  }

  @Test
  void causesThatAreAlikeInTheGivenFiguresAreNamedTogether() {
    LikelyCauses.Suspect suspect = of(0.1, 5, 0, 0, 0).suspects().get(0);
    assertEquals(List.of("incomplete degassing", "old titrant"), suspect.causes());
    assertEquals(LikelyCauses.Strength.LIKELY, suspect.strength());
    assertEquals(2, suspect.tellingMeasurements().size());
    assertTrue(suspect.speaksFor().get(0).startsWith("titratable acidity, z +5.0"));
    assertEquals(List.of(), suspect.speaksAgainst());
    assertEquals(
        List.of("alkalinity of the water up"), of(5, -4, 0, 0, 6).suspects().get(0).causes());
    assertEquals(
        List.of("alkalinity of the water up", "less acid in the mash"),
        of(6, -6).suspects().get(0).causes().subList(0, 2));
  }

  @Test
  void whatNoRuleExplainsIsNotPutOnACause() {
    LikelyCauses found = of(0, 0, 8, 0, 0);
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
        List.of("titratable acidity: the uncertainty of the difference is unknown or 0"),
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

  private static Water water(double bicarbonate) {
    return WaterReport.reported()
        .calcium(mgPerL(60), mgPerL(2))
        .magnesium(mgPerL(10), mgPerL(1))
        .sodium(mgPerL(10), mgPerL(1))
        .sulfate(mgPerL(50), mgPerL(1))
        .chloride(mgPerL(30), mgPerL(1))
        .bicarbonate(mgPerL(bicarbonate), mgPerL(6))
        .pH(pH(7.5), 0.1)
        .build()
        .water();
  }

  @Test
  void residualAlkalinityIsCountedOnlyWithoutTheAlkalinityThatItRestsOn() {
    Water later = water(240);
    Water earlier = water(180);
    Difference residual = Difference.of(later.residualAlkalinity(), earlier.residualAlkalinity());
    Difference alkalinity =
        Difference.of(later.titrationAlkalinity(pH(4.3)), earlier.titrationAlkalinity(pH(4.3)));
    LikelyCauses both = LikelyCauses.of(List.of(residual, alkalinity));
    assertEquals(
        List.of("residual alkalinity: it rests on the titration alkalinity, which is counted"),
        both.notCounted());
    for (LikelyCauses found : List.of(both, LikelyCauses.of(List.of(residual)))) {
      assertEquals(List.of("alkalinity of the water up"), found.suspects().get(0).causes());
    }
    assertEquals(List.of(), LikelyCauses.of(List.of(residual)).notCounted());
  }

  private static double value(String name) {
    return Objects.requireNonNull(CauseRules.values().get(name), name);
  }

  /** The mean of the densities by the midpoint rule, less the factor of the noise alone. */
  private static double meanDensity(double z, double from, double to) {
    int parts = 20_000;
    double sum = 0;
    for (int i = 0; i < parts; i++) {
      double effect = from + (to - from) * (i + 0.5) / parts;
      sum += Math.exp(-(z - effect) * (z - effect) / 2);
    }
    return sum / parts;
  }

  private static double meanDensity(double z, double size, CauseRules.Direction direction) {
    double slight = value("slight") * size;
    double same = value("same") * size;
    return switch (direction) {
      case UP -> meanDensity(z, 0, size);
      case DOWN -> meanDensity(z, -size, 0);
      case SLIGHTLY_UP -> meanDensity(z, 0, slight);
      case SLIGHTLY_DOWN -> meanDensity(z, -slight, 0);
      case SAME -> meanDensity(z, -same, same);
      case EITHER -> meanDensity(z, -size, size);
    };
  }

  private static double evidence(double z, CauseRules.Direction direction) {
    double largest = Math.max(value("largest size"), 2 * Math.abs(z));
    double sum = 0;
    int sizes = 0;
    double size = value("smallest size");
    while (sizes == 0 || size < 2 * largest) {
      sum += meanDensity(z, size, direction);
      sizes++;
      size *= 2;
    }
    return sum / sizes;
  }

  @Test
  void theEvidenceOfOneFigureIsTheMeanOfItsDensitiesOverSizesAndEffects() {
    for (String figure : FIGURES) {
      for (double z : new double[] {0, 1.3, -2.4, 5}) {
        CauseEvidence found = CauseEvidence.of(Map.of(figure, z));
        assertEquals(
            evidence(z, CauseRules.Direction.EITHER), Math.exp(found.ofNone()), 1e-5, figure);
        CauseRules.CAUSES.forEach(
            (cause, rules) -> {
              CauseRules.Direction direction = CauseRules.rule(cause, figure).direction();
              double expected = evidence(z, direction);
              if (CauseRules.reverses(cause)) {
                expected = (expected + evidence(z, direction.times(-1))) / 2;
              }
              assertEquals(
                  expected,
                  Math.exp(Objects.requireNonNull(found.ofCauses().get(cause))),
                  1e-5,
                  cause + " on " + figure);
            });
      }
    }
  }

  /** As often as the table says, within five standard errors of 2000 draws. */
  @Test
  void aQuietPairIsLoudAsRarelyAsTheTableSays() {
    SplittableRandom random = new SplittableRandom(20261127);
    double share = 1 - value("quiet");
    int loud = 0;
    for (int i = 0; i < 2_000; i++) {
      Map<String, Double> z = Map.of("pH", random.nextGaussian(), "calcium", random.nextGaussian());
      loud += CauseEvidence.of(z).isLoud() ? 1 : 0;
    }
    assertEquals(share, loud / 2000.0, 5 * Math.sqrt(share * (1 - share) / 2_000));
  }

  @Test
  void aSuspectPrintsItsCausesAndItsShareAndWhatSpeaksForIt() {
    LikelyCauses found = of(0.1, 5, 0, 0, 0);
    LikelyCauses.Suspect suspect = found.suspects().get(0);
    assertEquals("likely", LikelyCauses.Strength.LIKELY.toString());
    assertEquals(
        "incomplete degassing or old titrant: likely (" + Math.round(100 * suspect.share()) + " %)",
        suspect.toString());
    assertTrue(found.toString().startsWith(suspect.toString()), found.toString());
    assertTrue(
        suspect.tellingMeasurements().get(0).startsWith("incomplete degassing: "),
        suspect.tellingMeasurements().toString());
    double all = found.shareOfNone();
    for (LikelyCauses.Suspect one : found.suspects()) {
      assertTrue(one.share() >= 0.1, one.toString());
      all += one.share();
    }
    assertTrue(all > 0.7 && all <= 1 + 1e-12, "" + all);
  }

  /**
   * More alkalinity lowers the acidity: a z of +2.2 speaks against it, one of exactly 2 is not more
   * than 2 and speaks neither way. Calcium is to stay the same and does, at exactly 2. Another malt
   * moves the pH either way; where it did not move, it counts with those that raise it.
   */
  @Test
  void whatMovedTheWrongWaySpeaksAgainstACause() {
    LikelyCauses.Suspect against = of(6, 2.2, 0, 0, 7).suspects().get(0);
    assertEquals(List.of("alkalinity of the water up"), against.causes());
    assertEquals(2, against.speaksFor().size());
    assertEquals(1, against.speaksAgainst().size());
    assertTrue(against.speaksAgainst().get(0).startsWith("titratable acidity, z +2.2: "));
    LikelyCauses.Suspect neither = of(6, 2, 0, 0, 7).suspects().get(0);
    assertEquals(List.of("alkalinity of the water up"), neither.causes());
    assertEquals(2, neither.speaksFor().size());
    assertEquals(List.of(), neither.speaksAgainst());
    LikelyCauses.Suspect same = of(0.1, 5, 2, 0, 0).suspects().get(0);
    assertEquals(List.of("incomplete degassing", "old titrant"), same.causes());
    assertEquals(1, same.speaksFor().size());
    assertEquals(List.of(), same.speaksAgainst());
    assertEquals(
        List.of("alkalinity of the water up", "less acid in the mash", "other malt"),
        of(0, -5).suspects().get(0).causes());
  }

  /**
   * By hand: a pH that rose by 5 is explained by the two causes that raise it twice as well as by
   * what may move it either way, whose effects are half of them on the wrong side: another malt,
   * the electrode, and none of these. That is 2 : 2 : 1 : 1 : 1; what leaves the pH as it is adds
   * 1e-4.
   */
  @Test
  void ofOneFigureNoneOfTheCausesTakesASeventh() {
    LikelyCauses found = of(5);
    assertEquals(1 / 7.0, found.shareOfNone(), 5e-4);
    assertEquals(1, found.suspects().size());
    assertEquals(6 / 7.0, found.suspects().get(0).share(), 5e-4);
  }

  /**
   * By hand: ten standard uncertainties on the wrong side only the tail beyond 10, 7.61985e-24, is
   * left of every size. Those are 1, 2, 4, 8, 16 and 32, up to twice the z, and the mean of their
   * inverses is 1.96875 / 6; times the root of 2 pi that is 6.2672e-24.
   */
  @Test
  void farOnTheWrongSideTheEvidenceKeepsItsDigits() {
    Map<String, Double> found = CauseEvidence.of(Map.of("pH", -10.0)).ofCauses();
    double evidence = Math.exp(Objects.requireNonNull(found.get("alkalinity of the water up")));
    assertEquals(1, evidence / 6.2672e-24, 1e-4);
  }
}
