package org.brewchem.figure;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.brewchem.internal.Excerpt;

/** Reads the entries of plain maps, also after a way through JSON. */
final class MapEntries {

  private MapEntries() {}

  static <T> T entry(Map<String, ?> map, String key, Class<T> type) {
    Object value = map.get(key);
    if (!type.isInstance(value)) {
      throw new IllegalArgumentException(
          key
              + ": "
              + Excerpt.of(Objects.toString(value, "nothing"))
              + " is not possible; a "
              + type.getSimpleName()
              + " is needed");
    }
    return type.cast(value);
  }

  static Origin origin(Map<String, ?> map, String key) {
    String text = entry(map, key, String.class);
    return Arrays.stream(Origin.values())
        .filter(origin -> origin.name().equals(text))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    key
                        + ": "
                        + Excerpt.of(text)
                        + " is not possible; one of "
                        + Arrays.toString(Origin.values())
                        + " is needed"));
  }

  static OptionalDouble number(Map<String, ?> map, String key) {
    return map.containsKey(key)
        ? OptionalDouble.of(entry(map, key, Number.class).doubleValue())
        : OptionalDouble.empty();
  }

  static List<String> texts(Map<String, ?> map, String key) {
    return ((List<?>) entry(map, key, List.class)).stream().map(String::valueOf).toList();
  }

  static Map<String, String> textsByName(Map<String, ?> map, String key) {
    Map<String, String> texts = new LinkedHashMap<>();
    entry(map, key, Map.class)
        .forEach((name, value) -> texts.put(String.valueOf(name), String.valueOf(value)));
    return texts;
  }
}
