package org.brewchem.quality;

import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Step;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Figures;
import org.brewchem.uncertainty.MethodPrecision;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** Bands, differences and decisions on invented beers. */
class TargetBandTest {

  private static final MethodPrecision PH_OF_BEER =
      MethodPrecision.published("pH of beer", 4.4).orElseThrow();

  private static Beer beer(double pH, double milliequivalents, double u) {
    return Beer.of(pH(pH), TitratableAcidity.ofMilliequivalentsPerLitre(milliequivalents, pH(8.2)))
        .withStandardUncertaintyOfPH(u);
  }

  private static Answer<PH> pHOf(double pH, double u) {
    return Answer.of(Figures.PH_VALUE, beer(pH, 20, u));
  }

  @Test
  void oneBatchGivesItsValueAndTheRepeatabilityLimit() {
    TargetBand<PH> band = TargetBand.fromOne(pHOf(4.35, 0.02), PH_OF_BEER);
    Constraint constraint = band.constraint();
    assertEquals(4.35, constraint.aim().orElseThrow(), 1e-12);
    assertEquals(4.35 + 0.025, constraint.upper().orElseThrow(), 1e-12);
    assertTrue(band.madeFrom().contains("harrison-1998"), band.madeFrom());
  }

  @Test
  void severalBatchesGiveTheirMeanAndAToleranceInterval() {
    TargetBand<PH> band =
        TargetBand.fromSeveral(
            List.of(pHOf(4.30, 0.02), pHOf(4.34, 0.02), pHOf(4.38, 0.02)), 0.95, 0.95);
    assertEquals(4.34, band.constraint().aim().orElseThrow(), 1e-12);
    assertEquals(4.34 - 9.789 * 0.04, band.constraint().lower().orElseThrow(), 0.0005 * 0.04);
    assertThrows(
        IllegalArgumentException.class,
        () -> TargetBand.fromSeveral(List.of(pHOf(4.3, 0.02)), 0.95, 0.95));
  }

  private static List<String> codes(TargetBand<?> band) {
    return band.notices().stream().map(notice -> notice.code().toString()).toList();
  }

  @Test
  void equalBatchesMakeABandWithoutWidthAndANotice() {
    TargetBand<PH> band =
        TargetBand.fromSeveral(
            List.of(pHOf(4.4, 0.02), pHOf(4.4, 0.02), pHOf(4.4, 0.02)), 0.95, 0.95);
    assertEquals(List.of("BATCHES_EQUAL"), codes(band));
    assertEquals("3 equal batches: their spread is not known", band.madeFrom());
    assertEquals(4.4, band.constraint().upper().orElseThrow());
    assertEquals(List.of(), codes(band.withTolerance(0.05)));
  }

  /**
   * By hand: of two the factor is 36.52 at 95 % and 95 %, and s of values d apart is d / sqrt(2). A
   * pH of 4.3 and 4.6 reaches from 4.45 - 7.75 to 4.45 + 7.75, an acidity of 15 and 16 mEq/L from
   * 15.5 - 25.8.
   */
  @Test
  void ofFewBatchesTheWidthAndWhatIsNotPossibleAreSaid() {
    TargetBand<PH> two =
        TargetBand.fromSeveral(List.of(pHOf(4.3, 0.02), pHOf(4.6, 0.02)), 0.95, 0.95);
    assertEquals(List.of("FEW_BATCHES", "BAND_REACHES_TOO_FAR"), codes(two));
    assertEquals(
        "the band of pH comes from 2 batches, which hardly fix a spread: it is 36.5 standard"
            + " deviations wide on both sides; 5 or more make it narrower",
        two.notices().get(0).text());
    assertEquals(
        "the band of pH, pH -3.30 to 12.20, reaches below 0, where no batch lies: the batches do not"
            + " fix their spread, and such a limit bounds nothing",
        two.notices().get(1).text());
    TargetBand<PH> high =
        TargetBand.fromSeveral(
            List.of(pHWithOneDegreeOfFreedom(9.0, 0.02), pHWithOneDegreeOfFreedom(9.2, 0.02)),
            0.95,
            0.95);
    assertEquals(List.of("FEW_BATCHES", "BAND_REACHES_TOO_FAR"), codes(high));
    assertTrue(high.notices().get(1).text().contains("reaches what is not possible"));
    Figure<TitratableAcidity> acidity = Figures.titratableAcidity(pH(8.2));
    List<Answer<TitratableAcidity>> acid =
        List.of(Answer.of(acidity, beer(4.3, 15, 0.02)), Answer.of(acidity, beer(4.3, 16, 0.02)));
    assertTrue(
        TargetBand.fromSeveral(acid, 0.95, 0.95).notices().get(1).text().contains("below 0"));
    assertEquals(
        List.of("FEW_BATCHES"),
        codes(
            TargetBand.fromSeveral(
                List.of(pHOf(4.3, 0.02), pHOf(4.31, 0.02), pHOf(4.32, 0.02), pHOf(4.3, 0.02)),
                0.95,
                0.95)));
    assertEquals(
        List.of(),
        codes(
            TargetBand.fromSeveral(
                List.of(
                    pHOf(4.3, 0.02),
                    pHOf(4.31, 0.02),
                    pHOf(4.32, 0.02),
                    pHOf(4.3, 0.02),
                    pHOf(4.29, 0.02)),
                0.95,
                0.95)));
  }

