package org.brewchem.readers;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Takes the lines of headings and of units, and hands the records after them on. Mutable, for one
 * thread.
 */
abstract class HeadedRecords implements Records {

  final FileFormat.Settings format;
  final ReadingReport.Draft draft;
  private final List<String> cells = new ArrayList<>();
  private List<String> rawHeadings = List.of();
  private List<String> rawUnits = List.of();
  private @Nullable Headings headings;
  private long line;
  private long headingsLine;
  private long records;

  /** Ends a trial that has seen enough records. */
  static final class Enough extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Enough() {
      super(null, null, false, false);
    }
  }

  HeadedRecords(FileFormat.Settings format, ReadingReport.Draft draft) {
    this.format = format;
    this.draft = draft;
  }

  /** The columns that are to be text though none declares them. */
  abstract Set<Integer> foundTexts();

  /** The headings are known. */
  abstract void headed(Headings known);

  abstract void dataBegin(long at);

  abstract void dataCell(int index, char[] buffer, int offset, int length, boolean quoted);

  abstract void dataNumber(int index, double value);

  abstract void dataEnd();

  final long line() {
    return line;
  }

  /** The line that what follows stands in, where it is not that of the record. */
  final void at(long other) {
    line = other;
  }

  /** The headings, or null before the first record. */
  final @Nullable Headings headings() {
    return headings;
  }

  final long records() {
    return records;
  }

  @Override
  public final void comment(long at) {
    draft.ignored("comment lines", at);
  }

  @Override
  public final void begin(long at) {
    line = at;
    cells.clear();
    if (headings != null) {
      records++;
      if (records > draft.most()) {
        throw new Enough();
      }
      dataBegin(at);
    }
  }

  @Override
  public final void cell(int index, char[] buffer, int offset, int length, boolean quoted) {
    if (headings != null) {
      if (records == 1) {
        draft.firstRecord(new String(buffer, offset, length));
      }
      dataCell(index, buffer, offset, length, quoted);
    } else {
      cells.add(new String(buffer, offset, length));
    }
  }

  @Override
  public final void number(int index, double value) {
    if (headings != null) {
      dataNumber(index, value);
    } else {
      cells.add(Double.toString(value));
    }
  }

  @Override
  public final void date(int index, LocalDate date) {
    if (headings != null) {
      dataDate(index, date);
    } else {
      cells.add(date.toString());
    }
  }

  /** A date, which is a text unless it stands in a column of dates. */
  void dataDate(int index, LocalDate date) {
    String text = date.toString();
    dataCell(index, text.toCharArray(), 0, text.length(), true);
  }

  @Override
  public final void end() {
    if (headings != null) {
      dataEnd();
    } else if (line < format.headingsLine) {
      draft.ignored("lines before the headings", line);
    } else {
      headingCells();
    }
  }

  private void headingCells() {
    String problem = CheckedLines.problem(cells.get(0));
    if (problem != null) {
      draft.fault(line, "", problem);
      return;
    }
    if (rawHeadings.isEmpty()) {
      rawHeadings = List.copyOf(cells);
      draft.headings(rawHeadings);
      headingsLine = line;
      if (format.unitsRow) {
        return;
      }
    } else {
      rawUnits = List.copyOf(cells);
    }
    Headings known =
        Headings.read(rawHeadings, rawUnits, foundTexts(), format, draft, headingsLine);
    headings = known;
    headed(known);
  }
}
