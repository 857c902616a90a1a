package org.brewchem.buffer;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Severity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Solute;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** What is said of readings at the edges of what is usual. */
class MisfitTest {

  /** An invented beer. */
  private static final Solution BEER =
      TypicalBeer.namedAcids(celsius(20))
          .plus(TypicalBeer.lumpedGroups(celsius(20), 1))
          .with(Ion.CALCIUM, mmolPerL(1.4))
          .with(Ion.MAGNESIUM, mmolPerL(3.1))
          .closedTo(pH(4.25));

  private static final double[][] UP = leg(BEER, Base.SODIUM_HYDROXIDE, 9, 20);
  private static final double[][] DOWN = leg(BEER, Acid.HYDROCHLORIC, 2.7, 20);

  /** Volumes and pH, the pH with a small scatter of its own. */
  private static double[][] leg(Solution sample, Solute titrant, double last, int count) {
    SimulatedTitration titration =
        SimulatedTitration.of(sample, Solution.at(celsius(20)).with(titrant, molPerL(0.1)), mL(50));
    double end = titration.volumeTo(pH(last)).inMillilitres();
    double[] volumes = new double[count];
    for (int i = 0; i < count; i++) {
      volumes[i] = end * i / (count - 1);
    }
    double[] read = titration.pHAfter(volumes);
    for (int i = 1; i < count - 1; i++) {
      read[i] += 0.006 * (i * 7 % 5 - 2) / 2;
    }
    return new double[][] {volumes, read};
  }

  private static BufferReadings alkali(double[][] leg) {
    return BufferReadings.withAlkali(mL(50), molPerL(0.1), leg[0], leg[1]);
  }

  private static BufferReadings acid(double[][] leg, double told) {
    return BufferReadings.withAcid(mL(50), molPerL(told), leg[0], leg[1]);
  }

  private static List<Notice> notices(BufferReadings... legs) {
    return MeasuredBuffer.from(legs).contents().notices();
  }

  private static List<Notice> said(BufferCode code, BufferReadings... legs) {
    return notices(legs).stream().filter(notice -> notice.code() == code).toList();
  }

  private static double[][] spoilt(double[][] leg, int... rows) {
    double[] read = leg[1].clone();
    for (int row : rows) {
      read[row - 1] += row % 2 == 0 ? 0.1 : -0.1;
    }
    return new double[][] {leg[0], read};
  }

  private static List<Notice> judged(double[][] leg) {
    return MeasuredBuffer.fit()
        .withReadingUncertainty(0.005)
        .with(BufferReadings.withAlkali(mL(50), molPerL(0.1), mL(0.005), leg[0], leg[1]))
        .buffer()
        .contents()
        .notices()
        .stream()
        .filter(notice -> notice.severity() != Severity.REMARK)
        .toList();
  }

  /** Of twenty readings 15 % are three. */
  @Test
  void upToThreeOfTwentyReadingsAreRejectedOneByOne() {
    List<Notice> three = judged(spoilt(UP, 5, 10, 15));
    assertEquals(List.of(5L, 10L, 15L), rows(three));
    List<Notice> four = judged(spoilt(UP, 4, 8, 13, 17));
    List<Notice> rejected = four.subList(0, 3);
    assertTrue(
        rejected.stream().allMatch(notice -> notice.code() == BufferCode.READING_REJECTED),
        four.toString());
    // Then all of them are judged together.
    assertEquals(BufferCode.TOO_MUCH_NOISE, four.get(3).code());
  }

  @Test
  void ofSevenReadingsNoneIsRejected() {
    double[][] seven = leg(BEER, Base.SODIUM_HYDROXIDE, 8, 7);
    assertEquals(List.of(), judged(seven));
    assertEquals(
        List.of(),
        judged(spoilt(seven, 4)).stream()
            .filter(notice -> notice.code() == BufferCode.READING_REJECTED)
            .toList());
  }

  private static List<Long> rows(List<Notice> notices) {
    return notices.stream().map(notice -> notice.row().orElseThrow()).toList();
  }