  @Test
  void aBandNarrowerThanTheMethodIsSaidToBe() {
    TargetBand<PH> band = TargetBand.fromOne(pHOf(4.35, 0.02), PH_OF_BEER);
    assertEquals(List.of(), band.notices());
    assertEquals(List.of(), band.withTolerance(0.065).judgedBy(PH_OF_BEER).notices());
    String between = band.withTolerance(0.06).judgedBy(PH_OF_BEER).notices().get(0).text();
    assertTrue(between.contains("two laboratories differ by up to 0.13"), between);
    String within = band.withTolerance(0.012).judgedBy(PH_OF_BEER).notices().get(0).text();
    assertTrue(within.contains("one laboratory differ by up to 0.025"), within);
    assertThrows(IllegalArgumentException.class, () -> band.withTolerance(0));
    assertThrows(
        IllegalArgumentException.class,
        () -> band.judgedBy(MethodPrecision.stated("acidity", 0.05, "g/L")));
  }

  @Test
  void aDifferenceIsJudgedByTheUncertaintiesOfBoth() {
    double[] uncertainties = {0.05, 0.10, 0.20};
    double[] z = {4.243, 2.121, 1.061};
    for (int i = 0; i < z.length; i++) {
      Difference difference =
          Difference.of(pHOf(4.10, uncertainties[i]), pHOf(4.40, uncertainties[i]));
      assertEquals(-0.30, difference.value(), 1e-12);
      assertEquals(-z[i], difference.z().orElseThrow(), 0.001);
      assertEquals(
          i < 2 ? Difference.Finding.DIFFERENT : Difference.Finding.NOT_DISTINGUISHABLE,
          difference.finding());
    }
  }

  @Test
  void whatBothShareCancelsInADifference() {
    Answer<PH> one = pHOf(4.40, 0.05);
    assertEquals(0, Difference.of(one, one).standardUncertainty().orElseThrow(), 1e-15);
    assertTrue(Difference.of(one, one).z().isEmpty());
    assertEquals(Difference.Finding.NOT_DISTINGUISHABLE, Difference.of(one, one).finding());
  }

  @Test
  void withoutAnUncertaintyNothingIsToldApart() {
    Answer<PH> bare =
        Answer.of(
            Figures.PH_VALUE,
            Beer.of(pH(4.2), TitratableAcidity.ofMilliequivalentsPerLitre(20, pH(8.2))));
    Difference difference = Difference.of(bare, pHOf(4.4, 0.02));
    assertEquals(Difference.Finding.UNKNOWN, difference.finding());
    assertEquals(
        Difference.Finding.DIFFERENT,
        Difference.inOneLaboratory(bare, pHOf(4.4, 0.02), PH_OF_BEER).finding());
  }

