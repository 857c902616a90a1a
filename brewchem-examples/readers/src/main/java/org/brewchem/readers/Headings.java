package org.brewchem.readers;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.brewchem.table.Table;
import org.brewchem.units.ColumnHeader;
import org.brewchem.units.UnitTextException;
import org.jspecify.annotations.Nullable;

/**
 * The headings of a file as its format reads them: which cell goes into which column. Immutable.
 */
final class Headings {

  private static final Pattern ROUND = Pattern.compile("(.*\\S) +\\(([^()]+)\\)");
  private static final Pattern SMALL_LITRE = Pattern.compile("\\b([mµuhcd]?)l\\b");
  private static final String NO_UNIT = "-";

  /** What a column holds. */
  enum Kind {
    NUMBER,
    TEXT,
    DATE,
    NONE
  }

  /**
   * One column of the file.
   *
   * @param inFile the heading as it stands there
   * @param heading the heading in the table
   * @param index its index among the columns of numbers, or among those of text
   */
  record Place(
      String inFile, String heading, Kind kind, int index, @Nullable DateTimeFormatter dates) {

    boolean isText() {
      return kind == Kind.TEXT || kind == Kind.DATE;
    }
  }

  private final List<Place> places;
  private final List<String> numbers;
  private final List<String> texts;

  private Headings(List<Place> places, List<String> numbers, List<String> texts) {
    this.places = places;
    this.numbers = numbers;
    this.texts = texts;
  }

  List<Place> places() {
    return places;
  }

  Place place(int cell) {
    return places.get(cell);
  }

  int size() {
    return places.size();
  }

  List<String> numbers() {
    return numbers;
  }

  Table.Builder builder() {
    return Table.withHeadings(numbers, texts);
  }

  List<String> used() {
    List<String> used = new ArrayList<>();
    for (Place place : places) {
      if (place.kind() != Kind.NONE) {
        used.add(
            place.inFile().equals(place.heading())
                ? place.heading()
                : "\"" + place.inFile() + "\" as " + place.heading());
      }
    }
    return used;
  }

  /** A heading taken apart. */
  private record Named(String name, Optional<String> unit) {

    String heading() {
      return unit.map(symbol -> name + " [" + symbol + "]").orElse(name);
    }
  }

  /**
   * Reads the headings. What is wrong with them becomes faults of their line, and the column is
   * left out.
   *
   * @param units the cells of the line of units, empty if there is none
   * @param found the indices of columns that are found to be text
   */
  static Headings read(
      List<String> headings,
      List<String> units,
      Set<Integer> found,
      FileFormat.Settings format,
      ReadingReport.Draft draft,
      long line) {
    List<Place> places = new ArrayList<>();
    List<String> numbers = new ArrayList<>();
    List<String> texts = new ArrayList<>();
    Set<String> names = new LinkedHashSet<>();
    Set<String> known = new LinkedHashSet<>();
    for (int cell = 0; cell < headings.size(); cell++) {
      String inFile = headings.get(cell);
      String unit = cell < units.size() ? units.get(cell) : "";
      Place none = new Place(inFile, "", Kind.NONE, -1, null);
      if (inFile.indexOf(DecodedReader.MARK) >= 0) {
        draft.fault(line, shown(inFile), undecodable(format));
        places.add(none);
        continue;
      }
      if (inFile.indexOf(DecodedReader.BYTE_ORDER_MARK) >= 0) {
        draft.fault(
            line,
            shown(inFile),
            "holds a byte order mark, which is not seen; only the first character of a file can be"
                + " one");
        places.add(none);
        continue;
      }
      if (unit.indexOf(DecodedReader.MARK) >= 0) {
        draft.fault(line, shown(inFile), "unit \"" + shown(unit) + "\" " + undecodable(format));
        places.add(none);
        continue;
      }
      if (inFile.isBlank()) {
        places.add(none);
        continue;
      }
      Named named;
      try {
        named = named(inFile, unit, format);
      } catch (UnitTextException e) {
        draft.fault(line, "", String.valueOf(e.getMessage()));
        places.add(none);
        continue;
      }
      Set<String> spellings =
          new LinkedHashSet<>(List.of(inFile, inFile.strip(), taken(inFile).name(), named.name()));
      known.addAll(spellings);
      DateTimeFormatter dates = declared(format, spellings);
      boolean text = found.contains(cell) || spellings.stream().anyMatch(format.texts::contains);
      Kind kind = dates != null ? Kind.DATE : text ? Kind.TEXT : Kind.NUMBER;
      if (!names.add(named.name())) {
        draft.fault(line, "", "column \"" + named.name() + "\" stands twice");
        places.add(none);
        continue;
      }
      List<String> list = kind == Kind.NUMBER ? numbers : texts;
      String heading = kind == Kind.NUMBER ? named.heading() : named.name();
      places.add(new Place(inFile, heading, kind, list.size(), dates));
      list.add(heading);
    }
    Set<String> declared = new LinkedHashSet<>(format.texts);
    declared.addAll(format.dates.keySet());
    for (String name : declared) {
      if (!known.contains(name)) {
        draft.fault(line, "", "has no column \"" + name + "\": " + shown(headings.toString()));
      }
    }
    return new Headings(List.copyOf(places), List.copyOf(numbers), List.copyOf(texts));
  }

