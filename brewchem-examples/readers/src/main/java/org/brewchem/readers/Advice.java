package org.brewchem.readers;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What may have to be declared of a file that cannot be read as it is declared. It is said, never
 * done.
 */
final class Advice {

  private static final int MOST_ROUNDS = 8;
  private static final int MOST_WORDS = 3;
  private static final String SEPARATORS = ";\t|,";
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[<\\s]*-?[0-9]+,[0-9]+\\s*");
  private static final Pattern GROUPED_BY_POINT =
      Pattern.compile("\\s*-?[0-9]{1,3}([.][0-9]{3})+(,[0-9]+)?\\s*");
  private static final Pattern GERMAN_DATE =
      Pattern.compile("\\s*[0-9]{1,2}[.][0-9]{1,2}[.][0-9]{4}\\s*");
  private static final Pattern ISO_DATE = Pattern.compile("\\s*[0-9]{4}-[0-9]{2}-[0-9]{2}\\s*");
  private static final Pattern UNIT = Pattern.compile("[(\\[]?(-|°.*|.*/.*|[mµ]S.*)[)\\]]?");
  private static final Pattern UNIT_IN_ROUND = Pattern.compile(".+ \\((°.*|.*/.*|-)\\)\\s*");
  private static final Pattern LITRE_SMALL = Pattern.compile(".*/l\\b.*");

  /** A declaration as it is written, and what it makes of a format. */
  private record Declaration(String code, UnaryOperator<FileFormat> apply) {}

  private Advice() {}

  /**
   * Finds declarations under which a trial reads better.
   *
   * @param trial reads the beginning of the file under another format
   */
  static List<String> of(
      FileFormat declared,
      ReadingReport.Draft faulty,
      Function<FileFormat, ReadingReport.Draft> trial) {
    Map<String, Declaration> all = new LinkedHashMap<>();
    FileFormat format = declared;
    ReadingReport.Draft seen = faulty;
    for (int round = 0; round < MOST_ROUNDS; round++) {
      List<Declaration> more = new ArrayList<>();
      for (Declaration one : declarations(format, seen)) {
        if (all.putIfAbsent(one.code(), one) == null) {
          more.add(one);
        }
      }
      if (more.isEmpty()) {
        break;
      }
      for (Declaration one : more) {
        format = one.apply().apply(format);
      }
      try {
        seen = trial.apply(format);
      } catch (FileFaultException e) {
        break;
      }
    }
    if (all.isEmpty()) {
      return List.of();
    }
    return List.of(
        "nothing is guessed; if the file is meant so, declare in its FileFormat: "
            + all.values().stream().map(Declaration::code).collect(Collectors.joining()),
        seen.faulty()
            ? "with that, the beginning of the file has other faults, the first: "
                + seen.faults().get(0)
            : "with that, the beginning of the file has no fault");
  }

  private static List<Declaration> declarations(FileFormat format, ReadingReport.Draft seen) {
    FileFormat.Settings s = format.settings;
    List<Declaration> found = new ArrayList<>();
    List<String> headings = seen.headings();
    Set<String> texts = new LinkedHashSet<>();
    seen.signs().values().forEach(texts::addAll);
    boolean bytes =
        headings.stream().anyMatch(Advice::isMarked) || texts.stream().anyMatch(Advice::isMarked);
    if (bytes && s.charset.equals(StandardCharsets.UTF_8)) {
      found.add(
          new Declaration(
              ".charset(StandardCharsets.ISO_8859_1)",
              f -> f.charset(StandardCharsets.ISO_8859_1)));
    }
    if (!headings.isEmpty() && headings.get(0).startsWith("#") && s.comment == 0) {
      found.add(new Declaration(".comments('#')", f -> f.comments('#')));
      return found;
    }
    if (headings.size() == 1) {
      for (int i = 0; i < SEPARATORS.length(); i++) {
        char c = SEPARATORS.charAt(i);
        if (c != s.separator && headings.get(0).indexOf(c) >= 0) {
          String shown = c == '\t' ? "\\t" : String.valueOf(c);
          found.add(new Declaration(".separator('" + shown + "')", f -> f.separator(c)));
          return found;
        }
      }
    }
    if (bytes) {
      return found;
    }
    headings(s, seen, found);
    cells(s, seen, texts, found);
    return found;
  }

  private static boolean isMarked(String text) {
    return text.indexOf(DecodedReader.MARK) >= 0;
  }

