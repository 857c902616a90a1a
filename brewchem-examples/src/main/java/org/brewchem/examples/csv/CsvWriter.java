package org.brewchem.examples.csv;

import java.io.BufferedWriter;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.brewchem.table.Column;
import org.brewchem.table.Table;

/**
 * A CSV file that tables are written to, one after the other: one line of headings, columns of text
 * first, an empty cell where a row has no number. Numbers are written with all their digits, so
 * that they read back the same. Mutable, for one thread.
 */
public final class CsvWriter implements Closeable {

  private final BufferedWriter out;
  private List<String> headings = List.of();

  private CsvWriter(BufferedWriter out) {
    this.out = out;
  }

  /**
   * Creates a file, or overwrites it.
   *
   * @param path the file
   * @return a writer to be closed
   * @throws IOException if the file cannot be written
   */
  public static CsvWriter to(Path path) throws IOException {
    return new CsvWriter(Files.newBufferedWriter(path));
  }

  /**
   * Writes the rows of a table, before the first of them the headings.
   *
   * @param table a table with the same columns as those before
   * @throws IllegalArgumentException if the columns differ from those of the tables before
   * @throws IOException if the file cannot be written
   */
  public void write(Table table) throws IOException {
    List<Column> columns = table.columns();
    List<List<String>> texts = table.textNames().stream().map(table::texts).toList();
    List<String> own =
        Stream.concat(table.textNames().stream(), columns.stream().map(Column::heading)).toList();
    if (headings.isEmpty()) {
      headings = own;
      line(own);
    } else if (!headings.equals(own)) {
      throw new IllegalArgumentException(
          "columns: " + own + " is not possible; the file has " + headings);
    }
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < table.size(); i++) {
      cells.clear();
      for (List<String> text : texts) {
        cells.add(text.get(i));
      }
      for (Column column : columns) {
        cells.add(column.isPresent(i) ? Double.toString(column.value(i)) : "");
      }
      line(cells);
    }
  }

  private void line(List<String> cells) throws IOException {
    if (cells.equals(List.of(""))) {
      out.write("\"\"\n");
      return;
    }
    for (int i = 0; i < cells.size(); i++) {
      if (i > 0) {
        out.write(',');
      }
      write(cells.get(i));
    }
    out.write('\n');
  }

  private void write(String cell) throws IOException {
    boolean plain = cell.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
    out.write(plain ? cell : '"' + cell.replace("\"", "\"\"") + '"');
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
