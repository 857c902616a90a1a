package org.brewchem.quality;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.brewchem.figure.Figure;
import org.brewchem.figure.StructuredAnswer;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.MapEntries;

/** What the records have in common: what is wrong with an answer, and its way out of a map. */
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

  static List<StructuredAnswer> answers(Map<String, ?> map, String key) {
    return MapEntries.maps(map, key).stream().map(StructuredAnswer::from).toList();
  }

  static StructuredAnswer answer(Map<String, ?> map, String key) {
    return StructuredAnswer.from(MapEntries.map(key, map.get(key)));
  }
}
