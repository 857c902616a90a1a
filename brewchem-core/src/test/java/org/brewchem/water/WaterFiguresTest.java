package org.brewchem.water;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.water.WaterFigures.SUM_OF_ANIONS;
import static org.brewchem.water.WaterFigures.SUM_OF_CATIONS;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.substance.Ion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The waters are invented unless a source is named. */
class WaterFiguresTest {

  static MassConcentration mass(Ion ion, Hardness hardness) {
    return mmolPerL(hardness.inMillimolesPerLitre()).times(ion.molarMass());
  }

  static ResidualAlkalinity residual(
      CarbonateAlkalinity alkalinity, Hardness calcium, Hardness magnesium) {
    return WaterReport.reported()
        .calcium(mass(Ion.CALCIUM, calcium))
        .magnesium(mass(Ion.MAGNESIUM, magnesium))
        .alkalinity(alkalinity)
        .build()
        .water()
        .residualAlkalinity()
        .value();
  }

  /**
   * Narziss, Abriss der Bierbrauerei; Kunze, Technology Brewing and Malting: the table of classic
   * waters, in German degrees, from memory. Tolerance: half of its last digit.
   */
  @ParameterizedTest
  @CsvSource({"Munich, 14.2, 10.6, 4.2, 10.6", "Pilsen, 1.3, 1.0, 0.6, 0.9"})
  void classicWatersObeyKolbach(
      String name, double alkalinity, double calcium, double magnesium, double residual) {
    assertEquals(
        residual,
        residual(
                CarbonateAlkalinity.ofGermanDegrees(alkalinity),
                Hardness.ofGermanDegrees(calcium),
                Hardness.ofGermanDegrees(magnesium))
            .inGermanDegrees(),
        0.05,
        name);
  }

  /**
   * Standard Methods 2340 B: calcium 40, magnesium 12 mg/L give 149.296 mg/L as CaCO3 by factors
   * rounded to three decimals, which the tolerance allows for: (40 + 12) x 0.0005.
   */
  @Test
  void hardnessByCalculation() {
    assertEquals(
        149.296,
        WaterReport.reported()
            .calcium(mgPerL(40))
            .magnesium(mgPerL(12))
            .build()
            .water()
            .totalHardness()
            .value()
            .inMilligramsPerLitreAsCaCO3(),
        0.026);
  }

  /** Hand calculation with molar masses of CIAAW 2021: 40.078, 24.305, 100.086. */
  @Test
  void figuresFollowFromTheReport() {
    Water tap = Waters.tap().water();
    assertEquals(2 * 92 / 40.078, tap.calciumHardness().value().inMilliequivalentsPerLitre(), 1e-4);
    assertEquals(
        2 * 11 / 24.305, tap.magnesiumHardness().value().inMilliequivalentsPerLitre(), 1e-4);
    double alkalinity = 215 / 50.043;
    double total = 2 * 92 / 40.078 + 2 * 11 / 24.305;
    assertEquals(total, tap.totalHardness().value().inMilliequivalentsPerLitre(), 1e-4);
    assertEquals(alkalinity, tap.temporaryHardness().value().inMilliequivalentsPerLitre(), 1e-4);
    assertEquals(
        total - alkalinity, tap.permanentHardness().value().inMilliequivalentsPerLitre(), 1e-4);
    assertEquals(
        alkalinity - 2 * 92 / 40.078 / 3.5 - 2 * 11 / 24.305 / 7,
        tap.residualAlkalinity().value().inMilliequivalentsPerLitre(),
        1e-4);
    assertEquals("142.9 mg/L as CaCO3", tap.residualAlkalinity().toString());
    assertEquals(
        "8.0 °dH",
        tap.residualAlkalinity().in(Scales.RESIDUAL_ALKALINITY_IN_GERMAN_DEGREES).toString());
    assertEquals("1.45 by mass", tap.sulfateToChloride().toString());
    assertEquals("0.7 %", tap.ionBalance().toString());
  }

  @Test
  void whereAlkalinityOutweighsHardnessAllHardnessIsTemporary() {
    Water soda =
        WaterReport.reported()
            .calcium(mgPerL(20))
            .magnesium(mgPerL(5))
            .bicarbonate(mgPerL(300))
            .build()
            .water();
    assertEquals(soda.totalHardness().number(), soda.temporaryHardness().number());
    assertEquals(0, soda.permanentHardness().number());
  }

