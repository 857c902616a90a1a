package org.brewchem.quality;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;

/**
 * One figure of batch after batch, in the order in which they were made. A batch whose figure is
 * unknown keeps its place without a value. Immutable.
 */
public final class ControlSeries {

  private final String title;
  private final String unit;
  private final List<Point> points;

  private ControlSeries(String title, String unit, List<Point> points) {
    this.title = Checks.notBlank("title of the series", title);
    this.unit = Objects.requireNonNull(unit, "unit");
    this.points = List.copyOf(points);
    Set<String> labels = new HashSet<>();
    for (Point point : points) {
      if (!labels.add(point.label())) {
        throw new IllegalArgumentException(
            "batch: \""
                + point.label()
                + "\" stands in the series already; each has its own label");
      }
    }
  }

  /**
   * A batch in a series.
   *
   * @param label what the batch is called
   * @param value its value in the unit of the series; empty when it is unknown
   */
  public record Point(String label, OptionalDouble value) {

    /**
     * Makes a point.
     *
     * @param label what the batch is called
     * @param value its value in the unit of the series; empty when it is unknown
     * @throws IllegalArgumentException if the label is blank or the value not finite
     */
    public Point {
      Checks.notBlank("label of the batch", label);
      Objects.requireNonNull(value, "value");
      value.ifPresent(number -> Checks.finite("value of batch " + label, number, ""));
    }
  }

  /**
   * Starts a series of a figure.
   *
   * @param figure the figure, in the unit that it is shown in
   * @return a series without batches
   */
  public static ControlSeries of(Figure<?> figure) {
    return new ControlSeries(figure.title(), figure.shown().symbol(), List.of());
  }

  /** The series of a figure whose batches a book has read already. */
  static ControlSeries of(Figure<?> figure, List<Point> points) {
    return new ControlSeries(figure.title(), figure.shown().symbol(), points);
  }

  /**
   * Makes a series of numbers, its batches labelled from 1.
   *
   * @param title what the numbers are
   * @param unit their unit; empty when there is none
   * @param values the numbers
   * @return the series
   * @throws IllegalArgumentException if the title is blank or a number is not finite
   */
  public static ControlSeries of(String title, String unit, double... values) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      points.add(new Point(Integer.toString(i + 1), OptionalDouble.of(values[i])));
    }
    return new ControlSeries(title, unit, points);
  }

  /**
   * Adds the answer of a batch.
   *
   * @param label what the batch is called
   * @param answer its answer, of the figure and in the unit of the series
   * @return the longer series
   * @throws IllegalArgumentException if the label is blank or stands in the series already, or the
   *     answer is of another figure or unit
   */
  public ControlSeries with(String label, Answer<?> answer) {
    if (!answer.figure().title().equals(title) || !answer.unit().equals(unit)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "answer of batch %s: %s in \"%s\" is not possible; %s in \"%s\" is needed",
              Excerpt.of(label),
              answer.figure().title(),
              answer.unit(),
              title,
              unit));
    }
    List<Point> longer = new ArrayList<>(points);
    longer.add(
        new Point(
            label,
            answer.isStated() ? OptionalDouble.of(answer.number()) : OptionalDouble.empty()));
    return new ControlSeries(title, unit, longer);
  }

  /**
   * Leaves a batch out, such as one whose fault is known when limits are made.
   *
   * @param label what the batch is called
   * @return the shorter series
   * @throws IllegalArgumentException if there is no such batch
   */
  public ControlSeries without(String label) {
    List<Point> shorter = points.stream().filter(point -> !point.label().equals(label)).toList();
    if (shorter.size() == points.size()) {
      throw noSuch(label);
    }
    return new ControlSeries(title, unit, shorter);
  }

  /**
   * Returns what the figure is called.
   *
   * @return the title
   */
  public String title() {
    return title;
  }

  /**
   * Returns the unit of the values.
   *
   * @return the unit; empty when there is none
   */
  public String unit() {
    return unit;
  }

  /**
   * Returns the batches.
   *
   * @return an unmodifiable list in their order
   */
  public List<Point> points() {
    return points;
  }

  /**
   * Returns the batches before one, such as those from which limits are to come.
   *
   * @param label the label of the first batch that is left out
   * @return the series up to it
   * @throws IllegalArgumentException if there is no such batch
   */
  public ControlSeries before(String label) {
    for (int i = 0; i < points.size(); i++) {
      if (points.get(i).label().equals(label)) {
        return new ControlSeries(title, unit, points.subList(0, i));
      }
    }
    throw noSuch(label);
  }

  private static IllegalArgumentException noSuch(String label) {
    return new IllegalArgumentException(
        "batch: there is no \"" + Excerpt.of(label) + "\" in the series");
  }

  /** The values that are known, in their order. */
  double[] known() {
    return points.stream()
        .map(Point::value)
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .toArray();
  }

  @Override
  public String toString() {
    return title
        + ", "
        + NumberText.count(points.size(), "batch", "batches")
        + (unit.isEmpty() ? "" : ", in " + unit);
  }
}
