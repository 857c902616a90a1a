package org.brewchem.titration;

import java.util.Locale;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.EffectiveEquivalents;
import org.brewchem.substance.Acid;

/**
 * What carbon dioxide left in a sample adds to its titratable acidity: always more, never less. It
 * is computed from the dissociation of carbonic acid between the pH of the sample and the end
 * point, at zero ionic strength and with none of the gas lost on the way. Immutable.
 */
public final class CarbonDioxideResidue {

  private final MassConcentration residue;
  private final double equivalentsPerMole;
  private final PH endPoint;

  private CarbonDioxideResidue(MassConcentration residue, double equivalentsPerMole, PH endPoint) {
    this.residue = residue;
    this.equivalentsPerMole = equivalentsPerMole;
    this.endPoint = endPoint;
  }

  /**
   * Computes what a residue adds.
   *
   * @param residue the carbon dioxide left in the sample
   * @param sample the pH of the sample
   * @param endPoint the pH that the titration ends at
   * @param temperature the temperature of the titration, 0 to 100 °C
   * @return the bias
   */
  public static CarbonDioxideResidue of(
      MassConcentration residue, PH sample, PH endPoint, Temperature temperature) {
    double equivalents =
        EffectiveEquivalents.of(Acid.CARBONIC, temperature, Chemistry.standard())
            .between(sample, endPoint);
    return new CarbonDioxideResidue(residue, equivalents, endPoint);
  }

  /** The residue that would explain an acidity. */
  static MassConcentration explaining(
      double milliequivalentsPerLitre, PH sample, PH endPoint, Temperature temperature) {
    MassConcentration one = MassConcentration.ofGramsPerLitre(1);
    double perGram = of(one, sample, endPoint, temperature).bias().inMilliequivalentsPerLitre();
    return one.times(milliequivalentsPerLitre / perGram);
  }

  /**
   * Returns the residue.
   *
   * @return the carbon dioxide left
   */
  public MassConcentration residue() {
    return residue;
  }

  /**
   * Returns the protons that a mole of carbon dioxide gives off up to the end point.
   *
   * @return Eq/mol
   */
  public double equivalentsPerMole() {
    return equivalentsPerMole;
  }

  /**
   * Returns what the residue adds to the acidity: measured minus true.
   *
   * @return the bias, positive
   */
  public TitratableAcidity bias() {
    double millimoles =
        AmountConcentration.from(residue, Acid.CARBONIC.molarMass()).inMillimolesPerLitre();
    return TitratableAcidity.ofMilliequivalentsPerLitre(millimoles * equivalentsPerMole, endPoint);
  }

  /** Prints the residue and the bias, in mEq/L and as lactic acid. */
  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%s of CO2 left adds %.3g mEq/L, %.3g g/L as lactic acid, to %s",
        residue,
        bias().inMilliequivalentsPerLitre(),
        bias().inGramsPerLitreAs(Acid.LACTIC),
        endPoint);
  }
}
