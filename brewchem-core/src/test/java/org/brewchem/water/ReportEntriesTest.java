package org.brewchem.water;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.germanDegrees;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Code;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.Conductivity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.treatment.Treatments;
import org.junit.jupiter.api.Test;

/** What reports state beside the seven ions, on invented reports. */
class ReportEntriesTest {

  private static WaterReport.Builder tap() {
    return WaterReport.reported()
        .calcium(mgPerL(92))
        .magnesium(mgPerL(11))
        .sodium(mgPerL(19))
        .potassium(mgPerL(2))
        .chloride(mgPerL(31))
        .sulfate(mgPerL(45))
        .nitrate(mgPerL(8))
        .bicarbonate(mgPerL(262))
        .pH(pH(7.4));
  }

  private static Notice notice(WaterReport report, Code code) {
    return report.notices().stream()
        .filter(notice -> notice.code() == code)
        .findFirst()
        .orElseThrow(() -> new AssertionError(report.notices().toString()));
  }

  private static double number(WaterReport.Builder report, Figure<?> figure) {
    return report.build().water().answer(figure).number();
  }

  /** Molar masses of CIAAW 2021 by hand: P 30.974, PO4 94.970, N 14.007, NH4 18.039, Si 28.085. */
  @Test
  void everyBasisAndUnitGivesTheSameIon() {
    Figure<?> phosphate = Constituent.PHOSPHATE.figure();
    WaterReport.Builder none = WaterReport.reported();
    assertEquals(
        3.066,
        number(none.concentration(Constituent.PHOSPHATE_AS_PHOSPHORUS, mgPerL(1)), phosphate),
        0.001);
    assertEquals(
        94.970,
        number(
            WaterReport.reported().concentration(Constituent.PHOSPHATE_AS_PHOSPHORUS, mmolPerL(1)),
            phosphate),
        0.001);
    assertEquals(
        94.970,
        number(WaterReport.reported().concentration(Constituent.PHOSPHATE, mEqPerL(3)), phosphate),
        0.001);
    assertEquals(
        18.039 / 14.007,
        number(
            WaterReport.reported().concentration(Constituent.AMMONIUM_AS_NITROGEN, mgPerL(1)),
            Constituent.AMMONIUM.figure()),
        0.0001);
    assertEquals(
        60.083 / 28.085,
        number(
            WaterReport.reported().concentration(Constituent.SILICA_AS_SILICON, mgPerL(1)),
            Constituent.SILICA.figure()),
        0.0001);
    assertEquals(
        46.005 / 14.007,
        number(
            WaterReport.reported().concentration(Constituent.NITRITE_AS_NITROGEN, mgPerL(1)),
            Constituent.NITRITE.figure()),
        0.0001);
    assertEquals(
        40.078,
        number(
            WaterReport.reported().concentration(Constituent.CALCIUM, mEqPerL(2)),
            Constituent.CALCIUM.figure()),
        0.001);
    assertThrows(
        IllegalArgumentException.class,
        () -> WaterReport.reported().concentration(Constituent.SILICA, mEqPerL(1)));
    assertThrows(
        IllegalStateException.class,
        () ->
            WaterReport.reported()
                .concentration(Constituent.PHOSPHATE, mgPerL(1))
                .concentration(Constituent.PHOSPHATE_AS_PHOSPHORUS, mgPerL(1)));
  }

  @Test
  void whatNoReportStatesIsUnknownAndWhatOneStatesGoesThroughTreatments() {
    Water water = tap().concentration(Constituent.IRON, mgPerL(4)).build().water();
    assertEquals(
        2,
        water
            .after(Treatments.dilution(VolumeRatio.of(1)))
            .answer(Constituent.IRON.figure())
            .number(),
        0.01);
    assertEquals(
        List.of("fluoride is not reported"),
        water.answer(Constituent.FLUORIDE.figure()).whyUnknown());
    assertEquals(
        Optional.of(Constituent.SULFATE_AS_SULFUR), Constituent.headed("sulphate as sulphur"));
    assertEquals(Optional.empty(), Constituent.headed("sodium chloride"));
  }

  /** 10 mg/L of CaO is a German degree, 0.35665 mEq/L; 10 mg/L of CO3 is 0.33329 mEq/L. */
  @Test
  void alkalinityComesOnEveryBasis() {
    double caO =
        WaterReport.reported().alkalinityAsCaO(mgPerL(120)).build().water().alkalinity().number();
    double degrees =
        WaterReport.reported()
            .carbonateHardness(germanDegrees(12))
            .build()
            .water()
            .alkalinity()
            .number();
    assertEquals(12 * 17.848, caO, 0.02);
    assertEquals(caO, degrees, 0.02);
    assertEquals(
        tap().build().water().alkalinity().number() + 0.33329 * 50.043,
        tap().carbonate(mgPerL(10)).build().water().alkalinity().number(),
        0.01);
  }

