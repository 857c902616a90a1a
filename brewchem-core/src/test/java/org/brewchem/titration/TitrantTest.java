package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mEqPerLPerPH;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.titration.Weighing.khp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.uncertainty.LinearityCheck;
import org.junit.jupiter.api.Test;

class TitrantTest {

  private static final Titrant JUNE = lye(0.0).on(LocalDate.of(2026, 6, 1));

  /** Four invented weighings, the last a part in a thousand times {@code off} too strong. */
  private static Titrant lye(double off) {
    return Titrant.sodiumHydroxide()
        .standardised(
            khp(g(0.4082), mL(19.98)),
            khp(g(0.4107), mL(20.11)),
            khp(g(0.4095), mL(20.04)),
            khp(g(0.4101), mL(20.08 / (1 + off / 1000))));
  }

  @Test
  void severalWeighingsGiveMeanSpreadAndGrubbsTest() {
    Standardisation standardisation = JUNE.standardisation().orElseThrow();
    assertEquals(4, standardisation.concentrationsInMolesPerLitre().length);
    assertTrue(standardisation.relativeStandardDeviation().orElseThrow() < 0.0005);
    assertFalse(standardisation.grubbs().orElseThrow().isOutlier());
    assertEquals(List.of(), standardisation.notices());
    Explanation explained = standardisation.concentration().explain();
    assertTrue(explained.toString().contains("c4 = 0.4101 g x 1 Eq/mol"), explained.toString());
    assertTrue(explained.holds());
  }

  @Test
  void anOutlierIsFlaggedAndStays() {
    Titrant spoiled = lye(12);
    Standardisation standardisation = spoiled.standardisation().orElseThrow();
    assertEquals(TitrationCode.OUTLIER, standardisation.notices().get(0).code());
    assertEquals(4, standardisation.notices().get(0).row().orElseThrow());
    assertEquals(4, standardisation.replicates().orElseThrow().count());
  }

  @Test
  void twoWeighingsSayWhatTheyAreWorth() {
    Titrant two =
        Titrant.sodiumHydroxide()
            .standardised(khp(g(0.4082), mL(19.94)), khp(g(0.4107), mL(20.07)));
    Notice notice = two.standardisation().orElseThrow().notices().get(0);
    assertEquals(TitrationCode.TWO_REPLICATES, notice.code());
    assertTrue(notice.text().contains("12.7"), notice.text());
  }

  @Test
  void driftIsJudgedByTheTwoUncertainties() {
    Titrant july = JUNE.on(LocalDate.of(2026, 7, 1));
    TitrantDrift none = july.driftSince(JUNE);
    assertEquals(0, none.relativeChange(), 1e-15);
    assertEquals(30, none.days().orElseThrow());
    assertEquals(List.of(), none.notices());
    Titrant weak = Titrant.sodiumHydroxide().of(molPerL(0.0990), molPerL(0.0001));
    TitrantDrift drift = weak.driftSince(JUNE);
    assertTrue(drift.isSignificant());
    assertTrue(drift.days().isEmpty());
    assertEquals(TitrationCode.TITRANT_DRIFT, drift.notices().get(0).code());
    Titrant acid = Titrant.hydrochloricAcid().of(molPerL(0.1));
    assertThrows(IllegalArgumentException.class, () -> acid.driftSince(JUNE));
    TitrantDrift open = Titrant.sodiumHydroxide().of(molPerL(0.0990)).driftSince(JUNE);
    assertFalse(open.isSignificant());
    assertEquals(TitrationCode.TITRANT_WITHOUT_UNCERTAINTY, open.notices().get(0).code());
  }

  /**
   * A carbonate that lost one proton of two counts half: to pH 8.3 a lye with 2 % carbonate is
   * worth 1 % less than to pH 4.5, so that used there it finds 1 % too little. To the same end
   * point there is no bias.
   */
  @Test
  void carbonateInOldLyeCountsByEndPoint() {
    assertEquals(0, CarbonateInLye.of(0.02, pH(8.2), pH(8.2), celsius(20)).relativeBias(), 1e-15);
    assertEquals(
        -0.01, CarbonateInLye.of(0.02, pH(8.3), pH(4.5), celsius(25)).relativeBias(), 0.0005);
    double toSeven = CarbonateInLye.of(0.02, pH(8.2), pH(7), celsius(20)).relativeBias();
    assertTrue(toSeven < 0 && toSeven > -0.004, "bias " + toSeven);
    assertThrows(
        IllegalArgumentException.class, () -> CarbonateInLye.of(2, pH(8), pH(7), celsius(20)));
  }

  /**
   * The same bias from whole titrations by the kernel: acid against lye with and without carbonate.
   */
  @Test
  void carbonateInOldLyeByFullTitrations() {
    double fraction = 0.04;
    Solution fresh = Solution.at(celsius(20)).with(Base.SODIUM_HYDROXIDE, molPerL(0.1));
    Solution old =
        Solution.at(celsius(20))
            .with(Base.SODIUM_HYDROXIDE, molPerL(0.1 * (1 - fraction)))
            .with(Base.SODIUM_CARBONATE, molPerL(0.1 * fraction / 2));
    Solution acid = Solution.at(celsius(20)).with(Acid.LACTIC, molPerL(0.03));
    double worthAt82 = titre(acid, fresh, 8.2) / titre(acid, old, 8.2);
    double worthAt7 = titre(acid, fresh, 7.0) / titre(acid, old, 7.0);
    assertEquals(
        worthAt82 / worthAt7 - 1,
        CarbonateInLye.of(fraction, pH(8.2), pH(7), celsius(20)).relativeBias(),
        0.001);
  }

