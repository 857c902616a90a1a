package org.brewchem.table;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.ActivityRule;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.substance.Component;
import org.brewchem.substance.Handling;
import org.brewchem.substance.Permissions;
import org.brewchem.substance.Solute;
import org.brewchem.substance.Use;
import org.brewchem.water.Water;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;
import org.jspecify.annotations.Nullable;

/**
 * The waters of a table, one a row: any figure of a water as a column.
 *
 * <p>Columns that are read, by name:
 *
 * <ul>
 *   <li>{@code calcium}, {@code sulfate} or {@code sulfate as sulfur} and all other headings of
 *       {@link org.brewchem.water.Constituent}: a mass or an amount concentration, of an ion a
 *       charge concentration too; "sulphate" and "sulphur" are known
 *   <li>{@code alkalinity}: a carbonate alkalinity, or {@code bicarbonate}: a mass concentration
 *   <li>{@code total carbon dioxide}: CO2, bicarbonate and carbonate together, as an amount
 *       concentration, or as CO2 in a mass concentration
 *   <li>{@code pH}, as measured at the temperature of the waters
 *   <li>{@code conductivity}, at a stated reference temperature, {@code total hardness} and {@code
 *       dry residue}: read by {@link #report} alone, and passed over in other units
 *   <li>{@code u(calcium)} and the like: the standard uncertainty of one of these, in a unit of the
 *       same meaning
 * </ul>
 *
 * <p>{@link #used()} and {@link #ignored()} tell which columns that were. Waters are closed to the
 * air. What balances their charge depends on the columns, not on the row. With a column of
 * alkalinity it is the alkalinity: an inert univalent ion carries the ions that are missing and the
 * error of the ion balance. Without one it is the ions; calcium, magnesium, sodium, chloride and
 * sulfate are then needed in each row, and other ions count where they are stated: a column that is
 * not there and an empty cell alike count as absent, and {@link #notices(Figure)} tells where.
 * Their carbon dioxide comes from {@code total carbon dioxide}; without that column, from {@code
 * pH} and alkalinity; without both it is taken to be as much as the alkalinity, bicarbonate alone.
 *
 * <p>A column holds plain numbers, found without an object for each row. Uncertainty, notices and
 * explanations have methods of their own, which treat each row as the single water that {@link
 * #water} returns. Immutable and thread-safe.
 */
public final class Waters {

  private final Table table;
  private final WaterColumns columns;
  private final Chemistry chemistry;
  private final Temperature temperature;
  private final int threads;

  private Waters(
      Table table,
      WaterColumns columns,
      Chemistry chemistry,
      Temperature temperature,
      int threads) {
    this.table = table;
    this.columns = columns;
    this.chemistry = chemistry;
    this.temperature = temperature;
    this.threads = threads;
  }

  /**
   * Reads the headings of a table: at 25 °C, under the standard chemistry, on one thread.
   *
   * @param table the table
   * @return its waters
   * @throws IllegalArgumentException if a column has a unit that its meaning does not know, or two
   *     columns state the same thing
   */
  public static Waters from(Table table) {
    return new Waters(
        table, WaterColumns.from(table), Chemistry.standard(), Temperature.ofCelsius(25), 1);
  }

  /**
   * Chooses the temperature of the waters, at which their pH was measured too.
   *
   * @param chosen 0 to 100 °C
   * @return the same waters at that temperature
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public Waters at(Temperature chosen) {
    Checks.inRange("temperature", chosen.inCelsius(), "°C", 0, 100);
    return new Waters(table, columns, chemistry, chosen, threads);
  }

  /**
   * Chooses the chemistry.
   *
   * @param chosen the chemistry
   * @return the same waters under that chemistry
   */
  public Waters under(Chemistry chosen) {
    Objects.requireNonNull(chosen, "chosen");
    return new Waters(table, columns, chosen, temperature, threads);
  }

  /**
   * Chooses how many threads solve the rows. The results are the same to the last bit.
   *
   * @param chosen 1 to 1024; the threads end with each calculation
   * @return the same waters
   * @throws IllegalArgumentException if the number is out of range
   */
  public Waters parallel(int chosen) {
    Checks.inRange("threads", chosen, "", 1, 1024);
    return new Waters(table, columns, chemistry, temperature, chosen);
  }

