package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.brewchem.OutOfRangeException;
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
    assertRefused(
        "x".repeat(119) + "…: an empty text is not possible",
        () -> Checks.notBlank("x".repeat(5000), " "));
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

  @Test
  void boundsThemselvesAreAllowed() {
    assertEquals(1e100, Checks.finite("mass", 1e100, "g"));
    assertEquals(-1e100, Checks.finite("mass", -1e100, "g"));
    assertEquals(1e-300, Checks.positive("mass", 1e-300, "g"));
    assertEquals(1, Checks.inRange("share", 1, "", 0, 1));
    assertRefused(
        "mass: 1.1E100 g is not possible; at most 1e100 is allowed",
        () -> Checks.finite("mass", 1.1e100, "g"));
    assertRefused(
        "mass: -1.1E100 g is not possible; at most 1e100 is allowed",
        () -> Checks.finite("mass", -1.1e100, "g"));
  }

  @Test
  void anIndexIsOneOfAnElement() {
    assertEquals(0, Checks.index("row", 0, 3));
    assertEquals(2, Checks.index("row", 2, 3));
    assertRefused("row: -1 is not possible; 0 to 2 is allowed", () -> Checks.index("row", -1, 3));
    assertRefused("row: 3 is not possible; 0 to 2 is allowed", () -> Checks.index("row", 3, 3));
    assertRefused("row: 0 is not possible; none is allowed", () -> Checks.index("row", 0, 0));
  }

  @Test
  void wholeNumbersAreWrittenAsSuchWhileADoubleCountsThem() {
    assertRefused(
        "rows: -999999999999999 is not possible; 0 or more is allowed",
        () -> Checks.nonNegative("rows", -999999999999999.0, ""));
    assertRefused(
        "rows: -1.0E15 is not possible; 0 or more is allowed",
        () -> Checks.nonNegative("rows", -1e15, ""));
    assertRefused(
        "rows: -0.5 is not possible; 0 or more is allowed",
        () -> Checks.nonNegative("rows", -0.5, ""));
  }

  @Test
  void theRefusalKeepsItsParts() {
    OutOfRangeException refusal = Checks.outOfRange("pH", -4, "", "-3 to 17");
    assertEquals("pH", refusal.argument());
    assertEquals(-4, refusal.value());
    assertEquals("", refusal.unit());
    assertEquals("-3 to 17", refusal.allowed());
  }

  private static void assertRefused(String message, Executable check) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, check).getMessage());
  }
}
