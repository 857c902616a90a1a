package org.brewchem.titration;

import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Volume;

/**
 * One portion of a sample titrated in one direction: what was added, and the pH after each
 * addition. Immutable.
 *
 * <p>Adding alkali says nothing about the pH below the sample's own; adding strong acid to a second
 * portion does. A fit of both legs knows both sides.
 */
public final class BufferLeg {
  private final double sampleMillilitres;
  private final double waterMillilitres;
  private final double equivalentsPerLitre;
  private final double[] millilitres;
  private final double[] pH;

  private BufferLeg(
      Volume sample,
      double waterMillilitres,
      double equivalentsPerLitre,
      double[] millilitres,
      double[] pH) {
    sampleMillilitres = Checks.positive("sample", sample.inMillilitres(), "mL");
    this.waterMillilitres = waterMillilitres;
    this.equivalentsPerLitre = equivalentsPerLitre;
    if (millilitres.length != pH.length) {
      throw new IllegalArgumentException(
          "readings: "
              + millilitres.length
              + " volumes and "
              + pH.length
              + " pH values are not possible; one pH to each volume is needed");
    }
    this.millilitres = millilitres.clone();
    this.pH = pH.clone();
    for (int i = 0; i < pH.length; i++) {
      Checks.nonNegative("volume of reading " + (i + 1), millilitres[i], "mL");
      Checks.inRange("pH of reading " + (i + 1), pH[i], "", 0, 14);
    }
  }

  /**
   * Makes the leg upwards, with a strong univalent base.
   *
   * @param sample the portion titrated, more than 0
   * @param alkali the concentration of the base, more than 0
   * @param millilitres total volume added before each reading, mL, each 0 or more; 0 for the sample
   *     itself
   * @param pH the readings, 0 to 14, as many
   * @return the leg
   * @throws IllegalArgumentException if an argument is out of range or the lengths differ
   */
  public static BufferLeg withAlkali(
      Volume sample, AmountConcentration alkali, double[] millilitres, double[] pH) {
    return new BufferLeg(
        sample, 0, Checks.positive("alkali", alkali.inMolesPerLitre(), "mol/L"), millilitres, pH);
  }

  /**
   * Makes the leg downwards, with a strong univalent acid.
   *
   * @param sample the portion titrated, more than 0
   * @param acid the concentration of the acid, more than 0
   * @param millilitres total volume added before each reading, mL, each 0 or more
   * @param pH the readings, 0 to 14, as many
   * @return the leg
   * @throws IllegalArgumentException if an argument is out of range or the lengths differ
   */
  public static BufferLeg withAcid(
      Volume sample, AmountConcentration acid, double[] millilitres, double[] pH) {
    return new BufferLeg(
        sample, 0, -Checks.positive("acid", acid.inMolesPerLitre(), "mol/L"), millilitres, pH);
  }

  /**
   * Makes a leg of a log, its direction that of the titrant and its dilution with water counted. A
   * blank, which belongs to one end point, is not subtracted.
   *
   * @param log readings with a strong univalent alkali or acid
   * @return the leg
   * @throws IllegalArgumentException if the titrant is sulfuric acid, whose second proton is not
   *     all free at the low end of such a log, or a reading lies outside pH 0 to 14
   */
  public static BufferLeg from(TitrationLog log) {
    TitrationSetup titration = log.titration();
    TitrantSolution titrant = titration.titrant();
    if (titrant.substance().equivalentsPerMole() != 1) {
      throw new IllegalArgumentException(
          "titrant: " + titrant.substance() + " is not possible; a univalent one is needed");
    }
    double eq = titrant.equivalentsPerLitre().value();
    double[] millilitres = new double[log.readings().size()];
    double[] pH = new double[millilitres.length];
    for (int i = 0; i < pH.length; i++) {
      millilitres[i] = log.readings().get(i).volume().inMillilitres();
      pH[i] = log.readings().get(i).pH().value();
    }
    Volume own = titration.undilutedSample();
    return new BufferLeg(
        own,
        titration.initialVolume().minus(own).inMillilitres(),
        titrant.substance().isAlkali() ? eq : -eq,
        millilitres,
        pH);
  }

  /**
   * Returns how many readings there are.
   *
   * @return a count
   */
  public int size() {
    return pH.length;
  }

  /**
   * Returns a reading.
   *
   * @param reading its index from 0
   * @return the pH read
   */
  public double pH(int reading) {
    return pH[reading];
  }

  /** Titrant and water per volume of sample at a reading. */
  double dilution(int reading) {
    return (waterMillilitres + millilitres[reading]) / sampleMillilitres;
  }

  /** Strong base per litre of sample at a reading, Eq/L; negative for acid. */
  double base(int reading) {
    return equivalentsPerLitre * millilitres[reading] / sampleMillilitres;
  }

  /** Standard uncertainty of the base per litre of sample from that of a volume reading, Eq/L. */
  double baseNoise(double millilitresNoise) {
    return Math.abs(equivalentsPerLitre) * millilitresNoise / sampleMillilitres;
  }
}