  /**
   * States the standard uncertainty of a column, the same in all rows.
   *
   * @param column the name of a column that is read, as the table spells it
   * @param standardUncertainty u in the unit of the column, 0 or more
   * @return the same waters with it
   * @throws IllegalArgumentException if no such column is read or the number is negative
   * @throws IllegalStateException if the table has a column of the uncertainty
   */
  public Waters withUncertainty(String column, double standardUncertainty) {
    return with(columns.with(column, input -> input.withUncertainty(standardUncertainty)));
  }

  /**
   * States the standard uncertainty of a column as a share of each of its numbers.
   *
   * @param column the name of a column that is read, as the table spells it
   * @param share u over the number, 0 to 1, such as 0.02
   * @return the same waters with it
   * @throws IllegalArgumentException if no such column is read or the share is out of range
   * @throws IllegalStateException if the table has a column of the uncertainty
   */
  public Waters withRelativeUncertainty(String column, double share) {
    return with(columns.with(column, input -> input.withRelativeUncertainty(share)));
  }

  private Waters with(WaterColumns changed) {
    return new Waters(table, changed, chemistry, temperature, threads);
  }

  private FigureRows rows() {
    Equilibria prototype = prototype();
    return new FigureRows(table, threads, () -> row(prototype), () -> single(prototype, chemistry));
  }

  private @Nullable Equilibria prototype() {
    return columns.missingForBalance().isPresent()
        ? null
        : Equilibria.of(columns.components(), temperature, chemistry);
  }

  private WaterRow row(@Nullable Equilibria prototype) {
    return new WaterRow(columns, table, prototype == null ? null : prototype.another());
  }

  private SingleWaters single(@Nullable Equilibria prototype, Chemistry under) {
    return new SingleWaters(columns, row(prototype), temperature, under);
  }

  /**
   * Finds a figure of all waters.
   *
   * @param figure any figure of a water
   * @return a column in the unit that the figure is shown in; a row that has no number has a
   *     failure
   * @throws IllegalStateException if the table is without the columns that the figure takes
   */
  public Column column(Figure<?> figure) {
    return rows().column(Objects.requireNonNull(figure, "figure"));
  }

  /**
   * Finds several figures of all waters in one pass over the rows.
   *
   * @param figures figures of a water
   * @return an unmodifiable list of a column to each, as of {@link #column}
   * @throws IllegalStateException if the table is without the columns that a figure takes
   */
  public List<Column> columns(Figure<?>... figures) {
    Objects.requireNonNull(figures, "figures");
    return List.copyOf(rows().columns(Figure.list(figures)));
  }

  /**
   * Finds a figure of all waters with its standard uncertainty, by walking each row as a single
   * water.
   *
   * @param figure any figure of a water
   * @return the column of {@link #column}, with {@link Column#standardUncertainty}; a row in which
   *     an input that matters states no uncertainty has none
   * @throws IllegalStateException if the table is without the columns that the figure takes
   */
  public Column columnWithUncertainty(Figure<?> figure) {
    return rows().columnWithUncertainty(Objects.requireNonNull(figure, "figure"));
  }

  /**
   * Returns what is notable about a figure, in the rows that have it.
   *
   * @param figure any figure of a water
   * @return the notices, row by row, each with the number of its row
   * @throws IllegalStateException if the table is without the columns that the figure takes
   */
  public List<Notice> notices(Figure<?> figure) {
    return rows().notices(Objects.requireNonNull(figure, "figure"));
  }

  /**
   * Returns what is notable about the columns: those that are not read although their names are
   * nearly known, or that decide nothing, and those with numbers that are unusual in a water.
   *
   * @return the notices, one for a column; about the first unusual row, which counts the others
   */
  public List<Notice> notices() {
    return columns.notices();
  }

  /**
   * Answers a figure of one water, with its uncertainty, its notices and the steps that found it.
   *
   * @param figure the figure
   * @param index the row's index, from 0
   * @param <Q> the meaning of its value
   * @return the answer; unknown, with why, where the row does not have it
   * @throws org.brewchem.OutOfRangeException if there is no such row
   */
  public <Q> Answer<Q> answer(Figure<Q> figure, int index) {
    Water single = water(index);
    return FigureRows.asked(figure, () -> single.step(figure));
  }

