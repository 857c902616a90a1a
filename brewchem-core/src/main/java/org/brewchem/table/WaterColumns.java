package org.brewchem.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UsualRange;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Conductivity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MolarMass;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.units.ColumnHeader;
import org.brewchem.units.LabUnits;
import org.brewchem.units.UnitSet;
import org.brewchem.water.Constituent;

/** What the columns of a table state about its waters, in the units of the balance. Immutable. */
final class WaterColumns {

  /** The ions that are read, in the order in which they are counted. */
  static final List<Ion> IONS =
      List.of(
          Ion.CALCIUM,
          Ion.MAGNESIUM,
          Ion.SODIUM,
          Ion.POTASSIUM,
          Ion.CHLORIDE,
          Ion.SULFATE,
          Ion.NITRATE);

  /** Without these a water is not neutral by its ions. */
  private static final List<Ion> MAIN =
      List.of(Ion.CALCIUM, Ion.MAGNESIUM, Ion.SODIUM, Ion.CHLORIDE, Ion.SULFATE);

  private static final String ALKALINITY = "alkalinity";
  private static final String BICARBONATE = "bicarbonate";
  private static final String CARBON_DIOXIDE = "total carbon dioxide";
  private static final String PH = "pH";
  private static final String CONDUCTIVITY = "conductivity";
  private static final String TOTAL_HARDNESS = "total hardness";
  private static final String DRY_RESIDUE = "dry residue";

  private static final double CACO3_PER_MILLIEQUIVALENT =
      CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();

  private final Table table;
  private final Headings headings;

  /** Each ion that has a column, in mmol/L. */
  final Map<Ion, Input> ions;

  /** What has a column, in mmol/L, on the basis on which it is stated. */
  final Map<Constituent, Input> constituents;

  /** The alkalinity in mEq/L. */
  final Optional<Input> alkalinity;

  /** The total carbon dioxide in mmol/L. */
  final Optional<Input> carbonDioxide;

  /** The pH, where the balance is closed to it. */
  final Optional<Input> pH;

  /** What only the judgement of a report reads. */
  final Side side;

  /**
   * What only the judgement of a report reads.
   *
   * @param conductivity µS/cm at 25 °C
   * @param totalHardness mg/L as CaCO3
   * @param dryResidue mg/L
   */
  record Side(
      Optional<Input> conductivity, Optional<Input> totalHardness, Optional<Input> dryResidue) {

    static Side from(Headings headings) {
      return new Side(
          headings.input(
              CONDUCTIVITY,
              column ->
                  usual(
                      Input.notNegative(
                          column,
                          LabUnits.CONDUCTIVITY,
                          Conductivity::inMicrosiemensPerCentimetreAt25),
                      CONDUCTIVITY,
                      1)),
          headings.input(
              TOTAL_HARDNESS,
              column ->
                  usual(
                      Input.notNegative(
                          column, LabUnits.HARDNESS, Hardness::inMilligramsPerLitreAsCaCO3),
                      TOTAL_HARDNESS,
                      1)),
          headings.input(
              DRY_RESIDUE,
              column ->
                  Input.notNegative(
                      column,
                      LabUnits.MASS_CONCENTRATION,
                      MassConcentration::inMilligramsPerLitre)));
    }

    Side with(UnaryOperator<Input> change) {
      return new Side(conductivity.map(change), totalHardness.map(change), dryResidue.map(change));
    }

    Stream<Input> inputs() {
      return Stream.of(conductivity, totalHardness, dryResidue).flatMap(Optional::stream);
    }

    /** The names that are read where the unit is one of their meaning; others are passed over. */
    static List<String> known(Table table) {
      List<String> known = new ArrayList<>();
      table.columns().stream()
          .filter(
              column ->
                  switch (column.name()) {
                    case CONDUCTIVITY -> isOneOf(column.header(), LabUnits.CONDUCTIVITY);
                    case TOTAL_HARDNESS -> isOneOf(column.header(), LabUnits.HARDNESS);
                    case DRY_RESIDUE -> isOneOf(column.header(), LabUnits.MASS_CONCENTRATION);
                    default -> false;
                  })
          .map(Column::name)
          .forEach(known::add);
      return known;
    }
  }

  private WaterColumns(
      Table table,
      Headings headings,
      Map<Constituent, Input> constituents,
      Optional<Input> alkalinity,
      Optional<Input> carbonDioxide,
      Optional<Input> pH,
      Side side) {
    this.side = side;
    this.table = table;
    this.headings = headings;
    this.constituents = constituents;
    this.ions = new LinkedHashMap<>();
    IONS.forEach(
        ion ->
            constituents.forEach(
                (constituent, input) -> {
                  if (constituent.ion().equals(Optional.of(ion))) {
                    ions.put(ion, input);
                  }
                }));
    constituents.forEach(
        (constituent, input) -> constituent.ion().ifPresent(ion -> ions.putIfAbsent(ion, input)));
    this.alkalinity = alkalinity;
    this.carbonDioxide = carbonDioxide;
    this.pH = pH;
  }

