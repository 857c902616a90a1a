package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumberTextTest {

  @ParameterizedTest
  @CsvSource({
    "0.0, 0",
    "5.3, 5.3",
    "215.0, 215",
    "-0.25, -0.25",
    "14.620000000000001, 14.62",
    "214.99999999999997, 215",
    "0.000001, 0.000001",
    "0.00000015, 1.5E-7",
    "-0.00000015, -1.5E-7",
    "1234567890.5, 1234570000",
    "8.07775176923, 8.07775",
    "1e10, 1E10",
    "9999999999.9999, 1E10",
    "6.02214076e23, 6.02214E23",
    "4.9e-324, 4.94066E-324"
  })
  void plainWritesUpToSixDigits(double value, String text) {
    assertEquals(text, NumberText.plain(value));
  }

  @ParameterizedTest
  @CsvSource({"8.07775176923, 4, 8.0778", "8.2, 4, 8.2", "-0.00001, 4, 0", "7, 0, 7"})
  void plainRoundsToDecimals(double value, int decimals, String text) {
    assertEquals(text, NumberText.plain(value, decimals));
  }

  @ParameterizedTest
  @CsvSource({
    "0, less than 0.01 %",
    "5.5e-53, less than 0.01 %",
    "0.0001, 0.010 %",
    "0.00011, 0.011 %",
    "0.0228, 2.3 %",
    "0.118, 12 %",
    "0.99, 99 %",
    "0.9949, 99 %",
    "0.995, 99.50 %",
    "0.9972, 99.72 %",
    "0.9999, 99.99 %",
    "1, more than 99.99 %"
  })
  void aChanceIsReadable(double chance, String text) {
    assertEquals(text, NumberText.chance(chance));
  }

  @Property
  void exactReadsBackToTheLastBit(@ForAll double value) {
    assertEquals(value + 0.0, Double.parseDouble(NumberText.exact(value)) + 0.0);
  }

  @ParameterizedTest
  @CsvSource({
    "2.8, 3, 2.80",
    "2.636, 2, 2.6",
    "2.675, 3, 2.68",
    "-2.675, 3, -2.68",
    "9.996, 3, 10.0",
    "1234.0, 2, 1200",
    "0.00123456, 3, 0.00123",
    "0.0, 3, 0.00",
    "0.0, 1, 0",
    "5.0, 1, 5"
  })
  void significantKeepsTrailingZeros(double value, int digits, String text) {
    assertEquals(text, NumberText.significant(value, digits));
  }

  @ParameterizedTest
  @CsvSource({
    "4.2, 2, 4.20",
    "4.205, 2, 4.21",
    "-4.205, 2, -4.21",
    "-0.004, 2, 0.00",
    "15.0, 0, 15",
    "0.5, 0, 1"
  })
  void decimalsKeepTrailingZeros(double value, int decimals, String text) {
    assertEquals(text, NumberText.decimals(value, decimals));
  }

  @Test
  void oneThingIsCountedInTheSingular() {
    assertEquals("1 row is", NumberText.count(1, "row is", "rows are"));
    assertEquals("0 rows are", NumberText.count(0, "row is", "rows are"));
    assertEquals("11 rows are", NumberText.count(11, "row is", "rows are"));
  }

  @Test
  void digitsOutOfRangeAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> NumberText.significant(1, 0));
    assertThrows(IllegalArgumentException.class, () -> NumberText.significant(1, 16));
    assertThrows(IllegalArgumentException.class, () -> NumberText.decimals(1, -1));
    assertThrows(IllegalArgumentException.class, () -> NumberText.decimals(1, 16));
  }

  @Property
  void plainTextReadsBackToTheSameText(@ForAll double value) {
    double back = Double.parseDouble(NumberText.plain(value));
    assertEquals(value, back, Math.max(5.001e-6 * Math.abs(value), Double.MIN_VALUE));
    if (Double.isFinite(back)) {
      assertEquals(NumberText.plain(value), NumberText.plain(back));
    }
  }
}
