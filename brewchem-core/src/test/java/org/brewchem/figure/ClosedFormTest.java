package org.brewchem.figure;

import static org.brewchem.figure.Desk.CONCENTRATION;
import static org.brewchem.figure.Desk.MASS;
import static org.brewchem.figure.Desk.VOLUME;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

class ClosedFormTest {

  private static final Figure<Double> SALT = Desk.stated("salt", "g", 2);
  private static final Figure<Double> TRACE = Desk.stated("trace", "g", 2);
  private static final ToDoubleFunction<double[]> SUM = x -> Arrays.stream(x).sum();

  private static final Figure<Double> TOTAL =
      ClosedForm.countingAbsent(
          "total",
          Scale.number("g", 2),
          "sum of what was read",
          "definition",
          Desk.TestCode.ODD,
          Figure.list(MASS, SALT),
          Figure.list(TRACE),
          SUM);

  private static List<String> notices(Answer<?> answer) {
    return answer.notices().stream().map(Notice::text).toList();
  }

  private static List<String> inputs(Answer<?> answer) {
    return answer.step().inputs().stream().map(Step::quantity).toList();
  }

  @Test
  void whatIsAbsentCountsAsNothingAndIsNamed() {
    Answer<Double> answer =
        Answer.of(TOTAL, new Desk().with(MASS, 5, 0.03).with(TRACE, 0.25, 0.04));
    assertEquals(5.25, answer.value());
    assertEquals(List.of("counted as absent: salt"), notices(answer));
    assertEquals(List.of("mass", "salt", "trace"), inputs(answer));
    // 3-4-5: the squares of 0.03 and 0.04 add to that of 0.05.
    assertEquals(0.05, answer.standardUncertainty().orElseThrow(), 1e-9);
  }

  @Test
  void aMinorInputThatIsAbsentIsNotWorthANotice() {
    Answer<Double> answer = Answer.of(TOTAL, new Desk().with(MASS, 5, 0.03).with(SALT, 2, 0.01));
    assertEquals(7, answer.value());
    assertEquals(List.of(), notices(answer));
    assertEquals(List.of("mass", "salt"), inputs(answer));
  }

  @Test
  void aMinorInputAloneGivesAValue() {
    Answer<Double> answer = Answer.of(TOTAL, new Desk().with(TRACE, 0.25, 0));
    assertEquals(0.25, answer.value());
    assertEquals(List.of("counted as absent: mass", "counted as absent: salt"), notices(answer));
  }

  @Test
  void whereAllIsAbsentNothingIsKnown() {
    Answer<Double> answer = Answer.of(TOTAL, new Desk());
    assertEquals(
        List.of("mass was not read", "salt was not read", "trace was not read"),
        answer.whyUnknown());
  }

  @Test
  void anotherFormulaIsUnknownOnceOneInputIs() {
    assertEquals(
        List.of("volume was not read"),
        Answer.of(CONCENTRATION, new Desk().with(MASS, 5, 0)).whyUnknown());
  }

  @Test
  void aReasonThatTwoInputsShareIsGivenOnce() {
    Figure<Double> product =
        ClosedForm.figure(
            "product",
            Scale.number("g2/L", 2),
            "concentration * mass",
            "",
            Figure.list(CONCENTRATION, MASS),
            x -> x[0] * x[1]);
    assertEquals(
        List.of("mass was not read"),
        Answer.of(product, new Desk().with(VOLUME, 2, 0)).whyUnknown());
  }

  @Test
  void aFormulaSaysWhetherItCountsWhatIsAbsent() {
    assertTrue(((ClosedForm) TOTAL.rule()).countsAbsent());
    assertFalse(((ClosedForm) CONCENTRATION.rule()).countsAbsent());
    assertEquals("sum of what was read", TOTAL.rule().text());
    assertEquals(Figure.list(MASS, SALT, TRACE), ((ClosedForm) TOTAL.rule()).inputs());
  }

