package org.brewchem.table;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UsualRange;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Volume;
import org.brewchem.units.LabUnits;

/** What the columns of a table state about its titrations. Immutable. */
final class TitrationColumns {

  static final String VOLUME = "volume";
  static final String SAMPLE = "sample";
  static final String TITRANT = "titrant";
  static final String BLANK = "blank";

  private static final UsualRange USUAL_TITRE = UsualRange.named("titre");
  static final UsualRange USUAL_TITRANT = UsualRange.named("concentration of a titrant");
  private static final UsualRange USUAL_BLANK = UsualRange.named("blank");
  static final UsualRange USUAL_SAMPLE = UsualRange.named("sample of a titration");

  private final Headings headings;

  /** mL. */
  final Input volume;

  /** mL; none where every row has the same or the table has none. */
  final Optional<Input> sample;

  /** Eq/L. */
  final Optional<Input> titrant;

  /** mL. */
  final Optional<Input> blank;

  private TitrationColumns(
      Headings headings,
      Input volume,
      Optional<Input> sample,
      Optional<Input> titrant,
      Optional<Input> blank) {
    this.headings = headings;
    this.volume = volume;
    this.sample = sample;
    this.titrant = titrant;
    this.blank = blank;
  }

  static TitrationColumns from(Table table) {
    Headings headings = new Headings(table, List.of(VOLUME, SAMPLE, TITRANT, BLANK));
    return new TitrationColumns(
        headings,
        headings
            .input(VOLUME, TitrationColumns::millilitres)
            .orElseGet(() -> millilitres(table.column(VOLUME)))
            .judgedBy(USUAL_TITRE, 1),
        headings
            .input(SAMPLE, column -> Input.positive(column, LabUnits.VOLUME, Volume::inMillilitres))
            .map(input -> input.judgedBy(USUAL_SAMPLE, 1)),
        headings
            .input(
                TITRANT,
                column ->
                    Input.positive(
                        column,
                        LabUnits.AMOUNT_CONCENTRATION,
                        AmountConcentration::inMolesPerLitre))
            .map(input -> input.judgedBy(USUAL_TITRANT, 1)),
        headings
            .input(BLANK, TitrationColumns::millilitres)
            .map(input -> input.judgedBy(USUAL_BLANK, 1)));
  }

  private static Input millilitres(Column column) {
    return Input.notNegative(column, LabUnits.VOLUME, Volume::inMillilitres);
  }

  TitrationColumns with(String name, UnaryOperator<Input> change) {
    UnaryOperator<Input> one = Headings.change(name, inputs().toList(), change);
    return new TitrationColumns(
        headings, one.apply(volume), sample.map(one), titrant.map(one), blank.map(one));
  }

  Stream<Input> inputs() {
    return Stream.of(Stream.of(volume), sample.stream(), titrant.stream(), blank.stream())
        .flatMap(inputs -> inputs);
  }

  List<String> used() {
    return headings.used();
  }

  List<String> ignored() {
    return headings.ignored();
  }

  List<Notice> notices() {
    return headings.notices(inputs());
  }
}
