package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.junit.jupiter.api.Test;

/** Closing a mixture, held against the closed form of a diprotic acid in a textbook's water. */
class CarbonateBalanceTest {

  /** pK1 and pK2 at 25 °C, Goldberg et al. 2002. */
  private static final double K1 = Math.pow(10, -6.351);

  private static final double K2 = Math.pow(10, -10.329);

  private static Equilibria mixture(Chemistry chemistry) {
    Equilibria equilibria =
        Equilibria.of(
            List.of(Component.SODIUM, Component.CHLORIDE, Component.CARBONATE),
            celsius(25),
            chemistry);
    equilibria.setTotal(0, 5e-3);
    equilibria.setTotal(1, 2e-3);
    return equilibria;
  }

  private static Equilibria ideal() {
    return mixture(Chemistry.textbook(14));
  }

  /** Eq of alkalinity for each mole of carbon dioxide. */
  private static double share(double pH) {
    double h = Math.pow(10, -pH);
    return (1 + 2 * K2 / h) / (1 + h / K1 + K2 / h);
  }

  /** What water takes up from neutral at one pH to another, besides the carbonates. */
  private static double water(double from, double to) {
    return Math.pow(10, from - 14)
        - Math.pow(10, -from)
        - Math.pow(10, to - 14)
        + Math.pow(10, -to);
  }

  private static void assertClosed(
      Equilibria equilibria, CarbonateBalance balance, double total, double pH) {
    assertEquals(total, balance.total(), 1e-9 * total);
    assertEquals(balance.total(), equilibria.total(2), 0);
    assertEquals(pH, balance.pH(), 1e-9);
    assertEquals(pH, equilibria.pH(), 1e-9);
  }

  @Test
  void closedByAPhItIsNeutralThereWithTheAlkalinity() {
    Equilibria equilibria = ideal();
    CarbonateBalance balance = CarbonateBalance.of(equilibria);
    assertTrue(balance.closeByPH(4e-3, 7.7));
    assertClosed(equilibria, balance, 4e-3 / share(7.7), 7.7);
    assertEquals(4e-3, balance.alkalinity(), 1e-12);
    assertTrue(balance.closeByPH(0, 9));
    assertClosed(equilibria, balance, 0, 9);
    assertFalse(balance.closeByPH(0.1, 2));
  }

  @Test
  void closedByATotalItIsNeutralWhereBothGoTogether() {
    Equilibria equilibria = ideal();
    CarbonateBalance balance = CarbonateBalance.of(equilibria);
    assertTrue(balance.closeByTotal(4.2e-3 * share(7.1), 4.2e-3));
    assertClosed(equilibria, balance, 4.2e-3, 7.1);
    assertFalse(balance.closeByTotal(4e-3, 0));
    assertFalse(balance.closeByTotal(0, 4e-3));
    assertFalse(balance.closeByTotal(4e-3, 2e-3));
  }

  /** 5 mmol/kg of sodium against 2 of chloride: without carbonates 3 of acid make it neutral. */
  @Test
  void withoutAlkalinityAndCarbonDioxideTheIonsAloneAreMadeNeutral() {
    Equilibria equilibria = ideal();
    equilibria.setTotal(2, 1e-3);
    CarbonateBalance balance = CarbonateBalance.of(equilibria);
    assertTrue(balance.closeByTotal(0, 0));
    assertClosed(equilibria, balance, 0, 7);
    assertEquals(0, equilibria.chargeAt(7), 1e-12);
    assertEquals(0.0, balance.alkalinity());
  }

  @Test
  void closedByATitrationItTakesUpTheAcidToTheEndPoint() {
    Equilibria equilibria = ideal();
    CarbonateBalance balance = CarbonateBalance.of(equilibria);
    double wanted = 4e-3 * (share(7.7) - share(4.5)) + water(7.7, 4.5);
    assertTrue(balance.closeByTitration(wanted, 4.5, 7.7));
    assertEquals(4e-3, balance.total(), 1e-9);
    assertEquals(4e-3, equilibria.total(2), 1e-9);
    assertEquals(7.7, balance.pH());
    assertEquals(7.7, equilibria.pH(), 1e-7);
    assertFalse(balance.closeByTitration(100, 4.5, 7.7));
  }

