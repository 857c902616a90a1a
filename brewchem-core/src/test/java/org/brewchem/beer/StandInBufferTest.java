package org.brewchem.beer;

import static org.brewchem.beer.Beers.asLactic;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.brewchem.quantity.Molality;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class StandInBufferTest {

  private static final Solution NOTHING_KNOWN = Solution.at(celsius(20));

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
    Solution solution = StandInBuffer.matching(asLactic(1.8)).closed(NOTHING_KNOWN, pH(4.3));
    assertEquals(
        milligramsPerLitre / molarMass,
        solution.total(Component.of(key)).inMillimolesPerLitre(),
        0.05);
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void itHasTheMeasuredPhAndAcidity(Level level) {
    Solution solution = Beers.lager().under(Chemistry.of(level)).solution();
    assertEquals(4.35, solution.pH().value(), 1e-10);
    assertEquals(
        asLactic(1.8).inMilliequivalentsPerLitre(),
        solution.titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre(),
        1e-9);
  }

  @Test
  void onlyTheGroupsAreScaled() {
    Map<Component, Molality> little =
        StandInBuffer.matching(asLactic(1.2)).closed(NOTHING_KNOWN, pH(4.3)).totals();
    Map<Component, Molality> much =
        StandInBuffer.matching(asLactic(2.4)).closed(NOTHING_KNOWN, pH(4.3)).totals();
    assertEquals(little.keySet(), much.keySet());
    List<Double> ratios =
        little.keySet().stream()
            .map(key -> much.get(key).inMolesPerKilogram() / little.get(key).inMolesPerKilogram())
            .toList();
    assertEquals(7, ratios.stream().filter(ratio -> Math.abs(ratio - 1) < 1e-12).count());
    List<Double> scaled = ratios.stream().filter(ratio -> ratio > 1.5).toList();
    assertEquals(4, scaled.size());
    scaled.forEach(ratio -> assertEquals(scaled.get(0), ratio, 1e-9));
  }

  @Test
  void anAcidThatIsKnownKeepsItsTotal() {
    Solution known = NOTHING_KNOWN.with(Acid.LACTIC, mmolPerL(10));
    Solution solution = StandInBuffer.matching(asLactic(2)).closed(known, pH(4.0));
    assertEquals(10, solution.total(Component.LACTATE).inMillimolesPerLitre(), 1e-12);
    assertEquals(6, solution.total(Component.PHOSPHATE).inMillimolesPerLitre(), 1e-12);
    assertEquals(4.0, solution.pH().value(), 1e-10);
  }

  @Test
  void tooLittleAcidityIsRefusedNamingTheSmallest() {
    StandInBuffer standIn = StandInBuffer.matching(asLactic(0.5));
    AcidityBelowStandInException thrown =
        assertThrows(
            AcidityBelowStandInException.class, () -> standIn.closed(NOTHING_KNOWN, pH(4.4)));
    assertEquals(standIn.smallestAcidity(NOTHING_KNOWN, pH(4.4)), thrown.smallest());
    assertTrue(
        thrown.getMessage().startsWith("titratable acidity: 0.500 g/L as lactic acid, to pH 8.2"),
        thrown.getMessage());
    Solution smallest = StandInBuffer.matching(thrown.smallest()).closed(NOTHING_KNOWN, pH(4.4));
    assertEquals(4.4, smallest.pH().value(), 1e-10);
  }

  @Test
  void aPredictedChangeCarriesThirtyPerCent() {
    StandInBuffer standIn = StandInBuffer.matching(asLactic(1.8));
    assertEquals(0.06, standIn.standardUncertaintyOf(pH(4.4), pH(4.2)), 1e-12);
    assertEquals(0, standIn.standardUncertaintyOf(pH(4.4), pH(4.4)));
    assertTrue(standIn.basis().contains("stand-in"));
  }

  @Test
  void anAcidityOfNothingIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> StandInBuffer.matching(asLactic(0)));
  }
}
