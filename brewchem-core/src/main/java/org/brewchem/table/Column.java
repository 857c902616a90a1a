package org.brewchem.table;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.brewchem.figure.Caution;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;
import org.brewchem.units.ColumnHeader;
import org.brewchem.units.LabUnit;
import org.brewchem.units.UnitSet;
import org.jspecify.annotations.Nullable;

/**
 * A column of numbers in one unit, with a reason in each row that has none.
 *
 * <p>Immutable and thread-safe. Rows are addressed by their index, from 0; the number that a row
 * has in its table or file is {@link #row}.
 */
public final class Column {

  private static final String INDEX = "row index";

  /** How many rows a table or column prints. */
  static final int SHOWN_ROWS = 6;

  private final ColumnHeader header;
  private final long[] rows;
  private final double[] values;
  private final BitSet missing;
  private final @Nullable Failure @Nullable [] others;
  private final @Nullable Column uncertainty;
  private final List<Caution> cautions;

  /** Takes over the arrays. A row has a number unless it is missing or has another failure. */
  Column(
      ColumnHeader header,
      long[] rows,
      double[] values,
      BitSet missing,
      @Nullable Failure @Nullable [] others) {
    this(header, rows, values, missing, others, null, List.of());
  }

  private Column(
      ColumnHeader header,
      long[] rows,
      double[] values,
      BitSet missing,
      @Nullable Failure @Nullable [] others,
      @Nullable Column uncertainty,
      List<Caution> cautions) {
    this.cautions = cautions;
    this.uncertainty = uncertainty;
    this.header = header;
    this.rows = rows;
    this.values = values;
    this.missing = missing;
    this.others = others;
  }

  /**
   * Makes a column in which no number is missing, its rows numbered from 1.
   *
   * @param heading the name, and in square brackets the unit, such as {@code calcium [mg/L]}
   * @param values the numbers in that unit, which are copied
   * @return the column
   * @throws IllegalArgumentException if the heading cannot be read or a number is infinite or NaN
   */
  public static Column of(String heading, double... values) {
    Objects.requireNonNull(heading, "heading");
    return of(heading, values, new BitSet());
  }

  /**
   * Makes a column, its rows numbered from 1.
   *
   * @param heading the name, and in square brackets the unit, such as {@code calcium [mg/L]}
   * @param values the numbers in that unit, which are copied; what stands in a missing row does not
   *     matter
   * @param missing the indices of the rows that have no number
   * @return the column
   * @throws IllegalArgumentException if the heading cannot be read, a number that is not missing is
   *     infinite or NaN, or a row is missing that does not exist
   */
  public static Column of(String heading, double[] values, BitSet missing) {
    if (missing.length() > values.length) {
      throw Checks.outOfRange(
          "index of a missing row", missing.length() - 1, "", "less than " + values.length);
    }
    double[] copy = values.clone();
    for (int i = 0; i < copy.length; i++) {
      copy[i] = missing.get(i) ? 0 : finite(heading, i + 1L, copy[i]);
    }
    return new Column(
        ColumnHeader.parse(heading), numbered(copy.length), copy, (BitSet) missing.clone(), null);
  }

  /** Makes a column of what was found, taking over the arrays. */
  static Column calculated(
      String heading, long[] rows, double[] values, @Nullable Failure[] failures) {
    return new Column(ColumnHeader.parse(heading), rows, values, new BitSet(), failures);
  }

  /** The heading of the standard uncertainties of a column. */
  static String ofUncertainty(String heading) {
    ColumnHeader header = ColumnHeader.parse(heading);
    return "u(" + header.name() + ")" + header.unit().map(u -> " [" + u + "]").orElse("");
  }

  static double finite(String heading, long row, double value) {
    if (!Double.isFinite(value)) {
      throw Checks.outOfRange(
          "row " + row + ", column \"" + Excerpt.of(heading) + "\"",
          value,
          "",
          "a finite number, or none where it is missing,");
    }
    return value + 0.0;
  }

  /** The numbers of rows that stand in no file. */
  static long[] numbered(int size) {
    long[] rows = new long[size];
    Arrays.setAll(rows, i -> i + 1L);
    return rows;
  }

  /**
   * Returns the heading.
   *
   * @return such as {@code calcium [mg/L]}
   */
  public String heading() {
    return header.toString();
  }

  /**
   * Returns the name without the unit.
   *
   * @return such as {@code calcium}
   */
  public String name() {
    return header.name();
  }

  /**
   * Returns the symbol of the unit.
   *
   * @return such as {@code mg/L}; empty for a pH or a plain number
   */
  public Optional<String> unit() {
    return header.unit();
  }

  /** The same column with the standard uncertainties of its numbers, in the same unit. */
  Column withStandardUncertainty(Column u) {
    return new Column(header, rows, values, missing, others, u, cautions);
  }

