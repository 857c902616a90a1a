package org.brewchem.quality;

import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NormalProbability;

/**
 * A rule of decision with a guard band: a batch is accepted when its figure lies within the limits
 * by at least so many standard uncertainties (JCGM 106:2012; normal distribution, no knowledge of
 * the figure but the measurement). Immutable.
 */
public final class GuardBand {

  private final double uncertainties;

  private GuardBand(double uncertainties) {
    this.uncertainties = uncertainties;
  }

  /**
   * Makes a rule.
   *
   * @param standardUncertainties how far within the limits, in standard uncertainties, 0 to 6; 0
   *     shares the risk, 2 leaves 2.28 % of it at the limit
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
          ? String.format(
              Locale.ROOT, "%s, wrong in %.2g %% of cases", word, 100 * risk().getAsDouble())
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
    if (batch.standardUncertainty().isEmpty() || batch.standardUncertainty().getAsDouble() == 0) {
      return new Decided(Decision.UNDECIDABLE, OptionalDouble.empty());
    }
    double value = batch.number();
    double u = batch.standardUncertainty().getAsDouble();
    double lower = constraint.lower().orElse(Double.NEGATIVE_INFINITY);
    double upper = constraint.upper().orElse(Double.POSITIVE_INFINITY);
    double outside =
        NormalProbability.below((lower - value) / u) + NormalProbability.below((value - upper) / u);
    double guard = uncertainties * u;
    return new Decided(
        value >= lower + guard && value <= upper - guard ? Decision.ACCEPTED : Decision.REJECTED,
        OptionalDouble.of(outside));
  }
}
