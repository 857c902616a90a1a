package org.brewchem.water;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.brewchem.internal.ClosedForms;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.substance.Ion;

/**
 * The ion balance of a water analysis: whether cations and anions carry the same charge, as they
 * must, within what laboratories can do.
 *
 * <p>The percentage is 100 (cations - anions) / (cations + anions), in equivalents, and how large
 * it may be depends on the sum of the anions: up to 3.0 mEq/L a difference of 0.2 mEq/L, up to 10.0
 * mEq/L 2 %, up to 800 mEq/L 5 %; there is no limit beyond. Source: Standard Methods 1030 E, its
 * limits from memory. The alkalinity counts as the charge of bicarbonate, as in DIN 38402-62;
 * hydrogen and hydroxide ions are neglected.
 *
 * <p>Immutable.
 */
public final class IonBalance {

  private static final double LOW_ANION_SUM = 3.0;
  private static final double MIDDLE_ANION_SUM = 10.0;
  private static final double HIGH_ANION_SUM = 800;
  private static final double LOW_LIMIT_MILLIEQUIVALENTS = 0.2;
  private static final double MIDDLE_LIMIT_PERCENT = 2;
  private static final double HIGH_LIMIT_PERCENT = 5;

  /** What a balance cannot do without: what most waters consist of. */
  private static final List<Ion> MAIN =
      List.of(Ion.CALCIUM, Ion.MAGNESIUM, Ion.SODIUM, Ion.BICARBONATE, Ion.SULFATE, Ion.CHLORIDE);

  /** What the balance is worth. */
  public enum Verdict {
    /** The difference is within the limit for the anion sum. */
    ACCEPTABLE,
    /** The difference is beyond the limit for the anion sum: something in the report is wrong. */
    NOT_ACCEPTABLE,
    /**
     * The balance cannot be judged: calcium, magnesium, sodium, alkalinity, sulfate or chloride is
     * missing, or the anion sum is above 800 mEq/L, for which there is no limit.
     */
    NOT_JUDGED
  }

  private final Map<Ion, Double> equivalents;
  private final List<Ion> missing;
  private final double cations;
  private final double anions;

  private IonBalance(Map<Ion, Double> equivalents, List<Ion> missing) {
    this.equivalents = Collections.unmodifiableMap(equivalents);
    this.missing = List.copyOf(missing);
    this.cations = sum(1);
    this.anions = sum(-1);
  }

  static IonBalance of(Map<Ion, Double> equivalents, List<Ion> missing) {
    return new IonBalance(equivalents, missing);
  }

  /** Returns the balance with the equivalents of one ion multiplied. */
  IonBalance times(Ion ion, double factor) {
    Map<Ion, Double> changed = new LinkedHashMap<>(equivalents);
    changed.computeIfPresent(ion, (same, value) -> value * factor);
    return new IonBalance(changed, missing);
  }

  private double sum(int sign) {
    return equivalents.entrySet().stream()
        .filter(entry -> Integer.signum(entry.getKey().charge()) == sign)
        .mapToDouble(Map.Entry::getValue)
        .sum();
  }

  /**
   * Returns the sum of the cations reported.
   *
   * @return their equivalents, 0 or more
   */
  public ChargeConcentration cationSum() {
    return ChargeConcentration.ofMilliequivalentsPerLitre(cations);
  }

  /**
   * Returns the sum of the anions reported, by which the limit is chosen.
   *
   * @return their equivalents as a positive number, 0 or more
   */
  public ChargeConcentration anionSum() {
    return ChargeConcentration.ofMilliequivalentsPerLitre(anions);
  }

  /**
   * Returns cations less anions.
   *
   * @return the difference, positive when cations outweigh
   */
  public ChargeConcentration difference() {
    return cationSum().minus(anionSum());
  }

  /**
   * Returns the difference as a percentage of the sum of all ions, after Standard Methods 1030 E.
   *
   * @return 100 (cations - anions) / (cations + anions), from -100 to 100; 0 for a water that holds
   *     no ions at all
   */
  public double percentage() {
    return ClosedForms.ionBalancePercentage(cations, anions);
  }

