package org.brewchem.solution;

import static org.brewchem.solution.Figures.CARBONATE_ALKALINITY;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.IONIC_STRENGTH;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.POTASSIUM;
import static org.brewchem.solution.Figures.titratableAcidity;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Code;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.Salt;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

class ContentsTest {

  private static final Temperature AT = Temperature.ofCelsius(25);
  private static final org.brewchem.quantity.PH END = org.brewchem.quantity.PH.of(8.2);
  private static final Traced ALKALINITY = Held.read("alkalinity", 4.3e-3, 0.1e-3);
  private static final Traced MEASURED = Held.read("pH", 7.6, 0.05);

  private static Contents ions() {
    return Contents.pure(AT, Chemistry.standard())
        .withTotal(Component.CALCIUM, Held.read("calcium", 2.3e-3, 0.05e-3))
        .withTotal(Component.MAGNESIUM, Held.read("magnesium", 0.45e-3, 0.02e-3))
        .withTotal(Component.SULFATE, Held.read("sulfate", 0.47e-3, 0.01e-3))
        .withTotal(Component.CHLORIDE, Held.read("chloride", 0.87e-3, 0.02e-3))
        .withUnknown(Component.POTASSIUM);
  }

  private static Contents water() {
    return CarbonateClosure.of(ions(), List.of()).byPH(ALKALINITY, MEASURED);
  }

  @Test
  void whatWasReadComesBackWithItsOwnUncertainty() {
    Held water = new Held(water());
    Answer<?> pH = water.answer(PH_VALUE);
    assertEquals(7.6, pH.number(), 1e-9);
    assertEquals(0.05, pH.standardUncertainty().orElseThrow(), 1e-9);
    Answer<?> alkalinity = water.answer(CARBONATE_ALKALINITY);
    double perEquivalent = 50043.6 * water.contents().kilogramsPerLitre();
    assertEquals(4.3e-3 * perEquivalent, alkalinity.number(), 1e-2);
    assertEquals(
        0.1 / 4.3 * alkalinity.number(), alkalinity.standardUncertainty().orElseThrow(), 1e-6);
  }

  @Test
  void titratedAlkalinityComesBackToo() {
    org.brewchem.quantity.PH end = org.brewchem.quantity.PH.of(4.5);
    Contents closed = CarbonateClosure.of(ions(), List.of()).byTitration(ALKALINITY, end, MEASURED);
    Answer<?> back = new Held(closed).answer(Figures.titrationAlkalinity(end));
    assertEquals(4.3 * closed.kilogramsPerLitre(), back.number(), 1e-9);
    assertEquals(0.1 * closed.kilogramsPerLitre(), back.standardUncertainty().orElseThrow(), 1e-7);
  }

  @Test
  void saltLeavesTheUncertaintyOfAlkalinityAsItWas() {
    Map<Component, Traced> gypsum =
        Map.of(Component.CALCIUM, Traced.exact(1e-3), Component.SULFATE, Traced.exact(1e-3));
    double before =
        new Held(water()).answer(CARBONATE_ALKALINITY).standardUncertainty().orElseThrow();
    double after =
        new Held(water().plus(gypsum))
            .answer(CARBONATE_ALKALINITY)
            .standardUncertainty()
            .orElseThrow();
    assertEquals(before, after, 0.01 * before);
  }

  @Test
  void mixedWithItselfKeepsItsUncertainty() {
    Contents water = water();
    Contents twice = water.mixed(water, Traced.exact(0.3));
    assertEquals(
        new Held(water).answer(CHLORIDE).standardUncertainty().orElseThrow(),
        new Held(twice).answer(CHLORIDE).standardUncertainty().orElseThrow(),
        1e-12);
    assertEquals(
        0.05, new Held(twice).answer(PH_VALUE).standardUncertainty().orElseThrow(), 0.0005);
  }

  @Test
  void unknownConstituentIsNamedAndItsFigureUnknown() {
    Held water = new Held(water());
    Answer<?> potassium = water.answer(POTASSIUM);
    assertFalse(potassium.isStated());
    assertEquals("unknown: potassium is not reported", potassium.toString());
    assertThrows(UnknownFigureException.class, potassium::value);
    assertTrue(
        water.answer(PH_VALUE).notices().stream()
            .anyMatch(n -> n.toString().equals("counted as absent: potassium")));
  }

  @Test
  void openBalanceSaysWhatIsMissing() {
    Held open = new Held(ions().open(List.of("alkalinity is not reported")));
    assertEquals("unknown: alkalinity is not reported", open.answer(PH_VALUE).toString());
    assertTrue(open.answer(CHLORIDE).isStated());
  }

  @Test
  void explanationsHold() {
    Held water = new Held(water());
    for (var figure :
        Figure.list(
            PH_VALUE,
            CARBONATE_ALKALINITY,
            IONIC_STRENGTH,
            CHLORIDE,
            Figures.BUFFER_CAPACITY,
            Figures.CARBON_DIOXIDE_PRESSURE,
            Figures.SULFATE_TO_CHLORIDE,
            titratableAcidity(org.brewchem.quantity.PH.of(8.2)))) {
      Answer<?> answer = water.answer(figure);
      assertTrue(answer.explain().holds(), () -> figure + "\n" + answer.explain());
      assertTrue(answer.explain().lines().size() > 1);
    }
  }