  private static double titre(Solution acid, Solution lye, double endPoint) {
    return SimulatedTitration.of(acid, lye, mL(50)).volumeTo(pH(endPoint)).inMillilitres();
  }

  /** AOAC 950.07, indicator variant: 25 mL of beer into 250 mL of boiled water. */
  @Test
  void theIndicatorVariant() {
    Titrant lye = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0001));
    SampleTitration titration = lye.titrateToPhenolphthalein(mL(25)).blank(mL(0.05));
    assertEquals(TitrationMethod.PHENOLPHTHALEIN, titration.method());
    assertEquals(275, titration.initialVolume().inMillilitres(), 1e-9);
    AcidityResult ta =
        titration.slopeAtEndPoint(mEqPerLPerPH(3)).took(mL(7.55), mL(7.57)).acidity();
    assertEquals(30.04, ta.value().inMilliequivalentsPerLitre(), 1e-9);
    assertEquals(0.45, ta.budget().row("reading of the end point").contribution(), 1e-9);
    assertTrue(ta.explain().toString().contains("with phenolphthalein"));
    assertThrows(
        IllegalStateException.class,
        () -> Titrant.hydrochloricAcid().of(molPerL(0.1)).titrateToPhenolphthalein(mL(25)));
  }

  /** A realistic acidity: the linear budget agrees with a million draws within 2 %. */
  @Test
  void theLinearBudgetOfARealisticAcidityHolds() {
    Titrant lye =
        Titrant.sodiumHydroxide()
            .standardised(
                Apparatus.usual().withRepeatability(0.0005),
                khp(g(0.4082), mL(19.98)),
                khp(g(0.4107), mL(20.11)));
    double[] volumes = new double[120];
    for (int i = 0; i < volumes.length; i++) {
      volumes[i] = 0.15 * i;
    }
    double[] readings =
        SimulatedTitration.of(TitrationLogTest.BEER, lye.solution(celsius(20)), mL(50))
            .pHAfter(volumes);
    AcidityResult ta =
        lye.titrate(mL(50))
            .with(Apparatus.usual().withRepeatability(0.002))
            .log(volumes, readings)
            .acidity();
    assertEquals(
        List.of(TitrationCode.LAG_AND_DRIFT_UNCHECKED, TitrationCode.GAS_NOT_IN_BUDGET),
        ta.notices().stream().map(Notice::code).toList());
    LinearityCheck check = ta.linearityCheck(1_000_000, 2026);
    assertEquals(LinearityCheck.Verdict.AGREES, check.verdict(), check.toString());
    assertEquals(0, check.standardUncertaintyDifference().orElseThrow(), 0.02);
  }

  @Test
  void aTitrantPrintsItsFormula() {
    assertEquals("NaOH", Titrant.sodiumHydroxide().toString());
    assertEquals("KOH", Titrant.potassiumHydroxide().toString());
    assertEquals("HCl", Titrant.hydrochloricAcid().toString());
    assertEquals("H2SO4", Titrant.sulfuricAcid().toString());
    assertEquals("HNO3", Titrant.nitricAcid().toString());
    assertEquals("H2SO4", Titrant.sulfuricAcid().of(molPerL(0.05)).substance().formula());
  }

  @Test
  void aTitrantKnowsTheDayItWasStandardised() {
    assertEquals(LocalDate.of(2026, 6, 1), JUNE.date().orElseThrow());
    assertTrue(lye(0).date().isEmpty());
  }

  /** Half a mole of sulfuric acid is an equivalent, and so is half the uncertainty of it. */
  @Test
  void aLabelInEquivalentsIsTakenOverThoseOfAMole() {
    ChargeConcentration label = ChargeConcentration.ofEquivalentsPerLitre(0.1);
    ChargeConcentration u = ChargeConcentration.ofEquivalentsPerLitre(0.0002);
    Titrant plain = Titrant.sulfuricAcid().ofEquivalents(label);
    assertEquals(0.05, plain.concentration().value().inMolesPerLitre(), 1e-15);
    Titrant known = Titrant.sulfuricAcid().ofEquivalents(label, u);
    assertEquals(0.05, known.concentration().value().inMolesPerLitre(), 1e-15);
    assertEquals(0.0001, known.concentration().standardUncertainty().orElseThrow(), 1e-12);
    assertEquals(
        0.1,
        Titrant.nitricAcid().ofEquivalents(label).concentration().value().inMolesPerLitre(),
        1e-15);
  }

  @Test
  void aTitrantIsKnownToItsConcentrationAtWorst() {
    Titrant.Unstandardised lye = Titrant.sodiumHydroxide();
    lye.of(molPerL(0.1), molPerL(0.1));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> lye.of(molPerL(0.1), molPerL(0.11)))
            .getMessage()
            .endsWith("0.11 mol/L is not possible; 0 to 0.1 mol/L is allowed"));
    assertThrows(
        IllegalArgumentException.class, () -> lye.ofEquivalents(mEqPerL(100), mEqPerL(110)));
  }
}
