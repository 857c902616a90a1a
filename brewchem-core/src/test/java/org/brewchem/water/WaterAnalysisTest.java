package org.brewchem.water;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.CarbonateSystem;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Salt;
import org.junit.jupiter.api.Test;

/** The waters are invented unless a source is named. */
class WaterAnalysisTest {

  static WaterAnalysis tap() {
    return WaterAnalysis.reported()
        .calcium(mgPerL(92))
        .magnesium(mgPerL(11))
        .sodium(mgPerL(19))
        .nitrate(mgPerL(8))
        .sulfateAsSulfur(mgPerL(15))
        .chloride(mgPerL(31))
        .alkalinityAsCaCO3(mgPerL(215))
        .pH(pH(7.6))
        .build();
  }

  static WaterAnalysis soft() {
    return WaterAnalysis.reported()
        .calcium(mgPerL(9))
        .magnesium(mgPerL(2.5))
        .sodium(mgPerL(6))
        .potassium(mgPerL(1))
        .bicarbonate(mgPerL(33))
        .sulfate(mgPerL(7))
        .chloride(mgPerL(6))
        .nitrate(mgPerL(2))
        .pH(pH(7.9), celsius(12))
        .build();
  }

  /** Hand calculation with molar masses of CIAAW 2021: 40.078, 24.305, 100.086. */
  @Test
  void figuresFollowFromTheReport() {
    WaterAnalysis tap = tap();
    assertEquals(
        2 * 92 / 40.078, tap.calciumHardness().orElseThrow().inMilliequivalentsPerLitre(), 1e-4);
    assertEquals(
        2 * 11 / 24.305, tap.magnesiumHardness().orElseThrow().inMilliequivalentsPerLitre(), 1e-4);
    double alkalinity = 215 / 50.043;
    double total = 2 * 92 / 40.078 + 2 * 11 / 24.305;
    assertEquals(total, tap.totalHardness().orElseThrow().inMilliequivalentsPerLitre(), 1e-4);
    assertEquals(
        alkalinity, tap.temporaryHardness().orElseThrow().inMilliequivalentsPerLitre(), 1e-4);
    assertEquals(
        total - alkalinity,
        tap.permanentHardness().orElseThrow().inMilliequivalentsPerLitre(),
        1e-4);
    assertEquals("143 mg/L as CaCO3 (8.0 °dH)", tap.kolbach().orElseThrow().toString());
    assertEquals("1.4 by mass", tap.sulfateToChloride().toString());
    assertEquals(
        "ion balance +0.7 % at an anion sum of 6.2 mEq/L: acceptable (limit 2 %)",
        tap.ionBalance().toString());
  }

  @Test
  void whereAlkalinityOutweighsHardnessAllHardnessIsTemporary() {
    WaterAnalysis soda =
        WaterAnalysis.reported()
            .calcium(mgPerL(20))
            .magnesium(mgPerL(5))
            .bicarbonate(mgPerL(300))
            .build();
    assertEquals(soda.totalHardness(), soda.temporaryHardness());
    assertEquals(Optional.of(Hardness.ofMilliequivalentsPerLitre(0)), soda.permanentHardness());
  }

  @Test
  void missingIsMissing() {
    WaterAnalysis water =
        WaterAnalysis.reported().calcium(mgPerL(50)).bicarbonate(mgPerL(100)).build();
    assertTrue(water.calciumHardness().isPresent());
    assertTrue(water.magnesiumHardness().isEmpty());
    assertTrue(water.totalHardness().isEmpty());
    assertTrue(water.temporaryHardness().isEmpty());
    assertTrue(water.permanentHardness().isEmpty());
    assertTrue(water.residualAlkalinity().isEmpty());
    assertTrue(water.totalCarbonDioxide().isEmpty());
    assertTrue(water.pH().isEmpty());
    assertEquals(
        List.of(Ion.MAGNESIUM, Ion.SODIUM, Ion.POTASSIUM, Ion.SULFATE, Ion.CHLORIDE, Ion.NITRATE),
        water.missing());
    assertEquals("nothing reported", WaterAnalysis.reported().build().toString());
    IllegalStateException error =
        assertThrows(
            IllegalStateException.class,
            () -> WaterAnalysis.reported().build().toSolution(celsius(20)));
    assertTrue(error.getMessage().startsWith("alkalinity: is missing"), error.getMessage());
  }

