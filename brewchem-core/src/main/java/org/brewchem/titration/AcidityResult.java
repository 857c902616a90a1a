package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.LinearityCheck;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.MonteCarlo;
import org.brewchem.uncertainty.Replicates;
import org.brewchem.uncertainty.UncertainValue;

/**
 * A titratable acidity as a laboratory found it: the value with its end point, its uncertainty and
 * budget, the replicates, and what is noteworthy about it. Immutable.
 *
 * <p>TA = c z (V - B) f / S, with the concentration c and equivalents z of the alkali, the mean
 * titre V, the blank B, the predilution f and the sample volume S. The temperature is left out of
 * the budget: alkali and sample share it, and it cancels.
 */
public final class AcidityResult {

  /**
   * Beer above this is unusual, in g/L as lactic acid (common practice, no source); a strong sour
   * beer reaches 7.7.
   */
  private static final double UNUSUAL = 10;

  /** More than fermentation makes, in g/L as lactic acid (common practice, no source). */
  private static final double BEYOND_FERMENTATION = 22;

  private static final PH USUAL_BEER = PH.of(4.3);
  private static final String END_POINT_READING = "reading of the end point";
  private static final double LINEARITY_TOLERANCE = 0.02;

  private final SampleTitration titration;
  private final List<Volume> titres;
  private final List<TitrationLog> logs;
  private final double meanTitre;
  private final Optional<Replicates> replicates;
  private final MeasurementModel model;
  private final Budget budget;
  private final List<Finding> findings;

