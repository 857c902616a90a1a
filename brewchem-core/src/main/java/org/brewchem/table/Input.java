package org.brewchem.table;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.figure.UsualRange;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.brewchem.units.LabUnit;
import org.brewchem.units.UnitSet;
import org.jspecify.annotations.Nullable;

/** A column that a calculation reads, in the unit of the calculation, with what its u is. */
final class Input {

  private enum Range {
    NOT_NEGATIVE,
    POSITIVE,
    ANY
  }

  /**
   * Sizes of a cell that is not 0, our choice: so that no conversion of it to another unit
   * overflows or underflows, nor the square of it.
   */
  private static final double LEAST = 1e-90;

  private static final double LARGEST = 1e90;

  private static final MathContext JUDGED = new MathContext(14);

  private final Column column;
  private final double factor;
  private final Range range;

  /** In the unit of the column after the factor beside it. */
  private final @Nullable Column uncertainties;

  private final double uncertaintyFactor;

  /** The same for all rows, in the unit of the column, and a share of each number; or NaN. */
  private final double uncertaintyOfAll;

  private final double relativeOfAll;

  private final @Nullable Usual usual;

  private record Usual(UsualRange range, double perUnit) {}

  private Input(
      Column column,
      double factor,
      Range range,
      @Nullable Column uncertainties,
      double uncertaintyFactor,
      double uncertaintyOfAll,
      double relativeOfAll,
      @Nullable Usual usual) {
    this.column = column;
    this.factor = factor;
    this.range = range;
    this.uncertainties = uncertainties;
    this.uncertaintyFactor = uncertaintyFactor;
    this.uncertaintyOfAll = uncertaintyOfAll;
    this.relativeOfAll = relativeOfAll;
    this.usual = usual;
  }

  private static Input of(Column column, double factor, Range range) {
    return new Input(column, factor, range, null, 0, Double.NaN, Double.NaN, null);
  }

  /** Reads numbers of 0 or more; the unit of the column is checked here, once. */
  static <Q> Input notNegative(Column column, UnitSet<Q> units, ToDoubleFunction<Q> in) {
    return of(column, factor(column, units, in), Range.NOT_NEGATIVE);
  }

  /** Reads numbers above 0. */
  static <Q> Input positive(Column column, UnitSet<Q> units, ToDoubleFunction<Q> in) {
    return of(column, factor(column, units, in), Range.POSITIVE);
  }

  /** Reads numbers that stand as they are. */
  static Input plain(Column column) {
    return of(column, 1, Range.ANY);
  }

  /** Reads numbers of a column that may have no unit, such as a pH. */
  static Input withoutUnit(Column column) {
    if (column.unit().isPresent()) {
      throw new IllegalArgumentException("column \"" + column.heading() + "\": a pH has no unit");
    }
    return plain(column);
  }

  /** All units that are read so are multiples of each other. */
  private static <Q> double factor(Column column, UnitSet<Q> units, ToDoubleFunction<Q> in) {
    LabUnit<Q> unit = column.header().unitOf(units);
    return in.applyAsDouble(unit.from(1));
  }

  /** Takes the standard uncertainties from a column read into the same unit. */
  Input withUncertainties(Input same) {
    return new Input(
        column, factor, range, same.column, same.factor / factor, Double.NaN, Double.NaN, usual);
  }

  /** The same column in a unit so many times smaller. */
  Input times(double more) {
    return new Input(
        column,
        factor * more,
        range,
        uncertainties,
        uncertaintyFactor,
        uncertaintyOfAll,
        relativeOfAll,
        usual == null ? null : new Usual(usual.range, usual.perUnit / more));
  }

  /** States one standard uncertainty for all rows, in the unit of the column. */
  Input withUncertainty(double standardUncertainty) {
    once();
    String name = column.name() + ", standard uncertainty";
    String unit = column.unit().orElse("");
    double checked = sized(name, Checks.nonNegative(name, standardUncertainty, unit), unit);
    return new Input(column, factor, range, null, 0, checked, Double.NaN, usual);
  }

