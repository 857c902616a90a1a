package org.brewchem.titration;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.LinearityCheck;
import org.brewchem.uncertainty.MonteCarlo;
import org.brewchem.uncertainty.RepeatabilityLimit;
import org.brewchem.uncertainty.Replicates;
import org.brewchem.uncertainty.UncertainValue;

/**
 * A titration alkalinity as a laboratory found it: the value with its end point, its uncertainty
 * and budget, the replicates, and what is noteworthy about it. Immutable. The arithmetic is that of
 * {@link AcidityResult}, with an acid in the burette.
 */
public final class AlkalinityResult {

  private static final double LINEARITY_TOLERANCE = 0.02;

  private final TitratedCharge charge;
  private final List<Finding> findings;

  private AlkalinityResult(TitratedCharge charge) {
    this.charge = charge;
    this.findings = List.copyOf(charge.findings());
  }

  static AlkalinityResult of(
      SampleTitration titration, List<Volume> titres, List<TitrationLog> logs) {
    return of(titration, titres, logs, Optional.empty());
  }

  static AlkalinityResult of(
      SampleTitration titration,
      List<Volume> titres,
      List<TitrationLog> logs,
      Optional<TitratedCharge.EndPointFound> found) {
    if (titration.titrant().substance().isAlkali()) {
      throw new IllegalStateException(
          "titrant: " + titration.titrant() + " measures no alkalinity; an acid is needed");
    }
    return new AlkalinityResult(new TitratedCharge("alkalinity", titration, titres, logs, found));
  }

  /**
   * Returns the alkalinity with its end point.
   *
   * @return the alkalinity; negative when the blank takes more than the sample
   */
  public TitrationAlkalinity value() {
    return TitrationAlkalinity.ofMilliequivalentsPerLitre(charge.value(), endPoint());
  }

  /**
   * Returns the alkalinity with its standard uncertainty.
   *
   * @return the value in mEq/L
   */
  public UncertainValue uncertain() {
    return charge.budget().result();
  }

  /**
   * Returns the alkalinity as calcium carbonate with its standard uncertainty.
   *
   * @return the value in mg/L as CaCO3, its end point in the unit
   */
  public UncertainValue asCaCO3() {
    return uncertain()
        .times(
            TitrationAlkalinity.ofMilliequivalentsPerLitre(1, endPoint())
                .inMilligramsPerLitreAsCaCO3(),
            "mg/L as CaCO3, to " + endPoint());
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
   * Returns what was titrated, and how.
   *
   * @return the titration
   */
  public SampleTitration titration() {
    return charge.titration();
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
    return charge.relativeDifference();
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
   * Returns which input contributes what to the uncertainty.
   *
   * @return the budget in mEq/L
   */
  public Budget budget() {
    return charge.budget();
  }

  /**
   * Draws the inputs of the budget at random instead of taking the formula as linear.
   *
   * @param draws how many, 1000 or more
   * @param seed the seed of the random numbers
   * @return the distribution of the alkalinity in mEq/L
   * @throws IllegalArgumentException if there are fewer than 1000 draws
   */
  public MonteCarlo monteCarlo(int draws, long seed) {
    return charge.model().monteCarlo(draws, seed);
  }

  /**
   * Says whether the linear budget holds, within 2 %.
   *
   * @param draws how many, 1000 or more; 1e6 decide 2 %
   * @param seed the seed of the random numbers
   * @return the comparison of the budget with {@link #monteCarlo}
   * @throws IllegalArgumentException if there are fewer than 1000 draws
   */
  public LinearityCheck linearityCheck(int draws, long seed) {
    return monteCarlo(draws, seed).comparedWith(budget(), LINEARITY_TOLERANCE);
  }

  /**
   * Returns what is noteworthy.
   *
   * @return an unmodifiable list, empty when there is nothing
   */
  public List<Finding> findings() {
    return findings;
  }

  /**
   * Returns the arithmetic, line by line.
   *
   * @return the explanation
   */
  public Explanation explain() {
    Explanation.Lines lines = charge.explained("alkalinity", "Standard Methods 2320 B");
    double perEquivalent =
        TitrationAlkalinity.ofMilliequivalentsPerLitre(1, endPoint()).inMilligramsPerLitreAsCaCO3();
    lines.add(
        "as CaCO3",
        String.format(
            Locale.ROOT,
            "%s mEq/L x %s mg/mEq = %s",
            NumberText.significant(charge.value(), 6),
            NumberText.plain(perEquivalent),
            asCaCO3().expanded(2)),
        "half the molar mass of CaCO3; atomic weights CIAAW 2021");
    findings.forEach(finding -> lines.note("note: " + finding));
    return lines.done();
  }

  /** Prints the alkalinity as CaCO3 with U (k = 2) and the end point. */
  @Override
  public String toString() {
    return asCaCO3().expanded(2).toString();
  }
}
