package org.brewchem.titration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.brewchem.figure.Notice;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.Replicates;
import org.junit.jupiter.api.Test;

class RepeatabilityTest {

  private static final Apparatus USUAL = Apparatus.usual();
  private static final Apparatus KNOWN = USUAL.withRepeatability(0.01);

  private static List<Notice> judged(Apparatus apparatus, double meanTitre, double... values) {
    return Repeatability.notices(
        "titres",
        "alkalinity",
        apparatus,
        values.length < 2 ? Optional.empty() : Optional.of(Replicates.of("mEq/L", values)),
        meanTitre);
  }

  private static List<TitrationCode> codes(List<Notice> notices) {
    return notices.stream().map(notice -> (TitrationCode) notice.code()).toList();
  }

  /** A mean of 100 with so large a range: a value at either end, the others in the middle. */
  private static double[] spread(int count, double range) {
    double[] values = new double[count];
    Arrays.fill(values, 100);
    values[0] -= range / 2;
    values[count - 1] += range / 2;
    return values;
  }

  /** The chance that the range of so many normal values is within q standard deviations. */
  private static double within(int count, double q) {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double sum = 0;
    double step = 0.1;
    for (double x = -6; x < 11; x += step) {
      double inside = normal.cumulativeProbability(x) - normal.cumulativeProbability(x - q);
      sum += count * normal.density(x) * Math.pow(inside, count - 1) * step;
    }
    return sum;
  }

