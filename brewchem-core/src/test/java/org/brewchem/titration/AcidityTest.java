package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.quantity.Quantities.specificGravity;
import static org.brewchem.substance.Acid.LACTIC;
import static org.brewchem.substance.Acid.TARTARIC;
import static org.brewchem.titration.Weighing.khp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.Density;
import org.junit.jupiter.api.Test;

class AcidityTest {

  private static final Titrant DECIMOLAR = Titrant.sodiumHydroxide().of(molPerL(0.1));

  /** The rounded factor of the method: 1 mL of 0.1 mol/L alkali is 0.0090 g. */
  private static final AcidBasis AOAC_LACTIC =
      new AcidBasis() {
        @Override
        public String name() {
          return "lactic acid, 0.0090 g/mL";
        }

        @Override
        public double gramsPerEquivalent() {
          return 90;
        }
      };

  /** AOAC 950.07: 15.00 mL on 50 mL of beer of specific gravity 1.010. */
  @Test
  void beerByTheRoundedFactorOfTheMethod() {
    StatedAcidity ta = DECIMOLAR.titrate(mL(50)).took(mL(15)).acidity().as(AOAC_LACTIC);
    assertEquals(2.70, ta.gramsPerLitre().value(), 1e-12);
    assertEquals(0.270, ta.gramsPer100Millilitres().value(), 1e-12);
    Density beer = Density.ofGramsPerMillilitre(1.010);
    assertEquals(0.2673, ta.gramsPer100Grams(beer).value(), 5e-5);
  }

  /** The exact equivalent of lactic acid, 90.078 g/Eq, by CIAAW 2021. */
  @Test
  void beerByTheExactEquivalent() {
    AcidityResult ta = DECIMOLAR.titrate(mL(50)).took(mL(15)).acidity();
    assertEquals(2.702, ta.as(LACTIC).gramsPerLitre().value(), 5e-4);
    assertEquals(30, ta.value().inMilliequivalentsPerLitre(), 1e-12);
    assertEquals(pH(8.2), ta.endPoint());
  }

  /** OIV-MA-AS313-01: A = 10 n for n mL of 0.1 mol/L on 10 mL of wine, to pH 7 (from memory). */
  @Test
  void wineToAnotherEndPoint() {
    AcidityResult ta = DECIMOLAR.titrate(mL(10)).to(pH(7)).took(mL(7.5)).acidity();
    assertEquals(75, ta.value().inMilliequivalentsPerLitre(), 1e-12);
    assertEquals(0.075 * 75, ta.as(TARTARIC).gramsPerLitre().value(), 0.005);
  }

  @Test
  void theLaboratoryNoteOfTwoWeighingsAndTwoTitres() {
    Titrant lye =
        Titrant.sodiumHydroxide()
            .standardised(khp(g(0.4082), mL(19.94)), khp(g(0.4107), mL(20.07)));
    AcidityResult ta = lye.titrate(mL(50)).to(pH(8.2)).took(mL(14.62), mL(14.58)).acidity();
    assertTrue(lye.toString().startsWith("NaOH 0.1002"), lye.toString());
    assertTrue(lye.toString().endsWith("(k = 2), n = 2"), lye.toString());
    assertTrue(
        ta.as(LACTIC).toString().startsWith("2.6361 g/L as lactic acid, to pH 8.2, U 0.0098"));
    assertTrue(ta.as(TARTARIC).toString().startsWith("2.1961 g/L as tartaric acid, to pH 8.2"));
    assertEquals(0.04 / 14.60, ta.relativeDifference().orElseThrow(), 1e-6);
    assertEquals(
        List.of(Finding.Kind.TWO_REPLICATES, Finding.Kind.END_POINT_READING_NOT_IN_BUDGET),
        ta.findings().stream().map(Finding::kind).toList());
    assertTrue(ta.findings().get(0).message().contains("12.7"));
  }

