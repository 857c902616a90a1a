package org.brewchem.water;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.substance.Use;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class AcidificationTest {

  private static final WaterAnalysis TAP = WaterAnalysisTest.tap();

  @Test
  void aPhIsReached() {
    Acidification dose = TAP.acidDose(Acid.LACTIC, pH(5.5), celsius(20));
    assertEquals(5.5, dose.pH().value(), 1e-9);
    assertEquals(
        dose.equivalents().inMilliequivalentsPerLitre(),
        dose.effectiveEquivalents() * dose.amount().inMillimolesPerLitre(),
        1e-9);
    assertEquals(dose.concentration().inGramsPerLitre() * 2000, dose.into(hL(20)).inGrams(), 1e-9);
    assertTrue(
        dose.residualAlkalinity().orElseThrow().compareTo(TAP.residualAlkalinity().orElseThrow())
            < 0);
  }

  /** A litre of the reagent holds 0.88 x 1.206 kg of acid; the density is typed. */
  @Test
  void aReagentIsMeasuredOut() {
    Acidification dose = TAP.acidDose(Acid.LACTIC, pH(5.5), celsius(20));
    Reagent bottle = Reagent.of(Acid.LACTIC, massPercent(88)).withDensity(gPerML(1.206), 0.01);
    assertEquals(
        dose.into(hL(20)).inGrams() / 0.88 / 1.206,
        dose.into(hL(20), bottle).inMillilitres(),
        1e-6);
    Reagent other = Reagent.of(Acid.PHOSPHORIC, massPercent(75)).withDensity(gPerML(1.58), 0.01);
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> dose.into(hL(20), other));
    assertEquals(
        "reagent: phosphoric acid is not possible; lactic acid is needed", error.getMessage());
  }

  @Test
  void anAlkalinityIsReached() {
    Acidification carbonate =
        TAP.acidDose(
            Acid.PHOSPHORIC, CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(50), celsius(20));
    assertEquals(50, carbonate.carbonateAlkalinity().inMilligramsPerLitreAsCaCO3(), 1e-6);
    TitrationAlkalinity target = TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(50, pH(5.4));
    Acidification titration = TAP.acidDose(Acid.PHOSPHORIC, target, celsius(20));
    assertEquals(50, titration.titrationAlkalinity(pH(5.4)).inMilligramsPerLitreAsCaCO3(), 1e-6);
    ResidualAlkalinity residual = ResidualAlkalinity.ofGermanDegrees(1);
    Acidification kolbach = TAP.acidDose(Acid.LACTIC, residual, celsius(20));
    assertEquals(1, kolbach.residualAlkalinity().orElseThrow().inGermanDegrees(), 1e-6);
  }

  /** At level ideal a strong acid takes away what it brings, whatever the definition. */
  @Test
  void aStrongAcidDeliversItsProtons() {
    ResidualAlkalinity residual = ResidualAlkalinity.ofMilliequivalentsPerLitre(0.5);
    double taken = TAP.residualAlkalinity().orElseThrow().inMilliequivalentsPerLitre() - 0.5;
    Acidification hydrochloric = TAP.acidDose(Acid.HYDROCHLORIC, residual, celsius(25));
    assertEquals(taken, hydrochloric.amount().inMillimolesPerLitre(), 0.005 * taken);
    assertEquals(1, hydrochloric.effectiveEquivalents(), 0.002);
    Acidification sulfuric = TAP.acidDose(Acid.SULFURIC, residual, celsius(25));
    assertEquals(2, sulfuric.effectiveEquivalents(), 0.01);
    assertEquals(
        45 + sulfuric.amount().inMillimolesPerLitre() * 96.056,
        sulfuric.sulfate().orElseThrow().inMilligramsPerLitre(),
        0.1);
    assertTrue(
        sulfuric.remarks().stream()
            .anyMatch(remark -> remark.startsWith("sulfate to chloride goes from 1.4 by mass to")),
        sulfuric.remarks().toString());
    assertEquals(TAP.sulfate(), hydrochloric.sulfate());
  }

  @Test
  void phosphoricAcidDeliversNeitherOneNorThree() {
    Acidification dose =
        TAP.acidDose(
            Acid.PHOSPHORIC, CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(100), celsius(20));
    assertTrue(
        dose.effectiveEquivalents() > 1.05 && dose.effectiveEquivalents() < 1.6,
        "" + dose.effectiveEquivalents());
    assertTrue(dose.effectiveEquivalents(pH(5.4)) < dose.effectiveEquivalents());
    assertTrue(
        dose.remarks().stream().anyMatch(remark -> remark.startsWith("in a mash at pH 5.4")),
        dose.remarks().toString());
    assertTrue(dose.remarks().stream().anyMatch(remark -> remark.endsWith("by definition 3")));
    assertTrue(dose.explain().contains("phosphoric acid delivers 1."), dose.explain());
  }

  @Test
  void acidOnlyLowers() {
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class, () -> TAP.acidDose(Acid.LACTIC, pH(8), celsius(25)));
    assertTrue(error.getMessage().startsWith("pH: pH 8 is not possible"), error.getMessage());
    assertThrows(
        IllegalArgumentException.class,
        () ->
            TAP.acidDose(
                Acid.LACTIC, CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(300), celsius(25)));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            TAP.acidDose(
                Acid.LACTIC,
                TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(300, pH(4.5)),
                celsius(25)));
    assertThrows(
        IllegalArgumentException.class,
        () -> TAP.acidDose(Acid.LACTIC, ResidualAlkalinity.ofGermanDegrees(9), celsius(25)));
  }

  @Test
  void whatNoAcidReachesIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () ->
            TAP.acidDose(
                Acid.LACTIC, CarbonateAlkalinity.ofMilliequivalentsPerLitre(0), celsius(25)));
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class,
            () -> TAP.acidDose(Acid.LACTIC, ResidualAlkalinity.ofGermanDegrees(-10), celsius(25)));
    assertTrue(error.getMessage().contains("with no alkalinity left it is -"), error.getMessage());
    assertThrows(
        IllegalArgumentException.class,
        () ->
            TAP.acidDose(
                Acid.CARBONIC, CarbonateAlkalinity.ofMilliequivalentsPerLitre(1), celsius(25)));
    WaterAnalysis incomplete =
        WaterAnalysis.reported().calcium(mgPerL(50)).bicarbonate(mgPerL(150)).build();
    assertThrows(
        IllegalStateException.class,
        () -> incomplete.acidDose(Acid.LACTIC, ResidualAlkalinity.ofGermanDegrees(0), celsius(25)));
    assertTrue(
        incomplete.acidDose(Acid.LACTIC, pH(5.5), celsius(25)).residualAlkalinity().isEmpty());
  }

  /** No acidulant comes into a brewing water, to whatever target. */
  @Test
  void whatIsNoFoodAcidIsRefused() {
    for (Acid acid : List.of(Acid.OXALIC, Acid.PHTHALIC, Acid.BORIC, Acid.SULFUROUS)) {
      List<Executable> doses =
          List.of(
              () -> TAP.acidDose(acid, pH(5.5), celsius(20)),
              () ->
                  TAP.acidDose(
                      acid, CarbonateAlkalinity.ofMilliequivalentsPerLitre(1), celsius(20)),
              () ->
                  TAP.acidDose(
                      acid,
                      TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(50, pH(5.4)),
                      celsius(20)),
              () -> TAP.acidDose(acid, ResidualAlkalinity.ofGermanDegrees(2), celsius(20)));
      for (Executable dose : doses) {
        IllegalArgumentException error = assertThrows(IllegalArgumentException.class, dose);
        assertTrue(
            error.getMessage().startsWith(acid + ": a dose into brewing water is not possible; "),
            error.getMessage());
      }
    }
    assertThrows(IllegalArgumentException.class, () -> TAP.with(Salt.BORAX, mgPerL(10)));
  }

  @Test
  void anOwnAcidWithoutAUseGetsARemark() {
    Acid own = Acid.ofKa("acid of our own", 1e-4);
    assertTrue(
        TAP.acidDose(own, pH(5.5), celsius(20)).remarks().stream()
            .anyMatch(remark -> remark.contains("its use is not stated")));
    Acid stated = own.withUse(Use.BREWING_WATER, "permit of our authority");
    for (Acid acid : List.of(stated, Acid.LACTIC, Acid.PHOSPHORIC)) {
      assertTrue(
          TAP.acidDose(acid, pH(5.5), celsius(20)).remarks().stream()
              .noneMatch(remark -> remark.contains("a dose into")));
    }
  }

  @Test
  void cautionsAreThere() {
    assertEquals(4, TAP.acidDose(Acid.LACTIC, pH(6), celsius(25)).cautions().size());
  }
}
