package org.brewchem.readers;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.brewchem.table.Failure;
import org.brewchem.table.Table;
import org.jspecify.annotations.Nullable;

/**
 * A file of separated values that is read as a table. The rows of the table carry the line of the
 * file. Immutable.
 *
 * <p>{@link #read} is strict: it throws if anything cannot be read, and lists all of it. {@link
 * #reading} and {@link #forEachTable} keep such a cell as a {@link Failure} of its row and go on.
 */
public final class CsvFile {

  private final Path path;
  private final FileFormat format;

  private CsvFile(Path path, FileFormat format) {
    this.path = path;
    this.format = format;
  }

  /**
   * Names a file in the standard format, all of whose columns are numbers.
   *
   * @param path the file
   * @return the file, not opened yet
   */
  public static CsvFile of(Path path) {
    return new CsvFile(path, FileFormat.standard());
  }

  /**
   * Declares how the file is written.
   *
   * @param format the format
   * @return the same file in that format
   */
  public CsvFile in(FileFormat format) {
    return new CsvFile(path, format);
  }

  /**
   * Declares columns of text.
   *
   * @param names their headings
   * @return the same file with them
   */
  public CsvFile withTexts(String... names) {
    return new CsvFile(path, format.texts(names));
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
    return new Fault(name(), failure.row(), failure.column(), failure.reason()).toString();
  }

  /**
   * Reads the whole file.
   *
   * @return the table; an empty cell is missing
   * @throws FileFaultException if anything cannot be read: cells, lines that have more or fewer
   *     cells than the headings, quotes that are not closed, bytes of another character set. It
   *     lists all of it, and what may have to be declared
   * @throws IOException if the file cannot be opened or read
   */
  public Table read() throws IOException {
    return reading().orThrow();
  }

  /**
   * Reads the whole file, keeps cells that cannot be read as failures of their rows, and reports.
   *
   * @return the table and the report
   * @throws FileFaultException if the file has no headings
   * @throws IOException if the file cannot be opened or read
   */
  public TableReading reading() throws IOException {
    return ReadingRun.whole(
        name(), format, (settings, into) -> feed(settings, into, (rows, share) -> {}));
  }

  /**
   * Reads the file as a row of tables of bounded size, one after the other. Cells that cannot be
   * read are kept as failures of their rows. A file in long format comes as tables of bounded size
   * too, but is held as a whole before.
   *
   * @param rows the rows of each table but the last, 1 or more
   * @param use what is done with each table; nobody else holds on to it
   * @param progress is told after each table
   * @return what was used, ignored, odd and faulty
   * @throws FileFaultException if the file has no headings
   * @throws IllegalArgumentException if the rows are below 1
   * @throws IOException if the file cannot be opened or read
   */
  public ReadingReport forEachTable(int rows, TableConsumer use, Progress progress)
      throws IOException {
    if (rows < 1) {
      throw new IllegalArgumentException(
          "rows: " + rows + " is not possible; 1 or more is allowed");
    }
    long[] done = {0};
    double[] share = {0};
    TableConsumer counted =
        table -> {
          use.accept(table);
          done[0] += table.size();
          progress.at(done[0], share[0]);
        };
    return ReadingRun.pieces(
        new ReadingReport.Draft(name(), Long.MAX_VALUE),
        format.settings,
        (settings, into) -> feed(settings, into, (read, of) -> share[0] = of),
        rows,
        counted,
        List::of);
  }

  private void feed(FileFormat.Settings settings, Records into, Progress read) throws IOException {
    long size = Files.size(path);
    try (DecodedReader decoded = new DecodedReader(Files.newInputStream(path), settings.charset);
        CheckedLines lines = new CheckedLines(decoded, settings.separator, settings.comment);
        CsvReader<Boolean> reader =
            CsvReader.builder()
                .fieldSeparator(settings.separator)
                .commentStrategy(
                    settings.comment == 0 ? CommentStrategy.NONE : CommentStrategy.READ)
                .commentCharacter(settings.comment == 0 ? '#' : settings.comment)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .build(new Handler(into), lines)) {
      long records = 0;
      for (Boolean record : reader) {
        if (++records % 1000 == 0 && record) {
          read.at(records, (double) decoded.count() / size);
        }
      }
      read.at(records, 1);
    } catch (CsvParseException e) {
      // FastCSV wraps what the taker of a record throws.
      if (e.getCause() instanceof RuntimeException own) {
        throw own;
      }
      throw new FileFaultException(
          new Fault(name(), 0, "", "cannot be taken apart: " + e.getMessage()), e);
    }
  }

  /** Hands cells on without making a text of each. */
  private static final class Handler extends AbstractBaseCsvCallbackHandler<Boolean> {

    private final Records into;
    private boolean begun;
    private boolean comment;

    Handler(Records into) {
      this.into = into;
    }

    @Override
    protected void handleBegin(long line) {
      begun = false;
      comment = false;
    }

    @Override
    protected void handleField(int index, char[] buffer, int offset, int length, boolean quoted) {
      if (!begun) {
        begun = true;
        into.begin(getStartingLineNumber());
      }
      into.cell(index, buffer, offset, length, quoted);
    }

    @Override
    protected void handleComment(char[] buffer, int offset, int length) {
      comment = true;
      into.comment(getStartingLineNumber());
    }

    @Override
    protected @Nullable Boolean buildRecord() {
      if (begun && !comment) {
        into.end();
      }
      return true;
    }
  }
}
