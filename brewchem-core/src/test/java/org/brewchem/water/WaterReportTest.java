package org.brewchem.water;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.brewchem.figure.Code;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Severity;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.CarbonateSystem;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.junit.jupiter.api.Test;

/** Invented reports, some with one thing wrong. */
class WaterReportTest {

  private static WaterReport.Builder rest() {
    return WaterReport.reported()
        .calcium(mgPerL(92))
        .magnesium(mgPerL(11))
        .sodium(mgPerL(19))
        .potassium(mgPerL(2))
        .chloride(mgPerL(31))
        .nitrate(mgPerL(8));
  }

  private static List<Code> codes(WaterReport report) {
    return report.notices().stream().map(Notice::code).toList();
  }

  @Test
  void aSoundReportBalances() {
    WaterReport report = rest().sulfate(mgPerL(45)).bicarbonate(mgPerL(262)).pH(pH(7.6)).build();
    assertEquals(List.of(WaterCode.ION_BALANCE_ACCEPTABLE), codes(report));
    assertEquals(Severity.REMARK, report.notices().get(0).severity());
    assertEquals(
        "ion balance +0.7 % at an anion sum of 6.2 mEq/L: acceptable (limit 2 %)",
        Waters.tap().notices().get(0).toString());
  }

  @Test
  void aCarbonateColumnHeadedBicarbonateIsSuspected() {
    WaterReport report = rest().sulfate(mgPerL(45)).bicarbonate(mgPerL(129)).pH(pH(7.6)).build();
    assertEquals(
        List.of(WaterCode.ION_BALANCE_OFF, WaterCode.BICARBONATE_PERHAPS_CARBONATE), codes(report));
    assertEquals(Severity.WARNING, report.notices().get(0).severity());
    assertTrue(
        report
            .notices()
            .get(1)
            .text()
            .startsWith("if what is headed bicarbonate were carbonate: ion balance +"),
        report.notices().get(1).text());
  }

  /** One report alone does not decide a factor of 1.22; a table of them does (WatersTest). */
  @Test
  void anImbalanceThatManyThingsExplainIsBlamedOnNone() {
    for (WaterReport report :
        List.of(
            rest().sulfate(mgPerL(45)).bicarbonate(mgPerL(215)).build(),
            rest().sulfate(mgPerL(45)).alkalinityAsCaCO3(mgPerL(262)).build(),
            rest().sulfate(mgPerL(15)).bicarbonate(mgPerL(262)).build())) {
      assertEquals(List.of(WaterCode.ION_BALANCE_OFF, WaterCode.PH_MISSING), codes(report));
    }
  }

  /** A gypsum water: hardly anything else takes so much away. */
  @Test
  void sulfurIsSuspectedWhereSulfateIsMostOfTheWater() {
    WaterReport.Builder gypsum =
        WaterReport.reported()
            .calcium(mgPerL(180))
            .magnesium(mgPerL(30))
            .sodium(mgPerL(38))
            .potassium(mgPerL(3))
            .chloride(mgPerL(60))
            .nitrate(mgPerL(4))
            .bicarbonate(mgPerL(120));
    Notice suspicion = gypsum.sulfate(mgPerL(154)).pH(pH(7.4)).build().notices().get(1);
    assertEquals(WaterCode.SULFATE_PERHAPS_SULFUR, suspicion.code());
    assertEquals("sulfate", suspicion.subject());
    assertTrue(
        suspicion.text().startsWith("if the sulfate were stated as sulfur: ion balance -"),
        suspicion.text());
    assertTrue(suspicion.text().contains("weight 0."), suspicion.text());
  }

  @Test
  void aFactorOfTenIsSuspected() {
    Notice up =
        rest().sulfate(mgPerL(450)).bicarbonate(mgPerL(262)).pH(pH(7.6)).build().notices().get(1);
    assertEquals(WaterCode.TENFOLD_SLIP, up.code());
    assertTrue(up.text().startsWith("if the sulfate were a tenth of it: "), up.text());
    Notice down =
        rest().sulfate(mgPerL(45)).bicarbonate(mgPerL(26.2)).pH(pH(7.6)).build().notices().get(1);
    assertEquals(WaterCode.TENFOLD_SLIP, down.code());
    assertTrue(down.text().startsWith("if the alkalinity were ten times it: "), down.text());
  }