  @Test
  void sulfateToChlorideByMassAndByEquivalents() {
    Water water =
        WaterReport.reported().sulfate(mgPerL(96.056)).chloride(mgPerL(35.45)).build().water();
    assertEquals(96.056 / 35.45, water.sulfateToChloride().number(), 1e-12);
    assertEquals(2, water.answer(WaterFigures.SULFATE_TO_CHLORIDE_BY_EQUIVALENTS).number(), 1e-4);
  }

  @Test
  void withoutChlorideThereIsNoRatio() {
    Water water = WaterReport.reported().sulfate(mgPerL(40)).chloride(mgPerL(0)).build().water();
    assertEquals(
        "unknown: sulfate / chloride has no value here: sulfate 40.0 mg/L, chloride 0.0 mg/L",
        water.sulfateToChloride().toString());
    assertTrue(water.answer(WaterFigures.SULFATE_TO_CHLORIDE_BY_EQUIVALENTS).optional().isEmpty());
  }

  @Test
  void missingSaysWhatIsMissing() {
    assertEquals(
        List.of("chloride is not reported"),
        WaterReport.reported()
            .sulfate(mgPerL(40))
            .build()
            .water()
            .sulfateToChloride()
            .whyUnknown());
    assertEquals(
        List.of("sulfate is not reported", "chloride is not reported"),
        WaterReport.reported().build().water().sulfateToChloride().whyUnknown());
  }

  @Test
  void theGermanIonBalanceIsTwiceTheOther() {
    Water water =
        WaterReport.reported()
            .sodium(mmolPerL(6.3).times(Ion.SODIUM.molarMass()))
            .chloride(mmolPerL(6.1).times(Ion.CHLORIDE.molarMass()))
            .build()
            .water();
    assertEquals(100 * 0.2 / 12.4, water.ionBalance().number(), 1e-12);
    assertEquals(100 * 0.2 / 6.2, water.answer(WaterFigures.ION_BALANCE_OF_MEAN).number(), 1e-12);
    assertEquals(
        0.2, water.answer(SUM_OF_CATIONS).number() - water.answer(SUM_OF_ANIONS).number(), 1e-12);
  }

  /** What the chloride is wrong by goes into the balance with its sign. */
  @Test
  void theIonBalanceKnowsItsUncertainty() {
    Answer<Double> balance =
        WaterReport.reported()
            .sodium(mmolPerL(6.3).times(Ion.SODIUM.molarMass()), mgPerL(1))
            .chloride(mmolPerL(6.1).times(Ion.CHLORIDE.molarMass()), mgPerL(2))
            .build()
            .water()
            .ionBalance();
    double sodium = 1 / 22.98977;
    double chloride = 2 / 35.45;
    assertEquals(
        100 * 2 / (12.4 * 12.4) * Math.hypot(6.1 * sodium, 6.3 * chloride),
        balance.standardUncertainty().orElseThrow(),
        1e-3);
  }

  @Test
  void residualAlkalinityToAnEndPointCountsWhatATitrationFinds() {
    Water tap = Waters.tap().water();
    assertEquals(
        tap.titrationAlkalinity(pH(5.4)).value().inMilliequivalentsPerLitre()
            - 2 * 92 / 40.078 / 3.5
            - 2 * 11 / 24.305 / 7,
        tap.answer(WaterFigures.residualAlkalinity(pH(5.4))).value().inMilliequivalentsPerLitre(),
        1e-4);
  }

  @Test
  void theExplanationShowsWhatItIsMadeOf() {
    String text = Waters.tap().water().residualAlkalinity().explain().toString();
    for (String line :
        List.of(
            "calcium, reported = 92.0 mg/L",
            "calcium hardness = calcium in equivalents = 229.7 mg/L as CaCO3  [atomic weights CIAAW"
                + " 2021]",
            "carbonate alkalinity, reported = 215.0 mg/L as CaCO3",
            "residual alkalinity = alkalinity - calcium hardness / 3.5 - magnesium hardness / 7 ="
                + " 142.9 mg/L as CaCO3  [Kolbach 1953; MEBAK W-030.01.900]")) {
      assertTrue(text.lines().anyMatch(line::equals), line + "\nis not in\n" + text);
    }
    assertEquals(Step.Kind.FORMULA, Waters.tap().water().residualAlkalinity().step().kind());
  }
}