  @Test
  void oneLaboratoryTellsApartWhatTwoLaboratoriesCannot() {
    Answer<PH> later = pHOf(4.34, 0.02);
    Answer<PH> earlier = pHOf(4.40, 0.02);
    assertEquals(
        Difference.Finding.DIFFERENT,
        Difference.inOneLaboratory(later, earlier, PH_OF_BEER).finding());
    assertEquals(
        Difference.Finding.NOT_DISTINGUISHABLE,
        Difference.betweenLaboratories(later, earlier, PH_OF_BEER).finding());
    assertEquals(
        Difference.Finding.UNKNOWN,
        Difference.betweenLaboratories(
                later, earlier, MethodPrecision.stated("own meter", 0.01, ""))
            .finding());
    assertEquals(Optional.empty(), MethodPrecision.published("titratable acidity of beer", 20));
  }

  @Test
  void aDecisionCarriesTheRiskOfBeingWrong() {
    Constraint limits = Constraint.between(Figures.PH_VALUE, pH(4.2), pH(4.4));
    GuardBand shared = GuardBand.of(0);
    GuardBand.Decided inside = shared.decide(limits, pHOf(4.3, 0.05));
    assertEquals(GuardBand.Decision.ACCEPTED, inside.decision());
    assertEquals(0.0455, inside.risk().orElseThrow(), 1e-4);
    GuardBand.Decided outside = shared.decide(limits, pHOf(4.45, 0.05));
    assertEquals(GuardBand.Decision.REJECTED, outside.decision());
    assertEquals(0.1587, outside.risk().orElseThrow(), 1e-4);
    assertEquals(
        GuardBand.Decision.REJECTED, GuardBand.of(2).decide(limits, pHOf(4.31, 0.05)).decision());
    Answer<PH> bare =
        Answer.of(
            Figures.PH_VALUE,
            Beer.of(pH(4.3), TitratableAcidity.ofMilliequivalentsPerLitre(20, pH(8.2))));
    assertEquals(GuardBand.Decision.UNDECIDABLE, shared.decide(limits, bare).decision());
    assertThrows(IllegalArgumentException.class, () -> GuardBand.of(-1));
  }

