package org.brewchem.table;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;

/**
 * The beers of a table, one a row, each buffered by a stand-in.
 *
 * <p>Columns that are read, by name: {@code pH}; {@code titratable acidity}, to one end point in
 * all rows; {@code calcium}, {@code magnesium}, {@code sodium}, {@code potassium}, {@code
 * chloride}, {@code sulfate} and {@code nitrate}, where there are such columns; {@code u(pH)} and
 * the like, the standard uncertainty of one of these. An ion without a number in a row is unknown
 * for that beer.
 *
 * <p>A row answers whatever a {@link Beer} answers, because it is made into one: unlike waters,
 * beers are not solved side by side. Immutable and thread-safe.
 */
public final class Beers {

  private static final Temperature ROOM = Temperature.ofCelsius(20);

  private final Table table;
  private final BeerColumns columns;
  private final Temperature temperature;
  private final Chemistry chemistry;
  private final int threads;

  private Beers(
      Table table, BeerColumns columns, Temperature temperature, Chemistry chemistry, int threads) {
    this.table = table;
    this.columns = columns;
    this.temperature = temperature;
    this.chemistry = chemistry;
    this.threads = threads;
  }

  /**
   * Reads the headings of a table.
   *
   * @param table the table; the heading of the acidity says the end point, such as {@code
   *     titratable acidity [g/L as lactic acid, to pH 8.2]}
   * @return its beers, measured at 20 °C, under the standard chemistry, with one thread
   * @throws IllegalArgumentException if there is no column {@code pH} or {@code titratable
   *     acidity}, or a column has a unit that its meaning does not know
   */
  public static Beers from(Table table) {
    return new Beers(
        Objects.requireNonNull(table, "table"),
        BeerColumns.from(table),
        ROOM,
        Chemistry.standard(),
        1);
  }

  /**
   * States the temperature at which all were measured.
   *
   * @param measured the temperature, 0 to 100 °C
   * @return the same beers at it
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public Beers measuredAt(Temperature measured) {
    Checks.inRange("temperature", measured.inCelsius(), "°C", 0, 100);
    return new Beers(table, columns, measured, chemistry, threads);
  }

  /**
   * Chooses the chemistry.
   *
   * @param chosen the chemistry
   * @return the same beers under it
   */
  public Beers under(Chemistry chosen) {
    return new Beers(
        table, columns, temperature, Objects.requireNonNull(chosen, "chosen chemistry"), threads);
  }

  /**
   * Chooses how many threads find columns. What they find does not depend on it.
   *
   * @param count 1 to 1024
   * @return the same beers
   * @throws IllegalArgumentException if the count is out of range
   */
  public Beers parallel(int count) {
    Checks.inRange("threads", count, "", 1, 1024);
    return new Beers(table, columns, temperature, chemistry, count);
  }

  /**
   * States the standard uncertainty of a column, the same in all rows.
   *
   * @param column the name of a column that is read
   * @param standardUncertainty u in the unit of the column, 0 or more
   * @return the same beers with it
   * @throws IllegalArgumentException if no such column is read or the number is negative
   * @throws IllegalStateException if the table has a column of the uncertainty
   */
  public Beers withUncertainty(String column, double standardUncertainty) {
    return with(columns.with(column, input -> input.withUncertainty(standardUncertainty)));
  }

  /**
   * States the standard uncertainty of a column as a share of each of its numbers.
   *
   * @param column the name of a column that is read
   * @param share u over the number, 0 to 1, such as 0.02
   * @return the same beers with it
   * @throws IllegalArgumentException if no such column is read or the share is out of range
   * @throws IllegalStateException if the table has a column of the uncertainty
   */
  public Beers withRelativeUncertainty(String column, double share) {
    return with(columns.with(column, input -> input.withRelativeUncertainty(share)));
  }

  private Beers with(BeerColumns changed) {
    return new Beers(table, changed, temperature, chemistry, threads);
  }

  private SingleBeers single() {
    return new SingleBeers(table, columns, temperature, chemistry);
  }

  private FigureRows rows() {
    return new FigureRows(table, threads, this::single, this::single);
  }

  /**
   * Finds a figure of all beers.
   *
   * @param figure any figure of a beer
   * @return a column in the unit that the figure is shown in; a row that has no number has a
   *     failure
   */
  public Column column(Figure<?> figure) {
    return rows().column(Objects.requireNonNull(figure, "figure"));
  }

  /**
   * Finds figures of all beers in one pass over the rows, each row made once.
   *
   * @param figures any figures of a beer
   * @return their columns, in this order
   */
  public List<Column> columns(Figure<?>... figures) {
    Objects.requireNonNull(figures, "figures");
    return rows().columns(Arrays.asList(figures));
  }

  /**
   * Finds a figure of all beers with its standard uncertainty.
   *
   * @param figure any figure of a beer
   * @return the column of {@link #column}, with {@link Column#standardUncertainty}; a row in which
   *     an input states no uncertainty has none
   */
  public Column columnWithUncertainty(Figure<?> figure) {
    return rows().columnWithUncertainty(Objects.requireNonNull(figure, "figure"));
  }

  /**
   * Returns the beer of a row, to dose or to blend.
   *
   * @param index the row's index, from 0
   * @return the beer
   * @throws org.brewchem.OutOfRangeException if there is no such row
   * @throws IllegalArgumentException if the row is no beer; the message says which cell is at fault
   */
  public Beer beer(int index) {
    SingleBeers single = single();
    Failure failure = single.fault(Checks.index("row index", index, table.size()));
    if (failure != null) {
      throw new IllegalArgumentException(failure.toString());
    }
    return single.beer(index);
  }

  /**
   * Answers a figure of one beer, with its uncertainty and the steps that found it.
   *
   * @param figure the figure
   * @param index the row's index, from 0
   * @param <Q> the meaning of its value
   * @return the answer; unknown, with why, where the row does not have it
   * @throws org.brewchem.OutOfRangeException if there is no such row
   */
  public <Q> Answer<Q> answer(Figure<Q> figure, int index) {
    int checked = Checks.index("row index", index, table.size());
    return FigureRows.asked(figure, () -> single().at(checked).step(figure));
  }

  /**
   * Explains a figure of one beer.
   *
   * @param figure the figure
   * @param index the row's index, from 0
   * @return the steps that were walked
   * @throws org.brewchem.OutOfRangeException if there is no such row
   */
  public Explanation explain(Figure<?> figure, int index) {
    return answer(figure, index).explain();
  }

  /**
   * Returns the columns that were read.
   *
   * @return their names, those of uncertainties included
   */
  public List<String> used() {
    return columns.used();
  }

  /**
   * Returns the columns that nothing was read from. {@link #notices} tells which of them may be
   * misspelt.
   *
   * @return their names, those of columns of text included
   */
  public List<String> ignored() {
    return columns.ignored();
  }

  /**
   * Returns what is notable: columns that are not read although their names are nearly known, and
   * per column the first row whose number is not usual in a beer, with how many more there are.
   *
   * @return the notices; those about headings are about no row
   */
  public List<Notice> notices() {
    return columns.notices();
  }
}
