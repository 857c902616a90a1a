package org.brewchem.quality;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.brewchem.internal.Checks;

/**
 * What may have moved the figures of a later batch against an earlier one, by a table of rules:
 * which cause moves which figure which way. The rules are assumed, not measured; a cause that is
 * named is a place to look first, with the measurement that would tell.
 *
 * <p>Differences with a z ({@link Difference#z}) count; the residual alkalinity counts only where
 * the alkalinity that it rests on is not given. Causes are weighed by Bayes' rule. Beforehand all
 * of them, and "none of these", are equally likely. A cause has an unknown size and moves a figure
 * in its direction by any part of that size: a figure that the table calls slight by at most a
 * third of it, one that it calls the same by at most a tenth. Nothing is named unless the evidence
 * that anything happened is larger than in all but 4 % of pairs that do not differ. The z of
 * different figures are taken as independent. Immutable.
 */
public final class LikelyCauses {

  private static final Map<String, Double> VALUES = CauseRules.values();
  private static final double LEAST_SHARE = value("least share");
  private static final double LIKELY_SHARE = value("likely share");

  private static final String ALKALINITY = "titration alkalinity";
  private static final String RESIDUAL = "residual alkalinity";

  private final List<Suspect> suspects;
  private final double shareOfNone;
  private final List<String> notCounted;

  private LikelyCauses(List<Suspect> suspects, double shareOfNone, List<String> notCounted) {
    this.suspects = List.copyOf(suspects);
    this.shareOfNone = shareOfNone;
    this.notCounted = List.copyOf(notCounted);
  }

  private static double value(String name) {
    return Objects.requireNonNull(VALUES.get(name), name);
  }

  /** How strongly the figures speak for a suspect. */
  public enum Strength {
    /** It takes nine tenths of the evidence or more, by the rules. */
    LIKELY,
    /** It takes a tenth or more. */
    POSSIBLE;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Causes that the given figures cannot tell apart, or a single one.
   *
   * @param causes what may have happened, one or more
   * @param strength how strongly the figures speak for it
   * @param share its share of the evidence, all causes and none of them together being 1
   * @param speaksFor the figures that moved as it moves them, with z and why
   * @param speaksAgainst the figures that did not behave so, with z and why
   * @param tellingMeasurements the measurement that would tell, to each cause
   */
  public record Suspect(
      List<String> causes,
      Strength strength,
      double share,
      List<String> speaksFor,
      List<String> speaksAgainst,
      List<String> tellingMeasurements) {

    /**
     * Copies the lists.
     *
     * @param causes what may have happened, one or more
     * @param strength how strongly the figures speak for it
     * @param share its share of the evidence, 0 to 1
     * @param speaksFor the figures that moved as it moves them
     * @param speaksAgainst the figures that did not behave so
     * @param tellingMeasurements the measurement that would tell, to each cause
     * @throws IllegalArgumentException if the share is not from 0 to 1
     */
    public Suspect {
      Objects.requireNonNull(causes, "causes");
      Objects.requireNonNull(strength, "strength");
      Objects.requireNonNull(speaksFor, "speaks for");
      Objects.requireNonNull(speaksAgainst, "speaks against");
      Objects.requireNonNull(tellingMeasurements, "telling measurements");

      Checks.inRange("share", share, "", 0, 1);
      causes = List.copyOf(causes);
      speaksFor = List.copyOf(speaksFor);
      speaksAgainst = List.copyOf(speaksAgainst);
      tellingMeasurements = List.copyOf(tellingMeasurements);
    }

    @Override
    public String toString() {
      return String.join(" or ", causes)
          + ": "
          + strength
          + String.format(Locale.ROOT, " (%.0f %%)", 100 * share);
    }
  }

  /**
   * Weighs the causes.
   *
   * @param differences the later batch less the earlier one, each figure once; figures of the beer
   *     and of its water
   * @return what is named, the strongest first
   * @throws IllegalArgumentException if a figure comes twice
   */
  public static LikelyCauses of(List<Difference> differences) {
    Map<String, Double> z = new LinkedHashMap<>();
    List<String> notCounted = new ArrayList<>();
    for (Difference difference : differences) {
      String name = difference.figure().name();
      if (!CauseRules.FIGURES.contains(name)) {
        notCounted.add(name + ": the rules have no such figure");
      } else if (difference.z().isEmpty()) {
        notCounted.add(name + ": the uncertainty of the difference is unknown or 0");
      } else if (z.put(name, difference.z().getAsDouble()) != null) {
        throw new IllegalArgumentException(
            "differences: " + name + " comes twice; state each figure once");
      }
    }
    if (z.containsKey(ALKALINITY) && z.remove(RESIDUAL) != null) {
      notCounted.add(RESIDUAL + ": it rests on the " + ALKALINITY + ", which is counted");
    }
    return new LikelyCauses(List.of(), 1, notCounted).weighed(z);
  }