  /** 1000 * 5 / 2, with the slopes 1000 / 2 and -1000 * 5 / 4. */
  @Test
  void aRatioIsTheQuotientTimesItsFactor() {
    Figure<Double> ratio = ratio(1000);
    ClosedForm form = (ClosedForm) ratio.rule();
    assertTrue(form.isRatio());
    assertFalse(((ClosedForm) CONCENTRATION.rule()).isRatio());
    assertEquals(2500, form.apply(new double[] {5, 2}));
    Source mass = Source.of("mass", 5, 0.03, "g");
    Source volume = Source.of("volume", 2, 0.01, "L");
    Desk desk = new Desk().with(MASS, Traced.of(mass)).with(VOLUME, Traced.of(volume));
    Answer<Double> answer = Answer.of(ratio, desk);
    assertEquals(2500, answer.value());
    assertEquals(500, answer.traced().sensitivity(mass), 1e-5);
    assertEquals(-1250, answer.traced().sensitivity(volume), 1e-5);
    assertTrue(answer.explain().holds());
  }

  @Test
  void aRatioToNothingHasNoValue() {
    Answer<Double> answer = Answer.of(ratio(1), new Desk().with(MASS, 5, 0).with(VOLUME, 0, 0));
    assertEquals(
        List.of("mass per volume has no value here: mass 5.00 g, volume 0.000 L"),
        answer.whyUnknown());
    assertThrows(IllegalArgumentException.class, () -> ratio(0));
  }

  private static Figure<Double> ratio(double factor) {
    return ClosedForm.ratio(
        "ratio", Scale.number("", 2), "mass per volume", "definition", MASS, VOLUME, factor);
  }

  @Test
  void aFormulaThatGivesNegativeZeroGivesZero() {
    Figure<Double> lost =
        ClosedForm.figure("lost", Scale.number("g", 2), "-mass", "", Figure.list(MASS), x -> -x[0]);
    assertEquals("0.00 g", Answer.of(lost, new Desk().with(MASS, Traced.exact(0))).toString());
    assertEquals(0.0, Answer.of(lost, new Desk().with(MASS, Traced.exact(0))).number());
  }

  @Test
  void aFormulaWithoutInputsIsRefused() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class, () -> new ClosedForm("nothing", "", List.of(), SUM));
    assertEquals(
        "nothing: a formula without inputs is not possible; at least one is needed",
        refused.getMessage());
    Figure<Double> typed =
        Figure.of(
            "one", Map.of(), Scale.number("g", 2), new ClosedForm("mass", "", List.of(MASS), SUM));
    assertEquals(5, Answer.of(typed, new Desk().with(MASS, 5, 0)).value());
  }

  /** A formula may change the numbers that it is given: its slopes are those of its inputs. */
  @Test
  void aFormulaMaySortItsNumbers() {
    Figure<Double> weighted =
        ClosedForm.figure(
            "weighted",
            Scale.number("g", 2),
            "the smaller and twice the larger",
            "definition",
            Figure.list(MASS, SALT),
            x -> {
              Arrays.sort(x);
              return x[0] + 2 * x[1];
            });
    Answer<Double> answer = Answer.of(weighted, new Desk().with(MASS, 5, 0.03).with(SALT, 2, 0.04));
    assertEquals(12, answer.value());
    // The larger is the mass: the squares of 2 x 0.03 and 0.04.
    assertEquals(Math.hypot(0.06, 0.04), answer.standardUncertainty().orElseThrow(), 1e-9);
  }

  /** At the end of what a formula allows the slope is that to one side. */
  @Test
  void atTheEndOfWhatAFormulaAllowsOneSideDecides() {
    Figure<Double> folded =
        ClosedForm.figure(
            "folded",
            Scale.number("g", 2),
            "mass, which may not be above 5",
            "definition",
            Figure.list(MASS),
            x -> x[0] > 5 ? Double.NaN : 3 * x[0]);
    Answer<Double> answer = Answer.of(folded, new Desk().with(MASS, 5, 0.03));
    assertEquals(15, answer.value());
    assertEquals(0.09, answer.standardUncertainty().orElseThrow(), 1e-9);
    Figure<Double> rooted =
        ClosedForm.figure(
            "rooted",
            Scale.number("g", 2),
            "mass, which may not be below 5",
            "definition",
            Figure.list(MASS),
            x -> x[0] < 5 ? Double.NaN : 7 + 3 * x[0]);
    Answer<Double> other = Answer.of(rooted, new Desk().with(MASS, 5, 0.03));
    assertEquals(0.09, other.standardUncertainty().orElseThrow(), 1e-9);
  }
}
