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
  private final double equivalentsPerLitre;
  private final double[] millilitres;
  private final double[] pH;

  private BufferLeg(Volume sample, double equivalentsPerLitre, double[] millilitres, double[] pH) {
    sampleMillilitres = Checks.positive("sample", sample.inMillilitres(), "mL");
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
        sample, Checks.positive("alkali", alkali.inMolesPerLitre(), "mol/L"), millilitres, pH);
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
        sample, -Checks.positive("acid", acid.inMolesPerLitre(), "mol/L"), millilitres, pH);
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

  /** Titrant per volume of sample at a reading. */
  double titrant(int reading) {
    return millilitres[reading] / sampleMillilitres;
  }

  /** Strong base per litre of sample at a reading, eq/L; negative for acid. */
  double base(int reading) {
    return equivalentsPerLitre * titrant(reading);
  }

  /** Standard uncertainty of the base per litre of sample from that of a volume reading, eq/L. */
  double baseNoise(double millilitresNoise) {
    return Math.abs(equivalentsPerLitre) * millilitresNoise / sampleMillilitres;
  }
}