  private static BufferReadings straight(double... read) {
    double[] base = new double[read.length];
    for (int i = 0; i < base.length; i++) {
      base[i] = 0.004 * i;
    }
    return BufferReadings.of(base, new double[base.length], read, 1e-4);
  }

  @Test
  void aReadingIsImplausibleBelowPHOneAndAboveThirteen() {
    assertEquals(List.of(), said(BufferCode.READING_IMPLAUSIBLE, straight(1, 5, 13)));
    List<Notice> low = said(BufferCode.READING_IMPLAUSIBLE, straight(3, 4, 0.99, 5));
    assertEquals(List.of(3L), rows(low));
    assertTrue(low.get(0).text().startsWith("pH 0.99, beyond 1 to 13"), low.get(0).text());
    List<Notice> high = said(BufferCode.READING_IMPLAUSIBLE, straight(3, 13.01, 13.5));
    assertEquals(List.of(2L), rows(high), "the first is enough");
  }

  @Test
  void aLegWithoutTitrantIsOneOfAlkali() {
    BufferReadings still =
        BufferReadings.of(new double[3], new double[3], new double[] {0.5, 0.5, 0.5}, 0);
    List<Notice> said = said(BufferCode.READING_IMPLAUSIBLE, alkali(UP), still);
    assertEquals("readings 2, with alkali", said.get(0).subject());
    assertEquals(List.of(1L), rows(said));
  }

  @Test
  void aPHThatStandsStillRunsAgainstNoTitrant() {
    assertEquals(List.of(), said(BufferCode.RUNS_AGAINST_TITRANT, straight(4, 4, 4, 4)));
    assertEquals(1, said(BufferCode.RUNS_AGAINST_TITRANT, straight(4, 4, 4, 3.9)).size());
    // Nor do readings of one volume, whichever way they move.
    double[] base = {0.003, 0.003, 0.003, 0.003, 0.003, 0.003, 0.003};
    double[] read = {4.27, 4.26, 4.25, 4.24, 4.23, 4.22, 4.21};
    for (int count = 3; count <= 7; count++) {
      assertEquals(
          List.of(),
          said(
              BufferCode.RUNS_AGAINST_TITRANT,
              BufferReadings.of(
                  Arrays.copyOf(base, count), new double[count], Arrays.copyOf(read, count), 0)));
    }
  }

  @Test
  void aLegThatRunsAgainstItsTitrantIsNamedAmongOthers() {
    double[] falling = DOWN[1];
    BufferReadings wrong = alkali(new double[][] {DOWN[0], falling});
    List<Notice> said = said(BufferCode.RUNS_AGAINST_TITRANT, alkali(UP), wrong);
    assertEquals(1, said.size());
    assertEquals("readings 2, with alkali", said.get(0).subject());
    assertEquals(
        "readings", said(BufferCode.RUNS_AGAINST_TITRANT, wrong).get(0).subject(), "alone");
    BufferReadings up = acid(UP, 0.1);
    assertEquals(
        List.of("readings 1, with acid", "readings 2, with alkali"),
        said(BufferCode.RUNS_AGAINST_TITRANT, up, wrong).stream().map(Notice::subject).toList());
  }

  /** Either portion may be named: its titrant so many times, or the other's the inverse. */
  @Test
  void theTitrantThatIsDoubtedIsThatOfThePortionNamed() {
    for (double told : new double[] {0.07, 0.08, 0.13, 0.15}) {
      Notice said = said(BufferCode.TITRANT_DOUBTFUL, alkali(UP), acid(DOWN, told)).get(0);
      double times = Double.parseDouble(said.text().replaceFirst(".*with ([0-9.]+) times.*", "$1"));
      boolean ofAcid = said.subject().equals("readings 2, with acid");
      assertTrue(ofAcid || said.subject().equals("readings 1, with alkali"), said.subject());
      assertEquals(ofAcid ? 0.1 / told : told / 0.1, times, 0.07, told + ": " + said);
    }
    assertEquals(List.of(), said(BufferCode.TITRANT_DOUBTFUL, alkali(UP), acid(DOWN, 0.1)));
  }

