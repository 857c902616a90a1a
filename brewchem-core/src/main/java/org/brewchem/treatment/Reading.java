package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Step;
import org.brewchem.solution.BalanceFigure;
import org.brewchem.solution.TotalFigure;
import org.brewchem.uncertainty.Traced;

/** Figures as plain functions of a dose, by the very rules that answer for a single liquid. */
final class Reading {

  private Reading() {}

  /**
   * Reads a figure off a mixture.
   *
   * @param figure the figure
   * @param mixture the liquid with a variable amount of reagent
   * @param before answers a figure of the liquid before
   * @return the figure's number in its own scale, for moles of reagent per litre; empty when a rule
   *     is none that a work space can walk, or the liquid does not tell the figure
   */
  static Optional<DoubleUnaryOperator> of(
      Figure<?> figure, Mixture mixture, Function<Figure<?>, Step> before) {
    Figure.Rule rule = figure.rule();
    if (rule instanceof BalanceFigure balance) {
      return balance(figure, balance, mixture, before);
    }
    if (rule instanceof TotalFigure total) {
      if (before.apply(figure).found().isEmpty()) {
        return Optional.empty();
      }
      double factor = total.milligramsPerMole() * mixture.kilogramsPerLitre();
      return Optional.of(
          moles -> {
            mixture.set(moles);
            return mixture.total(total.component(), moles) * factor;
          });
    }
    return rule instanceof ClosedForm form ? formula(form, mixture, before) : Optional.empty();
  }

  private static Optional<DoubleUnaryOperator> balance(
      Figure<?> figure, BalanceFigure balance, Mixture mixture, Function<Figure<?>, Step> before) {
    Optional<Traced> own = before.apply(figure).found();
    if (own.isEmpty()) {
      return Optional.empty();
    }
    mixture.set(0);
    double kilogramsPerLitre = mixture.kilogramsPerLitre();
    // What was measured beyond the balance, as of a titrated acidity, dilutes with the liquid.
    double beyond = own.get().value() - balance.number(mixture.equilibria(), kilogramsPerLitre);
    return Optional.of(
        moles -> {
          mixture.set(moles);
          return balance.number(mixture.equilibria(), kilogramsPerLitre) + beyond * mixture.share();
        });
  }

  private static Optional<DoubleUnaryOperator> formula(
      ClosedForm form, Mixture mixture, Function<Figure<?>, Step> before) {
    List<DoubleUnaryOperator> inputs = new ArrayList<>();
    for (Figure<?> input : form.inputs()) {
      Optional<DoubleUnaryOperator> reading = of(input, mixture, before);
      if (reading.isEmpty()) {
        return Optional.empty();
      }
      DoubleUnaryOperator inOwn = reading.get();
      inputs.add(moles -> input.inShown(Traced.exact(inOwn.applyAsDouble(moles))).value());
    }
    double[] numbers = new double[inputs.size()];
    return Optional.of(
        moles -> {
          for (int i = 0; i < numbers.length; i++) {
            numbers[i] = inputs.get(i).applyAsDouble(moles);
          }
          return form.apply(numbers);
        });
  }
}
