package org.brewchem.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.uncertainty.Source;
import org.jspecify.annotations.Nullable;

/**
 * Figures over the rows of a table: as plain numbers, by walking the rule of the figure over arrays
 * with no object a row; and on request by the single route, with uncertainty, notices and steps.
 * Immutable.
 */
final class FigureRows {

  /** A number a row in the scale of a figure. It belongs to one work space and one thread. */
  abstract static class Node {

    /** What the last {@link #find} found. */
    double value;

    /** Finds the number of a row, or says why there is none. */
    abstract @Nullable Failure find(int index);
  }

  /** What formulas stand on: columns and balances, over one work space. */
  interface Leaves {

    /**
     * Returns what finds a figure in its own scale; null if it is none of these.
     *
     * @throws IllegalStateException if the table is without the columns that the figure takes
     */
    @Nullable Node leaf(Figure<?> figure);
  }

  /** The single route, for one thread. */
  interface Single {

    /** Returns what answers for a row. */
    Answering at(int index);

    /** What stands in a cell of the row and is of no use, or null. */
    @Nullable Failure fault(int index);

    /** Why an uncertainty that a row states cannot be used, or null. */
    @Nullable Failure uncertaintyFault(int index);
  }

  private static final double SAME = 1e-12;

  /** Stands for a column that is not there, where a formula counts what is unknown as 0. */
  private static final Node ABSENT =
      new Node() {
        @Override
        @Nullable Failure find(int index) {
          return null;
        }
      };

  private final Table table;
  private final int threads;
  private final Supplier<? extends Leaves> leaves;
  private final Supplier<? extends Single> single;

  FigureRows(
      Table table,
      int threads,
      Supplier<? extends Leaves> leaves,
      Supplier<? extends Single> single) {
    this.table = table;
    this.threads = threads;
    this.leaves = leaves;
    this.single = single;
  }

  Column column(Figure<?> figure) {
    return columns(List.of(figure)).get(0);
  }

  /** Finds figures in one pass over the rows. */
  List<Column> columns(List<Figure<?>> figures) {
    nodes(figures); // says here, before any row, which columns are not there
    int size = table.size();
    double[][] values = new double[figures.size()][size];
    @Nullable Failure[][] failures = new @Nullable Failure[figures.size()][size];
    Rows.run(
        size,
        threads,
        () -> {
          Node[] nodes = nodes(figures);
          return i -> {
            for (int f = 0; f < nodes.length; f++) {
              Failure failure = nodes[f].find(i);
              if (failure == null) {
                values[f][i] = nodes[f].value + 0.0;
              } else {
                failures[f][i] = failure;
              }
            }
            return null;
          };
        });
    List<Column> columns = new ArrayList<>();
    for (int f = 0; f < values.length; f++) {
      columns.add(Column.calculated(heading(figures.get(f)), table.rows(), values[f], failures[f]));
    }
    return columns;
  }

  Column columnWithUncertainty(Figure<?> figure) {
    Column plain = column(figure);
    String heading = Column.ofUncertainty(plain.heading());
    double[] values = new double[table.size()];
    @Nullable Failure[] failures =
        Rows.run(
            values.length,
            threads,
            () -> {
              Single route = single.get();
              return i -> {
                Failure failure = plain.failureOrNull(i);
                if (failure != null) {
                  return failure;
                }
                Answer<?> answer = asked(figure, () -> route.at(i).step(figure));
                OptionalDouble u = answer.standardUncertainty();
                if (u.isPresent()) {
                  values[i] = u.getAsDouble();
                  return null;
                }
                Failure fault = route.uncertaintyFault(i);
                return fault != null
                    ? fault
                    : new Failure.NoUncertainty(table.row(i), heading, why(answer));
              };
            });
    return plain.withStandardUncertainty(
        Column.calculated(heading, table.rows(), values, failures));
  }

  /** Asks for a figure; what its rule refuses, or finds no solution of, is unknown in its row. */
  static <Q> Answer<Q> asked(Figure<Q> figure, Supplier<Step> rule) {
    try {
      return Answer.of(figure, rule.get());
    } catch (IllegalArgumentException | NoSolutionException e) {
      return Answer.of(
          figure,
          Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
              .unknown(List.of(String.valueOf(e.getMessage()))));
    }
  }

  /** Why an answer has no standard uncertainty. */
  static String why(Answer<?> answer) {
    return answer.isStated()
        ? answer.traced().missing().stream()
            .map(Source::name)
            .distinct()
            .collect(Collectors.joining(", ", "no uncertainty is stated of ", ""))
        : String.join("; ", answer.whyUnknown());
  }

  /** What is notable about a figure, row by row, in rows that have it. */
  List<Notice> notices(Figure<?> figure) {
    Column plain = column(figure);
    Single route = single.get();
    List<Notice> notices = new ArrayList<>();
    for (int i = 0; i < plain.size(); i++) {
      if (plain.isPresent(i)) {
        int index = i;
        Answer<?> answer = asked(figure, () -> route.at(index).step(figure));
        notices.addAll(ofRow(table.row(i), answer.notices()));
      }
    }
    return List.copyOf(notices);
  }

  static List<Notice> ofRow(long row, List<Notice> notices) {
    return notices.stream()
        .map(n -> new Notice(n.code(), n.severity(), n.subject(), OptionalLong.of(row), n.text()))
        .toList();
  }

