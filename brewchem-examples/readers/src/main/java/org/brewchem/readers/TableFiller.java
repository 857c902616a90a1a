package org.brewchem.readers;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.brewchem.table.Table;
import org.brewchem.units.ColumnHeader;
import org.jspecify.annotations.Nullable;

/** Makes tables of bounded size of records that hold a row each. Mutable, for one thread. */
final class TableFiller extends HeadedRecords {

  /** A limit that a number is below, by the index of its row in the piece. */
  private record Limit(int row, double limit) {}

  private final Set<Integer> found;
  private final int rowsOfAPiece;
  private final TableConsumer use;
  private final CellReader reader;
  private final Map<Integer, List<Limit>> limits = new TreeMap<>();
  private Table.@Nullable Builder builder;
  private Headings.Place[] places = new Headings.Place[0];
  private boolean[] numbered = new boolean[0];
  private int cells;
  private long done;
  private boolean usedAny;
  private boolean broken;
  private boolean anything;

  TableFiller(
      FileFormat.Settings format,
      ReadingReport.Draft draft,
      Set<Integer> found,
      int rowsOfAPiece,
      TableConsumer use) {
    super(format, draft);
    this.found = found;
    this.rowsOfAPiece = rowsOfAPiece;
    this.use = use;
    reader = new CellReader(format);
  }

  @Override
  Set<Integer> foundTexts() {
    return found;
  }

  /** How many rows were handed on. */
  long done() {
    return done;
  }

  @Override
  void headed(Headings known) {
    places = known.places().toArray(new Headings.Place[0]);
    builder = known.builder();
    numbered = new boolean[known.numbers().size()];
  }

  private Table.Builder builder() {
    return Objects.requireNonNull(builder);
  }

  @Override
  void dataBegin(long at) {
    builder().row(at);
    cells = 0;
    broken = false;
    anything = false;
  }

  @Override
  void dataCell(int index, char[] buffer, int offset, int length, boolean quoted) {
    cells = index + 1;
    anything |= length > 0 || quoted;
    if (index >= places.length) {
      return;
    }
    Headings.Place place = places[index];
    switch (place.kind()) {
      case NUMBER -> number(place, reader.read(buffer, offset, length));
      case NONE -> nameless(place, index, new String(buffer, offset, length));
      default -> text(place, new String(buffer, offset, length));
    }
    if (index == 0 && length == CheckedLines.NOT_CLOSED.length() && places.length > 0) {
      String problem = CheckedLines.problem(new String(buffer, offset, length));
      if (problem != null) {
        breakLine(problem);
      }
    }
  }

  private void nameless(Headings.Place place, int index, String cell) {
    if (!cell.isBlank() && place.inFile().isBlank()) {
      draft.fault(line(), "", "cell " + (index + 1) + ", \"" + cell + "\", has no heading");
    }
  }

  private void number(Headings.Place place, CellReader.Kind kind) {
    if (reader.blanks()) {
      draft.odd("blanks around a cell", line());
    }
    switch (kind) {
      case NUMBER -> {
        builder().set(place.index(), reader.number());
        if (!numbered[place.index()]) {
          numbered[place.index()] = true;
          draft.numbered(place.inFile());
        }
      }
      case EMPTY -> {}
      case MISSING_WORD -> draft.odd("\"" + reader.text() + "\" taken as missing", line());
      case LIMIT -> {
        limits
            .computeIfAbsent(place.index(), key -> new ArrayList<>())
            .add(new Limit(builder().size() - 1, reader.number()));
        draft.odd("a value below a limit in " + place.heading(), line());
      }
      case FAULT -> unreadable(place, reader.text(), reader.reason());
    }
  }

  private void unreadable(Headings.Place place, String text, String reason) {
    if (CheckedLines.problem(text) != null) {
      return;
    }
    boolean bytes = text.indexOf(DecodedReader.MARK) >= 0;
    String why =
        bytes ? "\"" + Headings.shown(text) + "\" " + Headings.undecodable(format) : reason;
    builder().unreadable(place.index(), Headings.shown(text), why);
    draft.fault(line(), place.heading(), why);
    draft.sign(place.inFile(), text);
  }

