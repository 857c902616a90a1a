package org.brewchem.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.UncoveredConstant.Reason;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.IonPair;
import org.brewchem.substance.PairSet;
import org.junit.jupiter.api.Test;

/** The constants here are invented; what is tested is what is said of their ranges. */
class UncoveredConstantTest {

  private static final EquilibriumConstant LACTIC =
      EquilibriumConstant.ofLog10(-3.86).withRangeCelsius(15, 40);

  private static final Chemistry OWN =
      Chemistry.of(Level.ACTIVITY)
          .withConstants(
              ConstantSet.empty("invented")
                  .with(Component.LACTATE, LACTIC)
                  .with(
                      Component.MALATE,
                      EquilibriumConstant.ofLog10(-3.4).withRangeCelsius(0, 50),
                      EquilibriumConstant.ofLog10(-5.1)));

  @Test
  void aTemperatureBeyondTheRangeIsReported() {
    UncoveredConstant cold =
        new UncoveredConstant(
            Component.LACTATE,
            OptionalInt.of(1),
            "H(lactate)",
            LACTIC,
            Reason.BEYOND_RANGE,
            Temperature.ofCelsius(5));
    assertEquals(List.of(cold), uncovered(5));
    assertEquals(
        "pKa 1 of lactate (no source) holds from 15.0 to 40.0 °C, not at 5.0 °C", cold.text());
    assertEquals(List.of(), uncovered(15));
    assertEquals(List.of(), uncovered(40));
    assertEquals(Reason.BEYOND_RANGE, uncovered(41).get(0).reason());
  }

  private static List<UncoveredConstant> uncovered(double celsius) {
    return OWN.uncoveredConstants(List.of(Component.LACTATE), Temperature.ofCelsius(celsius));
  }

  private static Solution lactic(double celsius) {
    return Solution.at(Temperature.ofCelsius(celsius))
        .under(OWN)
        .with(Component.LACTATE, AmountConcentration.ofMillimolesPerLitre(10))
        .with(Component.SODIUM, AmountConcentration.ofMillimolesPerLitre(5));
  }

  @Test
  void anUnstatedRangeIsReportedAtEveryTemperature() {
    for (double celsius : new double[] {5, 25, 65}) {
      List<UncoveredConstant> found =
          OWN.uncoveredConstants(List.of(Component.MALATE), Temperature.ofCelsius(celsius));
      UncoveredConstant second = found.get(found.size() - 1);
      assertEquals(celsius == 65 ? 2 : 1, found.size());
      assertEquals(OptionalInt.of(2), second.step());
      assertEquals("H(malate)-", second.species());
      assertEquals(Reason.RANGE_UNSTATED, second.reason());
      assertTrue(second.text().contains("not stated"), second.text());
    }
  }

  @Test
  void ionPairsCountAtTheirLevelAndWhereBothPartnersAreThere() {
    IonPair pair =
        IonPair.of(
            "Ca(lactate)+",
            Component.CALCIUM,
            Component.LACTATE,
            1,
            0,
            EquilibriumConstant.ofLog10(1.4).withRangeCelsius(20, 30));
    Chemistry pairs = OWN.at(Level.PAIRS).withPairs(PairSet.none().with(pair));
    Temperature cool = Temperature.ofCelsius(16);
    List<Component> both = List.of(Component.CALCIUM, Component.LACTATE);
    UncoveredConstant found = pairs.uncoveredConstants(both, cool).get(0);
    assertEquals(1, pairs.uncoveredConstants(both, cool).size());
    assertEquals("Ca(lactate)+", found.species());
    assertEquals(Component.LACTATE, found.component());
    assertEquals(OptionalInt.empty(), found.step());
    assertEquals(Reason.BEYOND_RANGE, found.reason());
    assertEquals(List.of(), pairs.uncoveredConstants(both, Temperature.ofCelsius(25)));
    assertEquals(List.of(), pairs.uncoveredConstants(List.of(Component.LACTATE), cool));
    assertEquals(List.of(), pairs.at(Level.ACTIVITY).uncoveredConstants(both, cool));
  }

  /** The rows of Goldberg, Kishore and Lennen 2002 in the table of constants have no range. */
  @Test
  void theStandardSetNamesItsSource() {
    List<UncoveredConstant> found =
        Chemistry.of(Level.ACTIVITY)
            .uncoveredConstants(List.of(Component.CITRATE), Temperature.ofCelsius(65));
    assertEquals(3, found.size());
    assertEquals(
        "pKa 3 of citrate (goldberg-2002) is used at 65.0 °C; its range of temperature is not"
            + " stated",
        found.get(2).text());
  }
}
