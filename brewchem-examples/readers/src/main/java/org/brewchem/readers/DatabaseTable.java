package org.brewchem.readers;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
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

  private DatabaseTable() {}

  /**
   * Reads the result of a query. A column whose values are numbers, or nothing, is one of numbers;
   * any other is one of text. Rows are numbered from 1.
   *
   * @param connection the database, which stays open
   * @param query the query, such as {@code select sample, calcium as "calcium [mg/L]" from waters}
   * @param parameters what its question marks stand for
   * @return the table; what is null there is missing here
   * @throws SQLException if the database refuses
   * @throws IllegalArgumentException if the label of a column is no heading, two are the same, or a
   *     number is infinite or NaN
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
          builder.set(place[c], number.doubleValue());
        }
      }
    }
    return builder.build();
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
