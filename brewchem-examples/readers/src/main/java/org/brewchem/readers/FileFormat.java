package org.brewchem.readers;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * How a file is written, as its reader declares it; nothing of it is guessed. Immutable.
 *
 * <p>{@link #standard()} is UTF-8, cells separated by commas, a point as decimal mark, a first line
 * of headings such as {@code calcium [mg/L]}, every column one of numbers, an empty cell where a
 * value is missing. Each method declares one thing that is otherwise.
 */
public final class FileFormat {

  private static final FileFormat STANDARD = new FileFormat(new Settings());

  final Settings settings;

  private FileFormat(Settings settings) {
    this.settings = settings;
  }

  /** What is declared; changed by {@link #with} alone, before anyone else sees it. */
  static final class Settings {

    Charset charset = StandardCharsets.UTF_8;
    char separator = ',';
    char decimalMark = '.';
    char thousands;
    char comment;
    boolean roundBrackets;
    boolean smallLitre;
    boolean unitsRow;
    boolean trimmed;
    boolean limits;
    boolean findTexts;
    long headingsLine = 1;
    Set<String> texts = Set.of();
    Set<String> missing = Set.of();
    Map<String, String> aliases = Map.of();
    Map<String, DateTimeFormatter> dates = Map.of();
    @Nullable LongColumns longColumns;

    Settings copy() {
      Settings copy = new Settings();
      copy.charset = charset;
      copy.separator = separator;
      copy.decimalMark = decimalMark;
      copy.thousands = thousands;
      copy.comment = comment;
      copy.roundBrackets = roundBrackets;
      copy.smallLitre = smallLitre;
      copy.unitsRow = unitsRow;
      copy.trimmed = trimmed;
      copy.limits = limits;
      copy.findTexts = findTexts;
      copy.headingsLine = headingsLine;
      copy.texts = texts;
      copy.missing = missing;
      copy.aliases = aliases;
      copy.dates = dates;
      copy.longColumns = longColumns;
      return copy;
    }
  }

  /** The headings of a file in long format. */
  record LongColumns(String parameter, String value, String unit, List<String> groups) {}

  private FileFormat with(Consumer<Settings> change) {
    Settings changed = settings.copy();
    change.accept(changed);
    return new FileFormat(changed);
  }

  /**
   * Returns the format that this library writes.
   *
   * @return the standard format
   */
  public static FileFormat standard() {
    return STANDARD;
  }

  /**
   * Declares the character set; UTF-8 otherwise.
   *
   * @param charset such as {@link StandardCharsets#ISO_8859_1}
   * @return the format with it
   */
  public FileFormat charset(Charset charset) {
    return with(s -> s.charset = charset);
  }

  /**
   * Declares what separates the cells; a comma otherwise.
   *
   * @param separator such as {@code ;} or a tabulator
   * @return the format with it
   * @throws IllegalArgumentException if it is a quote, a line end, a letter or a digit
   */
  public FileFormat separator(char separator) {
    if (separator == '"'
        || separator == '\n'
        || separator == '\r'
        || Character.isLetterOrDigit(separator)) {
      throw new IllegalArgumentException(
          "separator: '" + separator + "' is not possible; such as ',', ';' or a tabulator is");
    }
    return with(s -> s.separator = separator);
  }

  /**
   * Declares that the decimal mark is a comma; a point otherwise.
   *
   * @return the format with it
   */
  public FileFormat decimalComma() {
    return with(s -> s.decimalMark = ',');
  }

  /**
   * Declares what groups the digits of a number by three, as in {@code 1.234,5}; nothing otherwise.
   *
   * @param mark a point, a comma, a blank or an apostrophe
   * @return the format with it
   * @throws IllegalArgumentException if it is another character
   */
  public FileFormat thousands(char mark) {
    if (".,' \u00a0\u202f".indexOf(mark) < 0) {
      throw new IllegalArgumentException(
          "thousands separator: '"
              + mark
              + "' is not possible; a point, a comma, a blank or an apostrophe is");
    }
    return with(s -> s.thousands = mark);
  }

  /**
   * Declares that a line which starts with a mark is a comment; no line is otherwise.
   *
   * @param mark such as {@code #}
   * @return the format with it
   */
  public FileFormat comments(char mark) {
    return with(s -> s.comment = mark);
  }

  /**
   * Declares in which line the headings stand; lines before it are passed over.
   *
   * @param line 1 or more
   * @return the format with it
   * @throws IllegalArgumentException if the line is below 1
   */
  public FileFormat headingsInLine(long line) {
    if (line < 1) {
      throw new IllegalArgumentException(
          "line of the headings: " + line + " is not possible; 1 or more is allowed");
    }
    return with(s -> s.headingsLine = line);
  }

  /**
   * Declares that units stand in round brackets too, {@code calcium (mg/L)} beside {@code calcium
   * [mg/L]}.
   *
   * @return the format with it
   */
  public FileFormat roundBrackets() {
    return with(s -> s.roundBrackets = true);
  }

  /**
   * Declares that the litre is written {@code l} too, as in {@code mg/l}.
   *
   * @return the format with it
   */
  public FileFormat smallLitre() {
    return with(s -> s.smallLitre = true);
  }

  /**
   * Declares that the line under the headings holds the units.
   *
   * @return the format with it
   */
  public FileFormat unitsUnderHeadings() {
    return with(s -> s.unitsRow = true);
  }

  /**
   * Declares that blanks around a cell do not belong to it.
   *
   * @return the format with it
   */
  public FileFormat blanksAroundCells() {
    return with(s -> s.trimmed = true);
  }

  /**
   * Declares the languages of the headings, so that {@code Natrium} is known as {@code sodium}, and
   * their other names of units. What they know is a table, {@code headings.csv}.
   *
   * @param languages such as {@code de}, {@code fr}, {@code es}, {@code it}, {@code nl} or {@code
   *     en}
   * @return the format with them
   * @throws IllegalArgumentException if a language is not in the table
   */
  public FileFormat headingsIn(String... languages) {
    return with(
        s -> {
          Map<String, String> more = new LinkedHashMap<>(s.aliases);
          for (String language : languages) {
            more.putAll(HeadingNames.of(language));
          }
          s.aliases = Map.copyOf(more);
        });
  }

  /**
   * Declares another name of a heading.
   *
   * @param inFile the name as it stands in the file, without its unit; capitals do not matter
   * @param name the name that the library knows, such as {@code alkalinity}
   * @return the format with it
   */
  public FileFormat alias(String inFile, String name) {
    return with(
        s -> {
          Map<String, String> more = new LinkedHashMap<>(s.aliases);
          more.put(HeadingNames.key(inFile), name);
          s.aliases = Map.copyOf(more);
        });
  }

  /**
   * Declares what stands in a cell without a value; nothing otherwise.
   *
   * @param words such as {@code NA} or {@code n.d.}, to the letter
   * @return the format with them
   */
  public FileFormat missing(String... words) {
    return with(s -> s.missing = union(s.missing, words));
  }

  /**
   * Declares that a cell such as {@code <0.5} is below a limit. Its number is missing, and the
   * limit stands in a column of its own, {@code calcium below [mg/L]}, which a table has if any of
   * its rows has a limit.
   *
   * @return the format with it
   */
  public FileFormat limits() {
    return with(s -> s.limits = true);
  }

  /**
   * Declares columns of text.
   *
   * @param names their headings, as in the file or as the library knows them, without unit
   * @return the format with them
   */
  public FileFormat texts(String... names) {
    return with(s -> s.texts = union(s.texts, names));
  }

  /**
   * Asks that columns without a single number be found and taken as text, for which the file is
   * read twice.
   *
   * @return the format with it
   */
  public FileFormat textsFound() {
    return with(s -> s.findTexts = true);
  }

  /**
   * Declares a column of dates. It becomes a column of text in the form {@code 2026-11-26}.
   *
   * @param name its heading, as in the file or as the library knows it
   * @param pattern such as {@code dd.MM.uuuu}, after {@link DateTimeFormatter}
   * @return the format with it
   * @throws IllegalArgumentException if the pattern is none
   */
  public FileFormat dates(String name, String pattern) {
    DateTimeFormatter formatter =
        DateTimeFormatter.ofPattern(pattern, Locale.ROOT).withResolverStyle(ResolverStyle.STRICT);
    return with(
        s -> {
          Map<String, DateTimeFormatter> more = new LinkedHashMap<>(s.dates);
          more.put(name, formatter);
          s.dates = Map.copyOf(more);
        });
  }

  /**
   * Declares a file in long format: a value a line, with its parameter and its unit. The lines of
   * one sample become a row, the parameters its columns.
   *
   * @param parameter the heading of the parameters
   * @param value the heading of the values
   * @param unit the heading of the units
   * @param groups the headings of what tells a sample from others, one or more, such as {@code
   *     sample}
   * @return the format with it
   * @throws IllegalArgumentException if there is no group
   */
  public FileFormat longFormat(String parameter, String value, String unit, String... groups) {
    if (groups.length == 0) {
      throw new IllegalArgumentException(
          "groups: 0 is not possible; 1 or more is allowed, such as \"sample\"");
    }
    return with(s -> s.longColumns = new LongColumns(parameter, value, unit, List.of(groups)));
  }

  private static Set<String> union(Set<String> some, String... others) {
    Set<String> all = new LinkedHashSet<>(some);
    all.addAll(List.of(others));
    return Set.copyOf(all);
  }

  /**
   * Says what is declared.
   *
   * @return such as {@code UTF-8, cells separated by ';', decimal mark ',', units under headings}
   */
  @Override
  public String toString() {
    List<String> parts = new ArrayList<>();
    parts.add(settings.charset.name());
    parts.add("cells separated by '" + settings.separator + "'");
    parts.add("decimal mark '" + settings.decimalMark + "'");
    add(parts, settings.thousands != 0, "thousands by '" + settings.thousands + "'");
    add(parts, settings.comment != 0, "comments after '" + settings.comment + "'");
    add(parts, settings.headingsLine > 1, "headings in line " + settings.headingsLine);
    add(parts, settings.roundBrackets, "units in round brackets");
    add(parts, settings.unitsRow, "units under headings");
    add(parts, settings.smallLitre, "small litre");
    add(parts, settings.trimmed, "blanks around cells");
    add(parts, settings.limits, "limits");
    add(parts, settings.findTexts, "texts found");
    add(parts, !settings.aliases.isEmpty(), settings.aliases.size() + " names of headings");
    add(parts, !settings.missing.isEmpty(), "missing " + settings.missing);
    add(parts, !settings.texts.isEmpty(), "texts " + settings.texts);
    add(parts, !settings.dates.isEmpty(), "dates " + settings.dates.keySet());
    add(parts, settings.longColumns != null, "long format");
    return String.join(", ", parts);
  }

  private static void add(List<String> parts, boolean declared, String part) {
    if (declared) {
      parts.add(part);
    }
  }
}
