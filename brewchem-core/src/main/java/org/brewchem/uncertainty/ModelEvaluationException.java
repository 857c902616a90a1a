package org.brewchem.uncertainty;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * Thrown when the formula of a {@link MeasurementModel} gives no finite result for some values of
 * its inputs. One such draw spoils a Monte Carlo run: leaving it out would describe another
 * quantity, one that is known to have a result.
 */
public final class ModelEvaluationException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /** The values by the name of the input. */
  private final Map<String, Double> inputs;

  /** The draw, counted from 0; negative outside Monte Carlo. */
  private final int draw;

  /** A negative draw means that the failure was not in a Monte Carlo run. */
  ModelEvaluationException(
      String measurand,
      List<Input> inputs,
      double[] values,
      int draw,
      String reason,
      @Nullable Throwable cause) {
    super(message(measurand, inputs, values, draw, reason), cause);
    Map<String, Double> byName = new LinkedHashMap<>();
    for (int i = 0; i < values.length; i++) {
      byName.put(inputs.get(i).name(), values[i]);
    }
    this.inputs = Collections.unmodifiableMap(byName);
    this.draw = draw;
  }

  /**
   * Returns the values for which there is no result.
   *
   * @return the values by the name of the input, each in the unit of that input, in input order
   */
  public Map<String, Double> inputs() {
    return inputs;
  }

  /**
   * Returns which draw of a Monte Carlo run failed.
   *
   * @return the draw, counted from 0; empty outside Monte Carlo
   */
  public OptionalInt draw() {
    return draw < 0 ? OptionalInt.empty() : OptionalInt.of(draw);
  }

  private static String message(
      String measurand, List<Input> inputs, double[] values, int draw, String reason) {
    StringBuilder text = new StringBuilder(measurand);
    if (draw >= 0) {
      text.append(", draw ").append(draw);
    }
    text.append(": ").append(reason).append("; inputs:");
    for (int i = 0; i < values.length; i++) {
      Input input = inputs.get(i);
      text.append(i == 0 ? " " : ", ")
          .append(input.name())
          .append(" = ")
          .append(Digits.withUnit(Double.toString(values[i]), input.unit()));
    }
    return text.toString();
  }
}
