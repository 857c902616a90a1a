package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Component;
import org.brewchem.treatment.UnreachableException.Reason;
import org.brewchem.uncertainty.Traced;

/**
 * A liquid in a tank and one use of a reagent: what any amount of it does there, asked of the
 * liquid itself. Amounts in moles by the label per litre of what is thought to be in the tank.
 * Immutable.
 */
record Dosing<L extends Liquid>(
    L liquid, Supply supply, Tank tank, boolean leaving, Contents known, Contents prepared) {

  private static final Scale<AmountOfSubstance> MOLES =
      Scale.of("mol", AmountOfSubstance::inMoles, AmountOfSubstance::ofMoles, 4);

  /** Relative step of the dose in a central difference. */
  private static final double STEP = 1e-4;

  /** How small a dose tells the direction, mol per litre. */
  private static final double FIRST = 1e-6;

  /** Starts with what is dosed, where it is permitted. */
  static <L extends Liquid> Dosing<L> of(L liquid, Supply supply, Tank tank) {
    Objects.requireNonNull(liquid, "liquid");
    Objects.requireNonNull(tank, "tank");
    Permitted.of(liquid.kind()).ifPresent(use -> Permitted.in(use, Addition.of(supply, 0)));
    return with(liquid, supply, tank, isGasLeaving(liquid, supply));
  }

  /** The carbon dioxide of a carbonate leaves a beer, as it leaves the sample of a laboratory. */
  static boolean isGasLeaving(Liquid liquid, Supply supply) {
    return carbonate(supply) > 0 && liquid.kind().equals("beer");
  }

  private static <L extends Liquid> Dosing<L> with(
      L liquid, Supply supply, Tank tank, boolean leaving) {
    Contents known = liquid.contents();
    return new Dosing<>(liquid, supply, tank, leaving, known, Mixture.prepared(known, supply));
  }

  /** The same with another use of the reagent. */
  Dosing<L> acting(Supply other) {
    return with(liquid, other, tank, leaving);
  }

  /** The same, the carbon dioxide of the reagent staying. */
  Dosing<L> keepingCarbonDioxide() {
    return with(liquid, supply, tank, false);
  }

  /** Moles of carbonate in a mole of the reagent; 0 for carbonic acid itself. */
  double carbonate() {
    return carbonate(supply);
  }

  private static double carbonate(Supply supply) {
    return supply.compound().components().size() > 1
        ? supply.compound().components().getOrDefault(Component.CARBONATE, 0.0)
        : 0;
  }

  List<String> lines(Figure<?> figure, double found) {
    List<String> lines = new ArrayList<>();
    lines.add("before the dose: " + liquid.step(figure));
    lines.add("in the tank: " + tank);
    lines.add("after " + addition(found).text() + ": " + Shown.text(figure, value(found, figure)));
    lines.addAll(supply.arithmetic(found));
    return lines;
  }

  static double tolerance(double wanted) {
    return 10 * DoseSearch.TOLERANCE * Math.max(1, Math.abs(wanted));
  }

  Step.Builder amount(String how) {
    return Step.of("amount for the tank", MOLES, Step.Kind.ROOT).text(how, "");
  }

  static Notice atLimit(Figure<?> figure, double shown) {
    return Notice.of(
        TreatmentCode.AT_THE_LIMIT,
        figure.title(),
        "the dose goes to the limit, "
            + figure.shown().text(shown)
            + ": half of the outcomes lie beyond it. Ask for a smaller chance, or state an aim");
  }

  UnreachableException unreachable(Figure<?> figure, double target, double nearest, Reason reason) {
    return new UnreachableException(
        figure.title(), target, nearest, figure.shown(), reason, supply.name());
  }

  Addition addition(double moles) {
    Addition into = Addition.of(supply, moles).times(tank.ratio());
    return leaving ? into.withoutCarbonDioxide() : into;
  }

  @SuppressWarnings("unchecked") // a treated liquid is a liquid of its own kind
  L after(double moles) {
    return (L) liquid.after(addition(moles).preparedFor(known, prepared));
  }

  double value(double moles, Figure<?> figure) {
    return value(after(moles).step(figure), figure);
  }

  static double value(Step step, Figure<?> figure) {
    return step.found()
        .orElseThrow(() -> new UnknownFigureException(figure.title(), step.whyUnknown()))
        .value();
  }

  double quantile(double moles, Figure<?> figure, double probability) {
    Step step = after(moles).step(figure);
    value(step, figure);
    Traced found = step.found().orElseThrow();
    return Chances.quantile(found, probability)
        .orElseThrow(
            () ->
                new UnknownFigureException(
                    "chance of " + figure.title(),
                    found.missing().stream()
                        .map(source -> "u of " + source.name() + " is not stated")
                        .toList()));
  }

  boolean isFalling(Figure<?> figure) {
    return value(FIRST, figure) < value(0, figure);
  }

  /** By how much the amount that meets a constraint may differ. */
  Step needed(Constraint constraint, double wanted, double found) {
    Figure<?> figure = constraint.figure();
    Step before = liquid.step(figure);
    Step reached = after(found).step(figure);
    double step = STEP * found;
    double slope = (value(found + step, figure) - value(found - step, figure)) / (2 * step);
    double litres = tank.volume().inLitres();
    return amount("until the " + constraint)
        .inputs(List.of(before, reached))
        .detail(
            () ->
                new Step.Detail(
                    lines(figure, found), value(found, figure) - wanted, tolerance(wanted)))
        .found(
            Traced.linear(
                found * litres,
                new Traced[] {reached.found().orElseThrow()},
                new double[] {-litres / slope}));
  }

  static Step product(Step.Builder builder, Traced factor, double exact) {
    Traced product = factor.times(exact);
    return builder
        .detail(() -> new Step.Detail(List.of(), factor.value() * exact - product.value(), 0))
        .found(product);
  }

  static <Q> Figure<Q> figure(String name, Scale<Q> scale) {
    return Figure.of(
        name,
        Map.of(),
        scale,
        new Figure.Rule() {
          @Override
          public Step find(Figure<?> asked, Answering from) {
            return Step.of(asked.title(), asked.scale(), Step.Kind.FORMULA)
                .unknown(List.of("needs a dose into a tank; ask the dose for it"));
          }

          @Override
          public String text() {
            return "of a dose into a tank";
          }
        });
  }
}