  private void text(Headings.Place place, String cell) {
    if (CheckedLines.problem(cell) != null) {
      return;
    }
    if (cell.indexOf(DecodedReader.MARK) >= 0) {
      draft.fault(
          line(),
          place.heading(),
          "\"" + Headings.shown(cell) + "\" " + Headings.undecodable(format));
      draft.sign(place.inFile(), cell);
      return;
    }
    String text = format.trimmed ? cell.strip() : cell;
    if (!text.equals(cell)) {
      draft.odd("blanks around a cell", line());
    }
    DateTimeFormatter dates = place.dates();
    if (dates != null && !text.isEmpty()) {
      try {
        text = LocalDate.parse(text, dates).toString();
      } catch (DateTimeException e) {
        draft.fault(line(), place.heading(), "\"" + text + "\" is no date of the declared pattern");
      }
    }
    builder().text(place.index(), text);
  }

  @Override
  void dataNumber(int index, double value) {
    cells = index + 1;
    anything = true;
    if (index >= places.length) {
      return;
    }
    Headings.Place place = places[index];
    switch (place.kind()) {
      case NUMBER -> builder().set(place.index(), value);
      case NONE -> nameless(place, index, Double.toString(value));
      default ->
          text(
              place,
              value == Math.rint(value) && Math.abs(value) < 1e15
                  ? Long.toString((long) value)
                  : Double.toString(value));
    }
  }

  @Override
  void dataDate(int index, LocalDate date) {
    if (index < places.length && places[index].kind() == Headings.Kind.DATE) {
      cells = index + 1;
      anything = true;
      builder().text(places[index].index(), date.toString());
    } else {
      super.dataDate(index, date);
    }
  }

  @Override
  void dataEnd() {
    if (!broken && cells != places.length) {
      breakLine(
          "the line has "
              + cells
              + (cells == 1 ? " cell" : " cells")
              + ", the headings are "
              + places.length);
    }
    if (!anything) {
      draft.odd("a line without a value", line());
    }
    if (builder().size() == rowsOfAPiece) {
      flush();
    }
  }

  /** None of the numbers of the line can be told from others. */
  private void breakLine(String reason) {
    broken = true;
    draft.fault(line(), "", reason);
    for (Headings.Place place : places) {
      if (place.kind() == Headings.Kind.NUMBER) {
        builder().unreadable(place.index(), "", reason);
      }
    }
  }

  /** Hands on what is left, at least one table. */
  void finish() {
    if (headings() != null && (!usedAny || builder().size() > 0)) {
      flush();
    }
  }

  private void flush() {
    Table table = builder().build();
    for (Map.Entry<Integer, List<Limit>> entry : limits.entrySet()) {
      table = table.with(column(table, entry.getKey(), entry.getValue()).column(below(entry)));
    }
    limits.clear();
    done += table.size();
    usedAny = true;
    builder = Objects.requireNonNull(headings()).builder();
    try {
      use.accept(table);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private ColumnHeader header(int column) {
    return ColumnHeader.parse(Objects.requireNonNull(headings()).numbers().get(column));
  }

  private String below(Map.Entry<Integer, List<Limit>> entry) {
    return header(entry.getKey()).name() + " below";
  }

  private Table column(Table table, int column, List<Limit> of) {
    ColumnHeader header = header(column);
    Table.Builder rows =
        Table.withHeadings(
            header.name() + " below" + header.unit().map(unit -> " [" + unit + "]").orElse(""));
    int next = 0;
    for (int row = 0; row < table.size(); row++) {
      rows.row(table.row(row));
      if (next < of.size() && of.get(next).row() == row) {
        rows.set(0, of.get(next++).limit());
      }
    }
    return rows.build();
  }
}
