package org.brewchem.quality;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.solution.Figures;
import org.brewchem.uncertainty.MethodPrecision;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** What charts, series and differences say, to the word. */
class QualityWordsTest {

  private static final InControl STATE = InControl.stated(4, 0.5, "g/L");

  private static String refused(Executable making) {
    return String.valueOf(assertThrows(IllegalArgumentException.class, making).getMessage());
  }

  private static Answer<?> magnesium(double milligrams, double u) {
    return WaterReport.reported()
        .magnesium(mgPerL(milligrams), mgPerL(u))
        .build()
        .water()
        .answer(Figures.MAGNESIUM);
  }

  @Test
  void aSeriesPrintsHowManyBatchesItHasAndInWhichUnit() {
    assertEquals("pH, 2 batches", ControlSeries.of("pH", "", 4.3, 4.4).toString());
    assertEquals("TA, 3 batches, in g/L", ControlSeries.of("TA", "g/L", 1, 2, 3).toString());
  }

  @Test
  void aSeriesRefusesWhatIsNotItsOwn() {
    ControlSeries series = ControlSeries.of(Figures.MAGNESIUM).with("A", magnesium(10, 1));
    assertEquals(
        "batch: \"A\" stands in the series already; each has its own label",
        refused(() -> series.with("A", magnesium(11, 1))));
    ControlSeries calcium = ControlSeries.of(Figures.CALCIUM);
    assertEquals(
        "answer of batch B: magnesium in \"mg/L\" is not possible; calcium in \"mg/L\" is needed",
        refused(() -> calcium.with("B", magnesium(11, 1))));
    ControlSeries grams = ControlSeries.of("magnesium", "g/L", 0.01);
    assertEquals(
        "answer of batch B: magnesium in \"mg/L\" is not possible; magnesium in \"g/L\" is needed",
        refused(() -> grams.with("B", magnesium(11, 1))));
    assertEquals("batch: there is no \"B\" in the series", refused(() -> series.without("B")));
    assertEquals(
        "value of batch A: NaN is not possible; a finite number is allowed",
        refused(() -> new ControlSeries.Point("A", OptionalDouble.of(Double.NaN))));
  }

  @Test
  void aChartRefusesAnotherUnitAndABatchThatIsNotThere() {
    ControlRule rule = ControlRules.beyond(3);
    ControlChart chart = ControlChart.of(STATE, List.of(rule));
    assertEquals(
        "phase from batch 3: \"mg/L\" is not possible; the chart counts in \"g/L\"",
        refused(() -> chart.fromBatch("3", InControl.stated(4000, 500, "mg/L"))));
    assertEquals(
        "series of TA: \"mg/L\" is not possible; the chart counts in \"g/L\"",
        refused(() -> chart.watch(ControlSeries.of("TA", "mg/L", 4000))));
    ControlChart phased = chart.fromBatch("3", STATE);
    assertEquals(
        "batch: a phase starts at \"3\", which the series does not hold",
        refused(() -> phased.watch(ControlSeries.of("TA", "g/L", 4, 4))));
    assertEquals(
        "batch: a phase starts at \"3\" already; state it once",
        refused(() -> phased.fromBatch("3", STATE)));
    assertEquals(
        "rules: none is not possible; a chart needs one",
        refused(() -> ControlChart.of(STATE, List.of())));
    assertEquals(
        "rule: the chart has no \"moving range\"",
        refused(
            () -> chart.watch(ControlSeries.of("TA", "g/L", 4)).drawn(ControlRules.movingRange())));
    assertEquals(List.of(rule), chart.rules());
    assertEquals(STATE, chart.inControl());
  }

  @Test
  void aSignalSaysOnWhichSideOfTheMeanItLies() {
    ControlChart chart =
        ControlChart.of(STATE, List.of(ControlRules.beyond(3), ControlRules.movingRange()));
    List<Notice> notices = chart.watch(ControlSeries.of("TA", "g/L", 2, 4)).notices();
    assertEquals(
        List.of(
            "batch 1, TA 2.000 g/L, below the mean 4.000 g/L: beyond 3 standard deviations",
            "batch 2, TA 4.000 g/L, at the mean 4.000 g/L: moving range"),
        notices.stream().map(Notice::text).toList());
    assertEquals(1, notices.get(0).row().orElseThrow());
    assertEquals(2, notices.get(1).row().orElseThrow());
    ControlChart plain =
        ControlChart.of(InControl.stated(4, 1, ""), List.of(ControlRules.beyond(3)));
    assertEquals(
        "batch 1, pH 8.000, above the mean 4.000: beyond 3 standard deviations",
        plain.watch(ControlSeries.of("pH", "", 8)).notices().get(0).text());
  }

  /** Limits stated are known ones; those of ten batches are not. */
  @Test
  void theFalseAlarmsOfAChartCountTheBatchesBehindItsLimits() {
    List<ControlRule> rules = List.of(ControlRules.beyond(3));
    assertEquals(
        FalseAlarms.of(rules, OptionalInt.empty(), 2).toString(),
        ControlChart.of(STATE, rules).falseAlarms(2).toString());
    InControl ten = InControl.from(ControlSeries.of("TA", "", 1, 2, 1, 2, 1, 2, 1, 2, 1, 2));
    assertEquals(
        FalseAlarms.of(rules, OptionalInt.of(10), 2).toString(),
        ControlChart.of(ten, rules).falseAlarms(2).toString());
  }

  @Test
  void aDifferenceThatNoRuleSpeaksOfIsNotCounted() {
    Difference difference = Difference.of(magnesium(12, 1), magnesium(10, 1));
    LikelyCauses causes = LikelyCauses.of(List.of(difference));
    assertEquals(List.of("magnesium: the rules have no such figure"), causes.notCounted());
    assertEquals("no cause is named", causes.toString());
    assertEquals(1, causes.shareOfNone());
    assertEquals(2, difference.value(), 1e-12);
    assertEquals(Math.sqrt(2), difference.standardUncertainty().orElseThrow(), 1e-6);
    assertEquals(Figures.MAGNESIUM, difference.figure());
  }

  @Test
  void aDifferenceBeyondThePrecisionOfItsMethodIsFound() {
    MethodPrecision precision = MethodPrecision.stated("our method", 0.5, "mg/L");
    Difference difference =
        Difference.inOneLaboratory(magnesium(12, 1), magnesium(10, 1), precision);
    assertEquals(0.5 * Math.sqrt(2), difference.standardUncertainty().orElseThrow(), 1e-12);
    assertEquals(Difference.Finding.DIFFERENT, difference.finding());
    assertEquals("different", difference.finding().toString());
    assertEquals("not distinguishable", Difference.Finding.NOT_DISTINGUISHABLE.toString());
    assertEquals(
        "precision: in \"g/L\" is not possible; the answers are in \"mg/L\"",
        refused(
            () ->
                Difference.inOneLaboratory(
                    magnesium(12, 1),
                    magnesium(10, 1),
                    MethodPrecision.stated("our method", 0.5, "g/L"))));
  }
}