  /**
   * Explains a figure of one water.
   *
   * @param figure the figure
   * @param index the row's index, from 0
   * @return the steps that were walked; where the row does not have the figure, how far they came
   *     and what is missing
   * @throws org.brewchem.OutOfRangeException if there is no such row
   */
  public Explanation explain(Figure<?> figure, int index) {
    return answer(figure, index).explain();
  }

  /**
   * Returns one row as a water.
   *
   * @param index the row's index, from 0
   * @return the water, as the row states it
   * @throws org.brewchem.OutOfRangeException if there is no such row
   */
  public Water water(int index) {
    int checked = Checks.index("row index", index, table.size());
    Map<Figure<?>, Step> stated = single(null, chemistry).steps(checked);
    return Water.reported(stated, other -> single(prototype(), other).contents(checked, stated))
        .under(chemistry);
  }

  /**
   * Returns one row as the report of a laboratory, to be judged like one.
   *
   * @param index the row's index, from 0
   * @return the report; a cell such as {@code < 0.5}, which no column of numbers can hold, is below
   *     that limit, and other cells without a usable number are left out of it
   * @throws org.brewchem.OutOfRangeException if there is no such row
   */
  public WaterReport report(int index) {
    return reports().report(Checks.index("row index", index, table.size()));
  }

  private RowReports reports() {
    return new RowReports(table, columns, temperature);
  }

  /**
   * Returns what is odd about the reports, row by row, as {@link WaterReport#notices} judges each
   * of them; before that, a basis on which all of them seem to be.
   *
   * @return the notices, those of rows with the number of the row
   */
  public List<Notice> reportNotices() {
    List<Notice> notices = new ArrayList<>();
    for (SourceBasis basis : bases()) {
      if (basis.suspected()) {
        notices.add(Notice.of(basis.code(), "ion balance", basis.toString()));
      }
    }
    RowReports reports = reports();
    List<List<Notice>> ofRows = new ArrayList<>(Collections.nCopies(table.size(), List.of()));
    Rows.run(
        table.size(),
        threads,
        () ->
            i -> {
              ofRows.set(i, reports.notices(i));
              return null;
            });
    ofRows.forEach(notices::addAll);
    return List.copyOf(notices);
  }

  /**
   * Looks at all reports together. For each column that may be on another basis it finds the median
   * of the ion balances that the other basis would give. A single report seldom decides that.
   *
   * @return one view for each reading, of which those are suspected that take most of the imbalance
   *     away in most rows; none where no row has a balance
   */
  public List<SourceBasis> bases() {
    return reports().bases(Collections.nCopies(table.size(), ""));
  }

  /**
   * Looks at all reports of each source together, such as each laboratory or year.
   *
   * @param textColumn the column of text that names the source of a row
   * @return as {@link #bases()}, source by source
   * @throws IllegalArgumentException if the table has no such column of text
   */
  public List<SourceBasis> basesBy(String textColumn) {
    return reports().bases(table.texts(textColumn));
  }

  /**
   * Returns the columns that were read.
   *
   * @return their names as the table spells them, those of uncertainties included
   */
  public List<String> used() {
    return columns.used();
  }

  /**
   * Returns the columns that nothing was read from: of other names, of text, or without effect
   * beside others. {@link #notices()} tells which of them may be misspelt.
   *
   * @return their names as the table spells them
   */
  public List<String> ignored() {
    return columns.ignored();
  }

