package org.brewchem.table;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Why a row of a column has no number. */
public sealed interface Failure {

  /**
   * Returns the row as its table numbers it: for a table from a file the line of the file.
   *
   * @return the number of the row
   */
  long row();

  /**
   * Returns the column at fault, which for a calculated column is one of those that it was
   * calculated from.
   *
   * @return the heading
   */
  String column();

  /**
   * Says what is wrong.
   *
   * @return a sentence without its full stop
   */
  String reason();

  /**
   * Says of which kind the failure is.
   *
   * @return "missing", "unreadable", "not possible", "no solution" or "no uncertainty"
   */
  String kind();

  /**
   * Makes a table of failures, such as those of a calculated column, to write them into a file.
   *
   * @param failures the failures
   * @return a row of texts to each, under the number of the row that failed: {@code column}, {@code
   *     kind} and {@code reason}
   */
  static Table table(List<Failure> failures) {
    Objects.requireNonNull(failures, "failures");
    Map<String, List<String>> texts = new LinkedHashMap<>();
    texts.put("column", failures.stream().map(Failure::column).toList());
    texts.put("kind", failures.stream().map(Failure::kind).toList());
    texts.put("reason", failures.stream().map(Failure::reason).toList());
    return new Table(failures.stream().mapToLong(Failure::row).toArray(), Map.of(), texts);
  }

  /**
   * Nothing stands there. An empty cell is not 0.
   *
   * @param row the row as its table numbers it
   * @param column the heading of the column in which the cell is empty
   */
  record Missing(long row, String column) implements Failure {
    /**
     * Makes a failure of this kind.
     *
     * @param row the row as its table numbers it
     * @param column the heading of the column in which the cell is empty
     */
    public Missing {
      Objects.requireNonNull(column, "column");
    }

    @Override
    public String kind() {
      return "missing";
    }

    @Override
    public String reason() {
      return "is missing";
    }

    @Override
    public String toString() {
      return describe(this);
    }
  }

  /**
   * What stands there is not a number.
   *
   * @param row the row as its table numbers it
   * @param column the heading of the column in which it stands
   * @param text what stands there
   * @param reason what is wrong with it
   */
  record Unreadable(long row, String column, String text, String reason) implements Failure {
    /**
     * Makes a failure of this kind.
     *
     * @param row the row as its table numbers it
     * @param column the heading of the column in which it stands
     * @param text what stands there
     * @param reason what is wrong with it
     */
    public Unreadable {
      Objects.requireNonNull(column, "column");
      Objects.requireNonNull(text, "text");
      Objects.requireNonNull(reason, "reason");
    }

    @Override
    public String kind() {
      return "unreadable";
    }

    @Override
    public String toString() {
      return describe(this);
    }
  }

  /**
   * The number is not one that its meaning allows, such as a negative concentration, or contradicts
   * others of its row.
   *
   * @param row the row as its table numbers it
   * @param column the heading of the column at fault
   * @param reason the number with its unit and what is allowed
   */
  record NotPossible(long row, String column, String reason) implements Failure {
    /**
     * Makes a failure of this kind.
     *
     * @param row the row as its table numbers it
     * @param column the heading of the column at fault
     * @param reason the number with its unit and what is allowed
     */
    public NotPossible {
      Objects.requireNonNull(column, "column");
      Objects.requireNonNull(reason, "reason");
    }

    @Override
    public String kind() {
      return "not possible";
    }

    @Override
    public String toString() {
      return describe(this);
    }
  }

  /**
   * The calculation has no answer for the numbers of the row.
   *
   * @param row the row as its table numbers it
   * @param column the heading of the calculated column
   * @param reason what was sought and where
   */
  record NoSolution(long row, String column, String reason) implements Failure {
    /**
     * Makes a failure of this kind.
     *
     * @param row the row as its table numbers it
     * @param column the heading of the calculated column
     * @param reason what was sought and where
     */
    public NoSolution {
      Objects.requireNonNull(column, "column");
      Objects.requireNonNull(reason, "reason");
    }

    @Override
    public String kind() {
      return "no solution";
    }

    @Override
    public String toString() {
      return describe(this);
    }
  }

  /**
   * The row has a number but no standard uncertainty, because something that the number moves with
   * states none. That of a column of uncertainties only.
   *
   * @param row the row as its table numbers it
   * @param column the heading of the calculated column
   * @param reason which inputs state no uncertainty
   */
  record NoUncertainty(long row, String column, String reason) implements Failure {
    /**
     * Makes a failure of this kind.
     *
     * @param row the row as its table numbers it
     * @param column the heading of the calculated column
     * @param reason which inputs state no uncertainty
     */
    public NoUncertainty {
      Objects.requireNonNull(column, "column");
      Objects.requireNonNull(reason, "reason");
    }

    @Override
    public String kind() {
      return "no uncertainty";
    }

    @Override
    public String toString() {
      return describe(this);
    }
  }

  private static String describe(Failure failure) {
    return "row " + failure.row() + ", column \"" + failure.column() + "\": " + failure.reason();
  }
}
