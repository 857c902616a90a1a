package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChecksTest {

  @Property
  void aFiniteValueComesBackUnchanged(
      @ForAll @DoubleRange(min = -1e100, max = 1e100) double value) {
    assertEquals(value + 0.0, Checks.finite("mass", value, "g"));
    assertEquals(Math.abs(value) + 0.0, Checks.nonNegative("mass", Math.abs(value), "g"));
    assertEquals(value + 0.0, Checks.inRange("mass", value, "g", value, value));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void whatIsNotFiniteIsRefusedByEveryCheck(double value) {
    String message = "mass: " + value + " g is not possible; a finite number is allowed";
    assertRefused(message, () -> Checks.finite("mass", value, "g"));
    assertRefused(message, () -> Checks.nonNegative("mass", value, "g"));
    assertRefused(message, () -> Checks.positive("mass", value, "g"));
    assertRefused(message, () -> Checks.inRange("mass", value, "g", 0.0, 1.0));
  }

  @Test
  void theMessageNamesArgumentValueUnitAndWhatIsAllowed() {
    assertRefused(
        "calcium: -3 mg/L is not possible; 0 or more is allowed",
        () -> Checks.nonNegative("calcium", -3.0, "mg/L"));
    assertRefused(
        "sample volume: 0 mL is not possible; more than 0 is allowed",
        () -> Checks.positive("sample volume", 0.0, "mL"));
    assertRefused(
        "temperature: 101.5 °C is not possible; 0 to 100 °C is allowed",
        () -> Checks.inRange("temperature", 101.5, "°C", 0.0, 100.0));
    assertRefused(
        "pH: -4 is not possible; -3 to 17 is allowed",
        () -> Checks.inRange("pH", -4.0, "", -3.0, 17.0));
    assertRefused("name: an empty text is not possible", () -> Checks.notBlank("name", " "));
  }

  @Test
  void negativeZeroBecomesZero() {
    assertEquals(0.0, Checks.finite("charge", -0.0, "mEq/L"));
    assertEquals(0.0, Checks.nonNegative("mass", -0.0, "g"));
    assertEquals(0.0, Checks.inRange("mass", -0.0, "g", 0.0, 1.0));
  }

  @Test
  void aTextComesBackUnchanged() {
    assertEquals(" lactic", Checks.notBlank("name", " lactic"));
  }

  private static void assertRefused(String message, Executable check) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, check).getMessage());
  }
}
