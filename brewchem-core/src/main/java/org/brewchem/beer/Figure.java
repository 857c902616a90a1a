package org.brewchem.beer;

import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.substance.Acid;
import org.brewchem.uncertainty.UncertainValue;
import org.jspecify.annotations.Nullable;

/**
 * One key figure of a beer: its value, where it comes from and, when it was stated, its standard
 * uncertainty. Immutable.
 *
 * @param <V> the type of the value
 */
public final class Figure<V> {

  /** By custom, and printed with every expanded uncertainty. */
  static final double COVERAGE_FACTOR = 2;

  private final KeyFigure kind;
  private final V value;
  private final double number;
  private final @Nullable Double standardUncertainty;
  private final Origin origin;

  private Figure(
      KeyFigure kind, V value, double number, @Nullable Double standardUncertainty, Origin origin) {
    this.kind = kind;
    this.value = value;
    this.number = Checks.finite(kind.toString(), number, kind.unit());
    this.standardUncertainty =
        standardUncertainty == null
            ? null
            : Checks.nonNegative(
                "standard uncertainty of " + kind, standardUncertainty, kind.unit());
    this.origin = origin;
  }

  static Figure<PH> of(PH value, @Nullable Double standardUncertainty, Origin origin) {
    return new Figure<>(KeyFigure.PH, value, value.value(), standardUncertainty, origin);
  }

  static Figure<TitratableAcidity> of(
      TitratableAcidity value, @Nullable TitratableAcidity standardUncertainty, Origin origin) {
    if (standardUncertainty != null) {
      // throws when the end points differ
      value.compareTo(standardUncertainty);
    }
    return new Figure<>(
        KeyFigure.TITRATABLE_ACIDITY,
        value,
        value.inMilliequivalentsPerLitre(),
        standardUncertainty == null ? null : standardUncertainty.inMilliequivalentsPerLitre(),
        origin);
  }

  static Figure<Double> ofRatio(double value, @Nullable Double standardUncertainty, Origin origin) {
    return new Figure<>(
        KeyFigure.SULFATE_TO_CHLORIDE,
        Checks.nonNegative(KeyFigure.SULFATE_TO_CHLORIDE.toString(), value, ""),
        value,
        standardUncertainty,
        origin);
  }

  static Figure<MassConcentration> ofCalcium(
      MassConcentration value, @Nullable MassConcentration standardUncertainty, Origin origin) {
    return new Figure<>(
        KeyFigure.CALCIUM,
        value,
        value.inMilligramsPerLitre(),
        standardUncertainty == null ? null : standardUncertainty.inMilligramsPerLitre(),
        origin);
  }

  /**
   * Returns which figure it is.
   *
   * @return the figure
   */
  public KeyFigure kind() {
    return kind;
  }

  /**
   * Returns the value.
   *
   * @return the value
   */
  public V value() {
    return value;
  }

  /**
   * Returns the value as a plain number.
   *
   * @return the number, in the unit of {@link #kind()}
   */
  public double number() {
    return number;
  }

  /**
   * Returns the standard uncertainty u.
   *
   * @return u, 0 or more, in the unit of {@link #kind()}; empty when it was not stated
   */
  public OptionalDouble standardUncertainty() {
    return standardUncertainty == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(standardUncertainty);
  }

  /**
   * Returns the value with its uncertainty.
   *
   * @return number and u, in the unit of {@link #kind()}; empty when the uncertainty was not stated
   */
  public Optional<UncertainValue> withUncertainty() {
    return Optional.ofNullable(standardUncertainty)
        .map(u -> UncertainValue.of(number, u, kind.unit()));
  }

  /**
   * Returns where the figure comes from.
   *
   * @return the origin
   */
  public Origin origin() {
    return origin;
  }

  @Nullable Double statedUncertainty() {
    return standardUncertainty;
  }

  /** The figure without its origin: an acidity as lactic acid, as is the custom for beer. */
  String text() {
    String prefix = kind == KeyFigure.PH ? "pH " : kind + " ";
    if (value instanceof TitratableAcidity acidity) {
      double factor = Acid.LACTIC.gramsPerEquivalent() / 1000;
      return prefix
          + number(number * factor, factor, "g/L as lactic acid", 2)
          + ", to "
          + acidity.endPoint();
    }
    return prefix + number(number, 1, kind.unit(), kind == KeyFigure.CALCIUM ? 0 : 2);
  }

  private String number(double shown, double factor, String unit, int decimals) {
    return standardUncertainty == null || standardUncertainty == 0
        ? NumberText.decimals(shown, decimals) + (unit.isEmpty() ? "" : " " + unit)
        : UncertainValue.of(shown, standardUncertainty * factor, unit)
            .expanded(COVERAGE_FACTOR)
            .toString();
  }

  /** Returns the value with U (k = 2) and its origin. */
  @Override
  public String toString() {
    return text() + " (" + origin + ")";
  }
}