  @Test
  void anAcidCapacityIsATitrationBesideAPhAndBicarbonateWithoutOne() {
    WaterReport without =
        WaterReport.reported().calcium(mgPerL(80)).acidCapacity(mmolPerL(4)).build();
    assertEquals(4 * 50.043, without.water().alkalinity().number(), 0.01);
    WaterReport beside =
        WaterReport.reported().calcium(mgPerL(80)).acidCapacity(mmolPerL(4)).pH(pH(7.4)).build();
    assertEquals(
        4, beside.water().titrationAlkalinity(pH(4.3)).value().inMilliequivalentsPerLitre(), 1e-9);
    assertNotEquals(4 * 50.043, beside.water().alkalinity().number(), 0.01);
  }

  @Test
  void bothCapacitiesTellTheCarbonDioxideWithoutAPh() {
    WaterReport report =
        WaterReport.reported()
            .calcium(mgPerL(80))
            .acidCapacity(mmolPerL(4))
            .baseCapacity(mmolPerL(0.5))
            .build();
    // m - p, 4.5, but for what the two end points miss.
    assertEquals(4.5, report.water().totalCarbonDioxide().number(), 0.1);
    assertTrue(report.water().pH().number() < 7.5, report.water().pH().toString());
    assertFalse(
        report.notices().stream().anyMatch(notice -> notice.code() == WaterCode.PH_MISSING));
    assertEquals(
        3.5,
        WaterReport.reported()
            .acidCapacity(mmolPerL(4))
            .pValue(mmolPerL(0.5))
            .build()
            .water()
            .totalCarbonDioxide()
            .number(),
        0.1);
  }

  @Test
  void aTotalHardnessStandsForWhatIsNotSplitAndIsHeldAgainstWhatIs() {
    WaterReport unsplit =
        WaterReport.reported()
            .totalHardness(germanDegrees(15.4))
            .sodium(mgPerL(19))
            .potassium(mgPerL(2))
            .chloride(mgPerL(31))
            .sulfate(mgPerL(45))
            .nitrate(mgPerL(8))
            .bicarbonate(mgPerL(262))
            .pH(pH(7.4))
            .build();
    assertEquals(WaterCode.ION_BALANCE_ACCEPTABLE, unsplit.notices().get(0).code());
    assertEquals(
        "missing: calcium, magnesium; the balance counts the total hardness for what is missing of"
            + " calcium and magnesium",
        unsplit.notices().get(1).text());
    assertEquals(15.4, unsplit.water().totalHardness().value().inGermanDegrees(), 1e-9);
    assertFalse(unsplit.water().residualAlkalinity().isStated());
    notice(tap().totalHardness(germanDegrees(15.4)).build(), WaterCode.HARDNESS_AGREES);
    Notice off = notice(tap().totalHardness(germanDegrees(27.5)).build(), WaterCode.HARDNESS_OFF);
    assertTrue(off.text().contains("(27.5 °dH), and calcium and magnesium make"), off.text());
    assertEquals(
        92,
        WaterReport.reported()
            .calciumHardness(Hardness.ofMilligramsPerLitreAsCaCO3(92 * 2.4973))
            .build()
            .water()
            .calcium()
            .number(),
        0.01);
  }

  /**
   * By hand: 59.5 x 4.591 + 53 x 0.905 + ... = 708.3 at infinite dilution, y^2 0.8175 at 0.00952.
   */
  @Test
  void theConductivityIsHeldAgainstTheIons() {
    assertEquals(579.0, tap().build().water().answer(WaterFigures.CONDUCTIVITY).number(), 1);
    notice(
        tap().conductivity(Conductivity.ofMicrosiemensPerCentimetreAt20(520)).build(),
        WaterCode.CONDUCTIVITY_AGREES);
    notice(
        tap().conductivity(Conductivity.ofMicrosiemensPerCentimetreAt25(58)).build(),
        WaterCode.CONDUCTIVITY_OFF);
    assertEquals(
        1.116, Conductivity.of(100, celsius(20)).inMicrosiemensPerCentimetreAt25() / 100, 1e-12);
    assertEquals(100, Conductivity.of(100, celsius(20)).inMicrosiemensPerCentimetreAt20(), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> Conductivity.of(100, celsius(18)));
  }

  @Test
  void dryResidueAndBaseCapacityAreHeldAgainstTheRest() {
    notice(tap().dryResidue(mgPerL(350)).build(), WaterCode.DRY_RESIDUE_AGREES);
    notice(tap().dryResidue(mgPerL(35)).build(), WaterCode.DRY_RESIDUE_OFF);
    notice(tap().baseCapacity(mmolPerL(0.4)).build(), WaterCode.BASE_CAPACITY_AGREES);
    notice(tap().baseCapacity(mmolPerL(4)).build(), WaterCode.BASE_CAPACITY_OFF);
  }