  /**
   * Returns the percentage as German reports state it, relative to the mean of both sums and so
   * twice {@link #percentage()}. Source: DIN 38402-62, its formula from memory. The limits of
   * {@link #verdict()} are not for it.
   *
   * @return 100 (cations - anions) / (0.5 (cations + anions)), from -200 to 200
   */
  public double percentageOfMean() {
    return 2 * percentage();
  }

  /**
   * Returns what the balance is worth.
   *
   * @return the verdict
   */
  public Verdict verdict() {
    if (MAIN.stream().anyMatch(missing::contains) || anions > HIGH_ANION_SUM) {
      return Verdict.NOT_JUDGED;
    }
    return withinLimit() ? Verdict.ACCEPTABLE : Verdict.NOT_ACCEPTABLE;
  }

  private boolean withinLimit() {
    if (anions <= LOW_ANION_SUM) {
      return Math.abs(cations - anions) <= LOW_LIMIT_MILLIEQUIVALENTS;
    }
    return Math.abs(percentage())
        <= (anions <= MIDDLE_ANION_SUM ? MIDDLE_LIMIT_PERCENT : HIGH_LIMIT_PERCENT);
  }

  private String limit() {
    if (anions <= LOW_ANION_SUM) {
      return "0.2 mEq/L";
    }
    if (anions > HIGH_ANION_SUM) {
      return "none";
    }
    return anions <= MIDDLE_ANION_SUM ? "2 %" : "5 %";
  }

  /**
   * Returns the ions that the report does not state, of calcium, magnesium, sodium, potassium,
   * bicarbonate (the alkalinity), sulfate, chloride and nitrate.
   *
   * @return an unmodifiable list in that order
   */
  public List<Ion> missing() {
    return missing;
  }

  /** Names ions, or says that there are none. */
  static String names(List<Ion> ions) {
    return ions.stream()
        .map(ion -> ion.equals(Ion.BICARBONATE) ? "alkalinity" : ion.name())
        .collect(Collectors.joining(", "));
  }

  /**
   * Shows the arithmetic.
   *
   * @return one line per step, each ended by a line feed
   */
  public String explain() {
    StringBuilder text = new StringBuilder("ion balance, mEq/L (Standard Methods 1030 E)\n");
    equivalents.forEach(
        (ion, value) ->
            text.append("  ")
                .append(ion.charge() > 0 ? "+ " : "- ")
                .append(names(List.of(ion)))
                .append(' ')
                .append(Lines.number(value))
                .append('\n'));
    if (!missing.isEmpty()) {
      text.append("  missing: ").append(names(missing)).append('\n');
    }
    return text.append("  cations ")
        .append(Lines.number(cations))
        .append(", anions ")
        .append(Lines.number(anions))
        .append('\n')
        .append("  100 x (")
        .append(Lines.number(cations))
        .append(" - ")
        .append(Lines.number(anions))
        .append(") / (")
        .append(Lines.number(cations))
        .append(" + ")
        .append(Lines.number(anions))
        .append(") = ")
        .append(signed(percentage(), 2))
        .append(" %; limit at this anion sum: ")
        .append(limit())
        .append('\n')
        .toString();
  }

  private static String signed(double value, int decimals) {
    return String.format(Locale.ROOT, "%+." + decimals + "f", value);
  }

  /**
   * Returns percentage, anion sum and verdict.
   *
   * @return such as {@code ion balance +0.7 % at an anion sum of 6.2 mEq/L: acceptable (limit 2 %)}
   */
  @Override
  public String toString() {
    String size =
        anions <= LOW_ANION_SUM
            ? signed(cations - anions, 2) + " mEq/L (" + signed(percentage(), 1) + " %)"
            : signed(percentage(), 1) + " %";
    String judged =
        switch (verdict()) {
          case ACCEPTABLE -> "acceptable (limit " + limit() + ")";
          case NOT_ACCEPTABLE -> "not acceptable (limit " + limit() + ")";
          case NOT_JUDGED ->
              anions > HIGH_ANION_SUM ? "not judged" : "not judged: too much missing";
        };
    return String.format(
        Locale.ROOT, "ion balance %s at an anion sum of %.1f mEq/L: %s", size, anions, judged);
  }
}