  private static boolean doubted(double off, double u) {
    return !said(
            BufferCode.TITRANT_DOUBTFUL,
            alkali(UP).withTitrantUncertainty(0).withSampleUncertainty(0),
            acid(DOWN, 0.1 * (1 + off)).withTitrantUncertainty(u).withSampleUncertainty(0))
        .isEmpty();
  }

  /** Where a doubt just begins, 2 % of uncertainty of the titrant take it away. */
  @Test
  void aTitrantThatIsKnownLessWellIsDoubtedLater() {
    double off = 0.2;
    while (!doubted(off, 0)) {
      off *= 1.01;
    }
    assertFalse(doubted(off, 0.02), "off " + off);
    assertFalse(doubted(off, 0.1), "off " + off);
    assertTrue(doubted(1.2 * off, 0.02), "off " + off);
  }

  /** A sample with 0.25 g/L of carbon dioxide. */
  @Test
  void carbonDioxideIsSuspectedWhereReadingsGoBeyondNeutral() {
    Solution sample = BEER.with(Acid.CARBONIC, mmolPerL(1000 * 0.25 / 44.01));
    double[][] up = leg(sample, Base.SODIUM_HYDROXIDE, 7, 20);
    up[1][19] = 7;
    assertEquals(List.of(), said(BufferCode.CARBON_DIOXIDE_LIKELY, alkali(up)));
    double[][] beyond = leg(sample, Base.SODIUM_HYDROXIDE, 8.5, 20);
    assertEquals(1, said(BufferCode.CARBON_DIOXIDE_LIKELY, alkali(beyond)).size());
    assertEquals(List.of(), said(BufferCode.CARBON_DIOXIDE_LIKELY, alkali(UP)));
  }

  /** The acids of the grid at pK 6.0 and 6.5 lie within half a pK of carbon dioxide's 6.4. */
  @Test
  void whatIsBoundAboutCarbonDioxideIsAShareOfAllAcids() {
    GridFit grid = new GridFit(FitInputs.NOTHING.with(List.of(alkali(UP))));
    double near = 0;
    double sum = 0;
    for (var entry : grid.contents().totals().entrySet()) {
      String name = entry.getKey().name();
      if (name.startsWith("acid of pK")) {
        sum += entry.getValue().value();
        near += name.endsWith("6.0") || name.endsWith("6.5") ? entry.getValue().value() : 0;
      }
    }
    assertTrue(sum > 0.01, "all acids " + sum);
    assertEquals(near, grid.nearCarbonDioxide()[0], 1e-12);
    assertEquals(near / sum, grid.nearCarbonDioxide()[1], 1e-9);
    assertEquals(4.25, grid.lowestPH(), 1e-6);
    assertEquals(9, grid.highestPH(), 1e-6);
  }

  @Test
  void thePartsOfTheFitAreNumberedFromOne() {
    List<String> names =
        MeasuredBuffer.from(alkali(UP)).pH().traced().sources().stream()
            .map(Source::name)
            .filter(name -> name.startsWith("fit of the buffer, part "))
            .toList();
    assertTrue(names.contains("fit of the buffer, part 1"), names.toString());
    assertFalse(names.contains("fit of the buffer, part 0"), names.toString());
  }

  private static List<Notice> electrode(BufferReadings... legs) {
    return said(BufferCode.ELECTRODE_ASSUMED, legs);
  }

