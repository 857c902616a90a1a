package org.brewchem.treatment;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * A dose in two stages: a part of it, two thirds unless said otherwise, is mixed in, a figure is
 * measured, and the rest follows from the new reading. Both readings count: what was predicted for
 * the first stage and what was read are combined with their uncertainties and covariances, so that
 * a reading teaches how strongly this beer resists, and noise is not taken for resistance.
 *
 * <p>Every figure G of the liquid after a further dose is corrected by the reading R of the figure
 * F after the first stage: G - K (F - R) with K = cov(G, F - R)/var(F - R), the linear estimate of
 * least variance (Gauss and Markov; textbook, from memory). The covariances are those of the
 * sources that both share: the buffer, the first reading, the label, the volume in the tank.
 *
 * <p>The remainder is the dose with the least expected square of the distance to the aim. It is a
 * little less than the dose to the aim, the more so the less certain the effect of a dose is.
 * Immutable.
 *
 * @param <L> the kind of liquid
 */
public final class StagedDose<L extends Liquid> {

  private static final double TWO_THIRDS = 2.0 / 3;

  /** How small a dose tells the slope, mol per litre. */
  private static final double FIRST = 1e-6;

  /** More than anybody could mean, mol per litre; as of any dose. */
  private static final double MOST = 1;

  private static final double GROWTH = 2;

  /** A reading further from what was expected is worth a look, in standard uncertainties. */
  private static final double UNEXPECTED = 3;

  /** So is a change less or more than so many times what was expected; our choice. */
  private static final double LEAST_SHARE_OF_CHANGE = 1.0 / 3;

  private static final double MOST_SHARE_OF_CHANGE = 3;

  /** Of a change: less is the last bits of two numbers that are the same. */
  private static final double LAST_BITS = 1e-9;

  /** But where it is more than the two readings may be off, in standard uncertainties. */
  private static final double NOISE = 2;

  private final TankDose<L> whole;
  private final TankDose<L> first;

  private StagedDose(TankDose<L> whole, TankDose<L> first) {
    this.whole = whole;
    this.first = first;
  }

  /**
   * Begins with two thirds of a dose.
   *
   * @param whole the dose, with a target
   * @param <L> the kind of liquid
   * @return the first stage
   * @throws IllegalArgumentException if the dose has no target
   */
  public static <L extends Liquid> StagedDose<L> of(TankDose<L> whole) {
    return of(whole, TWO_THIRDS);
  }

  /**
   * Begins with a share of a dose.
   *
   * @param whole the dose, with a target
   * @param share the share that goes in first, 0.05 to 0.95
   * @param <L> the kind of liquid
   * @return the first stage
   * @throws IllegalArgumentException if the dose has no target or the share is out of range
   */
  public static <L extends Liquid> StagedDose<L> of(TankDose<L> whole, double share) {
    if (whole.constraint().isEmpty()) {
      throw new IllegalArgumentException(
          "dose: " + whole + " is not possible in stages; a dose to a target is needed");
    }
    return new StagedDose<>(
        whole, whole.part(Checks.inRange("share of the first stage", share, "", 0.05, 0.95)));
  }

  /**
   * Returns the first stage, which goes in now.
   *
   * @return the dose, without a target of its own
   */
  public TankDose<L> first() {
    return first;
  }

  /**
   * Returns the dose that was divided.
   *
   * @return the whole
   */
  public TankDose<L> whole() {
    return whole;
  }

  /**
   * Takes the pH that was read when the first stage had been mixed in.
   *
   * <p>Where the same meter read the liquid before, state for both readings how well it repeats: an
   * error of its zero is in both, and the target then counts on the scale of this meter.
   *
   * @param reading the pH
   * @param standardUncertainty u of this reading, above 0
   * @return what is left to be dosed
   * @throws IllegalArgumentException if the uncertainty is not above 0
   * @throws UnreachableException if nothing is left to be dosed, or the reading says that the first
   *     stage moved it the other way; that it hardly moved is a notice
   * @throws UnknownFigureException if an uncertainty of what was predicted is not stated
   */
  public Remainder<L> read(PH reading, double standardUncertainty) {
    Objects.requireNonNull(reading, "reading");
    return read(Figures.PH_VALUE, reading, standardUncertainty);
  }

