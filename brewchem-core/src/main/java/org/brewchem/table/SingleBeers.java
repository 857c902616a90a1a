package org.brewchem.table;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Step;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.substance.Ion;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a table as single beers. Each row is an object, for what buffers a beer is scaled to
 * its own acidity. For one thread.
 */
final class SingleBeers implements FigureRows.Single, FigureRows.Leaves {

  private final Table table;
  private final BeerColumns columns;
  private final Temperature temperature;
  private final Chemistry chemistry;
  private int lastIndex = -1;
  private @Nullable Beer last;

  SingleBeers(Table table, BeerColumns columns, Temperature temperature, Chemistry chemistry) {
    this.table = table;
    this.columns = columns;
    this.temperature = temperature;
    this.chemistry = chemistry;
  }

  /** Why a row is no beer, or null: an ion that is missing is not known, which is no fault. */
  @Override
  public @Nullable Failure fault(int index) {
    Failure failure = columns.pH.fault(index);
    failure = failure == null ? columns.acidity.fault(index) : failure;
    for (Input ion : columns.ions.values()) {
      Failure own = ion.fault(index);
      failure = failure == null && !(own instanceof Failure.Missing) ? own : failure;
    }
    if (failure == null && columns.pH.at(index) >= columns.endPoint.value()) {
      failure = columns.pH.notPossible(index, "is not below the end point, " + columns.endPoint);
    }
    return failure;
  }

  /** The beer of a row without a fault. */
  Beer beer(int index) {
    Beer ready = last;
    if (ready == null || index != lastIndex) {
      ready = made(index);
      last = ready;
      lastIndex = index;
    }
    return ready;
  }

  private Beer made(int index) {
    Beer beer =
        Beer.of(PH.of(columns.pH.at(index)), milliequivalents(columns.acidity.at(index)))
            .measuredAt(temperature)
            .under(chemistry);
    OptionalDouble ofPH = columns.pH.traced(index).standardUncertainty();
    if (ofPH.isPresent()) {
      beer = beer.withStandardUncertaintyOfPH(ofPH.getAsDouble());
    }
    OptionalDouble ofAcidity = columns.acidity.traced(index).standardUncertainty();
    if (ofAcidity.isPresent()) {
      beer = beer.withStandardUncertaintyOfAcidity(milliequivalents(ofAcidity.getAsDouble()));
    }
    for (Map.Entry<Ion, Input> ion : columns.ions.entrySet()) {
      if (ion.getValue().fault(index) == null) {
        OptionalDouble u = ion.getValue().traced(index).standardUncertainty();
        MassConcentration held = MassConcentration.ofMilligramsPerLitre(ion.getValue().at(index));
        beer =
            u.isPresent()
                ? beer.with(
                    ion.getKey(), held, MassConcentration.ofMilligramsPerLitre(u.getAsDouble()))
                : beer.with(ion.getKey(), held);
      }
    }
    return beer;
  }

  private TitratableAcidity milliequivalents(double perLitre) {
    return TitratableAcidity.ofMilliequivalentsPerLitre(perLitre, columns.endPoint);
  }

  @Override
  public Answering at(int index) {
    Failure failure = fault(index);
    return failure == null ? beer(index) : new NoBeer(failure);
  }

  /** A row that is no beer. */
  private record NoBeer(Failure failure) implements Answering {

    @Override
    public Step step(Figure<?> figure) {
      return Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
          .unknown(List.of(failure.toString()));
    }

    @Override
    public String kind() {
      return "beer";
    }
  }

  @Override
  public @Nullable Failure uncertaintyFault(int index) {
    return Input.uncertaintyFault(columns.inputs(), index);
  }

  @Override
  public FigureRows.Node leaf(Figure<?> figure) {
    return new FigureRows.Node() {
      @Override
      @Nullable Failure find(int index) {
        Failure failure = fault(index);
        return failure == null ? asked(index) : failure;
      }

      private @Nullable Failure asked(int index) {
        Step step;
        try {
          step = beer(index).step(figure);
        } catch (IllegalArgumentException | NoSolutionException e) {
          return new Failure.NoSolution(
              table.row(index), figure.title(), String.valueOf(e.getMessage()));
        }
        if (step.found().isEmpty()) {
          return new Failure.NoSolution(
              table.row(index), figure.title(), String.join("; ", step.whyUnknown()));
        }
        value = step.found().get().value();
        return null;
      }
    };
  }
}
