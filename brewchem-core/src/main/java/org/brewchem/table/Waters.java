package org.brewchem.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.brewchem.internal.Checks;
import org.brewchem.internal.ClosedForms;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MolarMass;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.ActivityRule;
import org.brewchem.solution.CarbonateBalance;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.Level;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Permissions;
import org.brewchem.substance.Solute;
import org.brewchem.substance.Use;
import org.brewchem.units.ColumnHeader;
import org.brewchem.units.LabUnits;
import org.brewchem.units.UnitSet;
import org.brewchem.water.WaterAnalysis;
import org.jspecify.annotations.Nullable;

/**
 * The waters of a table, one a row: what {@link WaterAnalysis} tells about one water, for all of
 * them.
 *
 * <p>Columns that are read, by name:
 *
 * <ul>
 *   <li>{@code calcium}, {@code magnesium}, {@code sodium}, {@code potassium}, {@code chloride},
 *       {@code sulfate} or {@code sulfate as sulfur}, {@code nitrate} or {@code nitrate as
 *       nitrogen}: a mass or an amount concentration
 *   <li>{@code alkalinity}: a carbonate alkalinity, or {@code bicarbonate}: a mass concentration
 *   <li>{@code total carbon dioxide}: CO2, bicarbonate and carbonate together, as an amount
 *       concentration, or as CO2 in a mass concentration
 *   <li>{@code pH}, as measured at the temperature of the waters
 * </ul>
 *
 * <p>Waters are closed to the air. What they are made neutral by depends on the columns, not on the
 * row. With an alkalinity it is that: ions that are missing and the error of the ion balance are
 * carried by an inert univalent ion, as in {@link WaterAnalysis#toSolution}. Without one it is the
 * ions, of which calcium, magnesium, sodium, chloride and sulfate are then needed, and potassium
 * and nitrate counted where there is a column. Their carbon dioxide comes from {@code total carbon
 * dioxide}; without that column, from {@code pH} and alkalinity; without both it is taken to be as
 * much as the alkalinity, bicarbonate alone.
 *
 * <p>Immutable and thread-safe.
 */
public final class Waters {

  private static final List<Ion> MAIN =
      List.of(Ion.CALCIUM, Ion.MAGNESIUM, Ion.SODIUM, Ion.CHLORIDE, Ion.SULFATE);

  private static final double CACO3_PER_MILLIEQUIVALENT =
      CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();

  private static final double HARDNESS_PER_MILLIEQUIVALENT =
      Hardness.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();

  private static final double KILOGRAMS_PER_LITRE =
      Solution.at(Temperature.ofCelsius(25)).kilogramsPerLitre();

  private static final String CARBON_DIOXIDE = "total carbon dioxide";

  private final Table table;
  private final Chemistry chemistry;
  private final Temperature temperature;
  private final int threads;

  /** Each ion that has a column, in mmol/L. */
  private final Map<Ion, Input> ions;

  /** The alkalinity in mEq/L. */
  private final Optional<Input> alkalinity;

  /** The total carbon dioxide in mmol/L. */
  private final Optional<Input> carbonDioxide;

  private final Optional<Input> pH;
  private volatile @Nullable Balanced balanced;

  /** What one solve a row finds. */
  private record Balanced(Column pH, Column ionicStrength, Optional<Column> alkalinity) {}

