package org.brewchem.checks.frozen;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.brewchem.checks.CsvTable;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.Interval;
import org.brewchem.uncertainty.LinearityCheck;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.MonteCarlo;
import org.brewchem.uncertainty.RepeatabilityLimit;
import org.brewchem.uncertainty.Replicates;

/** Budgets with their check by Monte Carlo, and replicates. */
final class FrozenUncertainties {

  private static final int DRAWS = 20_000;
  private static final double DEGREES_OF_FREEDOM = 4;
  private static final double LINEARITY_TOLERANCE = 0.05;

  private FrozenUncertainties() {}

  static void compute(FrozenFigures figures) {
    for (CsvTable.Line line : CsvTable.read("frozen/budgets.csv", 10).lines()) {
      budget(figures.of(line.text("id")), line);
    }
    for (CsvTable.Line line : CsvTable.read("frozen/replicates.csv", 8).lines()) {
      double[] values =
          Arrays.stream(line.text("values").split("; ")).mapToDouble(Double::parseDouble).toArray();
      replicates(figures.of(line.text("id")), Replicates.of("mL", values));
    }
  }

  private static void budget(FrozenFigures.Of of, CsvTable.Line line) {
    ToDoubleFunction<double[]> formula =
        switch (line.text("model")) {
          case "quotient" -> x -> x[0] * x[1] / x[2];
          case "product" -> x -> x[0] * x[1] * x[2];
          case "square" -> x -> x[0] * x[0] + x[1] * x[2];
          case "logarithm" -> x -> Math.log(x[0] * x[1]) + x[2];
          case "sum" -> x -> x[0] + x[1] - 2 * x[2];
          default -> throw new IllegalStateException(line.text("model"));
        };
    MeasurementModel model =
        MeasurementModel.of("y", "1")
            .with(input(line, "a"), input(line, "b"), input(line, "c"))
            .calculatedBy(formula);
    Budget linear = model.linear();
    of.uncertain("result", "", linear.result());
    degreesOfFreedom(of, linear.result().degreesOfFreedom());
    for (Budget.Row row : linear.rows()) {
      String name = row.input().name();
      of.number("standard uncertainty of " + name, "", row.input().standardUncertainty());
      of.number("sensitivity to " + name, "", row.sensitivity());
      of.number("contribution of " + name, "", row.contribution());
      of.number("share of variance of " + name, "", row.shareOfVariance());
    }
    of.number("expanded uncertainty", "", linear.result().expanded().halfWidth());
    of.number("expanded uncertainty 95 %", "", linear.result().expandedAt(0.95).halfWidth());
    monteCarlo(of, model.monteCarlo(DRAWS, (long) line.number("seed")), linear);
  }

  private static Input input(CsvTable.Line line, String name) {
    double estimate = line.number(name);
    double spread = line.number(name + "_spread");
    return switch (line.text(name + "_distribution")) {
      case "normal" -> Input.normal(name, estimate, spread, "1");
      case "uniform" -> Input.uniform(name, estimate, spread, "1");
      case "triangular" -> Input.triangular(name, estimate, spread, "1");
      case "student" -> Input.student(name, estimate, spread, DEGREES_OF_FREEDOM, "1");
      default -> throw new IllegalStateException(line.text(name + "_distribution"));
    };
  }

  private static void monteCarlo(FrozenFigures.Of of, MonteCarlo drawn, Budget linear) {
    of.uncertain("result by Monte Carlo", "", drawn.mean(), drawn.standardDeviation());
    of.number("median by Monte Carlo", "", drawn.median());
    of.number("lowest tenth by Monte Carlo", "", drawn.quantile(0.1));
    interval(of, "95 % by Monte Carlo", drawn.interval(0.95));
    interval(of, "shortest 95 % by Monte Carlo", drawn.shortestInterval(0.95));
    LinearityCheck check = drawn.comparedWith(linear, LINEARITY_TOLERANCE);
    of.text("linear budget", check.verdict());
    of.number("difference of u from linear", "", check.standardUncertaintyDifference());
  }

  private static void interval(FrozenFigures.Of of, String name, Interval interval) {
    of.number("lower limit of " + name, "", interval.lower());
    of.number("upper limit of " + name, "", interval.upper());
  }

  private static void degreesOfFreedom(FrozenFigures.Of of, double degrees) {
    if (Double.isInfinite(degrees)) {
      of.text("degrees of freedom", "infinite");
    } else {
      of.number("degrees of freedom", "", degrees);
    }
  }

  private static void replicates(FrozenFigures.Of of, Replicates replicates) {
    of.uncertain("mean", "mL", replicates.uncertainMean());
    of.number("standard deviation", "mL", replicates.standardDeviation());
    of.number("relative standard deviation", "", replicates.relativeStandardDeviation());
    of.number("range", "mL", replicates.range());
    of.number("relative range", "", replicates.relativeRange());
    of.number("degrees of freedom", "", replicates.degreesOfFreedom());
    interval(of, "standard deviation at 95 %", replicates.standardDeviationInterval(0.95));
    of.number(
        "repeatability limit",
        "mL",
        RepeatabilityLimit.fromStandardDeviation(replicates.standardDeviation(), "mL").value());
    of.attempt(
        "Grubbs' test",
        () -> replicates.grubbs(0.05),
        grubbs -> {
          of.number("Grubbs' statistic", "", grubbs.statistic());
          of.number("Grubbs' critical value", "", grubbs.criticalValue());
          of.number("suspect value", "mL", grubbs.suspectValue());
          of.text("outlier", grubbs.isOutlier());
        });
    of.text("caution", replicates.caution().isPresent());
  }
}