  /**
   * Returns the standard uncertainties of the numbers.
   *
   * @return a column over the same rows, in the same unit, such as {@code u(calcium) [mg/L]}; a row
   *     without one has a failure that says which input states none. Empty if they were not asked
   *     for
   */
  public Optional<Column> standardUncertainty() {
    return Optional.ofNullable(uncertainty);
  }

  /** The same column with what to mind in doing what its numbers propose. */
  Column withCautions(List<Caution> usual) {
    return new Column(header, rows, values, missing, others, uncertainty, usual);
  }

  /**
   * Returns what to mind in doing what the numbers propose, such as doses of an acid.
   *
   * @return an unmodifiable list of the cautions; empty when the column proposes nothing
   */
  public List<Caution> cautions() {
    return cautions;
  }

  ColumnHeader header() {
    return header;
  }

  long[] rows() {
    return rows;
  }

  /**
   * Returns how many rows there are.
   *
   * @return the count, those without a number included
   */
  public int size() {
    return values.length;
  }

  /**
   * Returns the number that a row has in its table.
   *
   * @param index the row's index, from 0
   * @return its number: the line for a table from a file, else counted from 1
   * @throws org.brewchem.OutOfRangeException if there is no such row
   */
  public long row(int index) {
    return rows[Checks.index(INDEX, index, rows.length)];
  }

  /**
   * Tells whether a row has a number.
   *
   * @param index the row's index, from 0
   * @return false if it has a failure instead
   * @throws org.brewchem.OutOfRangeException if there is no such row
   */
  public boolean isPresent(int index) {
    Checks.index(INDEX, index, values.length);
    return !missing.get(index) && (others == null || others[index] == null);
  }

  /**
   * Returns the number of a row.
   *
   * @param index the row's index, from 0
   * @return the number in the unit of the column
   * @throws org.brewchem.OutOfRangeException if there is no such row
   * @throws IllegalStateException if the row has none; its message is the failure
   */
  public double value(int index) {
    Failure failure = failureOrNull(index);
    if (failure != null) {
      throw new IllegalStateException(failure.toString());
    }
    return values[index];
  }

  /**
   * Returns the number of a row, if it has one.
   *
   * @param index the row's index, from 0
   * @return the number in the unit of the column, or empty
   * @throws org.brewchem.OutOfRangeException if there is no such row
   */
  public OptionalDouble get(int index) {
    return isPresent(index) ? OptionalDouble.of(values[index]) : OptionalDouble.empty();
  }

  /** Whether every row is known to have a number, at a glance. */
  boolean isComplete() {
    return missing.isEmpty() && others == null;
  }

  /** What stands in the array; meaningless unless the row is present. */
  double raw(int index) {
    return values[index];
  }

  /**
   * Returns why a row has no number.
   *
   * @param index the row's index, from 0
   * @return the failure; empty if the row has a number
   * @throws org.brewchem.OutOfRangeException if there is no such row
   */
  public Optional<Failure> failure(int index) {
    return Optional.ofNullable(failureOrNull(index));
  }

  @Nullable Failure failureOrNull(int index) {
    Checks.index(INDEX, index, values.length);
    if (missing.get(index)) {
      return new Failure.Missing(rows[index], heading());
    }
    return others == null ? null : others[index];
  }

  /** The limit that a cell without a number says it lies below, such as "< 0.5". */
  OptionalDouble limit(int index) {
    return failureOrNull(index) instanceof Failure.Unreadable cell
        ? cell.limit()
        : OptionalDouble.empty();
  }

