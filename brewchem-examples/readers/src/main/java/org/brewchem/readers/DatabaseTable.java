package org.brewchem.readers;

import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.brewchem.table.Column;
import org.brewchem.table.Table;

/**
 * Tables from and to a database by JDBC: the result of a query is a table, and a table becomes one
 * of the database. A column of the database is named as a heading, {@code "calcium [mg/L]"}.
 * Drivers are the caller's.
 */
public final class DatabaseTable {

  private static final int ROWS_OF_A_BATCH = 1000;
  private static final Set<Integer> NUMBERS =
      Set.of(
          Types.TINYINT,
          Types.SMALLINT,
          Types.INTEGER,
          Types.BIGINT,
          Types.REAL,
          Types.FLOAT,
          Types.DOUBLE,
          Types.NUMERIC,
          Types.DECIMAL);

  private DatabaseTable() {}

  /**
   * Reads the result of a query. A column whose values are numbers, or nothing, is one of numbers;
   * any other is one of text. Rows are numbered from 1.
   *
   * @param connection the database, which stays open
   * @param query the query, such as {@code select sample, calcium as "calcium [mg/L]" from waters}
   * @param parameters what its question marks stand for
   * @return the table; what is null there is missing here, and what is NaN or infinite is
   *     unreadable
   * @throws SQLException if the database refuses
   * @throws IllegalArgumentException if the label of a column is no heading, or two are the same
   */
  public static Table read(Connection connection, String query, Object... parameters)
      throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(query)) {
      for (int i = 0; i < parameters.length; i++) {
        statement.setObject(i + 1, parameters[i]);
      }
      try (ResultSet rows = statement.executeQuery()) {
        return table(rows);
      }
    }
  }

  private static Table table(ResultSet rows) throws SQLException {
    ResultSetMetaData meta = rows.getMetaData();
    int width = meta.getColumnCount();
    List<Object[]> values = new ArrayList<>();
    boolean[] text = new boolean[width];
    while (rows.next()) {
      Object[] row = new Object[width];
      for (int c = 0; c < width; c++) {
        row[c] = rows.getObject(c + 1);
        text[c] |= row[c] != null && !(row[c] instanceof Number);
      }
      values.add(row);
    }
    List<String> numbers = new ArrayList<>();
    List<String> texts = new ArrayList<>();
    int[] place = new int[width];
    for (int c = 0; c < width; c++) {
      List<String> list = text[c] ? texts : numbers;
      place[c] = list.size();
      list.add(meta.getColumnLabel(c + 1));
    }
    Table.Builder builder = Table.withHeadings(numbers, texts);
    for (Object[] row : values) {
      builder.row();
      for (int c = 0; c < width; c++) {
        if (text[c]) {
          builder.text(place[c], row[c] == null ? "" : row[c].toString());
        } else if (row[c] instanceof Number number) {
          set(builder, place[c], number.doubleValue());
        }
      }
    }
    return builder.build();
  }

  /**
   * Reads the result of a query of any size as tables of bounded size. A column that the database
   * declares as one of numbers is one of numbers; any other is one of text. Rows are numbered from
   * 1 through all tables.
   *
   * @param connection the database, which stays open; whether its driver holds the whole result is
   *     the driver's business
   * @param query the query
   * @param rows how many rows a table has, the last one excepted; 1 or more
   * @param use takes the tables; they hold what those of {@link #read} do
   * @throws SQLException if the database refuses
   * @throws IOException if a table cannot be passed on
   * @throws IllegalArgumentException if the label of a column is no heading, or two are the same
   */
  public static void forEachTable(Connection connection, String query, int rows, TableConsumer use)
      throws SQLException, IOException {
    if (rows < 1) {
      throw new IllegalArgumentException(
          "rows of a table: " + rows + " is not possible; 1 or more is allowed");
    }
    try (PreparedStatement statement = connection.prepareStatement(query);
        ResultSet result = statement.executeQuery()) {
      ResultSetMetaData meta = result.getMetaData();
      List<String> numbers = new ArrayList<>();
      List<String> texts = new ArrayList<>();
      boolean[] text = new boolean[meta.getColumnCount()];
      for (int c = 0; c < text.length; c++) {
        text[c] = !NUMBERS.contains(meta.getColumnType(c + 1));
        (text[c] ? texts : numbers).add(meta.getColumnLabel(c + 1));
      }
      long row = 0;
      boolean more = result.next();
      while (more) {
        Table.Builder builder = Table.withHeadings(numbers, texts);
        do {
          add(result, text, builder.row(++row));
          more = result.next();
        } while (more && builder.size() < rows);
        use.accept(builder.build());
      }
    }
  }

  private static void add(ResultSet result, boolean[] text, Table.Builder builder)
      throws SQLException {
    int numbers = 0;
    int texts = 0;
    for (int c = 0; c < text.length; c++) {
      if (text[c]) {
        String value = result.getString(c + 1);
        builder.text(texts++, value == null ? "" : value);
      } else {
        double value = result.getDouble(c + 1);
        if (!result.wasNull()) {
          set(builder, numbers, value);
        }
        numbers++;
      }
    }
  }

  /**
   * Sets a number of a row as it comes from a database.
   *
   * @param builder the table, of which a row is started
   * @param column the index of the column of numbers, from 0
   * @param value the number in the unit of the column; NaN or infinity is kept as an unreadable
   *     cell of that row
   */
  public static void set(Table.Builder builder, int column, double value) {
    if (Double.isFinite(value)) {
      builder.set(column, value);
    } else {
      builder.unreadable(column, Double.toString(value), value + " is not a finite number");
    }
  }

  /**
   * Writes a table as a new one of the database: a column of {@code varchar} to each of text, one
   * of {@code double precision} to each of numbers, in one transaction. A row without a number is
   * null there; why it has none is not written.
   *
   * @param table the table
   * @param connection the database, which stays open
   * @param name the name of the new table
   * @throws SQLException if the database refuses, such as because it has a table of that name;
   *     nothing is written then
   */
  public static void write(Table table, Connection connection, String name) throws SQLException {
    List<Column> columns = table.columns();
    List<String> texts = table.textNames();
    String quote = connection.getMetaData().getIdentifierQuoteString();
    boolean automatic = connection.getAutoCommit();
    connection.setAutoCommit(false);
    try {
      String kinds =
          Stream.concat(
                  texts.stream().map(text -> quoted(text, quote) + " varchar"),
                  columns.stream().map(c -> quoted(c.heading(), quote) + " double precision"))
              .collect(Collectors.joining(", "));
      String into = quoted(name, quote);
      try (PreparedStatement create =
          connection.prepareStatement("create table " + into + " (" + kinds + ")")) {
        create.execute();
      }
      String marks =
          IntStream.range(0, texts.size() + columns.size())
              .mapToObj(i -> "?")
              .collect(Collectors.joining(", "));
      try (PreparedStatement insert =
          connection.prepareStatement("insert into " + into + " values (" + marks + ")")) {
        insert(table, texts.stream().map(table::texts).toList(), columns, insert);
      }
      connection.commit();
    } catch (SQLException e) {
      connection.rollback();
      throw e;
    } finally {
      connection.setAutoCommit(automatic);
    }
  }

  private static void insert(
      Table table, List<List<String>> texts, List<Column> columns, PreparedStatement insert)
      throws SQLException {
    for (int row = 0; row < table.size(); row++) {
      int at = 1;
      for (List<String> text : texts) {
        insert.setString(at++, text.get(row));
      }
      for (Column column : columns) {
        if (column.isPresent(row)) {
          insert.setDouble(at++, column.value(row));
        } else {
          insert.setNull(at++, Types.DOUBLE);
        }
      }
      insert.addBatch();
      if ((row + 1) % ROWS_OF_A_BATCH == 0) {
        insert.executeBatch();
      }
    }
    insert.executeBatch();
  }

  private static String quoted(String name, String quote) {
    return quote + name.replace(quote, quote + quote) + quote;
  }
}
