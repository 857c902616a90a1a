package org.brewchem.table;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The first rows of a table under their headings, as text. */
final class TableText {

  private TableText() {}

  static String of(long[] rows, Map<String, List<String>> texts, Collection<Column> columns) {
    List<List<String>> cells = new ArrayList<>();
    int shown = Math.min(rows.length, Column.SHOWN_ROWS);
    cells.add(cells("row", shown, i -> String.valueOf(rows[i])));
    texts.forEach((name, perRow) -> cells.add(cells(name, shown, perRow::get)));
    columns.forEach(c -> cells.add(cells(c.heading(), shown, c::text)));
    StringBuilder text = new StringBuilder();
    for (int line = 0; line <= shown; line++) {
      for (List<String> column : cells) {
        int width = column.stream().mapToInt(String::length).max().orElse(0);
        String cell = column.get(line);
        text.append(column == cells.get(0) ? "" : "  ")
            .append(" ".repeat(width - cell.length()))
            .append(cell);
      }
      text.append(line < shown ? "\n" : "");
    }
    return rows.length == shown ? text.toString() : text + "\n... " + rows.length + " rows";
  }

  private static List<String> cells(String heading, int rows, IntFunction<String> text) {
    return Stream.concat(Stream.of(heading), IntStream.range(0, rows).mapToObj(text)).toList();
  }
}
