package org.brewchem.table;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Step;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.CarbonateClosure;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Constituent;
import org.brewchem.water.Water;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a table as single waters, with their sources of uncertainty: what is stated as steps,
 * and contents that are closed by it. For one thread.
 */
final class SingleWaters implements FigureRows.Single {

  private static final double CACO3_PER_MILLIEQUIVALENT =
      CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();

  private final WaterColumns columns;
  private final WaterRow row;
  private final Contents bare;

  SingleWaters(WaterColumns columns, WaterRow row, Temperature temperature, Chemistry chemistry) {
    this.columns = columns;
    this.row = row;
    this.bare = bare(temperature, chemistry);
  }

  /** All components at 0, so that the rows share what is compiled for them. */
  private Contents bare(Temperature temperature, Chemistry chemistry) {
    Contents contents = Contents.pure(temperature, chemistry);
    for (Component component : columns.components()) {
      contents = contents.withTotal(component, Traced.exact(0));
    }
    contents.equilibria();
    for (Ion ion : WaterColumns.IONS) {
      if (!columns.ions.containsKey(ion)) {
        contents = contents.withUnknown(WaterColumns.component(ion));
      }
    }
    return contents;
  }

  @Override
  public Water at(int index) {
    Map<Figure<?>, Step> steps = steps(index);
    return Water.reported(steps, chemistry -> contents(index, steps)).under(bare.chemistry());
  }

  /** What a row states, each figure with its step. */
  Map<Figure<?>, Step> steps(int index) {
    Map<Figure<?>, Step> steps = new LinkedHashMap<>();
    columns.ions.forEach(
        (ion, input) ->
            put(
                steps,
                index,
                Figures.concentration(ion),
                input.times(ion.molarMass().inGramsPerMole())));
    columns.silica().ifPresent(input -> put(steps, index, Constituent.SILICA.figure(), input));
    columns.alkalinity.ifPresent(
        input ->
            put(
                steps,
                index,
                Figures.CARBONATE_ALKALINITY,
                input.times(CACO3_PER_MILLIEQUIVALENT)));
    columns.carbonDioxide.ifPresent(
        input -> put(steps, index, Figures.TOTAL_CARBON_DIOXIDE, input));
    columns.closingPH().ifPresent(input -> put(steps, index, Figures.PH_VALUE, input));
    return steps;
  }

  private static void put(
      Map<Figure<?>, Step> steps, int index, Figure<?> figure, Input inItsScale) {
    if (inItsScale.fault(index) == null) {
      steps.put(figure, inItsScale.step(index, figure));
    }
  }

  /** What the waters hold that has the figures stated. */
  Contents contents(int index, Map<Figure<?>, Step> steps) {
    List<Step> basis = List.copyOf(steps.values());
    Contents ions = bare;
    for (Ion ion : columns.ions.keySet()) {
      Component component = WaterColumns.component(ion);
      double perMole = 1000 * ion.molarMass().inGramsPerMole() * bare.kilogramsPerLitre();
      Optional<Traced> stated = found(steps, Figures.concentration(ion));
      ions =
          stated.isPresent()
              ? ions.withTotal(component, stated.get().times(1 / perMole))
              : ions.withUnknown(component);
    }
    Optional<String> without = columns.missingForBalance();
    if (without.isPresent()) {
      return ions.open(List.of(without.get() + " is not in the table")).withBasis(basis);
    }
    Failure failure = row.balance(index);
    if (failure != null) {
      return ions.open(List.of(failure.toString())).withBasis(basis);
    }
    try {
      Contents closed = closed(ions, steps, basis);
      closed.equilibria().pH();
      return closed;
    } catch (NoSolutionException e) {
      return ions.open(List.of(row.noSolution(index, "pH", e).toString())).withBasis(basis);
    }
  }

  /**
   * The contents, closed by what is stated.
   *
   * @throws NoSolutionException if there are none
   */
  private Contents closed(Contents ions, Map<Figure<?>, Step> steps, List<Step> basis) {
    double milli = 1000 * bare.kilogramsPerLitre();
    Optional<Traced> total =
        found(steps, Figures.TOTAL_CARBON_DIOXIDE).map(stated -> stated.times(1 / milli));
    Optional<Traced> alkalinity =
        found(steps, Figures.CARBONATE_ALKALINITY)
            .map(stated -> stated.times(1 / (CACO3_PER_MILLIEQUIVALENT * milli)));
    if (alkalinity.isEmpty()) {
      return ions.withTotal(Component.CARBONATE, total.orElseThrow()).withBasis(basis);
    }
    CarbonateClosure closure = CarbonateClosure.of(ions, basis);
    if (total.isPresent()) {
      return closure.byTotal(alkalinity.get(), total.get());
    }
    Optional<Traced> pH = found(steps, Figures.PH_VALUE);
    return pH.isPresent()
        ? closure.byPH(alkalinity.get(), pH.get())
        : closure.byAlkalinity(alkalinity.get());
  }

  private static Optional<Traced> found(Map<Figure<?>, Step> steps, Figure<?> figure) {
    return Optional.ofNullable(steps.get(figure)).flatMap(Step::found);
  }

  @Override
  public @Nullable Failure fault(int index) {
    return Input.fault(columns.inputs(), index);
  }

  @Override
  public @Nullable Failure uncertaintyFault(int index) {
    return Input.uncertaintyFault(columns.inputs(), index);
  }
}
