package org.brewchem.water;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.substance.Ion;
import org.brewchem.water.ReportedBalance.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReportedBalanceTest {

  private static ReportedBalance balance(double cations, double anions) {
    Map<Ion, Double> equivalents = new LinkedHashMap<>();
    equivalents.put(Ion.SODIUM, cations);
    equivalents.put(Ion.CHLORIDE, anions);
    return new ReportedBalance(equivalents, List.of());
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
    "0.2, 0, ACCEPTABLE",
    "800, 800, ACCEPTABLE",
    "801, 801, NOT_JUDGED"
  })
  void theLimitGoesByTheAnionSum(double cations, double anions, Verdict verdict) {
    assertEquals(verdict, balance(cations, anions).verdict());
  }

  @Test
  void aWaterWithoutIonsBalances() {
    assertEquals(Verdict.ACCEPTABLE, balance(0, 0).verdict());
  }

  @Test
  void aSmallAnionSumIsJudgedInMilliequivalents() {
    assertEquals(
        "ion balance +0.10 mEq/L (+4.8 %) at an anion sum of 1.0 mEq/L: acceptable (limit 0.2"
            + " mEq/L)",
        balance(1.1, 1.0).toString());
  }

  @Test
  void theLimitIsPrintedByTheAnionSum() {
    assertEquals(
        "ion balance +0.10 mEq/L (+1.6 %) at an anion sum of 3.0 mEq/L: acceptable (limit 0.2"
            + " mEq/L)",
        balance(3.1, 3).toString());
    assertEquals(
        "ion balance +0.5 % at an anion sum of 10.0 mEq/L: acceptable (limit 2 %)",
        balance(10.1, 10).toString());
    assertEquals(
        "ion balance -4.8 % at an anion sum of 11.0 mEq/L: acceptable (limit 5 %)",
        balance(10, 11).toString());
  }

  @Test
  void whyABalanceIsNotJudgedIsPrinted() {
    assertEquals(
        "ion balance +0.0 % at an anion sum of 801.0 mEq/L: not judged",
        balance(801, 801).toString());
    assertEquals(
        "ion balance +0.0 % at an anion sum of 800.0 mEq/L: not judged: too much missing",
        new ReportedBalance(Map.of(Ion.SODIUM, 800.0, Ion.CHLORIDE, 800.0), List.of(Ion.SULFATE))
            .toString());
  }

  /** What lies below a limit counts with what the balance lacks, from nothing up to the limit. */
  @Test
  void anIonBelowALimitCountsWithWhatTheBalanceNeeds() {
    for (double[] row : new double[][] {{4.5, 5}, {2, 4}, {6, 6}}) {
      ReportedBalance balance =
          new ReportedBalance(
              Map.of(Ion.SODIUM, 5.0, Ion.CHLORIDE, row[0]), Map.of(Ion.SULFATE, 2.0), List.of());
      assertEquals(row[1], balance.anions(), 1e-12);
      assertEquals(5, balance.cations(), 1e-12);
    }
  }

  /** 2 mEq/L of calcium are 40.078 mg/L, and of chloride 70.90. */
  @Test
  void whatClosesABalanceIsOfTheSignThatLacks() {
    assertEquals(40.078, balance(3, 5).closing(Ion.CALCIUM), 0.001);
    assertEquals(-70.90, balance(3, 5).closing(Ion.CHLORIDE), 0.01);
    assertEquals(70.90, balance(5, 3).closing(Ion.CHLORIDE), 0.01);
  }
}
