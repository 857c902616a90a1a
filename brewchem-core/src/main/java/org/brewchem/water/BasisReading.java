package org.brewchem.water;

import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.substance.Ion;

/**
 * One figure of a report read on another basis than the one it is stated on, and what that makes of
 * the ion balance.
 *
 * @param code which reading it is
 * @param ion the ion; bicarbonate stands for the alkalinity
 * @param condition in words, such as "the sulfate were stated as sulfur"
 * @param factor the number that the equivalents of the ion are multiplied by
 * @param asStated the ion balance as the report states the figure, per cent of the sum
 * @param ifSo the ion balance if it is read so, per cent of the sum
 */
public record BasisReading(
    WaterCode code, Ion ion, String condition, double factor, double asStated, double ifSo) {

  /**
   * Makes a reading.
   *
   * @param code which reading it is
   * @param ion the ion; bicarbonate stands for the alkalinity
   * @param condition in words, such as "the sulfate were stated as sulfur"
   * @param factor the number that the equivalents of the ion are multiplied by
   * @param asStated the ion balance as the report states the figure, per cent of the sum
   * @param ifSo the ion balance if it is read so, per cent of the sum
   * @throws IllegalArgumentException if a number is not finite
   */
  public BasisReading {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(ion, "ion");
    Objects.requireNonNull(condition, "condition");
    Checks.finite("factor", factor, "");
    Checks.finite("ion balance as stated", asStated, "%");
    Checks.finite("ion balance if so", ifSo, "%");
  }
}