  @Test
  void slopesOfTheKernelAreThoseOfDifferences() {
    Contents water = water();
    Traced byDifferences =
        water.trace(
            equilibria -> {
              equilibria.pH();
              return equilibria.chargeOf(equilibria.indexOf(Component.CARBONATE));
            });
    assertSameSlopes(byDifferences, water.chargeOf(Component.CARBONATE));
    assertSameSlopes(
        water.trace(
            equilibria -> {
              equilibria.pH();
              return equilibria.ionicStrength();
            }),
        water.ionicStrength());
    assertSameSlopes(water.trace(Equilibria::pH), water.pH());
    assertEquals(Traced.exact(0), water.chargeOf(Component.LACTATE));
  }

  private static void assertSameSlopes(Traced expected, Traced found) {
    assertEquals(expected.value(), found.value(), 1e-12);
    for (Source source : expected.sources()) {
      double u = source.standardUncertainty().orElseThrow();
      assertEquals(
          u * expected.sensitivity(source),
          u * found.sensitivity(source),
          1e-4 * expected.standardUncertainty().orElseThrow(),
          source.name());
    }
  }

  private static List<Code> codes(Answer<?> answer) {
    return answer.notices().stream().map(Notice::code).toList();
  }

  @Test
  void constantsBeyondTheirRangeAndOfUnstatedRangeBecomeNotices() {
    EquilibriumConstant lactic = EquilibriumConstant.ofLog10(-3.86).withRangeCelsius(15, 40);
    Chemistry own =
        Chemistry.of(Level.ACTIVITY)
            .withConstants(
                ConstantSet.empty("invented")
                    .with(Component.LACTATE, lactic)
                    .with(
                        Component.MALATE,
                        EquilibriumConstant.ofLog10(-3.4),
                        EquilibriumConstant.ofLog10(-5.1)));
    Solution acids =
        Solution.at(Temperature.ofCelsius(5))
            .under(own)
            .with(Component.LACTATE, Molality.ofMillimolesPerKilogram(2))
            .with(Component.MALATE, Molality.ofMillimolesPerKilogram(1));
    Answer<?> pH = acids.answer(PH_VALUE);
    assertEquals(
        List.of(SolutionCode.CONSTANT_BEYOND_RANGE, SolutionCode.CONSTANT_RANGE_UNSTATED),
        codes(pH));
    assertEquals(
        List.of(
            "pKa 1 of lactate (no source) holds from 15.0 to 40.0 °C, not at 5.0 °C",
            "2 of the constants used at 5.0 °C state no range of temperature: pKa of malate"),
        pH.notices().stream().map(Notice::text).toList());
    assertEquals(codes(pH), codes(acids.answer(titratableAcidity(END))));
    List<Code> ofAlkalinity = new ArrayList<>(codes(pH));
    ofAlkalinity.add(SolutionCode.BESIDES_CARBONATE);
    assertEquals(ofAlkalinity, codes(acids.answer(CARBONATE_ALKALINITY)));
    Solution warm = acids.heldAt(Temperature.ofCelsius(20));
    assertEquals(List.of(SolutionCode.CONSTANT_RANGE_UNSTATED), codes(warm.answer(PH_VALUE)));
  }

  @Test
  void anIonicStrengthBeyondTheRuleBecomesANotice() {
    Solution brine =
        Solution.at(AT)
            .under(Level.ACTIVITY)
            .with(Salt.SODIUM_CHLORIDE, Molality.ofMolesPerKilogram(0.6));
    assertEquals(List.of(SolutionCode.BEYOND_ACTIVITY_RANGE), codes(brine.answer(PH_VALUE)));
    assertEquals(List.of(), codes(brine.under(Level.IDEAL).answer(PH_VALUE)));
    assertEquals(List.of(), codes(brine.diluted(2).answer(PH_VALUE)));
  }

  @Test
  void aSolubilityBeyondItsRangeIsNoticedWhereItCounts() {
    Solution hot = Solution.of(water()).heldAt(Temperature.ofCelsius(100));
    assertTrue(
        hot.answer(Figures.CARBON_DIOXIDE_PRESSURE).notices().stream()
            .anyMatch(notice -> notice.subject().equals("carbon dioxide")));
    assertTrue(
        hot.answer(Figures.saturationIndex(Mineral.CALCITE)).notices().stream()
            .anyMatch(notice -> notice.subject().equals("calcite")));
  }

  private static Contents pure() {
    return Contents.pure(AT, Chemistry.standard()).withInertCharge(Traced.exact(0));
  }

  @Test
  void aNegativeTotalIsRefused() {
    assertEquals(
        "calcium: -0.001 mol/kg is not possible; 0 or more is allowed",
        assertThrows(
                IllegalArgumentException.class,
                () -> pure().withTotal(Component.CALCIUM, Traced.exact(-1e-3)))
            .getMessage());
  }