  private Waters(
      Table table,
      Chemistry chemistry,
      Temperature temperature,
      int threads,
      Map<Ion, Input> ions,
      Optional<Input> alkalinity,
      Optional<Input> carbonDioxide,
      Optional<Input> pH) {
    this.table = table;
    this.chemistry = chemistry;
    this.temperature = temperature;
    this.threads = threads;
    this.ions = ions;
    this.alkalinity = alkalinity;
    this.carbonDioxide = carbonDioxide;
    this.pH = pH;
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
    Map<Ion, Input> ions = new LinkedHashMap<>();
    for (Ion ion : List.of(Ion.CALCIUM, Ion.MAGNESIUM, Ion.SODIUM, Ion.POTASSIUM, Ion.CHLORIDE)) {
      table
          .find(ion.name())
          .ifPresent(column -> ions.put(ion, concentration(column, ion.molarMass(), 1)));
    }
    ion(table, Ion.SULFATE, "sulfate as sulfur", sulfatePerSulfur())
        .ifPresent(input -> ions.put(Ion.SULFATE, input));
    ion(table, Ion.NITRATE, "nitrate as nitrogen", nitratePerNitrogen())
        .ifPresent(input -> ions.put(Ion.NITRATE, input));
    return new Waters(
        table,
        Chemistry.standard(),
        Temperature.ofCelsius(25),
        1,
        ions,
        alkalinity(table),
        table
            .find(CARBON_DIOXIDE)
            .map(column -> concentration(column, Acid.CARBONIC.molarMass(), 1)),
        table.find("pH").map(Waters::withoutUnit));
  }

  private static double sulfatePerSulfur() {
    return WaterAnalysis.reported()
        .sulfateAsSulfur(MassConcentration.ofMilligramsPerLitre(1))
        .build()
        .sulfate()
        .orElseThrow()
        .inMilligramsPerLitre();
  }

  private static double nitratePerNitrogen() {
    return WaterAnalysis.reported()
        .nitrateAsNitrogen(MassConcentration.ofMilligramsPerLitre(1))
        .build()
        .nitrate()
        .orElseThrow()
        .inMilligramsPerLitre();
  }

  private static Optional<Input> ion(Table table, Ion ion, String otherName, double ionPerOther) {
    Optional<Column> own = table.find(ion.name());
    Optional<Column> other = table.find(otherName);
    notBoth(own, other);
    return own.map(column -> concentration(column, ion.molarMass(), 1))
        .or(() -> other.map(column -> concentration(column, ion.molarMass(), ionPerOther)));
  }

  private static Optional<Input> alkalinity(Table table) {
    Optional<Column> own = table.find("alkalinity");
    Optional<Column> bicarbonate = table.find("bicarbonate");
    notBoth(own, bicarbonate);
    return own.map(
            column ->
                Input.notNegative(
                    column,
                    LabUnits.CARBONATE_ALKALINITY,
                    CarbonateAlkalinity::inMilliequivalentsPerLitre))
        .or(
            () ->
                bicarbonate.map(
                    column ->
                        Input.notNegative(
                            column,
                            LabUnits.MASS_CONCENTRATION,
                            mass ->
                                CarbonateAlkalinity.fromBicarbonate(mass)
                                    .inMilliequivalentsPerLitre())));
  }

  private static void notBoth(Optional<Column> one, Optional<Column> other) {
    if (one.isPresent() && other.isPresent()) {
      throw new IllegalArgumentException(
          "columns \""
              + one.get().name()
              + "\" and \""
              + other.get().name()
              + "\" state the same thing; leave one out with Table.without");
    }
  }

  /** In mmol/L; a mass is taken so many times. */
  private static Input concentration(Column column, MolarMass molarMass, double times) {
    if (isOneOf(column.header(), LabUnits.AMOUNT_CONCENTRATION)) {
      return Input.notNegative(
          column, LabUnits.AMOUNT_CONCENTRATION, AmountConcentration::inMillimolesPerLitre);
    }
    ToDoubleFunction<MassConcentration> inMillimoles =
        mass -> AmountConcentration.from(mass.times(times), molarMass).inMillimolesPerLitre();
    return Input.notNegative(column, LabUnits.MASS_CONCENTRATION, inMillimoles);
  }

  private static boolean isOneOf(ColumnHeader header, UnitSet<?> units) {
    return units.units().stream()
        .anyMatch(unit -> header.unit().equals(Optional.of(unit.symbol())));
  }

  private static Input withoutUnit(Column column) {
    if (column.unit().isPresent()) {
      throw new IllegalArgumentException("column \"" + column.heading() + "\": a pH has no unit");
    }
    return Input.plain(column);
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
    return new Waters(table, chemistry, chosen, threads, ions, alkalinity, carbonDioxide, pH);
  }