  @Test
  void blankIsSubtractedAndPredilutionMultiplied() {
    SampleTitration titration = DECIMOLAR.titrate(mL(25)).blank(mL(0.10)).prediluted(2);
    AcidityResult ta = titration.took(mL(10.10)).acidity();
    assertEquals(0.1 * 10.00 * 2 / 25 * 1000, ta.value().inMilliequivalentsPerLitre(), 1e-9);
    assertEquals(12.5, titration.undilutedSample().inMillilitres(), 1e-12);
  }

  @Test
  void sulfuricAcidAndHydrochloricAcidMeasureNoAcidity() {
    SampleTitration acid = Titrant.hydrochloricAcid().of(molPerL(0.1)).titrate(mL(50));
    assertThrows(IllegalStateException.class, () -> acid.took(mL(1)).acidity());
    assertEquals(
        0.1, Titrant.sulfuricAcid().of(molPerL(0.05)).equivalentsPerLitre().value(), 1e-15);
  }

  @Test
  void withoutATitreThereIsNoAcidity() {
    assertThrows(IllegalStateException.class, () -> DECIMOLAR.titrate(mL(50)).acidity());
    assertThrows(IllegalArgumentException.class, () -> DECIMOLAR.titrate(mL(50)).took());
    assertThrows(IllegalArgumentException.class, () -> DECIMOLAR.titrate(mL(0)));
  }

  /** AOAC 950.07 prescribes steps of 0.15 mL near the end point; the readings are invented. */
  @Test
  void readingsAroundTheEndPointAreInterpolatedAndGiveTheSlope() {
    TitrationLog log =
        DECIMOLAR
            .titrate(mL(50))
            .log(
                new double[] {0, 7.5, 13.5, 14.4, 14.55, 14.7},
                new double[] {4.41, 6.02, 7.61, 8.05, 8.15, 8.25});
    AcidityResult ta = log.acidity();
    assertEquals(2 * 14.625, ta.value().inMilliequivalentsPerLitre(), 1e-9);
    assertEquals(
        0.15 / 0.10 * 2,
        ta.slopeAtEndPoint().orElseThrow().inMilliequivalentsPerLitrePerPH(),
        1e-6);
    assertEquals(0.02 * 3, ta.budget().row("reading of the end point").contribution(), 1e-6);
    assertFalse(
        ta.findings().stream()
            .anyMatch(f -> f.kind() == Finding.Kind.END_POINT_READING_NOT_IN_BUDGET));
  }

  @Test
  void aLogThatStopsShortIsSaidAndGivesNoResult() {
    TitrationLog log =
        DECIMOLAR.titrate(mL(50)).log(new double[] {0, 5, 10}, new double[] {4.4, 5.6, 6.8});
    assertEquals(Finding.Kind.END_POINT_NOT_REACHED, log.findings().get(0).kind());
    assertEquals(3, log.findings().get(0).row().orElseThrow());
    assertTrue(log.volumeTo(pH(8.2)).isEmpty());
    assertThrows(IllegalStateException.class, log::acidity);
  }

  @Test
  void rowsOutOfOrderAndAgainstTheDirectionAreNamed() {
    TitrationLog log =
        DECIMOLAR
            .titrate(mL(50))
            .log(new double[] {0, 5, 4, 10, 11, 12}, new double[] {4.4, 5.6, 5.4, 8.0, 7.8, 8.4});
    assertEquals(
        List.of(Finding.Kind.READING_OUT_OF_ORDER, Finding.Kind.STEP_NOT_MONOTONE),
        log.findings().stream().map(Finding::kind).limit(2).toList());
    assertEquals(3, log.findings().get(0).row().orElseThrow());
    assertEquals(5, log.findings().get(1).row().orElseThrow());
  }

  /**
   * Common practice, no source: beer above 10 g/L as lactic acid is unusual. Source of the limit:
   * water holds 3.35 g/L of carbon dioxide at 0 °C and 1 atm (handbooks, from memory), each mole of
   * which gives about one proton.
   */
  @Test
  void anAcidityThatOnlyGasExplainsIsSaid() {
    assertEquals(List.of(), kindsOfSize(38));
    assertEquals(List.of(Finding.Kind.ACIDITY_UNUSUAL), kindsOfSize(60));
    assertEquals(List.of(Finding.Kind.SAMPLE_CARBONATED), kindsOfSize(130));
    assertEquals(
        10 + 3.35 * 90.078 / 44.009,
        AcidityResult.greatestOfOpenSample(pH(8.2)).inGramsPerLitreAs(LACTIC),
        0.15);
  }

