package org.brewchem.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;
import org.brewchem.units.ColumnHeader;

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
    List<String> found = texts.get(Objects.requireNonNull(name, "name"));
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
              + NumberText.count(perRow.size(), "row is", "rows are")
              + " not possible; the table has "
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
    Map<String, List<String>> fewerTexts = new LinkedHashMap<>(texts);
    fewer.remove(name);
    fewerTexts.remove(name);
    return new Table(rows, fewer, fewerTexts);
  }

  /**
   * Summarises the numbers of a column. A limit below which a cell lies counts, whether it is in
   * the cell itself or, as a reader of files leaves it, in a column {@code NAME below}.
   *
   * @param name its name without the unit
   * @return counts, mean, standard deviation and quantiles
   * @throws IllegalArgumentException if there is no column of numbers of that name, or its limits
   *     have another unit
   */
  public ColumnStatistics statistics(String name) {
    return ColumnStatistics.of(column(name), columns.get(name + " below"));
  }

  /**
   * Keeps some columns.
   *
   * @param names of columns of numbers, without the unit, and of text; one or more, each once
   * @return the new table, its columns in this order, those of text first
   * @throws IllegalArgumentException if there is none of a name, a name comes twice or none is
   *     given
   */
  public Table select(String... names) {
    Objects.requireNonNull(names, "names");
    if (names.length == 0) {
      throw Checks.outOfRange("names of columns", 0, "", "1 or more");
    }
    Table selected = new Table(rows, Map.of(), Map.of());
    for (String name : names) {
      selected =
          texts.containsKey(name)
              ? selected.withTexts(name, texts(name))
              : selected.with(column(name));
    }
    return selected;
  }

  /**
   * Gives a column another name; its unit stays.
   *
   * @param name its name without the unit
   * @param to the new name without a unit
   * @return the new table, the column at its place
   * @throws IllegalArgumentException if there is none of that name, the table has the new one
   *     already or it cannot be read
   */
  public Table renamed(String name, String to) {
    Objects.requireNonNull(to, "to");
    if (!texts.containsKey(name)) {
      column(name);
    }
    Table renamed = new Table(rows, Map.of(), Map.of());
    for (Column column : columns.values()) {
      renamed = renamed.with(column.name().equals(name) ? column.renamed(to) : column);
    }
    for (String text : texts.keySet()) {
      renamed = renamed.withTexts(text.equals(name) ? to : text, texts(text));
    }
    return renamed;
  }

  /**
   * Keeps the rows whose number in a column passes a test. A row without a number there is left
   * out.
   *
   * @param name name of the column without the unit
   * @param keep tells whether a number, in the unit of the column, passes
   * @return the new table; its rows keep their numbers
   * @throws IllegalArgumentException if there is no column of numbers of that name
   */
  public Table where(String name, DoublePredicate keep) {
    Objects.requireNonNull(keep, "keep");
    Column column = column(name);
    return at(
        IntStream.range(0, size()).filter(i -> column.isPresent(i) && keep.test(column.raw(i))));
  }

  /**
   * Keeps the rows whose text in a column passes a test.
   *
   * @param name name of the column of text
   * @param keep tells whether a text passes; it is empty where nothing stands
   * @return the new table; its rows keep their numbers
   * @throws IllegalArgumentException if there is no column of text of that name
   */
  public Table whereText(String name, Predicate<String> keep) {
    Objects.requireNonNull(keep, "keep");
    List<String> perRow = texts(name);
    return at(IntStream.range(0, size()).filter(i -> keep.test(perRow.get(i))));
  }

  /**
   * Keeps the first ten rows.
   *
   * @return the new table; all rows if there are fewer
   */
  public Table head() {
    return head(10);
  }

  /**
   * Keeps the first rows.
   *
   * @param count how many, 0 or more; all if there are fewer
   * @return the new table
   * @throws IllegalArgumentException if the count is negative
   */
  public Table head(int count) {
    Checks.nonNegative("count of rows", count, "");
    return at(IntStream.range(0, Math.min(size(), count)));
  }

  /**
   * Sorts the rows by a column, the least number first, or texts by the code of their characters.
   * Rows without a number come last; rows that are alike keep their order.
   *
   * @param name name of the column, of numbers without the unit or of text
   * @return the new table; its rows keep their numbers
   * @throws IllegalArgumentException if there is no column of that name
   */
  public Table sortedBy(String name) {
    return sortedBy(name, false);
  }

  /**
   * Sorts the rows by a column, the greatest number or the last text first. Rows without a number
   * come last; rows that are alike keep their order.
   *
   * @param name name of the column, of numbers without the unit or of text
   * @return the new table; its rows keep their numbers
   * @throws IllegalArgumentException if there is no column of that name
   */
  public Table sortedDescendingBy(String name) {
    return sortedBy(name, true);
  }

  private Table sortedBy(String name, boolean down) {
    Comparator<Integer> order;
    if (texts.containsKey(name)) {
      List<String> perRow = texts(name);
      order = Comparator.comparing(perRow::get);
      order = down ? order.reversed() : order;
    } else {
      Column column = column(name);
      Comparator<Integer> byNumber = Comparator.comparingDouble(i -> column.get(i).orElse(0));
      order =
          Comparator.<Integer, Boolean>comparing(i -> !column.isPresent(i))
              .thenComparing(down ? byNumber.reversed() : byNumber);
    }
    return at(IntStream.range(0, size()).boxed().sorted(order).mapToInt(Integer::intValue));
  }

  private Table at(IntStream of) {
    int[] indices = of.toArray();
    Map<String, Column> picked = new LinkedHashMap<>();
    columns.forEach((name, column) -> picked.put(name, column.at(indices)));
    Map<String, List<String>> pickedTexts = new LinkedHashMap<>();
    texts.forEach(
        (name, perRow) ->
            pickedTexts.put(name, Arrays.stream(indices).mapToObj(perRow::get).toList()));
    return new Table(Arrays.stream(indices).mapToLong(i -> rows[i]).toArray(), picked, pickedTexts);
  }

  /**
   * Makes a table of failures, such as those of a calculated column, to write them into a file.
   *
   * @param failures the failures
   * @return a row of texts to each, under the number of the row that failed: {@code column}, {@code
   *     kind} and {@code reason}
   */
  public static Table ofFailures(List<Failure> failures) {
    Objects.requireNonNull(failures, "failures");
    long[] rows = failures.stream().mapToLong(Failure::row).toArray();
    return new Table(rows, Map.of(), Map.of())
        .withTexts("column", failures.stream().map(Failure::column).toList())
        .withTexts("kind", failures.stream().map(Failure::kind).toList())
        .withTexts("reason", failures.stream().map(Failure::reason).toList());
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
    return TableText.of(rows, texts, columns.values());
  }

  /** Collects rows. A cell that is not set is missing. Mutable, for one thread. */
  public static final class Builder {

    private final List<GrowingColumn> cells;
    private final List<String> textNames;
    private final List<List<String>> texts = new ArrayList<>();
    private long[] rows = new long[GrowingColumn.FIRST_CAPACITY];
    private int size;

    private Builder(List<String> headings, List<String> textNames) {
      cells = headings.stream().map(ColumnHeader::parse).map(GrowingColumn::new).toList();
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
      GrowingColumn of = cells.get(Checks.index("column", column, cells.size()));
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

    @Override
    public String toString() {
      return size + (size == 1 ? " row so far" : " rows so far");
    }
  }
}