  /** 31 mg/L of chloride and 1.1 % of error, which is 5 mg/L of chloride, were left out. */
  @Test
  void aMissingIonIsNamedFirstWithHowMuchWouldCloseTheBalance() {
    WaterReport without =
        WaterReport.reported()
            .calcium(mgPerL(92))
            .magnesium(mgPerL(11))
            .sodium(mgPerL(19))
            .potassium(mgPerL(2))
            .nitrate(mgPerL(8))
            .sulfate(mgPerL(45))
            .bicarbonate(mgPerL(262))
            .pH(pH(7.6))
            .build();
    assertEquals(
        List.of(
            WaterCode.ION_BALANCE_NOT_JUDGED,
            WaterCode.IONS_MISSING,
            WaterCode.ION_PERHAPS_MISSING),
        codes(without));
    assertEquals(
        "missing: chloride; 36 mg/L of chloride would close the balance",
        without.notices().get(1).text());
    assertTrue(
        without
            .notices()
            .get(2)
            .text()
            .startsWith("chloride is not reported, and 36 mg/L of it, which is nothing unusual,"),
        without.notices().get(2).text());
  }

  @Test
  void anIonBelowALimitCountsUpToTheLimit() {
    WaterReport.Builder report =
        rest().bicarbonate(mgPerL(262)).pH(pH(7.6)).below(Constituent.SULFATE, mgPerL(50));
    assertEquals(List.of(WaterCode.ION_BALANCE_ACCEPTABLE), codes(report.build()));
    assertEquals(
        "ion balance +0.3 % at an anion sum of 6.3 mEq/L: acceptable (limit 2 %); sulfate counted up"
            + " to the limit stated",
        report.build().notices().get(0).text());
    assertEquals(
        List.of(WaterCode.ION_BALANCE_OFF),
        codes(
            rest()
                .bicarbonate(mgPerL(262))
                .pH(pH(7.6))
                .below(Constituent.SULFATE, mgPerL(5))
                .build()));
    assertEquals(
        List.of("sulfate is reported as below 50 mg/L"),
        report.build().water().sulfate().whyUnknown());
    assertThrows(
        IllegalArgumentException.class,
        () -> WaterReport.reported().below(Constituent.SULFATE, mgPerL(0)));
  }

  @Test
  void aHighPhAndMuchCarbonDioxideAreSaid() {
    assertTrue(
        codes(rest().sulfate(mgPerL(45)).bicarbonate(mgPerL(262)).pH(pH(9.7)).build())
            .contains(WaterCode.PH_UNUSUAL));
    Notice carbonDioxide =
        rest().sulfate(mgPerL(45)).bicarbonate(mgPerL(262)).pH(pH(5.6)).build().notices().get(1);
    assertEquals(WaterCode.CARBON_DIOXIDE_HIGH, carbonDioxide.code());
    assertTrue(
        carbonDioxide.text().startsWith("pH 5.6 with an alkalinity of 214.9 mg/L as CaCO3 means"),
        carbonDioxide.text());
  }

  @Test
  void basisReadingsTellWhatEachWouldMakeOfTheBalance() {
    WaterReport report = rest().sulfate(mgPerL(15)).bicarbonate(mgPerL(262)).build();
    BasisReading sulfur =
        report.basisReadings().stream()
            .filter(reading -> reading.code() == WaterCode.SULFATE_PERHAPS_SULFUR)
            .findFirst()
            .orElseThrow();
    WaterReport asSulfur = rest().sulfateAsSulfur(mgPerL(15)).bicarbonate(mgPerL(262)).build();
    assertEquals(report.water().ionBalance().number(), sulfur.asStated(), 1e-9);
    assertEquals(asSulfur.water().ionBalance().number(), sulfur.ifSo(), 1e-9);
    assertEquals(4, report.basisReadings().size());
    assertEquals(3, asSulfur.basisReadings().stream().filter(r -> r.factor() > 1).count());
  }

  @Test
  void missingIonsAndPhAreSaid() {
    WaterReport report =
        WaterReport.reported().calcium(mgPerL(50)).bicarbonate(mgPerL(150)).build();
    assertEquals(
        List.of(WaterCode.ION_BALANCE_NOT_JUDGED, WaterCode.IONS_MISSING, WaterCode.PH_MISSING),
        codes(report));
    assertTrue(
        report.notices().get(0).text().endsWith("not judged: too much missing"),
        report.notices().get(0).text());
    assertEquals(
        "missing: magnesium, sodium, potassium, sulfate, chloride, nitrate",
        report.notices().get(1).toString());
    assertEquals(
        List.of(Ion.MAGNESIUM, Ion.SODIUM, Ion.POTASSIUM, Ion.SULFATE, Ion.CHLORIDE, Ion.NITRATE),
        report.missing());
  }

