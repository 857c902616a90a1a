package org.brewchem.scale;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.brewchem.readers.DatabaseTable;
import org.brewchem.readers.TableConsumer;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import org.duckdb.DuckDBDriver;
import org.jspecify.annotations.Nullable;

/**
 * Writes rows into a folder of Parquet files through DuckDB, a million rows a file, so that memory
 * does not grow with the rows. Columns are named as headings, texts before numbers. What the
 * database refuses is an {@link IOException}. Mutable, for one thread.
 */
public final class ParquetFolder implements TableConsumer, Closeable {

  private static final int ROWS_OF_A_FILE = 1_000_000;
  private static final String ROWS = "rows_of_a_file";

  private final Path folder;
  private final DuckDBConnection duck;
  private final String columns;
  private DuckDBAppender appender;
  private int rows;
  private int files;

  private ParquetFolder(Path folder, DuckDBConnection duck, String columns) throws SQLException {
    this.folder = folder;
    this.duck = duck;
    this.columns = columns;
    this.appender = empty(duck, columns);
  }

  /**
   * Starts a folder.
   *
   * @param folder the folder, which must not exist yet
   * @param table a table whose columns it gets; its rows are not written
   * @return a writer to be closed
   * @throws IOException if the folder cannot be made, such as because it is there
   */
  public static ParquetFolder at(Path folder, Table table) throws IOException {
    Files.createDirectory(folder);
    String columns =
        Stream.concat(
                table.textNames().stream().map(text -> identifier(text) + " varchar"),
                table.columns().stream().map(column -> identifier(column.heading()) + " double"))
            .collect(Collectors.joining(", "));
    try {
      return new ParquetFolder(folder, connect(), columns);
    } catch (SQLException e) {
      throw new IOException(e);
    }
  }

  /**
   * Reads the result of a query of Parquet files as tables of bounded size, in their order.
   *
   * @param query the query, which names files by {@link #filesOf}
   * @param rows how many rows a table has, the last one excepted
   * @param use takes the tables
   * @throws IOException if a table cannot be passed on
   */
  public static void read(String query, int rows, TableConsumer use) throws IOException {
    try (DuckDBConnection duck = connect()) {
      DatabaseTable.forEachTable(duck, query, rows, use);
    } catch (SQLException e) {
      throw new IOException(e);
    }
  }

  /**
   * Names the files of a folder as a query takes them.
   *
   * @param folder the folder
   * @return text to stand behind {@code from}
   */
  public static String filesOf(Path folder) {
    return quoted(folder.resolve("*.parquet"));
  }

  static String identifier(String name) {
    return '"' + name.replace("\"", "\"\"") + '"';
  }

  private static String quoted(Path path) {
    return "'" + path.toString().replace("'", "''") + "'";
  }

  private static DuckDBConnection connect() throws SQLException {
    Properties properties = new Properties();
    properties.setProperty(DuckDBDriver.JDBC_STREAM_RESULTS, "true");
    Connection connection = DriverManager.getConnection("jdbc:duckdb:", properties);
    try (Statement statement = connection.createStatement()) {
      statement.execute("set threads = 1");
      statement.execute("set memory_limit = '512MB'");
    }
    return connection.unwrap(DuckDBConnection.class);
  }

  private static DuckDBAppender empty(DuckDBConnection duck, String columns) throws SQLException {
    try (Statement statement = duck.createStatement()) {
      statement.execute("create or replace table " + ROWS + " (" + columns + ")");
    }
    return duck.createAppender(ROWS);
  }

  /**
   * Adds a row.
   *
   * @param texts a text to each column of text
   * @param numbers a number to each column of numbers; null where there is none
   * @throws IOException if the database refuses
   */
  public void add(List<String> texts, @Nullable Double[] numbers) throws IOException {
    try {
      appender.beginRow();
      for (String text : texts) {
        appender.append(text);
      }
      for (Double number : numbers) {
        appender.append(number);
      }
      appender.endRow();
      rows++;
      if (rows == ROWS_OF_A_FILE) {
        flush();
        appender = empty(duck, columns);
      }
    } catch (SQLException e) {
      throw new IOException(e);
    }
  }

  /**
   * Adds the rows of a table.
   *
   * @param table a table of these columns; a row without a number is null there
   * @throws IOException if the database refuses
   */
  @Override
  public void accept(Table table) throws IOException {
    List<List<String>> texts = table.textNames().stream().map(table::texts).toList();
    List<Column> numbers = table.columns();
    String[] textsOfRow = new String[texts.size()];
    @Nullable Double[] numbersOfRow = new @Nullable Double[numbers.size()];
    for (int i = 0; i < table.size(); i++) {
      for (int c = 0; c < textsOfRow.length; c++) {
        textsOfRow[c] = texts.get(c).get(i);
      }
      for (int c = 0; c < numbersOfRow.length; c++) {
        Column column = numbers.get(c);
        numbersOfRow[c] = column.isPresent(i) ? Double.valueOf(column.value(i)) : null;
      }
      add(List.of(textsOfRow), numbersOfRow);
    }
  }

  private void flush() throws SQLException {
    appender.close();
    if (rows > 0) {
      Path file = folder.resolve(String.format(Locale.ROOT, "part-%05d.parquet", files));
      try (Statement statement = duck.createStatement()) {
        statement.execute("copy " + ROWS + " to " + quoted(file) + " (format parquet)");
      }
      files++;
      rows = 0;
    }
  }

  /**
   * Writes the last file and ends the database.
   *
   * @throws IOException if the database refuses
   */
  @Override
  public void close() throws IOException {
    try (duck) {
      flush();
    } catch (SQLException e) {
      throw new IOException(e);
    }
  }
}
