package org.brewchem.water;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Salt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

  /**
   * A solution of known ions, made alkaline by lime, so that it is neutral by definition; read back
   * by its figures as a laboratory would state them.
   */
  private static WaterReport.Builder read(Solution water) {
    return ions(water).pH(water.pH());
  }

  private static WaterReport.Builder ions(Solution water) {
    return WaterReport.reported()
        .calcium(water.answer(Figures.CALCIUM).value())
        .magnesium(water.answer(Figures.MAGNESIUM).value())
        .sodium(water.answer(Figures.SODIUM).value())
        .potassium(mgPerL(0))
        .sulfate(water.answer(Figures.SULFATE).value())
        .chloride(water.answer(Figures.CHLORIDE).value())
        .nitrate(mgPerL(0));
  }

  private static Solution alkaline() {
    return Solution.at(celsius(20))
        .with(Salt.CALCIUM_CHLORIDE_ANHYDROUS, mmolPerL(0.2))
        .with(Salt.EPSOM_SALT, mmolPerL(0.2))
        .with(Base.SODIUM_BICARBONATE, mmolPerL(0.6))
        .with(Base.SODIUM_HYDROXIDE, mmolPerL(1.5));
  }

  private static List<WaterCode> codes(WaterReport report) {
    return report.notices().stream()
        .map(Notice::code)
        .filter(WaterCode.class::isInstance)
        .map(WaterCode.class::cast)
        .toList();
  }

  @Test
  void hydroxideThatWasTitratedIsAnAnionAndContradictsNothing() {
    Solution water = alkaline();
    WaterReport report =
        read(water)
            .titrationAlkalinity(water.answer(Figures.titrationAlkalinity(pH(4.3))).value())
            .build();
    List<WaterCode> codes = codes(report);
    assertTrue(codes.contains(WaterCode.ION_BALANCE_ACCEPTABLE), report.notices()::toString);
    assertFalse(codes.contains(WaterCode.PH_CONTRADICTS_ALKALINITY), report.notices()::toString);
    assertFalse(codes.contains(WaterCode.CONDUCTIVITY_OFF), report.notices()::toString);
    String named =
        report.notices().stream()
            .filter(notice -> notice.code() == WaterCode.CARBONATE_PRESENT)
            .findFirst()
            .orElseThrow()
            .text();
    assertTrue(named.contains("in it besides, as this one did"), named);
    assertEquals(
        water.answer(Figures.titrationAlkalinity(pH(4.3))).value().inMilliequivalentsPerLitre(),
        report.water().titrationAlkalinity(pH(4.3)).number(),
        1e-6);
  }

  /** Acid and base to two end points tell the pH and the carbon dioxide of the water. */
  @ParameterizedTest
  @ValueSource(doubles = {-1, 0, 0.5, 1.5})
  void twoTitrationsGiveBackTheWaterThatTheyWereOf(double lye) {
    Solution bicarbonate =
        Solution.at(celsius(25))
            .with(Salt.CALCIUM_CHLORIDE_ANHYDROUS, mmolPerL(0.2))
            .with(Salt.EPSOM_SALT, mmolPerL(0.2))
            .with(Base.SODIUM_BICARBONATE, mmolPerL(2));
    Solution water =
        lye < 0
            ? bicarbonate.with(Acid.CARBONIC, mmolPerL(-lye))
            : bicarbonate.with(Base.SODIUM_HYDROXIDE, mmolPerL(lye));
    double toMethylOrange = equivalents(water, 4.3);
    double toPhenolphthalein = equivalents(water, 8.2);
    WaterReport.Builder builder = ions(water).acidCapacity(mmolPerL(toMethylOrange));
    WaterReport report =
        (toPhenolphthalein > 0
                ? builder.pValue(mmolPerL(toPhenolphthalein))
                : builder.baseCapacity(mmolPerL(-toPhenolphthalein)))
            .build();
    Water found = report.water();
    assertEquals(water.pH().value(), found.pH().number(), 1e-6);
    assertEquals(
        water.answer(Figures.TOTAL_CARBON_DIOXIDE).number(),
        found.totalCarbonDioxide().number(),
        1e-6);
    assertEquals(toMethylOrange, found.titrationAlkalinity(pH(4.3)).number(), 1e-9);
    assertEquals(toPhenolphthalein, found.titrationAlkalinity(pH(8.2)).number(), 1e-9);
    assertTrue(
        codes(report).contains(WaterCode.ION_BALANCE_ACCEPTABLE), report.notices()::toString);
    assertFalse(codes(report).contains(WaterCode.PH_MISSING), report.notices()::toString);
    assertTrue(found.answer(Figures.PH_VALUE).explain().holds());
  }

  /** More acid to pH 8.2 than to 4.3 is no water; the balance stays open and says so. */
  @Test
  void titrationsThatNoWaterHasAreRefused() {
    WaterReport.Builder report = limed().acidCapacity(mmolPerL(1)).pValue(mmolPerL(1.5));
    assertTrue(
        assertThrows(IllegalArgumentException.class, report::build)
            .getMessage()
            .endsWith("no water has both"));
  }

  private static double equivalents(Solution water, double endPoint) {
    return water
        .answer(Figures.titrationAlkalinity(pH(endPoint)))
        .value()
        .inMilliequivalentsPerLitre();
  }

  @Test
  void carbonateWithoutBicarbonateLeavesAnAcidCapacityWhatItIs() {
    double alone = limed().acidCapacity(mmolPerL(4.3)).build().water().alkalinity().number();
    assertEquals(
        alone,
        limed()
            .acidCapacity(mmolPerL(4.3))
            .carbonate(mgPerL(0))
            .build()
            .water()
            .alkalinity()
            .number(),
        1e-9);
  }

  /** By hand: 200 mg/L of HCO3 are 164.0, 10 of CO3 16.7 mg/L as CaCO3; together 180.7. */
  @Test
  void bicarbonateCountsWithTheCarbonateBesideItWhereAnAlkalinityIsStatedToo() {
    WaterReport.Builder report =
        limed().bicarbonate(mgPerL(200)).carbonate(mgPerL(10)).alkalinityAsCaCO3(mgPerL(180.7));
    assertEquals(180.7, report.build().water().alkalinity().number(), 1e-9);
    assertThrows(
        IllegalArgumentException.class,
        () ->
            limed()
                .bicarbonate(mgPerL(200))
                .carbonate(mgPerL(10))
                .alkalinityAsCaCO3(mgPerL(164))
                .build());
  }

  /** By hand: 5 mg/L of magnesium are 20.6 mg/L as CaCO3 or 1.15 °dH. */
  @Test
  void aHardnessBelowThatOfOneIonIsNamed() {
    WaterReport report =
        WaterReport.reported()
            .magnesium(mgPerL(5))
            .totalHardness(Hardness.ofGermanDegrees(0.5))
            .build();
    Notice off =
        report.notices().stream()
            .filter(notice -> notice.code() == WaterCode.HARDNESS_OFF)
            .findFirst()
            .orElseThrow();
    assertTrue(off.text().contains("magnesium alone makes 20.6 mg/L"), off.text());
    assertFalse(
        codes(
                WaterReport.reported()
                    .magnesium(mgPerL(5))
                    .totalHardness(Hardness.ofGermanDegrees(1.2))
                    .build())
            .contains(WaterCode.HARDNESS_OFF));
  }

  /** By hand: 2.0 mEq/L are 100 mg/L as CaCO3, which no rounding takes for 215. */
  @Test
  void anAcidCapacityWithoutAPHAgreesWithAnAlkalinityOrIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> limed().alkalinityAsCaCO3(mgPerL(215)).acidCapacity(mmolPerL(2)).build());
    assertEquals(
        215,
        limed()
            .alkalinityAsCaCO3(mgPerL(215))
            .acidCapacity(mmolPerL(4.3))
            .build()
            .water()
            .alkalinity()
            .number(),
        1e-9);
  }

  /** 2.5 % of 4.3 mEq/L, and of 15 °dH; both would make a residual alkalinity without u. */
  @Test
  void anAcidCapacityAndATotalHardnessAssumeUncertaintiesToo() {
    Water water =
        limed()
            .acidCapacity(mmolPerL(4.3))
            .totalHardness(Hardness.ofGermanDegrees(15))
            .build()
            .withAssumedUncertainties()
            .water();
    double alkalinity = water.alkalinity().number();
    assertEquals(0.025 * alkalinity, water.alkalinity().standardUncertainty().orElseThrow(), 1e-9);
    assertEquals(
        0.025 * water.totalHardness().number(),
        water.totalHardness().standardUncertainty().orElseThrow(),
        1e-9);
  }

  /** No alkalinity at all above the end point, and less than the hydroxide of the pH alone. */
  @Test
  void aTitrationThatNoWaterOfThePHHasIsRefused() {
    for (double pH : new double[] {5.6, 11.28}) {
      WaterReport.Builder report = limed().acidCapacity(mmolPerL(0)).pH(pH(pH));
      assertTrue(
          assertThrows(IllegalArgumentException.class, report::build)
              .getMessage()
              .startsWith("alkalinity: 0.000 mEq/kg is not possible at pH " + pH));
    }
  }
}