  static WaterColumns from(Table table) {
    List<String> known = new ArrayList<>();
    for (Constituent constituent : Constituent.values()) {
      known.add(constituent.heading());
    }
    known.addAll(List.of(ALKALINITY, BICARBONATE, CARBON_DIOXIDE, PH));
    known.addAll(Side.known(table));
    Headings headings = new Headings(table, known);
    Map<Constituent, Input> constituents = new LinkedHashMap<>();
    for (Constituent constituent : Constituent.values()) {
      headings
          .input(
              constituent.heading(),
              column ->
                  usual(
                      concentration(column, constituent),
                      constituent.figure().title(),
                      perMillimole(constituent)))
          .ifPresent(
              input -> {
                constituents.keySet().stream()
                    .filter(other -> other.figure().equals(constituent.figure()))
                    .forEach(other -> notBoth(headings, other.heading(), constituent.heading()));
                constituents.put(constituent, input);
              });
    }
    return new WaterColumns(
        table,
        headings,
        constituents,
        alkalinity(headings),
        headings.input(
            CARBON_DIOXIDE,
            column ->
                concentration(
                    column, Acid.CARBONIC.molarMass(), List.of(LabUnits.AMOUNT_CONCENTRATION))),
        headings.input(PH, column -> usual(Input.withoutUnit(column), PH, 1)),
        Side.from(headings));
  }

  private static Optional<Input> alkalinity(Headings headings) {
    notBoth(headings, ALKALINITY, BICARBONATE);
    return headings
        .input(
            ALKALINITY,
            column ->
                usual(
                    Input.notNegative(
                        column,
                        LabUnits.CARBONATE_ALKALINITY,
                        CarbonateAlkalinity::inMilliequivalentsPerLitre),
                    ALKALINITY,
                    CACO3_PER_MILLIEQUIVALENT))
        .or(
            () ->
                headings.input(
                    BICARBONATE,
                    column ->
                        usual(
                            Input.notNegative(
                                column,
                                LabUnits.MASS_CONCENTRATION,
                                mass ->
                                    CarbonateAlkalinity.fromBicarbonate(mass)
                                        .inMilliequivalentsPerLitre()),
                            ALKALINITY,
                            CACO3_PER_MILLIEQUIVALENT)));
  }

  /** Has the numbers judged by what is usual in a water; perUnit makes them those of the range. */
  private static Input usual(Input input, String quantity, double perUnit) {
    return UsualRange.find(quantity + " of a water")
        .map(range -> input.judgedBy(range, perUnit))
        .orElse(input);
  }

  private static void notBoth(Headings headings, String one, String other) {
    if (headings.find(one).isPresent() && headings.find(other).isPresent()) {
      throw Headings.sameThing(
          headings.find(one).orElseThrow(), headings.find(other).orElseThrow());
    }
  }

  /** In mmol/L; of an ion mEq/L are read too. */
  private static Input concentration(Column column, Constituent constituent) {
    Optional<Ion> ion = constituent.ion();
    if (ion.isPresent() && isOneOf(column.header(), LabUnits.CHARGE_CONCENTRATION)) {
      int charges = Math.abs(ion.get().charge());
      return Input.notNegative(
          column,
          LabUnits.CHARGE_CONCENTRATION,
          stated -> stated.inMilliequivalentsPerLitre() / charges);
    }
    return concentration(
        column,
        constituent.statedMolarMass(),
        ion.isPresent()
            ? List.of(LabUnits.AMOUNT_CONCENTRATION, LabUnits.CHARGE_CONCENTRATION)
            : List.of(LabUnits.AMOUNT_CONCENTRATION));
  }

  /** In mmol/L. */
  private static Input concentration(Column column, MolarMass molarMass, List<UnitSet<?>> readToo) {
    if (isOneOf(column.header(), LabUnits.AMOUNT_CONCENTRATION)) {
      return Input.notNegative(
          column, LabUnits.AMOUNT_CONCENTRATION, AmountConcentration::inMillimolesPerLitre);
    }
    ToDoubleFunction<MassConcentration> inMillimoles =
        mass -> AmountConcentration.from(mass, molarMass).inMillimolesPerLitre();
    column.header().unitOf(LabUnits.MASS_CONCENTRATION, readToo);
    return Input.notNegative(column, LabUnits.MASS_CONCENTRATION, inMillimoles);
  }

