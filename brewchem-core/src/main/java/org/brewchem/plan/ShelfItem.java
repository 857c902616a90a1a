package org.brewchem.plan;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Scale;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.water.Water;
import org.jspecify.annotations.Nullable;

/**
 * Something on the shelf that a plan may use: a salt, an acid or a base as bought, or a water to
 * dilute with; its price, how much of it is to be used at least and at most, and how finely it can
 * be measured out. Immutable.
 *
 * <p>An acid or a base with a density is measured out by volume, anything else is weighed; {@link
 * #weighed()} has a liquid weighed too. Least and most count over the whole plan, all portions
 * together.
 */
public final class ShelfItem {

  /** How an item is measured out. */
  enum Kind {
    WEIGHED("g", 1),
    POURED("mL", 2),
    WATER("L", 1);

    private static final int MOST_DECIMALS = 6;

    final String unit;
    final int decimals;

    Kind(String unit, int decimals) {
      this.unit = unit;
      this.decimals = decimals;
    }

    boolean byVolume() {
      return this != WEIGHED;
    }

    /** An amount in words. */
    String text(double amount) {
      return Scale.number(unit, decimals).text(amount);
    }

    /** An amount in words, to a step of the scale or, where there is none, to three digits. */
    String text(double amount, double step) {
      int needed =
          step > 0
              ? Math.min(
                  NumberText.withoutLastBits(step).scale(), 2 - (int) Math.floor(Math.log10(step)))
              : amount > 0 ? 2 - (int) Math.floor(Math.log10(amount)) : 0;
      return Scale.number(unit, Math.max(decimals, Math.min(needed, MOST_DECIMALS))).text(amount);
    }
  }

  private final String name;
  private final Kind kind;
  private final @Nullable Compound compound;
  private final @Nullable Reagent reagent;
  private final @Nullable Water water;
  private final OptionalDouble price;
  private final double least;
  private final double most;
  private final OptionalDouble resolution;

  private ShelfItem(
      String name,
      Kind kind,
      @Nullable Compound compound,
      @Nullable Reagent reagent,
      @Nullable Water water,
      OptionalDouble price,
      double least,
      double most,
      OptionalDouble resolution) {
    this.name = Checks.notBlank("name of the item", name);
    this.kind = kind;
    this.compound = compound;
    this.reagent = reagent;
    this.water = water;
    this.price = price;
    this.least = least;
    this.most = most;
    this.resolution = resolution;
    if (least > most) {
      throw new IllegalArgumentException(
          name + ": at least " + text(least) + " and at most " + text(most) + " is not possible");
    }
  }

  /**
   * Returns an item of a reagent as bought.
   *
   * @param reagent the salt, acid or base with the strength of its label
   * @return the item, without price or limits
   */
  public static ShelfItem of(Reagent reagent) {
    return new ShelfItem(
        reagent.toString(),
        isPoured(reagent) ? Kind.POURED : Kind.WEIGHED,
        reagent.compound(),
        reagent,
        null,
        OptionalDouble.empty(),
        0,
        Double.POSITIVE_INFINITY,
        OptionalDouble.empty());
  }

  private static boolean isPoured(Reagent reagent) {
    return reagent.density().isPresent()
        && (reagent.compound() instanceof Acid || reagent.compound() instanceof Base);
  }

  /**
   * Returns an item whose strength is not stated yet. A plan refuses it by name until {@link
   * #withStrength} states it: 100 % is a strength, too.
   *
   * @param compound the salt, acid or base
   * @return the item, without strength, price or limits
   */
  public static ShelfItem of(Compound compound) {
    return new ShelfItem(
        compound.name(),
        Kind.WEIGHED,
        compound,
        null,
        null,
        OptionalDouble.empty(),
        0,
        Double.POSITIVE_INFINITY,
        OptionalDouble.empty());
  }

  /**
   * Returns a water to dilute with, such as one from reverse osmosis.
   *
   * @param name what it is called on the page of the plan
   * @param water the water
   * @return the item, without price or limits
   * @throws IllegalArgumentException if the name is blank
   */
  public static ShelfItem diluent(String name, Water water) {
    return new ShelfItem(
        name,
        Kind.WATER,
        null,
        null,
        Objects.requireNonNull(water, "water"),
        OptionalDouble.empty(),
        0,
        Double.POSITIVE_INFINITY,
        OptionalDouble.empty());
  }

