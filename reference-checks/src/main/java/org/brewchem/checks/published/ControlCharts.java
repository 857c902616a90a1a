package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quality.ControlChart;
import org.brewchem.quality.ControlChart.Drawn;
import org.brewchem.quality.ControlRule;
import org.brewchem.quality.ControlRules;
import org.brewchem.quality.ControlSeries;
import org.brewchem.quality.FalseAlarms;
import org.brewchem.quality.GuardBand;
import org.brewchem.quality.InControl;
import org.brewchem.uncertainty.ToleranceFactor;

/** Control charts: worked examples, run lengths, tolerance factors and risks at a limit. */
public final class ControlCharts {

  private static final Source HANDBOOK =
      new Source(
          "nist-sematech-handbook", "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2");
  private static final double[] SHIFTS = {0, 0.5, 1, 2};

  private ControlCharts() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "individuals-chart",
            Suite.PUBLISHED,
            "Chart of individuals and moving ranges",
            HANDBOOK,
            "mean, average moving range and limits of ten printed flow rates",
            Tolerance.halfOfLastDigit("", "half the last printed digit"),
            "the standard deviation 1.8674 of the same copy, which recomputes to 2.0339",
            5,
            ControlCharts::individuals),
        new ReferenceCheck(
            "ewma-chart",
            Suite.PUBLISHED,
            "Chart of the exponentially weighted moving average",
            HANDBOOK,
            "the average after each of twenty printed values, and both limits",
            Tolerance.halfOfLastDigit("", "half the last printed digit"),
            "",
            22,
            ControlCharts::weightedAverages),
        new ReferenceCheck(
            "cusum-chart",
            Suite.PUBLISHED,
            "Tabular cumulative sums",
            HANDBOOK,
            "the upper sum from the point before the first signal on, and the point that signals",
            Tolerance.absolute(
                5e-4, "", "the sums were recomputed to four decimals from printed data"),
            "",
            9,
            ControlCharts::cumulativeSums),
        new ReferenceCheck(
            "run-lengths",
            Suite.INDEPENDENT,
            "Average run lengths of single charts",
            new Source("control-chart-computations", "closed form and Markov chains"),
            "points to a signal at shifts of 0, 0.5, 1 and 2 standard deviations",
            Tolerance.relative(
                0.005, "the finest digit of the rows is 0.2 %, the chain adds 0.1 %"),
            "",
            16,
            ControlCharts::runLengths),
        new ReferenceCheck(
            "false-alarms",
            Suite.INDEPENDENT,
            "False alarms of charts together and of limits from few points",
            new Source("control-chart-computations", "simulations with their standard errors"),
            "simulated run lengths, and the share of batches that signal",
            Tolerance.times(
                3,
                "the combined standard error",
                "",
                "two simulations differ by more in 0.3 % of cases"),
            "",
            5,
            ControlCharts::falseAlarms),
        new ReferenceCheck(
            "tolerance-factors",
            Suite.INDEPENDENT,
            "Two-sided tolerance factors, 95 % content, 95 % confidence",
            new Source("control-chart-computations", "quadrature"),
            "the exact factors for 3, 5, 10 and 20 values",
            Tolerance.halfOfLastDigit("", "half the last printed digit"),
            "",
            4,
            ControlCharts::toleranceFactors),
        new ReferenceCheck(
            "risk-at-the-limit",
            Suite.INDEPENDENT,
            "Risk of what is just accepted with a guard band",
            new Source("control-chart-computations", "definition of JCGM 106:2012"),
            "guard bands of 0, 1, 1.645 and 2 standard uncertainties",
            Tolerance.halfOfLastDigit("%", "half the last printed digit"),
            "",
            4,
            ControlCharts::risks));
  }

  private static CsvTable.Line row(String item) {
    return CsvTable.read("control-charts.csv", 34).only("item", item);
  }

  private static double[] numbers(String text, String separator) {
    return Arrays.stream(text.trim().split(separator)).mapToDouble(Double::parseDouble).toArray();
  }

  private static List<Row> individuals() {
    ControlSeries series =
        ControlSeries.of("flow", "", numbers(row("individuals chart data").text("value"), " "));
    InControl state = InControl.from(series);
    ControlRule beyond = ControlRules.beyond(3);
    ControlRule ranges = ControlRules.movingRange();
    ControlChart.Watched watched = ControlChart.of(state, List.of(beyond, ranges)).watch(series);
    Drawn limits = watched.drawn(beyond).get(0);
    HowKnown known = row("individuals chart result").howKnown();
    double rangeLimit = watched.drawn(ranges).get(0).upperLimit().orElseThrow();
    return List.of(
        Row.ofPrinted("mean", "50.81", state.mean(), known),
        Row.ofPrinted("average moving range", "1.8778", state.standardDeviation() * 1.128, known),
        Row.ofPrinted("upper limit", "55.8041", limits.upperLimit().orElseThrow(), known),
        Row.ofPrinted("lower limit", "45.8159", limits.lowerLimit().orElseThrow(), known),
        Row.of("upper limit of the moving range", 6.135, rangeLimit, known)
            .within(
                Tolerance.absolute(
                    0.001,
                    "",
                    "6.1349 is printed, from rounded steps; 3.267 x 1.87778 is 6.1347")));
  }

  private static List<Row> weightedAverages() {
    ControlSeries series =
        ControlSeries.of("mean", "", numbers(row("EWMA data").text("value"), " "));
    ControlRule rule = ControlRules.weightedAverage(0.3, 3);
    List<Drawn> drawn =
        ControlChart.of(InControl.stated(50, 2.0539, ""), List.of(rule)).watch(series).drawn(rule);
    HowKnown known = row("EWMA series").howKnown();
    String[] printed = row("EWMA series").text("value").trim().split(" ");
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < printed.length; i++) {
      rows.add(Row.ofPrinted("point " + (i + 1), printed[i], drawn.get(i).above(), known));
    }
    rows.add(
        Row.ofPrinted("upper limit", "52.5884", drawn.get(0).upperLimit().orElseThrow(), known));
    rows.add(
        Row.ofPrinted("lower limit", "47.4115", drawn.get(0).lowerLimit().orElseThrow(), known)
            .within(Tolerance.ofLastDigit(1, "", "the printed limit is truncated, not rounded")));
    return rows;
  }

  private static List<Row> cumulativeSums() {
    ControlSeries series =
        ControlSeries.of("mean", "", numbers(row("CUSUM data").text("value"), " "));
    double sigma = 0.635;
    ControlRule rule = ControlRules.cumulativeSum(0.3175 / sigma, 4.1959 / sigma);
    ControlChart.Watched watched =
        ControlChart.of(InControl.stated(325, sigma, ""), List.of(rule)).watch(series);
    HowKnown known = row("CUSUM result").howKnown();
    double[] sums = {3.0075, 4.94, 7.4475, 10.63, 11.9875, 14.445, 16.0025, 19.035};
    List<Row> rows = new ArrayList<>();
    rows.add(Row.of("first signal", 14, watched.signals().get(0).row(), known));
    for (int i = 0; i < sums.length; i++) {
      rows.add(
          Row.of(
              "upper sum at point " + (13 + i),
              sums[i],
              watched.drawn(rule).get(12 + i).above(),
              HowKnown.COMPUTED));
    }
    return rows;
  }

  private static List<Row> runLengths() {
    List<Row> rows = new ArrayList<>();
    addRunLengths(
        rows,
        ControlRules.beyond(3),
        "run length, individuals chart at 3 sigma, shift 0 / 0.5 / 1" + " / 2 sigma");
    addRunLengths(
        rows,
        ControlRules.weightedAverage(0.1, 2.814),
        "run length, EWMA lambda 0.1, L 2.814, the same shifts");
    addRunLengths(
        rows, ControlRules.cumulativeSum(0.5, 5), "run length, CUSUM k 0.5, h 5, the same shifts");
    addRunLengths(
        rows, ControlRules.cumulativeSum(0.5, 4), "run length, CUSUM k 0.5, h 4, the same shifts");
    return rows;
  }

  private static void addRunLengths(List<Row> rows, ControlRule rule, String item) {
    double[] expected = numbers(row(item).text("value"), " / ");
    for (int i = 0; i < SHIFTS.length; i++) {
      rows.add(
          Row.of(
              rule.name() + ", shift " + SHIFTS[i],
              expected[i],
              rule.averageRunLength(SHIFTS[i]).orElseThrow(),
              row(item).howKnown()));
    }
  }

  private static List<Row> falseAlarms() {
    List<Row> rows = new ArrayList<>();
    double withRanges =
        FalseAlarms.averageRunLength(
            List.of(ControlRules.beyond(3), ControlRules.movingRange()), 0);
    rows.add(
        Row.of("run length, individuals with moving ranges", 108, withRanges, HowKnown.COMPUTED)
            .scaledBy(Math.hypot(2, runLengthError(withRanges))));
    double fourRules = FalseAlarms.averageRunLength(ControlRules.westernElectric(), 0);
    rows.add(
        Row.of("run length, four rules", 93, fourRules, HowKnown.COMPUTED)
            .scaledBy(Math.hypot(2, runLengthError(fourRules))));
    double[] shares = {3.1, 2.4, 0.76};
    // The rows state no error: half of their last digit stands for it.
    double[] rounding = {0.05, 0.05, 0.005};
    int[] counts = {8, 10, 30};
    for (int i = 0; i < counts.length; i++) {
      FalseAlarms alarms =
          FalseAlarms.of(List.of(ControlRules.beyond(3)), OptionalInt.of(counts[i]), 1);
      rows.add(
          Row.of(
                  "false alarms in per cent, limits from " + counts[i] + " points",
                  shares[i],
                  100 * alarms.perPoint(),
                  HowKnown.COMPUTED)
              .scaledBy(Math.hypot(rounding[i], 100 * alarms.perPointError())));
    }
    return rows;
  }

  /** Run lengths scatter about as much as their average; 20 000 were drawn. */
  private static double runLengthError(double average) {
    return average / Math.sqrt(20_000);
  }

  private static List<Row> toleranceFactors() {
    String item = "two-sided tolerance factor, 95 % content, 95 % confidence, n 3 / 5 / 10 / 20";
    String[] printed = row(item).text("value").split(" / ");
    int[] counts = {3, 5, 10, 20};
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < counts.length; i++) {
      rows.add(
          Row.ofPrinted(
              "n " + counts[i],
              printed[i],
              ToleranceFactor.twoSided(counts[i], 0.95, 0.95),
              row(item).howKnown()));
    }
    return rows;
  }

  private static List<Row> risks() {
    String item = "risk at the limit with a guard band of 0 / 1 / 1.645 / 2 u";
    String[] printed = row(item).text("value").split(" / ");
    double[] guards = {0, 1, 1.645, 2};
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < guards.length; i++) {
      rows.add(
          Row.ofPrinted(
              "guard band " + guards[i] + " u",
              printed[i],
              100 * GuardBand.of(guards[i]).riskAtTheLimit(),
              row(item).howKnown()));
    }
    return rows;
  }
}