  /** 96.056 / 32.06 and 62.004 / 14.007, CIAAW 2021. */
  @Test
  void sulfurAndNitrogenBecomeSulfateAndNitrate() {
    WaterAnalysis water =
        WaterAnalysis.reported().sulfateAsSulfur(mgPerL(10)).nitrateAsNitrogen(mgPerL(10)).build();
    assertEquals(29.962, water.sulfate().orElseThrow().inMilligramsPerLitre(), 0.001);
    assertEquals(44.266, water.nitrate().orElseThrow().inMilligramsPerLitre(), 0.001);
  }

  @Test
  void everyFigureIsStatedOnce() {
    IllegalStateException error =
        assertThrows(
            IllegalStateException.class,
            () -> WaterAnalysis.reported().sulfate(mgPerL(30)).sulfateAsSulfur(mgPerL(10)));
    assertEquals("sulfate: is stated twice", error.getMessage());
    assertThrows(
        IllegalStateException.class,
        () -> WaterAnalysis.reported().calcium(mgPerL(1)).calcium(mgPerL(1)));
    assertThrows(IllegalStateException.class, () -> WaterAnalysis.reported().pH(pH(7)).pH(pH(7)));
  }

  @Test
  void aNegativeConcentrationIsRefused() {
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class, () -> WaterAnalysis.reported().calcium(mgPerL(-3)));
    assertTrue(error.getMessage().contains("-3 mg/L is not possible"), error.getMessage());
  }

  @Test
  void twoBasesOfAlkalinityMustAgree() {
    WaterAnalysis water =
        WaterAnalysis.reported().alkalinityAsCaCO3(mgPerL(215)).bicarbonate(mgPerL(262)).build();
    assertEquals(
        Optional.of(CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(215)), water.alkalinity());
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class,
            () ->
                WaterAnalysis.reported()
                    .alkalinityAsCaCO3(mgPerL(215))
                    .bicarbonate(mgPerL(215))
                    .build());
    assertEquals(
        "alkalinity: 215.0 and 176.3 mg/L as CaCO3 on two bases is not possible; they may differ by"
            + " 1 mg/L or 1 %",
        error.getMessage());
  }

  @Test
  void aTitrationToAStatedPhIsFoundAgain() {
    TitrationAlkalinity titration = TitrationAlkalinity.ofMillimolesOfAcidPerLitre(4.2, pH(4.3));
    WaterAnalysis water =
        WaterAnalysis.reported()
            .calcium(mgPerL(80))
            .magnesium(mgPerL(10))
            .titrationAlkalinity(titration)
            .pH(pH(7.4), celsius(20))
            .build();
    assertEquals(
        4.2, water.titrationAlkalinity(pH(4.3), celsius(20)).inMilliequivalentsPerLitre(), 1e-6);
    assertNotEquals(4.2, water.alkalinity().orElseThrow().inMilliequivalentsPerLitre(), 1e-3);
    assertThrows(
        IllegalStateException.class,
        () -> WaterAnalysis.reported().titrationAlkalinity(titration).build());
  }

  @Test
  void theSolutionHasTheReportedPhAndAlkalinity() {
    Solution solution = soft().toSolution(celsius(12));
    assertEquals(7.9, solution.pH().value(), 1e-9);
    assertEquals(
        33.0,
        CarbonateSystem.carbonateAlkalinity(solution).inMilligramsPerLitreAsBicarbonate(),
        1e-6);
    assertEquals(9 / 40.078, solution.total(Component.CALCIUM).inMillimolesPerLitre(), 1e-6);
    assertNotEquals(7.9, soft().toSolution(celsius(60)).pH().value(), 0.01);
  }

  /** As much carbonic acid as carbonate: the mean of pK1 6.351 and pK2 10.329 (Goldberg 2002). */
  @Test
  void withoutAPhTheWaterHoldsAsMuchCarbonDioxideAsAlkalinity() {
    WaterAnalysis water =
        WaterAnalysis.reported().calcium(mgPerL(60)).bicarbonate(mgPerL(183.048)).build();
    Solution solution = water.toSolution(celsius(25), Chemistry.of(Level.IDEAL));
    assertEquals(3, solution.total(Component.CARBONATE).inMillimolesPerLitre(), 1e-9);
    assertEquals(8.340, solution.pH().value(), 1e-6);
  }

  /** Of a bicarbonate water a titration to 4.5 leaves some bicarbonate: about 1 % less is found. */
  @Test
  void titrationToAPhFindsSlightlyLessThanTheCarbonateAlkalinity() {
    double carbonate = tap().alkalinity().orElseThrow().inMilliequivalentsPerLitre();
    double titration = tap().titrationAlkalinity(pH(4.5), celsius(25)).inMilliequivalentsPerLitre();
    assertTrue(titration < carbonate);
    assertEquals(carbonate, titration, 0.015 * carbonate);
  }

  @Test
  void mixingIsExactInIonsAlkalinityAndCarbonDioxide() {
    WaterAnalysis mixed = tap().mixed(litres(3), soft(), litres(1));
    assertEquals((3 * 92 + 9) / 4.0, mixed.calcium().orElseThrow().inMilligramsPerLitre(), 1e-12);
    assertTrue(mixed.potassium().isEmpty());
    assertEquals(
        (3 * tap().alkalinity().orElseThrow().inMilliequivalentsPerLitre()
                + soft().alkalinity().orElseThrow().inMilliequivalentsPerLitre())
            / 4,
        mixed.alkalinity().orElseThrow().inMilliequivalentsPerLitre(),
        1e-12);
    assertTrue(mixed.pH().isEmpty());
    Solution together =
        tap().toSolution(celsius(20)).mixed(litres(3), soft().toSolution(celsius(20)), litres(1));
    Solution fromMixture = mixed.toSolution(celsius(20));
    assertEquals(
        together.total(Component.CARBONATE).inMillimolesPerLitre(),
        fromMixture.total(Component.CARBONATE).inMillimolesPerLitre(),
        1e-9);
    assertEquals(together.pH().value(), fromMixture.pH().value(), 0.005);
    assertThrows(IllegalArgumentException.class, () -> tap().mixed(litres(0), soft(), litres(0)));
  }

  @Test
  void dilutionHalvesEverythingThatIsKnown() {
    WaterAnalysis half = tap().diluted(2);
    assertEquals(46, half.calcium().orElseThrow().inMilligramsPerLitre(), 1e-12);
    assertEquals(107.5, half.alkalinity().orElseThrow().inMilligramsPerLitreAsCaCO3(), 1e-12);
    assertTrue(half.potassium().isEmpty());
    assertEquals(
        tap().totalCarbonDioxide().orElseThrow().inMillimolesPerLitre() / 2,
        half.totalCarbonDioxide().orElseThrow().inMillimolesPerLitre(),
        1e-12);
    assertThrows(IllegalArgumentException.class, () -> tap().diluted(0.5));
  }

  /** 1 g of gypsum is 0.2328 g of calcium and 0.5579 g of sulfate by its formula. */
  @Test
  void saltsAddTheirIons() {
    WaterAnalysis water = soft().with(Salt.GYPSUM, gPerL(0.1));
    assertEquals(9 + 23.28, water.calcium().orElseThrow().inMilligramsPerLitre(), 0.01);
    assertEquals(7 + 55.79, water.sulfate().orElseThrow().inMilligramsPerLitre(), 0.01);
    assertEquals(soft().alkalinity(), water.alkalinity());
    assertEquals(soft().totalCarbonDioxide(), water.totalCarbonDioxide());
    assertTrue(tap().with(Salt.POTASSIUM_CHLORIDE, mgPerL(50)).potassium().isEmpty());
    assertEquals(
        soft().ionBalance().difference().inMilliequivalentsPerLitre(),
        water.ionBalance().difference().inMilliequivalentsPerLitre(),
        1e-9);
  }

  @Test
  void carbonatesAddTheirEquivalentsToTheAlkalinity() {
    double before = soft().alkalinity().orElseThrow().inMilliequivalentsPerLitre();
    WaterAnalysis water = soft().with(Base.SODIUM_BICARBONATE, mgPerL(84.006));
    assertEquals(before + 1, water.alkalinity().orElseThrow().inMilliequivalentsPerLitre(), 1e-4);
    assertEquals(
        soft().totalCarbonDioxide().orElseThrow().inMillimolesPerLitre() + 1,
        water.totalCarbonDioxide().orElseThrow().inMillimolesPerLitre(),
        1e-4);
    WaterAnalysis chalked = soft().with(Salt.CHALK, mgPerL(50.043));
    assertEquals(before + 1, chalked.alkalinity().orElseThrow().inMilliequivalentsPerLitre(), 1e-4);
  }

  @Test
  void aHydroxideTakesUpCarbonDioxide() {
    double before = tap().alkalinity().orElseThrow().inMilliequivalentsPerLitre();
    WaterAnalysis limed = tap().with(Base.CALCIUM_HYDROXIDE, mgPerL(10));
    assertEquals(
        before + 2 * 10 / 74.092,
        limed.alkalinity().orElseThrow().inMilliequivalentsPerLitre(),
        0.01);
    assertEquals(
        tap().totalCarbonDioxide().orElseThrow().inMillimolesPerLitre(),
        limed.totalCarbonDioxide().orElseThrow().inMillimolesPerLitre(),
        1e-12);
    assertEquals(
        tap()
            .toSolution(celsius(25))
            .with(Base.CALCIUM_HYDROXIDE, mmolPerL(10 / 74.092))
            .pH()
            .value(),
        limed.toSolution(celsius(25)).pH().value(),
        1e-4);
    WaterAnalysis unknown = WaterAnalysis.reported().bicarbonate(mgPerL(100)).build();
    assertThrows(
        IllegalStateException.class, () -> unknown.with(Base.SODIUM_HYDROXIDE, mgPerL(10)));
  }

  @Test
  void whatAnAnalysisDoesNotHoldIsRefused() {
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class,
            () -> tap().with(Salt.SODIUM_ACETATE_TRIHYDRATE, mgPerL(10)));
    assertEquals(
        "sodium acetate trihydrate: brings acetate, which a water analysis does not hold; add it to the solution",
        error.getMessage());
    Salt bisulfate =
        Salt.of(
            "sodium bisulfate", "NaHSO4", Map.of(Component.SODIUM, 1.0, Component.SULFATE, 1.0));
    assertEquals(
        tap().alkalinity().orElseThrow().inMilliequivalentsPerLitre() - 1,
        tap()
            .with(bisulfate, mgPerL(120.054))
            .alkalinity()
            .orElseThrow()
            .inMilliequivalentsPerLitre(),
        1e-4);
    assertThrows(IllegalArgumentException.class, () -> tap().with(bisulfate, gPerL(5)));
  }

  @Test
  void equalReportsAreEqual() {
    assertEquals(tap(), tap());
    assertEquals(tap().hashCode(), tap().hashCode());
    assertNotEquals(tap(), soft());
  }

  @Test
  void theExplanationEndsInTheFigures() {
    String text = tap().explain();
    for (String line :
        List.of(
            "  calcium: 92.0000 mg/L / 40.0780 g/mol x 2 = 4.5910 mEq/L",
            "  alkalinity: 215.0000 mg/L as CaCO3 = 4.2963 mEq/L",
            "  calcium hardness / 3.5 = 4.5910 / 3.5 = 1.3117 mEq/L",
            "sulfate to chloride: 1.4 by mass",
            "  missing: potassium")) {
      assertTrue(text.lines().anyMatch(line::equals), line + "\nis not in\n" + text);
    }
    assertTrue(text.contains("= 143 mg/L as CaCO3 (8.0 °dH)\n"), text);
  }
}