  /**
   * Chooses the chemistry.
   *
   * @param chosen the chemistry
   * @return the same waters under that chemistry
   */
  public Waters under(Chemistry chosen) {
    return new Waters(table, chosen, temperature, threads, ions, alkalinity, carbonDioxide, pH);
  }

  /**
   * Chooses how many threads solve the rows. The results are the same to the last bit.
   *
   * @param chosen 1 or more; the threads end with each calculation
   * @return the same waters
   * @throws IllegalArgumentException if the number is below 1
   */
  public Waters parallel(int chosen) {
    Checks.inRange("threads", chosen, "", 1, Short.MAX_VALUE);
    return new Waters(table, chemistry, temperature, chosen, ions, alkalinity, carbonDioxide, pH);
  }

  /**
   * Finds the pH of the waters by the proton balance. Where alkalinity and pH are what is known, it
   * is the measured pH of each row in which the two can stand together.
   *
   * @return the column {@code pH}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column pH() {
    return balanced(false).pH;
  }

  /**
   * Returns the carbonate alkalinity: as the table states it, or else what the proton balance finds
   * from ions and total carbon dioxide. It comes from one pass over the rows together with the pH;
   * where both are wanted, ask for the alkalinity first.
   *
   * @return the column {@code alkalinity [mg/L as CaCO3]}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column alkalinity() {
    if (alkalinity.isEmpty()) {
      return balanced(true).alkalinity.orElseThrow();
    }
    Input stated = alkalinity.get();
    return closedForm(
        "alkalinity [mg/L as CaCO3]",
        List.of(stated),
        i -> stated.at(i) * CACO3_PER_MILLIEQUIVALENT);
  }

  /**
   * Returns the ionic strength of the waters.
   *
   * @return the column {@code ionic strength [mol/kg]}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column ionicStrength() {
    return balanced(false).ionicStrength;
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
        .filter(i -> strength.raw(i) > ActivityRule.RANGE_MOLES_PER_KILOGRAM)
        .mapToLong(strength::row)
        .toArray();
  }

  /**
   * Returns the calcium hardness.
   *
   * @return the column {@code calcium hardness [mg/L as CaCO3]}
   * @throws IllegalStateException if the table has no calcium
   */
  public Column calciumHardness() {
    return hardness("calcium hardness", hardness(Ion.CALCIUM));
  }

  /**
   * Returns the magnesium hardness.
   *
   * @return the column {@code magnesium hardness [mg/L as CaCO3]}
   * @throws IllegalStateException if the table has no magnesium
   */
  public Column magnesiumHardness() {
    return hardness("magnesium hardness", hardness(Ion.MAGNESIUM));
  }

  private Column hardness(String name, Input equivalents) {
    return closedForm(
        name + " [mg/L as CaCO3]",
        List.of(equivalents),
        i -> equivalents.at(i) * HARDNESS_PER_MILLIEQUIVALENT);
  }

  /**
   * Returns the total hardness, calcium and magnesium together.
   *
   * @return the column {@code total hardness [mg/L as CaCO3]}
   * @throws IllegalStateException if the table has no calcium or no magnesium
   */
  public Column totalHardness() {
    Input calcium = hardness(Ion.CALCIUM);
    Input magnesium = hardness(Ion.MAGNESIUM);
    return closedForm(
        "total hardness [mg/L as CaCO3]",
        List.of(calcium, magnesium),
        i -> (calcium.at(i) + magnesium.at(i)) * HARDNESS_PER_MILLIEQUIVALENT);
  }

  /**
   * Returns the residual alkalinity after Kolbach, of the alkalinity of {@link #alkalinity}.
   *
   * @return the column {@code residual alkalinity [mg/L as CaCO3]}
   * @throws IllegalStateException if the table is without the columns that it takes
   * @see org.brewchem.water.KolbachResidualAlkalinity
   */
  public Column residualAlkalinity() {
    Input calcium = hardness(Ion.CALCIUM);
    Input magnesium = hardness(Ion.MAGNESIUM);
    Input total =
        Input.notNegative(
            alkalinity(),
            LabUnits.CARBONATE_ALKALINITY,
            CarbonateAlkalinity::inMilliequivalentsPerLitre);
    double perMilliequivalent =
        ResidualAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();
    return closedForm(
        "residual alkalinity [mg/L as CaCO3]",
        List.of(total, calcium, magnesium),
        i ->
            ClosedForms.residualAlkalinity(total.at(i), calcium.at(i), magnesium.at(i))
                * perMilliequivalent);
  }

