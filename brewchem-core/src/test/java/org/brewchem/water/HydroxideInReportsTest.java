package org.brewchem.water;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.quantity.TitrationAlkalinity;
import org.junit.jupiter.api.Test;

/** What a report of an alkaline water says of the hydroxide that a titration of it counts. */
class HydroxideInReportsTest {

  private static WaterReport.Builder limed() {
    return WaterReport.reported()
        .calcium(mgPerL(20))
        .magnesium(mgPerL(3))
        .sodium(mgPerL(12))
        .sulfate(mgPerL(20))
        .chloride(mgPerL(10));
  }

  private static String carbonateNotice(double reported) {
    return limed().alkalinityAsCaCO3(mgPerL(60)).pH(pH(reported)).build().notices().stream()
        .filter(notice -> notice.code() == WaterCode.CARBONATE_PRESENT)
        .findFirst()
        .orElseThrow()
        .toString();
  }

  private static double alkalinityOf(WaterReport.Builder report) {
    return report.pH(pH(10.5)).build().water().alkalinity().value().inMilliequivalentsPerLitre();
  }

  /** By hand, pKw 13.995: 10^-3.495 over an activity coefficient of 0.98. */
  @Test
  void hydroxideThatCountsIsNamed() {
    assertTrue(
        carbonateNotice(10.5)
            .endsWith(
                "; a titration counts 0.33 mEq/L of hydroxide in it besides: an alkalinity that was"
                    + " titrated is to be stated with its end point"),
        carbonateNotice(10.5));
    assertTrue(carbonateNotice(9.8).contains("hydroxide"));
    assertFalse(carbonateNotice(9.7).contains("hydroxide"));
  }

  /**
   * The same 1.2 mEq/L are less carbonate where they were titrated, by the hydroxide among them.
   */
  @Test
  void aTitrationStatedWithItsEndPointLeavesHydroxideOut() {
    double taken = alkalinityOf(limed().alkalinityAsCaCO3(mgPerL(60)));
    double titrated =
        alkalinityOf(
            limed()
                .titrationAlkalinity(TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(60, pH(4.5))));
    assertEquals(0.33, taken - titrated, 0.05);
  }
}