  /**
   * Takes a figure that was measured when the first stage had been mixed in. It need not be the one
   * that is dosed to.
   *
   * @param figure what was measured
   * @param reading what was found
   * @param standardUncertainty u of it, above 0, in the unit that the figure is shown in
   * @param <Q> the meaning of the figure
   * @return what is left to be dosed
   * @throws IllegalArgumentException if the uncertainty is not above 0
   * @throws UnreachableException if nothing is left to be dosed, or the reading says that the first
   *     stage moved it the other way; that it hardly moved is a notice
   * @throws UnknownFigureException if the figure is unknown, or an uncertainty is not stated
   */
  public <Q> Remainder<L> read(Figure<Q> figure, Q reading, double standardUncertainty) {
    Objects.requireNonNull(reading, "reading");
    double shown = figure.shown().in(reading);
    double u =
        Checks.positive("uncertainty of the reading", standardUncertainty, figure.shown().symbol());
    Traced read =
        Traced.of(
            Source.of(
                figure.title() + " after the first stage", shown, u, figure.shown().symbol()));
    Step step =
        Step.of(figure.title() + " after the first stage", figure.shown(), Step.Kind.STATED)
            .origin(Origin.MEASURED)
            .text("as read", "")
            .found(read);
    return new Remainder<>(this, figure, step, figure.shown().convert(read, figure.scale()));
  }

  /**
   * What is left to be dosed, and what follows of it. It answers any figure of the liquid after the
   * remainder, both readings counted. Immutable.
   *
   * @param <L> the kind of liquid
   */
  public static final class Remainder<L extends Liquid> implements Answering {

    private final StagedDose<L> stages;
    private final Dosing<L> dosing;
    private final Constraint constraint;
    private final Figure<?> measured;
    private final Step reading;
    private final Step expected;
    private final Traced surprise;
    private final Traced read;
    private final double before;
    private final double more;
    private final L after;

    private Remainder(StagedDose<L> stages, Figure<?> measured, Step reading, Traced read) {
      this.stages = stages;
      this.measured = measured;
      this.reading = reading;
      this.read = read;
      dosing = stages.whole.dosing();
      constraint = stages.whole.constraint().orElseThrow();
      before = stages.first.molesPerLitre();
      expected = stages.first.step(measured);
      surprise = found(expected, measured).minus(read);
      if (surprise.standardUncertainty().isEmpty()) {
        throw new UnknownFigureException(
            measured.title() + " expected after the first stage",
            surprise.missing().stream()
                .map(source -> "u of " + source.name() + " is not stated")
                .toList());
      }
      Figure<?> figure = constraint.figure();
      double wanted = Dosing.value(stages.whole.step(figure), figure);
      Traced start = corrected(stages.first.after(), figure);
      if (pull(FIRST, start, wanted) >= 0) {
        double left = dosing.isFalling(figure) ? start.value() - wanted : wanted - start.value();
        Traced there = corrected(dosing.after(before + FIRST), figure);
        boolean moves = (there.value() - start.value()) * (wanted - start.value()) > 0;
        throw unreachable(
            wanted,
            start.value(),
            left <= 0 || moves
                ? UnreachableException.Reason.ALREADY_THERE
                : UnreachableException.Reason.CONTRADICTED);
      }
      more =
          Roots.walking(
                  moles -> pull(moles, start, wanted),
                  FIRST,
                  (moles, pull) -> Math.min(GROWTH * moles, MOST),
                  0)
              .orElseThrow(
                  end -> unreachable(wanted, start.value(), UnreachableException.Reason.TOO_WEAK));
      after = dosing.after(before + more);
    }

    /**
     * Half the derivative of the expected square of what is missing, by the slope from here to a
     * dose: below 0 where more brings the figure nearer on the whole. An uncertain slope counts as
     * a risk that grows with the dose.
     */
    private double pull(double moles, Traced start, double wanted) {
      Traced there = corrected(dosing.after(before + moles), constraint.figure());
      Traced slope = there.minus(start).times(1 / moles);
      return moles * (slope.value() * slope.value() + slope.covariance(slope))
          + (start.value() - wanted) * slope.value()
          + start.covariance(slope);
    }

    private UnreachableException unreachable(
        double wanted, double nearest, UnreachableException.Reason reason) {
      Figure<?> figure = constraint.figure();
      return dosing.unreachable(
          figure, Shown.shown(figure, wanted), Shown.shown(figure, nearest), reason);
    }

    private static Traced found(Step step, Figure<?> figure) {
      return step.found()
          .orElseThrow(() -> new UnknownFigureException(figure.title(), step.whyUnknown()));
    }

    private Traced corrected(L liquid, Figure<?> figure) {
      return corrected(found(liquid.step(figure), figure));
    }

    /** The estimate of least variance among those that add a multiple of the surprise. */
    private Traced corrected(Traced predicted) {
      double gain = gain(predicted);
      return Traced.linear(
          predicted.value() - gain * surprise.value(),
          new Traced[] {predicted, surprise},
          new double[] {1, -gain});
    }

    private double gain(Traced predicted) {
      return predicted.covariance(surprise) / surprise.covariance(surprise);
    }

    /**
     * Returns what to measure out now.
     *
     * @return amount, mass and, if the density is known, volume of the reagent
     */
    public Portion portion() {
      return stages.whole.portionOf(more);
    }

