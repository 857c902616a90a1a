package org.brewchem.plan;

import java.util.Objects;
import java.util.Optional;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.Volume;

/**
 * What a plan has measured out for a portion: an amount of an item of the shelf, or of a water.
 *
 * @param portion the name of the portion
 * @param item the name of the item or water
 * @param mass its mass; empty for what is measured out by volume
 * @param volume its volume; empty for what is weighed
 * @param text portion, amount and name in words
 */
public record PlannedAmount(
    String portion, String item, Optional<Mass> mass, Optional<Volume> volume, String text) {
  /**
   * Makes an amount.
   *
   * @param portion the name of the portion
   * @param item the name of the item or water
   * @param mass its mass; empty for what is measured out by volume
   * @param volume its volume; empty for what is weighed
   * @param text portion, amount and name in words
   */
  public PlannedAmount {
    Objects.requireNonNull(portion, "portion");
    Objects.requireNonNull(item, "item");
    Objects.requireNonNull(mass, "mass");
    Objects.requireNonNull(volume, "volume");
    Objects.requireNonNull(text, "text");
  }

  static PlannedAmount of(Variables variables, int i, double value) {
    double amount = variables.amount(i, value);
    boolean water = variables.isWater(i);
    boolean weighed = !water && variables.dose(i).kind() == ShelfItem.Kind.WEIGHED;
    ShelfItem.Kind kind = water ? ShelfItem.Kind.WATER : variables.dose(i).kind();
    String shown = kind.text(amount, variables.amount(i, variables.step(i)));
    return new PlannedAmount(
        variables.portion(i).name(),
        variables.name(i),
        weighed ? Optional.of(Mass.ofGrams(amount)) : Optional.empty(),
        weighed
            ? Optional.empty()
            : Optional.of(water ? Volume.ofLitres(amount) : Volume.ofMillilitres(amount)),
        variables.portion(i).name() + ": " + shown + " of " + variables.name(i));
  }

  /** Prints portion, amount and name. */
  @Override
  public String toString() {
    return text;
  }
}
