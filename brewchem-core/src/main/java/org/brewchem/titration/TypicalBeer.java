package org.brewchem.titration;

import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;

/**
 * What an ordinary beer holds, as far as is published: what is believed of a beer's buffer before
 * anything of it is measured.
 *
 * <p>The organic acids are the means of Montanari, Perretti, Natella, Guidi and Fantozzi, LWT 32
 * (1999) 535, rounded to 0.1 mmol/L. Phosphate, calcium and magnesium are from memory; the lumped
 * groups of protein and amino acids are our own choice of pKa and amount.
 */
public final class TypicalBeer {

  /** Carboxyl groups of peptides and amino acids. */
  public static final Component CARBOXYL = Component.group("carboxyl groups", -1, 4.3);

  /** Imidazole groups of histidine. */
  public static final Component IMIDAZOLE = Component.group("imidazole groups", 0, 6.1);

  /** Amino groups at the end of peptides. */
  public static final Component AMINO_OF_PEPTIDES =
      Component.group("amino groups of peptides", 0, 7.5);

  /** Amino groups of free amino acids. */
  public static final Component AMINO_OF_AMINO_ACIDS =
      Component.group("amino groups of amino acids", 0, 9.0);

  /** Calcium assumed where it was not measured, mmol/L (about 60 mg/L; from memory). */
  public static final double CALCIUM_MILLIMOLES_PER_LITRE = 1.5;

  /** Magnesium assumed where it was not measured, mmol/L (about 85 mg/L; from memory). */
  public static final double MAGNESIUM_MILLIMOLES_PER_LITRE = 3.5;

  private TypicalBeer() {}

  /**
   * Returns the acids of known identity.
   *
   * @param temperature 0 to 100 °C
   * @return a solution of them, its strong-ion difference open
   */
  public static Solution namedAcids(Temperature temperature) {
    return Solution.at(temperature)
        .with(Acid.PHOSPHORIC, millimolesPerLitre(6))
        .with(Acid.LACTIC, millimolesPerLitre(1.4))
        .with(Acid.CITRIC, millimolesPerLitre(0.6))
        .with(Acid.ACETIC, millimolesPerLitre(1.8))
        .with(Acid.SUCCINIC, millimolesPerLitre(0.6))
        .with(Acid.MALIC, millimolesPerLitre(0.5))
        .with(Acid.PYRUVIC, millimolesPerLitre(0.5));
  }

  /**
   * Returns the lumped groups.
   *
   * @param temperature 0 to 100 °C
   * @param factor multiple of the usual amount, 0 or more
   * @return a solution of them, its strong-ion difference open
   */
  public static Solution lumpedGroups(Temperature temperature, double factor) {
    return Solution.at(temperature)
        .with(CARBOXYL, millimolesPerLitre(6 * factor))
        .with(IMIDAZOLE, millimolesPerLitre(1.5 * factor))
        .with(AMINO_OF_PEPTIDES, millimolesPerLitre(1.5 * factor))
        .with(AMINO_OF_AMINO_ACIDS, millimolesPerLitre(1.5 * factor));
  }

  private static AmountConcentration millimolesPerLitre(double value) {
    return AmountConcentration.ofMillimolesPerLitre(value);
  }
}
