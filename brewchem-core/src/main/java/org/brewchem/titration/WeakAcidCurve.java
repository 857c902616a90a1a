package org.brewchem.titration;

import java.util.List;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.UncertainValue;

/**
 * The titration curve of one weak monoprotic acid in water, analysed: where its equivalence point
 * lies and what its pKa is, by a fit of the whole curve ({@link CurveFit}). Immutable.
 */
public final class WeakAcidCurve {

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
    SampleTitration titration = log.titration();
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
    double half = CurveShape.of(log).inflectionMillilitres() / 2;
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
   * @return the equivalence volume in mL, with the uncertainty that the scatter of the readings
   *     gives it
   */
  public UncertainValue equivalenceVolume() {
    SampleTitration titration = log.titration();
    double perMole =
        titration.initialVolume().inMillilitres()
            / titration.titrant().equivalentsPerLitre().value();
    return molesPerLitreUnderTheBurette().times(perMole, "mL");
  }

  /**
   * Returns the concentration of the acid.
   *
   * @return mol/L in the undiluted sample, with the uncertainty that the scatter of the readings
   *     gives it
   */
  public UncertainValue concentration() {
    SampleTitration titration = log.titration();
    double dilution = titration.initialVolume().inLitres() / titration.undilutedSample().inLitres();
    return molesPerLitreUnderTheBurette().times(dilution, "mol/L");
  }

  private UncertainValue molesPerLitreUnderTheBurette() {
    return fit.total(acid).times(fit.solution().kilogramsPerLitre(), "mol/L");
  }

  /**
   * Returns the pKa.
   *
   * @return the pKa under the chemistry of the analysis, with the uncertainty that the scatter of
   *     the readings gives it
   */
  public UncertainValue pKa() {
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

  /**
   * Names the reading that does not belong to the curve.
   *
   * @return an unmodifiable list, empty when all readings belong to it
   */
  public List<Finding> findings() {
    return fit.findings();
  }

  /** Prints equivalence volume and pKa. */
  @Override
  public String toString() {
    return "equivalence volume " + equivalenceVolume() + "; pKa " + pKa();
  }
}
