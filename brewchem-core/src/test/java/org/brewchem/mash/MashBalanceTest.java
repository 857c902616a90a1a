package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Salt;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;

/** The balance of a mash by arithmetic: malts of one capacity, read at 4 L/kg. */
class MashBalanceTest {

  /** 5.8 and 45 mEq/(kg pH) at 4 L/kg: 11.25 mEq per litre and pH; the free protons cancel. */
  @Test
  void theChargeIsThatOfTheMaltWhereTheLiquorIsAsInItsReading() {
    MashBalance balance = Mashes.mash(Mashes.exact(5.8, 45), Water.pure(), 4).balance();
    assertEquals(5.8, balance.pH(), 1e-12);
    assertEquals(11.25 * 0.4, balance.chargeAt(5.4), 1e-9, "the root is higher");
    assertEquals(-11.25 * 0.7, balance.chargeAt(6.5), 1e-9);
    assertEquals(11.25, balance.bufferCapacityAt(5.4), 1e-9);
    assertEquals(11.25, balance.bufferCapacityAt(6.5), 1e-9);
  }

  /** Twice the ratio: half of the water was in no reading; 45 mEq in 8 L, 5.625 in one. */
  @Test
  void theFreeProtonsOfAnotherRatioCount() {
    MashBalance balance = Mashes.mash(Mashes.exact(5.8, 45), Water.pure(), 8).balance();
    for (double at : new double[] {3.5, 4, 5.8, 9, 9.9}) {
      double half = charge(at) / 2;
      assertEquals(5.625 * (5.8 - at) + half, balance.chargeAt(at), 1e-7, "at " + at);
      assertEquals(charge(at), balance.ofLiquor(at), 1e-7);
      assertEquals(5.625 * (5.8 - at) - half, balance.ofMalt(0, at), 1e-7);
      double slope = (charge(at - 1e-4) - charge(at + 1e-4)) / 2e-4;
      assertEquals(5.625 + slope / 2, balance.bufferCapacityAt(at), 1e-6);
      assertEquals(-5.625 - slope / 2, balance.slope(at), 1e-6);
    }
  }

  private static double charge(double at) {
    return Solution.at(celsius(20)).charge(pH(at)).inMilliequivalentsPerLitre();
  }

  /** Beyond pH 3 and 10 no malt was read: it keeps the free protons that it had there. */
  @Test
  void beyondWhatWasReadAMaltKeepsTheFreeProtonsOfTheEnd() {
    MashBalance balance = Mashes.mash(Mashes.exact(5.8, 45), Water.pure(), 8).balance();
    for (double[] ends : new double[][] {{2, 3}, {2.9, 3}, {10.1, 10}, {11, 10}}) {
      double at = ends[0];
      assertEquals(
          5.625 * (5.8 - at) + charge(at) - charge(ends[1]) / 2, balance.chargeAt(at), 1e-6);
      double slope = (charge(at - 1e-4) - charge(at + 1e-4)) / 2e-4;
      assertEquals(5.625 + slope, balance.bufferCapacityAt(at), 1e-4 * slope);
    }
  }

  /** 1.75 mmol/L of calcium and 0.7 of magnesium: 3.5 / 3.5 + 1.4 / 7 = 1.2 mEq/L set free. */
  @Test
  void kolbachsTermIsSubtractedTimesItsFactor() {
    Water hard =
        Water.pure()
            .after(
                Treatments.solute(Salt.CALCIUM_CHLORIDE_DIHYDRATE, mmolPerL(1.75)),
                Treatments.solute(Component.MAGNESIUM, mmolPerL(0.7)),
                Treatments.solute(Component.CHLORIDE, mmolPerL(1.4)));
    Grist grist = Grist.of(kg(1), Mashes.exact(5.8, 45)).withKolbachFactor(1.5, 0);
    MashBalance balance = Mash.of(grist, hard, litres(4)).balance();
    assertEquals(1.2, balance.kolbach(), 1e-12);
    assertEquals(11.25 * 0.4 - 1.8, balance.chargeAt(5.4), 1e-3);
    assertEquals(5.8 - 1.8 / 11.25, balance.pH(), 1e-4);
    assertEquals(0, Mash.of(grist, Water.pure(), litres(4)).balance().kolbach(), 1e-15);
    // Other curves and another factor in the same liquor.
    MashBalance other =
        balance.with(List.of(MaltCurve.straight(Traced.exact(5.5), Traced.exact(-0.04))), 0.5);
    assertEquals(5.5 - 0.6 / 6.25, other.pH(), 1e-4);
  }