  @Test
  void phAndAlkalinityMustGoTogether() {
    for (double value : new double[] {4.4, 4.6, 11.8}) {
      assertTrue(
          codes(rest().bicarbonate(mgPerL(262)).pH(pH(value)).build())
              .contains(WaterCode.PH_CONTRADICTS_ALKALINITY),
          "pH " + value);
    }
    assertTrue(
        codes(rest().bicarbonate(mgPerL(60000)).pH(pH(4.6)).build())
            .contains(WaterCode.PH_CONTRADICTS_ALKALINITY));
    assertTrue(
        codes(rest().bicarbonate(mgPerL(262)).pH(pH(8.9)).build())
            .contains(WaterCode.CARBONATE_PRESENT));
    assertFalse(
        codes(rest().bicarbonate(mgPerL(0)).pH(pH(4.4)).build())
            .contains(WaterCode.PH_CONTRADICTS_ALKALINITY));
  }

  @Test
  void missingIsMissing() {
    Water water =
        WaterReport.reported().calcium(mgPerL(50)).bicarbonate(mgPerL(100)).build().water();
    assertTrue(water.calciumHardness().isStated());
    assertFalse(water.magnesiumHardness().isStated());
    assertFalse(water.totalHardness().isStated());
    assertFalse(water.temporaryHardness().isStated());
    assertFalse(water.permanentHardness().isStated());
    assertFalse(water.residualAlkalinity().isStated());
    WaterReport nothing = WaterReport.reported().build();
    assertEquals("nothing reported", nothing.toString());
    assertFalse(nothing.water().totalCarbonDioxide().isStated());
    IllegalStateException error =
        assertThrows(IllegalStateException.class, () -> nothing.water().solution());
    assertEquals("balance: is open; alkalinity is not reported", error.getMessage());
  }

  /** 96.056 / 32.06 and 62.004 / 14.007, CIAAW 2021. */
  @Test
  void sulfurAndNitrogenBecomeSulfateAndNitrate() {
    Water water =
        WaterReport.reported()
            .sulfateAsSulfur(mgPerL(10), mgPerL(1))
            .nitrateAsNitrogen(mgPerL(10), mgPerL(1))
            .build()
            .water();
    assertEquals(29.962, water.sulfate().number(), 0.001);
    assertEquals(2.9962, water.sulfate().standardUncertainty().orElseThrow(), 0.0001);
    assertEquals(44.266, water.nitrate().number(), 0.001);
    assertEquals(4.4266, water.nitrate().standardUncertainty().orElseThrow(), 0.0001);
  }

  @Test
  void everyFigureIsStatedOnce() {
    IllegalStateException error =
        assertThrows(
            IllegalStateException.class,
            () -> WaterReport.reported().sulfate(mgPerL(30)).sulfateAsSulfur(mgPerL(10)));
    assertEquals("sulfate: is stated twice", error.getMessage());
    assertThrows(
        IllegalStateException.class,
        () -> WaterReport.reported().calcium(mgPerL(1)).calcium(mgPerL(1), mgPerL(0.1)));
    assertThrows(
        IllegalStateException.class, () -> WaterReport.reported().pH(pH(7)).pH(pH(7), 0.1));
  }