  /** The same of z values by the names of figures. */
  static LikelyCauses ofScores(Map<String, Double> z) {
    return new LikelyCauses(List.of(), 1, List.of()).weighed(z);
  }

  private LikelyCauses weighed(Map<String, Double> z) {
    if (z.isEmpty()) {
      return this;
    }
    CauseEvidence evidence = CauseEvidence.of(z);
    if (!evidence.isLoud()) {
      return this;
    }
    Map<String, Double> logEvidence = evidence.ofCauses();
    double none = evidence.ofNone();
    double most = Math.max(none, logEvidence.values().stream().mapToDouble(v -> v).max().orElse(0));
    double total =
        Math.exp(none - most)
            + logEvidence.values().stream().mapToDouble(v -> Math.exp(v - most)).sum();
    List<Suspect> named =
        logEvidence.keySet().stream()
            .collect(
                Collectors.groupingBy(
                    cause -> pattern(cause, z, evidence), LinkedHashMap::new, Collectors.toList()))
            .values()
            .stream()
            .map(
                alike ->
                    suspect(
                        alike,
                        alike.stream()
                                .mapToDouble(
                                    cause ->
                                        Math.exp(
                                            Objects.requireNonNull(logEvidence.get(cause)) - most))
                                .sum()
                            / total,
                        z,
                        evidence))
            .filter(suspect -> suspect.share() >= LEAST_SHARE)
            .sorted(Comparator.comparingDouble(Suspect::share).reversed())
            .toList();
    return new LikelyCauses(named, Math.exp(none - most) / total, notCounted);
  }

  /** What a cause says of the given figures; either way counts as the way that was seen. */
  private static List<CauseRules.Direction> pattern(
      String cause, Map<String, Double> z, CauseEvidence evidence) {
    return z.entrySet().stream()
        .map(e -> evidence.direction(cause, e.getKey()).seen(e.getValue()))
        .toList();
  }

  private static Suspect suspect(
      List<String> alike, double share, Map<String, Double> z, CauseEvidence evidence) {
    List<String> speaksFor = new ArrayList<>();
    List<String> speaksAgainst = new ArrayList<>();
    z.forEach(
        (figure, score) -> {
          CauseRules.Rule rule = CauseRules.rule(alike.get(0), figure);
          CauseRules.Direction direction = evidence.direction(alike.get(0), figure);
          String text = String.format(Locale.ROOT, "%s, z %+.1f: %s", figure, score, rule.why());
          boolean differs = Math.abs(score) > 2;
          if (direction == CauseRules.Direction.SAME ? differs : direction.sign() * score < -2) {
            speaksAgainst.add(text);
          } else if (direction != CauseRules.Direction.SAME && differs) {
            speaksFor.add(text);
          }
        });
    return new Suspect(
        alike,
        share >= LIKELY_SHARE ? Strength.LIKELY : Strength.POSSIBLE,
        share,
        speaksFor,
        speaksAgainst,
        alike.stream().map(cause -> cause + ": " + CauseRules.measurement(cause)).toList());
  }

  /**
   * Returns what is named.
   *
   * @return an unmodifiable list, the strongest first; empty when nothing differs or no cause of
   *     the table takes a tenth of the evidence
   */
  public List<Suspect> suspects() {
    return suspects;
  }

  /**
   * Returns the share of the evidence of none of these causes.
   *
   * @return 0 to 1; 1 when nothing differs
   */
  public double shareOfNone() {
    return shareOfNone;
  }

  /**
   * Returns which differences were not counted.
   *
   * @return a sentence to each
   */
  public List<String> notCounted() {
    return notCounted;
  }

  @Override
  public String toString() {
    return suspects.isEmpty()
        ? "no cause is named"
        : suspects.stream().map(Suspect::toString).collect(Collectors.joining("; "));
  }
}
