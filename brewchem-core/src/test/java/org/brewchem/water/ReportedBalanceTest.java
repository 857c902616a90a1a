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
}
