package org.brewchem.table;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleSupplier;
import java.util.function.IntToDoubleFunction;
import org.brewchem.figure.Figure;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.BalanceFigure;
import org.brewchem.solution.CarbonateBalance;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.EquilibriumRows;
import org.brewchem.solution.Figures;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.solution.TotalFigure;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.jspecify.annotations.Nullable;

/**
 * A work space that is filled with one row of waters after the other, and finds their figures as
 * plain numbers. Mutable, for one thread.
 */
final class WaterRow implements FigureRows.Leaves {

  /** The same for every water, whatever its temperature. */
  static final double KILOGRAMS_PER_LITRE =
      Contents.pure(Temperature.ofCelsius(25), Chemistry.standard()).kilogramsPerLitre();

  private static final double PER_KILOGRAM = 1 / (1000 * KILOGRAMS_PER_LITRE);

  private static final double CACO3_PER_MILLIEQUIVALENT =
      CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();

  private final WaterColumns columns;
  private final Table table;
  private final @Nullable Equilibria equilibria;
  private final @Nullable CarbonateBalance carbonates;
  private final Input[] inputs;
  private final int[] indices;
  private final boolean[] needed;
  private final @Nullable Input alkalinity;
  private final @Nullable Input total;
  private final @Nullable Input measured;
  private final @Nullable WaterBlock block;
  private int filled = -1;
  private @Nullable Failure fault;

  /** Works over a work space of the columns' components, or none if there is no balance. */
  WaterRow(WaterColumns columns, Table table, @Nullable Equilibria equilibria) {
    this.columns = columns;
    this.table = table;
    this.equilibria = equilibria;
    carbonates = equilibria == null ? null : CarbonateBalance.of(equilibria);
    inputs = new Input[columns.ions.size()];
    indices = new int[columns.ions.size()];
    needed = new boolean[columns.ions.size()];
    int k = 0;
    for (Map.Entry<Ion, Input> entry : columns.ions.entrySet()) {
      inputs[k] = entry.getValue().times(PER_KILOGRAM);
      indices[k] =
          equilibria == null ? k : equilibria.indexOf(WaterColumns.component(entry.getKey()));
      needed[k] = columns.isNeeded(entry.getKey());
      k++;
    }
    alkalinity = columns.alkalinity.map(input -> input.times(PER_KILOGRAM)).orElse(null);
    total = columns.carbonDioxide.map(input -> input.times(PER_KILOGRAM)).orElse(null);
    measured = columns.closingPH().orElse(null);
    block = block();
  }

  /** Rows that are neutral by their ions are solved side by side, if the chemistry allows it. */
  private @Nullable WaterBlock block() {
    if (equilibria == null || alkalinity != null || total == null) {
      return null;
    }
    EquilibriumRows rows = EquilibriumRows.like(equilibria);
    if (!rows.isInLockstep()) {
      return null;
    }
    Map<Integer, Input> all = new LinkedHashMap<>();
    Set<Integer> mayBeMissing = new HashSet<>();
    for (int k = 0; k < inputs.length; k++) {
      all.put(indices[k], inputs[k]);
      if (!needed[k]) {
        mayBeMissing.add(indices[k]);
      }
    }
    all.put(rows.indexOf(Component.CARBONATE), total);
    return new WaterBlock(rows, all, mayBeMissing, table.size());
  }

  /** The work space, for a table that has the columns of a balance. */
  Equilibria equilibria() {
    if (equilibria == null) {
      throw columns.missing(columns.missingForBalance().orElseThrow());
    }
    return equilibria;
  }

  private CarbonateBalance carbonates() {
    if (carbonates == null) {
      throw columns.missing(columns.missingForBalance().orElseThrow());
    }
    return carbonates;
  }

  /** Fills in a row and closes its balance, or says why there is none. */
  @Nullable Failure balance(int index) {
    if (filled != index) {
      filled = index;
      fault = fill(index);
    }
    return fault;
  }

  private @Nullable Failure fill(int index) {
    Equilibria own = equilibria();
    own.forget();
    for (int k = 0; k < inputs.length; k++) {
      Failure failure = inputs[k].fault(index);
      if (failure != null && (needed[k] || !inputs[k].isMissing(index))) {
        return failure;
      }
      own.setTotal(indices[k], failure == null ? inputs[k].at(index) : 0);
    }
    try {
      if (alkalinity != null) {
        return closeToAlkalinity(alkalinity, index);
      }
      return total == null ? null : neutralByIons(total, index);
    } catch (NoSolutionException e) {
      return noSolution(index, "pH", e);
    }
  }

  private @Nullable Failure neutralByIons(Input carbonDioxide, int index) {
    Failure failure = carbonDioxide.fault(index);
    if (failure == null) {
      Equilibria own = equilibria();
      own.setInertCharge(0);
      own.setTotal(own.indexOf(Component.CARBONATE), carbonDioxide.at(index));
    }
    return failure;
  }

