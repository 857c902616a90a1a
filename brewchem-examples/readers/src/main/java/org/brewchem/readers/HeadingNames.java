package org.brewchem.readers;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/** What the library's headings and units are called in several languages. */
final class HeadingNames {

  private static final Map<String, Map<String, String>> BY_LANGUAGE = load();

  private HeadingNames() {}

  /** Other names of one language, by {@link #key}. */
  static Map<String, String> of(String language) {
    Map<String, String> found = BY_LANGUAGE.get(language);
    if (found == null) {
      throw new IllegalArgumentException(
          "language: \"" + language + "\" is not possible; those known are " + languages());
    }
    return found;
  }

  static List<String> languages() {
    return List.copyOf(BY_LANGUAGE.keySet());
  }

  /** What two spellings of a heading share: letters, single blanks, no capitals. */
  static String key(String heading) {
    return heading.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }

  private static Map<String, Map<String, String>> load() {
    Map<String, Map<String, String>> all = new TreeMap<>();
    InputStream in = Objects.requireNonNull(HeadingNames.class.getResourceAsStream("headings.csv"));
    try (BufferedReader lines =
        new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      lines
          .lines()
          .filter(line -> !line.startsWith("#"))
          .skip(1)
          .map(line -> line.split(",", -1))
          .forEach(
              cells ->
                  all.computeIfAbsent(cells[0], key -> new LinkedHashMap<>())
                      .put(key(cells[1]), cells[2]));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all;
  }
}