  private AcidityResult(SampleTitration titration, List<Volume> titres, List<TitrationLog> logs) {
    this.titration = titration;
    this.titres = List.copyOf(titres);
    this.logs = List.copyOf(logs);
    double[] millilitres = titres.stream().mapToDouble(Volume::inMillilitres).toArray();
    double[] values = new double[millilitres.length];
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      values[i] = milliequivalentsPerLitre(millilitres[i]);
      sum += millilitres[i];
    }
    this.meanTitre = sum / values.length;
    this.replicates =
        values.length < 2 ? Optional.empty() : Optional.of(Replicates.of("mEq/L", values));
    this.model = model();
    this.budget = model.linear();
    this.findings = List.copyOf(examine());
  }

  static AcidityResult of(SampleTitration titration, List<Volume> titres, List<TitrationLog> logs) {
    if (!titration.titrant().substance().isAlkali()) {
      throw new IllegalStateException(
          "titrant: " + titration.titrant() + " measures no acidity; an alkali is needed");
    }
    return new AcidityResult(titration, titres, logs);
  }

  private double milliequivalentsPerLitre(double titreMillilitres) {
    return milliequivalentsPerLitre(
        titration.titrant().equivalentsPerLitre().value(),
        titreMillilitres - titration.blank().inMillilitres(),
        titration.sample().inMillilitres());
  }

  private double milliequivalentsPerLitre(
      double equivalentsPerLitre, double netMillilitres, double sampleMillilitres) {
    return 1000
        * equivalentsPerLitre
        * netMillilitres
        * titration.predilution()
        / sampleMillilitres;
  }

  private MeasurementModel model() {
    Apparatus apparatus = titration.apparatus();
    double blank = titration.blank().inMillilitres();
    MeasurementModel.Builder inputs =
        MeasurementModel.of("titratable acidity", "mEq/L")
            .with(
                Input.from("titrant", titration.titrant().equivalentsPerLitre()),
                Input.triangular(
                    "titre", meanTitre, apparatus.buretteTolerance().inMillilitres(), "mL"),
                Input.triangular(
                    "sample",
                    titration.sample().inMillilitres(),
                    apparatus.pipetteTolerance(titration.sample()).inMillilitres(),
                    "mL"),
                Repeatability.input(apparatus, replicates, titres.size()));
    if (logs.isEmpty()) {
      return inputs.calculatedBy(x -> milliequivalentsPerLitre(x[0], (x[1] - blank) * x[3], x[2]));
    }
    double interpolation =
        logs.stream().mapToDouble(TitrationLog::interpolationError).max().orElseThrow();
    return inputs
        .with(
            Input.normal(
                END_POINT_READING, titration.endPoint().value(), apparatus.endPointReading(), "pH"),
            Input.uniform("interpolation", 0, interpolation, "mL"))
        .calculatedBy(
            x -> milliequivalentsPerLitre(x[0], (x[1] + shift(x[4]) + x[5] - blank) * x[3], x[2]));
  }

  /** Mean change of the titre when the end point is another pH than the chosen one, mL. */
  private double shift(double pH) {
    double sum = 0;
    for (TitrationLog log : logs) {
      sum += log.millilitresAt(pH) - log.millilitresAt(titration.endPoint().value());
    }
    return sum / logs.size();
  }

  private List<Finding> examine() {
    List<Finding> list = new ArrayList<>();
    if (titration.titrant().concentration().standardUncertainty() == 0) {
      list.add(
          Finding.of(
              Finding.Kind.TITRANT_WITHOUT_UNCERTAINTY,
              titration.titrant()
                  + " was taken as exact; standardise it, or state its uncertainty"));
    }
    list.addAll(Repeatability.findings(titration.apparatus(), replicates));
    if (logs.isEmpty()) {
      list.add(
          Finding.of(
              Finding.Kind.END_POINT_READING_NOT_IN_BUDGET,
              "the slope of the curve at the end point is not known from a volume alone, so the"
                  + " reading of pH is not in the budget; record readings around the end point"));
    }
    logs.forEach(log -> list.addAll(log.findings()));
    judgeSize(list);
    return list;
  }

  private void judgeSize(List<Finding> list) {
    double lactic = value().inGramsPerLitreAs(Acid.LACTIC);
    if (lactic <= UNUSUAL) {
      return;
    }
    boolean carbonated = lactic > BEYOND_FERMENTATION;
    double excess = 1000 * (lactic - UNUSUAL) / Acid.LACTIC.gramsPerEquivalent();
    list.add(
        Finding.of(
            carbonated ? Finding.Kind.SAMPLE_CARBONATED : Finding.Kind.ACIDITY_UNUSUAL,
            String.format(
                Locale.ROOT,
                "%.3g g/L as lactic acid is %s; was the sample degassed? %.2g g/L of carbon"
                    + " dioxide left in it would explain what is above %.3g g/L",
                lactic,
                carbonated
                    ? "beyond what fermentation makes"
                    : "unusual for beer, also for a sour one",
                CarbonDioxideResidue.explaining(
                        excess, USUAL_BEER, titration.endPoint(), titration.temperature())
                    .inGramsPerLitre(),
                UNUSUAL)));
  }

  /**
   * Returns the acidity with its end point.
   *
   * @return the acidity; negative when the blank takes more than the sample
   */
  public TitratableAcidity value() {
    return TitratableAcidity.ofMilliequivalentsPerLitre(
        budget.result().value(), titration.endPoint());
  }

  /**
   * Returns the acidity with its standard uncertainty.
   *
   * @return the value in mEq/L
   */
  public UncertainValue uncertain() {
    return budget.result();
  }

  /**
   * Returns the end point.
   *
   * @return the pH that the titration ended at
   */
  public PH endPoint() {
    return titration.endPoint();
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
    return titration;
  }

  /**
   * Returns the volumes of titrant to the end point, the blank not subtracted.
   *
   * @return an unmodifiable list of one or more
   */
  public List<Volume> titres() {
    return titres;
  }

  /**
   * Returns the spread of the replicates.
   *
   * @return mean and standard deviation in mEq/L; empty for a single determination
   */
  public Optional<Replicates> replicates() {
    return replicates;
  }

  /**
   * Returns how far the replicates differ, relative to their mean.
   *
   * @return largest minus smallest over the mean, a fraction; empty for a single determination or a
   *     mean of 0
   */
  public OptionalDouble relativeDifference() {
    return replicates.isPresent() && replicates.get().mean() != 0
        ? OptionalDouble.of(replicates.get().relativeRange())
        : OptionalDouble.empty();
  }

  /**
   * Returns the mean slope of the curves at the end point, as the readings next to it show it.
   *
   * @return equivalents per litre of undiluted sample and pH; empty when there are no logs
   */
  public Optional<BufferCapacity> slopeAtEndPoint() {
    return logs.isEmpty()
        ? Optional.empty()
        : Optional.of(
            BufferCapacity.ofMilliequivalentsPerLitrePerPH(
                budget.row(END_POINT_READING).sensitivity()));
  }

  /**
   * Returns which input contributes what to the uncertainty.
   *
   * @return the budget in mEq/L
   */
  public Budget budget() {
    return budget;
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
    return model.monteCarlo(draws, seed);
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
    return monteCarlo(draws, seed).comparedWith(budget, LINEARITY_TOLERANCE);
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
    Titrant titrant = titration.titrant();
    Explanation.Lines lines = new Explanation.Lines();
    lines.add(
        "titrant",
        titrant.toString(),
        titrant.standardisation().isPresent() ? "standardised" : "as stated");
    double equivalents = titrant.equivalentsPerLitre().value();
    for (int i = 0; i < logs.size(); i++) {
      lines.add(
          "titre " + (i + 1),
          NumberText.significant(titres.get(i).inMillilitres(), 5)
              + " mL, on the line between the readings before and after "
              + endPoint());
    }
    String sum =
        titres.stream()
            .map(v -> NumberText.plain(v.inMillilitres()))
            .reduce((a, b) -> a + " + " + b)
            .orElseThrow();
    double blank = titration.blank().inMillilitres();
    double net = meanTitre - blank;
    lines.add(
        "net titre",
        String.format(
            Locale.ROOT,
            "%s - blank %s = %s mL",
            titres.size() == 1 ? sum : "(" + sum + ") / " + titres.size(),
            NumberText.plain(blank),
            NumberText.plain(net)));
    lines.add(
        "alkali used",
        String.format(
            Locale.ROOT,
            "%s mL x %s mol/L x %d eq/mol = %s mEq",
            NumberText.plain(net),
            NumberText.significant(titrant.concentration().value(), 6),
            titrant.substance().equivalentsPerMole(),
            NumberText.significant(net * equivalents, 6)));
    lines.add(
        "undiluted sample",
        String.format(
            Locale.ROOT,
            "%s / %s = %s",
            titration.sample(),
            NumberText.plain(titration.predilution()),
            titration.undilutedSample()));
    lines.add(
        "titratable acidity",
        String.format(
            Locale.ROOT,
            "%s mEq / %s L = %s mEq/L",
            NumberText.significant(net * equivalents, 6),
            NumberText.plain(titration.undilutedSample().inLitres()),
            NumberText.significant(value().inMilliequivalentsPerLitre(), 6)));
    lines.add(
        "equivalent of " + basis.name(),
        NumberText.plain(basis.gramsPerEquivalent()) + " g/eq",
        "molar mass over protons by definition; atomic weights CIAAW 2021");
    lines.add(
        "as " + basis.name(),
        String.format(
            Locale.ROOT,
            "%s mEq/L x %s g/eq / 1000 = %s",
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
