package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;

/**
 * The titration curve of one weak monoprotic acid in water, analysed: where its equivalence point
 * lies and what its pKa is, by a fit of the whole curve ({@link CurveFit}). Immutable.
 */
public final class WeakAcidCurve implements Answering {

  private final TitrationLog log;
  private final CurveFit fit;
  private final Component acid;

  private WeakAcidCurve(TitrationLog log, CurveFit fit, Component acid) {
    this.log = log;
    this.fit = fit;
    this.acid = acid;
  }

  /**
   * Analyses a curve.
   *
   * @param log the readings, with alkali, at best from before half the equivalence volume to beyond
   *     it
   * @param chemistry the chemistry; the pKa found holds under it, and of its constants only the ion
   *     product of water counts
   * @return the analysis
   * @throws IllegalArgumentException if the titrant is an acid or the readings do not determine the
   *     curve
   */
  public static WeakAcidCurve of(TitrationLog log, Chemistry chemistry) {
    TitrationSetup titration = log.titration();
    if (!titration.titrant().substance().isAlkali()) {
      throw new IllegalArgumentException(
          "log: " + titration.titrant() + " titrates no acid; an alkali is needed");
    }
    double start = startOfPKa(log);
    Component acid = Component.group("weak acid", -1, start);
    Solution sample = Solution.at(titration.temperature()).under(chemistry);
    CurveFit fit =
        CurveFit.of(sample, titration.titrant().solution(titration.temperature()))
            .unknownTotal(acid)
            .unknownPKa(acid, start)
            .to(log);
    return new WeakAcidCurve(log, fit, acid);
  }

  /** The pH half way to the steepest step. */
  private static double startOfPKa(TitrationLog log) {
    double half =
        InflectionSearch.find(
                    log.ascendingMillilitres(),
                    log.ascendingPH(),
                    Double.NEGATIVE_INFINITY,
                    Double.POSITIVE_INFINITY,
                    log.titration().apparatus().endPointReading())
                .millilitres()
            / 2;
    double nearest = Double.POSITIVE_INFINITY;
    double start = 0;
    for (Reading reading : log.readings()) {
      double distance = Math.abs(reading.volume().inMillilitres() - half);
      if (distance < nearest) {
        nearest = distance;
        start = reading.pH().value();
      }
    }
    return start;
  }

  /**
   * Returns the volume of titrant that neutralises the acid.
   *
   * @return the equivalence volume, with the uncertainty that the scatter of the readings gives it
   */
  public Answer<Volume> equivalenceVolume() {
    return Answer.of(TitrationFigures.EQUIVALENCE_VOLUME, this);
  }

  /**
   * Returns the concentration of the acid.
   *
   * @return mol/L in the undiluted sample, with the uncertainty that the scatter of the readings
   *     and the titrant give it
   */
  public Answer<AmountConcentration> concentration() {
    return Answer.of(TitrationFigures.WEAK_ACID_CONCENTRATION, this);
  }

  @Override
  public Step step(Figure<?> figure) {
    TitrationSetup titration = log.titration();
    Traced titrant = titration.titrant().equivalentsPerLitre();
    double initial = titration.initialVolume().inMillilitres();
    if (figure.equals(TitrationFigures.EQUIVALENCE_VOLUME)) {
      return times(
          figure, initial / titrant.value(), "volume under the burette / titrant", List.of());
    }
    return figure.equals(TitrationFigures.WEAK_ACID_CONCENTRATION)
        ? times(
            figure,
            initial / titration.undilutedSample().inMillilitres(),
            "volume under the burette / undiluted sample",
            List.of(titration.titrant().step(TitrationFigures.TITRANT_CONCENTRATION)))
        : fit.step(figure);
  }

  /** The fitted total per litre times a factor; it grows in proportion with the titrants named. */
  private Step times(Figure<?> figure, double factor, String text, List<Step> titrants) {
    Step total = fit.step(TitrationFigures.fittedTotal(acid));
    double perLitre = fit.solution().kilogramsPerLitre();
    Traced found = total.found().orElseThrow().times(perLitre * factor);
    double value = found.value();
    List<Step> inputs = new ArrayList<>(List.of(total));
    for (Step titrant : titrants) {
      Traced concentration = titrant.found().orElseThrow();
      Traced unity = concentration.times(1 / concentration.value());
      found = found.times(unity).withValue(value);
      inputs.add(titrant);
    }
    return Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA)
        .origin(Origin.MEASURED)
        .text("fitted total x kg of water per litre x " + text, "")
        .inputs(inputs)
        .detail(
            () ->
                new Step.Detail(
                    List.of(),
                    factor * perLitre * total.found().orElseThrow().value() - value,
                    1e-12 * Math.abs(value)))
        .found(found);
  }

  @Override
  public String kind() {
    return "fitted curve";
  }

  /**
   * Returns the pKa.
   *
   * @return the pKa under the chemistry of the analysis, with the uncertainty that the scatter of
   *     the readings gives it
   */
  public Answer<Double> pKa() {
    return fit.pKa(acid);
  }

  /**
   * Returns the fit behind the analysis.
   *
   * @return the fit
   */
  public CurveFit fit() {
    return fit;
  }

  /** Prints equivalence volume and pKa. */
  @Override
  public String toString() {
    return "equivalence volume " + equivalenceVolume() + "; pKa " + pKa();
  }
}