    /**
     * Returns the liquid after both stages as it was predicted without the reading; {@link #answer}
     * counts the reading in.
     *
     * @return the liquid
     */
    public L predicted() {
      return after;
    }

    /**
     * Answers a figure of the liquid after the remainder, both readings counted.
     *
     * @param figure the figure
     * @param <Q> the meaning of its value
     * @return the answer
     */
    public <Q> Answer<Q> answer(Figure<Q> figure) {
      return Answer.of(figure, this);
    }

    @Override
    public Step step(Figure<?> figure) {
      Step predicted = after.step(figure);
      Step.Builder builder =
          Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA)
              .text("predicted - gain x (expected after the first stage - read)", "")
              .inputs(List.of(predicted, expected, reading))
              .notices(predicted.notices());
      if (predicted.found().isEmpty()) {
        return builder.unknown(predicted.whyUnknown());
      }
      Traced own = predicted.found().get();
      Traced found = corrected(own);
      return builder
          .detail(
              () ->
                  new Step.Detail(
                      List.of("gain: " + NumberText.significant(gain(own), 4)),
                      own.value() - gain(own) * surprise.value() - found.value(),
                      0))
          .found(found);
    }

    @Override
    public String kind() {
      return "dose";
    }

    /**
     * Compares a figure after the remainder with limits, both readings counted.
     *
     * @param limits the limits
     * @return the chance beyond each
     */
    public Chances chances(Constraint limits) {
      return Chances.of(limits, answer(limits.figure()));
    }

    /**
     * Compares the figure that is dosed to with its limits, both readings counted.
     *
     * @return the chances
     */
    public Chances chances() {
      return chances(constraint);
    }

    /**
     * Explains the figure that is dosed to: the prediction, the reading and the gain.
     *
     * @return the explanation
     */
    public Explanation explain() {
      return new Explanation(step(constraint.figure()));
    }

    /**
     * Tells whether the reading lies where it was expected.
     *
     * @return a notice where it lies further off than 3 standard uncertainties, or where the figure
     *     moved less than a third or more than three times as far as was expected and the readings
     *     before and after do not explain it, which an uncertain buffer alone seldom does and a
     *     tank that is not mixed does
     */
    public Optional<Notice> surprising() {
      double u = surprise.standardUncertainty().orElseThrow();
      double times = Math.abs(surprise.value()) / u;
      Traced start = found(dosing.after(0).step(measured), measured);
      double predicted = found(expected, measured).value() - start.value();
      double share = 1 - surprise.value() / predicted;
      double noise =
          NOISE
              * Math.hypot(
                  read.standardUncertainty().orElseThrow(), start.standardUncertainty().orElse(0));
      boolean isBeyondNoise = Math.min(Math.abs(surprise.value()), Math.abs(predicted)) > noise;
      String what;
      if (times > UNEXPECTED) {
        what =
            " after the first stage lies "
                + NumberText.significant(times, 2)
                + " standard uncertainties from what was expected, "
                + expected;
      } else if (isBeyondNoise && (share < LEAST_SHARE_OF_CHANGE || share > MOST_SHARE_OF_CHANGE)) {
        what =
            " moved by "
                + NumberText.significant(change(moved(predicted)), 2)
                + " where the first stage was expected to move it by "
                + NumberText.significant(change(predicted), 2);
      } else {
        return Optional.empty();
      }
      return Optional.of(
          Notice.of(
              TreatmentCode.READING_UNEXPECTED,
              measured.title(),
              measured.title()
                  + what
                  + ": mix and read again, and look at the reagent, the volume and the meter before"
                  + " anything more goes in"));
    }

    /** By how much the figure moved; 0 where it is the same but for last bits. */
    private double moved(double predicted) {
      double moved = predicted - surprise.value();
      return Math.abs(moved) > LAST_BITS * Math.abs(predicted) ? moved : 0;
    }

    /** A difference of the figure in the scale that it is shown in. */
    private double change(double inOwnScale) {
      return Shown.shown(measured, inOwnScale) - Shown.shown(measured, 0);
    }

    /**
     * Returns what is notable.
     *
     * @return the notices, without repetition
     */
    public List<Notice> notices() {
      Set<Notice> all = new LinkedHashSet<>(surprising().stream().toList());
      all.addAll(after.notices());
      return List.copyOf(all);
    }

    /**
     * Returns what to mind, as of the first stage.
     *
     * @return the cautions
     */
    public List<Caution> cautions() {
      return stages.first.cautions();
    }

    @Override
    public String toString() {
      return portion() + " more of " + dosing.supply().name() + "; " + chances();
    }
  }

  @Override
  public String toString() {
    return Objects.toString(first.portion()) + " first of " + whole.portion();
  }
}
