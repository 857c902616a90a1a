package org.brewchem.examples;

import static org.brewchem.quantity.Quantities.alkalinityAsCaCO3;
import static org.brewchem.quantity.Quantities.hardnessAsCaCO3;
import static org.brewchem.quantity.Quantities.mgPerL;

import java.util.Locale;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.TitrationAlkalinity;

/** Prints the hardness and alkalinity of an invented water in the units of the trade. */
public final class BreweryReport {

  private BreweryReport() {}

  /**
   * Prints the report to standard output.
   *
   * @param arguments none are used
   */
  public static void main(String[] arguments) {
    Hardness hardness = hardnessAsCaCO3(mgPerL(275));
    TitrationAlkalinity alkalinity = alkalinityAsCaCO3(mgPerL(215));
    System.out.printf(
        Locale.ROOT,
        "hardness    %5.2f mmol/L  %5.1f °dH%nalkalinity  %5.2f mEq/L   %5.1f °dH%n",
        hardness.inMillimolesPerLitre(),
        hardness.inGermanDegrees(),
        alkalinity.inMilliequivalentsPerLitre(),
        alkalinity.inGermanDegrees());
  }
}
