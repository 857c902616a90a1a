package org.brewchem.quality;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NormalProbability;
import org.brewchem.internal.NumberText;
import org.brewchem.uncertainty.UncertainValue;

/**
 * A rule of decision with a guard band: a batch is accepted when its figure lies within the limits
 * by at least so many standard uncertainties (JCGM 106:2012, from memory; no knowledge of the
 * figure but the measurement). The figure has Student's t at its degrees of freedom, normal where
 * they are infinite ({@link UncertainValue#chanceBelow}). With few of them the band is wider, so
 * that the risk of what is just accepted stays the same. Immutable.
 */
public final class GuardBand {

  private final double uncertainties;

  private GuardBand(double uncertainties) {
    this.uncertainties = uncertainties;
  }

  /**
   * Makes a rule.
   *
   * @param standardUncertainties how far within the limits, in standard uncertainties of a normal
   *     figure, 0 to 6; 0 shares the risk, 2 leaves 2.28 % of it at the limit
   * @return the rule
   * @throws IllegalArgumentException if the number is out of range
   */
  public static GuardBand of(double standardUncertainties) {
    return new GuardBand(
        Checks.inRange("guard band", standardUncertainties, "standard uncertainties", 0, 6));
  }

  /**
   * Returns the risk of a batch that is just accepted at one limit.
   *
   * @return the probability that its figure lies beyond the limit, 0 to 0.5
   */
  public double riskAtTheLimit() {
    return NormalProbability.below(-uncertainties);
  }

  /** What is decided about a batch. */
  public enum Decision {
    /** Within the limits by the guard band or more. */
    ACCEPTED,
    /** Not within by the guard band. */
    REJECTED,
    /** Value or uncertainty is unknown. */
    UNDECIDABLE
  }

  /**
   * A decision with its risk.
   *
   * @param decision what is decided
   * @param chanceOutside the probability that the figure lies outside the limits: the risk of an
   *     acceptance, and one less the risk of a rejection; empty when it is undecidable
   */
  public record Decided(Decision decision, OptionalDouble chanceOutside) {
    /**
     * Makes a decision.
     *
     * @param decision what is decided
     * @param chanceOutside the probability that the figure lies outside the limits: the risk of an
     *     acceptance, and one less the risk of a rejection; empty when it is undecidable
     */
    public Decided {
      Objects.requireNonNull(decision, "decision");
      Objects.requireNonNull(chanceOutside, "chance outside");
    }

    /**
     * Returns the risk that the decision is wrong.
     *
     * @return 0 to 1; empty when it is undecidable
     */
    public OptionalDouble risk() {
      return chanceOutside.isEmpty() || decision == Decision.ACCEPTED
          ? chanceOutside
          : OptionalDouble.of(1 - chanceOutside.getAsDouble());
    }

    @Override
    public String toString() {
      String word = decision.name().toLowerCase(Locale.ROOT);
      return risk().isPresent()
          ? word + ", wrong in " + NumberText.chance(risk().getAsDouble()) + " of cases"
          : word;
    }
  }

  /**
   * Decides about a batch.
   *
   * @param constraint the limits
   * @param batch the answer of the batch, of the figure and in the unit of the constraint
   * @return the decision; undecidable when value or uncertainty is unknown
   * @throws IllegalArgumentException if figure or unit differ
   */
  public Decided decide(Constraint constraint, Answer<?> batch) {
    Objects.requireNonNull(constraint, "constraint");
    if (!batch.figure().equals(constraint.figure())
        || !batch.unit().equals(constraint.figure().shown().symbol())) {
      throw new IllegalArgumentException(
          "answer: "
              + batch.figure().title()
              + " in \""
              + batch.unit()
              + "\" is not possible; "
              + constraint.figure().title()
              + " in \""
              + constraint.figure().shown().symbol()
              + "\" is needed");
    }
    Optional<UncertainValue> uncertain = batch.uncertain();
    if (uncertain.isEmpty()) {
      return new Decided(Decision.UNDECIDABLE, OptionalDouble.empty());
    }
    UncertainValue figure = uncertain.get();
    if (figure.standardUncertainty() == 0) {
      boolean holds = constraint.excess(figure.value()) == 0;
      return new Decided(
          holds ? Decision.ACCEPTED : Decision.REJECTED, OptionalDouble.of(holds ? 0 : 1));
    }
    OptionalDouble lower = constraint.lower();
    OptionalDouble upper = constraint.upper();
    double below = lower.isPresent() ? figure.chanceBelow(lower.getAsDouble()) : 0;
    double above = upper.isPresent() ? chanceAbove(figure, upper.getAsDouble()) : 0;
    boolean within =
        Double.isInfinite(figure.degreesOfFreedom())
            ? isWithin(constraint, figure)
            : below <= riskAtTheLimit() && above <= riskAtTheLimit();
    return new Decided(
        within ? Decision.ACCEPTED : Decision.REJECTED,
        // Both chances of one point are 1 but for rounding.
        OptionalDouble.of(Math.min(1, below + above)));
  }

  /** In numbers of the figure, where the guard is known exactly, and not in chances. */
  private boolean isWithin(Constraint constraint, UncertainValue figure) {
    double guard = uncertainties * figure.standardUncertainty();
    return figure.value() >= constraint.lower().orElse(Double.NEGATIVE_INFINITY) + guard
        && figure.value() <= constraint.upper().orElse(Double.POSITIVE_INFINITY) - guard;
  }

  /** As the chance below the number mirrored at the value, which keeps its digits. */
  private static double chanceAbove(UncertainValue figure, double number) {
    return figure.chanceBelow(2 * figure.value() - number);
  }
}
