package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class MapEntriesTest {

  private static final Map<String, Object> MAP =
      Map.of(
          "name",
          "Pale 12",
          "pH",
          5.4,
          "count",
          3.0,
          "labels",
          List.of("a", 2),
          "units",
          Map.of("pH", 1),
          "rows",
          List.of(Map.of("pH", 5.4), Map.of()),
          "day",
          "2026-03-09",
          "time",
          "2026-03-09T14:30");

  private static void refused(String message, Executable reading) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, reading).getMessage());
  }

  @Test
  void entriesComeBackAsTheirKind() {
    assertEquals("Pale 12", MapEntries.text(MAP, "name"));
    assertEquals(OptionalDouble.of(5.4), MapEntries.number(MAP, "pH"));
    assertEquals(OptionalDouble.empty(), MapEntries.number(MAP, "missing"));
    assertEquals(3, MapEntries.whole(MAP, "count"));
    assertEquals(List.of("a", "2"), MapEntries.texts(MAP, "labels"));
    assertEquals(Map.of("pH", "1"), MapEntries.textsByName(MAP, "units"));
    assertEquals(List.of(Map.of("pH", 5.4), Map.of()), MapEntries.maps(MAP, "rows"));
    assertEquals(Map.of("1", 2), MapEntries.map("units", Map.of(1, 2)));
    assertEquals(LocalDate.of(2026, 3, 9), MapEntries.date(MAP, "day"));
    assertEquals(LocalDateTime.of(2026, 3, 9, 14, 30), MapEntries.time(MAP, "time"));
  }

  @Test
  void whatIsMissingOrOfAnotherKindIsNamed() {
    refused("beer: nothing is not possible; a text is needed", () -> MapEntries.text(MAP, "beer"));
    refused("pH: 5.4 is not possible; a text is needed", () -> MapEntries.text(MAP, "pH"));
    refused(
        "name: Pale 12 is not possible; a number is needed", () -> MapEntries.number(MAP, "name"));
    Map<String, Object> withNull = new HashMap<>();
    withNull.put("pH", null);
    refused(
        "pH: nothing is not possible; a number is needed", () -> MapEntries.number(withNull, "pH"));
    refused(
        "u: Infinity is not possible; a finite number is allowed",
        () -> MapEntries.number(Map.of("u", Double.POSITIVE_INFINITY), "u"));
    refused("pH: 5.4 is not possible; a whole number is needed", () -> MapEntries.whole(MAP, "pH"));
    refused(
        "beer: nothing is not possible; a whole number is needed",
        () -> MapEntries.whole(MAP, "beer"));
    refused("name: Pale 12 is not possible; a list is needed", () -> MapEntries.texts(MAP, "name"));
    refused("name: Pale 12 is not possible; a list is needed", () -> MapEntries.maps(MAP, "name"));
    refused("labels: a is not possible; a map is needed", () -> MapEntries.maps(MAP, "labels"));
    refused(
        "name: Pale 12 is not possible; a map is needed",
        () -> MapEntries.textsByName(MAP, "name"));
    refused(
        "time: 2026-03-09T14:30 is not possible; a date such as 2026-03-09 is needed",
        () -> MapEntries.date(MAP, "time"));
    refused(
        "day: 2026-03-09 is not possible; a time such as 2026-03-09T14:30 is needed",
        () -> MapEntries.time(MAP, "day"));
  }

  @Test
  void theCauseOfADateThatIsNoneIsKept() {
    assertInstanceOf(
        DateTimeParseException.class,
        assertThrows(IllegalArgumentException.class, () -> MapEntries.date(MAP, "name"))
            .getCause());
  }
}