  /** By hand: 4 and 4.5 with a guard of 2 u of 0.0625 leave 4.125 to 4.375. */
  @Test
  void aGuardBandMovesBothLimitsInwards() {
    Constraint limits = Constraint.between(Figures.PH_VALUE, pH(4), pH(4.5));
    GuardBand guard = GuardBand.of(2);
    assertEquals(0.02275, guard.riskAtTheLimit(), 1e-5);
    assertEquals(0.5, GuardBand.of(0).riskAtTheLimit(), 1e-12);
    // Numbers that binary holds exactly: a value on the guarded limit is accepted.
    assertEquals(GuardBand.Decision.ACCEPTED, guard.decide(limits, pHOf(4.125, 0.0625)).decision());
    assertEquals(GuardBand.Decision.ACCEPTED, guard.decide(limits, pHOf(4.375, 0.0625)).decision());
    assertEquals(
        GuardBand.Decision.REJECTED, guard.decide(limits, pHOf(4.1249, 0.0625)).decision());
    assertEquals(
        GuardBand.Decision.REJECTED, guard.decide(limits, pHOf(4.3751, 0.0625)).decision());
    assertEquals(
        "rejected, wrong in 97 % of cases", guard.decide(limits, pHOf(4.12, 0.0625)).toString());
    assertEquals(
        "undecidable",
        guard
            .decide(
                limits,
                Answer.of(
                    Figures.PH_VALUE,
                    Beer.of(pH(4.3), TitratableAcidity.ofMilliequivalentsPerLitre(20, pH(8.2)))))
            .toString());
    Answer<TitratableAcidity> other =
        Answer.of(Figures.titratableAcidity(pH(8.2)), beer(4.3, 20, 0.02));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> guard.decide(limits, other))
            .getMessage()
            .endsWith("is not possible; pH in \"\" is needed"));
  }

  private static Answer<PH> pHWithOneDegreeOfFreedom(double pH, double u) {
    Traced traced = Traced.of(Source.of("pH", pH, u, 1, ""));
    return Answer.of(
        Figures.PH_VALUE, Step.of("pH", Figures.PH_VALUE.scale(), Step.Kind.STATED).found(traced));
  }

  /**
   * Student's t of one degree of freedom is Cauchy's: the chance beyond t standard uncertainties is
   * 1/2 - atan(t)/pi. At 2 u it is 14.8 %, not the 2.28 % of the normal distribution, which is left
   * at 13.97 u only.
   */
  @Test
  void fewDegreesOfFreedomWidenTheGuardBandAndTheRisk() {
    Constraint limit = Constraint.atMost(Figures.PH_VALUE, pH(4.5));
    GuardBand guard = GuardBand.of(2);
    GuardBand.Decided near = guard.decide(limit, pHWithOneDegreeOfFreedom(4.3, 0.1));
    assertEquals(0.5 - Math.atan(2) / Math.PI, near.chanceOutside().orElseThrow(), 1e-9);
    assertEquals("rejected, wrong in 85 % of cases", near.toString());
    double needed = Math.tan(Math.PI * (0.5 - guard.riskAtTheLimit()));
    assertEquals(13.97, needed, 0.005);
    assertEquals(
        GuardBand.Decision.REJECTED,
        guard
            .decide(limit, pHWithOneDegreeOfFreedom(4.5 - 0.9999 * needed * 0.01, 0.01))
            .decision());
    GuardBand.Decided far =
        guard.decide(limit, pHWithOneDegreeOfFreedom(4.5 - 1.0001 * needed * 0.01, 0.01));
    assertEquals("accepted, wrong in 2.3 % of cases", far.toString());
    GuardBand.Decided below =
        guard.decide(
            Constraint.atLeast(Figures.PH_VALUE, pH(4)), pHWithOneDegreeOfFreedom(4.2, 0.1));
    assertEquals(0.5 - Math.atan(2) / Math.PI, below.chanceOutside().orElseThrow(), 1e-9);
    assertEquals(
        GuardBand.Decision.ACCEPTED,
        GuardBand.of(0).decide(limit, pHWithOneDegreeOfFreedom(4.5, 0.1)).decision());
  }

  @Test
  void theRiskOfADecisionIsReadableHoweverSmallOrLarge() {
    Constraint exactly = Constraint.exactly(Figures.PH_VALUE, pH(4.3));
    assertEquals(
        "accepted, wrong in more than 99.99 % of cases",
        GuardBand.of(0).decide(exactly, pHOf(4.3, 0.05)).toString());
    Constraint wide = Constraint.between(Figures.PH_VALUE, pH(3), pH(5));
    assertEquals(
        "accepted, wrong in less than 0.01 % of cases",
        GuardBand.of(2).decide(wide, pHOf(4.3, 0.05)).toString());
  }

  @Test
  void aDifferencePrintsItsFindingAndWhatItRestsOn() {
    assertEquals(
        "pH: -0.30, z -4.2, different (by the uncertainties of both)",
        Difference.of(pHOf(4.10, 0.05), pHOf(4.40, 0.05)).toString());
    assertEquals(
        "pH: +0.010, z 0.4, not distinguishable (by the uncertainties of both)",
        Difference.of(pHOf(4.41, 0.02), pHOf(4.40, 0.02)).toString());
    Answer<TitratableAcidity> later =
        Answer.of(Figures.titratableAcidity(pH(8.2)), beer(4.3, 20, 0.02));
    Answer<TitratableAcidity> earlier =
        Answer.of(Figures.titratableAcidity(pH(8.2)), beer(4.3, 10, 0.02));
    String text = Difference.of(later, earlier).toString();
    assertTrue(text.contains(" g/L") && text.contains(", unknown ("), text);
    assertTrue(text.startsWith("titratable acidity"), text);
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> Difference.of(later, pHOf(4.4, 0.02)))
            .getMessage()
            .startsWith("earlier batch: pH in"));
    assertThrows(
        IllegalArgumentException.class,
        () -> Difference.inOneLaboratory(later, pHOf(4.4, 0.02), PH_OF_BEER));
  }

  /** By hand: twice a tolerance on the limit of the method is not narrower than it. */
  @Test
  void aBandAsWideAsTheMethodIsNotNarrowerThanIt() {
    MethodPrecision precision = MethodPrecision.stated("own meter", 0.0125, "");
    double limit = precision.repeatabilityLimit().value();
    TargetBand<PH> band = TargetBand.fromOne(pHOf(4.35, 0.02), precision);
    assertEquals(List.of(), band.withTolerance(limit / 2).judgedBy(precision).notices());
    assertEquals(1, band.withTolerance(0.999 * limit / 2).judgedBy(precision).notices().size());
    assertTrue(band.toString().endsWith("(" + band.madeFrom() + ")"), band.toString());
    assertTrue(band.toString().startsWith(band.constraint().toString()), band.toString());
    assertThrows(
        IllegalArgumentException.class,
        () -> TargetBand.fromOne(pHOf(4.35, 0.02), MethodPrecision.stated("acidity", 0.05, "g/L")));
    String several =
        TargetBand.fromSeveral(List.of(pHOf(4.3, 0.02), pHOf(4.4, 0.02)), 0.9, 0.95).madeFrom();
    assertTrue(several.contains("holds 90.0 % of such batches with 95.0 % confidence"), several);
  }

  @Test
  void whatIsKnownExactlyIsDecidedByItsValue() {
    Constraint limits = Constraint.between(Figures.PH_VALUE, pH(4), pH(4.5));
    GuardBand guard = GuardBand.of(2);
    assertEquals(GuardBand.Decision.ACCEPTED, guard.decide(limits, pHOf(4.5, 0)).decision());
    assertEquals(0, guard.decide(limits, pHOf(4.5, 0)).chanceOutside().orElseThrow());
    assertEquals(GuardBand.Decision.REJECTED, guard.decide(limits, pHOf(4.51, 0)).decision());
    assertEquals(1, guard.decide(limits, pHOf(4.51, 0)).chanceOutside().orElseThrow());
  }

  private static Answer<MassConcentration> milligrams(
      Figure<MassConcentration> figure, double number) {
    Traced traced = Traced.of(Source.of(figure.title(), number, 0.1, 1, "mg/L"));
    return Answer.of(
        figure, Step.of(figure.title(), figure.scale(), Step.Kind.STATED).found(traced));
  }

  /**
   * By hand: the chance below a limit on the value itself is 1/2, as is the risk without a guard.
   */
  @Test
  void equalBatchesOtherFiguresAndAValueOnItsLimitAreToldApart() {
    Answer<PH> one = pHOf(4.40, 0.05);
    String text = Difference.of(one, one).toString();
    assertTrue(text.startsWith("pH: +0"), text);
    Answer<MassConcentration> calcium = milligrams(Figures.CALCIUM, 60);
    Answer<MassConcentration> magnesium = milligrams(Figures.MAGNESIUM, 10);
    MethodPrecision precision = MethodPrecision.stated("metals", 0.5, "mg/L");
    assertEquals(
        "earlier batch: magnesium in \"mg/L\" is not possible; calcium in \"mg/L\" is needed",
        assertThrows(
                IllegalArgumentException.class,
                () -> Difference.inOneLaboratory(calcium, magnesium, precision))
            .getMessage());
    assertEquals(
        GuardBand.Decision.ACCEPTED,
        GuardBand.of(0)
            .decide(
                Constraint.atLeast(Figures.PH_VALUE, pH(4.5)), pHWithOneDegreeOfFreedom(4.5, 0.1))
            .decision());
  }

  /**
   * By hand: 0 to 4 have the mean 2 and s 1.58, and of five the factor is above 5, so that the band
   * reaches below 0; but a batch lies at 0, so that it is said as what is not possible. Half a
   * limit doubled is that limit, exactly.
   */
  @Test
  void aBatchAtZeroIsNotAboveItAndABandOnTheLimitOfTwoLaboratoriesIsWideEnough() {
    TargetBand<MassConcentration> band =
        TargetBand.fromSeveral(
            DoubleStream.of(0, 1, 2, 3, 4)
                .mapToObj(number -> milligrams(Figures.CALCIUM, number))
                .toList(),
            0.95,
            0.95);
    assertEquals(List.of("BAND_REACHES_TOO_FAR"), codes(band));
    assertTrue(band.notices().get(0).text().contains("reaches what is not possible"));
    TargetBand<PH> one = TargetBand.fromOne(pHOf(4.35, 0.02), PH_OF_BEER);
    double between = PH_OF_BEER.reproducibilityLimit().orElseThrow();
    assertEquals(List.of(), one.withTolerance(between / 2).judgedBy(PH_OF_BEER).notices());
    String within = one.withTolerance(0.012).judgedBy(PH_OF_BEER).notices().get(0).text();
    assertTrue(within.contains("differ by up to 0.025 in 95 % of cases ("), within);
  }
}
