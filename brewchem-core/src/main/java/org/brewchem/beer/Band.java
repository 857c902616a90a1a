package org.brewchem.beer;

import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.jspecify.annotations.Nullable;

/**
 * The band in which a figure shall lie: limits included, one of them possibly open. Immutable.
 *
 * @param <V> the type of the figure
 */
public final class Band<V extends Comparable<V>> {

  private final @Nullable V lower;
  private final @Nullable V upper;
  private final @Nullable V aim;

  private Band(@Nullable V lower, @Nullable V upper, @Nullable V aim) {
    if (lower != null && upper != null && lower.compareTo(upper) > 0) {
      throw new IllegalArgumentException(
          "lower limit: " + lower + " is not possible; at most the upper limit " + upper);
    }
    this.lower = lower;
    this.upper = upper;
    this.aim = aim;
  }

  /**
   * Returns the band between two limits.
   *
   * @param <V> the type of the figure
   * @param lower the lower limit
   * @param upper the upper limit
   * @return the band
   * @throws IllegalArgumentException if the limits are in the wrong order, or do not compare
   */
  public static <V extends Comparable<V>> Band<V> between(V lower, V upper) {
    return new Band<>(lower, upper, null);
  }

  /**
   * Returns the band from a limit upwards.
   *
   * @param <V> the type of the figure
   * @param lower the lower limit
   * @return the band
   */
  public static <V extends Comparable<V>> Band<V> atLeast(V lower) {
    return new Band<>(lower, null, null);
  }

  /**
   * Returns the band from a limit downwards.
   *
   * @param <V> the type of the figure
   * @param upper the upper limit
   * @return the band
   */
  public static <V extends Comparable<V>> Band<V> atMost(V upper) {
    return new Band<>(null, upper, null);
  }

  /**
   * Returns the band around a pH.
   *
   * @param aim the pH aimed at
   * @param tolerance the distance of the limits from it, 0 or more
   * @return the band
   * @throws IllegalArgumentException if the tolerance is negative or not finite
   */
  public static Band<PH> around(PH aim, double tolerance) {
    Checks.nonNegative("tolerance of pH", tolerance, "");
    return new Band<>(PH.of(aim.value() - tolerance), PH.of(aim.value() + tolerance), aim);
  }

  /**
   * Returns the band around a titratable acidity.
   *
   * @param aim the acidity aimed at
   * @param tolerance the distance of the limits from it, 0 or more, to the same end point
   * @return the band
   * @throws IllegalArgumentException if the tolerance is negative or has another end point
   */
  public static Band<TitratableAcidity> around(TitratableAcidity aim, TitratableAcidity tolerance) {
    Checks.nonNegative(
        "tolerance of titratable acidity", tolerance.inMilliequivalentsPerLitre(), "mEq/L");
    return new Band<>(aim.minus(tolerance), aim.plus(tolerance), aim);
  }

  /**
   * Returns the band around a concentration.
   *
   * @param aim the concentration aimed at
   * @param tolerance the distance of the limits from it, at most the concentration
   * @return the band
   * @throws IllegalArgumentException if the lower limit would be negative
   */
  public static Band<MassConcentration> around(MassConcentration aim, MassConcentration tolerance) {
    return new Band<>(aim.minus(tolerance), aim.plus(tolerance), aim);
  }

  /**
   * Returns the band around a ratio.
   *
   * @param aim the ratio aimed at
   * @param tolerance the distance of the limits from it, 0 or more
   * @return the band
   * @throws IllegalArgumentException if a number is not finite or the tolerance is negative
   */
  public static Band<Double> around(double aim, double tolerance) {
    Checks.finite("ratio", aim, "");
    Checks.nonNegative("tolerance of the ratio", tolerance, "");
    return new Band<>(aim - tolerance, aim + tolerance, aim);
  }

  /**
   * Returns the lower limit.
   *
   * @return the limit; empty when the band is open below
   */
  public Optional<V> lower() {
    return Optional.ofNullable(lower);
  }

  /**
   * Returns the upper limit.
   *
   * @return the limit; empty when the band is open above
   */
  public Optional<V> upper() {
    return Optional.ofNullable(upper);
  }

  /**
   * Returns the value aimed at.
   *
   * @return the value; empty when the band was given by its limits
   */
  public Optional<V> aim() {
    return Optional.ofNullable(aim);
  }

  /** Returns the limits, such as "pH 4.1 to pH 4.3". */
  @Override
  public String toString() {
    if (lower == null) {
      return "at most " + upper;
    }
    return upper == null ? "at least " + lower : lower + " to " + upper;
  }
}