  /**
   * Returns the ratio of sulfate to chloride by mass. A row without chloride has no ratio.
   *
   * @return the column {@code sulfate to chloride by mass}
   * @throws IllegalStateException if the table has no sulfate or no chloride
   */
  public Column sulfateToChloride() {
    Input sulfate = ion(Ion.SULFATE);
    Input chloride = ion(Ion.CHLORIDE).positive();
    double perMole =
        Ion.SULFATE.molarMass().inGramsPerMole() / Ion.CHLORIDE.molarMass().inGramsPerMole();
    return closedForm(
        "sulfate to chloride by mass",
        List.of(sulfate, chloride),
        i -> sulfate.at(i) / chloride.at(i) * perMole);
  }

  /**
   * Returns the ion balance, 100 (cations - anions) / (cations + anions) in equivalents, of the
   * stated alkalinity and ions. Potassium and nitrate count where they are known; the others are
   * needed.
   *
   * @return the column {@code ion balance [%]}
   * @throws IllegalStateException if the table is without alkalinity, calcium, magnesium, sodium,
   *     chloride or sulfate
   * @see org.brewchem.water.IonBalance
   */
  public Column ionBalance() {
    Input stated = alkalinity.orElseThrow(() -> missing("alkalinity"));
    List<Input> needed = new ArrayList<>(List.of(stated));
    MAIN.forEach(ion -> needed.add(ion(ion)));
    List<Input> optional = new ArrayList<>();
    List<Input> cations = new ArrayList<>();
    List<Input> anions = new ArrayList<>(List.of(stated));
    ions.forEach(
        (ion, input) -> {
          (ion.charge() > 0 ? cations : anions).add(input.times(Math.abs(ion.charge())));
          if (!MAIN.contains(ion)) {
            optional.add(input);
          }
        });
    return closedForm(
        "ion balance [%]",
        needed, optional, i -> ClosedForms.ionBalancePercentage(sum(cations, i), sum(anions, i)));
  }

  private static double sum(List<Input> equivalents, int index) {
    double sum = 0;
    for (Input input : equivalents) {
      if (!input.isMissing(index)) {
        sum += input.at(index);
      }
    }
    return sum;
  }

  /**
   * Finds how much of an acid or a base brings each water to a pH, its volume unchanged.
   *
   * @param solute the acid or the base
   * @param target the pH to reach
   * @return such as the column {@code lactic acid to pH 5.5 [mmol/L]}; a row that the solute cannot
   *     bring there has a failure
   * @throws IllegalArgumentException if the solute is none that may be dosed into brewing water;
   *     see {@link Permissions}
   * @throws IllegalStateException if the table is without the columns that it takes
   */
  public Column doseOf(Solute solute, PH target) {
    Permissions.of(solute, Use.BREWING_WATER).orThrow();
    String heading = solute.name() + " to " + target + " [mmol/L]";
    Equilibria prototype = prototype(solute.components().keySet());
    double[] added = new double[prototype.components().size()];
    solute.components().forEach((component, moles) -> added[prototype.indexOf(component)] = moles);
    double[] doses = new double[table.size()];
    @Nullable Failure[] failures =
        Rows.run(
            doses.length,
            threads,
            () -> {
              WaterRow row = new WaterRow(prototype.another());
              return i -> {
                Failure failure = row.balance(i);
                if (failure != null) {
                  return failure;
                }
                try {
                  doses[i] = row.equilibria.doseTo(added, target) * KILOGRAMS_PER_LITRE * 1000;
                  return null;
                } catch (NoSolutionException e) {
                  return noSolution(i, heading, e);
                }
              };
            });
    return Rows.column(heading, table, doses, failures);
  }

