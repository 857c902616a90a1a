package org.brewchem.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.EffectiveEquivalents;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Handling;
import org.brewchem.substance.Permissions;
import org.brewchem.substance.Use;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.TitrationCode;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/**
 * The titrations of a table, one a row: acidities from volumes.
 *
 * <p>Columns that are read, by name: {@code volume}, the titre; {@code sample}, the volume of the
 * sample, unless it is the same for all rows; {@code titrant}, the amount concentration of sodium
 * or potassium hydroxide, unless it is the same for all rows; {@code blank}, the titre without
 * sample, where there is such a column; {@code u(volume)} and the like, the standard uncertainty of
 * one of these. TA = titrant x (volume - blank) / sample.
 *
 * <p>The figure that a row answers is {@link Figures#titratableAcidity} to the end point, and what
 * is a formula of it. Immutable and thread-safe.
 *
 * @see org.brewchem.titration.AcidityResult
 */
public final class Acidities {

  private static final Temperature ROOM = Temperature.ofCelsius(20);

  private final Table table;
  private final PH endPoint;
  private final TitrationColumns columns;

  /** mL. */
  private final Optional<Traced> sampleOfAll;

  /** Eq/L. */
  private final Optional<Traced> titrantOfAll;

  private Acidities(
      Table table,
      PH endPoint,
      TitrationColumns columns,
      Optional<Traced> sampleOfAll,
      Optional<Traced> titrantOfAll) {
    this.table = table;
    this.endPoint = endPoint;
    this.columns = columns;
    this.sampleOfAll = sampleOfAll;
    this.titrantOfAll = titrantOfAll;
  }

  /**
   * Reads the headings of a table.
   *
   * @param table the table
   * @param endPoint the pH to which all its samples were titrated
   * @return its titrations
   * @throws IllegalArgumentException if there is no column {@code volume}, or a column has a unit
   *     that its meaning does not know
   */
  public static Acidities from(Table table, PH endPoint) {
    return new Acidities(
        table, endPoint, TitrationColumns.from(table), Optional.empty(), Optional.empty());
  }

  /**
   * States the sample of all rows, without an uncertainty.
   *
   * @param volumeOfAll the volume taken, above 0
   * @return the same titrations with it
   * @throws IllegalArgumentException if the volume is 0
   * @throws IllegalStateException if the table has a column {@code sample}
   */
  public Acidities withSample(Volume volumeOfAll) {
    return withSample(volumeOfAll, OptionalDouble.empty());
  }

  /**
   * States the sample of all rows.
   *
   * @param volumeOfAll the volume taken, above 0
   * @param standardUncertainty its u
   * @return the same titrations with it
   * @throws IllegalArgumentException if the volume is 0
   * @throws IllegalStateException if the table has a column {@code sample}
   */
  public Acidities withSample(Volume volumeOfAll, Volume standardUncertainty) {
    return withSample(volumeOfAll, OptionalDouble.of(standardUncertainty.inMillilitres()));
  }

  private Acidities withSample(Volume volumeOfAll, OptionalDouble standardUncertainty) {
    once(TitrationColumns.SAMPLE, columns.sample);
    double millilitres =
        Checks.positive(TitrationColumns.SAMPLE, volumeOfAll.inMillilitres(), "mL");
    Traced same = Traced.stated(TitrationColumns.SAMPLE, millilitres, standardUncertainty, "mL");
    return new Acidities(table, endPoint, columns, Optional.of(same), titrantOfAll);
  }

  /**
   * States the titrant of all rows.
   *
   * @param alkali an alkali
   * @return the same titrations with it, and with its uncertainty
   * @throws IllegalArgumentException if the titrant is an acid
   * @throws IllegalStateException if the table has a column {@code titrant}
   */
  public Acidities withTitrant(Titrant alkali) {
    once(TitrationColumns.TITRANT, columns.titrant);
    if (!alkali.substance().isAlkali()) {
      throw new IllegalArgumentException(
          "titrant: " + alkali + " is not possible; an alkali is needed");
    }
    return new Acidities(
        table, endPoint, columns, sampleOfAll, Optional.of(alkali.equivalentsPerLitre()));
  }

