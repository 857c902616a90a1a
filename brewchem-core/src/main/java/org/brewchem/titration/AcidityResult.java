package org.brewchem.titration;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.CarbonDioxidePressure;
import org.brewchem.substance.Acid;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.LinearityCheck;
import org.brewchem.uncertainty.MonteCarlo;
import org.brewchem.uncertainty.RepeatabilityLimit;
import org.brewchem.uncertainty.Replicates;
import org.brewchem.uncertainty.UncertainValue;

/**
 * A titratable acidity as a laboratory found it: the value with its end point, its uncertainty and
 * budget, the replicates, and what is noteworthy about it. Immutable.
 *
 * <p>TA = c z (V - B) f / S, with the concentration c and equivalents z of the alkali, the mean
 * titre V, the blank B, the predilution f and the sample volume S. The temperature is left out of
 * the budget: alkali and sample share it, and it cancels. The reading of pH at the end point is in
 * it when the slope of the curve there is known, from a log or as stated.
 */
public final class AcidityResult {

  /** Beer above this is unusual, in g/L as lactic acid (common practice, no source). */
  public static final double UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC = 10;

  private static final PH USUAL_BEER = PH.of(4.3);
  private static final Temperature ROOM = Temperature.ofCelsius(20);
  private static final Temperature COLDEST = Temperature.ofCelsius(0);
  private static final double LINEARITY_TOLERANCE = 0.02;

  private final TitratedCharge charge;
  private final List<Finding> findings;

  private AcidityResult(TitratedCharge charge) {
    this.charge = charge;
    List<Finding> list = charge.findings();
    judgeSize(list);
    this.findings = List.copyOf(list);
  }

  static AcidityResult of(SampleTitration titration, List<Volume> titres, List<TitrationLog> logs) {
    if (!titration.titrant().substance().isAlkali()) {
      throw new IllegalStateException(
          "titrant: " + titration.titrant() + " measures no acidity; an alkali is needed");
    }
    return new AcidityResult(
        new TitratedCharge("titratable acidity", titration, titres, logs, Optional.empty()));
  }

  /**
   * Returns the greatest acidity that an open sample of a beer explains: {@link
   * #UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC} and all the carbon dioxide that water holds at 0 °C under 1
   * atm of it. More takes the gas of a closed vessel, or is a slip. Source of the solubility:
   * Plummer and Busenberg 1982; of what the gas adds: {@link CarbonDioxideResidue}, from pH 4.3 at
   * 20 °C.
   *
   * @param endPoint the pH that the titration ends at, above 4.3
   * @return the acidity, 16.9 g/L as lactic acid to pH 8.2
   */
  public static TitratableAcidity greatestOfOpenSample(PH endPoint) {
    MassConcentration saturated =
        CarbonDioxidePressure.carbonationUnder(Pressure.ofAtmospheres(1), COLDEST)
            .asMassConcentration();
    return TitratableAcidity.ofGramsPerLitreAs(
            UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC, Acid.LACTIC, endPoint)
        .plus(CarbonDioxideResidue.of(saturated, USUAL_BEER, endPoint, ROOM).bias());
  }

  private void judgeSize(List<Finding> list) {
    double lactic = value().inGramsPerLitreAs(Acid.LACTIC);
    if (lactic <= UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC) {
      return;
    }
    boolean carbonated = value().compareTo(greatestOfOpenSample(endPoint())) > 0;
    double excess =
        1000 * (lactic - UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC) / Acid.LACTIC.gramsPerEquivalent();
    list.add(
        Finding.of(
            carbonated ? Finding.Kind.SAMPLE_CARBONATED : Finding.Kind.ACIDITY_UNUSUAL,
            String.format(
                Locale.ROOT,
                "%.3g g/L as lactic acid is unusual for beer, also for a sour one; was the sample"
                    + " degassed? %.2g g/L of carbon dioxide left in it would explain what is above"
                    + " %.3g g/L%s",
                lactic,
                CarbonDioxideResidue.explaining(
                        excess, USUAL_BEER, endPoint(), titration().temperature())
                    .inGramsPerLitre(),
                UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC,
                carbonated
                    ? ", more than any open liquid holds: it came from under pressure, or a figure"
                        + " is wrong"
                    : "")));
  }

  /**
   * Returns the acidity with its end point.
   *
   * @return the acidity; negative when the blank takes more than the sample
   */
  public TitratableAcidity value() {
    return TitratableAcidity.ofMilliequivalentsPerLitre(charge.value(), endPoint());
  }

  /**
   * Returns the acidity with its standard uncertainty.
   *
   * @return the value in mEq/L
   */
  public UncertainValue uncertain() {
    return charge.budget().result();
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
   * States the acidity as an acid.
   *
   * @param basis the acid
   * @return the acidity as that acid, with its uncertainty
   */
  public StatedAcidity as(AcidBasis basis) {
    return new StatedAcidity(uncertain(), basis, endPoint());
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
   * @return the distribution of the acidity in mEq/L
   * @throws IllegalArgumentException if there are fewer than 1000 draws
   */
  public MonteCarlo monteCarlo(int draws, long seed) {
    return charge.model().monteCarlo(draws, seed);
  }

  /**
   * Says whether the linear budget holds, within 2 %: where the end point lies on a flat part of
   * the curve it may not.
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
   * Returns the arithmetic, line by line, stated as lactic acid.
   *
   * @return the explanation
   */
  public Explanation explain() {
    return explain(Acid.LACTIC);
  }

  /**
   * Returns the arithmetic, line by line.
   *
   * @param basis the acid to state the acidity as
   * @return the explanation
   */
  public Explanation explain(AcidBasis basis) {
    Explanation.Lines lines = charge.explained("titratable acidity", titration().method().source());
    lines.add(
        "equivalent of " + basis.name(),
        NumberText.plain(basis.gramsPerEquivalent()) + " g/Eq",
        "molar mass over protons by definition; atomic weights CIAAW 2021");
    lines.add(
        "as " + basis.name(),
        String.format(
            Locale.ROOT,
            "%s mEq/L x %s g/Eq / 1000 = %s",
            NumberText.significant(value().inMilliequivalentsPerLitre(), 6),
            NumberText.plain(basis.gramsPerEquivalent()),
            as(basis)));
    findings.forEach(finding -> lines.note("note: " + finding));
    return lines.done();
  }

  /** Prints the acidity with U (k = 2) and the end point. */
  @Override
  public String toString() {
    return uncertain().times(1, "mEq/L, to " + endPoint()).expanded(2).toString();
  }
}