  @Test
  void aLimitAndTheExtremesOfAYearGiveARange() {
    WaterReport report =
        WaterReport.reported()
            .calcium(mgPerL(92))
            .magnesium(mgPerL(11))
            .sodium(mgPerL(19))
            .yearly(Constituent.CHLORIDE, mgPerL(25), mgPerL(31), mgPerL(40))
            .sulfate(mgPerL(45))
            .below(Constituent.NITRATE, mgPerL(10))
            .bicarbonate(mgPerL(262))
            .pH(pH(7.4))
            .build();
    assertEquals(new Range(0, 10, "mg/L"), report.range(Constituent.NITRATE.figure()));
    assertEquals(new Range(25, 40, "mg/L"), report.range(Constituent.CHLORIDE.figure()));
    assertEquals("25.00 to 40.00 mg/L", report.range(Constituent.CHLORIDE.figure()).toString());
    Range balance = report.range(WaterFigures.ION_BALANCE);
    assertEquals(balanceWith(25, 0), balance.highest(), 1e-9);
    assertEquals(balanceWith(40, 10), balance.lowest(), 1e-9);
    assertEquals(31, report.water().chloride().number(), 1e-12);
    Range residual = report.range(WaterFigures.RESIDUAL_ALKALINITY);
    assertEquals(residual.lowest(), residual.highest(), 0);
    assertThrows(
        IllegalArgumentException.class,
        () ->
            WaterReport.reported()
                .yearly(Constituent.CHLORIDE, mgPerL(25), mgPerL(41), mgPerL(40)));
  }

  private static double balanceWith(double chloride, double nitrate) {
    return WaterReport.reported()
        .calcium(mgPerL(92))
        .magnesium(mgPerL(11))
        .sodium(mgPerL(19))
        .chloride(mgPerL(chloride))
        .sulfate(mgPerL(45))
        .nitrate(mgPerL(nitrate))
        .bicarbonate(mgPerL(262))
        .build()
        .water()
        .ionBalance()
        .number();
  }

  @Test
  void oneIonThatWouldCloseTheBalanceIsAnAnswerOnRequest() {
    WaterReport report =
        WaterReport.reported()
            .calcium(mgPerL(92))
            .magnesium(mgPerL(11))
            .sodium(mgPerL(19))
            .chloride(mgPerL(31))
            .sulfate(mgPerL(45))
            .bicarbonate(mgPerL(262))
            .build();
    double nitrate = report.water().answer(WaterFigures.closing(Constituent.NITRATE)).number();
    assertEquals(0, balanceWith(31, nitrate), 1e-9);
    assertEquals(
        nitrate * 14.007 / 62.004,
        report.water().answer(WaterFigures.closing(Constituent.NITRATE_AS_NITROGEN)).number(),
        1e-4);
    assertFalse(report.water().answer(WaterFigures.closing(Constituent.SODIUM)).isStated());
    assertThrows(IllegalArgumentException.class, () -> WaterFigures.closing(Constituent.SILICA));
  }

  @Test
  void assumedUncertaintiesComeOnRequestAndSaySo() {
    WaterReport stated =
        WaterReport.reported()
            .calcium(mgPerL(92), mgPerL(3))
            .magnesium(mgPerL(11))
            .below(Constituent.NITRATE, mgPerL(10))
            .bicarbonate(mgPerL(262))
            .pH(pH(7.4))
            .build();
    WaterReport assumed = stated.withAssumedUncertainties();
    assertTrue(stated.water().magnesium().standardUncertainty().isEmpty());
    assertEquals(3, assumed.water().calcium().standardUncertainty().orElseThrow(), 1e-12);
    assertEquals(0.5, assumed.water().magnesium().standardUncertainty().orElseThrow(), 1e-12);
    assertEquals(
        0.025 * 214.9, assumed.water().alkalinity().standardUncertainty().orElseThrow(), 0.01);
    assertEquals(0.1, assumed.water().pH().standardUncertainty().orElseThrow(), 1e-9);
    assertTrue(assumed.water().residualAlkalinity().standardUncertainty().isPresent());
    notice(assumed, WaterCode.UNCERTAINTIES_ASSUMED);
    assertTrue(
        assumed.water().magnesium().explain().toString().contains("uncertainty assumed"),
        assumed.water().magnesium().explain().toString());
    assertFalse(assumed.water().nitrate().isStated());
    assertNotEquals(stated, assumed);
  }

  @Test
  void dateAndTemperatureOfTheSampleAreKept() {
    WaterReport report = tap().sampledOn(LocalDate.of(2026, 3, 9)).temperature(celsius(11)).build();
    assertEquals(Optional.of(LocalDate.of(2026, 3, 9)), report.date());
    assertEquals(Optional.of(celsius(11)), report.sampleTemperature());
    assertThrows(
        IllegalStateException.class, () -> tap().dryResidue(mgPerL(300)).dryResidue(mgPerL(300)));
    assertThrows(IllegalArgumentException.class, () -> tap().temperature(celsius(120)));
  }

