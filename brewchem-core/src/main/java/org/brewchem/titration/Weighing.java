package org.brewchem.titration;

import org.brewchem.internal.Checks;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Base;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Element;
import org.brewchem.substance.Formula;
import org.brewchem.substance.Salt;

/**
 * One weighed portion of a primary standard and the volume of titrant that it took. Potassium
 * hydrogen phthalate (KHP) standardises alkali, sodium carbonate acid. Immutable.
 */
public final class Weighing {

  private static final double SQRT_3 = Math.sqrt(3);

  /** A primary standard: what is weighed and how many equivalents a mole of it has. */
  enum Standard {
    KHP("KHP", Salt.POTASSIUM_HYDROGEN_PHTHALATE, Salt.POTASSIUM_HYDROGEN_PHTHALATE.formula(), 1),
    SODIUM_CARBONATE(
        "Na2CO3",
        Base.SODIUM_CARBONATE,
        Base.SODIUM_CARBONATE.formula(),
        Base.SODIUM_CARBONATE.protonsByDefinition());

    final String label;
    final double gramsPerMole;
    final double uncertaintyOfGramsPerMole;
    final int equivalentsPerMole;

    Standard(String label, Compound compound, Formula formula, int equivalentsPerMole) {
      this.label = label;
      this.gramsPerMole = compound.molarMass().inGramsPerMole();
      this.equivalentsPerMole = equivalentsPerMole;
      double u = 0;
      for (var entry : formula.counts().entrySet()) {
        Element element = entry.getKey();
        u = Math.hypot(u, entry.getValue() * element.uncertaintyInGramsPerMole() / SQRT_3);
      }
      this.uncertaintyOfGramsPerMole = u;
    }

    boolean standardises(TitrantSubstance substance) {
      return substance.isAlkali() == (this == KHP);
    }
  }

  private final Standard standard;
  private final Mass mass;
  private final Volume titre;

  private Weighing(Standard standard, Mass mass, Volume titre) {
    this.standard = standard;
    this.mass = mass;
    this.titre = titre;
    Checks.positive("mass of " + standard.label, mass.inGrams(), "g");
    Checks.positive("titre of " + standard.label, titre.inMillilitres(), "mL");
  }

  /**
   * Returns a portion of potassium hydrogen phthalate, one equivalent a mole.
   *
   * @param mass the dried salt, above 0
   * @param titre the alkali that it took to the change of phenolphthalein or to pH 8.2 to 8.7, a
   *     blank already subtracted, above 0
   * @return the weighing
   * @throws IllegalArgumentException if mass or titre is not above 0
   */
  public static Weighing khp(Mass mass, Volume titre) {
    return new Weighing(Standard.KHP, mass, titre);
  }

  /**
   * Returns a portion of anhydrous sodium carbonate, two equivalents a mole.
   *
   * @param mass the dried salt, above 0
   * @param titre the acid that it took to the second end point, the carbon dioxide boiled off, a
   *     blank already subtracted, above 0
   * @return the weighing
   * @throws IllegalArgumentException if mass or titre is not above 0
   */
  public static Weighing sodiumCarbonate(Mass mass, Volume titre) {
    return new Weighing(Standard.SODIUM_CARBONATE, mass, titre);
  }

  /**
   * Returns the mass weighed.
   *
   * @return the mass
   */
  public Mass mass() {
    return mass;
  }

  /**
   * Returns the titrant that it took.
   *
   * @return the volume
   */
  public Volume titre() {
    return titre;
  }

  Standard standard() {
    return standard;
  }

  /** Equivalents per litre of titrant, for a standard that is pure. */
  double equivalentsPerLitre() {
    return mass.inGrams() / standard.gramsPerMole * standard.equivalentsPerMole / titre.inLitres();
  }

  /** Prints the standard, the mass and the titre. */
  @Override
  public String toString() {
    return standard.label + " " + mass + ", " + titre;
  }
}
