package org.brewchem.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UsualRange;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.PH;
import org.brewchem.uncertainty.MethodPrecision;
import org.brewchem.uncertainty.Replicates;
import org.brewchem.uncertainty.ToleranceFactor;

/**
 * A band for a target, made from one batch that was right or from several, with how it was made and
 * whether it is wide enough for the method to tell. Immutable.
 *
 * @param <Q> the meaning of the figure
 */
public final class TargetBand<Q> {

  /** From here on the factor is at most 2.6 times that of endless batches, of four 3.2 times. */
  private static final int ENOUGH = 5;

  /** What is said of a spread, which a tolerance of one's own replaces. */
  private static final Set<QualityCode> OF_THE_SPREAD =
      EnumSet.of(
          QualityCode.FEW_BATCHES, QualityCode.BATCHES_EQUAL, QualityCode.BAND_REACHES_TOO_FAR);

  private final Figure<Q> figure;
  private final double aim;
  private final double tolerance;
  private final String madeFrom;
  private final List<Notice> notices;

  private TargetBand(
      Figure<Q> figure, double aim, double tolerance, String madeFrom, List<Notice> notices) {
    this.figure = figure;
    this.aim = aim;
    this.tolerance = tolerance;
    this.madeFrom = madeFrom;
    this.notices = List.copyOf(notices);
  }

  /**
   * Makes a band from one batch, or from a bought beer that was measured on your own bench: its
   * value and the repeatability limit r95 = 2.8 s_r of the method on both sides, within which two
   * results of one beer differ in 95 % of cases.
   *
   * @param batch the answer of the batch
   * @param precision the precision of the method, in the unit that the answer is shown in
   * @param <Q> the meaning of the figure
   * @return the band
   * @throws IllegalArgumentException if the precision counts in another unit
   * @throws org.brewchem.figure.UnknownFigureException if the batch's figure is unknown
   */
  public static <Q> TargetBand<Q> fromOne(Answer<Q> batch, MethodPrecision precision) {
    sameUnit(batch.figure(), precision);
    return new TargetBand<>(
        batch.figure(),
        batch.number(),
        precision.repeatabilityLimit().value(),
        "one batch and the repeatability limit, " + precision,
        List.of());
  }

  /**
   * Makes a band from several batches: their mean and a two-sided tolerance interval, exact for a
   * normal population ({@link ToleranceFactor}). Few batches make a wide band: of three it is 9.8
   * standard deviations on both sides, of ten 3.4 at 95 % and 95 %. Of fewer than five (our choice)
   * a notice says so, and another names limits that are not possible or below zero where no batch
   * lies. Equal batches, whose spread is hidden in the rounding, make a band without width and a
   * notice.
   *
   * @param batches the answers, 2 or more of one figure in one unit, none unknown
   * @param content the share of good batches that the band is to hold, between 0 and 1
   * @param confidence the confidence that it does, between 0 and 1
   * @param <Q> the meaning of the figure
   * @return the band
   * @throws IllegalArgumentException if there are fewer than 2, or figures or units differ
   * @throws org.brewchem.figure.UnknownFigureException if a figure is unknown
   */
  public static <Q> TargetBand<Q> fromSeveral(
      List<Answer<Q>> batches, double content, double confidence) {
    Checks.inRange("batches", batches.size(), "", 2, 10_000);
    Figure<Q> figure = batches.get(0).figure();
    String unit = batches.get(0).unit();
    for (Answer<Q> batch : batches) {
      if (!batch.figure().equals(figure) || !batch.unit().equals(unit)) {
        throw new IllegalArgumentException(
            "batches: "
                + batch.figure().title()
                + " in \""
                + batch.unit()
                + "\" beside "
                + figure.title()
                + " in \""
                + unit
                + "\" is not possible; one figure in one unit is needed");
      }
    }
    Replicates sample = Replicates.of(unit, batches.stream().mapToDouble(Answer::number).toArray());
    double factor = ToleranceFactor.twoSided(batches.size(), content, confidence);
    if (sample.standardDeviation() == 0) {
      return ofEqual(figure, sample);
    }
    double tolerance = factor * sample.standardDeviation();
    List<Notice> notices = new ArrayList<>();
    if (batches.size() < ENOUGH) {
      notices.add(
          Notice.of(
              QualityCode.FEW_BATCHES,
              figure.title(),
              String.format(
                  Locale.ROOT,
                  "the band of %s comes from %d batches, which hardly fix a spread: it is %.3g"
                      + " standard deviations wide on both sides; %d or more make it narrower",
                  figure.title(),
                  batches.size(),
                  factor,
                  ENOUGH)));
    }
    reach(figure, sample, tolerance).ifPresent(notices::add);
    return new TargetBand<>(
        figure,
        sample.mean(),
        tolerance,
        String.format(
            Locale.ROOT,
            "%d batches, mean and %.3f standard deviations: holds %.3g %% of such batches with"
                + " %.3g %% confidence, exact for normal ones",
            batches.size(),
            factor,
            100 * content,
            100 * confidence),
        notices);
  }

