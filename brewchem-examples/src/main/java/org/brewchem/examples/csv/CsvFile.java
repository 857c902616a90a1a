package org.brewchem.examples.csv;

import java.io.BufferedReader;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.brewchem.table.Failure;
import org.brewchem.table.Table;
import org.brewchem.units.Text;
import org.brewchem.units.UnitTextException;

/**
 * A CSV file that is read as a table. Every column is one of numbers unless it is declared to be
 * text. The rows of the table carry the line of the file. Immutable.
 *
 * <p>{@link #read} is strict: it throws at the first cell that cannot be read. {@link
 * #readKeepingFaults} and {@link #forEachTable} keep such a cell as a {@link Failure} of its row
 * and go on.
 */
public final class CsvFile {

  private final Path path;
  private final Set<String> texts;

  private CsvFile(Path path, Set<String> texts) {
    this.path = path;
    this.texts = texts;
  }

  /**
   * Names a file all of whose columns are numbers.
   *
   * @param path the file
   * @return the file, not opened yet
   */
  public static CsvFile of(Path path) {
    return new CsvFile(path, Set.of());
  }

  /**
   * Declares columns of text.
   *
   * @param names their headings
   * @return the same file with them
   */
  public CsvFile withTexts(String... names) {
    Set<String> more = new LinkedHashSet<>(texts);
    more.addAll(List.of(names));
    return new CsvFile(path, more);
  }

  private String name() {
    return String.valueOf(path.getFileName());
  }

  /**
   * Describes a failure of a row of this file.
   *
   * @param failure the failure
   * @return such as {@code titrations.csv, line 7, column "volume [mL]": "14,62" is not a number
   *     (use a point)}
   */
  public String describe(Failure failure) {
    return describe(name(), failure);
  }

  static String describe(String file, Failure failure) {
    return file
        + ", line "
        + failure.row()
        + ", column \""
        + failure.column()
        + "\": "
        + failure.reason();
  }

  /**
   * Reads the whole file.
   *
   * @return the table; an empty cell is missing
   * @throws CsvException at the first cell that cannot be read, at a line that has more or fewer
   *     cells than the first, at a heading that cannot be read
   * @throws IOException if the file cannot be read
   */
  public Table read() throws IOException {
    Table table = readKeepingFaults();
    List<Failure> faults = table.faults();
    if (!faults.isEmpty()) {
      throw CsvException.of(name(), faults.get(0));
    }
    return table;
  }

  /**
   * Reads the whole file and keeps cells that cannot be read as failures of their rows.
   *
   * @return the table; an empty cell is missing
   * @throws CsvException at a heading that cannot be read or a quote that is not closed
   * @throws IOException if the file cannot be read
   */
  public Table readKeepingFaults() throws IOException {
    List<Table> all = new ArrayList<>();
    forEachTable(Integer.MAX_VALUE, all::add, (rows, share) -> {});
    return all.get(0);
  }

  /**
   * Reads the file as a row of tables of bounded size, one after the other. Cells that cannot be
   * read are kept as failures of their rows.
   *
   * @param rows the rows of each table but the last, 1 or more
   * @param use what is done with each table; nobody else holds on to it
   * @param progress is told after each table
   * @throws CsvException at a heading that cannot be read or a quote that is not closed
   * @throws IOException if the file cannot be read
   */
  public void forEachTable(int rows, TableConsumer use, Progress progress) throws IOException {
    if (rows < 1) {
      throw new IllegalArgumentException(
          "rows: " + rows + " is not possible; 1 or more is allowed");
    }
    long size = Files.size(path);
    try (Counting bytes = new Counting(Files.newInputStream(path));
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(bytes, StandardCharsets.UTF_8.newDecoder()))) {
      CsvLines lines = new CsvLines(name(), reader);
      if (!lines.read()) {
        throw CsvException.of(name(), "is empty; a line of headings is needed");
      }
      Layout layout = layout(lines);
      Table.Builder builder = layout.builder();
      long done = 0;
      boolean first = true;
      while (lines.read()) {
        layout.addRow(builder, lines);
        if (builder.size() == rows) {
          use.accept(builder.build());
          done += rows;
          first = false;
          builder = layout.builder();
          progress.at(done, (double) bytes.count / size);
        }
      }
      if (first || builder.size() > 0) {
        use.accept(builder.build());
        progress.at(done + builder.size(), 1);
      }
    } catch (CharacterCodingException e) {
      throw CsvException.of(name(), "is not UTF-8");
    }
  }

  private Layout layout(CsvLines lines) {
    List<String> headings = List.copyOf(lines.cells());
    for (String text : texts) {
      if (!headings.contains(text)) {
        throw CsvException.of(name(), lines.line(), "has no column \"" + text + "\": " + headings);
      }
    }
    Layout layout = new Layout(headings, texts);
    try {
      layout.builder();
    } catch (IllegalArgumentException e) {
      throw CsvException.of(name(), lines.line(), String.valueOf(e.getMessage()));
    }
    return layout;
  }

  /** Which cell goes into which column. */
  private static final class Layout {

    private final List<String> numbers = new ArrayList<>();
    private final List<String> texts = new ArrayList<>();

    /** For each cell the index of its column, of numbers or of texts. */
    private final int[] column;

    private final boolean[] isText;

    Layout(List<String> headings, Set<String> textNames) {
      column = new int[headings.size()];
      isText = new boolean[headings.size()];
      for (int cell = 0; cell < column.length; cell++) {
        String heading = headings.get(cell);
        isText[cell] = textNames.contains(heading);
        List<String> kind = isText[cell] ? texts : numbers;
        column[cell] = kind.size();
        kind.add(heading);
      }
    }

    Table.Builder builder() {
      return Table.withHeadings(numbers, texts);
    }

    void addRow(Table.Builder builder, CsvLines lines) {
      List<String> cells = lines.cells();
      builder.row(lines.line());
      if (cells.size() != column.length) {
        String reason =
            "the line has " + cells.size() + " cells, the headings are " + column.length;
        for (int number = 0; number < numbers.size(); number++) {
          builder.unreadable(number, String.join(",", cells), reason);
        }
        return;
      }
      for (int cell = 0; cell < column.length; cell++) {
        String text = cells.get(cell);
        if (isText[cell]) {
          builder.text(column[cell], text);
        } else if (!text.isEmpty()) {
          setNumber(builder, column[cell], text);
        }
      }
    }

    private static void setNumber(Table.Builder builder, int column, String text) {
      double number;
      try {
        number = Text.parseNumber(text);
      } catch (UnitTextException e) {
        String advice = text.indexOf(',') >= 0 ? "use a point" : e.allowed();
        builder.unreadable(column, text, "\"" + text + "\" is not a number (" + advice + ")");
        return;
      }
      builder.set(column, number);
    }
  }

  /** Counts the bytes that were read. */
  private static final class Counting extends FilterInputStream {

    private long count;

    Counting(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      int one = super.read();
      count += one < 0 ? 0 : 1;
      return one;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
      int read = super.read(buffer, offset, length);
      count += Math.max(read, 0);
      return read;
    }
  }
}
