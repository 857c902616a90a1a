package org.brewchem.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TracedTest {

  private static final Source A = Source.of("a", 3, 0.03, "");
  private static final Source B = Source.of("b", 4, 0.04, "");
  private static final Traced TRACED_A = Traced.of(A);
  private static final Traced TRACED_B = Traced.of(B);

  private static double u(Traced number) {
    return number.standardUncertainty().orElseThrow();
  }

  @Test
  void independentSourcesAddInSquares() {
    assertEquals(7, TRACED_A.plus(TRACED_B).value());
    assertEquals(0.05, u(TRACED_A.plus(TRACED_B)), 1e-15);
    assertEquals(0.05, u(TRACED_A.minus(TRACED_B)), 1e-15);
    assertEquals(12 * Math.hypot(0.01, 0.01), u(TRACED_A.times(TRACED_B)), 1e-15);
    assertEquals(0.75 * Math.hypot(0.01, 0.01), u(TRACED_A.dividedBy(TRACED_B)), 1e-15);
    assertEquals(0.06, u(TRACED_A.times(-2)), 1e-15);
  }

  @Test
  void theArithmeticIsThatOfTheValues() {
    assertEquals(-1, TRACED_A.minus(TRACED_B).value());
    assertEquals(12, TRACED_A.times(TRACED_B).value());
    assertEquals(0.75, TRACED_A.dividedBy(TRACED_B).value());
    assertEquals(-6, TRACED_A.times(-2).value());
  }

  @Test
  void whatIsSharedCorrelatesAndCancels() {
    assertEquals(0.06, u(TRACED_A.plus(TRACED_A)), 1e-15);
    assertEquals(0, u(TRACED_A.minus(TRACED_A)));
    Traced sum = TRACED_A.plus(TRACED_B);
    assertEquals(u(TRACED_A), u(sum.minus(TRACED_B)), 1e-15);
    assertEquals(u(TRACED_A), u(sum.times(TRACED_B).dividedBy(TRACED_B).minus(TRACED_B)), 1e-15);
    assertEquals(0.03 * 0.03, sum.covariance(TRACED_A), 1e-15);
    assertEquals(0, TRACED_B.covariance(TRACED_A));
  }

  @Test
  void sourcesAreTheSameOnlyAsObjects() {
    Traced twin = Traced.of(Source.of("a", 3, 0.03, ""));
    assertNotEquals(TRACED_A, twin);
    assertEquals(Math.hypot(0.03, 0.03), u(TRACED_A.plus(twin)), 1e-15);
    assertEquals(TRACED_A, Traced.of(A));
    assertEquals(TRACED_A.hashCode(), Traced.of(A).hashCode());
  }

  @Test
  void partsAreSignedAndInTheOrderOfTheInputs() {
    Traced number = TRACED_B.times(-2).plus(TRACED_A);
    assertEquals(List.of(B, A), number.sources());
    assertEquals(-2, number.sensitivity(B));
    assertEquals(Map.of(A, 0.03, B, -0.08), number.parts());
    assertEquals(0, number.sensitivity(Source.of("c", 1, 1, "")));
  }

  @Test
  void manySharedSourcesInAnyOrderAddUp() {
    Traced[] all = new Traced[50];
    double[] ones = new double[50];
    double[] falling = new double[50];
    Traced[] reversed = new Traced[50];
    for (int i = 0; i < 50; i++) {
      all[i] = Traced.of(Source.of("s" + i, i, 0.1, ""));
      reversed[49 - i] = all[i];
      ones[i] = 1;
      falling[i] = i;
    }
    Traced sum = Traced.linear(1, all, ones);
    Traced weighted = Traced.linear(2, reversed, falling);
    Traced both = sum.plus(weighted);
    assertEquals(50, both.sources().size());
    for (int i = 0; i < 50; i++) {
      assertEquals(1 + (49 - i), both.sensitivity(all[i].sources().get(0)), 1e-12);
    }
  }

  @Test
  void aMissingUncertaintySilencesOnlyWhatMovesWithIt() {
    Source open = Source.withoutUncertainty("open", 2, "");
    Traced number = TRACED_A.times(Traced.of(open));
    assertEquals(OptionalDouble.empty(), number.standardUncertainty());
    assertEquals(List.of(open), number.missing());
    assertEquals(0.06, number.knownPart(), 1e-15);
    assertEquals(Optional.empty(), number.uncertain(""));
    assertTrue(number.toString().contains("u of open not stated"), number.toString());
    Traced without = number.minus(Traced.of(open).times(3));
    assertEquals(List.of(), without.missing());
    assertEquals(0.06, u(without), 1e-15);
  }

  @Test
  void whatIsStatedMayLeaveItsUncertaintyOpen() {
    Traced stated = Traced.stated("mass", 2, OptionalDouble.of(0.1), "g");
    assertEquals(0.1, u(stated));
    assertEquals("2.00, u 0.10", stated.toString());
    Traced open = Traced.stated("mass", 2, OptionalDouble.empty(), "g");
    assertEquals(2, open.value());
    assertEquals(List.of("mass"), open.missing().stream().map(Source::name).toList());
    assertEquals("2, u of mass not stated", open.toString());
  }

  @Test
  void aSourceReadsAsWhatWasMeasured() {
    assertEquals("mass 2.00 g, u 0.10", Source.of("mass", 2, 0.1, "g").toString());
    assertEquals("g", Source.of("mass", 2, 0.1, "g").unit());
    assertEquals("mass 2 g, u not stated", Source.withoutUncertainty("mass", 2, "g").toString());
  }

  /** Two parts of one scatter of 4 degrees of freedom: together they have no more than those. */
  @Test
  void partsOfOneScatterShareItsDegreesOfFreedom() {
    List<Source> parts = Source.ofOneScatter("fit", 2, 4);
    assertEquals(List.of("fit, part 1", "fit, part 2"), parts.stream().map(Source::name).toList());
    Traced both = Traced.of(parts.get(0)).times(3).plus(Traced.of(parts.get(1)).times(4));
    assertEquals(0, both.value());
    assertEquals(5, u(both), 1e-15);
    assertEquals(4, both.degreesOfFreedom(), 1e-12);
    assertEquals("fit", Source.ofOneScatter("fit", 1, 4).get(0).name());
    assertEquals(10_000, Source.ofOneScatter("fit", 10_000, 4).size());
    assertThrows(IllegalArgumentException.class, () -> Source.ofOneScatter("fit", 0, 4));
    assertThrows(IllegalArgumentException.class, () -> Source.ofOneScatter("fit", 10_001, 4));
  }

  @Test
  void whatAddsNoUncertaintyLeavesTheDegreesOfFreedomInfinite() {
    Traced without = Traced.of(Source.of("x", 1, 0, 5, ""));
    assertEquals(Double.POSITIVE_INFINITY, without.degreesOfFreedom());
    assertEquals(Double.POSITIVE_INFINITY, without.plus(TRACED_A).degreesOfFreedom());
    Traced few = Traced.of(Source.of("y", 1, 3, 5, ""));
    assertEquals(5, few.plus(without).degreesOfFreedom(), 1e-12);
  }

  /** A hash code that is the same for all would keep its contract and make every map a list. */
  @Test
  void hashCodesTellNumbersApart() {
    Set<Integer> codes = new HashSet<>();
    for (int i = 1; i <= 100; i++) {
      codes.add(Traced.exact(i / 10.0).hashCode());
      codes.add(TRACED_A.times(i / 10.0).hashCode());
    }
    assertTrue(codes.size() > 180, codes::toString);
  }

  @Test
  void degreesOfFreedomCombineByWelchAndSatterthwaite() {
    // JCGM 100:2008, G.4.1, worked by hand: u 3 and 4 of 5 and 10 degrees of freedom.
    Traced sum =
        Traced.of(Source.of("x", 0, 3, 5, "")).plus(Traced.of(Source.of("y", 0, 4, 10, "")));
    assertEquals(625 / (81.0 / 5 + 256.0 / 10), sum.degreesOfFreedom(), 1e-12);
    assertEquals(Double.POSITIVE_INFINITY, TRACED_A.degreesOfFreedom());
    // One source met twice is one source: its degrees of freedom stay.
    Traced once = Traced.of(Source.of("x", 1, 3, 5, ""));
    assertEquals(5, once.plus(once).degreesOfFreedom(), 1e-12);
    assertEquals(5, once.uncertain("").orElseThrow().degreesOfFreedom(), 1e-12);
  }

  @Test
  void exactNumbersHaveNoSources() {
    assertEquals(List.of(), Traced.exact(2).sources());
    assertEquals(0, u(Traced.exact(2)));
    assertEquals(Traced.exact(6), Traced.exact(2).times(Traced.exact(3)));
    assertEquals(TRACED_A.sources(), TRACED_A.withValue(9).sources());
    assertEquals(9, TRACED_A.withValue(9).value());
  }

  @Test
  void whatIsNotANumberIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> Traced.exact(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> TRACED_A.dividedBy(Traced.exact(0)));
    assertThrows(IllegalArgumentException.class, () -> TRACED_A.times(Double.POSITIVE_INFINITY));
    assertThrows(
        IllegalArgumentException.class,
        () -> Traced.linear(1, new Traced[] {TRACED_A}, new double[] {1, 2}));
    Traced[] both = {TRACED_A, TRACED_B};
    assertEquals(
        "slope 2: NaN is not possible; a finite number is needed",
        assertThrows(
                IllegalArgumentException.class,
                () -> Traced.linear(1, both, new double[] {1, Double.NaN}))
            .getMessage());
  }
}
