package org.brewchem.water;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scales;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.BalanceFigure;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.solution.SolutionCode;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** A water as a liquid. The numbers are invented. */
class WaterTest {

  private static final PH END_POINT = PH.of(4.5);

  @Test
  void whatIsReportedIsAnsweredAsReported() {
    Water tap = Waters.uncertain().build().water();
    assertEquals(92, tap.calcium().number());
    assertEquals(Origin.REPORTED, tap.calcium().origin());
    assertEquals("92.0 mg/L, U 6.0 (k = 2)", tap.calcium().toString());
    assertEquals("reported as sulfur, 15 mg/L x 2.9961", tap.sulfate().step().text());
    assertEquals("pH 7.60, U 0.10 (k = 2)", tap.pH().toString());
    assertSame(
        tap.contents().total(Component.CALCIUM).orElseThrow().sources().get(0),
        tap.calcium().traced().sources().get(0));
  }

  @Test
  void whatIsNotReportedIsUnknown() {
    Water tap = Waters.uncertain().build().water();
    assertEquals("unknown: potassium is not reported", tap.potassium().toString());
    UnknownFigureException thrown =
        assertThrows(UnknownFigureException.class, () -> tap.potassium().value());
    assertEquals("potassium: unknown; potassium is not reported", thrown.getMessage());
    assertTrue(
        tap.notices().stream()
            .anyMatch(notice -> notice.text().equals("counted as absent: potassium")));
    Water soft = WaterReport.reported().calcium(mgPerL(9)).pH(pH(7.9)).build().water();
    assertEquals(
        List.of("alkalinity is not reported", "magnesium is not reported"),
        soft.residualAlkalinity().whyUnknown());
    assertEquals("pH 7.90", soft.pH().toString());
    assertEquals(
        List.of("alkalinity is not reported"), soft.titrationAlkalinity(END_POINT).whyUnknown());
    assertThrows(IllegalStateException.class, soft::solution);
  }

  @Test
  void residualAlkalinityPrintsAsCalciumCarbonateAndInDegrees() {
    Answer<?> residual =
        WaterReport.reported()
            .calcium(mgPerL(92))
            .magnesium(mgPerL(11))
            .alkalinityAsCaCO3(mgPerL(215))
            .build()
            .water()
            .residualAlkalinity();
    assertEquals("142.9 mg/L as CaCO3", residual.toString());
    assertEquals(
        "8.0 °dH",
        Waters.uncertain()
            .build()
            .water()
            .residualAlkalinity()
            .in(Scales.RESIDUAL_ALKALINITY_IN_GERMAN_DEGREES)
            .toString()
            .replaceAll(", U.*", ""));
  }

  /** The sources of the readings go into carbon dioxide and inert charge and come out again. */
  @Test
  void alkalinityAndPHComeBackFromTheContentsWithTheirUncertainty() {
    for (double read : new double[] {6.9, 7.6, 8.6, 9.4}) {
      Water water =
          WaterReport.reported()
              .calcium(mgPerL(92), mgPerL(3))
              .sodium(mgPerL(19), mgPerL(0.8))
              .chloride(mgPerL(31), mgPerL(1.2))
              .alkalinityAsCaCO3(mgPerL(215), mgPerL(4))
              .pH(pH(read), 0.05)
              .build()
              .water();
      Contents contents = water.contents();
      same(read, 0.05, contents.pH());
      same(215, 4, fromContents(Figures.CARBONATE_ALKALINITY, water));
    }
  }