  /** Name and unit of a column; a parameter that the unit states is not said twice. */
  static String heading(Figure<?> figure) {
    String unit = figure.shown().symbol();
    StringBuilder name = new StringBuilder(figure.name());
    for (Map.Entry<String, String> parameter : figure.parameters().entrySet()) {
      String said = " " + parameter.getKey() + " " + parameter.getValue();
      if (!unit.endsWith(said)) {
        name.append(said);
      }
    }
    return unit.isEmpty() ? name.toString() : name + " [" + unit + "]";
  }

  private Node[] nodes(List<Figure<?>> figures) {
    Leaves over = leaves.get();
    Supplier<Single> asked =
        new Supplier<>() {
          private @Nullable Single own;

          @Override
          public Single get() {
            Single ready = own;
            if (ready == null) {
              ready = single.get();
              own = ready;
            }
            return ready;
          }
        };
    return figures.stream().map(figure -> shown(figure, over, asked)).toArray(Node[]::new);
  }

  private <Q> Node shown(Figure<Q> figure, Leaves over, Supplier<Single> asked) {
    Node own = over.leaf(figure);
    if (own == null) {
      own =
          figure.rule() instanceof ClosedForm form
              ? new Formula(figure, form, inputs(form, over, asked))
              : new Asked(figure, asked.get());
    }
    return figure.scale() == figure.shown()
        ? own
        : converted(own, figure.scale(), figure.shown(), heading(figure));
  }

  private Node[] inputs(ClosedForm form, Leaves over, Supplier<Single> asked) {
    List<Node> inputs = new ArrayList<>();
    MissingColumnException missing = null;
    boolean any = false;
    for (Figure<?> input : form.inputs()) {
      try {
        inputs.add(shown(input, over, asked));
        any = true;
      } catch (MissingColumnException e) {
        missing = e;
        inputs.add(ABSENT);
      }
    }
    if (missing != null && !(form.countsAbsent() && any)) {
      throw missing;
    }
    return inputs.toArray(Node[]::new);
  }

  /** A formula of other numbers. */
  private final class Formula extends Node {
    private final String heading;
    private final ClosedForm form;
    private final Node[] inputs;
    private final double[] numbers;

    Formula(Figure<?> figure, ClosedForm form, Node[] inputs) {
      this.heading = heading(figure);
      this.form = form;
      this.inputs = inputs;
      this.numbers = new double[inputs.length];
    }

    @Override
    @Nullable Failure find(int index) {
      Failure missing = null;
      boolean any = false;
      for (int i = 0; i < inputs.length; i++) {
        Node input = inputs[i];
        Failure failure = input == ABSENT ? null : input.find(index);
        if (input == ABSENT || (form.countsAbsent() && failure instanceof Failure.Missing)) {
          numbers[i] = 0;
          missing = failure == null ? missing : failure;
        } else if (failure != null) {
          return failure;
        } else {
          numbers[i] = input.value;
          any = true;
        }
      }
      if (!any) {
        return missing;
      }
      value = form.apply(numbers);
      return Double.isFinite(value)
          ? null
          : new Failure.NoSolution(
              table.row(index), heading, form.text() + " has no value for the numbers of the row");
    }
  }

  /** A figure whose rule only the single route knows. */
  private final class Asked extends Node {
    private final Figure<?> figure;
    private final Single route;

    Asked(Figure<?> figure, Single route) {
      this.figure = figure;
      this.route = route;
    }

    @Override
    @Nullable Failure find(int index) {
      Answer<?> answer = asked(figure, () -> figure.rule().find(figure, route.at(index)));
      if (!answer.isStated()) {
        Failure fault = route.fault(index);
        return fault != null
            ? fault
            : new Failure.NoSolution(
                table.row(index), heading(figure), String.join("; ", answer.whyUnknown()));
      }
      value = answer.step().found().orElseThrow().value();
      return null;
    }
  }

  /** Counts in another unit; scales that are multiples of each other need no object a row. */
  private <Q> Node converted(Node own, Scale<Q> from, Scale<Q> to, String heading) {
    double one;
    double two;
    try {
      one = to.in(from.of(1));
      two = to.in(from.of(2));
    } catch (IllegalArgumentException e) {
      return new Converted<>(own, from, to, heading);
    }
    return Math.abs(two - 2 * one) <= SAME * Math.abs(two)
        ? new Multiplied(own, one)
        : new Converted<>(own, from, to, heading);
  }

  /** A number times a factor. */
  static final class Multiplied extends Node {
    private final Node own;
    private final double factor;

    Multiplied(Node own, double factor) {
      this.own = own;
      this.factor = factor;
    }

    @Override
    @Nullable Failure find(int index) {
      Failure failure = own.find(index);
      value = own.value * factor;
      return failure;
    }
  }

  private final class Converted<Q> extends Node {
    private final Node own;
    private final Scale<Q> from;
    private final Scale<Q> to;
    private final String heading;

    Converted(Node own, Scale<Q> from, Scale<Q> to, String heading) {
      this.own = own;
      this.from = from;
      this.to = to;
      this.heading = heading;
    }

    @Override
    @Nullable Failure find(int index) {
      Failure failure = own.find(index);
      if (failure != null) {
        return failure;
      }
      try {
        value = to.in(from.of(own.value));
        return null;
      } catch (IllegalArgumentException e) {
        return new Failure.NotPossible(table.row(index), heading, String.valueOf(e.getMessage()));
      }
    }
  }

  /** A column that states a figure, in another unit. */
  static final class Stated extends Node {
    private final Input input;

    Stated(Input input) {
      this.input = input;
    }

    @Override
    @Nullable Failure find(int index) {
      value = input.at(index);
      return input.fault(index);
    }
  }
}