  static String undecodable(FileFormat.Settings format) {
    return "holds bytes that are not " + format.charset.name();
  }

  static String shown(String text) {
    String plain = text.replace(DecodedReader.MARK, '\uFFFD');
    return plain.length() > 200 ? plain.substring(0, 200) + "..." : plain;
  }

  private static @Nullable DateTimeFormatter declared(
      FileFormat.Settings format, Set<String> spellings) {
    for (String name : spellings) {
      DateTimeFormatter formatter = format.dates.get(name);
      if (formatter != null) {
        return formatter;
      }
    }
    return null;
  }

  /** Name and unit of one heading, with what is declared of both. */
  private static Named named(String inFile, String below, FileFormat.Settings format) {
    String text = format.trimmed ? inFile.strip() : inFile;
    Matcher round = ROUND.matcher(text);
    boolean isRound = format.roundBrackets && text.indexOf('[') < 0 && round.matches();
    ColumnHeader header = ColumnHeader.parse(isRound ? round.group(1) : text);
    Named named =
        new Named(header.name(), isRound ? Optional.of(round.group(2).strip()) : header.unit());
    String unit = below.strip();
    if ((unit.startsWith("(") && unit.endsWith(")"))
        || (unit.startsWith("[") && unit.endsWith("]"))) {
      unit = unit.substring(1, unit.length() - 1).strip();
    }
    if (!unit.isEmpty()) {
      named = new Named(named.name(), Optional.of(unit));
    }
    return new Named(
        name(named.name(), format),
        named.unit().filter(symbol -> !symbol.equals(NO_UNIT)).map(symbol -> unit(symbol, format)));
  }

  /** The name, whatever is declared of brackets. */
  private static Named taken(String inFile) {
    String text = inFile.strip();
    Matcher round = ROUND.matcher(text);
    int square = text.indexOf(" [");
    return new Named(
        square > 0 ? text.substring(0, square) : round.matches() ? round.group(1) : text,
        Optional.empty());
  }

  /** A name as the library knows it. */
  static String name(String inFile, FileFormat.Settings format) {
    return format.aliases.getOrDefault(HeadingNames.key(inFile), inFile);
  }

  /** A unit as the library knows it. */
  static String unit(String inFile, FileFormat.Settings format) {
    String known = format.aliases.getOrDefault(HeadingNames.key(inFile), inFile);
    return format.smallLitre ? SMALL_LITRE.matcher(known).replaceAll("$1L") : known;
  }
}