  /** 2 mEq/L of bicarbonate take 2 mEq/L of acid where the carbon dioxide leaves. */
  @Test
  void carbonateThatLeavesIsNotCountedAndIsThereAfterwards() {
    Mash mash = Mashes.mash(Mashes.exact(5.8, 45), Mashes.alkaline(2), 4);
    MashBalance leaving = mash.balance();
    assertEquals(11.25 * 0.4 + 2, leaving.chargeAt(5.4), 1e-3);
    assertEquals(11.25, leaving.bufferCapacityAt(5.4), 1e-3);
    int carbonate = leaving.liquor().indexOf(Component.CARBONATE);
    assertEquals(0, leaving.liquor().total(carbonate), "the liquor was balanced without it");
    leaving.liquor().setTotal(carbonate, 2e-3);
    assertEquals(11.25 * 0.4 + 2, leaving.chargeAt(5.4), 1e-3);
    assertEquals(2e-3, leaving.liquor().total(carbonate));
    MashBalance staying = mash.keepingCarbonDioxide().balance();
    // Held, it has the charge of carbonic acid at pH 5.4, and buffers.
    Solution alone = Solution.at(celsius(20)).with(Base.SODIUM_BICARBONATE, mmolPerL(2));
    assertEquals(
        11.25 * 0.4 + alone.charge(pH(5.4)).inMilliequivalentsPerLitre() - charge(5.4),
        staying.chargeAt(5.4),
        1e-3);
    assertEquals(
        11.25 + alone.bufferCapacity(pH(5.4)).inMilliequivalentsPerLitrePerPH(),
        staying.bufferCapacityAt(5.4),
        0.01);
    assertTrue(staying.bufferCapacityAt(5.4) > 11.4);
  }

  @Test
  void carbonateThatIsAllThereIsLeavesToo() {
    Solution carbonic = Solution.at(celsius(20)).withTotal(Component.CARBONATE, mmolPerKg(2));
    MashBalance balance = Mashes.mash(Mashes.exact(5.8, 45), carbonic, 4).balance();
    assertEquals(List.of(Component.CARBONATE), balance.liquor().components());
    balance.liquor().setTotal(0, 2e-3);
    assertEquals(11.25 * -0.7, balance.chargeAt(6.5), 1e-9);
    assertEquals(2e-3, balance.liquor().total(0));
  }

  /** Half of the water of 8 L/kg was in no reading; it buffers by its free protons. */
  @Test
  void theCapacityOfALearnedBrewIsThatAtThePHOfTheBalance() {
    Malt malt = Malt.stated("own malt", "invented", pH(5.8), 0.1, 45, 0);
    MashBalance balance =
        Mash.of(Grist.of(kg(1), malt), Water.pure(), litres(8))
            .measured(pH(5.6), 0.02)
            .now()
            .balance();
    double root = 4 + balance.root() - balance.pH();
    assertTrue(root > 4.01, "the brew lies lower than its balance");
    double slope = (charge(root - 1e-4) - charge(root + 1e-4)) / 2e-4;
    assertEquals(5.625 + slope / 2, balance.bufferCapacityAt(4), 1e-5);
  }

  /** What a brew differs by is added to the root: the balance is asked that much lower. */
  @Test
  void theBalanceOfALearnedBrewIsAskedAtThePHOfTheBrew() {
    Malt malt = Malt.stated("own malt", "invented", pH(5.8), 0.1, 45, 0);
    Mash now =
        Mash.of(Grist.of(kg(1), malt), Water.pure(), litres(4)).measured(pH(5.6), 0.02).now();
    MashBalance balance = now.balance();
    assertEquals(now.pH().number(), balance.pH(), 1e-12);
    // 0.03² of 0.1² + 0.03² + 0.02² is this brew's.
    assertEquals(-0.2 * 9 / 113, balance.pH() - balance.root(), 1e-6);
    assertEquals(0, balance.chargeAt(balance.pH()), 1e-9);
    assertEquals(11.25 * 0.1, balance.chargeAt(balance.pH() - 0.1), 1e-9);
    assertEquals(11.25, balance.bufferCapacityAt(balance.pH()), 1e-9);
    MashBalance with = balance.with(List.of(malt.curve()), 1);
    assertEquals(5.8 - 0.2 * 9 / 113, with.pH(), 1e-6);
  }

  /** Far from the malts: 22.5 mEq/L of strong base on 11.25 mEq/(L pH) are two of pH. */
  @Test
  void aRootFarFromTheMaltsIsFound() {
    Mash up = Mashes.mash(Mashes.exact(5.8, 45), Mashes.acid(-22.5), 4);
    assertEquals(7.8, up.balance().pH(), 1e-3);
    Mash down = Mashes.mash(Mashes.exact(5.8, 45), Mashes.acid(22.5), 4);
    assertEquals(3.8, down.balance().pH(), 5e-3);
  }

  @Test
  void aBalanceWithoutARootSaysSo() {
    MashBalance balance = Mashes.mash(Mashes.exact(5.8, 45), Water.pure(), 4).balance();
    balance.liquor().setInertCharge(-40);
    String low = assertThrows(NoSolutionException.class, balance::pH).getMessage();
    assertTrue(low.startsWith("mash pH: no root found between -1.00000 and 15.0000"), low);
  }
}