  private static double quantile(int count) {
    double low = 2;
    double high = 6;
    while (high - low > 1e-4) {
      double middle = (low + high) / 2;
      if (within(count, middle) < 0.95) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The studentised range by its own integral, 95 %; 2.77 of two is 2.8 by custom. */
  @Test
  void twoToTenResultsMayDifferByTheRangeThatRepeatabilityExplains() {
    for (int count = 2; count <= 10; count++) {
      double q = quantile(count);
      double explained = count == 2 ? 2.8 : q;
      assertEquals(2.772, count == 2 ? q : 2.772, 0.002);
      assertEquals(
          List.of(),
          ranges(judged(KNOWN, 10, spread(count, explained - 0.008))),
          count + " within " + explained);
      assertEquals(
          List.of(TitrationCode.REPLICATES_DIFFER),
          ranges(judged(KNOWN, 10, spread(count, explained + 0.008))),
          count + " beyond " + explained);
    }
  }

  @Test
  void ofElevenOrMoreResultsTheRangeIsNotJudged() {
    assertEquals(List.of(), ranges(judged(KNOWN, 10, spread(11, 50))));
    assertEquals(List.of(), ranges(judged(KNOWN, 10, spread(12, 50))));
  }

  private static List<TitrationCode> ranges(List<Notice> notices) {
    return codes(notices).stream().filter(code -> code == TitrationCode.REPLICATES_DIFFER).toList();
  }

  @Test
  void aRangeBeyondTheStatedRepeatabilityIsSaid() {
    List<Notice> notices = judged(KNOWN, 10, 98, 102);
    assertEquals(1, notices.size());
    assertEquals("titres", notices.get(0).subject());
    assertEquals(
        "titres: the 2 differ by 4.00 mEq/L, more than the 2.8 mEq/L that the stated repeatability"
            + " explains",
        notices.get(0).text());
    // A mean below 0 has no other range.
    assertEquals(List.of(), judged(KNOWN, 10, -99, -101));
    assertEquals(notices, judged(KNOWN, 10, -98, -102));
  }

  /** By hand: 1 % and 0.03 / sqrt 6 on 1 mL, 1.22 %, are 1.58 % together, 4.43 of 100. */
  @Test
  void withoutARepeatabilityOfItsOwnTheBuretteCountsBesideTheUsualOne() {
    double limit = 2.8 * Math.hypot(1, 3 / Math.sqrt(6));
    assertEquals(
        List.of(TitrationCode.TWO_REPLICATES),
        codes(judged(USUAL, 1, 100 - limit / 2.001, 100 + limit / 2.001)));
    List<Notice> differ = judged(USUAL, 1, 100 - limit / 1.999, 100 + limit / 1.999);
    assertEquals(
        List.of(TitrationCode.TWO_REPLICATES, TitrationCode.REPLICATES_DIFFER), codes(differ));
    assertEquals(
        "titres: the 2 differ by 4.43 mEq/L, more than the 4.4 mEq/L that a usual repeatability of"
            + " 1.0 % (our choice; no published repeatability of this method was found) explains",
        differ.get(1).text());
    assertEquals("titres", differ.get(0).subject());
    assertTrue(
        differ.get(0).text().startsWith("titres: two replicates do not fix the spread"),
        differ.get(0).text());
    // Where nothing was taken there is no share of the burette.
    for (double none : new double[] {0, -1}) {
      assertEquals(List.of(), ranges(judged(USUAL, none, 98.61, 101.39)));
      assertEquals(
          List.of(TitrationCode.REPLICATES_DIFFER), ranges(judged(USUAL, none, 98.59, 101.41)));
    }
    // Nor does a better burette count where the repeatability is known.
    assertEquals(List.of(TitrationCode.REPLICATES_DIFFER), ranges(judged(KNOWN, 1, 98.59, 101.41)));
  }

  @Test
  void aSingleDeterminationSaysThatItsRepeatabilityIsNotKnown() {
    List<Notice> single = judged(USUAL, 10, 100);
    assertEquals(List.of(TitrationCode.SINGLE_DETERMINATION), codes(single));
    assertEquals(
        "titres: a single determination, its repeatability is not known and not in the budget;"
            + " no published repeatability of this method was found",
        single.get(0).text());
    assertEquals(List.of(), judged(KNOWN, 10, 100));
  }

  @Test
  void oneFarFromTheOthersIsAnOutlierByItsRow() {
    List<Notice> notices = judged(USUAL, 10, 100, 130, 100.1, 99.9);
    assertEquals(List.of(TitrationCode.OUTLIER, TitrationCode.REPLICATES_DIFFER), codes(notices));
    assertEquals(2, notices.get(0).row().orElseThrow());
    assertTrue(
        notices
            .get(0)
            .text()
            .startsWith("130.00 mEq/L lies farther from the others than chance explains ("),
        notices.get(0).text());
    assertTrue(
        notices.get(0).text().endsWith("); look for a cause, it is not dropped"),
        notices.get(0).text());
    assertEquals(List.of(), judged(USUAL, 10, 100, 100.2, 99.9));
    // Three are enough to judge one of them.
    assertEquals(
        List.of(TitrationCode.OUTLIER, TitrationCode.REPLICATES_DIFFER),
        codes(judged(USUAL, 10, 100, 130, 100.001)));
  }

  private static Input input(Apparatus apparatus, int count, double... values) {
    return Repeatability.input(
        apparatus,
        values.length == 0 ? Optional.empty() : Optional.of(Replicates.of("mEq/L", values)),
        count);
  }

  /** By hand: 99, 100, 101 have s = 1, so that their mean is known to 1 % over sqrt 3. */
  @Test
  void theMeanOfReplicatesIsKnownByTheirScatterOrByTheRepeatability() {
    Input scatter = input(USUAL, 3, 99, 100, 101);
    assertEquals("repeatability", scatter.name());
    assertEquals(1, scatter.estimate());
    assertEquals(0.01 / Math.sqrt(3), scatter.standardUncertainty(), 1e-15);
    assertEquals(2, scatter.degreesOfFreedom());
    Input known = input(KNOWN, 4, 99, 100, 101);
    assertEquals("repeatability", known.name());
    assertEquals(1, known.estimate());
    assertEquals(0.005, known.standardUncertainty(), 1e-15);
    assertEquals(Double.POSITIVE_INFINITY, known.degreesOfFreedom());
    assertEquals(0.01, input(KNOWN, 1).standardUncertainty(), 1e-15);
  }

  @Test
  void oneDeterminationAndAMeanOfNothingHaveNoScatter() {
    Input one = input(USUAL, 1);
    assertEquals(1, one.estimate());
    assertEquals(0, one.standardUncertainty());
    Input nothing = input(USUAL, 2, -1, 1);
    assertEquals(1, nothing.estimate());
    assertEquals(0, nothing.standardUncertainty());
  }

  @Test
  void aMethodThatTheTableDoesNotNameCountsAsAnyOther() {
    assertEquals(UsualRepeatability.of("other"), UsualRepeatability.of("hardness"));
    assertEquals(0.003, UsualRepeatability.of("standardisation").relative());
  }
}
