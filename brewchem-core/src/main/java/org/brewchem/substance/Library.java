package org.brewchem.substance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.brewchem.internal.Excerpt;
import org.jspecify.annotations.Nullable;

/**
 * The constants of one class, found by name or formula. Filled while the class is initialised and
 * only read afterwards.
 */
final class Library<T> {

  private static final int MOST_NEAR_NAMES = 5;
  private static final int LONGEST_FORMULA = 40;
  private static final int LONGEST_LIST = 350;
  private static final int SHORTEST_PART = 3;

  private final String kind;
  private final String suffix;
  private final List<T> members = new ArrayList<>();
  private final List<String> names = new ArrayList<>();
  private final Map<String, T> byName = new LinkedHashMap<>();
  private final Map<Object, T> byFormula = new HashMap<>();
  private final Function<String, ?> formulaReader;

  /**
   * Makes an empty library.
   *
   * @param kind what it holds, such as "acid"
   * @param suffix names that end in it are also found without it; may be empty
   * @param formulaReader reads a formula, or throws IllegalArgumentException
   */
  Library(String kind, String suffix, Function<String, ?> formulaReader) {
    this.kind = kind;
    this.suffix = suffix;
    this.formulaReader = formulaReader;
  }

  /**
   * Adds a member under its name and others, and returns it. A name with the name of the trade in
   * brackets behind it counts as both.
   */
  T add(T member, @Nullable Object formula, String name, String... otherNames) {
    members.add(member);
    names.add(name);
    putName(name, member);
    for (String other : otherNames) {
      putName(other, member);
    }
    if (formula != null) {
      put(byFormula, formula, member);
    }
    return member;
  }

  private void putName(String name, T member) {
    put(byName, name, member);
    int bracket = name.indexOf(" (");
    if (bracket > 0 && name.endsWith(")")) {
      put(byName, name.substring(0, bracket), member);
      put(byName, name.substring(bracket + 2, name.length() - 1), member);
    }
    if (!suffix.isEmpty() && name.endsWith(suffix)) {
      put(byName, name.substring(0, name.length() - suffix.length()), member);
    }
  }

  private <K> void put(Map<K, T> map, K key, T member) {
    T before = map.put(key, member);
    if (before != null && before != member) {
      throw new IllegalStateException(kind + ": " + key + " names two of them");
    }
  }

  List<T> members() {
    return List.copyOf(members);
  }

  /** Returns the member with exactly this name. */
  Optional<T> withName(String name) {
    return Optional.ofNullable(byName.get(name));
  }

  /**
   * Returns the member with a name or a formula.
   *
   * @throws IllegalArgumentException if there is none, with near names
   */
  T find(String text) {
    return withName(text)
        .or(() -> Optional.ofNullable(formula(text)).map(byFormula::get))
        .orElseThrow(() -> new IllegalArgumentException(unknown(text)));
  }

  private @Nullable Object formula(String text) {
    if (text.length() > LONGEST_FORMULA) {
      return null;
    }
    try {
      return formulaReader.apply(text);
    } catch (IllegalArgumentException notAFormula) {
      return null;
    }
  }

  private String unknown(String text) {
    String shown = Excerpt.of(text, LONGEST_FORMULA);
    String wanted = shown.toLowerCase(Locale.ROOT).strip();
    List<String> near =
        byName.keySet().stream()
            .filter(name -> isNear(wanted, name.toLowerCase(Locale.ROOT)))
            .sorted(
                Comparator.comparingInt(name -> distance(wanted, name.toLowerCase(Locale.ROOT))))
            .map(name -> names.get(members.indexOf(byName.get(name))))
            .distinct()
            .limit(MOST_NEAR_NAMES)
            .toList();
    return kind
        + ": \""
        + shown
        + "\" is not possible; "
        + (near.isEmpty()
            ? "one of " + Excerpt.of(names.toString(), LONGEST_LIST)
            : "near it are " + near);
  }

  private static boolean isNear(String wanted, String name) {
    return distance(wanted, name) <= 1 + name.length() / 5
        || (wanted.length() >= SHORTEST_PART && name.contains(wanted))
        || (name.length() >= SHORTEST_PART && wanted.contains(name));
  }

  /** The least number of insertions, deletions and replacements (Levenshtein). */
  private static int distance(String from, String to) {
    int[] row = new int[to.length() + 1];
    for (int j = 0; j <= to.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= from.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= to.length(); j++) {
        int replaced = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[to.length()];
  }
}