  private static <Q> TargetBand<Q> ofEqual(Figure<Q> figure, Replicates sample) {
    String made = sample.count() + " equal batches: their spread is not known";
    return new TargetBand<>(
        figure,
        sample.mean(),
        0,
        made,
        List.of(
            Notice.of(
                QualityCode.BATCHES_EQUAL,
                figure.title(),
                "the band of "
                    + figure.title()
                    + " has no width, for the batches are equal as they are read: give more digits,"
                    + " or state a tolerance (withTolerance)")));
  }

  /** Says where limits lie at which no liquid can be, or below zero with every batch above. */
  private static Optional<Notice> reach(Figure<?> figure, Replicates sample, double tolerance) {
    double lower = sample.mean() - tolerance;
    double upper = sample.mean() + tolerance;
    boolean isBelowZero = lower < 0 && Arrays.stream(sample.values()).allMatch(value -> value > 0);
    if (!isBelowZero && isPossible(figure, lower) && isPossible(figure, upper)) {
      return Optional.empty();
    }
    return Optional.of(
        Notice.of(
            QualityCode.BAND_REACHES_TOO_FAR,
            figure.title(),
            "the band of "
                + figure.title()
                + ", "
                + figure.shown().range(lower, upper)
                + ", reaches "
                + (isBelowZero ? "below 0, where no batch lies" : "what is not possible")
                + ": the batches do not fix their spread, and such a limit bounds nothing"));
  }

  private static boolean isPossible(Figure<?> figure, double number) {
    try {
      if (figure.shown().of(number) instanceof PH pH) {
        UsualRange.named("pH of a beer").possible("pH", pH.value());
      }
      return true;
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  private static void sameUnit(Figure<?> figure, MethodPrecision precision) {
    if (!precision.unit().equals(figure.shown().symbol())) {
      throw new IllegalArgumentException(
          "precision: in \""
              + precision.unit()
              + "\" is not possible; "
              + figure.title()
              + " is shown in \""
              + figure.shown().symbol()
              + "\"");
    }
  }

  /**
   * Replaces the tolerance by your own. What was notable about the spread of the batches goes.
   *
   * @param ownTolerance how far off is allowed on both sides, above 0, in the figure's unit
   * @return the band
   * @throws IllegalArgumentException if the tolerance is not above 0
   */
  public TargetBand<Q> withTolerance(double ownTolerance) {
    return new TargetBand<>(
        figure,
        aim,
        Checks.positive("tolerance of " + figure.title(), ownTolerance, figure.shown().symbol()),
        madeFrom + "; the tolerance is one's own",
        notices.stream().filter(notice -> !OF_THE_SPREAD.contains(notice.code())).toList());
  }

  /**
   * Judges whether a method can tell the band. One reading of one laboratory cannot decide on a
   * band that is narrower than the repeatability limit, and another laboratory cannot check one
   * that is narrower than the reproducibility limit.
   *
   * @param precision the precision of the method, in the figure's unit
   * @return the band, with a notice if the method cannot tell it
   * @throws IllegalArgumentException if the precision counts in another unit
   */
  public TargetBand<Q> judgedBy(MethodPrecision precision) {
    sameUnit(figure, precision);
    List<Notice> more = new ArrayList<>(notices);
    OptionalDouble between = precision.reproducibilityLimit();
    double own = precision.repeatabilityLimit().value();
    if (2 * tolerance < own) {
      more.add(narrower("two readings of one laboratory differ by", own, precision));
    } else if (between.isPresent() && 2 * tolerance < between.getAsDouble()) {
      more.add(narrower("results of two laboratories differ by", between.getAsDouble(), precision));
    }
    return new TargetBand<>(figure, aim, tolerance, madeFrom, more);
  }

  private Notice narrower(String what, double limit, MethodPrecision precision) {
    return Notice.of(
        QualityCode.BAND_NARROWER_THAN_METHOD,
        figure.title(),
        "the band of "
            + figure.title()
            + ", "
            + constraint().band()
            + ", is narrower than the method can tell: "
            + what
            + " up to "
            + NumberText.significant(limit, 2)
            + (precision.unit().isEmpty() ? "" : " " + precision.unit())
            + " in 95 % of cases ("
            + precision.source()
            + ")");
  }

  /**
   * Returns the band as a constraint with an aim.
   *
   * @return the constraint, for a {@link org.brewchem.figure.Target}
   */
  public Constraint constraint() {
    return Constraint.around(figure, figure.shown().of(aim), tolerance);
  }

  /**
   * Returns how the band was made.
   *
   * @return a sentence
   */
  public String madeFrom() {
    return madeFrom;
  }

  /**
   * Returns what is notable about the band.
   *
   * @return an unmodifiable list
   */
  public List<Notice> notices() {
    return notices;
  }

  @Override
  public String toString() {
    return constraint() + " (" + madeFrom + ")";
  }
}
