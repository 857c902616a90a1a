package org.brewchem.readers;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Iterator;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.brewchem.table.Table;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.jspecify.annotations.Nullable;

/**
 * A sheet of an XLSX file that is read as a table, by the same {@link FileFormat} as a text file.
 * The rows of the table carry the row of the sheet. Needs {@code org.dhatim:fastexcel-reader}.
 * Immutable.
 *
 * <p>A cell that holds a number is that number, whatever decimal mark is declared; of a formula the
 * value counts that was stored with it. Cells at the end of a row that are not stored are empty.
 */
public final class ExcelFile {

  private static final Pattern DATE_FORMAT = Pattern.compile(".*(yy|d).*m.*|.*m.*(yy|d).*");

  private final Path path;
  private final Optional<String> sheet;
  private final FileFormat format;

  private ExcelFile(Path path, Optional<String> sheet, FileFormat format) {
    this.path = path;
    this.sheet = sheet;
    this.format = format;
  }

  /**
   * Names the first sheet of a file, all of whose columns are numbers.
   *
   * @param path the file
   * @return the sheet, not opened yet
   */
  public static ExcelFile of(Path path) {
    return new ExcelFile(path, Optional.empty(), FileFormat.standard());
  }

  /**
   * Chooses a sheet.
   *
   * @param name its name
   * @return the sheet of that name
   */
  public ExcelFile sheet(String name) {
    return new ExcelFile(path, Optional.of(name), format);
  }

  /**
   * Declares how the sheet is written. Character set, separator and comments do not matter.
   *
   * @param declared the format
   * @return the same sheet in that format
   */
  public ExcelFile in(FileFormat declared) {
    return new ExcelFile(path, sheet, declared);
  }

  private String name() {
    return String.valueOf(path.getFileName());
  }

  /**
   * Reads the sheet.
   *
   * @return the table; an empty cell is missing
   * @throws FileFaultException if there is no such sheet or anything in it cannot be read; it lists
   *     all of it
   * @throws IOException if the file cannot be opened or is no XLSX file
   */
  public Table read() throws IOException {
    return reading().orThrow();
  }

  /**
   * Reads the sheet, keeps cells that cannot be read as failures of their rows, and reports.
   *
   * @return the table and the report
   * @throws FileFaultException if there is no such sheet or it has no headings
   * @throws IOException if the file cannot be opened or is no XLSX file
   */
  public TableReading reading() throws IOException {
    return ReadingRun.whole(name(), format, this::feed);
  }

  private void feed(FileFormat.Settings settings, Records into) throws IOException {
    try (InputStream in = Files.newInputStream(path);
        ReadableWorkbook workbook = new ReadableWorkbook(in, new ReadingOptions(true, false));
        Stream<Row> rows = sheet(workbook).openStream()) {
      int width = 0;
      for (Iterator<Row> all = rows.iterator(); all.hasNext(); ) {
        Row row = all.next();
        int cells = row.getCellCount();
        if (cells == 0) {
          continue;
        }
        into.begin(row.getRowNum());
        if (width == 0 && row.getRowNum() >= settings.headingsLine) {
          width = cells;
        }
        for (int i = 0; i < Math.max(cells, width); i++) {
          put(into, i, i < cells ? row.getCell(i) : null);
        }
        into.end();
      }
    } catch (ExcelReaderException e) {
      throw new FileFaultException(
          new Fault(name(), 0, "", "is no XLSX file that can be read: " + e.getMessage()), e);
    }
  }

  private Sheet sheet(ReadableWorkbook workbook) {
    if (sheet.isEmpty()) {
      return workbook.getFirstSheet();
    }
    return workbook
        .findSheet(sheet.get())
        .orElseThrow(
            () ->
                new FileFaultException(
                    new Fault(
                        name(),
                        0,
                        "",
                        "has no sheet \""
                            + sheet.get()
                            + "\": "
                            + workbook.getSheets().map(Sheet::getName).toList())));
  }

  private static void put(Records into, int index, @Nullable Cell cell) {
    if (cell != null && isNumber(cell)) {
      LocalDate date = date(cell);
      if (date != null) {
        into.date(index, date);
      } else {
        into.number(index, Double.parseDouble(cell.getRawValue()));
      }
      return;
    }
    String text = cell == null ? "" : text(cell);
    into.cell(index, text.toCharArray(), 0, text.length(), false);
  }

  private static boolean isNumber(Cell cell) {
    if (cell.getType() != CellType.NUMBER && cell.getType() != CellType.FORMULA) {
      return false;
    }
    String raw = cell.getRawValue();
    return raw != null && raw.matches("-?[0-9]+([.][0-9]+)?([eE][+-]?[0-9]+)?");
  }

  private static @Nullable LocalDate date(Cell cell) {
    String shown = cell.getDataFormatString();
    if (cell.getType() != CellType.NUMBER
        || shown == null
        || !DATE_FORMAT.matcher(shown.toLowerCase(Locale.ROOT)).matches()) {
      return null;
    }
    LocalDateTime time = cell.asDate();
    return time == null ? null : time.toLocalDate();
  }

  private static String text(Cell cell) {
    String text = cell.getType() == CellType.EMPTY ? "" : cell.getText();
    return text == null ? "" : text;
  }
}