  private Failure noSolution(int index, String heading, NoSolutionException reason) {
    return new Failure.NoSolution(table.row(index), heading, String.valueOf(reason.getMessage()));
  }

  private Balanced balanced(boolean withAlkalinity) {
    Balanced ready = balanced;
    if (ready == null || (withAlkalinity && ready.alkalinity.isEmpty())) {
      ready = balance(withAlkalinity);
      balanced = ready;
    }
    return ready;
  }

  private Balanced balance(boolean withAlkalinity) {
    Equilibria prototype = prototype(Set.of());
    double[] values = new double[table.size()];
    double[] strengths = new double[table.size()];
    double[] alkalinities = new double[withAlkalinity ? table.size() : 0];
    double perEquivalent = CACO3_PER_MILLIEQUIVALENT * KILOGRAMS_PER_LITRE * 1000;
    @Nullable Failure[] failures =
        Rows.run(
            values.length,
            threads,
            () -> {
              WaterRow row = new WaterRow(prototype.another());
              return i -> {
                Failure failure = row.balance(i);
                if (failure == null) {
                  values[i] = row.pH;
                  strengths[i] = row.equilibria.ionicStrength();
                  if (withAlkalinity) {
                    alkalinities[i] = row.carbonates.alkalinity() * perEquivalent;
                  }
                }
                return failure;
              };
            });
    return new Balanced(
        Rows.column("pH", table, values, failures),
        Rows.column("ionic strength [mol/kg]", table, strengths, failures),
        withAlkalinity
            ? Optional.of(Rows.column("alkalinity [mg/L as CaCO3]", table, alkalinities, failures))
            : Optional.empty());
  }

  private Equilibria prototype(Set<Component> more) {
    if (alkalinity.isEmpty()) {
      if (carbonDioxide.isEmpty()) {
        throw missing("alkalinity");
      }
      MAIN.forEach(this::ion);
    }
    Set<Component> components = new LinkedHashSet<>();
    ions.keySet().forEach(ion -> components.addAll(ion.components().keySet()));
    components.add(Component.CARBONATE);
    components.addAll(more);
    return Equilibria.of(components, temperature, chemistry);
  }

  private Input ion(Ion ion) {
    Input input = ions.get(ion);
    if (input == null) {
      throw missing(ion.name());
    }
    return input;
  }

  private Input hardness(Ion ion) {
    return ion(ion).times(ion.charge());
  }

  private IllegalStateException missing(String name) {
    return new IllegalStateException(
        "column \"" + name + "\" is needed and is not in the table: " + table);
  }

  /** The arithmetic of one row, where all its inputs are there. */
  private interface Arithmetic {
    double row(int index);
  }

  private Column closedForm(String heading, List<Input> inputs, Arithmetic arithmetic) {
    return closedForm(heading, inputs, List.of(), arithmetic);
  }

  private Column closedForm(
      String heading, List<Input> needed, List<Input> optional, Arithmetic arithmetic) {
    double[] values = new double[table.size()];
    @Nullable Failure[] failures =
        Rows.run(
            values.length,
            1,
            () ->
                i -> {
                  for (Input input : needed) {
                    Failure failure = input.fault(i);
                    if (failure != null) {
                      return failure;
                    }
                  }
                  for (Input input : optional) {
                    Failure failure = input.fault(i);
                    if (failure != null && !input.isMissing(i)) {
                      return failure;
                    }
                  }
                  values[i] = arithmetic.row(i) + 0.0;
                  return null;
                });
    return Rows.column(heading, table, values, failures);
  }

  /** A work space that is filled with one row after the other. */
  private final class WaterRow {

    final Equilibria equilibria;
    private final CarbonateBalance carbonates;
    private final int carbonate;
    private final Input[] inputs;
    private final int[] indices;
    private final double[] charges;
    private final @Nullable Input stated;
    private final @Nullable Input total;
    private final @Nullable Input measured;

