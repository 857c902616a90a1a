package org.brewchem.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.units.ColumnHeader;
import org.jspecify.annotations.Nullable;

/**
 * A table: columns of numbers, each in one unit, and columns of text such as the names of samples,
 * all over the same rows.
 *
 * <p>Columns are found by their name without the unit. Immutable and thread-safe.
 */
public final class Table {

  private final long[] rows;
  private final Map<String, Column> columns;
  private final Map<String, List<String>> texts;

  private Table(long[] rows, Map<String, Column> columns, Map<String, List<String>> texts) {
    this.rows = rows;
    this.columns = columns;
    this.texts = texts;
  }

  /**
   * Makes a table of columns.
   *
   * @param columns one or more, over the same rows and with different names
   * @return the table
   * @throws IllegalArgumentException if there is none, the rows differ or two have the same name
   */
  public static Table of(Column... columns) {
    if (columns.length == 0) {
      throw Checks.outOfRange("columns", 0, "", "1 or more");
    }
    Table table = new Table(columns[0].rows(), Map.of(), Map.of());
    for (Column column : columns) {
      table = table.with(column);
    }
    return table;
  }

  /**
   * Starts a table that is filled row by row.
   *
   * @param headings the headings of the columns of numbers, such as {@code calcium [mg/L]}
   * @return a builder without rows
   * @throws IllegalArgumentException if a heading cannot be read or two have the same name
   */
  public static Builder withHeadings(String... headings) {
    Objects.requireNonNull(headings, "headings");
    return new Builder(List.of(headings), List.of());
  }

  /**
   * Starts a table that is filled row by row and holds text too.
   *
   * @param headings the headings of the columns of numbers, such as {@code calcium [mg/L]}
   * @param texts the names of the columns of text
   * @return a builder without rows
   * @throws IllegalArgumentException if a heading cannot be read or two have the same name
   */
  public static Builder withHeadings(List<String> headings, List<String> texts) {
    Objects.requireNonNull(texts, "texts");
    return new Builder(headings, texts);
  }

  /**
   * Returns how many rows there are.
   *
   * @return the count
   */
  public int size() {
    return rows.length;
  }

  /**
   * Returns the number of a row.
   *
   * @param index the row's index, from 0
   * @return its number: the line for a table from a file, else counted from 1
   * @throws org.brewchem.OutOfRangeException if there is no such row
   */
  public long row(int index) {
    return rows[Checks.index("row index", index, rows.length)];
  }

  long[] rows() {
    return rows;
  }

  /**
   * Returns the columns of numbers.
   *
   * @return an unmodifiable list in the order of the table
   */
  public List<Column> columns() {
    return List.copyOf(columns.values());
  }

  /**
   * Returns the names of the columns of text.
   *
   * @return an unmodifiable list in the order of the table
   */
  public List<String> textNames() {
    return List.copyOf(texts.keySet());
  }

