package org.brewchem.quality;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.quality.ControlChart.Drawn;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Solution;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

class ControlChartTest {

  private static final double[] QUIET = {0.1, -0.4, 0.6, -0.2, 0.3, -0.7, 0.5, -0.1, 0.2, -0.3};

  private static List<Integer> rowsOf(ControlRule rule, double... standardised) {
    return ControlChart.of(InControl.stated(0, 1, ""), List.of(rule))
        .watch(ControlSeries.of("figure", "", standardised))
        .signals()
        .stream()
        .map(ControlChart.Signal::row)
        .toList();
  }

  @Test
  void aSinglePointSignalsBeyondTheLimitAndNotOnIt() {
    assertEquals(List.of(2, 4), rowsOf(ControlRules.beyond(3), 3, 3.01, 0, -3.01));
  }

  @Test
  void aRunCountsPointsOfOneSideOnlyAndNeedsTheLastToBeOneOfThem() {
    assertEquals(List.of(3), rowsOf(ControlRules.run(2, 3, 2), 2.1, 0, 2.1, 0, -2.1));
    assertEquals(List.of(), rowsOf(ControlRules.run(2, 3, 2), 2.1, -2.1, 0, 0, 2.1));
    assertEquals(List.of(5), rowsOf(ControlRules.run(4, 5, 1), 1.1, 1.1, 0, 1.1, 1.1, 0));
    assertEquals(
        List.of(8, 9), rowsOf(ControlRules.run(8, 8, 0), 1, 1, 1, 1, 1, 1, 1, 1, 1, -1, 1));
    assertEquals(List.of(), rowsOf(ControlRules.run(8, 8, 0), 1, 1, 1, 1, 0, 1, 1, 1, 1));
  }

  @Test
  void aRunMayBeAsLongAsTheMemory() {
    double[] ones = new double[70];
    Arrays.fill(ones, 1);
    assertEquals(List.of(64, 65, 66, 67, 68, 69, 70), rowsOf(ControlRules.run(64, 64, 0), ones));
  }

  @Test
  void twoNeighboursThatLieFarApartSignalAsAMovingRange() {
    double limit = 3.267 * 1.128;
    assertEquals(
        List.of(3), rowsOf(ControlRules.movingRange(), 0, limit - 0.01, -0.02, limit - 0.03));
  }

  @Test
  void aWeightedAverageAndASumFindASmallShiftThatSinglePointsPassOver() {
    double[] shifted = new double[30];
    for (int i = 0; i < shifted.length; i++) {
      shifted[i] = QUIET[i % QUIET.length] + (i < 10 ? 0 : 1.2);
    }
    assertEquals(List.of(), rowsOf(ControlRules.beyond(3), shifted));
    assertTrue(rowsOf(ControlRules.weightedAverage(0.2, 3), shifted).get(0) > 10);
    assertTrue(rowsOf(ControlRules.cumulativeSum(0.5, 5), shifted).get(0) > 10);
    for (int i = 0; i < shifted.length; i++) {
      shifted[i] = -shifted[i];
    }
    assertTrue(rowsOf(ControlRules.cumulativeSum(0.5, 5), shifted).get(0) > 10);
  }

