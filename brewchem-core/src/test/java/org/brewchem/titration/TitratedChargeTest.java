package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.mEqPerLPerPH;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.titration.Reading.reading;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.brewchem.figure.Code;
import org.brewchem.figure.FigureCode;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** The arithmetic of a titration by hand: c (V - B) f / S and how it moves with each input. */
class TitratedChargeTest {

  private static final Titrant LYE = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0001));
  private static final Titrant ACID = Titrant.hydrochloricAcid().of(molPerL(0.1), molPerL(0.0001));

  /** 0.1 mol/L on 50 mL: 2 mEq/L a millilitre, twice that of a sample diluted by 2. */
  private static final SampleTitration FIFTY = LYE.titrate(mL(50)).blank(mL(0.5));

  private static double sensitivity(Determination<?> found, String input) {
    return found.budget().row(input).sensitivity();
  }

  private static double value(Determination<?> found) {
    return found.budget().result().value();
  }

  private static List<Code> codes(Determination<?> found) {
    return found.notices().stream().map(Notice::code).toList();
  }

  private static void assertMoves(Determination<?> found, double value, double net, double sample) {
    assertEquals(value, value(found), 1e-9);
    assertEquals(value / 0.1, sensitivity(found, "titrant"), 1e-3);
    assertEquals(value / net, sensitivity(found, "titre"), 1e-4);
    assertEquals(-value / sample, sensitivity(found, "sample"), 1e-4);
    assertEquals(value, sensitivity(found, "repeatability"), 1e-3);
  }

  @Test
  void volumesAlone() {
    AcidityResult found = FIFTY.took(mL(10), mL(10.2)).acidity();
    assertMoves(found, 19.2, 9.6, 50);
    assertEquals(19.2, found.replicates().orElseThrow().mean(), 1e-9);
    assertEquals(0.4, found.replicates().orElseThrow().range(), 1e-9);
    assertMoves(FIFTY.prediluted(2).took(mL(10.1)).acidity(), 38.4, 9.6, 50);
  }

  /** With alkali a pH read too high found too much, with acid too little. */
  @Test
  void aStatedSlopeMovesAcidityAndAlkalinityInTheirDirections() {
    AcidityResult up = FIFTY.slopeAtEndPoint(mEqPerLPerPH(3)).took(mL(10.1)).acidity();
    assertMoves(up, 19.2, 9.6, 50);
    assertEquals(3, sensitivity(up, "reading of the end point"), 1e-4);
    AlkalinityResult down =
        ACID.titrate(mL(50))
            .blank(mL(0.5))
            .slopeAtEndPoint(mEqPerLPerPH(3))
            .took(mL(10.1))
            .alkalinity();
    assertMoves(down, 19.2, 9.6, 50);
    assertEquals(-3, sensitivity(down, "reading of the end point"), 1e-4);
    assertEquals(3, down.slopeAtEndPoint().orElseThrow().inMilliequivalentsPerLitrePerPH(), 1e-12);
  }

  private static FoundEndPoint place(double millilitres, double u) {
    return new FoundEndPoint(
        Step.of("titre", TitrationFigures.MILLILITRES, Step.Kind.FORMULA)
            .text("found", "")
            .found(Traced.of(Source.of("place of the end point", millilitres, u, "mL"))),
        pH(8.2));
  }

  @Test
  void anEndPointThatWasFoundCountsWithHowWellItIsKnown() {
    TitrationLog log = FIFTY.log(new double[] {0, 9, 8, 11}, new double[] {4.4, 7.9, 7.7, 8.5});
    AcidityResult found = log.acidityAt(place(10.1, 0.1));
    assertMoves(found, 19.2, 9.6, 50);
    assertEquals(2, sensitivity(found, "end point"), 1e-4);
    assertEquals(0.2, found.budget().row("end point").contribution(), 1e-4);
    // What is notable of the log is notable of the result.
    assertTrue(codes(found).contains(TitrationCode.READING_OUT_OF_ORDER));
    assertFalse(codes(found).contains(TitrationCode.END_POINT_READING_NOT_IN_BUDGET));
    assertFalse(codes(found).contains(TitrationCode.LAG_AND_DRIFT_UNCHECKED));
    assertEquals(1, found.titres().size());
  }

  /** Straight lines of 1 and of 0.5 pH a millilitre reach pH 8.2 at 4.2 and at 8.4 mL. */
  private static TitrationLog line(double perMillilitre) {
    double[] volumes = new double[12];
    double[] read = new double[12];
    for (int i = 0; i < 12; i++) {
      volumes[i] = i / perMillilitre;
      read[i] = 4 + i;
    }
    return FIFTY.log(Arrays.copyOf(volumes, 10), Arrays.copyOf(read, 10));
  }

  @Test
  void aLogMovesWithTheReadingOfItsEndPoint() {
    AcidityResult found = line(1).acidity();
    assertMoves(found, 7.4, 3.7, 50);
    assertEquals(2, sensitivity(found, "reading of the end point"), 1e-4);
    assertEquals(2, sensitivity(found, "interpolation"), 1e-4);
    assertEquals(6, found.budget().rows().size() - 1);
    assertTrue(codes(found).contains(TitrationCode.LAG_AND_DRIFT_UNCHECKED));
    AcidityResult both = line(1).acidity(line(0.5));
    assertMoves(both, 11.6, 5.8, 50);
    assertEquals(3, sensitivity(both, "reading of the end point"), 1e-4);
    assertEquals(3, both.slopeAtEndPoint().orElseThrow().inMilliequivalentsPerLitrePerPH(), 1e-4);
    assertEquals(11.6, both.replicates().orElseThrow().mean(), 1e-9);
  }

  @Test
  void readingsThatMovedAfterAWaitCountBesideTheOthers() {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i <= 6; i++) {
      readings.add(reading(mL(i), pH(4 + i)).at(Duration.ofSeconds(120L * i)));
      readings.add(reading(mL(i), pH(4.05 + i)).at(Duration.ofSeconds(120L * i + 60)));
    }
    AcidityResult found = FIFTY.log(readings).acidity();
    Budget.Row moved = found.budget().row("lag, drift and carbon dioxide");
    assertEquals(2, moved.sensitivity(), 1e-4);
    double slope = FIFTY.log(readings).endPoint().orElseThrow().slope();
    assertEquals(1.5 * 0.05 / slope / Math.sqrt(3), moved.input().standardUncertainty(), 1e-9);
    assertTrue(codes(found).contains(TitrationCode.READINGS_STILL_MOVING));
    assertFalse(codes(found).contains(TitrationCode.LAG_AND_DRIFT_UNCHECKED));
    assertTrue(
        line(1).acidity().budget().rows().stream()
            .noneMatch(row -> row.input().name().equals("lag, drift and carbon dioxide")));
  }

  @Test
  void aBlankThatTakesMoreThanTheSampleIsNamedByItsRow() {
    SampleTitration titration = LYE.titrate(mL(50)).blank(mL(1.5));
    List<Notice> said =
        titration.took(mL(1.5), mL(1.4), mL(2)).acidity().notices().stream()
            .filter(notice -> notice.code() == TitrationCode.BLANK_ABOVE_TITRE)
            .toList();
    assertEquals(1, said.size());
    assertEquals(
        "row 2: the blank, 1.5 mL, takes more than the sample, 1.4 mL: the result is below 0",
        said.get(0).toString());
    assertEquals("blank", said.get(0).subject());
  }

  @Test
  void aTitreThatNoBuretteHoldsIsNamedByItsRow() {
    List<Notice> said =
        LYE.titrate(mL(50)).took(mL(150), mL(151)).acidity().notices().stream()
            .filter(notice -> notice.code() == FigureCode.UNUSUAL_VALUE)
            .toList();
    assertEquals(1, said.size(), said.toString());
    assertTrue(
        said.get(0).toString().startsWith("row 2: titre: 151 mL is unusual"), said.toString());
  }

  private static Step step(Determination<?> found, String quantity) {
    return found.explain().steps().stream()
        .filter(step -> step.quantity().equals(quantity))
        .findFirst()
        .orElseThrow();
  }

  /** Titrant and sample have steps of their own. */
  @Test
  void theNetTitreCarriesWhatIsNeitherOfTitrantNorOfSample() {
    AcidityResult found =
        FIFTY
            .slopeAtEndPoint(mEqPerLPerPH(3))
            .with(Apparatus.usual().withRepeatability(0.01))
            .prediluted(2)
            .took(mL(10), mL(10.2))
            .acidity();
    Traced net = step(found, "net titre").found().orElseThrow();
    assertEquals(9.6, net.value(), 1e-12);
    assertEquals(
        List.of("blank", "reading of the end point", "repeatability", "titre"),
        net.sources().stream().map(Source::name).sorted().toList());
    for (Source source : net.sources()) {
      // 4 mEq/L are a millilitre of the diluted sample.
      double expected =
          switch (source.name()) {
            case "titre" -> 1;
            case "repeatability" -> 9.6;
            case "blank" -> -1;
            default -> 3 / 4.0;
          };
      assertEquals(expected, net.sensitivity(source), 1e-4, source.name());
    }
    assertEquals("(10 + 10.2) / 2 - blank 0.5", step(found, "net titre").text());
    Traced undiluted = step(found, "undiluted sample").found().orElseThrow();
    assertEquals(25, undiluted.value(), 1e-12);
    assertEquals(List.of("sample"), undiluted.sources().stream().map(Source::name).toList());
    assertEquals(0.5, undiluted.sensitivity(undiluted.sources().get(0)), 1e-12);
    Traced used = step(found, "titrant used").found().orElseThrow();
    assertEquals(0.96, used.value(), 1e-12);
    assertEquals(38.4, value(found), 1e-9);
  }

  /** What is computed in two orders agrees to rounding, and is not allowed more. */
  @Test
  void theStepsHoldToRounding() {
    for (Determination<?> found :
        List.of(
            FIFTY.prediluted(3).took(mL(10), mL(10.2), mL(10.17)).acidity(),
            line(1).acidity(line(0.5)),
            LYE.titrate(mL(50)).blank(mL(1.5)).took(mL(1.4)).acidity())) {
      for (Step step : found.explain().steps()) {
        step.detail()
            .ifPresent(
                detail -> {
                  assertTrue(detail.holds(), step.quantity());
                  assertTrue(detail.tolerance() <= 1e-9, step.quantity());
                });
      }
    }
  }

  /** By hand: 10 mL of 0.05 mol/L and two equivalents are 1 mEq. */
  @Test
  void anAcidOfTwoEquivalentsCountsTwice() {
    AlkalinityResult found =
        Titrant.sulfuricAcid()
            .of(molPerL(0.05), molPerL(0.0001))
            .titrate(mL(100))
            .took(mL(9.9), mL(10.1))
            .alkalinity();
    assertEquals(10, value(found), 1e-9);
    Step used = step(found, "titrant used");
    assertEquals(1, used.found().orElseThrow().value(), 1e-12);
    assertEquals("10 mL x 0.0500000 mol/L x 2 Eq/mol", used.text());
    assertEquals(
        List.of("titre 1", "titre 2"),
        step(found, "net titre").inputs().stream().map(Step::quantity).toList());
    assertTrue(found.explain().holds());
  }

  /** Of 0.05 mL, or 0.1 mEq/L, rounding is a part in 1e12. */
  @Test
  void aSmallTitreHasASmallRounding() {
    AcidityResult small = LYE.titrate(mL(50)).took(mL(0.05)).acidity();
    assertEquals(0.1, value(small), 1e-12);
    for (String quantity : List.of("net titre", "titrant used", "undiluted sample")) {
      Step step = step(small, quantity);
      assertEquals(
          1e-12 * step.found().orElseThrow().value(),
          step.detail().orElseThrow().tolerance(),
          1e-18,
          quantity);
    }
    assertEquals(1e-13, small.explain().root().detail().orElseThrow().tolerance(), 1e-18);
  }

  /**
   * By hand: past a reading at pH 8.2 the curve rises by 2 instead of 0.5 pH a millilitre. Within r
   * of it the volumes are r / 2 and 2 r off, on average 0.75 r, of 2 mEq/L each; r is k times 0.02
   * and U is k times u.
   */
  @Test
  void aBendAtTheEndPointIsAShareOfTheExpandedUncertainty() {
    AcidityResult found =
        LYE.titrate(mL(50))
            .log(new double[] {6, 8, 10, 11, 12}, new double[] {6.2, 7.2, 8.2, 10.2, 12.2})
            .acidity();
    double u = found.budget().result().standardUncertainty();
    double k = found.budget().result().coverageFactor();
    Notice bend =
        found.notices().stream()
            .filter(notice -> notice.code() == TitrationCode.BUDGET_NOT_LINEAR)
            .findFirst()
            .orElseThrow();
    assertEquals(
        String.format(
            Locale.ROOT,
            "within %.2g pH of the end point the curve leaves its tangent by %.0f %% of the"
                + " expanded uncertainty; take the interval by Monte Carlo instead",
            k * 0.02,
            100 * 1.5 * 0.02 / u),
        bend.text());
    assertFalse(codes(line(1).acidity()).contains(TitrationCode.BUDGET_NOT_LINEAR));
  }

  @Test
  void theRepeatabilityLimitIsTakenFromTheStatedOne() {
    assertTrue(FIFTY.took(mL(10.1)).acidity().repeatabilityLimit().isEmpty());
    assertEquals(
        2.8 * 0.01 * 19.2,
        FIFTY
            .with(Apparatus.usual().withRepeatability(0.01))
            .took(mL(10.1))
            .acidity()
            .repeatabilityLimit()
            .orElseThrow()
            .value(),
        0.02);
  }

  @Test
  void replicatesDifferRelativeToTheirMean() {
    AcidityResult found = FIFTY.took(mL(10), mL(10.2)).acidity();
    assertEquals(0.4 / 19.2, found.relativeDifference().orElseThrow(), 1e-9);
    assertTrue(FIFTY.took(mL(10)).acidity().relativeDifference().isEmpty());
    // By hand: 0.25 mL less and more than the blank have a mean of 0.
    assertTrue(
        LYE.titrate(mL(50))
            .blank(mL(0.5))
            .took(mL(0.25), mL(0.75))
            .acidity()
            .relativeDifference()
            .isEmpty());
    assertEquals(found.answer().toString(), found.toString());
    assertTrue(found.toString().startsWith("1.73"), found.toString());
  }

  @Test
  void onlyTheSamePortionIsAReplicate() {
    TitrationLog other =
        LYE.titrate(mL(25)).blank(mL(0.5)).log(new double[] {0, 9}, new double[] {4, 9});
    String message =
        assertThrows(IllegalArgumentException.class, () -> line(1).acidity(other)).getMessage();
    assertEquals(
        "replicates: \"25 mL with "
            + LYE
            + ", to pH 8.2\" is no replicate of \"50 mL with "
            + LYE
            + ", to pH 8.2\"; the same titrant, sample, dilution, blank, temperature and end point are"
            + " needed",
        message);
  }

  @Test
  void anAcidLogReachesAnEndPointOnlyWhereOneWasStated() {
    double[] volumes = {0, 1, 2};
    double[] read = {6, 5.6, 5};
    SampleTitration acid = ACID.titrate(mL(50));
    assertFalse(
        acid.log(volumes, read).notices().stream()
            .anyMatch(notice -> notice.code() == TitrationCode.END_POINT_NOT_REACHED));
    assertTrue(
        acid.to(pH(4.5)).log(volumes, read).notices().stream()
            .anyMatch(notice -> notice.code() == TitrationCode.END_POINT_NOT_REACHED));
    assertTrue(
        LYE.titrate(mL(50)).log(volumes, new double[] {4, 5, 6}).notices().stream()
            .anyMatch(notice -> notice.code() == TitrationCode.END_POINT_NOT_REACHED));
  }
}
