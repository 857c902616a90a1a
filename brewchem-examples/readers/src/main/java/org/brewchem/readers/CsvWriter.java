package org.brewchem.readers;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.jspecify.annotations.Nullable;

/**
 * A CSV file that tables are written to, one after the other: one line of headings, columns of text
 * first, an empty cell where a row has no number. Numbers are written with all their digits, so
 * that they read back the same. Mutable, for one thread.
 */
public final class CsvWriter implements Closeable {

  private final de.siegmar.fastcsv.writer.CsvWriter out;
  private List<String> headings = List.of();

  private CsvWriter(de.siegmar.fastcsv.writer.CsvWriter out) {
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
    return new CsvWriter(
        de.siegmar.fastcsv.writer.CsvWriter.builder()
            .quoteStrategy(de.siegmar.fastcsv.writer.QuoteStrategies.EMPTY)
            .lineDelimiter(de.siegmar.fastcsv.writer.LineDelimiter.LF)
            .build(path));
  }

  /**
   * Writes the rows of a table, before the first of them the headings.
   *
   * @param table a table with the same columns as those before
   * @throws IllegalArgumentException if there are no columns, or they differ from those of the
   *     tables before
   * @throws IOException if the file cannot be written
   */
  public void write(Table table) throws IOException {
    List<Column> columns = table.columns();
    List<List<String>> texts = table.textNames().stream().map(table::texts).toList();
    List<String> own =
        Stream.concat(table.textNames().stream(), columns.stream().map(Column::heading)).toList();
    if (own.isEmpty()) {
      throw new IllegalArgumentException(
          "columns: none is not possible; one or more are needed, for a row is written by them");
    }
    if (headings.isEmpty()) {
      headings = own;
      out.writeRecord(own);
    } else if (!headings.equals(own)) {
      throw new IllegalArgumentException(
          "columns: " + own + " is not possible; the file has " + headings);
    }
    @Nullable String[] cells = new @Nullable String[own.size()];
    // An empty cell is quoted where it is the only one, for an empty line would be no row.
    @Nullable String empty = own.size() == 1 ? "" : null;
    for (int i = 0; i < table.size(); i++) {
      int at = 0;
      for (List<String> text : texts) {
        cells[at++] = text.get(i).isEmpty() ? empty : text.get(i);
      }
      for (Column column : columns) {
        cells[at++] = column.isPresent(i) ? Double.toString(column.value(i)) : empty;
      }
      out.writeRecord(cells);
    }
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