  @Test
  void limitsComeFromTheMovingRangesOfAtLeastEightBatches() {
    ControlSeries seven = ControlSeries.of("TA", "g/L", 1, 2, 1, 2, 1, 2, 1);
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> InControl.from(seven));
    assertTrue(thrown.getMessage().startsWith("batches with a value: 7"), thrown.getMessage());
    InControl state = InControl.from(ControlSeries.of("TA", "g/L", 1, 2, 1, 2, 1, 2, 1, 2));
    assertEquals(1.5, state.mean(), 1e-15);
    assertEquals(1 / 1.128, state.standardDeviation(), 1e-15);
    assertEquals(OptionalInt.of(8), state.points());
    assertThrows(
        IllegalArgumentException.class,
        () -> InControl.from(ControlSeries.of("TA", "g/L", 1, 1, 1, 1, 1, 1, 1, 1)));
  }

  @Test
  void aSignalIsSaidInWordsAndABatchWithoutAValueKeepsItsPlace() {
    ControlSeries series =
        ControlSeries.of(WaterFigures.TOTAL_HARDNESS)
            .with("A", hardness(90))
            .with(
                "B", Answer.of(WaterFigures.TOTAL_HARDNESS, WaterReport.reported().build().water()))
            .with("C", hardness(130));
    ControlRule beyond = ControlRules.beyond(3);
    ControlChart.Watched watched =
        ControlChart.of(InControl.stated(225, 20, series.unit()), List.of(beyond)).watch(series);
    assertEquals(
        List.of(
            "batch B has no total hardness; passed over",
            "batch C, total hardness 324.6 mg/L as CaCO3, above the mean 225.0 mg/L as CaCO3:"
                + " beyond 3 standard deviations"),
        watched.notices().stream().map(Notice::text).toList());
    assertEquals(
        List.of(QualityCode.POINT_MISSING, QualityCode.SIGNAL),
        watched.notices().stream().map(Notice::code).toList());
    assertEquals(3, watched.notices().get(1).row().orElseThrow());
    assertEquals(List.of("A", "C"), watched.drawn(beyond).stream().map(Drawn::label).toList());
    assertEquals(285, watched.drawn(beyond).get(0).upperLimit().orElseThrow(), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> watched.drawn(ControlRules.movingRange()));
  }

  /**
   * With allowance 0.5 and mean 4.30, deviation 0.02, the z are 1.5, 2, 2, 2.5, 2.5, -0.5, -0.25.
   * The upper sum is 1, 2.5, 4, 6, 8, 7, 6.25: it still signals where the batch lies below.
   */
  @Test
  void aSumSaysWhichOfItsSidesSignalsWhereverTheBatchLies() {
    ControlSeries series =
        ControlSeries.of("pH", "", 4.33, 4.34, 4.34, 4.35, 4.35, 4.29, 4.295, 4.30);
    ControlChart chart =
        ControlChart.of(
            InControl.stated(4.30, 0.02, ""), List.of(ControlRules.cumulativeSum(0.5, 4.25)));
    ControlChart.Watched watched = chart.watch(series);
    assertEquals(
        List.of(ControlRule.Side.ABOVE),
        watched.signals().stream().map(ControlChart.Signal::side).distinct().toList());
    assertEquals(
        List.of(
            "batch 4, pH 4.350, above the mean 4.300: cumulative sums, k 0.5, h 4.25",
            "batch 5, pH 4.350, above the mean 4.300: cumulative sums, k 0.5, h 4.25",
            "batch 6, pH 4.290, below the mean 4.300: cumulative sums, k 0.5, h 4.25, on the upper"
                + " side",
            "batch 7, pH 4.295, below the mean 4.300: cumulative sums, k 0.5, h 4.25, on the upper"
                + " side",
            "batch 8, pH 4.300, at the mean 4.300: cumulative sums, k 0.5, h 4.25, on the upper"
                + " side"),
        watched.notices().stream().map(Notice::text).toList());
  }

  private static List<Notice> pastOf(double... values) {
    return InControl.from(ControlSeries.of("pH", "", values)).notices();
  }

  /**
   * By hand: of 1 to 8 the mean is 4.5, the squares sum to 42, the products of neighbours to 26.25:
   * a correlation of 0.625, beside -1/8 + 1.645 * 6 / (8 sqrt 7) = 0.341.
   */
  @Test
  void aPastWhoseBatchesFollowEachOtherIsSaidToDoSo() {
    List<Notice> rising = pastOf(1, 2, 3, 4, 5, 6, 7, 8);
    assertEquals(1, rising.size());
    assertEquals(QualityCode.PAST_NOT_INDEPENDENT, rising.get(0).code());
    assertTrue(
        rising.get(0).text().contains("by 0.63, independent ones by more than 0.34 in 5 %"),
        rising.get(0).text());
    assertEquals(List.of(), pastOf(1, 2, 1, 2, 1, 2, 1, 2));
    assertEquals(List.of(), InControl.stated(4.3, 0.02, "").notices());
  }

  @Test
  void anOutlierInThePastIsNamedWithItsBatchAndAStepOfTheReadingIsNone() {
    double[] past = new double[12];
    Arrays.fill(past, 4.30);
    past[5] = 4.90;
    List<Notice> apart = pastOf(past);
    assertEquals(1, apart.size());
    assertEquals(QualityCode.PAST_HOLDS_OUTLIER, apart.get(0).code());
    assertEquals(6, apart.get(0).row().orElseThrow());
    assertTrue(apart.get(0).text().startsWith("batch 6 behind the limits of pH"));
    past[5] = 4.35;
    assertEquals(List.of(), pastOf(past));
    past[9] = 4.34;
    assertEquals(List.of(), pastOf(past));
    past[5] = 4.62;
    assertEquals(QualityCode.PAST_HOLDS_OUTLIER, pastOf(past).get(0).code());
  }

  /** The levels are 5 % and 1 %; what is rounded coarsely is named less often. */
  @Test
  void soundPastsAreNamedAsOftenAsStated() {
    Random random = new Random(20261128);
    int trials = 2000;
    for (double step : new double[] {1e-6, 0.01, 0.05}) {
      for (int count : new int[] {8, 20, 50}) {
        int dependent = 0;
        int apart = 0;
        for (int i = 0; i < trials; i++) {
          double[] values = new double[count];
          for (int k = 0; k < count; k++) {
            values[k] = Math.rint((4.3 + 0.02 * random.nextGaussian()) / step) * step;
          }
          if (Arrays.stream(values).distinct().count() == 1) {
            continue;
          }
          for (Notice notice : pastOf(values)) {
            dependent += notice.code() == QualityCode.PAST_NOT_INDEPENDENT ? 1 : 0;
            apart += notice.code() == QualityCode.PAST_HOLDS_OUTLIER ? 1 : 0;
          }
        }
        String text = count + " in steps of " + step + ": " + dependent + ", " + apart;
        assertTrue(dependent <= trials * 0.06 + 3 * Math.sqrt(trials * 0.06), text);
        assertTrue(apart <= trials * 0.01 + 3 * Math.sqrt(trials * 0.01), text);
        assertTrue(step > 1e-3 || dependent >= trials * 0.05 - 3 * Math.sqrt(trials * 0.05), text);
      }
    }
  }

  private static List<ControlRule.Side> sidesOf(ControlRule rule, double... standardised) {
    return ControlChart.of(InControl.stated(0, 1, ""), List.of(rule))
        .watch(ControlSeries.of("figure", "", standardised))
        .signals()
        .stream()
        .map(ControlChart.Signal::side)
        .toList();
  }

  @Test
  void everyRuleKnowsItsSideAndARangeHasNone() {
    List<ControlRule.Side> both = List.of(ControlRule.Side.ABOVE, ControlRule.Side.BELOW);
    assertEquals(both, sidesOf(ControlRules.beyond(3), 4, -4));
    assertEquals(both, sidesOf(ControlRules.run(2, 2, 0), 1, 1, -1, -1));
    // Half of what was and half of the newest: 2, 0.9, -0.55, -1.775.
    assertEquals(
        List.of(ControlRule.Side.ABOVE, ControlRule.Side.ABOVE, ControlRule.Side.BELOW),
        sidesOf(ControlRules.weightedAverage(0.5, 1.5), 4, -0.2, -2, -3));
    assertEquals(
        List.of(ControlRule.Side.BELOW, ControlRule.Side.BELOW),
        sidesOf(ControlRules.cumulativeSum(0.5, 1.5), -3, 0.2));
    // Without allowance both sums can be beyond a short interval: 5 - 1 above, -1 below.
    assertEquals(
        List.of(ControlRule.Side.ABOVE, ControlRule.Side.NONE),
        sidesOf(ControlRules.cumulativeSum(0, 0.5), 5, -1));
    assertEquals(List.of(ControlRule.Side.NONE), sidesOf(ControlRules.movingRange(), 0, 5));
    assertEquals(
        ControlRule.Side.NONE, new ControlChart.Signal("1", 1, ControlRules.beyond(3), 4).side());
  }

  private static Answer<?> hardness(double calcium) {
    return Answer.of(
        WaterFigures.TOTAL_HARDNESS,
        WaterReport.reported().calcium(mgPerL(calcium)).magnesium(mgPerL(0)).build().water());
  }

  @Test
  void aPhaseStartsAfreshWithItsOwnMean() {
    ControlChart chart =
        ControlChart.of(InControl.stated(0, 1, ""), List.of(ControlRules.run(3, 3, 0)))
            .fromBatch("3", InControl.stated(5, 1, ""));
    ControlSeries series = ControlSeries.of("figure", "", 1, 1, 6, 6, 6);
    assertEquals(List.of("5"), chart.watch(series).signals().stream().map(s -> s.label()).toList());
    assertThrows(
        IllegalArgumentException.class, () -> chart.fromBatch("3", InControl.stated(6, 1, "")));
    assertThrows(
        IllegalArgumentException.class, () -> chart.watch(ControlSeries.of("figure", "", 1)));
  }

  @Test
  void aSeriesRefusesABatchTwiceAndAnotherUnit() {
    assertThrows(
        IllegalArgumentException.class,
        () ->
            ControlSeries.of(Figures.PH_VALUE)
                .with("7", Answer.of(Figures.PH_VALUE, Solution.textbook()))
                .with("7", Answer.of(Figures.PH_VALUE, Solution.textbook())));
    ControlChart chart =
        ControlChart.of(InControl.stated(4, 1, "g/L"), List.of(ControlRules.beyond(3)));
    IllegalArgumentException thrown =
        assertThrows(
            IllegalArgumentException.class,
            () -> chart.watch(ControlSeries.of("TA", "mg/L", 4000)));
    assertTrue(thrown.getMessage().contains("the chart counts in \"g/L\""), thrown.getMessage());
    assertThrows(
        IllegalArgumentException.class, () -> ControlSeries.of("TA", "g/L", 1, 2).without("3"));
    assertEquals(1, ControlSeries.of("TA", "g/L", 1, 2).without("1").points().size());
  }

  /** Calcium and magnesium count in mg/L alike. */
  @Test
  void aChartOfOneFigureRefusesTheSeriesOfAnother() {
    List<ControlRule> rules = List.of(ControlRules.beyond(3));
    InControl ofCalcium =
        InControl.from(ControlSeries.of("calcium", "mg/L", 90, 92, 91, 93, 90, 94, 92, 91));
    ControlChart chart = ControlChart.of(ofCalcium, rules);
    ControlSeries magnesium = ControlSeries.of("magnesium", "mg/L", 11, 12);
    String message =
        "series: \"magnesium\" is not possible; the chart is of \"calcium\", and the series it"
            + " watches needs that title";
    assertEquals(
        message,
        assertThrows(IllegalArgumentException.class, () -> chart.watch(magnesium)).getMessage());
    assertEquals(0, chart.watch(ControlSeries.of("calcium", "mg/L", 91, 92)).signals().size());
    InControl ofMagnesium = InControl.stated(WaterFigures.MAGNESIUM_HARDNESS, 45, 2);
    assertEquals("mg/L as CaCO3", ofMagnesium.unit());
    assertEquals(Optional.of("magnesium hardness"), ofMagnesium.title());
    assertThrows(
        IllegalArgumentException.class,
        () ->
            ControlChart.of(ofMagnesium, rules)
                .watch(ControlSeries.of("calcium hardness", "mg/L as CaCO3", 45)));
    InControl unnamed = InControl.stated(11, 1, "mg/L");
    assertEquals(Optional.empty(), unnamed.title());
    assertEquals(2, ControlChart.of(unnamed, rules).watch(magnesium).drawn(rules.get(0)).size());
    ControlChart laterNamed = ControlChart.of(unnamed, rules).fromBatch("2", ofCalcium);
    assertEquals(
        message,
        assertThrows(IllegalArgumentException.class, () -> laterNamed.watch(magnesium))
            .getMessage());
    InControl other =
        InControl.from(ControlSeries.of("sodium", "mg/L", 90, 92, 91, 93, 90, 94, 92, 91));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> laterNamed.fromBatch("3", other))
            .getMessage()
            .startsWith("phase from batch 3: \"sodium\" is not possible; the chart is of"));
  }

  @Test
  void falseAlarmsGrowWithRulesAndWithFewPointsBehindTheLimits() {
    List<ControlRule> one = List.of(ControlRules.beyond(3));
    FalseAlarms known = FalseAlarms.of(one, OptionalInt.empty(), 40);
    assertEquals(0.0027, known.perPoint(), 5 * known.perPointError());
    assertEquals(1 - Math.pow(1 - 0.0027, 40), known.atLeastOne(), 0.01);
    FalseAlarms fromEight = FalseAlarms.of(one, OptionalInt.of(8), 40);
    assertTrue(fromEight.perPoint() > 8 * known.perPoint());
    FalseAlarms four = FalseAlarms.of(ControlRules.westernElectric(), OptionalInt.empty(), 40);
    assertTrue(four.atLeastOne() > 3 * known.atLeastOne());
    assertEquals(
        four.toString(),
        FalseAlarms.of(ControlRules.westernElectric(), OptionalInt.empty(), 40).toString());
    assertTrue(fromEight.toString().contains("from 8 batches"), fromEight.toString());
  }

  @Test
  void aDrawnRunLengthAgreesWithTheFormula() {
    ControlRule sums = ControlRules.cumulativeSum(0.5, 4);
    double formula = sums.averageRunLength(1).orElseThrow();
    double drawn = FalseAlarms.averageRunLength(List.of(sums), 1);
    assertEquals(formula, drawn, 3 * formula / Math.sqrt(20_000));
    assertEquals(formula, sums.averageRunLength(-1).orElseThrow(), 1e-9);
  }

  @Test
  void numbersOutOfRangeAreNamed() {
    for (Runnable bad :
        List.<Runnable>of(
            () -> ControlRules.beyond(0),
            () -> ControlRules.run(4, 3, 1),
            () -> ControlRules.run(1, 65, 1),
            () -> ControlRules.weightedAverage(1.5, 3),
            () -> ControlRules.cumulativeSum(-1, 4),
            () -> InControl.stated(4, 0, ""),
            () -> FalseAlarms.of(List.of(), OptionalInt.empty(), 10),
            () -> FalseAlarms.of(ControlRules.westernElectric(), OptionalInt.of(3), 10),
            () -> ControlChart.of(InControl.stated(0, 1, ""), List.of()))) {
      assertThrows(IllegalArgumentException.class, bad::run);
    }
  }

  @Test
  void aSeriesEndsBeforeABatch() {
    ControlSeries four = ControlSeries.of("pH", "", 4.3, 4.4, 4.35, 4.2);
    assertEquals(four.points().subList(0, 2), four.before("3").points());
    assertEquals(List.of(), four.before("1").points());
    assertEquals(
        "batch: there is no \"5\" in the series",
        assertThrows(IllegalArgumentException.class, () -> four.before("5")).getMessage());
  }

  /** By hand: of thirteen batches the third has no value and the seventh lies apart. */
  @Test
  void anOutlierBehindABatchWithoutAValueIsNamedByItsOwnLabel() {
    ControlSeries series = ControlSeries.of(WaterFigures.TOTAL_HARDNESS);
    for (int i = 1; i <= 13; i++) {
      Answer<?> answer =
          i == 3
              ? Answer.of(WaterFigures.TOTAL_HARDNESS, WaterReport.reported().build().water())
              : hardness(i == 7 ? 150 : 90);
      series = series.with(Integer.toString(i), answer);
    }
    List<Notice> notices = InControl.from(series).notices();
    assertEquals(1, notices.size());
    assertEquals(QualityCode.PAST_HOLDS_OUTLIER, notices.get(0).code());
    assertEquals(7, notices.get(0).row().orElseThrow());
    assertTrue(notices.get(0).text().startsWith("batch 7 behind"), notices.get(0).text());
  }
}
