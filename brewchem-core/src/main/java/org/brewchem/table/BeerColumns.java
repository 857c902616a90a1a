package org.brewchem.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UsualRange;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.units.EndPointUnits;
import org.brewchem.units.LabUnits;

/** What the columns of a table state about its beers. Immutable. */
final class BeerColumns {

  static final String PH_OF_BEER = "pH";
  static final String ACIDITY = "titratable acidity";

  private static final EndPointUnits<TitratableAcidity> UNITS = LabUnits.acidity(Acid.named());

  private final Headings headings;

  /** Which the heading of the acidity says. */
  final PH endPoint;

  final Input pH;

  /** mEq/L. */
  final Input acidity;

  /** mg/L. */
  final Map<Ion, Input> ions;

  private BeerColumns(
      Headings headings, PH endPoint, Input pH, Input acidity, Map<Ion, Input> ions) {
    this.headings = headings;
    this.endPoint = endPoint;
    this.pH = pH;
    this.acidity = acidity;
    this.ions = ions;
  }

  static BeerColumns from(Table table) {
    List<String> known = new ArrayList<>(List.of(PH_OF_BEER, ACIDITY));
    WaterColumns.IONS.forEach(ion -> known.add(ion.name()));
    Headings headings = new Headings(table, known);
    Map<Ion, Input> ions = new LinkedHashMap<>();
    for (Ion ion : WaterColumns.IONS) {
      headings
          .input(
              ion.name(),
              column ->
                  Input.notNegative(
                      column, LabUnits.MASS_CONCENTRATION, MassConcentration::inMilligramsPerLitre))
          .map(input -> input.judgedBy(UsualRange.named(ion.name() + " of a beer"), 1))
          .ifPresent(input -> ions.put(ion, input));
    }
    Column titrated = headings.find(ACIDITY).orElseGet(() -> table.column(ACIDITY));
    PH endPoint = titrated.header().unitOf(UNITS).from(1).endPoint();
    return new BeerColumns(
        headings,
        endPoint,
        headings
            .input(PH_OF_BEER, Input::withoutUnit)
            .orElseGet(() -> Input.withoutUnit(table.column(PH_OF_BEER)))
            .judgedBy(UsualRange.named("pH of a beer"), 1),
        headings
            .input(ACIDITY, column -> milliequivalents(column, endPoint))
            .orElseThrow()
            .judgedBy(UsualRange.named("titratable acidity of a beer"), 1),
        ions);
  }

  private static Input milliequivalents(Column column, PH endPoint) {
    return Input.positive(
        column, UNITS.to(endPoint), TitratableAcidity::inMilliequivalentsPerLitre);
  }

  BeerColumns with(String name, UnaryOperator<Input> change) {
    UnaryOperator<Input> one = Headings.change(name, inputs().toList(), change);
    Map<Ion, Input> changed = new LinkedHashMap<>();
    ions.forEach((ion, input) -> changed.put(ion, one.apply(input)));
    return new BeerColumns(headings, endPoint, one.apply(pH), one.apply(acidity), changed);
  }

  Stream<Input> inputs() {
    return Stream.concat(Stream.of(pH, acidity), ions.values().stream());
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
