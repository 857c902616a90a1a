package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.mEqPerLPerPH;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Acid;
import org.junit.jupiter.api.Test;

/** Acid into a wort, and ranges by arithmetic. */
class WortBufferTest {

  private static List<MashCode> codes(WortBuffer buffer, double from, double to) {
    return buffer.notices(pH(from), pH(to)).stream()
        .map(notice -> (MashCode) notice.code())
        .toList();
  }

  private static final List<MashCode> ASSUMED = List.of(MashCode.ASSUMED_WORT_BUFFER);
  private static final List<MashCode> BEYOND =
      List.of(MashCode.ASSUMED_WORT_BUFFER, MashCode.BEYOND_WORT_BUFFER);

  /** A mean from 5.8 to 5.0 may be used a quarter of pH beside either end. */
  @Test
  void anAssumedBufferIsNoticedAndMoreSoBesideItsStretch() {
    WortBuffer knockOut = WortBuffer.assumedAtKnockOut();
    assertEquals(ASSUMED, codes(knockOut, 5.8, 5.0));
    for (double from : new double[] {5.55, 6.05}) {
      assertEquals(ASSUMED, codes(knockOut, from, 5.0), "from " + from);
    }
    for (double to : new double[] {4.75, 5.25}) {
      assertEquals(ASSUMED, codes(knockOut, 5.8, to), "to " + to);
    }
    for (double from : new double[] {5.54, 6.06}) {
      assertEquals(BEYOND, codes(knockOut, from, 5.0), "from " + from);
    }
    for (double to : new double[] {4.74, 5.26}) {
      assertEquals(BEYOND, codes(knockOut, 5.8, to), "to " + to);
    }
    assertEquals(ASSUMED, codes(WortBuffer.assumedForSouring(), 5.0, 3.4));
    assertEquals(BEYOND, codes(WortBuffer.assumedForSouring(), 5.8, 5.0));
    List<String> texts =
        knockOut.notices(pH(5.8), pH(4.5)).stream().map(notice -> notice.text()).toList();
    assertEquals(
        List.of(
            "nobody measured the buffer of this wort: it is assumed, capacity of the wort 0.440 to"
                + " 0.510 mEq/(L pH) per °P; titrate the wort",
            "the assumed buffer is a mean from pH 5.8 to pH 5, and that from pH 5.8 to pH 4.5 is"
                + " another"),
        texts);
  }

  private static WortBuffer measured(double least, double most) {
    return WortBuffer.measured(mEqPerLPerPH(least), mEqPerLPerPH(most), massPercent(12), "lot 7");
  }

  @Test
  void aMeasuredBufferIsNotNoticed() {
    WortBuffer own = measured(6, 7.2);
    assertEquals(List.of(), own.notices(pH(5.8), pH(3)));
    assertEquals("capacity of the wort 0.500 to 0.600 mEq/(L pH) per °P", own.toString());
    assertEquals(List.of("capacity of the wort, measured: lot 7"), own.perDegree().basis());
    assertThrows(IllegalArgumentException.class, () -> measured(7.2, 6));
  }

  /** 0.5 to 0.6 per degree, 10 degrees and half a pH: 2.5 to 3 mEq/L, and the free protons. */
  @Test
  void acidIsWhatTheWortTakesUpAndTheFreeProtons() {
    double free = 1000 * (Math.pow(10, -5) - Math.pow(10, -5.5));
    SourcedRange acid = measured(6, 7.2).acid(massPercent(10), pH(5.5), pH(5));
    assertEquals(2.5 + free, acid.lower(), 1e-4);
    assertEquals(3 + free, acid.upper(), 1e-4);
    assertEquals("acid into the wort", acid.quantity());
    assertEquals("mEq/L", acid.unit());
    assertEquals(measured(6, 7.2).perDegree().basis(), acid.basis());
  }