  private @Nullable Failure closeToAlkalinity(Input stated, int index) {
    Failure failure = stated.fault(index);
    if (failure != null) {
      return failure;
    }
    if (measured != null) {
      return closeToMeasured(measured, index, stated.at(index));
    }
    Input carbonDioxide = total == null ? stated : total;
    failure = carbonDioxide.fault(index);
    if (failure != null) {
      return failure;
    }
    double moles = carbonDioxide.at(index);
    return carbonates().closeByTotal(stated.at(index), moles)
        ? null
        : stated.notPossible(
            index,
            "is not possible with "
                + NumberText.plain(moles * 1000 * KILOGRAMS_PER_LITRE)
                + " mmol/L of carbon dioxide; more than 0 and less than twice as many mEq/L are");
  }

  private @Nullable Failure closeToMeasured(Input pH, int index, double stated) {
    Failure failure = pH.fault(index);
    if (failure != null) {
      return failure;
    }
    return carbonates().closeByPH(stated, pH.at(index))
        ? null
        : pH.notPossible(
            index,
            "is not possible with the alkalinity of the row;"
                + " more than 10 mol/kg of carbon dioxide would be needed");
  }

  Failure noSolution(int index, String heading, NoSolutionException reason) {
    return new Failure.NoSolution(table.row(index), heading, String.valueOf(reason.getMessage()));
  }

  @Override
  public FigureRows.@Nullable Node leaf(Figure<?> figure) {
    if (figure.equals(Figures.CARBONATE_ALKALINITY) && columns.alkalinity.isPresent()) {
      return new FigureRows.Stated(columns.alkalinity.get().times(CACO3_PER_MILLIEQUIVALENT));
    }
    if (figure.equals(Figures.TOTAL_CARBON_DIOXIDE) && columns.carbonDioxide.isPresent()) {
      return new FigureRows.Stated(columns.carbonDioxide.get());
    }
    if (figure.equals(Figures.PH_VALUE) && columns.alkalinity.isPresent()) {
      return closed(carbonates()::pH, 1);
    }
    Optional<Input> reported = columns.reported(figure);
    if (reported.isPresent()) {
      return new FigureRows.Stated(reported.get());
    }
    if (figure.rule() instanceof TotalFigure rule) {
      if (!rule.component().equals(Component.CARBONATE)) {
        throw columns.missing(figure.name());
      }
      return closed(carbonates()::total, rule.milligramsPerMole() * KILOGRAMS_PER_LITRE);
    }
    FigureRows.Node together = block == null ? null : together(block, figure);
    if (together != null) {
      return together;
    }
    return figure.rule() instanceof BalanceFigure rule ? balanced(rule) : null;
  }

  /** A figure that the rows of a block are asked for side by side; null for others. */
  private FigureRows.@Nullable Node together(WaterBlock rows, Figure<?> figure) {
    if (figure.equals(Figures.PH_VALUE)) {
      return together(rows, rows::pH, 1);
    }
    if (figure.equals(Figures.IONIC_STRENGTH)) {
      return together(rows, rows::ionicStrength, 1000);
    }
    return figure.equals(Figures.CARBONATE_ALKALINITY)
        ? together(rows, rows::alkalinity, 1000 * CACO3_PER_MILLIEQUIVALENT * KILOGRAMS_PER_LITRE)
        : null;
  }

  private FigureRows.Node together(WaterBlock rows, IntToDoubleFunction found, double factor) {
    return new FigureRows.Node() {
      @Override
      @Nullable Failure find(int index) {
        int place = rows.place(index);
        Failure fault = rows.fault(place);
        if (fault != null) {
          return fault;
        }
        Optional<NoSolutionException> none = rows.failure(place);
        if (none.isPresent()) {
          return noSolution(index, "pH", none.get());
        }
        value = found.applyAsDouble(place) * factor;
        return null;
      }
    };
  }

  /** What the closure of a row found, times a factor. */
  private FigureRows.Node closed(DoubleSupplier found, double factor) {
    return new FigureRows.Node() {
      @Override
      @Nullable Failure find(int index) {
        Failure failure = balance(index);
        value = failure == null ? found.getAsDouble() * factor : 0;
        return failure;
      }
    };
  }

  private FigureRows.Node balanced(BalanceFigure rule) {
    Equilibria own = equilibria();
    return new FigureRows.Node() {
      @Override
      @Nullable Failure find(int index) {
        Failure failure = balance(index);
        if (failure != null) {
          return failure;
        }
        try {
          value = rule.number(own, KILOGRAMS_PER_LITRE);
          return null;
        } catch (NoSolutionException e) {
          return noSolution(index, "pH", e);
        }
      }
    };
  }
}
