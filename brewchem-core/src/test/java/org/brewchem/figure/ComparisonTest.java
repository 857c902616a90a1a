package org.brewchem.figure;

import static org.brewchem.figure.Desk.CONCENTRATION;
import static org.brewchem.figure.Desk.MASS;
import static org.brewchem.figure.Desk.VOLUME;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.brewchem.OutOfRangeException;
import org.brewchem.figure.Comparison.Judgement;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ComparisonTest {

  private static final Scale<Double> MILLIGRAMS = Scale.of("mg", x -> 1000 * x, x -> x / 1000, 0);

  private static Judgement judged(Constraint constraint, Desk desk) {
    return Target.named("test").with(constraint).compare(desk).judgements().get(0);
  }

  private static Desk mass(double value, double u) {
    return new Desk().with(MASS, value, u);
  }

  @Test
  void theWholeIntervalDecides() {
    Constraint band = Constraint.between(MASS, 4.0, 6.0);
    assertEquals(Verdict.WITHIN, judged(band, mass(5, 0.1)).verdict());
    assertEquals(Verdict.UNDECIDED, judged(band, mass(5.9, 0.1)).verdict());
    assertEquals(Verdict.UNDECIDED, judged(band, mass(6.1, 0.1)).verdict());
    assertEquals(Verdict.ABOVE, judged(band, mass(6.3, 0.1)).verdict());
    assertEquals(Verdict.BELOW, judged(band, mass(3.7, 0.1)).verdict());
    assertEquals(Verdict.UNKNOWN, judged(band, new Desk()).verdict());
  }

  /** 4.3 + 0.1 is 4.3999999999999995 in doubles, and 0.1 + 0.7 is 0.7999999999999999. */
  @Test
  void aLimitStatedInDecimalsIsMetByThatDecimal() {
    Constraint around = Constraint.around(MASS, 4.3, 0.1);
    assertEquals(4.4, around.upper().orElseThrow());
    assertEquals(4.2, around.lower().orElseThrow());
    assertEquals(Verdict.WITHIN, judged(around, exactly(4.4)).verdict());
    assertEquals(Verdict.ABOVE, judged(around, exactly(4.4000000001)).verdict());
    for (int aim = 1; aim < 200; aim++) {
      for (int off = 0; off <= 20; off++) {
        Constraint band = Constraint.around(MASS, aim / 10.0, off / 10.0);
        assertEquals(Verdict.WITHIN, judged(band, exactly((aim + off) / 10.0)).verdict());
        assertEquals(Verdict.WITHIN, judged(band, exactly((aim - off) / 10.0)).verdict());
      }
    }
  }

  /** 1.9 g/L as lactic acid is 1.9000000000000001 after a way through mEq/L. */
  @Test
  void theRoundingOfAConversionViolatesNothing() {
    Constraint band = Constraint.between(MASS, 1.7, 1.9);
    assertEquals(0, band.excess(Math.nextUp(1.9)));
    assertEquals(0, band.excess(Math.nextDown(1.7)));
    assertEquals(Verdict.WITHIN, judged(band, exactly(Math.nextUp(1.9))).verdict());
    assertEquals(Verdict.WITHIN, judged(band, exactly(Math.nextDown(1.7))).verdict());
    assertTrue(band.excess(1.9 + 1e-14) > 0);
    assertTrue(band.excess(1.7 - 1e-14) < 0);
  }

  private static Desk exactly(double value) {
    return new Desk().with(MASS, Traced.exact(value));
  }

  /** At most 6 g allows 6 g; U = 1 g around 5 g ends on both limits. */
  @Test
  void theLimitsThemselvesAreAllowed() {
    Constraint band = Constraint.between(MASS, 4.0, 6.0);
    for (double limit : new double[] {4, 6}) {
      Judgement exact = judged(band, new Desk().with(MASS, Traced.exact(limit)));
      assertEquals(Verdict.WITHIN, exact.verdict());
      assertEquals(0, exact.excess().orElseThrow());
    }
    assertEquals(Verdict.WITHIN, judged(band, mass(5, 0.5)).verdict());
    assertEquals(Verdict.UNDECIDED, judged(band, mass(3, 0.5)).verdict());
    assertEquals(Verdict.UNDECIDED, judged(band, mass(7, 0.5)).verdict());
  }

  @Test
  void withoutUncertaintyTheVerdictIsByTheValueAlone() {
    Desk without = new Desk().with(MASS, Traced.of(Source.withoutUncertainty("mass", 6.3, "g")));
    Judgement judgement = judged(Constraint.atMost(MASS, 6.0), without);
    assertEquals(Verdict.ABOVE, judgement.verdict());
    assertTrue(judgement.byTheValueAlone());
    assertEquals(
        "mass: 6.30 g; above by 0.30, wanted at most 6.00 g (by the value alone)",
        judgement.toString());
    assertFalse(judged(Constraint.atMost(MASS, 6.0), mass(6.3, 0.1)).byTheValueAlone());
  }

  @Test
  void anExcessThatCountsIsNeverPrintedAsZero() {
    Desk hardly = new Desk().with(MASS, Traced.exact(6.001));
    assertTrue(
        judged(Constraint.atMost(MASS, 6.0), hardly).toString().contains("above by 0.001,"),
        () -> judged(Constraint.atMost(MASS, 6.0), hardly).toString());
  }

  @Test
  void anUnknownValueSaysWhatWasWanted() {
    assertEquals(
        "mass: unknown: mass was not read; wanted at most 6.00 g",
        judged(Constraint.atMost(MASS, 6.0), new Desk()).toString());
  }

  @Test
  void aValueBelowSaysByHowMuchAsOneAbove() {
    assertEquals(
        "mass: 3.70 g, U 0.02 (k = 2); below by 0.30, wanted at least 4.00 g",
        judged(Constraint.atLeast(MASS, 4.0), mass(3.7, 0.01)).toString());
    assertEquals(
        "mass: 5.00 g, U 0.02 (k = 2); within, wanted at least 4.00 g",
        judged(Constraint.atLeast(MASS, 4.0), mass(5, 0.01)).toString());
  }

  /** A search ends some 1e-10 of the aim beside it: that is no distance to print. */
  @ParameterizedTest
  @CsvSource({
    "0, 1e-9, ', at the aim'",
    "0, 2e-9, ', +0.000000002 from the aim'",
    "1000, 1e-7, ', at the aim'",
    "1000, -1e-5, ', -0.00001 from the aim'"
  })
  void nearTheAimMeansToABillionth(double aim, double off, String text) {
    Desk desk = new Desk().with(MASS, Traced.exact(aim + off));
    Judgement judgement = judged(Constraint.around(MASS, aim, 1), desk);
    assertTrue(judgement.toString().endsWith(text), judgement::toString);
  }

  @Test
  void aimsAndExcessAreSigned() {
    Judgement low = judged(Constraint.around(MASS, 5.0, 0.5), mass(4, 0.01));
    assertEquals(-0.5, low.excess().orElseThrow(), 1e-12);
    assertEquals(-1, low.fromAim().orElseThrow(), 1e-12);
    assertTrue(low.toString().endsWith("wanted 4.50 to 5.50 g, -1.00 from the aim"), low::toString);
    Judgement there = judged(Constraint.around(MASS, 5.0, 0.5), mass(5 - 1e-12, 0.01));
    assertTrue(there.toString().endsWith("wanted 4.50 to 5.50 g, at the aim"), there::toString);
    assertEquals(
        OptionalDouble.empty(), judged(Constraint.atLeast(MASS, 5.0), mass(4, 0)).fromAim());
    assertEquals(
        OptionalDouble.empty(), judged(Constraint.atLeast(MASS, 5.0), new Desk()).excess());
  }

  @Test
  void limitsAreInTheUnitTheFigureIsShownIn() {
    Constraint constraint = Constraint.atLeast(MASS.shownIn(MILLIGRAMS), 4.0);
    assertEquals(4000, constraint.lower().orElseThrow());
    assertEquals(OptionalDouble.empty(), constraint.upper());
    assertEquals("at least 4000 mg", constraint.band());
    assertEquals(-1000, judged(constraint, mass(3, 0)).excess().orElseThrow(), 1e-9);
    assertNotEquals(constraint, Constraint.atLeast(MASS, 4.0));
    assertEquals(constraint, Constraint.atLeast(MASS.shownIn(MILLIGRAMS), 4.0));
    assertEquals(
        constraint.hashCode(), Constraint.atLeast(MASS.shownIn(MILLIGRAMS), 4.0).hashCode());
  }

  @Test
  void weightsAndScales() {
    Constraint hard = Constraint.between(MASS, 4.0, 6.0);
    assertEquals(OptionalDouble.empty(), hard.weight());
    assertEquals(1, hard.scale().orElseThrow());
    Constraint soft = hard.withWeight(2).scaledBy(0.5);
    assertEquals(2, soft.weight().orElseThrow());
    assertEquals(0.5, soft.scale().orElseThrow());
    assertNotEquals(hard, soft);
    assertEquals(OptionalDouble.empty(), Constraint.exactly(MASS, 4.0).scale());
    assertEquals("4.00 g", Constraint.exactly(MASS, 4.0).band());
    assertThrows(IllegalArgumentException.class, () -> hard.withWeight(0));
    assertThrows(IllegalArgumentException.class, () -> hard.scaledBy(-1));
    assertThrows(IllegalArgumentException.class, () -> Constraint.around(MASS, 5.0, -0.1));
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> Constraint.between(MASS, 6.0, 4.0));
    assertTrue(
        thrown.getMessage().contains("6.00 g") && thrown.getMessage().contains("4.00 g"),
        thrown.getMessage());
  }

  @Test
  void aConstraintComesBackFromItsMapToTheLastBit() {
    Figure<Double> shown = MASS.shownIn(MILLIGRAMS);
    for (Constraint constraint :
        List.of(
            Constraint.around(shown, 4.3, 0.1).withWeight(2.0 / 3).scaledBy(0.1 / 3),
            Constraint.between(MASS, 0.1 + 0.2, 7.0),
            Constraint.atMost(VOLUME, 1.0 / 3),
            Constraint.atLeast(VOLUME, 0.0),
            Constraint.exactly(shown, 0.07))) {
      assertEquals(constraint, Constraint.from(constraint.toMap(), List.of(VOLUME, MASS, shown)));
    }
  }

  @Test
  void aConstraintIsReadAsThatOfItsParameters() {
    Figure<Double> ofSalt = Figure.of("mass", Map.of("of", "salt"), MASS.scale(), MASS.rule());
    Figure<Double> ofAcid = Figure.of("mass", Map.of("of", "acid"), MASS.scale(), MASS.rule());
    Map<String, Object> map = Constraint.atMost(ofAcid, 2.0).toMap();
    assertEquals(ofAcid, Constraint.from(map, List.of(MASS, ofSalt, ofAcid)).figure());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "figure|weight|figure: weight {} [g] is not known here",
        "unit|kg|figure: mass {} [kg] is not known here",
        "atLeast|much|atLeast: much is not possible; a number is needed",
        "figure||figure: nothing is not possible; a text is needed",
        "parameters||parameters: nothing is not possible; a map is needed"
      })
  void aMapThatIsNoConstraintIsNamed(String key, String value, String message) {
    Map<String, Object> map = new HashMap<>(Constraint.between(MASS, 4.0, 6.0).toMap());
    map.put(key, value);
    assertEquals(
        message,
        assertThrows(IllegalArgumentException.class, () -> Constraint.from(map, List.of(MASS)))
            .getMessage());
  }

  @Test
  void impossibleLimitsOfAMapAreNamed() {
    Map<String, Object> map = new HashMap<>(Constraint.around(MASS, 5.0, 1.0).toMap());
    map.put("aim", 7);
    assertEquals(
        "aim: 7.00 g is not possible; 4.00 to 6.00 g is allowed",
        assertThrows(IllegalArgumentException.class, () -> Constraint.from(map, List.of(MASS)))
            .getMessage());
    map.put("aim", Double.NaN);
    assertThrows(OutOfRangeException.class, () -> Constraint.from(map, List.of(MASS)));
    map.remove("aim");
    map.put("atLeast", 8);
    assertThrows(IllegalArgumentException.class, () -> Constraint.from(map, List.of(MASS)));
    map.put("atLeast", Double.NEGATIVE_INFINITY);
    assertThrows(OutOfRangeException.class, () -> Constraint.from(map, List.of(MASS)));
    map.remove("atLeast");
    map.remove("atMost");
    assertEquals(
        "mass: no limit is not possible; atLeast, atMost or both are needed",
        assertThrows(IllegalArgumentException.class, () -> Constraint.from(map, List.of(MASS)))
            .getMessage());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void aLimitIsFinite(double limit) {
    for (Executable made :
        List.<Executable>of(
            () -> Constraint.atMost(MASS, limit),
            () -> Constraint.atLeast(MASS, limit),
            () -> Constraint.between(MASS, limit, 1.0),
            () -> Constraint.between(MASS, 1.0, limit),
            () -> Constraint.exactly(MASS, limit))) {
      OutOfRangeException refused = assertThrows(OutOfRangeException.class, made);
      assertEquals("g", refused.unit());
    }
  }

  /** A hash code that is the same for all would keep its contract and make every map a list. */
  @Test
  void hashCodesTellLimitsAndTargetsApart() {
    Set<Integer> limits = new HashSet<>();
    Set<Integer> targets = new HashSet<>();
    for (int i = 1; i <= 100; i++) {
      Constraint limit = Constraint.atMost(MASS, i / 10.0);
      limits.add(limit.hashCode());
      targets.add(Target.named("invented").with(limit).hashCode());
    }
    assertTrue(limits.size() > 90, limits::toString);
    assertTrue(targets.size() > 90, targets::toString);
  }

  @Test
  void aTargetTakesEachFigureOnce() {
    Target target =
        Target.named("invented")
            .with(Constraint.atMost(MASS, 6.0))
            .with(Constraint.atLeast(CONCENTRATION, 2.0));
    assertThrows(
        IllegalArgumentException.class,
        () -> target.with(Constraint.atLeast(MASS.shownIn(MILLIGRAMS), 1.0)));
    assertThrows(IllegalArgumentException.class, () -> Target.named(" "));
    Comparison met = target.compare(new Desk().with(MASS, 5, 0.01).with(VOLUME, 2, 0.001));
    assertTrue(met.allWithin());
    assertEquals("invented", met.target());
    assertEquals(Verdict.WITHIN, met.of(CONCENTRATION).orElseThrow().verdict());
    assertEquals(Optional.empty(), met.of(VOLUME));
    assertFalse(target.compare(new Desk().with(MASS, 5, 0.01)).allWithin());
    assertEquals(
        target,
        Target.named("invented")
            .with(Constraint.atMost(MASS, 6.0))
            .with(Constraint.atLeast(CONCENTRATION, 2.0)));
    assertNotEquals(target, Target.named("invented").with(Constraint.atMost(MASS, 6.0)));
    assertNotEquals(Target.named("invented"), Target.named("another"));
    assertNotEquals(target, "invented");
    assertEquals("invented", target.name());
    assertEquals(
        List.of(Constraint.atMost(MASS, 6.0), Constraint.atLeast(CONCENTRATION, 2.0)),
        target.constraints());
    assertEquals(
        "invented\nmass at most 6.00 g\nconcentration at least 2.00 g/L", target.toString());
    assertEquals(
        "invented\nmass: 5.00 g, U 0.02 (k = 2); within, wanted at most 6.00 g\n"
            + "concentration: 2.50 g/L, U 0.01 (k = 2); within, wanted at least 2.00 g/L",
        met.toString());
  }
}
