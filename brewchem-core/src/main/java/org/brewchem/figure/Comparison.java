package org.brewchem.figure;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.brewchem.internal.NumberText;
import org.brewchem.uncertainty.UncertainValue;

/** A target compared, constraint by constraint, with what answered its figures. Immutable. */
public final class Comparison {

  private final String target;
  private final List<Judgement> judgements;

  Comparison(String target, List<Judgement> judgements) {
    this.target = target;
    this.judgements = List.copyOf(judgements);
  }

  /**
   * A constraint compared with an answer.
   *
   * @param constraint the constraint
   * @param answer the answer, shown in the constraint's unit
   * @param verdict how they stand to each other
   * @param byTheValueAlone whether the answer has no uncertainty, so that the verdict cannot count
   *     it
   */
  public record Judgement(
      Constraint constraint, Answer<?> answer, Verdict verdict, boolean byTheValueAlone) {
    /**
     * Makes a judgement.
     *
     * @param constraint the constraint
     * @param answer the answer, shown in the constraint's unit
     * @param verdict how they stand to each other
     * @param byTheValueAlone whether the answer has no uncertainty, so that the verdict cannot
     *     count it
     */
    public Judgement {
      Objects.requireNonNull(constraint, "constraint");
      Objects.requireNonNull(answer, "answer");
      Objects.requireNonNull(verdict, "verdict");
    }

    static Judgement of(Constraint constraint, Answering from) {
      Answer<?> answer = Answer.of(constraint.figure(), from);
      if (!answer.isStated()) {
        return new Judgement(constraint, answer, Verdict.UNKNOWN, false);
      }
      double number = answer.number();
      Optional<UncertainValue> uncertain = answer.uncertain();
      double half = uncertain.map(v -> v.expanded().halfWidth()).orElse(0.0);
      return new Judgement(
          constraint,
          answer,
          constraint.verdict(number - half, number + half),
          uncertain.isEmpty());
    }

    /**
     * Returns how far the value lies outside the limits.
     *
     * @return negative below, positive above, 0 within, in the constraint's unit; empty when the
     *     value is unknown
     */
    public OptionalDouble excess() {
      return answer.isStated()
          ? OptionalDouble.of(constraint.excess(answer.number()))
          : OptionalDouble.empty();
    }

    /**
     * Returns how far the value lies from the aim.
     *
     * @return value less aim, in the constraint's unit; empty without an aim or a value
     */
    public OptionalDouble fromAim() {
      return answer.isStated() && constraint.aim().isPresent()
          ? OptionalDouble.of(answer.number() - constraint.aim().getAsDouble())
          : OptionalDouble.empty();
    }

    @Override
    public String toString() {
      StringBuilder text = new StringBuilder(constraint.figure().title());
      text.append(": ").append(answer);
      if (!answer.isStated()) {
        return text.append("; wanted ").append(constraint.band()).toString();
      }
      text.append("; ").append(verdict);
      if (verdict == Verdict.BELOW || verdict == Verdict.ABOVE) {
        text.append(" by ").append(size(Math.abs(excess().orElseThrow())));
      }
      text.append(", wanted ").append(constraint.band());
      fromAim()
          .ifPresent(
              off ->
                  text.append(
                      isAtTheAim(off)
                          ? ", at the aim"
                          : (off < 0 ? ", -" : ", +") + size(Math.abs(off)) + " from the aim"));
      return text.append(byTheValueAlone ? " (by the value alone)" : "").toString();
    }

    /** As near as a search comes. */
    private boolean isAtTheAim(double off) {
      return Math.abs(off) <= 1e-9 * Math.max(1, Math.abs(constraint.aim().orElseThrow()));
    }

    /** A size with enough decimals to be seen: one that counts never prints as zero. */
    private String size(double size) {
      int decimals = constraint.figure().shown().mostDecimals();
      return size != 0 && size < Math.pow(10, -decimals)
          ? NumberText.significant(size, 1)
          : String.format(Locale.ROOT, "%." + decimals + "f", size);
    }
  }

  /**
   * Returns the name of the target.
   *
   * @return the name
   */
  public String target() {
    return target;
  }

  /**
   * Returns the judgements.
   *
   * @return one to each constraint, in the target's order
   */
  public List<Judgement> judgements() {
    return judgements;
  }

  /**
   * Returns the judgement of a figure.
   *
   * @param figure the figure
   * @return the first judgement of it; empty when the target does not mention it
   */
  public Optional<Judgement> of(Figure<?> figure) {
    return judgements.stream().filter(j -> j.constraint().figure().equals(figure)).findFirst();
  }

  /**
   * Tells whether every constraint is met, uncertainties counted where they are known.
   *
   * @return true if each verdict is within
   */
  public boolean allWithin() {
    return judgements.stream().allMatch(j -> j.verdict() == Verdict.WITHIN);
  }

  @Override
  public String toString() {
    return judgements.stream()
        .map(Judgement::toString)
        .collect(Collectors.joining("\n", target + "\n", ""));
  }
}