  /** States the standard uncertainty as a share of each number. */
  Input withRelativeUncertainty(double share) {
    once();
    double checked =
        Checks.inRange(column.name() + ", relative standard uncertainty", share, "", 0, 1);
    return new Input(column, factor, range, null, 0, Double.NaN, checked, usual);
  }

  private void once() {
    if (uncertainties != null) {
      throw new IllegalStateException(
          column.name()
              + ": the table has a column of its uncertainty, \""
              + uncertainties.heading()
              + "\"; leave it out with Table.without");
    }
  }

  Column column() {
    return column;
  }

  String name() {
    return column.name();
  }

  /** The number of a row; meaningless where there is a fault or none. */
  double at(int index) {
    return column.raw(index) * factor;
  }

  /**
   * Reads the numbers of rows that follow each other, as {@link #at} and {@link #fault} do; a row
   * with a fault is 0, and the fault stands unless there is one already, or the cell is empty and
   * may be.
   */
  void read(int from, int count, double[] into, @Nullable Failure[] faults, boolean mayBeMissing) {
    double low = LEAST * factor;
    double high = LARGEST * factor;
    if (usual != null) {
      low = Math.max(low, usual.range.lower().orElse(0) / usual.perUnit);
      high = Math.min(high, usual.range.upper().orElse(Double.MAX_VALUE) / usual.perUnit);
    }
    boolean complete = column.isComplete();
    for (int i = 0; i < count; i++) {
      double value = column.raw(from + i) * factor;
      into[i] = value;
      if (!(complete && value > low && value < high)) {
        Failure fault = fault(from + i);
        if (fault != null) {
          into[i] = 0;
          if (faults[i] == null && !(mayBeMissing && fault instanceof Failure.Missing)) {
            faults[i] = fault;
          }
        }
      }
    }
  }

  /** Another number of the column in the unit of the calculation. */
  double inUnits(double number) {
    return number * factor;
  }

  boolean isMissing(int index) {
    return column.failureOrNull(index) instanceof Failure.Missing;
  }

  /** The number of a row with its source, which counts in the unit of the column. */
  Traced traced(int index) {
    return reported(index).times(factor);
  }

  private Traced reported(int index) {
    double value = column.raw(index);
    OptionalDouble u = standardUncertainty(index);
    String unit = column.unit().orElse("");
    return Traced.of(
        u.isPresent()
            ? Source.of(column.name(), value, u.getAsDouble(), unit)
            : Source.withoutUncertainty(column.name(), value, unit));
  }

  /** In the unit of the column; empty where none is stated or what is stated is impossible. */
  private OptionalDouble standardUncertainty(int index) {
    if (uncertainties != null) {
      return uncertainties.isPresent(index) && uncertaintyFault(index) == null
          ? OptionalDouble.of(uncertainties.raw(index) * uncertaintyFactor)
          : OptionalDouble.empty();
    }
    if (!Double.isNaN(relativeOfAll)) {
      return OptionalDouble.of(relativeOfAll * Math.abs(column.raw(index)));
    }
    return Double.isNaN(uncertaintyOfAll)
        ? OptionalDouble.empty()
        : OptionalDouble.of(uncertaintyOfAll);
  }

  /** Why the standard uncertainty that a row states cannot be used, or null. */
  @Nullable Failure uncertaintyFault(int index) {
    if (uncertainties == null) {
      return null;
    }
    if (!uncertainties.isPresent(index)) {
      Failure failure = uncertainties.failureOrNull(index);
      return failure instanceof Failure.Missing ? null : failure;
    }
    try {
      String unit = uncertainties.unit().orElse("");
      double value = sized(uncertainties.name(), uncertainties.raw(index), unit);
      Checks.nonNegative(uncertainties.name(), value, unit);
    } catch (IllegalArgumentException e) {
      return new Failure.NotPossible(
          uncertainties.row(index), uncertainties.heading(), String.valueOf(e.getMessage()));
    }
    return null;
  }

