package org.brewchem.solution;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.uncertainty.Traced;

/**
 * The rule of a figure that comes from the contents of a liquid: a total, or something that the
 * charge balance tells. Immutable.
 *
 * <p>The number is a function of a work space that holds the contents, so that the rows of a table
 * are evaluated by the very function that answers for a single liquid.
 */
public final class BalanceFigure implements Figure.Rule {

  /** Finds the number of contents, with its sources. */
  interface Tracing extends Function<Contents, Traced> {}

  /** Writes what an explanation shows for contents and the number found. */
  interface Showing {
    Step.Detail show(Contents contents, double number);
  }

  private final String text;
  private final String source;
  private final ToDoubleFunction<Equilibria> number;
  private final double perKilogram;
  private final Tracing tracing;
  private final Showing showing;

  private BalanceFigure(
      String text,
      String source,
      ToDoubleFunction<Equilibria> number,
      double perKilogram,
      Tracing tracing,
      Showing showing) {
    this.text = text;
    this.source = source;
    this.number = number;
    this.perKilogram = perKilogram;
    this.tracing = tracing;
    this.showing = showing;
  }

  static <Q> Figure<Q> figure(
      String name,
      Map<String, String> parameters,
      Scale<Q> scale,
      String text,
      ToDoubleFunction<Equilibria> number,
      double perKilogram,
      Tracing tracing,
      Showing showing) {
    return Figure.of(
        name,
        parameters,
        scale,
        new BalanceFigure(text, "", number, perKilogram, tracing, showing));
  }

  /**
   * Evaluates the figure for what a work space holds.
   *
   * @param equilibria the work space, whose totals and inert charge are set
   * @param kilogramsPerLitre kg of water per litre, which counts where the figure is one per litre
   * @return the number in the figure's own scale
   * @throws NoSolutionException if the balance has no root
   */
  public double number(Equilibria equilibria, double kilogramsPerLitre) {
    double own = number.applyAsDouble(equilibria);
    return perKilogram == 0 ? own : own * perKilogram * kilogramsPerLitre;
  }

  @Override
  public Step find(Figure<?> figure, Answering from) {
    Step.Builder builder =
        Step.of(figure.title(), figure.scale(), Step.Kind.ROOT).text(text, source);
    if (!(from instanceof Liquid liquid)) {
      return builder.unknown(List.of("does not apply to a " + from.kind()));
    }
    Contents contents = liquid.contents();
    builder.inputs(contents.basis());
    if (!contents.whyOpen().isEmpty()) {
      return builder.unknown(contents.whyOpen());
    }
    Traced found = tracing.apply(contents);
    if (perKilogram != 0) {
      found = found.times(perKilogram * contents.kilogramsPerLitre());
    }
    double value = found.value();
    return builder
        .notices(contents.notices())
        .detail(() -> showing.show(contents, value))
        .found(found);
  }

  @Override
  public String text() {
    return text;
  }
}