  private static List<Finding.Kind> kindsOfSize(double titre) {
    return DECIMOLAR.titrate(mL(50)).took(mL(titre)).acidity().findings().stream()
        .map(Finding::kind)
        .filter(kind -> kind.severity() != Finding.Severity.REMARK)
        .toList();
  }

  /**
   * One gram per litre of carbon dioxide reads as about two grams per litre of lactic acid: at most
   * one proton of 44.01 g/mol against 90.08 g/mol is 2.05, and a trace of carbonate more.
   */
  @Test
  void carbonDioxideLeftInTheSampleReadsAsTwiceItsMass() {
    CarbonDioxideResidue bias = CarbonDioxideResidue.of(gPerL(1), pH(4.3), pH(8.2), celsius(20));
    assertEquals(2.0, bias.bias().inGramsPerLitreAs(LACTIC), 0.05);
    assertEquals(1, bias.equivalentsPerMole(), 0.02);
  }

  @Test
  void theExplanationPrintsTheValuesThatItWasComputedWith() {
    AcidityResult ta =
        DECIMOLAR.titrate(mL(25)).blank(mL(0.05)).prediluted(2).took(mL(8.05), mL(8.07)).acidity();
    String text = ta.explain().toString();
    assertTrue(text.contains("(8.05 + 8.07) / 2 - blank 0.05 = 8.01 mL"), text);
    assertTrue(text.contains("8.01 mL x 0.100000 mol/L x 1 Eq/mol = 0.801000 mEq"), text);
    assertTrue(text.contains("25 mL / 2 = 12.5 mL"), text);
    assertTrue(text.contains("= 64.0800 mEq/L"), text);
    assertTrue(text.contains("90.078 g/Eq  [molar mass"), text);
  }

  @Test
  void standardisationRefusesTheWrongStandard() {
    assertThrows(
        IllegalArgumentException.class,
        () -> Titrant.hydrochloricAcid().standardised(khp(g(0.4), mL(20))));
    assertThrows(IllegalArgumentException.class, () -> Titrant.sodiumHydroxide().standardised());
    assertThrows(IllegalArgumentException.class, () -> khp(g(0), mL(20)));
  }

  /**
   * EURACHEM/CITAC Guide CG 4 (2012), example A2, from memory: 0.3888 g of KHP, 18.64 mL, c =
   * 0.10214 mol/L, u = 0.00010 mol/L.
   */
  @Test
  void standardisationOfTheEurachemGuide() {
    Titrant lye =
        Titrant.sodiumHydroxide()
            .standardised(Apparatus.usual().withRepeatability(0.0005), khp(g(0.3888), mL(18.64)));
    assertEquals(0.10214, lye.concentration().value(), 5e-6);
    assertEquals(0.00010, lye.concentration().standardUncertainty(), 1e-5);
  }

  /** Arithmetic on the definition: 0.2120 g of Na2CO3 (105.99 g/mol, 2 eq) in 40.00 mL is 0.1 M. */
  @Test
  void acidIsStandardisedWithSodiumCarbonate() {
    Weighing weighing = Weighing.sodiumCarbonate(g(0.21198), mL(40));
    assertEquals(
        0.1, Titrant.hydrochloricAcid().standardised(weighing).concentration().value(), 1e-5);
    assertEquals(0.05, Titrant.sulfuricAcid().standardised(weighing).concentration().value(), 5e-6);
  }

  @Test
  void massBasisNeedsADensity() {
    AcidityResult ta = DECIMOLAR.titrate(mL(50)).took(mL(15)).acidity();
    Density beer = specificGravity(1.010).asDensity();
    assertEquals(0.2702 / 1.0082, ta.as(LACTIC).gramsPer100Grams(beer).value(), 1e-4);
  }
}