  /**
   * States the strength that the label gives.
   *
   * @param assay mass of the compound in the mass of the item, more than 0
   * @return the item with that strength and, where published tables give one, a density, by which
   *     it is poured
   * @throws IllegalArgumentException if the assay is 0, or the item is a water
   */
  public ShelfItem withStrength(MassFraction assay) {
    if (compound == null) {
      throw new IllegalArgumentException(name + ": a strength is not possible; it is a water");
    }
    ShelfItem bought = of(Reagent.of(compound, assay));
    if (kind == bought.kind || (least == 0 && Double.isInfinite(most) && resolution.isEmpty())) {
      return new ShelfItem(
          bought.name,
          bought.kind,
          compound,
          bought.reagent,
          null,
          priceIn(bought.kind, bought.kind == Kind.POURED ? bought.reagent : reagent),
          least,
          most,
          resolution);
    }
    throw new IllegalArgumentException(
        name
            + ": state its strength before its limits; with "
            + assay.inMassPercent()
            + " % by mass it is measured out by volume");
  }

  /**
   * Has a liquid weighed instead of measured out by volume. State it before limits, and after the
   * strength, which decides whether an acid or a base is a liquid.
   *
   * @return the item, weighed
   * @throws IllegalArgumentException if the item is a water, its limits are stated in volumes, or
   *     it is an acid or a base of which no strength is stated
   */
  public ShelfItem weighed() {
    if (reagent == null && (compound instanceof Acid || compound instanceof Base)) {
      throw new IllegalArgumentException(
          name
              + ": weighing is not possible before a strength is stated, by which it may be liquid");
    }
    if (kind == Kind.WATER || least > 0 || !Double.isInfinite(most) || resolution.isPresent()) {
      throw new IllegalArgumentException(
          name + ": weighing is not possible; a water is metered, and limits are stated after it");
    }
    return new ShelfItem(
        name,
        Kind.WEIGHED,
        compound,
        reagent,
        water,
        priceIn(Kind.WEIGHED, reagent),
        least,
        most,
        resolution);
  }

  /** The price of a gram where that of a millilitre is stated, or the other way round. */
  private OptionalDouble priceIn(Kind other, @Nullable Reagent liquid) {
    if (price.isEmpty() || kind == other || liquid == null) {
      return price;
    }
    double grams = liquid.massOf(Volume.ofMillilitres(1)).inGrams();
    return OptionalDouble.of(
        other == Kind.POURED ? price.getAsDouble() * grams : price.getAsDouble() / grams);
  }

  /**
   * States what a kilogram costs.
   *
   * @param price in the currency of all prices of the shelf, 0 or more
   * @return the item with its price
   * @throws IllegalArgumentException if the price is negative or the item is measured by volume
   */
  public ShelfItem pricedPerKilogram(double price) {
    return priced(price, Kind.WEIGHED, 1e-3);
  }

  /**
   * States what a litre costs.
   *
   * @param price in the currency of all prices of the shelf, 0 or more
   * @return the item with its price
   * @throws IllegalArgumentException if the price is negative or the item is weighed
   */
  public ShelfItem pricedPerLitre(double price) {
    return priced(price, Kind.POURED, kind == Kind.WATER ? 1 : 1e-3);
  }

  private ShelfItem priced(double given, Kind measured, double perUnit) {
    checkMeasured(measured.byVolume(), "a price");
    double checked = Checks.nonNegative("price of " + name, given, "");
    return new ShelfItem(
        name,
        kind,
        compound,
        reagent,
        water,
        OptionalDouble.of(checked * perUnit),
        least,
        most,
        resolution);
  }

  /**
   * States the least that is to be used, all portions together.
   *
   * @param mass the least
   * @return the item with that limit
   * @throws IllegalArgumentException if the item is not weighed, or has less at most
   */
  public ShelfItem atLeast(Mass mass) {
    checkMeasured(false, "a limit");
    return limited(mass.inGrams(), most);
  }

  /**
   * States the least that is to be used, all portions together.
   *
   * @param volume the least
   * @return the item with that limit
   * @throws IllegalArgumentException if the item is weighed, or has less at most
   */
  public ShelfItem atLeast(Volume volume) {
    checkMeasured(true, "a limit");
    return limited(units(volume), most);
  }

