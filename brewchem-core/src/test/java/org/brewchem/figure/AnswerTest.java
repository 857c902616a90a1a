package org.brewchem.figure;

import static org.brewchem.figure.Desk.CONCENTRATION;
import static org.brewchem.figure.Desk.MASS;
import static org.brewchem.figure.Desk.VOLUME;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

class AnswerTest {

  private static final Desk DESK = new Desk().with(MASS, 5, 0.03).with(VOLUME, 2, 0.01);

  @Test
  void aClosedFormCombinesItsInputsLinearly() {
    Answer<Double> answer = Answer.of(CONCENTRATION, DESK);
    assertEquals(2.5, answer.value());
    // JCGM 100:2008, 5.1.6: relative uncertainties of a quotient add in squares (from memory).
    assertEquals(
        2.5 * Math.hypot(0.03 / 5, 0.01 / 2), answer.standardUncertainty().orElseThrow(), 1e-9);
    assertEquals("2.50 g/L, U 0.04 (k = 2)", answer.toString());
    assertEquals("g/L", answer.unit());
    assertEquals(Optional.of(2.5), answer.optional());
    assertEquals(
        2 * answer.standardUncertainty().orElseThrow(),
        answer.expanded().orElseThrow().halfWidth(),
        1e-15);
    assertEquals(Origin.COMPUTED, answer.origin());
    assertEquals(Origin.MEASURED, Answer.of(MASS, DESK).origin());
  }

  @Test
  void whatIsMissingIsNamedAllTheWay() {
    Desk empty = new Desk();
    Answer<Double> answer = Answer.of(CONCENTRATION, empty);
    assertFalse(answer.isStated());
    assertEquals(List.of("mass was not read", "volume was not read"), answer.whyUnknown());
    assertEquals("unknown: mass was not read; volume was not read", answer.toString());
    assertEquals(Optional.empty(), answer.optional());
    assertEquals(OptionalDouble.empty(), answer.standardUncertainty());
    UnknownFigureException thrown = assertThrows(UnknownFigureException.class, answer::value);
    assertTrue(thrown.getMessage().contains("concentration"), thrown.getMessage());
    assertTrue(thrown.getMessage().contains("mass was not read"), thrown.getMessage());
    assertEquals("concentration", thrown.figure());
    assertEquals(List.of("mass was not read", "volume was not read"), thrown.missing());
    assertThrows(UnknownFigureException.class, answer::number);
    assertEquals(
        List.of(
            "mass: unknown, mass was not read",
            "volume: unknown, volume was not read",
            "concentration = mass / volume: unknown, mass was not read; volume was not read"
                + "  [definition]"),
        answer.explain().lines());
  }

  @Test
  void anOriginReadsAsWords() {
    assertEquals("carried over", Origin.CARRIED_OVER.toString());
    assertEquals("measured", Origin.MEASURED.toString());
  }

  @Test
  void aFormulaWithoutAValueSaysForWhat() {
    Answer<Double> answer =
        Answer.of(CONCENTRATION, new Desk().with(MASS, 5, 0).with(VOLUME, 0, 0));
    assertEquals(
        List.of("mass / volume has no value here: mass 5.00 g, volume 0.000 L"),
        answer.whyUnknown());
  }

  @Test
  void anUncertaintyThatIsMissingNeverCountsAsZero() {
    Desk half =
        new Desk()
            .with(MASS, 5, 0.03)
            .with(VOLUME, Traced.of(Source.withoutUncertainty("volume", 2, "L")));
    Answer<Double> answer = Answer.of(CONCENTRATION, half);
    assertEquals(OptionalDouble.empty(), answer.standardUncertainty());
    assertEquals(Optional.empty(), answer.expanded());
    assertEquals("2.50 g/L", answer.toString());
    assertEquals(List.of("volume: 1 % of it would add 0.03 g/L"), answer.uncertaintiesMissing());
  }

  @Test
  void explanationsListEachStepOnceBehindItsInputs() {
    Figure<Double> difference =
        ClosedForm.figure(
            "difference",
            Scale.number("g/L", 2),
            "concentration - mass",
            "",
            Figure.list(CONCENTRATION, MASS),
            x -> x[0] - x[1]);
    Explanation explanation = Answer.of(difference, DESK).explain();
    List<String> quantities = explanation.steps().stream().map(Step::quantity).toList();
    assertEquals("difference", quantities.get(quantities.size() - 1));
    assertTrue(quantities.indexOf("mass") < quantities.indexOf("concentration"));
    assertEquals(
        "concentration = mass / volume = 2.50 g/L, U 0.04 (k = 2)  [definition]",
        explanation.lines().get(2));
    assertTrue(explanation.holds());
    assertEquals(explanation.root(), explanation.steps().get(explanation.steps().size() - 1));
    assertTrue(explanation.toString().endsWith(explanation.lines().get(4)));
  }

