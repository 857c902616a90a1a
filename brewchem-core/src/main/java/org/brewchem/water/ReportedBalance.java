package org.brewchem.water;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.brewchem.internal.ClosedForms;
import org.brewchem.internal.NumberText;
import org.brewchem.substance.Ion;

/**
 * What the ion balance of a report is worth. How large its percentage may be depends on the sum of
 * the anions: up to 3.0 mEq/L a difference of 0.2 mEq/L, up to 10.0 mEq/L 2 %, up to 800 mEq/L 5 %;
 * there is no limit beyond. Source: Standard Methods 1030 E, its limits from memory. The alkalinity
 * counts as the charge of bicarbonate, as in DIN 38402-62; hydrogen and hydroxide ions are
 * neglected, but for hydroxide that is much of a titrated alkalinity and counts with it. An ion
 * that is only known to lie below a limit counts with what of it, if anything, the balance needs.
 *
 * @param equivalents mEq/L of each ion that is reported, positive
 * @param limits mEq/L of each ion that is reported as below a limit, positive
 * @param missing the ions that are not reported; bicarbonate stands for the alkalinity
 */
record ReportedBalance(Map<Ion, Double> equivalents, Map<Ion, Double> limits, List<Ion> missing) {

  private static final double LOW_ANION_SUM = 3.0;
  private static final double MIDDLE_ANION_SUM = 10.0;
  private static final double HIGH_ANION_SUM = 800;
  private static final double LOW_LIMIT_MILLIEQUIVALENTS = 0.2;
  private static final double MIDDLE_LIMIT_PERCENT = 2;
  private static final double HIGH_LIMIT_PERCENT = 5;

  /** What a balance cannot do without: what most waters consist of. */
  static final List<Ion> MAIN =
      List.of(Ion.CALCIUM, Ion.MAGNESIUM, Ion.SODIUM, Ion.BICARBONATE, Ion.SULFATE, Ion.CHLORIDE);

  /** What a balance is worth. */
  enum Verdict {
    ACCEPTABLE,
    NOT_ACCEPTABLE,
    /** A main ion is missing, or the anion sum is beyond all limits. */
    NOT_JUDGED
  }

  /** A balance without limits. */
  ReportedBalance(Map<Ion, Double> equivalents, List<Ion> missing) {
    this(equivalents, Map.of(), missing);
  }

  /** Returns the balance with the equivalents of one ion multiplied. */
  ReportedBalance times(Ion ion, double factor) {
    Map<Ion, Double> changed = new LinkedHashMap<>(equivalents);
    changed.computeIfPresent(ion, (same, value) -> value * factor);
    return new ReportedBalance(changed, limits, missing);
  }

  /** The mEq/L of one sign that are known. */
  private double stated(int sign) {
    return sum(equivalents, sign);
  }

  private static double sum(Map<Ion, Double> equivalents, int sign) {
    return equivalents.entrySet().stream()
        .filter(entry -> Integer.signum(entry.getKey().charge()) == sign)
        .mapToDouble(Map.Entry::getValue)
        .sum();
  }

  /** The mEq/L of one sign, of what lies below limits as much as brings the sums together. */
  private double sum(int sign) {
    double stated = stated(sign);
    return limits.isEmpty()
        ? stated
        : stated + Math.max(0, Math.min(stated(-sign) - stated, sum(limits, sign)));
  }

  double cations() {
    return sum(1);
  }

  double anions() {
    return sum(-1);
  }

  /** Per cent of the sum of both; 0 where there are no ions. */
  double percentage() {
    return ClosedForms.ionBalancePercentage(cations(), anions());
  }

  Verdict verdict() {
    if (MAIN.stream().anyMatch(missing::contains) || anions() > HIGH_ANION_SUM) {
      return Verdict.NOT_JUDGED;
    }
    return withinLimit() ? Verdict.ACCEPTABLE : Verdict.NOT_ACCEPTABLE;
  }

  /** Whether the sums are as near to each other as those of a complete report have to be. */
  boolean withinLimit() {
    return Math.abs(cations() - anions()) <= limitMilliequivalents();
  }

  private double limitMilliequivalents() {
    double anions = anions();
    if (anions <= LOW_ANION_SUM) {
      return LOW_LIMIT_MILLIEQUIVALENTS;
    }
    return (anions <= MIDDLE_ANION_SUM ? MIDDLE_LIMIT_PERCENT : HIGH_LIMIT_PERCENT)
        / 100
        * (cations() + anions);
  }

  private String limit() {
    if (anions() <= LOW_ANION_SUM) {
      return NumberText.plain(LOW_LIMIT_MILLIEQUIVALENTS) + " mEq/L";
    }
    return NumberText.plain(
            anions() <= MIDDLE_ANION_SUM ? MIDDLE_LIMIT_PERCENT : HIGH_LIMIT_PERCENT)
        + " %";
  }

  /**
   * What of an ion would close the balance, mg/L; 0 or less if none would. Bicarbonate stands for
   * the alkalinity.
   */
  double closing(Ion ion) {
    return (anions() - cations())
        * Integer.signum(ion.charge())
        / ion.milliequivalentsPerMilligram();
  }

  /** Names ions; bicarbonate stands for the alkalinity. */
  static String names(List<Ion> ions) {
    return ions.stream().map(ReportedBalance::name).collect(Collectors.joining(", "));
  }

  static String name(Ion ion) {
    return ion.equals(Ion.BICARBONATE) ? "alkalinity" : ion.name();
  }

  private static String signed(double value, int decimals) {
    return String.format(Locale.ROOT, "%+." + decimals + "f", value);
  }

  /** Such as "ion balance +0.7 % at an anion sum of 6.2 mEq/L: acceptable (limit 2 %)". */
  @Override
  public String toString() {
    double anions = anions();
    String size =
        anions <= LOW_ANION_SUM
            ? signed(cations() - anions, 2) + " mEq/L (" + signed(percentage(), 1) + " %)"
            : signed(percentage(), 1) + " %";
    String judged =
        switch (verdict()) {
          case ACCEPTABLE -> "acceptable (limit " + limit() + ")";
          case NOT_ACCEPTABLE -> "not acceptable (limit " + limit() + ")";
          case NOT_JUDGED ->
              anions > HIGH_ANION_SUM ? "not judged" : "not judged: too much missing";
        };
    return String.format(
            Locale.ROOT, "ion balance %s at an anion sum of %.1f mEq/L: %s", size, anions, judged)
        + (limits.isEmpty()
            ? ""
            : "; " + names(List.copyOf(limits.keySet())) + " counted up to the limit stated");
  }
}