  private static boolean isOneOf(ColumnHeader header, UnitSet<?> units) {
    return units.units().stream()
        .anyMatch(unit -> header.unit().equals(Optional.of(unit.symbol())));
  }

  /** Changes the input of a column, such as to state its uncertainty. */
  WaterColumns with(String name, UnaryOperator<Input> change) {
    UnaryOperator<Input> one = Headings.change(name, inputs().toList(), change);
    Map<Constituent, Input> changed = new LinkedHashMap<>();
    constituents.forEach((constituent, input) -> changed.put(constituent, one.apply(input)));
    return new WaterColumns(
        table,
        headings,
        changed,
        alkalinity.map(one),
        carbonDioxide.map(one),
        pH.map(one),
        side.with(one));
  }

  /** All that is read, in the order of an explanation. */
  Stream<Input> inputs() {
    return Stream.of(
            constituents.values().stream(),
            alkalinity.stream(),
            carbonDioxide.stream(),
            pH.stream())
        .flatMap(inputs -> inputs);
  }

  /** The pH to which the balance is closed: nothing else says how much carbon dioxide there is. */
  Optional<Input> closingPH() {
    return alkalinity.isPresent() && carbonDioxide.isEmpty() ? pH : Optional.empty();
  }

  private boolean isWithoutEffect(String name) {
    return pH.isPresent()
        && closingPH().isEmpty()
        && (name.equals(PH) || name.equals("u(" + PH + ")"));
  }

  List<String> used() {
    return headings.used().stream().filter(name -> !isWithoutEffect(name)).toList();
  }

  List<String> ignored() {
    List<String> names = new ArrayList<>(headings.ignored());
    headings.used().stream().filter(this::isWithoutEffect).forEach(names::add);
    return List.copyOf(names);
  }

  /** What is notable about the headings. */
  List<Notice> notices() {
    List<Notice> notices = new ArrayList<>(headings.notices());
    if (isWithoutEffect(PH)) {
      notices.add(
          Notice.of(
              TableCode.COLUMN_WITHOUT_EFFECT,
              PH,
              alkalinity.isPresent()
                  ? "column \"pH\" is not used; the pH follows from the alkalinity and the total"
                      + " carbon dioxide"
                  : "column \"pH\" is not used; without an alkalinity it cannot close the"
                      + " balance"));
    }
    Stream.concat(inputs(), side.inputs())
        .map(Input::unusual)
        .flatMap(Optional::stream)
        .forEach(notices::add);
    return List.copyOf(notices);
  }

  /** What keeps the waters from having a balance; empty when nothing does. */
  Optional<String> missingForBalance() {
    if (alkalinity.isPresent()) {
      return Optional.empty();
    }
    if (carbonDioxide.isEmpty()) {
      return Optional.of(ALKALINITY);
    }
    return MAIN.stream().filter(ion -> !ions.containsKey(ion)).map(Ion::name).findFirst();
  }

  /**
   * Whether no row has a balance without the ion. Of another ion an empty cell counts as the column
   * that is not there: as absent.
   */
  boolean isNeeded(Ion ion) {
    return alkalinity.isEmpty() && MAIN.contains(ion);
  }

  Set<Component> components() {
    Set<Component> components = new LinkedHashSet<>();
    ions.keySet().forEach(ion -> components.add(component(ion)));
    components.add(Component.CARBONATE);
    return components;
  }

  static Component component(Ion ion) {
    return ion.components().keySet().iterator().next();
  }

  /** The column of a figure that is reported as a concentration; empty for other figures. */
  Optional<Input> reported(Figure<?> figure) {
    Constituent[] all = Constituent.values();
    if (Arrays.stream(all).noneMatch(each -> each.figure().equals(figure))) {
      return Optional.empty();
    }
    return Optional.of(
        constituents.entrySet().stream()
            .filter(entry -> entry.getKey().figure().equals(figure))
            .map(entry -> entry.getValue().times(perMillimole(entry.getKey())))
            .findFirst()
            .orElseThrow(() -> missing(figure.name())));
  }

  /** Milligrams of the ion, or of SiO2, for each millimole stated. */
  private static double perMillimole(Constituent constituent) {
    return constituent
        .ion()
        .map(ion -> ion.molarMass().inGramsPerMole())
        .orElseGet(() -> Constituent.SILICA.statedMolarMass().inGramsPerMole());
  }

  /** The silica, mg/L of SiO2. */
  Optional<Input> silica() {
    return constituents.keySet().stream()
        .filter(constituent -> constituent.ion().isEmpty())
        .findFirst()
        .flatMap(constituent -> reported(constituent.figure()));
  }

  boolean isBicarbonate() {
    return alkalinity.filter(input -> input.name().equals(BICARBONATE)).isPresent();
  }

  MissingColumnException missing(String name) {
    return new MissingColumnException(name, table);
  }
}
