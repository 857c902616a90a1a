package org.brewchem.table;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.figure.Answering;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.internal.ClosedForms;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a table as single titrations, with their sources of uncertainty, and as plain
 * numbers: TA = titrant x (volume - blank) / sample. For one thread.
 */
final class SingleTitrations implements FigureRows.Single, FigureRows.Leaves {

  private static final Scale<Volume> MILLILITRES =
      Scale.of("mL", Volume::inMillilitres, Volume::ofMillilitres, 3);

  private static final Figure<Volume> TITRE = stated("volume of titrant", MILLILITRES);
  private static final Figure<Volume> BLANK = stated("blank", MILLILITRES);
  private static final Figure<Volume> SAMPLE = stated("sample", MILLILITRES);

  private static final Figure<AmountConcentration> TITRANT =
      stated(
          "titrant",
          Scale.of(
              "mol/L",
              AmountConcentration::inMolesPerLitre,
              AmountConcentration::ofMolesPerLitre,
              5));

  private final Table table;
  private final TitrationColumns columns;
  private final Optional<Traced> sampleOfAll;
  private final Optional<Traced> titrantOfAll;
  private final Figure<TitratableAcidity> acidity;

  /** Works with a sample in mL and a titrant in Eq/L where the table has no columns of them. */
  SingleTitrations(
      Table table,
      TitrationColumns columns,
      PH endPoint,
      Optional<Traced> sampleOfAll,
      Optional<Traced> titrantOfAll) {
    this.table = table;
    this.columns = columns;
    this.sampleOfAll = sampleOfAll;
    this.titrantOfAll = titrantOfAll;
    Figure<TitratableAcidity> ofLiquid = Figures.titratableAcidity(endPoint);
    acidity =
        Figure.of(
            ofLiquid.name(),
            ofLiquid.parameters(),
            Scales.acidity(endPoint),
            new ClosedForm(
                "titrant x (volume - blank) / sample",
                "",
                Figure.list(TITRANT, TITRE, BLANK, SAMPLE),
                x -> ClosedForms.titratedMilliequivalentsPerLitre(x[0], x[1] - x[2], 1, x[3])));
  }

  private static <Q> Figure<Q> stated(String name, Scale<Q> scale) {
    return Figure.of(name, Map.of(), scale, new Stated());
  }

  @Override
  public Answering at(int index) {
    Map<Figure<?>, Step> steps = new LinkedHashMap<>();
    put(steps, TITRE, Optional.of(columns.volume), index, Optional.empty());
    put(steps, BLANK, columns.blank, index, Optional.of(Traced.exact(0)));
    put(steps, SAMPLE, columns.sample, index, sampleOfAll);
    put(steps, TITRANT, columns.titrant, index, titrantOfAll);
    return new Row(steps, acidity);
  }

  private static void put(
      Map<Figure<?>, Step> steps,
      Figure<?> figure,
      Optional<Input> input,
      int index,
      Optional<Traced> ofAll) {
    if (input.isPresent()) {
      Failure failure = input.get().fault(index);
      steps.put(
          figure,
          failure == null
              ? input.get().step(index, figure)
              : Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
                  .unknown(List.of(failure.toString())));
    } else {
      ofAll.ifPresent(
          same ->
              steps.put(
                  figure,
                  Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
                      .origin(Origin.MEASURED)
                      .text("the same for all rows", "")
                      .found(same)));
    }
  }

  /** One titration. */
  private record Row(Map<Figure<?>, Step> stated, Figure<?> acidity) implements Answering {

    @Override
    public Step step(Figure<?> figure) {
      Step own = stated.get(figure);
      if (own != null) {
        return own;
      }
      return figure.equals(acidity)
          ? acidity.rule().find(acidity, this)
          : figure.rule().find(figure, this);
    }

    @Override
    public String kind() {
      return "titration";
    }
  }

  /** The rule of what a row states: nothing else finds it. */
  private record Stated() implements Figure.Rule {

    @Override
    public Step find(Figure<?> figure, Answering from) {
      return Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
          .unknown(List.of(figure.title() + " is not stated"));
    }

    @Override
    public String text() {
      return "as stated";
    }
  }

  @Override
  public @Nullable Failure fault(int index) {
    return Input.fault(columns.inputs(), index);
  }

  @Override
  public @Nullable Failure uncertaintyFault(int index) {
    return Input.uncertaintyFault(columns.inputs(), index);
  }

  @Override
  public FigureRows.@Nullable Node leaf(Figure<?> figure) {
    if (!figure.equals(acidity)) {
      return null;
    }
    Numbers titrant = numbers(TitrationColumns.TITRANT, columns.titrant, titrantOfAll);
    Numbers sample = numbers(TitrationColumns.SAMPLE, columns.sample, sampleOfAll);
    Numbers blank = numbers(TitrationColumns.BLANK, columns.blank, Optional.of(Traced.exact(0)));
    Numbers volume = new Numbers(columns.volume, 0);
    return new FigureRows.Node() {
      @Override
      @Nullable Failure find(int index) {
        Failure failure = volume.fault(index);
        failure = failure == null ? sample.fault(index) : failure;
        failure = failure == null ? titrant.fault(index) : failure;
        failure = failure == null ? blank.fault(index) : failure;
        if (failure == null) {
          value =
              ClosedForms.titratedMilliequivalentsPerLitre(
                  titrant.at(index), volume.at(index) - blank.at(index), 1, sample.at(index));
        }
        return failure;
      }
    };
  }

  private Numbers numbers(String name, Optional<Input> input, Optional<Traced> ofAll) {
    if (input.isEmpty() && ofAll.isEmpty()) {
      throw new IllegalStateException(
          name + ": neither a column nor a value for all rows is there: " + table.summary());
    }
    return new Numbers(input.orElse(null), ofAll.map(Traced::value).orElse(0.0));
  }

  /** A column, or the same number in all rows. */
  private record Numbers(@Nullable Input input, double ofAll) {

    double at(int index) {
      return input == null ? ofAll : input.at(index);
    }

    @Nullable Failure fault(int index) {
      return input == null ? null : input.fault(index);
    }
  }
}
