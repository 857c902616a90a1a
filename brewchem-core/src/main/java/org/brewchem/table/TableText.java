package org.brewchem.table;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The first rows of a table under their headings, as text. */
final class TableText {

  private TableText() {}

  static String of(Table table) {
    List<List<String>> cells = new ArrayList<>();
    int shown = Math.min(table.size(), Column.SHOWN_ROWS);
    cells.add(cells("row", shown, i -> String.valueOf(table.row(i))));
    table.textNames().forEach(n -> cells.add(cells(n, shown, table.texts(n)::get)));
    table.columns().forEach(c -> cells.add(cells(c.heading(), shown, c::text)));
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
    return table.size() == shown ? text.toString() : text + "\n... " + table.size() + " rows";
  }

  private static List<String> cells(String heading, int rows, IntFunction<String> text) {
    return Stream.concat(Stream.of(heading), IntStream.range(0, rows).mapToObj(text)).toList();
  }
}