  /** What was compiled for the pH before serves the contents after only while nothing came in. */
  @Test
  void aPhThatWasAskedBeforeDoesNotMoveTheOneAfter() {
    Traced two = Traced.exact(2e-3);
    Contents asked = pure().withTotal(Component.SODIUM, two);
    double alone = asked.pH().value();
    Contents acid = pure().withTotal(Component.LACTATE, two);
    double both =
        pure().withTotal(Component.SODIUM, two).withTotal(Component.LACTATE, two).pH().value();
    assertEquals(both, asked.withTotal(Component.LACTATE, two).pH().value(), 1e-12);
    assertEquals(both, asked.plus(Map.of(Component.LACTATE, two)).pH().value(), 1e-12);
    assertEquals(
        alone,
        asked.withTotal(Component.LACTATE, two).withUnknown(Component.LACTATE).pH().value(),
        1e-12);
    assertEquals(
        pure().withTotal(Component.SODIUM, two).mixed(acid, Traced.exact(0.25)).pH().value(),
        asked.mixed(acid, Traced.exact(0.25)).pH().value(),
        1e-12);
    Temperature hot = Temperature.ofCelsius(60);
    assertEquals(
        pure().withTotal(Component.SODIUM, two).at(hot).pH().value(),
        asked.at(hot).pH().value(),
        1e-12);
    assertEquals(alone, asked.at(AT).pH().value(), 0);
  }

  @Test
  void whatIsAddedToAnUnknownCountsAsItsLeast() {
    Contents unknown = pure().withUnknown(Component.SODIUM);
    double own = unknown.pH().value();
    Map<Component, Traced> sodium = Map.of(Component.SODIUM, Traced.exact(1e-3));
    Contents added = unknown.plus(sodium).plus(sodium);
    assertEquals(Optional.empty(), added.total(Component.SODIUM));
    assertEquals(2e-3, added.least(Component.SODIUM).value(), 1e-15);
    assertEquals(Map.of(), added.totals());
    assertEquals(
        pure().withTotal(Component.SODIUM, Traced.exact(2e-3)).pH().value(),
        added.pH().value(),
        1e-12);
    assertTrue(added.pH().value() > own + 3);
    Contents known = pure().plus(sodium).plus(sodium);
    assertEquals(2e-3, known.total(Component.SODIUM).orElseThrow().value(), 1e-15);
    assertEquals(Set.of(Component.SODIUM), known.totals().keySet());
    assertEquals(Traced.exact(0), known.total(Component.CALCIUM).orElseThrow());
  }

  /** 3 and 1 mmol/kg in equal parts are 2, and each hundredth of share is worth 0.02. */
  @Test
  void theUncertaintyOfAShareCountsByWhatBothDifferIn() {
    Contents three = pure().withTotal(Component.SODIUM, Traced.exact(3e-3));
    Contents one = pure().withTotal(Component.SODIUM, Traced.exact(1e-3));
    Traced mixed =
        three.mixed(one, Held.read("share", 0.5, 0.01)).total(Component.SODIUM).orElseThrow();
    assertEquals(2e-3, mixed.value(), 1e-15);
    assertEquals(0.02e-3, mixed.standardUncertainty().orElseThrow(), 1e-15);
  }

  @Test
  void whatIsCarriedMixesUnlessOneOfBothKnowsNothing() {
    Contents untold = pure().withUnknown(Component.POTASSIUM);
    Contents one = untold.withCarriedOver(Component.POTASSIUM, Traced.exact(1e-3));
    Contents three = untold.withCarriedOver(Component.POTASSIUM, Traced.exact(3e-3));
    Traced half = Traced.exact(0.5);
    assertEquals(
        2e-3, one.mixed(three, half).carriedOver(Component.POTASSIUM).orElseThrow().value(), 1e-15);
    assertEquals(
        0.5e-3,
        one.mixed(pure(), half).carriedOver(Component.POTASSIUM).orElseThrow().value(),
        1e-15);
    assertEquals(Optional.empty(), one.mixed(untold, half).carriedOver(Component.POTASSIUM));
    assertEquals(Optional.empty(), untold.mixed(one, half).carriedOver(Component.POTASSIUM));
    Contents acid = pure().withAcidityBeyond(END, Traced.exact(4e-3));
    assertEquals(1e-3, acid.mixed(pure(), Traced.exact(0.25)).acidityBeyond(END).value(), 1e-15);
    assertEquals(Traced.exact(0), pure().acidityBeyond(END));
  }

  @Test
  void contentsPrintWhatIsKnownAndWhatIsNot() {
    assertEquals(
        "25 °C, [Na+], unknown [K+]",
        pure()
            .withTotal(Component.SODIUM, Traced.exact(1e-3))
            .withUnknown(Component.POTASSIUM)
            .toString());
    assertEquals("25 °C, []", pure().toString());
  }
}