  @Test
  void anExplanationThatDoesNotHoldSaysSo() {
    Step wrong =
        Step.of("sum", Scale.number("", 1), Step.Kind.ROOT)
            .detail(() -> new Step.Detail(List.of("1", "2"), 1e-9, 1e-10))
            .found(Traced.exact(3));
    Explanation explanation = new Explanation(wrong);
    assertFalse(explanation.holds());
    assertEquals(List.of("sum = 3.0", "    1", "    2"), explanation.lines());
    assertEquals("1. sum = 3.0\n\n   ```text\n   1\n   2\n   ```\n\n", explanation.toMarkdown());
  }

  @Test
  void noticesComeFromEveryStepOnce() {
    Desk large = new Desk().with(MASS, 2000, 1).with(VOLUME, 2, 0.01);
    Answer<Double> answer = Answer.of(CONCENTRATION, large);
    assertEquals(List.of("large mass"), answer.notices().stream().map(Notice::text).toList());
    assertTrue(answer.explain().toString().endsWith("note: large mass"));
    assertTrue(answer.explain().toMarkdown().endsWith("\n> large mass\n"));
  }

  /** What a JSON library does: other maps, other lists, other numbers, the same digits. */
  private static Object throughJson(Object value) {
    if (value instanceof Map<?, ?> map) {
      Map<String, Object> copy = new HashMap<>();
      map.forEach((key, entry) -> copy.put(key.toString(), throughJson(entry)));
      return copy;
    }
    if (value instanceof List<?> list) {
      List<Object> copy = new ArrayList<>();
      list.forEach(entry -> copy.add(throughJson(entry)));
      return copy;
    }
    return value instanceof Double number ? new BigDecimal(number.toString()) : value;
  }

  @SuppressWarnings("unchecked")
  private static StructuredAnswer readBack(StructuredAnswer answer) {
    return StructuredAnswer.from((Map<String, Object>) throughJson(answer.toMap()));
  }

  @Test
  void theStructuredFormReadsBackWithoutLoss() {
    Desk few =
        new Desk()
            .with(MASS, Traced.of(Source.of("mass", 5.0 / 3, 0.01, 4, "g")))
            .with(VOLUME, 2, 0.01);
    StructuredAnswer stated = Answer.of(CONCENTRATION, few).structured();
    assertEquals(5.0 / 6, stated.number().orElseThrow());
    assertTrue(stated.degreesOfFreedom().orElseThrow() > 4);
    assertEquals(stated, readBack(stated));
    StructuredAnswer unknown = Answer.of(CONCENTRATION, new Desk()).structured();
    assertEquals(OptionalDouble.empty(), unknown.number());
    assertEquals(2, unknown.whyUnknown().size());
    assertEquals(unknown, readBack(unknown));
    Desk open =
        new Desk()
            .with(MASS, Traced.of(Source.withoutUncertainty("mass", 2000, "g")))
            .with(VOLUME, 2, 0.01);
    StructuredAnswer without = Answer.of(CONCENTRATION, open).structured();
    assertEquals(List.of("mass"), without.uncertaintiesMissing());
    assertEquals(List.of("ODD"), without.notices());
    assertEquals(without, readBack(without));
  }

  @Test
  void aBrokenRecordIsRefusedByName() {
    Map<String, Object> map = new LinkedHashMap<>(Answer.of(MASS, DESK).structured().toMap());
    map.put("unit", 3);
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> StructuredAnswer.from(map));
    assertEquals("unit: 3 is not possible; a text is needed", thrown.getMessage());
  }

  @Test
  void figuresAreEqualByNameAndParametersNotByUnit() {
    Figure<Double> inMilligrams = MASS.shownIn(Scale.of("mg", x -> 1000 * x, x -> x / 1000, 0));
    assertEquals(MASS, inMilligrams);
    assertEquals(MASS.hashCode(), inMilligrams.hashCode());
    assertNotEquals(MASS, VOLUME);
    assertNotEquals(MASS, Figure.of("mass", Map.of("of", "salt"), MASS.scale(), MASS.rule()));
    assertNotEquals(MASS, "mass");
    Answer<Double> answer = Answer.of(inMilligrams, DESK);
    assertEquals(5000, answer.number(), 1e-9);
    assertEquals(5, answer.value(), 1e-12);
    assertEquals("5000 mg, U 60 (k = 2)", answer.toString());
    assertEquals("5.00 g, U 0.06 (k = 2)", answer.in(MASS.scale()).toString());
    Figure<Double> ofSalt = Figure.of("mass", Map.of("of", "salt"), MASS.scale(), MASS.rule());
    assertEquals("mass of salt", ofSalt.title());
    assertEquals("mass of salt", ofSalt.toString());
    assertEquals(Map.of("of", "salt"), ofSalt.parameters());
  }
}
