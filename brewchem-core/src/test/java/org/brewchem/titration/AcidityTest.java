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
import java.util.Map;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Code;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Severity;
import org.brewchem.figure.Step;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.CarbonDioxidePressure;
import org.brewchem.solution.Solution;
import org.brewchem.uncertainty.ExpandedUncertainty;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
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
    Answer<TitratableAcidity> ta = DECIMOLAR.titrate(mL(50)).took(mL(15)).acidity().as(AOAC_LACTIC);
    assertEquals(2.70, ta.number(), 1e-12);
    assertEquals(
        0.270, ta.in(Scales.acidityPer100MillilitresAs(AOAC_LACTIC, pH(8.2))).number(), 1e-12);
    Density beer = Density.ofGramsPerMillilitre(1.010);
    assertEquals(
        0.2673, ta.in(Scales.acidityPer100GramsAs(AOAC_LACTIC, beer, pH(8.2))).number(), 5e-5);
  }

  /** The exact equivalent of lactic acid, 90.078 g/Eq, by CIAAW 2021. */
  @Test
  void beerByTheExactEquivalent() {
    AcidityResult ta = DECIMOLAR.titrate(mL(50)).took(mL(15)).acidity();
    assertEquals(2.702, ta.as(LACTIC).number(), 5e-4);
    assertEquals(30, ta.value().inMilliequivalentsPerLitre(), 1e-12);
    assertEquals(pH(8.2), ta.endPoint());
  }

  /** OIV-MA-AS313-01: A = 10 n for n mL of 0.1 mol/L on 10 mL of wine, to pH 7 (from memory). */
  @Test
  void wineToAnotherEndPoint() {
    AcidityResult ta = DECIMOLAR.titrate(mL(10)).to(pH(7)).took(mL(7.5)).acidity();
    assertEquals(75, ta.value().inMilliequivalentsPerLitre(), 1e-12);
    assertEquals(0.075 * 75, ta.as(TARTARIC).number(), 0.005);
  }

  @Test
  void theLaboratoryNoteOfTwoWeighingsAndTwoTitres() {
    Titrant lye =
        Titrant.sodiumHydroxide()
            .standardised(khp(g(0.4082), mL(19.94)), khp(g(0.4107), mL(20.07)));
    AcidityResult ta = lye.titrate(mL(50)).to(pH(8.2)).took(mL(14.62), mL(14.58)).acidity();
    assertEquals("NaOH 0.10022 mol/L", lye.toString().split(",", 2)[0]);
    assertTrue(lye.toString().endsWith("), n = 2"), lye.toString());
    assertTrue(ta.as(LACTIC).toString().startsWith("2.636 g/L as lactic acid, to pH 8.2, U "));
    assertTrue(ta.as(TARTARIC).toString().startsWith("2.196 g/L as tartaric acid, to pH 8.2, U "));
    assertEquals(0.04 / 14.60, ta.relativeDifference().orElseThrow(), 1e-6);
    assertEquals(
        List.of(
            TitrationCode.TWO_REPLICATES,
            TitrationCode.TWO_REPLICATES,
            TitrationCode.END_POINT_READING_NOT_IN_BUDGET,
            TitrationCode.GAS_NOT_IN_BUDGET),
        ta.notices().stream().map(Notice::code).toList());
    assertEquals("weighings of KHP", ta.notices().get(0).subject());
    assertEquals("titres", ta.notices().get(1).subject());
    assertTrue(ta.notices().get(1).text().contains("12.7"));
  }

  /** One rule for k: the answer, its budget and its explanation print the same U. */
  @Test
  void answerBudgetAndExplanationGiveTheSameU() {
    Titrant lye =
        Titrant.sodiumHydroxide()
            .standardised(khp(g(0.4082), mL(19.94)), khp(g(0.4107), mL(20.07)));
    AcidityResult acidity = lye.titrate(mL(50)).to(pH(8.2)).took(mL(9.52), mL(9.57)).acidity();
    ExpandedUncertainty budget = acidity.budget().result().expanded();
    Answer<TitratableAcidity> stated = acidity.as(LACTIC);
    ExpandedUncertainty answer = stated.expanded().orElseThrow();
    assertEquals(budget.coverageFactor(), answer.coverageFactor(), 1e-9);
    assertEquals(budget.halfWidth() * LACTIC.gramsPerEquivalent() / 1000, answer.halfWidth(), 1e-9);
    String k = stated.toString().substring(stated.toString().indexOf("(k = "));
    assertTrue(acidity.budget().toString().contains(k), acidity.budget().toString());
    List<String> lines = stated.explain().lines();
    assertTrue(lines.stream().anyMatch(line -> line.contains(stated.toString())), lines.toString());
    String inEquivalents = acidity.answer().in(Scales.acidity(pH(8.2))).toString();
    assertTrue(
        lines.stream().anyMatch(line -> line.contains(inEquivalents)), inEquivalents + lines);
  }

  /** A titrant used for two samples is one source in both: it cancels from what sets them apart. */
  @Test
  void twoAciditiesWithOneTitrantCorrelate() {
    Titrant lye = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.001));
    Traced one = lye.titrate(mL(50)).took(mL(10)).acidity().as(LACTIC).traced();
    Traced other = lye.titrate(mL(50)).took(mL(9)).acidity().as(LACTIC).traced();
    double independent =
        Math.hypot(
            one.standardUncertainty().orElseThrow(), other.standardUncertainty().orElseThrow());
    double difference = one.minus(other).standardUncertainty().orElseThrow();
    assertTrue(difference < independent / 2, difference + " of " + independent);
    Source titrant = lye.concentration().traced().sources().get(0);
    assertEquals(
        one.value() / 0.1 - other.value() / 0.1, one.minus(other).sensitivity(titrant), 1e-6);
    Titrant another = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.001));
    Traced apart = another.titrate(mL(50)).took(mL(9)).acidity().as(LACTIC).traced();
    assertEquals(independent, one.minus(apart).standardUncertainty().orElseThrow(), 1e-9);
  }

  @Test
  void aTitrantWithoutUncertaintyLeavesTheAcidityWithoutOne() {
    AcidityResult ta = DECIMOLAR.titrate(mL(50)).took(mL(15)).acidity();
    assertEquals("2.702 g/L as lactic acid, to pH 8.2", ta.as(LACTIC).toString());
    assertEquals(
        List.of("concentration of NaOH: 1 % of it would add 0.027 g/L as lactic acid, to pH 8.2"),
        ta.as(LACTIC).uncertaintiesMissing());
    assertEquals(TitrationCode.TITRANT_WITHOUT_UNCERTAINTY, ta.notices().get(0).code());
    assertTrue(ta.budget().toString().contains("u not stated of concentration of NaOH"));
  }

  /** How to add a titration: a figure of one's own, a volume found in one's own way. */
  @Test
  void aTitrationOfOnesOwnNeedsNoOtherClass() {
    Figure<Double> formol =
        Figure.of(
            "formol number",
            Map.of(),
            Scale.number("mEq/L", 2),
            new Figure.Rule() {
              @Override
              public Step find(Figure<?> figure, Answering from) {
                return Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
                    .unknown(List.of("does not apply to a " + from.kind()));
              }

              @Override
              public String text() {
                return "alkali after formaldehyde";
              }
            });
    Titrant lye = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0001));
    Determination<Double> found =
        Determination.of(formol, "invented", lye.titrate(mL(50)), mL(4.2), mL(4.3));
    assertEquals(8.5, found.value(), 1e-12);
    assertTrue(found.explain().holds());
    assertFalse(Answer.of(formol, lye).isStated());

    Step middle =
        Step.of("titre", TitrationFigures.MILLILITRES, Step.Kind.FORMULA)
            .text("half way between two readings", "")
            .found(Traced.of(Source.of("place of the end point", 14.5, 0.1, "mL")));
    TitrationLog log =
        lye.titrate(mL(50)).log(new double[] {0, 14, 15}, new double[] {4.4, 7.9, 8.5});
    AcidityResult there = log.acidityAt(new FoundEndPoint(middle, pH(8.2)));
    assertEquals(29, there.value().inMilliequivalentsPerLitre(), 1e-12);
    assertEquals(0.2, there.budget().row("end point").contribution(), 1e-9);
  }

  /**
   * 0.1 g/L over 44.01 g/mol are 2.27 mEq/L to bicarbonate, nearly all of it at pH 8.2: 0.20 g/L.
   */
  @Test
  void whatGasInTheSampleReadsAsIsSaidOfEveryAcidity() {
    List<String> said =
        DECIMOLAR.titrate(mL(50)).took(mL(9.5)).acidity().notices().stream()
            .filter(notice -> notice.code() == TitrationCode.GAS_NOT_IN_BUDGET)
            .map(Notice::text)
            .toList();
    assertEquals(
        List.of(
            "carbon dioxide that stayed in the sample is not in the budget: 100 mg/L of it reads"
                + " as 0.20 g/L of lactic acid"),
        said);
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
        ta.notices().stream()
            .anyMatch(f -> f.code() == TitrationCode.END_POINT_READING_NOT_IN_BUDGET));
  }

  @Test
  void aLogThatStopsShortIsSaidAndGivesNoResult() {
    TitrationLog log =
        DECIMOLAR.titrate(mL(50)).log(new double[] {0, 5, 10}, new double[] {4.4, 5.6, 6.8});
    assertEquals(TitrationCode.END_POINT_NOT_REACHED, log.notices().get(0).code());
    assertEquals(3, log.notices().get(0).row().orElseThrow());
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
        List.of(TitrationCode.READING_OUT_OF_ORDER, TitrationCode.STEP_NOT_MONOTONE),
        log.notices().stream().map(Notice::code).limit(2).toList());
    assertEquals(3, log.notices().get(0).row().orElseThrow());
    assertEquals(5, log.notices().get(1).row().orElseThrow());
  }

  /**
   * Common practice, no source: beer above 10 g/L as lactic acid is unusual. Source of the limit:
   * each mole of the carbon dioxide that water holds at 0 °C and 1 atm gives about one proton; how
   * much water holds is checked against handbooks in CarbonationTest.
   */
  @Test
  void anAcidityThatOnlyGasExplainsIsSaid() {
    assertEquals(List.of(), kindsOfSize(38));
    assertEquals(List.of(TitrationCode.ACIDITY_UNUSUAL), kindsOfSize(60));
    assertEquals(List.of(TitrationCode.SAMPLE_CARBONATED), kindsOfSize(130));
    assertEquals(
        10
            + CarbonDioxidePressure.carbonationUnder(Pressure.ofAtmospheres(1), celsius(0))
                    .inGramsPerLitre()
                * 90.078
                / 44.009,
        AcidityResult.greatestOfOpenSample(pH(8.2)).inGramsPerLitreAs(LACTIC),
        0.15);
  }

  private static List<Code> kindsOfSize(double titre) {
    return DECIMOLAR.titrate(mL(50)).took(mL(titre)).acidity().notices().stream()
        .<Code>map(Notice::code)
        .filter(code -> code.severity() != Severity.REMARK)
        .toList();
  }

  /**
   * One gram per litre of carbon dioxide reads as about two grams per litre of lactic acid: at most
   * one proton of 44.01 g/mol against 90.08 g/mol is 2.05, and a trace of carbonate more.
   */
  @Test
  void carbonDioxideLeftInTheSampleReadsAsTwiceItsMass() {
    TitratableAcidity bias = Solution.at(celsius(20)).acidityOfCarbonDioxide(gPerL(1), pH(8.2));
    assertEquals(2.05, bias.inGramsPerLitreAs(LACTIC), 0.05);
  }

  @Test
  void theExplanationPrintsTheValuesThatItWasComputedWith() {
    AcidityResult ta =
        DECIMOLAR.titrate(mL(25)).blank(mL(0.05)).prediluted(2).took(mL(8.05), mL(8.07)).acidity();
    String text = ta.as(LACTIC).explain().toString();
    assertTrue(text.contains("(8.05 + 8.07) / 2 - blank 0.05 = 8.01"), text);
    assertTrue(text.contains("8.01 mL x 0.100000 mol/L x 1 Eq/mol = 0.801000 mEq"), text);
    assertTrue(text.contains("25 mL / 2 = 12.5"), text);
    assertTrue(text.contains("= 64.08 mEq/L"), text);
    assertTrue(text.contains("90.078 g/Eq / 1000"), text);
    assertTrue(ta.as(LACTIC).explain().holds());
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
    assertEquals(0.10214, lye.concentration().number(), 5e-6);
    assertEquals(0.00010, lye.concentration().standardUncertainty().orElseThrow(), 1e-5);
  }

  /** Arithmetic on the definition: 0.2120 g of Na2CO3 (105.99 g/mol, 2 eq) in 40.00 mL is 0.1 M. */
  @Test
  void acidIsStandardisedWithSodiumCarbonate() {
    Weighing weighing = Weighing.sodiumCarbonate(g(0.21198), mL(40));
    assertEquals(
        0.1, Titrant.hydrochloricAcid().standardised(weighing).concentration().number(), 1e-5);
    assertEquals(
        0.05, Titrant.sulfuricAcid().standardised(weighing).concentration().number(), 5e-6);
  }

  @Test
  void massBasisNeedsADensity() {
    AcidityResult ta = DECIMOLAR.titrate(mL(50)).took(mL(15)).acidity();
    Density beer = specificGravity(1.010).asDensity();
    assertEquals(
        0.2702 / 1.0082,
        ta.as(LACTIC).in(Scales.acidityPer100GramsAs(LACTIC, beer, pH(8.2))).number(),
        1e-4);
  }
}