  /**
   * States the standard uncertainty of a column, the same in all rows.
   *
   * @param column the name of a column that is read
   * @param standardUncertainty u in the unit of the column, 0 or more
   * @return the same titrations with it
   * @throws IllegalArgumentException if no such column is read or the number is negative
   * @throws IllegalStateException if the table has a column of the uncertainty
   */
  public Acidities withUncertainty(String column, double standardUncertainty) {
    return with(columns.with(column, input -> input.withUncertainty(standardUncertainty)));
  }

  /**
   * States the standard uncertainty of a column as a share of each of its numbers.
   *
   * @param column the name of a column that is read
   * @param share u over the number, 0 to 1, such as 0.002
   * @return the same titrations with it
   * @throws IllegalArgumentException if no such column is read or the share is out of range
   * @throws IllegalStateException if the table has a column of the uncertainty
   */
  public Acidities withRelativeUncertainty(String column, double share) {
    return with(columns.with(column, input -> input.withRelativeUncertainty(share)));
  }

  private Acidities with(TitrationColumns changed) {
    return new Acidities(table, endPoint, changed, sampleOfAll, titrantOfAll);
  }

  private static void once(String name, Optional<Input> column) {
    if (column.isPresent()) {
      throw new IllegalStateException(
          name + ": the table has a column of it; leave it out with Table.without");
    }
  }

  private SingleTitrations single() {
    return new SingleTitrations(table, columns, endPoint, sampleOfAll, titrantOfAll);
  }

  private FigureRows rows() {
    return new FigureRows(table, 1, this::single, this::single);
  }

  /**
   * Finds a figure of all titrations.
   *
   * @param figure the titratable acidity to the end point, or a formula of it
   * @return a column in the unit that the figure is shown in; a row that has no number has a
   *     failure
   * @throws IllegalStateException if there is neither a column nor a common value of sample or
   *     titrant
   */
  public Column column(Figure<?> figure) {
    return rows().column(Objects.requireNonNull(figure, "figure"));
  }

  /**
   * Finds a figure of all titrations with its standard uncertainty.
   *
   * @param figure the titratable acidity to the end point, or a formula of it
   * @return the column of {@link #column}, with {@link Column#standardUncertainty}; a row in which
   *     an input states no uncertainty has none
   * @throws IllegalStateException if there is neither a column nor a common value of sample or
   *     titrant
   */
  public Column columnWithUncertainty(Figure<?> figure) {
    return rows().columnWithUncertainty(Objects.requireNonNull(figure, "figure"));
  }

  /**
   * Answers a figure of one titration, with its uncertainty and the steps that found it.
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
   * Explains a figure of one titration.
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
   * per column the first row whose number is not usual in its place, with how many more there are;
   * a sample of all rows, blanks that take more than the sample, alike; and the greatest acidity,
   * if a sample of it has to be asked for gas, with how many more there are.
   *
   * @return the notices; those about headings and about what holds for all rows are about no row
   */
  public List<Notice> notices() {
    List<Notice> all = new ArrayList<>(columns.notices());
    sampleOfAll
        .flatMap(same -> TitrationColumns.USUAL_SAMPLE.judge(TitrationColumns.SAMPLE, same.value()))
        .ifPresent(all::add);
    titrantOfAll
        .flatMap(
            same -> TitrationColumns.USUAL_TITRANT.judge(TitrationColumns.TITRANT, same.value()))
        .ifPresent(all::add);
    blankAboveVolume().ifPresent(all::add);
    unusualAcidity().ifPresent(all::add);
    return List.copyOf(all);
  }

  private Optional<Notice> unusualAcidity() {
    if ((columns.sample.isEmpty() && sampleOfAll.isEmpty())
        || (columns.titrant.isEmpty() && titrantOfAll.isEmpty())) {
      return Optional.empty();
    }
    Column own = acidity();
    int[] rows =
        IntStream.range(0, table.size())
            .filter(
                i ->
                    own.isPresent(i)
                        && acidityOf(own.raw(i)).inGramsPerLitreAs(Acid.LACTIC)
                            > AcidityResult.UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC)
            .toArray();
    return Arrays.stream(rows)
        .boxed()
        .max(Comparator.comparingDouble(own::raw))
        .flatMap(
            most ->
                AcidityResult.plausibility(acidityOf(own.raw(most)), ROOM).stream()
                    .map(
                        one ->
                            Notice.ofRow(
                                one.code(),
                                one.subject(),
                                table.row(most),
                                one.text() + inAll(rows.length)))
                    .findFirst());
  }

