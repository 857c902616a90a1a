package org.brewchem.buffer;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.brewchem.figure.Code;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class StandInTest {

  private static final Contents NOTHING_KNOWN = Contents.pure(celsius(20), Chemistry.standard());

  private static TitratableAcidity asLactic(double gramsPerLitre) {
    return acidity(gPerL(gramsPerLitre), LACTIC, pH(8.2));
  }

  private static Contents closed(double gramsPerLitre, double pH) {
    return StandIn.matching(asLactic(gramsPerLitre)).contents(NOTHING_KNOWN, Traced.exact(pH));
  }

  private static Set<Code> codes(Contents contents) {
    return contents.notices().stream().map(Notice::code).collect(Collectors.toSet());
  }

  /** Source montanari-1999, means in mg/L, seen; pyruvic and fumaric acid together. */
  @ParameterizedTest
  @CsvSource({
    "lactate-, 90.08, 128",
    "citrate3-, 192.12, 116",
    "acetate-, 60.05, 108",
    "succinate2-, 118.09, 68",
    "malate2-, 134.09, 63",
    "pyruvate-, 88.06, 44"
  })
  void theAcidsAreThePublishedMeansToATenthOfAMillimole(
      String key, double molarMass, double milligramsPerLitre) {
    assertEquals(
        milligramsPerLitre / molarMass,
        TypicalBeer.namedAcids(celsius(20)).total(Component.of(key)).inMillimolesPerLitre(),
        0.05);
  }

  /**
   * Sources ciqual-2020 (115 mg/kg of P, 60.5 of Ca, 72 of Mg), usda-sr28 (140, 40, 60) and
   * buckee-1995 (411.5, 224.1 and 397.5 mg/L of PO4), seen; 1.008 kg/L.
   */
  @Test
  void phosphateAndMetalsLieWithinThePublishedFigures() {
    double phosphate =
        TypicalBeer.namedAcids(celsius(20)).total(Component.PHOSPHATE).inMillimolesPerLitre();
    assertTrue(phosphate > 115 * 1.008 / 30.974 && phosphate < 140 * 1.008 / 30.974);
    assertTrue(phosphate > 224.1 / 94.97 && phosphate < 411.5 / 94.97);
    double calcium = TypicalBeer.metals().get(0).millimolesPerLitre();
    assertTrue(calcium > 40 * 1.008 / 40.078 && calcium < 60.5 * 1.008 / 40.078);
    double magnesium = TypicalBeer.metals().get(1).millimolesPerLitre();
    assertTrue(magnesium > 60 * 1.008 / 24.305 && magnesium < 72 * 1.008 / 24.305);
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void itHasTheMeasuredPhAndAcidity(Level level) {
    Contents known =
        Solution.at(celsius(20))
            .under(Chemistry.of(level))
            .with(Ion.CALCIUM, mmolPerL(1.5))
            .with(Ion.MAGNESIUM, mmolPerL(3))
            .contents();
    Solution solution =
        Solution.of(StandIn.matching(asLactic(1.8)).contents(known, Traced.exact(4.35)));
    assertEquals(4.35, solution.pH().value(), 1e-10);
    assertEquals(
        asLactic(1.8).inMilliequivalentsPerLitre(),
        solution.titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre(),
        1e-9);
  }

  @Test
  void acidsAndGroupsAreScaledByOneFactor() {
    Map<Component, Traced> little = closed(1.2, 4.3).totals();
    Map<Component, Traced> much = closed(2.4, 4.3).totals();
    assertEquals(little.keySet(), much.keySet());
    assertEquals(11, little.size());
    double ratio = much.get(Component.PHOSPHATE).value() / little.get(Component.PHOSPHATE).value();
    assertEquals(2, ratio, 0.05);
    little.forEach(
        (component, total) ->
            assertEquals(ratio, much.get(component).value() / total.value(), 1e-9));
  }

  @Test
  void anAcidThatIsKnownKeepsItsTotal() {
    Contents known = Solution.at(celsius(20)).with(Acid.LACTIC, mmolPerL(10)).contents();
    Solution solution = Solution.of(StandIn.matching(asLactic(2)).contents(known, Traced.exact(4)));
    assertEquals(10, solution.total(Component.LACTATE).inMillimolesPerLitre(), 1e-12);
    Solution typical = TypicalBeer.namedAcids(celsius(20));
    assertEquals(
        typical.total(Component.PHOSPHATE).inMillimolesPerLitre()
            / typical.total(Component.ACETATE).inMillimolesPerLitre(),
        solution.total(Component.PHOSPHATE).inMillimolesPerLitre()
            / solution.total(Component.ACETATE).inMillimolesPerLitre(),
        1e-12);
    assertEquals(4.0, solution.pH().value(), 1e-10);
  }

  @ParameterizedTest
  @CsvSource({"0.2, 4.4", "0.6, 4.4", "8, 4.4", "0.3, 3.2", "12, 3.2"})
  void anyAcidityHasAComposition(double gramsPerLitre, double pH) {
    Solution solution = Solution.of(closed(gramsPerLitre, pH));
    assertEquals(pH, solution.pH().value(), 1e-10);
    assertEquals(
        gramsPerLitre, solution.titratableAcidity(pH(8.2)).inGramsPerLitreAs(LACTIC), 1e-9);
  }

  @Test
  void anAcidityThatNoCompositionHasIsRefusedNamingTheSmallest() {
    Contents known = Solution.at(celsius(20)).with(LACTIC, mmolPerL(10)).contents();
    StandIn standIn = StandIn.matching(asLactic(0.1));
    AcidityBelowStandInException thrown =
        assertThrows(
            AcidityBelowStandInException.class, () -> standIn.contents(known, Traced.exact(4.4)));
    assertEquals(standIn.smallestAcidity(known, pH(4.4)), thrown.smallest());
    assertTrue(
        thrown.getMessage().startsWith("titratable acidity: 0.100 g/L as lactic acid, to pH 8.2"),
        thrown.getMessage());
    Contents smallest = StandIn.matching(thrown.smallest()).contents(known, Traced.exact(4.4));
    assertEquals(4.4, smallest.pH().value(), 1e-10);
    assertEquals(0, smallest.totals().get(Component.PHOSPHATE).value(), 1e-12);
    assertThrows(
        AcidityBelowStandInException.class,
        () -> StandIn.matching(asLactic(0.09)).contents(NOTHING_KNOWN, Traced.exact(3)));
  }

  /** The spreads of the composition were settled by the study of unlike beers. */
  @Test
  void aChangeOfPhCarriesFortyPerCentFromTheSpreadsOfTheComposition() {
    Traced change = changeByHalfAGramOfLacticAcid(exactly(1.8), Traced.exact(4.35));
    assertEquals(0.40, relative(change), 0.05);
    assertEquals(11, change.parts().size());
    change
        .parts()
        .forEach(
            (source, part) ->
                assertTrue(
                    source.name().startsWith("carboxyl")
                        || part * part < 0.2 * Math.pow(change.knownPart(), 2),
                    source.name()));
  }

  private static Traced exactly(double gramsPerLitre) {
    return Traced.exact(asLactic(gramsPerLitre).inMilliequivalentsPerLitre());
  }

  private static double relative(Traced change) {
    return change.standardUncertainty().orElseThrow() / Math.abs(change.value());
  }

  private static Traced changeByHalfAGramOfLacticAcid(Traced acidity, Traced pH) {
    Contents before = StandIn.matching(acidity, pH(8.2)).contents(NOTHING_KNOWN, pH);
    double moles =
        AmountConcentration.from(gPerL(0.5), LACTIC.molarMass()).inMolesPerLitre()
            / before.kilogramsPerLitre();
    return before.plus(Map.of(Component.LACTATE, Traced.exact(moles))).pH().minus(before.pH());
  }

  /** Against differences: every input moved by itself, and the beer closed and dosed again. */
  @Test
  void theSlopesAreThoseOfTheClosureItself() {
    Source acidity = Source.of("acidity", exactly(1.8).value(), 0.1, "mEq/L");
    Source pH = Source.of("pH", 4.35, 0.02, "");
    Traced change = changeByHalfAGramOfLacticAcid(Traced.of(acidity), Traced.of(pH));
    double step = 1e-4;
    double overAcidity =
        (changeByHalfAGramOfLacticAcid(Traced.exact(acidity.estimate() + step), Traced.exact(4.35))
                    .value()
                - changeByHalfAGramOfLacticAcid(
                        Traced.exact(acidity.estimate() - step), Traced.exact(4.35))
                    .value())
            / (2 * step);
    assertEquals(overAcidity, change.sensitivity(acidity), 1e-5 * Math.abs(overAcidity));
    double overPH =
        (changeByHalfAGramOfLacticAcid(exactly(1.8), Traced.exact(4.35 + step)).value()
                - changeByHalfAGramOfLacticAcid(exactly(1.8), Traced.exact(4.35 - step)).value())
            / (2 * step);
    assertEquals(overPH, change.sensitivity(pH), 1e-5 * Math.abs(overPH));
  }

  @Test
  void phAndAcidityComeBackWithTheUncertaintyTheyWentInWith() {
    Traced acidity = Traced.of(Source.of("acidity", exactly(1.8).value(), 0.1, "mEq/L"));
    Traced pH = Traced.of(Source.of("pH", 4.35, 0.02, ""));
    Contents contents = StandIn.matching(acidity, pH(8.2)).contents(NOTHING_KNOWN, pH);
    assertEquals(0.02, contents.pH().standardUncertainty().orElseThrow(), 1e-9);
    assertEquals(
        0.1 / 1000 / contents.kilogramsPerLitre(),
        contents.chargeAt(Traced.exact(8.2)).standardUncertainty().orElseThrow(),
        1e-12);
  }

  @Test
  void anAcidityWithoutUncertaintyLeavesTheChangeWithoutOne() {
    Contents contents = closed(1.8, 4.35);
    Traced change =
        contents.plus(Map.of(Component.LACTATE, Traced.exact(0.005))).pH().minus(contents.pH());
    assertTrue(change.standardUncertainty().isEmpty());
    assertEquals(
        List.of("titratable acidity"), change.missing().stream().map(Source::name).toList());
  }

  @Test
  void whatItRestsOnAndItsLimitsAreSaid() {
    assertEquals(Set.of(BufferCode.RESTS_ON_STAND_IN), codes(closed(1.8, 4.35)));
    assertEquals(
        Set.of(BufferCode.RESTS_ON_STAND_IN, BufferCode.STAND_IN_STRETCHED),
        codes(closed(6.5, 4.2)));
    assertTrue(
        closed(6.5, 4.2).notices().get(1).text().endsWith("Carbon dioxide reads as acid"),
        "an acidity that is too large may be that of a sample with gas");
    assertTrue(closed(0.4, 4.4).notices().get(1).text().endsWith("measure the buffer"));
    assertEquals(
        Set.of(BufferCode.RESTS_ON_STAND_IN, BufferCode.STAND_IN_SOURED), codes(closed(3, 3.5)));
    assertTrue(closed(1.8, 4.35).basis().stream().allMatch(StandInTest::holds));
  }

  private static boolean holds(Step step) {
    return step.detail().orElseThrow().holds();
  }

  /** 0.4 mol of lactic acid for each equivalent that water at this pH does not hold itself. */
  @ParameterizedTest
  @CsvSource({"3.2, 0.4", "3.6, 0.4", "3.7, 0.3", "3.9, 0.1", "4.0, 0", "4.4, 0"})
  void belowPhFourAShareOfTheAcidityIsLacticAcid(double pH, double molesPerEquivalent) {
    StandIn standIn = StandIn.matching(asLactic(4));
    Contents contents = standIn.contents(NOTHING_KNOWN, Traced.exact(pH));
    double kilograms = NOTHING_KNOWN.kilogramsPerLitre();
    double factor = contents.totals().get(Component.PHOSPHATE).value() * kilograms / 0.004;
    double ofTypical = factor * 0.0014 / kilograms;
    double equivalents =
        asLactic(4)
                .minus(standIn.smallestAcidity(NOTHING_KNOWN, pH(pH)))
                .inMilliequivalentsPerLitre()
            / (1000 * kilograms);
    Traced lactate = contents.totals().get(Component.LACTATE);
    assertEquals(molesPerEquivalent * equivalents, lactate.value() - ofTypical, 1e-12);
    Optional<Source> source =
        lactate.sources().stream()
            .filter(each -> each.name().equals("lactic acid of souring in the stand-in"))
            .findFirst();
    assertEquals(molesPerEquivalent > 0, source.isPresent());
    source.ifPresent(
        each ->
            assertEquals(
                0.75 * molesPerEquivalent, each.standardUncertainty().orElseThrow(), 1e-12));
    assertEquals(molesPerEquivalent > 0, codes(contents).contains(BufferCode.STAND_IN_SOURED));
  }

  @Test
  void whereLacticAcidIsKnownNoneIsAdded() {
    Contents known = Solution.at(celsius(20)).with(LACTIC, mmolPerL(10)).contents();
    Contents contents = StandIn.matching(asLactic(4)).contents(known, Traced.exact(3.4));
    assertEquals(
        known.totals().get(Component.LACTATE).value(),
        contents.totals().get(Component.LACTATE).value(),
        1e-15);
    assertFalse(codes(contents).contains(BufferCode.STAND_IN_SOURED));
  }

  @Test
  void anAcidityOfNothingIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> StandIn.matching(asLactic(0)));
  }
}