  @Test
  void titratedIsTheAcidTakenUpAndLeavesTheMixtureOpen() {
    Equilibria equilibria = ideal();
    double open = equilibria.chargeAt(7.7);
    CarbonateBalance balance = CarbonateBalance.of(equilibria);
    equilibria.setInertCharge(0.05);
    double expected = 3e-3 * (share(7.7) - share(4.5)) + water(7.7, 4.5);
    assertEquals(expected, balance.titrated(3e-3, 4.5, 7.7), 1e-12);
    assertEquals(3e-3, equilibria.total(2), 0);
    assertEquals(open - 3e-3 * share(7.7), equilibria.chargeAt(7.7), 1e-12);
    assertEquals(water(7.7, 4.5), balance.titrated(0, 4.5, 7.7), 1e-12);
  }

  /** An inert charge counts in ionic strength, so that one left over would move the total. */
  @Test
  void anInertChargeLeftOverDoesNotMoveAClosure() {
    CarbonateBalance fresh = CarbonateBalance.of(mixture(Chemistry.of(Level.ACTIVITY)));
    Equilibria used = mixture(Chemistry.of(Level.ACTIVITY));
    CarbonateBalance again = CarbonateBalance.of(used);
    assertTrue(fresh.closeByPH(4e-3, 7.7));
    used.setInertCharge(0.05);
    assertTrue(again.closeByPH(4e-3, 7.7));
    assertEquals(fresh.total(), again.total(), 1e-15);
    assertTrue(fresh.closeByTotal(4e-3, 4.1e-3));
    used.setInertCharge(0.05);
    assertTrue(again.closeByTotal(4e-3, 4.1e-3));
    assertEquals(fresh.pH(), again.pH(), 1e-10);
  }

  @Test
  void theAlkalinitiesAtBothEndsHaveThePhOfTheEnds() {
    Equilibria equilibria = ideal();
    equilibria.setTotal(2, 4e-3);
    CarbonateBalance balance = CarbonateBalance.of(equilibria);
    double lowest = balance.alkalinityAt(2);
    double highest = balance.alkalinityAt(13.5);
    assertEquals(2, balance.pHOf(lowest).orElseThrow(), 1e-6);
    assertEquals(13.5, balance.pHOf(highest).orElseThrow(), 1e-6);
    assertEquals(OptionalDouble.empty(), balance.pHOf(0.9 * lowest));
    assertEquals(OptionalDouble.empty(), balance.pHOf(1.1 * highest));
    equilibria.setTotal(2, 0);
    assertEquals(OptionalDouble.empty(), balance.pHOf(0));
  }

  @Test
  void theTotalThatIsFoundIsLeftInTheWorkSpace() {
    Equilibria equilibria = ideal();
    CarbonateBalance balance = CarbonateBalance.of(equilibria);
    double found = balance.totalOf(4e-3, 7.7).orElseThrow();
    assertEquals(4e-3 / share(7.7), found, 1e-12);
    assertEquals(found, equilibria.total(2), 0);
    assertEquals(0, balance.totalOf(0, 7.7).orElseThrow(), 0);
    assertEquals(0, equilibria.total(2), 0);
  }

  @Test
  void aSolutionIsTakenOverWithItsInertCharge() {
    Solution solution =
        Solution.textbook()
            .with(Ion.SODIUM, mmolPerL(5))
            .with(Component.CARBONATE, mmolPerL(4))
            .withInertCharge(mEqPerL(-2))
            .closedTo(pH(8.1));
    assertEquals(4e-3 * share(8.1), CarbonateBalance.of(solution).ownAlkalinity(), 1e-10);
  }
}
