package org.brewchem.quality;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.internal.NumberText;
import org.brewchem.uncertainty.MethodPrecision;
import org.brewchem.uncertainty.Traced;
import org.brewchem.uncertainty.UncertainValue;

/**
 * A later batch less an earlier one in one figure, and whether the laboratory can tell the two
 * apart. Inputs that both share, such as the titrant, cancel. Immutable.
 */
public final class Difference {

  private final Figure<?> figure;
  private final double difference;
  private final Optional<UncertainValue> uncertain;
  private final String basis;

  private Difference(
      Figure<?> figure, double difference, Optional<UncertainValue> uncertain, String basis) {
    this.figure = figure;
    this.difference = difference;
    this.uncertain = uncertain;
    this.basis = basis;
  }

  /** Whether two batches can be told apart. */
  public enum Finding {
    /** They differ by more than the uncertainty of the difference explains in 95 % of cases. */
    DIFFERENT,
    /** They do not. That is no proof that they are the same. */
    NOT_DISTINGUISHABLE,
    /** The uncertainty of the difference is unknown. */
    UNKNOWN;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /**
   * Compares two batches by the uncertainties of their answers.
   *
   * @param later the answer of the later batch
   * @param earlier the answer of the earlier batch, of the same figure in the same unit
   * @return the difference
   * @throws IllegalArgumentException if figures or units differ
   * @throws org.brewchem.figure.UnknownFigureException if one is unknown
   */
  public static Difference of(Answer<?> later, Answer<?> earlier) {
    sameFigure(later, earlier);
    Traced difference = later.traced().minus(earlier.traced());
    return new Difference(
        later.figure(),
        difference.value(),
        difference.uncertain(later.unit()),
        "by the uncertainties of both");
  }

  /**
   * Compares two batches that one laboratory measured by one method, by its repeatability.
   *
   * @param later the answer of the later batch
   * @param earlier the answer of the earlier batch, of the same figure in the same unit
   * @param precision the precision of the method
   * @return the difference
   * @throws IllegalArgumentException if figures or units differ
   * @throws org.brewchem.figure.UnknownFigureException if one is unknown
   */
  public static Difference inOneLaboratory(
      Answer<?> later, Answer<?> earlier, MethodPrecision precision) {
    return by(later, earlier, precision, OptionalDouble.of(precision.repeatability()), "within");
  }

  /**
   * Compares two batches that two laboratories measured, by the reproducibility of the method.
   *
   * @param later the answer of the later batch
   * @param earlier the answer of the earlier batch, of the same figure in the same unit
   * @param precision the precision of the method; without a reproducibility the finding is unknown
   * @return the difference
   * @throws IllegalArgumentException if figures or units differ
   * @throws org.brewchem.figure.UnknownFigureException if one is unknown
   */
  public static Difference betweenLaboratories(
      Answer<?> later, Answer<?> earlier, MethodPrecision precision) {
    return by(later, earlier, precision, precision.reproducibility(), "between");
  }

  private static Difference by(
      Answer<?> later,
      Answer<?> earlier,
      MethodPrecision precision,
      OptionalDouble standardDeviation,
      String where) {
    sameFigure(later, earlier);
    if (!precision.unit().equals(later.unit())) {
      throw new IllegalArgumentException(
          "precision: in \""
              + precision.unit()
              + "\" is not possible; the answers are in \""
              + later.unit()
              + "\"");
    }
    double difference = later.number() - earlier.number();
    Optional<UncertainValue> uncertain =
        standardDeviation.isPresent()
            ? Optional.of(
                UncertainValue.of(
                    difference, Math.sqrt(2) * standardDeviation.getAsDouble(), later.unit()))
            : Optional.empty();
    return new Difference(
        later.figure(),
        difference,
        uncertain,
        "by the precision of "
            + precision.method()
            + " "
            + where
            + " laboratories, "
            + precision.source());
  }

  private static void sameFigure(Answer<?> later, Answer<?> earlier) {
    if (!later.figure().equals(earlier.figure()) || !later.unit().equals(earlier.unit())) {
      throw new IllegalArgumentException(
          "earlier batch: "
              + earlier.figure().title()
              + " in \""
              + earlier.unit()
              + "\" is not possible; "
              + later.figure().title()
              + " in \""
              + later.unit()
              + "\" is needed");
    }
  }

  /**
   * Returns the figure.
   *
   * @return the figure that both batches answered
   */
  public Figure<?> figure() {
    return figure;
  }

  /**
   * Returns the difference.
   *
   * @return later less earlier, in the unit of the answers
   */
  public double value() {
    return difference;
  }

  /**
   * Returns the standard uncertainty of the difference.
   *
   * @return u, in the unit of the answers; empty when an input that matters states none
   */
  public OptionalDouble standardUncertainty() {
    return uncertain.isPresent()
        ? OptionalDouble.of(uncertain.get().standardUncertainty())
        : OptionalDouble.empty();
  }

  /**
   * Returns the difference in units of its standard uncertainty.
   *
   * @return z, of either sign; empty when u is unknown or 0
   */
  public OptionalDouble z() {
    OptionalDouble u = standardUncertainty();
    return u.isPresent() && u.getAsDouble() > 0
        ? OptionalDouble.of(difference / u.getAsDouble())
        : OptionalDouble.empty();
  }

  /**
   * Tells whether the two can be told apart.
   *
   * @return different when the difference exceeds its expanded uncertainty, by the library's one
   *     coverage factor
   */
  public Finding finding() {
    if (uncertain.isEmpty()) {
      return Finding.UNKNOWN;
    }
    return Math.abs(difference) > uncertain.get().expanded().halfWidth()
        ? Finding.DIFFERENT
        : Finding.NOT_DISTINGUISHABLE;
  }

  @Override
  public String toString() {
    String unit = figure.shown().symbol();
    return figure.title()
        + ": "
        + (difference < 0 ? "" : "+")
        + NumberText.significant(difference, 2)
        + (unit.isEmpty() ? "" : " " + unit)
        + (z().isPresent() ? String.format(Locale.ROOT, ", z %.1f", z().getAsDouble()) : "")
        + ", "
        + finding()
        + " ("
        + basis
        + ")";
  }
}
