package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.LinearityCheck;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.RepeatabilityLimit;
import org.brewchem.uncertainty.Replicates;

/**
 * What a titration found: a figure in equivalents per litre of undiluted sample, with its budget,
 * its replicates and what is notable about it. Immutable.
 *
 * <p>It is c z (V - B) f / S, with the concentration c and equivalents z of the titrant, the mean
 * titre V, the blank B, the predilution f and the sample volume S. The temperature is left out of
 * the budget: titrant and sample share it, and it cancels. The reading of pH at the end point is in
 * it when the slope of the curve there is known, from a log or as stated.
 *
 * @param <Q> the meaning of the figure
 */
public class Determination<Q> implements Answering {

  private static final double LINEARITY_TOLERANCE = 0.02;

  private final Figure<Q> figure;
  private final TitratedCharge charge;
  private final Step step;

  Determination(Figure<Q> figure, String source, TitratedCharge charge, List<Notice> notices) {
    this.figure = Objects.requireNonNull(figure, "figure");
    this.charge = charge;
    List<Notice> all = new ArrayList<>(charge.notices());
    all.addAll(notices);
    this.step = charge.step(figure.title(), figure.scale(), source, all);
  }

  /**
   * Computes a figure of your own from the volumes that a titration took.
   *
   * @param figure the figure, counted in mEq per litre of undiluted sample
   * @param source where the method is described
   * @param titration how it was done
   * @param titres one or more volumes, before the blank is subtracted
   * @param <Q> the meaning of the figure
   * @return the result
   * @throws IllegalArgumentException if there is no titre
   */
  public static <Q> Determination<Q> of(
      Figure<Q> figure, String source, TitrationSetup titration, Volume... titres) {
    if (titres.length == 0) {
      throw Checks.outOfRange("titres", 0, "", "1 or more");
    }
    return new Determination<>(
        figure,
        source,
        TitratedCharge.ofVolumes(figure.name(), titration, List.of(titres)),
        List.of());
  }

  /**
   * Computes a figure of your own from an end point found in a log.
   *
   * @param figure the figure, counted in mEq per litre of undiluted sample
   * @param source where the method is described
   * @param log the log
   * @param found the end point in it
   * @param <Q> the meaning of the figure
   * @return the result
   */
  public static <Q> Determination<Q> of(
      Figure<Q> figure, String source, TitrationCurve log, FoundEndPoint found) {
    return new Determination<>(
        figure,
        source,
        TitratedCharge.ofFound(figure.name(), log.titration(), List.of(log), found),
        List.of());
  }

  /**
   * Returns what was found.
   *
   * @return the answer, with its uncertainty, its notices and its explanation
   */
  public Answer<Q> answer() {
    return Answer.of(figure, step);
  }

  /**
   * Returns the value.
   *
   * @return the value with its end point; negative when the blank takes more than the sample
   */
  public Q value() {
    return answer().value();
  }

  /**
   * Returns how the sample was titrated.
   *
   * @return the setup
   */
  public TitrationSetup titration() {
    return charge.titration();
  }

  /**
   * Returns the end point.
   *
   * @return the pH that the titration ended at
   */
  public PH endPoint() {
    return charge.titration().endPoint();
  }

  /**
   * Returns the volumes of titrant to the end point, the blank not subtracted.
   *
   * @return an unmodifiable list of one or more
   */
  public List<Volume> titres() {
    return charge.titres();
  }

  /**
   * Returns the spread of the replicates.
   *
   * @return mean and standard deviation in mEq/L; empty for a single determination
   */
  public Optional<Replicates> replicates() {
    return charge.replicates();
  }

  /**
   * Returns how far the replicates differ, relative to their mean.
   *
   * @return largest minus smallest over the mean, a fraction; empty for a single determination or a
   *     mean of 0
   */
  public OptionalDouble relativeDifference() {
    return replicates().filter(r -> r.mean() != 0).stream()
        .mapToDouble(Replicates::relativeRange)
        .findFirst();
  }

  /**
   * Returns the repeatability limit, if the repeatability of the method is known ({@link
   * Apparatus#withRepeatability}).
   *
   * @return the greatest difference of two determinations that it explains, in mEq/L
   */
  public Optional<RepeatabilityLimit> repeatabilityLimit() {
    return charge.repeatabilityLimit();
  }

  /**
   * Returns the slope of the curve at the end point: as the readings next to it show it, the mean
   * over the logs, or as it was stated.
   *
   * @return equivalents per litre of undiluted sample and pH; empty when it is not known
   */
  public Optional<BufferCapacity> slopeAtEndPoint() {
    return charge.slopeAtEndPoint();
  }

  /**
   * Returns how the result comes about, to draw from at random instead of taking it as linear.
   *
   * @return the model in mEq/L
   */
  public MeasurementModel model() {
    return charge.model();
  }

  /**
   * Returns which input contributes what to the uncertainty.
   *
   * @return the budget in mEq/L
   */
  public Budget budget() {
    return charge.budget();
  }

  /**
   * Says whether the linear budget holds, within 2 %: where the end point lies on a flat part of
   * the curve it may not. What no uncertainty is stated of is in neither, and named.
   *
   * @param draws how many, 1000 or more; 1e6 decide 2 %
   * @param seed the seed of the random numbers
   * @return the comparison of the budget with draws from {@link #model}
   * @throws IllegalArgumentException if there are fewer than 1000 draws
   */
  public LinearityCheck linearityCheck(int draws, long seed) {
    return model().monteCarlo(draws, seed).comparedWith(budget(), LINEARITY_TOLERANCE);
  }

  /**
   * Returns what is notable, about the titrant too.
   *
   * @return an unmodifiable list, empty when there is nothing
   */
  public List<Notice> notices() {
    return step.notices();
  }

  /**
   * Explains the value, from weighings and titres on.
   *
   * @return the steps of the arithmetic
   */
  public Explanation explain() {
    return new Explanation(step);
  }

  @Override
  public Step step(Figure<?> asked) {
    if (asked.equals(figure) && asked.scale().symbol().equals(figure.scale().symbol())) {
      return step;
    }
    return asked.equals(TitrationFigures.TITRANT_CONCENTRATION)
        ? titration().titrant().step(asked)
        : asked.rule().find(asked, this);
  }

  @Override
  public String kind() {
    return "titration";
  }

  /** Prints value, end point and U. */
  @Override
  public String toString() {
    return answer().toString();
  }
}