  @Test
  void whatIsNotPossibleIsRefused() {
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class, () -> WaterReport.reported().calcium(mgPerL(-3)));
    assertTrue(error.getMessage().contains("-3 mg/L is not possible"), error.getMessage());
    assertThrows(IllegalArgumentException.class, () -> WaterReport.reported().pH(pH(7), -0.1));
    assertThrows(
        IllegalArgumentException.class, () -> WaterReport.reported().pH(pH(7), celsius(101)));
  }

  @Test
  void twoBasesOfAlkalinityMustAgree() {
    Water water =
        WaterReport.reported()
            .bicarbonate(mgPerL(262))
            .alkalinityAsCaCO3(mgPerL(215))
            .build()
            .water();
    assertEquals(CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(215), water.alkalinity().value());
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class,
            () ->
                WaterReport.reported()
                    .alkalinityAsCaCO3(mgPerL(215))
                    .bicarbonate(mgPerL(215))
                    .build());
    assertEquals(
        "alkalinity: 215.0 and 176.3 mg/L as CaCO3 on two bases is not possible; they may differ by"
            + " 1 mg/L or 1 %",
        error.getMessage());
    assertThrows(
        IllegalStateException.class,
        () ->
            WaterReport.reported()
                .alkalinityAsCaCO3(mgPerL(215))
                .alkalinity(CarbonateAlkalinity.ofGermanDegrees(12)));
  }

  @Test
  void aTitrationToAStatedPhIsFoundAgain() {
    TitrationAlkalinity titration = TitrationAlkalinity.ofMillimolesOfAcidPerLitre(4.2, pH(4.3));
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(80))
            .magnesium(mgPerL(10))
            .titrationAlkalinity(titration)
            .pH(pH(7.4), celsius(20))
            .build()
            .water();
    assertEquals(
        4.2,
        CarbonateSystem.titrationAlkalinity(water.solution(), pH(4.3)).inMilliequivalentsPerLitre(),
        1e-9);
    assertNotEquals(4.2, water.alkalinity().value().inMilliequivalentsPerLitre(), 1e-3);
    assertThrows(
        IllegalStateException.class,
        () -> WaterReport.reported().titrationAlkalinity(titration).build());
    assertThrows(
        IllegalArgumentException.class,
        () -> WaterReport.reported().titrationAlkalinity(titration).pH(pH(4)).build());
    assertThrows(
        IllegalArgumentException.class,
        () ->
            WaterReport.reported()
                .titrationAlkalinity(titration)
                .bicarbonate(mgPerL(200))
                .pH(pH(7.4))
                .build());
  }

  @Test
  void theSolutionHasTheReportedPhAndAlkalinity() {
    Solution solution = Waters.soft().water().solution();
    assertEquals(7.9, solution.pH().value(), 1e-9);
    assertEquals(celsius(12), solution.temperature());
    assertEquals(
        33.0,
        CarbonateSystem.carbonateAlkalinity(solution).inMilligramsPerLitreAsBicarbonate(),
        1e-6);
    assertEquals(9 / 40.078, solution.total(Component.CALCIUM).inMillimolesPerLitre(), 1e-6);
    assertNotEquals(7.9, Waters.soft().water().at(celsius(60)).pH().number(), 0.01);
  }

  /** As much carbonic acid as carbonate: the mean of pK1 6.351 and pK2 10.329 (Goldberg 2002). */
  @Test
  void withoutAPhTheWaterHoldsAsMuchCarbonDioxideAsAlkalinity() {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(60))
            .bicarbonate(mgPerL(183.048))
            .build()
            .water()
            .under(Chemistry.of(Level.IDEAL));
    assertEquals(3, water.totalCarbonDioxide().number(), 1e-9);
    assertEquals(8.340, water.pH().number(), 1e-6);
  }

  /** Of a bicarbonate water a titration to 4.5 leaves some bicarbonate: about 1 % less is found. */
  @Test
  void titrationToAPhFindsSlightlyLessThanTheCarbonateAlkalinity() {
    Water tap = Waters.tap().water();
    double carbonate = tap.alkalinity().value().inMilliequivalentsPerLitre();
    double titration = tap.titrationAlkalinity(pH(4.5)).value().inMilliequivalentsPerLitre();
    assertTrue(titration < carbonate);
    assertEquals(carbonate, titration, 0.015 * carbonate);
  }

  @Test
  void equalReportsAreEqual() {
    assertEquals(Waters.tap(), Waters.tap());
    assertEquals(Waters.tap().hashCode(), Waters.tap().hashCode());
    assertNotEquals(Waters.tap(), Waters.soft());
    assertNotEquals(Waters.tap(), Waters.uncertain().build());
    WaterReport tap = Waters.tap();
    assertSame(tap.water(), tap.water());
  }

  @Test
  void aReportPrintsWhatItStates() {
    assertEquals(
        "calcium 92.0 mg/L, magnesium 11.0 mg/L, sodium 19.0 mg/L, sulfate 44.9 mg/L, chloride 31.0"
            + " mg/L, nitrate 8.0 mg/L, carbonate alkalinity 215.0 mg/L as CaCO3, pH 7.60",
        Waters.tap().toString());
  }

  /** 1 % of 215 is 2.15 mg/L as CaCO3, which is 2.62 mg/L of bicarbonate. */
  @Test
  void twoBasesOfAlkalinityMayDifferByOnePerCent() {
    double same = 215 * 1.21926;
    for (double off : new double[] {-2.5, 2.5}) {
      WaterReport.reported().alkalinityAsCaCO3(mgPerL(215)).bicarbonate(mgPerL(same + off)).build();
    }
    for (double off : new double[] {-2.8, 2.8}) {
      WaterReport.Builder report =
          WaterReport.reported().alkalinityAsCaCO3(mgPerL(215)).bicarbonate(mgPerL(same + off));
      assertThrows(IllegalArgumentException.class, report::build);
    }
  }

  private static String text(WaterReport.Builder report, WaterCode code) {
    return report.build().notices().stream()
        .filter(notice -> notice.code() == code)
        .map(Notice::text)
        .findFirst()
        .orElse("");
  }

  /** 4.5 is the end point itself: nothing is left to titrate. */
  @Test
  void aPhAtTheEndPointContradictsAnAlkalinity() {
    String at =
        "an alkalinity of 214.9 mg/L as CaCO3 is titrated from the pH of the water down to pH 4.5,"
            + " below which it cannot lie; pH 4.5 is reported";
    assertEquals(
        at, text(rest().bicarbonate(mgPerL(262)).pH(pH(4.5)), WaterCode.PH_CONTRADICTS_ALKALINITY));
    assertTrue(
        text(rest().bicarbonate(mgPerL(262)).pH(pH(4.51)), WaterCode.PH_CONTRADICTS_ALKALINITY)
            .startsWith("pH 4.51 with an alkalinity of 214.9 mg/L as CaCO3 means carbon dioxide"));
  }

  /** Water at pH 4.6 holds 0.025 mEq/L of hydrogen ions, which are no hydroxide. */
  @Test
  void littleAlkalinityOfAnAcidWaterIsNoContradiction() {
    assertEquals(
        "",
        text(rest().alkalinityAsCaCO3(mgPerL(1)).pH(pH(4.6)), WaterCode.PH_CONTRADICTS_ALKALINITY));
    assertEquals(
        "pH 11.5 alone means 3.4 mEq/L of hydroxide, more than the alkalinity of 1.0 mg/L as CaCO3",
        text(
            rest().alkalinityAsCaCO3(mgPerL(1)).pH(pH(11.5)), WaterCode.PH_CONTRADICTS_ALKALINITY));
  }

  @Test
  void carbonateIsSaidAboveTheEndPointOfPhenolphthaleinAndAHighPhAboveItsLimit() {
    WaterReport.Builder[] reports = new WaterReport.Builder[4];
    double[] values = {8.3, 8.31, 9.5, 9.51};
    for (int i = 0; i < values.length; i++) {
      reports[i] = rest().sulfate(mgPerL(45)).bicarbonate(mgPerL(262)).pH(pH(values[i]));
    }
    assertEquals("", text(reports[0], WaterCode.CARBONATE_PRESENT));
    assertTrue(
        text(reports[1], WaterCode.CARBONATE_PRESENT)
            .startsWith("pH 8.31 is above 8.3: the alkalinity of 4.29 mEq/L is in part carbonate"),
        text(reports[1], WaterCode.CARBONATE_PRESENT));
    assertEquals("", text(reports[2], WaterCode.PH_UNUSUAL));
    assertEquals(
        "9.51 is a pH that hardly any water of a tap or well has",
        text(reports[3], WaterCode.PH_UNUSUAL));
  }

  /** 18.039 mg/L of ammonium is 1 mEq/L: 7.374 against 6.235 instead of 6.374. */
  @Test
  void aMinorIonCountsInTheBalance() {
    WaterReport.Builder report = rest().sulfate(mgPerL(45)).bicarbonate(mgPerL(262));
    assertEquals(
        "ion balance +1.1 % at an anion sum of 6.2 mEq/L: acceptable (limit 2 %)",
        text(report, WaterCode.ION_BALANCE_ACCEPTABLE));
    assertEquals(
        "ion balance +8.4 % at an anion sum of 6.2 mEq/L: not acceptable (limit 2 %)",
        text(
            report.concentration(Constituent.AMMONIUM, mgPerL(18.039)), WaterCode.ION_BALANCE_OFF));
  }

  /** 92 mg/L of calcium and 11 of magnesium are 4.591 and 0.905 mEq/L, 275.0 mg/L as CaCO3. */
  @Test
  void aTotalHardnessCountsForTheOneOfCalciumAndMagnesiumThatIsMissing() {
    Hardness total = Hardness.ofMilligramsPerLitreAsCaCO3(275.03);
    for (WaterReport.Builder report :
        List.of(
            WaterReport.reported().calcium(mgPerL(92)),
            WaterReport.reported().magnesium(mgPerL(11)),
            WaterReport.reported())) {
      assertEquals(
          "ion balance +1.1 % at an anion sum of 6.2 mEq/L: acceptable (limit 2 %)",
          text(
              report
                  .totalHardness(total)
                  .sodium(mgPerL(19))
                  .potassium(mgPerL(2))
                  .chloride(mgPerL(31))
                  .nitrate(mgPerL(8))
                  .sulfate(mgPerL(45))
                  .bicarbonate(mgPerL(262)),
              WaterCode.ION_BALANCE_ACCEPTABLE));
    }
  }

  @Test
  void onlyAMissingIonOfTheSignThatLacksWouldCloseTheBalance() {
    assertEquals(
        "missing: potassium, chloride; 34 mg/L of chloride would close the balance",
        text(
            WaterReport.reported()
                .calcium(mgPerL(92))
                .magnesium(mgPerL(11))
                .sodium(mgPerL(19))
                .nitrate(mgPerL(8))
                .sulfate(mgPerL(45))
                .bicarbonate(mgPerL(262)),
            WaterCode.IONS_MISSING));
  }

  @Test
  void anIonThatCountsNothingHasNoOtherBasis() {
    for (WaterReport.Builder report :
        List.of(rest().sulfate(mgPerL(0)), rest().below(Constituent.SULFATE, mgPerL(50)))) {
      assertEquals(
          List.of(
              WaterCode.BICARBONATE_PERHAPS_CARBONATE,
              WaterCode.ALKALINITY_BASIS_DOUBTFUL,
              WaterCode.NITRATE_PERHAPS_NITROGEN),
          report.bicarbonate(mgPerL(262)).build().basisReadings().stream()
              .map(BasisReading::code)
              .toList());
    }
  }

  /** 61.016 g of bicarbonate and 50.043 of CaCO3 are one equivalent; 62.004 and 14.007. */
  @Test
  void theFactorsOfOtherBasesGoBothWays() {
    WaterReport report =
        WaterReport.reported()
            .calcium(mgPerL(92))
            .magnesium(mgPerL(11))
            .sodium(mgPerL(19))
            .sulfate(mgPerL(45))
            .chloride(mgPerL(31))
            .nitrateAsNitrogen(mgPerL(2))
            .alkalinityAsCaCO3(mgPerL(215))
            .build();
    assertEquals(
        List.of("0.820", "2.996", "0.226"),
        report.basisReadings().stream()
            .map(reading -> String.format(Locale.ROOT, "%.3f", reading.factor()))
            .toList());
  }

  @Test
  void aReportSaysWhatLiesBelowALimit() {
    assertEquals(
        "calcium 92.0 mg/L, nitrate is reported as below 10 mg/L",
        WaterReport.reported()
            .calcium(mgPerL(92))
            .below(Constituent.NITRATE, mgPerL(10))
            .build()
            .toString());
  }

  /** 262 mg/L as bicarbonate are 214.88 as CaCO3, and 5 are 4.10. */
  @Test
  void theUncertaintyOfABicarbonateIsKept() {
    Water water =
        WaterReport.reported().bicarbonate(mgPerL(262), mgPerL(5)).pH(pH(7.4)).build().water();
    assertEquals(214.88, water.alkalinity().number(), 0.01);
    assertEquals(4.10, water.alkalinity().standardUncertainty().orElseThrow(), 0.01);
  }

  @Test
  void reportsThatDifferBesideTheirIonsAreNotEqual() {
    WaterReport.Builder[] reports = new WaterReport.Builder[3];
    for (int i = 0; i < reports.length; i++) {
      reports[i] = rest().bicarbonate(mgPerL(262));
    }
    WaterReport dry = reports[0].dryResidue(mgPerL(350)).build();
    assertNotEquals(dry, reports[1].dryResidue(mgPerL(351)).build());
    assertNotEquals(dry, reports[2].build());
    assertNotEquals(dry.hashCode(), reports[2].build().hashCode());
  }
}