  @Test
  void figuresThatAgreeOrNotSayByHowMuch() {
    assertEquals(
        "the total hardness is stated as 280 mg/L as CaCO3 (15.7 °dH), and calcium and magnesium"
            + " make 275 mg/L as CaCO3 (15.4 °dH): they agree (ratio 1.02)",
        notice(
                tap().totalHardness(Hardness.ofMilligramsPerLitreAsCaCO3(280)).build(),
                WaterCode.HARDNESS_AGREES)
            .text());
    assertEquals(
        "the total hardness is stated as 550 mg/L as CaCO3 (30.8 °dH), and calcium and magnesium"
            + " make 275 mg/L as CaCO3 (15.4 °dH): they do not go together (ratio 2.00, 0.93 to"
            + " 1.07 is usual)",
        notice(
                tap().totalHardness(Hardness.ofMilligramsPerLitreAsCaCO3(550)).build(),
                WaterCode.HARDNESS_OFF)
            .text());
  }

  @Test
  void aHardnessIsNotHeldAgainstNone() {
    WaterReport report =
        WaterReport.reported()
            .calcium(mgPerL(0))
            .magnesium(mgPerL(0))
            .totalHardness(germanDegrees(1))
            .build();
    assertFalse(
        report.notices().stream().anyMatch(notice -> notice.code() == WaterCode.HARDNESS_OFF));
  }

  /** Sulfur becomes sulfate by 96.056 / 32.06. */
  @Test
  void limitsAndExtremesOnAnotherBasisAreOfTheIon() {
    WaterReport yearly =
        WaterReport.reported()
            .yearly(Constituent.SULFATE_AS_SULFUR, mgPerL(10), mgPerL(15), mgPerL(20))
            .build();
    assertEquals(29.962, yearly.range(Constituent.SULFATE.figure()).lowest(), 0.001);
    assertEquals(59.923, yearly.range(Constituent.SULFATE.figure()).highest(), 0.001);
    WaterReport below =
        WaterReport.reported().below(Constituent.SULFATE_AS_SULFUR, mgPerL(10)).build();
    assertEquals(29.962, below.range(Constituent.SULFATE.figure()).highest(), 0.001);
    assertEquals(
        List.of("sulfate is reported as below 10 mg/L as sulfur"),
        below.water().sulfate().whyUnknown());
  }

  /** The larger of 2.5 % and 0.05 mEq/L, on both sides of 2 mEq/L. */
  @Test
  void aTitrationAssumesTheUncertaintyOfAnAlkalinity() {
    for (double[] row : new double[][] {{1, 0.05}, {4, 0.1}}) {
      WaterReport report =
          WaterReport.reported()
              .calcium(mgPerL(80))
              .acidCapacity(mmolPerL(row[0]))
              .pH(pH(7.4))
              .build()
              .withAssumedUncertainties();
      Answer<?> capacity = report.water().titrationAlkalinity(pH(4.3));
      assertEquals(row[1], capacity.standardUncertainty().orElseThrow(), 1e-4);
      assertTrue(
          capacity
              .explain()
              .toString()
              .contains("uncertainty assumed, the larger of 2.50 % and 0.0500"),
          capacity.explain().toString());
    }
    assertTrue(
        tap()
            .build()
            .withAssumedUncertainties()
            .water()
            .nitrate()
            .explain()
            .toString()
            .contains("uncertainty assumed, the larger of 4.00 % and 0.500"));
  }

  @Test
  void aNegativeUncertaintyOfATitrationIsRefused() {
    TitrationAlkalinity four = TitrationAlkalinity.ofMillimolesOfAcidPerLitre(4, pH(4.3));
    assertEquals(
        "standard uncertainty of the alkalinity: -0.1 mEq/L is not possible; 0 or more is allowed",
        assertThrows(
                IllegalArgumentException.class,
                () -> WaterReport.reported().titrationAlkalinity(four, mEqPerL(-0.1)))
            .getMessage());
  }

  /** 350 mg/L beside it: 92 + 11 + 19 + 2 + 31 + 45 + 8, and 4.294 mEq/L x 30.004 of carbonate. */
  @Test
  void aDryResidueIsHeldAgainstTheSumWithBicarbonateAsCarbonate() {
    assertEquals(
        "the dry residue is stated as 350 mg/L, and what is dissolved leaves 337, its bicarbonate"
            + " as carbonate: they agree (ratio 1.04)",
        notice(tap().dryResidue(mgPerL(350)).build(), WaterCode.DRY_RESIDUE_AGREES).text());
  }
}
