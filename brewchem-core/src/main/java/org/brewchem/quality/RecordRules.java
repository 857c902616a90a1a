package org.brewchem.quality;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.brewchem.figure.Figure;
import org.brewchem.figure.StructuredAnswer;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.jspecify.annotations.Nullable;

/** What the records have in common: what is wrong with an answer, and the way out of a map. */
final class RecordRules {

  private RecordRules() {}

  static boolean sameFigure(StructuredAnswer one, StructuredAnswer other) {
    return one.figure().equals(other.figure()) && one.parameters().equals(other.parameters());
  }

  static boolean isOf(Figure<?> figure, StructuredAnswer answer) {
    return figure.name().equals(answer.figure()) && figure.parameters().equals(answer.parameters());
  }

  static String title(StructuredAnswer answer) {
    return Excerpt.of(
        answer.figure()
            + answer.parameters().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(entry -> " " + entry.getKey() + " " + entry.getValue())
                .collect(Collectors.joining(",")));
  }

  static void checkNumbers(String of, StructuredAnswer answer) {
    String name = title(answer) + " of " + of;
    answer.number().ifPresent(number -> Checks.finite(name, number, answer.unit()));
    answer
        .standardUncertainty()
        .ifPresent(u -> Checks.nonNegative("standard uncertainty of " + name, u, answer.unit()));
  }

  static String text(Map<String, ?> map, String key) {
    if (map.get(key) instanceof String text) {
      return text;
    }
    throw notPossible(key, map.get(key), "a text");
  }

  static LocalDate date(Map<String, ?> map, String key) {
    return read(map, key, LocalDate::parse, "a date such as 2026-03-09");
  }

  static LocalDateTime time(Map<String, ?> map, String key) {
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

  static int whole(Map<String, ?> map, String key) {
    if (map.get(key) instanceof Number number && number.doubleValue() == number.intValue()) {
      return number.intValue();
    }
    throw notPossible(key, map.get(key), "a whole number");
  }

  static List<StructuredAnswer> answers(Map<String, ?> map, String key) {
    return maps(map, key).stream().map(StructuredAnswer::from).toList();
  }

  static StructuredAnswer answer(String key, @Nullable Object object) {
    return StructuredAnswer.from(map(key, object));
  }

  static List<Map<String, Object>> maps(Map<String, ?> map, String key) {
    if (map.get(key) instanceof List<?> list) {
      return list.stream().map(entry -> map(key, entry)).toList();
    }
    throw notPossible(key, map.get(key), "a list");
  }

  private static Map<String, Object> map(String key, @Nullable Object object) {
    if (object instanceof Map<?, ?> map) {
      Map<String, Object> entries = new LinkedHashMap<>();
      map.forEach((name, value) -> entries.put(String.valueOf(name), value));
      return entries;
    }
    throw notPossible(key, object, "a map");
  }

  private static IllegalArgumentException notPossible(
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
