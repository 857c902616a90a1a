package org.brewchem.table;

import java.util.Objects;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.brewchem.units.Text;
import org.brewchem.units.UnitTextException;

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

    private static final Pattern BELOW = Pattern.compile("\\s*<\\s*(\\S+)\\s*");

    /**
     * Returns the limit that a text such as {@code < 0.5} or {@code <5e-3} says the number lies
     * below.
     *
     * @return the limit, above 0, in the unit of the column; empty for any other text, and where
     *     what follows is no number by {@link Text#parseNumber}, such as one with a comma
     */
    public OptionalDouble limit() {
      Matcher matcher = BELOW.matcher(text);
      if (!matcher.matches()) {
        return OptionalDouble.empty();
      }
      try {
        double limit = Text.parseNumber(matcher.group(1));
        return limit > 0 ? OptionalDouble.of(limit) : OptionalDouble.empty();
      } catch (UnitTextException e) {
        return OptionalDouble.empty();
      }
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