  @Test
  void theElectrodeIsAssumedWhereALegBringsNoErrorsOfItsOwn() {
    double[] ones = new double[20];
    Arrays.fill(ones, 1);
    Source zero = Source.of("buffer of pH 7", 0, 0.01, "pH");
    BufferReadings own = alkali(UP).withErrorOfPH(zero, ones);
    assertEquals(List.of(), electrode(own));
    assertEquals(1, electrode(own, acid(DOWN, 0.1)).size());
    assertEquals(1, electrode(alkali(UP)).size());
    FitInputs inputs = FitInputs.NOTHING.with(List.of(own, acid(DOWN, 0.1)));
    AllReadings all = AllReadings.of(inputs);
    assertEquals(
        List.of("zero of the electrode", "slope of the electrode", "buffer of pH 7"),
        all.errorsOfPH.keySet().stream().map(Source::name).toList());
    double[][] errors = all.errorsOfPH.values().toArray(double[][]::new);
    for (int i = 0; i < 40; i++) {
      assertEquals(i < 20 ? 0 : 1, errors[0][i]);
      assertEquals(i < 20 ? 0 : all.pH[i] - 7, errors[1][i]);
      assertEquals(i < 20 ? 1 : 0, errors[2][i]);
      assertEquals(i < 20 ? 0 : 1, all.leg[i]);
      assertEquals(i % 20, all.row[i]);
    }
  }

  @Test
  void anErrorOfThePHWithoutUncertaintyMovesNothing() {
    double[] ones = new double[20];
    Arrays.fill(ones, 1);
    Traced sure =
        MeasuredBuffer.from(
                alkali(UP)
                    .withErrorOfPH(Source.of("exact buffer", 0, 0, "pH"), ones)
                    .withErrorOfPH(Source.of("buffer", 0, 0.01, "pH"), ones))
            .pH()
            .traced();
    assertTrue(Double.isFinite(sure.standardUncertainty().orElseThrow()));
    assertTrue(sure.sources().stream().noneMatch(s -> s.name().equals("exact buffer")));
    assertTrue(sure.sources().stream().anyMatch(s -> s.name().equals("buffer")));
  }

  @Test
  void readingsThatAreLeftOutLeaveTheirColumns() {
    Source source = Source.of("drift", 0, 1, "");
    double[] column = new double[20];
    for (int i = 0; i < 20; i++) {
      column[i] = i;
    }
    AllReadings all =
        AllReadings.of(
            FitInputs.NOTHING.with(
                List.of(
                    alkali(UP)
                        .with(source, column)
                        .withErrorOfPH(Source.of("buffer", 0, 0.5, "pH"), column))));
    boolean[] marked = new boolean[20];
    marked[0] = true;
    marked[7] = true;
    AllReadings fewer = all.without(marked);
    assertEquals(18, fewer.size());
    assertEquals(1, fewer.columns.get(source)[0]);
    assertEquals(8, fewer.columns.get(source)[6]);
    assertEquals(19, fewer.columns.get(source)[17]);
    assertEquals(0.5 * 8, fewer.scaledErrorsOfPH()[0][6]);
    assertEquals(UP[1][8], fewer.pH[6]);
    assertEquals(8, fewer.row[6]);
    assertEquals(3, fewer.columns.size());
  }

  private static String metals(Ion... known) {
    Solution solution = Solution.at(celsius(20));
    for (Ion ion : known) {
      solution = solution.with(ion, mmolPerL(1));
    }
    return MeasuredBuffer.from(alkali(UP))
        .contents(solution.contents(), Traced.exact(4.25))
        .notices()
        .stream()
        .filter(notice -> notice.code() == BufferCode.METALS_ASSUMED)
        .map(Notice::text)
        .findFirst()
        .orElse("");
  }

  @Test
  void onlyTheMetalThatIsNotKnownIsAssumed() {
    assertTrue(metals().startsWith("calcium and magnesium were not measured"), metals());
    assertTrue(metals(Ion.CALCIUM).startsWith("magnesium was not measured"));
    assertTrue(metals(Ion.MAGNESIUM).startsWith("calcium was not measured"));
    assertEquals("", metals(Ion.CALCIUM, Ion.MAGNESIUM));
  }

