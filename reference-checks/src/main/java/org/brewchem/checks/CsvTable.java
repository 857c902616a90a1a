package org.brewchem.checks;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A table of reference data read from a CSV file beside the classes.
 *
 * <p>Lines that begin with {@code #} are comments, the first other line names the columns, fields
 * are separated by commas and may be quoted. Every row must have all columns, and the number of
 * rows must be the one that the reader of the table expects: a table that lost rows is an error.
 */
public final class CsvTable {

  private final String name;
  private final Map<String, Integer> columns;
  private final List<Line> lines;

  private CsvTable(String name, Map<String, Integer> columns, List<Line> lines) {
    this.name = name;
    this.columns = Map.copyOf(columns);
    this.lines = List.copyOf(lines);
  }

  /**
   * Reads a table.
   *
   * @param name file name, such as {@code "water.csv"}
   * @param rows the number of rows that the file holds
   * @throws IllegalStateException if the file is missing, malformed, or has another number of rows
   */
  public static CsvTable read(String name, int rows) {
    try (InputStream in = CsvTable.class.getResourceAsStream("data/" + name)) {
      if (in == null) {
        throw new IllegalStateException(name + ": no such table");
      }
      CsvTable table = parse(name, new String(in.readAllBytes(), StandardCharsets.UTF_8));
      if (table.lines.size() != rows) {
        throw new IllegalStateException(
            name + ": " + table.lines.size() + " rows, but " + rows + " are expected");
      }
      return table;
    } catch (IOException e) {
      throw new UncheckedIOException(name + ": cannot be read", e);
    }
  }

  static CsvTable parse(String name, String text) {
    Map<String, Integer> columns = new HashMap<>();
    List<Line> lines = new ArrayList<>();
    int lineNumber = 0;
    for (String textLine : text.split("\r?\n", -1)) {
      lineNumber++;
      if (textLine.startsWith("#") || textLine.isEmpty()) {
        continue;
      }
      List<String> fields = fields(textLine, name, lineNumber);
      if (columns.isEmpty()) {
        for (String column : fields) {
          if (columns.put(column, columns.size()) != null) {
            throw new IllegalStateException(name + ": column \"" + column + "\" is there twice");
          }
        }
      } else if (fields.size() != columns.size()) {
        throw new IllegalStateException(
            name
                + ", line "
                + lineNumber
                + ": "
                + fields.size()
                + " fields, but "
                + columns.size()
                + " columns");
      } else {
        lines.add(new Line(name, lineNumber, columns, fields));
      }
    }
    return new CsvTable(name, columns, lines);
  }

  private static List<String> fields(String line, String name, int lineNumber) {
    List<String> fields = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (quoted && c == '"' && i + 1 < line.length() && line.charAt(i + 1) == '"') {
        field.append('"');
        i++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        fields.add(field.toString());
        field.setLength(0);
      } else {
        field.append(c);
      }
    }
    if (quoted) {
      throw new IllegalStateException(
          name + ", line " + lineNumber + ": a quotation mark is not closed");
    }
    fields.add(field.toString());
    return fields;
  }

  /** Returns whether the table has a column. */
  public boolean has(String column) {
    return columns.containsKey(column);
  }

  /** Returns all rows in the order of the file. */
  public List<Line> lines() {
    return lines;
  }

  /** Returns the rows whose column holds exactly the given text. */
  public List<Line> where(String column, String text) {
    return lines.stream().filter(row -> row.text(column).equals(text)).toList();
  }

  /**
   * Returns the only row whose column holds exactly the given text.
   *
   * @throws IllegalStateException if there is none, or more than one
   */
  public Line only(String column, String text) {
    List<Line> found = where(column, text);
    if (found.size() != 1) {
      throw new IllegalStateException(
          name + ": " + found.size() + " rows with " + column + " \"" + text + "\", not one");
    }
    return found.get(0);
  }

  /** One row of a table. */
  public static final class Line {
    private final String table;
    private final int number;
    private final Map<String, Integer> columns;
    private final List<String> fields;

    private Line(String table, int number, Map<String, Integer> columns, List<String> fields) {
      this.table = table;
      this.number = number;
      this.columns = columns;
      this.fields = fields;
    }

    /**
     * Returns the text of a column.
     *
     * @throws IllegalStateException if there is no such column
     */
    public String text(String column) {
      Integer index = columns.get(column);
      if (index == null) {
        throw new IllegalStateException(where(column) + ": no such column");
      }
      return fields.get(index);
    }

    /** Returns whether a column is empty. */
    public boolean isEmpty(String column) {
      return text(column).isEmpty();
    }

    /**
     * Returns the number in a column.
     *
     * @throws IllegalStateException if the column does not hold a finite number
     */
    public double number(String column) {
      String text = text(column);
      try {
        double number = Double.parseDouble(text);
        if (Double.isFinite(number)) {
          return number;
        }
      } catch (NumberFormatException e) {
        // Reported below together with numbers that are not finite.
      }
      throw new IllegalStateException(where(column) + ": \"" + text + "\" is not a number");
    }

    /** Returns how the row is known, from its column {@code how_known}. */
    public HowKnown howKnown() {
      return HowKnown.parse(text("how_known"));
    }

    private String where(String column) {
      return table + ", line " + number + ", column \"" + column + "\"";
    }
  }
}