  /**
   * Finds the pH of the waters. Where alkalinity and pH are what is known, it is the measured pH of
   * each row in which the two can stand together.
   *
   * @return the column {@code pH}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column pH() {
    return column(Figures.PH_VALUE);
  }

  /**
   * Returns the carbonate alkalinity: as the table states it, or else what the proton balance finds
   * from ions and total carbon dioxide.
   *
   * @return the column {@code carbonate alkalinity [mg/L as CaCO3]}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column alkalinity() {
    return column(Figures.CARBONATE_ALKALINITY);
  }

  /**
   * Returns the ionic strength of the waters.
   *
   * @return the column {@code ionic strength [mmol/kg]}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column ionicStrength() {
    return column(Figures.IONIC_STRENGTH);
  }

  /**
   * Returns the rows whose ionic strength lies beyond {@link
   * ActivityRule#RANGE_MOLES_PER_KILOGRAM}, so that their pH and alkalinity are not to be trusted.
   *
   * @return the numbers of the rows in ascending order, in a new array; none at level ideal, which
   *     has no activity rule
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public long[] beyondActivityRange() {
    Column strength = ionicStrength();
    return IntStream.range(0, strength.size())
        .filter(i -> chemistry.level() != Level.IDEAL)
        .filter(strength::isPresent)
        .filter(i -> strength.raw(i) > 1000 * ActivityRule.RANGE_MOLES_PER_KILOGRAM)
        .mapToLong(strength::row)
        .toArray();
  }

  /**
   * Returns the calcium hardness.
   *
   * @return the column {@code calcium hardness [mg/L as CaCO3]}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column calciumHardness() {
    return column(WaterFigures.CALCIUM_HARDNESS);
  }

  /**
   * Returns the magnesium hardness.
   *
   * @return the column {@code magnesium hardness [mg/L as CaCO3]}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column magnesiumHardness() {
    return column(WaterFigures.MAGNESIUM_HARDNESS);
  }

  /**
   * Returns the total hardness, calcium and magnesium together.
   *
   * @return the column {@code total hardness [mg/L as CaCO3]}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column totalHardness() {
    return column(WaterFigures.TOTAL_HARDNESS);
  }

  /**
   * Returns the residual alkalinity after Kolbach, of the alkalinity of {@link #alkalinity}.
   *
   * @return the column {@code residual alkalinity [mg/L as CaCO3]}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column residualAlkalinity() {
    return column(WaterFigures.RESIDUAL_ALKALINITY);
  }

  /**
   * Returns the ion balance of the alkalinity and the ions. What is missing, in a row or in the
   * table, counts as absent; {@link #notices(Figure)} tells where.
   *
   * @return the column {@code ion balance [%]}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column ionBalance() {
    return column(WaterFigures.ION_BALANCE);
  }

  /**
   * Returns the ratio of sulfate to chloride by mass. A row without chloride has no ratio.
   *
   * @return the column {@code sulfate to chloride [by mass]}
   * @throws IllegalStateException if the table has no sulfate or no chloride
   */
  public Column sulfateToChloride() {
    return column(Figures.SULFATE_TO_CHLORIDE);
  }

  /**
   * Finds how much of an acid or a base brings each water to a pH, its volume unchanged.
   *
   * @param solute the acid or the base
   * @param target the pH to reach
   * @return such as the column {@code lactic acid to pH 5.5 [mmol/L]}, with its cautions; a row
   *     that the solute cannot bring there has a failure
   * @throws IllegalArgumentException if the solute is none that may be dosed into brewing water;
   *     see {@link Permissions}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column doseOf(Solute solute, PH target) {
    Permissions.of(solute, Use.BREWING_WATER).orThrow();
    Optional<String> without = columns.missingForBalance();
    if (without.isPresent()) {
      throw columns.missing(without.get());
    }
    String heading = solute.name() + " to " + target + " [mmol/L]";
    Set<Component> components = columns.components();
    components.addAll(solute.components().keySet());
    Equilibria prototype = Equilibria.of(components, temperature, chemistry);
    double[] added = new double[prototype.components().size()];
    solute.components().forEach((component, moles) -> added[prototype.indexOf(component)] = moles);
    double[] doses = new double[table.size()];
    @Nullable Failure[] failures =
        Rows.run(
            doses.length,
            threads,
            () -> {
              WaterRow row = row(prototype);
              FigureRows.Node pH = Objects.requireNonNull(row.leaf(Figures.PH_VALUE));
              return i -> {
                Failure failure = pH.find(i);
                if (failure != null) {
                  return failure;
                }
                try {
                  doses[i] =
                      row.equilibria().doseTo(added, target) * WaterRow.KILOGRAMS_PER_LITRE * 1000;
                  return null;
                } catch (NoSolutionException e) {
                  return row.noSolution(i, heading, e);
                }
              };
            });
    return Column.calculated(heading, table.rows(), doses, failures)
        .withCautions(Handling.cautionsOf(solute));
  }

  /**
   * Returns how many waters there are, under what they are solved, and which columns they come
   * from.
   *
   * @return such as {@code 3 waters at 25 °C, from calcium, alkalinity, pH; ignored: sample}
   */
  @Override
  public String toString() {
    return NumberText.count(table.size(), "water", "waters")
        + " at "
        + temperature
        + ", from "
        + String.join(", ", used())
        + (ignored().isEmpty() ? "" : "; ignored: " + String.join(", ", ignored()));
  }
}