  @Test
  void aTitrationComesBackFromTheContentsWithItsUncertainty() {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(92), mgPerL(3))
            .chloride(mgPerL(31), mgPerL(1.2))
            .titrationAlkalinity(
                TitrationAlkalinity.ofMilliequivalentsPerLitre(4.3, PH.of(4.3)),
                ChargeConcentration.ofMilliequivalentsPerLitre(0.05))
            .pH(pH(7.6), celsius(12), 0.04)
            .build()
            .water();
    same(7.6, 0.04, water.contents().pH());
    same(4.3, 0.05, fromContents(Figures.titrationAlkalinity(PH.of(4.3)), water));
    assertEquals(Origin.REPORTED, water.titrationAlkalinity(PH.of(4.3)).origin());
    assertEquals(Origin.COMPUTED, water.alkalinity().origin());
  }

  private static Traced fromContents(Figure<?> figure, Water water) {
    assertTrue(figure.rule() instanceof BalanceFigure);
    return figure.rule().find(figure, water).found().orElseThrow();
  }

  private static void same(double value, double u, Traced found) {
    assertEquals(value, found.value(), 1e-9 * value);
    assertEquals(u, found.standardUncertainty().orElseThrow(), 0.01 * u);
  }

  @Test
  void anUncertaintyThatIsNotStatedIsNamed() {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(92), mgPerL(3))
            .magnesium(mgPerL(11))
            .alkalinityAsCaCO3(mgPerL(215), mgPerL(4))
            .build()
            .water();
    assertTrue(water.residualAlkalinity().standardUncertainty().isEmpty());
    assertEquals(
        List.of("magnesium: 1 % of it would add 0.065 mg/L as CaCO3"),
        water.residualAlkalinity().uncertaintiesMissing());
  }

  @Test
  void withoutAPHTheCarbonDioxideIsAssumedAndSaysSo() {
    Water water = WaterReport.reported().bicarbonate(mgPerL(61)).build().water();
    assertTrue(
        water.totalCarbonDioxide().notices().stream()
            .anyMatch(notice -> notice.code() == SolutionCode.CARBON_DIOXIDE_ASSUMED));
    assertTrue(
        water.pH().notices().stream()
            .anyMatch(notice -> notice.code() == SolutionCode.CARBON_DIOXIDE_ASSUMED));
    assertEquals(1, water.totalCarbonDioxide().value().inMillimolesPerLitre(), 0.001);
    assertEquals(8.3, water.pH().number(), 0.05);
  }

  @Test
  void theIonBalanceCountsWhatIsUnknownAsAbsentAndSaysSo() {
    Answer<Double> balance = Waters.uncertain().build().water().ionBalance();
    assertEquals(0.7, balance.number(), 0.05);
    assertTrue(
        balance.notices().stream()
            .anyMatch(notice -> notice.text().equals("counted as absent: potassium")));
    assertEquals(0, Water.pure().ionBalance().number());
    assertFalse(WaterReport.reported().build().water().ionBalance().isStated());
  }

  @Test
  void aContradictionOpensTheBalanceAndLeavesTheIons() {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(40))
            .magnesium(mgPerL(5))
            .bicarbonate(mgPerL(30))
            .pH(pH(1))
            .build()
            .water();
    assertFalse(water.titrationAlkalinity(END_POINT).isStated());
    assertTrue(water.residualAlkalinity().isStated());
    assertEquals("pH 1.00", water.pH().toString());
  }

  @Test
  void pureWaterHoldsNothing() {
    Water pure = Water.pure();
    assertEquals("0.0 mg/L", pure.calcium().toString());
    assertEquals("0.0 mg/L as CaCO3", pure.residualAlkalinity().toString());
    assertEquals(7.0, pure.pH().number(), 0.01);
    assertTrue(pure.notices().isEmpty());
  }

  @Test
  void warmingLeavesTheContentsAndMovesThePH() {
    Water tap = Waters.uncertain().build().water();
    Water hot = tap.at(celsius(65));
    assertEquals(92, hot.calcium().number(), 1e-9);
    assertEquals(tap.solution().heldAt(celsius(65)).pH().value(), hot.pH().number(), 1e-9);
    assertTrue(hot.pH().number() < 7.55);
    assertSame(tap, tap.at(celsius(25)));
    assertEquals(7.6, hot.at(celsius(25)).pH().number(), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> tap.at(celsius(101)));
  }

  @Test
  void anotherChemistryClosesTheReportItself() {
    Water ideal = Waters.uncertain().build().water().under(Chemistry.of(Level.IDEAL));
    assertEquals(7.6, ideal.contents().pH().value(), 1e-9);
    assertEquals(92, ideal.calcium().number());
    assertEquals(
        7.6,
        Waters.uncertain()
            .build()
            .water()
            .at(celsius(40))
            .under(Chemistry.of(Level.IDEAL))
            .at(celsius(25))
            .pH()
            .number(),
        1e-9);
  }

  @Test
  void everyAnswerHasAnExplanationThatHolds() throws ReflectiveOperationException {
    for (Answer<?> answer :
        answers(Waters.uncertain().potassium(mgPerL(2), mgPerL(0.1)).build().water())) {
      assertTrue(answer.isStated(), answer.figure().title());
      assertTrue(answer.explain().holds(), answer.explain().toString());
      assertTrue(
          answer.explain().lines().size() >= 1 && answer.standardUncertainty().isPresent(),
          answer.figure().title());
    }
  }

  /** What every public method that returns an answer returns. */
  static List<Answer<?>> answers(Water water) throws ReflectiveOperationException {
    Map<Class<?>, Object> arguments = Map.of(PH.class, END_POINT);
    List<Answer<?>> answers = new ArrayList<>();
    for (Method method : Water.class.getDeclaredMethods()) {
      if (method.getReturnType() == Answer.class && !method.isSynthetic()) {
        Object[] given = new Object[method.getParameterCount()];
        for (int i = 0; i < given.length; i++) {
          given[i] = arguments.get(method.getParameterTypes()[i]);
        }
        answers.add((Answer<?>) method.invoke(water, given));
      }
    }
    assertEquals(19, answers.size());
    return answers;
  }

  @Test
  void aWaterPrintsWhatIsKnownOfIt() {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(92))
            .magnesium(mgPerL(11))
            .alkalinityAsCaCO3(mgPerL(215))
            .pH(pH(7.6))
            .build()
            .water();
    assertEquals(
        "calcium 92.0 mg/L, magnesium 11.0 mg/L, carbonate alkalinity 215.0 mg/L as CaCO3, pH 7.60",
        water.toString());
    assertEquals("nothing known", WaterReport.reported().build().water().toString());
  }

  @Test
  void reportsPrintAndCompareByWhatTheyState() {
    WaterReport one = WaterReport.reported().calcium(mgPerL(92)).pH(pH(7.6)).build();
    WaterReport same = WaterReport.reported().calcium(mgPerL(92)).pH(pH(7.6)).build();
    WaterReport other = WaterReport.reported().calcium(mgPerL(93)).pH(pH(7.6)).build();
    assertEquals("calcium 92.0 mg/L, pH 7.60", one.toString());
    assertEquals("nothing reported", WaterReport.reported().build().toString());
    assertEquals(one, same);
    assertEquals(one.hashCode(), same.hashCode());
    assertFalse(one.equals(other));
    assertFalse(one.hashCode() == other.hashCode());
  }
}