  /** The first such reason among inputs of a row, or null. */
  static @Nullable Failure uncertaintyFault(Stream<Input> inputs, int index) {
    return inputs
        .map(input -> Optional.ofNullable(input.uncertaintyFault(index)))
        .flatMap(Optional::stream)
        .findFirst()
        .orElse(null);
  }

  /** What stands in the first cell of a row that holds something of no use, or null. */
  static @Nullable Failure fault(Stream<Input> inputs, int index) {
    return inputs
        .map(input -> Optional.ofNullable(input.fault(index)))
        .flatMap(Optional::stream)
        .filter(failure -> !(failure instanceof Failure.Missing))
        .findFirst()
        .orElse(null);
  }

  private static double sized(String name, double value, String unit) {
    double size = Math.abs(value);
    if (size > LARGEST || (size < LEAST && size > 0)) {
      throw Checks.outOfRange(name, value, unit, "0 or a size of 1e-90 to 1e90");
    }
    return value;
  }

  /**
   * Has the numbers judged by what is usual in their place: what cannot be is refused.
   *
   * @param usual the range
   * @param perUnit its unit for one unit of the calculation
   */
  Input judgedBy(UsualRange usual, double perUnit) {
    return new Input(
        column,
        factor,
        range,
        uncertainties,
        uncertaintyFactor,
        uncertaintyOfAll,
        relativeOfAll,
        new Usual(usual, perUnit));
  }

  /**
   * Judges all rows by what is usual: one notice, about the first row that is not, which counts the
   * others.
   */
  Optional<Notice> unusual() {
    if (usual == null) {
      return Optional.empty();
    }
    int first = -1;
    int count = 0;
    for (int i = 0; i < column.size(); i++) {
      if (column.isPresent(i) && fault(i) == null && !usual.range.holds(judged(usual, i))) {
        first = count == 0 ? i : first;
        count++;
      }
    }
    if (count == 0) {
      return Optional.empty();
    }
    long row = column.row(first);
    String more =
        count == 1
            ? ""
            : "; so " + (count == 2 ? "is 1 more row" : "are " + (count - 1) + " more rows");
    return unusual(first)
        .map(notice -> Notice.ofRow(notice.code(), notice.subject(), row, notice.text() + more));
  }

  private Optional<Notice> unusual(int index) {
    return usual == null
        ? Optional.empty()
        : usual.range.judge(name(), column.row(index), judged(usual, index));
  }

  /** The number in the unit of its range; a bound stays that bound through the conversions. */
  private double judged(Usual own, int index) {
    double value = at(index) * own.perUnit;
    return own.range.holds(value) ? value : new BigDecimal(value).round(JUDGED).doubleValue();
  }

  /** The number of a row as a step that states a figure, in the unit of the calculation. */
  Step step(int index, Figure<?> figure) {
    return Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
        .origin(Origin.REPORTED)
        .text(
            "row "
                + column.row(index)
                + ", column \""
                + column.heading()
                + "\": "
                + NumberText.plain(column.raw(index)),
            "")
        .notices(unusual(index).stream().toList())
        .found(traced(index));
  }

  /** Why the row has no number to calculate with, or null. */
  @Nullable Failure fault(int index) {
    if (!column.isPresent(index)) {
      return column.failureOrNull(index);
    }
    String unit = column.unit().orElse("");
    try {
      double value = sized(column.name(), column.raw(index), unit);
      switch (range) {
        case POSITIVE -> Checks.positive(column.name(), value, unit);
        case NOT_NEGATIVE -> Checks.nonNegative(column.name(), value, unit);
        case ANY -> {
          // Any sign is possible.
        }
      }
      if (usual != null && !usual.range.isPossible(at(index) * usual.perUnit)) {
        usual.range.possible(name(), judged(usual, index));
      }
      return null;
    } catch (IllegalArgumentException e) {
      return notPossible(index, e);
    }
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
            + NumberText.plain(column.raw(index))
            + column.unit().map(unit -> " " + unit).orElse("")
            + " "
            + why);
  }
}
