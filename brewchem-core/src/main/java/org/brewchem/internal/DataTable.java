package org.brewchem.internal;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** A data table among the resources: CSV with comment lines, a header line and quoted cells. */
public final class DataTable {

  private DataTable() {}

  /**
   * Reads a table that lies beside a class.
   *
   * @param owner the class
   * @param resource the name of the table
   * @return its rows
   * @throws IllegalStateException if it is missing or a row has another number of cells
   */
  public static List<Row> read(Class<?> owner, String resource) {
    try (InputStream stream = owner.getResourceAsStream(resource)) {
      if (stream == null) {
        throw new IllegalStateException(resource + ": the data table is missing");
      }
      BufferedReader reader =
          new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
      List<Row> rows = new ArrayList<>();
      List<String> header = List.of();
      int number = 0;
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        number++;
        if (line.isEmpty() || line.startsWith("#")) {
          continue;
        }
        List<String> cells = cells(line);
        if (header.isEmpty()) {
          header = cells;
        } else {
          rows.add(row(resource + ", line " + number, header, cells));
        }
      }
      return List.copyOf(rows);
    } catch (IOException exception) {
      throw new UncheckedIOException(resource, exception);
    }
  }

  private static Row row(String place, List<String> header, List<String> cells) {
    if (cells.size() != header.size()) {
      throw new IllegalStateException(
          place + ": " + cells.size() + " cells instead of " + header.size());
    }
    Map<String, String> byColumn = new HashMap<>();
    for (int i = 0; i < cells.size(); i++) {
      byColumn.put(header.get(i), cells.get(i));
    }
    return new Row(place, byColumn);
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char character = line.charAt(i);
      if (quoted && character == '"' && i + 1 < line.length() && line.charAt(i + 1) == '"') {
        cell.append('"');
        i++;
      } else if (character == '"') {
        quoted = !quoted;
      } else if (character == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(character);
      }
    }
    cells.add(cell.toString());
    return cells;
  }

  /** One row of a data table, its cells by column name. */
  /**
   * A row.
   *
   * @param place file and line, for messages
   * @param cells the cells by column
   */
  public record Row(String place, Map<String, String> cells) {

    /**
     * Tells whether the table has a column.
     *
     * @param column the column
     * @return true if it has
     */
    public boolean has(String column) {
      return cells.containsKey(column);
    }

    /**
     * Returns a cell.
     *
     * @param column the column
     * @return its text
     * @throws IllegalStateException if there is no such column
     */
    public String text(String column) {
      String cell = cells.get(column);
      if (cell == null) {
        throw new IllegalStateException(place + ": there is no column " + column);
      }
      return cell;
    }

    /**
     * Returns a cell as a number.
     *
     * @param column the column
     * @return the number
     * @throws IllegalStateException if there is no such column or the cell is no number
     */
    public double number(String column) {
      try {
        return Double.parseDouble(text(column));
      } catch (NumberFormatException exception) {
        throw new IllegalStateException(
            place + ", column " + column + ": \"" + text(column) + "\" is not a number", exception);
      }
    }

    /**
     * Returns a cell as a whole number.
     *
     * @param column the column
     * @return the nearest whole number
     * @throws IllegalStateException if there is no such column or the cell is no number
     */
    public int integer(String column) {
      return Math.toIntExact(Math.round(number(column)));
    }

    /**
     * Returns a cell that may be empty.
     *
     * @param column the column
     * @return the number; empty for an empty cell
     * @throws IllegalStateException if there is no such column or the cell is no number
     */
    public OptionalDouble optionalNumber(String column) {
      return text(column).isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(column));
    }
  }
}
