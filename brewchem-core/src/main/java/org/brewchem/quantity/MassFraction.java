package org.brewchem.quantity;

import org.brewchem.internal.Checks;

/** A mass fraction: mass of a part over mass of the whole, held as a plain fraction from 0 to 1. */
public final class MassFraction extends ScalarValue<MassFraction> {

  private static final String NAME = "mass fraction";

  private MassFraction(double fraction) {
    super(Checks.inRange(NAME, fraction, "", 0, 1));
  }

  /**
   * Returns a mass fraction stated as a plain number: 0.88 for lactic acid of 88 % by mass.
   *
   * @param fraction the fraction, 0 to 1
   * @return the mass fraction
   * @throws IllegalArgumentException if the number is not from 0 to 1
   */
  public static MassFraction of(double fraction) {
    return new MassFraction(fraction);
  }

  /**
   * Returns a mass fraction stated in per cent by mass: 88 for lactic acid of 88 % by mass.
   *
   * @param massPercent the per cent by mass, 0 to 100
   * @return the mass fraction
   * @throws IllegalArgumentException if the number is not from 0 to 100
   */
  public static MassFraction ofMassPercent(double massPercent) {
    return new MassFraction(Checks.inRange(NAME, massPercent, "% by mass", 0, 100) / 100);
  }

  /**
   * Returns the fraction that a part makes up of a whole.
   *
   * @param part the mass of the part
   * @param whole the mass of the whole, above 0 and at least that of the part
   * @return part / whole
   * @throws IllegalArgumentException if the whole is 0 or less than the part
   */
  public static MassFraction from(Mass part, Mass whole) {
    return of(part.inGrams() / Checks.positive("whole", whole.inGrams(), "g"));
  }

  /**
   * Returns the mass fraction as a plain number.
   *
   * @return the fraction, 0 to 1
   */
  public double fraction() {
    return value;
  }

  /**
   * Returns the mass fraction in per cent by mass.
   *
   * @return the per cent by mass, 0 to 100
   */
  public double inMassPercent() {
    return value * 100;
  }

  /**
   * Returns the mass of the part in a mass of the whole.
   *
   * @param whole the mass of the whole
   * @return fraction x mass
   */
  public Mass times(Mass whole) {
    return Mass.ofGrams(value * whole.inGrams());
  }

  /**
   * Returns the mass of the part per volume of the whole.
   *
   * @param whole the density of the whole
   * @return fraction x density
   */
  public MassConcentration times(Density whole) {
    return MassConcentration.ofGramsPerLitre(value * whole.inKilogramsPerCubicMetre());
  }

  @Override
  public String toString() {
    return text(inMassPercent(), "% by mass");
  }
}