    /** What {@link #balance} found. */
    double pH;

    WaterRow(Equilibria equilibria) {
      this.equilibria = equilibria;
      carbonates = CarbonateBalance.of(equilibria);
      carbonate = equilibria.indexOf(Component.CARBONATE);
      inputs = new Input[ions.size()];
      indices = new int[ions.size()];
      charges = new double[ions.size()];
      int k = 0;
      for (Map.Entry<Ion, Input> entry : ions.entrySet()) {
        Ion ion = entry.getKey();
        inputs[k] = perKilogram(entry.getValue());
        indices[k] = equilibria.indexOf(ion.components().keySet().iterator().next());
        charges[k] = ion.charge();
        k++;
      }
      stated = Waters.this.alkalinity.map(WaterRow::perKilogram).orElse(null);
      total = carbonDioxide.map(WaterRow::perKilogram).orElse(null);
      measured = Waters.this.pH.orElse(null);
    }

    private static Input perKilogram(Input perLitre) {
      return perLitre.times(1 / (1000 * KILOGRAMS_PER_LITRE));
    }

    /** Fills in a row and finds its pH, or says why there is none. */
    @Nullable Failure balance(int index) {
      equilibria.forget();
      equilibria.setInertCharge(0);
      double nominalCharge = 0;
      for (int k = 0; k < inputs.length; k++) {
        Failure failure = inputs[k].fault(index);
        double moles = 0;
        if (failure == null) {
          moles = inputs[k].at(index);
        } else if (stated == null || !inputs[k].isMissing(index)) {
          return failure;
        }
        equilibria.setTotal(indices[k], moles);
        nominalCharge += charges[k] * moles;
      }
      try {
        if (stated == null) {
          return total == null ? null : balanceByIons(total, index);
        }
        return balanceByAlkalinity(stated, index, nominalCharge);
      } catch (NoSolutionException e) {
        return noSolution(index, "pH", e);
      }
    }

    private @Nullable Failure balanceByIons(Input carbonDioxide, int index) {
      Failure failure = carbonDioxide.fault(index);
      if (failure == null) {
        equilibria.setTotal(carbonate, carbonDioxide.at(index));
        pH = equilibria.pH();
      }
      return failure;
    }

    private @Nullable Failure balanceByAlkalinity(Input stated, int index, double nominalCharge) {
      Failure failure = stated.fault(index);
      if (failure != null) {
        return failure;
      }
      double alkalinity = stated.at(index);
      if (total == null && measured != null) {
        return closeToMeasured(measured, index, alkalinity);
      }
      double moles = alkalinity;
      if (total != null) {
        failure = total.fault(index);
        if (failure != null) {
          return failure;
        }
        moles = total.at(index);
      }
      equilibria.setTotal(carbonate, moles);
      if (alkalinity == 0 && moles == 0) {
        equilibria.setInertCharge(-nominalCharge);
        pH = equilibria.pH();
        return null;
      }
      OptionalDouble found = carbonates.pHOf(alkalinity);
      if (found.isEmpty()) {
        return stated.notPossible(
            index,
            "is not possible with "
                + moles * 1000 * KILOGRAMS_PER_LITRE
                + " mmol/L of carbon dioxide; more than 0 and less than twice as many mEq/L are");
      }
      close(found.getAsDouble());
      return null;
    }

    private @Nullable Failure closeToMeasured(Input measured, int index, double alkalinity) {
      Failure failure = measured.fault(index);
      if (failure != null) {
        return failure;
      }
      double value = measured.at(index);
      try {
        PH.of(value);
      } catch (IllegalArgumentException e) {
        return measured.notPossible(index, e);
      }
      if (carbonates.totalOf(alkalinity, value).isEmpty()) {
        return measured.notPossible(
            index,
            "is not possible with the alkalinity of the row;"
                + " more than 10 mol/kg of carbon dioxide would be needed");
      }
      close(value);
      return null;
    }

    private void close(double value) {
      pH = value;
      equilibria.setInertCharge(-equilibria.chargeAt(value));
    }
  }
}
