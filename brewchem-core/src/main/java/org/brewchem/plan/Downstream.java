package org.brewchem.plan;

import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.brewchem.internal.Checks;
import org.brewchem.solution.Liquid;
import org.brewchem.water.Water;
import org.jspecify.annotations.Nullable;

/**
 * A liquid that is made of a plan's water, such as a mash, whose figures the plan may constrain.
 * Immutable, if its function is.
 */
public final class Downstream {

  private final String name;
  private final @Nullable String portion;
  private final Function<Water, ? extends Liquid> making;

  private Downstream(
      String name, @Nullable String portion, Function<Water, ? extends Liquid> making) {
    this.name = Checks.notBlank("name of the liquid", name);
    this.portion = portion;
    this.making = Objects.requireNonNull(making, "making");
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
    return new Downstream(name, null, making);
  }

  /**
   * Returns the same liquid, made of one portion.
   *
   * @param portion the name of the portion
   * @return the liquid downstream
   * @throws IllegalArgumentException if the name is blank
   */
  public Downstream madeOf(String portion) {
    return new Downstream(name, Checks.notBlank("name of the portion", portion), making);
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

  /** Makes the liquid. */
  Liquid of(Water water) {
    return making.apply(water);
  }

  @Override
  public String toString() {
    return name + (portion == null ? "" : " of " + portion);
  }
}
