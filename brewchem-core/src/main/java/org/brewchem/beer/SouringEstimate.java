package org.brewchem.beer;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Roots;
import org.brewchem.mash.SourcedRange;
import org.brewchem.mash.WortBuffer;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.solution.EffectiveEquivalents;
import org.brewchem.substance.Acid;

/**
 * The souring of a wort by its buffer capacity per degree of extract, measured or assumed, in
 * ranges and never points: the lactic acid formed between the pH at the start and the pH at the
 * stop, and the pH when a given amount was formed. It tells nothing about time. A titrated wort has
 * {@link Souring}, with an uncertainty of its own. Immutable.
 */
public final class SouringEstimate {

  private static final double GRAMS_PER_LITRE = 1e-2;

  /** Far below what souring reaches; our choice. */
  private static final PH LOWEST = PH.of(2.5);

  private final WortBuffer buffer;
  private final MassFraction extract;
  private final PH start;
  private final Optional<MassConcentration> before;

  private SouringEstimate(
      WortBuffer buffer, MassFraction extract, PH start, Optional<MassConcentration> before) {
    this.buffer = buffer;
    this.extract = extract;
    this.start = start;
    this.before = before;
  }

  /**
   * Starts with a wort.
   *
   * @param buffer its capacity per degree of extract, such as {@link
   *     WortBuffer#assumedForSouring()}
   * @param extract of the wort, by mass (°P), above 0 and at most 35 %
   * @param start the pH of the cooled wort before it is soured, above 2.5
   * @return the estimate
   * @throws IllegalArgumentException if the extract or the pH is out of range
   */
  public static SouringEstimate of(WortBuffer buffer, MassFraction extract, PH start) {
    Objects.requireNonNull(buffer, "buffer");
    Objects.requireNonNull(start, "start");
    // Throws where extract or pH are out of range.
    buffer.acid(extract, start, LOWEST);
    return new SouringEstimate(buffer, extract, start, Optional.empty());
  }

  /**
   * States the lactate that the wort holds before. It is part of what the wort buffers with
   * already, and counts in {@link #lactateAt} only.
   *
   * @param lactate all of it, counted as lactic acid
   * @return the estimate
   */
  public SouringEstimate withLactateBefore(MassConcentration lactate) {
    Objects.requireNonNull(lactate, "lactate");
    return new SouringEstimate(buffer, extract, start, Optional.of(lactate));
  }

  /**
   * Returns what is formed until the wort has a pH.
   *
   * @param stop the pH at stop, below that at start
   * @return g/L, lactic acid and lactate together, counted as lactic acid
   * @throws IllegalArgumentException if the pH is not below that at start
   */
  public SourcedRange lactateFormedTo(PH stop) {
    return lactic("lactate formed", stop, 0, 1);
  }

  /**
   * Returns all lactate of the wort at a pH.
   *
   * @param stop the pH at stop, below that at start
   * @return g/L, counted as lactic acid: what was formed and what was there before
   * @throws IllegalArgumentException if the pH is not below that at start
   * @throws IllegalStateException if the lactate before souring is not stated
   */
  public SourcedRange lactateAt(PH stop) {
    double own =
        before
            .orElseThrow(
                () ->
                    new IllegalStateException(
                        "lactate: what was there before souring is not stated"))
            .inMilligramsPerLitre();
    return lactic("lactate of the soured wort", stop, own / 1000, 1);
  }

  /**
   * Returns by how much the titratable acidity rises: what was formed, as far as it gives off its
   * proton at the end point. The wort's own acidity before souring is not in it.
   *
   * @param stop the pH at stop, below that at start
   * @param endPoint the end point of the titration, such as 8.2
   * @return g/L as lactic acid
   * @throws IllegalArgumentException if the pH is not below that at start
   */
  public SourcedRange riseOfAcidityTo(PH stop, PH endPoint) {
    double given = EffectiveEquivalents.of(Acid.LACTIC).at(endPoint);
    return lactic("rise of the titratable acidity to " + endPoint, stop, 0, given);
  }

  private SourcedRange lactic(String quantity, PH stop, double more, double factor) {
    Objects.requireNonNull(stop, "stop");
    SourcedRange grams = buffer.acid(Acid.LACTIC, extract, start, stop);
    return new SourcedRange(
        quantity,
        more + factor * GRAMS_PER_LITRE * grams.lower(),
        more + factor * GRAMS_PER_LITRE * grams.upper(),
        "g/L as lactic acid",
        grams.basis());
  }

  /**
   * Returns the pH when an amount of lactic acid has been formed.
   *
   * @param formed the lactic acid and lactate formed, counted as lactic acid, above 0
   * @return the pH; its lower end is that of the wort that buffers least
   * @throws IllegalArgumentException if the amount is 0, or would take the wort below pH 2.5
   */
  public SourcedRange pHForming(MassConcentration formed) {
    Objects.requireNonNull(formed, "formed");
    double grams = Checks.positive("lactate formed", formed.inMilligramsPerLitre() / 1000, "g/L");
    double most = lactateFormedTo(LOWEST).lower();
    if (grams >= most) {
      throw Checks.outOfRange(
          "lactate formed", grams, "g/L", "less than takes the wort to " + LOWEST + ", " + most);
    }
    return new SourcedRange(
        "pH of the soured wort",
        where(grams, SourcedRange::lower),
        where(grams, SourcedRange::upper),
        "",
        lactateFormedTo(LOWEST).basis().subList(0, 1));
  }

  private double where(double grams, ToDoubleFunction<SourcedRange> end) {
    return Roots.between(
            pH ->
                pH >= start.value() ? grams : grams - end.applyAsDouble(lactateFormedTo(PH.of(pH))),
            LOWEST.value(),
            start.value())
        .orElseThrow(
            none -> new IllegalStateException("lactate formed: no pH was found at " + grams));
  }

  /**
   * Returns what is notable: whether the buffer is assumed, and whether it is a mean over another
   * range of pH.
   *
   * @param stop the pH at stop
   * @return the notices
   */
  public List<Notice> notices(PH stop) {
    return buffer.notices(start, Objects.requireNonNull(stop, "stop"));
  }

  /**
   * Returns what to mind while a wort is soured (common practice, no source). Local law and a
   * trained person outrank it.
   *
   * @return the cautions
   */
  public List<Caution> cautions() {
    return Caution.of(List.of(Hazard.SOURING));
  }

  @Override
  public String toString() {
    return "souring of a wort of " + extract + ", from " + start + ", " + buffer;
  }
}
