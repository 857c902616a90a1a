package org.brewchem.water;

import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.substance.Ion;

/** From the milligrams of an ion to its milliequivalents. */
final class Equivalents {

  private Equivalents() {}

  static AmountConcentration amount(Ion ion, MassConcentration concentration) {
    return AmountConcentration.from(concentration, ion.molarMass());
  }

  /** Returns the equivalents as a positive number, mEq/L, for cations and anions alike. */
  static double of(Ion ion, MassConcentration concentration) {
    return Math.abs(ion.charge()) * amount(ion, concentration).inMillimolesPerLitre();
  }
}
