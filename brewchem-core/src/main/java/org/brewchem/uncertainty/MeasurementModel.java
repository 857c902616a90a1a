package org.brewchem.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;

/**
 * How a result comes about: named inputs, independent of each other but for the {@link Source
 * sources} that they share, and the formula that makes one number of them. From the same model come
 * the linear {@link Budget} and its check by Monte Carlo.
 *
 * <pre>{@code
 * MeasurementModel model =
 *     MeasurementModel.of("c(NaOH)", "mol/L")
 *         .with(Input.normal("mass of KHP", 0.4082, 0.00012, "g"))
 *         .with(Input.triangular("volume", 19.94, 0.03, "mL"))
 *         .calculatedBy(x -> 1000.0 * x[0] / (204.2212 * x[1]));
 * }</pre>
 */
public final class MeasurementModel {

  private static final double STEP_IN_STANDARD_UNCERTAINTIES = 0.1;
  private static final double LEAST_RELATIVE_STEP = Math.cbrt(Math.ulp(1.0));
  private static final int FEWEST_DRAWS = 1000;
  private static final int MOST_DRAWS = 10_000_000;
  private static final int NOT_A_DRAW = -1;

  private final String measurand;
  private final String unit;
  private final List<Input> inputs;
  private final ToDoubleFunction<double[]> formula;

  private MeasurementModel(
      String measurand, String unit, List<Input> inputs, ToDoubleFunction<double[]> formula) {
    this.measurand = measurand;
    this.unit = unit;
    this.inputs = inputs;
    this.formula = Objects.requireNonNull(formula, "formula");
  }

  /**
   * Starts a model.
   *
   * @param measurand the name of the result
   * @param unit the unit of the result, empty when there is none
   * @return a builder without inputs
   * @throws IllegalArgumentException if the name is blank
   */
  public static Builder of(String measurand, String unit) {
    return new Builder(
        Checks.notBlank("measurand", measurand), Objects.requireNonNull(unit, "unit"), List.of());
  }

  /** A model still without its formula; each step returns a new builder. */
  public static final class Builder {

    private final String measurand;
    private final String unit;
    private final List<Input> inputs;

    private Builder(String measurand, String unit, List<Input> inputs) {
      this.measurand = measurand;
      this.unit = unit;
      this.inputs = inputs;
    }

    /**
     * Adds inputs; the formula sees their values in the order in which they were added.
     *
     * @param added one or more inputs, with names that are not yet taken
     * @return a builder with these inputs, too
     * @throws IllegalArgumentException if a name is taken
     */
    public Builder with(Input... added) {
      Objects.requireNonNull(added, "added");
      List<Input> all = new ArrayList<>(inputs);
      for (Input input : added) {
        if (all.stream().anyMatch(other -> other.name().equals(input.name()))) {
          throw new IllegalArgumentException(
              "input: the name \""
                  + Excerpt.of(input.name())
                  + "\" is taken; each input needs its own");
        }
        all.add(input);
      }
      return new Builder(measurand, unit, List.copyOf(all));
    }

    /**
     * Completes the model with its formula.
     *
     * @param formula gives the result, in the unit of the measurand, from the values of the inputs,
     *     each in its own unit, in the order in which they were added; it must not keep the array
     * @return the model
     * @throws IllegalStateException if there are no inputs
     */
    public MeasurementModel calculatedBy(ToDoubleFunction<double[]> formula) {
      Objects.requireNonNull(formula, "formula");
      if (inputs.isEmpty()) {
        throw new IllegalStateException(measurand + ": a model needs at least one input");
      }
      return new MeasurementModel(measurand, unit, inputs, formula);
    }
  }

  /**
   * Returns the name of the result.
   *
   * @return the name
   */
  public String measurand() {
    return measurand;
  }

  /**
   * Returns the unit of the result.
   *
   * @return the unit, empty when there is none
   */
  public String unit() {
    return unit;
  }

  /**
   * Returns the inputs in the order in which the formula sees them.
   *
   * @return the inputs
   */
  public List<Input> inputs() {
    return inputs;
  }

  /**
   * Propagates the standard uncertainties through the formula made linear at the estimates (JCGM
   * 100:2008, 5.1.2 and G.4.1, from memory). The sensitivity to an input is its central difference
   * over a tenth of its standard uncertainty, or over 6e-6 of its estimate if that is more.
   *
   * @return the budget
   * @throws ModelEvaluationException if the formula throws or gives no finite number
   */
  public Budget linear() {
    double[] estimates = inputs.stream().mapToDouble(Input::estimate).toArray();
    double value = evaluate(estimates.clone(), NOT_A_DRAW);
    double[] sensitivities = new double[estimates.length];
    for (int i = 0; i < sensitivities.length; i++) {
      sensitivities[i] = sensitivity(i, estimates);
    }
    return Budget.of(measurand, unit, value, inputs, sensitivities);
  }

  /**
   * Propagates the distributions of the inputs by drawing from them (JCGM 101:2008, from memory).
   * The same draws, seed and model give the same numbers on every machine, as far as the formula
   * does. An input of which no uncertainty is stated stays at its estimate and is named: {@link
   * MonteCarlo#missing()}.
   *
   * @param draws the number of draws, 1000 to 10 million, 8 bytes each; 1e6 for an interval with
   *     two certain digits
   * @param seed the seed of the random generator
   * @return the distribution of the result
   * @throws org.brewchem.OutOfRangeException if there are fewer or more draws than that
   * @throws ModelEvaluationException if the formula throws or gives no finite number for a draw
   */
  public MonteCarlo monteCarlo(int draws, long seed) {
    Checks.inRange("draws", draws, "", FEWEST_DRAWS, MOST_DRAWS);
    Sampler sampler = new Sampler(inputs, seed);
    double[] values = new double[inputs.size()];
    double[] results = new double[draws];
    for (int i = 0; i < draws; i++) {
      sampler.draw(values);
      results[i] = evaluate(values, i);
    }
    return MonteCarlo.of(measurand, unit, inputs, seed, results);
  }

  private double sensitivity(int index, double[] estimates) {
    Input input = inputs.get(index);
    double step =
        Math.max(
            STEP_IN_STANDARD_UNCERTAINTIES * input.standardUncertainty(),
            LEAST_RELATIVE_STEP * Math.abs(input.estimate()));
    if (step == 0.0) {
      step = LEAST_RELATIVE_STEP;
    }
    double[] above = estimates.clone();
    double[] below = estimates.clone();
    above[index] += step;
    below[index] -= step;
    double width = above[index] - below[index];
    return (evaluate(above, NOT_A_DRAW) - evaluate(below, NOT_A_DRAW)) / width;
  }

  private double evaluate(double[] values, int draw) {
    double result;
    try {
      result = formula.applyAsDouble(values);
    } catch (RuntimeException e) {
      throw new ModelEvaluationException(
          measurand,
          inputs,
          values,
          draw,
          "the formula gave no result (" + e.getMessage() + ")",
          e);
    }
    if (!Double.isFinite(result)) {
      throw new ModelEvaluationException(
          measurand, inputs, values, draw, "the formula gave " + result, null);
    }
    return result;
  }
}
