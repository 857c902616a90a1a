package org.brewchem.water;

import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;

/**
 * The values between which a figure of a water lies, when some of what was reported is known only
 * to lie between two values.
 *
 * @param lowest the lowest value, in {@code unit}
 * @param highest the highest value, in {@code unit}
 * @param unit the unit of both; empty for a pH or a plain number
 */
public record Range(double lowest, double highest, String unit) {

  /**
   * Makes a range.
   *
   * @param lowest the lowest value, in {@code unit}
   * @param highest the highest value, in {@code unit}
   * @param unit the unit of both; empty for a pH or a plain number
   * @throws IllegalArgumentException if one is not finite or the highest is below the lowest
   */
  public Range {
    Objects.requireNonNull(unit, "unit");
    Checks.finite("lowest", lowest, unit);
    Checks.finite("highest", highest, unit);
    if (!(lowest <= highest)) {
      throw new IllegalArgumentException(
          "range: " + lowest + " to " + highest + " is not possible; the lowest comes first");
    }
  }

  /** Moves each open reading to the end at which the figure is lowest, and highest. */
  static Range of(Figure<?> figure, Readings readings, Function<Readings, Water> water) {
    Map<String, Reading.Extremes> open = readings.extremes();
    Readings all = lowestOf(readings, open);
    Readings lowest = all;
    Readings highest = all;
    double base = number(figure, water.apply(all));
    for (Map.Entry<String, Reading.Extremes> entry : open.entrySet()) {
      double most = entry.getValue().highest();
      Readings raised = all.at(entry.getKey(), most);
      if (number(figure, water.apply(raised)) > base) {
        highest = highest.at(entry.getKey(), most);
      } else {
        lowest = lowest.at(entry.getKey(), most);
      }
    }
    double one = number(figure, water.apply(lowest));
    double other = number(figure, water.apply(highest));
    return new Range(Math.min(one, other), Math.max(one, other), figure.shown().symbol());
  }

  private static Readings lowestOf(Readings readings, Map<String, Reading.Extremes> open) {
    Readings all = readings;
    for (Map.Entry<String, Reading.Extremes> entry : open.entrySet()) {
      all = all.at(entry.getKey(), entry.getValue().lowest());
    }
    return all;
  }

  private static double number(Figure<?> figure, Water water) {
    Answer<?> answer = water.answer(figure);
    return answer.number();
  }

  /**
   * Returns the range.
   *
   * @return such as {@code 0.5 to 1.2 mg/L}
   */
  @Override
  public String toString() {
    return NumberText.significant(lowest, 4)
        + " to "
        + NumberText.significant(highest, 4)
        + (unit.isEmpty() ? "" : " " + unit);
  }
}