  /**
   * Returns a column of numbers.
   *
   * @param name its name without the unit
   * @return the column
   * @throws IllegalArgumentException if there is none of that name; the message names those that
   *     there are
   */
  public Column column(String name) {
    return find(name)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "column \""
                        + Excerpt.of(name)
                        + "\" is not in the table; it has "
                        + Excerpt.of(columns.keySet().toString(), 250)));
  }

  /**
   * Returns a column of numbers, if there is one of that name.
   *
   * @param name its name without the unit
   * @return the column, or empty
   */
  public Optional<Column> find(String name) {
    Objects.requireNonNull(name, "name");
    return Optional.ofNullable(columns.get(name));
  }

  /**
   * Returns a column of text.
   *
   * @param name its name
   * @return an unmodifiable list of one text a row, empty where nothing stands
   * @throws IllegalArgumentException if there is none of that name
   */
  public List<String> texts(String name) {
    List<String> found = texts.get(name);
    if (found == null) {
      throw new IllegalArgumentException(
          "column of text \""
              + Excerpt.of(name)
              + "\" is not in the table; it has "
              + Excerpt.of(texts.keySet().toString(), 250));
    }
    return found;
  }

  /**
   * Adds a column of numbers at the end.
   *
   * @param column a column over the same rows, such as one calculated from this table
   * @return the new table
   * @throws IllegalArgumentException if the rows differ or the table has the name already
   */
  public Table with(Column column) {
    if (!Arrays.equals(rows, column.rows())) {
      throw new IllegalArgumentException(
          "column \"" + Excerpt.of(column.name()) + "\" is over other rows than the table");
    }
    checkNew(column.name());
    Map<String, Column> more = new LinkedHashMap<>(columns);
    more.put(column.name(), column);
    return new Table(rows, more, texts);
  }

  /**
   * Adds a column of text at the end.
   *
   * @param name its name
   * @param perRow one text a row
   * @return the new table
   * @throws IllegalArgumentException if there are not as many texts as rows or the table has the
   *     name already
   */
  public Table withTexts(String name, List<String> perRow) {
    if (perRow.size() != size()) {
      throw new IllegalArgumentException(
          "column of text \""
              + Excerpt.of(name)
              + "\": "
              + perRow.size()
              + " rows are not possible; the table has "
              + size());
    }
    checkNew(name);
    Map<String, List<String>> more = new LinkedHashMap<>(texts);
    more.put(name, List.copyOf(perRow));
    return new Table(rows, columns, more);
  }

  /**
   * Leaves a column out.
   *
   * @param name its name without the unit
   * @return the new table
   * @throws IllegalArgumentException if there is none of that name
   */
  public Table without(String name) {
    if (!texts.containsKey(name)) {
      column(name);
    }
    Map<String, Column> fewer = new LinkedHashMap<>(columns);
    fewer.remove(name);
    Map<String, List<String>> fewerTexts = new LinkedHashMap<>(texts);
    fewerTexts.remove(name);
    return new Table(rows, fewer, fewerTexts);
  }

  private void checkNew(String name) {
    if (columns.containsKey(name) || texts.containsKey(name)) {
      throw twice(name);
    }
  }

  private static IllegalArgumentException twice(String name) {
    return new IllegalArgumentException("column \"" + Excerpt.of(name) + "\" stands twice");
  }

  /**
   * Returns the cells that are filled but hold no number that can be read.
   *
   * @return an unmodifiable list, row by row
   */
  public List<Failure> faults() {
    List<Failure> list = new ArrayList<>();
    for (int i = 0; i < rows.length; i++) {
      for (Column column : columns.values()) {
        Failure failure = column.failureOrNull(i);
        if (failure != null && !(failure instanceof Failure.Missing)) {
          list.add(failure);
        }
      }
    }
    return List.copyOf(list);
  }

  /** The names of the columns and how many rows there are, for messages. */
  String summary() {
    List<String> names = new ArrayList<>(texts.keySet());
    names.addAll(columns.keySet());
    return size() + (size() == 1 ? " row of " : " rows of ") + names;
  }

  /**
   * Returns the first rows under their headings, numbers rounded.
   *
   * @return lines of text: the headings with the units, the rows, and how many more there are
   */
  @Override
  public String toString() {
    List<List<String>> cells = new ArrayList<>();
    int shown = Math.min(size(), Column.SHOWN_ROWS);
    cells.add(cells("row", shown, i -> String.valueOf(rows[i])));
    texts.forEach((name, perRow) -> cells.add(cells(name, shown, perRow::get)));
    columns.values().forEach(c -> cells.add(cells(c.heading(), shown, c::text)));
    StringBuilder text = new StringBuilder();
    for (int line = 0; line <= shown; line++) {
      for (List<String> column : cells) {
        int width = column.stream().mapToInt(String::length).max().orElse(0);
        String cell = column.get(line);
        text.append(column == cells.get(0) ? "" : "  ")
            .append(" ".repeat(width - cell.length()))
            .append(cell);
      }
      text.append(line < shown ? "\n" : "");
    }
    return size() == shown ? text.toString() : text + "\n... " + size() + " rows";
  }

  private static List<String> cells(String heading, int rows, IntFunction<String> text) {
    return Stream.concat(Stream.of(heading), IntStream.range(0, rows).mapToObj(text)).toList();
  }

  /** Collects rows. A cell that is not set is missing. Mutable, for one thread. */
  public static final class Builder {

    private static final int FIRST_CAPACITY = 64;

    private final List<Cells> cells;
    private final List<String> textNames;
    private final List<List<String>> texts = new ArrayList<>();
    private long[] rows = new long[FIRST_CAPACITY];
    private int size;

    private Builder(List<String> headings, List<String> textNames) {
      cells = headings.stream().map(ColumnHeader::parse).map(Cells::new).toList();
      this.textNames = List.copyOf(textNames);
      Set<String> names = new LinkedHashSet<>();
      cells.forEach(column -> checkNew(names, column.header.name()));
      textNames.forEach(name -> checkNew(names, name));
      textNames.forEach(name -> texts.add(new ArrayList<>()));
    }

    private static void checkNew(Set<String> names, String name) {
      if (!names.add(name)) {
        throw twice(name);
      }
    }

    /**
     * Starts the next row, numbered on from the last.
     *
     * @return this builder
     */
    public Builder row() {
      return row(size == 0 ? 1 : rows[size - 1] + 1);
    }

    /**
     * Starts the next row under the number that it has in a file.
     *
     * @param number the number, above that of the last row
     * @return this builder
     * @throws IllegalArgumentException if the number is not above that of the last row
     */
    public Builder row(long number) {
      if (size > 0 && number <= rows[size - 1]) {
        throw Checks.outOfRange(
            "row", (double) number, "", "more than the last row, " + rows[size - 1] + ",");
      }
      if (size == rows.length) {
        rows = Arrays.copyOf(rows, 2 * size);
        cells.forEach(column -> column.grow(2 * size));
      }
      rows[size++] = number;
      texts.forEach(list -> list.add(""));
      return this;
    }

    /**
     * Sets a number of the row.
     *
     * @param column the index of the column of numbers, from 0
     * @param value the number in the unit of the column
     * @return this builder
     * @throws org.brewchem.OutOfRangeException if the number is infinite or NaN, or there is no
     *     such column
     * @throws IllegalStateException if no row is started yet
     */
    public Builder set(int column, double value) {
      int row = current();
      cells.get(Checks.index("column", column, cells.size())).set(row, rows[row], value);
      return this;
    }

    /**
     * Says that a number of the row cannot be read.
     *
     * @param column the index of the column of numbers, from 0
     * @param text what stands there
     * @param reason what is wrong with it, without a full stop
     * @return this builder
     * @throws org.brewchem.OutOfRangeException if there is no such column
     * @throws IllegalStateException if no row is started yet
     */
    public Builder unreadable(int column, String text, String reason) {
      int row = current();
      Cells of = cells.get(Checks.index("column", column, cells.size()));
      of.fail(row, new Failure.Unreadable(rows[row], of.header.toString(), text, reason));
      return this;
    }

    /**
     * Sets a text of the row.
     *
     * @param column the index of the column of text, from 0
     * @param text the text
     * @return this builder
     * @throws org.brewchem.OutOfRangeException if there is no such column
     * @throws IllegalStateException if no row is started yet
     */
    public Builder text(int column, String text) {
      Objects.requireNonNull(text, "text");
      texts.get(Checks.index("column of text", column, texts.size())).set(current(), text);
      return this;
    }

    private int current() {
      if (size == 0) {
        throw new IllegalStateException("row: none is started yet");
      }
      return size - 1;
    }

    /**
     * Returns how many rows were started.
     *
     * @return the count
     */
    public int size() {
      return size;
    }

    /**
     * Makes the table.
     *
     * @return the table of the rows so far
     */
    public Table build() {
      long[] numbers = Arrays.copyOf(rows, size);
      Map<String, Column> columns = new LinkedHashMap<>();
      cells.forEach(column -> columns.put(column.header.name(), column.build(numbers)));
      Map<String, List<String>> copies = new LinkedHashMap<>();
      for (int c = 0; c < textNames.size(); c++) {
        copies.put(textNames.get(c), List.copyOf(texts.get(c)));
      }
      return new Table(numbers, columns, copies);
    }
  }

  /** A column of numbers that grows. */
  private static final class Cells {

    final ColumnHeader header;
    private double[] values = new double[Builder.FIRST_CAPACITY];
    private final BitSet filled = new BitSet();
    private @Nullable Failure @Nullable [] failures;

    Cells(ColumnHeader header) {
      this.header = header;
    }

    void grow(int capacity) {
      values = Arrays.copyOf(values, capacity);
      if (failures != null) {
        failures = Arrays.copyOf(failures, capacity);
      }
    }

    void set(int index, long row, double value) {
      values[index] = Column.finite(header.toString(), row, value);
      filled.set(index);
      if (failures != null) {
        failures[index] = null;
      }
    }

    void fail(int index, Failure failure) {
      if (failures == null) {
        failures = new @Nullable Failure[values.length];
      }
      failures[index] = failure;
      filled.set(index);
    }

    Column build(long[] rows) {
      BitSet missing = new BitSet(rows.length);
      missing.set(0, rows.length);
      missing.andNot(filled);
      return new Column(
          header,
          rows,
          Arrays.copyOf(values, rows.length),
          missing,
          failures == null ? null : Arrays.copyOf(failures, rows.length));
    }
  }
}
