package org.brewchem.substance;

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

/** A data table of this package: CSV with comment lines, a header line and quoted cells. */
final class ResourceTable {

  private ResourceTable() {}

  static List<Row> read(String resource) {
    try (InputStream stream = ResourceTable.class.getResourceAsStream(resource)) {
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
  record Row(String place, Map<String, String> cells) {

    String text(String column) {
      String cell = cells.get(column);
      if (cell == null) {
        throw new IllegalStateException(place + ": there is no column " + column);
      }
      return cell;
    }

    double number(String column) {
      try {
        return Double.parseDouble(text(column));
      } catch (NumberFormatException exception) {
        throw new IllegalStateException(
            place + ", column " + column + ": \"" + text(column) + "\" is not a number", exception);
      }
    }

    int integer(String column) {
      return Math.toIntExact(Math.round(number(column)));
    }

    OptionalDouble optionalNumber(String column) {
      return text(column).isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(column));
    }

    Provenance provenance() {
      return new Provenance(
          text("source_key"), text("locator"), HowKnown.of(text("how_known")), text("note"));
    }

    /**
     * Reads a constant: the analytic expression where there is one, otherwise log10 K (the column
     * times {@code sign}), enthalpy and heat capacity, an empty cell counting as 0.
     */
    EquilibriumConstant constant(String logColumn, double sign) {
      EquilibriumConstant constant;
      if (text("analytic").isEmpty()) {
        double heatCapacity =
            cells.containsKey("dCp_J_per_K_mol")
                ? optionalNumber("dCp_J_per_K_mol").orElse(0.0)
                : 0.0;
        constant =
            EquilibriumConstant.ofLog10(
                sign * number(logColumn),
                optionalNumber("dH_kJ_per_mol").orElse(0.0),
                heatCapacity);
      } else {
        String[] terms = text("analytic").split(" ", -1);
        if (terms.length != 5) {
          throw new IllegalStateException(place + ": five coefficients are needed");
        }
        constant =
            EquilibriumConstant.analytic(
                Double.parseDouble(terms[0]),
                Double.parseDouble(terms[1]),
                Double.parseDouble(terms[2]),
                Double.parseDouble(terms[3]),
                Double.parseDouble(terms[4]));
      }
      if (!text("t_min_C").isEmpty()) {
        constant = constant.withRangeCelsius(number("t_min_C"), number("t_max_C"));
      }
      if (!text("uncertainty").isEmpty()) {
        constant = constant.withUncertainty(number("uncertainty"));
      }
      return constant;
    }
  }
}
