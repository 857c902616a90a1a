package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.junit.jupiter.api.Test;

/** The figures of any liquid, on an invented water and beer. */
class FiguresTest {

  /** A column of a table evaluates a work space, a single liquid traces it: both say the same. */
  @Test
  void aWorkSpaceGivesTheNumberOfTheLiquid() {
    int checked = 0;
    for (Figure<?> figure :
        Figure.list(
            Figures.PH_VALUE,
            Figures.IONIC_STRENGTH,
            Figures.CARBONATE_ALKALINITY,
            Figures.BUFFER_CAPACITY,
            Figures.bufferCapacity(pH(5)),
            Figures.titratableAcidity(pH(8.2)),
            Figures.titrationAlkalinity(pH(4.3)))) {
      for (Held liquid : List.of(Held.water(), Held.beer())) {
        if (figure.rule() instanceof BalanceFigure balance) {
          Contents contents = liquid.contents();
          double expected = balance.find(figure, liquid).found().orElseThrow().value();
          assertEquals(
              expected,
              balance.number(contents.equilibria(), contents.kilogramsPerLitre()),
              1e-9 * Math.abs(expected),
              figure.toString());
          assertFalse(balance.text().isEmpty());
          checked++;
        }
      }
    }
    assertEquals(14, checked);
  }

  @Test
  void whatAcidityAndAlkalinityRestOnAddsUp() {
    for (Figure<?> figure :
        Figure.list(
            Figures.titratableAcidity(pH(8.2)),
            Figures.titrationAlkalinity(pH(4.3)),
            Figures.free(Ion.CALCIUM))) {
      Answer<?> answer = Held.water().answer(figure);
      assertTrue(answer.explain().holds(), () -> figure + "\n" + answer.explain());
    }
  }

  @Test
  void theFreePartOfAnIonIsWhatIsInNoPair() {
    Held water = Held.water();
    Equilibrium state = water.contents().equilibria().equilibrium();
    double free = state.free(Component.CALCIUM).inMolesPerKilogram();
    Answer<?> answer = water.answer(Figures.free(Ion.CALCIUM));
    assertEquals(free * 40078 * water.contents().kilogramsPerLitre(), answer.number(), 1e-6);
    assertTrue(answer.number() < water.answer(Figures.CALCIUM).number());
    assertEquals(0, water.answer(Figures.free(Ion.POTASSIUM)).number(), 0);
    assertEquals("total less what is in ion pairs", Figures.free(Ion.CALCIUM).rule().text());
    Held unknown = new Held(water.contents().withUnknown(Component.POTASSIUM));
    assertEquals(
        List.of("potassium is not reported"),
        unknown.answer(Figures.free(Ion.POTASSIUM)).whyUnknown());
  }

  @Test
  void aFormOfATotalIsNoFigure() {
    for (Ion ion : List.of(Ion.BICARBONATE, Ion.CARBONATE)) {
      assertEquals(
          "ion: "
              + ion.name()
              + " is not possible; it is one form of a total. Ask for the carbonate alkalinity or"
              + " the total carbon dioxide",
          assertThrows(IllegalArgumentException.class, () -> Figures.concentration(ion))
              .getMessage());
    }
    assertEquals("sulfate", Figures.concentration(Ion.SULFATE).name());
  }

  @Test
  void aLiquidWithoutItsPartsHasNoSaturationIndex() {
    Figure<?> gypsum = Figures.saturationIndex(Mineral.GYPSUM);
    assertTrue(Held.water().answer(gypsum).isStated());
    assertEquals(
        List.of("the liquid holds no calcium"),
        new Held(Solution.textbook().contents()).answer(gypsum).whyUnknown());
    assertEquals("log10 of the product of activities over that of gypsum", gypsum.rule().text());
  }

  /** 2 mEq/L of hydroxide, or of strong acid, are 100 mg/L as CaCO3 that no carbonate holds. */
  @Test
  void theCarbonateAlkalinityTellsWhatElseTheLiquidHolds() {
    Solution water = Solution.at(celsius(25));
    assertEquals(List.of(), besides(Held.water().answer(Figures.CARBONATE_ALKALINITY)));
    assertEquals(List.of(), besides(alkalinity(water.with(Base.SODIUM_HYDROXIDE, mmolPerL(0.08)))));
    assertEquals(List.of(), besides(alkalinity(water.with(Acid.HYDROCHLORIC, mmolPerL(0.08)))));
    String base = besides(alkalinity(water.with(Base.SODIUM_HYDROXIDE, mmolPerL(2)))).get(0).text();
    assertTrue(base.startsWith("at pH 11.27 about 2.0 mEq/kg of hydroxide are no carbonate"), base);
    String acid = besides(alkalinity(water.with(Acid.HYDROCHLORIC, mmolPerL(2)))).get(0).text();
    assertTrue(acid.startsWith("at pH 2.72 about 2.0 mEq/kg of free acid are no"), acid);
  }

  private static Answer<?> alkalinity(Solution solution) {
    return solution.answer(Figures.CARBONATE_ALKALINITY);
  }

  private static List<Notice> besides(Answer<?> answer) {
    return answer.notices().stream()
        .filter(notice -> notice.code() == SolutionCode.BESIDES_CARBONATE)
        .toList();
  }
}