  private TitratableAcidity acidityOf(double milliequivalentsPerLitre) {
    return TitratableAcidity.ofMilliequivalentsPerLitre(milliequivalentsPerLitre, endPoint);
  }

  private Optional<Notice> blankAboveVolume() {
    if (columns.blank.isEmpty()) {
      return Optional.empty();
    }
    Input blank = columns.blank.get();
    int[] rows =
        IntStream.range(0, table.size())
            .filter(i -> blank.fault(i) == null && columns.volume.fault(i) == null)
            .filter(i -> blank.at(i) > columns.volume.at(i))
            .toArray();
    return rows.length == 0
        ? Optional.empty()
        : Optional.of(
            Notice.ofRow(
                TitrationCode.BLANK_ABOVE_TITRE,
                TitrationColumns.BLANK,
                table.row(rows[0]),
                "the blank takes more than the sample: the result is below 0"
                    + inAll(rows.length)));
  }

  private static String inAll(int rows) {
    return rows == 1 ? "" : "; rows in all: " + rows;
  }

  /**
   * Returns the acidities.
   *
   * @return such as the column {@code titratable acidity [mEq/L, to pH 8.2]}
   * @throws IllegalStateException if there is neither a column nor a common value of sample or
   *     titrant
   */
  public Column acidity() {
    return column(Figures.titratableAcidity(endPoint).shownIn(Scales.acidity(endPoint)));
  }

  /**
   * Returns the acidities as an acid.
   *
   * @param basis the acid that they are stated as
   * @return such as the column {@code titratable acidity [g/L as lactic acid, to pH 8.2]}
   * @throws IllegalStateException if there is neither a column nor a common value of sample or
   *     titrant
   */
  public Column acidityAs(AcidBasis basis) {
    return column(Figures.titratableAcidity(endPoint, basis));
  }

  /**
   * Estimates how much of an acid brings each sample to an acidity: what is missing, divided by the
   * {@link EffectiveEquivalents} that a mole of the acid delivers at the end point, counted ideal
   * and at 25 °C. Dilution, the change of the ionic strength and ion pairs are neglected, which
   * makes a few per cent in a beer; the dose to pour comes from the liquid itself.
   *
   * @param acid the acid
   * @param target the acidity to reach, to the same end point
   * @return such as the column {@code lactic acid to 30 mEq/L, to pH 8.2 by effective equivalents
   *     [mmol/L]}; a row that is above the target has a failure
   * @throws IllegalArgumentException if the target has another end point, or the acid is none that
   *     may be dosed into beer; see {@link Permissions}
   * @throws IllegalStateException if there is neither a column nor a common value of sample or
   *     titrant
   */
  public Column doseByEffectiveEquivalents(Acid acid, TitratableAcidity target) {
    Objects.requireNonNull(acid, "acid");
    Permissions.of(acid, Use.BEER).orThrow();
    if (!target.endPoint().equals(endPoint)) {
      throw new IllegalArgumentException(
          "target: " + target + " is not possible; the samples were titrated to " + endPoint);
    }
    Column own = acidity();
    double perMole = EffectiveEquivalents.of(acid).at(endPoint);
    double wanted = target.inMilliequivalentsPerLitre();
    String heading = acid.name() + " to " + target + " by effective equivalents [mmol/L]";
    double[] values = new double[table.size()];
    @Nullable Failure[] failures =
        Rows.run(
            values.length,
            1,
            () ->
                i -> {
                  Failure failure = own.failureOrNull(i);
                  if (failure != null) {
                    return failure;
                  }
                  double missing = wanted - own.raw(i);
                  if (missing < 0) {
                    return new Failure.NoSolution(
                        table.row(i),
                        heading,
                        "the sample has "
                            + NumberText.plain(own.raw(i))
                            + " mEq/L already, more than the target");
                  }
                  values[i] = missing / perMole;
                  return null;
                });
    return Column.calculated(heading, table.rows(), values, failures)
        .withCautions(Handling.cautionsOf(acid));
  }

  /**
   * Returns how many titrations there are, and which columns they come from.
   *
   * @return such as {@code 3 titrations to pH 8.2, from volume, sample; ignored: name}
   */
  @Override
  public String toString() {
    return NumberText.count(table.size(), "titration", "titrations")
        + " to "
        + endPoint
        + ", from "
        + String.join(", ", used())
        + (ignored().isEmpty() ? "" : "; ignored: " + String.join(", ", ignored()));
  }
}
