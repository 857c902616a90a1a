package org.brewchem.water;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.water.WaterFigures.RESIDUAL_ALKALINITY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Use;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Portion;
import org.brewchem.treatment.TreatmentCode;
import org.brewchem.treatment.UnreachableException;
import org.brewchem.treatment.UnreachableException.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Doses of acid into a water. The numbers are invented. */
class WaterDoseTest {

  private static final Water TAP = Waters.tap().water().at(celsius(20));

  /** What is delivered is what the closed water needs to get from its pH to the target. */
  @Test
  void aPhIsReached() {
    Dose<Water> dose = Dose.of(TAP, Acid.LACTIC).to(pH(5.5));
    assertEquals(5.5, dose.after().pH().number(), 1e-9);
    assertEquals(
        TAP.solution().charge(pH(5.5)).inMilliequivalentsPerLitre(),
        dose.delivered().number() * dose.perLitre().inMillimolesPerLitre(),
        1e-9);
    assertEquals(
        dose.perLitre().inMillimolesPerLitre() * 90.078 * 2,
        dose.into(hL(20)).mass().inGrams(),
        0.02);
    assertTrue(
        dose.after().residualAlkalinity().value().compareTo(TAP.residualAlkalinity().value()) < 0);
    assertTrue(dose.explain().holds(), dose.explain().toString());
  }

  /** A litre of the reagent holds 0.88 x 1.206 kg of acid; the density is typed. */
  @Test
  void aReagentIsMeasuredOut() {
    Reagent bottle = Reagent.of(Acid.LACTIC, massPercent(88)).withDensity(gPerML(1.206), 0.01);
    Portion portion = Dose.of(TAP, bottle).to(pH(5.5)).into(hL(20));
    double pure = Dose.of(TAP, Acid.LACTIC).to(pH(5.5)).into(hL(20)).mass().inGrams();
    assertEquals(pure / 0.88, portion.mass().inGrams(), 0.002 * pure);
    assertEquals(
        portion.mass().inGrams() / 1.206, portion.volume().orElseThrow().inMillilitres(), 1e-6);
  }

  @Test
  void anAlkalinityIsReached() {
    Dose<Water> carbonate =
        Dose.of(TAP, Acid.PHOSPHORIC).to(CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(50));
    assertEquals(50, carbonate.after().alkalinity().number(), 1e-6);
    TitrationAlkalinity target = TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(50, pH(5.4));
    Dose<Water> titration = Dose.of(TAP, Acid.PHOSPHORIC).to(target);
    assertEquals(
        50,
        titration.after().titrationAlkalinity(pH(5.4)).value().inMilligramsPerLitreAsCaCO3(),
        1e-6);
    Dose<Water> kolbach =
        Dose.of(TAP, Acid.LACTIC).to(RESIDUAL_ALKALINITY, ResidualAlkalinity.ofGermanDegrees(1));
    assertEquals(1, kolbach.after().residualAlkalinity().value().inGermanDegrees(), 1e-6);
  }

  /** A strong acid takes away what it brings, whatever the definition. */
  @Test
  void aStrongAcidDeliversItsProtons() {
    Water tap = Waters.tap().water();
    ResidualAlkalinity residual = ResidualAlkalinity.ofMilliequivalentsPerLitre(0.5);
    double taken = tap.residualAlkalinity().value().inMilliequivalentsPerLitre() - 0.5;
    Dose<Water> hydrochloric = Dose.of(tap, Acid.HYDROCHLORIC).to(RESIDUAL_ALKALINITY, residual);
    assertEquals(taken, hydrochloric.perLitre().inMillimolesPerLitre(), 0.005 * taken);
    assertEquals(1, hydrochloric.delivered().number(), 0.002);
    Dose<Water> sulfuric = Dose.of(tap, Acid.SULFURIC).to(RESIDUAL_ALKALINITY, residual);
    assertEquals(2, sulfuric.delivered().number(), 0.01);
    assertEquals(
        45 + sulfuric.perLitre().inMillimolesPerLitre() * 96.056,
        sulfuric.after().sulfate().number(),
        0.1);
    assertTrue(
        sulfuric.after().sulfateToChloride().number() > 2 * tap.sulfateToChloride().number());
    assertEquals(tap.sulfate().number(), hydrochloric.after().sulfate().number(), 1e-9);
  }

