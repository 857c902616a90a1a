package org.brewchem.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.Volume;
import org.jspecify.annotations.Nullable;

/**
 * What a brewery has at hand: the items that a plan may use, and how finely its scale, its pipette
 * and its water meter measure. Immutable.
 */
public final class Shelf {

  private final List<ShelfItem> items;
  private final OptionalDouble grams;
  private final OptionalDouble millilitres;
  private final OptionalDouble litres;

  private Shelf(
      List<ShelfItem> items,
      OptionalDouble grams,
      OptionalDouble millilitres,
      OptionalDouble litres) {
    this.items = List.copyOf(items);
    this.grams = grams;
    this.millilitres = millilitres;
    this.litres = litres;
  }

  /**
   * Returns a shelf of items.
   *
   * @param items the items, each name once
   * @return the shelf, without a scale, a pipette or a meter
   * @throws IllegalArgumentException if two items have one name
   */
  public static Shelf of(ShelfItem... items) {
    Shelf shelf =
        new Shelf(
            List.of(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    for (ShelfItem item : items.clone()) {
      shelf = shelf.with(item);
    }
    return shelf;
  }

  /**
   * Adds an item.
   *
   * @param item the item
   * @return the shelf with it
   * @throws IllegalArgumentException if an item of that name stands there already
   */
  public Shelf with(ShelfItem item) {
    Objects.requireNonNull(item, "item");
    if (items.stream().anyMatch(other -> other.name().equals(item.name()))) {
      throw new IllegalArgumentException(
          "item: " + item.name() + " stands on the shelf already; state it once");
    }
    List<ShelfItem> more = new ArrayList<>(items);
    more.add(item);
    return new Shelf(more, grams, millilitres, litres);
  }

  /**
   * States what the scale resolves.
   *
   * @param step the least step, above 0
   * @return the shelf with that scale
   * @throws IllegalArgumentException if the step is 0
   */
  public Shelf weighingTo(Mass step) {
    double checked = Checks.positive("resolution of the scale", step.inGrams(), "g");
    return new Shelf(items, OptionalDouble.of(checked), millilitres, litres);
  }

  /**
   * States what the pipette or measuring cylinder resolves.
   *
   * @param step the least step, above 0
   * @return the shelf with that pipette
   * @throws IllegalArgumentException if the step is 0
   */
  public Shelf pipettingTo(Volume step) {
    double checked = Checks.positive("resolution of the pipette", step.inMillilitres(), "mL");
    return new Shelf(items, grams, OptionalDouble.of(checked), litres);
  }

  /**
   * States what the water meter resolves; volumes of water count as exact without it.
   *
   * @param step the least step, above 0
   * @return the shelf with that meter
   * @throws IllegalArgumentException if the step is 0
   */
  public Shelf meteringWaterTo(Volume step) {
    double checked = Checks.positive("resolution of the water meter", step.inLitres(), "L");
    return new Shelf(items, grams, millilitres, OptionalDouble.of(checked));
  }

  /**
   * Returns the items.
   *
   * @return an unmodifiable list, in the order in which they were added
   */
  public List<ShelfItem> items() {
    return items;
  }

  /** The step of an item, in g, mL or L; empty where nothing says how it is measured. */
  OptionalDouble resolution(ShelfItem item) {
    if (item.resolution().isPresent()) {
      return item.resolution();
    }
    return switch (item.kind()) {
      case WEIGHED -> grams;
      case POURED -> millilitres;
      case WATER -> litres;
    };
  }

  /** The step of a water that comes from a source, in L. */
  OptionalDouble waterResolution() {
    return litres;
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Shelf other
        && items.equals(other.items)
        && grams.equals(other.grams)
        && millilitres.equals(other.millilitres)
        && litres.equals(other.litres);
  }

  @Override
  public int hashCode() {
    return Objects.hash(items, grams, millilitres, litres);
  }

  @Override
  public String toString() {
    return items.stream().map(ShelfItem::toString).collect(Collectors.joining("\n"));
  }
}