  /**
   * Returns why rows have no number, missing cells included.
   *
   * @return an unmodifiable list in the order of the rows
   */
  public List<Failure> failures() {
    List<Failure> list = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      Failure failure = failureOrNull(i);
      if (failure != null) {
        list.add(failure);
      }
    }
    return List.copyOf(list);
  }

  /**
   * Returns why rows have no number as a column of text.
   *
   * @return an unmodifiable list of one text a row, empty where there is a number
   */
  public List<String> reasons() {
    List<String> list = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      Failure failure = failureOrNull(i);
      list.add(failure == null ? "" : failure.column() + ": " + failure.reason());
    }
    return List.copyOf(list);
  }

  /**
   * Returns the numbers of all rows.
   *
   * @return a new array in the unit of the column
   * @throws IllegalStateException if a row has no number; the message counts those and names the
   *     first
   */
  public double[] values() {
    List<Failure> failures = failures();
    if (!failures.isEmpty()) {
      throw new IllegalStateException(
          "column \""
              + heading()
              + "\": "
              + failures.size()
              + " of "
              + size()
              + (size() == 1 ? " row has" : failures.size() == 1 ? " rows has" : " rows have")
              + " no number; the first: "
              + failures.get(0));
    }
    return values.clone();
  }

  /**
   * Returns the numbers of all rows, and one of the caller's choice for those that have none.
   *
   * @param filler the number for rows without one, such as {@link Double#NaN} where the reader of
   *     the array takes it so
   * @return a new array in the unit of the column
   */
  public double[] valuesOr(double filler) {
    double[] filled = values.clone();
    for (int i = 0; i < filled.length; i++) {
      if (!isPresent(i)) {
        filled[i] = filler;
      }
    }
    return filled;
  }

  /** The same column of other rows, by their indices. */
  Column at(int[] indices) {
    long[] numbers = new long[indices.length];
    double[] taken = new double[indices.length];
    BitSet absent = new BitSet();
    @Nullable Failure @Nullable [] failures =
        others == null ? null : new @Nullable Failure[indices.length];
    for (int i = 0; i < indices.length; i++) {
      int from = indices[i];
      numbers[i] = rows[from];
      taken[i] = values[from];
      absent.set(i, missing.get(from));
      if (failures != null && others != null) {
        failures[i] = others[from];
      }
    }
    return new Column(
        header,
        numbers,
        taken,
        absent,
        failures,
        uncertainty == null ? null : uncertainty.at(indices),
        cautions);
  }

  /** The same column under another name, in its unit. */
  Column renamed(String to) {
    if (ColumnHeader.parse(to).unit().isPresent()) {
      throw new IllegalArgumentException(
          "new name of \""
              + Excerpt.of(name())
              + "\": \""
              + Excerpt.of(to)
              + "\" is not possible; a name without a unit is needed, for the unit stays");
    }
    ColumnHeader other = ColumnHeader.parse(to + unit().map(u -> " [" + u + "]").orElse(""));
    Column u =
        uncertainty == null
            ? null
            : new Column(
                ColumnHeader.parse(ofUncertainty(other.toString())),
                rows,
                uncertainty.values,
                uncertainty.missing,
                uncertainty.others);
    return new Column(other, rows, values, missing, others, u, cautions);
  }

  /**
   * Returns the column in another unit of the same meaning.
   *
   * @param units the units of the meaning, such as {@link
   *     org.brewchem.units.LabUnits#RESIDUAL_ALKALINITY}
   * @param symbol the unit wanted, such as {@code °dH}
   * @param <Q> the value
   * @return the column under the same name; a row whose number the meaning does not allow has a
   *     failure
   * @throws IllegalArgumentException if the unit of the column or the one wanted is none of these
   */
  public <Q> Column in(UnitSet<Q> units, String symbol) {
    LabUnit<Q> from = header.unitOf(units);
    LabUnit<Q> to = units.named(symbol);
    double[] converted = new double[size()];
    @Nullable Failure[] failures = new @Nullable Failure[size()];
    for (int i = 0; i < converted.length; i++) {
      failures[i] = failureOrNull(i);
      if (failures[i] == null) {
        try {
          converted[i] = to.in(from.from(values[i]));
        } catch (IllegalArgumentException e) {
          failures[i] = new Failure.NotPossible(rows[i], heading(), String.valueOf(e.getMessage()));
        }
      }
    }
    Column other =
        new Column(
                ColumnHeader.parse(name() + " [" + symbol + "]"),
                rows,
                converted,
                new BitSet(),
                failures)
            .withCautions(cautions);
    return uncertainty == null
        ? other
        : other.withStandardUncertainty(
            uncertainty.times(
                Math.abs(to.in(from.from(2)) - to.in(from.from(1))),
                uncertainty.name() + " [" + symbol + "]"));
  }

  private Column times(double factor, String heading) {
    double[] multiplied = new double[size()];
    Arrays.setAll(multiplied, i -> values[i] * factor);
    return new Column(ColumnHeader.parse(heading), rows, multiplied, missing, others);
  }

  /** The number of a row as text, with its u where there is one; or that it has none. */
  String text(int index) {
    if (!isPresent(index)) {
      return "none";
    }
    String number = NumberText.plain(rounded(values[index]));
    return uncertainty == null || !uncertainty.isPresent(index)
        ? number
        : number + " (u " + NumberText.significant(uncertainty.raw(index), 2) + ")";
  }

  /** To five significant digits, which is more than most readings have. */
  static double rounded(double value) {
    double rounded = new BigDecimal(value).round(new MathContext(5)).doubleValue();
    return Double.isFinite(rounded) ? rounded : value;
  }

  /**
   * Returns the heading, how many rows there are, how many of them have a number, and the first
   * ones, rounded.
   *
   * @return such as {@code calcium [mg/L], 3 rows, 1 without a number: 92, 40, none}
   */
  @Override
  public String toString() {
    int absent = 0;
    for (int i = 0; i < size(); i++) {
      absent += isPresent(i) ? 0 : 1;
    }
    String first =
        IntStream.range(0, Math.min(size(), SHOWN_ROWS))
            .mapToObj(this::text)
            .collect(Collectors.joining(", "));
    return heading()
        + ", "
        + size()
        + (size() == 1 ? " row" : " rows")
        + (absent == 0 ? "" : ", " + absent + " without a number")
        + (first.isEmpty() ? "" : ": " + first)
        + (size() > SHOWN_ROWS ? ", ..." : "");
  }
}
