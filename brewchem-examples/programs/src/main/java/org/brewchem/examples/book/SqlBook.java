package org.brewchem.examples.book;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.StringJoiner;
import java.util.function.Consumer;
import org.brewchem.figure.Figure;
import org.brewchem.quality.BatchRecord;
import org.brewchem.quality.RecordBook;
import org.brewchem.quality.RefusedRecordException;
import org.brewchem.quality.TargetVersion;
import org.brewchem.quality.TitrantRecord;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * A {@link RecordBook} that is kept in a file of the embedded database SQLite. The library holds
 * the rules, the file the records: what the rules refuse is not stored, and what is stored is
 * neither changed nor deleted, for the tables refuse it.
 *
 * <p>A record is entered in one transaction, which takes the file for itself before it reads: two
 * programs that enter at once wait for each other, and each judges its record by all that stands in
 * the file. When {@link #enter(BatchRecord)} returns, the record is on the disk. Mutable, for one
 * thread.
 */
public final class SqlBook implements Closeable {

  private static final int MOST_WAITED_MILLISECONDS = 60_000;

  /** A day that all days come before: what stands in the file was judged by its own day. */
  private static final LocalDate ENTERED_BEFORE = LocalDate.of(9999, 12, 31);

  private static final String TITRANTS = "titrant_records";
  private static final String TARGETS = "target_versions";
  private static final String BATCHES = "batch_records";

  /** In the order in which they are read: batches name titrants. */
  private static final List<String> TABLES = List.of(TITRANTS, TARGETS, BATCHES);

  private final Path path;
  private final Connection connection;
  private final Clock clock;
  private final ObjectMapper json = new ObjectMapper();
  private final Map<String, Long> read = new LinkedHashMap<>();
  private RecordBook book;

  private SqlBook(Path path, Connection connection, Clock clock, RecordBook book) {
    this.path = path;
    this.connection = connection;
    this.clock = clock;
    this.book = book;
  }

  /**
   * Opens a book, and makes its file if there is none.
   *
   * @param path the file
   * @param figures the figures that the book takes, each in the unit that it is shown in; the same
   *     as when the file was made
   * @return the book, to be closed
   * @throws IOException if the file cannot be opened, is no book, or was made for other figures
   * @throws IllegalArgumentException if there is no figure, or one comes twice
   */
  public static SqlBook open(Path path, Figure<?>... figures) throws IOException {
    return open(path, Clock.system(ZoneId.systemDefault()), figures);
  }

  /**
   * Opens a book whose days are told by a clock.
   *
   * @param path the file
   * @param clock tells what day is today
   * @param figures the figures that the book takes
   * @return the book, to be closed
   * @throws IOException as of {@link #open(Path, Figure...)}
   * @throws IllegalArgumentException if there is no figure, or one comes twice
   */
  public static SqlBook open(Path path, Clock clock, Figure<?>... figures) throws IOException {
    RecordBook empty = RecordBook.of(figures);
    boolean readOnly = Files.exists(path) && !Files.isWritable(path);
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(MOST_WAITED_MILLISECONDS);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setReadOnly(readOnly);
    try {
      Connection connection = config.createConnection("jdbc:sqlite:" + path);
      SqlBook opened = new SqlBook(path, connection, clock, empty);
      try {
        if (!readOnly) {
          opened.inTransaction("the book could not be made", opened::makeTables);
        }
        opened.refresh();
        return opened;
      } catch (IOException | RuntimeException e) {
        connection.close();
        throw e;
      }
    } catch (SQLException e) {
      throw said("the book could not be opened", path, e);
    }
  }

  /**
   * Enters a batch.
   *
   * @param record the record
   * @throws RefusedRecordException if the rules refuse it; nothing is stored
   * @throws IOException if it could not be stored, as on a full disk; nothing is stored
   */
  public void enter(BatchRecord record) throws IOException {
    enter(
        longer -> longer.with(today(), record),
        () -> {
          StringJoiner names = new StringJoiner(", ");
          StringJoiner marks = new StringJoiner(", ");
          List<Object> values = new ArrayList<>();
          Map<String, Object> cells = new LinkedHashMap<>();
          cells.put("batch", record.batch());
          cells.put("beer", record.beer());
          cells.put("brewed", record.brewed().toString());
          cells.put("titrant", record.titrant());
          cells.put("who", record.who());
          cells.put("entered", record.entered().toString());
          cells.put("correction", record.correction());
          for (Figure<?> figure : book.figures()) {
            record
                .answer(figure)
                .ifPresent(
                    answer -> {
                      answer.number().ifPresent(n -> cells.put(heading(figure), n));
                      answer.standardUncertainty().ifPresent(u -> cells.put(ofU(figure), u));
                    });
          }
          cells.put("record", json(record.toMap()));
          cells.forEach(
              (name, value) -> {
                names.add(quoted(name));
                marks.add("?");
                values.add(value);
              });
          insert("INSERT INTO " + BATCHES + " (" + names + ") VALUES (" + marks + ")", values);
        });
  }

  /**
   * Enters what a titrant was found to be.
   *
   * @param record the record
   * @throws RefusedRecordException if the rules refuse it; nothing is stored
   * @throws IOException if it could not be stored; nothing is stored
   */
  public void enter(TitrantRecord record) throws IOException {
    enter(
        longer -> longer.with(today(), record),
        () ->
            insert(
                "INSERT INTO "
                    + TITRANTS
                    + " (titrant, found, who, entered, record) VALUES (?, ?, ?, ?, ?)",
                List.of(
                    record.titrant(),
                    record.found().toString(),
                    record.who(),
                    record.entered().toString(),
                    json(record.toMap()))));
  }

  /**
   * Enters a version of a target.
   *
   * @param version the version
   * @throws RefusedRecordException if the rules refuse it; nothing is stored
   * @throws IOException if it could not be stored; nothing is stored
   */
  public void enter(TargetVersion version) throws IOException {
    enter(
        longer -> longer.with(today(), version),
        () ->
            insert(
                "INSERT INTO "
                    + TARGETS
                    + " (target, version, valid_from, who, entered, record)"
                    + " VALUES (?, ?, ?, ?, ?, ?)",
                List.of(
                    version.target().name(),
                    version.version(),
                    version.validFrom().toString(),
                    version.who(),
                    version.entered().toString(),
                    json(version.toMap()))));
  }

  /**
   * Returns all that stands in the file now, what other programs entered included.
   *
   * @return the book
   * @throws IOException if the file cannot be read, or holds what the rules refuse
   */
  public RecordBook book() throws IOException {
    refresh();
    return book;
  }

  /**
   * Asks the database whether the file is sound.
   *
   * @return what is wrong with it; empty if nothing is
   * @throws IOException if the file cannot be read
   */
  public List<String> problems() throws IOException {
    List<String> problems = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("PRAGMA integrity_check")) {
      while (rows.next()) {
        if (!rows.getString(1).equals("ok")) {
          problems.add(rows.getString(1));
        }
      }
      return problems;
    } catch (SQLException e) {
      throw said("the file could not be checked", path, e);
    }
  }

  /**
   * Writes all that was entered as three CSV files: {@code titrant_records.csv}, {@code
   * target_versions.csv} and {@code batch_records.csv}, the units in the headings.
   *
   * @param folder where they go; what stands there under these names is overwritten
   * @throws IOException if a file cannot be written
   */
  public void writeCsv(Path folder) throws IOException {
    for (String table : TABLES) {
      try (CsvWriter out = CsvWriter.builder().build(folder.resolve(table + ".csv"));
          Statement statement = connection.createStatement();
          ResultSet rows = statement.executeQuery("SELECT * FROM " + table + " ORDER BY id")) {
        int columns = rows.getMetaData().getColumnCount();
        List<String> cells = new ArrayList<>();
        for (int c = 2; c <= columns; c++) {
          cells.add(rows.getMetaData().getColumnName(c));
        }
        out.writeRecord(cells);
        while (rows.next()) {
          cells.clear();
          for (int c = 2; c <= columns; c++) {
            cells.add(Objects.requireNonNullElse(rows.getString(c), ""));
          }
          out.writeRecord(cells);
        }
      } catch (SQLException e) {
        throw said("the book could not be written as CSV", path, e);
      }
    }
  }

  /**
   * Enters what {@link #writeCsv} wrote, record by record under the rules. The last column of each
   * file, {@code record}, counts; the others are for readers and are written again from it.
   *
   * @param folder where the files are
   * @return how many records were entered
   * @throws RefusedRecordException if the rules refuse one; those before it are entered
   * @throws IOException if a file cannot be read or a record not be stored
   */
  public int readCsv(Path folder) throws IOException {
    int entered = 0;
    for (String table : TABLES) {
      try (CsvReader<NamedCsvRecord> in =
          CsvReader.builder().ofNamedCsvRecord(folder.resolve(table + ".csv"))) {
        for (NamedCsvRecord row : in) {
          Map<String, Object> map =
              json.readValue(row.getField("record"), new TypeReference<>() {});
          switch (table) {
            case TITRANTS -> enter(TitrantRecord.from(map));
            case TARGETS -> enter(TargetVersion.from(map, book.figures()));
            default -> enter(BatchRecord.from(map));
          }
          entered++;
        }
      }
    }
    return entered;
  }

  /** The connection, for tests that fill the disk or try to change what is stored. */
  Connection connection() {
    return connection;
  }

  @Override
  public void close() throws IOException {
    try {
      connection.close();
    } catch (SQLException e) {
      throw said("the book could not be closed", path, e);
    }
  }

  private LocalDate today() {
    return LocalDate.now(clock);
  }

  /** What is done in the database within a transaction. */
  private interface Work {
    void run() throws SQLException, IOException;
  }

  private void enter(Consumer<RecordBook> rule, Work insertion) throws IOException {
    inTransaction(
        "nothing was entered",
        () -> {
          readOn();
          rule.accept(book);
          insertion.run();
        });
  }

  /** IMMEDIATE takes the file before anything is read, so that no other program comes between. */
  private void inTransaction(String failed, Work work) throws IOException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      try {
        work.run();
        statement.execute("COMMIT");
      } catch (SQLException | IOException | RuntimeException e) {
        try {
          statement.execute("ROLLBACK");
        } catch (SQLException gone) {
          // On a full disk the database has rolled back already.
          e.addSuppressed(gone);
        }
        throw e;
      }
    } catch (SQLException e) {
      throw said(failed, path, e);
    }
  }

  private void makeTables() throws SQLException, IOException {
    try (Statement statement = connection.createStatement()) {
      StringBuilder columns = new StringBuilder();
      for (Figure<?> figure : book.figures()) {
        columns
            .append(", ")
            .append(quoted(heading(figure)))
            .append(" REAL, ")
            .append(quoted(ofU(figure)))
            .append(" REAL");
      }
      statement.execute(
          "CREATE TABLE IF NOT EXISTS "
              + TITRANTS
              + " (id INTEGER PRIMARY KEY, titrant TEXT NOT NULL, found TEXT NOT NULL,"
              + " who TEXT NOT NULL, entered TEXT NOT NULL, record TEXT NOT NULL)");
      statement.execute(
          "CREATE TABLE IF NOT EXISTS "
              + TARGETS
              + " (id INTEGER PRIMARY KEY, target TEXT NOT NULL, version INTEGER NOT NULL,"
              + " valid_from TEXT NOT NULL, who TEXT NOT NULL, entered TEXT NOT NULL,"
              + " record TEXT NOT NULL)");
      statement.execute(
          "CREATE TABLE IF NOT EXISTS "
              + BATCHES
              + " (id INTEGER PRIMARY KEY, batch TEXT NOT NULL, beer TEXT NOT NULL,"
              + " brewed TEXT NOT NULL, titrant TEXT NOT NULL, who TEXT NOT NULL,"
              + " entered TEXT NOT NULL, correction TEXT NOT NULL"
              + columns
              + ", record TEXT NOT NULL)");
      for (String table : TABLES) {
        for (String change : List.of("UPDATE", "DELETE")) {
          statement.execute(
              "CREATE TRIGGER IF NOT EXISTS "
                  + table
                  + "_no_"
                  + change
                  + " BEFORE "
                  + change
                  + " ON "
                  + table
                  + " BEGIN SELECT RAISE(ABORT, 'what was entered stays; correct it by another"
                  + " record'); END");
        }
      }
    }
  }

  private void refresh() throws IOException {
    try {
      checkFigures();
      readOn();
    } catch (SQLException e) {
      throw said("the book could not be read", path, e);
    }
  }

  private void checkFigures() throws SQLException, IOException {
    List<String> columns = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("PRAGMA table_info(" + BATCHES + ")")) {
      while (rows.next()) {
        columns.add(rows.getString("name"));
      }
    }
    List<String> wanted = new ArrayList<>();
    for (Figure<?> figure : book.figures()) {
      wanted.add(heading(figure));
      wanted.add(ofU(figure));
    }
    List<String> made = columns.size() < 9 ? List.of() : columns.subList(8, columns.size() - 1);
    if (!made.equals(wanted)) {
      throw new IOException(
          path + ": is a book of " + made + "; figures " + wanted + " were asked for");
    }
  }

  /** Reads what was entered since the last look, titrants first, for batches name them. */
  private void readOn() throws SQLException, IOException {
    try {
      for (Map<String, Object> map : behind(TITRANTS)) {
        book = book.with(ENTERED_BEFORE, TitrantRecord.from(map));
      }
      for (Map<String, Object> map : behind(TARGETS)) {
        book = book.with(ENTERED_BEFORE, TargetVersion.from(map, book.figures()));
      }
      List<BatchRecord> batches = new ArrayList<>();
      for (Map<String, Object> map : behind(BATCHES)) {
        batches.add(BatchRecord.from(map));
      }
      if (!batches.isEmpty()) {
        book = book.with(ENTERED_BEFORE, batches.toArray(new BatchRecord[0]));
      }
    } catch (IllegalArgumentException e) {
      throw new IOException(path + ": holds what the rules refuse: " + e.getMessage(), e);
    }
  }

  private List<Map<String, Object>> behind(String table) throws SQLException, IOException {
    List<Map<String, Object>> maps = new ArrayList<>();
    long last = read.getOrDefault(table, 0L);
    try (PreparedStatement statement =
        connection.prepareStatement(
            "SELECT id, record FROM " + table + " WHERE id > ? ORDER BY id")) {
      statement.setLong(1, last);
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          last = rows.getLong(1);
          maps.add(json.readValue(rows.getString(2), new TypeReference<>() {}));
        }
      }
    } catch (JsonProcessingException e) {
      throw new IOException(path + ", " + table + " " + last + ": is no record", e);
    }
    read.put(table, last);
    return maps;
  }

  private void insert(String sql, List<Object> values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.size(); i++) {
        statement.setObject(i + 1, values.get(i));
      }
      statement.executeUpdate();
    }
  }

  private String json(Map<String, Object> map) throws IOException {
    return json.writeValueAsString(map);
  }

  /** A heading with its unit, as tables have it. */
  private static String heading(Figure<?> figure) {
    String unit = figure.shown().symbol();
    return unit.isEmpty() ? figure.title() : figure.title() + " [" + unit + "]";
  }

  private static String ofU(Figure<?> figure) {
    return "u of " + heading(figure);
  }

  private static String quoted(String name) {
    return '"' + name.replace("\"", "\"\"") + '"';
  }

  private static IOException said(String failed, Path path, SQLException e) {
    SQLiteErrorCode code =
        e instanceof SQLiteException own ? own.getResultCode() : SQLiteErrorCode.UNKNOWN_ERROR;
    String why =
        switch (code) {
          case SQLITE_FULL -> "the disk is full";
          case SQLITE_READONLY, SQLITE_READONLY_DBMOVED, SQLITE_READONLY_DIRECTORY ->
              "the file can only be read";
          case SQLITE_CANTOPEN -> "there is no such folder, or no right to it";
          case SQLITE_NOTADB -> "it is no database";
          case SQLITE_BUSY -> "another program held it for a minute";
          case SQLITE_CONSTRAINT_TRIGGER -> "what was entered stays; correct it by another record";
          default -> String.valueOf(e.getMessage());
        };
    return new IOException(path + ": " + failed + "; " + why, e);
  }
}
