package org.brewchem.solution;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.uncertainty.Traced;

/**
 * The rule of a figure that comes from the contents of a liquid: a total, or something that the
 * charge balance tells. Immutable.
 *
 * <p>The number is a function of a work space that holds the contents, so that the rows of a table
 * are evaluated by the same function that answers for a single liquid.
 */
public final class BalanceFigure implements Figure.Rule {

  /** Finds the number with its sources, from contents and their balance. */
  interface Tracing {
    Traced trace(Contents contents, TracedBalance balance);
  }

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
  private final Function<Contents, List<Notice>> noting;

  private BalanceFigure(
      String text,
      String source,
      ToDoubleFunction<Equilibria> number,
      double perKilogram,
      Tracing tracing,
      Showing showing,
      Function<Contents, List<Notice>> noting) {
    this.text = text;
    this.source = source;
    this.number = number;
    this.perKilogram = perKilogram;
    this.tracing = tracing;
    this.showing = showing;
    this.noting = noting;
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
    return figure(
        name, parameters, scale, text, number, perKilogram, tracing, showing, c -> List.of());
  }

  /** A figure about which something may have to be said. */
  static <Q> Figure<Q> figure(
      String name,
      Map<String, String> parameters,
      Scale<Q> scale,
      String text,
      ToDoubleFunction<Equilibria> number,
      double perKilogram,
      Tracing tracing,
      Showing showing,
      Function<Contents, List<Notice>> noting) {
    return Figure.of(
        name,
        parameters,
        scale,
        new BalanceFigure(text, "", number, perKilogram, tracing, showing, noting));
  }

  /** A figure at the liquid's own pH that rests on a solubility, in its own scale. */
  static <Q> Figure<Q> ofSolubility(
      String name,
      Map<String, String> parameters,
      Scale<Q> scale,
      String text,
      ToDoubleFunction<Equilibria> number,
      Showing showing,
      String subject,
      EquilibriumConstant solubility) {
    return Figure.of(
        name,
        parameters,
        scale,
        new BalanceFigure(
            text,
            "",
            number,
            0,
            (contents, balance) -> balance.byDifferences(number),
            showing,
            contents -> BalanceNotices.solubility(subject, solubility, contents.temperature())));
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
    TracedBalance balance = contents.balance();
    Traced found = tracing.trace(contents, balance);
    if (perKilogram != 0) {
      found = found.times(perKilogram * contents.kilogramsPerLitre());
    }
    double value = found.value();
    return builder
        .notices(contents.notices())
        .notices(balance.notices())
        .notices(noting.apply(contents))
        .detail(() -> BalanceDetail.orFailure(() -> showing.show(contents, value)))
        .found(found);
  }

  @Override
  public String text() {
    return text;
  }
}
