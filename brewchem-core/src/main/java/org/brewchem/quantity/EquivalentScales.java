package org.brewchem.quantity;

import org.brewchem.internal.ReferenceMolarMasses;

/**
 * What one mEq/L, or one degree, is in the units that alkalinity and hardness are reported in. Each
 * factor follows from its definition: 1 German degree is 10 mg/L of CaO, 1 French degree 10 mg/L of
 * CaCO3, 1 English degree 1 grain of CaCO3 in an imperial gallon, and 1 US grain per gallon 1 grain
 * of CaCO3 in a US gallon. The grain (64.79891 mg) and both gallons (4.54609 L, 3.785411784 L) are
 * exact.
 */
final class EquivalentScales {

  static final double MILLIGRAMS_OF_CACO3 = ReferenceMolarMasses.CALCIUM_CARBONATE / 2;
  static final double MILLIGRAMS_OF_BICARBONATE = ReferenceMolarMasses.BICARBONATE;

  static final double GERMAN_DEGREE = 10 / (ReferenceMolarMasses.CALCIUM_OXIDE / 2);
  static final double FRENCH_DEGREE = 10 / MILLIGRAMS_OF_CACO3;
  static final double ENGLISH_DEGREE =
      Mass.MILLIGRAMS_PER_GRAIN / Volume.LITRES_PER_IMPERIAL_GALLON / MILLIGRAMS_OF_CACO3;
  static final double US_GRAIN_PER_GALLON =
      Mass.MILLIGRAMS_PER_GRAIN / Volume.LITRES_PER_US_GALLON / MILLIGRAMS_OF_CACO3;

  private EquivalentScales() {}
}
