package org.brewchem.plan;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.brewchem.beer.Beer;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Mash;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Liquid;
import org.brewchem.treatment.Treatments;
import org.brewchem.water.Water;
import org.jspecify.annotations.Nullable;

/**
 * A liquid that is made of a plan's water, such as a mash, whose figures the plan may constrain.
 * Immutable, if its function is.
 */
public final class Downstream {

  private static final double ROUNDING = 1e-9;

  private final String name;
  private final @Nullable String portion;
  private final BiFunction<Water, Volume, ? extends Liquid> making;
  private final Kind kind;

  /** Litres of the liquor of a mash, or of the beer in a tank; 0 where none is stated. */
  private final double litres;

  /** What is known of a liquid downstream beyond how it is made. */
  private enum Kind {
    MASH,
    BEER,
    OTHER
  }

  private Downstream(
      String name,
      @Nullable String portion,
      BiFunction<Water, Volume, ? extends Liquid> making,
      Kind kind,
      double litres) {
    this.litres = litres;
    this.name = Checks.notBlank("name of the liquid", name);
    this.portion = portion;
    this.making = Objects.requireNonNull(making, "making");
    this.kind = kind;
  }

  /**
   * Returns a liquid that is made of all portions mixed.
   *
   * @param name its name, such as "mash"
   * @param making makes it of a treated water: always the same of the same, and asked very often
   * @return the liquid downstream
   * @throws IllegalArgumentException if the name is blank
   */
  public static Downstream of(String name, Function<Water, ? extends Liquid> making) {
    Objects.requireNonNull(making, "making");
    return new Downstream(name, null, (water, volume) -> making.apply(water), Kind.OTHER, 0);
  }

  /**
   * Returns a mash of which the carbon dioxide leaves, its liquor the water of all portions mixed.
   *
   * @param name its name, such as "mash"
   * @param grist the grist
   * @param volume of the liquor, above 0 and no more than the water that it is made of, as poured:
   *     what doses make it grow counts in the water alone
   * @return the mash downstream; {@link #madeOf} says of which portion
   * @throws IllegalArgumentException if the name is blank or the volume is 0
   */
  public static Downstream mash(String name, Grist grist, Volume volume) {
    requireMash(grist, volume);
    return new Downstream(
        name, null, (water, made) -> Mash.of(grist, water, volume), Kind.MASH, volume.inLitres());
  }

  /**
   * Returns a mash of which the carbon dioxide stays, its liquor the water of all portions mixed.
   *
   * @param name its name, such as "mash"
   * @param grist the grist
   * @param volume of the liquor, above 0, as for {@link #mash}
   * @return the mash downstream; {@link #madeOf} says of which portion
   * @throws IllegalArgumentException if the name is blank or the volume is 0
   */
  public static Downstream mashKeepingCarbonDioxide(String name, Grist grist, Volume volume) {
    requireMash(grist, volume);
    return new Downstream(
        name,
        null,
        (water, made) -> Mash.of(grist, water, volume).keepingCarbonDioxide(),
        Kind.MASH,
        volume.inLitres());
  }

  /**
   * Returns the beer of a tank after all portions mixed were added to it: the doses go into the
   * water first, as a stock, and the whole stock into the tank. The shelf may hold only what may go
   * into beer.
   *
   * @param name its name, such as "tank 3"
   * @param beer the beer
   * @param inTank how much beer is in the tank, above 0
   * @return the beer downstream; {@link #madeOf} says of which portion
   * @throws IllegalArgumentException if the name is blank or the volume is 0
   */
  public static Downstream beer(String name, Beer beer, Volume inTank) {
    Objects.requireNonNull(beer, "beer");
    Checks.positive("volume in the tank", inTank.inLitres(), "L");
    return new Downstream(
        name,
        null,
        (water, stock) -> beer.after(Treatments.blend(inTank, water, stock)),
        Kind.BEER,
        inTank.inLitres());
  }

  private static void requireMash(Grist grist, Volume volume) {
    Objects.requireNonNull(grist, "grist");
    Checks.positive("volume of the liquor", volume.inLitres(), "L");
  }

  /**
   * Returns the same liquid, made of one portion.
   *
   * @param portion the name of the portion
   * @return the liquid downstream
   * @throws IllegalArgumentException if the name is blank
   */
  public Downstream madeOf(String portion) {
    return new Downstream(
        name, Checks.notBlank("name of the portion", portion), making, kind, litres);
  }

  /**
   * Returns the name.
   *
   * @return the name of the liquid
   */
  public String name() {
    return name;
  }

  /**
   * Returns the portion that it is made of.
   *
   * @return the name of the portion; empty for all of them mixed
   */
  public Optional<String> portion() {
    return Optional.ofNullable(portion);
  }

  /** Whether it is a mash whose liquor is the water as it is. */
  boolean isMash() {
    return kind == Kind.MASH;
  }

  /** Litres of water that it takes as a mash; 0 for what is none. */
  double litresOfLiquor() {
    return isMash() ? litres : 0;
  }

  /** Whether people drink it as it is. */
  boolean isBeer() {
    return kind == Kind.BEER;
  }

  /** Whether a portion goes into it. */
  boolean isMadeOf(WaterPortion one) {
    return portion == null || portion.equals(one.name());
  }

  /** Litres of beer that the water goes into; 0 where it goes into none. */
  double litresOfBeer() {
    return isBeer() ? litres : 0;
  }

  /** Refuses a mash that takes more water than there is of its portion, or of all together. */
  void requireWater(List<WaterPortion> portions) {
    double there =
        portions.stream().filter(this::isMadeOf).mapToDouble(one -> one.volume().inLitres()).sum();
    if (isMash() && litres > there * (1 + ROUNDING)) {
      throw new IllegalArgumentException(
          "volume of the liquor of "
              + Excerpt.of(toString())
              + ": "
              + NumberText.plain(litres)
              + " L is not possible; at most the "
              + NumberText.plain(there)
              + " L that the plan has of its water");
    }
  }

  /** Makes the liquid of so much water. */
  Liquid of(Water water, Volume volume) {
    return making.apply(water, volume);
  }

  @Override
  public String toString() {
    return name + (portion == null ? "" : " of " + portion);
  }
}