  @Test
  void threeReadingsMakeABuffer() {
    MeasuredBuffer three = MeasuredBuffer.from(straight(4.2, 4.4, 4.6));
    assertEquals(4.2, three.lowestReading().value());
    assertEquals(Optional.empty(), three.extrapolatedAt(pH(4.2)));
    assertEquals(Optional.empty(), three.extrapolatedAt(pH(4.6)));
    assertTrue(three.extrapolatedAt(pH(4.19)).isPresent());
    assertEquals(
        "pH 4.61 lies outside the readings of the measured buffer, pH 4.20 to 4.60",
        three.extrapolatedAt(pH(4.61)).orElseThrow().text());
  }

  /** A treatment that changes nothing but has to be done with care. */
  private record Careful(List<Caution> cautions) implements Treatment {
    @Override
    public Contents on(Contents before) {
      return before;
    }

    @Override
    public String text() {
      return "stirred";
    }
  }

  @Test
  void aTreatedLiquidKeepsTheCautionsOfItsTreatmentsOnce() {
    Liquid liquid = MeasuredBuffer.from(alkali(UP)).liquid();
    assertEquals(List.of(), liquid.cautions());
    Caution hot = new Caution(Hazard.ACID, "hot");
    Caution cold = new Caution(Hazard.ACID, "cold");
    Liquid treated = liquid.after(new Careful(List.of(hot)), new Careful(List.of(cold, hot)));
    assertEquals(List.of(hot, cold), treated.cautions());
    assertEquals(List.of(hot, cold), treated.after(new Careful(List.of(cold))).cautions());
  }

  @Test
  void aStandInPrintsWhatItMatchesAndShowsItsAcidity() {
    StandIn standIn = StandIn.matching(Traced.exact(20), pH(8.2));
    assertTrue(
        standIn.toString().startsWith("stand-in buffer matching 20 mEq/L"), standIn.toString());
    Contents contents =
        standIn.contents(Contents.pure(celsius(20), Chemistry.standard()), Traced.exact(4.3));
    double perKilogram = 20 / contents.kilogramsPerLitre();
    String line = contents.basis().get(0).detail().orElseThrow().lines().get(0);
    assertEquals(
        String.format(
            Locale.ROOT,
            "strong base to pH 8.2: %.6g mEq/kg, titrated %.6g mEq/kg",
            perKilogram,
            perKilogram),
        line);
    assertFalse(contents.total(Component.PHOSPHATE).isEmpty());
  }

  @Test
  void aChangeOfPHNeedsADose() {
    MeasuredBuffer buffer = MeasuredBuffer.from(alkali(UP));
    Answer<Double> change = buffer.changeOfPHBy(Acid.LACTIC, mmolPerL(5));
    assertEquals("pH after the dose - pH before", change.step().text());
    assertEquals("pH after the dose - pH before", change.figure().rule().text());
    assertEquals(
        List.of("needs a dose; ask a measured buffer for it"),
        Answer.of(change.figure(), buffer.liquid()).whyUnknown());
    assertEquals(
        buffer.pHAfter(Acid.LACTIC, mmolPerL(5)).number() - buffer.pH().number(),
        change.number(),
        1e-12);
  }

  /** By hand: 2.5 times, and 0.4 times a typical beer are still one. */
  @Test
  void aStandInIsStretchedBeyondTwoAndAHalfTimesATypicalBeer() {
    Contents nothing = Contents.pure(celsius(20), Chemistry.standard());
    for (double factor : new double[] {0.39, 0.41, 2.49, 2.51}) {
      Solution beer = TypicalBeer.lumpedGroups(celsius(20), factor);
      for (TypicalBeer.Part acid : TypicalBeer.acids()) {
        beer = beer.with(acid.component(), mmolPerL(factor * acid.millimolesPerLitre()));
      }
      double acidity =
          beer.closedTo(pH(4.3)).titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre();
      Contents contents =
          StandIn.matching(Traced.exact(acidity), pH(8.2)).contents(nothing, Traced.exact(4.3));
      assertEquals(
          factor < 0.4 || factor > 2.5,
          contents.notices().stream().anyMatch(n -> n.code() == BufferCode.STAND_IN_STRETCHED),
          "factor " + factor);
    }
  }
}
