package org.brewchem.quality;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.brewchem.figure.Notice;
import org.brewchem.internal.NumberText;
import org.brewchem.uncertainty.GrubbsTest;
import org.brewchem.uncertainty.Replicates;

/** Whether the batches that limits are made from are what the limits take them for. */
final class Past {

  /** The quantile of the normal distribution that 5 % exceed. */
  private static final double FIVE_PER_CENT = 1.645;

  private static final double SIGNIFICANCE = 0.01;
  private static final double ROUNDING = 1e-9;
  private static final MathContext AS_READ = new MathContext(12);

  /** The coarsest graduation that a decimal is read to, in units of it. */
  private static final int GRADUATION = 5;

  private Past() {}

  static List<Notice> notices(ControlSeries series) {
    List<Notice> notices = new ArrayList<>();
    double[] values = series.known();
    dependence(series.title(), values).ifPresent(notices::add);
    outlier(series, values).ifPresent(notices::add);
    return notices;
  }

  /**
   * The correlation of neighbours beside that of independent normal values, which has the mean -1/n
   * and nearly the standard deviation (n-2) / (n sqrt(n-1)) (Moran, Biometrika 35 (1948) 255, from
   * memory; drawn, 5.2 to 5.8 % of 8 to 200 independent values exceed the limit).
   */
  private static Optional<Notice> dependence(String title, double[] values) {
    double n = values.length;
    double mean = Arrays.stream(values).average().orElseThrow();
    double products = 0;
    double squares = 0;
    for (int i = 0; i < values.length; i++) {
      squares += (values[i] - mean) * (values[i] - mean);
      products += i == 0 ? 0 : (values[i] - mean) * (values[i - 1] - mean);
    }
    double correlation = products / squares;
    double limit = -1 / n + FIVE_PER_CENT * (n - 2) / (n * Math.sqrt(n - 1));
    if (correlation <= limit) {
      return Optional.empty();
    }
    return Optional.of(
        Notice.of(
            QualityCode.PAST_NOT_INDEPENDENT,
            title,
            "the batches behind the limits of "
                + title
                + " follow the ones before them: neighbours correlate by "
                + NumberText.decimals(correlation, 2)
                + ", independent ones by more than "
                + NumberText.decimals(limit, 2)
                + " in 5 % of cases only; the chart will alarm more often than it says"));
  }

  private static Optional<Notice> outlier(ControlSeries series, double[] values) {
    GrubbsTest test = Replicates.of(series.unit(), values).grubbs(SIGNIFICANCE);
    if (!test.isOutlier() || isOneStep(values, test.suspectIndex())) {
      return Optional.empty();
    }
    ControlSeries.Point suspect =
        series.points().stream()
            .filter(point -> point.value().isPresent())
            .skip(test.suspectIndex())
            .findFirst()
            .orElseThrow();
    return Optional.of(
        Notice.ofRow(
            QualityCode.PAST_HOLDS_OUTLIER,
            series.title(),
            series.points().indexOf(suspect) + 1L,
            "batch "
                + suspect.label()
                + " behind the limits of "
                + series.title()
                + " lies farther from the others than chance explains ("
                + test
                + "): the limits are too wide; if its cause is known, leave it out"));
  }

  /**
   * Whether a value lies but one step of the reading from its neighbour. Rounded values tie, and
   * among ties the next value seems far. The step is the least distance of two values, and where
   * only two differ, at most 5 units of the last decimal.
   */
  private static boolean isOneStep(double[] values, int suspect) {
    BigDecimal[] distinct =
        Arrays.stream(values).mapToObj(Past::asRead).distinct().sorted().toArray(BigDecimal[]::new);
    double read = asRead(values[suspect]).doubleValue();
    double nearest = Double.POSITIVE_INFINITY;
    double step = Double.POSITIVE_INFINITY;
    for (int i = 0; i < distinct.length; i++) {
      double value = distinct[i].doubleValue();
      nearest = value == read ? nearest : Math.min(nearest, Math.abs(value - read));
      step = i == 0 ? step : Math.min(step, value - distinct[i - 1].doubleValue());
    }
    if (distinct.length == 2) {
      int decimals = Math.max(distinct[0].scale(), distinct[1].scale());
      step = GRADUATION * Math.pow(10, -decimals);
    }
    return nearest <= step * (1 + ROUNDING);
  }

  /** Without what the conversion of a unit leaves behind the last digit. */
  private static BigDecimal asRead(double value) {
    return BigDecimal.valueOf(value).round(AS_READ).stripTrailingZeros();
  }
}