  private static void headings(
      FileFormat.Settings s, ReadingReport.Draft seen, List<Declaration> found) {
    List<String> headings = seen.headings();
    List<String> below = seen.firstRecord();
    long units = below.stream().filter(cell -> UNIT.matcher(cell.strip()).matches()).count();
    long filled = below.stream().filter(cell -> !cell.isBlank()).count();
    boolean unitsRow = !s.unitsRow && units > 0 && 2 * units >= filled;
    if (unitsRow) {
      found.add(new Declaration(".unitsUnderHeadings()", FileFormat::unitsUnderHeadings));
    }
    if (!s.roundBrackets && headings.stream().anyMatch(h -> UNIT_IN_ROUND.matcher(h).matches())) {
      found.add(new Declaration(".roundBrackets()", FileFormat::roundBrackets));
    }
    if (!s.smallLitre
        && (headings.stream().anyMatch(h -> LITRE_SMALL.matcher(h).matches())
            || below.stream().anyMatch(u -> LITRE_SMALL.matcher(u).matches()))) {
      found.add(new Declaration(".smallLitre()", FileFormat::smallLitre));
    }
    if (!s.trimmed && headings.stream().anyMatch(h -> !h.strip().equals(h))) {
      found.add(new Declaration(".blanksAroundCells()", FileFormat::blanksAroundCells));
    }
    if (s.aliases.isEmpty()) {
      language(headings, found);
    }
  }

  private static void language(List<String> headings, List<Declaration> found) {
    String best = "";
    long most = 1;
    for (String language : HeadingNames.languages()) {
      Map<String, String> names = HeadingNames.of(language);
      long known =
          headings.stream()
              .map(h -> h.replaceAll(" *[(\\[].*", "").strip())
              .filter(h -> names.containsKey(HeadingNames.key(h)))
              .filter(h -> !h.equals(names.get(HeadingNames.key(h))))
              .count();
      if (known > most) {
        best = language;
        most = known;
      }
    }
    if (!best.isEmpty()) {
      String language = best;
      found.add(new Declaration(".headingsIn(\"" + language + "\")", f -> f.headingsIn(language)));
    }
  }

  private static void cells(
      FileFormat.Settings s, ReadingReport.Draft seen, Set<String> texts, List<Declaration> found) {
    if (s.decimalMark == '.' && matches(texts, DECIMAL_COMMA)) {
      found.add(new Declaration(".decimalComma()", FileFormat::decimalComma));
    }
    if (s.decimalMark == ',' && s.thousands == 0 && matches(texts, GROUPED_BY_POINT)) {
      found.add(new Declaration(".thousands('.')", f -> f.thousands('.')));
    }
    if (!s.limits && texts.stream().anyMatch(text -> text.strip().startsWith("<"))) {
      found.add(new Declaration(".limits()", FileFormat::limits));
    }
    if (!s.trimmed && texts.stream().anyMatch(text -> !text.strip().equals(text))) {
      found.add(new Declaration(".blanksAroundCells()", FileFormat::blanksAroundCells));
    }
    if (found.isEmpty()) {
      seen.signs()
          .forEach((heading, faults) -> column(heading, faults, !seen.hasNumbers(heading), found));
    }
  }

  private static boolean matches(Set<String> texts, Pattern pattern) {
    return texts.stream().anyMatch(text -> pattern.matcher(text).matches());
  }

  /** A column of dates, of text, or of numbers with words among them. */
  private static void column(
      String heading, List<String> faults, boolean withoutNumbers, List<Declaration> found) {
    String name = heading.strip().replaceAll(" *[(\\[].*", "");
    String quoted = "\"" + name + "\"";
    if (faults.stream().allMatch(text -> GERMAN_DATE.matcher(text).matches())) {
      found.add(
          new Declaration(".dates(" + quoted + ", \"d.M.uuuu\")", f -> f.dates(name, "d.M.uuuu")));
    } else if (faults.stream().allMatch(text -> ISO_DATE.matcher(text).matches())) {
      found.add(
          new Declaration(
              ".dates(" + quoted + ", \"uuuu-MM-dd\")", f -> f.dates(name, "uuuu-MM-dd")));
    } else if (withoutNumbers) {
      found.add(new Declaration(".texts(" + quoted + ")", f -> f.texts(name)));
    } else {
      List<String> words =
          faults.stream()
              .map(String::strip)
              .filter(text -> !text.isEmpty() && !text.matches(".*[0-9].*"))
              .distinct()
              .limit(MOST_WORDS)
              .toList();
      if (!words.isEmpty()) {
        String list =
            words.stream()
                .map(word -> "\"" + Headings.shown(word) + "\"")
                .collect(Collectors.joining(", "));
        found.add(
            new Declaration(
                ".missing(" + list + ")", f -> f.missing(words.toArray(new String[0]))));
      }
    }
  }
}