  /**
   * States the most that may be used, all portions together.
   *
   * @param mass the most
   * @return the item with that limit
   * @throws IllegalArgumentException if the item is not weighed, or has more at least
   */
  public ShelfItem atMost(Mass mass) {
    checkMeasured(false, "a limit");
    return limited(least, mass.inGrams());
  }

  /**
   * States the most that may be used, all portions together.
   *
   * @param volume the most
   * @return the item with that limit
   * @throws IllegalArgumentException if the item is weighed, or has more at least
   */
  public ShelfItem atMost(Volume volume) {
    checkMeasured(true, "a limit");
    return limited(least, units(volume));
  }

  private ShelfItem limited(double from, double to) {
    return new ShelfItem(name, kind, compound, reagent, water, price, from, to, resolution);
  }

  /**
   * States how finely the item is weighed, where that is not the scale of the shelf.
   *
   * @param mass the least step, above 0
   * @return the item with that resolution
   * @throws IllegalArgumentException if the step is 0 or the item is not weighed
   */
  public ShelfItem resolvedTo(Mass mass) {
    checkMeasured(false, "a resolution");
    return resolved(mass.inGrams());
  }

  /**
   * States how finely the item is measured out, where that is not the pipette or meter of the
   * shelf.
   *
   * @param volume the least step, above 0
   * @return the item with that resolution
   * @throws IllegalArgumentException if the step is 0 or the item is weighed
   */
  public ShelfItem resolvedTo(Volume volume) {
    checkMeasured(true, "a resolution");
    return resolved(units(volume));
  }

  private ShelfItem resolved(double step) {
    Checks.positive("resolution of " + name, step, kind.unit);
    return new ShelfItem(
        name, kind, compound, reagent, water, price, least, most, OptionalDouble.of(step));
  }

  private double units(Volume volume) {
    return kind == Kind.WATER ? volume.inLitres() : volume.inMillilitres();
  }

  private void checkMeasured(boolean byVolume, String what) {
    if (kind.byVolume() != byVolume) {
      throw new IllegalArgumentException(
          name
              + ": "
              + what
              + (byVolume ? " by volume" : " by mass")
              + " is not possible; it is "
              + (kind.byVolume() ? "measured out by volume" : "weighed"));
    }
  }

  /**
   * Returns the name.
   *
   * @return that of the reagent with its strength, or of the water
   */
  public String name() {
    return name;
  }

  /**
   * Returns the reagent.
   *
   * @return what is bought; empty for a water and while the strength is not stated
   */
  public Optional<Reagent> reagent() {
    return Optional.ofNullable(reagent);
  }

  /**
   * Returns the water.
   *
   * @return what is diluted with; empty for a reagent
   */
  public Optional<Water> water() {
    return Optional.ofNullable(water);
  }

  /**
   * Tells whether the item has a price.
   *
   * @return true if one was stated
   */
  public boolean isPriced() {
    return price.isPresent();
  }

  Kind kind() {
    return kind;
  }

  /** Price of a gram, a millilitre or, of a water, a litre. */
  OptionalDouble price() {
    return price;
  }

  /** Least over the whole plan, in g, mL or L. */
  double least() {
    return least;
  }

  /** Most over the whole plan, in g, mL or L; perhaps infinite. */
  double most() {
    return most;
  }

  /** The least step, in g, mL or L. */
  OptionalDouble resolution() {
    return resolution;
  }

  /** An amount in words. */
  String text(double amount) {
    return kind.text(amount);
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof ShelfItem other
        && name.equals(other.name)
        && kind == other.kind
        && Objects.equals(compound, other.compound)
        && Objects.equals(reagent, other.reagent)
        && Objects.equals(water, other.water)
        && price.equals(other.price)
        && Double.compare(least, other.least) == 0
        && Double.compare(most, other.most) == 0
        && resolution.equals(other.resolution);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, kind, price, least, most, resolution);
  }

  /** Returns the name, the limits and the resolution. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(name);
    if (least > 0) {
      text.append(", at least ").append(text(least));
    }
    if (!Double.isInfinite(most)) {
      text.append(", at most ").append(text(most));
    }
    resolution.ifPresent(
        step -> text.append(", to ").append(NumberText.plain(step)).append(' ').append(kind.unit));
    return text.toString();
  }
}
