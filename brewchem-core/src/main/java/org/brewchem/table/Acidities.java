package org.brewchem.table;

import java.util.List;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.internal.ClosedForms;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.EffectiveEquivalents;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Permissions;
import org.brewchem.substance.Use;
import org.brewchem.titration.Titrant;
import org.brewchem.units.LabUnits;
import org.jspecify.annotations.Nullable;

/**
 * The titrations of a table, one a row: acidities from volumes.
 *
 * <p>Columns that are read, by name: {@code volume}, the titre; {@code sample}, the volume of the
 * sample, unless it is the same for all rows; {@code titrant}, the amount concentration of sodium
 * or potassium hydroxide, unless it is the same for all rows; {@code blank}, the titre without
 * sample, where there is such a column. TA = titrant x (volume - blank) / sample.
 *
 * <p>Immutable and thread-safe.
 *
 * @see org.brewchem.titration.AcidityResult
 */
public final class Acidities {

  private final Table table;
  private final PH endPoint;

  /** mL. */
  private final Input volume;

  /** mL; none where every row has the same or the table has none. */
  private final Optional<Input> sample;

  /** Eq/L. */
  private final Optional<Input> titrant;

  /** mL. */
  private final Optional<Input> blank;

  private final double sampleOfAll;
  private final double titrantOfAll;

  private Acidities(
      Table table,
      PH endPoint,
      Input volume,
      Optional<Input> sample,
      Optional<Input> titrant,
      Optional<Input> blank,
      double sampleOfAll,
      double titrantOfAll) {
    this.table = table;
    this.endPoint = endPoint;
    this.volume = volume;
    this.sample = sample;
    this.titrant = titrant;
    this.blank = blank;
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
        table,
        endPoint,
        millilitres(table.column("volume")),
        table
            .find("sample")
            .map(column -> Input.positive(column, LabUnits.VOLUME, Volume::inMillilitres)),
        table
            .find("titrant")
            .map(
                column ->
                    Input.positive(
                        column,
                        LabUnits.AMOUNT_CONCENTRATION,
                        AmountConcentration::inMolesPerLitre)),
        table.find("blank").map(Acidities::millilitres),
        0,
        0);
  }

  private static Input millilitres(Column column) {
    return Input.notNegative(column, LabUnits.VOLUME, Volume::inMillilitres);
  }

  /**
   * States the sample of all rows.
   *
   * @param volumeOfAll the volume taken, above 0
   * @return the same titrations with it
   * @throws IllegalArgumentException if the volume is 0
   * @throws IllegalStateException if the table has a column {@code sample}
   */
  public Acidities withSample(Volume volumeOfAll) {
    once("sample", sample);
    return new Acidities(
        table,
        endPoint,
        volume,
        sample,
        titrant,
        blank,
        Checks.positive("sample", volumeOfAll.inMillilitres(), "mL"),
        titrantOfAll);
  }

  /**
   * States the titrant of all rows.
   *
   * @param alkali an alkali
   * @return the same titrations with it
   * @throws IllegalArgumentException if the titrant is an acid
   * @throws IllegalStateException if the table has a column {@code titrant}
   */
  public Acidities withTitrant(Titrant alkali) {
    once("titrant", titrant);
    if (!alkali.substance().isAlkali()) {
      throw new IllegalArgumentException(
          "titrant: " + alkali + " is not possible; an alkali is needed");
    }
    return new Acidities(
        table,
        endPoint,
        volume,
        sample,
        titrant,
        blank,
        sampleOfAll,
        alkali.equivalentsPerLitre().value());
  }

  private void once(String name, Optional<Input> column) {
    if (column.isPresent()) {
      throw new IllegalStateException(
          name + ": the table has a column of it; leave it out with Table.without");
    }
  }

  /**
   * Returns the acidities.
   *
   * @return such as the column {@code titratable acidity [mEq/L, to pH 8.2]}
   * @throws IllegalStateException if there is neither a column nor a common value of sample or
   *     titrant
   */
  public Column acidity() {
    if (sample.isEmpty() && sampleOfAll == 0) {
      throw missing("sample");
    }
    if (titrant.isEmpty() && titrantOfAll == 0) {
      throw missing("titrant");
    }
    double[] values = new double[table.size()];
    @Nullable Failure[] failures =
        Rows.run(
            values.length,
            1,
            () ->
                i -> {
                  Failure failure = fault(i);
                  if (failure == null) {
                    values[i] =
                        ClosedForms.titratedMilliequivalentsPerLitre(
                                at(titrant, i, titrantOfAll),
                                volume.at(i) - at(blank, i, 0),
                                1,
                                at(sample, i, sampleOfAll))
                            + 0.0;
                  }
                  return failure;
                });
    return Rows.column("titratable acidity [mEq/L, to " + endPoint + "]", table, values, failures);
  }

  private IllegalStateException missing(String name) {
    return new IllegalStateException(
        name + ": neither a column nor a value for all rows is there: " + table);
  }

  private @Nullable Failure fault(int index) {
    Failure failure = volume.fault(index);
    for (Optional<Input> input : List.of(sample, titrant, blank)) {
      if (failure == null && input.isPresent()) {
        failure = input.get().fault(index);
      }
    }
    return failure;
  }

  private static double at(Optional<Input> input, int index, double ofAll) {
    return input.isPresent() ? input.get().at(index) : ofAll;
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
    return acidity()
        .in(
            LabUnits.acidity(List.of(basis)).to(endPoint),
            "g/L as " + basis.name() + ", to " + endPoint);
  }

  /**
   * Finds how much of an acid brings each sample to an acidity: what is missing, divided by the
   * equivalents that a mole of the acid delivers at the end point. Dilution and the change of the
   * ionic strength are neglected.
   *
   * @param acid the acid
   * @param target the acidity to reach, to the same end point
   * @return such as the column {@code lactic acid to 30 mEq/L, to pH 8.2 [mmol/L]}; a row that is
   *     above the target has a failure
   * @throws IllegalArgumentException if the target has another end point, or the acid is none that
   *     may be dosed into beer; see {@link Permissions}
   * @throws IllegalStateException if there is neither a column nor a common value of sample or
   *     titrant
   * @see EffectiveEquivalents
   */
  public Column doseOf(Acid acid, TitratableAcidity target) {
    Permissions.of(acid, Use.BEER).orThrow();
    if (!target.endPoint().equals(endPoint)) {
      throw new IllegalArgumentException(
          "target: " + target + " is not possible; the samples were titrated to " + endPoint);
    }
    Column own = acidity();
    double perMole = EffectiveEquivalents.of(acid).at(endPoint);
    double wanted = target.inMilliequivalentsPerLitre();
    String heading = acid.name() + " to " + target + " [mmol/L]";
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
                        "the sample has " + own.raw(i) + " mEq/L already, more than the target");
                  }
                  values[i] = missing / perMole;
                  return null;
                });
    return Rows.column(heading, table, values, failures);
  }
}
