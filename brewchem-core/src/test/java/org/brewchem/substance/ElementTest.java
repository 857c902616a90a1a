package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class ElementTest {

  private static final Pattern INTERVAL = Pattern.compile("standard: \\[([0-9.]+), ([0-9.]+)]");
  private static final Pattern VALUE = Pattern.compile("standard: ([0-9.]+)\\([0-9]+\\)");

  /** The standard of 2021, an interval or a value, stands beside the abridged weight. */
  @Test
  void abridgedWeightsAgreeWithTheStandardBesideThem() {
    int checked = 0;
    for (ResourceTable.Row row : ResourceTable.read("elements.csv")) {
      Element element = Element.of(row.text("symbol"));
      double weight = element.molarMass().inGramsPerMole();
      double uncertainty = element.uncertaintyInGramsPerMole();
      assertTrue(uncertainty > 0.0 && uncertainty < 0.002 * weight, element::name);
      Matcher interval = INTERVAL.matcher(row.text("note"));
      Matcher value = VALUE.matcher(row.text("note"));
      if (interval.matches()) {
        double low = Double.parseDouble(interval.group(1));
        double high = Double.parseDouble(interval.group(2));
        assertTrue(
            weight - uncertainty <= low + 1e-9 && weight + uncertainty >= high - 1e-9,
            element::name);
        checked++;
      } else if (value.matches()) {
        assertEquals(Double.parseDouble(value.group(1)), weight, uncertainty, element::name);
        checked++;
      }
    }
    assertEquals(12, checked);
  }

  @Test
  void anUnknownElementIsNamed() {
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> Element.of("Xx"));
    assertEquals("element: \"Xx\" is not in the table of atomic weights", error.getMessage());
  }

  @Test
  void namesAndSymbolsAreUnique() {
    long names =
        ResourceTable.read("elements.csv").stream()
            .map(row -> Element.of(row.text("symbol")).name())
            .distinct()
            .count();
    assertEquals(21, names);
  }
}
