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
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.OutOfRangeException;
import org.brewchem.figure.Comparison.Judgement;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
    assertEquals(
        "invented\nmass at most 6.00 g\nconcentration at least 2.00 g/L", target.toString());
  }
}
