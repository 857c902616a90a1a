package org.brewchem.water;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.brewchem.internal.DataTable;
import org.brewchem.internal.NumberText;
import org.brewchem.substance.Ion;

/**
 * Weighs what could have put a report off balance: one reading on another basis, one reading ten
 * times too large or too small, an ion left out, or nothing special. The weight of a cause is how
 * likely it is before the numbers are seen, times how well the numbers would fit then: how near the
 * balance comes to 0, and how usual the water is. A cause is named where it has nearly all of the
 * weight (Bayes' rule); the weights are our choice, in {@code suspicions.csv}.
 */
final class Suspicions {

  private static final Map<String, Double> RULES = rules();
  private static final Map<Ion, double[]> USUAL = usual();
  private static final double ROOT_OF_TWO_PI = Math.sqrt(2 * Math.PI);

  /** Decades over which the waters that are like no other are spread. */
  private static final double DECADES = 8;

  /** Density of a Student distribution with 3 degrees of freedom at 0: 2 / (pi sqrt(3)). */
  private static final double STUDENT_3 = 2 / (Math.PI * Math.sqrt(3));

  /**
   * One reading taken otherwise than it is stated.
   *
   * @param code what it would be
   * @param ion the ion whose equivalents change
   * @param factor what they are multiplied by
   * @param condition in words, such as "the sulfate were stated as sulfur"
   */
  record Alternative(WaterCode code, Ion ion, double factor, String condition) {}

  /**
   * A cause and its share of all weight.
   *
   * @param code what it is
   * @param ion the ion concerned
   * @param text what a reader is told
   * @param share 0 to 1
   */
  record Cause(WaterCode code, Ion ion, String text, double share) {}

  /** A cause whose text is made if it is the one that stands alone. */
  private record Weighed(WaterCode code, Ion ion, Supplier<String> text, double weight) {}

  private Suspicions() {}

  static double rule(String name) {
    Double value = RULES.get(name);
    if (value == null) {
      throw new IllegalStateException("suspicions.csv: no rule " + name);
    }
    return value;
  }

  private static Map<String, Double> rules() {
    Map<String, Double> rules = new HashMap<>();
    for (DataTable.Row row : DataTable.read(Suspicions.class, "suspicions.csv")) {
      rules.put(row.text("rule"), row.number("value"));
    }
    return Map.copyOf(rules);
  }

  /** Median, as the decimal logarithm of mg/L, and spread of each ion. */
  private static Map<Ion, double[]> usual() {
    Map<Ion, double[]> usual = new HashMap<>();
    for (DataTable.Row row : DataTable.read(Suspicions.class, "usual-waters.csv")) {
      usual.put(
          Ion.named(row.text("ion")),
          new double[] {Math.log10(row.number("milligrams_per_litre")), row.number("spread")});
    }
    return Map.copyOf(usual);
  }

  /** The cause that stands alone, if the balance is off enough and one does. */
  static Optional<Cause> alone(ReportedBalance balance, List<Alternative> alternatives) {
    if (balance.withinLimit() || Math.abs(balance.percentage()) <= rule("least_imbalance")) {
      return Optional.empty();
    }
    List<Weighed> causes = new ArrayList<>();
    for (Alternative alternative : alternatives) {
      other(balance, alternative).ifPresent(causes::add);
    }
    for (Ion ion : balance.missing()) {
      missing(balance, ion).ifPresent(causes::add);
    }
    double general =
        rule("weight_general") * student(balance.percentage() / rule("general_spread"));
    double all = general + causes.stream().mapToDouble(Weighed::weight).sum();
    return causes.stream()
        .max(Comparator.comparingDouble(Weighed::weight))
        .filter(best -> best.weight() / all >= rule("standing_alone"))
        .map(best -> new Cause(best.code(), best.ion(), best.text().get(), best.weight() / all));
  }

  /** Density of the balance of a report that is bad in no special way, per per cent. */
  private static double student(double deviations) {
    double once = 1 + deviations * deviations / 3;
    return STUDENT_3 / (once * once) / rule("general_spread");
  }

  private static Optional<Weighed> other(ReportedBalance balance, Alternative alternative) {
    Double stated = balance.equivalents().get(alternative.ion());
    if (stated == null || stated == 0) {
      return Optional.empty();
    }
    ReportedBalance read = balance.times(alternative.ion(), alternative.factor());
    double before =
        alternative.code() == WaterCode.TENFOLD_SLIP
            ? rule("weight_tenfold") / rule("tenfold_readings")
            : rule("weight_basis");
    double milligrams = stated / alternative.ion().milliequivalentsPerMilligram();
    double fit =
        usualness(alternative.ion(), milligrams * alternative.factor())
            / usualness(alternative.ion(), milligrams);
    return Optional.of(
        new Weighed(
            alternative.code(),
            alternative.ion(),
            () -> "if " + alternative.condition() + ": " + read,
            before * right(read.percentage()) * fit));
  }

  private static Optional<Weighed> missing(ReportedBalance balance, Ion ion) {
    double closing = balance.closing(ion);
    if (closing <= 0 || !USUAL.containsKey(ion)) {
      return Optional.empty();
    }
    double before =
        rule(ReportedBalance.MAIN.contains(ion) ? "weight_missing_main" : "weight_missing");
    double percent = Math.abs(balance.percentage());
    // From the density over the logarithm of the ion to that over the balance; 1 keeps it finite.
    double decadesPerPercent = 1 / (Math.log(10) * percent * (1 - percent / 100) + 1);
    return Optional.of(
        new Weighed(
            WaterCode.ION_PERHAPS_MISSING,
            ion,
            () ->
                ReportedBalance.name(ion)
                    + " is not reported, and "
                    + amount(ion, closing)
                    + " of it, which is nothing unusual, would close the balance",
            before * usualness(ion, closing) * decadesPerPercent));
  }

  /** Such as "34 mg/L", for the alkalinity "as bicarbonate". */
  static String amount(Ion ion, double milligrams) {
    return NumberText.significant(milligrams, 2)
        + " mg/L"
        + (ion.equals(Ion.BICARBONATE) ? " as bicarbonate" : "");
  }

  /** Density of the balance of a report that is right, per per cent. */
  private static double right(double percent) {
    double poor = rule("share_poor");
    return (1 - poor) * normal(percent, rule("balance_spread"))
        + poor * normal(percent, rule("balance_spread_poor"));
  }

  private static double normal(double deviation, double spread) {
    double deviations = deviation / spread;
    return Math.exp(-deviations * deviations / 2) / (spread * ROOT_OF_TWO_PI);
  }

  /** Density of an ion among the waters, per decade. */
  private static double usualness(Ion ion, double milligrams) {
    double[] usual = USUAL.getOrDefault(ion, new double[] {0, DECADES});
    double unusual = rule("unusual_share");
    return (1 - unusual) * normal(Math.log10(milligrams) - usual[0], usual[1]) + unusual / DECADES;
  }

  /** In words, how much speaks for a cause. */
  static String shareText(double share) {
    return String.format(Locale.ROOT, "weight %.2f of all causes weighed", share);
  }
}