  /** Hydrochloric acid gives off one proton: 36.46 mg are a milliequivalent. */
  @Test
  void gramsPerHectolitreAreMilliequivalentsTimesTheEquivalentMass() {
    WortBuffer own = measured(6, 7.2);
    SourcedRange acid = own.acid(massPercent(10), pH(5.5), pH(5));
    SourcedRange grams = own.acid(Acid.HYDROCHLORIC, massPercent(10), pH(5.5), pH(5));
    assertEquals(acid.lower() * 3.646, grams.lower(), 2e-3);
    assertEquals(acid.upper() * 3.646, grams.upper(), 2e-3);
    assertEquals("g/hL", grams.unit());
    assertEquals(Acid.HYDROCHLORIC.name() + " into the wort", grams.quantity());
    assertEquals(
        List.of(
            "capacity of the wort, measured: lot 7",
            Acid.HYDROCHLORIC.name() + " gives off 1.00 Eq/mol at pH 5"),
        grams.basis());
  }

  @Test
  void theExtractIsMoreThan0AndAtMost35() {
    PH target = pH(5);
    assertTrue(measured(6, 7.2).acid(massPercent(35), pH(5.5), target).lower() > 8.7);
    assertTrue(measured(6, 7.2).acid(massPercent(0.01), pH(5.5), target).lower() > 0.0025);
    for (double no : new double[] {0, 35.01}) {
      String message =
          assertThrows(
                  IllegalArgumentException.class,
                  () -> measured(6, 7.2).acid(massPercent(no), pH(5.5), target))
              .getMessage();
      assertTrue(message.endsWith("more than 0 and at most 35 is allowed"), message);
    }
    assertEquals(
        "target: pH 5.5 is not possible; a pH below the measured pH 5.5 is needed, for acid lowers"
            + " it",
        assertThrows(
                IllegalArgumentException.class,
                () -> measured(6, 7.2).acid(massPercent(12), pH(5.5), pH(5.5)))
            .getMessage());
  }

  private static SourcedRange range(double lower, double upper, String... basis) {
    return new SourcedRange("own", lower, upper, "pH", List.of(basis));
  }

  @Test
  void theEndsBelongToARange() {
    SourcedRange range = range(5.2, 5.6, "own");
    assertTrue(range.contains(5.2) && range.contains(5.6) && range.contains(5.4));
    assertFalse(range.contains(5.19));
    assertFalse(range.contains(5.61));
    assertThrows(IllegalArgumentException.class, () -> range.contains(Double.NaN));
    assertEquals(5.2, range(5.2, 5.2, "own").upper(), "a range of one number");
    assertEquals(
        "own 5.20 to 5.60", new SourcedRange("own", 5.2, 5.6, "", List.of("x")).toString());
    assertEquals("own 5.20 to 5.60 pH", range.toString());
  }

  /** 5.2 to 5.6 and 0.1 to 0.3: the ends add up; of a difference they cross. */
  @Test
  void rangesAreAddedAndSubtractedEndByEnd() {
    SourcedRange one = range(5.2, 5.6, "first", "both");
    SourcedRange other = range(0.1, 0.3, "both", "second");
    SourcedRange sum = one.plus(other, "sum");
    assertEquals(5.3, sum.lower(), 1e-12);
    assertEquals(5.9, sum.upper(), 1e-12);
    assertEquals(List.of("first", "both", "second"), sum.basis());
    assertEquals("sum 5.30 to 5.90 pH", sum.toString());
    SourcedRange difference = one.minus(other, "difference");
    assertEquals(4.9, difference.lower(), 1e-12);
    assertEquals(5.5, difference.upper(), 1e-12);
    assertEquals(List.of("first", "both", "second"), difference.basis());
    SourcedRange twice = one.times(2, "twice", "mEq/L");
    assertEquals("twice 10.4 to 11.2 mEq/L", twice.toString());
    assertEquals(one.basis(), twice.basis());
  }

  /** A row with and one without conditions, one without a note. */
  @Test
  void aPrintedRangeSaysWhereItHoldsAndWhereItIsPrinted() {
    assertEquals(
        List.of("pH of the beer, ales: macwilliam-1975, abstract (seen)"),
        WortRanges.named("beer ale").basis());
    assertEquals(
        List.of(
            "fall of pH in fermentation: macwilliam-1975, abstract (seen); \"about 1\"; the width"
                + " is our choice"),
        WortRanges.named("fall in fermentation").basis());
    assertEquals("mg/L per °P", WortRanges.named("malt chloride").unit());
    assertEquals(
        "wort-ranges.csv: there is no item tea",
        assertThrows(IllegalStateException.class, () -> WortRanges.named("tea")).getMessage());
  }
}
