package org.brewchem.table;

import java.util.function.ToDoubleFunction;
import org.brewchem.internal.Checks;
import org.brewchem.units.LabUnit;
import org.brewchem.units.UnitSet;
import org.jspecify.annotations.Nullable;

/** A column that a calculation reads, in the unit of the calculation. */
final class Input {

  private enum Range {
    NOT_NEGATIVE,
    POSITIVE,
    ANY
  }

  private final Column column;
  private final double factor;
  private final Range range;

  private Input(Column column, double factor, Range range) {
    this.column = column;
    this.factor = factor;
    this.range = range;
  }

  /** Reads numbers of 0 or more; the unit of the column is checked here, once. */
  static <Q> Input notNegative(Column column, UnitSet<Q> units, ToDoubleFunction<Q> in) {
    return new Input(column, factor(column, units, in), Range.NOT_NEGATIVE);
  }

  /** Reads numbers above 0. */
  static <Q> Input positive(Column column, UnitSet<Q> units, ToDoubleFunction<Q> in) {
    return new Input(column, factor(column, units, in), Range.POSITIVE);
  }

  /** Reads numbers that stand as they are. */
  static Input plain(Column column) {
    return new Input(column, 1, Range.ANY);
  }

  /** All units that are read so are multiples of each other. */
  private static <Q> double factor(Column column, UnitSet<Q> units, ToDoubleFunction<Q> in) {
    LabUnit<Q> unit = column.header().unitOf(units);
    return in.applyAsDouble(unit.from(1));
  }

  /** The same column in a unit so many times smaller. */
  Input times(double more) {
    return new Input(column, factor * more, range);
  }

  /** The same column, of which a number must be above 0. */
  Input positive() {
    return new Input(column, factor, Range.POSITIVE);
  }

  /** The number of a row; meaningless where there is a fault or none. */
  double at(int index) {
    return column.raw(index) * factor;
  }

  boolean isMissing(int index) {
    return column.failureOrNull(index) instanceof Failure.Missing;
  }

  /** Why the row has no number to calculate with, or null. */
  @Nullable Failure fault(int index) {
    if (!column.isPresent(index)) {
      return column.failureOrNull(index);
    }
    double value = column.raw(index);
    if (value > 0 || range == Range.ANY || (value == 0 && range == Range.NOT_NEGATIVE)) {
      return null;
    }
    try {
      if (range == Range.POSITIVE) {
        Checks.positive(column.name(), value, column.unit().orElse(""));
      } else {
        Checks.nonNegative(column.name(), value, column.unit().orElse(""));
      }
    } catch (IllegalArgumentException e) {
      return notPossible(index, e);
    }
    return null;
  }

  /** The failure of a row whose number its meaning does not allow. */
  Failure notPossible(int index, IllegalArgumentException reason) {
    return new Failure.NotPossible(
        column.row(index), column.heading(), String.valueOf(reason.getMessage()));
  }

  /** The failure of a row whose number contradicts others of the row. */
  Failure notPossible(int index, String why) {
    return new Failure.NotPossible(
        column.row(index),
        column.heading(),
        column.name()
            + ": "
            + column.raw(index)
            + column.unit().map(unit -> " " + unit).orElse("")
            + " "
            + why);
  }
}
