package org.brewchem.readers;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * Makes a table of records that hold a value each, and hands it to a {@link TableFiller} row by
 * row. Mutable, for one thread.
 */
final class LongFiller extends HeadedRecords {

  /** One value and where it stands. */
  private record Value(String text, boolean isNumber, double number, long line) {}

  private final FileFormat.LongColumns columns;
  private final List<String> cells = new ArrayList<>();
  private final Map<Integer, Double> numbers = new LinkedHashMap<>();
  private final Map<String, String> units = new LinkedHashMap<>();
  private final Map<String, String> spelled = new LinkedHashMap<>();
  private final Map<List<String>, Map<String, Value>> rows = new LinkedHashMap<>();
  private final Map<List<String>, Long> firstLines = new LinkedHashMap<>();

  LongFiller(
      FileFormat.Settings format, FileFormat.LongColumns columns, ReadingReport.Draft draft) {
    super(format, draft);
    this.columns = columns;
  }

  /** The names of the columns that a record has, as the table of values is to know them as text. */
  static FileFormat.Settings ofRecords(FileFormat.Settings format, FileFormat.LongColumns columns) {
    FileFormat.Settings records = format.copy();
    Set<String> texts = new LinkedHashSet<>(columns.groups());
    texts.addAll(List.of(columns.parameter(), columns.value(), columns.unit()));
    records.texts = texts;
    records.dates = Map.of();
    return records;
  }

  @Override
  Set<Integer> foundTexts() {
    return Set.of();
  }

  @Override
  void headed(Headings known) {}

  @Override
  void dataBegin(long at) {
    cells.clear();
    numbers.clear();
  }

  @Override
  void dataCell(int index, char[] buffer, int offset, int length, boolean quoted) {
    String cell = new String(buffer, offset, length);
    cells.add(format.trimmed ? cell.strip() : cell);
  }

  @Override
  void dataNumber(int index, double value) {
    numbers.put(index, value);
    cells.add(Double.toString(value));
  }

  private int cell(String heading) {
    Headings known = Objects.requireNonNull(headings());
    for (int i = 0; i < known.size(); i++) {
      Headings.Place place = known.place(i);
      if (place.isText()
          && (place.inFile().strip().equals(heading) || place.heading().equals(heading))) {
        return i;
      }
    }
    return -1;
  }

  @Override
  void dataEnd() {
    String problem = CheckedLines.problem(cells.get(0));
    int expected = Objects.requireNonNull(headings()).size();
    if (problem != null) {
      draft.fault(line(), "", problem);
      return;
    }
    if (cells.size() != expected) {
      draft.fault(
          line(), "", "the line has " + cells.size() + " cells, the headings are " + expected);
      return;
    }
    int parameterCell = cell(columns.parameter());
    int valueCell = cell(columns.value());
    int unitCell = cell(columns.unit());
    List<Integer> groupCells = columns.groups().stream().map(this::cell).toList();
    if (parameterCell < 0 || valueCell < 0 || unitCell < 0 || groupCells.contains(-1)) {
      return;
    }
    String inFile = cells.get(parameterCell);
    if (inFile.isBlank()) {
      draft.fault(line(), columns.parameter(), "the parameter is missing");
      return;
    }
    if (String.join("", cells).indexOf(DecodedReader.MARK) >= 0) {
      draft.fault(line(), "", Headings.undecodable(format));
      return;
    }
    String name = Headings.name(inFile, format);
    String unit = Headings.unit(cells.get(unitCell).strip(), format);
    String symbol = unit.equals("-") ? "" : unit;
    String other = units.putIfAbsent(name, symbol);
    if (other != null && !other.equals(symbol)) {
      draft.fault(
          line(),
          columns.unit(),
          "\"" + inFile + "\" has the unit \"" + symbol + "\" here, \"" + other + "\" before");
      return;
    }
    spelled.putIfAbsent(name, inFile);
    List<String> group = groupCells.stream().map(cells::get).toList();
    firstLines.putIfAbsent(group, line());
    Double number = numbers.get(valueCell);
    Value twice =
        rows.computeIfAbsent(group, key -> new LinkedHashMap<>())
            .putIfAbsent(
                name,
                new Value(
                    cells.get(valueCell), number != null, number == null ? 0 : number, line()));
    if (twice != null) {
      draft.fault(
          line(),
          columns.parameter(),
          "\"" + inFile + "\" of " + group + " stands in line " + twice.line() + " already");
    }
  }

  /** Hands the samples on as rows. */
  void pour(HeadedRecords into) {
    if (headings() == null) {
      return;
    }
    List<String> heads = new ArrayList<>(groupNames());
    units.forEach((name, unit) -> heads.add(unit.isEmpty() ? name : name + " [" + unit + "]"));
    into.begin(1);
    for (int i = 0; i < heads.size(); i++) {
      put(into, i, heads.get(i));
    }
    into.end();
    rows.forEach(
        (group, values) -> {
          into.begin(Objects.requireNonNull(firstLines.get(group)));
          int at = 0;
          for (String cell : group) {
            put(into, at++, cell);
          }
          for (String name : units.keySet()) {
            Value value = values.get(name);
            into.at(value == null ? into.line() : value.line());
            if (value != null && value.isNumber()) {
              into.number(at++, value.number());
            } else {
              put(into, at++, value == null ? "" : value.text());
            }
          }
          into.end();
        });
  }

  /** The format of the rows that are handed on. */
  FileFormat.Settings ofRows(FileFormat.Settings declared) {
    FileFormat.Settings rowsFormat = declared.copy();
    rowsFormat.headingsLine = 1;
    rowsFormat.unitsRow = false;
    Set<String> texts = new LinkedHashSet<>(groupNames());
    texts.addAll(declared.texts);
    rowsFormat.texts = texts;
    return rowsFormat;
  }

  List<String> used() {
    List<String> used = new ArrayList<>(groupNames());
    units.forEach(
        (name, unit) -> {
          String heading = unit.isEmpty() ? name : name + " [" + unit + "]";
          String inFile = Objects.requireNonNull(spelled.get(name));
          used.add(inFile.equals(name) ? heading : "\"" + inFile + "\" as " + heading);
        });
    return used;
  }

  private List<String> groupNames() {
    return columns.groups().stream().map(name -> Headings.name(name, format)).toList();
  }

  private static void put(HeadedRecords into, int index, String cell) {
    into.cell(index, cell.toCharArray(), 0, cell.length(), true);
  }
}
