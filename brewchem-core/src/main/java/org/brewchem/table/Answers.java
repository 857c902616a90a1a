package org.brewchem.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.jspecify.annotations.Nullable;

/**
 * Waters, beers, mashes or whatever answers figures, as the rows of a table: the way back from
 * objects to columns. Immutable.
 */
public final class Answers {

  private final List<Answering> asked;

  private Answers(List<Answering> asked) {
    this.asked = asked;
  }

  /**
   * Takes the rows.
   *
   * @param asked who answers, a row to each, numbered from 1
   * @return what makes columns of their answers
   */
  public static Answers of(List<? extends Answering> asked) {
    return new Answers(List.copyOf(Objects.requireNonNull(asked, "asked")));
  }

  /**
   * Asks for a figure.
   *
   * @param figure the figure, in the unit that it is shown in
   * @return the answers with their standard uncertainties; a row whose answer is unknown has a
   *     failure with why
   */
  public Column column(Figure<?> figure) {
    String heading = FigureRows.heading(Objects.requireNonNull(figure, "figure"));
    int size = asked.size();
    long[] rows = Column.numbered(size);
    double[] values = new double[size];
    double[] us = new double[size];
    @Nullable Failure[] failures = new @Nullable Failure[size];
    @Nullable Failure[] without = new @Nullable Failure[size];
    for (int i = 0; i < size; i++) {
      Answering row = asked.get(i);
      Answer<?> answer = FigureRows.asked(figure, () -> row.step(figure));
      if (!answer.isStated()) {
        failures[i] = new Failure.NoSolution(rows[i], heading, FigureRows.why(answer));
        without[i] = failures[i];
      } else {
        values[i] = answer.number();
        OptionalDouble u = answer.standardUncertainty();
        us[i] = u.orElse(0);
        without[i] =
            u.isPresent()
                ? null
                : new Failure.NoUncertainty(rows[i], heading, FigureRows.why(answer));
      }
    }
    return Column.calculated(heading, rows, values, failures)
        .withStandardUncertainty(
            Column.calculated(Column.ofUncertainty(heading), rows, us, without));
  }

  /**
   * Asks for figures.
   *
   * @param figures one or more, of different names
   * @return a column to each
   * @throws IllegalArgumentException if there is none or two columns have one name
   */
  public Table table(Figure<?>... figures) {
    Objects.requireNonNull(figures, "figures");
    List<Column> columns = new ArrayList<>();
    for (Figure<?> figure : figures) {
      columns.add(column(figure));
    }
    return Table.of(columns.toArray(Column[]::new));
  }

  @Override
  public String toString() {
    return asked.size() + (asked.size() == 1 ? " row" : " rows");
  }
}
