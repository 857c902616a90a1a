package org.brewchem.treatment;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.figure.Caution;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.Volume;

/**
 * What to measure out for a tank: the amount of the compound by the label, and the mass and the
 * volume of the reagent that hold it.
 *
 * @param amount the amount of the compound, for an acid assayed as total acid the total
 * @param mass the mass of the reagent
 * @param volume the volume of the reagent; empty for a powder, a pure compound, and a reagent whose
 *     density is not known
 * @param cautions what to mind in measuring it out
 */
public record Portion(
    AmountOfSubstance amount, Mass mass, Optional<Volume> volume, List<Caution> cautions) {

  /**
   * Makes a portion.
   *
   * @param amount the amount of the compound
   * @param mass the mass of the reagent
   * @param volume the volume of the reagent
   * @param cautions what to mind in measuring it out, which is copied
   */
  public Portion {
    Objects.requireNonNull(amount, "amount");
    Objects.requireNonNull(mass, "mass");
    Objects.requireNonNull(volume, "volume");
    cautions = List.copyOf(Objects.requireNonNull(cautions, "cautions"));
  }

  /** Prints the volume where there is one, the mass and the amount. */
  @Override
  public String toString() {
    return volume.map(poured -> poured + ", ").orElse("") + mass + ", " + amount;
  }
}
