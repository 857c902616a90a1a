package org.brewchem.water;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.substance.Ion;
import org.brewchem.water.IonBalance.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class IonBalanceTest {

  private static IonBalance balance(double cations, double anions) {
    Map<Ion, Double> equivalents = new LinkedHashMap<>();
    equivalents.put(Ion.SODIUM, cations);
    equivalents.put(Ion.CHLORIDE, anions);
    return IonBalance.of(equivalents, List.of());
  }

  /** Limits of Standard Methods 1030 E, from memory, on both sides of each. */
  @ParameterizedTest
  @CsvSource({
    "1.19, 1.0, ACCEPTABLE",
    "1.21, 1.0, NOT_ACCEPTABLE",
    "0.81, 1.0, ACCEPTABLE",
    "0.79, 1.0, NOT_ACCEPTABLE",
    "3.19, 3.0, ACCEPTABLE",
    "3.19, 3.01, NOT_ACCEPTABLE",
    "6.24, 6.0, ACCEPTABLE",
    "6.25, 6.0, NOT_ACCEPTABLE",
    "10.5, 10.0, NOT_ACCEPTABLE",
    "11.0, 10.01, ACCEPTABLE",
    "22.1, 20.0, ACCEPTABLE",
    "22.2, 20.0, NOT_ACCEPTABLE",
    "801, 801, NOT_JUDGED"
  })
  void theLimitGoesByTheAnionSum(double cations, double anions, Verdict verdict) {
    assertEquals(verdict, balance(cations, anions).verdict());
  }

  @Test
  void theGermanPercentageIsTwiceTheOther() {
    IonBalance balance = balance(6.3, 6.1);
    assertEquals(100 * 0.2 / 12.4, balance.percentage(), 1e-12);
    assertEquals(100 * 0.2 / 6.2, balance.percentageOfMean(), 1e-12);
    assertEquals(0.2, balance.difference().inMilliequivalentsPerLitre(), 1e-12);
  }

  @Test
  void aWaterWithoutIonsBalances() {
    assertEquals(0, balance(0, 0).percentage());
    assertEquals(Verdict.ACCEPTABLE, balance(0, 0).verdict());
  }

  @Test
  void withoutAMainIonThereIsNoVerdict() {
    IonBalance balance =
        WaterAnalysis.reported().calcium(mgPerL(50)).bicarbonate(mgPerL(152)).build().ionBalance();
    assertEquals(Verdict.NOT_JUDGED, balance.verdict());
    assertTrue(balance.toString().endsWith("not judged: too much missing"), balance.toString());
    assertTrue(balance.explain().contains("missing: magnesium, sodium"), balance.explain());
  }

  @Test
  void aSmallAnionSumIsJudgedInMilliequivalents() {
    assertEquals(
        "ion balance +0.10 mEq/L (+4.8 %) at an anion sum of 1.0 mEq/L: acceptable (limit 0.2"
            + " mEq/L)",
        balance(1.1, 1.0).toString());
  }
}
