package org.brewchem.internal;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Reads the entries of plain maps, also after a way through JSON, and names what is none. */
public final class MapEntries {

  private MapEntries() {}

  /**
   * Reads a text.
   *
   * @param map the map
   * @param key the name of the entry
   * @return the text
   * @throws IllegalArgumentException if it is missing or of another kind
   */
  public static String text(Map<String, ?> map, String key) {
    if (map.get(key) instanceof String text) {
      return text;
    }
    throw notPossible(key, map.get(key), "a text");
  }

  /**
   * Reads a number that may be missing.
   *
   * @param map the map
   * @param key the name of the entry
   * @return the number; empty without an entry
   * @throws IllegalArgumentException if it is of another kind, infinite or NaN
   */
  public static OptionalDouble number(Map<String, ?> map, String key) {
    if (!map.containsKey(key)) {
      return OptionalDouble.empty();
    }
    if (map.get(key) instanceof Number number) {
      return OptionalDouble.of(Checks.finite(key, number.doubleValue(), ""));
    }
    throw notPossible(key, map.get(key), "a number");
  }

  /**
   * Reads a whole number.
   *
   * @param map the map
   * @param key the name of the entry
   * @return the number
   * @throws IllegalArgumentException if it is missing or of another kind
   */
  public static int whole(Map<String, ?> map, String key) {
    if (map.get(key) instanceof Number number && number.doubleValue() == number.intValue()) {
      return number.intValue();
    }
    throw notPossible(key, map.get(key), "a whole number");
  }

  /**
   * Reads a list of texts.
   *
   * @param map the map
   * @param key the name of the entry
   * @return what each of the list prints
   * @throws IllegalArgumentException if it is missing or of another kind
   */
  public static List<String> texts(Map<String, ?> map, String key) {
    if (map.get(key) instanceof List<?> list) {
      return list.stream().map(String::valueOf).toList();
    }
    throw notPossible(key, map.get(key), "a list");
  }

  /**
   * Reads a map of texts by name.
   *
   * @param map the map
   * @param key the name of the entry
   * @return what each of the map prints
   * @throws IllegalArgumentException if it is missing or of another kind
   */
  public static Map<String, String> textsByName(Map<String, ?> map, String key) {
    Map<String, String> texts = new LinkedHashMap<>();
    map(key, map.get(key)).forEach((name, value) -> texts.put(name, String.valueOf(value)));
    return texts;
  }

  /**
   * Reads a list of maps.
   *
   * @param map the map
   * @param key the name of the entry
   * @return the maps
   * @throws IllegalArgumentException if it is missing or of another kind
   */
  public static List<Map<String, Object>> maps(Map<String, ?> map, String key) {
    if (map.get(key) instanceof List<?> list) {
      return list.stream().map(entry -> map(key, entry)).toList();
    }
    throw notPossible(key, map.get(key), "a list");
  }

  /**
   * Takes what should be a map.
   *
   * @param key the name of the entry, for the message
   * @param object what stands there
   * @return the map, its keys as texts
   * @throws IllegalArgumentException if it is none
   */
  public static Map<String, Object> map(String key, @Nullable Object object) {
    if (object instanceof Map<?, ?> map) {
      Map<String, Object> entries = new LinkedHashMap<>();
      map.forEach((name, value) -> entries.put(String.valueOf(name), value));
      return entries;
    }
    throw notPossible(key, object, "a map");
  }

  /**
   * Reads a day as ISO 8601 has it.
   *
   * @param map the map
   * @param key the name of the entry
   * @return the day
   * @throws IllegalArgumentException if it is missing or none
   */
  public static LocalDate date(Map<String, ?> map, String key) {
    return read(map, key, LocalDate::parse, "a date such as 2026-03-09");
  }

  /**
   * Reads a day and time as ISO 8601 has it.
   *
   * @param map the map
   * @param key the name of the entry
   * @return the time
   * @throws IllegalArgumentException if it is missing or none
   */
  public static LocalDateTime time(Map<String, ?> map, String key) {
    return read(map, key, LocalDateTime::parse, "a time such as 2026-03-09T14:30");
  }

  private static <T> T read(
      Map<String, ?> map, String key, Function<String, T> reader, String needed) {
    String text = text(map, key);
    try {
      return reader.apply(text);
    } catch (DateTimeParseException e) {
      IllegalArgumentException refusal = notPossible(key, text, needed);
      refusal.initCause(e);
      throw refusal;
    }
  }

  /**
   * Makes the refusal of an entry.
   *
   * @param key the name of the entry
   * @param value what stands there
   * @param needed what would be allowed
   * @return the exception, to be thrown
   */
  public static IllegalArgumentException notPossible(
      String key, @Nullable Object value, String needed) {
    return new IllegalArgumentException(
        key
            + ": "
            + Excerpt.of(Objects.toString(value, "nothing"))
            + " is not possible; "
            + needed
            + " is needed");
  }
}