  @Test
  void phosphoricAcidDeliversNeitherOneNorThree() {
    Dose<Water> dose =
        Dose.of(TAP, Acid.PHOSPHORIC).to(CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(100));
    double delivered = dose.delivered().number();
    assertTrue(delivered > 1.05 && delivered < 1.6, "" + delivered);
    assertTrue(dose.delivered(pH(5.4)).number() < delivered);
    assertTrue(dose.delivered().explain().holds());
  }

  @Test
  void acidOnlyLowers() {
    Dose.Request<Water> lactic = Dose.of(TAP, Acid.LACTIC);
    List<Executable> upwards =
        List.of(
            () -> lactic.to(pH(8)),
            () -> lactic.to(CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(300)),
            () -> lactic.to(TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(300, pH(4.5))),
            () -> lactic.to(RESIDUAL_ALKALINITY, ResidualAlkalinity.ofGermanDegrees(9)));
    for (Executable dose : upwards) {
      UnreachableException error = assertThrows(UnreachableException.class, dose);
      assertEquals(Reason.WRONG_DIRECTION, error.reason());
    }
  }

  @Test
  void whatNoAcidReachesIsRefused() {
    assertThrows(
        UnreachableException.class,
        () ->
            Dose.of(TAP, Acid.LACTIC)
                .to(RESIDUAL_ALKALINITY, ResidualAlkalinity.ofGermanDegrees(-10)));
    assertThrows(
        IllegalArgumentException.class,
        () -> Dose.of(TAP, Acid.CARBONIC).to(CarbonateAlkalinity.ofMilliequivalentsPerLitre(1)));
    Water incomplete =
        WaterReport.reported().calcium(mgPerL(50)).bicarbonate(mgPerL(150)).build().water();
    UnknownFigureException error =
        assertThrows(
            UnknownFigureException.class,
            () ->
                Dose.of(incomplete, Acid.LACTIC)
                    .to(RESIDUAL_ALKALINITY, ResidualAlkalinity.ofGermanDegrees(0)));
    assertEquals(List.of("magnesium is not reported"), error.missing());
    assertFalse(
        Dose.of(incomplete, Acid.LACTIC).to(pH(5.5)).after().residualAlkalinity().isStated());
  }

  /** No acidulant comes into a brewing water, to whatever target. */
  @Test
  void whatIsNoFoodAcidIsRefused() {
    for (Acid acid : List.of(Acid.OXALIC, Acid.PHTHALIC, Acid.BORIC, Acid.SULFUROUS)) {
      List<Executable> doses =
          List.of(
              () -> Dose.of(TAP, acid).to(pH(5.5)),
              () -> Dose.of(TAP, acid).to(CarbonateAlkalinity.ofMilliequivalentsPerLitre(1)),
              () ->
                  Dose.of(TAP, acid)
                      .to(TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(50, pH(5.4))),
              () ->
                  Dose.of(TAP, acid)
                      .to(RESIDUAL_ALKALINITY, ResidualAlkalinity.ofGermanDegrees(2)));
      for (Executable dose : doses) {
        IllegalArgumentException error = assertThrows(IllegalArgumentException.class, dose);
        assertTrue(
            error.getMessage().startsWith(acid + ": a dose into brewing water is not possible; "),
            error.getMessage());
      }
    }
  }

  @Test
  void anOwnAcidWithoutAUseGetsANotice() {
    Acid own = Acid.ofKa("acid of our own", 1e-4).withFormula("C4H8O3");
    assertTrue(
        Dose.of(TAP, own).to(pH(5.5)).notices().stream()
            .anyMatch(
                notice ->
                    notice.code() == TreatmentCode.PERMISSION
                        && notice.text().contains("its use is not stated")));
    Acid stated = own.withUse(Use.BREWING_WATER, "permit of our authority");
    for (Acid acid : List.of(stated, Acid.LACTIC, Acid.PHOSPHORIC)) {
      assertTrue(
          Dose.of(TAP, acid).to(pH(5.5)).notices().stream()
              .noneMatch(notice -> notice.code() == TreatmentCode.PERMISSION));
    }
  }

  @Test
  void cautionsTellOfTheAcidAndOfTheCarbonDioxide() {
    Dose<Water> dose = Dose.of(TAP, Reagent.of(Acid.LACTIC, massPercent(80))).to(pH(6));
    assertTrue(
        dose.cautions().stream().anyMatch(caution -> caution.hazard() == Hazard.ACID),
        dose.cautions().toString());
    assertTrue(dose.after().cautions().containsAll(dose.cautions()));
  }
}
