package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.titration.Reading.reading;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.brewchem.figure.Answer;
import org.brewchem.figure.FigureCode;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** What titrants, setups and results say of themselves, and what they refuse. */
class TitrantStatementsTest {

  private static final Titrant LYE = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0001));
  private static final SampleTitration FIFTY = LYE.titrate(mL(50));

  private static void refused(String message, Executable call) {
    String said = assertThrows(RuntimeException.class, call).getMessage();
    assertTrue(said.startsWith(message), said);
  }

  private static List<String> notices(Titrant titrant) {
    return titrant.concentration().notices().stream().map(Notice::text).toList();
  }

  @Test
  void aStatedConcentrationSaysWhatItLeavesOpen() {
    assertEquals(
        List.of(
            "NaOH 0.1 mol/L states no uncertainty, so that no result of it has one; standardise it,"
                + " or state its uncertainty"),
        notices(Titrant.sodiumHydroxide().of(molPerL(0.1))));
    assertEquals(List.of(), notices(LYE));
    assertEquals(
        List.of("H2SO4 0.05 mol/L counts as 0.1 Eq/L; a label in N or Eq/L goes in by equivalents"),
        notices(Titrant.sulfuricAcid().of(molPerL(0.05), molPerL(0.0001))));
    ChargeConcentration normal = ChargeConcentration.ofEquivalentsPerLitre(0.1);
    assertEquals(
        List.of(),
        notices(
            Titrant.sulfuricAcid()
                .ofEquivalents(normal, ChargeConcentration.ofEquivalentsPerLitre(0))));
    assertEquals(1, notices(Titrant.sulfuricAcid().ofEquivalents(normal)).size());
    List<String> strong = notices(Titrant.sodiumHydroxide().of(molPerL(3), molPerL(0.01)));
    assertEquals(1, strong.size());
    assertTrue(
        strong.get(0).startsWith("concentration of NaOH: 3 mol/L is unusual"), strong.toString());
  }

  @Test
  void aConcentrationThatIsNoneIsRefused() {
    refused("concentration of NaOH: 0", () -> Titrant.sodiumHydroxide().of(molPerL(0)));
    refused("concentration of NaOH: 26", () -> Titrant.sodiumHydroxide().of(molPerL(26)));
    refused(
        "concentration of H2SO4: 0 Eq/L",
        () -> Titrant.sulfuricAcid().ofEquivalents(ChargeConcentration.ofEquivalentsPerLitre(0)));
    refused(
        "standard uncertainty: -1",
        () ->
            Titrant.sulfuricAcid()
                .ofEquivalents(
                    ChargeConcentration.ofEquivalentsPerLitre(0.1),
                    ChargeConcentration.ofEquivalentsPerLitre(-1)));
    refused(
        "titrant: HCl 0.1 mol/L turns no phenolphthalein pink; an alkali is needed",
        () -> Titrant.hydrochloricAcid().of(molPerL(0.1)).titrateToPhenolphthalein(mL(25)));
  }

  @Test
  void aTitrantPrintsItsConcentration() {
    assertEquals("NaOH 0.1 mol/L", Titrant.sodiumHydroxide().of(molPerL(0.1)).toString());
    assertTrue(LYE.toString().startsWith("NaOH 0.1000"), LYE.toString());
    assertTrue(LYE.toString().contains(", U 0.0002"), LYE.toString());
    assertTrue(LYE.substance().isAlkali());
    assertFalse(Titrant.nitricAcid().substance().isAlkali());
    assertEquals(2, Titrant.sulfuricAcid().substance().equivalentsPerMole());
    assertEquals(
        List.of("does not apply to a titrant"),
        Answer.of(TitrationFigures.ELECTRODE_SLOPE, LYE).whyUnknown());
    assertEquals(
        0.1,
        LYE.solution(celsius(20)).inertCharge().inEquivalentsPerLitre()
            + LYE.solution(celsius(20)).total(Component.SODIUM).inMolesPerLitre(),
        1e-12);
  }

  /** By hand: 0.1 % and 0.1 % are 0.14 % together, twice that 0.28 %. */
  @Test
  void aDriftIsToldWithItsTimeAndWhatIsExplained() {
    Titrant june = LYE.on(LocalDate.of(2026, 6, 1));
    Titrant july =
        Titrant.sodiumHydroxide()
            .of(molPerL(0.0998), molPerL(0.0000998))
            .on(LocalDate.of(2026, 7, 1));
    TitrantDrift drift = july.driftSince(june);
    assertEquals(-0.002, drift.relativeChange(), 1e-12);
    assertEquals(0.001 * Math.sqrt(2), drift.explained().orElseThrow() / 2, 3e-5);
    assertFalse(drift.isSignificant());
    assertTrue(
        drift
            .toString()
            .matches(
                "NaOH moved by -0\\.20 % in 30 days; 0\\.28 % is within the uncertainty of the two"
                    + " concentrations"),
        drift.toString());
    Titrant weak = Titrant.sodiumHydroxide().of(molPerL(0.0995), molPerL(0.0000995));
    TitrantDrift more = weak.driftSince(june);
    assertTrue(more.isSignificant());
    assertEquals(more.toString(), more.notices().get(0).text());
    assertEquals("titrant", more.notices().get(0).subject());
    assertTrue(more.toString().startsWith("NaOH moved by -0.50 %; "), more.toString());
    TitrantDrift open = Titrant.sodiumHydroxide().of(molPerL(0.0995)).driftSince(june);
    assertEquals(OptionalDouble.empty(), open.explained());
    assertEquals(
        "NaOH moved by -0.50 %; not judged, because one of the two concentrations states no"
            + " uncertainty",
        open.notices().get(0).text());
    refused(
        "earlier titrant: NaOH is not possible; KOH is needed",
        () -> Titrant.potassiumHydroxide().of(molPerL(0.1)).driftSince(june));
    assertTrue(weak.driftSince(LYE).days().isEmpty());
    assertTrue(june.driftSince(LYE).days().isEmpty());
  }

  @Test
  void carbonateInLyePrintsItsBias() {
    CarbonateInLye bias = CarbonateInLye.of(0.02, pH(8.3), pH(4.5), celsius(25));
    assertTrue(
        bias.toString()
            .matches(
                "2\\.00 % of the lye as carbonate, standardised to pH 8\\.3, used to pH 4\\.5: acidity"
                    + " found -(0\\.9|1\\.0)\\d % off"),
        bias.toString());
    // Used to a higher end point than standardised it finds too much.
    assertTrue(CarbonateInLye.of(0.02, pH(4.5), pH(8.3), celsius(25)).relativeBias() > 0.009);
  }

  private static List<String> unusual(UnaryOperator<SampleTitration> change) {
    return change.apply(FIFTY).unusual().stream().map(Notice::subject).toList();
  }

  @Test
  void whatIsUnusualOfASetupIsSaidByName() {
    assertEquals(List.of(), unusual(usual -> usual));
    assertEquals(List.of("predilution"), unusual(usual -> usual.prediluted(201)));
    assertEquals(List.of("water added"), unusual(usual -> usual.into(mL(100000))));
    assertEquals(List.of("blank"), unusual(usual -> usual.blank(mL(5.1))));
    assertEquals(List.of("temperature of the titration"), unusual(usual -> usual.at(celsius(41))));
    assertEquals(List.of("end point"), unusual(usual -> usual.to(pH(6))));
    assertEquals(
        List.of("sample"), LYE.titrate(mL(0.4)).unusual().stream().map(Notice::subject).toList());
    SampleTitration acid = Titrant.hydrochloricAcid().of(molPerL(0.1)).titrate(mL(50));
    assertEquals(List.of(), acid.to(pH(8.3)).unusual());
    assertEquals(1, acid.to(pH(9)).unusual().size());
    assertEquals(
        FigureCode.UNUSUAL_VALUE,
        FIFTY.blank(mL(6)).took(mL(10)).acidity().notices().stream()
            .map(Notice::code)
            .filter(code -> code instanceof FigureCode)
            .findFirst()
            .orElseThrow());
  }

  @Test
  void aSetupKeepsWhatWasStated() {
    SampleTitration stated =
        FIFTY.to(pH(7)).blank(mL(0.1)).prediluted(2).into(mL(100)).at(celsius(25));
    assertEquals(150, stated.initialVolume().inMillilitres(), 1e-12);
    assertEquals(25, stated.undilutedSample().inMillilitres(), 1e-12);
    assertEquals(celsius(25), stated.temperature());
    assertEquals(pH(7), stated.endPoint());
    assertEquals(2, stated.predilution());
    assertEquals(mL(0.1), stated.blank());
    assertEquals("50 mL with " + LYE + ", to pH 7", stated.toString());
    assertEquals(Optional.empty(), stated.slopeAtEndPoint());
    refused("predilution: 0.9", () -> FIFTY.prediluted(0.9));
    refused("end point: ", () -> FIFTY.to(pH(14.1)));
    refused("temperature of the titration: 101", () -> FIFTY.at(celsius(101)));
    refused("titres: 0", FIFTY::took);
    refused("titres: none was stated; say what the titration took", FIFTY::acidity);
    refused(
        "readings: 2 volumes do not go with 1 pH",
        () -> FIFTY.log(new double[] {0, 1}, new double[] {4}));
  }

  @Test
  void theTwoEndPointsOfALowAlkalinityAreThoseOfTheMethod() {
    SampleTitration acid =
        Titrant.hydrochloricAcid().of(molPerL(0.02), molPerL(0.00002)).titrate(mL(200));
    for (double first : new double[] {4.3, 4.7}) {
      AlkalinityResult found =
          acid.lowAlkalinity(reading(mL(2), pH(first)), reading(mL(2.5), pH(first - 0.3)));
      assertEquals(0.02 * 1.5 / 200 * 1000, found.value().inMilliequivalentsPerLitre(), 1e-9);
      assertEquals(first, found.endPoint().value(), 1e-12);
    }
    AlkalinityResult same = acid.lowAlkalinity(reading(mL(2), pH(4.5)), reading(mL(2), pH(4.2)));
    assertEquals(0.2, same.value().inMilliequivalentsPerLitre(), 1e-9);
    assertTrue(
        same.notices().stream()
            .anyMatch(n -> n.code() == TitrationCode.END_POINT_READING_NOT_IN_BUDGET),
        "nothing but two volumes was read");
    same.explain()
        .steps()
        .forEach(
            step ->
                step.detail()
                    .ifPresent(
                        detail -> {
                          assertTrue(detail.holds(), step.quantity());
                          assertTrue(detail.tolerance() < 1e-9, step.quantity());
                        }));
    assertEquals(same.asCaCO3().toString(), same.toString());
    assertTrue(same.toString().startsWith("10.0"), same.toString());
    refused(
        "first end point: 4.29 pH",
        () -> acid.lowAlkalinity(reading(mL(2), pH(4.29)), reading(mL(3), pH(3.99))));
    refused(
        "second end point: pH 4.21 is not possible; 0.3 below pH 4.5 is needed",
        () -> acid.lowAlkalinity(reading(mL(2), pH(4.5)), reading(mL(3), pH(4.21))));
    refused(
        "second end point: pH 4.19",
        () -> acid.lowAlkalinity(reading(mL(2), pH(4.5)), reading(mL(3), pH(4.19))));
    refused(
        "second volume: 1.9 mL is not possible; it is the total, 2 mL or more",
        () -> acid.lowAlkalinity(reading(mL(2), pH(4.5)), reading(mL(1.9), pH(4.2))));
  }

  @Test
  void readingsAreEqualByVolumePHAndTime() {
    Reading one = reading(mL(1), pH(5));
    Reading timed = one.at(Duration.ofSeconds(90));
    assertEquals(one, reading(mL(1), pH(5)));
    assertEquals(one.hashCode(), reading(mL(1), pH(5)).hashCode());
    assertNotEquals(one, reading(mL(2), pH(5)));
    assertNotEquals(one, reading(mL(1), pH(6)));
    assertNotEquals(one, timed);
    assertNotEquals(one, "1 mL: pH 5");
    assertNotEquals(one.hashCode(), timed.hashCode());
    assertEquals(timed, one.at(Duration.ofSeconds(90)));
    assertEquals("1 mL: pH 5", one.toString());
    assertEquals("1 mL: pH 5 after 90 s", timed.toString());
    assertEquals(Optional.empty(), one.time());
    assertEquals(Duration.ofSeconds(90), timed.time().orElseThrow());
  }

  private static List<Notice> size(double gramsPerLitre) {
    return AcidityResult.plausibility(
        TitratableAcidity.ofGramsPerLitreAs(gramsPerLitre, Acid.LACTIC, pH(8.2)), celsius(20));
  }

  /** A gram per litre of carbon dioxide is about two of lactic acid. */
  @Test
  void anUnusualAcidityIsToldWithTheGasThatWouldExplainIt() {
    assertEquals(List.of(), size(9.99));
    Notice high = size(12).get(0);
    assertEquals(TitrationCode.ACIDITY_UNUSUAL, high.code());
    assertTrue(
        high.text()
            .matches(
                "12\\.0 g/L as lactic acid is unusual for beer, also for a sour one; was the sample"
                    + " degassed\\? (0\\.9|1\\.0)\\d? g/L of carbon dioxide left in it would explain"
                    + " what is above 10\\.0 g/L"),
        high.text());
    double greatest = AcidityResult.greatestOfOpenSample(pH(8.2)).inGramsPerLitreAs(Acid.LACTIC);
    assertEquals(TitrationCode.ACIDITY_UNUSUAL, size(greatest - 0.01).get(0).code());
    Notice carbonated = size(greatest + 0.01).get(0);
    assertEquals(TitrationCode.SAMPLE_CARBONATED, carbonated.code());
    assertEquals("titratable acidity", carbonated.subject());
    assertTrue(
        carbonated
            .text()
            .endsWith(
                ", more than any open liquid holds: it came from under"
                    + " pressure, or a figure is wrong"),
        carbonated.text());
  }

  @Test
  void theSplitSaysByWhichRuleEachPartWasFound() {
    AlkalinitySplit half =
        AlkalinitySplit.of(
            TitrationAlkalinity.ofMilliequivalentsPerLitre(1, pH(8.3)),
            TitrationAlkalinity.ofMilliequivalentsPerLitre(2, pH(4.5)));
    assertEquals(2, half.carbonate().value().inMilliequivalentsPerLitre(), 1e-12);
    assertEquals("2 P", half.carbonate().step().text());
    assertEquals("M - 2 P", half.bicarbonate().step().text());
    assertEquals("none, as P is not more than half of M", half.hydroxide().step().text());
    AlkalinitySplit more =
        AlkalinitySplit.of(
            TitrationAlkalinity.ofMilliequivalentsPerLitre(1.5, pH(8.3)),
            TitrationAlkalinity.ofMilliequivalentsPerLitre(2, pH(4.5)));
    assertEquals("2 P - M", more.hydroxide().step().text());
    assertEquals("2 (M - P)", more.carbonate().step().text());
    assertEquals("none, as P is more than half of M", more.bicarbonate().step().text());
    assertTrue(more.carbonate().step().detail().orElseThrow().holds());
    assertEquals(0, more.carbonate().step().detail().orElseThrow().residual());
    assertEquals(
        "hydroxide "
            + more.hydroxide()
            + "; carbonate "
            + more.carbonate()
            + "; bicarbonate "
            + more.bicarbonate(),
        more.toString());
    Traced carbonate = more.carbonate().traced();
    carbonate
        .sources()
        .forEach(
            source ->
                assertEquals(
                    source.name().equals("P") ? -2 : 2, carbonate.sensitivity(source), 1e-12));
    assertEquals(2, carbonate.sources().size());
    TitrationAlkalinity p = TitrationAlkalinity.ofMilliequivalentsPerLitre(1, pH(4.5));
    refused(
        "end point of P: pH 4.5 is not possible; above the pH 4.5 of M is needed",
        () -> AlkalinitySplit.of(p, p));
    refused(
        "P: -1 mEq/L is not possible; 0 to 2",
        () ->
            AlkalinitySplit.of(
                TitrationAlkalinity.ofMilliequivalentsPerLitre(-1, pH(8.3)),
                TitrationAlkalinity.ofMilliequivalentsPerLitre(2, pH(4.5))));
  }

  @Test
  void resultsRefuseTheWrongTitrantByName() {
    SampleTitration acid = Titrant.hydrochloricAcid().of(molPerL(0.1)).titrate(mL(50));
    refused(
        "titrant: HCl 0.1 mol/L measures no acidity; an alkali is needed",
        () -> acid.took(mL(1)).acidity());
    refused(
        "titrant: " + LYE + " measures no alkalinity; an acid is needed",
        () -> FIFTY.took(mL(1)).alkalinity());
    TitrationLog log = FIFTY.log(new double[] {0, 1}, new double[] {4, 9});
    refused("titrant: " + LYE + " measures no alkalinity; an acid is needed", log::alkalinityCurve);
    refused(
        "way back: titrant " + LYE + " is not possible; the opposite of", () -> log.andBack(log));
    TitrationLog other =
        Titrant.hydrochloricAcid()
            .of(molPerL(0.1))
            .titrate(mL(25))
            .log(new double[] {0, 1}, new double[] {9, 4});
    refused(
        "way back: a sample of 25 mL is not possible; it is the same portion, 50 mL",
        () -> log.andBack(other));
    assertEquals("AOAC 950.07 for beer", FIFTY.took(mL(1)).acidity().explain().root().source());
  }
}
